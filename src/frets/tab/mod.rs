//! Tablature: where each note of a melody is stopped, and by which finger.
//!
//! All notes are placed at once, by dynamic programming over one stated sum (`cost.rs`), so that a place is never
//! chosen that leaves the next note out of reach. Only what the neck needs to know of a melody comes in here: pitches,
//! how much time there is, and which way the pick goes.

mod cost;
mod fit;
mod path;

pub use fit::{octave_onto, suiting_octave};
pub use path::place;

use super::shape::Finger;

/// A note to be placed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tone {
    /// MIDI key number: 60 is middle C.
    pub midi: i32,
    /// How long it sounds, in quarter notes.
    pub quarters: f32,
    /// Silence comes before it: time for the hand to move.
    pub after_rest: bool,
    /// It is picked upwards.
    pub up: bool,
}

/// Where a note is played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Place {
    /// The course, counted from 0.
    pub course: usize,
    /// The fret, counted from the capo: 0 is open.
    pub fret: u8,
    /// The finger that stops it; `None` where it is open.
    pub finger: Option<Finger>,
    /// Where the hand is: the first fret that the index looks after. First position is 1.
    pub position: u8,
}

/// The first position: the hand at the nut.
pub const FIRST_POSITION: u8 = 1;
