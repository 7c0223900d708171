//! Note values: what is written for a length of time.

use crate::chart::{Metre, Ticks};

/// A written value: a whole note halved so many times, with dots.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) struct Value {
    /// 0 whole, 1 half, 2 quarter, 3 eighth...; -1 is the double whole.
    pub(super) halved: i8,
    /// Dots behind it, 0 to 2.
    pub(super) dots: u8,
}

/// The shortest value that is written.
const SHORTEST: i8 = 7;

impl Value {
    /// How long it sounds.
    pub(super) fn length(self) -> Ticks {
        let base = plain(self.halved);
        (0..self.dots).fold(base, |sum, dot| sum + Ticks(base.0 >> (u32::from(dot) + 1)))
    }

    /// Flags or beams of it.
    pub(super) fn beams(self) -> usize {
        usize::try_from(self.halved - 2).unwrap_or(0)
    }

    /// Whether it has a stem.
    pub(super) fn has_stem(self) -> bool {
        self.halved > 0
    }

    /// The one value of a length, or the longest that is not longer.
    fn within(length: Ticks) -> Option<Self> {
        let all = (-1..=SHORTEST).flat_map(|halved| [2, 1, 0].map(|dots| Self { halved, dots }));
        let fits = all.filter(|value| value.length() <= length);
        fits.max_by_key(|value| (value.length(), std::cmp::Reverse(value.dots)))
    }

    /// The values that together are as long as a note: most often one, else several that are tied, the longest first.
    pub(super) fn of_note(length: Ticks) -> Vec<Self> {
        let mut left = length;
        let mut values = Vec::new();
        while let Some(value) = Self::within(left) {
            left -= value.length();
            // Two dots are for one note alone; among tied ones they are hard to read.
            values.push(value);
            if values.len() == 8 {
                break;
            }
        }
        values
    }

    /// The rests that fill a silence from one moment of the metre to another. No rest hides a beat: each begins where a
    /// multiple of its own length from the start of the bar (in compound metres, of the beat) is.
    pub(super) fn of_rest(metre: Metre, from: Ticks, to: Ticks) -> Vec<Self> {
        let mut values = Vec::new();
        let mut at = from;
        while at < to && values.len() < 16 {
            let aligned = |value: &Self| {
                let length = value.length();
                length <= to - at
                    && at.div_rem(length).1 == Ticks::ZERO
                    && (!metre.is_compound()
                        || value.halved > 2
                        || value.dots == 1 && length == beat(metre))
            };
            let compound = u8::from(metre.is_compound());
            let all = (0..=SHORTEST)
                .flat_map(|halved| (0..=compound).map(move |dots| Self { halved, dots }));
            let longest = all.filter(aligned).max_by_key(|value| value.length());
            // What lies between all of these, in a tuplet say, is filled with what fits.
            let Some(value) = longest.or_else(|| Self::within(to - at)) else {
                break;
            };
            values.push(value);
            at += value.length();
        }
        values
    }
}

fn beat(metre: Metre) -> Ticks {
    metre.beats().first().copied().unwrap_or(Ticks::QUARTER)
}

fn plain(halved: i8) -> Ticks {
    match u32::try_from(halved) {
        Ok(times) => Ticks(Ticks::WHOLE.0 >> times),
        Err(_) => Ticks::WHOLE * 2,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(values: &[Value]) -> String {
        let one = |value: &Value| {
            let dots = ".".repeat(usize::from(value.dots));
            match u32::try_from(value.halved) {
                Ok(times) => format!("{}{dots}", 1 << times),
                Err(_) => format!("2x{dots}"),
            }
        };
        values.iter().map(one).collect::<Vec<_>>().join("+")
    }

    #[test]
    fn a_length_is_one_value_or_a_few_that_are_tied() {
        let note = |count, unit| written(&Value::of_note(Ticks::of(count, unit)));
        assert_eq!(note(1, 4), "4");
        assert_eq!(note(3, 8), "4.");
        assert_eq!(note(7, 8), "2..");
        assert_eq!(note(5, 8), "2+8");
        assert_eq!(note(9, 8), "1+8");
        assert_eq!(note(2, 1), "2x");
        assert_eq!(note(3, 16), "8.");
    }

    #[test]
    fn rests_begin_on_the_beats_that_they_fill() {
        let rest = |metre, from, to| written(&Value::of_rest(metre, from, to));
        let common = Metre::COMMON;
        assert_eq!(rest(common, Ticks::ZERO, Ticks::WHOLE), "1");
        // From the second quarter to the end: a quarter, then the half bar.
        assert_eq!(rest(common, Ticks::QUARTER, Ticks::WHOLE), "4+2");
        assert_eq!(rest(common, Ticks::of(1, 8), Ticks::of(1, 2)), "8+4");
        let jig = Metre::new(6, 8);
        assert_eq!(rest(jig, Ticks::of(3, 8), Ticks::of(6, 8)), "4.");
        assert_eq!(rest(jig, Ticks::of(1, 8), Ticks::of(6, 8)), "8+8+4.");
    }

    #[test]
    fn values_are_as_long_as_what_they_stand_for() {
        for sixteenths in 1..=40 {
            let length = Ticks::of(sixteenths, 16);
            let sum: Ticks = Value::of_note(length).into_iter().map(Value::length).sum();
            assert_eq!(sum, length, "{sixteenths}");
            let rests = Value::of_rest(Metre::new(4, 4), Ticks::ZERO, length);
            let sum: Ticks = rests.into_iter().map(Value::length).sum();
            assert_eq!(sum, length, "{sixteenths}");
        }
    }
}
