//! Instruments whose notes are written higher than they sound.

use super::interval::Interval;
use super::key::Key;
use super::transpose::Transposition;

/// In which pitch somebody reads: which note sounds when C is on the page.
///
/// A B flat instrument reads a major second above what sounds, an E flat one a major sixth, one in F a fifth (standard
/// transposition; the MusicXML element `transpose` says the same from written to sounding). A tenor saxophone is in B flat
/// and reads an octave higher still; add [`Interval::OCTAVE`] for such.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Reads {
    /// As it sounds.
    #[default]
    Concert,
    /// Clarinet, trumpet, tenor and soprano saxophone.
    BFlat,
    /// Alto and baritone saxophone, E flat horn.
    EFlat,
    /// Horn in F, English horn.
    F,
}

impl Reads {
    /// All of them, concert pitch first.
    pub const ALL: [Self; 4] = [Self::Concert, Self::BFlat, Self::EFlat, Self::F];

    /// A plain id: the note that sounds when C is written.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Concert => "C",
            Self::BFlat => "Bb",
            Self::EFlat => "Eb",
            Self::F => "F",
        }
    }

    /// How far the written note lies above the sounding one.
    pub const fn interval(self) -> Interval {
        match self {
            Self::Concert => Interval::UNISON,
            Self::BFlat => Interval::new(1, 2),
            Self::EFlat => Interval::new(5, 9),
            Self::F => Interval::FIFTH,
        }
    }

    /// The key on the page for a sounding key: one with more than six signs is written as the key of the same sound
    /// with fewer (common practice: B major is D flat, not C sharp, for a B flat instrument).
    ///
    /// ```
    /// use fourcourse::theory::Reads;
    /// let a = "A".parse().unwrap();
    /// assert_eq!(Reads::ALL.map(|reads| reads.written_key(a).to_string()), ["A", "B", "F#", "E"]);
    /// ```
    pub fn written_key(self, sounding: Key) -> Key {
        if self == Self::Concert {
            return sounding;
        }
        let key = Key::new(sounding.tonic + self.interval(), sounding.mode);
        if key.signature().abs() > 6 {
            return Key::spelled_for_players(key.tonic.class(), key.mode);
        }
        key
    }

    /// The move from what sounds in a key to what is written, for notes, chords and pitches.
    ///
    /// ```
    /// use fourcourse::theory::{Chord, Pitch, Reads};
    /// let written = Reads::BFlat.written("D".parse().unwrap());
    /// assert_eq!(written.chord("Bm".parse::<Chord>().unwrap()).to_string(), "C#m");
    /// assert_eq!(written.pitch("A4".parse::<Pitch>().unwrap()).to_string(), "B4");
    /// ```
    pub fn written(self, sounding: Key) -> Transposition {
        let (interval, key) = (self.interval(), self.written_key(sounding));
        // The key may be spelled a letter away from where the interval leads; the sound stays the interval's.
        let nearest = Interval::nearest(sounding.tonic, key.tonic);
        let octaves = (interval.semitones - nearest.semitones).div_euclid(12);
        let up = |one: i8, octave: i8| one + octave * octaves;
        Transposition::by(Interval::new(
            up(nearest.steps, 7),
            up(nearest.semitones, 12),
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::Pitch;
    use crate::theory::tests::usual_key;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_is_written_lies_the_interval_above_what_sounds(
            key in usual_key(),
            reads in proptest::sample::select(&Reads::ALL[..]),
            midi in 20..100,
        ) {
            let pitch: Pitch = key.spell_midi(midi);
            let written = reads.written(key).pitch(pitch);
            prop_assert_eq!(written.midi() - midi, i32::from(reads.interval().semitones));
            prop_assert_eq!(reads.written(key).note(key.tonic), reads.written_key(key).tonic);
            if reads != Reads::Concert {
                prop_assert!(reads.written_key(key).signature().abs() <= 6);
            }
        }
    }
}
