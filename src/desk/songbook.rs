//! The songbook as it is looked through.

use std::rc::Rc;

use chrono::NaiveDate;

use crate::chart::Tune;
use crate::theory::{Chord, Key, Pitch, Symbol};

use super::circle::SeatSettings;
use super::porch::Practice;
use super::settings::Settings;
use super::tonight::{Planned, Played};

/// A tune's place in the songbook.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TuneId(pub u64);

/// What the songbook knows of a tune without opening it.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its place.
    pub id: TuneId,
    /// Its title, then its other names.
    pub titles: Vec<String>,
    /// Its rhythm by id (`slip-jig`), or the tune's own word.
    pub rhythm: String,
    /// Its metre (`6/8`).
    pub metre: String,
    /// Its form (`AABB`).
    pub form: String,
    /// The key it is written in.
    pub key: Key,
    /// The first note of its melody.
    pub first_note: Option<Pitch>,
    /// Its chords, each once as they come, in the key it is written in: the first is the one that the tune opens with.
    pub chords: Vec<Chord>,
}

impl Entry {
    /// What the list shows of a tune.
    pub fn of(id: TuneId, tune: &Tune) -> Self {
        let playing = tune.playing();
        // As they sound, and then what the form leaves out.
        let played = playing.bars.iter().map(|bar| bar.written);
        let played = played.chain(0..tune.bars.len());
        let bars = || played.clone().filter_map(|bar| tune.bars.get(bar));
        let mut chords: Vec<Chord> = Vec::new();
        for at in bars().flat_map(|bar| &bar.chords) {
            if let Symbol::Chord(chord) = at.symbol
                && !chords.contains(&chord)
            {
                chords.push(chord);
            }
        }
        Self {
            id,
            titles: std::iter::once(&tune.title)
                .chain(&tune.other_titles)
                .cloned()
                .collect(),
            rhythm: tune
                .rhythm
                .as_ref()
                .map_or(String::new(), |rhythm| rhythm.id().to_owned()),
            metre: tune.metre.to_string(),
            form: tune.form_played(&playing),
            key: tune.key,
            first_note: bars()
                .flat_map(|bar| &bar.notes)
                .next()
                .map(|note| note.pitch),
            chords,
        }
    }

    /// What tunes are sorted by: the title without a leading article, in lower case.
    pub fn sort_key(&self) -> String {
        let title = self
            .titles
            .first()
            .map(|title| title.to_lowercase())
            .unwrap_or_default();
        ["the ", "a ", "an "]
            .iter()
            .find_map(|article| title.strip_prefix(article))
            .unwrap_or(&title)
            .to_owned()
    }
}

/// A songbook, wherever it is kept: on a disk, in a browser, in memory.
pub trait Songbook {
    /// All tunes in the order of their titles.
    fn entries(&self) -> &[Entry];
    /// The tunes that words find, best match first, as indices into [`Songbook::entries`]; no words find all.
    fn search(&self, words: &str) -> Vec<usize>;
    /// A tune. `None` if it is gone or cannot be read any more.
    fn tune(&self, id: TuneId) -> Option<Tune>;
    /// Keeps the settings; false if they cannot be kept.
    fn keep_settings(&mut self, settings: &Settings) -> bool;
    /// The seats of the circle that were kept, the player first; none where there are none that can be read.
    fn circle(&self) -> Vec<SeatSettings>;
    /// Keeps the seats of the circle; false if they cannot be kept.
    fn keep_circle(&mut self, seats: &[SeatSettings]) -> bool;
    /// Tonight's list as it was kept.
    fn tonight(&self) -> Vec<Planned>;
    /// Keeps tonight's list; false if it cannot be kept.
    fn keep_tonight(&mut self, list: &[Planned]) -> bool;
    /// What was played, the first first.
    fn played(&self) -> Vec<Played>;
    /// Keeps that a tune was played; false if it cannot be kept.
    fn keep_played(&mut self, played: Played) -> bool;
    /// What has been practised on the porch, in the order of time.
    fn practice(&self) -> Vec<Practice>;
    /// Keeps what was practised, in place of the entry of the same day and thing; false if it cannot be kept.
    fn keep_practice(&mut self, practice: &Practice) -> bool;
    /// The day it is where the songbook is: the desk has no calendar of its own. A day here begins at 5 in the morning, as an
    /// evening does not end at midnight (common practice).
    fn today(&self) -> NaiveDate;
    /// Puts the shipped tunes back as they came; false if that cannot be done.
    fn restore_shipped(&mut self) -> bool;
}

/// Which tunes to show.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Filter {
    /// Words that a title or another name holds.
    pub words: String,
    /// Only this key.
    pub key: Option<Key>,
    /// Only this rhythm, by id; empty for all.
    pub rhythm: String,
    /// Only tunes whose chords are all known.
    pub known: bool,
}

/// A tune in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TuneRow {
    /// Its place.
    pub id: TuneId,
    /// Its title.
    pub title: String,
    /// Its rhythm by id (`slip-jig`), or the tune's own word.
    pub rhythm: String,
    /// Its form (`AABB`).
    pub form: String,
    /// Its metre (`6/8`).
    pub metre: String,
    /// Its key in the player's note names (`A`, `Em`, `A mixolydian` as `A`).
    pub key: String,
    /// Its mode by id (`mixolydian`).
    pub mode: String,
    /// The course on which the melody starts, in the player's note names; empty where there is no melody.
    pub start_course: String,
    /// The fret on that course; 0 is open.
    pub start_fret: u8,
}

/// What the list has to show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SongbookState {
    /// Tunes.
    Tunes,
    /// The songbook is empty.
    Empty,
    /// Nothing fits the words and filters.
    NothingFits,
}

/// The songbook view.
#[derive(Debug, Clone, PartialEq)]
pub struct SongbookView {
    /// What there is to show.
    pub state: SongbookState,
    /// Which tunes are shown.
    pub filter: Filter,
    /// The tunes, best match first. Shared, so that ten thousand rows cost nothing to pass on.
    pub rows: Vec<Rc<TuneRow>>,
    /// How many tunes there are in all.
    pub total: usize,
    /// Keys that tunes are in, to filter by: name to show and key.
    pub keys: Vec<(String, Key)>,
    /// Rhythms that tunes have, by id.
    pub rhythms: Vec<String>,
    /// The tune on the stand.
    pub open: Option<TuneId>,
}
