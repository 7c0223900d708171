//! What the band plays: one time through a tune, and the last time with its ending.

use crate::chart::Ticks;

use super::event::Event;

/// What the band plays of a tune in a key, in one style. Made ahead of playing, never changed afterwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Score {
    /// Every time through but the last, in the order of time.
    pub events: Vec<Event>,
    /// How long a time through is: the length of the tune as played.
    pub length: Ticks,
    /// The last time through with its ending, from its own first tick.
    pub last: Vec<Event>,
    /// How long the last time through is, the ending included.
    pub last_length: Ticks,
}
