//! The circle in the real window: seats, the best key, the page across.

use fourcourse::bind::CircleGlobal;
use slint::{ComponentHandle, Model};

use super::evening::Evening;

/// Tall enough for all of a sheet, as far as a finger would scroll.
const TALL: (f32, f32) = (412.0, 2400.0);

fn in_the_circle() -> Evening {
    let evening = Evening::open(TALL.0, TALL.1);
    evening.open_tune("Millrace Reel");
    evening.touch("Back to the songbook");
    evening.touch("Circle");
    evening
}

fn seats(evening: &Evening) -> Vec<(String, String)> {
    let circle = evening.app().global::<CircleGlobal<'_>>();
    let seats = circle.get_seats();
    { seats.iter() }
        .map(|seat| (seat.name.to_string(), seat.detail.to_string()))
        .collect()
}

fn named(evening: &Evening) -> Vec<String> {
    seats(evening).into_iter().map(|(name, _)| name).collect()
}

fn add(evening: &Evening, what: &str) {
    evening.touch("Add a seat");
    evening.touch(what);
    evening.touch("Close");
}

#[test]
fn seats_are_added_and_have_their_own_chords() {
    let evening = in_the_circle();
    assert_eq!(named(&evening), ["Mandolin"]);
    add(&evening, "Guitar");
    assert_eq!(seats(&evening)[1].1, "no capo: A shapes");
    evening.touch("Change: Guitar");
    evening.touch("always");
    for _ in 0..3 {
        evening.touch("Capo down");
    }
    evening.touch("Close");
    add(&evening, "Instrument in B♭");
    add(&evening, "Singer");
    assert_eq!(
        named(&evening),
        ["Mandolin", "Guitar", "Instrument in B♭", "Singer"]
    );
    let details: Vec<_> = seats(&evening)
        .into_iter()
        .map(|(_, detail)| detail)
        .collect();
    assert_eq!(details[1], "capo 2: G shapes");
    assert_eq!(details[2], "reads B");
    assert_eq!(details[3], "sings A3 to D5");
    // The guitar makes a G that sounds A.
    assert!(evening.sees("G: F♯ fret 3"));
    assert!(evening.sees("sounds A"));
}

#[test]
fn a_seat_is_settled_in_its_sheet_and_taken_away_and_put_back() {
    let evening = in_the_circle();
    evening.touch("Add a seat");
    evening.touch("Guitar");
    evening.touch("up to");
    evening.touch("A beginner's four");
    assert!(evening.sees("G C D Em"));
    evening.called("Name")[0].set_accessible_value("Imke");
    evening.wait(32);
    evening.touch("Sings");
    assert!(evening.sees("Set what comes without strain"));
    evening.touch("Tenor");
    evening.touch("Highest note higher");
    evening.touch("Close");
    assert_eq!(seats(&evening)[1].0, "Imke");
    assert_eq!(
        seats(&evening)[1].1,
        "Guitar · capo 2: G shapes · sings C3 to G♯4"
    );
    evening.touch("Change: Imke");
    evening.touch("Take the seat away");
    assert_eq!(named(&evening), ["Mandolin"]);
    evening.touch("Put back: Imke");
    assert_eq!(named(&evening), ["Mandolin", "Imke"]);
}

#[test]
fn the_best_key_is_a_touch_away_from_the_stand() {
    let evening = in_the_circle();
    add(&evening, "Guitar");
    evening.touch("Best key");
    assert!(evening.sees("Best for this circle"));
    evening.touch("C, ");
    evening.touch("Play it in C");
    assert_eq!(evening.chord(), "C");
    evening.touch("Back to the songbook");
    evening.touch("Circle");
    evening.touch("Best key");
    assert!(evening.sees("C called"));
}

#[test]
fn another_tune_is_looked_at_from_the_circle() {
    let evening = in_the_circle();
    evening.touch("Tune: Millrace Reel");
    evening.called("Find a tune")[0].set_accessible_value("goose");
    evening.wait(32);
    evening.touch("Nobody Told the Goose");
    assert!(evening.sees("Tune: Nobody Told the Goose"));
    evening.touch("Tune: Nobody");
    evening.touch("The tune on the stand");
    assert!(evening.sees("Tune: Millrace Reel"));
}

#[test]
fn a_page_is_shown_across_the_circle_and_put_away() {
    let evening = in_the_circle();
    for (width, height) in [(412.0, 915.0), (800.0, 360.0), (1280.0, 800.0)] {
        evening.turn(width, height);
        evening.press("v");
        evening.wait(32);
        assert!(evening.sees("Turn"), "{width} x {height}");
        assert!(!evening.called("A").is_empty());
        evening.touch("Turn");
        evening.touch("Close");
        assert!(!evening.sees("Turn"), "{width} x {height}");
    }
    evening.turn(TALL.0, TALL.1);
    evening.touch("Show across: Mandolin");
    assert!(evening.sees("Turn"));
    evening.press(slint::platform::Key::Escape);
    assert!(!evening.sees("Turn"));
}

#[test]
fn without_a_tune_the_circle_asks_for_one() {
    let evening = Evening::open(412.0, 915.0);
    evening.touch("Circle");
    assert_eq!(named(&evening), ["Mandolin"]);
    evening.touch("Best key");
    assert!(evening.sees("The best key is found for a tune"));
    evening.touch("Choose a tune");
    evening.touch("Boots on the Fender");
    assert!(evening.sees("Best for this circle"));
}
