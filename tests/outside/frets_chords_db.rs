//! Guitar and ukulele shapes of an open data set (`@tombatossals/chords-db` 0.5.1, MIT): what people hold in practice must
//! be among what the search finds.

#![allow(clippy::unwrap_used)] // the facts are our own files

use fourcourse::frets::{Capo, Instrument, Order, Shape, every_shape};
use fourcourse::theory::Chord;
use serde_json::Value;

const GUITAR: &str = include_str!("fixtures/chords-db-guitar.json");
const UKULELE: &str = include_str!("fixtures/chords-db-ukulele.json");

/// Unoptimised, every fourth chord of the guitar has to do.
const STEP: usize = if cfg!(debug_assertions) { 4 } else { 1 };

fn numbers(list: &Value) -> Vec<i64> {
    list.as_array()
        .unwrap()
        .iter()
        .map(|n| n.as_i64().unwrap())
        .collect()
}

/// Positions of the data set that are not found, and how many there are in all.
fn not_found(id: &str, data: &str, step: usize) -> (Vec<String>, usize) {
    let neck = Instrument::by_id(id).unwrap();
    let data: Vec<Value> = serde_json::from_str(data).unwrap();
    let (mut lost, mut all) = (Vec::new(), 0);
    for entry in data.iter().step_by(step) {
        let symbol = entry["chord"].as_str().unwrap();
        let chord: Chord = symbol.parse().unwrap();
        let found = every_shape(&neck, Capo::NONE, chord, Order::Beginner);
        for position in entry["positions"].as_array().unwrap() {
            all += 1;
            let frets = numbers(&position["frets"]);
            let same = |shape: &&Shape| {
                let own = shape.frets.iter().map(|fret| fret.map_or(-1, i64::from));
                own.eq(frets.iter().copied())
            };
            let Some(shape) = found.iter().find(same) else {
                lost.push(format!("{symbol} {frets:?}"));
                continue;
            };
            let midi: Vec<i64> = shape.notes.iter().map(|note| note.midi().into()).collect();
            assert_eq!(midi, numbers(&position["midi"]), "{symbol} {frets:?}");
            let missing = shape.missing.len();
            let set_misses = position["missing"].as_array().unwrap().len();
            assert_eq!(missing, set_misses, "{symbol} {frets:?}");
        }
    }
    (lost, all)
}

#[test]
fn every_ukulele_shape_of_the_data_set_is_found() {
    let (lost, all) = not_found("ukulele", UKULELE, 1);
    assert!(all > 500);
    assert_eq!(lost, Vec::<String>::new());
}

/// Outside our limits: a ninth without its seventh, a course damped where no finger is near.
#[test]
fn nearly_every_guitar_shape_of_the_data_set_is_found() {
    let (lost, all) = not_found("guitar", GUITAR, STEP);
    assert!(all * STEP > 500);
    assert!(lost.len() * 100 <= all, "{} of {all}: {lost:?}", lost.len());
}
