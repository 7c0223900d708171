//! A database file that is not written to until what it holds has proved sound.
//!
//! The database repairs and stamps a file in the act of opening it. A file that then turns out to be damaged, or a
//! newer app's, would no longer be the file that it was. So every write is held back in memory, and reads see it there;
//! once the file is known to be sound, the very same writes are carried out in the very same order.
//!
//! Until then the file also stays locked, whatever the database thinks of it, so that it can be put aside with nobody in
//! between. A file that may only be read never gets its writes: what the database stamps stays in memory.

use std::collections::BTreeMap;
use std::fs::File;
use std::io;
use std::ops::Bound;
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use redb::backends::FileBackend;
use redb::{BackendError, StorageBackend};
use same_file::Handle;

const PAGE: usize = 4096;

/// A write that waits.
#[derive(Debug)]
enum Step {
    Write(u64, Vec<u8>),
    Length(u64),
    Sync,
}

/// What has been written so far, but not to the file.
#[derive(Debug)]
struct Held {
    length: u64,
    /// How much of the file can still be seen; what lies behind was cut off.
    seen: u64,
    pages: BTreeMap<u64, Box<[u8; PAGE]>>,
    steps: Vec<Step>,
}

#[derive(Debug)]
struct Inner {
    file: FileBackend,
    /// The same file once more, to compare it with others.
    handle: Handle,
    /// Why the file may only be read.
    refused: Option<io::ErrorKind>,
    held: Mutex<Option<Held>>,
}

/// A file behind its held-back writes. Clones are the same file.
#[derive(Debug, Clone)]
pub(super) struct Reluctant(Arc<Inner>);

impl Reluctant {
    /// Opens a file, and makes it where there is none. Where writing is refused it is opened for reading.
    pub(super) fn open(path: &Path) -> io::Result<Self> {
        let writing = File::options()
            .read(true)
            .write(true)
            .create(true)
            .truncate(false)
            .open(path);
        match writing {
            Ok(file) => Self::new(file, None),
            Err(error) => match error.kind() {
                kind @ (io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem) => {
                    let file = File::open(path).map_err(|_| error)?;
                    Self::new(file, Some(kind))
                }
                _ => Err(error),
            },
        }
    }

    fn new(file: File, refused: Option<io::ErrorKind>) -> io::Result<Self> {
        let handle = Handle::from_file(file.try_clone()?)?;
        let length = file.metadata()?.len();
        let held = Held {
            length,
            seen: length,
            pages: BTreeMap::new(),
            steps: Vec::new(),
        };
        Ok(Self(Arc::new(Inner {
            file: FileBackend::new(file).map_err(io::Error::other)?,
            handle,
            refused,
            held: Mutex::new(Some(held)),
        })))
    }

    /// Why the file may only be read; `None` where it can be written to.
    pub(super) fn refused(&self) -> Option<io::ErrorKind> {
        self.0.refused
    }

    /// Whether a path still leads to this file.
    pub(super) fn is_at(&self, path: &Path) -> bool {
        Handle::from_path(path).is_ok_and(|there| there == self.0.handle)
    }

    /// Carries out what was held back; from now on writes go straight to the file. Nothing where it may only be read.
    pub(super) fn release(&self) -> io::Result<()> {
        if self.0.refused.is_some() {
            return Ok(());
        }
        let steps = self.held().take().map(|held| held.steps);
        for step in steps.into_iter().flatten() {
            match step {
                Step::Write(offset, data) => self.0.file.write(offset, &data)?,
                Step::Length(length) => self.0.file.set_len(length)?,
                Step::Sync => self.0.file.sync_data()?,
            }
        }
        Ok(())
    }

    fn held(&self) -> MutexGuard<'_, Option<Held>> {
        self.0.held.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Where in its page a place in the file is.
fn in_page(at: u64) -> usize {
    usize::try_from(at % PAGE as u64).unwrap_or_default() // below PAGE
}

impl Held {
    /// A page as it now is: written before, or from the file, or new.
    fn page(&self, file: &FileBackend, number: u64) -> io::Result<Box<[u8; PAGE]>> {
        if let Some(page) = self.pages.get(&number) {
            return Ok(page.clone());
        }
        let mut page = Box::new([0; PAGE]);
        let start = number.saturating_mul(PAGE as u64);
        let seen = usize::try_from(self.seen.saturating_sub(start)).unwrap_or(PAGE);
        file.read(start, &mut page[..seen.min(PAGE)])?;
        Ok(page)
    }

    /// The parts of pages that a range covers: page, start in the page, start in the range, length.
    fn parts(offset: u64, length: usize) -> impl Iterator<Item = (u64, usize, usize, usize)> {
        let mut done = 0;
        std::iter::from_fn(move || {
            let at = offset + done as u64;
            let (page, from) = (at / PAGE as u64, in_page(at));
            let count = (PAGE - from).min(length - done);
            let part = (page, from, done, count);
            done += count;
            (count > 0).then_some(part)
        })
    }

    fn inside(&self, offset: u64, length: usize) -> io::Result<()> {
        match offset.checked_add(length as u64) {
            Some(end) if end <= self.length => Ok(()),
            _ => Err(io::ErrorKind::UnexpectedEof.into()),
        }
    }
}

impl StorageBackend for Reluctant {
    fn len(&self) -> io::Result<u64> {
        match &*self.held() {
            Some(held) => Ok(held.length),
            None => self.0.file.len(),
        }
    }

    fn read(&self, offset: u64, out: &mut [u8]) -> io::Result<()> {
        let held = self.held();
        let Some(held) = &*held else {
            return self.0.file.read(offset, out);
        };
        held.inside(offset, out.len())?;
        if held.pages.is_empty() && offset + out.len() as u64 <= held.seen {
            return self.0.file.read(offset, out);
        }
        for (page, from, to, count) in Held::parts(offset, out.len()) {
            let page = held.page(&self.0.file, page)?;
            out[to..to + count].copy_from_slice(&page[from..from + count]);
        }
        Ok(())
    }

    fn set_len(&self, length: u64) -> io::Result<()> {
        let mut held = self.held();
        let Some(held) = &mut *held else {
            return self.0.file.set_len(length);
        };
        if length < held.length {
            // What is cut off must read as zeros if the file grows again.
            let kept = length.div_ceil(PAGE as u64);
            held.pages.split_off(&kept);
            let edge = in_page(length);
            if edge > 0
                && let Some(page) = held.pages.get_mut(&(kept - 1))
            {
                page[edge..].fill(0);
            }
            held.seen = held.seen.min(length);
        }
        held.length = length;
        held.steps.push(Step::Length(length));
        Ok(())
    }

    fn sync_data(&self) -> io::Result<()> {
        match &mut *self.held() {
            Some(held) => held.steps.push(Step::Sync),
            None => self.0.file.sync_data()?,
        }
        Ok(())
    }

    fn write(&self, offset: u64, data: &[u8]) -> io::Result<()> {
        let mut held = self.held();
        let Some(held) = &mut *held else {
            return self.0.file.write(offset, data);
        };
        held.inside(offset, data.len())?;
        for (number, from, to, count) in Held::parts(offset, data.len()) {
            let mut page = held.page(&self.0.file, number)?;
            page[from..from + count].copy_from_slice(&data[to..to + count]);
            held.pages.insert(number, page);
        }
        held.steps.push(Step::Write(offset, data.to_vec()));
        Ok(())
    }

    /// A file whose writes are still held back stays locked until it is dropped.
    fn close(&self) -> io::Result<()> {
        if self.held().is_some() {
            return Ok(());
        }
        self.0.file.close()
    }

    /// A file that may only be read is shared with its other readers.
    fn try_lock_range(&self, start: Bound<u64>, end: Bound<u64>) -> Result<bool, BackendError> {
        if self.0.refused.is_some() {
            return self.0.file.try_lock_shared_range(start, end);
        }
        self.0.file.try_lock_range(start, end)
    }

    fn try_lock_shared_range(
        &self,
        start: Bound<u64>,
        end: Bound<u64>,
    ) -> Result<bool, BackendError> {
        self.0.file.try_lock_shared_range(start, end)
    }

    fn lock_range(&self, start: Bound<u64>, end: Bound<u64>) -> Result<(), BackendError> {
        self.0.file.lock_range(start, end)
    }

    fn lock_shared_range(&self, start: Bound<u64>, end: Bound<u64>) -> Result<(), BackendError> {
        self.0.file.lock_shared_range(start, end)
    }

    fn unlock_range(&self, start: Bound<u64>, end: Bound<u64>) -> Result<(), BackendError> {
        if self.held().is_some() {
            return Ok(());
        }
        self.0.file.unlock_range(start, end)
    }

    fn query_lock_range(&self, start: Bound<u64>, end: Bound<u64>) -> Result<bool, BackendError> {
        self.0.file.query_lock_range(start, end)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file() -> (tempfile::TempDir, std::path::PathBuf) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("file");
        std::fs::write(&path, [7; 10_000]).unwrap();
        (folder, path)
    }

    fn open(path: &std::path::Path) -> Reluctant {
        Reluctant::open(path).unwrap()
    }

    fn all(backend: &Reluctant) -> Vec<u8> {
        let mut bytes = vec![0; usize::try_from(backend.len().unwrap()).unwrap()];
        backend.read(0, &mut bytes).unwrap();
        bytes
    }

    #[test]
    fn writes_are_seen_at_once_and_reach_the_file_when_they_are_released() {
        let (_folder, path) = file();
        let backend = open(&path);
        backend.write(4_090, &[1; 5_000]).unwrap();
        backend.set_len(6_000).unwrap();
        backend.set_len(20_000).unwrap();
        backend.write(15_000, &[2; 9]).unwrap();
        backend.sync_data().unwrap();

        let mut wanted = vec![7; 4_090];
        wanted.extend([1; 1_910]);
        wanted.resize(20_000, 0);
        wanted[15_000..15_009].fill(2);
        assert!(all(&backend) == wanted);
        assert!(std::fs::read(&path).unwrap() == [7; 10_000]);

        backend.release().unwrap();
        assert!(all(&backend) == wanted);
        assert!(std::fs::read(&path).unwrap() == wanted);
        backend.write(0, &[3]).unwrap();
        assert_eq!(std::fs::read(&path).unwrap()[0], 3);
    }

    #[test]
    fn a_file_that_may_only_be_read_keeps_its_bytes() {
        let (_folder, path) = file();
        let kind = io::ErrorKind::PermissionDenied;
        let backend = Reluctant::new(File::open(&path).unwrap(), Some(kind)).unwrap();
        assert_eq!(backend.refused(), Some(kind));
        backend.write(0, &[1; 100]).unwrap();
        backend.release().unwrap();
        assert_eq!(all(&backend)[..101], [[1; 100].as_slice(), &[7]].concat());
        assert!(std::fs::read(&path).unwrap() == [7; 10_000]);
    }

    #[test]
    fn a_file_knows_whether_it_is_still_at_its_path() {
        let (folder, path) = file();
        let backend = open(&path);
        assert!(backend.is_at(&path));
        let aside = folder.path().join("aside");
        std::fs::rename(&path, &aside).unwrap();
        assert!(!backend.is_at(&path) && backend.is_at(&aside));
        std::fs::write(&path, [7; 10_000]).unwrap();
        assert!(!backend.is_at(&path));
    }

    #[test]
    fn reading_past_the_end_is_an_error_as_it_is_for_a_file() {
        let (_folder, path) = file();
        let backend = open(&path);
        assert!(backend.read(9_999, &mut [0; 2]).is_err());
        assert!(backend.write(u64::MAX, &[0; 2]).is_err());
    }
}
