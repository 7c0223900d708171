//! Tonight's list in the real window.

use fourcourse::bind::TonightGlobal;
use slint::{ComponentHandle, Model};

use super::evening::Evening;

fn titles(evening: &Evening) -> Vec<String> {
    let tonight = evening.app().global::<TonightGlobal<'_>>();
    let tunes = tonight.get_tunes();
    tunes.iter().map(|tune| tune.title.to_string()).collect()
}

/// A list of these tunes, as it is made by hand.
fn with_list(tunes: &[&str]) -> Evening {
    let evening = Evening::open(412.0, 915.0);
    evening.touch("Tonight");
    assert!(evening.sees("Nothing is on tonight's list yet."));
    evening.touch("Add tunes");
    for title in tunes {
        evening.called("Find a tune")[0].set_accessible_value(*title);
        evening.wait(32);
        evening.touch(title);
    }
    evening.touch("Close");
    evening
}

const THREE: [&str; 3] = [
    "Millrace Reel",
    "Boots on the Fender",
    "Nobody Told the Goose",
];

#[test]
fn a_list_is_made_from_the_songbook() {
    let evening = with_list(&THREE);
    assert_eq!(titles(&evening), THREE);
    assert!(!evening.sees("Nothing is on tonight's list yet."));
}

#[test]
fn the_list_is_put_in_order_and_a_removal_taken_back() {
    let evening = with_list(&THREE);
    evening.touch("Change the list");
    evening.touch("Later: Millrace Reel");
    assert_eq!(titles(&evening), [THREE[1], THREE[0], THREE[2]]);
    evening.touch("Off the list: Millrace Reel");
    assert_eq!(titles(&evening), THREE[1..]);
    evening.touch("Put back: Millrace Reel");
    assert_eq!(titles(&evening).len(), 3);
    evening.touch("Done");
    assert!(!evening.sees("Later: "));
}

#[test]
fn the_list_is_played_through_from_the_stand() {
    let evening = with_list(&THREE);
    evening.touch("Play Millrace Reel");
    assert!(evening.sees("Next tune: Boots on the Fender"));
    // Once through, so that it counts as played.
    for _ in 0..200 {
        evening.press(slint::platform::Key::PageDown);
    }
    evening.touch("Next tune: Boots on the Fender");
    assert!(evening.sees("Next tune: Nobody Told the Goose"));
    evening.touch("Next tune: Nobody");
    assert!(!evening.sees("Next tune: "));
    evening.touch("Back to the songbook");
    evening.touch("Tonight");
    assert!(evening.sees("1. Millrace Reel, A, reel · played tonight in A"));
    evening.touch("Played");
    assert!(evening.sees("Millrace Reel, A"));
}

#[test]
fn a_key_is_wished_for_and_kept() {
    let evening = with_list(&THREE);
    evening.touch("Change the list");
    evening.touch("Lower key: Millrace Reel");
    evening.touch("Lower key: Millrace Reel");
    evening.touch("Done");
    evening.touch("1. Millrace Reel, G");
    assert_eq!(evening.chord(), "G");
}

#[test]
fn the_tune_on_the_stand_comes_on_the_list_from_its_sheet() {
    let evening = Evening::open(412.0, 1800.0);
    evening.open_tune("Millrace Reel");
    evening.touch("Key A");
    evening.touch("On tonight's list");
    evening.touch("Close");
    evening.touch("Back to the songbook");
    evening.touch("Tonight");
    assert_eq!(titles(&evening), ["Millrace Reel"]);
}

#[test]
fn tunes_are_picked_by_what_was_not_played_lately_and_by_what_everyone_knows() {
    let evening = Evening::open(412.0, 1800.0);
    evening.open_tune("Millrace Reel");
    for _ in 0..200 {
        evening.press(slint::platform::Key::PageDown);
    }
    evening.touch("Back to the songbook");
    evening.touch("Tonight");
    evening.touch("Add tunes");
    let found = |evening: &Evening| {
        let tonight = evening.app().global::<TonightGlobal<'_>>();
        tonight.get_found_count().to_string()
    };
    assert_eq!(found(&evening), "30 tunes");
    evening.touch("2 weeks");
    assert_eq!(found(&evening), "29 tunes");
    evening.touch("Only the shapes everyone knows");
    assert_ne!(found(&evening), "29 tunes");
}
