//! Chord changes as they are played.

use super::*;
use crate::chart::Changes;

fn changes(tune: &Tune) -> Changes {
    Changes::of(tune, &tune.playing())
}

fn listed(changes: &Changes) -> Vec<(i64, i64, Symbol)> {
    let quarters = |ticks: Ticks| ticks.0 / Ticks::QUARTER.0;
    let each = changes.as_slice().iter();
    each.map(|c| (quarters(c.at), quarters(c.length), c.symbol))
        .collect()
}

#[test]
fn a_chord_holds_over_bar_lines_and_repeats_until_the_next() {
    let (g, c, d) = (chord("G"), chord("C"), chord("D"));
    assert_eq!(
        listed(&changes(&tune("|: a=G b c=C,D@3 d=G :|"))),
        [
            (0, 8, g),
            (8, 2, c),
            (10, 2, d),
            (12, 12, g),
            (24, 2, c),
            (26, 2, d),
            (28, 4, g)
        ]
    );
}

#[test]
fn the_same_chord_written_again_is_no_change() {
    assert_eq!(
        listed(&changes(&tune("a=G b=G,G@3 c=D"))),
        [(0, 8, chord("G")), (8, 4, chord("D"))]
    );
}

#[test]
fn before_the_first_symbol_nothing_sounds_but_the_last_chord_when_it_comes_round_again() {
    let changes = changes(&tune("p~1/4 a=G b=D"));
    assert_eq!(changes.at(Ticks::ZERO, false), None);
    assert_eq!(changes.at(Ticks::ZERO, true).unwrap().symbol, chord("D"));
    assert_eq!(changes.at(Ticks::QUARTER, true).unwrap().symbol, chord("G"));
    assert_eq!(changes.next(Ticks::ZERO).unwrap().symbol, chord("G"));
}

#[test]
fn now_and_next_are_found_by_time() {
    let changes = changes(&tune("a=G b=C,G@4"));
    let now = |quarters| changes.index_at(Ticks::QUARTER * quarters);
    assert_eq!(
        [now(-1), now(0), now(3), now(4), now(7), now(99)],
        [None, Some(0), Some(0), Some(1), Some(2), Some(2)]
    );
    assert_eq!(
        changes.next(Ticks::QUARTER * 4).unwrap().at,
        Ticks::QUARTER * 7
    );
    assert_eq!(changes.next(Ticks::QUARTER * 7), None);
    assert_eq!(changes.symbols(), [chord("G"), chord("C")]);
}

#[test]
fn chords_out_of_their_bar_or_out_of_order_stay_in_order() {
    let mut tune = tune("a=G b=C");
    tune.bars[0].chords[0].at = Ticks(-5);
    tune.bars[1].chords.push(ChordAt {
        at: Ticks::QUARTER * 9,
        symbol: chord("D"),
    });
    tune.bars[1].chords.push(ChordAt {
        at: Ticks::ZERO,
        symbol: chord("A"),
    });
    let changes = changes(&tune);
    let ends: Vec<_> = changes.as_slice().iter().map(|c| c.end()).collect();
    assert_eq!(ends, [Ticks::QUARTER * 4, Ticks::QUARTER * 8]);
}
