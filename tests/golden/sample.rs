//! Views as the desk would give them, for tunes of our own.

use std::collections::BTreeMap;
use std::rc::Rc;

use fourcourse::band::{Ending, Player, Style};
use fourcourse::desk::{
    BandSettings, BandView, ChordCard, ChordNames, Filter, FollowState, FormChip, Heard, Language,
    MapBar, MapLine, MissingNote, NextCard, Passed, PlayerView, RampView, RingString, SafePart,
    Settings, SettingsView, ShapeView, Simplify, SlotView, SongbookState, SongbookView, StandView,
    StrumView, SungWords, Theme, TuneId, TuneRow, Tuning, Verdict,
};
use fourcourse::theory::{Key, Mode, Naming, NoteName};

/// A shape from frets as players write them: `2200`, `x02220`; fingers likewise, 0 for none.
pub(crate) fn shape(courses: &str, pairs: bool, frets: &str, fingers: &str) -> ShapeView {
    let courses: Vec<_> = courses.split(' ').map(String::from).collect();
    let digit = |letter: char| {
        letter
            .to_digit(16)
            .map(|digit| u8::try_from(digit).unwrap())
    };
    let frets: Vec<_> = frets.chars().map(digit).collect();
    let highest = frets.iter().flatten().max().copied().unwrap_or(0);
    let lowest = frets.iter().flatten().filter(|&&fret| fret > 0).min();
    ShapeView {
        strings: vec![if pairs { 2 } else { 1 }; courses.len()],
        courses,
        fingers: fingers
            .chars()
            .map(|letter| digit(letter).unwrap_or(0))
            .collect(),
        barres: Vec::new(),
        first_fret: if highest > 4 {
            lowest.copied().unwrap_or(1)
        } else {
            1
        },
        frets,
        missing: Vec::new(),
        of: (1, 5),
    }
}

pub(crate) fn card(name: &str, other: &str, shape: Option<ShapeView>) -> ChordCard {
    ChordCard {
        name: name.into(),
        other: other.into(),
        shape,
        ..ChordCard::default()
    }
}

/// Slots from letters: D U down and up, capital on the accent, b bass, x chop, - silent; `&` between the numbers.
pub(crate) fn strum(letters: &str, now: Option<usize>) -> StrumView {
    let slot = |(i, letter): (usize, char)| SlotView {
        count: if i % 2 == 0 {
            (i / 2 + 1).to_string()
        } else {
            "&".into()
        },
        on_beat: i % 2 == 0,
        up: i % 2 == 1,
        silent: letter == '-',
        bass: letter == 'b',
        chop: letter == 'x',
        accent: letter.is_uppercase(),
    };
    StrumView {
        name: "strum".into(),
        slots: letters.chars().enumerate().map(slot).collect(),
        now,
    }
}

/// Map lines from text: a line each, `A:` for a part, `|` between bars, `'` before a pickup, `1.` before an ending.
pub(crate) fn map(text: &str, now: usize) -> Vec<MapLine> {
    let mut played = 0;
    let line = |line: &str| {
        let (part, bars) = line.split_once(':').unwrap_or(("", line));
        let bars: Vec<_> = bars
            .split('|')
            .map(|bar| {
                let bar = bar.trim();
                let (pickup, bar) = bar
                    .strip_prefix('\'')
                    .map_or((false, bar), |bar| (true, bar));
                let (ending, bar) = bar.split_once('.').unwrap_or(("", bar));
                let made = MapBar {
                    looped: false,
                    played,
                    chords: bar.trim().into(),
                    numbers: String::new(),
                    pickup,
                    ending: ending.into(),
                    passed: match played.cmp(&now) {
                        std::cmp::Ordering::Less => Passed::Played,
                        std::cmp::Ordering::Equal => Passed::Now,
                        std::cmp::Ordering::Greater => Passed::Ahead,
                    },
                };
                played += 1;
                made
            })
            .collect();
        let full = bars.iter().find(|bar: &&MapBar| !bar.pickup);
        MapLine {
            part: part.into(),
            top: full.map_or(0, |bar| bar.played),
            current: bars.iter().any(|bar| bar.passed == Passed::Now),
            bars,
        }
    };
    text.lines().map(line).collect()
}

pub(crate) fn form(names: &str, now: usize) -> Vec<FormChip> {
    let chip = |(i, name): (usize, &str)| FormChip {
        part: name[..1].into(),
        pass: name[1..].parse().unwrap_or(0),
        passed: match i.cmp(&now) {
            std::cmp::Ordering::Less => Passed::Played,
            std::cmp::Ordering::Equal => Passed::Now,
            std::cmp::Ordering::Greater => Passed::Ahead,
        },
    };
    names.split(' ').enumerate().map(chip).collect()
}

pub(crate) fn ring(text: &str) -> Vec<RingString> {
    let one = |text: &str| RingString {
        name: text.trim_end_matches(['+', '-', '!']).into(),
        string: None,
        verdict: match text.chars().last() {
            Some('+') => Verdict::Ring,
            Some('!') => Verdict::Clash,
            _ => Verdict::Colour,
        },
    };
    text.split(' ').map(one).collect()
}

fn keys() -> Vec<(String, NoteName)> {
    [
        "A", "B♭", "B", "C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭",
    ]
    .map(|name| (name.to_owned(), name.parse().unwrap()))
    .into()
}

/// A band that waits, silent.
pub(crate) fn band() -> BandView {
    let settings = BandSettings::default();
    let reel = Style::named("reel").unwrap();
    BandView {
        players: Player::ALL.map(|player| PlayerView {
            player,
            level: settings.levels[player as usize],
            muted: settings.mutes[player as usize],
        }),
        settings,
        heard: Heard::SwitchedOff,
        style: reel,
        fitting: reel,
        ending: Ending::Held,
        choosing: None,
        looped: None,
        ramp: RampView {
            on: false,
            percent: 3,
            ceiling: 116,
        },
        alone: None,
        strings: ["G", "D", "A", "E"].map(String::from).to_vec(),
        tone: None,
    }
}

/// What is safe over a part: a bare fifth on two courses and two open ones.
fn safe(part: &str, chord: &str, (course, fret): (&str, u8)) -> SafePart {
    SafePart {
        part: part.into(),
        now: part == "A",
        chord: card(chord, "1", Some(shape("G D A E", true, "2200", "1200"))),
        fits: 83,
        note: course.into(),
        course: course.into(),
        fret,
    }
}

/// The Millrace Reel: mandolin, key of A, second bar of the second line.
pub(crate) fn reel() -> StandView {
    let mut a = shape("G D A E", true, "2200", "1100");
    a.missing = vec![MissingNote::Third];
    a.barres = vec![(1, 2, 0, 1)];
    let lines = "A:A||D|E\nA|D|E|A\nB:D||A|\nA|E|A|";
    let mut map = map(lines, 4);
    map[0].current = true;
    StandView {
        title: "Millrace Reel".into(),
        rhythm: "reel".into(),
        key: "A".into(),
        mode: "major".into(),
        written_key: None,
        keys: keys(),
        names: ChordNames::Letters,
        simplify: Simplify::Written,
        capo: 0,
        time: 2,
        times: 3,
        last_time: false,
        tempo: (72, (1, 2)),
        follow: FollowState::ByClock,
        now: card("A", "1", Some(a)),
        next: Some(NextCard {
            chord: card("D", "4", Some(shape("G D A E", true, "2002", "1002"))),
            beats_left: 2,
            beats: 4,
            bars_left: 0,
        }),
        strum: strum("D-dud-du", Some(2)),
        ring: ring("G D! A+ E+"),
        form: form("A1 A2 B1 B2", 1),
        map,
        line: 1,
        bar: (5, 8),
        safe: vec![safe("A", "A5", ("A", 0)), safe("B", "A5", ("A", 0))],
        sung: None,
        band: band(),
        listed: false,
        next_tune: None,
    }
}

/// A song for the guitar with a capo: long names, words, a pickup, sixty-four bars, waiting to begin.
pub(crate) fn long_song() -> StandView {
    let line = "F♯m7♭5/A|B7sus4 B7|Em|Em/D\n";
    let lines = format!(
        "V:'|G|D/F♯|Em7|C\n{line}C:C|G|Am7 D7|1. G\n{}",
        line.repeat(13)
    );
    let mut half = shape("E A D G B E", false, "x0221x", "003210");
    half.missing = vec![MissingNote::Fifth];
    let mut chord = card("F♯m7♭5/A", "7m7♭5/2", Some(half));
    chord.played_as = Some("Em7♭5/G".into());
    StandView {
        title: "The Ferryman's Daughter and the Weir below the Mill".into(),
        rhythm: "song".into(),
        key: "G".into(),
        written_key: Some("A".into()),
        capo: 2,
        time: 1,
        times: 0,
        follow: FollowState::Waiting,
        now: chord,
        next: Some(NextCard {
            chord: card(
                "B7sus4",
                "3",
                Some(shape("E A D G B E", false, "x24252", "013141")),
            ),
            beats_left: 4,
            beats: 4,
            bars_left: 3,
        }),
        strum: strum("b-xub-xu", Some(0)),
        ring: ring("E+ A! D G+ B+ E+"),
        form: form("V1 C V2 C V3 C", 0),
        map: map(lines.trim_end(), 5),
        line: 1,
        bar: (5, 16),
        sung: Some(SungWords {
            now: "and the water runs under the stone,".into(),
            then: "my love, the water runs under the".into(),
        }),
        ..reel()
    }
}

/// A crooked tune on the banjo with a barre high up, held.
pub(crate) fn crooked() -> StandView {
    let mut f = shape("g D G B D", false, "x7655", "032110");
    f.fingers = vec![0, 4, 3, 1, 1];
    f.barres = vec![(1, 5, 3, 4)];
    StandView {
        title: "Crooked Sluice".into(),
        follow: FollowState::Held,
        last_time: true,
        now: card("E♭", "♭6", Some(f)),
        next: None,
        strum: strum("xuxuxux", None),
        ring: ring("g+ D! G B+ D"),
        form: form("A B", 1),
        map: map("A:'|G||C|G\nG|D|G\nB:E♭||B♭||F|G\nG|D|1. G|2. G", 8),
        line: 2,
        ..reel()
    }
}

fn row(
    id: u64,
    title: &str,
    rhythm: &str,
    form: &str,
    key: &str,
    start: (&str, u8),
) -> Rc<TuneRow> {
    Rc::new(TuneRow {
        id: TuneId(id),
        title: title.into(),
        rhythm: rhythm.into(),
        form: form.into(),
        metre: "4/4".into(),
        key: key.into(),
        mode: "major".into(),
        start_course: start.0.into(),
        start_fret: start.1,
    })
}

pub(crate) fn songbook() -> SongbookView {
    let rows = vec![
        row(1, "Millrace Reel", "reel", "AABB", "A", ("A", 0)),
        row(2, "Old Millstone", "song", "", "G", ("D", 2)),
        row(3, "Mill Lane at Dusk", "waltz", "AABB", "Em", ("E", 0)),
        row(4, "Candle on the Sill", "air", "AB", "D", ("A", 5)),
        row(
            5,
            "The Ferryman's Daughter and the Weir below the Mill",
            "song",
            "AABC",
            "F♯m",
            ("G", 2),
        ),
        row(6, "Sluice Gate Polka", "polka", "AABB", "D", ("A", 0)),
        row(7, "Hammer Pond", "slip-jig", "AABB", "Em", ("E", 3)),
        row(8, "Barn Door Hornpipe", "hornpipe", "AABB", "G", ("D", 0)),
        row(9, "Wet Boots Home", "jig", "AABB", "D", ("A", 2)),
        row(10, "Crooked Sluice", "reel", "AB", "G", ("D", 5)),
    ];
    let key =
        |name: &str, tonic: &str, mode| (name.to_owned(), Key::new(tonic.parse().unwrap(), mode));
    SongbookView {
        state: SongbookState::Tunes,
        filter: Filter::default(),
        total: rows.len(),
        rows,
        keys: vec![
            key("G", "G", Mode::Major),
            key("D", "D", Mode::Major),
            key("A", "A", Mode::Major),
            key("E", "E", Mode::Minor),
            key("F♯", "F#", Mode::Minor),
        ],
        rhythms: [
            "reel", "jig", "slip-jig", "waltz", "polka", "hornpipe", "song", "air",
        ]
        .map(String::from)
        .to_vec(),
        open: Some(TuneId(1)),
    }
}

/// A songbook with nothing to list.
pub(crate) fn no_tunes(state: SongbookState) -> SongbookView {
    SongbookView {
        state,
        rows: Vec::new(),
        ..songbook()
    }
}

pub(crate) fn settings(theme: Theme) -> SettingsView {
    let known = ["G", "C", "D"].map(String::from).to_vec();
    let chords = [
        "G", "C", "D", "A", "Em", "Am", "E", "D7", "A7", "G7", "E7", "Bm", "F", "B7", "F♯m", "B♭",
    ];
    SettingsView {
        chords: chords
            .map(|name| {
                (
                    name.to_owned(),
                    name.to_owned(),
                    known.iter().any(|one| one == name),
                )
            })
            .to_vec(),
        settings: Settings {
            instrument: "mandolin".into(),
            retuned: BTreeMap::new(),
            left_handed: false,
            theme,
            language: Some(Language::English),
            naming: Naming::English,
            less_motion: false,
            known,
            band: BandSettings::default(),
        },
        instruments: [
            "mandolin",
            "octave-mandolin",
            "mandola",
            "tenor-banjo",
            "tenor-guitar",
            "guitar",
            "ukulele",
            "baritone-ukulele",
            "banjo",
            "fiddle",
            "bass",
        ]
        .map(String::from)
        .to_vec(),
        courses: [("A", 2), ("E", 2), ("A", 0), ("E", 0)]
            .map(|(name, off)| (name.to_owned(), off))
            .to_vec(),
        tunings: ["GDAE", "AEAE", "GDGD", "GDAD", "ADAE"]
            .map(|notes| Tuning {
                notes: notes.chars().map(String::from).collect(),
                semitones: Vec::new(),
                chosen: notes == "AEAE",
            })
            .to_vec(),
    }
}
