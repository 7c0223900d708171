//! Tunes as charts: bars with melody, chords and words, how they are strummed and in which order they are played.

mod metre;
mod strum;
mod time;
mod tune;

pub use metre::Metre;
pub use strum::{Direction, Slot, Stroke, StrumPattern};
pub use time::Ticks;
pub use tune::{
    Annotation, Bar, ChordAt, Jump, Note, Ornament, Part, Rhythm, Syllable, Tempo, Tune, Tuplet,
    Verse,
};
