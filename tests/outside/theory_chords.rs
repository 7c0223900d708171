//! Spelling and reading of chords, against two music libraries.

use std::collections::BTreeSet;

use fourcourse::theory::{Accidentals, Chord, Naming, NotANoteName, NoteName, NoteStyle, Symbol};

use crate::rows;

const AGREED: &str = include_str!("fixtures/chords.tsv");
const APART: &str = include_str!("fixtures/chords-disagree.tsv");
const NAMES: &str = include_str!("fixtures/names.tsv");

fn notes(text: &str) -> Result<BTreeSet<NoteName>, NotANoteName> {
    text.split(' ').map(str::parse).collect()
}

fn tones(chord: Chord) -> BTreeSet<NoteName> {
    chord.tones().map(|(_, note)| note).collect()
}

/// Every row of `chords.tsv`: what music21 10.5.0 and tonal 6.4.3 agree on.
#[test]
fn chords_have_the_notes_that_two_libraries_agree_on() {
    let mut checked = 0;
    for row in rows(AGREED) {
        let chord: Chord = row[0].parse().unwrap();
        assert_eq!(chord.root, row[1].parse().unwrap(), "{}", row[0]);
        assert_eq!(Ok(tones(chord)), notes(row[3]), "{}", row[0]);
        checked += 1;
    }
    assert!(checked > 600);
}

/// Every row of `chords-disagree.tsv`: music21 10.5.0 keeps clashing notes in 11 and 13 chords that tonal 6.4.3 leaves
/// out. The house leaves them out, as both symbols are mostly played (common practice).
#[test]
fn chords_that_libraries_spell_apart_follow_the_one_without_the_clash() {
    let mut checked = 0;
    for row in rows(APART) {
        let chord: Chord = row[0].parse().unwrap();
        assert_eq!(Ok(tones(chord)), notes(row[4]), "{}", row[0]);
        checked += 1;
    }
    assert!(checked > 70);
}

/// Every row of `names.tsv`: spellings from the wild (common practice), most of them read alike by music21 10.5.0 or
/// tonal 6.4.3, as its third column says.
#[test]
fn spellings_from_the_wild_are_read_as_the_chords_they_mean() {
    let mut checked = 0;
    for row in rows(NAMES) {
        let written: Symbol = row[0].parse().unwrap_or_else(|e| panic!("{}: {e}", row[0]));
        let meant: Symbol = row[1].parse().unwrap();
        assert_eq!(written, meant, "{}", row[0]);
        checked += 1;
    }
    assert!(checked > 300);
}

/// The symbols of both tables, printed in every style that an English reader reads and read again.
#[test]
fn what_is_printed_is_read_back_as_the_same_chord() {
    for row in rows(AGREED).chain(rows(APART)) {
        let chord: Chord = row[0].parse().unwrap();
        for accidentals in [Accidentals::Ascii, Accidentals::Typographic] {
            let style = NoteStyle {
                naming: Naming::English,
                accidentals,
            };
            let printed = chord.in_style(style);
            assert_eq!(printed.parse(), Ok(chord), "{printed}");
        }
    }
}
