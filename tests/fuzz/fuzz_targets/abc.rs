//! The ABC reader takes any bytes: no panic, and bars that keep their rules.
#![no_main]

use fourcourse::formats::{abc, readout};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let book = abc::read(bytes);
    for read in &book.tunes {
        for bar in &read.tune.bars {
            for note in &bar.notes {
                assert!(note.at + note.length <= bar.length);
            }
        }
        readout::json(read, true, |_| String::new());
    }
});
