//! Finding a tune from within another room: by words, by what was not played lately, by what everybody can play.

use chrono::{Days, NaiveDate};

use crate::circle::{Everyone, Seat, longest_unplayed};

use super::cards::key_name;
use super::settings::Settings;
use super::songbook::{Songbook, TuneId};
use super::tonight::{Last, Tonight};

/// Most tunes that are shown at once; words narrow down.
const MOST_FOUND: usize = 60;

/// What is looked for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Finding {
    /// Words that a title or another name holds.
    pub words: String,
    /// Only tunes that were not played for so many days.
    pub unplayed: Option<u16>,
    /// Only tunes for which everybody in the circle knows the shapes.
    pub everyone: bool,
}

/// A tune that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Its place in the songbook.
    pub id: TuneId,
    /// Its title.
    pub title: String,
    /// Its rhythm by id, or the tune's own word.
    pub rhythm: String,
    /// The key it is written in, in the player's names.
    pub key: String,
    /// Its mode by id.
    pub mode: String,
    /// When it was played last, days ago, and in which key.
    pub last: Option<LastPlayed>,
    /// Whether it is on tonight's list.
    pub listed: bool,
}

/// When a tune was played last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LastPlayed {
    /// Days ago; 0 is today.
    pub days: u32,
    /// The key it was played in, in the player's names.
    pub key: String,
    /// Its mode by id.
    pub mode: String,
}

/// Tunes that were found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FinderView {
    /// What is looked for.
    pub finding: Finding,
    /// The first tunes that fit.
    pub rows: Vec<Found>,
    /// How many fit in all.
    pub count: usize,
}

/// What a finder looks through.
pub(super) struct Shelf<'a> {
    pub(super) songbook: &'a dyn Songbook,
    pub(super) settings: &'a Settings,
    pub(super) seats: &'a [Seat],
    pub(super) tonight: &'a Tonight,
}

/// The tunes that fit, best match first; of those not played lately the ones that have waited longest first.
pub(super) fn find(finding: &Finding, shelf: &Shelf<'_>) -> FinderView {
    let entries = shelf.songbook.entries();
    let today = shelf.songbook.today();
    let mut found = shelf.songbook.search(&finding.words);
    if finding.everyone {
        let everyone = Everyone::of(shelf.seats);
        found.retain(|&at| everyone.knows(&entries[at].chords));
    }
    if let Some(days) = finding.unplayed {
        let day = |&at: &usize| shelf.tonight.last(entries[at].id).map(|last| last.day);
        let last: Vec<Option<NaiveDate>> = found.iter().map(day).collect();
        let since = today.checked_sub_days(Days::new(days.into()));
        let waiting = longest_unplayed(&last, since.unwrap_or(NaiveDate::MIN));
        found = waiting.into_iter().map(|place| found[place]).collect();
    }
    let row = |&at: &usize| {
        let entry = &entries[at];
        let (key, mode) = key_name(entry.key, shelf.settings);
        Found {
            id: entry.id,
            title: entry.titles.first().cloned().unwrap_or_default(),
            rhythm: entry.rhythm.clone(),
            key,
            mode,
            last: last_played(shelf.tonight.last(entry.id), today, shelf.settings),
            listed: shelf.tonight.place(entry.id).is_some(),
        }
    };
    FinderView {
        rows: found.iter().take(MOST_FOUND).map(row).collect(),
        count: found.len(),
        finding: finding.clone(),
    }
}

/// When a tune was played last, as it is told.
pub(super) fn last_played(
    last: Option<&Last>,
    today: NaiveDate,
    settings: &Settings,
) -> Option<LastPlayed> {
    let last = last?;
    let (key, mode) = key_name(last.key, settings);
    Some(LastPlayed {
        days: u32::try_from((today - last.day).num_days()).unwrap_or(0),
        key,
        mode,
    })
}
