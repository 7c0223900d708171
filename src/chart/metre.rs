//! Metres and the beats a player feels in them.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::time::Ticks;

/// How many of which note fill a bar, and how they are grouped into beats.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Metre {
    /// Notes in a bar; 0 is free time (ABC's `M:none`).
    pub count: u8,
    /// Which note is counted: 1, 2, 4, 8, 16 or 32, a part of a whole note.
    pub unit: u8,
    /// Notes in each felt beat where the tune says so, such as 3 2 2; all 0 leaves it to the rule.
    pub groups: [u8; 6],
}

impl Metre {
    /// Four quarters, written C.
    pub const COMMON: Self = Self::new(4, 4);
    /// Two halves, written C with a stroke.
    pub const CUT: Self = Self::new(2, 2);
    /// No bars are counted.
    pub const FREE: Self = Self::new(0, 4);

    /// A metre with its usual beats.
    pub const fn new(count: u8, unit: u8) -> Self {
        Self {
            count,
            unit,
            groups: [0; 6],
        }
    }

    /// Length of a full bar; zero in free time.
    pub const fn bar(self) -> Ticks {
        Ticks::of(self.count as i64, self.unit as i64)
    }

    /// Length of a full bar; in free time, which has none, a whole note.
    pub const fn bar_or_whole(self) -> Ticks {
        if self.count == 0 {
            Ticks::WHOLE
        } else {
            self.bar()
        }
    }

    /// Whether the beat is a dotted note: 6/8, 9/8, 12/8, 6/4 and so on.
    pub const fn is_compound(self) -> bool {
        self.count > 3 && self.count.is_multiple_of(3) && self.unit > 2
    }

    /// The lengths of the felt beats of a full bar. In compound metres three notes make a beat; 5, 7, 8... eighths that
    /// do not say how they are grouped are felt as threes and twos, the threes first (common practice).
    pub fn beats(self) -> Vec<Ticks> {
        let note = Ticks::of(1, i64::from(self.unit));
        if self.groups[0] > 0 {
            return self
                .groups
                .iter()
                .filter(|&&group| group > 0)
                .map(|&group| note * i64::from(group))
                .collect();
        }
        if self.is_compound() {
            return vec![note * 3; usize::from(self.count / 3)];
        }
        if self.unit >= 8 && self.count > 4 {
            let (mut left, mut beats) = (self.count, Vec::new());
            while left > 0 {
                let group = if left % 2 == 1 || left == 3 {
                    3.min(left)
                } else {
                    2
                };
                beats.push(note * i64::from(group));
                left -= group;
            }
            return beats;
        }
        vec![note; usize::from(self.count)]
    }

    /// How many felt beats pass before a moment of the bar, with fractions; a bar longer than the metre begins it
    /// again. In free time a quarter note is a beat.
    ///
    /// ```
    /// use fourcourse::chart::{Metre, Ticks};
    /// assert_eq!(Metre::COMMON.beats_before(Ticks::of(7, 8)), 3.5); // on the "and" of four
    /// assert_eq!(Metre::new(6, 8).beats_before(Ticks::of(3, 8)), 1.0);
    /// ```
    pub fn beats_before(self, offset: Ticks) -> f64 {
        let bar = self.bar();
        if bar <= Ticks::ZERO {
            return offset.quarters();
        }
        let beats = self.beats();
        let (times, mut left) = offset.div_rem(bar);
        #[allow(clippy::cast_precision_loss)] // far fewer than 2^53
        let mut count = (times * beats.len().cast_signed() as i64) as f64;
        for beat in beats {
            if left < beat {
                return count + left.quarters() / beat.quarters();
            }
            left -= beat;
            count += 1.0;
        }
        count
    }
}

impl fmt::Display for Metre {
    /// `4/4`, `2+2+3/8`, `none`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.count == 0 {
            return f.write_str("none");
        }
        if self.groups[0] > 0 {
            let groups: Vec<_> = self
                .groups
                .iter()
                .filter(|&&g| g > 0)
                .map(u8::to_string)
                .collect();
            return write!(f, "{}/{}", groups.join("+"), self.unit);
        }
        write!(f, "{}/{}", self.count, self.unit)
    }
}
