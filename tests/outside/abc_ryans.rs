//! 265 tunes of the Ryan collection (Boston 1883) with the notes that music21 and a plain reader of the standard find;
//! see `fixtures/README.md`. Where the two differ, the fixture sides with the standard and says why.
#![allow(clippy::unwrap_used)] // a fixture that is not as it should be fails the test

use fourcourse::formats::{abc, readout};
use serde_json::Value;

const BOOK: &[u8] = include_bytes!("fixtures/ryans/ryans.abc");
const FACTS: &str = include_str!("fixtures/ryans/ryans-music21.jsonl");

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

#[test]
fn the_notes_of_the_ryan_collection_are_those_of_other_readers() {
    let book = abc::read(BOOK);
    let facts: Vec<Value> = FACTS
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(book.tunes.len(), facts.len());
    let mut wrong = Vec::new();
    for (read, fact) in book.tunes.iter().zip(&facts) {
        assert_eq!(read.tune.title, text(&fact["title"]));
        if fact.get("strange").is_some() {
            continue; // stray characters: one reading among others
        }
        let mut notes: Vec<_> = readout::notes(&read.tune, false)
            .iter()
            .map(|n| (n.at, readout::fraction(n.length), n.midi))
            .collect();
        notes.sort();
        let notes: Vec<_> = notes
            .iter()
            .map(|(at, length, midi)| (readout::fraction(*at), length.clone(), i64::from(*midi)))
            .collect();
        let expected: Vec<_> = fact["notes"]
            .as_array()
            .unwrap()
            .iter()
            .map(|n| {
                (
                    text(&n[0]).to_owned(),
                    text(&n[1]).to_owned(),
                    n[2].as_i64().unwrap(),
                )
            })
            .collect();
        if notes != expected {
            let at = notes.iter().zip(&expected).position(|(a, b)| a != b);
            let at = at.unwrap_or(notes.len().min(expected.len()));
            wrong.push(format!(
                "{} {}: note {at}: {:?} instead of {:?}",
                fact["x"],
                fact["title"],
                notes.get(at),
                expected.get(at)
            ));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} differ:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
