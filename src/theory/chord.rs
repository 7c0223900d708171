//! Chords as sets of degrees above a root.

use serde::{Deserialize, Serialize};

use super::interval::Interval;
use super::key::{Key, Mode};
use super::pitch::NoteName;

/// A chord tone, named by its distance from the root as charts name it.
///
/// The order is the order in which a symbol is spelled out, root first. `Sixth` and `DiminishedSeventh` sound alike
/// and are told apart, as are `Second` and `Ninth`: a suspension replaces the third, a ninth stands beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Degree {
    Root,
    Second,
    MinorThird,
    MajorThird,
    Fourth,
    FlatFifth,
    Fifth,
    SharpFifth,
    Sixth,
    DiminishedSeventh,
    MinorSeventh,
    MajorSeventh,
    FlatNinth,
    Ninth,
    SharpNinth,
    Eleventh,
    SharpEleventh,
    FlatThirteenth,
    Thirteenth,
}

impl Degree {
    /// All degrees in spelling order.
    pub const ALL: [Degree; 19] = [
        Self::Root,
        Self::Second,
        Self::MinorThird,
        Self::MajorThird,
        Self::Fourth,
        Self::FlatFifth,
        Self::Fifth,
        Self::SharpFifth,
        Self::Sixth,
        Self::DiminishedSeventh,
        Self::MinorSeventh,
        Self::MajorSeventh,
        Self::FlatNinth,
        Self::Ninth,
        Self::SharpNinth,
        Self::Eleventh,
        Self::SharpEleventh,
        Self::FlatThirteenth,
        Self::Thirteenth,
    ];

    /// Distance from the root.
    pub const fn interval(self) -> Interval {
        let (steps, semitones) = match self {
            Self::Root => (0, 0),
            Self::Second => (1, 2),
            Self::MinorThird => (2, 3),
            Self::MajorThird => (2, 4),
            Self::Fourth => (3, 5),
            Self::FlatFifth => (4, 6),
            Self::Fifth => (4, 7),
            Self::SharpFifth => (4, 8),
            Self::Sixth => (5, 9),
            Self::DiminishedSeventh => (6, 9),
            Self::MinorSeventh => (6, 10),
            Self::MajorSeventh => (6, 11),
            Self::FlatNinth => (8, 13),
            Self::Ninth => (8, 14),
            Self::SharpNinth => (8, 15),
            Self::Eleventh => (10, 17),
            Self::SharpEleventh => (10, 18),
            Self::FlatThirteenth => (12, 20),
            Self::Thirteenth => (12, 21),
        };
        Interval::new(steps, semitones)
    }
}

/// What kind of chord stands on a root: the set of its degrees. Equal sets are equal chords, however they were written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Quality(u32);

impl Quality {
    /// Root, major third, fifth.
    pub const MAJOR: Self = Self::of(&[Degree::Root, Degree::MajorThird, Degree::Fifth]);
    /// Root, minor third, fifth.
    pub const MINOR: Self = Self::of(&[Degree::Root, Degree::MinorThird, Degree::Fifth]);
    /// Root, minor third, diminished fifth.
    pub const DIMINISHED: Self = Self::of(&[Degree::Root, Degree::MinorThird, Degree::FlatFifth]);
    /// Root, major third, augmented fifth.
    pub const AUGMENTED: Self = Self::of(&[Degree::Root, Degree::MajorThird, Degree::SharpFifth]);
    /// Major triad with a minor seventh.
    pub const SEVENTH: Self = Self::MAJOR.with(Degree::MinorSeventh);
    /// Root and fifth alone.
    pub const POWER: Self = Self::of(&[Degree::Root, Degree::Fifth]);

    /// The quality with just these degrees; the root is always in.
    pub const fn of(degrees: &[Degree]) -> Self {
        let mut quality = Self(1);
        let mut i = 0;
        while i < degrees.len() {
            quality = quality.with(degrees[i]);
            i += 1;
        }
        quality
    }

    /// With one degree more.
    pub const fn with(self, degree: Degree) -> Self {
        Self(self.0 | 1 << degree as u32)
    }

    /// Without a degree; the root stays.
    pub const fn without(self, degree: Degree) -> Self {
        Self(self.0 & !(1 << degree as u32) | 1)
    }

    /// Whether a degree belongs to it.
    pub const fn has(self, degree: Degree) -> bool {
        self.0 & (1 << degree as u32) != 0
    }

    /// Its degrees in spelling order.
    pub fn degrees(self) -> impl Iterator<Item = Degree> {
        Degree::ALL
            .into_iter()
            .filter(move |&degree| self.has(degree))
    }

    /// Whether it is heard as minor: a minor third and no major one.
    pub const fn is_minor(self) -> bool {
        self.has(Degree::MinorThird) && !self.has(Degree::MajorThird)
    }
}

/// A chord: a root, a quality, and the bass where it is another note than the root.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Chord {
    /// The note it is named after.
    pub root: NoteName,
    /// Which degrees stand on the root.
    pub quality: Quality,
    /// The bass of a slash chord; it may lie outside the quality.
    pub bass: Option<NoteName>,
}

impl Chord {
    /// A chord on its own root.
    pub const fn new(root: NoteName, quality: Quality) -> Self {
        Self {
            root,
            quality,
            bass: None,
        }
    }

    /// The chord so many semitones lower, as a player would write it: named as the key on its root would be. What a hand
    /// holds behind a capo is the sounding chord, lower by the frets of the capo.
    ///
    /// ```
    /// use fourcourse::theory::Chord;
    /// let held = |chord: &str, capo| chord.parse::<Chord>().unwrap().down(capo).to_string();
    /// assert_eq!([held("Bb7", 3), held("C#m", 4), held("D/F#", 2)], ["G7", "Am", "C/E"]);
    /// ```
    pub fn down(self, semitones: u8) -> Self {
        let mode = match self.quality.is_minor() {
            true => Mode::Minor,
            false => Mode::Major,
        };
        let root = Key::new(self.root, mode).down(semitones.into()).tonic;
        let bass = self
            .bass
            .map(|bass| root + Interval::nearest(self.root, bass));
        Self { root, bass, ..self }
    }

    /// Its tones with their spelling, in spelling order; a foreign bass is not among them.
    pub fn tones(self) -> impl Iterator<Item = (Degree, NoteName)> {
        self.quality
            .degrees()
            .map(move |degree| (degree, self.root + degree.interval()))
    }

    /// The note that belongs at the bottom.
    pub fn lowest(self) -> NoteName {
        self.bass.unwrap_or(self.root)
    }
}

/// What a chart writes above a beat: a chord, or the word that nobody plays one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Symbol {
    /// Play this.
    Chord(Chord),
    /// `N.C.`: no chord.
    NoChord,
}
