//! Strum patterns: what the right hand does in a bar.

use serde::{Deserialize, Serialize};

use super::metre::Metre;
use super::time::Ticks;

/// Which way the hand moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Direction {
    Down,
    Up,
}

impl Direction {
    /// The other way.
    pub const fn other(self) -> Self {
        match self {
            Self::Down => Self::Up,
            Self::Up => Self::Down,
        }
    }
}

/// What a stroke sounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Stroke {
    /// The hand passes over the strings without touching them.
    Silent,
    /// A single bass note.
    Bass,
    /// All the strings of the shape.
    Strum,
    /// The strings of the shape, damped at once.
    Chop,
}

/// One place in a pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Slot {
    /// Which way the hand moves here; it follows from the position in the bar.
    pub direction: Direction,
    /// What sounds.
    pub stroke: Stroke,
    /// Played louder.
    pub accent: bool,
}

/// What a player says on a slot while counting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Count {
    /// The number of the beat, from 1; where beats are of three notes or of different lengths, the number of the note
    /// (a jig is counted 1 to 6).
    Number(u8),
    /// Half way to the next number: "and".
    And,
    /// A quarter of the way: "e".
    E,
    /// Three quarters of the way: "a".
    A,
    /// Nothing is said.
    Nothing,
}

/// Which way the hand moves at a place of the bar, whatever is played there: down on each beat, up half way between; in
/// beats of three notes down, up, down. So it agrees with the hand that never stops, and a pickup of an eighth is up in
/// a reel and down in a jig (the trade's rule: direction follows the position in the bar, not the count of notes).
///
/// ```
/// use fourcourse::chart::{Direction, Metre, Ticks, direction_at};
/// assert_eq!(direction_at(Metre::COMMON, Ticks::of(7, 8)), Direction::Up);
/// assert_eq!(direction_at(Metre::new(6, 8), Ticks::of(5, 8)), Direction::Down);
/// ```
pub fn direction_at(metre: Metre, offset: Ticks) -> Direction {
    direction_by(metre, offset, hand_step(metre))
}

/// The same where the hand moves in steps of at most `step`.
pub(super) fn direction_by(metre: Metre, offset: Ticks, step: Ticks) -> Direction {
    let step = step.min(hand_step(metre)).max(Ticks(1));
    let (_, into_beat) = beat_at(metre, offset);
    match into_beat.div_rem(step).0 % 2 {
        0 => Direction::Down,
        _ => Direction::Up,
    }
}

/// The time of one movement of the hand: the counted note where beats are threes or uneven, else an eighth or, where
/// the beat is no longer than that, half a beat.
pub(super) fn hand_step(metre: Metre) -> Ticks {
    let unit = i64::from(metre.unit.max(1));
    if counts_notes(metre) {
        Ticks::of(1, unit)
    } else if metre.count == 0 {
        Ticks::of(1, 8)
    } else {
        Ticks::of(1, (unit * 2).max(8))
    }
}

/// Whether the notes of the metre are counted rather than its beats.
pub(super) fn counts_notes(metre: Metre) -> bool {
    let note = Ticks::of(1, i64::from(metre.unit));
    metre.count > 0 && metre.beats().iter().any(|&beat| beat != note)
}

/// The index of the beat of the bar at an offset and how far into it; bars longer than the metre begin it again.
pub(super) fn beat_at(metre: Metre, offset: Ticks) -> (usize, Ticks) {
    let bar = metre.bar();
    if bar <= Ticks::ZERO {
        let (_, into) = offset.div_rem(Ticks::QUARTER);
        return (0, into);
    }
    let (_, mut left) = offset.div_rem(bar);
    for (i, beat) in metre.beats().into_iter().enumerate() {
        if left < beat {
            return (i, left);
        }
        left -= beat;
    }
    (0, left)
}

/// What is said at a place of the bar while counting.
pub fn count_at(metre: Metre, offset: Ticks) -> Count {
    let bar = if metre.bar() > Ticks::ZERO {
        metre.bar()
    } else {
        Ticks::WHOLE
    };
    let note = if counts_notes(metre) {
        Ticks::of(1, i64::from(metre.unit))
    } else {
        metre.beats().first().copied().unwrap_or(Ticks::QUARTER)
    };
    let (number, into) = offset.div_rem(bar).1.div_rem(note);
    match (into.0 * 4).checked_div(note.0) {
        Some(0) if into.0 == 0 => Count::Number(u8::try_from(number + 1).unwrap_or(u8::MAX)),
        Some(1) if into.0 * 4 == note.0 => Count::E,
        Some(2) if into.0 * 2 == note.0 => Count::And,
        Some(3) if into.0 * 4 == note.0 * 3 => Count::A,
        _ => Count::Nothing,
    }
}

/// A bar of strokes, evenly spaced.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct StrumPattern {
    /// A plain trade name (`boom-chuck`), or what the tune calls its own.
    pub name: String,
    /// The metre it fills.
    pub metre: Metre,
    /// Length of a slot.
    pub step: Ticks,
    /// The strokes of a bar.
    pub slots: Vec<Slot>,
}

impl StrumPattern {
    /// The most slots of a pattern.
    pub const MOST_SLOTS: usize = 64;

    /// A pattern whose hand moves as its position in the bar says.
    pub(super) fn of(name: &str, metre: Metre, step: Ticks, strokes: &[(Stroke, bool)]) -> Self {
        let mut at = Ticks::ZERO;
        let slot = |&(stroke, accent): &(Stroke, bool)| {
            let direction = direction_by(metre, at, step);
            at += step;
            Slot {
                direction,
                stroke,
                accent,
            }
        };
        Self {
            name: name.to_owned(),
            metre,
            step,
            slots: strokes.iter().map(slot).collect(),
        }
    }

    /// The slots that fall into a bar of any length that begins `offset` into the metre (see
    /// [`PlayedBar::offset`](super::PlayedBar::offset)), each with its index in the pattern and its time from the start
    /// of the bar. A short bar has the first slots, a pickup the last, a long bar begins the pattern again.
    pub fn for_bar(
        &self,
        length: Ticks,
        offset: Ticks,
    ) -> impl Iterator<Item = (Ticks, usize, Slot)> + '_ {
        let step = self.step.max(Ticks(1));
        let (before, into) = offset.div_rem(step);
        let first = before + i64::from(into > Ticks::ZERO);
        let most = if self.slots.is_empty() { 0 } else { 4096 }; // far more than any bar asks for
        (first..first.saturating_add(most))
            .map(move |k| (step * k - offset, k))
            .take_while(move |&(at, _)| at < length)
            .filter_map(move |(at, k)| {
                let index = usize::try_from(k).ok()? % self.slots.len();
                Some((at, index, *self.slots.get(index)?))
            })
    }

    /// What is said on each slot while counting.
    pub fn counts(&self) -> impl Iterator<Item = Count> + '_ {
        let at = |i: usize| self.step * i64::try_from(i).unwrap_or(i64::MAX);
        (0..self.slots.len()).map(move |i| count_at(self.metre, at(i)))
    }

    /// Whether it can be played in another metre: the bars are as long and their beats fall alike.
    pub fn fits(&self, metre: Metre) -> bool {
        self.metre.bar() == metre.bar() && counts_notes(self.metre) == counts_notes(metre)
    }
}
