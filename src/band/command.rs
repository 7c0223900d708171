//! What the band can be told, and what it hands back.

use std::sync::Arc;

use crate::chart::{Tempo, Ticks};

use super::click::CountIn;
use super::event::Player;
use super::human::Human;
use super::score::Score;
use super::transport::{Ramp, Transport};

/// A string that sounds again and again, to tune by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tone {
    /// Whose instrument.
    pub player: Player,
    /// The course, from 0.
    pub course: u8,
    /// The sounding pitch as a MIDI note number.
    pub midi: u8,
}

/// What the band is told. Everything in it was made beforehand.
#[derive(Debug, Clone, PartialEq)]
pub enum Command {
    /// Play this from here on.
    Score(Arc<Score>),
    /// Start at a moment of a time through, after a count.
    Play {
        /// Time through, from 0, and the moment.
        from: (u32, Ticks),
        /// The count; an empty one starts at once.
        count: CountIn,
    },
    /// Stop, all hands damping.
    Stop,
    /// Stand here, or go on.
    Hold(bool),
    /// Go to a moment of a time through.
    Go {
        /// Time through, from 0, and the moment.
        to: (u32, Ticks),
        /// The frame that was heard when the player was there: a downbeat that was said.
        since: u64,
    },
    /// The tempo and its beat.
    Tempo(Tempo),
    /// How often the tune is played; 0 goes on.
    Times(u32),
    /// The time through now is the last one, or is not.
    LastTime(bool),
    /// Play from one moment of the time through to another, again and again; or no more.
    Loop(Option<(Ticks, Ticks)>),
    /// Faster after each clean pass, or no more.
    Ramp(Option<Ramp>),
    /// How loud a player is: 1 as set for the band, at most 2.
    Level(Player, f32),
    /// How loud the whole band is, for strokes from now on: 1 as is usual, from 0 to 8.
    Gain(f32),
    /// Silences a player, or lets it be heard. A muted click still counts in.
    Mute(Player, bool),
    /// How uneven the players are.
    Human(Human),
    /// The A of the tuning fork, 415 to 466 Hz.
    A4(f64),
    /// A string to tune by, or no more.
    Tone(Option<Tone>),
}

/// What the band has done with. It is handed back, so that nothing is freed while sound is made.
#[derive(Debug, PartialEq)]
pub enum Spent {
    /// A score that was played.
    Score(Arc<Score>),
    /// A count that is over.
    Count(CountIn),
}

impl Transport {
    /// Does what a command says about time and place, at a frame. What is about sound is left alone.
    pub fn obey(&mut self, frame: u64, command: &Command) {
        match command {
            Command::Score(score) => self.set_score(frame, score),
            Command::Play { from, count } => self.start(frame, *from, count.length),
            Command::Stop => self.stop(frame),
            Command::Hold(held) => self.hold(frame, *held),
            Command::Go { to, since } => self.go((*since).min(frame), *to),
            Command::Tempo(tempo) => self.set_tempo(frame, *tempo),
            Command::Times(times) => self.set_times(frame, *times),
            Command::LastTime(last) => self.set_last(frame, *last),
            Command::Loop(range) => self.set_range(frame, *range),
            Command::Ramp(ramp) => self.set_ramp(*ramp),
            Command::Level(..)
            | Command::Mute(..)
            | Command::Gain(_)
            | Command::Human(_)
            | Command::A4(_)
            | Command::Tone(_) => {}
        }
    }
}
