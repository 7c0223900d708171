//! Strum patterns as text: one mark a slot, in the trade's own signs.
//!
//! | mark | stroke |
//! |---|---|
//! | `D` `U` | a strum down, up |
//! | `b` | a bass note |
//! | `x` | a mute: the chop |
//! | `.` | the hand passes in silence |
//! | `>` | the next stroke is accented |
//!
//! Spaces and bar lines are for the eye. The marks share the bar evenly: `D. DU D. D.` is "down, down-up, down, down".

use std::fmt;

use super::metre::Metre;
use super::strum::{Direction, Stroke, StrumPattern};
use super::time::Ticks;

/// Why a text is no strum pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotAStrum {
    /// A sign that means nothing, at a column counted from 1.
    #[error("an unknown mark at column {0}")]
    Mark(usize),
    /// There is no mark in it.
    #[error("no marks")]
    Empty,
    /// It does not divide the bar evenly, or has more slots than [`StrumPattern::MOST_SLOTS`].
    #[error("the marks do not share the bar evenly")]
    Uneven,
}

impl StrumPattern {
    /// Reads what a tune says of its strum: the name of a built-in pattern for the metre, or marks. In free time four
    /// quarters are taken for a bar.
    ///
    /// ```
    /// use fourcourse::chart::{Metre, StrumPattern};
    /// let pattern = StrumPattern::read("D. DU D. D.", Metre::COMMON).unwrap();
    /// assert_eq!(pattern.slots.len(), 8);
    /// assert_eq!(pattern.to_string(), "D. DU D. D.");
    /// assert_eq!(StrumPattern::read("chop", Metre::COMMON).unwrap().to_string(), ".. x. .. x.");
    /// ```
    pub fn read(text: &str, metre: Metre) -> Result<Self, NotAStrum> {
        match Self::named(text.trim(), metre) {
            Some(pattern) => Ok(pattern),
            None => Self::from_marks("", text, metre),
        }
    }

    pub(super) fn from_marks(name: &str, text: &str, metre: Metre) -> Result<Self, NotAStrum> {
        let mut strokes = Vec::new();
        let mut ways = Vec::new();
        let mut accent = false;
        for (i, mark) in text.chars().enumerate() {
            let (stroke, way) = match mark {
                'D' => (Stroke::Strum, Some(Direction::Down)),
                'U' => (Stroke::Strum, Some(Direction::Up)),
                'b' => (Stroke::Bass, None),
                'x' => (Stroke::Chop, None),
                '.' => (Stroke::Silent, None),
                '>' => {
                    accent = true;
                    continue;
                }
                '|' => continue,
                _ if mark.is_whitespace() => continue,
                _ => return Err(NotAStrum::Mark(i + 1)),
            };
            strokes.push((stroke, std::mem::take(&mut accent)));
            ways.push(way);
            if strokes.len() > Self::MOST_SLOTS {
                return Err(NotAStrum::Uneven);
            }
        }
        let bar = if metre.bar() > Ticks::ZERO {
            metre.bar()
        } else {
            Ticks::WHOLE
        };
        let slots = i64::try_from(strokes.len()).unwrap_or(0);
        if slots == 0 {
            return Err(NotAStrum::Empty);
        }
        if bar.0 % slots != 0 {
            return Err(NotAStrum::Uneven);
        }
        let mut pattern = Self::of(name, metre, Ticks(bar.0 / slots), &strokes);
        for (slot, way) in pattern.slots.iter_mut().zip(ways) {
            slot.direction = way.unwrap_or(slot.direction); // what is written counts
        }
        Ok(pattern)
    }
}

impl fmt::Display for StrumPattern {
    /// The marks, a space between beats.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (mut at, mut beats) = (Ticks::ZERO, self.metre.beats().into_iter());
        let mut next = beats.next().unwrap_or(Ticks::QUARTER);
        for slot in &self.slots {
            if at >= next {
                f.write_str(" ")?;
                next += beats.next().unwrap_or(Ticks::QUARTER);
            }
            if slot.accent {
                f.write_str(">")?;
            }
            f.write_str(match (slot.stroke, slot.direction) {
                (Stroke::Strum, Direction::Down) => "D",
                (Stroke::Strum, Direction::Up) => "U",
                (Stroke::Bass, _) => "b",
                (Stroke::Chop, _) => "x",
                (Stroke::Silent, _) => ".",
            })?;
            at += self.step;
        }
        Ok(())
    }
}
