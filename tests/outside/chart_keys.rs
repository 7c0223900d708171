//! Chord progressions in another key, on which music21 and tonal agree (`fixtures/transpose.tsv`), as whole tunes.

use fourcourse::chart::{Bar, ChordAt, Metre, Ticks, Tune};
use fourcourse::theory::Key;

#[test]
fn a_tune_in_the_called_key_has_the_chords_that_two_libraries_give() {
    let mut rows = 0;
    for row in include_str!("fixtures/transpose.tsv").lines().skip(1) {
        let columns: Vec<_> = row.split('\t').collect();
        let [from, to, chords, expected] = columns[..] else {
            panic!("{row}")
        };
        let mut tune = Tune::new(Metre::COMMON, from.parse().unwrap());
        tune.bars.extend(chords.split(' ').map(|symbol| Bar {
            length: Ticks::WHOLE,
            chords: vec![ChordAt {
                at: Ticks::ZERO,
                symbol: symbol.parse().unwrap(),
            }],
            ..Bar::default()
        }));
        let to: Key = to.parse().unwrap();
        let moved = tune.in_key(to.tonic);
        assert_eq!(moved.key, to, "{row}");
        let moved = moved.bars.iter().map(|bar| bar.chords[0].symbol);
        let expected = expected.split(' ').map(|symbol| symbol.parse().unwrap());
        assert!(moved.eq(expected), "{row}");
        rows += 1;
    }
    assert!(rows > 100, "{rows} rows");
}
