//! The neck: instruments, chord shapes computed with their fingers, and the open strings that may ring.
//!
//! A shape is found by search, never looked up: every way of stopping the courses that sounds the chord is tried with
//! every set of fingers that can hold it, and the shapes are ranked by one sum of a few weighted efforts. So any tuning,
//! any capo and any chord get shapes, and the same rule explains them all.

mod capo;
mod change;
mod cheapest;
mod double_stop;
mod drone;
mod ease;
mod effort;
mod hand;
mod instrument;
mod lacks;
mod naming;
mod neck;
mod place;
mod retune;
mod ring;
mod roughness;
mod scale_places;
mod search;
mod shape;
mod tab;
mod table;
mod tones;
mod tuning;

pub(crate) use capo::family;
pub use capo::{CapoPlace, capo_places, families};
pub use change::change_effort;
pub use double_stop::{Apart, DoubleStop, Stops, double_stops};
pub use drone::{Choice, Drones, Neighbour, Sounding, Why, drones, neighbours};
pub use ease::{Ease, ease};
pub use instrument::{Capo, Course, Instrument, MAX_COURSES, MAX_FRETS, Strings, Texture};
pub use naming::{Held, NotAShape, name_frets, read_frets};
pub use place::FIRST_POSITION_ENDS;
pub use retune::{Setup, Tuning, setups};
pub use ring::{InChord, InKey, OpenString, ring_in_chord, ring_in_key};
pub use roughness::{plucked, roughness, roughness_of_sines};
pub use scale_places::{ScalePlace, scale_places};
pub use search::{every_shape, shapes};
pub use shape::{BOX_FRETS, Barre, Finger, Order, Shape};
pub use tab::{FIRST_POSITION, Place, Tone, octave_onto, place, suiting_octave};
pub use tuning::{RETUNE, shared_tunings};
