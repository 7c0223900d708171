//! A seat in the circle.

use crate::frets::{Instrument, Setup, setups};
use crate::theory::{Key, Reads};

use super::known::Known;
use super::voice::Compass;

/// What a player does with a capo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CapoHabit {
    /// Plays without.
    #[default]
    Never,
    /// Puts it anywhere up to this fret.
    UpTo(u8),
    /// Leaves it on this fret.
    Always(u8),
}

impl CapoHabit {
    /// The frets that come into question, 0 being none, from the nut up; at most 11.
    pub fn frets(self) -> std::ops::RangeInclusive<u8> {
        match self {
            Self::Never => 0..=0,
            Self::UpTo(most) => 0..=most.min(11),
            Self::Always(fret) => fret.min(11)..=fret.min(11),
        }
    }
}

/// Somebody in the circle: an instrument, a voice, or both.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Seat {
    /// The instrument with its tuning, where it has a fingerboard.
    pub instrument: Option<Instrument>,
    /// What is done with a capo.
    pub capo: CapoHabit,
    /// In which pitch the player reads.
    pub reads: Reads,
    /// Whether shapes are drawn as a mirror.
    pub left_handed: bool,
    /// The shapes that the hand finds, by the chord that they are without a capo; `None` where it finds all.
    pub known: Option<Known>,
    /// What the player can sing, where it is a singer.
    pub sings: Option<Compass>,
}

impl Seat {
    /// A player of an instrument who knows all shapes. A guitar is given a capo up to the fifth fret, other instruments
    /// none (common practice).
    ///
    /// ```
    /// use fourcourse::{circle::{CapoHabit, Seat}, frets::Instrument};
    /// assert_eq!(Seat::playing(Instrument::by_id("guitar").unwrap()).capo, CapoHabit::UpTo(5));
    /// ```
    pub fn playing(instrument: Instrument) -> Self {
        let capo = if instrument.id == "guitar" {
            CapoHabit::UpTo(5)
        } else {
            CapoHabit::Never
        };
        Self {
            instrument: Some(instrument),
            capo,
            ..Self::default()
        }
    }

    /// Somebody who sings and plays nothing.
    pub fn singing(compass: Compass) -> Self {
        Self {
            sings: Some(compass),
            ..Self::default()
        }
    }

    /// Somebody who plays the melody from a page in another pitch.
    pub fn reading(reads: Reads) -> Self {
        Self {
            reads,
            ..Self::default()
        }
    }

    /// The instrument as it is set up for a key, what is then done with the capo, and the setup where there is one:
    /// whoever tunes anew for a key leaves the capo where the setup has it.
    pub(super) fn set_up(&self, key: Key) -> Option<(Instrument, CapoHabit, Option<Setup>)> {
        let instrument = self.instrument.as_ref()?;
        let setup = setups(instrument, key).into_iter().next();
        let tuned = setup.map_or_else(|| instrument.clone(), |setup| setup.tuned(instrument));
        let habit = setup.map_or(self.capo, |setup| match setup.capo.fret {
            0 => CapoHabit::Never,
            fret => CapoHabit::Always(fret),
        });
        Some((tuned, habit, setup))
    }
}
