//! Shapes of any chord on any neck keep to the hand and to the chord; odd necks do no harm.

#![allow(clippy::unwrap_used)] // the names are our own

use std::collections::HashMap;

use fourcourse::frets::{
    Capo, Finger, Instrument, MAX_COURSES, Order, Shape, Texture, ring_in_chord, shapes,
};
use fourcourse::theory::{Chord, Letter, NoteName, Pitch, Quality};
use proptest::prelude::*;

fn name() -> impl Strategy<Value = NoteName> {
    const NAMES: [&str; 14] = [
        "C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B", "C#", "G#",
    ];
    prop::sample::select(&NAMES[..]).prop_map(|name| name.parse().unwrap())
}

fn quality() -> impl Strategy<Value = Quality> {
    const QUALITIES: [&str; 25] = [
        "", "m", "7", "m7", "maj7", "6", "m6", "sus2", "sus4", "7sus4", "dim", "dim7", "m7b5",
        "aug", "aug7", "add9", "9", "m9", "maj9", "11", "13", "7b9", "7#9", "6/9", "5",
    ];
    let read = |quality: &str| format!("C{quality}").parse::<Chord>().unwrap().quality;
    prop::sample::select(&QUALITIES[..]).prop_map(read)
}

fn chord() -> impl Strategy<Value = Chord> {
    (name(), quality(), prop::option::weighted(0.2, name())).prop_map(|(root, quality, bass)| {
        Chord {
            bass,
            ..Chord::new(root, quality)
        }
    })
}

fn built_in() -> impl Strategy<Value = Instrument> {
    prop::sample::select(Instrument::all().collect::<Vec<_>>())
}

fn order() -> impl Strategy<Value = Order> {
    prop::sample::select(vec![Order::Beginner, Order::Chops])
}

/// What must be true of any shape.
fn keeps_the_rules(shape: &Shape, instrument: &Instrument, capo: Capo, chord: Chord, order: Order) {
    let tones: Vec<_> = chord.tones().map(|(_, name)| name.class()).collect();
    let sounding: Vec<usize> = (0..shape.frets.len())
        .filter(|&c| shape.frets[c].is_some())
        .collect();
    assert_eq!(sounding.len(), shape.notes.len());
    let lowest = shape.notes.iter().min_by_key(|note| note.midi()).unwrap();
    for (&course, note) in sounding.iter().zip(&shape.notes) {
        let sound = instrument
            .sound(course, shape.frets[course].unwrap(), capo)
            .unwrap();
        assert_eq!(sound.midi(), note.midi());
        let foreign = !tones.contains(&note.name.class());
        assert!(
            !foreign || note == lowest && shape.lowest.is_none(),
            "{shape} for {chord:?}"
        );
    }
    let ground = instrument.texture == Texture::RootAndFifth;
    for (degree, name) in chord.tones().filter(|_| !ground) {
        let sounds = shape
            .notes
            .iter()
            .any(|note| note.name.class() == name.class());
        assert_eq!(
            sounds,
            !shape.missing.contains(&degree),
            "{shape} {degree:?}"
        );
    }
    assert!(shape.span_mm <= 120.0);
    assert_eq!(shape.movable, !shape.frets.contains(&Some(0)));
    assert!(order == Order::Beginner || shape.movable);

    let mut at: HashMap<Finger, (u8, Vec<usize>)> = HashMap::new();
    for (course, finger) in shape.fingers.iter().enumerate() {
        let fret = shape.frets[course].unwrap_or(0);
        assert_eq!(finger.is_some(), fret > 0, "{shape}");
        if let Some(finger) = *finger {
            let held = at.entry(finger).or_insert((fret, vec![]));
            assert_eq!(held.0, fret, "one finger on two frets: {shape}");
            held.1.push(course);
        }
    }
    for (finger, (fret, _)) in &at {
        for (other, (other_fret, _)) in &at {
            assert!(
                finger >= other || fret <= other_fret,
                "crossed fingers: {shape}"
            );
        }
    }
    let flat = at.values().filter(|(_, courses)| courses.len() > 1);
    assert_eq!(flat.count(), shape.barres.len());
    for barre in &shape.barres {
        let (fret, courses) = &at[&barre.finger];
        assert_eq!(
            (barre.fret, barre.from, barre.to),
            (*fret, courses[0], courses[courses.len() - 1])
        );
        let under = &shape.frets[barre.from..=barre.to];
        assert!(
            under.iter().all(|f| f.is_none_or(|f| f >= barre.fret)),
            "{shape}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn every_shape_keeps_to_the_chord_and_to_the_hand(
        instrument in built_in(), chord in chord(), order in order(), capo in 0_u8..6,
    ) {
        let capo = Capo::at(capo);
        let found = shapes(&instrument, capo, chord, order, 40);
        for shape in &found {
            keeps_the_rules(shape, &instrument, capo, chord, order);
        }
        prop_assert!(found.is_sorted_by(|a, b| a.cost <= b.cost));
        for (i, shape) in found.iter().enumerate() {
            prop_assert!(found[..i].iter().all(|other| other.frets != shape.frets));
        }
    }

    #[test]
    fn a_chord_has_a_shape_on_every_instrument_for_chords(root in name(), quality in quality()) {
        for instrument in Instrument::all() {
            let found = shapes(&instrument, Capo::NONE, Chord::new(root, quality), Order::Beginner, 1);
            prop_assert!(!found.is_empty(), "{} {root} {quality:?}", instrument.id);
        }
    }

    #[test]
    fn a_capo_is_a_neck_that_starts_higher(chord in chord(), capo in 1_u8..8) {
        // The hand feels narrower frets up the neck, so that only what sounds is compared.
        let guitar = Instrument::by_id("guitar").unwrap();
        let open: Vec<Pitch> = (0..6).map(|c| guitar.sound(c, 0, Capo::at(capo)).unwrap()).collect();
        let raised = guitar.clone().tuned(&open);
        for shape in shapes(&guitar, Capo::at(capo), chord, Order::Beginner, 5) {
            for course in 0..6 {
                let fret = shape.frets[course].unwrap_or(0);
                let (a, b) = (guitar.sound(course, fret, Capo::at(capo)), raised.sound(course, fret, Capo::NONE));
                prop_assert_eq!(a.map(Pitch::midi), b.map(Pitch::midi));
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn odd_necks_do_no_harm(
        open in prop::collection::vec((0_usize..7, -3_i8..9), 0..16),
        chord in chord(), order in order(), fret in any::<u8>(), short in any::<u8>(),
        frets in any::<u8>(), scale_mm in prop::num::f64::ANY, spacing_mm in prop::num::f64::ANY, most in 0_usize..9,
    ) {
        let pitches: Vec<Pitch> = open
            .iter()
            .map(|&(letter, octave)| Pitch::new(NoteName::new(Letter::ALL[letter], "C".parse::<NoteName>().unwrap().accidental), octave))
            .collect();
        let neck = Instrument { frets, scale_mm, spacing_mm, frets_a_finger: fret, ..Instrument::mandolin() };
        let neck = neck.tuned(&pitches);
        prop_assert!(neck.courses.len() <= MAX_COURSES);
        for capo in [Capo::NONE, Capo { fret, short }] {
            let found = shapes(&neck, capo, chord, order, most);
            prop_assert!(found.len() <= most);
            ring_in_chord(&neck, capo, chord);
        }
    }
}

#[test]
fn necks_in_fifths_share_their_shapes() {
    let mandolin = Instrument::mandolin();
    let same = |id: &str, up: i8, steps: i8| {
        let other = Instrument::by_id(id).unwrap();
        for symbol in [
            "G", "C", "D", "A", "E", "Em", "Am", "Bm", "F", "B7", "D7", "A7", "Gm", "Bb", "Cmaj7",
        ] {
            let chord: Chord = symbol.parse().unwrap();
            let root = chord.root + fourcourse::theory::Interval::new(steps, up);
            let here = &shapes(&mandolin, Capo::NONE, chord, Order::Beginner, 1)[0];
            let there = &shapes(
                &other,
                Capo::NONE,
                Chord { root, ..chord },
                Order::Beginner,
                1,
            )[0];
            assert_eq!(
                (&here.frets, &here.fingers),
                (&there.frets, &there.fingers),
                "{symbol} on {id}"
            );
        }
    };
    same("octave-mandolin", 0, 0);
    same("mandola", -7, -4);
    same("tenor-banjo", -7, -4);
    same("irish-tenor-banjo", 0, 0);
}

#[test]
fn twelve_courses_and_thirty_frets_are_searched() {
    let harp = ["C", "E", "G"].map(|name| name.parse::<NoteName>().unwrap());
    let octaves = (3_i8..7).flat_map(|octave| harp.map(|name| Pitch::new(name, octave)));
    let neck = Instrument {
        frets: 30,
        ..Instrument::mandolin()
    };
    let neck = neck.tuned(&octaves.collect::<Vec<_>>());
    let found = shapes(&neck, Capo::NONE, "C".parse().unwrap(), Order::Beginner, 12);
    assert_eq!(found[0].to_string(), "000000000000");
}
