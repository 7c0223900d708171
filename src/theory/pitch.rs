//! Note names and pitches as they are spelled on paper.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// One of the seven letters of the staff, in the order of the octave that starts at C.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Letter {
    C,
    D,
    E,
    F,
    G,
    A,
    B,
}

impl Letter {
    /// All letters, C first.
    pub const ALL: [Letter; 7] = [
        Self::C,
        Self::D,
        Self::E,
        Self::F,
        Self::G,
        Self::A,
        Self::B,
    ];

    /// The letter that an upper-case character names.
    pub const fn named(letter: char) -> Option<Self> {
        Some(match letter {
            'C' => Self::C,
            'D' => Self::D,
            'E' => Self::E,
            'F' => Self::F,
            'G' => Self::G,
            'A' => Self::A,
            'B' => Self::B,
            _ => return None,
        })
    }

    /// Steps of the staff above C: 0 to 6.
    pub const fn index(self) -> i32 {
        self as i32
    }

    /// The letter `index` staff steps above C; any integer wraps round the octave.
    pub const fn from_index(index: i32) -> Self {
        Self::ALL[index.rem_euclid(7) as usize]
    }

    /// Semitones of the natural note above C: 0 to 11.
    pub const fn semitones(self) -> i32 {
        [0, 2, 4, 5, 7, 9, 11][self as usize]
    }
}

/// Semitones that a sign raises (sharp) or lowers (flat) a letter by: -2 to 2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Accidental(i8);

impl Accidental {
    /// Two semitones down.
    pub const DOUBLE_FLAT: Self = Self(-2);
    /// A semitone down.
    pub const FLAT: Self = Self(-1);
    /// The letter as it is.
    pub const NATURAL: Self = Self(0);
    /// A semitone up.
    pub const SHARP: Self = Self(1);
    /// Two semitones up.
    pub const DOUBLE_SHARP: Self = Self(2);

    /// An accidental of so many semitones, where one exists (-2 to 2).
    pub const fn new(semitones: i32) -> Option<Self> {
        match semitones {
            -2 => Some(Self::DOUBLE_FLAT),
            -1 => Some(Self::FLAT),
            0 => Some(Self::NATURAL),
            1 => Some(Self::SHARP),
            2 => Some(Self::DOUBLE_SHARP),
            _ => None,
        }
    }

    /// Semitones: negative for flats.
    pub const fn semitones(self) -> i32 {
        self.0 as i32
    }
}

/// One of the twelve notes of the keyboard, whatever its name: 0 is C, 11 is B.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct PitchClass(u8);

impl PitchClass {
    /// The class of any number of semitones above a C.
    // A remainder of twelve fits in u8.
    #[allow(clippy::cast_possible_truncation)]
    pub const fn new(semitones: i32) -> Self {
        Self(semitones.rem_euclid(12) as u8)
    }

    /// Semitones above C: 0 to 11.
    pub const fn semitones(self) -> i32 {
        self.0 as i32
    }
}

/// A spelled note without its octave, such as F♯.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct NoteName {
    /// The letter on the staff.
    pub letter: Letter,
    /// The sign before it.
    pub accidental: Accidental,
}

/// A spelled note in its octave: scientific pitch notation, C4 is middle C.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Pitch {
    /// The note's name.
    pub name: NoteName,
    /// The octave that starts at C; 4 holds middle C. B♯3 sounds as C4.
    pub octave: i8,
}

/// How sharps and flats are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Accidentals {
    /// `#` and `b`, for the shell and for files.
    #[default]
    Ascii,
    /// ♯ and ♭, for people.
    Typographic,
}

/// Which names the seven letters go by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Naming {
    /// C D E F G A B.
    #[default]
    English,
    /// C D E F G A H, with B for B flat.
    German,
    /// Do Re Mi Fa Sol La Si.
    Solfege,
}

/// How note names are printed: the names and the signs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct NoteStyle {
    /// Names of the letters.
    pub naming: Naming,
    /// Form of the signs.
    pub accidentals: Accidentals,
}

impl NoteName {
    /// A name from its parts.
    pub const fn new(letter: Letter, accidental: Accidental) -> Self {
        Self { letter, accidental }
    }

    /// The key of the keyboard that sounds it.
    pub const fn class(self) -> PitchClass {
        PitchClass::new(self.letter.semitones() + self.accidental.semitones())
    }

    /// The name in a style.
    ///
    /// ```
    /// use fourcourse::theory::{Accidentals, Naming, NoteName, NoteStyle};
    /// let name: NoteName = "Bb".parse().unwrap();
    /// let style = NoteStyle { naming: Naming::English, accidentals: Accidentals::Typographic };
    /// assert_eq!(name.in_style(style), "B♭");
    /// assert_eq!(name.in_style(NoteStyle { naming: Naming::German, ..style }), "B");
    /// ```
    pub fn in_style(self, style: NoteStyle) -> String {
        let letter = self.letter.index() as usize;
        let mut accidental = self.accidental.semitones();
        let base = match style.naming {
            Naming::English => ["C", "D", "E", "F", "G", "A", "B"][letter],
            Naming::Solfege => ["Do", "Re", "Mi", "Fa", "Sol", "La", "Si"][letter],
            Naming::German if self.letter == Letter::B && accidental == -1 => {
                accidental = 0;
                "B"
            }
            Naming::German => ["C", "D", "E", "F", "G", "A", "H"][letter],
        };
        let (sign, times) = match (accidental.signum(), style.accidentals) {
            (1, Accidentals::Ascii) => ("#", accidental),
            (1, Accidentals::Typographic) => ("♯", accidental),
            (-1, Accidentals::Ascii) => ("b", -accidental),
            (-1, Accidentals::Typographic) => ("♭", -accidental),
            _ => ("", 0),
        };
        format!("{base}{}", sign.repeat(times as usize))
    }
}

impl fmt::Display for NoteName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.in_style(NoteStyle::default()))
    }
}

/// The text is not a note name.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not a note name")]
pub struct NotANoteName;

impl NoteName {
    /// Reads a note name at the start of `text`: a letter in upper case and at most two sharps or flats, in ASCII or
    /// typographic signs. Returns the name and what follows it.
    pub fn split(text: &str) -> Option<(Self, &str)> {
        let mut chars = text.chars();
        let letter = Letter::named(chars.next()?)?;
        let mut semitones = 0;
        loop {
            let rest = chars.as_str();
            let step = match chars.next() {
                Some('#' | '♯') => 1,
                Some('b' | '♭') => -1,
                Some('𝄪') => 2,
                Some('𝄫') => -2,
                _ => 0,
            };
            let fits = step != 0 && semitones * step >= 0;
            match Accidental::new(semitones + step) {
                Some(_) if fits => semitones += step,
                _ => return Some((Self::new(letter, Accidental::new(semitones)?), rest)),
            }
        }
    }
}

impl FromStr for NoteName {
    type Err = NotANoteName;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        match Self::split(text) {
            Some((name, "")) => Ok(name),
            _ => Err(NotANoteName),
        }
    }
}

impl Pitch {
    /// A pitch from a name and the octave it is written in.
    pub const fn new(name: NoteName, octave: i8) -> Self {
        Self { name, octave }
    }

    /// MIDI key number: 60 is middle C (MIDI 1.0). Pitches outside 0 to 127 are possible.
    pub const fn midi(self) -> i32 {
        (self.octave as i32 + 1) * 12
            + self.name.letter.semitones()
            + self.name.accidental.semitones()
    }
}

/// The text is not a pitch.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not a pitch")]
pub struct NotAPitch;

impl FromStr for Pitch {
    type Err = NotAPitch;

    /// Reads a name and its octave, -1 to 9 as in scientific pitch notation: `C4`, `Bb3`, `F#-1`.
    ///
    /// ```
    /// use fourcourse::theory::Pitch;
    /// assert_eq!("Bb3".parse::<Pitch>().unwrap().midi(), 58);
    /// assert!("Bb".parse::<Pitch>().is_err());
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let (name, octave) = NoteName::split(text.trim()).ok_or(NotAPitch)?;
        match octave.parse() {
            Ok(octave @ -1..=9) => Ok(Self::new(name, octave)),
            _ => Err(NotAPitch),
        }
    }
}

impl fmt::Display for Pitch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", self.name, self.octave)
    }
}
