//! The porch, driven by what things are called.

use fourcourse::bind::{PageGround, PorchGlobal};
use fourcourse::desk::{Ask, Room};

use slint::platform::Key;
use slint::{ComponentHandle, Model};

use crate::evening::Evening;
use crate::{place, state};

fn porch(evening: &Evening) -> PorchGlobal<'_> {
    evening.app().global::<PorchGlobal<'_>>()
}

/// A tune on the porch by way of the Stand.
fn on_the_porch(title: &str) -> Evening {
    let evening = crate::on_the_stand(title);
    evening.press("p");
    assert!(evening.sees("What to practise"), "the porch");
    evening
}

fn figures(evening: &Evening) -> usize {
    let systems = porch(evening).get_systems();
    let words = systems
        .iter()
        .flat_map(|system| system.words.iter().collect::<Vec<_>>());
    words
        .filter(|word| matches!(word.ground, PageGround::Patch | PageGround::Ring))
        .count()
}

#[test]
fn a_phrase_is_practised_slowly_again_and_again_and_is_remembered_tomorrow() {
    let evening = on_the_porch("Millrace Reel");
    let melody = figures(&evening);
    evening.touch("Double stops, hard");
    assert!(figures(&evening) > melody, "second notes are there");
    evening.touch("Next phrase");
    evening.touch("Next phrase");
    let second = porch(&evening).get_phrase();
    assert!(second.starts_with("Phrase A 2"), "{second}");
    assert!(porch(&evening).get_again());
    for _ in 0..4 {
        evening.touch("Slower");
    }
    assert_eq!(porch(&evening).get_percent(), "80 %");
    evening.touch("Hide more");
    assert_eq!(porch(&evening).get_shown(), "Every other bar");
    evening.touch("Play");
    assert_eq!(state(&evening), "Counting in");
    // Four bars at 58 half notes a minute are 8.3 s; two passes and the count-in.
    evening.wait(27_000);
    assert!(place(&evening).starts_with("A1"), "{}", place(&evening));
    let detail = porch(&evening).get_detail();
    assert!(detail.contains("clean at 58"), "{detail}");
    evening.touch("Stop");
    // Tomorrow it is suggested, and one touch begins it where it was left.
    evening.tomorrow();
    evening.touch("What to practise");
    let first = porch(&evening).get_practise().row_data(0).unwrap();
    assert_eq!(first.title, "Millrace Reel");
    assert_eq!(first.what, "Phrase A 2 · Double stops");
    assert_eq!(
        first.why,
        "due, last time yesterday · start at\u{a0}58, aim\u{a0}for\u{a0}61"
    );
    assert_eq!(first.tempo, "58 › 61");
    evening.touch("Millrace Reel, Phrase A 2");
    assert!(porch(&evening).get_phrase().starts_with("Phrase A 2"));
    assert_eq!(porch(&evening).get_percent(), "81 %");
}

#[test]
fn the_porch_is_reached_from_the_way_bar_and_the_sheet_and_left_again() {
    let evening = crate::upright();
    evening.touch("Porch");
    assert!(evening.sees("Back") && evening.sees("What to practise"));
    evening.touch("Back");
    assert!(evening.sees("Find a tune"));
    evening.open_tune("Millrace Reel");
    evening.touch("Key A");
    evening.turn(412.0, 1500.0); // as far as a finger would scroll
    evening.touch("Practise on the porch");
    assert!(evening.sees("Version"));
    evening.press(Key::Escape);
    assert!(evening.sees("This is 1"), "back on the Stand");
}

#[test]
fn keys_and_pedals_work_on_the_porch_as_on_the_stand() {
    let evening = on_the_porch("Millrace Reel");
    let there = place(&evening);
    evening.press(Key::PageDown);
    evening.press(Key::PageDown);
    assert_ne!(place(&evening), there);
    evening.press("]");
    assert!(porch(&evening).get_phrase().starts_with("Phrase A 1"));
    evening.press("x");
    evening.press("x");
    evening.press("z");
    assert_eq!(porch(&evening).get_shown(), "Every other bar");
    let low = porch(&evening).get_system_height();
    evening.press("s");
    assert!(
        porch(&evening).get_system_height() > low,
        "a staff is there"
    );
    evening.press("-");
    assert_eq!(porch(&evening).get_percent(), "95 %");
    evening.press("c");
    assert_eq!(state(&evening), "Counting in");
    evening.press("c");
}

#[test]
fn the_note_now_moves_along_the_page_and_the_page_with_it() {
    let evening = on_the_porch("Millrace Reel");
    let head = |evening: &Evening| {
        let head = porch(evening).get_head();
        (head.system, head.x)
    };
    let first = head(&evening);
    evening.touch("Play");
    evening.wait(4_500);
    let later = head(&evening);
    assert!(later > first, "{first:?} {later:?}");
    evening.wait(9_000);
    assert!(head(&evening).0 > later.0);
    evening.touch("Stop");
    evening.touch("Bar 9");
    assert!(
        place(&evening).starts_with("B1 · bar 1") || place(&evening).starts_with("B1 · Pickup"),
        "{}",
        place(&evening)
    );
}

#[test]
fn exercises_of_the_tune_are_begun_and_ended() {
    let evening = on_the_porch("Millrace Reel");
    evening.press("k");
    evening.turn(412.0, 2400.0); // as far as a finger would scroll
    let stop = porch(&evening).get_stops().row_data(0).unwrap();
    evening.touch(&stop.said);
    evening.turn(412.0, 915.0);
    assert!(porch(&evening).get_detail().contains(stop.name.as_str()));
    evening.touch("Done");
    evening.press("k");
    evening.turn(412.0, 2400.0);
    let change = porch(&evening).get_changes().row_data(0).unwrap();
    evening.touch(&change.said);
    evening.turn(412.0, 915.0);
    assert!(evening.sees("This is 1"), "on the Stand");
    evening.press(Key::Escape);
    assert!(evening.sees("Version"), "back on the porch");
}

#[test]
fn nothing_on_the_porch_is_smaller_than_a_finger() {
    let evening = on_the_porch("Millrace Reel");
    let mut small = Vec::new();
    for home in [false, true] {
        let found = evening.too_small().into_iter();
        small.extend(found.map(|what| format!("home {home}: {what}")));
        evening.turn(412.0, 915.0);
        if !home {
            evening.touch("What to practise");
        }
    }
    assert!(small.is_empty(), "{small:#?}");
}

#[test]
fn where_the_room_is_wide_the_page_stands_beside_the_songbook() {
    let evening = on_the_porch("Millrace Reel");
    evening.turn(1280.0, 800.0);
    assert!(evening.sees("Find a tune") && evening.sees("Version"));
    evening.open_tune("Nobody Told the Goose");
    assert_eq!(porch(&evening).get_title(), "Nobody Told the Goose");
}

#[test]
fn in_a_wide_window_the_page_stays_beside_other_rooms_and_its_own_way_back_leads_to_the_stand() {
    let evening = crate::on_the_stand("Millrace Reel");
    evening.turn(1280.0, 800.0);
    evening.touch("Porch");
    evening.touch("Songbook");
    evening.touch("Settings");
    evening.press(Key::Escape);
    assert!(porch(&evening).get_there(), "its tune is still on it");
    assert!(evening.sees("Play"));
    evening.ask(Ask::Go(Room::Called));
    evening.ask(Ask::Go(Room::Porch));
    evening.touch("Back");
    assert!(evening.sees("This is 1"));
}
