//! A page of music to practise from: tablature with its rhythm, pick marks, chords and words, and a staff above it.
//!
//! All of it is arithmetic. A tune and its arrangement go in with the width of the paper, and out come lines of bars
//! ("systems") made of four kinds of marks: signs of a music font, words, filled rules and filled curves. Whoever draws
//! them needs to know nothing of music. Lengths are in density-independent pixels, from the top left corner of a system.
//!
//! The rules are those of printed music (stems, beams by the beat, order of the signature, spacing that grows with the
//! logarithm of the length), as common practice has them; sizes of lines and signs are the defaults of the SMuFL standard.

mod bars;
mod beam;
mod curve;
mod draw;
mod line_heads;
mod lines;
mod mark;
mod measure;
mod pen;
mod pitch;
mod rhythm;
mod staff;
mod tab;
mod texts;
mod value;

use std::ops::Range;

use crate::chart::{Arrangement, TabNote, Ticks, Tune};
use crate::frets::Instrument;
use crate::theory::NoteStyle;

pub use mark::{BarPlace, Curve, Ground, Rule, Sign, System, Tone, Word};

/// How much of the page is covered, so that a tune is learnt by heart little by little.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Hidden {
    /// Nothing.
    #[default]
    Nothing,
    /// Every second bar.
    EveryOther,
    /// All but the first note of each bar.
    AllButFirst,
    /// All notes; the chords stay.
    Notes,
    /// Notes, chords and words: the bars are left.
    Everything,
}

impl Hidden {
    /// From all there to nothing there.
    pub const STEPS: [Self; 5] = [
        Self::Nothing,
        Self::EveryOther,
        Self::AllButFirst,
        Self::Notes,
        Self::Everything,
    ];

    /// So many steps on, towards nothing there, or back below 0.
    #[must_use]
    pub fn step(self, by: i32) -> Self {
        let last = Self::STEPS.len() - 1;
        let here = Self::STEPS.iter().position(|&step| step == self);
        let by = isize::try_from(by).unwrap_or(0);
        let there = here.unwrap_or(0).saturating_add_signed(by);
        Self::STEPS[there.min(last)]
    }
}

/// What the page is drawn on, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Paper {
    /// Its width, in dp.
    pub width: f32,
    /// From one course of the tablature to the next, in dp; everything else is measured by it.
    pub space: f32,
    /// A staff above the tablature, which then leaves the rhythm to it.
    pub staff: bool,
    /// A row of fingers: 1 index to 4 little, 0 open.
    pub fingers: bool,
    /// What is covered.
    pub hidden: Hidden,
    /// The stretch that is practised, in time as written; what is outside is drawn quietly.
    pub stretch: Option<Range<Ticks>>,
    /// Names of chords and courses.
    pub style: NoteStyle,
    /// Full bars of a system at most: as many as fit are 4, 2 or 1.
    pub most_bars: usize,
}

impl Default for Paper {
    /// Tablature alone, on a phone that is held upright.
    fn default() -> Self {
        Self {
            width: 388.0,
            space: 15.0,
            staff: false,
            fingers: false,
            hidden: Hidden::Nothing,
            stretch: None,
            style: NoteStyle::default(),
            most_bars: 4,
        }
    }
}

/// What is played from the page.
#[derive(Debug, Clone, Copy)]
pub struct Piece<'a> {
    /// The tune in the key that it is played in, at the octave it is written in.
    pub tune: &'a Tune,
    /// Its notes on the instrument.
    pub notes: &'a [TabNote],
    /// Octaves that the notes are moved by from what is written.
    pub octaves: i8,
    /// The instrument, in its tuning.
    pub instrument: &'a Instrument,
}

impl<'a> Piece<'a> {
    /// A tune as it is arranged for an instrument.
    pub fn of(tune: &'a Tune, tab: &'a Arrangement, instrument: &'a Instrument) -> Self {
        Self {
            tune,
            notes: &tab.notes,
            octaves: tab.octaves,
            instrument,
        }
    }
}

/// A figure of the tablature.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// The middle of its line.
    pub y: f32,
    /// The fret, or a question mark for a note off the neck.
    pub text: String,
    /// It is an open course that rings along.
    pub rings: bool,
}

/// A moment of the page: a note, a note that is held on, or a rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// The written bar.
    pub bar: usize,
    /// When, from the start of that bar.
    pub at: Ticks,
    /// The system that it stands in.
    pub system: usize,
    /// Where it stands: the middle of its figures.
    pub x: f32,
    /// What is stopped or rings. Empty where nothing is struck or the page is covered.
    pub figures: Vec<Figure>,
    /// How the pick strikes it.
    pub pick: Option<Sign>,
}

/// A page: systems of the same height, one below the other.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// The systems.
    pub systems: Vec<System>,
    /// The height of each.
    pub height: f32,
    /// The feet of the pick marks.
    pub pick: f32,
    /// The highest course and the lowest one.
    pub courses: (f32, f32),
    /// From one course to the next.
    pub space: f32,
    /// The moments in the order of the page.
    pub spots: Vec<Spot>,
}

impl Page {
    /// The page of a piece.
    pub fn of(piece: Piece<'_>, paper: &Paper) -> Self {
        draw::page(piece, paper)
    }

    /// The moment that holds at a time in a written bar: the last that has come there, or the first of the bar.
    pub fn spot(&self, bar: usize, at: Ticks) -> Option<&Spot> {
        let after = self
            .spots
            .partition_point(|spot| (spot.bar, spot.at) <= (bar, at));
        let here = after.checked_sub(1).map(|index| &self.spots[index]);
        here.filter(|spot| spot.bar == bar)
            .or_else(|| self.spots.get(after).filter(|spot| spot.bar == bar))
    }

    /// The system that a written bar stands in.
    pub fn system_of(&self, bar: usize) -> Option<usize> {
        let has = |system: &System| system.bars.iter().any(|place| place.bar == bar);
        self.systems.iter().position(has)
    }
}

#[cfg(test)]
mod tests;
