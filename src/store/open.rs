//! Opening the database file, and putting aside one that cannot be read.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Utc};
use redb::{
    Builder, Database, DatabaseError, ReadableDatabase, ReadableTable, StorageBackend, StorageError,
};

use crate::desk::{Entry, TuneId};

use super::disk::{Added, ENTRIES, FILE, SETTINGS, SHIPPED, Store, StoreError, TUNES};
use super::quiet;
use super::reluctant::Reluctant;
use super::value::{self, ValueError};

/// The layout of the tables. A file with a higher number was written by a newer app.
const LAYOUT: u64 = 1;
pub(super) const FILE_NAME: &str = "songbook.redb";
/// How often opening is tried while others put files aside.
const MOST_TURNS: usize = 8;
/// Memory that the database may use for pages it has read.
const CACHE_BYTES: usize = 8 << 20;

/// An old file that could not be read and stands aside, whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAside {
    /// Where it is now.
    pub path: PathBuf,
    /// Whether a newer version of the app wrote it; otherwise it is damaged.
    pub newer: bool,
    /// How many tunes of a damaged file were sound and are in the new songbook.
    pub rescued: usize,
}

/// A songbook that was opened, and what had to be put aside for it.
#[derive(Debug)]
pub struct Opened {
    /// The songbook.
    pub store: Store,
    /// The file that could not be read.
    pub set_aside: Option<SetAside>,
    /// Whether the shipped tunes have never been put into it.
    pub new: bool,
    /// Whether it can be read only: nothing can be kept in it.
    pub read_only: bool,
}

/// Why a file could not be opened.
#[derive(Debug)]
pub(super) enum Unreadable {
    /// It is not what was written.
    Damaged,
    /// A newer app wrote it.
    Newer,
    /// It may well be sound, but cannot be had now.
    Other(StoreError),
}

/// Every error of a read from a database that opened: the disk says no, or the file is not what it should be.
fn unreadable(error: impl Into<redb::Error>) -> Unreadable {
    match error.into() {
        redb::Error::Io(error) if !is_damage(&error) => {
            Unreadable::Other(StoreError::Folder(error))
        }
        _ => Unreadable::Damaged,
    }
}

/// A file that is not a database, or one cut short.
fn is_damage(error: &io::Error) -> bool {
    matches!(
        error.kind(),
        io::ErrorKind::InvalidData | io::ErrorKind::UnexpectedEof
    )
}

impl From<DatabaseError> for Unreadable {
    fn from(error: DatabaseError) -> Self {
        match error {
            DatabaseError::DatabaseAlreadyOpen => Self::Other(StoreError::InUse),
            DatabaseError::UpgradeRequired(_) | DatabaseError::RepairAborted => Self::Damaged,
            DatabaseError::Storage(StorageError::Corrupted(_)) => Self::Damaged,
            DatabaseError::Storage(StorageError::Io(error)) if is_damage(&error) => Self::Damaged,
            DatabaseError::Storage(StorageError::Io(error)) => {
                Self::Other(StoreError::Folder(error))
            }
            error => Self::Other(error.into()),
        }
    }
}

impl From<io::Error> for Unreadable {
    fn from(error: io::Error) -> Self {
        Self::Other(StoreError::Folder(error))
    }
}

impl Store {
    /// Opens the songbook in a folder, and makes both where there are none. A file that is damaged or newer than this
    /// app is renamed with the moment `now` in its name; not a byte of it is changed. Where writing is refused the
    /// songbook is opened for reading.
    ///
    /// # Errors
    /// [`StoreError`] when the folder cannot be used or another process has the songbook open.
    pub fn open(folder: &Path, now: DateTime<Utc>) -> Result<Opened, StoreError> {
        fs::create_dir_all(folder).map_err(StoreError::Folder)?;
        let path = folder.join(FILE_NAME);
        let mut set_aside = None;
        // Each turn either ends this or finds that another process has put a file aside in the meantime.
        for _ in 0..MOST_TURNS {
            let file = Reluctant::open(&path).map_err(StoreError::Folder)?;
            let newer = match read(&path, &file) {
                Ok((mut store, new)) => {
                    if let Some(aside) = &mut set_aside {
                        take_over(&mut store, aside);
                    }
                    return Ok(Opened {
                        store,
                        set_aside,
                        new,
                        read_only: file.refused().is_some(),
                    });
                }
                Err(Unreadable::Other(error)) => return Err(error),
                Err(Unreadable::Damaged) => false,
                Err(Unreadable::Newer) => true,
            };
            // The file is locked as long as `file` lives. Whoever waited for the lock may hold one that is aside by now.
            if file.is_at(&path) {
                let aside = free_name(folder, now);
                fs::rename(&path, &aside).map_err(StoreError::Folder)?;
                set_aside = Some(SetAside {
                    path: aside,
                    newer,
                    rescued: 0,
                });
            }
        }
        Err(StoreError::Folder(io::ErrorKind::InvalidData.into()))
    }
}

/// Puts the tunes of a damaged file that are still sound into the new songbook. What cannot be read or kept stays where it
/// is: in the file that stands aside.
fn take_over(store: &mut Store, aside: &mut SetAside) {
    if aside.newer {
        return;
    }
    let tunes = super::rescue::tunes(&aside.path).unwrap_or_default();
    let is_new = |added: &&Added| matches!(added, Added::New(_));
    let added = store.add(&tunes).unwrap_or_default();
    aside.rescued = added.iter().filter(is_new).count();
}

/// Opens a database and reads all that starting needs, and whether the shipped tunes are still missing.
fn read(path: &Path, file: &Reluctant) -> Result<(Store, bool), Unreadable> {
    let (database, (entries, new)) = database(file, entries)?;
    let store = Store::new(path.to_path_buf(), database, entries, file.refused());
    Ok((store, new))
}

/// Opens or makes a database and looks at it with `check`. The file is not written to unless all of that succeeds.
pub(super) fn database<T>(
    file: &Reluctant,
    check: impl FnOnce(&Database) -> Result<T, Unreadable>,
) -> Result<(Database, T), Unreadable> {
    let opened = checked(file.clone(), check)?;
    file.release()?;
    Ok(opened)
}

/// Opens or makes a database whose every checksum holds, and looks at it with `check`.
pub(super) fn checked<T>(
    backend: impl StorageBackend,
    check: impl FnOnce(&Database) -> Result<T, Unreadable>,
) -> Result<(Database, T), Unreadable> {
    let opening = || {
        let database = Builder::new()
            .set_check_integrity_on_open(true)
            .set_cache_size(CACHE_BYTES)
            .create_with_backend(backend)?;
        let seen = check(&database)?;
        Ok((database, seen))
    };
    // The database checks itself, but damage may still trip an assertion in it. That must count as damage.
    let opened = quiet::catch(std::panic::AssertUnwindSafe(opening));
    opened.unwrap_or(Err(Unreadable::Damaged))
}

/// Reads the list of tunes, in an empty file after laying out the tables, and whether the shipped tunes are missing.
pub(super) fn entries(database: &Database) -> Result<(Vec<Entry>, bool), Unreadable> {
    let reading = database.begin_read().map_err(unreadable)?;
    if reading.list_tables().map_err(unreadable)?.next().is_none() {
        lay_out(database).map_err(unreadable)?;
        return Ok((Vec::new(), true));
    }
    let file = reading.open_table(FILE).map_err(unreadable)?;
    match file.get("layout").map_err(unreadable)?.map(|l| l.value()) {
        Some(1..=LAYOUT) => {}
        Some(layout) if layout > LAYOUT => return Err(Unreadable::Newer),
        _ => return Err(Unreadable::Damaged),
    }
    // All tables must be there, also the ones that are read later.
    reading.open_table(TUNES).map_err(unreadable)?;
    reading.open_table(SETTINGS).map_err(unreadable)?;
    let shipped = reading.open_table(SHIPPED).map_err(unreadable)?;
    let new = shipped.first().map_err(unreadable)?.is_none();
    let mut entries = Vec::new();
    let table = reading.open_table(ENTRIES).map_err(unreadable)?;
    for row in table.iter().map_err(unreadable)? {
        let (id, bytes) = row.map_err(unreadable)?;
        match value::read_entry(TuneId(id.value()), bytes.value()) {
            Ok(entry) => entries.push(entry),
            Err(ValueError::Newer) => return Err(Unreadable::Newer),
            Err(ValueError::Damaged) => return Err(Unreadable::Damaged),
        }
    }
    Ok((entries, new))
}

/// Makes the tables in an empty file.
fn lay_out(database: &Database) -> Result<(), redb::Error> {
    let mut transaction = database.begin_write()?;
    transaction.set_two_phase_commit(true);
    transaction.open_table(FILE)?.insert("layout", LAYOUT)?;
    transaction.open_table(TUNES)?;
    transaction.open_table(ENTRIES)?;
    transaction.open_table(SHIPPED)?;
    transaction.open_table(SETTINGS)?;
    transaction.commit()?;
    Ok(())
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
