//! The ground floor: pitches, intervals, keys, scales, chords and chord numbers.
//!
//! Everything is spelled (a letter and an accidental), so that a key change gives the name a player expects:
//! the third of D is F♯ and never G♭. Nothing here knows of instruments, tunes or time.

mod chord;
mod interval;
mod key;
mod pitch;
mod suffix;
mod symbol;
mod words;

pub use chord::{Chord, Degree, Quality, Symbol};
pub use interval::Interval;
pub use key::{Key, Mode};
pub use pitch::{Accidental, Accidentals, Letter, Naming, NoteName, NoteStyle, Pitch, PitchClass};
pub use symbol::{LONGEST_SYMBOL, SymbolError};
