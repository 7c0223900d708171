//! Long and short eighths.

use crate::chart::{Metre, Ticks};

/// How the two halves of each beat share its time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Swing {
    /// The beat that two notes share; zero where nothing swings.
    beat: Ticks,
    ratio: (i64, i64),
}

impl Swing {
    /// In beats of three notes, and where notes shorter than quarters are counted, nothing swings. In 2/4 the pairs are
    /// sixteenths, otherwise eighths.
    pub(super) fn new(ratio: (i64, i64), metre: Metre) -> Self {
        let even = metre.is_compound() || metre.unit > 4 || ratio.0 == ratio.1;
        let beat = match (metre.count, metre.unit) {
            _ if even => Ticks::ZERO,
            (2, 4) => Ticks::of(1, 8),
            _ => Ticks::QUARTER,
        };
        Self { beat, ratio }
    }

    pub(super) fn swings(self) -> bool {
        self.beat > Ticks::ZERO
    }

    /// When a place of the bar is played: the first half of a beat is stretched to the longer share, the second pressed
    /// into the rest.
    pub(super) fn played(self, offset: Ticks) -> Ticks {
        if !self.swings() {
            return offset;
        }
        let (_, into) = offset.div_rem(self.beat);
        let (long, short) = self.ratio;
        let half = self.beat.0 / 2;
        // Within a beat: far from overflow.
        let moved = if into.0 < half {
            into.0 * 2 * long / (long + short)
        } else {
            self.beat.0 - (self.beat.0 - into.0) * 2 * short / (long + short)
        };
        offset - into + Ticks(moved)
    }

    /// The middle of the beat that a place of the bar lies in.
    pub(super) fn middle(self, offset: Ticks) -> Ticks {
        let (_, into) = offset.div_rem(self.beat.max(Ticks(1)));
        offset - into + Ticks(self.beat.0 / 2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_to_one_makes_the_second_eighth_the_third_of_a_triplet() {
        let swing = Swing::new((2, 1), Metre::COMMON);
        let played = |count, unit| swing.played(Ticks::of(count, unit));
        assert_eq!(played(1, 8), Ticks::of(1, 6));
        assert_eq!(played(3, 8), Ticks::QUARTER + Ticks::of(1, 6));
        assert_eq!(played(1, 4), Ticks::of(1, 4));
        assert_eq!(played(1, 16), Ticks::of(1, 12));
        assert_eq!(played(3, 16), Ticks::of(5, 24));
    }

    #[test]
    fn jigs_and_even_eighths_stay_as_they_are() {
        let place = Ticks::of(1, 8);
        assert_eq!(Swing::new((2, 1), Metre::new(6, 8)).played(place), place);
        assert_eq!(Swing::new((1, 1), Metre::COMMON).played(place), place);
    }
}
