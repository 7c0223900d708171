//! Tonight's list as it is seen.

use chrono::NaiveDate;

use crate::circle::{Retuning, least_retuning, retuning};

use super::super::cards::key_name;
use super::super::finder::{FinderView, LastPlayed, Shelf, find, last_played};
use super::super::settings::Settings;
use super::super::songbook::{Songbook, TuneId};
use super::{MOST_TUNES, Planned, Tonight};

/// Most evenings that are told of.
const EVENINGS: usize = 20;

/// What can be undone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Undo {
    /// This tune went off the list.
    Removed(String),
    /// The list was put in order.
    Reordered,
}

/// A tune of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TonightRow {
    /// Its place in the songbook.
    pub id: TuneId,
    /// Its title.
    pub title: String,
    /// Its rhythm by id, or the tune's own word.
    pub rhythm: String,
    /// The key it is to be played in, in the player's names.
    pub key: String,
    /// Its mode by id.
    pub mode: String,
    /// Whether that is another key than it is written in.
    pub moved: bool,
    /// When it was played last.
    pub last: Option<LastPlayed>,
    /// Whether it is on the stand.
    pub open: bool,
    /// Whether one goes on with it.
    pub next: bool,
}

/// What another order of the list would save.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Saving {
    /// What the list takes now.
    pub now: Retuning,
    /// What it takes by the keys.
    pub then: Retuning,
}

/// What was played on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Evening {
    /// The day.
    pub day: NaiveDate,
    /// Days ago; 0 is today.
    pub days: u32,
    /// Title, and key with its mode, in the order of playing.
    pub tunes: Vec<(String, (String, String))>,
}

/// The tune that comes next on the stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NextTune {
    /// Its title.
    pub title: String,
    /// The key it is to be played in, in the player's names.
    pub key: String,
    /// Its mode by id.
    pub mode: String,
}

/// The view of tonight's list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TonightView {
    /// The list.
    pub rows: Vec<TonightRow>,
    /// Whether another tune finds room.
    pub room: bool,
    /// What can be undone.
    pub undo: Option<Undo>,
    /// What the order by keys would save; `None` where it saves nothing.
    pub saving: Option<Saving>,
    /// Evenings, the last one first.
    pub evenings: Vec<Evening>,
    /// Tunes to add.
    pub finder: FinderView,
}

impl Tonight {
    /// The view. `open` is the tune on the stand.
    pub(in crate::desk) fn view(&self, open: Option<TuneId>, shelf: &Shelf<'_>) -> TonightView {
        let (songbook, settings) = (shelf.songbook, shelf.settings);
        let today = songbook.today();
        let next = self.go_on(open, today).and_then(|place| self.at(place));
        let row = |&planned: &Planned| {
            let entry = self.entry(planned.tune, songbook)?;
            let (key, mode) = key_name(self.key(planned, songbook)?, settings);
            Some(TonightRow {
                id: planned.tune,
                title: entry.titles.first().cloned().unwrap_or_default(),
                rhythm: entry.rhythm.clone(),
                key,
                mode,
                moved: planned.key.is_some(),
                last: last_played(self.last(planned.tune), today, settings),
                open: open == Some(planned.tune),
                next: next.is_some_and(|next| next.tune == planned.tune),
            })
        };
        TonightView {
            rows: self.planned.iter().filter_map(row).collect(),
            room: self.planned.len() < MOST_TUNES,
            undo: self.undo(),
            saving: self.saving(shelf),
            evenings: self.evenings(songbook, settings, today),
            finder: find(&self.finding, shelf),
        }
    }

    fn saving(&self, shelf: &Shelf<'_>) -> Option<Saving> {
        let keys = self.keys(shelf.songbook);
        let ordered = least_retuning(&keys, shelf.seats);
        let ordered: Vec<_> = ordered.into_iter().map(|place| keys[place]).collect();
        let saving = Saving {
            now: retuning(&keys, shelf.seats),
            then: retuning(&ordered, shelf.seats),
        };
        (saving.now != saving.then).then_some(saving)
    }

    fn evenings(
        &self,
        songbook: &dyn Songbook,
        settings: &Settings,
        today: NaiveDate,
    ) -> Vec<Evening> {
        let mut evenings: Vec<Evening> = Vec::new();
        for played in self.log.iter().rev() {
            let entry = self.entry(played.tune, songbook);
            let Some(title) = entry.and_then(|entry| entry.titles.first()) else {
                continue;
            };
            let tune = (title.clone(), key_name(played.key, settings));
            let full = evenings.len() == EVENINGS;
            match evenings.last_mut() {
                Some(evening) if evening.day == played.day => evening.tunes.push(tune),
                _ if full => break,
                _ => evenings.push(Evening {
                    day: played.day,
                    days: u32::try_from((today - played.day).num_days()).unwrap_or(0),
                    tunes: vec![tune],
                }),
            }
        }
        for evening in &mut evenings {
            evening.tunes.reverse();
        }
        evenings
    }

    /// The next tune as it is told.
    pub(in crate::desk) fn next_tune(
        &self,
        open: TuneId,
        songbook: &dyn Songbook,
        settings: &Settings,
    ) -> Option<NextTune> {
        if self.planned.is_empty() {
            return None; // which day it is need not be asked for at each frame
        }
        let planned = self.next(open, songbook.today())?;
        let entry = self.entry(planned.tune, songbook)?;
        let (key, mode) = key_name(self.key(planned, songbook)?, settings);
        Some(NextTune {
            title: entry.titles.first().cloned().unwrap_or_default(),
            key,
            mode,
        })
    }
}
