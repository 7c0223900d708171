//! Somebody calls a tune, a key or a chord: answered in two touches from every room; and on the Stand, back in and simpler.

use std::cell::Cell;

use fourcourse::bind::{BandGlobal, CalledGlobal, StandGlobal};
use fourcourse::desk::{Ask, Room, Simplify};
use i_slint_backend_testing::{AccessibleRole, ElementHandle};
use slint::platform::Key;
use slint::{ComponentHandle, Model};

use super::evening::Evening;
use super::place;

const SIZES: [(f32, f32); 4] = [
    (360.0, 640.0),
    (412.0, 915.0),
    (800.0, 360.0),
    (1280.0, 800.0),
];

/// A finger that is counted.
struct Finger<'a> {
    evening: &'a Evening,
    touches: Cell<u32>,
}

impl<'a> Finger<'a> {
    fn of(evening: &'a Evening) -> Self {
        Self {
            evening,
            touches: Cell::new(0),
        }
    }

    fn touch(&self, name: &str) {
        self.touches.set(self.touches.get() + 1);
        self.evening.touch(name);
    }

    /// Into the room where calls are answered, by the way that is there.
    fn call(&self) {
        let title = "Somebody calls a tune or a key";
        match self.evening.sees(title) {
            true => self.touch(title),
            false => self.touch("Called"),
        }
    }
}

/// Each room at each size, with a tune on the stand.
fn everywhere(test: impl Fn(&Evening, Room, (f32, f32))) {
    let evening = Evening::open(412.0, 915.0);
    for (width, height) in SIZES {
        for room in [
            Room::Songbook,
            Room::Called,
            Room::Tonight,
            Room::Circle,
            Room::Porch,
            Room::Settings,
            Room::Stand,
        ] {
            evening.turn(width, height);
            evening.ask(Ask::Go(Room::Songbook));
            evening.search("");
            evening.open_tune("Boots on the Fender");
            evening.ask(Ask::Go(room));
            test(&evening, room, (width, height));
        }
    }
}

#[test]
fn a_tune_that_is_called_is_on_the_stand_with_two_touches_from_anywhere() {
    everywhere(|evening, room, size| {
        let finger = Finger::of(evening);
        finger.call();
        // Letters are typed, not touched.
        evening.type_into("Which tune?", "milrac");
        finger.touch("Millrace Reel, A");
        assert_eq!(finger.touches.get(), 2, "{room:?} {size:?}");
        let stand = evening.app().global::<StandGlobal<'_>>();
        assert_eq!(
            (stand.get_title().as_str(), stand.get_key().as_str()),
            ("Millrace Reel", "A")
        );
        assert_eq!(evening.chord(), "A", "{room:?} {size:?}");
    });
}

#[test]
fn a_key_that_is_called_is_answered_with_two_touches_from_anywhere() {
    everywhere(|evening, room, size| {
        let finger = Finger::of(evening);
        finger.call();
        finger.touch("D major");
        assert_eq!(finger.touches.get(), 2, "{room:?} {size:?}");
        for main in ["1: D", "4: G", "5: A"] {
            let card = evening.called(main);
            let card = card
                .first()
                .unwrap_or_else(|| panic!("{main} {room:?} {size:?}"));
            // To be seen without scrolling.
            let end = card.absolute_position().y + card.size().height;
            assert!(end <= size.1, "{main} {room:?} {size:?}");
        }
        // And a third brings the tune there in it.
        finger.touch("To the stand in D");
        let stand = evening.app().global::<StandGlobal<'_>>();
        assert_eq!(stand.get_key(), "D", "{room:?} {size:?}");
    });
}

#[test]
fn a_tune_and_a_key_together_are_three_touches() {
    let evening = Evening::open(412.0, 915.0);
    let finger = Finger::of(&evening);
    finger.call();
    evening.type_into("Which tune?", "millrace reel");
    finger.touch("G major");
    finger.touch("Millrace Reel, G");
    assert_eq!(finger.touches.get(), 3);
    assert_eq!(evening.chord(), "G");
}

#[test]
fn letters_and_keys_of_a_keyboard_do_without_a_touch() {
    let evening = Evening::open(1280.0, 800.0);
    evening.open_tune("Boots on the Fender");
    evening.press("q");
    evening.press("/");
    for letter in "nobody".chars() {
        evening.press(letter);
    }
    evening.press(Key::DownArrow);
    evening.press(Key::Return);
    let stand = evening.app().global::<StandGlobal<'_>>();
    assert_eq!(stand.get_title(), "Nobody Told the Goose");
    // The pedal works at once.
    let there = place(&evening);
    evening.press(Key::PageDown);
    evening.press(Key::PageDown);
    assert_ne!(place(&evening), there);
    evening.press("q");
    evening.press(Key::RightArrow);
    evening.press(Key::RightArrow);
    assert!(evening.sees("1: D"));
}

#[test]
fn the_way_back_is_the_way_that_one_came() {
    let evening = Evening::open(412.0, 915.0);
    evening.open_tune("Millrace Reel");
    evening.touch("Next bar");
    evening.touch("Next bar");
    let there = place(&evening);
    evening.touch("Somebody calls");
    evening.touch("Back");
    assert_eq!(place(&evening), there);
    evening.press("q");
    evening.press(Key::Escape);
    assert!(evening.sees("This is 1"));
}

#[test]
fn a_held_chord_is_named_by_touching_it() {
    let evening = Evening::open(412.0, 915.0);
    let names = |evening: &Evening| {
        let names = evening.app().global::<CalledGlobal<'_>>().get_names();
        let name = |name: fourcourse::bind::HeldName| format!("{}{}", name.root, name.rest);
        names.iter().map(name).collect::<Vec<_>>()
    };
    evening.touch("Called");
    evening.touch("Held chord");
    assert!(evening.sees("Touch where the fingers are"));
    evening.touch("A fret 2");
    evening.touch("E fret 3");
    assert_eq!(names(&evening)[0], "G");
    evening.touch("Take all fingers away");
    evening.touch("G fret 2");
    evening.touch("D fret 2");
    assert_eq!(names(&evening)[..2], ["A", "A5"]);
    evening.touch("Whose hand?");
    evening.touch("Guitar");
    for finger in ["E fret 3", "A fret 2"] {
        evening.touch(finger);
    }
    evening.touch("Whose hand?");
    evening.touch("Capo up");
    evening.touch("Close");
    assert!(evening.sees("Whose hand? Guitar · capo 1"));
}

#[test]
fn a_held_chord_is_named_with_the_keys_of_a_keyboard() {
    let evening = Evening::open(412.0, 915.0);
    evening.touch("Called");
    evening.touch("Held chord");
    // Past the two choices and the neighbour, to the fingerboard.
    for _ in 0..4 {
        evening.press(Key::Tab);
    }
    for key in [
        Key::DownArrow,
        Key::DownArrow,
        Key::Return,
        Key::RightArrow,
        Key::Return,
    ] {
        evening.press(key);
    }
    let called = evening.app().global::<CalledGlobal<'_>>();
    assert_eq!(called.get_notes(), "sounds A E A E");
    evening.press(Key::UpArrow);
    evening.press(Key::UpArrow);
    evening.press(Key::Return); // above the nut: the course is open again
    assert_eq!(called.get_notes(), "sounds A D A E");
}

#[test]
fn what_is_safe_is_one_touch_away_and_simpler_chords_are_two_with_the_chord_now_in_sight() {
    let evening = Evening::open(412.0, 915.0);
    for (width, height) in SIZES {
        evening.turn(412.0, 915.0);
        evening.ask(Ask::Go(Room::Songbook));
        evening.open_tune("Nobody Told the Goose");
        evening.ask(Ask::Simpler(Simplify::Written));
        evening.turn(width, height);
        let finger = Finger::of(&evening);
        finger.touch("Easier, or something safe");
        let panel = evening.called("Safe over");
        let group =
            |element: &&ElementHandle| element.accessible_role() == Some(AccessibleRole::Groupbox);
        let panel = panel.iter().find(group).unwrap();
        let now = ElementHandle::find_by_element_id(evening.app(), "NowCard::name").next();
        let now = now.unwrap();
        let (name, size) = (now.absolute_position(), now.size());
        let corner = panel.absolute_position();
        assert!(
            corner.y >= name.y + size.height || corner.x >= name.x + size.width,
            "{width} x {height}"
        );
        finger.touch("Three");
        assert_eq!(finger.touches.get(), 2);
        let stand = evening.app().global::<StandGlobal<'_>>();
        assert_eq!(stand.get_simpler(), 2);
        // Everything else goes on working.
        let there = place(&evening);
        evening.press(Key::PageDown);
        evening.press(Key::PageDown);
        assert_ne!(place(&evening), there);
        evening.press(Key::Escape);
        assert!(!evening.sees("Safe over"));
        evening.press("z");
        assert!(evening.sees("Safe over"));
        evening.press("z");
        assert!(!evening.sees("Safe over"));
    }
}

#[test]
fn the_edge_of_a_line_is_touched_where_it_stays() {
    let evening = Evening::open(412.0, 915.0);
    evening.open_tune("Millrace Reel");
    evening.touch("Next bar");
    evening.touch("Line 2");
    assert!(
        place(&evening).contains("bar 5 of 8"),
        "{}",
        place(&evening)
    );
    // The clock leads: the line is taken up on the beat, 72 half notes a minute.
    let band = evening.app().global::<BandGlobal<'_>>();
    band.invoke_set_count_in(false);
    evening.touch("Start the clock");
    evening.wait(3000);
    evening.touch("Part B");
    assert!(place(&evening).starts_with("B1"), "{}", place(&evening));
}

#[test]
fn nothing_that_is_looked_up_is_smaller_than_a_finger() {
    let evening = Evening::open(412.0, 915.0);
    let measure = |what: &str| {
        let small = evening.too_small();
        assert!(small.is_empty(), "{what}: {small:#?}");
        evening.turn(412.0, 915.0);
    };
    evening.touch("Called");
    evening.touch("A major");
    measure("a key");
    evening.type_into("Which tune?", "the");
    measure("tunes");
    evening.touch("Held chord");
    evening.touch("Whose hand?");
    measure("whose hand");
    evening.touch("Whose hand?"); // in another layout it was put away
    evening.touch("Guitar");
    measure("a hand");
    evening.touch("Tune or key");
    evening.touch("To the stand");
    evening.touch("Easier, or something safe");
    measure("what is safe");
}

#[test]
fn a_key_that_was_touched_makes_room_for_its_answer_and_the_keys_are_a_touch_away() {
    let evening = Evening::open(360.0, 640.0);
    evening.touch("Called");
    evening.touch("D major");
    assert!(!evening.sees("E major"));
    let ring = evening.called("Let ring");
    let ring = ring.first().unwrap();
    let end = ring.absolute_position().y + ring.size().height;
    assert!(end <= 640.0, "{end}");
    evening.touch("Minor");
    evening.touch("D minor");
    evening.touch("E minor");
    assert!(evening.sees("1m: Em"));
    // Whoever comes in anew has all keys before them.
    evening.touch("Songbook");
    evening.touch("Called");
    assert!(evening.sees("G m") && evening.sees("E m"));
}
