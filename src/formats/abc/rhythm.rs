//! Lengths of notes: fractions of the unit note, broken rhythm and tuplets.

use crate::chart::{Metre, Ticks, Tuplet};

use super::super::limits::WHOLE_NOTES;

/// The largest number in a length.
const MOST: u32 = 4096;

/// A positive fraction that lengthens or shortens a note.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Ratio {
    pub(super) num: u32,
    pub(super) den: u32,
}

impl Ratio {
    pub(super) const ONE: Self = Self { num: 1, den: 1 };

    /// The length at the start of `text` (ABC 2.1, 4.3: `3`, `/`, `//`, `3/2`, `/4`), and its length in bytes; nothing
    /// at all is 1. A length of nought, a division by nought and numbers beyond sense are `None`.
    pub(super) fn split(text: &str) -> (Option<Self>, usize) {
        let bytes = text.as_bytes();
        let number = |from: usize| {
            let digits = bytes[from..].iter().take_while(|b| b.is_ascii_digit());
            let count = digits.count();
            let value = text[from..from + count].parse().unwrap_or(0);
            (count, (1..=MOST).contains(&value).then_some(value))
        };
        let (mut length, mut num) = number(0);
        if length == 0 {
            num = Some(1);
        }
        let mut den = Some(1_u32);
        while bytes.get(length) == Some(&b'/') {
            let (count, value) = number(length + 1);
            let by = if count == 0 { Some(2) } else { value };
            den = den.zip(by).map(|(den, by)| den.saturating_mul(by));
            length += 1 + count;
        }
        let ratio = num.zip(den.filter(|&den| den <= MOST));
        (ratio.map(|(num, den)| Self { num, den }), length)
    }

    /// The product in lowest terms.
    pub(super) fn times(self, other: Self) -> Self {
        let (num, den) = (
            u64::from(self.num) * u64::from(other.num),
            u64::from(self.den) * u64::from(other.den),
        );
        let (mut a, mut b) = (num, den.max(1));
        while b != 0 {
            (a, b) = (b, a % b);
        }
        let fit = |n: u64| u32::try_from(n / a.max(1)).unwrap_or(u32::MAX);
        Self {
            num: fit(num),
            den: fit(den),
        }
    }

    /// Whether so many times a length is longer than the longest note.
    pub(super) fn is_too_long(self, length: Ticks) -> bool {
        let ticks = length.0.saturating_mul(i64::from(self.num)) / i64::from(self.den.max(1));
        ticks > Ticks::WHOLE.0 * i64::from(WHOLE_NOTES)
    }

    /// So many times a length, to the nearest tick, at least one tick and at most the longest note.
    pub(super) fn of(self, length: Ticks) -> Ticks {
        let den = i64::from(self.den.max(1));
        let ticks = (length
            .0
            .saturating_mul(i64::from(self.num))
            .saturating_add(den / 2))
            / den;
        Ticks(ticks.clamp(1, Ticks::WHOLE.0 * i64::from(WHOLE_NOTES)))
    }
}

/// What broken rhythm does to the note before and the note after (ABC 2.1, 4.4): `>` dots the first and halves the
/// second, `>>` double dots and quarters, and so on; `<` the other way round. `marks` counts them.
pub(super) fn broken(longer_first: bool, marks: u8) -> (Ratio, Ratio) {
    let den = 1 << marks.clamp(1, 4);
    let short = Ratio { num: 1, den };
    let long = Ratio {
        num: 2 * den - 1,
        den,
    };
    if longer_first {
        (long, short)
    } else {
        (short, long)
    }
}

/// A tuplet that has begun: `p` notes in the time of `q`, for so many notes yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct OpenTuplet {
    p: u8,
    q: u8,
    left: u8,
    first: bool,
}

impl OpenTuplet {
    /// A tuplet as written, the missing numbers by the table of ABC 2.1, 4.13.
    pub(super) fn new(p: u8, q: Option<u8>, r: Option<u8>, metre: Metre) -> Self {
        let q = q.filter(|&q| q > 0).unwrap_or(match p {
            2 | 4 | 8 => 3,
            3 | 6 => 2,
            _ if metre.is_compound() => 3,
            _ => 2,
        });
        Self {
            p,
            q,
            left: r.filter(|&r| r > 0).unwrap_or(p),
            first: true,
        }
    }

    pub(super) fn ratio(self) -> Ratio {
        Ratio {
            num: u32::from(self.q),
            den: u32::from(self.p.max(1)),
        }
    }

    /// What its next note belongs to, and the tuplet after that note.
    pub(super) fn take(self) -> (Tuplet, Option<Self>) {
        let tuplet = Tuplet {
            count: self.p,
            instead_of: self.q,
            first: self.first,
        };
        let rest = Self {
            left: self.left.saturating_sub(1),
            first: false,
            ..self
        };
        (tuplet, (rest.left > 0).then_some(rest))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_read_as_the_standard_writes_them() {
        let length = |text| Ratio::split(text).0.map(|r| (r.num, r.den));
        for (text, expected) in [
            ("", (1, 1)),
            ("2", (2, 1)),
            ("/", (1, 2)),
            ("//", (1, 4)),
            ("/4", (1, 4)),
            ("3/2", (3, 2)),
            ("3/", (3, 2)),
            ("7/4", (7, 4)),
        ] {
            assert_eq!(length(text), Some(expected), "{text}");
        }
        assert_eq!(length("0"), None);
        assert_eq!(length("1/0"), None);
        assert_eq!(length("99999999999999999999"), None);
        assert_eq!(length(&"/".repeat(40)), None);
        assert_eq!(Ratio::split("3/2ab").1, 3);
    }

    #[test]
    fn broken_rhythm_keeps_the_time_of_a_pair() {
        let (a, b) = broken(true, 2);
        assert_eq!((a, b), (Ratio { num: 7, den: 4 }, Ratio { num: 1, den: 4 }));
        let (a, b) = broken(false, 1);
        assert_eq!((a, b), (Ratio { num: 1, den: 2 }, Ratio { num: 3, den: 2 }));
    }

    #[test]
    fn tuplets_default_by_the_table() {
        let q = |p, metre| OpenTuplet::new(p, None, None, metre).q;
        let simple: Vec<_> = (2..=9).map(|p| q(p, Metre::COMMON)).collect();
        let compound: Vec<_> = (2..=9).map(|p| q(p, Metre::new(6, 8))).collect();
        assert_eq!(simple, [3, 2, 3, 2, 2, 2, 3, 2]);
        assert_eq!(compound, [3, 2, 3, 3, 2, 3, 3, 3]);
    }
}
