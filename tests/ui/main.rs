//! The real components, driven by what they are called: `cargo test --features drive --test ui`.
#![allow(clippy::unwrap_used, reason = "a helper of tests fails like a test")]
#![cfg(feature = "drive")]

mod evening;

use evening::Evening;
use fourcourse::bind::StandGlobal;
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
    assert!(evening.sees("Hier ist 1"));
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

#[test]
fn nothing_that_can_be_touched_is_smaller_than_a_finger() {
    use i_slint_backend_testing::{AccessibleRole, ElementQuery};
    let evening = on_the_stand("Millrace Reel");
    let mut small = Vec::new();
    for (width, height) in [
        (412.0, 915.0),
        (360.0, 640.0),
        (800.0, 360.0),
        (1280.0, 800.0),
    ] {
        evening.turn(width, height);
        let query = ElementQuery::from_root(evening.app()).match_descendants();
        for element in query
            .match_accessible_role(AccessibleRole::Button)
            .find_all()
        {
            let size = element.size();
            let label = element.accessible_label().unwrap_or_default();
            if size.width < 48.0 || size.height < 48.0 {
                small.push((width, height, label, size.width, size.height));
            }
        }
    }
    assert!(small.is_empty(), "{small:#?}");
}
