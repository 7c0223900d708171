//! The band: what it plays, and how that sounds. No sound device, no clock and no chance: time and seed are arguments.

mod bass;
mod chop;
mod click;
mod drones;
mod ending;
mod event;
mod guitar;
mod harmony;
mod human;
mod line;
mod melody;
mod score;
mod sheet;
mod stroke;
mod style;
mod style_table;
mod swing;
mod voicings;

pub use click::{CountIn, count_in};
pub use ending::Ending;
pub use event::{Event, Player, Sound, Touch};
pub use human::{Human, Nudge};
pub use score::{Score, ScoreOptions, Tag};
pub use style::Style;
pub use voicings::Voicings;

#[cfg(test)]
mod tests;
