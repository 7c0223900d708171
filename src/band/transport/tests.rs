//! Where the band is at a frame.

#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small numbers

use crate::band::{BPM, Ramp, Transport};
use crate::chart::{Tempo, Ticks};

const RATE: u32 = 48_000;
const BAR: Ticks = Ticks::WHOLE;

/// Eight bars at 120 quarters a minute: a bar lasts two seconds.
pub(in crate::band) fn transport() -> Transport {
    let mut transport = Transport::new(RATE, tempo(120.0));
    transport.set_length(0, BAR * 8, BAR * 8);
    transport
}

fn tempo(bpm: f32) -> Tempo {
    let beat = Ticks::QUARTER;
    Tempo { bpm, beat }
}

pub(in crate::band) fn seconds(seconds: f64) -> u64 {
    (seconds * f64::from(RATE)).round() as u64
}

fn at(mut transport: Transport, frame: u64) -> (u32, f64) {
    transport.advance(frame);
    let bars = transport.at(frame).quarters() / 4.0;
    (transport.time(), (bars * 1000.0).round() / 1000.0)
}

#[test]
fn the_place_follows_from_the_frame_alone() {
    let mut transport = transport();
    transport.start(seconds(1.0), (0, Ticks::ZERO), BAR);
    assert_eq!(at(transport, seconds(1.0)), (0, -1.0));
    assert_eq!(at(transport, seconds(3.0)), (0, 0.0));
    assert_eq!(at(transport, seconds(4.5)), (0, 0.75));
    // Asked for at once or in many small steps, a day later it is the same place to the tick.
    let day = seconds(86_400.0);
    let (mut once, mut often) = (transport, transport);
    once.advance(day);
    for frame in (0..=day).step_by(4_801) {
        often.advance(frame);
    }
    often.advance(day);
    assert_eq!((once.time(), once.at(day)), (often.time(), often.at(day)));
}

#[test]
fn a_thousand_times_through_do_not_drift() {
    // 97 beats a minute: no bar is a whole number of frames.
    let mut transport = transport();
    transport.set_tempo(0, tempo(97.0));
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    let bars = 8.0 * 1000.0;
    let end = bars * 4.0 * 60.0 / 97.0;
    // To the frame, after five and a half hours.
    assert_eq!(at(transport, seconds(end) + 1), (1000, 0.0));
    assert_eq!(at(transport, seconds(end) - 1), (999, 8.0));
}

#[test]
fn the_frame_of_a_moment_is_the_first_at_which_it_has_come() {
    let mut transport = transport();
    for (bpm, rate) in [
        (30.0, 44_100),
        (97.3, 48_000),
        (300.0, 192_000),
        (120.0, 8_000),
    ] {
        let beat = Ticks::of(1, 8);
        transport = Transport::new(rate, Tempo { bpm, beat });
        transport.set_length(0, BAR * 8, BAR * 8);
        transport.start(1_000, (0, Ticks::ZERO), Ticks::ZERO);
        for moment in (0..BAR.0 * 8).step_by(777_777).chain([0, 1, 2, 3]) {
            let moment = Ticks(moment);
            let frame = transport.frame_of(moment).unwrap();
            assert!(transport.at(frame) >= moment);
            assert!(frame == 1_000 || transport.at(frame - 1) < moment);
        }
    }
    transport.stop(2_000);
    assert_eq!(transport.frame_of(BAR), None);
}

#[test]
fn a_change_of_tempo_does_not_move_the_place() {
    let mut transport = transport();
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    for (i, bpm) in [30.0, 300.0, 47.11, 299.0, 120.0].into_iter().enumerate() {
        let frame = seconds(0.31) * (i as u64 + 1);
        let before = transport.at(frame);
        transport.set_tempo(frame, tempo(bpm));
        assert_eq!(transport.at(frame), before);
    }
}

#[test]
fn no_tempo_leaves_the_range() {
    let mut transport = transport();
    for (asked, got) in [
        (0.0, *BPM.start()),
        (-1.0, *BPM.start()),
        (f32::INFINITY, *BPM.end()),
        (f32::NAN, 120.0),
    ] {
        transport.set_tempo(0, tempo(asked));
        assert_eq!(transport.tempo().bpm.to_bits(), f32::to_bits(got));
    }
}

#[test]
fn the_last_time_through_has_its_own_length_and_then_it_is_over() {
    let mut transport = transport();
    transport.set_length(0, BAR * 8, BAR * 10);
    transport.set_times(0, 2);
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    assert_eq!(at(transport, seconds(16.0)), (1, 0.0));
    assert_eq!(at(transport, seconds(34.0)), (1, 9.0));
    let mut over = transport;
    over.advance(seconds(36.0) + 1);
    assert!(over.is_ended());
    assert_eq!(at(transport, seconds(1000.0)), (1, 10.0));
    // Said in the middle of a tune with no end, too.
    transport.set_times(0, 0);
    transport.set_last(seconds(20.0), true);
    assert_eq!(at(transport, seconds(1000.0)), (1, 10.0));
}

#[test]
fn a_loop_comes_round_and_when_it_is_lifted_the_tune_goes_on() {
    let mut transport = transport();
    transport.set_range(0, Some((BAR * 2, BAR * 3)));
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    assert_eq!(at(transport, seconds(5.0)), (0, 2.5), "played up to");
    assert_eq!(at(transport, seconds(7.0)), (0, 2.5), "and round");
    assert_eq!(at(transport, seconds(1001.0)), (0, 2.5));
    transport.set_range(seconds(7.0), None);
    assert_eq!(at(transport, seconds(9.0)), (0, 3.5));
    // Past its end already: to its start, at once.
    transport.set_range(seconds(9.0), Some((BAR, BAR * 2)));
    assert_eq!(at(transport, seconds(9.0)), (0, 1.0));
    assert_eq!(at(transport, seconds(12.0)), (0, 1.5));
}

#[test]
fn a_loop_of_no_length_is_none() {
    let mut transport = transport();
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    for range in [
        (BAR, BAR),
        (BAR * 2, BAR),
        (BAR * 8, BAR * 9),
        (BAR, BAR + Ticks(1)),
    ] {
        transport.set_range(0, Some(range));
        assert_eq!(transport.range(), None, "{range:?}");
    }
    let mut nothing = Transport::new(RATE, transport.tempo());
    nothing.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    nothing.advance(1);
    assert!(nothing.is_ended(), "a tune of no length is over at once");
}

#[test]
fn the_ramp_is_faster_after_each_clean_pass_up_to_the_ceiling() {
    let mut transport = transport();
    transport.set_range(0, Some((BAR, BAR * 2)));
    let (percent, ceiling) = (10.0, 130.0);
    transport.set_ramp(Some(Ramp { percent, ceiling }));
    transport.start(0, (0, BAR), BAR);
    let bpm = |transport: Transport, frame| {
        let mut then = transport;
        then.advance(frame);
        then.tempo().bpm
    };
    assert!((bpm(transport, seconds(3.9)) - 120.0).abs() < 1e-3);
    assert!(
        (bpm(transport, seconds(4.1)) - 130.0).abs() < 1e-3,
        "not 132"
    );
    assert!((bpm(transport, seconds(60.0)) - 130.0).abs() < 1e-3);
    // A pass with a stop in it was not clean, and the next one is.
    transport.set_ramp(Some(Ramp {
        percent,
        ceiling: 200.0,
    }));
    transport.hold(seconds(3.0), true);
    transport.hold(seconds(10.0), false);
    assert!((bpm(transport, seconds(11.1)) - 120.0).abs() < 1e-3);
    assert!((bpm(transport, seconds(13.1)) - 132.0).abs() < 1e-3);
}

#[test]
fn a_pull_is_heard_as_if_it_had_always_been_so() {
    let mut transport = transport();
    transport.start(0, (0, Ticks::ZERO), Ticks::ZERO);
    // At 5 s a player who heard the sound of 4.9 s says: this was the 1 of bar 3.
    transport.go(seconds(4.9), (0, BAR * 3));
    assert_eq!(at(transport, seconds(5.0)), (0, 3.05));
}
