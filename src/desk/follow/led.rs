//! The band leads: it plays the tune from here on, until it is stopped.

use std::sync::Arc;

use crate::band::{Command, CountIn, Ramp, Score, Transport};
use crate::chart::{Playing, Ticks};

use super::super::players::Moment;
use super::{Follow, Motion};

impl Follow {
    /// Takes what the band is to be told.
    pub(in crate::desk) fn told(&mut self) -> Vec<Command> {
        std::mem::take(&mut self.told)
    }

    /// The band's transport, when all that it was told is heard.
    pub(in crate::desk) fn hear(&mut self, transport: Transport) {
        if self.is_led() {
            self.transport = transport;
        }
    }

    /// Whether the band leads, be it held.
    pub(in crate::desk) fn is_led(&self) -> bool {
        matches!(self.motion, Motion::Clock | Motion::Held { clock: true })
    }

    /// Does as a command says, and has the band do so where it leads.
    pub(in crate::desk) fn tell(&mut self, frame: u64, command: Command) {
        self.transport.obey(frame, &command);
        if self.is_led() {
            self.told.push(command);
        }
    }

    /// The band stops, and the hand leads from the bar now on.
    pub(in crate::desk) fn stop(&mut self, playing: &Playing, at: Moment) {
        if self.is_led() {
            let place = self.place(playing, at);
            let begun = place.counted.is_none();
            let still = if begun {
                Motion::Paused
            } else {
                Motion::Waiting
            };
            self.stand(playing, at, (place.time, place.bar), still);
        }
    }

    /// The band begins at the bar now, or where the loop begins if that bar is its first or not in it: after a count-in, if one is
    /// wanted, of a full bar and of the part of a bar before a pickup. A tune that is over starts again.
    pub(in crate::desk) fn play(
        &mut self,
        playing: &Playing,
        at: Moment,
        score: Arc<Score>,
        counts: bool,
    ) {
        let place = self.place(playing, at);
        let time = if place.ended { 0 } else { place.time };
        let bar = match place.ended {
            true => playing.bars.first(),
            false => playing.bars.get(place.bar),
        };
        let Some(bar) = bar else { return };
        let from = self
            .range
            .map_or(bar.start, |range| within(range, bar.start, playing));
        let last = self.transport.called_last() == Some(time) && !place.ended;
        let count = match counts {
            true => CountIn::to(playing, from),
            false => CountIn::default(),
        };
        self.motion = Motion::Clock;
        let from = (time, from);
        for command in [
            Command::Stop,
            Command::Score(score),
            Command::Tempo(self.tempo()),
            Command::Times(self.times()),
            Command::Loop(self.range),
            Command::Ramp(self.ramp),
            Command::Play { from, count },
        ] {
            self.tell(at.frame, command);
        }
        if last {
            self.tell(at.frame, Command::LastTime(true));
        }
    }

    /// The band begins somewhere after a silence.
    pub(super) fn begin(&mut self, at: Moment, from: (u32, Ticks), silence: Ticks) {
        let last = self.transport.called_last() == Some(from.0);
        let count = CountIn {
            events: Vec::new(),
            length: silence,
        };
        self.tell(at.frame, Command::Play { from, count });
        if last {
            self.tell(at.frame, Command::LastTime(true));
        }
    }

    /// The band plays this from here on: another key, another style.
    pub(in crate::desk) fn replace(&mut self, at: Moment, score: Arc<Score>) {
        self.tell(at.frame, Command::Score(score));
    }

    /// Clean passes since the band began, and the tempo of the last one; see [`Transport::clean_passes`].
    pub(in crate::desk) fn clean_passes(&self, at: Moment) -> (u32, f32) {
        let mut transport = self.transport;
        transport.advance(at.frame);
        if self.is_led() {
            transport.clean_passes()
        } else {
            (0, 0.0)
        }
    }

    /// Whether the band leads and the pass under way will be a clean one.
    pub(in crate::desk) fn is_clean(&self, at: Moment) -> bool {
        let mut transport = self.transport;
        transport.advance(at.frame);
        self.is_led() && transport.is_clean()
    }

    /// The band plays from one moment of the time through to another, again and again; or no more.
    pub(in crate::desk) fn set_range(&mut self, at: Moment, range: Option<(Ticks, Ticks)>) {
        self.range = range;
        if self.is_led() {
            self.tell(at.frame, Command::Loop(range));
        }
    }

    /// The band gets faster after each clean pass, or no more.
    pub(in crate::desk) fn set_ramp(&mut self, at: Moment, ramp: Option<Ramp>) {
        self.ramp = ramp;
        if self.is_led() {
            self.tell(at.frame, Command::Ramp(ramp));
        }
    }
}

/// Where in a loop it begins at a moment: there, but for its first bar, which what leads into it belongs to.
fn within((start, end): (Ticks, Ticks), at: Ticks, playing: &Playing) -> Ticks {
    let mut full = playing.bars.iter().filter(|bar| !bar.pickup);
    let first = full.find(|bar| bar.start >= start).map(|bar| bar.start);
    match at < start || at >= end || first.is_none_or(|first| at <= first) {
        true => start,
        false => at,
    }
}
