//! What it costs to play one note after another: the sum that the path through a tune is the least of.
//!
//! All weights are common practice put into numbers, so that first position gives the fingering that a teacher writes:
//! open rather than the little finger, no shift that is not needed.

use crate::frets::hand::{COMFORTABLE, MANDOLIN_MM, Reach, WIDEST};
use crate::frets::shape::Finger;

use super::{Place, Tone};

/// A finger set down: index, middle, ring, little. An open course costs nothing. The little finger costs more than the
/// two worst crossings to the open course above it and back.
const FINGER: [f32; 4] = [0.1, 0.1, 0.15, 2.0];
/// A finger one fret outside of its own.
const EXTENDED: f32 = 1.0;
/// The pick goes to another course: each course on the way.
const CROSSING: f32 = 0.4;
/// And it goes there against its own way: after a stroke down it is already beyond the course, on the side of the next
/// higher one, after a stroke up on the side of the lower one.
const INSIDE: f32 = 0.5;
/// The hand moves along the neck, and each fret that it moves.
const SHIFT: f32 = 5.0;
const SHIFTED_FRET: f32 = 0.3;
/// What is left of that where there is time: after an open course, a rest, or a note of a half or longer.
const IN_TIME: f32 = 0.3;
/// Each note played away from home, for each fret: half a dozen notes five frets up are worth the way home and back.
const AWAY: f32 = 0.4;
/// Each mm between fingers beyond what is comfortable.
const STRETCH: f32 = 0.05;
/// The same finger goes to another fret or course at once.
const SAME_FINGER: f32 = 0.3;
/// A note on a short string, which is there to ring, not for melodies.
const SHORT: f32 = 4.0;

/// A note on a course that sounds higher than the next one, such as a ukulele's first: scales run over the others.
const OUT_OF_ORDER: f32 = 1.0;

/// What is special about a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Lie {
    /// It starts above the nut.
    pub(super) short: bool,
    /// It sounds higher than the next course.
    pub(super) out_of_order: bool,
}

/// A neck and its home position, for adding up.
pub(super) struct Cost<'a> {
    pub(super) reach: &'a Reach,
    pub(super) home: u8,
}

impl Cost<'_> {
    /// Playing a note at a place, whatever was before.
    pub(super) fn of(&self, place: Place, lie: Lie) -> f32 {
        let course =
            if lie.short { SHORT } else { 0.0 } + if lie.out_of_order { OUT_OF_ORDER } else { 0.0 };
        let Some(finger) = place.finger else {
            return course;
        };
        let owned = self.reach.frets_a_finger.max(1);
        let first = place.position + (finger.number() - 1) * owned;
        // The little finger owns one fret.
        let last = if finger == Finger::Little {
            first
        } else {
            first + owned - 1
        };
        let extended = place.fret < first || place.fret > last;
        course
            + FINGER[usize::from(finger.number() - 1)]
            + if extended { EXTENDED } else { 0.0 }
            + AWAY * f32::from(place.position.abs_diff(self.home))
    }

    /// Going from one note to the next; `None` where no hand gets there without moving.
    pub(super) fn between(&self, from: (Place, Tone), to: (Place, Tone)) -> Option<f32> {
        let ((before, tone), (after, next)) = (from, to);
        let crossed = before.course.abs_diff(after.course);
        let mut cost = CROSSING * f32::from(u8::try_from(crossed).unwrap_or(u8::MAX));
        let higher = after.course > before.course;
        if crossed > 0 && higher == tone.up {
            cost += INSIDE;
        }
        let moved = before.position.abs_diff(after.position);
        if moved > 0 {
            let time = before.finger.is_none() || next.after_rest || tone.quarters >= 2.0;
            let shift = SHIFT + SHIFTED_FRET * f32::from(moved);
            return Some(cost + if time { shift * IN_TIME } else { shift });
        }
        if let (Some(one), Some(other)) = (before.finger, after.finger) {
            if one == other {
                let same = before.fret == after.fret && before.course == after.course;
                return Some(cost + if same { 0.0 } else { SAME_FINGER });
            }
            let mm = |fret: u8| self.reach.fret_mm[usize::from(fret.min(31))];
            let along = (mm(before.fret) - mm(after.fret)).abs();
            let comfortable =
                COMFORTABLE[usize::from(one.number() - 1)][usize::from(other.number() - 1)];
            // One after the other the hand may swing: it need not hold both.
            if along > WIDEST {
                return None;
            }
            let felt = along * MANDOLIN_MM / self.reach.scale_mm;
            cost += STRETCH * (felt - comfortable).max(0.0);
        }
        Some(cost)
    }
}
