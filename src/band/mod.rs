//! The band: what it plays, and how that sounds. No sound device, no clock and no chance: time and seed are arguments.

mod body;
mod chair;
mod click;
mod course;
mod ensemble;
mod event;
mod limiter;
mod line;
mod number;
mod pick;
mod score;
pub mod voice;

pub use course::Course;
pub use ensemble::Ensemble;
pub use event::{Event, Player, Sound, Touch};
pub use line::Decay;
pub use score::Score;
pub use voice::Voice;
