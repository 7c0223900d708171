//! The right hand.

use super::*;
use crate::chart::{Count, Direction, NotAStrum, Rhythm, Stroke, StrumPattern};

fn read(text: &str) -> StrumPattern {
    StrumPattern::read(text, Metre::COMMON).unwrap()
}

#[test]
fn every_built_in_pattern_is_a_bar_of_its_metre_and_reads_back_as_it_prints() {
    let mut seen = vec![];
    for unit in [2, 4, 8, 16] {
        for count in 0..=15 {
            let metre = Metre::new(count, unit);
            for pattern in StrumPattern::built_in(metre) {
                let length: Ticks = pattern.slots.iter().map(|_| pattern.step).sum();
                let bar = if count == 0 {
                    Ticks::WHOLE
                } else {
                    metre.bar()
                };
                assert_eq!(length, bar, "{} in {metre}", pattern.name);
                assert!(
                    pattern
                        .slots
                        .iter()
                        .any(|slot| slot.stroke != Stroke::Silent)
                );
                let again = StrumPattern::read(&pattern.to_string(), metre).unwrap();
                assert_eq!(
                    (&again.slots, again.step),
                    (&pattern.slots, pattern.step),
                    "{pattern}"
                );
                assert_eq!(StrumPattern::named(&pattern.name, metre).unwrap(), pattern);
                seen.push(pattern.name);
            }
        }
    }
    for name in StrumPattern::NAMES {
        assert!(seen.iter().any(|s| s == name), "{name} is in no metre");
    }
    assert!(
        seen.iter()
            .all(|name| StrumPattern::NAMES.contains(&name.as_str()))
    );
}

#[test]
fn the_hand_goes_where_the_place_in_the_bar_says_in_every_built_in_pattern() {
    // The table writes D and U out: they must be what the position gives.
    for (count, unit) in [
        (4, 4),
        (2, 4),
        (3, 4),
        (2, 2),
        (6, 8),
        (9, 8),
        (12, 8),
        (3, 2),
        (5, 4),
    ] {
        let metre = Metre::new(count, unit);
        for pattern in StrumPattern::built_in(metre) {
            let strokes: Vec<_> = pattern.slots.iter().map(|s| (s.stroke, s.accent)).collect();
            let derived = StrumPattern::of(&pattern.name, metre, pattern.step, &strokes);
            assert_eq!(derived, pattern, "{} in {metre}", pattern.name);
        }
    }
}

#[test]
fn marks_share_the_bar() {
    assert_eq!(read("D . D U D . D .").to_string(), "D. DU D. D.");
    assert_eq!(read("| b >D b >D |").step, Ticks::QUARTER);
    assert_eq!(read("DDDUDU").step, Ticks::of(1, 6));
    assert_eq!(read(" shuffle ").name, "shuffle");
    let island = read("D. DU .U DU");
    assert_eq!(island.slots[4].direction, Direction::Down); // the silent stroke goes down all the same
    assert_eq!(island.name, "");
}

#[test]
fn what_is_no_pattern_is_refused_with_its_place() {
    let wrong = |text: &str| StrumPattern::read(text, Metre::COMMON).unwrap_err();
    assert_eq!(wrong("D. Dq"), NotAStrum::Mark(5));
    assert_eq!(wrong(""), NotAStrum::Empty);
    assert_eq!(wrong(" >| "), NotAStrum::Empty);
    assert_eq!(wrong(&"D".repeat(11)), NotAStrum::Uneven);
    assert_eq!(wrong(&"D".repeat(100_000)), NotAStrum::Uneven);
}

#[test]
fn a_pickup_takes_the_end_of_the_pattern_a_short_bar_the_start_and_a_long_one_goes_round() {
    let pattern = read("D. DU D. DU");
    let marks = |length, offset| -> Vec<(i64, usize)> {
        let eighth = Ticks::of(1, 8).0;
        let slots = pattern.for_bar(length, offset);
        slots.map(|(at, index, _)| (at.0 / eighth, index)).collect()
    };
    assert_eq!(marks(Ticks::of(1, 8), Ticks::of(7, 8)), [(0, 7)]);
    assert_eq!(
        marks(Ticks::of(3, 8), Ticks::of(5, 8)),
        [(0, 5), (1, 6), (2, 7)]
    );
    assert_eq!(marks(Ticks::of(1, 4), Ticks::ZERO), [(0, 0), (1, 1)]);
    assert_eq!(
        marks(Ticks::of(10, 8), Ticks::ZERO)[7..],
        [(7, 7), (8, 0), (9, 1)]
    );
    // A pickup that begins between two slots waits for the next.
    let at: Vec<_> = pattern
        .for_bar(Ticks::of(3, 16), Ticks::of(13, 16))
        .map(|s| s.0)
        .collect();
    assert_eq!(at, [Ticks::of(1, 16)]);
    assert_eq!(marks(Ticks(i64::MAX), Ticks::ZERO).len(), 4096);
}

#[test]
fn counting_says_numbers_and_the_ands_between() {
    use Count::{A, And, E, Number};
    let counts = |text: &str, count, unit| -> Vec<Count> {
        StrumPattern::read(text, Metre::new(count, unit))
            .unwrap()
            .counts()
            .collect()
    };
    assert_eq!(
        counts("beginner", 4, 4),
        [
            Number(1),
            And,
            Number(2),
            And,
            Number(3),
            And,
            Number(4),
            And
        ]
    );
    assert_eq!(counts("jig", 6, 8), [1, 2, 3, 4, 5, 6].map(Number));
    assert_eq!(
        counts("reel", 2, 4),
        [Number(1), E, And, A, Number(2), E, And, A]
    );
    assert_eq!(counts("down-up", 5, 8), [1, 2, 3, 4, 5].map(Number));
    assert_eq!(counts("DDDUDU", 4, 4)[1], Count::Nothing);
}

#[test]
fn a_tune_has_its_own_strum_or_its_parts_or_a_fitting_one() {
    let mut tune = tune("P:A a b P:B c d e f g");
    tune.rhythm = Some(Rhythm::Reel);
    assert_eq!(tune.strum_at(0).name, "reel");
    tune.strum = Some(read("chop"));
    tune.parts[1].strum = Some(read("D U D U"));
    assert_eq!(tune.strum_at(1).name, "chop");
    assert_eq!(tune.strum_at(2).name, "");
    // A change of metre that neither fits.
    tune.bars[3].metre = Some(Metre::new(3, 4));
    assert_eq!(tune.strum_at(3).name, "waltz");
    assert_eq!(tune.strum_at(usize::MAX).name, "waltz");
}

#[test]
fn through_a_crooked_bar_the_hand_goes_on() {
    let mut tune = tune("a b~6/4 c~2/4 d e");
    tune.rhythm = Some(Rhythm::Reel);
    tune.bars[1].metre = Some(Metre::new(6, 4));
    tune.bars[2].metre = Some(Metre::new(2, 4));
    tune.bars[3].metre = Some(Metre::COMMON);
    for bar in 0..5 {
        assert_eq!(tune.strum_at(bar).to_string(), ">D. DU >D. DU", "bar {bar}");
    }
    let playing = tune.playing();
    let six = &playing.bars[1];
    assert_eq!(six.metre.beats(), [Ticks::QUARTER; 6]);
    let slots = tune.strum_at(1);
    assert_eq!(slots.for_bar(six.length, six.offset).count(), 12);
}

#[test]
fn any_metre_has_something_to_play() {
    for (count, unit) in [
        (1, 1),
        (5, 8),
        (7, 8),
        (7, 4),
        (11, 8),
        (255, 32),
        (255, 1),
        (0, 4),
        (13, 16),
    ] {
        let metre = Metre::new(count, unit);
        assert!(
            !StrumPattern::fitting(None, metre).slots.is_empty(),
            "{metre}"
        );
        assert!(
            !StrumPattern::fitting(Some(&Rhythm::Jig), metre)
                .slots
                .is_empty()
        );
    }
    let bulgarian = Metre {
        groups: [2, 2, 3, 0, 0, 0],
        ..Metre::new(7, 8)
    };
    assert_eq!(
        StrumPattern::fitting(None, bulgarian).to_string(),
        ">D. D. D.."
    );
}
