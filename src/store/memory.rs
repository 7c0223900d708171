//! A songbook that is kept nowhere: for pictures, for tests, and for when the disk says no.

use std::cell::Cell;
use std::rc::Rc;

use chrono::NaiveDate;

use crate::chart::Tune;
use crate::desk::{Entry, Planned, Played, Practice, SeatSettings, Settings, Songbook, TuneId};

use super::search::Index;

/// Tunes in memory.
#[derive(Debug, Default)]
pub struct Memory {
    entries: Vec<Entry>,
    tunes: Vec<Tune>,
    index: Index,
    practice: Vec<Practice>,
    /// The day it is said to be; otherwise the calendar is asked.
    day: Option<Rc<Cell<NaiveDate>>>,
    circle: Vec<SeatSettings>,
    tonight: Vec<Planned>,
    played: Vec<Played>,
}

impl Memory {
    /// A songbook of these tunes; their ids count from 1 in the order given.
    pub fn new(tunes: Vec<Tune>) -> Self {
        let mut entries: Vec<Entry> = tunes
            .iter()
            .zip(1..)
            .map(|(tune, id)| Entry::of(TuneId(id), tune))
            .collect();
        entries.sort_by_cached_key(Entry::sort_key);
        let index = Index::new(
            entries
                .iter()
                .map(|entry| entry.titles.iter().map(String::as_str)),
        );
        Self {
            entries,
            tunes,
            index,
            ..Self::default()
        }
    }

    /// The same on a certain day.
    pub fn on(self, day: NaiveDate) -> Self {
        self.on_days(Rc::new(Cell::new(day)))
    }

    /// The same on days that go by as somebody outside says.
    pub fn on_days(self, day: Rc<Cell<NaiveDate>>) -> Self {
        Self {
            day: Some(day),
            ..self
        }
    }

    /// The same with what has been practised before.
    pub fn after(self, practice: Vec<Practice>) -> Self {
        Self { practice, ..self }
    }
}

impl Songbook for Memory {
    fn entries(&self) -> &[Entry] {
        &self.entries
    }

    fn search(&self, words: &str) -> Vec<usize> {
        self.index.find(words)
    }

    fn tune(&self, id: TuneId) -> Option<Tune> {
        let place = usize::try_from(id.0.checked_sub(1)?).ok()?;
        self.tunes.get(place).cloned()
    }

    fn keep_settings(&mut self, _: &Settings) -> bool {
        true // for as long as the app is open, which is all that memory promises
    }

    fn circle(&self) -> Vec<SeatSettings> {
        self.circle.clone()
    }

    fn keep_circle(&mut self, seats: &[SeatSettings]) -> bool {
        self.circle = seats.to_vec();
        true
    }

    fn tonight(&self) -> Vec<Planned> {
        self.tonight.clone()
    }

    fn keep_tonight(&mut self, list: &[Planned]) -> bool {
        self.tonight = list.to_vec();
        true
    }

    fn played(&self) -> Vec<Played> {
        self.played.clone()
    }

    fn keep_played(&mut self, played: Played) -> bool {
        self.played.push(played);
        true
    }

    fn practice(&self) -> Vec<Practice> {
        self.practice.clone()
    }

    fn keep_practice(&mut self, practice: &Practice) -> bool {
        self.practice.retain(|entry| !entry.same(practice));
        self.practice.push(*practice);
        true
    }

    fn today(&self) -> NaiveDate {
        let day = self.day.as_ref().map(|day| day.get());
        day.unwrap_or_else(super::day::tonight)
    }

    fn restore_shipped(&mut self) -> bool {
        let tunes = super::shipped::tunes();
        let new = Self::new(tunes.into_iter().map(|(_, tune)| tune).collect());
        (self.entries, self.tunes, self.index) = (new.entries, new.tunes, new.index);
        true
    }
}
