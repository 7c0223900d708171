//! Names, pitches, keys, metres and chords, version 1.

use serde::{Deserialize, Serialize};

use crate::chart;
use crate::theory::{self, Accidental, Degree, Letter, Mode, NoteName, Quality};

pub(super) type Name = (u8, i8);
pub(super) type Pitch = (u8, i8, i8);
pub(super) type Key = (u8, i8, u8);
pub(super) type Metre = (u8, u8, [u8; 6]);

pub(super) fn name(name: NoteName) -> Name {
    (name.letter as u8, small(name.accidental.semitones()))
}

pub(super) fn restore_name((letter, accidental): Name) -> Option<NoteName> {
    Some(NoteName::new(
        *Letter::ALL.get(usize::from(letter))?,
        Accidental::new(accidental.into())?,
    ))
}

pub(super) fn small(value: i32) -> i8 {
    i8::try_from(value).unwrap_or_default()
}

pub(super) fn pitch(pitch: theory::Pitch) -> Pitch {
    let (letter, accidental) = name(pitch.name);
    (letter, accidental, pitch.octave)
}

pub(super) fn restore_pitch((letter, accidental, octave): Pitch) -> Option<theory::Pitch> {
    Some(theory::Pitch::new(
        restore_name((letter, accidental))?,
        octave,
    ))
}

/// Place of a value in a list that never loses a row.
pub(super) fn place<T: PartialEq>(list: &[T], value: &T) -> u8 {
    list.iter()
        .position(|row| row == value)
        .and_then(|place| u8::try_from(place).ok())
        .unwrap_or(u8::MAX)
}

/// The modes in the order of version 1.
const MODES: [Mode; 7] = [
    Mode::Major,
    Mode::Minor,
    Mode::Dorian,
    Mode::Phrygian,
    Mode::Lydian,
    Mode::Mixolydian,
    Mode::Locrian,
];

pub(super) fn key(key: theory::Key) -> Key {
    let (letter, accidental) = name(key.tonic);
    (letter, accidental, place(&MODES, &key.mode))
}

pub(super) fn restore_key((letter, accidental, mode): Key) -> Option<theory::Key> {
    Some(theory::Key::new(
        restore_name((letter, accidental))?,
        *MODES.get(usize::from(mode))?,
    ))
}

pub(super) fn metre(metre: chart::Metre) -> Metre {
    (metre.count, metre.unit, metre.groups)
}

pub(super) fn restore_metre((count, unit, groups): Metre) -> Option<chart::Metre> {
    (unit > 0).then_some(chart::Metre {
        count,
        unit,
        groups,
    })
}

/// Root, degrees as bits in the order of version 1's list, bass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Chord(Name, u32, Option<Name>);

/// The degrees in the order of version 1.
const DEGREES: [Degree; 19] = [
    Degree::Root,
    Degree::Second,
    Degree::MinorThird,
    Degree::MajorThird,
    Degree::Fourth,
    Degree::FlatFifth,
    Degree::Fifth,
    Degree::SharpFifth,
    Degree::Sixth,
    Degree::DiminishedSeventh,
    Degree::MinorSeventh,
    Degree::MajorSeventh,
    Degree::FlatNinth,
    Degree::Ninth,
    Degree::SharpNinth,
    Degree::Eleventh,
    Degree::SharpEleventh,
    Degree::FlatThirteenth,
    Degree::Thirteenth,
];

impl From<theory::Chord> for Chord {
    fn from(chord: theory::Chord) -> Self {
        let degrees = DEGREES
            .iter()
            .zip(0..)
            .filter(|&(&degree, _)| chord.quality.has(degree));
        Self(
            name(chord.root),
            degrees.fold(0, |bits, (_, bit)| bits | 1 << bit),
            chord.bass.map(name),
        )
    }
}

impl Chord {
    pub(super) fn restore(&self) -> Option<theory::Chord> {
        let degrees = DEGREES
            .iter()
            .zip(0..)
            .filter(|&(_, bit)| self.1 & (1 << bit) != 0);
        Some(theory::Chord {
            root: restore_name(self.0)?,
            quality: degrees.fold(Quality::of(&[]), |quality, (&degree, _)| {
                quality.with(degree)
            }),
            bass: match self.2 {
                Some(bass) => Some(restore_name(bass)?),
                None => None,
            },
        })
    }
}
