//! Chord numbers: chords counted from the tonic, so that a tune's changes can be played in any key.
//!
//! A number counts the major scale of the tonic in every mode (common practice of number charts): in A minor and
//! A mixolydian alike, G is `b7`. What stands on the number is written as in a chord symbol: `6m`, `57` (the fifth with
//! a seventh, typographic `5⁷`), `5/7` (the chord on 5 over the bass 7).

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::chord::{Chord, Quality};
use super::interval::Interval;
use super::pitch::{Accidental, Accidentals, NoteName};
use super::symbol::{LONGEST_SYMBOL, SymbolError};

/// Semitones of the major scale above its tonic.
const MAJOR_SCALE: [i32; 7] = [0, 2, 4, 5, 7, 9, 11];

/// A note counted from a tonic: a step of the major scale, raised or lowered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ScaleDegree {
    /// Staff steps above the tonic, 0 to 6.
    step: u8,
    /// How the note differs from the tonic's major scale.
    accidental: Accidental,
}

impl ScaleDegree {
    /// A degree by its number; `None` unless that is 1 to 7.
    pub const fn new(number: u8, accidental: Accidental) -> Option<Self> {
        match number {
            1..=7 => Some(Self {
                step: number - 1,
                accidental,
            }),
            _ => None,
        }
    }

    /// The degree of a note over a tonic. The letter decides: over G, E♭ is b6 and D♯ is #5. Names too far apart for
    /// that (more than a double sign) count as they sound.
    // A remainder of seven fits in u8.
    #[allow(clippy::cast_possible_truncation)]
    pub const fn of(note: NoteName, tonic: NoteName) -> Self {
        let above = note.class().semitones() - tonic.class().semitones();
        let step = (note.letter.index() - tonic.letter.index()).rem_euclid(7);
        let raised = (above - MAJOR_SCALE[step as usize] + 6).rem_euclid(12) - 6;
        let (step, accidental) = match Accidental::new(raised) {
            Some(accidental) => (step as u8, accidental),
            None => match above.rem_euclid(12) {
                1 => (1, Accidental::FLAT),
                2 => (1, Accidental::NATURAL),
                3 => (2, Accidental::FLAT),
                4 => (2, Accidental::NATURAL),
                5 => (3, Accidental::NATURAL),
                6 => (3, Accidental::SHARP),
                7 => (4, Accidental::NATURAL),
                8 => (5, Accidental::FLAT),
                9 => (5, Accidental::NATURAL),
                10 => (6, Accidental::FLAT),
                11 => (6, Accidental::NATURAL),
                _ => (0, Accidental::NATURAL),
            },
        };
        Self { step, accidental }
    }

    /// Its number, 1 to 7.
    pub const fn number(self) -> u8 {
        self.step + 1
    }

    /// How it differs from the tonic's major scale.
    pub const fn accidental(self) -> Accidental {
        self.accidental
    }

    /// The note that it is over a tonic.
    pub fn note(self, tonic: NoteName) -> NoteName {
        let semitones = MAJOR_SCALE[usize::from(self.step)] + self.accidental.semitones();
        // Both are small by construction: 0 to 6 steps, -2 to 13 semitones.
        #[allow(clippy::cast_possible_truncation)]
        let interval = Interval::new(self.step as i8, semitones as i8);
        tonic + interval
    }

    /// The degree with its sign before it.
    pub fn in_style(self, accidentals: Accidentals) -> String {
        let (sharp, flat) = match accidentals {
            Accidentals::Ascii => ("#", "b"),
            Accidentals::Typographic => ("♯", "♭"),
        };
        let semitones = self.accidental.semitones();
        let sign = if semitones > 0 { sharp } else { flat };
        let times = semitones.unsigned_abs() as usize;
        format!("{}{}", sign.repeat(times), self.number())
    }

    /// Reads a degree at the start of a text; returns it and what follows.
    fn split(text: &str) -> Option<(Self, &str)> {
        let digit = text.trim_start_matches(['b', '#', '♭', '♯']);
        let signs = &text[..text.len() - digit.len()];
        let flat = signs.contains(['b', '♭']);
        if flat && signs.contains(['#', '♯']) {
            return None;
        }
        let times = i32::try_from(signs.chars().count()).ok()?;
        let accidental = Accidental::new(if flat { -times } else { times })?;
        let mut chars = digit.chars();
        let number = u8::try_from(chars.next()?.to_digit(10)?).ok()?;
        Some((Self::new(number, accidental)?, chars.as_str()))
    }
}

/// A chord counted from the tonic.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Number {
    /// The degree it stands on.
    pub root: ScaleDegree,
    /// What stands on it.
    pub quality: Quality,
    /// The degree in the bass, counted from the tonic, where it is not the root.
    pub bass: Option<ScaleDegree>,
}

impl Number {
    /// The number of a chord over a tonic.
    ///
    /// ```
    /// use fourcourse::theory::{Chord, NoteName, Number};
    /// let d: NoteName = "D".parse().unwrap();
    /// let number = |chord: &str| Number::of(chord.parse().unwrap(), d).to_string();
    /// assert_eq!(["D", "Bm", "A7", "C", "A/C#"].map(number), ["1", "6m", "57", "b7", "5/7"]);
    /// ```
    pub fn of(chord: Chord, tonic: NoteName) -> Self {
        Self {
            root: ScaleDegree::of(chord.root, tonic),
            quality: chord.quality,
            bass: chord.bass.map(|bass| ScaleDegree::of(bass, tonic)),
        }
    }

    /// The chord that it is over a tonic.
    ///
    /// ```
    /// use fourcourse::theory::{NoteName, Number};
    /// let number: Number = "b7".parse().unwrap();
    /// assert_eq!(number.chord("A".parse().unwrap()).to_string(), "G");
    /// ```
    pub fn chord(self, tonic: NoteName) -> Chord {
        Chord {
            root: self.root.note(tonic),
            quality: self.quality,
            bass: self.bass.map(|bass| bass.note(tonic)),
        }
    }

    /// The number in a style of signs. The typographic one raises the figures of the quality (`5⁷`), as charts do, so
    /// that they are not taken for part of the number.
    pub fn in_style(self, accidentals: Accidentals) -> String {
        let mut text = self.root.in_style(accidentals);
        let suffix = self.quality.suffix(accidentals);
        match accidentals {
            Accidentals::Ascii => text += &suffix,
            Accidentals::Typographic => text.extend(suffix.chars().map(raised)),
        }
        if let Some(bass) = self.bass {
            text.push('/');
            text += &bass.in_style(accidentals);
        }
        text
    }
}

fn raised(figure: char) -> char {
    match figure {
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        '4' => '⁴',
        '5' => '⁵',
        '6' => '⁶',
        '7' => '⁷',
        '9' => '⁹',
        other => other,
    }
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.in_style(Accidentals::Ascii))
    }
}

/// Why a text is not a chord number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NumberError {
    /// It does not start with a degree from 1 to 7.
    #[error("no degree")]
    NoDegree,
    /// What follows the degree is not read as a chord.
    #[error(transparent)]
    Quality(#[from] SymbolError),
}

impl FromStr for Number {
    type Err = NumberError;

    /// Reads `1`, `6m`, `b7`, `5/7`, `2m7`, `#4dim`; after the degree everything that chord symbols allow.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let text = text.trim();
        if text.chars().nth(LONGEST_SYMBOL).is_some() {
            return Err(SymbolError::TooLong.into());
        }
        let (root, rest) = ScaleDegree::split(text).ok_or(NumberError::NoDegree)?;
        // As in `6/9`, what follows the slash may belong to the quality.
        let (suffix, bass) = match rest.rsplit_once('/') {
            Some((suffix, bass)) => match ScaleDegree::split(bass.trim()) {
                Some((bass, "")) => (suffix, Some(bass)),
                _ => (rest, None),
            },
            None => (rest, None),
        };
        Ok(Self {
            root,
            quality: suffix.parse()?,
            bass: bass.filter(|&bass| bass != root),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::tests::{any_chord, any_quality, any_tonic};
    use proptest::prelude::*;

    #[test]
    fn numbers_are_read_as_charts_write_them() {
        for (written, meant) in [
            ("1", "1"),
            ("6-", "6m"),
            ("2-7", "2m7"),
            ("5⁷", "57"),
            ("♭7", "b7"),
            ("#4°", "#4dim"),
            ("1/3", "1/3"),
            ("16/9", "16/9"),
            ("16/9/3", "16/9/3"),
            ("4m/b6", "4m/b6"),
            ("1/1", "1"),
        ] {
            assert_eq!(written.parse::<Number>().unwrap().to_string(), meant);
        }
        for wrong in ["", "8", "0", "b", "bbb7", "b#4", "4x", "Am"] {
            assert!(wrong.parse::<Number>().is_err(), "{wrong}");
        }
    }

    #[test]
    fn figures_of_the_quality_are_raised_for_people() {
        let style = |text: &str| {
            let number: Number = text.parse().unwrap();
            number.in_style(Accidentals::Typographic)
        };
        assert_eq!(
            ["57", "2m7", "b7", "#4dim7", "5/7"].map(style),
            ["5⁷", "2m⁷", "♭7", "♯4°⁷", "5/7"]
        );
    }

    proptest! {
        #[test]
        fn a_chord_and_its_number_say_the_same(chord in any_chord(), tonic in any_tonic()) {
            let number = Number::of(chord, tonic);
            prop_assert_eq!(number.chord(tonic), chord);
            for style in [Accidentals::Ascii, Accidentals::Typographic] {
                prop_assert_eq!(number.in_style(style).parse(), Ok(number));
            }
        }

        #[test]
        fn any_text_is_read_or_refused_without_panic(text in ".{0,120}", quality in any_quality()) {
            let _ = text.parse::<Number>();
            let _ = format!("3{quality}{text}").parse::<Number>();
        }
    }
}
