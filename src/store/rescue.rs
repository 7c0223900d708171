//! Tunes found in the bytes of a songbook that cannot be opened any more.
//!
//! A tune is written as one run of bytes with a check sum of its own, so it is known for what it is wherever it lies,
//! whatever became of the pages that led to it. Nothing else is looked for: which of several settings was the last one,
//! the bytes alone do not say.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use crate::chart::Tune;

use super::value;

/// So much of a file is looked through; ten thousand tunes take some 30 MB.
const MOST_BYTES: u64 = 1 << 29;
/// No tune takes more than this.
const MOST_OF_ONE: usize = 1 << 22;

/// All sound tunes of a file, in the order in which they lie there. A tune that was written more than once is found more
/// than once.
pub(super) fn tunes(path: &Path) -> io::Result<Vec<Tune>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(MOST_BYTES).read_to_end(&mut bytes)?;
    let mut tunes = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        let end = bytes.len().min(at + MOST_OF_ONE);
        match value::find_tune(&bytes[at..end]) {
            Some((tune, length)) => {
                tunes.push(tune);
                at += length;
            }
            None => at += 1,
        }
    }
    Ok(tunes)
}
