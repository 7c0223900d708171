//! The sheet of trade facts: first shapes with their fingers, chops, open strings. Tags of the rows: `C` common practice,
//! `X` worked out; see `fixtures/README.md`.

#![allow(clippy::unwrap_used)] // the facts are our own files

use std::collections::BTreeMap;

use fourcourse::frets::{
    Capo, InChord, InKey, Instrument, Order, Shape, every_shape, ring_in_chord, ring_in_key, shapes,
};
use fourcourse::theory::{Chord, Key};

use super::rows;

const SHAPES: &str = include_str!("fixtures/trade-shapes.tsv");
const RING: &str = include_str!("fixtures/trade-ring.tsv");
const KEYS: &str = include_str!("fixtures/trade-keys.tsv");

/// A shape of the sheet: frets, fingers where it gives them, MIDI keys, missing tones.
struct Listed<'a> {
    frets: &'a str,
    fingers: &'a str,
    midi: &'a str,
    missing: &'a str,
}

/// The sheet's shapes by instrument and chord, of one kind.
fn listed(kind: &str) -> BTreeMap<(&str, &str), Vec<Listed<'static>>> {
    let mut by_chord: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for row in rows(SHAPES).filter(|row| row[2] == kind) {
        by_chord.entry((row[0], row[1])).or_default().push(Listed {
            frets: row[3],
            fingers: row[4],
            midi: row[5],
            missing: row[6],
        });
    }
    by_chord
}

fn instrument(name: &str) -> Instrument {
    let id = match name {
        "five-string banjo" => "banjo".to_owned(),
        _ => name.replace(' ', "-"),
    };
    Instrument::by_id(&id).unwrap()
}

fn spaced<T: ToString>(items: impl IntoIterator<Item = T>) -> String {
    let items: Vec<String> = items.into_iter().map(|item| item.to_string()).collect();
    items.join(" ")
}

fn frets(shape: &Shape) -> String {
    spaced(
        shape
            .frets
            .iter()
            .map(|fret| fret.map_or("x".into(), |fret| fret.to_string())),
    )
}

fn fingers(shape: &Shape) -> String {
    spaced(
        shape
            .fingers
            .iter()
            .map(|finger| finger.map_or(0, |finger| finger.number())),
    )
}

fn find(instrument_name: &str, symbol: &str, order: Order, most: usize) -> Vec<Shape> {
    let chord: Chord = symbol.parse().unwrap();
    shapes(&instrument(instrument_name), Capo::NONE, chord, order, most)
}

fn every(instrument_name: &str, symbol: &str) -> Vec<Shape> {
    let chord: Chord = symbol.parse().unwrap();
    every_shape(
        &instrument(instrument_name),
        Capo::NONE,
        chord,
        Order::Beginner,
    )
}

#[test]
fn the_first_shape_is_one_that_the_sheet_lists_with_its_fingers() {
    let mut wrong = Vec::new();
    for ((name, symbol), sheet) in listed("open") {
        let first = &find(name, symbol, Order::Beginner, 1)[0];
        let same: Vec<_> = sheet
            .iter()
            .filter(|row| row.frets == frets(first))
            .collect();
        let fingered = same
            .iter()
            .any(|row| row.fingers.is_empty() || row.fingers == fingers(first));
        if !fingered {
            wrong.push(format!(
                "{name} {symbol}: {} ({})",
                frets(first),
                fingers(first)
            ));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn the_first_chop_is_one_that_the_sheet_lists_with_its_fingers() {
    let open = listed("open");
    let mut wrong = Vec::new();
    for ((name, symbol), mut sheet) in listed("chop") {
        // A 2 2 4 5 and B 4 1 2 2 have nothing open either.
        let open = open.get(&(name, symbol)).into_iter().flatten();
        sheet.extend(open.map(|row| Listed { ..*row }));
        let first = &find(name, symbol, Order::Chops, 1)[0];
        assert!(first.movable);
        let same = sheet.iter().filter(|row| row.frets == frets(first));
        if !same
            .clone()
            .any(|row| row.fingers.is_empty() || row.fingers == fingers(first))
        {
            wrong.push(format!(
                "{name} {symbol}: {} ({})",
                frets(first),
                fingers(first)
            ));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn every_shape_of_the_sheet_is_found_with_its_notes_and_what_it_lacks() {
    for kind in ["open", "chop"] {
        for ((name, symbol), sheet) in listed(kind) {
            let all = every(name, symbol);
            for row in sheet {
                let shape = all.iter().find(|shape| frets(shape) == row.frets);
                let shape = shape.unwrap_or_else(|| panic!("{name} {symbol} {}", row.frets));
                assert_eq!(spaced(shape.notes.iter().map(|note| note.midi())), row.midi);
                let missing = shape
                    .missing
                    .iter()
                    .map(|degree| format!("{degree:?}").to_lowercase());
                let missing = spaced(missing).replace("major", "").replace("minor", "");
                assert_eq!(missing, row.missing, "{name} {symbol} {}", row.frets);
            }
        }
    }
}

#[test]
fn the_mandolin_fingers_of_the_sheet_are_those_of_the_shapes() {
    let mut wrong = Vec::new();
    for kind in ["open", "chop"] {
        for ((name, symbol), sheet) in listed(kind) {
            if name != "mandolin" {
                continue;
            }
            let all = every(name, symbol);
            for row in sheet.iter().filter(|row| !row.fingers.is_empty()) {
                let shape = all.iter().find(|shape| frets(shape) == row.frets).unwrap();
                let fits =
                    |other: &Listed| other.frets == row.frets && other.fingers == fingers(shape);
                if !sheet.iter().any(fits) {
                    wrong.push(format!("{symbol} {} ({})", row.frets, fingers(shape)));
                }
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn open_strings_over_a_chord_fit_colour_or_clash_as_the_sheet_says() {
    let mandolin = Instrument::mandolin();
    for row in rows(RING) {
        let chord: Chord = row[0].parse().unwrap();
        let ring = ring_in_chord(&mandolin, Capo::NONE, chord);
        let cell = |wanted: fn(InChord) -> bool| {
            let strings = ring.iter().filter(|open| wanted(open.standing));
            spaced(strings.map(|open| open.note.name))
        };
        assert_eq!(cell(|s| s == InChord::Fits), row[1], "{}", row[0]);
        assert_eq!(cell(|s| s == InChord::Colour), row[2], "{}", row[0]);
        assert_eq!(
            cell(|s| matches!(s, InChord::Clash { .. })),
            row[3],
            "{}",
            row[0]
        );
    }
}

#[test]
fn the_drones_of_a_key_are_those_of_the_rule_of_thumb() {
    for row in rows(KEYS) {
        let key: Key = row[0].parse().unwrap();
        let ring = ring_in_key(&Instrument::mandolin(), Capo::NONE, key);
        let drones = ring.iter().filter(|open| open.standing == InKey::Drone);
        let mut drones: Vec<String> = drones.map(|open| open.note.name.to_string()).collect();
        let mut sheet: Vec<&str> = row[1].split(' ').collect();
        drones.sort();
        sheet.sort_unstable();
        assert_eq!(drones, sheet, "{}", row[0]);
    }
}
