//! Tonight's list and what was played, version 1.

use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

use crate::desk::{self, TuneId};

use super::music::{Key, Name, key, name, restore_key, restore_name};
use super::optional;

/// A tune of the list, and the tonic that is wished for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Planned(u64, Option<Name>);

impl From<&desk::Planned> for Planned {
    fn from(planned: &desk::Planned) -> Self {
        Self(planned.tune.0, planned.key.map(name))
    }
}

impl Planned {
    pub(in crate::store) fn restore(self) -> Option<desk::Planned> {
        Some(desk::Planned {
            tune: TuneId(self.0),
            key: optional(self.1, restore_name)?,
        })
    }
}

/// A tune, the key it was played in, and the day, counted from the first day of year 1 of the Gregorian calendar at 1.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Played(u64, Key, i32);

impl From<&desk::Played> for Played {
    fn from(played: &desk::Played) -> Self {
        let day = played.day.num_days_from_ce();
        Self(played.tune.0, key(played.key), day)
    }
}

impl Played {
    pub(in crate::store) fn restore(self) -> Option<desk::Played> {
        Some(desk::Played {
            tune: TuneId(self.0),
            key: restore_key(self.1)?,
            day: NaiveDate::from_num_days_from_ce_opt(self.2)?,
        })
    }
}
