//! The songbook's list: rows made once, searched and filtered by index.

use std::rc::Rc;

use crate::frets::{Capo, Instrument};
use crate::theory::{Chord, Key, NoteStyle};

use super::ask::Ask;
use super::cards::style;
use super::settings::Settings;
use super::songbook::{Entry, Filter, Songbook, SongbookState, SongbookView, TuneId, TuneRow};

#[derive(Debug)]
pub(super) struct List {
    filter: Filter,
    /// A row for each entry, in the songbook's order.
    rows: Vec<Rc<TuneRow>>,
    /// Whether all of an entry's chords are known.
    known: Vec<bool>,
    /// What is shown now.
    shown: Vec<Rc<TuneRow>>,
    keys: Vec<(String, Key)>,
    rhythms: Vec<String>,
}

impl List {
    pub(super) fn new(songbook: &dyn Songbook, settings: &Settings) -> Self {
        let mut list = Self {
            filter: Filter::default(),
            rows: Vec::new(),
            known: Vec::new(),
            shown: Vec::new(),
            keys: Vec::new(),
            rhythms: Vec::new(),
        };
        list.reload(songbook, settings);
        list
    }

    /// Makes all rows anew: the songbook or the settings have changed.
    pub(super) fn reload(&mut self, songbook: &dyn Songbook, settings: &Settings) {
        let style = style(settings);
        let instrument = settings.instrument();
        let entries = songbook.entries();
        self.rows = entries
            .iter()
            .map(|entry| Rc::new(row(entry, &instrument, style)))
            .collect();
        self.known = entries
            .iter()
            .map(|entry| all_known(entry, settings))
            .collect();
        self.keys = by_frequency(entries.iter().map(|entry| entry.key))
            .into_iter()
            .map(|key| (key.tonic.in_style(style), key))
            .collect();
        let rhythms = entries.iter().map(|entry| entry.rhythm.clone());
        self.rhythms = by_frequency(rhythms.filter(|rhythm| !rhythm.is_empty()));
        self.choose(songbook);
    }

    pub(super) fn ask(&mut self, ask: Ask, songbook: &dyn Songbook) {
        match ask {
            Ask::Search(words) => self.filter.words = words,
            Ask::OnlyKey(key) => self.filter.key = key,
            Ask::OnlyRhythm(rhythm) => self.filter.rhythm = rhythm,
            Ask::OnlyKnown(known) => self.filter.known = known,
            _ => return,
        }
        self.choose(songbook);
    }

    fn choose(&mut self, songbook: &dyn Songbook) {
        let entries = songbook.entries();
        let filter = &self.filter;
        let fits = |&at: &usize| {
            let entry = &entries[at];
            filter.key.is_none_or(|key| entry.key == key)
                && (filter.rhythm.is_empty() || entry.rhythm == filter.rhythm)
                && (!filter.known || self.known[at])
        };
        let found = songbook.search(&filter.words).into_iter().filter(fits);
        self.shown = found.map(|at| self.rows[at].clone()).collect();
    }

    pub(super) fn view(&self, open: Option<TuneId>) -> SongbookView {
        SongbookView {
            state: match (self.rows.is_empty(), self.shown.is_empty()) {
                (true, _) => SongbookState::Empty,
                (false, true) => SongbookState::NothingFits,
                (false, false) => SongbookState::Tunes,
            },
            filter: self.filter.clone(),
            rows: self.shown.clone(),
            total: self.rows.len(),
            keys: self.keys.clone(),
            rhythms: self.rhythms.clone(),
            open,
        }
    }
}

fn row(entry: &Entry, instrument: &Instrument, style: NoteStyle) -> TuneRow {
    let start = entry
        .first_note
        .and_then(|pitch| instrument.place(pitch, Capo::NONE));
    TuneRow::of(entry, entry.key, start, instrument, style)
}

impl TuneRow {
    /// The row of a tune in a key that begins at a course and fret of an instrument.
    pub(super) fn of(
        entry: &Entry,
        key: Key,
        start: Option<(usize, u8)>,
        instrument: &Instrument,
        style: NoteStyle,
    ) -> Self {
        Self {
            id: entry.id,
            title: entry.titles.first().cloned().unwrap_or_default(),
            rhythm: entry.rhythm.clone(),
            form: entry.form.clone(),
            metre: entry.metre.clone(),
            key: key.tonic.in_style(style),
            mode: key.mode.id().to_owned(),
            start_course: start.map_or(String::new(), |(course, _)| {
                instrument.courses[course].open.name.in_style(style)
            }),
            start_fret: start.map_or(0, |(_, fret)| fret),
        }
    }
}

/// The tunes whose chords the player knows, in the order of the songbook; then all others.
pub(super) fn known(songbook: &dyn Songbook, settings: &Settings) -> Vec<TuneId> {
    let (mut known, others): (Vec<&Entry>, Vec<&Entry>) = songbook
        .entries()
        .iter()
        .partition(|entry| all_known(entry, settings));
    known.extend(others);
    known.into_iter().map(|entry| entry.id).collect()
}

/// Whether the player knows a shape for every chord; the bass of a slash chord is left to others.
fn all_known(entry: &Entry, settings: &Settings) -> bool {
    !entry.chords.is_empty()
        && entry.chords.iter().all(|&chord| {
            let chord = Chord {
                bass: None,
                ..chord
            }
            .to_string();
            settings.known.contains(&chord)
        })
}

/// Each different value once, the most frequent first, equal ones in the order of their coming.
fn by_frequency<T: PartialEq>(values: impl Iterator<Item = T>) -> Vec<T> {
    let mut counted: Vec<(T, usize)> = Vec::new();
    for value in values {
        match counted.iter_mut().find(|(there, _)| *there == value) {
            Some((_, count)) => *count += 1,
            None => counted.push((value, 1)),
        }
    }
    counted.sort_by_key(|&(_, count)| std::cmp::Reverse(count));
    counted.into_iter().map(|(value, _)| value).collect()
}
