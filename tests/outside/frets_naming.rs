//! What a hand holds against music21's names, over every shape that the search finds for the vocabulary; capo and
//! transposing instruments against music21 and a MusicXML example.

#![allow(clippy::unwrap_used)] // the facts are our own files

use std::collections::{BTreeMap, BTreeSet, HashSet};

use fourcourse::frets::{Capo, Instrument, Order, capo_places, name_frets, shapes};
use fourcourse::theory::{
    Chord, ChordName, Degree, Interval, Key, Mode, Pitch, PitchClass, Quality, Reads, chord_names,
};

use super::rows;

const NAMES: &str = include_str!("fixtures/chord-names.tsv");
const CHORDS: &str = include_str!("fixtures/chords.tsv");
const CAPO: &str = include_str!("fixtures/capo.tsv");
const READS: &str = include_str!("fixtures/reads.tsv");

/// Notes over the lowest one, in semitones.
type Set = Vec<i32>;

/// What music21 calls sets of notes: the root in semitones over the lowest note, and the quality.
fn theirs() -> BTreeMap<Set, (i32, Quality)> {
    let number = |text: &str| text.parse::<i32>().unwrap();
    let row = |row: Vec<&str>| {
        let notes = row[0].split(' ').map(number).collect();
        let kind = if row[3] == "major" { "" } else { row[3] };
        (notes, (number(row[1]), kind.parse().unwrap()))
    };
    rows(NAMES).map(row).collect()
}

fn ours(set: &[i32]) -> Vec<ChordName> {
    let sounding = set.iter().copied().map(PitchClass::new);
    chord_names(PitchClass::new(0), sounding)
}

fn is(name: &ChordName, (root, quality): (i32, Quality)) -> bool {
    // music21 keeps the third in an eleventh and the eleventh in a thirteenth, see chords-disagree.tsv.
    let plain = |quality: Quality| {
        let eleventh = quality.has(Degree::Eleventh) || quality.has(Degree::Thirteenth);
        match eleventh {
            true => quality
                .without(Degree::MajorThird)
                .without(Degree::Eleventh),
            false => quality,
        }
    };
    name.chord.root.class() == PitchClass::new(root) && plain(name.chord.quality) == plain(quality)
}

#[test]
fn every_name_that_music21_gives_is_among_ours() {
    let wrong: Vec<_> = theirs()
        .into_iter()
        .filter(|(set, name)| !ours(set).iter().any(|ours| is(ours, *name)))
        .map(|(set, (root, quality))| format!("{set:?}: {root} {quality}"))
        .collect();
    assert_eq!(wrong, Vec::<String>::new());
}

/// Why our first name is another than music21's, for sets of which both are names. music21 stacks thirds until they close
/// and takes no notice of the bass; a player hears the bass first.
fn why(first: &ChordName, set: &[i32], (root, _): (i32, Quality)) -> Option<&'static str> {
    let complete = first.missing.is_empty();
    match first.lowest {
        Some(Degree::Root) if complete && root != 0 => Some("complete, with its root lowest"),
        None => Some("a plain triad over a bass"),
        Some(Degree::MajorThird | Degree::Fifth) if complete && root != 0 => {
            Some("the same notes over a third or fifth, not over a seventh")
        }
        _ if set.len() >= 6 => Some("six notes of a scale are many chords"),
        _ => None,
    }
}

#[test]
fn the_first_name_is_music21s_but_for_reasons_that_are_known() {
    let mut reasons: BTreeMap<&str, usize> = BTreeMap::new();
    let mut wrong = Vec::new();
    for (set, name) in theirs() {
        let first = &ours(&set)[0];
        if is(first, name) {
            *reasons.entry("same").or_default() += 1;
        } else if let Some(why) = why(first, &set, name) {
            *reasons.entry(why).or_default() += 1;
        } else {
            wrong.push(format!(
                "{set:?}: ours {} ({:?}), theirs {name:?}",
                first.chord, first.missing
            ));
        }
    }
    assert_eq!(wrong, Vec::<String>::new(), "{reasons:?}");
    assert!(reasons["same"] >= 78, "{reasons:?}");
}

/// All shapes of all chords take minutes unoptimised: there only the first of each chord, and a part of the chords, are
/// tried. A step that is prime to the 12 roots still meets each quality on each instrument.
const STEP: usize = if cfg!(debug_assertions) { 7 } else { 1 };
const MOST: usize = if cfg!(debug_assertions) {
    30
} else {
    usize::MAX
};

/// Instruments that play whole chords, of which no two have the same intervals between their courses.
const NECKS: [&str; 5] = ["mandolin", "guitar", "ukulele", "baritone-ukulele", "banjo"];

#[test]
fn every_shape_that_is_found_for_a_chord_is_named_as_that_chord() {
    // One spelling of each root.
    let plain = |row: &Vec<&str>| {
        ["C#", "D#", "Gb", "G#", "A#", "Cb"]
            .iter()
            .all(|&root| root != row[1])
    };
    let chords: BTreeSet<&str> = rows(CHORDS).filter(plain).map(|row| row[0]).collect();
    let mut seen: HashSet<(Vec<i32>, i32, Quality)> = HashSet::new();
    let mut wrong = Vec::new();
    let mut count = 0_usize;
    for (place, symbol) in chords.into_iter().enumerate() {
        let chord: Chord = symbol.parse().unwrap();
        for (i, id) in NECKS.into_iter().enumerate() {
            if (place + i) % STEP != 0 {
                continue;
            }
            let instrument = Instrument::by_id(id).unwrap();
            for shape in shapes(&instrument, Capo::NONE, chord, Order::Beginner, MOST) {
                count += 1;
                let held = name_frets(&instrument, Capo::NONE, &shape.frets).unwrap();
                let sounds = |notes: &[Pitch]| notes.iter().map(|n| n.midi()).collect::<Vec<_>>();
                assert_eq!(
                    sounds(&held.notes),
                    sounds(&shape.notes),
                    "{symbol} {shape}"
                );
                let lowest = shape.notes.iter().map(|note| note.midi()).min().unwrap();
                let mut set: Vec<i32> = shape
                    .notes
                    .iter()
                    .map(|n| (n.midi() - lowest) % 12)
                    .collect();
                set.sort_unstable();
                set.dedup();
                let root = (chord.root.class().semitones() - lowest).rem_euclid(12);
                // Of two notes nobody hears a chord whose root is not one of them.
                let bare = set.len() == 2 && shape.missing.contains(&Degree::Root);
                if bare || !seen.insert((set, root, chord.quality)) {
                    continue;
                }
                let same = held.names.iter().any(|name| {
                    name.chord.root.class() == chord.root.class()
                        && name.chord.quality == chord.quality
                        && name.missing == shape.missing
                        && name.lowest == shape.lowest
                });
                if !same {
                    wrong.push(format!("{} {symbol} {shape}", instrument.id));
                }
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
    assert!(count > 8_000, "{count}");
}

#[test]
fn root_position_triads_sevenths_and_their_slash_names_come_first_on_every_root() {
    for root in 0..12 {
        for (kind, tones) in [
            ("", &[0, 4, 7][..]),
            ("m", &[0, 3, 7]),
            ("7", &[0, 4, 7, 10]),
            ("m7", &[0, 3, 7, 10]),
            ("maj7", &[0, 4, 7, 11]),
        ] {
            for lowest in tones {
                let sounding = tones.iter().map(|tone| PitchClass::new(root + tone));
                let first = chord_names(PitchClass::new(root + lowest), sounding).remove(0);
                // A minor seventh over its third is a sixth chord in root position.
                let quality = match (kind, lowest) {
                    ("m7", 3) => "6".parse().unwrap(),
                    _ => kind.parse::<Quality>().unwrap(),
                };
                assert_eq!(first.chord.quality, quality, "{root} {kind} over {lowest}");
            }
        }
    }
}

#[test]
fn capo_and_shapes_are_those_of_the_table() {
    let mut table: BTreeMap<&str, Vec<(u8, &str)>> = BTreeMap::new();
    for row in rows(CAPO) {
        table
            .entry(row[0])
            .or_default()
            .push((row[1].parse().unwrap(), row[2]));
    }
    assert_eq!(table.len(), 12);
    for (key, places) in table {
        let ours = capo_places(key.parse().unwrap());
        let ours: Vec<_> = ours
            .iter()
            .map(|p| (p.fret, p.shapes.to_string()))
            .collect();
        let theirs: Vec<_> = places
            .iter()
            .map(|&(fret, key)| (fret, key.to_owned()))
            .collect();
        assert_eq!(ours, theirs, "{key}");
    }
}

#[test]
fn the_trade_sheet_has_the_same_capo_positions() {
    // Sheet of trade facts, worked out: G shapes 2 = A, 3 = Bb, 4 = B, 5 = C; C shapes 2 = D, 4 = E; D shapes 2 = E.
    for (shapes, fret, sounds) in [
        ("G", 2, "A"),
        ("G", 3, "Bb"),
        ("G", 4, "B"),
        ("G", 5, "C"),
        ("C", 2, "D"),
        ("C", 4, "E"),
        ("D", 2, "E"),
    ] {
        let places = capo_places(sounds.parse().unwrap());
        let there = places.iter().find(|place| place.fret == fret).unwrap();
        assert_eq!(there.shapes.to_string(), shapes, "{sounds}");
    }
}

#[test]
fn minor_and_modal_keys_are_held_as_open_chords_of_their_own() {
    // Common practice: minor as Am, Em or Dm, the modes on A, D, E and G, mixolydian on C too.
    for (key, expected) in [
        ("Dm", "0 Dm, 5 Am, 10 Em"),
        ("Gm", "3 Em, 5 Dm, 10 Am"),
        ("C#m", "4 Am, 9 Em, 11 Dm"),
        ("B dorian", "2 A dorian, 4 G dorian, 7 E dorian, 9 D dorian"),
        (
            "A mixolydian",
            "0 A mixolydian, 2 G mixolydian, 5 E mixolydian, 7 D mixolydian, 9 C mixolydian",
        ),
    ] {
        let places = capo_places(key.parse().unwrap()).into_iter();
        let places = places.map(|place| format!("{} {}", place.fret, place.shapes));
        assert_eq!(places.collect::<Vec<_>>().join(", "), expected, "{key}");
    }
}

#[test]
fn transposing_instruments_read_what_music21_and_musicxml_write() {
    let mut count = 0;
    for row in rows(READS) {
        let [instrument, pitched, octaves, sounding, written, signature] = row[..] else {
            panic!("{row:?}");
        };
        let reads = Reads::ALL
            .into_iter()
            .find(|reads| reads.id() == pitched)
            .unwrap();
        let (sounding, written): (Pitch, Pitch) =
            (sounding.parse().unwrap(), written.parse().unwrap());
        let signature: i32 = signature.parse().unwrap();
        // The MusicXML example is in C; music21's rows are each in the key of their note.
        let key = match instrument.starts_with("MusicXML") {
            true => "C".parse().unwrap(),
            false => Key::new(sounding.name, Mode::Major),
        };
        let mut ours = reads.written(key).pitch(sounding);
        for _ in 0..octaves.parse().unwrap() {
            ours = ours + Interval::OCTAVE;
        }
        assert_eq!(ours.midi(), written.midi(), "{row:?}");
        // Keys of more than six signs are written on the other side.
        if signature.abs() <= 6 {
            assert_eq!(ours, written, "{row:?}");
            assert_eq!(reads.written_key(key).signature(), signature, "{row:?}");
        }
        count += 1;
    }
    assert!(count > 100);
}
