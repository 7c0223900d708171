//! Musical time in whole ticks.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

use serde::{Deserialize, Serialize};

/// A length of musical time, or a moment counted from some start.
///
/// A quarter note has 161,280 = 2⁹·3²·5·7 ticks: every note down to a 2,048th and every tuplet of 2 to 10 is exact.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
pub struct Ticks(pub i64);

impl Ticks {
    /// No time at all.
    pub const ZERO: Self = Self(0);
    /// A quarter note.
    pub const QUARTER: Self = Self(161_280);
    /// A whole note.
    pub const WHOLE: Self = Self(4 * Self::QUARTER.0);

    /// `count` times the `unit`-th part of a whole note, to the nearest tick: `of(3, 8)` is a dotted quarter.
    ///
    /// ```
    /// use fourcourse::chart::Ticks;
    /// assert_eq!(Ticks::of(3, 8).fraction(), (3, 2)); // in quarter notes
    /// ```
    pub const fn of(count: i64, unit: i64) -> Self {
        let unit = if unit < 1 { 1 } else { unit };
        let ticks = count.saturating_mul(Self::WHOLE.0);
        Self((ticks + ticks.signum() * unit / 2) / unit)
    }

    /// The fraction of a quarter note in lowest terms.
    pub const fn fraction(self) -> (i64, i64) {
        let (mut a, mut b) = (self.0.unsigned_abs(), Self::QUARTER.0.unsigned_abs());
        while b != 0 {
            (a, b) = (b, a % b);
        }
        let divisor = a.cast_signed();
        (self.0 / divisor, Self::QUARTER.0 / divisor)
    }

    /// Quarter notes as a number, for drawing and for clocks.
    #[allow(clippy::cast_precision_loss)] // a chart is far shorter than 2^53 ticks
    pub fn quarters(self) -> f64 {
        self.0 as f64 / Self::QUARTER.0 as f64
    }

    /// The tick nearest to a number of quarter notes.
    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss)] // `as` saturates
    pub fn from_quarters(quarters: f64) -> Self {
        Self((quarters * Self::QUARTER.0 as f64).round() as i64)
    }

    /// How many whole times `other` fits, and what is left.
    pub const fn div_rem(self, other: Self) -> (i64, Self) {
        (self.0.div_euclid(other.0), Self(self.0.rem_euclid(other.0)))
    }
}

impl Add for Ticks {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Ticks {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Mul<i64> for Ticks {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0.saturating_mul(times))
    }
}

impl Neg for Ticks {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl AddAssign for Ticks {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Ticks {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl Sum for Ticks {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Add::add)
    }
}
