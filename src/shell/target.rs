//! Files that are written.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::process;
use std::sync::{Mutex, MutexGuard, Once, PoisonError};

/// Links that are followed to a file that is not there yet.
const MOST_LINKS: usize = 40;

/// The code of a command that was interrupted: 128 and the number of the signal, as shells give it.
const INTERRUPTED: i32 = 130;

/// What is not whole yet.
static UNFINISHED: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());
static WATCH: Once = Once::new();

/// A file on its way. It is there whole or not at all: the bytes go into a hidden file beside it, which then takes its
/// name, and which is removed when that fails or the command is interrupted. What is no file (a pipe, a device) is
/// written to as it is.
#[derive(Debug)]
pub(super) struct Target {
    file: File,
    /// Where the bytes go first, and where they are to be.
    part: Option<(PathBuf, PathBuf)>,
}

impl Target {
    pub(super) fn open(path: &Path) -> io::Result<Self> {
        if fs::metadata(path).is_ok_and(|there| !there.is_file()) {
            let file = File::options().write(true).open(path)?;
            return Ok(Self { file, part: None });
        }
        let path = behind_links(path);
        let mut name = OsString::from(".");
        name.push(path.file_name().unwrap_or_default());
        name.push(format!(".{}.part", process::id()));
        let part = path.with_file_name(name);
        WATCH.call_once(|| {
            // Where the system has no such signals, there is nothing to watch for.
            let _ = ctrlc::set_handler(|| {
                // Kept until the end: nothing may get its name now.
                let unfinished = unfinished();
                unfinished.iter().for_each(|part| remove(part));
                process::exit(INTERRUPTED);
            });
        });
        let mut unfinished = unfinished();
        let file = File::create_new(&part)?;
        unfinished.push(part.clone());
        let part = Some((part, path));
        Ok(Self { file, part })
    }

    /// Whether it is no file but a pipe or a device: what is written there is gone at once.
    pub(super) fn is_stream(&self) -> bool {
        self.part.is_none()
    }

    /// All of it is written.
    pub(super) fn keep(self) -> io::Result<()> {
        let Some((part, path)) = &self.part else {
            return Ok(());
        };
        let mut unfinished = unfinished();
        fs::rename(part, path)?;
        unfinished.retain(|other| other != part);
        Ok(())
    }
}

impl Write for Target {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.file.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.file.flush()
    }
}

impl Drop for Target {
    fn drop(&mut self) {
        let Some((part, _)) = &self.part else { return };
        let mut unfinished = unfinished();
        if unfinished.contains(part) {
            remove(part);
            unfinished.retain(|other| other != part);
        }
    }
}

fn unfinished() -> MutexGuard<'static, Vec<PathBuf>> {
    UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner)
}

fn remove(part: &Path) {
    // Where it cannot be removed, nothing better can be done.
    let _ = fs::remove_file(part);
}

/// Where a path leads: a link keeps pointing at the file that is written, be it there or not.
fn behind_links(path: &Path) -> PathBuf {
    let mut path = path.to_path_buf();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&path) {
            // A relative link starts from the folder that it lies in.
            Ok(next) => path = path.parent().unwrap_or(Path::new("")).join(next),
            Err(_) => break,
        }
    }
    path
}

/// Writes a file whole or not at all.
#[cfg(any(feature = "app", test))]
pub(super) fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut target = Target::open(path)?;
    target.write_all(bytes)?;
    target.keep()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<OsString> {
        let entries = fs::read_dir(folder).unwrap();
        entries.map(|entry| entry.unwrap().file_name()).collect()
    }

    #[test]
    fn a_file_is_replaced_whole() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("picture.png");
        write(&path, b"old and long").unwrap();
        write(&path, b"new").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"new");
        assert_eq!(names(folder.path()), ["picture.png"]);
    }

    #[test]
    fn a_write_that_fails_leaves_nothing_and_spoils_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let taken = folder.path().join("taken");
        fs::create_dir(&taken).unwrap();
        assert!(write(&taken, b"x").is_err());
        assert!(write(&folder.path().join("none/x.png"), b"x").is_err());
        assert_eq!(names(folder.path()), ["taken"]);
    }

    #[cfg(unix)]
    #[test]
    fn a_link_keeps_pointing_at_what_is_written() {
        use std::os::unix::fs::symlink;
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("far")).unwrap();
        let (far, near) = (folder.path().join("far/a.png"), folder.path().join("a.png"));
        symlink("far/a.png", &near).unwrap();
        for bytes in [b"first", b"again"] {
            write(&near, bytes).unwrap();
            assert_eq!(fs::read_link(&near).unwrap(), Path::new("far/a.png"));
            assert_eq!(fs::read(&far).unwrap(), bytes);
        }
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_device_is_written_to_as_it_is() {
        write(Path::new("/dev/null"), b"x").unwrap();
        let full = write(Path::new("/dev/full"), b"x").unwrap_err();
        assert_eq!(full.kind(), io::ErrorKind::StorageFull);
    }
}
