//! The band: what it plays, and how that sounds. No sound device, no clock and no chance: time and seed are arguments.

mod alone;
#[allow(clippy::module_inception)] // the band as a whole
mod band;
mod bass;
mod body;
mod chair;
mod chop;
mod click;
mod command;
mod course;
mod delay;
mod drones;
mod ending;
mod ensemble;
mod event;
mod guitar;
mod harmony;
mod human;
mod limiter;
mod line;
mod loudness;
mod melody;
mod number;
mod pick;
mod place;
mod score;
mod sequencer;
mod sheet;
mod stroke;
mod style;
mod style_table;
mod swing;
mod tick;
mod transport;
pub mod voice;
mod voicings;

pub use alone::tones;
pub use band::{A4, Band, SILENT_AT_FIRST};
pub use click::{CountIn, count_in};
pub use command::{Command, Spent, Tone};
pub use course::Course;
pub use delay::Decay;
pub use ending::Ending;
pub use ensemble::Ensemble;
pub use event::{Event, Player, Sound, Touch};
pub use human::{Human, Nudge};
pub use loudness::{Load, TARGET_LUFS};
pub use place::Place;
pub use score::{Score, ScoreOptions, Tag};
pub use sequencer::{Action, Sequencer};
pub use style::Style;
pub use transport::{BPM, Ramp, SHORTEST_LOOP, Transport};
pub use voice::Voice;
pub use voicings::Voicings;

#[cfg(test)]
mod tests;
