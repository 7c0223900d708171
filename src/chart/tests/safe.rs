//! What to keep strumming when a change was missed.

use crate::chart::{Changes, safe_over};

use super::tune;

/// The chord and note for all of a tune in G, a bar for each word.
fn safe(text: &str) -> Option<(String, String)> {
    let tune = tune(text);
    let playing = tune.playing();
    let changes = Changes::of(&tune, &playing);
    let safe = safe_over(&tune, &playing, &changes, 0..playing.bars.len())?;
    Some((safe.chord.to_string(), safe.note.to_string()))
}

#[test]
fn over_the_three_chords_the_fifth_of_the_key_is_the_note() {
    // Worked out: in G, D belongs to G and D and is a second over C; G rubs with the F sharp of D.
    let (chord, note) = safe("a=G@1 b=C@1 c=G@1 d=D@1").unwrap();
    assert_eq!((chord.as_str(), note.as_str()), ("G5", "D"));
}

#[test]
fn over_one_chord_it_is_that_chord() {
    let (chord, note) = safe("a=Am@1 b c d").unwrap();
    assert_eq!((chord.as_str(), note.as_str()), ("Am", "A"));
}

#[test]
fn only_the_bars_that_are_asked_for_count() {
    let tune = tune("a=G@1 b c=F@1 d");
    let playing = tune.playing();
    let changes = Changes::of(&tune, &playing);
    let over = |bars| safe_over(&tune, &playing, &changes, bars);
    let f = over(2..4).unwrap();
    assert_eq!(f.chord.to_string(), "F");
    assert_eq!((f.chord_fit.fits, f.chord_fit.clashes), (1.0, 0.0));
    assert_eq!(over(2..9), None);
    assert_eq!(over(1..1), None);
}

#[test]
fn where_no_chord_sounds_nothing_is_safe() {
    assert_eq!(safe("a b c"), None);
}

#[test]
fn what_fits_and_what_clashes_are_shares_of_the_time() {
    let tune = tune("a=G@1 b=C@1 c=G@1 d=D@1");
    let playing = tune.playing();
    let changes = Changes::of(&tune, &playing);
    let safe = safe_over(&tune, &playing, &changes, 0..4).unwrap();
    assert_eq!((safe.note_fit.fits, safe.note_fit.clashes), (0.75, 0.0));
    // G: fits in three bars, rubs in the last; D as above.
    assert_eq!((safe.chord_fit.fits, safe.chord_fit.clashes), (0.75, 0.125));
}
