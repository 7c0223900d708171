//! The ABC reader takes any bytes: no panic, and bars that keep their rules.
#![no_main]

use fourcourse::formats::readout::{Listing, ReadOut};
use fourcourse::formats::{abc, limits};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let book = abc::read(bytes);
    let mut room = limits::PLAYED;
    for read in &book.tunes {
        for bar in &read.tune.bars {
            for note in &bar.notes {
                assert!(note.at + note.length <= bar.length);
            }
        }
        let listing = Listing::played(&read.tune, &mut room);
        let out = ReadOut::of(read, &listing, |problem| problem.kind.id().to_owned());
        serde_json::to_writer(std::io::sink(), &out).expect("a read-out is plain data");
    }
});
