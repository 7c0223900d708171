//! The database file: opening, damage, adding, settings.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Utc};
use redb::{
    Builder, Database, DatabaseError, ReadableDatabase, ReadableTable, StorageError,
    TableDefinition,
};

use crate::chart::Tune;
use crate::desk::{Entry, Settings, Songbook, TuneId};

use super::search::Index;
use super::value::{self, ValueError};

/// Tunes by id.
const TUNES: TableDefinition<u64, &[u8]> = TableDefinition::new("tunes");
/// What the list shows of each tune, so that starting does not read every tune.
const ENTRIES: TableDefinition<u64, &[u8]> = TableDefinition::new("entries");
/// Which tune holds which shipped file.
const SHIPPED: TableDefinition<&str, u64> = TableDefinition::new("shipped");
/// The player's settings, under `settings`.
const SETTINGS: TableDefinition<&str, &[u8]> = TableDefinition::new("settings");
/// Numbers about the file itself.
const FILE: TableDefinition<&str, u64> = TableDefinition::new("file");

/// The layout of the tables. A file with a higher number was written by a newer app.
const LAYOUT: u64 = 1;
const FILE_NAME: &str = "songbook.redb";

/// Why a songbook could not be opened or kept.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another window or command has the songbook open.
    #[error("the songbook is open elsewhere")]
    InUse,
    /// The folder cannot be made or written to.
    #[error("the folder cannot be used: {0}")]
    Folder(io::Error),
    /// The database refused.
    #[error("the songbook could not be written: {0}")]
    Database(Box<redb::Error>),
}

impl<E: Into<redb::Error>> From<E> for StoreError {
    fn from(error: E) -> Self {
        Self::Database(Box::new(error.into()))
    }
}

/// An old file that could not be read and stands aside, whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAside {
    /// Where it is now.
    pub path: PathBuf,
    /// Whether a newer version of the app wrote it; otherwise it is damaged.
    pub newer: bool,
}

/// A songbook that was opened, and what had to be put aside for it.
#[derive(Debug)]
pub struct Opened {
    /// The songbook.
    pub store: Store,
    /// The file that could not be read.
    pub set_aside: Option<SetAside>,
    /// Whether the songbook was made anew and is still empty.
    pub new: bool,
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
    database: Database,
    entries: Vec<Entry>,
    index: Index,
}

enum Unreadable {
    Damaged,
    Newer,
    Other(StoreError),
}

impl From<DatabaseError> for Unreadable {
    fn from(error: DatabaseError) -> Self {
        match error {
            DatabaseError::DatabaseAlreadyOpen => Self::Other(StoreError::InUse),
            DatabaseError::UpgradeRequired(_) => Self::Newer,
            DatabaseError::Storage(StorageError::Corrupted(_)) | DatabaseError::RepairAborted => {
                Self::Damaged
            }
            // A file that is not a database, or one cut short.
            DatabaseError::Storage(StorageError::Io(error))
                if matches!(
                    error.kind(),
                    io::ErrorKind::InvalidData | io::ErrorKind::UnexpectedEof
                ) =>
            {
                Self::Damaged
            }
            DatabaseError::Storage(StorageError::Io(error)) => {
                Self::Other(StoreError::Folder(error))
            }
            error => Self::Other(error.into()),
        }
    }
}

impl Store {
    /// Opens the songbook in a folder, and makes both where there are none. A file that is damaged or newer than this
    /// app is renamed with the moment `now` in its name and never written to.
    ///
    /// # Errors
    /// [`StoreError`] when the folder cannot be used or another process has the songbook open.
    pub fn open(folder: &Path, now: DateTime<Utc>) -> Result<Opened, StoreError> {
        fs::create_dir_all(folder).map_err(StoreError::Folder)?;
        let path = folder.join(FILE_NAME);
        let existed = path.exists();
        let newer = match Self::read(&path) {
            Ok(store) => {
                return Ok(Opened {
                    new: !existed,
                    store,
                    set_aside: None,
                });
            }
            Err(Unreadable::Other(error)) => return Err(error),
            Err(Unreadable::Damaged) => false,
            Err(Unreadable::Newer) => true,
        };
        let aside = free_name(folder, now);
        fs::rename(&path, &aside).map_err(StoreError::Folder)?;
        match Self::read(&path) {
            Ok(store) => Ok(Opened {
                store,
                set_aside: Some(SetAside { path: aside, newer }),
                new: true,
            }),
            Err(Unreadable::Other(error)) => Err(error),
            Err(_) => Err(StoreError::Folder(io::ErrorKind::InvalidData.into())),
        }
    }

    /// Opens or makes a file and reads all that starting needs. Every page is checked: a flipped bit shows here.
    fn read(path: &Path) -> Result<Self, Unreadable> {
        // The database checks itself, but a damaged page may still trip an assertion in it. That must count as damage.
        let path = path.to_path_buf();
        let caught = std::panic::catch_unwind(move || Self::read_checked(&path));
        caught.unwrap_or(Err(Unreadable::Damaged))
    }

    fn read_checked(path: &Path) -> Result<Self, Unreadable> {
        let mut builder = Builder::new();
        builder
            .set_check_integrity_on_open(true)
            .set_cache_size(16 << 20);
        let database = builder.create(path)?;
        let made = (|| {
            let transaction = database.begin_write()?;
            let layout = {
                let mut file = transaction.open_table(FILE)?;
                let layout = file.get("layout")?.map(|layout| layout.value());
                if layout.is_none() {
                    file.insert("layout", LAYOUT)?;
                }
                transaction.open_table(TUNES)?;
                transaction.open_table(ENTRIES)?;
                transaction.open_table(SHIPPED)?;
                transaction.open_table(SETTINGS)?;
                layout
            };
            match layout {
                None => transaction.commit()?,
                Some(_) => transaction.abort()?,
            }
            Ok::<_, StoreError>(layout.unwrap_or(LAYOUT))
        })();
        match made {
            Ok(layout) if layout > LAYOUT => return Err(Unreadable::Newer),
            Ok(_) => {}
            Err(_) => return Err(Unreadable::Damaged),
        }
        let mut store = Self {
            database,
            entries: Vec::new(),
            index: Index::default(),
        };
        let read = store.load_entries().map_err(|_| Unreadable::Damaged)?;
        store.show(read?);
        Ok(store)
    }

    fn load_entries(&self) -> Result<Result<Vec<Entry>, Unreadable>, StoreError> {
        let transaction = self.database.begin_read()?;
        let table = transaction.open_table(ENTRIES)?;
        let mut entries = Vec::new();
        for row in table.iter()? {
            let (id, bytes) = row?;
            match value::read_entry(TuneId(id.value()), bytes.value()) {
                Ok(entry) => entries.push(entry),
                Err(ValueError::Newer) => return Ok(Err(Unreadable::Newer)),
                Err(ValueError::Damaged) => return Ok(Err(Unreadable::Damaged)),
            }
        }
        Ok(Ok(entries))
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
        self.write(tunes.iter().map(|tune| (None, tune)))
    }

    /// Puts the shipped tunes back: each file's own tune, found by the file's name, is written again as it came.
    ///
    /// # Errors
    /// [`StoreError`]; the songbook is then as it was.
    pub fn restore(&mut self, shipped: &[(String, Tune)]) -> Result<(), StoreError> {
        self.write(
            shipped
                .iter()
                .map(|(name, tune)| (Some(name.as_str()), tune)),
        )
        .map(drop)
    }

    fn write<'a>(
        &mut self,
        tunes: impl Iterator<Item = (Option<&'a str>, &'a Tune)>,
    ) -> Result<Vec<Added>, StoreError> {
        let mut entries = self.entries.clone();
        let mut added = Vec::new();
        let transaction = self.database.begin_write()?;
        {
            let mut stored = transaction.open_table(TUNES)?;
            let mut listed = transaction.open_table(ENTRIES)?;
            let mut shipped = transaction.open_table(SHIPPED)?;
            let mut next = stored.last()?.map_or(1, |(id, _)| id.value() + 1);
            for (file, tune) in tunes {
                let bytes = value::write_tune(tune);
                let own = match file {
                    Some(file) => shipped.get(file)?.map(|id| id.value()),
                    None => {
                        let mut same = entries
                            .iter()
                            .filter(|entry| entry.titles.first() == Some(&tune.title));
                        let mut found = None;
                        for entry in &mut same {
                            let there = stored
                                .get(entry.id.0)?
                                .and_then(|there| value::read_tune(there.value()).ok());
                            if there.is_some_and(|there| value::same_tune(&there, tune)) {
                                found = Some(entry.id);
                                break;
                            }
                        }
                        if let Some(id) = found {
                            added.push(Added::Same(id));
                            continue;
                        }
                        None
                    }
                };
                let id = own.unwrap_or(next);
                next = next.max(id + 1);
                let entry = Entry::of(TuneId(id), tune);
                stored.insert(id, bytes.as_slice())?;
                listed.insert(id, value::write_entry(&entry).as_slice())?;
                if let Some(file) = file {
                    shipped.insert(file, id)?;
                }
                entries.retain(|entry| own.is_none() || entry.id.0 != id);
                entries.push(entry);
                added.push(Added::New(TuneId(id)));
            }
        }
        transaction.commit()?;
        self.show(entries);
        Ok(added)
    }

    /// The settings that were kept; `None` where there are none that can be read.
    pub fn settings(&self) -> Option<Settings> {
        let transaction = self.database.begin_read().ok()?;
        let table = transaction.open_table(SETTINGS).ok()?;
        let bytes = table.get("settings").ok()??;
        value::read_settings(bytes.value()).ok()
    }

    /// Keeps the settings.
    ///
    /// # Errors
    /// [`StoreError`]; the settings kept before then stay.
    pub fn keep_settings(&mut self, settings: &Settings) -> Result<(), StoreError> {
        let transaction = self.database.begin_write()?;
        transaction
            .open_table(SETTINGS)?
            .insert("settings", value::write_settings(settings).as_slice())?;
        transaction.commit()?;
        Ok(())
    }
}

impl Songbook for Store {
    fn entries(&self) -> &[Entry] {
        &self.entries
    }

    fn search(&self, words: &str) -> Vec<usize> {
        self.index.find(words)
    }

    fn tune(&self, id: TuneId) -> Option<Tune> {
        let transaction = self.database.begin_read().ok()?;
        let table = transaction.open_table(TUNES).ok()?;
        let bytes = table.get(id.0).ok()??;
        value::read_tune(bytes.value()).ok()
    }

    fn keep_settings(&mut self, settings: &Settings) -> bool {
        Self::keep_settings(self, settings).is_ok()
    }

    fn restore_shipped(&mut self) -> bool {
        self.restore(&super::shipped::tunes()).is_ok()
    }
}

/// A name for a file that is put aside which no other file has.
fn free_name(folder: &Path, now: DateTime<Utc>) -> PathBuf {
    let moment = now.format("%Y%m%d-%H%M%S");
    (0..)
        .map(|copy| match copy {
            0 => folder.join(format!("songbook-set-aside-{moment}.redb")),
            copy => folder.join(format!("songbook-set-aside-{moment}-{copy}.redb")),
        })
        .find(|path| !path.exists())
        .unwrap_or_else(|| folder.join("songbook-set-aside.redb"))
}
