//! Keys: a tonic and a mode, and the signature they are written with.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::pitch::{Accidental, Letter, NoteName, PitchClass};

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

    /// The mode of a name, shortened or not.
    fn named(name: &str) -> Option<Self> {
        const NAMES: [(&str, Mode); 9] = [
            ("major", Mode::Major),
            ("ionian", Mode::Major),
            ("minor", Mode::Minor),
            ("aeolian", Mode::Minor),
            ("dorian", Mode::Dorian),
            ("phrygian", Mode::Phrygian),
            ("lydian", Mode::Lydian),
            ("mixolydian", Mode::Mixolydian),
            ("locrian", Mode::Locrian),
        ];
        match name {
            "" | "M" => Some(Self::Major),
            "m" => Some(Self::Minor),
            _ if name.len() < 3 => None,
            _ => {
                let name = name.to_ascii_lowercase();
                let found = NAMES.into_iter().find(|(full, _)| full.starts_with(&name));
                found.map(|(_, mode)| mode)
            }
        }
    }

    /// A plain id (`mixolydian`).
    pub const fn id(self) -> &'static str {
        match self {
            Self::Major => "major",
            Self::Minor => "minor",
            Self::Dorian => "dorian",
            Self::Phrygian => "phrygian",
            Self::Lydian => "lydian",
            Self::Mixolydian => "mixolydian",
            Self::Locrian => "locrian",
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
        [0, 1, 2, 3, 4, 5, 6].map(|steps| {
            let letter = Letter::from_index(self.tonic.letter.index() + steps);
            NoteName::new(letter, self.accidental(letter))
        })
    }

    /// The key on a sounding tonic as a player would write it: the signature with the fewest signs.
    ///
    /// Where six sharps and six flats tie, the tonic decides (common practice): a natural one first, else the usual
    /// names D♭ E♭ F♯ A♭ B♭. So F♯ major and not G♭, E♭ minor and not D♯ minor.
    ///
    /// ```
    /// use fourcourse::theory::{Key, Mode, PitchClass};
    /// let on = |semitones, mode| Key::spelled_for_players(PitchClass::new(semitones), mode).to_string();
    /// assert_eq!([on(6, Mode::Major), on(3, Mode::Minor), on(8, Mode::Minor)], ["F#", "Ebm", "G#m"]);
    /// ```
    pub fn spelled_for_players(tonic: PitchClass, mode: Mode) -> Self {
        let unusual = |tonic: NoteName| match tonic.accidental {
            Accidental::NATURAL => false,
            Accidental::SHARP => tonic.letter != Letter::F,
            _ => tonic.letter == Letter::G,
        };
        let signs = [Accidental::NATURAL, Accidental::SHARP, Accidental::FLAT];
        Letter::ALL
            .into_iter()
            .flat_map(|letter| signs.map(|sign| Self::new(NoteName::new(letter, sign), mode)))
            .filter(|key| key.tonic.class() == tonic)
            .min_by_key(|key| (key.signature().abs(), unusual(key.tonic)))
            // Every sound has a name with at most one sign, so this is never needed.
            .unwrap_or(Self::new(
                NoteName::new(Letter::C, Accidental::NATURAL),
                mode,
            ))
    }

    /// The key so many semitones higher, as a player would write it. Whole octaves change nothing.
    ///
    /// ```
    /// use fourcourse::theory::Key;
    /// let a: Key = "A".parse().unwrap();
    /// assert_eq!(a.up(1).to_string(), "Bb");
    /// assert_eq!(a.down(3).to_string(), "F#");
    /// ```
    pub fn up(self, semitones: i32) -> Self {
        let semitones = semitones.rem_euclid(12);
        if semitones == 0 {
            return self;
        }
        let tonic = PitchClass::new(self.tonic.class().semitones() + semitones);
        Self::spelled_for_players(tonic, self.mode)
    }

    /// The key so many semitones lower, as a player would write it.
    pub fn down(self, semitones: i32) -> Self {
        self.up(-(semitones % 12))
    }
}

/// Why a text is not a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum KeyError {
    /// It does not start with a note in upper case.
    #[error("no tonic")]
    NoTonic,
    /// What follows the tonic is not a mode.
    #[error("unknown mode")]
    UnknownMode,
}

impl FromStr for Key {
    type Err = KeyError;

    /// Reads a tonic and a mode: nothing or `M` for major, `m` for minor, or at least three letters of a mode's name in
    /// any case, as the ABC standard 2.1 has it (`Amix`, `A Mixolydian`, `D dor`, `C ionian`, `E aeolian`).
    ///
    /// ```
    /// use fourcourse::theory::Key;
    /// assert_eq!("F#m".parse::<Key>(), "F# minor".parse());
    /// assert_eq!("Amix".parse::<Key>().unwrap().to_string(), "A mixolydian");
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let (tonic, mode) = NoteName::split(text.trim()).ok_or(KeyError::NoTonic)?;
        Mode::named(mode.trim())
            .map(|mode| Self::new(tonic, mode))
            .ok_or(KeyError::UnknownMode)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::tests::any_key;
    use proptest::prelude::*;

    #[test]
    fn keys_are_read_as_people_type_them() {
        for (written, meant) in [
            ("A", "A"),
            ("Bb", "Bb"),
            ("B♭ major", "Bb"),
            ("Am", "Am"),
            ("A minor", "Am"),
            ("A MIN", "Am"),
            ("C ion", "C"),
            ("Amix", "A mixolydian"),
            ("D dor", "D dorian"),
            ("F#m", "F#m"),
            (" E  Phrygian ", "E phrygian"),
        ] {
            assert_eq!(written.parse::<Key>().unwrap().to_string(), meant);
        }
        assert_eq!("h".parse::<Key>(), Err(KeyError::NoTonic));
        assert_eq!("A mi".parse::<Key>(), Err(KeyError::UnknownMode));
        assert_eq!("A mixed".parse::<Key>(), Err(KeyError::UnknownMode));
    }

    #[test]
    fn the_twelve_major_and_minor_keys_are_the_ones_players_use() {
        let all = |mode| {
            let keys = (0..12).map(|n| Key::spelled_for_players(PitchClass::new(n), mode));
            keys.map(|key| key.to_string())
                .collect::<Vec<_>>()
                .join(" ")
        };
        // Common practice.
        assert_eq!(all(Mode::Major), "C Db D Eb E F F# G Ab A Bb B");
        assert_eq!(all(Mode::Minor), "Cm C#m Dm Ebm Em Fm F#m Gm G#m Am Bbm Bm");
    }

    proptest! {
        #[test]
        fn players_never_see_more_than_six_signs(class in 0..12, key in any_key()) {
            let key = Key::spelled_for_players(PitchClass::new(class), key.mode);
            prop_assert!(key.signature().abs() <= 6);
            prop_assert_eq!(key.tonic.class().semitones(), class);
        }

        #[test]
        fn up_and_down_meet_again(key in any_key(), semitones in -30..30) {
            prop_assert_eq!(key.up(semitones).down(semitones).tonic.class(), key.tonic.class());
            prop_assert_eq!(key.down(semitones), key.up(-semitones));
        }

        #[test]
        fn a_printed_key_is_read_back(key in any_key(), text in ".{0,40}") {
            prop_assert_eq!(key.to_string().parse(), Ok(key));
            let _ = text.parse::<Key>();
        }
    }
}
