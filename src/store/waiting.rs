//! A songbook that another window or command has open: waiting for it, and reading a copy of it.

use std::fs;
use std::io;
use std::path::Path;
use std::thread;
use std::time::Duration;

use chrono::{DateTime, Utc};
use redb::StorageBackend;
use redb::backends::InMemoryBackend;

use super::disk::{Store, StoreError};
use super::open::{FILE_NAME, Opened, Unreadable, checked, entries};

/// How often a songbook that is in use is tried again, and how long is waited in between: two seconds in all, longer than
/// any command keeps it.
const TRIES: u32 = 80;
const PAUSE: Duration = Duration::from_millis(25);

impl Store {
    /// As [`Store::open`], but waits for a moment where another command has the songbook open.
    ///
    /// # Errors
    /// As there; [`StoreError::InUse`] comes two seconds later.
    pub fn open_soon(folder: &Path, now: DateTime<Utc>) -> Result<Opened, StoreError> {
        patiently(|| Self::open(folder, now))
    }

    /// The songbook to be read. Where another window or command has it open, it is a copy in memory of what was last
    /// committed, in which nothing can be kept.
    ///
    /// The lock of the database binds writers and does not hinder reading. A copy that is torn, because the file was
    /// written to meanwhile, is known by its checksums and made again.
    ///
    /// # Errors
    /// As [`Store::open`]; [`StoreError::InUse`] where the system lets nobody read the file that is open elsewhere.
    pub fn read(folder: &Path, now: DateTime<Utc>) -> Result<Opened, StoreError> {
        patiently(|| match Self::open(folder, now) {
            Err(StoreError::InUse) => copy(&folder.join(FILE_NAME)).ok_or(StoreError::InUse),
            opened => opened,
        })
    }
}

fn patiently(open: impl Fn() -> Result<Opened, StoreError>) -> Result<Opened, StoreError> {
    for _ in 0..TRIES {
        match open() {
            Err(StoreError::InUse) => thread::sleep(PAUSE),
            opened => return opened,
        }
    }
    open()
}

/// The file as it is now, in memory; `None` where it cannot be read, is torn, or is being made.
fn copy(path: &Path) -> Option<Opened> {
    let bytes = fs::read(path).ok()?;
    let (database, (entries, new)) = in_memory(&bytes).ok()?;
    let refused = Some(io::ErrorKind::ResourceBusy);
    let store = Store::new(path.to_path_buf(), database, entries, refused);
    (!new).then_some(Opened {
        store,
        set_aside: None,
        new,
        read_only: true,
    })
}

type Found = (redb::Database, (Vec<crate::desk::Entry>, bool));

fn in_memory(bytes: &[u8]) -> Result<Found, Unreadable> {
    let backend = InMemoryBackend::new();
    backend.set_len(bytes.len() as u64)?;
    backend.write(0, bytes)?;
    checked(backend, entries)
}
