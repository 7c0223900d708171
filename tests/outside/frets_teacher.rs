//! First shapes as a teacher of these instruments wants them (tag `C`, common practice; see `fixtures/README.md`), and what
//! no player would put up with.

#![allow(clippy::unwrap_used)] // the facts are our own file

use std::collections::BTreeMap;

use fourcourse::frets::{Capo, Finger, Instrument, Order, Shape, shapes};

use super::rows;

const SHAPES: &str = include_str!("fixtures/teacher-shapes.tsv");

fn find(id: &str, symbol: &str, order: Order, most: usize) -> Vec<Shape> {
    let neck = Instrument::by_id(id).unwrap();
    shapes(&neck, Capo::NONE, symbol.parse().unwrap(), order, most)
}

fn fingers(shape: &Shape) -> String {
    let number = |finger: &Option<Finger>| finger.map_or(0, Finger::number).to_string();
    shape.fingers.iter().map(number).collect()
}

/// Chords of a kind for which none of the first shapes is one of the list, fingers included.
fn wrong(kind: &str, order: Order, most: usize) -> Vec<String> {
    let mut by_chord: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for row in rows(SHAPES).filter(|row| row[2] == kind) {
        by_chord
            .entry((row[0], row[1]))
            .or_default()
            .push((row[3], row[4]));
    }
    assert!(!by_chord.is_empty());
    let mut wrong = Vec::new();
    for ((id, symbol), listed) in by_chord {
        let found = find(id, symbol, order, most);
        let wanted = |shape: &Shape| {
            let same = |(frets, held): &(&str, &str)| {
                *frets == shape.to_string() && (held.is_empty() || *held == fingers(shape))
            };
            listed.iter().any(same)
        };
        if !found.iter().any(wanted) {
            let first = &found[0];
            wrong.push(format!("{id} {symbol}: {first} ({})", fingers(first)));
        }
    }
    wrong
}

#[test]
fn the_first_shape_is_the_teachers() {
    assert_eq!(wrong("first", Order::Beginner, 1), [""; 0]);
}

/// Where the one sum of efforts puts another good shape before the teacher's.
#[test]
fn three_shapes_of_the_teacher_come_a_little_later() {
    assert_eq!(wrong("later", Order::Beginner, 4), [""; 0]);
}

#[test]
fn the_first_chop_is_the_teachers() {
    assert_eq!(wrong("chop", Order::Chops, 1), [""; 0]);
    assert_eq!(
        find("mandolin", "G", Order::Chops, 2)[1].to_string(),
        "x523"
    );
}

#[test]
fn a_wide_chop_without_a_fifth_falls_far_down() {
    for (symbol, wild) in [("G", "x527"), ("A", "2745")] {
        let found = find("mandolin", symbol, Order::Chops, 8);
        assert!(
            found.iter().all(|shape| shape.to_string() != wild),
            "{symbol}"
        );
    }
}

#[test]
fn a_shape_is_held_alike_wherever_it_moves() {
    let held = |symbol| fingers(&find("mandolin", symbol, Order::Beginner, 1)[0]);
    assert_eq!(held("Fm"), held("F#m"));
}

#[test]
fn a_bigger_chord_has_its_root() {
    for id in [
        "mandolin",
        "mandola",
        "tenor-banjo",
        "ukulele",
        "baritone-ukulele",
        "guitar",
    ] {
        for symbol in ["Fmaj7", "F6", "C7", "Am7", "Gm7", "F#m7b5", "Cmaj7", "G7"] {
            let first = &find(id, symbol, Order::Beginner, 1)[0];
            let root = symbol.parse::<fourcourse::theory::Chord>().unwrap().root;
            assert!(
                first.notes.iter().any(|note| note.name == root),
                "{id} {symbol} {first}"
            );
        }
    }
}

#[test]
fn a_slash_bass_is_left_to_others_where_the_neck_has_no_bass() {
    for (id, slash, plain) in [
        ("mandolin", "D/F#", "D"),
        ("ukulele", "G/B", "G"),
        ("ukulele", "Em/B", "Em"),
        ("ukulele", "D/F#", "D"),
    ] {
        let (with, without) = (
            &find(id, slash, Order::Beginner, 1)[0],
            &find(id, plain, Order::Beginner, 1)[0],
        );
        assert_eq!(with.frets, without.frets, "{id} {slash}");
        assert!(with.bass_left_out && !without.bass_left_out);
    }
    let guitar = &find("guitar", "D/F#", Order::Beginner, 1)[0];
    assert!(!guitar.bass_left_out);
}

#[test]
fn a_bow_sounds_two_neighbours_and_a_bass_root_and_fifth() {
    for symbol in ["G", "C", "D", "Em", "A7", "Bdim"] {
        for shape in find("fiddle", symbol, Order::Beginner, 12) {
            let sounding: Vec<_> = (0..4).filter(|&c| shape.frets[c].is_some()).collect();
            assert!(
                sounding.len() == 2 && sounding[1] == sounding[0] + 1,
                "{symbol} {shape}"
            );
        }
    }
    let first = |symbol| find("bass", symbol, Order::Beginner, 1)[0].to_string();
    // The root, and the fifth on the next course two frets up (common practice).
    assert_eq!(
        ["G", "C", "A", "F"].map(first),
        ["35xx", "x35x", "x02x", "13xx"]
    );
    assert_eq!(first("D/F#"), "2xxx");
}

#[test]
fn another_shape_is_held_otherwise_and_stays_in_reach() {
    for (id, symbol, none) in [
        ("mandolin", "Dm", "x001"),
        ("mandolin", "Ab", "x134"),
        ("banjo", "G", "x0000"),
        ("guitar", "A", "002220"),
        ("guitar", "D", "x00232"),
        ("mandolin", "G", "0027"),
        ("mandolin", "Gm", "0016"),
        ("mandolin", "A5", "2700"),
        ("mandolin", "Eb7", "0146"),
        ("baritone-ukulele", "D", "0272"),
    ] {
        let found = find(id, symbol, Order::Beginner, 12);
        assert!(
            found.iter().all(|shape| shape.to_string() != none),
            "{id} {symbol} {none}"
        );
    }
}

#[test]
fn the_octave_tenor_banjo_has_the_shapes_of_the_mandolin() {
    for symbol in [
        "G", "C", "D", "A", "E", "Em", "Am", "Bm", "F", "B7", "D7", "A7",
    ] {
        let first = |id| find(id, symbol, Order::Beginner, 1).remove(0);
        let (here, there) = (first("mandolin"), first("irish-tenor-banjo"));
        assert_eq!(here.frets, there.frets, "{symbol}");
        assert_eq!(here.notes[0].midi() - 12, there.notes[0].midi());
    }
}
