//! The real components, driven by what they are called: `cargo test --features drive --test ui`.
#![allow(clippy::unwrap_used, reason = "a helper of tests fails like a test")]
#![cfg(feature = "drive")]

mod band;
mod called;
mod circle;
mod evening;
mod porch;
mod tonight;

use evening::Evening;
use fourcourse::bind::StandGlobal;
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery};
use slint::ComponentHandle;
use slint::platform::Key;

const UPRIGHT: (f32, f32) = (412.0, 915.0);

fn upright() -> Evening {
    Evening::open(UPRIGHT.0, UPRIGHT.1)
}

fn on_the_stand(title: &str) -> Evening {
    let evening = upright();
    evening.open_tune(title);
    evening
}

/// What the heading tells: part, bar and time.
fn place(evening: &Evening) -> String {
    let stand = evening.app().global::<StandGlobal<'_>>();
    stand.get_detail().to_string()
}

fn state(evening: &Evening) -> String {
    let stand = evening.app().global::<StandGlobal<'_>>();
    stand.get_state().to_string()
}

#[test]
fn a_tune_is_opened_from_the_songbook() {
    let evening = upright();
    assert!(evening.sees("Find a tune"));
    evening.open_tune("Millrace Reel");
    assert!(evening.sees("This is 1"));
    assert_eq!(evening.chord(), "A");
    evening.touch("Back to the songbook");
    assert!(evening.sees("Find a tune"));
    evening.touch("To the stand: Millrace Reel");
    assert_eq!(evening.chord(), "A");
}

#[test]
fn a_tune_is_found_by_a_few_letters() {
    let evening = upright();
    assert!(evening.sees("Boots on the Fender"));
    evening.search("milrace");
    assert!(evening.sees("Millrace Reel"));
    assert!(!evening.sees("Boots on the Fender"));
    evening.search("zzzzzz");
    evening.touch("Show all tunes");
    assert!(evening.sees("Boots on the Fender"));
}

#[test]
fn the_key_that_is_called_is_chosen_from_the_sheet() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Key A");
    evening.touch("G");
    assert_eq!(evening.chord(), "G");
    evening.touch("Close");
    evening.press("+");
    assert_eq!(evening.chord(), "A♭");
    evening.press("-");
    evening.press("-");
    assert_eq!(evening.chord(), "F♯");
    evening.touch("Key F♯");
    evening.touch("As written");
    assert_eq!(evening.chord(), "A");
}

#[test]
fn a_pedal_steps_through_to_the_end_wherever_the_focus_is() {
    let evening = on_the_stand("Millrace Reel");
    let keys = [Key::PageDown, Key::RightArrow, Key::DownArrow];
    let mut steps = 0;
    while state(&evening) != "The end" {
        evening.press(keys[steps % keys.len()]);
        if steps == 3 {
            // A key of the keyboard moves the focus on to a button; the pedal goes on working.
            evening.press(Key::Tab);
            evening.press(Key::Tab);
        }
        steps += 1;
        assert!(steps < 400, "the tune never ends: {}", place(&evening));
    }
    // 32 bars and a pickup, as often as the tune is played.
    assert!(steps > 32, "{steps}");
    evening.press(Key::PageUp);
    assert_ne!(state(&evening), "The end");
}

#[test]
fn a_touch_of_the_card_is_the_next_bar_and_the_bar_back_goes_back() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Next bar");
    evening.touch("Next bar");
    let there = place(&evening);
    evening.touch("Next bar");
    assert_ne!(place(&evening), there);
    evening.touch("One bar back");
    assert_eq!(place(&evening), there);
}

#[test]
fn a_bar_of_the_map_and_a_part_of_the_form_are_jumped_to() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Part B, time 1");
    assert!(
        place(&evening).starts_with("B1 · Pickup"),
        "{}",
        place(&evening)
    );
    evening.touch("Part A, time 2");
    assert!(
        place(&evening).starts_with("A2 · Pickup"),
        "{}",
        place(&evening)
    );
    evening.touch("Pickup");
    assert!(place(&evening).contains("· Pickup"), "{}", place(&evening));
    evening.touch("Bar with E");
    assert!(
        place(&evening).contains("· bar 3 of 8") || place(&evening).contains("· bar 4 of 8"),
        "{}",
        place(&evening)
    );
}

#[test]
fn the_clock_counts_in_goes_on_by_itself_and_holds() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Start the clock");
    assert_eq!(state(&evening), "Counting in");
    // 72 half notes a minute are 1.67 s a bar: the count-in is over after two bars at most.
    evening.wait(4000);
    assert_eq!(state(&evening), "Now");
    let before = place(&evening);
    evening.wait(3400);
    let after = place(&evening);
    assert_ne!(before, after);
    evening.touch("Hold");
    assert_eq!(state(&evening), "Held");
    let held = place(&evening);
    evening.wait(5000);
    assert_eq!(place(&evening), held);
    evening.touch("Go on");
    evening.wait(3400);
    assert_ne!(place(&evening), held);
    evening.touch("Stop the clock");
    let stopped = place(&evening);
    evening.wait(5000);
    assert_eq!(place(&evening), stopped);
}

#[test]
fn the_language_changes_while_the_app_runs() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Back to the songbook");
    evening.touch("Settings");
    evening.turn(412.0, 2400.0); // as far as a finger would scroll
    evening.touch("Deutsch");
    assert!(evening.sees("Linkshändig"));
    evening.press(Key::Escape);
    assert!(evening.sees("Stück suchen"));
    evening.touch("Zum Pult: Millrace Reel");
    assert!(evening.sees("Hier ist die 1"));
    assert!(place(&evening).contains("Durchgang"), "{}", place(&evening));
}

#[test]
fn another_instrument_and_the_other_hand_change_the_shapes() {
    let evening = on_the_stand("Millrace Reel");
    let shape = |evening: &Evening| evening.called("A: ")[0].accessible_label().unwrap();
    let mandolin = shape(&evening);
    assert!(
        mandolin.contains("G") && mandolin.contains("fret 2"),
        "{mandolin}"
    );
    evening.touch("Back to the songbook");
    evening.touch("Settings");
    evening.touch("Guitar");
    evening.press(Key::Escape);
    evening.touch("To the stand");
    let guitar = shape(&evening);
    assert!(guitar.contains('B'), "{guitar}");
    assert_ne!(mandolin, guitar);
}

#[test]
fn the_window_can_be_turned_and_pulled_large() {
    let evening = on_the_stand("Millrace Reel");
    for (width, height) in [
        (800.0, 360.0),
        (360.0, 640.0),
        (820.0, 1180.0),
        (1280.0, 800.0),
    ] {
        evening.turn(width, height);
        assert!(evening.sees("Next bar"), "{width} x {height}");
        assert!(evening.sees("This is 1"), "{width} x {height}");
        assert_eq!(evening.chord(), "A", "{width} x {height}");
        let beside = evening.sees("Find a tune");
        assert_eq!(beside, width > 1000.0, "{width} x {height}");
    }
}

#[test]
fn pedals_work_beside_the_songbook_once_a_tune_is_chosen() {
    let evening = Evening::open(1280.0, 800.0);
    evening.touch("Find a tune"); // the field has the focus
    evening.open_tune("Millrace Reel");
    let there = place(&evening);
    evening.press(Key::PageDown);
    evening.press(Key::PageDown);
    assert_ne!(place(&evening), there);
    evening.touch("Find a tune");
    evening.touch("Next bar");
    let there = place(&evening);
    evening.press(Key::PageDown);
    assert_ne!(place(&evening), there);
}

#[test]
fn a_swipe_turns_the_page() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Next bar");
    let there = place(&evening);
    evening.swipe((300.0, 500.0), (100.0, 500.0));
    assert_ne!(place(&evening), there);
    evening.swipe((100.0, 500.0), (300.0, 500.0));
    assert_eq!(place(&evening), there);
}

/// The focus lies in the search field beside the Stand, as after looking for a tune.
fn searching(evening: &Evening) {
    evening.touch("Find a tune");
}

/// Whether the pedal turns to the next bar.
fn pedal_works(evening: &Evening) -> bool {
    let there = place(evening);
    evening.press(Key::PageDown);
    evening.press(Key::PageDown);
    place(evening) != there
}

#[test]
fn beside_the_songbook_every_touch_of_the_stand_gives_the_pedal_back() {
    let evening = Evening::open(1280.0, 800.0);
    evening.open_tune("Millrace Reel");
    for control in [
        "Part A, time 2",
        "One bar back",
        "This is 1",
        "Bar with E",
        "Pickup",
    ] {
        searching(&evening);
        evening.touch(control);
        assert!(pedal_works(&evening), "after {control}");
    }
    searching(&evening);
    evening.touch("Hold");
    evening.press("h"); // the key that goes on
    assert!(evening.sees("Hold"));
    searching(&evening);
    evening.touch("Start the clock");
    evening.press("c"); // the key that stops it
    assert!(evening.sees("Start the clock"));
    assert!(pedal_works(&evening), "after the clock");
    searching(&evening);
    evening.touch("Key A");
    assert!(evening.sees("Chord names"));
    evening.press(Key::Escape);
    assert!(!evening.sees("Chord names"));
    assert!(pedal_works(&evening), "after the sheet");
}

#[test]
fn letters_have_the_degree_beside_them_and_both_names_stand_everywhere() {
    let evening = on_the_stand("Millrace Reel");
    assert!(evening.sees("the 1 chord"));
    assert!(!evening.sees("Next · ") && !evening.sees("NEXT · "));
    let choose = |names: &str| {
        evening.touch("Key A");
        evening.touch(names);
        evening.touch("Close");
    };
    choose("Both");
    assert_eq!(evening.chord(), "A");
    assert!(!evening.sees("the 1 chord"));
    assert!(evening.sees("NEXT · "));
    choose("Numbers");
    assert_eq!(evening.chord(), "1");
    choose("Letters");
    assert!(evening.sees("the 1 chord"));
}

#[test]
fn an_instrument_is_retuned_and_the_stand_follows() {
    let evening = on_the_stand("Millrace Reel");
    let shape = |evening: &Evening| evening.called("A: ")[0].accessible_label().unwrap();
    assert!(
        shape(&evening).starts_with("A: G fret 2"),
        "{}",
        shape(&evening)
    );
    evening.touch("Back to the songbook");
    evening.touch("Settings");
    evening.turn(412.0, 2400.0); // as far as a finger would scroll
    assert!(!evening.sees("A course is tuned above"));
    evening.touch("G a half step up");
    evening.touch("G♯ a half step up");
    evening.touch("D a half step down");
    assert!(evening.sees("A course is tuned above"));
    evening.press(Key::Escape);
    evening.touch("To the stand");
    assert!(
        shape(&evening).starts_with("A: A open"),
        "{}",
        shape(&evening)
    );
    evening.touch("Back to the songbook");
    evening.touch("Settings");
    evening.touch("A E A E");
    evening.press(Key::Escape);
    evening.touch("To the stand");
    assert_eq!(shape(&evening), "A: A open, E open, A open, E open");
}

#[test]
fn a_phone_on_its_side_shows_six_tunes_at_least() {
    let evening = on_the_stand("Millrace Reel");
    evening.touch("Back to the songbook");
    evening.search("");
    for (width, height, least) in [
        (800.0, 360.0, 6),
        (667.0, 375.0, 6),
        (412.0, 915.0, 8),
        (820.0, 1180.0, 16),
    ] {
        evening.turn(width, height);
        let whole = |element: &ElementHandle| {
            let (at, size) = (element.absolute_position(), element.size());
            at.y >= 0.0 && at.y + size.height <= height && at.x + size.width <= width
        };
        let query = ElementQuery::from_root(evening.app()).match_descendants();
        let tunes = query
            .match_accessible_role(AccessibleRole::ListItem)
            .find_all();
        let seen = tunes.iter().filter(|tune| whole(tune)).count();
        assert!(seen >= least, "{width} x {height}: {seen}");
        evening.touch("To the stand");
        assert!(evening.sees("This is 1"), "{width} x {height}");
        evening.touch("Back to the songbook");
    }
}

#[test]
fn the_words_that_are_sung_go_along_with_the_bars() {
    let evening = on_the_stand("Nobody Told the Goose");
    let sung = |evening: &Evening| {
        let stand = evening.app().global::<StandGlobal<'_>>();
        stand.get_sung().to_string()
    };
    let mut phrases = Vec::new();
    for _ in 0..16 {
        phrases.push(sung(&evening));
        evening.touch("Next bar");
    }
    phrases.dedup();
    assert!(phrases.len() > 3, "{phrases:?}");
    assert!(
        phrases.iter().any(|phrase| phrase.contains("Nobody")),
        "{phrases:?}"
    );
    assert!(
        phrases.iter().all(|phrase| !phrase.contains('-')),
        "{phrases:?}"
    );
}

#[test]
fn nothing_that_can_be_touched_is_smaller_than_a_finger() {
    let evening = upright();
    let mut small = Vec::new();
    let mut measure = |room: &str| {
        let found = evening.too_small().into_iter();
        small.extend(found.map(|what| format!("{room}: {what}")));
    };
    measure("songbook");
    evening.turn(UPRIGHT.0, UPRIGHT.1);
    evening.touch("Settings");
    measure("settings");
    evening.press(Key::Escape);
    evening.turn(UPRIGHT.0, UPRIGHT.1);
    evening.touch("Circle");
    measure("circle");
    evening.turn(UPRIGHT.0, UPRIGHT.1);
    evening.touch("Tonight");
    evening.touch("Add tunes");
    evening.touch("Boots on the Fender");
    measure("tunes to add");
    evening.turn(UPRIGHT.0, UPRIGHT.1);
    evening.touch("Tonight");
    evening.touch("Change the list");
    measure("tonight");
    evening.turn(UPRIGHT.0, UPRIGHT.1);
    evening.touch("Songbook");
    for title in [
        "Millrace Reel",
        "Nobody Told the Goose",
        "Put the Chairs Away",
    ] {
        evening.turn(UPRIGHT.0, UPRIGHT.1);
        evening.open_tune(title);
        measure(title);
        evening.turn(UPRIGHT.0, UPRIGHT.1);
        evening.touch("Back to the songbook");
    }
    assert!(small.is_empty(), "{small:#?}");
}
