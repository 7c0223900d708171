//! The search for shapes: every hand position, every way to stop, leave open or leave out each course.

use std::collections::BinaryHeap;

use crate::theory::{Chord, Need};

use super::effort::{FINGERS, Weights, times};
use super::hand::{Frets, Grip, MOST_FRETS, NOT_PLAYED, OPEN_FRETS, WIDEST, best_grip};
use super::instrument::{Capo, Instrument, MAX_COURSES, Texture};
use super::lacks::{Sounding, lack, off_ground};
use super::neck::Neck;
use super::shape::{Order, Shape};

/// Steps after which a search stops with what it has. Only odd tunings with many courses come near it: every built-in
/// instrument is searched to the end.
const MOST_STEPS: u32 = 400_000;

/// The easiest shapes of a chord in an order, at most `most` of them, the best first, each of them another shape: for a
/// beginner one that is held like one before it, with a course more left out or left open, is not.
///
/// A slash bass is the lowest sounding note where the neck has bass courses, or where it costs no more than another
/// inversion; otherwise it is left to others, which [`Shape::bass_left_out`] tells. Empty where nothing can be held, such
/// as on an instrument without courses.
///
/// ```
/// use fourcourse::frets::{Capo, Instrument, Order, shapes};
/// use fourcourse::theory::{Chord, Quality};
/// let c = Chord::new("C".parse().unwrap(), Quality::MAJOR);
/// let mandolin = Instrument::mandolin();
/// assert_eq!(shapes(&mandolin, Capo::NONE, c, Order::Beginner, 1)[0].to_string(), "0230");
/// assert_eq!(shapes(&mandolin, Capo::NONE, c, Order::Chops, 1)[0].to_string(), "5233");
/// ```
pub fn shapes(
    instrument: &Instrument,
    capo: Capo,
    chord: Chord,
    order: Order,
    most: usize,
) -> Vec<Shape> {
    let neck = Neck::new(instrument, capo, chord);
    let search = |most| Search::new(&neck, order, most, Weights::of(order)).run();
    let kept = match order {
        Order::Chops => search(most),
        Order::Beginner => {
            let mut enough = most.saturating_mul(2);
            loop {
                let found = search(enough);
                let all = found.len() < enough;
                let kept = different(found, most);
                if all || kept.len() == most {
                    break kept;
                }
                enough = enough.saturating_mul(2);
            }
        }
    };
    let shape = |found: &Found| neck.shape(&found.frets, &found.grip, found.cost);
    kept.iter().map(shape).collect()
}

/// Every shape of a chord that a hand can hold, the easiest in an order first, those that differ only by a course that is
/// left out among them. Many, and slow to find; [`shapes`] has the few that a player wants.
pub fn every_shape(instrument: &Instrument, capo: Capo, chord: Chord, order: Order) -> Vec<Shape> {
    let neck = Neck::new(instrument, capo, chord);
    let found = Search::new(&neck, order, usize::MAX, Weights::of(order)).run();
    let shape = |found: &Found| neck.shape(&found.frets, &found.grip, found.cost);
    found.iter().map(shape).collect()
}

/// The first `most` shapes that are not held like one before them, with a course more left out or left open.
fn different(found: Vec<Found>, most: usize) -> Vec<Found> {
    let mut kept: Vec<Found> = Vec::new();
    for shape in found {
        let alike = |other: &Found| {
            let mut pairs = shape.frets.iter().zip(&other.frets);
            pairs.all(|(&new, &old)| {
                new == old || new == NOT_PLAYED || new == 0 && old == NOT_PLAYED
            })
        };
        if kept.len() < most && !kept.iter().any(alike) {
            kept.push(shape);
        }
    }
    kept
}

/// A shape that was found; ordered by cost, and by frets where costs are equal, so that the order is always the same.
#[derive(Debug, Clone, Copy)]
struct Found {
    cost: f32,
    frets: Frets,
    grip: Grip,
}

impl Ord for Found {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        let cost = self.cost.total_cmp(&other.cost);
        cost.then_with(|| self.frets.cmp(&other.frets))
    }
}
impl PartialOrd for Found {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl PartialEq for Found {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}
impl Eq for Found {}

/// What the courses decided so far come to.
#[derive(Debug, Clone, Copy, Default)]
struct Sofar {
    /// Effort that no later course can take back.
    effort: f32,
    /// Tones that sound, as bits by place.
    tones: u16,
    /// Frets that are stopped, as bits.
    stopped: u32,
    /// Courses that are stopped.
    pressed: u8,
    high: u8,
    sounding: u8,
    /// The lowest note, MIDI key and tone.
    lowest: Option<(i32, u8)>,
    /// Courses left out since the last one that sounds.
    run: u8,
    /// Whether a course sounds open.
    open: bool,
    /// Whether the last course that sounds is open and one before it is stopped.
    open_after_stopped: bool,
}

struct Search<'a> {
    neck: &'a Neck,
    weights: &'a Weights,
    most: usize,
    open_too: bool,
    vital: u16,
    root: u16,
    dispensable: u16,
    /// Vital tones that may be missing, because there are not enough courses.
    spare: usize,
    /// How many courses must sound, and how many can.
    fewest: u8,
    together: u8,
    frets: Frets,
    low: u8,
    high: u8,
    /// The last course that has a tone at the lowest fret.
    low_until: usize,
    /// The lowest MIDI key that a course or one after it can sound.
    lowest_from: [i32; MAX_COURSES + 1],
    steps: u32,
    found: BinaryHeap<Found>,
}

impl<'a> Search<'a> {
    fn new(neck: &'a Neck, order: Order, most: usize, weights: &'a Weights) -> Self {
        let vital = neck.tones.mask(Need::Vital);
        let small = |count: usize| u8::try_from(count).unwrap_or(u8::MAX);
        let (tones, together) = (small(neck.tones.list().len()), small(neck.together()));
        Self {
            neck,
            weights,
            most,
            open_too: order == Order::Beginner,
            vital,
            root: neck.tones.mask(Need::Root),
            dispensable: neck.tones.mask(Need::Spare),
            spare: (vital.count_ones() as usize).saturating_sub(neck.together()),
            fewest: tones.clamp(2, 3).min(together),
            together,
            frets: [NOT_PLAYED; MAX_COURSES],
            low: 0,
            high: 0,
            low_until: 0,
            lowest_from: lowest_from(neck),
            steps: 0,
            found: BinaryHeap::new(),
        }
    }

    fn run(mut self) -> Vec<Found> {
        if self.most == 0 || self.neck.courses == 0 {
            return Vec::new();
        }
        if self.open_too {
            self.course(0, Sofar::default());
        }
        for low in 1..=self.neck.last {
            let there = |course: &usize| self.neck.at[*course][usize::from(low)].is_some();
            let Some(last) = (0..self.neck.courses).rev().find(there) else {
                continue;
            };
            self.low = low;
            self.low_until = last;
            let mm = self.neck.reach.fret_mm;
            let within = |&fret: &u8| mm[usize::from(fret)] - mm[usize::from(low)] <= WIDEST;
            let furthest = self.neck.last.min(low + MOST_FRETS);
            self.high = (low..=furthest).rev().find(within).unwrap_or(low);
            let effort = self.weights.position * f32::from(low - 1).powf(0.8);
            self.course(
                0,
                Sofar {
                    effort,
                    ..Sofar::default()
                },
            );
        }
        self.found.into_sorted_vec()
    }

    /// Whether a shape of at least this effort cannot be among the wanted ones.
    fn too_much(&self, effort: f32) -> bool {
        self.found.len() >= self.most && self.found.peek().is_some_and(|worst| effort > worst.cost)
    }

    /// The least that any grip on the stopped courses takes: a finger for each, or fewer and one that lies flat.
    fn least_grip(&self, sofar: Sofar) -> f32 {
        let finger = self.weights.finger;
        let each = FINGERS.get(usize::from(sofar.pressed));
        let flat =
            finger * FINGERS[sofar.stopped.count_ones().min(4) as usize] + self.weights.barre;
        each.map_or(flat, |each| flat.min(finger * each))
    }

    /// Whether something is stopped where the hand stands; otherwise the shape belongs to a higher position.
    fn stands(&self, sofar: Sofar) -> bool {
        self.low == 0 || sofar.stopped & (1 << self.low) != 0
    }

    /// The least that the sound will lack when `left` courses are still to be decided.
    fn least_lack(&self, sofar: Sofar, left: usize) -> f32 {
        let weights = self.weights;
        let lacking = |tones: u16| (tones & !sofar.tones).count_ones() as usize;
        let free = left.saturating_sub(lacking(self.vital));
        let (root, spare) = (lacking(self.root), lacking(self.dispensable));
        let tones = if free == 0 {
            times(root) * weights.no_root + times(spare) * weights.no_spare
        } else {
            let cheapest = weights.no_spare.min(weights.no_root);
            times((root + spare).saturating_sub(free)) * cheapest
        };
        let wanted = usize::from(self.together).min(4);
        let short_of_four = wanted.saturating_sub(usize::from(sofar.sounding) + left);
        let settled = |low: &(i32, u8)| low.0 <= self.lowest_from[self.neck.courses - left];
        let ground = sofar.lowest.filter(settled);
        let ground = ground.map_or(0.0, |low| off_ground(self.neck, weights, low));
        tones + ground + times(short_of_four) * weights.thin
    }

    /// Decides a course and those after it.
    fn course(&mut self, course: usize, sofar: Sofar) {
        self.steps += 1;
        let left = self.neck.courses - course;
        let lacking = (self.vital & !sofar.tones).count_ones() as usize;
        if self.steps > MOST_STEPS
            || lacking > left + self.spare
            || sofar.stopped.count_ones() > 4
            || course > self.low_until && !self.stands(sofar)
            || self.too_much(sofar.effort + self.least_grip(sofar) + self.least_lack(sofar, left))
        {
            return;
        }
        if left == 0 {
            self.finish(sofar);
            return;
        }
        let row = &self.neck.at[course];
        if self.open_too
            && let Some(note) = row[0]
        {
            self.sound(course, 0, note, sofar);
        }
        if self.low > 0 {
            for fret in self.low..=self.high {
                if let Some(note) = row[usize::from(fret)] {
                    self.sound(course, fret, note, sofar);
                }
            }
        }
        self.leave(course, sofar);
    }

    fn sound(&mut self, course: usize, fret: u8, note: (i32, u8), sofar: Sofar) {
        let mut now = sofar;
        if sofar.sounding == self.together {
            return;
        }
        if sofar.run > 0 && sofar.sounding > 0 {
            if self.neck.texture != Texture::Full {
                return;
            }
            // The courses left out lie between sounding ones: a finger next to each must damp it.
            let from = course - usize::from(sofar.run);
            let stops = |fret: u8| fret != 0 && fret != NOT_PLAYED;
            let damped = sofar.run == 1 && (stops(self.frets[from - 1]) || stops(fret));
            let damped = damped || sofar.run == 2 && stops(self.frets[from - 1]) && stops(fret);
            if !damped {
                return;
            }
            now.effort += f32::from(sofar.run) * (self.weights.damped - self.weights.left_out);
        }
        if fret == 0 {
            now.open = true;
            now.open_after_stopped = now.stopped != 0;
        } else {
            if now.open_after_stopped {
                now.effort += self.weights.arched;
                now.open_after_stopped = false;
            }
            now.stopped |= 1 << fret;
            now.pressed += 1;
            if fret > now.high {
                let from = if now.high == 0 { self.low } else { now.high };
                now.effort += self.weights.stretch * f32::from(fret - from);
                now.high = fret;
            }
        }
        if now.open && now.high > self.low + OPEN_FRETS {
            return;
        }
        now.tones |= 1 << note.1;
        if now.lowest.is_none_or(|low| note.0 < low.0) {
            now.lowest = Some(note);
        }
        now.sounding += 1;
        now.run = 0;
        self.frets[course] = fret;
        self.course(course + 1, now);
    }

    fn leave(&mut self, course: usize, sofar: Sofar) {
        let mut now = sofar;
        if !self.neck.short[course] {
            now.effort += self.weights.left_out;
            now.run += 1;
        }
        self.frets[course] = NOT_PLAYED;
        self.course(course + 1, now);
    }

    fn finish(&mut self, sofar: Sofar) {
        if !self.stands(sofar)
            || sofar.sounding < self.fewest
            || sofar.tones.count_ones() < u32::from(self.fewest.min(2))
        {
            return;
        }
        let sounding = Sounding {
            tones: sofar.tones,
            courses: sofar.sounding,
            run: sofar.run,
        };
        let Some(sound) = lack(self.neck, self.weights, &self.frets, sounding) else {
            return;
        };
        // Open courses ask for a hand at the nut.
        let away = if sofar.open {
            f32::from(self.low.saturating_sub(1)).powf(1.5)
        } else {
            0.0
        };
        let effort = sofar.effort + sound + self.weights.away * away;
        if self.too_much(effort + self.least_grip(sofar)) {
            return;
        }
        let frets = &self.frets[..self.neck.courses];
        let Some(grip) = best_grip(frets, &self.neck.reach, self.weights) else {
            return;
        };
        let found = Found {
            cost: effort + grip.effort,
            frets: self.frets,
            grip,
        };
        if self.found.len() < self.most {
            self.found.push(found);
        } else if let Some(mut worst) = self.found.peek_mut()
            && found < *worst
        {
            *worst = found;
        }
    }
}

/// The lowest MIDI key of a tone on each course or any after it.
fn lowest_from(neck: &Neck) -> [i32; MAX_COURSES + 1] {
    let mut lowest = [i32::MAX; MAX_COURSES + 1];
    for course in (0..neck.courses).rev() {
        let own = neck.at[course]
            .iter()
            .flatten()
            .map(|&(midi, _)| midi)
            .min();
        lowest[course] = lowest[course + 1].min(own.unwrap_or(i32::MAX));
    }
    lowest
}

#[cfg(test)]
mod tests {
    use crate::theory::Degree;

    use super::*;

    fn first(instrument: &str, capo: Capo, chord: &str, order: Order) -> Shape {
        let instrument = Instrument::by_id(instrument).unwrap();
        let chord = chord.parse().unwrap();
        shapes(&instrument, capo, chord, order, 1).remove(0)
    }

    #[test]
    fn a_slash_bass_sounds_lowest() {
        let shape = first("guitar", Capo::NONE, "G/B", Order::Beginner);
        let lowest = shape.notes.iter().min_by_key(|note| note.midi());
        assert_eq!(lowest.unwrap().name, "B".parse().unwrap());
        assert_eq!(shape.lowest, Some(Degree::MajorThird));
    }

    #[test]
    fn a_bass_from_outside_the_chord_sounds_once_and_lowest() {
        let shape = first("guitar", Capo::NONE, "D/E", Order::Beginner);
        assert_eq!(shape.lowest, None);
        let basses = shape
            .notes
            .iter()
            .filter(|note| note.name == "E".parse().unwrap());
        assert_eq!(basses.count(), 1);
    }

    #[test]
    fn a_bass_that_no_course_has_is_given_up() {
        // From the seventeenth fret on there is no B below the C.
        let shape = first("mandolin", Capo::at(17), "C/B", Order::Beginner);
        assert_eq!(shape.to_string(), "0023");
        assert_eq!(shape.lowest, Some(Degree::Root));
    }

    #[test]
    fn nothing_comes_of_a_neck_without_courses() {
        let bare = Instrument::mandolin().tuned(&[]);
        let chord = "C".parse().unwrap();
        assert_eq!(shapes(&bare, Capo::NONE, chord, Order::Beginner, 9), []);
    }

    #[test]
    fn shapes_move_with_the_capo() {
        let shape = first("guitar", Capo::at(2), "A", Order::Beginner);
        assert_eq!(shape.to_string(), "320003");
        assert_eq!(shape.notes[0].to_string(), "A2");
    }

    #[test]
    fn the_short_string_is_left_where_it_does_not_fit() {
        assert_eq!(
            first("banjo", Capo::NONE, "D", Order::Beginner).to_string(),
            "x0234"
        );
        let spiked = Capo { fret: 0, short: 2 };
        assert_eq!(
            first("banjo", spiked, "D", Order::Beginner).to_string(),
            "00234"
        );
    }

    #[test]
    fn what_does_not_fit_on_four_courses_is_told() {
        let shape = first("mandolin", Capo::NONE, "G13", Order::Beginner);
        assert!(shape.missing.contains(&Degree::Fifth));
        assert!(!shape.missing.contains(&Degree::MajorThird));
        assert!(!shape.missing.contains(&Degree::Thirteenth));
    }

    #[test]
    fn asking_for_more_shapes_keeps_the_first() {
        let guitar = Instrument::by_id("guitar").unwrap();
        let chord: Chord = "Em7".parse().unwrap();
        let few = shapes(&guitar, Capo::NONE, chord, Order::Beginner, 5);
        let many = shapes(&guitar, Capo::NONE, chord, Order::Beginner, 60);
        assert_eq!(few[..], many[..5]);
    }
}
