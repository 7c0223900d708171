//! The left hand: which fingers can hold a set of frets, and which hold it with the least effort.

use super::effort::{FINGERS, Weights};
use super::instrument::MAX_COURSES;
use super::shape::{Barre, Finger};

/// Furthest that two fingertips can stand apart, in mm, by the two fingers (index 0 to little 3). A grown hand of middle
/// size (common practice: four frets of a guitar from the first, 98 mm, are within it, five are not).
const FURTHEST: [[f32; 4]; 4] = [
    [0.0, 65.0, 95.0, 120.0],
    [65.0, 0.0, 55.0, 90.0],
    [95.0, 55.0, 0.0, 55.0],
    [120.0, 90.0, 55.0, 0.0],
];

/// How far they stand apart before it is felt (common practice).
const COMFORTABLE: [[f32; 4]; 4] = [
    [0.0, 36.0, 68.0, 95.0],
    [36.0, 0.0, 35.0, 68.0],
    [68.0, 35.0, 0.0, 35.0],
    [95.0, 68.0, 35.0, 0.0],
];

/// Furthest from the lowest to the highest stopped fret, in mm and in frets.
pub(super) const WIDEST: f32 = FURTHEST[0][3];
pub(super) const MOST_FRETS: u8 = 5;

/// Length over which each finger can lie flat, in mm: the whole index, but only the pads of the others (common practice).
const FLAT: [f32; 4] = [60.0, 20.0, 20.0, 12.0];

/// How much weaker each finger is than the index.
const WEAKER: [f32; 4] = [0.0, 1.0, 2.0, 3.0];

/// A neck as the hand feels it.
#[derive(Debug)]
pub(super) struct Reach {
    /// Distance from the nut to each fret counted from the capo, in mm.
    pub(super) fret_mm: [f32; 32],
    /// Distance from course to course, in mm.
    pub(super) spacing_mm: f32,
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
            let effort = floor + self.weights.turned * self.turns();
            if self.best.is_none_or(|best| effort < best.effort) {
                let fingers = self.fingers;
                self.best = Some(Grip { fingers, effort });
            }
            return;
        };
        for finger in free..4 {
            let Some(spread) = self.spread(finger, (fret, course)) else {
                continue;
            };
            let weaker = WEAKER[finger] * self.weights.weaker;
            self.set[finger] = (fret, course);
            let mut held = next;
            while let Some(&(also_fret, to)) = self.stopped.get(held)
                && also_fret == fret
                && let Some(flat) = self.flat(finger, fret, course, to)
            {
                self.fingers[to] = Some(Finger::ALL[finger]);
                self.place(
                    held + 1,
                    finger + 1,
                    used + 1,
                    effort + spread + weaker + flat,
                );
                held += 1;
            }
            self.set[finger] = (0, 0);
        }
    }

    /// How often the fingers turn back on their way across the courses: 3 2 1 and 1 2 3 never do, 2 3 1 does once.
    fn turns(&self) -> f32 {
        let mut turns = 0.0;
        let mut rising = None;
        let mut before = None;
        let mut seen = [false; 5];
        for finger in self.fingers.iter().flatten() {
            // Only the tip of a flat finger counts.
            if std::mem::replace(&mut seen[usize::from(finger.number())], true) {
                continue;
            }
            if let Some(before) = before {
                let up = finger > before;
                if rising.is_some_and(|rising| rising != up) {
                    turns += 1.0;
                }
                rising = Some(up);
            }
            before = Some(finger);
        }
        turns
    }

    /// Effort of a finger that lies over the courses `from..=to`; `None` where it cannot.
    fn flat(&self, finger: usize, fret: u8, from: usize, to: usize) -> Option<f32> {
        if from == to {
            return Some(0.0);
        }
        let index = finger == 0;
        let under = &self.frets[from..=to];
        let lies = under
            .iter()
            .all(|&f| f != NOT_PLAYED && (if index { f >= fret } else { f == fret }));
        // Beside a flat finger an open course on the high side can ring only if the finger arches away from it, which it
        // cannot when it lies over more than two.
        let open_beside = self.frets.get(to + 1) == Some(&0);
        let damps = under.len() > 2 && self.frets[to + 1..].contains(&0);
        let courses = [
            0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0,
        ][under.len()];
        let length = (courses - 1.0) * self.reach.spacing_mm;
        if !lies || damps || length > FLAT[finger] {
            return None;
        }
        let wide = (courses - 2.0).max(0.0) * self.weights.barre_wide;
        let arched = if open_beside {
            self.weights.arched
        } else {
            0.0
        };
        Some(self.weights.barre + wide + arched + WEAKER[finger] * self.weights.barre_weaker)
    }

    /// Effort of spreading a finger away from those already set; `None` if it does not reach.
    fn spread(&self, finger: usize, (fret, course): (u8, usize)) -> Option<f32> {
        let mut effort = 0.0;
        for (other, &(at, on)) in self.set.iter().enumerate().take(finger) {
            if at == 0 {
                continue;
            }
            let along = self.reach.fret_mm[usize::from(fret)] - self.reach.fret_mm[usize::from(at)];
            // Courses number at most twelve.
            #[allow(clippy::cast_precision_loss)]
            let across = course.abs_diff(on) as f32 * self.reach.spacing_mm;
            let apart = along.hypot(across);
            if apart > FURTHEST[other][finger] {
                return None;
            }
            effort += self.weights.reach * (apart - COMFORTABLE[other][finger]).max(0.0);
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
