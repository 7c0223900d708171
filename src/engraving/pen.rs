//! What draws, and the heights it draws at.

use crate::chart::{Part, Ticks};

use super::mark::{Curve, Rule, Sign, System, Tone, Word};
use super::measure::{Event, Measure};
use super::{Paper, Piece, tab};

/// A staff space, in spaces of the tablature.
pub(super) const STAFF_SPACE: f32 = 0.5;
/// The column of the names of the courses, in spaces.
pub(super) const NAMES: f32 = 1.5;

/// Upright strokes are whole dp thick, so that all of a kind look the same at any place.
pub(super) fn whole(thick: f32) -> f32 {
    thick.round().max(1.0)
}

/// Draws on one system after the other.
pub(super) struct Pen<'a> {
    pub(super) piece: Piece<'a>,
    pub(super) paper: &'a Paper,
    /// When each written bar begins.
    pub(super) starts: Vec<Ticks>,
    /// In the order of their first bars.
    pub(super) parts: Vec<Part>,
    pub(super) system: System,
    /// Where the last note of this line stands on the staff and on the tablature, from which a tie may come.
    pub(super) last: Option<f32>,
    pub(super) last_figure: Option<f32>,
}

/// The heights of the rows of a system.
pub(super) struct Rows {
    /// Endings and signs of the way, where the tune has any: the middle.
    pub(super) over: Option<f32>,
    /// Chords: the middle.
    pub(super) chords: f32,
    /// The upper line of the staff.
    pub(super) staff: Option<f32>,
    /// Feet of the pick marks.
    pub(super) pick: f32,
    /// The highest course.
    pub(super) tab: f32,
    /// The lowest course.
    pub(super) foot: f32,
    /// Fingers: the middle.
    pub(super) fingers: f32,
    /// Words: the middle.
    pub(super) lyrics: f32,
    /// The line under the stretch that is practised.
    pub(super) bracket: f32,
    pub(super) height: f32,
}

impl<'a> Pen<'a> {
    pub(super) fn new(piece: Piece<'a>, paper: &'a Paper) -> Self {
        Self {
            starts: piece.tune.starts(),
            parts: piece.tune.parts_or_derived(),
            piece,
            paper,
            system: System::default(),
            last: None,
            last_figure: None,
        }
    }

    pub(super) fn rule(&mut self, rule: Rule) {
        self.system.rules.push(rule);
    }

    pub(super) fn word(&mut self, word: Word) {
        self.system.words.push(word);
    }

    pub(super) fn curve(&mut self, curve: Curve) {
        self.system.curves.push(curve);
    }

    /// A sign at a size given by the staff space.
    pub(super) fn sign(&mut self, sign: char, x: f32, y: f32, space: f32, tone: Tone) {
        self.system.signs.push(Sign {
            x,
            y,
            em: 4.0 * space,
            sign,
            tone,
        });
    }

    /// A rest with its dots, its middle at an event.
    pub(super) fn rest(&mut self, event: &Event, y: f32, space: f32, tone: Tone) {
        let step = u32::try_from(event.value.halved.max(0)).unwrap_or(0).min(6);
        let Some(sign) = char::from_u32(0xe4e3 + step) else {
            return;
        };
        self.sign(sign, event.x - 0.55 * space, y, space, tone);
        for place in 0..event.value.dots {
            let x = event.x + (0.75 + 0.6 * f32::from(place)) * space;
            self.sign('\u{e1e7}', x, y - 0.5 * space, space, tone);
        }
    }

    /// The number of a tuplet.
    pub(super) fn figures(&mut self, count: u8, x: f32, y: f32, space: f32, tone: Tone) {
        let digits: Vec<u32> = count
            .to_string()
            .chars()
            .filter_map(|digit| digit.to_digit(10))
            .collect();
        let wide = 1.15 * space;
        let mut at = x - wide * u16::try_from(digits.len()).map_or(1.0, f32::from) / 2.0;
        for digit in digits {
            if let Some(sign) = char::from_u32(0xe880 + digit) {
                self.sign(sign, at, y, space, tone);
            }
            at += wide;
        }
    }

    /// Whether an event belongs to what is practised.
    pub(super) fn tone(&self, measure: &Measure, event: &Event) -> Tone {
        self.tone_at(measure.bar, event.at)
    }

    pub(super) fn tone_at(&self, bar: usize, at: Ticks) -> Tone {
        let time = self.starts.get(bar).copied().unwrap_or(Ticks::ZERO) + at;
        match &self.paper.stretch {
            Some(stretch) if !stretch.contains(&time) => Tone::Quiet,
            _ => Tone::Ink,
        }
    }

    /// The course on which the note that is held into an event was struck.
    pub(super) fn held_on(&self, measure: &Measure, note: usize, rows: &Rows) -> Option<f32> {
        let at = self.piece.tune.bars[measure.bar].notes.get(note)?.at;
        let after = self
            .piece
            .notes
            .partition_point(|one| (one.note.bar, one.note.at) <= (measure.bar, at));
        let place = self.piece.notes.get(after.checked_sub(1)?)?.place?;
        let courses = self.piece.instrument.courses.len();
        Some(tab::course_y(rows, courses, place.course, self.paper.space))
    }
}
