//! Keys and intervals, against two music libraries.

use fourcourse::theory::{Interval, Key, NoteName, Pitch};

use crate::rows;

const KEYS: &str = include_str!("fixtures/keys.tsv");
const INTERVALS: &str = include_str!("fixtures/intervals.tsv");

/// Every row of `keys.tsv`: what music21 10.5.0 and tonal 6.4.3 agree on.
#[test]
fn keys_have_the_signature_and_scale_that_two_libraries_agree_on() {
    let mut checked = 0;
    for row in rows(KEYS) {
        let key: Key = format!("{} {}", row[0], row[1]).parse().unwrap();
        let scale: Vec<NoteName> = row[3].split(' ').map(|n| n.parse().unwrap()).collect();
        assert_eq!(key.signature(), row[2].parse::<i32>().unwrap(), "{key}");
        assert_eq!(key.scale().to_vec(), scale, "{key}");
        for note in scale {
            assert_eq!(key.accidental(note.letter), note.accidental, "{key}");
            assert_eq!(key.spell(note.class()), note, "{key}");
        }
        checked += 1;
    }
    assert!(checked > 100);
}

fn pitch(text: &str) -> Option<Pitch> {
    let (name, octave) = NoteName::split(text)?;
    Some(Pitch::new(name, octave.parse().ok()?))
}

/// Every row of `intervals.tsv`: what music21 10.5.0 and tonal 6.4.3 agree on. An interval's number is its staff steps
/// and one.
#[test]
fn intervals_lead_where_two_libraries_agree() {
    let mut checked = 0;
    for row in rows(INTERVALS) {
        let digits = row[1].trim_start_matches(|c: char| !c.is_ascii_digit());
        let up: i8 = digits.parse::<i8>().unwrap() - 1;
        let steps = if row[1].starts_with('-') { -up } else { up };
        let interval = Interval::new(steps, row[2].parse().unwrap());
        let from = pitch(row[0]).unwrap();
        assert_eq!(Some(from + interval), pitch(row[3]), "{row:?}");
        checked += 1;
    }
    assert!(checked > 500);
}
