//! Tunes as charts: bars with melody, chords and words, how they are strummed and in which order they are played.

mod arrange;
mod changes;
mod dots;
mod drill;
mod heard;
mod melody;
mod metre;
mod order;
mod part;
mod passage;
mod phrase;
mod pick;
mod pickup;
mod safe;
mod section;
mod strum;
mod strum_table;
mod strum_text;
mod tempo;
mod time;
mod transpose;
mod tune;

pub use arrange::{Arrangement, DroneReport, TabNote, Version, Wishes};
pub use changes::{Change, Changes};
pub use dots::{dots, easiest_that_rings};
pub use drill::{ChangeDrill, StopDrill, drill_bars};
pub use heard::Heard;
pub use melody::MelodyNote;
pub use metre::Metre;
pub use order::{MAX_PLAYED, PlayedBar, Playing};
pub use phrase::Phrase;
pub use pick::{PickStroke, picking};
pub use safe::{Fit, Safe, safe_over};
pub use strum::{Count, Direction, Slot, Stroke, StrumPattern, count_at, direction_at};
pub use strum_text::NotAStrum;
pub use tempo::{Pace, TempoRange};
pub use time::Ticks;
pub use transpose::{KeyChange, Simpler, called_key};
pub use tune::{
    Annotation, Bar, ChordAt, Jump, Note, Ornament, Part, Rhythm, Syllable, Tempo, Tune, Tuplet,
    Verse,
};

#[cfg(test)]
mod tests;
