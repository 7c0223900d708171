//! Following: where in the tune the circle is, by the player's hand or by the clock.
//!
//! By hand, the player says where each bar begins and the clock only fills the bar: it walks to the bar's end at the
//! pace of the last taps and waits there for the next one. By clock, the place follows from the time alone. Either way
//! the state is one anchor (a moment and a place), so that any moment can be asked for and nothing has to tick.

use std::time::Duration;

use crate::chart::{Playing, Tempo, Ticks};

/// Slowest and fastest tempo, in beats a minute.
pub const BPM: std::ops::RangeInclusive<f32> = 30.0..=300.0;

/// A pause longer than this begins a new series of taps.
const TAPS_APART: Duration = Duration::from_secs(3);

/// A bar said by hand that is this much longer or shorter than expected was a stumble, not a change of pace.
const PACE: std::ops::RangeInclusive<f64> = 0.6..=1.6;

/// Where the circle is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Place {
    /// Time through, from 0.
    pub time: u32,
    /// Index of the bar in playing order.
    pub bar: usize,
    /// From the start of the time through.
    pub at: Ticks,
    /// While counting in: how much of the count has gone by.
    pub counted: Option<Ticks>,
    /// The tune is over: the place is its last moment.
    pub ended: bool,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Motion {
    /// Still, and nothing has begun: the next word of the player begins the bar of the anchor.
    Waiting,
    /// Still, in the bar of the anchor: the next word of the player begins the bar after it.
    Paused,
    /// A bar began by hand at this moment.
    Hand(Duration),
    /// The clock was at the anchor at this moment.
    Clock(Duration),
    /// Held; whether the clock goes on afterwards.
    Held { clock: bool },
}

/// The follower of one tune. Places are counted in ticks from the first bar of the first time through.
#[derive(Debug, Clone)]
pub(super) struct Follow {
    motion: Motion,
    /// The place at the moment of the motion; where it is still, the place itself.
    anchor: Ticks,
    /// Where the clock's count-in leads to: before it, the circle counts.
    begin: Ticks,
    tempo: Tempo,
    times: u32,
    /// The time through, from 0, that was said to be the last.
    last: Option<u32>,
    taps: Vec<Duration>,
}

impl Follow {
    /// At the first bar, waiting. `times` 0 goes on until it is stopped.
    pub(super) fn new(tempo: Tempo, times: u32) -> Self {
        let mut follow = Self {
            motion: Motion::Waiting,
            anchor: Ticks::ZERO,
            begin: Ticks::ZERO,
            tempo,
            times,
            last: None,
            taps: Vec::new(),
        };
        follow.set_bpm(tempo.bpm);
        follow
    }

    /// The tempo.
    pub(super) fn tempo(&self) -> Tempo {
        self.tempo
    }

    /// How often the tune is played; 0 is open.
    pub(super) fn times(&self) -> u32 {
        self.times
    }

    /// Whether something moves, so that the view must be asked for again and again.
    pub(super) fn is_moving(&self, playing: &Playing, now: Duration) -> bool {
        match self.motion {
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => false,
            Motion::Clock(_) => !self.place(playing, now).ended,
            Motion::Hand(since) => self.anchor + self.walked(since, now) < self.hand_limit(playing),
        }
    }

    /// Whether the clock leads.
    pub(super) fn by_clock(&self) -> bool {
        matches!(self.motion, Motion::Clock(_))
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
        self.end().is_some_and(|end| time + 1 >= end)
    }

    /// Whether a player has to be told that this time through is the last: not where it is the only one.
    pub(super) fn calls_the_last(&self, time: u32) -> bool {
        self.is_last(time) && (time > 0 || self.last.is_some())
    }

    /// How many times through there are in all, if there is an end.
    fn end(&self) -> Option<u32> {
        let planned = (self.times > 0).then_some(self.times);
        match (planned, self.last) {
            (Some(planned), Some(last)) => Some(planned.min(last + 1)),
            (planned, last) => planned.or(last.map(|last| last + 1)),
        }
    }

    /// Ticks that the pace covers in a span of time.
    fn walked(&self, since: Duration, now: Duration) -> Ticks {
        self.tempo.ticks(now.saturating_sub(since).as_secs_f64())
    }

    /// Where the hand's bar ends: at the next downbeat, the pickup before it included.
    fn hand_limit(&self, playing: &Playing) -> Ticks {
        let place = locate(playing, self.anchor);
        self.start_of(playing, next_downbeat(playing, place)) - Ticks(1)
    }

    /// The place now, in ticks from the first bar of the first time through; before `begin` while counting in.
    fn absolute(&self, playing: &Playing, now: Duration) -> Ticks {
        let at = match self.motion {
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => self.anchor,
            Motion::Clock(since) => self.anchor + self.walked(since, now),
            Motion::Hand(since) => {
                let limit = self.hand_limit(playing).max(self.anchor);
                (self.anchor + self.walked(since, now)).min(limit)
            }
        };
        match self.end() {
            Some(end) => at.min(playing.length * i64::from(end)),
            None => at,
        }
    }

    /// Where the circle is.
    pub(super) fn place(&self, playing: &Playing, now: Duration) -> Place {
        let at = self.absolute(playing, now);
        if at < self.begin {
            let place = locate(playing, self.begin);
            let bar = playing.bars.get(place.bar);
            let count = bar.map_or(Ticks::ZERO, |bar| count_in(bar.metre.bar(), bar.offset));
            return Place {
                counted: Some(count - (self.begin - at)),
                ..place
            };
        }
        let end = self.end().map(|end| playing.length * i64::from(end));
        if end.is_some_and(|end| at >= end) && playing.length > Ticks::ZERO {
            return Place {
                ended: true,
                ..locate(playing, at - Ticks(1))
            };
        }
        locate(playing, at)
    }

    fn start_of(&self, playing: &Playing, (time, bar): (u32, usize)) -> Ticks {
        let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
        playing.length * i64::from(time) + start
    }

    /// Goes to a bar. What moves goes on moving from there.
    fn go(&mut self, playing: &Playing, now: Duration, to: (u32, usize)) {
        self.anchor = self.start_of(playing, to);
        self.begin = Ticks::ZERO;
        match &mut self.motion {
            Motion::Hand(since) | Motion::Clock(since) => *since = now,
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => {}
        }
    }

    /// What moves goes on from here: whatever changes now changes nothing of what has been.
    fn pin(&mut self, playing: &Playing, now: Duration) {
        let at = self.absolute(playing, now);
        if let Motion::Clock(since) | Motion::Hand(since) = &mut self.motion {
            *since = now;
            self.anchor = at;
        }
    }

    /// The player says that the next bar begins now: before anything has begun, the bar that is waited for. A pickup is
    /// part of the bar before it. Past the end the tune is over.
    pub(super) fn next_bar(&mut self, playing: &Playing, now: Duration) {
        let place = self.place(playing, now);
        if place.ended {
            return;
        }
        self.learn_pace(playing, now, place);
        let begins =
            self.is_waiting() && playing.bars.get(place.bar).is_some_and(|bar| !bar.pickup);
        let next = if begins {
            (place.time, place.bar)
        } else {
            next_downbeat(playing, place)
        };
        if !self.by_clock() {
            self.motion = Motion::Hand(now);
        }
        self.go(playing, now, next);
        if self.end().is_some_and(|end| next.0 >= end) {
            self.anchor = playing.length * i64::from(next.0);
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
        if matches!(self.motion, Motion::Hand(_)) {
            // The circle is in that bar: it waits there for the next.
            self.motion = Motion::Paused;
        }
        self.go(playing, now, to);
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
        let next = next_downbeat(playing, place);
        let before =
            downbeat_before(playing, place).filter(|_| !still || !playing.bars[place.bar].pickup);
        let here = playing.length * i64::from(place.time) + place.at;
        let to = match before {
            Some(before)
                if still
                    || here - self.start_of(playing, before)
                        <= self.start_of(playing, next) - here =>
            {
                before
            }
            _ => next,
        };
        if matches!(
            self.motion,
            Motion::Waiting | Motion::Paused | Motion::Held { clock: false }
        ) {
            self.motion = Motion::Hand(now);
        } else if self.motion == (Motion::Held { clock: true }) {
            self.motion = Motion::Clock(now);
        }
        self.go(playing, now, to);
    }

    /// Stops where it is, or goes on from there.
    pub(super) fn hold(&mut self, playing: &Playing, now: Duration) {
        let at = self.absolute(playing, now);
        match self.motion {
            Motion::Held { clock: true } => self.motion = Motion::Clock(now),
            Motion::Held { clock: false } => self.motion = Motion::Paused,
            Motion::Clock(_) => {
                self.anchor = at;
                self.motion = Motion::Held { clock: true };
            }
            Motion::Hand(_) | Motion::Waiting | Motion::Paused => {
                let place = self.place(playing, now);
                self.anchor = self.start_of(playing, (place.time, place.bar));
                self.motion = Motion::Held { clock: false };
            }
        }
    }

    /// Starts the clock at the bar now, after a count-in of a full bar and of the part of a bar before a pickup; or stops
    /// it. A tune that is over starts again.
    pub(super) fn clock(&mut self, playing: &Playing, now: Duration, on: bool) {
        let place = self.place(playing, now);
        let begun = !self.is_waiting() && place.counted.is_none();
        let from = match place.ended {
            true if on => (0, 0),
            _ => (place.time, place.bar),
        };
        self.anchor = self.start_of(playing, from);
        self.begin = Ticks::ZERO;
        self.motion = if begun {
            Motion::Paused
        } else {
            Motion::Waiting
        };
        if on && let Some(bar) = playing.bars.get(from.1) {
            if from == (0, 0) {
                self.last = None;
            }
            self.begin = self.anchor;
            self.anchor -= count_in(bar.metre.bar(), bar.offset);
            self.motion = Motion::Clock(now);
        }
    }

    /// Sets the tempo in beats a minute; the place stays where it is.
    fn set_bpm(&mut self, bpm: f32) {
        self.tempo.bpm = bpm.clamp(*BPM.start(), *BPM.end());
    }

    /// Changes the tempo from here on.
    pub(super) fn change_bpm(&mut self, playing: &Playing, now: Duration, bpm: f32) {
        self.pin(playing, now);
        self.set_bpm(bpm);
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
    fn learn_pace(&mut self, playing: &Playing, now: Duration, place: Place) {
        let Motion::Hand(since) = self.motion else {
            return;
        };
        let seconds = now.saturating_sub(since).as_secs_f64();
        let length = self.start_of(playing, next_downbeat(playing, place)) - self.anchor;
        let beats = length.quarters() / self.tempo.beat.quarters();
        if seconds <= 0.0 || beats <= 0.0 {
            return;
        }
        let bpm = beats * 60.0 / seconds;
        let pace = bpm / f64::from(self.tempo.bpm);
        if PACE.contains(&pace) {
            #[allow(clippy::cast_possible_truncation)] // a tempo between 18 and 480
            self.set_bpm(((f64::from(self.tempo.bpm) + bpm) / 2.0) as f32);
        }
    }

    /// How often the tune is played in all; 0 goes on.
    pub(super) fn set_times(&mut self, playing: &Playing, now: Duration, times: u32) {
        self.pin(playing, now);
        self.times = times;
        self.last = None;
    }

    /// The time through now is the last one, or is not.
    pub(super) fn set_last(&mut self, playing: &Playing, now: Duration, last: bool) {
        self.pin(playing, now);
        let time = self.place(playing, now).time;
        if !last && self.times > 0 && time + 1 >= self.times {
            self.times = time + 2;
        }
        self.last = last.then_some(time);
    }
}

/// A full bar, and the beats before a pickup: four and three for a quarter's pickup in 4/4.
pub(super) fn count_in(full: Ticks, before_pickup: Ticks) -> Ticks {
    full + before_pickup
}

/// The bar in which an absolute place lies.
fn locate(playing: &Playing, at: Ticks) -> Place {
    let (time, at) = match playing.length > Ticks::ZERO {
        true => at.max(Ticks::ZERO).div_rem(playing.length),
        false => (0, Ticks::ZERO),
    };
    let time = u32::try_from(time).unwrap_or(u32::MAX);
    let bar = playing.bar_at(at).unwrap_or(0);
    Place {
        time,
        bar,
        at,
        counted: None,
        ended: false,
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
