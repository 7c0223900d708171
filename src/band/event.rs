//! Who plays in the band, and what one hand does once.

use crate::chart::Ticks;

/// A player of the band.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Player {
    /// The tune itself, on a mandolin.
    Melody,
    /// Short damped chords on the off-beats, on a mandolin.
    Chop,
    /// Bass notes and chords in turn, or a strum, on a guitar.
    Guitar,
    /// An upright bass.
    Bass,
    /// The key's tonic and fifth, ringing on.
    Drones,
    /// The count, and the beat where it is wanted.
    Click,
}

impl Player {
    /// All of them, in the order of a mixer.
    pub const ALL: [Self; 6] = [
        Self::Melody,
        Self::Chop,
        Self::Guitar,
        Self::Bass,
        Self::Drones,
        Self::Click,
    ];

    /// The name in commands and in the Fluent files (`player-chop`).
    pub const fn id(self) -> &'static str {
        match self {
            Self::Melody => "melody",
            Self::Chop => "chop",
            Self::Guitar => "guitar",
            Self::Bass => "bass",
            Self::Drones => "drones",
            Self::Click => "click",
        }
    }
}

/// What the hands do after a string was struck.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Touch {
    /// It rings until `Sound::String::rings` is over.
    Ring,
    /// The fretting hand lets go at once: a chop.
    Chop,
    /// Struck while damped: a scratch with hardly any pitch.
    Mute,
}

/// What sounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sound {
    /// A course is struck; whatever rang on it stops.
    String {
        /// The course of the player's instrument, from 0, low to high.
        course: u8,
        /// The sounding pitch as a MIDI note number, 69 being the A of the tuning fork.
        midi: u8,
        /// How long it may ring before the hand damps it.
        rings: Ticks,
        /// What the hands do.
        touch: Touch,
    },
    /// A tick of the metronome.
    Click {
        /// The 1 of a bar.
        first: bool,
    },
}

/// One thing that one hand does once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Event {
    /// When, from the start of a time through.
    pub at: Ticks,
    /// How much later than that, in milliseconds (0 to 60): a pick needs time to cross the courses, whatever the tempo.
    pub after_ms: f32,
    /// Who.
    pub player: Player,
    /// How hard, from 0 to 1.
    pub force: f32,
    /// What.
    pub sound: Sound,
}
