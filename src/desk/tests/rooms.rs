//! From room to room: where Back leads, and what an exercise leaves as it was.

use crate::theory::NoteName;

use super::*;

fn go(desk: &mut Desk, room: Room) {
    desk.ask(Ask::Go(room), Duration::ZERO);
}

fn back(desk: &mut Desk) -> (Room, Room) {
    desk.ask(Ask::Back, Duration::ZERO);
    (desk.room(), desk.page())
}

fn reel() -> Desk {
    let mut desk = Desk::new(
        Box::new(Memory::new(
            crate::store::shipped::tunes()
                .into_iter()
                .map(|(_, tune)| tune)
                .collect(),
        )),
        silent(),
        Settings::default(),
        None,
    );
    let rows = desk.songbook().rows;
    let reel = rows.iter().find(|row| row.title == "Millrace Reel");
    desk.ask(Ask::Open(reel.unwrap().id), Duration::ZERO);
    desk
}

/// To the porch, and there the first exercise on a double stop or on a change of chords.
fn exercise(desk: &mut Desk, stop: bool) {
    go(desk, Room::Porch);
    desk.ask(Ask::Porch(PorchAsk::Paper(360.0, 15.0)), Duration::ZERO);
    let ask = if stop {
        PorchAsk::Stop(0)
    } else {
        PorchAsk::Change(0)
    };
    desk.ask(Ask::Porch(ask), Duration::ZERO);
    assert!(desk.open.as_ref().unwrap().1.is_drill());
}

#[test]
fn a_room_that_is_looked_through_leaves_the_page_beside_it_alone() {
    for side in [Room::Settings, Room::Tonight, Room::Called, Room::Songbook] {
        let mut desk = reel();
        go(&mut desk, Room::Porch);
        go(&mut desk, side);
        let (_, page) = back(&mut desk);
        assert_eq!(page, Room::Porch, "{side:?}");
        assert!(desk.porch(Duration::ZERO).lesson.is_some(), "{side:?}");
    }
}

#[test]
fn back_ends_in_the_songbook_whatever_way_one_went() {
    let rooms = [
        Room::Stand,
        Room::Porch,
        Room::Called,
        Room::Circle,
        Room::Settings,
        Room::Tonight,
    ];
    for first in rooms {
        for second in rooms {
            for third in rooms {
                let mut desk = reel();
                for room in [first, second, third] {
                    go(&mut desk, room);
                    let seen =
                        desk.page() != Room::Porch || desk.porch(Duration::ZERO).lesson.is_some();
                    assert!(seen, "{first:?} {second:?} {third:?}");
                }
                let ends = (0..6).any(|_| back(&mut desk).0 == Room::Songbook);
                assert!(ends, "{first:?} {second:?} {third:?}");
            }
        }
    }
}

#[test]
fn the_circle_is_told_of_the_tune_and_not_of_its_exercise() {
    let mut desk = reel();
    go(&mut desk, Room::Circle);
    let whole = desk.circle();
    for stop in [true, false] {
        exercise(&mut desk, stop);
        go(&mut desk, Room::Circle);
        assert_eq!(desk.circle(), whole);
    }
}

#[test]
fn a_key_that_the_circle_plays_in_is_the_tunes_also_after_an_exercise() {
    let mut desk = reel();
    exercise(&mut desk, false);
    let g: NoteName = "G".parse().unwrap();
    desk.ask(Ask::Circle(CircleAsk::Play(g)), Duration::ZERO);
    assert_eq!(desk.room(), Room::Stand);
    let view = desk.stand(Duration::ZERO).unwrap();
    assert_eq!(
        (view.key.as_str(), view.written_key.as_deref()),
        ("G", Some("A"))
    );
}

#[test]
fn another_instrument_ends_an_exercise_and_reaches_the_tune() {
    let mut desk = reel();
    exercise(&mut desk, true);
    desk.ask(Ask::Instrument("guitar".into()), Duration::ZERO);
    let shape = desk.stand(Duration::ZERO).unwrap().now.shape.unwrap();
    assert_eq!(shape.courses.len(), 6);
    // Other settings leave the exercise as it is; they hold for the tune too.
    exercise(&mut desk, true);
    desk.ask(Ask::LeftHanded(true), Duration::ZERO);
    desk.ask(Ask::Porch(PorchAsk::EndDrill), Duration::ZERO);
    let mirrored = desk.stand(Duration::ZERO).unwrap().now.shape.unwrap();
    assert_eq!(mirrored.courses.first(), shape.courses.last());
}

#[test]
fn what_is_practised_has_not_been_played_and_what_is_played_again_has() {
    let mut desk = reel();
    go(&mut desk, Room::Porch);
    let play = |desk: &mut Desk| {
        for _ in 0..600 {
            desk.ask(Ask::NextBar, Duration::ZERO);
        }
    };
    play(&mut desk);
    go(&mut desk, Room::Stand);
    desk.ask(Ask::KeyUp(0), Duration::ZERO);
    assert_eq!(desk.songbook.played().len(), 0);
    desk.ask(Ask::JumpTo(0), Duration::ZERO);
    play(&mut desk);
    assert_eq!(desk.songbook.played().len(), 1);
    // Once more in the same key on the same day is the same.
    desk.ask(Ask::JumpTo(0), Duration::ZERO);
    play(&mut desk);
    assert_eq!(desk.songbook.played().len(), 1);
    desk.ask(Ask::KeyUp(-2), Duration::ZERO);
    desk.ask(Ask::JumpTo(0), Duration::ZERO);
    play(&mut desk);
    assert_eq!(desk.songbook.played().len(), 2);
}

#[test]
fn a_suggestion_leaves_the_key_on_tonights_list_alone() {
    let mut desk = reel();
    desk.ask(Ask::Tonight(TonightAsk::ListOpen(true)), Duration::ZERO);
    desk.ask(Ask::KeyUp(-2), Duration::ZERO);
    let listed = desk.songbook.tonight();
    assert!(listed[0].key.is_some());
    go(&mut desk, Room::Porch);
    desk.ask(Ask::Porch(PorchAsk::Home(true)), Duration::ZERO);
    assert!(!desk.porch(Duration::ZERO).suggestions.is_empty());
    desk.ask(Ask::Porch(PorchAsk::Take(0)), Duration::ZERO);
    assert_eq!(desk.songbook.tonight(), listed);
}
