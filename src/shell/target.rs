//! Files that are written.

use std::ffi::OsString;
use std::fs;
use std::io;
use std::path::Path;

/// Writes a file whole or not at all: the bytes go into a file beside it, which then takes its name. What is no file (a
/// pipe, a device) is written to as it is.
pub(super) fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    if fs::metadata(path).is_ok_and(|there| !there.is_file()) {
        return fs::write(path, bytes);
    }
    // A link keeps pointing at the file that is written.
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf());
    let mut beside = OsString::from(&path);
    beside.push(format!(".{}.part", std::process::id()));
    let written = fs::write(&beside, bytes).and_then(|()| fs::rename(&beside, &path));
    if written.is_err() {
        let _ = fs::remove_file(&beside); // the error that counts is the first
    }
    written
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

    #[cfg(target_os = "linux")]
    #[test]
    fn a_device_is_written_to_as_it_is() {
        write(Path::new("/dev/null"), b"x").unwrap();
        let full = write(Path::new("/dev/full"), b"x").unwrap_err();
        assert_eq!(full.kind(), io::ErrorKind::StorageFull);
    }
}
