//! The built-in instruments, one row each.
//!
//! Tunings are those of the trade sheet; scale lengths and spacings are what makers commonly build (common practice).

use crate::theory::{Accidental, Letter, NoteName, Pitch};

use super::instrument::{Course, Instrument, Strings};

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
            fretted: self.fretted,
        }
    }
}

use Letter::{A, B, C, D, E, G};
use Strings::{Pair, Single};

const fn row(
    id: &'static str,
    open: &'static [(Letter, i8)],
    strings: Strings,
    (scale_mm, spacing_mm): (f64, f64),
    frets: u8,
) -> Row {
    Row {
        id,
        open,
        strings,
        short: 0,
        scale_mm,
        spacing_mm,
        frets,
        fretted: true,
    }
}

pub(super) const ROWS: [Row; 12] = [
    row(
        "mandolin",
        &[(G, 3), (D, 4), (A, 4), (E, 5)],
        Pair,
        (350.0, 8.0),
        20,
    ),
    row(
        "octave-mandolin",
        &[(G, 2), (D, 3), (A, 3), (E, 4)],
        Pair,
        (508.0, 9.0),
        20,
    ),
    row(
        "mandola",
        &[(C, 3), (G, 3), (D, 4), (A, 4)],
        Pair,
        (420.0, 8.5),
        20,
    ),
    row(
        "tenor-banjo",
        &[(C, 3), (G, 3), (D, 4), (A, 4)],
        Single,
        (530.0, 8.5),
        17,
    ),
    row(
        "tenor-guitar",
        &[(C, 3), (G, 3), (D, 4), (A, 4)],
        Single,
        (584.0, 8.5),
        19,
    ),
    row(
        "guitar",
        &[(E, 2), (A, 2), (D, 3), (G, 3), (B, 3), (E, 4)],
        Single,
        (650.0, 7.5),
        20,
    ),
    row(
        "ukulele",
        &[(G, 4), (C, 4), (E, 4), (A, 4)],
        Single,
        (345.0, 9.5),
        15,
    ),
    row(
        "baritone-ukulele",
        &[(D, 3), (G, 3), (B, 3), (E, 4)],
        Single,
        (510.0, 9.5),
        18,
    ),
    Row {
        short: 5,
        ..row(
            "banjo",
            &[(G, 4), (D, 3), (G, 3), (B, 3), (D, 4)],
            Single,
            (667.0, 8.0),
            22,
        )
    },
    Row {
        fretted: false,
        ..row(
            "fiddle",
            &[(G, 3), (D, 4), (A, 4), (E, 5)],
            Single,
            (328.0, 6.5),
            14,
        )
    },
    row(
        "bass",
        &[(E, 1), (A, 1), (D, 2), (G, 2)],
        Single,
        (864.0, 11.0),
        20,
    ),
    row(
        "five-string-bass",
        &[(B, 0), (E, 1), (A, 1), (D, 2), (G, 2)],
        Single,
        (864.0, 10.0),
        20,
    ),
];
