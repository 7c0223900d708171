//! Following: where in the tune the circle is, by the player's hand or by the clock.
//!
//! By hand, the player says where each bar begins and the clock only fills the bar: it walks to the bar's end at the
//! pace of the last taps and waits there for the next one. By clock, the place follows from the time alone. Either way
//! it is the band's transport that goes, here over the frames of the wall clock: any moment can be asked for and nothing
//! has to tick.

use std::time::Duration;

pub(super) use crate::band::Place;
use crate::band::{Transport, count_in};
use crate::chart::{Playing, Tempo, Ticks};

pub use crate::band::BPM;

/// Frames a second that the wall clock is counted in: those of the sound.
const RATE: u32 = 48_000;

/// A pause longer than this begins a new series of taps.
const TAPS_APART: Duration = Duration::from_secs(3);

/// A bar said by hand that is this much longer or shorter than expected was a stumble, not a change of pace.
const PACE: std::ops::RangeInclusive<f64> = 0.6..=1.6;

#[derive(Debug, Clone, Copy, PartialEq)]
enum Motion {
    /// Still, and nothing has begun: the next word of the player begins the bar that is waited for.
    Waiting,
    /// Still, in a bar that the circle plays: the next word of the player begins the bar after it.
    Paused,
    /// A bar began by hand at this moment, here.
    Hand(Duration, (u32, Ticks)),
    /// The clock leads.
    Clock,
    /// Held; whether the clock goes on afterwards.
    Held { clock: bool },
}

/// The follower of one tune: the band's transport, led by a hand or by the wall clock.
#[derive(Debug, Clone)]
pub(super) struct Follow {
    motion: Motion,
    transport: Transport,
    taps: Vec<Duration>,
}

/// The frame that a moment is nearest to.
fn frame(now: Duration) -> u64 {
    let frames = (now.as_nanos() * u128::from(RATE) + 500_000_000) / 1_000_000_000;
    u64::try_from(frames).unwrap_or(u64::MAX)
}

impl Follow {
    /// At the first bar, waiting. `times` 0 goes on until it is stopped.
    pub(super) fn new(playing: &Playing, tempo: Tempo, times: u32) -> Self {
        let mut transport = Transport::new(RATE, tempo);
        transport.set_length(0, playing.length, playing.length);
        transport.set_times(0, times);
        Self {
            motion: Motion::Waiting,
            transport,
            taps: Vec::new(),
        }
    }

    /// The tempo.
    pub(super) fn tempo(&self) -> Tempo {
        self.transport.tempo()
    }

    /// How often the tune is played; 0 is open.
    pub(super) fn times(&self) -> u32 {
        self.transport.times()
    }

    /// Whether something moves, so that the view must be asked for again and again.
    pub(super) fn is_moving(&self, playing: &Playing, now: Duration) -> bool {
        match self.motion {
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => false,
            Motion::Clock => !self.place(playing, now).ended,
            Motion::Hand(_, from) => {
                let place = self.place(playing, now);
                !place.ended && (place.time, place.at) != hand_limit(playing, from)
            }
        }
    }

    /// Whether the clock leads.
    pub(super) fn by_clock(&self) -> bool {
        self.motion == Motion::Clock
    }

    /// Whether it is held.
    pub(super) fn is_held(&self) -> bool {
        matches!(self.motion, Motion::Held { .. })
    }

    /// Whether nothing has begun.
    pub(super) fn is_waiting(&self) -> bool {
        self.motion == Motion::Waiting
    }

    /// Whether this time through is the last.
    pub(super) fn is_last(&self, time: u32) -> bool {
        self.transport.is_last(time)
    }

    /// Whether a player has to be told that this time through is the last: not where it is the only one.
    pub(super) fn calls_the_last(&self, time: u32) -> bool {
        self.is_last(time) && (time > 0 || self.transport.called_last().is_some())
    }

    /// Where the circle is. A hand's bar waits at its end.
    pub(super) fn place(&self, playing: &Playing, now: Duration) -> Place {
        let place = self.transport.place(playing, frame(now));
        match self.motion {
            Motion::Hand(_, from) => {
                let limit = hand_limit(playing, from).max(from);
                // Behind the last bar of the last time comes the end.
                if limit.0 > from.0 && self.is_last(from.0) || from.1 >= playing.length {
                    place
                } else if place.ended || (place.time, place.at) > limit {
                    Place::of(playing, limit.0, limit.1)
                } else {
                    place
                }
            }
            _ => place,
        }
    }

    /// What the transport has walked beyond the end of a hand's bar is taken back.
    fn settle(&mut self, playing: &Playing, now: Duration) {
        if let Motion::Hand(..) = self.motion {
            let place = self.place(playing, now);
            if !place.ended {
                self.transport.go(frame(now), (place.time, place.at));
                self.transport.hold(frame(now), false);
            }
        }
    }

    /// Goes to a bar. What moves goes on moving from there.
    fn go(&mut self, playing: &Playing, now: Duration, (time, bar): (u32, usize)) {
        let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
        self.go_to(now, (time, start));
    }

    fn go_to(&mut self, now: Duration, to: (u32, Ticks)) {
        self.transport.go(frame(now), to);
        match &mut self.motion {
            Motion::Hand(since, from) => (*since, *from) = (now, to),
            Motion::Clock => {}
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => return,
        }
        self.transport.hold(frame(now), false);
    }

    /// Stands still at a bar.
    fn stand(&mut self, playing: &Playing, now: Duration, to: (u32, usize), still: Motion) {
        self.transport.stop(frame(now));
        self.motion = still;
        self.go(playing, now, to);
    }

    /// The player says that the next bar begins now: before anything has begun, the bar that is waited for. A pickup is
    /// part of the bar before it. Past the end the tune is over.
    pub(super) fn next_bar(&mut self, playing: &Playing, now: Duration) {
        let place = self.place(playing, now);
        if place.ended {
            return;
        }
        self.learn_pace(playing, now);
        let downbeat = playing.bars.get(place.bar).is_some_and(|bar| !bar.pickup);
        let next = if self.is_waiting() && downbeat {
            (place.time, place.bar)
        } else {
            next_downbeat(playing, place)
        };
        if !self.by_clock() {
            self.motion = Motion::Hand(now, (place.time, place.at));
        }
        if next.0 > place.time && self.is_last(place.time) {
            self.go_to(now, (place.time, playing.length));
        } else {
            self.go(playing, now, next);
        }
    }

    /// A bar back: to the start of the bar before, over the start of a time through as well.
    pub(super) fn bar_back(&mut self, playing: &Playing, now: Duration) {
        let place = self.place(playing, now);
        let to = if place.ended {
            (place.time, place.bar)
        } else if place.bar > 0 {
            (place.time, place.bar - 1)
        } else if place.time > 0 {
            (place.time - 1, playing.bars.len().saturating_sub(1))
        } else {
            (0, 0)
        };
        if matches!(self.motion, Motion::Hand(..)) {
            // The circle is in that bar: it waits there for the next.
            self.stand(playing, now, to, Motion::Paused);
        } else {
            self.go(playing, now, to);
        }
    }

    /// To a bar of this time through.
    pub(super) fn jump(&mut self, playing: &Playing, now: Duration, bar: usize) {
        let place = self.place(playing, now);
        let bar = bar.min(playing.bars.len().saturating_sub(1));
        self.go(playing, now, (place.time, bar));
    }

    /// The player is on the first beat of a bar now: the nearest downbeat is pulled here. Waiting or counting in, the
    /// first full bar begins.
    pub(super) fn this_is_one(&mut self, playing: &Playing, now: Duration) {
        let place = self.place(playing, now);
        if place.ended || playing.bars.is_empty() {
            return;
        }
        let still = place.counted.is_some() || self.is_waiting();
        let before =
            downbeat_before(playing, place).filter(|_| !still || !playing.bars[place.bar].pickup);
        let next = next_downbeat(playing, place);
        let start =
            |(time, bar): (u32, usize)| playing.length * i64::from(time) + playing.bars[bar].start;
        let here = playing.length * i64::from(place.time) + place.at;
        let to = match before {
            Some(before) if still || here - start(before) <= start(next) - here => before,
            _ => next,
        };
        match self.motion {
            Motion::Waiting | Motion::Paused | Motion::Held { clock: false } => {
                self.motion = Motion::Hand(now, (place.time, place.at));
            }
            Motion::Held { clock: true } => self.motion = Motion::Clock,
            Motion::Hand(..) | Motion::Clock => {}
        }
        self.go(playing, now, to);
    }

    /// Stops where it is, or goes on from there.
    pub(super) fn hold(&mut self, playing: &Playing, now: Duration) {
        match self.motion {
            Motion::Held { clock: true } => {
                self.transport.hold(frame(now), false);
                self.motion = Motion::Clock;
            }
            Motion::Held { clock: false } => self.motion = Motion::Paused,
            Motion::Clock => {
                self.transport.hold(frame(now), true);
                self.motion = Motion::Held { clock: true };
            }
            Motion::Hand(..) | Motion::Waiting | Motion::Paused => {
                let place = self.place(playing, now);
                let held = Motion::Held { clock: false };
                self.stand(playing, now, (place.time, place.bar), held);
            }
        }
    }

    /// Starts the clock at the bar now, after a count-in of a full bar and of the part of a bar before a pickup; or stops
    /// it. A tune that is over starts again.
    pub(super) fn clock(&mut self, playing: &Playing, now: Duration, on: bool) {
        let place = self.place(playing, now);
        let (time, bar) = match place.ended {
            true if on => (0, 0),
            _ => (place.time, place.bar),
        };
        let begun = !self.is_waiting() && place.counted.is_none();
        let still = if begun {
            Motion::Paused
        } else {
            Motion::Waiting
        };
        self.stand(playing, now, (time, bar), still);
        if on && let Some(bar) = playing.bars.get(bar) {
            let count = count_in(bar.metre, bar.offset).length;
            self.transport.start(frame(now), (time, bar.start), count);
            self.motion = Motion::Clock;
        }
    }

    /// Changes the tempo from here on.
    pub(super) fn change_bpm(&mut self, playing: &Playing, now: Duration, bpm: f32) {
        self.settle(playing, now);
        let tempo = Tempo {
            bpm,
            ..self.tempo()
        };
        self.transport.set_tempo(frame(now), tempo);
    }

    /// A tap in the tempo that is wanted: from the second tap on, the tempo is the mean of the last four.
    pub(super) fn tap(&mut self, playing: &Playing, now: Duration) {
        if self
            .taps
            .last()
            .is_some_and(|&last| now.saturating_sub(last) > TAPS_APART)
        {
            self.taps.clear();
        }
        self.taps.push(now);
        if self.taps.len() > 5 {
            self.taps.remove(0);
        }
        if let [first, .., last] = self.taps[..] {
            let beats = u16::try_from(self.taps.len() - 1).unwrap_or(1);
            let seconds = last.saturating_sub(first).as_secs_f32() / f32::from(beats);
            if seconds > 0.0 {
                self.change_bpm(playing, now, 60.0 / seconds);
            }
        }
    }

    /// Bars said by hand show how fast the circle plays.
    fn learn_pace(&mut self, playing: &Playing, now: Duration) {
        let Motion::Hand(since, from) = self.motion else {
            return;
        };
        let seconds = now.saturating_sub(since).as_secs_f64();
        let limit = hand_limit(playing, from);
        let times = i64::from(limit.0) - i64::from(from.0);
        let length = playing.length * times + limit.1 + Ticks(1) - from.1;
        let tempo = self.tempo();
        let beats = length.quarters() / tempo.beat.quarters();
        if seconds <= 0.0 || beats <= 0.0 {
            return;
        }
        let bpm = beats * 60.0 / seconds;
        let pace = bpm / f64::from(tempo.bpm);
        if PACE.contains(&pace) {
            #[allow(clippy::cast_possible_truncation)] // a tempo between 18 and 480
            let bpm = ((f64::from(tempo.bpm) + bpm) / 2.0) as f32;
            self.change_bpm(playing, now, bpm);
        }
    }

    /// How often the tune is played in all; 0 goes on.
    pub(super) fn set_times(&mut self, playing: &Playing, now: Duration, times: u32) {
        self.settle(playing, now);
        self.transport.set_times(frame(now), times);
    }

    /// The time through now is the last one, or is not.
    pub(super) fn set_last(&mut self, playing: &Playing, now: Duration, last: bool) {
        self.settle(playing, now);
        self.transport.set_last(frame(now), last);
    }
}

/// Where the hand's bar ends that began here: a tick before the next downbeat, the pickup before it included.
fn hand_limit(playing: &Playing, from: (u32, Ticks)) -> (u32, Ticks) {
    let place = Place::of(playing, from.0, from.1);
    let (time, bar) = next_downbeat(playing, place);
    let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
    match start > Ticks::ZERO {
        true => (time, start - Ticks(1)),
        false => (place.time, playing.length - Ticks(1)),
    }
}

/// The next bar that begins with a downbeat: pickups belong to the bar before them.
fn next_downbeat(playing: &Playing, place: Place) -> (u32, usize) {
    let after = playing.bars.iter().enumerate().skip(place.bar + 1);
    if let Some((bar, _)) = after.into_iter().find(|(_, bar)| !bar.pickup) {
        return (place.time, bar);
    }
    let first = playing.bars.iter().position(|bar| !bar.pickup).unwrap_or(0);
    (place.time.saturating_add(1), first)
}

/// The downbeat at a place or the last one before it; `None` in what leads into the very first.
fn downbeat_before(playing: &Playing, place: Place) -> Option<(u32, usize)> {
    let so_far = &playing.bars[..playing.bars.len().min(place.bar + 1)];
    if let Some(bar) = so_far.iter().rposition(|bar| !bar.pickup) {
        return Some((place.time, bar));
    }
    let last = playing.bars.iter().rposition(|bar| !bar.pickup)?;
    Some((place.time.checked_sub(1)?, last))
}
