//! Strum patterns: what the right hand does in a bar.

use serde::{Deserialize, Serialize};

use super::metre::Metre;
use super::time::Ticks;

/// Which way the hand moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Direction {
    Down,
    Up,
}

/// What a stroke sounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Stroke {
    /// The hand passes over the strings without touching them.
    Silent,
    /// A single bass note.
    Bass,
    /// All the strings of the shape.
    Strum,
    /// The strings of the shape, damped at once.
    Chop,
}

/// One place in a pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Slot {
    /// Which way the hand moves here; it follows from the position in the bar.
    pub direction: Direction,
    /// What sounds.
    pub stroke: Stroke,
    /// Played louder.
    pub accent: bool,
}

/// A bar of strokes, evenly spaced.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct StrumPattern {
    /// A plain trade name (`boom-chuck`), or what the tune calls its own.
    pub name: String,
    /// The metre it fills.
    pub metre: Metre,
    /// Length of a slot.
    pub step: Ticks,
    /// The strokes of a bar.
    pub slots: Vec<Slot>,
}
