//! What one plays alone against: a metronome, drones, and the strings of an instrument to tune by.

use crate::chart::{Metre, Ticks};
use crate::frets::{Capo, Instrument};
use crate::theory::Key;

use super::click::count_in;
use super::command::Tone;
use super::drones;
use super::event::{Event, Player, Sound, Touch};
use super::loudness::Load;
use super::score::Score;

/// How long drones ring until they are struck again.
const AGAIN: Ticks = Ticks::WHOLE;

impl Score {
    /// A bar of clicks on the felt beats, the 1 marked. It is meant to be played with no end.
    pub fn metronome(metre: Metre) -> Self {
        let bar = count_in(metre, Ticks::ZERO);
        Self::round(bar.events, bar.length)
    }

    /// The tonic and the fifth of a key, struck anew at each bar of four quarters. It is meant to be played with no end.
    pub fn drones(key: Key) -> Self {
        let strings = drones::strings(key).into_iter();
        let events = strings.map(|(course, midi)| Event {
            at: Ticks::ZERO,
            after_ms: f32::from(course) * 15.0,
            player: Player::Drones,
            force: 0.45,
            sound: Sound::String {
                course,
                midi,
                rings: AGAIN * 2,
                touch: Touch::Ring,
            },
        });
        Self::round(events.collect(), AGAIN)
    }

    fn round(events: Vec<Event>, length: Ticks) -> Self {
        Self {
            load: Load::of(&events, length),
            last: events.clone(),
            events,
            length,
            last_length: length,
            tag: None,
        }
    }
}

/// What each course of an instrument sounds when it is in tune, the course nearest to the player's face first. A bass and
/// a guitar sound as themselves, everything else as a mandolin.
pub fn tones(instrument: &Instrument, capo: Capo) -> Vec<Tone> {
    let player = match instrument.id {
        "bass" => Player::Bass,
        "guitar" | "tenor-guitar" => Player::Guitar,
        _ => Player::Melody,
    };
    let courses = 0..instrument.courses.len();
    let tone = |course| {
        let midi = instrument.sound(course, 0, capo)?.midi();
        Some(Tone {
            player,
            course: u8::try_from(course).ok()?,
            midi: u8::try_from(midi).ok()?,
        })
    };
    courses.filter_map(tone).collect()
}
