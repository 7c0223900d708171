//! Tablature by the book: first-position fingering, pick directions, drones and roughness. Where each fixture comes from
//! stands in `fixtures/README.md`; "the sheet" is the project's sheet of trade facts, which has what is quoted here from common
//! practice.

#![allow(clippy::unwrap_used)] // the facts are our own files

use std::collections::BTreeMap;

use fourcourse::chart::{Direction, Tune, Wishes};
use fourcourse::formats::abc;
use fourcourse::frets::{
    Capo, Drones, FIRST_POSITION, InChord, Instrument, Sounding, Tone, Why, drones, neighbours,
    place, roughness,
};
use fourcourse::theory::{Chord, Key, Mode, NoteName, Pitch};

use super::rows;

const PICKS: &str = include_str!("fixtures/picks.tsv");
const FINGERS: &str = include_str!("fixtures/first-position.tsv");
const ROUGHNESS: &str = include_str!("fixtures/roughness.tsv");
const RING: &str = include_str!("fixtures/trade-ring.tsv");
const KEYS: &str = include_str!("fixtures/trade-keys.tsv");

fn tune(metre: &str, music: &str) -> Tune {
    let text = format!("X:1\nT:Bars\nM:{metre}\nL:1/8\nK:C\n{music}|\n");
    abc::read(text.as_bytes()).tunes.remove(0).tune
}

#[test]
fn the_pick_goes_as_the_place_in_the_bar_says_in_every_metre() {
    for row in rows(PICKS) {
        let tune = tune(row[0], row[1]);
        let mut bars = vec![String::new(); tune.bars.len()];
        for note in tune.melody() {
            bars[note.bar].push(match note.direction {
                Direction::Down => 'D',
                Direction::Up => 'U',
            });
        }
        bars.retain(|bar| !bar.is_empty());
        assert_eq!(bars.join("|"), row[2], "{} {} ({})", row[0], row[1], row[3]);
    }
}

#[test]
fn the_hand_never_stops_on_rests_and_ties() {
    // The sheet: "the hand never stops: rests and ties get a silent stroke"; the strokes are worked out from it.
    let strokes = |metre: &str, music: &str| -> Vec<String> {
        let bars = tune(metre, music).picking().into_iter().map(|strokes| {
            let mark = |stroke: fourcourse::chart::PickStroke| match (stroke.direction, stroke.note)
            {
                (Direction::Down, Some(_)) => 'D',
                (Direction::Up, Some(_)) => 'U',
                (Direction::Down, None) => 'd',
                (Direction::Up, None) => 'u',
            };
            strokes.into_iter().map(mark).collect()
        });
        bars.filter(|bar: &String| !bar.is_empty()).collect()
    };
    assert_eq!(strokes("4/4", "A2Bc zdz2"), ["DuDUdUdu"]);
    assert_eq!(strokes("4/4", "A4B2cc-|cdz2e4"), ["DuduDuDU", "dUduDudu"]);
    assert_eq!(strokes("6/8", "A3 zBz"), ["DuddUd"]);
    assert_eq!(strokes("9/8", "z9"), ["dudduddud"]);
}

fn midi(note: &str) -> i32 {
    let (name, octave) = note.split_at(note.len() - 1);
    Pitch::new(name.parse::<NoteName>().unwrap(), octave.parse().unwrap()).midi()
}

fn tone(midi: i32) -> Tone {
    Tone {
        midi,
        quarters: 0.5,
        after_rest: false,
        up: false,
    }
}

/// A scale of the chart on an instrument whose lowest course sounds `lowest`: course, fret and finger of each note.
fn scale(instrument: &Instrument, up: i32, chart: &[Vec<&str>]) -> (Vec<String>, Vec<String>) {
    let (mut tones, mut book) = (Vec::new(), Vec::new());
    for row in chart {
        let course = ["G", "D", "A", "E"]
            .iter()
            .position(|name| *name == row[1])
            .unwrap();
        let marks = row[3].split(' ').zip(row[4].split(' '));
        book.extend(marks.map(|(fret, finger)| format!("{course}:{fret} ({finger})")));
        tones.extend(row[2].split(' ').map(|note| tone(midi(note) + up)));
    }
    let back = tones.iter().rev().copied().skip(1);
    let there_and_back: Vec<Tone> = tones.iter().copied().chain(back).collect();
    let book_back: Vec<String> = book.iter().rev().skip(1).cloned().collect();
    book.extend(book_back);
    let placed = place(instrument, Capo::NONE, &there_and_back, FIRST_POSITION);
    let said = placed.into_iter().map(|place| {
        let place = place.unwrap();
        let finger = place.finger.map_or(0, |finger| finger.number());
        format!("{}:{} ({finger})", place.course, place.fret)
    });
    (said.collect(), book)
}

#[test]
fn scales_in_first_position_are_fingered_as_the_fiddle_family_is_taught() {
    let mut by_key: BTreeMap<&str, Vec<Vec<&str>>> = BTreeMap::new();
    for row in rows(FINGERS) {
        by_key.entry(row[0]).or_default().push(row);
    }
    assert_eq!(
        by_key.keys().copied().collect::<Vec<_>>(),
        ["A", "C", "D", "G"]
    );
    for instrument in Instrument::all().filter(|one| one.frets_a_finger == 2) {
        let lowest = instrument.courses[0].open.midi();
        for (key, chart) in &by_key {
            let (said, book) = scale(&instrument, lowest - midi("G3"), chart);
            assert_eq!(said, book, "{} in {key}", instrument.id);
        }
    }
}

#[test]
fn roughness_is_that_of_the_formula_typed_in_twice() {
    // The script types in the same formula, with the same constants from memory of the paper: this finds slips of typing.
    let mut cells = 0;
    for row in rows(ROUGHNESS) {
        let (one, other) = (row[0].parse().unwrap(), row[1].parse().unwrap());
        let expected: f64 = row[2].parse().unwrap();
        let found = roughness(one, other);
        assert!(
            (found - expected).abs() < 1e-9,
            "{one} {other}: {found} {expected}"
        );
        cells += 1;
    }
    assert_eq!(cells, 125);
}

/// A tone of the chord on a course of the mandolin, in first position.
fn sounding(
    course: usize,
    chord: Option<Chord>,
    key: Key,
    fits: impl Fn(i32) -> bool,
) -> Option<Sounding> {
    let mandolin = Instrument::mandolin();
    (0..7_u8).find_map(|fret| {
        let midi = mandolin.sound(course, fret, Capo::NONE)?.midi();
        let found = place(&mandolin, Capo::NONE, &[tone(midi)], FIRST_POSITION)[0]?;
        (found.course == course && fits(midi)).then_some(Sounding {
            midi,
            place: Some(found),
            quarters: 1.0,
            fast: false,
            up: false,
            chord,
            key,
        })
    })
}

#[test]
fn open_courses_beside_the_melody_stand_to_the_chord_as_the_table_says() {
    // Cell by cell: under a melody of the chord's own tones, each open course as the neighbour of each of its neighbours.
    let mandolin = Instrument::mandolin();
    let names = ["G", "D", "A", "E"];
    let mut cells = 0;
    for row in rows(RING) {
        let chord: Chord = row[0].parse().unwrap();
        let mode = if chord.quality.is_minor() {
            Mode::Minor
        } else {
            Mode::Major
        };
        let key = Key::new(chord.root, mode);
        for course in 0..4_usize {
            for beside in [course.checked_sub(1), Some(course + 1)]
                .into_iter()
                .flatten()
            {
                let tones = |midi: i32| {
                    chord
                        .tones()
                        .any(|(_, name)| name.class().semitones() == midi.rem_euclid(12))
                };
                let Some(note) = (beside < 4)
                    .then(|| sounding(beside, Some(chord), key, tones))
                    .flatten()
                else {
                    continue;
                };
                let found = neighbours(&mandolin, Capo::NONE, &note);
                let here = found.iter().find(|one| one.course == course).unwrap();
                let column = match here.in_chord.unwrap() {
                    InChord::Fits => 1,
                    InChord::Colour => 2,
                    InChord::Clash { .. } => 3,
                };
                assert!(
                    row[column].split(' ').any(|name| name == names[course]),
                    "{} {}",
                    row[0],
                    names[course]
                );
                let chosen = drones(&mandolin, Capo::NONE, &[note], Drones::ByChord)[0];
                if let Some(drone) = chosen.drone {
                    assert!(
                        !row[3].split(' ').any(|name| name == names[drone.course]),
                        "{}",
                        row[0]
                    );
                }
                // What fits is chosen before what colours.
                if found
                    .iter()
                    .any(|one| one.in_chord == Some(InChord::Fits) && one.roughness < 0.85)
                {
                    assert_eq!(chosen.why, Why::Chord, "{} on {}", row[0], names[beside]);
                }
                cells += 1;
            }
        }
    }
    assert_eq!(cells, 60); // ten chords, six pairs of a melody's course and its neighbour
}

#[test]
fn the_rule_of_thumb_comes_out_for_the_tunes_of_the_ryan_collection() {
    // The sheet: "key A: open A and E; key G: open G and D; key D: open D and A".
    let names = ["G", "D", "A", "E"];
    let book = abc::read(include_bytes!("fixtures/ryans/ryans.abc"));
    let mandolin = Instrument::mandolin();
    for row in rows(KEYS) {
        let key: Key = row[0].parse().unwrap();
        let rule: Vec<&str> = row[1].split(' ').collect();
        let wishes = Wishes {
            drones: Drones::Plain,
            ..Wishes::default()
        };
        let (mut tunes, mut both) = (0, 0);
        for read in &book.tunes {
            let tab = read.tune.arranged(&mandolin, Capo::NONE, wishes);
            if tab.notes.iter().any(|note| note.note.key != key) {
                continue;
            }
            let courses = tab.drone_report().courses.into_iter();
            let rang: Vec<&str> = courses.map(|course| names[course]).collect();
            let title = &read.tune.title;
            assert!(
                rang.iter().all(|name| rule.contains(name)),
                "{title}: {rang:?}"
            );
            tunes += 1;
            both += usize::from(rang.len() == rule.len());
        }
        println!("{}: both ring in {both} of {tunes} tunes", row[0]);
        // A tune may keep to where only one lies beside it. The bound is our own.
        assert!(tunes > 9 && both * 10 >= tunes * 9, "{both} of {tunes}");
    }
}
