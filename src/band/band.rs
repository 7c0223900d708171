//! The band as a whole: commands in, sound out.

use crate::chart::{Tempo, Ticks};

use super::command::{Command, Spent};
use super::ensemble::Ensemble;
use super::event::Player;
use super::sequencer::{Action, Sequencer};
use super::transport::Transport;

/// The A of the tuning fork, in Hz: from the old French and baroque pitches up to a sharp modern one.
pub const A4: std::ops::RangeInclusive<f64> = 415.0..=466.0;

/// Who is silent until he is wanted: drones are for when the plain melody is sure (trade sheet, from memory), and a band
/// keeps the beat itself.
pub const SILENT_AT_FIRST: [Player; 2] = [Player::Drones, Player::Click];

/// Players who play a score to the frame.
///
/// Everything is made in [`Band::new`]; [`Band::fill`] and [`Band::apply`] allocate nothing, free nothing and wait for
/// nothing. What comes out does not depend on the lengths that are asked for.
#[derive(Debug)]
pub struct Band {
    sequencer: Sequencer,
    ensemble: Ensemble,
    frame: u64,
}

impl Band {
    /// At rest, at frame 0. `rate` in frames a second.
    pub fn new(rate: u32) -> Self {
        let beat = Ticks::QUARTER;
        let transport = Transport::new(rate, Tempo { bpm: 120.0, beat });
        Self::resuming(transport, 0)
    }

    /// Goes on from where a transport is at a frame, with nothing to play until it is told.
    pub fn resuming(transport: Transport, frame: u64) -> Self {
        Self {
            ensemble: Ensemble::new(transport.rate(), 440.0),
            sequencer: Sequencer::resuming(transport, frame),
            frame,
        }
    }

    /// The next frame to be filled.
    pub fn frame(&self) -> u64 {
        self.frame
    }

    /// Where the band is, as of the next frame.
    pub fn transport(&self) -> &Transport {
        self.sequencer.transport()
    }

    /// Frames by which the sound comes after its place.
    pub fn latency(&self) -> usize {
        self.ensemble.latency()
    }

    /// Does as told, from the next frame on. What it has no more use for is handed back.
    pub fn apply(&mut self, command: Command) -> Option<Spent> {
        match command {
            Command::Level(player, level) => self.ensemble.set_level(player, level),
            Command::Mute(Player::Click, mute) => self.sequencer.set_beat(!mute),
            Command::Mute(player, mute) => self.ensemble.mute(player, mute),
            Command::A4(hz) => self.ensemble.set_a4(hz.clamp(*A4.start(), *A4.end())),
            other => return self.sequencer.apply(self.frame, other),
        }
        None
    }

    /// The next frames, left and right in turn.
    pub fn fill(&mut self, out: &mut [f32]) {
        let until = self.frame + (out.len() / 2) as u64;
        let mut rest = out;
        while let Some((frame, action)) = self.sequencer.next(self.frame, until) {
            #[allow(clippy::cast_possible_truncation)] // shorter than `rest`
            let ready = (frame - self.frame) as usize * 2;
            let (now, later) = rest.split_at_mut(ready);
            self.ensemble.render(now);
            self.frame = frame;
            rest = later;
            self.perform(action);
        }
        self.ensemble.render(rest);
        self.frame = until;
    }

    fn perform(&mut self, action: Action) {
        match action {
            Action::Strike {
                player,
                course,
                midi,
                force,
                touch,
            } => self.ensemble.strike(player, course, midi, force, touch),
            Action::Damp { player, course } => self.ensemble.damp(player, course),
            Action::DampAll => self.ensemble.damp_all(),
            Action::Click { first, force } => self.ensemble.click(first, force),
        }
    }
}
