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
/// A finger one fret outside of its own, and the little finger where the others own two frets: it is at its end.
const EXTENDED: f32 = 1.0;
const AT_ITS_END: f32 = 2.0;
/// The little finger on the second fret of the ring finger, beside the first one: a half step.
const BESIDE_RING: f32 = 1.0;
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
/// The ring finger goes from the one of its frets to the other at once, where the little finger stands ready.
const SLID: f32 = 2.0;
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
        let index = usize::from(finger.number() - 1);
        let beside_ring = self.beside_ring(place.position) == Some(place.fret);
        let first = place.position + (finger.number() - 1) * owned;
        // The little finger owns one fret.
        let last = if finger == Finger::Little {
            first
        } else {
            first + owned - 1
        };
        let extended = place.fret < first || place.fret > last;
        let set = match finger {
            Finger::Little if beside_ring => BESIDE_RING,
            Finger::Little if extended && owned > 1 => FINGER[index] + AT_ITS_END,
            _ if extended => FINGER[index] + EXTENDED,
            _ => FINGER[index],
        };
        course + set + AWAY * f32::from(place.position.abs_diff(self.home))
    }

    /// Where a finger owns two frets, the second one of the ring finger: the little finger takes it where a half step moves
    /// at once.
    pub(super) fn beside_ring(&self, position: u8) -> Option<u8> {
        (self.reach.frets_a_finger == 2).then(|| position.saturating_add(5))
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
                let stays = before.course == after.course;
                return Some(
                    cost + match before.fret.abs_diff(after.fret) {
                        0 if stays => 0.0,
                        1 if stays && one == Finger::Ring && self.reach.frets_a_finger == 2 => SLID,
                        _ => SAME_FINGER,
                    },
                );
            }
            // In one position a fret keeps its finger, also where the little one might stand in.
            if before.fret == after.fret {
                return None;
            }
            let at = |place: Place| (place.fret, place.course);
            let along = self.reach.apart(at(before), at(after)).0.abs();
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
