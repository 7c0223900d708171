//! Tempos.

use super::*;
use crate::chart::{Pace, Rhythm, Tempo, TempoRange};

#[test]
fn the_same_speed_has_many_names() {
    let reel = Tempo {
        bpm: 112.0,
        beat: Ticks::of(1, 2),
    };
    assert_eq!(reel.counted_in(Ticks::QUARTER).bpm, 224.0);
    assert_eq!(reel.counted_in(Ticks::of(1, 1)).bpm, 56.0);
    assert_eq!(reel.counted_in(Ticks::ZERO), reel);
    let jig = Tempo {
        bpm: 120.0,
        beat: Ticks::of(3, 8),
    };
    assert_eq!(jig.seconds(Ticks::of(6, 8)), 1.0);
    assert_eq!(jig.ticks(0.5), Ticks::of(3, 8));
}

#[test]
fn nonsense_in_a_tune_is_still_a_tempo() {
    for bpm in [0.0, -3.0, f32::NAN, f32::INFINITY, 1e30] {
        let quarters = Tempo {
            bpm,
            beat: Ticks::QUARTER,
        }
        .quarters_a_minute();
        assert!((5.0..=1000.0).contains(&quarters), "{bpm}");
    }
}

#[test]
fn the_tempo_of_the_tune_comes_before_the_fitting_one() {
    let mut tune = tune("a");
    tune.rhythm = Some(Rhythm::Reel);
    let jam = tune.tempo_or_fitting(Pace::SlowJam);
    assert_eq!((jam.bpm, jam.beat), (70.0, Ticks::of(1, 2)));
    let own = Tempo {
        bpm: 90.0,
        beat: Ticks::QUARTER,
    };
    tune.tempo = Some(own);
    assert_eq!(tune.tempo_or_fitting(Pace::Danced), own);
}

#[test]
fn what_is_counted_is_what_is_felt() {
    let beat = |count, unit| TempoRange::fitting(None, Metre::new(count, unit), Pace::SlowJam).beat;
    assert_eq!(beat(4, 4), Ticks::of(1, 2));
    assert_eq!(beat(2, 4), Ticks::of(1, 4));
    assert_eq!(beat(6, 8), Ticks::of(3, 8));
    assert_eq!(beat(9, 8), Ticks::of(3, 8));
    assert_eq!(beat(3, 4), Ticks::of(1, 4));
    assert_eq!(beat(7, 8), Ticks::of(1, 8));
    assert_eq!(beat(0, 4), Ticks::of(1, 4));
}
