//! The built-in instruments, one row each.
//!
//! Tunings are those of the trade sheet; scale lengths and spacings are what makers commonly build (common practice).

use crate::theory::{Accidental, Letter, NoteName, Pitch};

use super::instrument::{Course, Instrument, Strings, Texture};

/// One instrument.
pub(super) struct Row {
    pub(super) id: &'static str,
    /// Letter and octave of each open course.
    open: &'static [(Letter, i8)],
    strings: Strings,
    /// Fret at which the first course starts.
    short: u8,
    scale_mm: f64,
    spacing_mm: f64,
    frets: u8,
    frets_a_finger: u8,
    texture: Texture,
    fretted: bool,
}

impl Row {
    pub(super) fn instrument(&self) -> Instrument {
        let course = |(i, &(letter, octave)): (usize, &(Letter, i8))| Course {
            open: Pitch::new(NoteName::new(letter, Accidental::NATURAL), octave),
            strings: self.strings,
            starts_at: if i == 0 { self.short } else { 0 },
        };
        Instrument {
            id: self.id,
            courses: self.open.iter().enumerate().map(course).collect(),
            scale_mm: self.scale_mm,
            spacing_mm: self.spacing_mm,
            frets: self.frets,
            frets_a_finger: self.frets_a_finger,
            texture: self.texture,
            fretted: self.fretted,
        }
    }
}

use Letter::{A, B, C, D, E, G};

impl Row {
    /// A fretted neck of single strings from the nut, lengths in mm.
    const fn new(
        id: &'static str,
        open: &'static [(Letter, i8)],
        (scale_mm, spacing_mm): (f64, f64),
        frets: u8,
    ) -> Self {
        Self {
            id,
            open,
            strings: Strings::Single,
            short: 0,
            scale_mm,
            spacing_mm,
            frets,
            frets_a_finger: 1,
            texture: Texture::Full,
            fretted: true,
        }
    }

    const fn in_pairs(self) -> Self {
        let strings = Strings::Pair;
        Self { strings, ..self }
    }

    const fn in_fifths(self) -> Self {
        let frets_a_finger = 2;
        Self {
            frets_a_finger,
            ..self
        }
    }

    const fn short_at(self, short: u8) -> Self {
        Self { short, ..self }
    }

    const fn sounding(self, texture: Texture) -> Self {
        Self { texture, ..self }
    }

    const fn without_frets(self) -> Self {
        let fretted = false;
        Self { fretted, ..self }
    }
}

const MANDOLIN: &[(Letter, i8)] = &[(G, 3), (D, 4), (A, 4), (E, 5)];
const OCTAVE_MANDOLIN: &[(Letter, i8)] = &[(G, 2), (D, 3), (A, 3), (E, 4)];
const MANDOLA: &[(Letter, i8)] = &[(C, 3), (G, 3), (D, 4), (A, 4)];
const GUITAR: &[(Letter, i8)] = &[(E, 2), (A, 2), (D, 3), (G, 3), (B, 3), (E, 4)];
const UKULELE: &[(Letter, i8)] = &[(G, 4), (C, 4), (E, 4), (A, 4)];
const BARITONE: &[(Letter, i8)] = &[(D, 3), (G, 3), (B, 3), (E, 4)];
const BANJO: &[(Letter, i8)] = &[(G, 4), (D, 3), (G, 3), (B, 3), (D, 4)];
const BASS: &[(Letter, i8)] = &[(E, 1), (A, 1), (D, 2), (G, 2)];

pub(super) const ROWS: [Row; 12] = [
    Row::new("mandolin", MANDOLIN, (350.0, 8.0), 20)
        .in_pairs()
        .in_fifths(),
    Row::new("octave-mandolin", OCTAVE_MANDOLIN, (508.0, 9.0), 20)
        .in_pairs()
        .in_fifths(),
    Row::new("mandola", MANDOLA, (420.0, 8.5), 20)
        .in_pairs()
        .in_fifths(),
    Row::new("tenor-banjo", MANDOLA, (530.0, 8.5), 17).in_fifths(),
    Row::new("irish-tenor-banjo", OCTAVE_MANDOLIN, (530.0, 8.5), 17).in_fifths(),
    Row::new("tenor-guitar", MANDOLA, (584.0, 8.5), 19).in_fifths(),
    Row::new("guitar", GUITAR, (650.0, 7.5), 20),
    Row::new("ukulele", UKULELE, (345.0, 9.5), 15),
    Row::new("baritone-ukulele", BARITONE, (510.0, 9.5), 18),
    Row::new("banjo", BANJO, (667.0, 8.0), 22).short_at(5),
    Row::new("fiddle", MANDOLIN, (328.0, 6.5), 14)
        .in_fifths()
        .sounding(Texture::DoubleStop)
        .without_frets(),
    Row::new("bass", BASS, (864.0, 11.0), 20).sounding(Texture::RootAndFifth),
];
