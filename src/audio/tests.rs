//! The sound beside a device that is played here, block by block.

#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small numbers

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

use super::{BLOCK, Callback, RATE, Sound};
use crate::band::{Command, CountIn, Event, Player, Score, Sound as Strike};
use crate::chart::{Tempo, Ticks};
use crate::desk::Heard;

fn ms(ms: u64) -> Duration {
    Duration::from_millis(ms)
}

fn frames(ms: u64) -> u64 {
    ms * u64::from(RATE) / 1000
}

/// A device that plays a frame each 48,000th of a second from its first block on, and asks for a block when one of two
/// is over.
#[derive(Debug)]
struct Device {
    callback: Rc<RefCell<Callback>>,
    opened: Duration,
    blocks: u64,
}

impl Device {
    fn on(sound: &mut Sound, now: Duration) -> Self {
        let mut held = None;
        sound.attach(now, |callback| {
            let callback = Rc::new(RefCell::new(callback));
            held = Some(Rc::clone(&callback));
            Some(callback)
        });
        Self {
            callback: held.unwrap(),
            opened: now,
            blocks: 0,
        }
    }

    /// Asks for all blocks that are due.
    fn run(&mut self, now: Duration) {
        let block = Duration::from_secs(1) * BLOCK as u32 / RATE;
        let mut out = [0.0; 2 * BLOCK];
        loop {
            let due = self.opened + block * u32::try_from(self.blocks.saturating_sub(1)).unwrap();
            if due > now {
                return;
            }
            self.callback.borrow_mut().fill(&mut out, due);
            self.blocks += 1;
        }
    }
}

fn tempo(bpm: f32) -> Command {
    let beat = Ticks::QUARTER;
    Command::Tempo(Tempo { bpm, beat })
}

fn play() -> Command {
    let count = CountIn::default();
    Command::Play {
        from: (0, Ticks::ZERO),
        count,
    }
}

/// A sound that has begun to play 64 bars at moment 0.
fn begun() -> Sound {
    let mut sound = Sound::new(ms(0));
    let length = Ticks::WHOLE * 64;
    let click = Event {
        at: Ticks::ZERO,
        after_ms: 0.0,
        player: Player::Click,
        force: 1.0,
        sound: Strike::Click { first: true },
    };
    let events = vec![click; 3];
    let score = Score {
        last: events.clone(),
        events,
        length,
        last_length: length,
        ..Score::default()
    };
    sound.send(ms(0), Command::Score(Arc::new(score)));
    sound.send(ms(0), tempo(120.0));
    sound.send(ms(0), play());
    sound
}

/// Quarters that are heard to have gone by.
fn quarters(sound: &mut Sound, now: u64) -> f64 {
    let frame = sound.frame(ms(now));
    sound.transport().at(frame).quarters()
}

#[test]
fn without_a_device_the_tune_goes_by_the_wall_clock() {
    let mut sound = begun();
    assert_eq!(sound.heard(), Heard::SwitchedOff);
    assert!((quarters(&mut sound, 1_000) - 2.0).abs() < 1e-4);
    sound.send(ms(2_000), tempo(60.0));
    assert!((quarters(&mut sound, 3_000) - 5.0).abs() < 1e-4);
    sound.attach(ms(3_000), |_| None::<()>);
    assert_eq!(sound.heard(), Heard::NoDevice);
    assert!((quarters(&mut sound, 4_000) - 6.0).abs() < 1e-4);
}

#[test]
fn what_is_shown_is_what_is_heard_within_20_ms() {
    let mut sound = Sound::new(ms(0));
    let mut device = Device::on(&mut sound, ms(0));
    device.run(ms(0));
    let first = sound.frame(ms(0));
    // The screen looks when it likes; the device plays on.
    for now in (0..60_000).step_by(17) {
        device.run(ms(now));
        let shown = sound.frame(ms(now));
        let heard = first + frames(now);
        assert!(
            shown.abs_diff(heard) < frames(20),
            "{shown} for {heard} at {now} ms"
        );
    }
    assert_eq!(sound.heard(), Heard::Aloud);
}

#[test]
fn a_device_that_is_switched_on_in_mid_tune_plays_on() {
    let mut sound = begun();
    quarters(&mut sound, 5_000);
    let mut device = Device::on(&mut sound, ms(5_000));
    for now in (5_000..7_000).step_by(10) {
        device.run(ms(now));
        let (heard, expected) = (quarters(&mut sound, now), now as f64 / 500.0);
        assert!((heard - expected).abs() < 0.04, "{heard} for {expected}");
    }
    // And a command is seen when it is heard, not when it is sent.
    sound.send(ms(7_000), tempo(240.0));
    for now in (7_000..9_000).step_by(10) {
        device.run(ms(now));
        quarters(&mut sound, now);
    }
    assert!((quarters(&mut sound, 9_000) - 22.0).abs() < 0.3);
    sound.switch_off(ms(9_000));
    assert!((quarters(&mut sound, 10_000) - 26.0).abs() < 0.3);
}

#[test]
fn a_device_that_goes_away_does_not_stop_the_tune() {
    let mut sound = begun();
    let mut device = Device::on(&mut sound, ms(0));
    for now in (0..4_000).step_by(10) {
        device.run(ms(now));
        quarters(&mut sound, now);
    }
    // A command is on its way when the device stops for good.
    sound.send(ms(4_000), tempo(60.0));
    let mut before = quarters(&mut sound, 4_000);
    for now in (4_000..8_000).step_by(10) {
        let then = quarters(&mut sound, now);
        assert!(
            (0.0..0.05).contains(&(then - before)),
            "no jump at {now} ms"
        );
        before = then;
    }
    assert_eq!(sound.heard(), Heard::DeviceLost);
    // The clock went on at once; the command was carried out when the loss was seen.
    assert!((quarters(&mut sound, 14_500) - (9.0 + 10.0)).abs() < 0.2);
    // Another device, or the same one, takes it up again.
    let mut device = Device::on(&mut sound, ms(15_000));
    device.run(ms(15_100));
    assert!((quarters(&mut sound, 15_100) - 19.6).abs() < 0.3);
    assert_eq!(sound.heard(), Heard::Aloud);
}

#[test]
fn a_device_that_stutters_is_followed() {
    let mut sound = begun();
    let mut device = Device::on(&mut sound, ms(0));
    for now in (0..4_000).step_by(10) {
        device.run(ms(now));
        quarters(&mut sound, now);
    }
    // For 400 ms nothing sounds, then it goes on where it was.
    device.opened += ms(400);
    for now in (4_000..8_000).step_by(10) {
        device.run(ms(now));
        quarters(&mut sound, now);
    }
    assert_eq!(sound.heard(), Heard::Aloud);
    let heard = quarters(&mut sound, 8_000);
    assert!((heard - 15.2).abs() < 0.04, "{heard}");
}

#[test]
fn a_device_that_runs_away_is_lost_too() {
    let mut sound = begun();
    let mut device = Device::on(&mut sound, ms(0));
    device.run(ms(100));
    quarters(&mut sound, 100);
    device.run(ms(100));
    let mut out = [0.0; 2 * BLOCK];
    for _ in 0..1_000 {
        device.callback.borrow_mut().fill(&mut out, ms(110));
    }
    assert!((quarters(&mut sound, 120) - 0.24).abs() < 0.05);
    assert_eq!(sound.heard(), Heard::DeviceLost);
}

#[test]
fn more_commands_than_the_queue_holds_all_arrive_in_order() {
    let mut sound = begun();
    let mut device = Device::on(&mut sound, ms(0));
    for i in 0..1_000 {
        sound.send(ms(10), tempo(60.0 + (i % 100) as f32));
        sound.send(ms(10), play());
    }
    for now in (10..600).step_by(10) {
        device.run(ms(now));
        quarters(&mut sound, now);
    }
    assert!((sound.transport().tempo().bpm - 159.0).abs() < 1e-3);
}

#[test]
fn a_way_from_the_device_to_the_ear_is_waited_for() {
    let mut sound = begun();
    let mut device = Device::on(&mut sound, ms(0));
    let run = |sound: &mut Sound, device: &mut Device, from: u64, until: u64| {
        for now in (from..until).step_by(10) {
            device.run(ms(now));
            quarters(sound, now);
        }
        quarters(sound, until)
    };
    let straight = run(&mut sound, &mut device, 0, 4_000);
    // Two quarters a second: 400 ms are 0.8 of one. What is shown stands until it is heard, and never goes back.
    sound.set_delay(ms(4_000), ms(400));
    assert!((quarters(&mut sound, 4_000) - straight).abs() < 1e-6);
    let late = run(&mut sound, &mut device, 4_000, 8_000);
    assert!(
        (late - (straight + 8.0 - 0.8)).abs() < 0.04,
        "{straight} {late}"
    );
    // Without the delay it is where it would have been.
    sound.set_delay(ms(8_000), ms(0));
    let again = run(&mut sound, &mut device, 8_000, 12_000);
    assert!(
        (again - (straight + 16.0)).abs() < 0.04,
        "{straight} {again}"
    );
    assert_eq!(sound.heard(), Heard::Aloud);
}

#[test]
fn a_device_that_is_switched_on_while_it_counts_counts_on() {
    let mut sound = Sound::new(ms(0));
    let length = Ticks::WHOLE * 4;
    sound.send(
        ms(0),
        Command::Score(Arc::new(Score {
            length,
            last_length: length,
            ..Score::default()
        })),
    );
    sound.send(ms(0), tempo(60.0));
    let count = crate::band::count_in(crate::chart::Metre::COMMON, Ticks::ZERO);
    let from = (0, Ticks::ZERO);
    sound.send(ms(0), Command::Play { from, count });
    // Two of four clicks have gone by in silence; the other two are heard, a second apart.
    sound.frame(ms(1_500));
    let device = Device::on(&mut sound, ms(1_500));
    let mut loud = Vec::new();
    let mut out = [0.0; 2 * BLOCK];
    for block in 0..4 * RATE as usize / BLOCK {
        device.callback.borrow_mut().fill(&mut out, ms(1_500));
        if out.iter().any(|sample: &f32| sample.abs() > 0.02) {
            loud.push(1.5 + (block * BLOCK) as f64 / f64::from(RATE));
        }
    }
    let starts: Vec<f64> = loud
        .iter()
        .enumerate()
        .filter(|&(i, at)| i == 0 || at - loud[i - 1] > 0.2)
        .map(|(_, &at)| at)
        .collect();
    assert_eq!(starts.len(), 2, "{starts:?}");
    for (start, expected) in starts.iter().zip([2.0, 3.0]) {
        assert!((start - expected).abs() < 0.06, "{starts:?}");
    }
}
