//! Somebody who was lost says where the circle is, or strums what is safe.

use super::*;

/// A clock that began without a count, two beats a bar, a beat a second: bar 1 of A1 from 0 on.
fn led() -> Desk {
    let text = "X:1\nT:Pail Test\nM:4/4\nL:1/8\nQ:1/2=60\nK:G\n\
        P:A\n|:\"G\"G8|\"C\"c8|\"D\"d8|\"G\"G8|\n\"Em\"e8|\"C\"c8|\"D\"d8|\"G\"G8:|\n\
        P:B\n|:\"C\"c8|\"D\"d8|\"G\"G8|\"G\"G8:|\n";
    let mut desk = on_stand(text);
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    desk.ask(Ask::Clock(true), Duration::ZERO);
    desk
}

/// Part and bar.
fn place(desk: &mut Desk, now: f64) -> String {
    let view = view(desk, now);
    let chip = view
        .form
        .iter()
        .find(|chip| chip.passed == Passed::Now)
        .unwrap();
    format!("{}{}:{}", chip.part, chip.pass, view.bar.0)
}

/// The bar that began last begins exactly at a moment, and the next one a bar later.
fn begins_at(desk: &mut Desk, first: &str, next: &str, moment: f64) {
    assert_eq!(place(desk, moment + 0.01), first);
    assert_eq!(place(desk, moment + 1.99), first);
    assert_eq!(place(desk, moment + 2.01), next);
}

#[test]
fn the_top_of_a_part_is_the_beat_on_which_it_was_touched() {
    let mut desk = led();
    desk.ask(Ask::JumpToPart(2), beats(7.0));
    assert_eq!(place(&mut desk, 7.0), "B1:1");
    begins_at(&mut desk, "B1:1", "B1:2", 7.0);
}

#[test]
fn a_touch_beside_the_beat_means_the_nearest_one_and_the_beat_goes_on() {
    for late in [-0.4, -0.1, 0.1, 0.4] {
        let mut desk = led();
        desk.ask(Ask::JumpToPart(2), beats(7.0 + late));
        begins_at(&mut desk, "B1:1", "B1:2", 7.0);
        // Touched too early, it is the last of what comes before.
        let mut desk = led();
        desk.ask(Ask::JumpToPart(2), beats(7.0 + late));
        let expected = if late < 0.0 { "A2:8" } else { "B1:1" };
        assert_eq!(place(&mut desk, 7.0 + late), expected, "{late}");
    }
}

#[test]
fn a_line_and_a_bar_of_the_map_are_taken_up_on_the_beat_as_well() {
    let mut desk = led();
    let map = view(&mut desk, 0.0).map;
    assert_eq!(
        map.iter().map(|line| line.top).collect::<Vec<_>>(),
        [0, 4, 16]
    );
    desk.ask(Ask::JumpToLine(map[1].top), beats(2.9));
    begins_at(&mut desk, "A1:5", "A1:6", 3.0);
    let mut desk = led();
    desk.ask(Ask::JumpTo(5), beats(3.2));
    begins_at(&mut desk, "A1:6", "A1:7", 3.0);
}

#[test]
fn the_very_first_beat_is_waited_for() {
    let mut desk = led();
    desk.ask(Ask::LastTime(true), beats(8.0));
    desk.ask(Ask::JumpToPart(0), beats(8.7));
    begins_at(&mut desk, "A1:1", "A1:2", 9.0);
    assert!(
        view(&mut desk, 9.5).last_time,
        "what was called stays called"
    );
}

#[test]
fn in_a_later_time_through_the_end_of_the_one_before_leads_in() {
    let mut desk = led();
    let round = 48.0; // 24 bars of two beats
    desk.ask(Ask::JumpToPart(0), beats(round + 8.7));
    let before = view(&mut desk, round + 8.8);
    assert_eq!((before.time, before.bar.0), (1, 4));
    begins_at(&mut desk, "A1:1", "A1:2", round + 9.0);
    assert_eq!(view(&mut desk, round + 9.5).time, 2);
}

#[test]
fn by_hand_a_part_is_jumped_to_and_what_leads_into_it_is_over() {
    let mut desk = on_stand(REEL);
    // Waiting, one gets ready for the pickup.
    desk.ask(Ask::JumpToPart(1), beats(0.0));
    assert_eq!(view(&mut desk, 0.0).bar.0, 0);
    desk.ask(Ask::NextBar, beats(0.0));
    desk.ask(Ask::NextBar, beats(2.0));
    // In the circle, the top of a part is its first beat, and the next tap the second bar.
    desk.ask(Ask::JumpToPart(1), beats(3.1));
    assert_eq!(place(&mut desk, 3.1), "A2:1");
    desk.ask(Ask::NextBar, beats(5.1));
    assert_eq!(place(&mut desk, 5.1), "A2:2");
}

#[test]
fn held_it_stands_at_the_place_that_was_touched() {
    let mut desk = led();
    desk.ask(Ask::Hold, beats(3.0));
    desk.ask(Ask::JumpToPart(2), beats(9.3));
    assert_eq!(
        (place(&mut desk, 60.0), view(&mut desk, 60.0).follow),
        ("B1:1".into(), FollowState::Held)
    );
    desk.ask(Ask::Hold, beats(60.0));
    begins_at(&mut desk, "B1:1", "B1:2", 60.0);
}

#[test]
fn what_is_safe_is_told_for_each_part_in_the_key_now() {
    let mut desk = led();
    let safe = |desk: &mut Desk| -> Vec<_> {
        let parts = view(desk, 0.5).safe;
        let told = |part: &SafePart| {
            format!(
                "{} {} {} {}{}",
                part.part, part.chord.name, part.note, part.course, part.fret
            )
        };
        parts.iter().map(told).collect()
    };
    // Worked out by hand: of A's eight bars G C D G Em C D G, D belongs to the three of G and the two of D, and lies a whole
    // tone from C and E; G belongs to six, but rubs with the third of D for two.
    let written = safe(&mut desk);
    assert_eq!(written, ["A G5 D D0", "B G5 D D0"]);
    let parts = view(&mut desk, 0.5).safe;
    assert_eq!(
        parts.iter().map(|part| part.now).collect::<Vec<_>>(),
        [true, false]
    );
    let shape = |desk: &mut Desk| view(desk, 0.5).safe[0].chord.shape.is_some();
    assert!(shape(&mut desk));
    desk.ask(Ask::KeyUp(2), beats(0.5));
    let up = safe(&mut desk);
    assert_eq!(up, ["A A5 E E0", "B A5 E E0"]);
    // Simpler chords of one's own do not change what the others play.
    desk.ask(Ask::Simpler(Simplify::ThreeChords), beats(0.5));
    assert_eq!(safe(&mut desk), up);
}
