//! The ground floor: pitches, intervals, keys, scales, chords and chord numbers.
//!
//! Everything is spelled (a letter and an accidental), so that a key change gives the name a player expects:
//! the third of D is F♯ and never G♭. Nothing here knows of instruments, tunes or time.

mod chord;
mod chord_names;
mod interval;
mod key;
mod need;
mod number;
mod pitch;
mod reads;
mod scale;
mod simplify;
mod suffix;
mod symbol;
mod transpose;
mod words;

pub use chord::{Chord, Degree, Quality, Symbol};
pub use chord_names::{ChordName, chord_names};
pub use interval::Interval;
pub use key::{Key, KeyError, Mode};
pub use need::Need;
pub use number::{Number, NumberError, ScaleDegree};
pub use pitch::{
    Accidental, Accidentals, Letter, Naming, NotANoteName, NotAPitch, NoteName, NoteStyle, Pitch,
    PitchClass,
};
pub use reads::Reads;
pub use simplify::three_chords;
pub use symbol::{LONGEST_SYMBOL, SymbolError};
pub use transpose::{Direction, Transposition};

#[cfg(test)]
mod tests {
    //! What the property tests of this room draw from.

    use super::*;
    use proptest::prelude::*;

    /// Any note with at most a single sign.
    pub(super) fn any_note() -> impl Strategy<Value = NoteName> {
        (0..7, -1..=1).prop_map(|(letter, sign)| {
            let sign = Accidental::new(sign).unwrap();
            NoteName::new(Letter::from_index(letter), sign)
        })
    }

    /// The tonic of a major key that has a signature.
    pub(super) fn any_tonic() -> impl Strategy<Value = NoteName> {
        any_note().prop_filter("a signature", |&tonic| {
            Key::new(tonic, Mode::Major).signature().abs() <= 7
        })
    }

    /// Any tonic in any mode, theoretical keys too.
    pub(super) fn any_key() -> impl Strategy<Value = Key> {
        let mode = proptest::sample::select(&Mode::ALL[..]);
        (any_note(), mode).prop_map(|(tonic, mode)| Key::new(tonic, mode))
    }

    /// A key that has a signature.
    pub(super) fn usual_key() -> impl Strategy<Value = Key> {
        any_key().prop_filter("a signature", |key| key.signature().abs() <= 7)
    }

    /// A quality of at most seven notes.
    pub(super) fn any_quality() -> impl Strategy<Value = Quality> {
        proptest::sample::subsequence(&Degree::ALL[..], 0..=6)
            .prop_map(|degrees| Quality::of(&degrees))
    }

    /// A chord of at most seven notes, perhaps over a bass.
    pub(super) fn any_chord() -> impl Strategy<Value = Chord> {
        let bass = proptest::option::of(any_note());
        (any_note(), any_quality(), bass).prop_map(|(root, quality, bass)| Chord {
            root,
            quality,
            bass: bass.filter(|&bass| bass != root),
        })
    }
}
