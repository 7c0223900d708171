//! A shape: what the left hand holds, and what then sounds.

use std::fmt;

use crate::theory::{Degree, Pitch};

/// Rows of a chord box: shapes that reach no further than this fret are drawn from the nut.
pub const BOX_FRETS: u8 = 5;

/// A finger of the left hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Finger {
    Index = 1,
    Middle,
    Ring,
    Little,
}

impl Finger {
    /// All four, the index first.
    pub const ALL: [Finger; 4] = [Self::Index, Self::Middle, Self::Ring, Self::Little];

    /// The number that charts print: 1 to 4.
    pub const fn number(self) -> u8 {
        self as u8
    }
}

/// One finger that stops several courses at a fret.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Barre {
    /// The finger that lies flat.
    pub finger: Finger,
    /// Its fret, counted from the capo.
    pub fret: u8,
    /// First course under it, counted from 0.
    pub from: usize,
    /// Last course under it.
    pub to: usize,
}

/// What shapes are sorted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Order {
    /// The easiest for somebody who has played for a month come first.
    #[default]
    Beginner,
    /// Only movable shapes without open strings, the ones that damp well on the backbeat first.
    Chops,
}

/// One way to play a chord. The lists `frets` and `fingers` have an entry for each course, the first course first.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// Fret of each course, counted from the capo: 0 is open, `None` is not played.
    pub frets: Vec<Option<u8>>,
    /// Finger on each course; `None` where it is open or not played.
    pub fingers: Vec<Option<Finger>>,
    /// Fingers that hold more than one course.
    pub barres: Vec<Barre>,
    /// What the played courses sound, the first course first, spelled as the chord spells it.
    pub notes: Vec<Pitch>,
    /// The chord's tones that do not sound, of those that the instrument is there for: a bass does not miss the third.
    pub missing: Vec<Degree>,
    /// Which tone sounds lowest; `None` where it is a slash bass from outside the chord.
    pub lowest: Option<Degree>,
    /// Whether a slash bass is not the lowest note: it is left to others in the circle.
    pub bass_left_out: bool,
    /// From the lowest stopped fret to the highest, in mm along the neck.
    pub span_mm: f64,
    /// The fret in the first row of its chord box: 1 draws the nut.
    pub base_fret: u8,
    /// Whether it can be moved along the neck as it is: nothing open sounds.
    pub movable: bool,
    /// The effort that shapes are sorted by, in the order that was asked for: smaller is easier. Of no unit; it only
    /// compares shapes of one order.
    pub cost: f32,
}

impl Shape {
    /// The shape as a left-handed player sees it: courses in the opposite order.
    pub fn mirrored(mut self) -> Self {
        let last = self.frets.len().saturating_sub(1);
        self.frets.reverse();
        self.fingers.reverse();
        self.notes.reverse();
        for barre in &mut self.barres {
            (barre.from, barre.to) = (
                last.saturating_sub(barre.to),
                last.saturating_sub(barre.from),
            );
        }
        self
    }
}

impl Shape {
    /// How hard it is to hold, in fingers, for comparing the shapes of different chords: [`Self::cost`] also counts how
    /// the chord sounds. Each finger is 1; one that lies flat over two courses 1 more, over more courses 3 more; each fret
    /// of the stretch beyond two 1, each fret that the hand stands beyond the second a half, each course that must be
    /// damped between others 1. The weights are judgement, after what is taught in which order.
    ///
    /// ```
    /// use fourcourse::frets::{Capo, Instrument, Order, shapes};
    /// let guitar = Instrument::by_id("guitar").unwrap();
    /// let hard = |chord: &str| {
    ///     shapes(&guitar, Capo::NONE, chord.parse().unwrap(), Order::Beginner, 1)[0].difficulty()
    /// };
    /// assert!(hard("Em") < hard("G") && hard("G") < hard("F") && hard("F") < hard("Bm"));
    /// ```
    pub fn difficulty(&self) -> f32 {
        let count = |n: usize| f32::from(u8::try_from(n).unwrap_or(u8::MAX));
        let set = |finger: &&Finger| self.fingers.contains(&Some(**finger));
        let fingers = Finger::ALL.iter().filter(set).count();
        let flat = self.barres.iter().map(|barre| match barre.to - barre.from {
            1 => 1.0,
            _ => 3.0,
        });
        let stopped = || {
            self.frets
                .iter()
                .flatten()
                .copied()
                .filter(|&fret| fret > 0)
        };
        let (low, high) = (stopped().min().unwrap_or(0), stopped().max().unwrap_or(0));
        let mut inside = self.frets.iter().map(Option::is_some).skip_while(|on| !on);
        let last = self.frets.iter().rposition(Option::is_some);
        let first = self.frets.iter().position(Option::is_some);
        let between = first.zip(last).map_or(0, |(first, last)| last - first);
        let damped = inside.by_ref().take(between).filter(|on| !on).count();
        count(fingers)
            + flat.sum::<f32>()
            + f32::from((high - low).saturating_sub(2))
            + 0.5 * f32::from(low.saturating_sub(2))
            + count(damped)
    }
}

impl fmt::Display for Shape {
    /// `x32010`; with a fret of two digits `12-10-7-8`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wide = self.frets.iter().flatten().any(|&fret| fret > 9);
        for (i, fret) in self.frets.iter().enumerate() {
            if wide && i > 0 {
                f.write_str("-")?;
            }
            match fret {
                Some(fret) => write!(f, "{fret}")?,
                None => f.write_str("x")?,
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use crate::frets::{Capo, Instrument, shapes};

    use super::*;

    fn best(chord: &str) -> Shape {
        let chord = chord.parse().unwrap();
        shapes(
            &Instrument::mandolin(),
            Capo::NONE,
            chord,
            Order::Beginner,
            1,
        )
        .remove(0)
    }

    #[test]
    fn a_mirrored_shape_has_its_courses_and_barres_the_other_way_round() {
        let am = best("Am").mirrored();
        assert_eq!(am.to_string(), "0322");
        assert_eq!((am.barres[0].from, am.barres[0].to), (2, 3));
        assert_eq!(am.notes[3], best("Am").notes[0]);
        assert_eq!(am.mirrored(), best("Am"));
    }

    #[test]
    fn frets_of_two_digits_are_parted() {
        let shape = Shape {
            frets: vec![Some(12), None, Some(0)],
            ..best("G")
        };
        assert_eq!(shape.to_string(), "12-x-0");
    }
}
