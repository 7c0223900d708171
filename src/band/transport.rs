//! The transport: where in the tune the band is, from the number of frames that have gone by.
//!
//! It holds one anchor (a frame and a place) and a speed, so that the place at any later frame follows by one
//! multiplication; nothing is added up, nothing drifts, nothing ticks. Sound asks it frame by frame, and a screen asks a
//! copy of it at the frame that is heard now: both get the same answer. A wall clock's frames do as well as a sound
//! device's.
//!
//! A *pass* is once from the beginning of the tune or of the loop to its end; a *join* is where one pass goes over into
//! the next.

use crate::chart::{Tempo, Ticks};

use super::score::Score;

/// Slowest and fastest tempo, in beats a minute.
pub const BPM: std::ops::RangeInclusive<f32> = 30.0..=300.0;

/// The shortest loop; a shorter one is no loop.
pub const SHORTEST_LOOP: Ticks = Ticks(Ticks::QUARTER.0 / 2);

/// Faster after every clean pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ramp {
    /// By how much, in per cent of the tempo at the moment.
    pub percent: f32,
    /// Up to how many beats a minute.
    pub ceiling: f32,
}

/// What moves it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Motion {
    /// It was not started, or was stopped.
    Still,
    /// It goes, counting in first.
    Going,
    /// It stands until it goes on.
    Held,
    /// The last time through is over.
    Ended,
}

/// At this frame it was here.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Anchor {
    frame: u64,
    /// Time through, from 0.
    time: u32,
    /// From the start of the time through.
    at: Ticks,
    /// The part of a tick that has gone by besides: what is rounded away at one join would add up over many.
    part: f64,
}

impl Anchor {
    const fn new(frame: u64, (time, at): (u32, Ticks)) -> Self {
        let part = 0.0;
        Self {
            frame,
            time,
            at,
            part,
        }
    }
}

/// Where the band is: time through and moment, count-in, loop, tempo. A copy of it goes on by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Transport {
    /// Frames a second.
    rate: u32,
    tempo: Tempo,
    length: Ticks,
    last_length: Ticks,
    times: u32,
    /// The time through that was said to be the last.
    last: Option<u32>,
    /// Start and end of the loop.
    range: Option<(Ticks, Ticks)>,
    ramp: Option<Ramp>,
    motion: Motion,
    anchor: Anchor,
    /// Where the count-in leads to: before it, the band counts.
    begin: Ticks,
    /// How long the count-in is.
    count: Ticks,
    /// From when on in the last time through a tag is played, and its first bar.
    tag: Option<(Ticks, usize)>,
    /// Nobody stumbled in this pass: it went from its beginning with no hold, jump or pull.
    clean: bool,
    /// Clean passes since it was started, and the tempo of the last of them in beats a minute.
    passes: (u32, f32),
}

impl Transport {
    /// Still, at the start of a tune of no length; one time through has no end until [`Self::set_times`].
    pub fn new(rate: u32, tempo: Tempo) -> Self {
        let mut transport = Self {
            rate: rate.max(1),
            tempo,
            length: Ticks::ZERO,
            last_length: Ticks::ZERO,
            times: 0,
            last: None,
            range: None,
            ramp: None,
            motion: Motion::Still,
            anchor: Anchor::new(0, (0, Ticks::ZERO)),
            begin: Ticks::ZERO,
            count: Ticks::ZERO,
            tag: None,
            clean: false,
            passes: (0, 0.0),
        };
        transport.limit_tempo();
        transport
    }

    /// Frames a second.
    pub fn rate(&self) -> u32 {
        self.rate
    }

    /// The tempo of this pass.
    pub fn tempo(&self) -> Tempo {
        self.tempo
    }

    /// How often the tune is played; 0 is open.
    pub fn times(&self) -> u32 {
        self.times
    }

    /// The time through, from 0, that was said to be the last.
    pub fn called_last(&self) -> Option<u32> {
        self.last
    }

    /// The loop, from the start of a time through.
    pub fn range(&self) -> Option<(Ticks, Ticks)> {
        self.range
    }

    /// The ramp.
    pub fn ramp(&self) -> Option<Ramp> {
        self.ramp
    }

    /// Clean passes since it was started, as of [`Self::advance`], and the tempo of the last one in beats a minute.
    pub fn clean_passes(&self) -> (u32, f32) {
        self.passes
    }

    /// Whether the pass under way will be a clean one if it goes on as it does, as of [`Self::advance`].
    pub fn is_clean(&self) -> bool {
        self.clean
    }

    /// Whether it goes: it was started, and is neither held nor at the end.
    pub fn is_going(&self) -> bool {
        self.motion == Motion::Going
    }

    /// Whether it is held.
    pub fn is_held(&self) -> bool {
        self.motion == Motion::Held
    }

    /// Whether the last time through is over.
    pub fn is_ended(&self) -> bool {
        self.motion == Motion::Ended
    }

    /// The time through, from 0, as of [`Self::advance`].
    pub fn time(&self) -> u32 {
        self.anchor.time
    }

    /// Where a count-in leads to, and where this pass began otherwise.
    pub fn begin(&self) -> Ticks {
        self.begin
    }

    /// How long the count-in is that leads there.
    pub fn count(&self) -> Ticks {
        self.count
    }

    /// From when on in this time through a tag is played, and its first bar in playing order.
    pub fn tag(&self) -> Option<(Ticks, usize)> {
        self.tag.filter(|_| self.is_last(self.anchor.time))
    }

    /// How many times through there are in all, if there is an end.
    fn end(&self) -> Option<u32> {
        let said = self.last.map(|last| last.saturating_add(1));
        let planned = (self.times > 0).then_some(self.times);
        match (planned, said) {
            (Some(planned), Some(said)) => Some(planned.min(said)),
            (planned, said) => planned.or(said),
        }
    }

    /// Whether a time through is the last.
    pub fn is_last(&self, time: u32) -> bool {
        self.end().is_some_and(|end| time.saturating_add(1) >= end)
    }

    /// Ticks that go by in a frame.
    fn speed(&self) -> f64 {
        Ticks::from_quarters(self.tempo.quarters_a_minute()).0 as f64
            / (60.0 * f64::from(self.rate))
    }

    /// The moment of this pass at a frame; before [`Self::begin`] it counts in. Joins are not looked at: see
    /// [`Self::advance`].
    pub fn at(&self, frame: u64) -> Ticks {
        self.walked(frame).0
    }

    /// The whole ticks and the part of one at a frame.
    fn walked(&self, frame: u64) -> (Ticks, f64) {
        let Anchor {
            frame: since,
            at,
            part,
            ..
        } = self.anchor;
        if self.motion != Motion::Going {
            return (at, part);
        }
        #[allow(clippy::cast_precision_loss)] // far below 2^53
        let ticks = frame.saturating_sub(since) as f64 * self.speed() + part;
        #[allow(clippy::cast_possible_truncation)] // likewise
        let whole = ticks.floor() as i64;
        (at + Ticks(whole), ticks - ticks.floor())
    }

    /// The first frame at which a moment of this pass has come, the anchor's at the earliest. `None` where nothing moves.
    pub fn frame_of(&self, at: Ticks) -> Option<u64> {
        if self.motion != Motion::Going {
            return None;
        }
        let ahead = (at - self.anchor.at).0.max(0);
        #[allow(
            clippy::cast_precision_loss,
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss
        )] // far below 2^53; what is negative becomes 0
        let before = ((ahead as f64 - 1.0) / self.speed()) as u64;
        let mut frame = self.anchor.frame.saturating_add(before);
        while self.at(frame) < at {
            frame += 1;
        }
        Some(frame)
    }

    /// Where this pass ends.
    pub fn reach(&self) -> Ticks {
        match self.looped() {
            Some((_, end)) => end,
            None if self.is_last(self.anchor.time) => self.last_length,
            None => self.length,
        }
    }

    /// The loop, if this pass is one of its passes: beyond its end it no longer holds.
    fn looped(&self) -> Option<(Ticks, Ticks)> {
        self.range.filter(|&(_, end)| self.anchor.at < end)
    }

    /// The frame of the next join, or of the end.
    pub fn join(&self) -> Option<u64> {
        self.frame_of(self.reach())
    }

    /// Goes over the next join, which must be [`Self::join`].
    pub fn cross(&mut self, join: u64) {
        let reach = self.reach();
        if self.clean {
            self.passes = (self.passes.0.saturating_add(1), self.tempo.bpm);
        }
        let (at, part) = self.walked(join);
        let (time, start) = match self.looped() {
            Some((start, _)) => (self.anchor.time, start),
            None if self.is_last(self.anchor.time) || self.length < SHORTEST_LOOP => {
                self.motion = Motion::Ended;
                self.anchor = Anchor::new(join, (self.anchor.time, reach));
                return;
            }
            None => (self.anchor.time.saturating_add(1), Ticks::ZERO),
        };
        self.anchor = Anchor {
            frame: join,
            time,
            at: start + (at - reach),
            part,
        };
        self.begin = start;
        if let Some(ramp) = self.ramp.filter(|_| self.clean) {
            let faster = self.tempo.bpm * (1.0 + ramp.percent / 100.0);
            if faster > self.tempo.bpm && self.tempo.bpm < ramp.ceiling {
                self.tempo.bpm = faster.min(ramp.ceiling);
                self.limit_tempo();
            }
        }
        self.clean = true;
    }

    /// Goes over all joins up to a frame.
    pub fn advance(&mut self, frame: u64) {
        while let Some(join) = self.join().filter(|&join| join <= frame) {
            self.cross(join);
        }
    }

    /// The anchor is here and now, so that what follows can change the speed without moving the place.
    fn settle(&mut self, frame: u64) {
        self.advance(frame);
        (self.anchor.at, self.anchor.part) = self.walked(frame);
        self.anchor.frame = frame.max(self.anchor.frame);
    }

    /// Starts at a moment of a time through, after counting for so long. From the very start no time is the last.
    pub fn start(&mut self, frame: u64, (time, at): (u32, Ticks), count: Ticks) {
        if (time, at) == (0, Ticks::ZERO) {
            self.last = None;
        }
        self.motion = Motion::Going;
        self.passes = (0, 0.0);
        (self.begin, self.count) = (at, count);
        self.anchor = Anchor::new(frame, (time, at - count));
        self.clean = at <= self.range.map_or(Ticks::ZERO, |(start, _)| start);
    }

    /// Stops where it is.
    pub fn stop(&mut self, frame: u64) {
        self.settle(frame);
        self.anchor.at = self.anchor.at.max(self.begin);
        self.motion = Motion::Still;
    }

    /// Stands where it is, or goes on from where it stands; a count-in goes on counting.
    pub fn hold(&mut self, frame: u64, held: bool) {
        self.settle(frame);
        match (self.motion, held) {
            (Motion::Going, true) => self.motion = Motion::Held,
            (Motion::Held | Motion::Still, false) => self.motion = Motion::Going,
            _ => return,
        }
        self.anchor.frame = frame;
        self.clean = false;
    }

    /// Goes to a moment of a time through. A jump is heard from `frame` on; a frame that has gone by pulls the band to
    /// a player who was there then. What stands goes on standing there; a tune that was over is held there.
    pub fn go(&mut self, frame: u64, (time, at): (u32, Ticks)) {
        let at = at.max(Ticks::ZERO);
        self.anchor = Anchor::new(frame, (time, at));
        self.begin = Ticks::ZERO;
        self.clean = false;
        if self.motion == Motion::Ended {
            self.motion = Motion::Held;
        }
    }

    /// Another tempo from here on.
    pub fn set_tempo(&mut self, frame: u64, tempo: Tempo) {
        self.settle(frame);
        self.tempo = tempo;
        self.limit_tempo();
    }

    fn limit_tempo(&mut self) {
        let bpm = self.tempo.bpm;
        let bpm = if bpm.is_nan() { 120.0 } else { bpm };
        self.tempo.bpm = bpm.clamp(*BPM.start(), *BPM.end());
    }

    /// How often the tune is played; 0 goes on.
    pub fn set_times(&mut self, frame: u64, times: u32) {
        self.settle(frame);
        self.times = times;
        self.last = None;
    }

    /// The time through now is the last one, or is not.
    pub fn set_last(&mut self, frame: u64, last: bool) {
        self.settle(frame);
        let time = self.anchor.time;
        if !last && self.times > 0 && time + 1 >= self.times {
            self.times = time + 2;
        }
        self.last = last.then_some(time);
    }

    /// Loops from one moment of the time through to another, or no more. A band that is past the end goes to the start
    /// at once; one that is before it plays up to it.
    pub fn set_range(&mut self, frame: u64, range: Option<(Ticks, Ticks)>) {
        self.settle(frame);
        let range = range.map(|(start, end)| (start.max(Ticks::ZERO), end.min(self.length)));
        self.range = range.filter(|&(start, end)| end - start >= SHORTEST_LOOP);
        if let Some((start, end)) = self.range
            && self.anchor.at >= end
        {
            self.go(frame, (self.anchor.time, start));
        }
    }

    /// Faster after every clean pass, or no more.
    pub fn set_ramp(&mut self, ramp: Option<Ramp>) {
        self.ramp = ramp;
    }

    /// How long a time through and the last one are, the ending included. A loop that does not fit is lifted.
    pub fn set_length(&mut self, frame: u64, length: Ticks, last_length: Ticks) {
        self.settle(frame);
        (self.length, self.last_length, self.tag) = (length, last_length, None);
        self.range = self.range.filter(|&(_, end)| end <= self.length);
    }

    /// The same for what the band plays.
    pub fn set_score(&mut self, frame: u64, score: &Score) {
        self.set_length(frame, score.length, score.last_length);
        self.tag = score.tag.as_ref().map(|tag| (tag.at, tag.bars.start));
    }
}

#[cfg(test)]
pub(super) mod tests;
