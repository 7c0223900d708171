//! What has been practised, version 1.

use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use crate::chart::Version;
use crate::desk::{self, Stretch, TuneId};

use super::music::{Name, name, place, restore_name};

/// Versions of a tune in the order of version 1.
const VERSIONS: [Version; 4] = [
    Version::Plain,
    Version::KeyDrones,
    Version::ChordDrones,
    Version::DoubleStops,
];

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Practice {
    /// Days from the first of January of the year 1, which is day 1.
    day: i32,
    tune: u64,
    /// The phrase; none is the whole tune.
    phrase: Option<u16>,
    version: u8,
    key: Name,
    bpm: u16,
    passes: u16,
}

impl From<&desk::Practice> for Practice {
    fn from(practice: &desk::Practice) -> Self {
        Self {
            day: practice.day.num_days_from_ce(),
            tune: practice.tune.0,
            phrase: match practice.stretch {
                Stretch::Phrase(phrase) => Some(phrase),
                Stretch::Whole => None,
            },
            version: place(&VERSIONS, &practice.version),
            key: name(practice.key),
            bpm: practice.bpm,
            passes: practice.passes,
        }
    }
}

impl Practice {
    pub(in crate::store) fn restore(self) -> Option<desk::Practice> {
        Some(desk::Practice {
            day: NaiveDate::from_num_days_from_ce_opt(self.day)?,
            tune: TuneId(self.tune),
            stretch: self.phrase.map_or(Stretch::Whole, Stretch::Phrase),
            version: *VERSIONS.get(usize::from(self.version))?,
            key: restore_name(self.key)?,
            bpm: self.bpm,
            passes: self.passes,
        })
    }
}
