//! The band as a whole: commands in, sound out.

use crate::chart::{Tempo, Ticks};

use super::click::CountIn;
use super::command::{Command, Spent};
use super::ensemble::Ensemble;
use super::event::Player;
use super::number::within;
use super::sequencer::{Action, Sequencer};
use super::transport::Transport;

/// The A of the tuning fork, in Hz: from the old French and baroque pitches up to a sharp modern one.
pub const A4: std::ops::RangeInclusive<f64> = 415.0..=466.0;

/// Who is silent until he is wanted: drones are for when the plain melody is sure (trade sheet, from memory), and a band
/// keeps the beat itself.
pub const SILENT_AT_FIRST: [Player; 2] = [Player::Drones, Player::Click];

/// The highest level of a player, and of the band.
const MOST_LEVEL: f32 = 2.0;
const MOST_GAIN: f32 = 8.0;

/// Players who play a score to the frame.
///
/// Everything is made in [`Band::new`]; [`Band::fill`] and [`Band::apply`] allocate nothing, free nothing and wait for
/// nothing. What comes out does not depend on the lengths that are asked for.
#[derive(Debug)]
pub struct Band {
    sequencer: Sequencer,
    ensemble: Ensemble,
    frame: u64,
    /// Who is heard, and how loud the mixer has him.
    levels: [f32; Player::ALL.len()],
    mutes: [bool; Player::ALL.len()],
    gain: f32,
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
            levels: [1.0; Player::ALL.len()],
            mutes: Player::ALL.map(|player| player == Player::Click),
            gain: 1.0,
        }
    }

    /// The same in the middle of a count, which it counts to its end.
    #[must_use]
    pub fn counting(mut self, count: CountIn) -> Self {
        self.sequencer.count_on(self.frame, count);
        self
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
            Command::Level(player, level) => {
                self.levels[player as usize] = within(level, MOST_LEVEL);
                self.ensemble.set_level(player, level);
            }
            Command::Mute(player, mute) => {
                self.mutes[player as usize] = mute;
                match player {
                    Player::Click => self.sequencer.set_beat(!mute),
                    _ => self.ensemble.mute(player, mute),
                }
            }
            Command::Gain(gain) => self.gain = within(gain, MOST_GAIN),
            Command::A4(hz) => {
                self.ensemble.set_a4(hz.clamp(*A4.start(), *A4.end()));
                return None;
            }
            other => {
                let spent = self.sequencer.apply(self.frame, other);
                self.weigh();
                return spent;
            }
        }
        self.weigh();
        None
    }

    /// Has the strokes from now on as loud as the score, the tempo and those who are heard ask for.
    fn weigh(&mut self) {
        let levels = Player::ALL.map(|player| match self.mutes[player as usize] {
            true => 0.0,
            false => self.levels[player as usize],
        });
        let tempo = self.transport().tempo();
        let gains = self.sequencer.score().load.gains(tempo, levels);
        self.ensemble
            .set_loud(self.gain * gains.strings, self.gain * gains.click);
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
            Action::Faster => self.weigh(),
            Action::Click { first, force } => self.ensemble.click(first, force),
        }
    }
}
