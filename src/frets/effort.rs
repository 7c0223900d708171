//! What a shape costs: one sum of a few efforts, the same for every chord and every instrument.

use super::shape::Order;

/// The weights of the sum. Every effort is counted in something that can be seen on the chord box or heard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weights {
    /// Setting down fingers: grows a little faster than their number, because they must land together.
    pub(super) finger: f32,
    /// A fret held by another finger than the one that owns it: each finger between the two. It decides between fingerings
    /// of one shape, hardly between shapes.
    pub(super) strange: f32,
    /// A finger that lies flat over two courses.
    pub(super) barre: f32,
    /// Each course under it beyond two.
    pub(super) barre_wide: f32,
    /// Each time that courses stopped higher part those that a flat finger holds: it must press on both sides.
    pub(super) bridged: f32,
    /// A flat finger weaker than the index: middle 1, ring 2, little 3 times this.
    pub(super) barre_weaker: f32,
    /// Each course that a finger at the first fret lies over: strings are stiffest beside the nut.
    pub(super) stiff: f32,
    /// Each mm that two fingers are spread beyond what is comfortable.
    pub(super) reach: f32,
    /// Each fret between the lowest and the highest stopped one.
    pub(super) stretch: f32,
    /// Each fret that the lowest stopped one lies beyond the first, growing to the power of 0.8: frets get narrower.
    pub(super) position: f32,
    /// Each fret that it lies beyond the first while a course sounds open, growing to the power of 1.5: up the neck a hand
    /// muffles it, and it no longer helps.
    pub(super) away: f32,
    /// Each time that open courses lie between stopped ones: the fingers must arch over them.
    pub(super) arched: f32,
    /// Each time that the fingers turn back on their way across the courses, for each fret of the stretch beyond one: a
    /// spread hand keeps to one slant.
    pub(super) turned: f32,
    /// Each fret by which the last course is stopped higher than the first: a hand slants the other way.
    pub(super) rising: f32,
    /// Each course before the first that sounds: the strum must start after it.
    pub(super) left_out: f32,
    /// Each course after that one which a finger must damp.
    pub(super) damped: f32,
    /// Each course short of four that sounds.
    pub(super) thin: f32,
    /// The third of a triad does not sound.
    pub(super) no_third: f32,
    /// The fifth of a triad does not sound.
    pub(super) no_fifth: f32,
    /// A spare tone of a bigger chord does not sound.
    pub(super) no_spare: f32,
    /// The root sounds on one course only.
    pub(super) root_once: f32,
    /// The root of a bigger chord does not sound.
    pub(super) no_root: f32,
    /// What sounds is the whole of a triad on another root: C E G for Am7, which the ear takes for C.
    pub(super) other_triad: f32,
    /// Another tone than the root or fifth is lowest; or, on a neck without bass courses, a slash bass is not.
    pub(super) inverted: f32,
    /// The same in a bigger chord, which is itself in any inversion.
    pub(super) inverted_big: f32,
    /// A slash bass is not lowest, on a neck that has bass courses.
    pub(super) no_bass: f32,
    /// Two notes less than a major third apart lie at the bottom of a neck that has bass courses.
    pub(super) muddy: f32,
    /// Another tone than the root is lowest, on a neck that has bass courses: more than [`Self::bass_beyond`].
    pub(super) bass: f32,
    /// With more courses than these, short strings not counted, the lowest of them are heard as a bass.
    pub(super) bass_beyond: usize,
}

impl Weights {
    pub(super) const fn of(order: Order) -> &'static Self {
        match order {
            Order::Beginner => &BEGINNER,
            Order::Chops => &CHOPS,
        }
    }
}

/// Fitted, by a linear program over the efforts of all competing shapes, so that the first shape of each chord of the trade
/// sheet is one that the sheet lists and that of each chord of the teacher's list is the teacher's (both in
/// `tests/outside`); of the program's solution three decimals are kept. In words: sound the root of a bigger chord, and on a
/// neck with bass courses have it lowest; four courses at least; stay at the nut, more so with open courses; then close
/// together, third and fifth, few fingers that lie on one slant, no open course to arch over.
const BEGINNER: Weights = Weights {
    finger: 1.0,
    strange: 0.01,
    barre: 1.65,
    barre_wide: 0.0,
    bridged: 0.186,
    barre_weaker: 1.394,
    stiff: 0.463,
    reach: 0.288,
    stretch: 2.463,
    position: 3.366,
    away: 0.527,
    arched: 2.177,
    turned: 1.742,
    rising: 0.0,
    left_out: 3.896,
    damped: 10.788,
    thin: 20.0,
    no_third: 5.33,
    no_fifth: 5.62,
    no_spare: 1.268,
    root_once: 0.0,
    no_root: 20.0,
    other_triad: 6.0,
    inverted: 3.571,
    inverted_big: 0.532,
    no_bass: 35.0,
    muddy: 12.0,
    bass: 13.368,
    bass_beyond: 4,
};

/// A chop is the drum of the circle: short, so that the fifth is not missed, and on its root, which sounds twice. Each finger
/// stands on its own, to be lifted at once; the hand keeps its natural slant, higher frets on the courses near the face; and
/// the first fret is too stiff to let go quickly. It is for hands that have settled: the stretch and the position count
/// little. Set by hand for the chops of the sheet and of the teacher's list.
const CHOPS: Weights = Weights {
    finger: 1.5,
    strange: 0.05,
    barre: 6.0,
    barre_wide: 0.2,
    bridged: 0.0,
    barre_weaker: 0.4,
    stiff: 7.0,
    reach: 0.15,
    stretch: 0.5,
    position: 0.8,
    away: 0.0,
    arched: 0.0,
    turned: 0.0,
    rising: 1.5,
    left_out: 3.0,
    damped: 10.0,
    thin: 1.5,
    no_third: 6.25,
    no_fifth: 1.0,
    no_spare: 2.0,
    root_once: 4.0,
    no_root: 12.0,
    other_triad: 12.0,
    inverted: 3.0,
    inverted_big: 0.5,
    no_bass: 40.0,
    muddy: 0.0,
    bass: 1.2,
    bass_beyond: 0,
};

/// How the effort of setting fingers down grows with their number: `n^1.3`.
pub(super) const FINGERS: [f32; 5] = [0.0, 1.0, 2.46, 4.17, 6.06];

/// A small count as a factor.
pub(super) fn times(count: usize) -> f32 {
    f32::from(u8::try_from(count).unwrap_or(u8::MAX))
}
