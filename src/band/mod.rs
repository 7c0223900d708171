//! The band: what it plays, and how that sounds. No sound device, no clock and no chance: time and seed are arguments.

mod event;
mod score;

pub use event::{Event, Player, Sound, Touch};
pub use score::Score;
