//! Following: where in the tune the circle is, by the player's hand or by the clock.
//!
//! By hand, the player says where each bar begins and the clock only fills the bar: it walks to the bar's end at the
//! pace of the last taps and waits there for the next one; the band is silent. By clock, the band leads: what it is told
//! holds here at once, and once that is heard, [`Follow::hear`] takes over the band's own transport. Either way a transport
//! goes over the frames that are heard: any moment can be asked for and nothing has to tick.

mod led;

use std::time::Duration;

pub(super) use crate::band::Place;
use crate::band::{Command, Ramp, Transport};
use crate::chart::{Playing, Tempo, Ticks};

use super::downbeats::{downbeat_before, hand_limit, next_downbeat, to_nearest_beat};
use super::players::Moment;

pub use crate::band::BPM;

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

/// The follower of one tune: a transport, led by a hand or by the band.
#[derive(Debug, Clone)]
pub(super) struct Follow {
    motion: Motion,
    transport: Transport,
    taps: Vec<Duration>,
    /// Where the band plays again and again, and how it gets faster. A hand does neither.
    range: Option<(Ticks, Ticks)>,
    ramp: Option<Ramp>,
    /// What the band is to be told.
    told: Vec<Command>,
}

impl Follow {
    /// At the first bar, waiting. `times` 0 goes on until it is stopped; `rate` is the band's frames a second.
    pub(super) fn new(playing: &Playing, tempo: Tempo, times: u32, rate: u32) -> Self {
        let mut transport = Transport::new(rate, tempo);
        transport.set_length(0, playing.length, playing.length);
        transport.set_times(0, times);
        Self {
            motion: Motion::Waiting,
            transport,
            taps: Vec::new(),
            range: None,
            ramp: None,
            told: Vec::new(),
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
    pub(super) fn is_moving(&self, playing: &Playing, at: Moment) -> bool {
        match self.motion {
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => false,
            Motion::Clock => !self.place(playing, at).ended,
            Motion::Hand(_, from) => {
                let place = self.place(playing, at);
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
    pub(super) fn place(&self, playing: &Playing, at: Moment) -> Place {
        let place = self.transport.place(playing, at.frame);
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
    fn settle(&mut self, playing: &Playing, at: Moment) {
        if let Motion::Hand(..) = self.motion {
            let place = self.place(playing, at);
            if !place.ended {
                self.transport.go(at.frame, (place.time, place.at));
                self.transport.hold(at.frame, false);
            }
        }
    }

    /// Goes to a bar. What moves goes on moving from there.
    fn go(&mut self, playing: &Playing, at: Moment, (time, bar): (u32, usize)) {
        let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
        self.go_to(at, (time, start));
    }

    fn go_to(&mut self, at: Moment, to: (u32, Ticks)) {
        let since = at.frame;
        self.tell(at.frame, Command::Go { to, since });
        match &mut self.motion {
            Motion::Hand(since, from) => (*since, *from) = (at.now, to),
            Motion::Clock => {}
            Motion::Waiting | Motion::Paused | Motion::Held { .. } => return,
        }
        self.tell(at.frame, Command::Hold(false));
    }

    /// Stands still at a bar; the band stops.
    fn stand(&mut self, playing: &Playing, at: Moment, to: (u32, usize), still: Motion) {
        self.tell(at.frame, Command::Stop);
        self.motion = still;
        // A hand plays the tune as it is written, to its end.
        self.transport.set_range(at.frame, None);
        self.transport.set_ramp(None);
        let length = playing.length;
        self.transport.set_length(at.frame, length, length);
        self.go(playing, at, to);
    }

    /// The player says that the next bar begins now: before anything has begun, the bar that is waited for. A pickup is
    /// part of the bar before it. Past the end the tune is over.
    pub(super) fn next_bar(&mut self, playing: &Playing, at: Moment) {
        let place = self.place(playing, at);
        if place.ended {
            return;
        }
        self.learn_pace(playing, at);
        let downbeat = playing.bars.get(place.bar).is_some_and(|bar| !bar.pickup);
        let next = if self.is_waiting() && downbeat {
            (place.time, place.bar)
        } else {
            next_downbeat(playing, place)
        };
        if !self.by_clock() {
            self.motion = Motion::Hand(at.now, (place.time, place.at));
        }
        if next.0 > place.time && self.is_last(place.time) {
            self.go_to(at, (place.time, playing.length));
        } else {
            self.go(playing, at, next);
        }
    }

    /// A bar back: to the start of the bar before, over the start of a time through as well.
    pub(super) fn bar_back(&mut self, playing: &Playing, at: Moment) {
        let place = self.place(playing, at);
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
            self.stand(playing, at, to, Motion::Paused);
        } else {
            self.go(playing, at, to);
        }
    }

    /// To a bar of this time through. Where the clock leads, the beat goes on: the nearest one becomes the first of that
    /// bar.
    pub(super) fn jump(&mut self, playing: &Playing, at: Moment, bar: usize) {
        let place = self.place(playing, at);
        let bar = bar.min(playing.bars.len().saturating_sub(1));
        if self.by_clock() && place.counted.is_none() && !place.ended {
            self.get_in(playing, at, (place, bar));
        } else {
            self.go(playing, at, (place.time, bar));
        }
    }

    /// The circle is at the top of a part or at the beginning of a line, which this bar begins or leads into: what leads
    /// into it is over. Before anything has begun, one gets ready for what leads into it.
    pub(super) fn at_top(&mut self, playing: &Playing, at: Moment, bar: usize) {
        let pickup = |bar: usize| playing.bars.get(bar).is_some_and(|bar| bar.pickup);
        let mut top = bar;
        while pickup(top) {
            top += 1;
        }
        while self.is_waiting() && top > 0 && pickup(top - 1) {
            top -= 1;
        }
        self.jump(playing, at, top);
    }

    /// The nearest beat becomes the first of a bar.
    fn get_in(&mut self, playing: &Playing, at: Moment, (place, bar): (Place, usize)) {
        let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
        let ahead = to_nearest_beat(playing, place, self.tempo().beat);
        let to = start - ahead;
        match place.time.checked_sub(1) {
            _ if to >= Ticks::ZERO => self.go_to(at, (place.time, to)),
            Some(before) => self.go_to(at, (before, playing.length + to)),
            // Nothing comes before the very first beat: it is waited for.
            None => self.begin(at, (place.time, start), ahead),
        }
    }

    /// To a moment of this time through, wherever in a bar.
    pub(super) fn jump_to(&mut self, playing: &Playing, at: Moment, moment: Ticks) {
        let place = self.place(playing, at);
        self.go_to(at, (place.time, moment));
    }

    /// The player is on the first beat of a bar now: the nearest downbeat is pulled here. Waiting or counting in, the
    /// first full bar begins.
    pub(super) fn this_is_one(&mut self, playing: &Playing, at: Moment) {
        let place = self.place(playing, at);
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
                self.motion = Motion::Hand(at.now, (place.time, place.at));
            }
            Motion::Held { clock: true } => self.motion = Motion::Clock,
            Motion::Hand(..) | Motion::Clock => {}
        }
        self.go(playing, at, to);
    }

    /// Stops where it is, or goes on from there.
    pub(super) fn hold(&mut self, playing: &Playing, at: Moment) {
        match self.motion {
            Motion::Held { clock: true } => {
                self.tell(at.frame, Command::Hold(false));
                self.motion = Motion::Clock;
            }
            Motion::Held { clock: false } => self.motion = Motion::Paused,
            Motion::Clock => {
                self.tell(at.frame, Command::Hold(true));
                self.motion = Motion::Held { clock: true };
            }
            Motion::Hand(..) | Motion::Waiting | Motion::Paused => {
                let place = self.place(playing, at);
                let held = Motion::Held { clock: false };
                self.stand(playing, at, (place.time, place.bar), held);
            }
        }
    }

    /// Changes the tempo from here on.
    pub(super) fn change_bpm(&mut self, playing: &Playing, at: Moment, bpm: f32) {
        self.settle(playing, at);
        let tempo = Tempo {
            bpm,
            ..self.tempo()
        };
        self.tell(at.frame, Command::Tempo(tempo));
    }

    /// A tap in the tempo that is wanted: from the second tap on, the tempo is the mean of the last four.
    pub(super) fn tap(&mut self, playing: &Playing, at: Moment) {
        if self
            .taps
            .last()
            .is_some_and(|&last| at.now.saturating_sub(last) > TAPS_APART)
        {
            self.taps.clear();
        }
        self.taps.push(at.now);
        if self.taps.len() > 5 {
            self.taps.remove(0);
        }
        if let [first, .., last] = self.taps[..] {
            let beats = u16::try_from(self.taps.len() - 1).unwrap_or(1);
            let seconds = last.saturating_sub(first).as_secs_f32() / f32::from(beats);
            if seconds > 0.0 {
                self.change_bpm(playing, at, 60.0 / seconds);
            }
        }
    }

    /// Bars said by hand show how fast the circle plays.
    fn learn_pace(&mut self, playing: &Playing, at: Moment) {
        let Motion::Hand(since, from) = self.motion else {
            return;
        };
        let seconds = at.now.saturating_sub(since).as_secs_f64();
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
            self.change_bpm(playing, at, bpm);
        }
    }

    /// How often the tune is played in all; 0 goes on.
    pub(super) fn set_times(&mut self, playing: &Playing, at: Moment, times: u32) {
        self.settle(playing, at);
        self.tell(at.frame, Command::Times(times));
    }

    /// The time through now is the last one, or is not.
    pub(super) fn set_last(&mut self, playing: &Playing, at: Moment, last: bool) {
        self.settle(playing, at);
        self.tell(at.frame, Command::LastTime(last));
    }
}
