//! What is played again and again: worked examples, common practice.

use super::*;
use crate::formats::abc;

/// A reel of two parts of four bars, with what leads into them; `bars` are those of a part, the last one as it is left.
fn passage(abc: &str, first: usize, last: usize) -> (f64, f64) {
    let text = format!("X:1\nT:x\nL:1/4\nK:G\n{abc}\n");
    let tune = abc::read(text.as_bytes()).tunes.remove(0).tune;
    let playing = tune.playing();
    let bar = |number| playing.counted(number).unwrap();
    let (start, end) = playing.passage(bar(first), bar(last)).unwrap();
    (start.quarters(), end.quarters())
}

const REEL: &str = "M:4/4\n|:D|G4|G4|G4|G3:|\n|:B|d4|d4|d4|d3:|";

#[test]
fn a_part_is_played_from_its_own_pickup() {
    // "From the pickup": the first part begins at 0 with it, and lasts four bars; so does the second.
    assert_eq!(passage(REEL, 1, 4), (0.0, 16.0));
    assert_eq!(passage(REEL, 5, 8), (16.0, 32.0));
    assert_eq!(passage(REEL, 9, 12), (32.0, 48.0));
    assert_eq!(passage(REEL, 13, 16), (48.0, 64.0));
    assert_eq!(passage(REEL, 1, 16), (0.0, 64.0));
}

#[test]
fn a_line_in_the_middle_is_led_into_by_the_end_of_the_bar_before() {
    // The last two bars of a part, also those at the very end: seven quarters, and one that leads into them.
    assert_eq!(passage(REEL, 3, 4), (8.0, 16.0));
    assert_eq!(passage(REEL, 15, 16), (56.0, 64.0));
    // A single short bar.
    assert_eq!(passage(REEL, 16, 16), (60.0, 64.0));
}

#[test]
fn full_bars_need_nothing() {
    assert_eq!(passage(REEL, 1, 3), (1.0, 13.0));
    assert_eq!(passage(REEL, 2, 2), (5.0, 9.0));
    assert_eq!(passage("M:3/4\nG3|G3|G3|G3|", 1, 4), (0.0, 12.0));
}

#[test]
fn a_crooked_bar_stays_short() {
    let crooked = "M:4/4\nG4|G4|G2|G4|G4|G4|";
    assert_eq!(passage(crooked, 1, 3), (0.0, 10.0));
    assert_eq!(passage(crooked, 3, 4), (8.0, 14.0));
}

#[test]
fn where_nothing_comes_before_it_ends_with_the_pickup_that_leads_on() {
    // A first part with no pickup, a second part with one.
    let tune = "M:3/4\nG3|G3|G3|G2||\n|:B|d3|d3|d3|d2:|";
    assert_eq!(passage(tune, 1, 4), (0.0, 12.0));
    assert_eq!(passage(tune, 3, 4), (5.0, 11.0));
    assert_eq!(passage(tune, 5, 8), (11.0, 23.0));
}

#[test]
fn a_jig_is_led_into_by_its_eighth() {
    let jig = "M:6/8\nL:1/8\n|:d|G3 G3|G3 G3|G3 G3|G3 G2:|";
    assert_eq!(passage(jig, 3, 4), (6.0, 12.0));
    assert_eq!(passage(jig, 5, 8), (12.0, 24.0));
}

#[test]
fn bars_that_there_are_not_are_no_passage() {
    let playing = tune("a b c d").playing();
    assert_eq!(playing.passage(2, 1), None);
    assert_eq!(playing.passage(2, 4), None);
    assert_eq!(playing.counted(0), None);
    assert_eq!(playing.counted(5), None);
    assert_eq!((playing.counted(4), playing.count_all()), (Some(3), 4));
}
