//! The neck: instruments, chord shapes computed with their fingers, and the open strings that may ring.
//!
//! A shape is found by search, never looked up: every way of stopping the courses that sounds the chord is tried with
//! every set of fingers that can hold it, and the shapes are ranked by one sum of a few weighted efforts. So any tuning,
//! any capo and any chord get shapes, and the same rule explains them all.

mod effort;
mod hand;
mod instrument;
mod neck;
mod ring;
mod search;
mod shape;
mod sound;
mod table;
mod tones;

pub use instrument::{Capo, Course, Instrument, MAX_COURSES, MAX_FRETS, Strings, Texture};
pub use ring::{InChord, InKey, OpenString, ring_in_chord, ring_in_key};
pub use search::{every_shape, shapes};
pub use shape::{BOX_FRETS, Barre, Finger, Order, Shape};
