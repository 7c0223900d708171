//! The circle's answers over every shipped tune, and over tunes with nothing in them.

use fourcourse::chart::{Changes, Metre, Tune, safe_over};
use fourcourse::circle::{Everyone, Known, Seat, Sheet, VoiceType, best_keys};
use fourcourse::frets::Instrument;
use fourcourse::store::shipped;

#[test]
fn every_shipped_tune_has_twelve_ranked_keys_with_finite_efforts() {
    let seats = [
        Seat::playing(Instrument::mandolin()),
        Seat::singing(VoiceType::Group.compass()),
    ];
    for (name, tune) in shipped::tunes() {
        let keys = best_keys(&tune, &seats);
        assert_eq!(keys.len(), 12, "{name}");
        assert!(keys.iter().all(|key| key.effort.is_finite()), "{name}");
    }
}

#[test]
fn every_part_of_every_shipped_tune_has_something_safe_to_strum() {
    for (name, tune) in shipped::tunes() {
        let playing = tune.playing();
        let changes = Changes::of(&tune, &playing);
        let mut from = 0;
        while from < playing.bars.len() {
            let part = (playing.bars[from].part, playing.bars[from].part_pass);
            let same = playing.bars[from..].iter();
            let length = { same }
                .take_while(|bar| (bar.part, bar.part_pass) == part)
                .count();
            let safe = safe_over(&tune, &playing, &changes, from..from + length);
            let safe = safe.unwrap_or_else(|| panic!("{name} {from}"));
            for fit in [safe.chord_fit, safe.note_fit] {
                let all = fit.fits + fit.clashes;
                assert!(
                    fit.fits >= 0.0 && fit.clashes >= 0.0 && all <= 1.001,
                    "{name}"
                );
                // What clashes more than it fits is no refuge.
                assert!(fit.fits > fit.clashes, "{name} {from} {safe:?}");
            }
            from += length;
        }
    }
}

#[test]
fn a_tune_with_nothing_in_it_and_seats_that_know_nothing_are_no_trouble() {
    let tune = Tune::new(Metre::COMMON, "Gbm".parse().unwrap());
    let nothing = Seat {
        known: Some(Known::default()),
        ..Seat::playing(Instrument::mandolin().tuned(&[]))
    };
    let seats = [nothing.clone(), Seat::default()];
    assert_eq!(best_keys(&tune, &seats).len(), 12);
    assert!(Everyone::of(&seats).knows(&[]));
    let chords = [("A".parse().unwrap(), 1.0)];
    let sheet = Sheet::of(&nothing, "A".parse().unwrap(), &chords);
    assert_eq!(sheet.lines[0].shape, None);
    let playing = tune.playing();
    assert_eq!(
        safe_over(&tune, &playing, &Changes::of(&tune, &playing), 0..0),
        None
    );
}
