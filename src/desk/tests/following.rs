//! Following by hand and by clock.

use super::*;

#[test]
fn a_tap_says_that_the_next_bar_begins() {
    let mut desk = on_stand(REEL);
    assert_eq!(seen(&mut desk, 0.0), "A > D in 5"); // the pickup is not a whole beat, and the bar after it has two halves
    desk.ask(Ask::NextBar, beats(10.0));
    assert_eq!(seen(&mut desk, 10.0), "A > D in 4");
    desk.ask(Ask::NextBar, beats(12.0));
    assert_eq!(seen(&mut desk, 12.0), "D > E7 in 2");
}

/// Four bars, no pickup; a chord each.
const PLAIN: &str =
    "X:1\nT:Pail Test\nM:4/4\nL:1/4\nQ:1/2=60\nK:G\n\"G\"G4|\"C\"c4|\"D\"d4|\"Em\"e4|]\n";

#[test]
fn without_a_pickup_the_first_tap_begins_the_first_bar() {
    let mut desk = on_stand(PLAIN);
    desk.ask(Ask::NextBar, beats(5.0));
    assert_eq!(seen(&mut desk, 5.0), "G > C in 4");
    assert_eq!(view(&mut desk, 5.0).follow, FollowState::ByHand);
    desk.ask(Ask::NextBar, beats(7.0));
    assert_eq!(seen(&mut desk, 7.0), "C > D in 4");
}

#[test]
fn a_tap_begins_the_bar_that_was_chosen_before_anything_had_begun() {
    let mut desk = on_stand(PLAIN);
    desk.ask(Ask::JumpTo(2), beats(0.0));
    assert_eq!(view(&mut desk, 0.0).follow, FollowState::Waiting);
    desk.ask(Ask::NextBar, beats(1.0));
    assert_eq!(seen(&mut desk, 1.0), "D > Em in 4");
    // And once the circle plays, the chosen bar is where it is: the tap says that the next one begins.
    desk.ask(Ask::JumpTo(0), beats(1.5));
    desk.ask(Ask::NextBar, beats(3.0));
    assert_eq!(seen(&mut desk, 3.0), "C > D in 4");
}

#[test]
fn after_going_back_or_being_held_a_tap_says_that_the_next_bar_begins() {
    let mut desk = on_stand(PLAIN);
    for tap in [0.0, 2.0, 2.1] {
        desk.ask(Ask::NextBar, beats(tap));
    }
    desk.ask(Ask::BarBack, beats(2.5)); // one tap too many: the circle is in bar 2
    assert_eq!(seen(&mut desk, 3.0), "C > D in 4");
    desk.ask(Ask::NextBar, beats(4.0));
    assert_eq!(seen(&mut desk, 4.0), "D > Em in 4");
    desk.ask(Ask::Hold, beats(4.5));
    desk.ask(Ask::Hold, beats(9.0));
    desk.ask(Ask::NextBar, beats(10.0));
    assert_eq!(seen(&mut desk, 10.0), "Em > G in 4");
}

#[test]
fn the_end_stays_the_end_when_more_times_are_wanted() {
    let mut desk = on_stand(PLAIN);
    desk.ask(Ask::Times(1), beats(0.0));
    desk.ask(Ask::Clock(true), beats(0.0));
    assert_eq!(view(&mut desk, 60.0).follow, FollowState::Ended);
    desk.ask(Ask::Times(3), beats(60.0));
    let on = view(&mut desk, 65.0);
    assert_eq!((on.time, on.bar.0, on.follow), (1, 4, FollowState::Ended));
    desk.ask(Ask::Clock(true), beats(70.0));
    assert_eq!(view(&mut desk, 72.5).time, 1);
    assert_eq!(view(&mut desk, 80.5).time, 2);
}

#[test]
fn this_is_one_inside_a_pickup_means_the_downbeat_that_it_leads_to() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    // The count ends at 3.5; bar 1 begins at 4. At 11.6 the last bar of A1 is over and its second pickup sounds.
    desk.ask(Ask::ThisIsOne, beats(11.6));
    let now = view(&mut desk, 11.6);
    assert_eq!((now.bar.0, now.form[1].passed), (1, Passed::Now));
}

#[test]
fn a_tempo_in_notes_too_quick_to_count_is_counted_in_what_is_felt() {
    let mut desk = on_stand(&PLAIN.replace("1/2=60", "1/8=400"));
    assert_eq!(view(&mut desk, 0.0).tempo, (100, (1, 2)));
}

#[test]
fn within_a_bar_the_hand_is_filled_in_at_the_pace_of_the_taps_and_waits_at_the_bar_line() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::NextBar, beats(0.0));
    desk.ask(Ask::NextBar, beats(2.0));
    assert_eq!(seen(&mut desk, 2.5), "D > E7 in 1");
    assert_eq!(seen(&mut desk, 3.1), "E7 > A in 2");
    assert_eq!(seen(&mut desk, 60.0), "E7 > A in 1");
    assert!(!desk.is_moving(beats(60.0)));
}

#[test]
fn the_second_time_through_a_part_is_told_from_the_first() {
    let mut desk = on_stand(REEL);
    let chip = |desk: &mut Desk| {
        let view = view(desk, 0.0);
        let now = view
            .form
            .iter()
            .find(|chip| chip.passed == Passed::Now)
            .unwrap();
        format!("{}{}", now.part, now.pass)
    };
    let mut seen = vec![chip(&mut desk)];
    for _ in 0..15 {
        desk.ask(Ask::NextBar, beats(0.0));
        seen.push(chip(&mut desk));
    }
    seen.dedup();
    assert_eq!(seen, ["A1", "A2", "B1", "B2"]);
}

#[test]
fn stepping_past_the_last_bar_of_the_last_time_ends_the_tune() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Times(1), beats(0.0));
    let mut taps = 0;
    while view(&mut desk, 0.0).follow != FollowState::Ended {
        desk.ask(Ask::NextBar, beats(0.0));
        taps += 1;
        assert!(taps < 100);
    }
    assert_eq!(taps, 17, "sixteen bars begin, and the last tap is the end");
    assert_eq!(seen(&mut desk, 0.0), "A >");
    desk.ask(Ask::NextBar, beats(0.0));
    assert_eq!(view(&mut desk, 0.0).follow, FollowState::Ended);
    desk.ask(Ask::BarBack, beats(0.0));
    assert_eq!(view(&mut desk, 0.0).bar, (4, 4));
}

#[test]
fn the_clock_counts_a_bar_and_up_to_the_pickup() {
    // A half-note beat: two beats a bar. The pickup is a quarter, so the count is one bar and three quarters of one.
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    let count = |desk: &mut Desk, now| view(desk, now).follow;
    assert_eq!(
        count(&mut desk, 0.0),
        FollowState::CountIn { beat: 1, bar: 1 }
    );
    assert_eq!(
        count(&mut desk, 1.9),
        FollowState::CountIn { beat: 4, bar: 1 }
    );
    assert_eq!(
        count(&mut desk, 2.1),
        FollowState::CountIn { beat: 1, bar: 2 }
    );
    assert_eq!(
        count(&mut desk, 3.4),
        FollowState::CountIn { beat: 3, bar: 2 }
    );
    assert_eq!(count(&mut desk, 3.6), FollowState::ByClock);
    assert_eq!(view(&mut desk, 3.6).bar.0, 0, "the pickup");
    assert_eq!(view(&mut desk, 4.1).bar.0, 1);
    assert_eq!(seen(&mut desk, 6.1), "D > E7 in 2");
}

#[test]
fn this_is_one_pulls_the_clock_to_the_nearest_bar_line() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    // The clock is at 1.5 beats of bar 1 of two: the player is ahead.
    desk.ask(Ask::ThisIsOne, beats(5.5));
    assert_eq!(view(&mut desk, 5.5).bar.0, 2);
    // And 0.3 beats into bar 2: the player is behind.
    desk.ask(Ask::ThisIsOne, beats(5.8));
    assert_eq!(view(&mut desk, 5.8).bar.0, 2);
    assert_eq!(view(&mut desk, 7.7).bar.0, 2);
    assert_eq!(view(&mut desk, 7.9).bar.0, 3);
}

#[test]
fn held_means_held_and_going_on_means_from_there() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    desk.ask(Ask::Hold, beats(6.5));
    assert_eq!(view(&mut desk, 60.0).follow, FollowState::Held);
    assert_eq!(seen(&mut desk, 60.0), "D > E7 in 1");
    assert!(!desk.is_moving(beats(60.0)));
    desk.ask(Ask::Hold, beats(100.0));
    assert_eq!(seen(&mut desk, 100.4), "D > E7 in 1");
    assert_eq!(seen(&mut desk, 100.6), "E7 > A in 2");
}

#[test]
fn a_touch_on_the_map_or_the_form_is_where_the_clock_goes_on() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    desk.ask(Ask::JumpToPart(3), beats(6.0));
    assert_eq!(view(&mut desk, 6.1).form[3].passed, Passed::Now);
    let bar = view(&mut desk, 6.1).map.last().unwrap().bars[2].played;
    desk.ask(Ask::JumpTo(bar), beats(6.2));
    assert_eq!(seen(&mut desk, 6.3), "E > A in 4");
}

#[test]
fn the_tempo_changes_without_moving_the_place() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Clock(true), beats(0.0));
    desk.ask(Ask::Faster(60), beats(6.5));
    assert_eq!(view(&mut desk, 6.5).tempo, (120, (1, 2)));
    assert_eq!(seen(&mut desk, 6.5), "D > E7 in 1");
    assert_eq!(seen(&mut desk, 6.8), "E7 > A in 2");
}

#[test]
fn four_taps_are_a_tempo() {
    let mut desk = on_stand(REEL);
    for tap in 0..4 {
        desk.ask(Ask::TapTempo, Duration::from_millis(tap * 600));
    }
    assert_eq!(view(&mut desk, 5.0).tempo.0, 100);
}

#[test]
fn the_last_time_can_be_called_and_taken_back() {
    let mut desk = on_stand(REEL);
    assert!(!view(&mut desk, 0.0).last_time);
    desk.ask(Ask::LastTime(true), beats(0.0));
    assert!(view(&mut desk, 0.0).last_time);
    desk.ask(Ask::LastTime(false), beats(0.0));
    assert!(!view(&mut desk, 0.0).last_time);
    desk.ask(Ask::Times(1), beats(0.0));
    desk.ask(Ask::LastTime(false), beats(0.0));
    assert!(
        !view(&mut desk, 0.0).last_time,
        "once more, although it was to be once"
    );
}

#[test]
fn before_a_pickup_the_strum_of_the_whole_bar_is_there_to_be_seen() {
    let mut desk = on_stand(REEL);
    let waiting = view(&mut desk, 0.0).strum;
    assert_eq!((waiting.slots.len(), waiting.now), (8, None));
    desk.ask(Ask::Clock(true), beats(0.0));
    let counting = view(&mut desk, 1.0).strum;
    assert_eq!((counting.slots.len(), counting.now), (8, None));
    let pickup = view(&mut desk, 3.6).strum;
    assert_eq!((pickup.slots.len(), pickup.now), (2, Some(0)));
}
