//! Transposing and chord numbers, against two music libraries.

use fourcourse::theory::{Accidental, Chord, Key, Number, ScaleDegree, Symbol, Transposition};

use crate::rows;

const TRANSPOSE: &str = include_str!("fixtures/transpose.tsv");
const NUMBERS: &str = include_str!("fixtures/numbers.tsv");

/// Every row of `transpose.tsv`: what music21 10.5.0 and tonal 6.4.3 agree on, both ways.
#[test]
fn progressions_move_to_the_chords_that_two_libraries_agree_on() {
    let mut checked = 0;
    for row in rows(TRANSPOSE) {
        let [from, to]: [Key; 2] = [row[0], row[1]].map(|key| key.parse().unwrap());
        let there = Transposition::between(from, to);
        let back = Transposition::between(to, from);
        for (home, away) in row[2].split(' ').zip(row[3].split(' ')) {
            let [home, away]: [Symbol; 2] = [home, away].map(|text| text.parse().unwrap());
            assert_eq!(there.symbol(home), away, "{row:?}");
            assert_eq!(back.symbol(away), home, "{row:?}");
        }
        checked += 1;
    }
    assert!(checked > 100);
}

/// A degree as the fixture writes it: flats or sharps, then the number.
fn degree(text: &str) -> Option<ScaleDegree> {
    let number = text.trim_start_matches(['b', '#']);
    let signs = i32::try_from(text.len() - number.len()).ok()?;
    let sign = if text.starts_with('b') { -signs } else { signs };
    ScaleDegree::new(number.parse().ok()?, Accidental::new(sign)?)
}

/// Every row of `numbers.tsv`: degrees on which music21 10.5.0 and tonal 6.4.3 agree.
#[test]
fn chords_have_the_numbers_that_two_libraries_agree_on() {
    let mut checked = 0;
    for row in rows(NUMBERS) {
        let key: Key = row[0].parse().unwrap();
        let chord: Chord = row[1].parse().unwrap();
        let number = Number::of(chord, key.tonic);
        assert_eq!(Some(number.root), degree(row[2]), "{row:?}");
        assert_eq!(number.quality, row[3].parse().unwrap(), "{row:?}");
        assert_eq!(number.bass, degree(row[4]), "{row:?}");
        assert_eq!(number.chord(key.tonic), chord, "{row:?}");
        assert_eq!(number.to_string().parse(), Ok(number), "{row:?}");
        checked += 1;
    }
    assert!(checked > 200);
}
