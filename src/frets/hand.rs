//! The left hand: which fingers can hold a set of frets, and which hold it with the least effort.

use super::effort::{FINGERS, Weights, times};
use super::instrument::{Capo, Instrument, MAX_COURSES, MAX_FRETS};
use super::shape::{Barre, Finger};

/// Furthest that two fingertips can stand apart, in mm, by the two fingers (index 0 to little 3). A grown hand of middle
/// size (common practice: on a guitar the first to the fourth fret, 98 mm, is within reach and the fifth, 126 mm, is not).
const FURTHEST: [[f32; 4]; 4] = [
    [0.0, 75.0, 100.0, 120.0],
    [75.0, 0.0, 72.0, 100.0],
    [100.0, 72.0, 0.0, 69.0],
    [120.0, 100.0, 69.0, 0.0],
];

/// How far they stand apart on a mandolin before it is felt (common practice: one finger a fret, two frets between
/// neighbours only on neighbouring courses). Players keep their fingering on longer necks, so that there the length along
/// the neck is brought to the mandolin's scale first. Where each finger has one fret to look after, two fingers a fret
/// apart are at ease on any courses, so that only the length along the neck counts.
pub(super) const COMFORTABLE: [[f32; 4]; 4] = [
    [0.0, 37.5, 69.0, 95.0],
    [37.5, 0.0, 37.5, 69.0],
    [69.0, 37.5, 0.0, 37.5],
    [95.0, 69.0, 37.5, 0.0],
];

/// The scale that [`COMFORTABLE`] is for, in mm, and the frets that a finger has to look after there: two, of which the
/// second is the narrower one.
pub(super) const MANDOLIN_MM: f32 = 350.0;
const MANDOLIN_FRETS: f32 = 1.8;

/// What is left of that beside a finger that lies over three courses or more (common practice: a barre shortens the reach).
const FLAT_EASE: f32 = 0.85;

/// What it counts, in steps between fingers, to leave the nut or to use the little finger.
const MOVED: f32 = 0.4;
const LITTLE: f32 = 0.5;

/// Furthest from the lowest to the highest stopped fret, in mm and in frets.
pub(super) const WIDEST: f32 = FURTHEST[0][3];
pub(super) const MOST_FRETS: u8 = 5;

/// Furthest in frets where a course sounds open: the hand cannot turn out of first position without touching it (common
/// practice: a box of five frets at the nut).
pub(super) const OPEN_FRETS: u8 = 4;

/// Length over which each finger can lie flat, in mm: the whole index, but only the pads of the others (common practice).
const FLAT: [f32; 4] = [60.0, 20.0, 24.0, 12.0];

/// A neck as the hand feels it.
#[derive(Debug)]
pub(super) struct Reach {
    /// Distance from the nut to each fret counted from the capo, in mm.
    pub(super) fret_mm: [f32; 32],
    pub(super) scale_mm: f32,
    /// Frets that each finger has to look after.
    pub(super) frets_a_finger: u8,
    /// Distance from course to course, in mm.
    pub(super) spacing_mm: f32,
}

impl Reach {
    /// The neck of an instrument above a capo.
    pub(super) fn of(instrument: &Instrument, capo: Capo) -> Self {
        // Millimetres: f32 is exact enough.
        #[allow(clippy::cast_possible_truncation)]
        let short = |mm: f64| mm as f32;
        let fret_mm = std::array::from_fn(|fret| {
            let fret = u8::try_from(fret).unwrap_or(MAX_FRETS);
            short(instrument.fret_mm(fret.saturating_add(capo.fret)))
        });
        Self {
            fret_mm,
            scale_mm: short(instrument.scale_mm),
            frets_a_finger: instrument.frets_a_finger,
            spacing_mm: short(instrument.spacing_mm),
        }
    }

    fn in_fifths(&self) -> bool {
        self.frets_a_finger > 1
    }

    /// The finger that owns a fret with the hand in a position: the index looks after the first frets from there.
    pub(super) fn owner(&self, position: u8, fret: u8) -> Finger {
        let owner = fret.saturating_sub(position) / self.frets_a_finger.clamp(1, 4);
        Finger::ALL[usize::from(owner.min(3))]
    }

    /// Whether two fingers, each on a course at a fret, can be down at once: no finger crosses another, and on one fret the
    /// lower course has the lower finger.
    pub(super) fn together(&self, one: (Finger, usize, u8), other: (Finger, usize, u8)) -> bool {
        let ((finger, course, fret), (next, to, at)) = (one, other);
        if (finger < next) != ((fret, course) < (at, to)) || finger == next {
            return false;
        }
        let (along, across) = self.apart((at, to), (fret, course));
        let index = |finger: Finger| usize::from(finger.number() - 1);
        along.hypot(across) <= FURTHEST[index(finger)][index(next)]
    }

    /// How far a fret on a course is from another, in mm: up the neck from there, and across it.
    pub(super) fn apart(&self, from: (u8, usize), to: (u8, usize)) -> (f32, f32) {
        let mm = |fret: u8| self.fret_mm[usize::from(fret).min(self.fret_mm.len() - 1)];
        let across = times(from.1.abs_diff(to.1)) * self.spacing_mm;
        (mm(to.0) - mm(from.0), across)
    }
}

/// Frets of each course; [`NOT_PLAYED`] and 0 (open) need no finger.
pub(super) type Frets = [u8; MAX_COURSES];

/// The mark of a course that is not played.
pub(super) const NOT_PLAYED: u8 = u8::MAX;

/// Fingers on a set of frets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Grip {
    pub(super) fingers: [Option<Finger>; MAX_COURSES],
    pub(super) effort: f32,
}

/// The grip of least effort, or `None` where no hand can hold it. Fingers never cross: a higher fret takes a higher finger,
/// and on one fret the lower course takes the lower finger, unless one finger lies flat over both.
pub(super) fn best_grip(frets: &[u8], reach: &Reach, weights: &Weights) -> Option<Grip> {
    let mut stopped = [(0, 0); MAX_COURSES];
    let mut count = 0;
    for (course, &fret) in frets.iter().enumerate().take(MAX_COURSES) {
        if fret != 0 && fret != NOT_PLAYED {
            stopped[count] = (fret, course);
            count += 1;
        }
    }
    stopped[..count].sort_unstable();
    let mut hand = Hand {
        frets,
        stopped: &stopped[..count],
        reach,
        weights,
        set: [(0, 0); 4],
        fingers: [None; MAX_COURSES],
        best: None,
    };
    hand.place(0, 0, 0, 0.0);
    hand.best
}

struct Hand<'a> {
    frets: &'a [u8],
    /// Fret and course of each stopped course, in the order in which fingers are handed out.
    stopped: &'a [(u8, usize)],
    reach: &'a Reach,
    weights: &'a Weights,
    /// Fret and course of each finger's tip; fret 0 is a finger in the air.
    set: [(u8, usize); 4],
    fingers: [Option<Finger>; MAX_COURSES],
    best: Option<Grip>,
}

impl Hand<'_> {
    /// Hands out fingers from `free` on to the stopped courses from `next` on; `used` fingers are set.
    fn place(&mut self, next: usize, free: usize, used: usize, effort: f32) {
        let floor = effort + self.weights.finger * FINGERS[used];
        if self.best.is_some_and(|best| floor >= best.effort) {
            return;
        }
        let Some(&(fret, course)) = self.stopped.get(next) else {
            let turned = if self.turns_back() {
                self.weights.turned
            } else {
                0.0
            };
            let effort = floor
                + turned * self.stretched()
                + self.weights.rising * self.rising()
                + self.weights.strange * self.strangeness();
            if self.best.is_none_or(|best| effort < best.effort) {
                let fingers = self.fingers;
                self.best = Some(Grip { fingers, effort });
            }
            return;
        };
        for finger in free..4 {
            let Some(spread) = self.spread(finger, next) else {
                continue;
            };
            let mut held = next;
            while let Some(&(also_fret, to)) = self.stopped.get(held)
                && also_fret == fret
                && let Some(flat) = self.flat(finger, fret, course, to)
            {
                self.fingers[to] = Some(Finger::ALL[finger]);
                self.set[finger] = (fret, course);
                if held == next || !self.neighbours(next) && !self.neighbours(held + 1) {
                    self.place(held + 1, finger + 1, used + 1, effort + spread + flat);
                }
                held += 1;
            }
            self.set[finger] = (0, 0);
        }
    }

    /// Whether a stopped course and the one before it lie side by side on one fret. Such a row is held by fingers beside each
    /// other or by one that lies flat over all of it, never by a flat one and another beside it.
    fn neighbours(&self, at: usize) -> bool {
        let pair = at
            .checked_sub(1)
            .map(|before| (self.stopped.get(before), self.stopped.get(at)));
        matches!(pair, Some((Some(before), Some(this))) if this.0 == before.0 && this.1 == before.1 + 1)
    }

    /// Steps between the fingers and those that own their frets, with the hand at the nut or at the lowest stopped fret,
    /// whichever is less strange.
    fn strangeness(&self) -> f32 {
        let set = || self.set.iter().enumerate().filter(|(_, tip)| tip.0 > 0);
        let low = set().next().map_or(1, |(_, tip)| tip.0);
        let from = |origin: u8, moved: f32| {
            let steps = set().map(|(finger, tip)| {
                let owner = (tip.0 - origin) / self.reach.frets_a_finger.max(1);
                times(finger.abs_diff(usize::from(owner.min(3))))
            });
            moved + steps.sum::<f32>()
        };
        let little = if self.set[3].0 > 0 { LITTLE } else { 0.0 };
        little + from(1, 0.0).min(from(low, MOVED))
    }

    /// Frets by which the last stopped course is stopped higher than the first.
    fn rising(&self) -> f32 {
        let stops = |fret: &&u8| **fret != 0 && **fret != NOT_PLAYED;
        let (first, last) = (
            self.frets.iter().find(stops),
            self.frets.iter().rfind(stops),
        );
        first
            .zip(last)
            .map_or(0.0, |(first, last)| f32::from(last.saturating_sub(*first)))
    }

    /// Whether the fingers turn back on their way across the courses: 3 2 1 and 1 2 3 do not, 2 3 1 does.
    fn turns_back(&self) -> bool {
        let (mut rises, mut falls) = (false, false);
        let mut before = None;
        let mut seen = [false; 5];
        for finger in self.fingers.iter().flatten() {
            // Only the tip of a flat finger counts.
            if std::mem::replace(&mut seen[usize::from(finger.number())], true) {
                continue;
            }
            rises |= before.is_some_and(|before| finger > before);
            falls |= before.is_some_and(|before| finger < before);
            before = Some(finger);
        }
        rises && falls
    }

    /// Frets between the lowest and the highest finger beyond one.
    fn stretched(&self) -> f32 {
        let (low, high) = (self.stopped.first(), self.stopped.last());
        let span = low.zip(high).map_or(0, |(low, high)| high.0 - low.0);
        f32::from(span.saturating_sub(1))
    }

    /// Effort of a finger that lies over the courses `from..=to`; `None` where it cannot.
    fn flat(&self, finger: usize, fret: u8, from: usize, to: usize) -> Option<f32> {
        let courses = times(to + 1 - from);
        let stiff = if fret == 1 {
            self.weights.stiff * courses
        } else {
            0.0
        };
        if from == to {
            return Some(stiff);
        }
        let index = finger == 0;
        let under = &self.frets[from..=to];
        // What is not played under an index is damped by it or by a neighbour: [`NOT_PLAYED`] is above every fret.
        let lies = |&f: &u8| if index { f >= fret } else { f == fret };
        let lies = under.iter().all(lies);
        // A finger lies down from the high side: over a course there that is stopped lower it must arch, and more than two
        // flat courses damp an open one there.
        let beside = self.frets.get(to + 1).is_some_and(|&f| f != 0 && f < fret);
        let damps = under.len() > 2 && self.frets[to + 1..].contains(&0) && !self.reach.in_fifths();
        let length = (courses - 1.0) * self.reach.spacing_mm;
        if !lies || damps || length > FLAT[finger] {
            return None;
        }
        let wide = (courses - 2.0).max(0.0) * self.weights.barre_wide;
        let gaps = under
            .windows(2)
            .filter(|pair| pair[0] == fret && pair[1] > fret);
        let bridged = self.weights.bridged * times(gaps.count());
        let arched = if beside { self.weights.arched } else { 0.0 };
        Some(
            stiff
                + self.weights.barre
                + wide
                + arched
                + bridged
                + times(finger) * self.weights.barre_weaker,
        )
    }

    /// Effort of spreading a finger away from those already set; `None` if it does not reach.
    fn spread(&self, finger: usize, next: usize) -> Option<f32> {
        let (before, (fret, course)) = (&self.stopped[..next], self.stopped[next]);
        let mut effort = 0.0;
        for (other, &(at, on)) in self.set.iter().enumerate().take(finger) {
            if at == 0 {
                continue;
            }
            let (along, across) = self.reach.apart((at, on), (fret, course));
            if along.hypot(across) > FURTHEST[other][finger] {
                return None;
            }
            let along = along * MANDOLIN_MM / self.reach.scale_mm;
            let felt = match self.reach.in_fifths() {
                true => along.hypot(across),
                false => along * MANDOLIN_FRETS,
            };
            // A pad on two courses is no barre.
            let held = |&&(_, on): &&(u8, usize)| self.fingers[on] == Some(Finger::ALL[other]);
            let flat = before
                .iter()
                .rfind(held)
                .is_some_and(|&(_, last)| last > on + 1);
            let ease = if flat { FLAT_EASE } else { 1.0 };
            effort += self.weights.reach * (felt - COMFORTABLE[other][finger] * ease).max(0.0);
        }
        Some(effort)
    }
}

/// The barres of a grip, by finger.
pub(super) fn barres(frets: &[u8], fingers: &[Option<Finger>; MAX_COURSES]) -> Vec<Barre> {
    let held = |finger| {
        let mut courses = (0..frets.len()).filter(|&course| fingers[course] == Some(finger));
        let from = courses.next()?;
        let to = courses.next_back()?;
        let fret = frets[from];
        Some(Barre {
            finger,
            fret,
            from,
            to,
        })
    };
    Finger::ALL.into_iter().filter_map(held).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::Order;

    fn fingers(scale_mm: f32, frets: &[u8]) -> Option<Vec<u8>> {
        let fret_mm = std::array::from_fn(|fret| {
            scale_mm * (1.0 - f32::exp2(-f32::from(u8::try_from(fret).unwrap()) / 12.0))
        });
        let reach = Reach {
            fret_mm,
            scale_mm,
            frets_a_finger: 1,
            spacing_mm: 8.0,
        };
        let grip = best_grip(frets, &reach, Weights::of(Order::Beginner))?;
        let number = |finger: Option<Finger>| finger.map_or(0, Finger::number);
        Some(
            grip.fingers[..frets.len()]
                .iter()
                .map(|&f| number(f))
                .collect(),
        )
    }

    #[test]
    fn an_index_lies_flat_where_a_hand_would() {
        assert_eq!(
            fingers(650.0, &[1, 3, 3, 2, 1, 1]).unwrap(),
            [1, 3, 4, 2, 1, 1]
        );
    }

    #[test]
    fn an_open_course_under_a_finger_rules_the_barre_out() {
        assert_eq!(fingers(350.0, &[2, 0, 2, 0, 2, 0, 2, 0, 2]), None);
    }

    #[test]
    fn a_reach_beyond_the_hand_is_no_grip() {
        assert!(fingers(350.0, &[1, 6]).is_some());
        assert_eq!(fingers(650.0, &[1, 6]), None);
    }

    #[test]
    fn five_frets_need_five_fingers() {
        assert_eq!(fingers(350.0, &[1, 2, 3, 4, 5]), None);
    }
}
