//! What a shape costs: one sum of a few efforts, the same for every chord and every instrument.

use super::shape::Order;

/// The weights of the sum. Every effort is counted in something that can be seen on the chord box or heard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weights {
    /// Setting down fingers: grows a little faster than their number, because they must land together.
    pub(super) finger: f32,
    /// A finger weaker than the index: middle 1, ring 2, little 3 times this.
    pub(super) weaker: f32,
    /// Each course under a finger that lies flat.
    pub(super) barre: f32,
    /// A flat finger other than the index.
    pub(super) barre_other: f32,
    /// Each mm that two fingers are spread beyond what is comfortable.
    pub(super) reach: f32,
    /// Each fret between the lowest and the highest stopped one.
    pub(super) stretch: f32,
    /// Each fret that the hand stands away from the nut.
    pub(super) position: f32,
    /// Each stopped course: an open one sounds by itself.
    pub(super) stopped: f32,
    /// Each course before the first that sounds: the strum must start after it.
    pub(super) left_out: f32,
    /// Each course after that one which a finger must damp.
    pub(super) damped: f32,
    /// Each course short of four that sounds.
    pub(super) thin: f32,
    /// The third of a triad does not sound.
    pub(super) no_third: f32,
    /// A spare tone does not sound.
    pub(super) no_spare: f32,
    /// The root of a bigger chord does not sound.
    pub(super) no_root: f32,
    /// Another tone than the root or fifth is lowest.
    pub(super) inverted: f32,
    /// Another tone than the root is lowest, on a neck with more than four courses from the nut: it has bass courses.
    pub(super) bass: f32,
    /// The third sounds twice or more: each time beyond the first.
    pub(super) doubled_third: f32,
    /// Each time that open courses lie between stopped ones: the fingers must arch over them.
    pub(super) arched: f32,
    /// Each time that the fingers turn back on their way across the courses: a hand prefers one slant.
    pub(super) turned: f32,
}

impl Weights {
    pub(super) const fn of(order: Order) -> &'static Self {
        match order {
            Order::Beginner => &BEGINNER,
            Order::Chops => &CHOPS,
        }
    }
}

const BEGINNER: Weights = Weights {
    finger: 1.5,
    weaker: 0.02,
    barre: 1.2,
    barre_other: 2.0,
    reach: 0.2,
    stretch: 2.0,
    position: 0.5,
    stopped: 0.2,
    left_out: 1.0,
    damped: 4.0,
    thin: 6.0,
    no_third: 6.0,
    no_spare: 2.0,
    no_root: 4.0,
    inverted: 1.0,
    bass: 5.0,
    doubled_third: 1.0,
    arched: 1.0,
    turned: 0.5,
};

const CHOPS: Weights = Weights {
    stretch: 0.5,
    ..BEGINNER
};

/// How the effort of setting fingers down grows with their number: `n^1.3`.
pub(super) const FINGERS: [f32; 5] = [0.0, 1.0, 2.46, 4.17, 6.06];
