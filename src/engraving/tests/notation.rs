//! Beams, stems, accidentals, signatures and clefs, by worked examples.

use std::collections::HashMap;

use super::super::beam::groups;
use super::super::measure::{Kind, Measure};
use super::super::pen::Pen;
use super::super::pitch::{Clef, accidentals, signature};
use super::super::staff::{Notes, Stem};
use super::*;
use crate::theory::Key;

/// The sizes of the groups under a beam of the first bar.
fn beams(metre: &str, bar: &str) -> Vec<usize> {
    let tune = read(&format!("X:1\nT:Beams\nM:{metre}\nL:1/8\nK:C\n{bar}|]\n"));
    let tab = arranged(&tune, &Instrument::mandolin(), Version::Plain);
    let struck: HashMap<_, _> = tab
        .notes
        .iter()
        .enumerate()
        .map(|(i, note)| ((note.note.bar, note.note.at), i))
        .collect();
    let instrument = Instrument::mandolin();
    let piece = Piece::of(&tune, &tab, &instrument);
    let (metre, offset) = (tune.metres()[0], tune.offsets()[0]);
    let measure = Measure::new(piece, 0, metre, offset, &struck);
    groups(&measure.events, metre, offset)
        .into_iter()
        .map(|group| group.len())
        .collect()
}

/// Worked examples of beams by the beat (common practice).
#[test]
fn beams_show_the_beat_of_every_metre() {
    assert_eq!(beams("4/4", "EFGA BAGF"), [4, 4]);
    assert_eq!(beams("4/4", "E2FG A2GF"), [2, 2]);
    assert_eq!(beams("2/2", "EFGA BAGF"), [4, 4]);
    assert_eq!(beams("6/8", "EFG AGF"), [3, 3]);
    assert_eq!(beams("9/8", "EFG AGF EFG"), [3, 3, 3]);
    assert_eq!(beams("6/8", "E2G A2F"), [0; 0]);
    assert_eq!(beams("3/4", "EFGA GF"), [2, 2, 2]);
    assert_eq!(beams("2/4", "EFGA"), [2, 2]);
    assert_eq!(beams("7/8", "EFG AG FE"), [3, 2, 2]);
    assert_eq!(beams("4/4", "E/F/G/A/ BA G2F2"), [4, 2]);
    assert_eq!(beams("4/4", "(3EFG AB cBAG"), [3, 2, 4]);
    assert_eq!(beams("4/4", "EzGA zAGF"), [2, 2]);
    // Over the middle of the bar no beam goes.
    assert_eq!(beams("4/4", "E2FGABG2"), [2, 2]);
}

/// Direction and length in staff spaces of the stems of the first bar, and its accidentals.
fn staff(text: &str) -> (String, String) {
    let tune = read(text);
    let instrument = Instrument::mandolin();
    let tab = arranged(&tune, &instrument, Version::Plain);
    let struck: HashMap<_, _> = tab
        .notes
        .iter()
        .enumerate()
        .map(|(i, note)| ((note.note.bar, note.note.at), i))
        .collect();
    let piece = Piece::of(&tune, &tab, &instrument);
    let (key, metre, paper) = (tune.key, tune.metre, paper(388.0));
    let mut measure = Measure::new(piece, 0, metre, Ticks::ZERO, &struck);
    let left = vec![0.0; measure.events.len()];
    measure.space(piece, &paper, &left);
    measure.lay(&paper, 0.0, 1.0, &left);
    let pen = Pen::new(piece, &paper);
    let notes = Notes::of(&pen, &measure, key, Clef::of(&instrument), 7.5);
    let stem = |stem: &Option<Stem>| stem.map_or('-', |stem| if stem.up { 'u' } else { 'd' });
    let sign = |signs: Vec<Option<crate::theory::Accidental>>| match signs.first() {
        Some(Some(sign)) => sign.semitones().to_string(),
        _ => ".".to_owned(),
    };
    let signs = accidentals(piece, &measure, key)
        .into_iter()
        .map(sign)
        .collect::<Vec<_>>();
    (notes.stems.iter().map(stem).collect(), signs.join(" "))
}

/// The rules of stems: up below the middle line, down on it and above, and a beamed group as its farthest note (common
/// practice).
#[test]
fn stems_point_to_the_middle_of_the_staff() {
    let stems = |bar: &str| staff(&format!("X:1\nT:S\nM:4/4\nL:1/8\nK:C\n{bar}|]\n")).0;
    assert_eq!(stems("E2A2B2c2"), "uudd");
    assert_eq!(stems("A8"), "-");
    assert_eq!(stems("EFGc fedA"), "uuuudddd");
    assert_eq!(
        stems("GABA z4"),
        "uuuu--".chars().take(5).collect::<String>()
    );
}

#[test]
fn accidentals_hold_to_the_end_of_the_bar_and_what_is_tied_has_none() {
    let signs =
        |key: &str, bar: &str| staff(&format!("X:1\nT:S\nM:4/4\nL:1/4\nK:{key}\n{bar}|]\n")).1;
    assert_eq!(signs("G", "F=FFF"), ". 0 . .");
    assert_eq!(signs("C", "^F^FF=F"), "1 . . 0");
    // The same letter an octave higher has its own (ABC means it to be sharp too).
    assert_eq!(signs("C", "^Ff^fF"), "1 1 . .");
    assert_eq!(signs("F", "B=B_Bb"), ". 0 -1 .");
    assert_eq!(signs("C", "^F2-^F2"), "1 .");
}

/// Heights of the signs of signatures on the treble staff: F5 C5 G5 D5 A4 E5 B4, and B4 E5 A4 D5 G4 C5 F4 (any primer).
#[test]
fn signatures_stand_in_their_order_at_their_heights() {
    let clef = Clef::of(&Instrument::mandolin());
    let steps = |key: &str| -> Vec<i32> {
        let key: Key = key.parse().unwrap();
        signature(key, clef)
            .into_iter()
            .map(|(height, _)| clef.top - height)
            .collect()
    };
    let step = |name: &str| -> i32 {
        let pitch: crate::theory::Pitch = name.parse().unwrap();
        i32::from(pitch.octave) * 7 + pitch.name.letter.index()
    };
    let named = |names: &[&str]| names.iter().map(|name| step(name)).collect::<Vec<_>>();
    assert_eq!(
        steps("C#"),
        named(&["F5", "C5", "G5", "D5", "A4", "E5", "B4"])
    );
    assert_eq!(
        steps("Cb"),
        named(&["B4", "E5", "A4", "D5", "G4", "C5", "F4"])
    );
    assert_eq!(steps("A").len(), 3);
    assert_eq!(steps("C"), [0; 0]);
}

#[test]
fn instruments_read_the_clef_that_their_players_read() {
    let clef = |id: &str| Clef::of(&Instrument::by_id(id).unwrap());
    assert_eq!(
        (clef("mandolin").sign, clef("mandolin").raised),
        ('\u{e050}', 0)
    );
    assert_eq!(
        (clef("fiddle").sign, clef("ukulele").sign),
        ('\u{e050}', '\u{e050}')
    );
    assert_eq!(
        (clef("guitar").sign, clef("guitar").raised),
        ('\u{e052}', 1)
    );
    assert_eq!(clef("bass").sign, '\u{e062}');
    // The open E of a bass, E1, is read as E2: on the first ledger line below the F clef.
    assert_eq!(clef("bass").below_top("E1".parse().unwrap()), 10);
    assert_eq!(clef("mandolin").below_top("F5".parse().unwrap()), 0);
}

#[test]
fn measures_know_ties_and_tuplets() {
    let tune = read("X:1\nT:T\nM:4/4\nL:1/8\nK:C\n(3EFG A2- A4|A4 z4|]\n");
    let instrument = Instrument::mandolin();
    let tab = arranged(&tune, &instrument, Version::Plain);
    let struck: HashMap<_, _> = tab
        .notes
        .iter()
        .enumerate()
        .map(|(i, note)| ((note.note.bar, note.note.at), i))
        .collect();
    let piece = Piece::of(&tune, &tab, &instrument);
    let first = Measure::new(piece, 0, Metre::COMMON, Ticks::ZERO, &struck);
    assert!(
        first.events[..3]
            .iter()
            .all(|event| event.tuplet.is_some_and(|tuplet| tuplet.count == 3))
    );
    assert!(first.events[4].tied && matches!(first.events[4].kind, Kind::Note { tab: None, .. }));
}
