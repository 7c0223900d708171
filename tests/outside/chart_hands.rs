//! The right hand and the speed, as the project's sheet of trade facts has them. Tags: C common practice without a
//! source, M from memory, X worked out.

use fourcourse::chart::{
    Direction, Metre, Pace, Rhythm, StrumPattern, TempoRange, Ticks, direction_at,
};

/// The directions of the eighths of a bar: D and U.
fn eighths(count: u8, unit: u8) -> String {
    let metre = Metre::new(count, unit);
    let number = metre.bar().div_rem(Ticks::of(1, 8)).0;
    let way = |i| match direction_at(metre, Ticks::of(i, 8)) {
        Direction::Down => 'D',
        Direction::Up => 'U',
    };
    (0..number).map(way).collect()
}

#[test]
fn direction_follows_the_position_in_the_bar() {
    // C: "4/4, 2/4, 3/4: on-beat eighths down, off-beat up".
    assert_eq!(eighths(4, 4), "DUDUDUDU");
    assert_eq!(eighths(2, 4), "DUDU");
    assert_eq!(eighths(3, 4), "DUDUDU");
    // C: "Jigs: DUD DUD; 9/8: DUD three times".
    assert_eq!(eighths(6, 8), "DUDDUD");
    assert_eq!(eighths(9, 8), "DUDDUDDUD");
    // X: "a one-eighth pickup is up in a reel and down in a jig".
    assert!(eighths(4, 4).ends_with('U'));
    assert!(eighths(6, 8).ends_with('D'));
}

#[test]
fn strums_have_their_trade_shapes() {
    let marks = |name: &str, count, unit| {
        let pattern = StrumPattern::named(name, Metre::new(count, unit)).unwrap();
        pattern.to_string().replace('>', "")
    };
    // C: "Beginner 4/4: down, down-up, down, down; also D DU D DU".
    assert_eq!(marks("beginner", 4, 4), "D. DU D. D.");
    assert_eq!(marks("d-du", 4, 4), "D. DU D. DU");
    // C: "boom-chuck: bass on 1 and 3, chuck on 2 and 4; chop on 2 and 4 only".
    assert_eq!(marks("boom-chuck", 4, 4), "b. D. b. D.");
    assert_eq!(marks("chop", 4, 4), ".. x. .. x.");
    // C: "waltz D d d or D du du".
    assert_eq!(marks("waltz", 3, 4), "D. D. D.");
    assert_eq!(marks("waltz-du", 3, 4), "D. DU DU");
    // M: "Shuffle: long-short-short".
    assert_eq!(marks("shuffle", 4, 4), "D. DU D. DU");
    // C: "Jigs: DUD DUD; 9/8: DUD three times".
    assert_eq!(marks("jig", 6, 8), "DUD DUD");
    assert_eq!(marks("slip-jig", 9, 8), "DUD DUD DUD");
}

#[test]
fn tempos_are_those_of_the_sheet() {
    // C/M: beats a minute as felt, "two a bar unless said": (danced), (slow jam).
    let sheet = [
        (Rhythm::Reel, (4, 4), 2, (108.0, 124.0), (60.0, 80.0)),
        (Rhythm::Reel, (2, 2), 2, (108.0, 124.0), (60.0, 80.0)),
        (Rhythm::Jig, (6, 8), 2, (108.0, 124.0), (60.0, 80.0)),
        (Rhythm::Hornpipe, (4, 4), 2, (92.0, 100.0), (55.0, 70.0)),
        (Rhythm::Polka, (2, 4), 2, (132.0, 140.0), (70.0, 90.0)),
        (Rhythm::Waltz, (3, 4), 3, (110.0, 130.0), (80.0, 96.0)),
    ];
    for (rhythm, (count, unit), beats, danced, jam) in sheet {
        let metre = Metre::new(count, unit);
        for (pace, bpm) in [(Pace::Danced, danced), (Pace::SlowJam, jam)] {
            let range = TempoRange::fitting(Some(&rhythm), metre, pace);
            assert_eq!(
                (range.bpm, range.beat * beats),
                (bpm, metre.bar()),
                "{rhythm:?}"
            );
        }
    }
    // "slip jig (3 a bar) about 144 and 70-90"; "bluegrass song 90-130 and about 70".
    let middle = |rhythm, metre, pace| TempoRange::fitting(Some(&rhythm), metre, pace).middle();
    let slip = middle(Rhythm::SlipJig, Metre::new(9, 8), Pace::Danced);
    assert_eq!((slip.bpm, slip.beat * 3), (144.0, Ticks::of(9, 8)));
    assert_eq!(middle(Rhythm::Song, Metre::COMMON, Pace::SlowJam).bpm, 70.0);
    // "A reel is quoted as 224 or 112".
    let reel = fourcourse::chart::Tempo {
        bpm: 112.0,
        beat: Ticks::of(1, 2),
    };
    assert_eq!(reel.counted_in(Ticks::QUARTER).bpm, 224.0);
}
