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
    /// A flat finger weaker than the index: middle 1, ring 2, little 3 times this.
    pub(super) barre_weaker: f32,
    /// Each mm that two fingers are spread beyond what is comfortable.
    pub(super) reach: f32,
    /// Each fret between the lowest and the highest stopped one.
    pub(super) stretch: f32,
    /// Each fret that the lowest stopped one lies beyond the first.
    pub(super) position: f32,
    /// Each time that open courses lie between stopped ones: the fingers must arch over them.
    pub(super) arched: f32,
    /// Each time that the fingers turn back on their way across the courses, for each fret of the stretch beyond one: a
    /// spread hand keeps to one slant.
    pub(super) turned: f32,
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

/// Fitted so that the first shape of each chord of the trade sheet is one that the sheet lists. In words: stay at the nut;
/// sound the third and the fifth on four courses at least; then few fingers, close together, that lie on one slant and
/// have no open course to arch over.
const BEGINNER: Weights = Weights {
    finger: 1.5,
    strange: 0.05,
    barre: 2.5,
    barre_wide: 0.2,
    barre_weaker: 0.4,
    reach: 0.15,
    stretch: 2.75,
    position: 6.0,
    arched: 4.0,
    turned: 2.0,
    left_out: 1.5,
    damped: 10.0,
    thin: 15.0,
    no_third: 6.25,
    no_spare: 6.0,
    no_root: 6.0,
    inverted: 6.5,
    bass: 8.0,
    bass_beyond: 4,
};

/// A chop is the drum of the circle: short, so that three courses will do and the fifth is not missed, and on its root.
/// It is for hands that have settled: the stretch and the position count little, the slant nothing.
const CHOPS: Weights = Weights {
    stretch: 1.0,
    position: 1.0,
    arched: 0.0,
    turned: 0.0,
    left_out: 3.0,
    thin: 3.0,
    no_spare: 0.6,
    inverted: 0.5,
    bass: 5.4,
    bass_beyond: 0,
    ..BEGINNER
};

/// How the effort of setting fingers down grows with their number: `n^1.3`.
pub(super) const FINGERS: [f32; 5] = [0.0, 1.0, 2.46, 4.17, 6.06];

/// A small count as a factor.
pub(super) fn times(count: usize) -> f32 {
    f32::from(u8::try_from(count).unwrap_or(u8::MAX))
}
