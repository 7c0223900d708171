//! Keys: a tonic and a mode, and the signature they are written with.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::pitch::{Accidental, Letter, NoteName};

/// The seven modes that the ABC standard and the trade name. Major and ionian are one, minor and aeolian another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Mode {
    Major,
    Minor,
    Dorian,
    Phrygian,
    Lydian,
    Mixolydian,
    Locrian,
}

impl Mode {
    /// All modes, the common ones first.
    pub const ALL: [Mode; 7] = [
        Self::Major,
        Self::Minor,
        Self::Dorian,
        Self::Mixolydian,
        Self::Lydian,
        Self::Phrygian,
        Self::Locrian,
    ];

    /// Sharps that the mode adds to the major signature of the same tonic: -5 (locrian) to 1 (lydian).
    pub const fn sharps(self) -> i32 {
        match self {
            Self::Lydian => 1,
            Self::Major => 0,
            Self::Mixolydian => -1,
            Self::Dorian => -2,
            Self::Minor => -3,
            Self::Phrygian => -4,
            Self::Locrian => -5,
        }
    }

    /// Whether the chord on the tonic has a minor third.
    pub const fn is_minor(self) -> bool {
        self.sharps() <= -2
    }
}

/// A tonic and a mode, such as A mixolydian.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Key {
    /// The note the tune comes home to.
    pub tonic: NoteName,
    /// Which scale stands on it.
    pub mode: Mode,
}

impl Key {
    /// A key from its parts.
    pub const fn new(tonic: NoteName, mode: Mode) -> Self {
        Self { tonic, mode }
    }

    /// Sharps of the signature; negative counts flats. Beyond 7 either way a key is only theoretical.
    pub const fn signature(self) -> i32 {
        let natural = [0, 2, 4, -1, 1, 3, 5][self.tonic.letter as usize];
        natural + 7 * self.tonic.accidental.semitones() + self.mode.sharps()
    }

    /// The sign that the signature puts on a letter (sharps enter as F C G D A E B, flats the other way round).
    pub const fn accidental(self, letter: Letter) -> Accidental {
        let order = [1, 3, 5, 0, 2, 4, 6][letter as usize];
        let times = (self.signature() - order + 6).div_euclid(7);
        match Accidental::new(times) {
            Some(accidental) => accidental,
            None => Accidental::NATURAL,
        }
    }

    /// The seven notes of the scale from the tonic up.
    pub fn scale(self) -> [NoteName; 7] {
        std::array::from_fn(|i| {
            let letter = Letter::from_index(self.tonic.letter.index() + i as i32);
            NoteName::new(letter, self.accidental(letter))
        })
    }
}

impl fmt::Display for Key {
    /// `A`, `Am`, `A mixolydian`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mode = match self.mode {
            Mode::Major => "",
            Mode::Minor => "m",
            Mode::Dorian => " dorian",
            Mode::Phrygian => " phrygian",
            Mode::Lydian => " lydian",
            Mode::Mixolydian => " mixolydian",
            Mode::Locrian => " locrian",
        };
        write!(f, "{}{mode}", self.tonic)
    }
}
