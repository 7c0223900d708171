//! Pages of tunes that nobody would write.

use fourcourse::chart::{Version, Wishes};
use fourcourse::engraving::{Page, Paper, Piece};
use fourcourse::formats::abc;
use fourcourse::frets::{Capo, Instrument};

/// In time that grows with the notes: with their square, this would not come to an end.
#[test]
fn a_single_bar_of_thousands_of_notes_and_chords_is_laid_out() {
    let mut text = "X:1\nT:Endless\nM:4/4\nL:1/8\nK:D\nA|".to_owned();
    for line in 0..200 {
        let notes = ["\"D\"A", "\"G\"B/c/", "(3def", "\"A7\"=f-f"][line % 4];
        text.push_str(&format!("{}\n", notes.repeat(20)));
    }
    let tune = abc::read(text.as_bytes()).tunes.remove(0).tune;
    let notes: usize = tune.bars.iter().map(|bar| bar.notes.len()).sum();
    assert!(notes > 5_000 && tune.bars.len() < 4, "{notes}");
    let mandolin = Instrument::mandolin();
    let wishes = Version::ChordDrones.wishes(Wishes::default());
    let tab = tune.arranged(&mandolin, Capo::NONE, wishes);
    for staff in [false, true] {
        let paper = Paper {
            staff,
            fingers: true,
            ..Paper::default()
        };
        let piece = Piece::of(&tune, &tab, &mandolin);
        let page = Page::of(piece, &paper);
        let struck = page.spots.iter().filter(|spot| !spot.figures.is_empty());
        assert_eq!(struck.count(), tab.notes.len());
    }
}
