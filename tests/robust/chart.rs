//! Charts of any shape, sense or none.

use fourcourse::chart::{
    Bar, Changes, ChordAt, Jump, MAX_PLAYED, Metre, Note, Part, Rhythm, StrumPattern, Tempo, Ticks,
    Tune, count_at, direction_at,
};
use fourcourse::theory::{
    Accidental, Chord, Degree, Key, Letter, Mode, NoteName, Pitch, Quality, Symbol,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

fn name() -> impl Strategy<Value = NoteName> {
    (0..7, -1..=1).prop_map(|(letter, sign)| {
        NoteName::new(
            Letter::from_index(letter),
            Accidental::new(sign).unwrap_or(Accidental::NATURAL),
        )
    })
}

fn key() -> impl Strategy<Value = Key> {
    (name(), prop::sample::select(&Mode::ALL[..])).prop_map(|(tonic, mode)| Key::new(tonic, mode))
}

fn symbol() -> impl Strategy<Value = Symbol> {
    let quality = vec(prop::sample::select(&Degree::ALL[..]), 0..6);
    prop_oneof![
        1 => Just(Symbol::NoChord),
        9 => (name(), quality, option::of(name())).prop_map(|(root, degrees, bass)| {
            Symbol::Chord(Chord { bass, ..Chord::new(root, Quality::of(&degrees)) })
        }),
    ]
}

fn ticks() -> impl Strategy<Value = Ticks> {
    prop_oneof![
        20 => (0_i64..=24).prop_map(|eighths| Ticks::of(eighths, 8)),
        1 => any::<i64>().prop_map(Ticks),
    ]
}

fn metre() -> impl Strategy<Value = Metre> {
    const USUAL: [(u8, u8); 8] = [
        (4, 4),
        (2, 2),
        (3, 4),
        (6, 8),
        (9, 8),
        (7, 8),
        (5, 4),
        (0, 4),
    ];
    prop_oneof![
        9 => prop::sample::select(&USUAL[..]).prop_map(|(count, unit)| Metre::new(count, unit)),
        1 => any::<(u8, u8, [u8; 6])>()
            .prop_map(|(count, unit, groups)| Metre { groups, ..Metre::new(count, unit) }),
    ]
}

fn note() -> impl Strategy<Value = Note> {
    (ticks(), name(), any::<i8>()).prop_map(|(at, name, octave)| {
        Note::new(at, Ticks::of(1, 8), Pitch::new(name, octave.clamp(0, 8)))
    })
}

fn jump() -> impl Strategy<Value = Jump> {
    any::<(bool, bool)>().prop_map(|(capo, to_coda)| {
        if capo {
            Jump::DaCapo { to_coda }
        } else {
            Jump::DalSegno { to_coda }
        }
    })
}

fn bar() -> impl Strategy<Value = Bar> {
    let rarely = || prop::bool::weighted(0.15);
    let ending =
        prop_oneof![3 => Just(vec![]), 1 => vec(0_u8..5, 1..3), 1 => vec(any::<u8>(), 1..3)];
    let repeats = prop_oneof![6 => Just(0), 2 => 1_u8..5, 1 => any::<u8>()];
    let signs = (
        rarely(),
        repeats,
        ending,
        rarely(),
        rarely(),
        rarely(),
        rarely(),
    );
    let chords = vec((ticks(), symbol()), 0..3);
    (
        (
            ticks(),
            option::weighted(0.1, metre()),
            option::weighted(0.1, key()),
        ),
        (
            vec(note(), 0..3),
            chords,
            signs,
            option::weighted(0.1, jump()),
        ),
    )
        .prop_map(|((length, metre, key), (notes, chords, signs, jump))| {
            let (repeat_start, repeat_end, ending, section_end, segno, coda, fine) = signs;
            let chords = chords
                .into_iter()
                .map(|(at, symbol)| ChordAt { at, symbol });
            Bar {
                length,
                metre,
                key,
                notes,
                chords: chords.collect(),
                annotations: vec![],
                repeat_start,
                repeat_end,
                ending,
                section_end,
                segno,
                coda,
                fine,
                jump,
                line_end: false,
            }
        })
}

pub(crate) fn tune() -> impl Strategy<Value = Tune> {
    let label = || prop::sample::select(&["A", "B", "C", ""][..]);
    let parts = vec((label(), 0_usize..40), 0..4);
    let form = vec(label(), 0..8);
    (vec(bar(), 0..30), metre(), key(), parts, form).prop_map(|(bars, metre, key, parts, form)| {
        let parts = parts.into_iter().map(|(label, first_bar)| Part {
            label: label.to_owned(),
            first_bar,
            strum: None,
        });
        Tune {
            rhythm: Some(Rhythm::Reel),
            bars,
            parts: parts.collect(),
            form: form.into_iter().map(str::to_owned).collect(),
            ..Tune::new(metre, key)
        }
    })
}

proptest! {
    #[test]
    fn any_marks_in_any_order_are_played_to_an_end(tune in tune()) {
        let playing = tune.playing();
        let parts = tune.parts_or_derived();
        prop_assert!(playing.bars.len() <= MAX_PLAYED);
        prop_assert_eq!(playing.bars.is_empty(), tune.bars.is_empty());
        let mut at = Ticks::ZERO;
        for bar in &playing.bars {
            prop_assert_eq!(bar.start, at);
            prop_assert_eq!(bar.length, tune.bars[bar.written].length.max(Ticks::ZERO));
            prop_assert!(bar.part.is_none_or(|part| part < parts.len()));
            prop_assert!(bar.pass > 0 && bar.offset >= Ticks::ZERO);
            if bar.pickup {
                prop_assert_eq!(bar.offset + bar.length, bar.metre.bar());
            }
            at += bar.length;
        }
        prop_assert_eq!(playing.length, at);
    }

    #[test]
    fn every_bar_of_a_tune_without_jumps_or_form_is_played_in_writing_order(mut tune in tune()) {
        tune.form.clear();
        tune.parts.clear();
        for bar in &mut tune.bars {
            bar.jump = None;
            bar.ending.clear();
            bar.repeat_end = bar.repeat_end.min(3);
        }
        let mut first_times = vec![];
        for bar in tune.playing().bars {
            if !first_times.contains(&bar.written) {
                first_times.push(bar.written);
            }
        }
        prop_assert!(first_times.into_iter().eq(0..tune.bars.len()));
    }

    #[test]
    fn changes_follow_each_other_without_gap(tune in tune()) {
        let playing = tune.playing();
        let changes = Changes::of(&tune, &playing);
        for pair in changes.as_slice().windows(2) {
            prop_assert_eq!(pair[0].end(), pair[1].at);
            prop_assert!(pair[0].at < pair[1].at);
            prop_assert_ne!(pair[0].symbol, pair[1].symbol);
        }
        if let Some(last) = changes.as_slice().last() {
            prop_assert_eq!(last.end(), playing.length);
        }
        for (i, change) in changes.as_slice().iter().enumerate() {
            prop_assert_eq!(changes.index_at(change.at), Some(i));
            prop_assert!(change.played_bar < playing.bars.len());
        }
    }

    #[test]
    fn any_time_can_be_asked_for(tune in tune(), at in ticks(), to in ticks(), index in 0_usize..50) {
        let playing = tune.playing();
        if let Some(bar) = playing.bar_at(at) {
            prop_assert!(playing.bars[bar].start <= at && at < playing.length);
        }
        prop_assert!(playing.beats(at, to) >= 0.0);
        let run = playing.run(index);
        prop_assert!(run.end <= playing.bars.len());
        playing.count(index);
        playing.find(index, index);
        prop_assert!(tune.first_offset() >= Ticks::ZERO);
        let strum = tune.strum_at(index);
        prop_assert!(!strum.slots.is_empty());
        for (when, slot, _) in strum.for_bar(to, at) {
            prop_assert!(when < to && slot < strum.slots.len());
        }
        direction_at(tune.metre, at);
        count_at(tune.metre, at);
    }

    #[test]
    fn there_and_back_sounds_the_same(tune in tune(), tonic in name()) {
        let sound = |tune: &Tune| -> Vec<i32> {
            let notes = tune.bars.iter().flat_map(|bar| &bar.notes);
            notes.map(|note| note.pitch.midi()).collect()
        };
        let roots = |tune: &Tune| -> Vec<_> {
            let chords = tune.bars.iter().flat_map(|bar| &bar.chords);
            let root = |symbol| match symbol {
                Symbol::Chord(chord) => Some((chord.root.class(), chord.quality, chord.lowest().class())),
                Symbol::NoChord => None,
            };
            chords.map(|chord| root(chord.symbol)).collect()
        };
        let back = tune.in_key(tonic).in_key(tune.key.tonic);
        prop_assert_eq!(sound(&back), sound(&tune));
        prop_assert_eq!(roots(&back), roots(&tune));
    }

    #[test]
    fn any_text_is_a_strum_or_a_reason(text in "[DUbx.>| ]{0,70}|.{0,40}", metre in metre()) {
        if let Ok(pattern) = StrumPattern::read(&text, metre) {
            prop_assert!((1..=StrumPattern::MOST_SLOTS).contains(&pattern.slots.len()));
            let again = StrumPattern::read(&pattern.to_string(), metre).unwrap();
            prop_assert_eq!(again.slots, pattern.slots);
        }
    }

    #[test]
    fn any_tempo_runs(bpm in any::<f32>(), beat in ticks(), length in ticks()) {
        let tempo = Tempo { bpm, beat };
        prop_assert!(tempo.seconds(length).is_finite());
        tempo.ticks(tempo.seconds(length));
        tempo.counted_in(length);
    }
}
