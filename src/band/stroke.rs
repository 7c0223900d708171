//! One movement of the right hand over the strings.

use crate::chart::{Direction, Ticks};

use super::event::{Event, Player, Sound, Touch};
use super::voicings::Tone;

/// The longest that the pick is on its way over all the strings, in ms: within what [`Event::after_ms`] may be, with room
/// for what a player is late.
const MOST_MS: f32 = 50.0;

/// A stroke and how it is made.
#[derive(Debug, Clone, Copy)]
pub(super) struct Strum {
    pub(super) player: Player,
    pub(super) at: Ticks,
    /// Down starts with the lowest course.
    pub(super) direction: Direction,
    pub(super) force: f32,
    /// One string slowly after the other.
    pub(super) rolled: bool,
    pub(super) rings: Ticks,
    pub(super) touch: Touch,
}

impl Strum {
    /// From course to course in ms: 3 in the hardest stroke, 9 in the softest, 10 in a roll (from memory).
    fn ms_a_course(self) -> f32 {
        if self.rolled {
            10.0
        } else {
            3.0 + 6.0 * (1.0 - self.force)
        }
    }
}

/// A stroke over some strings, given low to high.
pub(super) fn strum(strings: &[Tone], stroke: Strum) -> impl Iterator<Item = Event> + '_ {
    let count = strings.len();
    let step = stroke.ms_a_course();
    (0..count).map(move |i| {
        let (course, midi) = match stroke.direction {
            Direction::Down => strings[i],
            Direction::Up => strings[count - 1 - i],
        };
        let steps = f32::from(u8::try_from(i).unwrap_or(u8::MAX));
        Event {
            at: stroke.at,
            after_ms: (steps * step).min(MOST_MS + steps),
            player: stroke.player,
            // The pick slows down on its way.
            force: stroke.force * (1.0 - 0.04 * steps),
            sound: Sound::String {
                course,
                midi,
                rings: stroke.rings,
                touch: stroke.touch,
            },
        }
    })
}
