//! The circle: who sits round, and what each of them needs for a tune in a key.
//!
//! A [`Seat`] is an instrument in somebody's hands, a voice, or a page that is read in another pitch. For a tune this
//! room answers what each seat plays ([`Sheet`]), which of the twelve keys suits all of them best ([`best_keys`]), and in
//! which order an evening's tunes cost the least retuning ([`least_retuning`]). It gives kinds and numbers, no sentences.

mod best_key;
mod ease;
mod evening;
mod hands;
mod known;
mod seat;
mod sheet;
mod voice;

pub use best_key::{HandsInKey, MelodyInKey, RankedKey, SeatInKey, VoiceInKey, best_keys, shares};
pub use ease::{KeyEase, tune_ease};
pub use evening::{Retuning, least_retuning, longest_unplayed, retuning};
pub use hands::{AllHands, CapoAdvice, Hands};
pub use known::{Everyone, Known};
pub use seat::{CapoHabit, Seat};
pub use sheet::{Line, Sheet};
pub use voice::{Compass, NotACompass, VoiceType};
