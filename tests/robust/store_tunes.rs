//! Tunes for the tests of the songbook on disk.

use fourcourse::chart::{
    Annotation, Bar, ChordAt, Direction, Jump, Metre, Note, Ornament, Part, Rhythm, Slot, Stroke,
    StrumPattern, Syllable, Tempo, Ticks, Tune, Tuplet, Verse,
};
use fourcourse::theory::{
    Accidental, Chord, Degree, Key, Letter, Mode, NoteName, Pitch, Quality, Symbol,
};

fn name(letter: Letter) -> NoteName {
    NoteName::new(letter, Accidental::NATURAL)
}

/// A tune of the given number of bars in which a number decides the notes.
pub(crate) fn tune(title: &str, number: usize, bars: usize) -> Tune {
    let bar = |bar: usize| Bar {
        length: Ticks::WHOLE,
        notes: (0..8)
            .map(|at| {
                let letter = Letter::ALL[(number * 7 + bar * 5 + at * at) % 7];
                let pitch = Pitch::new(name(letter), 4);
                Note::new(Ticks::of(at as i64, 8), Ticks::of(1, 8), pitch)
            })
            .collect(),
        chords: vec![ChordAt {
            at: Ticks::ZERO,
            symbol: Symbol::Chord(Chord::new(
                name(Letter::ALL[(number + bar) % 7]),
                Quality::MAJOR,
            )),
        }],
        ..Bar::default()
    };
    Tune {
        title: title.to_owned(),
        composer: "Millrace Hall circle".to_owned(),
        rhythm: Some(Rhythm::Reel),
        bars: (0..bars).map(bar).collect(),
        ..Tune::new(Metre::COMMON, Key::new(name(Letter::G), Mode::Major))
    }
}

/// A small tune that has a bit of everything a tune can have.
pub(crate) fn everything() -> Tune {
    let strum = StrumPattern {
        name: "Nettie's own".to_owned(),
        metre: Metre {
            count: 7,
            unit: 8,
            groups: [3, 2, 2, 0, 0, 0],
        },
        step: Ticks::of(1, 8),
        slots: vec![
            Slot {
                direction: Direction::Down,
                stroke: Stroke::Bass,
                accent: true,
            },
            Slot {
                direction: Direction::Up,
                stroke: Stroke::Silent,
                accent: false,
            },
            Slot {
                direction: Direction::Down,
                stroke: Stroke::Strum,
                accent: false,
            },
            Slot {
                direction: Direction::Up,
                stroke: Stroke::Chop,
                accent: false,
            },
        ],
    };
    let b_flat = NoteName::new(Letter::B, Accidental::FLAT);
    let f_double_sharp = NoteName::new(Letter::F, Accidental::DOUBLE_SHARP);
    let chord = Chord {
        root: b_flat,
        quality: Quality::SEVENTH
            .without(Degree::Fifth)
            .with(Degree::SharpFifth)
            .with(Degree::Thirteenth),
        bass: Some(name(Letter::D)),
    };
    let note = Note {
        at: Ticks::of(1, 12),
        length: Ticks::of(1, 12),
        pitch: Pitch::new(f_double_sharp, 5),
        tied: true,
        slurred: true,
        tuplet: Some(Tuplet {
            count: 3,
            instead_of: 2,
            first: true,
        }),
        grace: vec![Pitch::new(b_flat, -1)],
        ornaments: vec![Ornament::Roll, Ornament::Slide],
        syllables: vec![
            None,
            Some(Syllable {
                text: "Mühl".to_owned(),
                joined: true,
            }),
        ],
    };
    let mut tune = tune("Everything at Once", 3, 1);
    tune.other_titles = vec!["Alles auf einmal".to_owned(), "Todo a la vez".to_owned()];
    tune.source = "made for this test".to_owned();
    tune.rhythm = Some(Rhythm::Other("seven-step".to_owned()));
    tune.metre = strum.metre;
    tune.key = Key::new(b_flat, Mode::Lydian);
    tune.tempo = Some(Tempo {
        bpm: 92.5,
        beat: Ticks::of(3, 8),
    });
    tune.bars.push(Bar {
        length: Ticks::of(7, 8),
        metre: Some(strum.metre),
        key: Some(Key::new(name(Letter::C), Mode::Locrian)),
        notes: vec![note],
        chords: vec![
            ChordAt {
                at: Ticks::ZERO,
                symbol: Symbol::Chord(chord),
            },
            ChordAt {
                at: Ticks::of(3, 8),
                symbol: Symbol::NoChord,
            },
        ],
        annotations: vec![Annotation {
            at: Ticks::of(1, 4),
            text: "slowly".to_owned(),
        }],
        repeat_start: true,
        repeat_end: 3,
        ending: vec![1, 3],
        section_end: true,
        segno: true,
        coda: true,
        fine: true,
        jump: Some(Jump::DalSegno { to_coda: true }),
        line_end: true,
    });
    tune.parts = vec![Part {
        label: "A".to_owned(),
        first_bar: 1,
        strum: Some(strum.clone()),
    }];
    tune.form = vec!["A".to_owned(), "A".to_owned()];
    tune.times_through = Some(3);
    tune.strum = Some(strum);
    tune.verses = vec![Verse {
        lines: vec!["One line,".to_owned(), "another line.".to_owned()],
    }];
    tune.remarks = vec!["crooked".to_owned()];
    tune.made = chrono::DateTime::from_timestamp(1_700_000_000, 5);
    tune.changed = chrono::DateTime::from_timestamp(1_800_000_000, 0);
    tune
}
