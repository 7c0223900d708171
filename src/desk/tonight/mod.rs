//! Tonight's list, and what was played when and in what key.

mod view;

use std::collections::HashMap;

use chrono::NaiveDate;

use crate::circle::{Seat, least_retuning};
use crate::theory::{Key, NoteName};

use super::finder::Finding;
use super::songbook::{Entry, Songbook, TuneId};

pub use view::{Evening, NextTune, Saving, TonightRow, TonightView, Undo};

/// Most tunes of a list.
pub const MOST_TUNES: usize = 200;

/// A tune of tonight's list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Planned {
    /// Its place in the songbook.
    pub tune: TuneId,
    /// The tonic that it is to be played on; `None` is as it is written.
    pub key: Option<NoteName>,
}

/// A tune that was played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Played {
    /// Its place in the songbook.
    pub tune: TuneId,
    /// The key it was played in.
    pub key: Key,
    /// The day.
    pub day: NaiveDate,
}

/// When a tune was played last, and in which key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Last {
    pub(super) day: NaiveDate,
    pub(super) key: Key,
}

/// A wish about tonight's list. Tunes are named by their place in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TonightAsk {
    /// A tune comes at the end of the list, or off it.
    List(TuneId, bool),
    /// The tune on the stand comes on the list, or off it.
    ListOpen(bool),
    /// A tune goes off the list.
    Remove(usize),
    /// A tune moves to another place.
    Move(usize, usize),
    /// The last removal or reordering never was.
    Undo,
    /// A tune goes on the stand, in its wished key.
    Open(usize),
    /// The next tune of the list goes on the stand.
    Next,
    /// A tune is to be played so many semitones higher.
    KeyUp(usize, i32),
    /// In the order that saves retuning.
    ByKeys,
    /// Words of a tune to add.
    Find(String),
    /// Only tunes that were not played for so many days.
    Unplayed(Option<u16>),
    /// Only tunes for which everybody knows the shapes.
    Everyone(bool),
}

/// What the last removal or reordering took away.
#[derive(Debug)]
enum Before {
    /// The title of a tune that went off the list, its place, and what was planned there.
    Removed(String, usize, Planned),
    /// The list as it was, and as it was put in order.
    Reordered(Vec<Planned>, Vec<Planned>),
}

impl Before {
    /// Whether it can still be taken back: nothing that came after it may be lost with it.
    fn fits(&self, list: &[Planned]) -> bool {
        match self {
            Self::Removed(_, _, gone) => {
                list.len() < MOST_TUNES && list.iter().all(|planned| planned.tune != gone.tune)
            }
            Self::Reordered(_, ordered) => ordered == list,
        }
    }
}

#[derive(Debug, Default)]
pub(super) struct Tonight {
    /// The list.
    planned: Vec<Planned>,
    /// What was played, the first first.
    log: Vec<Played>,
    last: HashMap<TuneId, Last>,
    /// Where each tune stands in the songbook.
    places: HashMap<TuneId, usize>,
    /// What can be taken back, as long as it fits the list.
    before: Option<Before>,
    finding: Finding,
    /// The day and the key in which the tune on the stand has been noted as played.
    noted: Option<(NaiveDate, Key)>,
    /// Times through of it that are noted already, or were practised.
    reached: u32,
}

impl Tonight {
    pub(super) fn new(songbook: &dyn Songbook) -> Self {
        let mut tonight = Self {
            planned: songbook.tonight(),
            log: songbook.played(),
            ..Self::default()
        };
        tonight.reload(songbook);
        tonight
    }

    /// The songbook has changed: tunes that are gone are left out.
    pub(super) fn reload(&mut self, songbook: &dyn Songbook) {
        let entries = songbook.entries().iter().enumerate();
        self.places = entries.map(|(place, entry)| (entry.id, place)).collect();
        let there = |tune: &TuneId| self.places.contains_key(tune);
        self.planned.retain(|planned| there(&planned.tune));
        self.planned.truncate(MOST_TUNES);
        self.log.retain(|played| there(&played.tune));
        self.before = None;
        self.last.clear();
        for played in &self.log {
            let last = Last {
                day: played.day,
                key: played.key,
            };
            self.last.insert(played.tune, last);
        }
    }

    /// The list as it is kept.
    pub(super) fn planned(&self) -> &[Planned] {
        &self.planned
    }

    /// When a tune was played last.
    pub(super) fn last(&self, tune: TuneId) -> Option<&Last> {
        self.last.get(&tune)
    }

    /// Where a tune is on the list.
    pub(super) fn place(&self, tune: TuneId) -> Option<usize> {
        self.planned.iter().position(|planned| planned.tune == tune)
    }

    fn entry<'a>(&self, tune: TuneId, songbook: &'a dyn Songbook) -> Option<&'a Entry> {
        songbook.entries().get(*self.places.get(&tune)?)
    }

    /// The key that a tune of the list is to be played in.
    fn key(&self, planned: Planned, songbook: &dyn Songbook) -> Option<Key> {
        let written = self.entry(planned.tune, songbook)?.key;
        let tonic = planned.key.unwrap_or(written.tonic);
        Some(Key::new(tonic, written.mode))
    }

    fn keys(&self, songbook: &dyn Songbook) -> Vec<Key> {
        let keys = self.planned.iter();
        keys.filter_map(|&planned| self.key(planned, songbook))
            .collect()
    }

    /// Grants a wish about the list; whether it is another one then.
    pub(super) fn ask(&mut self, ask: TonightAsk, songbook: &dyn Songbook, seats: &[Seat]) -> bool {
        let list = self.planned.clone();
        match ask {
            TonightAsk::List(tune, true) => {
                let room = self.planned.len() < MOST_TUNES && self.place(tune).is_none();
                if room && self.places.contains_key(&tune) {
                    self.planned.push(Planned { tune, key: None });
                }
            }
            TonightAsk::List(tune, false) => {
                if let Some(place) = self.place(tune) {
                    self.remove(place, songbook);
                }
            }
            TonightAsk::Remove(place) => self.remove(place, songbook),
            TonightAsk::Move(from, to) if from < list.len() && to < list.len() => {
                let planned = self.planned.remove(from);
                self.planned.insert(to, planned);
            }
            TonightAsk::Undo => {
                let before = self.before.take();
                match before.filter(|before| before.fits(&self.planned)) {
                    Some(Before::Removed(_, place, planned)) => {
                        self.planned.insert(place.min(list.len()), planned);
                    }
                    Some(Before::Reordered(before, _)) => self.planned = before,
                    None => {}
                }
            }
            TonightAsk::KeyUp(place, by) => {
                let planned = self.planned.get(place).copied();
                if let Some(key) = planned.and_then(|planned| self.key(planned, songbook)) {
                    self.wish(place, key.up(by).tonic, songbook);
                }
            }
            TonightAsk::ByKeys => {
                let order = least_retuning(&self.keys(songbook), seats);
                if order.len() == list.len() {
                    self.planned = order.into_iter().map(|place| list[place]).collect();
                }
                if self.planned != list {
                    self.before = Some(Before::Reordered(list.clone(), self.planned.clone()));
                }
            }
            TonightAsk::Find(words) => self.finding.words = words,
            TonightAsk::Unplayed(days) => self.finding.unplayed = days,
            TonightAsk::Everyone(everyone) => self.finding.everyone = everyone,
            TonightAsk::Move(..)
            | TonightAsk::ListOpen(_)
            | TonightAsk::Open(_)
            | TonightAsk::Next => {}
        }
        self.planned != list
    }

    fn remove(&mut self, place: usize, songbook: &dyn Songbook) {
        if let Some(planned) = self.planned.get(place).copied() {
            let entry = self.entry(planned.tune, songbook);
            let title = entry.and_then(|entry| entry.titles.first().cloned());
            self.before = Some(Before::Removed(title.unwrap_or_default(), place, planned));
            self.planned.remove(place);
        }
    }

    /// What can be undone.
    fn undo(&self) -> Option<Undo> {
        let before = self.before.as_ref();
        match before.filter(|before| before.fits(&self.planned))? {
            Before::Removed(title, ..) => Some(Undo::Removed(title.clone())),
            Before::Reordered(..) => Some(Undo::Reordered),
        }
    }

    /// A tune of the list is to be played on another tonic.
    fn wish(&mut self, place: usize, tonic: NoteName, songbook: &dyn Songbook) {
        let Some(planned) = self.planned.get(place).copied() else {
            return;
        };
        let written = self
            .entry(planned.tune, songbook)
            .map(|entry| entry.key.tonic);
        let moved = written.is_none_or(|written| written.class() != tonic.class());
        self.planned[place].key = moved.then_some(tonic);
    }

    /// The tune on the stand is played on this tonic: the list remembers it. Whether it is another list then.
    pub(super) fn remember(
        &mut self,
        tune: TuneId,
        tonic: NoteName,
        songbook: &dyn Songbook,
    ) -> bool {
        let Some(place) = self.place(tune) else {
            return false;
        };
        let before = self.planned[place];
        self.wish(place, tonic, songbook);
        self.planned[place] != before
    }

    /// A tune has been put on the stand: it counts as played once more when it has been played.
    pub(super) fn put(&mut self) {
        (self.noted, self.reached) = (None, 0);
    }

    /// So many times through of the tune on the stand have come to their end. Whether it has been played once more since
    /// this was last said; what is practised does not count.
    pub(super) fn reach(&mut self, times: u32, practises: bool) -> bool {
        let more = times > self.reached && !practises;
        self.reached = times;
        more
    }

    /// The tune on the stand reached the end of a time through. What is to be kept of that, once.
    pub(super) fn note(&mut self, played: Played) -> Option<Played> {
        let (day, key) = (played.day, played.key);
        if self.noted.replace((day, key)) == Some((day, key)) {
            return None;
        }
        self.log.push(played);
        self.last.insert(played.tune, Last { day, key });
        Some(played)
    }

    /// The place of the tune to go on with: the one after the tune on the stand, or where that is not on the list, the first
    /// that was not played tonight.
    pub(super) fn go_on(&self, open: Option<TuneId>, today: NaiveDate) -> Option<usize> {
        let place = match open.and_then(|open| self.place(open)) {
            Some(place) => Some(place + 1),
            None => self
                .planned
                .iter()
                .position(|planned| !self.played_on(planned, today)),
        };
        place.filter(|&place| place < self.planned.len())
    }

    /// The tune that comes after the one on the stand, where the list is being played.
    pub(super) fn next(&self, open: TuneId, today: NaiveDate) -> Option<Planned> {
        let begun = || {
            let mut planned = self.planned.iter();
            planned.any(|planned| self.played_on(planned, today))
        };
        if self.place(open).is_none() && !begun() {
            return None;
        }
        self.at(self.go_on(Some(open), today)?)
    }

    fn played_on(&self, planned: &Planned, day: NaiveDate) -> bool {
        let last = self.last.get(&planned.tune);
        last.is_some_and(|last| last.day == day)
    }

    /// What is planned at a place.
    pub(super) fn at(&self, place: usize) -> Option<Planned> {
        self.planned.get(place).copied()
    }
}
