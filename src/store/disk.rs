//! The songbook in its database file: looking up, adding, restoring, settings.

use std::collections::HashMap;
use std::io;
use std::path::PathBuf;

use chrono::NaiveDate;
use redb::{Database, ReadableDatabase, ReadableTable, TableDefinition, WriteTransaction};

use crate::chart::Tune;
use crate::desk::{Entry, Planned, Played, Practice, SeatSettings, Settings, Songbook, TuneId};

use super::open;
use super::reluctant::Reluctant;
use super::search::Index;
use super::value::{self, ValueError};

/// Tunes by id.
pub(super) const TUNES: TableDefinition<u64, &[u8]> = TableDefinition::new("tunes");
/// What the list shows of each tune, so that starting does not read every tune.
pub(super) const ENTRIES: TableDefinition<u64, &[u8]> = TableDefinition::new("entries");
/// Which tune holds which shipped file.
pub(super) const SHIPPED: TableDefinition<&str, u64> = TableDefinition::new("shipped");
/// The player's settings, under `settings`; the tunings of the instruments, under `tunings`; the band, under `band`; the
/// seats of the circle, under `circle`; tonight's list, under `tonight`.
pub(super) const SETTINGS: TableDefinition<&str, &[u8]> = TableDefinition::new("settings");
/// What was played, in the order of playing. Files of the first days lack it.
pub(super) const PLAYED: TableDefinition<u64, &[u8]> = TableDefinition::new("played");
/// What has been practised, in the order of time. Songbooks from before there was a porch have none.
pub(super) const PRACTICE: TableDefinition<u64, &[u8]> = TableDefinition::new("practice");
/// Numbers about the file itself.
pub(super) const FILE: TableDefinition<&str, u64> = TableDefinition::new("file");

/// Why a songbook could not be opened or kept.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another window or command has the songbook open.
    #[error("the songbook is open elsewhere")]
    InUse,
    /// The folder or a file in it cannot be made, read or written to.
    #[error("the folder cannot be used: {0}")]
    Folder(io::Error),
    /// The database refused.
    #[error("the songbook could not be written: {0}")]
    Database(Box<redb::Error>),
    /// A newer app wrote what was to be written over; it is left as it is.
    #[error("a newer app wrote this")]
    Newer,
}

impl<E: Into<redb::Error>> From<E> for StoreError {
    fn from(error: E) -> Self {
        match error.into() {
            redb::Error::Io(error) => Self::Folder(error),
            error => Self::Database(Box::new(error)),
        }
    }
}

/// What came of adding a tune.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// It is new.
    New(TuneId),
    /// The very same tune was there already.
    Same(TuneId),
}

/// The songbook on disk.
#[derive(Debug)]
pub struct Store {
    path: PathBuf,
    /// `None` once the disk has failed and the file could not be opened again.
    database: Option<Database>,
    /// Why nothing can be written.
    refused: Option<io::ErrorKind>,
    entries: Vec<Entry>,
    index: Index,
}

impl Store {
    pub(super) fn new(
        path: PathBuf,
        database: Database,
        entries: Vec<Entry>,
        refused: Option<io::ErrorKind>,
    ) -> Self {
        let mut store = Self {
            path,
            database: Some(database),
            refused,
            entries: Vec::new(),
            index: Index::default(),
        };
        store.show(entries);
        store
    }

    fn show(&mut self, mut entries: Vec<Entry>) {
        entries.sort_by_cached_key(Entry::sort_key);
        self.index = Index::new(
            entries
                .iter()
                .map(|entry| entry.titles.iter().map(String::as_str)),
        );
        self.entries = entries;
    }

    /// Adds tunes, all or none. A tune that is there already to the last note is not added again.
    ///
    /// # Errors
    /// [`StoreError`]; the songbook is then as it was.
    pub fn add(&mut self, tunes: &[Tune]) -> Result<Vec<Added>, StoreError> {
        let mut entries = self.entries.clone();
        let added = self.write(|transaction| add(transaction, &mut entries, tunes))?;
        self.show(entries);
        Ok(added)
    }

    /// Puts the shipped tunes back: each file's own tune, found by the file's name, is written again as it came.
    ///
    /// # Errors
    /// [`StoreError`]; the songbook is then as it was.
    pub fn restore(&mut self, shipped: &[(String, Tune)]) -> Result<(), StoreError> {
        let mut entries = self.entries.clone();
        self.write(|transaction| restore(transaction, &mut entries, shipped))?;
        self.show(entries);
        Ok(())
    }

    /// The settings that were kept; `None` where there are none that can be read.
    pub fn settings(&self) -> Option<Settings> {
        let transaction = self.database.as_ref()?.begin_read().ok()?;
        let table = transaction.open_table(SETTINGS).ok()?;
        let bytes = table.get("settings").ok()??;
        let settings = value::read_settings(bytes.value()).ok()?;
        let tunings = table.get("tunings").ok()?;
        let retuned = tunings.and_then(|bytes| value::read_tunings(bytes.value()).ok());
        let band = table.get("band").ok()?;
        let band = band.and_then(|bytes| value::read_band(bytes.value()).ok());
        Some(Settings {
            retuned: retuned.unwrap_or_default(),
            band: band.unwrap_or_default(),
            ..settings
        })
    }

    /// Keeps the settings. What of them a newer app wrote is left to that app.
    ///
    /// # Errors
    /// [`StoreError`]; the settings kept before then stay. With [`StoreError::Newer`] those of this app are kept.
    pub fn keep_settings(&mut self, settings: &Settings) -> Result<(), StoreError> {
        self.keep_values([
            ("settings", value::write_settings(settings)),
            ("tunings", value::write_tunings(&settings.retuned)),
            ("band", value::write_band(&settings.band)),
        ])
    }

    /// A value of the settings or beside them; `None` where there is none that can be read.
    fn kept<T>(&self, name: &str, read: impl FnOnce(&[u8]) -> Option<T>) -> Option<T> {
        let transaction = self.database.as_ref()?.begin_read().ok()?;
        let table = transaction.open_table(SETTINGS).ok()?;
        let bytes = table.get(name).ok()??;
        read(bytes.value())
    }

    /// Keeps values together. Those that a newer app wrote are left to that app, and told of in the end.
    fn keep_values<const N: usize>(
        &mut self,
        values: [(&str, Vec<u8>); N],
    ) -> Result<(), StoreError> {
        let is_newer = |name| self.kept(name, |kept| value::is_newer(kept).then_some(()));
        let values = values.into_iter();
        let (newer, own): (Vec<_>, Vec<_>) =
            values.partition(|&(name, _)| is_newer(name).is_some());
        self.write(|transaction| {
            let mut table = transaction.open_table(SETTINGS)?;
            for (name, bytes) in &own {
                table.insert(*name, bytes.as_slice())?;
            }
            Ok(())
        })?;
        match newer.is_empty() {
            true => Ok(()),
            false => Err(StoreError::Newer),
        }
    }

    /// The values of a table in the order of their keys; those that cannot be read are left out.
    fn rows<T>(
        &self,
        table: TableDefinition<u64, &[u8]>,
        read: impl Fn(&[u8]) -> Result<T, ValueError>,
    ) -> Vec<T> {
        let rows = || {
            let transaction = self.database.as_ref()?.begin_read().ok()?;
            let table = transaction.open_table(table).ok()?;
            let rows = table.iter().ok()?.flatten();
            Some(
                rows.filter_map(|(_, bytes)| read(bytes.value()).ok())
                    .collect(),
            )
        };
        rows().unwrap_or_default()
    }

    /// Keeps what was practised, in place of the same of that day.
    fn write_practice(&mut self, practice: &Practice) -> Result<(), StoreError> {
        self.write(|transaction| {
            let mut table = transaction.open_table(PRACTICE)?;
            let mut place = table.last()?.map_or(1, |(place, _)| place.value() + 1);
            for row in table.iter()?.rev() {
                let (old, bytes) = row?;
                match value::read_practice(bytes.value()) {
                    Ok(entry) if entry.same(practice) => {
                        place = old.value();
                        break;
                    }
                    // What was kept on earlier days lies before this.
                    Ok(entry) if entry.day < practice.day => break,
                    _ => {}
                }
            }
            table.insert(place, value::write_practice(practice).as_slice())?;
            Ok(())
        })
    }

    /// One transaction: all of `work`, or nothing of it.
    fn write<T>(
        &mut self,
        work: impl FnOnce(&WriteTransaction) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        if let Some(kind) = self.refused {
            return Err(StoreError::Folder(kind.into()));
        }
        let result = self.transact(work);
        if result.is_err() {
            // After a failed write the database refuses even to read until it is opened again.
            self.database = None;
            let reopened = Reluctant::open(&self.path).ok();
            self.database = reopened
                .and_then(|file| open::database(&file, |_| Ok(())).ok())
                .map(|(database, ())| database);
        }
        result
    }

    fn transact<T>(
        &mut self,
        work: impl FnOnce(&WriteTransaction) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let closed = || StoreError::Folder(io::ErrorKind::NotConnected.into());
        let mut transaction = self.database.as_ref().ok_or_else(closed)?.begin_write()?;
        // With one phase a damaged newest transaction would be taken for one cut short by a crash, and silently undone.
        transaction.set_two_phase_commit(true);
        let result = work(&transaction)?;
        transaction.commit()?;
        Ok(result)
    }
}

fn add(
    transaction: &WriteTransaction,
    entries: &mut Vec<Entry>,
    tunes: &[Tune],
) -> Result<Vec<Added>, StoreError> {
    let mut stored = transaction.open_table(TUNES)?;
    let mut listed = transaction.open_table(ENTRIES)?;
    let mut next = stored.last()?.map_or(1, |(id, _)| id.value() + 1);
    let mut titled: HashMap<String, Vec<u64>> = HashMap::new();
    for entry in &*entries {
        if let Some(title) = entry.titles.first() {
            titled.entry(title.clone()).or_default().push(entry.id.0);
        }
    }
    let mut added = Vec::with_capacity(tunes.len());
    'tunes: for tune in tunes {
        let namesakes = titled.entry(tune.title.clone()).or_default();
        for &id in &*namesakes {
            let there = stored.get(id)?;
            let there = there.and_then(|bytes| value::read_tune(bytes.value()).ok());
            if there.is_some_and(|there| value::same_tune(&there, tune)) {
                added.push(Added::Same(TuneId(id)));
                continue 'tunes;
            }
        }
        let entry = Entry::of(TuneId(next), tune);
        stored.insert(next, value::write_tune(tune).as_slice())?;
        listed.insert(next, value::write_entry(&entry).as_slice())?;
        namesakes.push(next);
        entries.push(entry);
        added.push(Added::New(TuneId(next)));
        next += 1;
    }
    Ok(added)
}

/// The id of a tune that is there to the last note.
fn same(
    stored: &impl ReadableTable<u64, &'static [u8]>,
    entries: &[Entry],
    tune: &Tune,
) -> Result<Option<u64>, StoreError> {
    let namesakes = entries
        .iter()
        .filter(|entry| entry.titles.first() == Some(&tune.title));
    for entry in namesakes {
        let there = stored.get(entry.id.0)?;
        let there = there.and_then(|bytes| value::read_tune(bytes.value()).ok());
        if there.is_some_and(|there| value::same_tune(&there, tune)) {
            return Ok(Some(entry.id.0));
        }
    }
    Ok(None)
}

fn restore(
    transaction: &WriteTransaction,
    entries: &mut Vec<Entry>,
    shipped: &[(String, Tune)],
) -> Result<(), StoreError> {
    let mut stored = transaction.open_table(TUNES)?;
    let mut listed = transaction.open_table(ENTRIES)?;
    let mut files = transaction.open_table(SHIPPED)?;
    let mut next = stored.last()?.map_or(1, |(id, _)| id.value() + 1);
    for (file, tune) in shipped {
        let mut own = files.get(file.as_str())?.map(|id| id.value());
        if own.is_none() {
            // One that was rescued from a damaged file no longer knows where it came from.
            own = same(&stored, entries, tune)?;
        }
        let id = own.unwrap_or(next);
        next = next.max(id + 1);
        let entry = Entry::of(TuneId(id), tune);
        stored.insert(id, value::write_tune(tune).as_slice())?;
        listed.insert(id, value::write_entry(&entry).as_slice())?;
        files.insert(file.as_str(), id)?;
        entries.retain(|entry| entry.id.0 != id);
        entries.push(entry);
    }
    Ok(())
}

impl Songbook for Store {
    fn entries(&self) -> &[Entry] {
        &self.entries
    }

    fn search(&self, words: &str) -> Vec<usize> {
        self.index.find(words)
    }

    fn tune(&self, id: TuneId) -> Option<Tune> {
        let transaction = self.database.as_ref()?.begin_read().ok()?;
        let table = transaction.open_table(TUNES).ok()?;
        let bytes = table.get(id.0).ok()??;
        value::read_tune(bytes.value()).ok()
    }

    fn keep_settings(&mut self, settings: &Settings) -> bool {
        Self::keep_settings(self, settings).is_ok()
    }

    fn circle(&self) -> Vec<SeatSettings> {
        let seats = self.kept("circle", |bytes| value::read_circle(bytes).ok());
        seats.unwrap_or_default()
    }

    fn keep_circle(&mut self, seats: &[SeatSettings]) -> bool {
        let seats = value::write_circle(seats);
        self.keep_values([("circle", seats)]).is_ok()
    }

    fn tonight(&self) -> Vec<Planned> {
        let list = self.kept("tonight", |bytes| value::read_tonight(bytes).ok());
        list.unwrap_or_default()
    }

    fn keep_tonight(&mut self, list: &[Planned]) -> bool {
        let list = value::write_tonight(list);
        self.keep_values([("tonight", list)]).is_ok()
    }

    fn played(&self) -> Vec<Played> {
        self.rows(PLAYED, value::read_played)
    }

    fn keep_played(&mut self, played: Played) -> bool {
        let kept = self.write(|transaction| {
            let mut table = transaction.open_table(PLAYED)?;
            let next = table.last()?.map_or(1, |(id, _)| id.value() + 1);
            table.insert(next, value::write_played(&played).as_slice())?;
            Ok(())
        });
        kept.is_ok()
    }

    fn practice(&self) -> Vec<Practice> {
        self.rows(PRACTICE, value::read_practice)
    }

    fn keep_practice(&mut self, practice: &Practice) -> bool {
        self.write_practice(practice).is_ok()
    }

    fn today(&self) -> NaiveDate {
        super::day::tonight()
    }

    fn restore_shipped(&mut self) -> bool {
        self.restore(&super::shipped::tunes()).is_ok()
    }
}
