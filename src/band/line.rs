//! A line of strokes: what one player does in a bar, as marks that share it evenly.

use crate::chart::{Direction, Stroke, StrumPattern, Ticks};

/// What a stroke sounds. Notes of the chord are named; the player's hand finds them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Hit {
    /// The root, or the bass after a slash.
    Root,
    /// The fifth of the chord.
    Fifth,
    /// The third of the chord.
    Third,
    /// Of root and fifth the one that was not played last.
    Other,
    /// A note on the way to the next chord.
    Walk,
    /// All the strings of the shape.
    Strum,
    /// The upper strings of the shape, let go again.
    Chuck,
    /// All the strings, one slowly after the other, ringing on.
    Roll,
    /// The strings of the shape, damped at once.
    Chop,
}

impl Hit {
    /// Whether it is a single bass note.
    pub(super) const fn is_bass(self) -> bool {
        matches!(
            self,
            Self::Root | Self::Fifth | Self::Third | Self::Other | Self::Walk
        )
    }
}

/// One stroke of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Mark {
    pub(super) hit: Hit,
    /// Which way the hand moves over the strings.
    pub(super) direction: Direction,
    /// Played louder.
    pub(super) accent: bool,
}

impl Mark {
    pub(super) const fn new(hit: Hit) -> Self {
        Self {
            hit,
            direction: Direction::Down,
            accent: false,
        }
    }
}

/// What one player does in a bar.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Line {
    step: Ticks,
    marks: Vec<Option<Mark>>,
}

/// The most strokes of a line in one bar: far more than any bar that can be counted asks for.
const MOST_STROKES: usize = 512;

impl Line {
    pub(super) fn new(step: Ticks, marks: Vec<Option<Mark>>) -> Self {
        Self { step, marks }
    }

    /// Reads marks that share a bar evenly; empty for a player who is silent.
    ///
    /// | mark | stroke |
    /// |---|---|
    /// | `1` `3` `5` | the root, third, fifth as a bass note |
    /// | `a` | root and fifth in turn |
    /// | `w` | a note on the way to the next chord |
    /// | `D` `U` | all strings, down or up |
    /// | `d` `u` | the upper strings, down or up, let go again |
    /// | `R` | all strings, rolled slowly |
    /// | `x` | damped at once |
    /// | `.` | nothing |
    /// | `>` | the next stroke is accented |
    ///
    /// Spaces are for the eye.
    pub(super) fn read(text: &str, bar: Ticks) -> Self {
        let mut marks = Vec::new();
        let mut accent = false;
        for letter in text.chars() {
            let hit = match letter {
                '1' => Some(Hit::Root),
                '3' => Some(Hit::Third),
                '5' => Some(Hit::Fifth),
                'a' => Some(Hit::Other),
                'w' => Some(Hit::Walk),
                'D' | 'U' => Some(Hit::Strum),
                'd' | 'u' => Some(Hit::Chuck),
                'R' => Some(Hit::Roll),
                'x' => Some(Hit::Chop),
                '.' => None,
                '>' => {
                    accent = true;
                    continue;
                }
                _ => continue,
            };
            let direction = if matches!(letter, 'U' | 'u') {
                Direction::Up
            } else {
                Direction::Down
            };
            marks.push(hit.map(|hit| Mark {
                hit,
                direction,
                accent,
            }));
            accent = false;
        }
        let slots = i64::try_from(marks.len()).unwrap_or(1).max(1);
        Self::new(Ticks(bar.0 / slots), marks)
    }

    /// The strokes of a strum pattern; its single bass notes take root and fifth in turn.
    pub(super) fn of_strum(pattern: &StrumPattern) -> Self {
        let mark = |slot: &crate::chart::Slot| {
            let hit = match slot.stroke {
                Stroke::Silent => return None,
                Stroke::Bass => Hit::Other,
                Stroke::Strum => Hit::Strum,
                Stroke::Chop => Hit::Chop,
            };
            Some(Mark {
                hit,
                direction: slot.direction,
                accent: slot.accent,
            })
        };
        Self::new(pattern.step, pattern.slots.iter().map(mark).collect())
    }

    /// Whether single bass notes are among its strokes.
    pub(super) fn has_bass(&self) -> bool {
        self.marks.iter().flatten().any(|mark| mark.hit.is_bass())
    }

    /// The strokes that fall into a bar of any length that begins `offset` into the metre, with their times from the
    /// start of the bar: a short bar has the first ones, a pickup the last, a long bar begins the line again.
    pub(super) fn in_bar(
        &self,
        length: Ticks,
        offset: Ticks,
    ) -> impl Iterator<Item = (Ticks, Mark)> + '_ {
        let step = self.step.max(Ticks(1));
        let (before, into) = offset.div_rem(step);
        let first = before + i64::from(into > Ticks::ZERO);
        let most = if self.marks.is_empty() {
            0
        } else {
            i64::try_from(MOST_STROKES).unwrap_or(0)
        };
        (first..first.saturating_add(most))
            .map(move |k| (step * k - offset, k))
            .take_while(move |&(at, _)| at < length)
            .filter_map(|(at, k)| {
                let slots = i64::try_from(self.marks.len()).ok()?;
                let place = usize::try_from(k.rem_euclid(slots)).ok()?;
                Some((at, self.marks[place]?))
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn times(line: &Line, length: Ticks, offset: Ticks) -> Vec<i64> {
        let strokes = line.in_bar(length, offset);
        strokes
            .map(|(at, _)| at.div_rem(Ticks::of(1, 8)).0)
            .collect()
    }

    #[test]
    fn bars_of_any_length_are_filled() {
        let line = Line::read("1.d. 5.d.", Ticks::WHOLE);
        assert_eq!(times(&line, Ticks::WHOLE, Ticks::ZERO), [0, 2, 4, 6]);
        assert_eq!(times(&line, Ticks::of(2, 4), Ticks::ZERO), [0, 2]);
        assert_eq!(
            times(&line, Ticks::of(6, 4), Ticks::ZERO),
            [0, 2, 4, 6, 8, 10]
        );
        assert_eq!(times(&line, Ticks::of(1, 4), Ticks::of(3, 4)), [0]);
        assert!(times(&line, Ticks::of(1, 8), Ticks::of(7, 8)).is_empty());
    }

    #[test]
    fn a_bar_that_never_ends_has_an_end() {
        let line = Line::read("1", Ticks(1));
        let endless = line.in_bar(Ticks(i64::MAX), Ticks::ZERO).count();
        assert_eq!(endless, MOST_STROKES);
    }
}
