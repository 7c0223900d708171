//! The songbook that ships is read without a word.

use std::fs;
use std::path::Path;

use fourcourse::formats::abc;

#[test]
fn every_tune_of_the_songbook_is_read_without_problems() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("songbook");
    let mut count = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|extension| extension != "abc") {
            continue;
        }
        let book = abc::read(&fs::read(&path).unwrap());
        let told: Vec<_> = book.tunes.iter().flat_map(|tune| &tune.problems).collect();
        assert!(
            told.is_empty() && book.problems.is_empty(),
            "{path:?}: {told:?}"
        );
        assert_eq!(book.tunes.len(), 1, "{path:?}");
        let tune = &book.tunes[0].tune;
        let notes: usize = tune.bars.iter().map(|bar| bar.notes.len()).sum();
        let chords: usize = tune.bars.iter().map(|bar| bar.chords.len()).sum();
        assert!(
            notes > 20 && chords > 4,
            "{path:?}: {notes} notes, {chords} chords"
        );
        assert!(tune.rhythm.is_some() && tune.tempo.is_some(), "{path:?}");
        count += 1;
    }
    assert!(count >= 24, "{count} tunes");
}
