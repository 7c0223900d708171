//! The band: what it plays, and how that sounds. No sound device, no clock and no chance: time and seed are arguments.

mod alone;
mod band;
mod command;
mod event;
mod place;
mod score;
mod sequencer;
mod transport;

pub use alone::tones;
pub use band::{A4, Band};
pub use command::{Command, Spent, Tone};
pub use event::{Event, Player, Sound, Touch};
pub use place::Place;
pub use score::Score;
pub use sequencer::{Action, Sequencer};
pub use transport::{BPM, Ramp, SHORTEST_LOOP, Transport};
