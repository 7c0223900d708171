//! Tunings that players share, against a list whose rows name their source; see `fixtures/README.md`.

#![allow(clippy::unwrap_used)] // the facts are our own files

use std::collections::BTreeMap;

use fourcourse::frets::{Instrument, shared_tunings};

use super::rows;

const TUNINGS: &str = include_str!("fixtures/tunings.tsv");

#[test]
fn the_usual_tuning_and_the_shared_ones_are_those_of_the_list() {
    let mut listed: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for row in rows(TUNINGS) {
        listed.entry(row[0]).or_default().push(row[1]);
    }
    for instrument in Instrument::all() {
        let id = instrument.id;
        let usual: &[i8] = &[];
        let all = std::iter::once(&usual).chain(shared_tunings(id));
        let ours: Vec<String> = all
            .map(|semitones| {
                let tuned = instrument.clone().retuned(semitones);
                let notes = tuned.courses.iter().map(|course| course.open.to_string());
                notes.collect::<Vec<_>>().join(" ")
            })
            .collect();
        match listed.get(id) {
            Some(sheet) => assert_eq!(ours, *sheet, "{id}"),
            None => assert_eq!(ours.len(), 1, "{id} has tunings that no source lists"),
        }
    }
}
