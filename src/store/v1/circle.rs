//! Seats of the circle, version 1.

use serde::{Deserialize, Serialize};

use crate::circle::{CapoHabit, VoiceType};
use crate::desk::{Knows, Plays, SeatSettings, Sings};
use crate::theory::Reads;

use super::music::place;
use super::optional;

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Seat {
    name: String,
    plays: Brings,
    tuning: Vec<i8>,
    capo: Option<(u8, u8)>,
    left_handed: bool,
    knows: u8,
    sings: Option<Voice>,
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
enum Brings {
    Instrument(String),
    Page(u8),
    Voice,
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
enum Voice {
    Type(u8),
    Notes(u8, u8),
}

/// What there is to choose from, in the order of version 1.
const READS: [Reads; 4] = [Reads::Concert, Reads::BFlat, Reads::EFlat, Reads::F];
const KNOWS: [Knows; 4] = [Knows::All, Knows::First, Knows::Four, Knows::Marked];
const VOICES: [VoiceType; 7] = [
    VoiceType::Group,
    VoiceType::Soprano,
    VoiceType::Mezzo,
    VoiceType::Alto,
    VoiceType::Tenor,
    VoiceType::Baritone,
    VoiceType::Bass,
];

fn habit(habit: CapoHabit) -> (u8, u8) {
    match habit {
        CapoHabit::Never => (0, 0),
        CapoHabit::UpTo(most) => (1, most),
        CapoHabit::Always(fret) => (2, fret),
    }
}

fn restore_habit((kind, fret): (u8, u8)) -> Option<CapoHabit> {
    match kind {
        0 => Some(CapoHabit::Never),
        1 => Some(CapoHabit::UpTo(fret)),
        2 => Some(CapoHabit::Always(fret)),
        _ => None,
    }
}

impl From<&SeatSettings> for Seat {
    fn from(seat: &SeatSettings) -> Self {
        Self {
            name: seat.name.clone(),
            plays: match &seat.plays {
                Plays::Instrument(id) => Brings::Instrument(id.clone()),
                Plays::Page(reads) => Brings::Page(place(&READS, reads)),
                Plays::Voice => Brings::Voice,
            },
            tuning: seat.tuning.clone(),
            capo: seat.capo.map(habit),
            left_handed: seat.left_handed,
            knows: place(&KNOWS, &seat.knows),
            sings: seat.sings.map(|sings| match sings {
                Sings::Type(voice) => Voice::Type(place(&VOICES, &voice)),
                Sings::Notes(low, high) => Voice::Notes(low, high),
            }),
        }
    }
}

impl Seat {
    pub(in crate::store) fn restore(self) -> Option<SeatSettings> {
        let sings = |voice| match voice {
            Voice::Type(voice) => VOICES.get(usize::from(voice)).copied().map(Sings::Type),
            Voice::Notes(low, high) => {
                (low < high && high < 128).then_some(Sings::Notes(low, high))
            }
        };
        Some(SeatSettings {
            name: self.name,
            plays: match self.plays {
                Brings::Instrument(id) => Plays::Instrument(id),
                Brings::Page(reads) => Plays::Page(*READS.get(usize::from(reads))?),
                Brings::Voice => Plays::Voice,
            },
            tuning: self.tuning,
            capo: optional(self.capo, restore_habit)?,
            left_handed: self.left_handed,
            knows: *KNOWS.get(usize::from(self.knows))?,
            sings: optional(self.sings, sings)?,
        })
    }
}
