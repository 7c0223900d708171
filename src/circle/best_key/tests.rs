//! Keys for small tunes and circles, each named after what it promises.

use super::*;
use crate::chart::{Bar, ChordAt, Metre, Note, Ticks};
use crate::circle::Known;
use crate::theory::{PitchClass, Reads};
use proptest::prelude::*;

/// A tune of a bar for each chord, with some notes in its first bar.
fn tune(key: &str, chords: &str, notes: &str) -> Tune {
    let quarter = Ticks(161_280);
    let mut tune = Tune::new(Metre::COMMON, key.parse().unwrap());
    for symbol in chords.split(' ') {
        tune.bars.push(Bar {
            length: quarter * 4,
            chords: vec![ChordAt {
                at: Ticks::ZERO,
                symbol: symbol.parse().unwrap(),
            }],
            ..Bar::default()
        });
    }
    let notes = notes.split_whitespace().map(|note| note.parse().unwrap());
    let note = |(i, pitch): (i64, Pitch)| Note::new(quarter * i, quarter, pitch);
    tune.bars[0].notes = (0..).zip(notes).map(note).collect();
    tune
}

fn by_id(id: &str) -> Instrument {
    Instrument::by_id(id).unwrap()
}

fn order(keys: &[RankedKey]) -> Vec<String> {
    keys.iter().map(|ranked| ranked.key.to_string()).collect()
}

#[test]
fn a_singers_top_note_goes_before_easy_shapes() {
    // D4 to A5 spans as much as the singer has: only a fourth lower, in A, does it fit.
    let tune = tune("D", "D G A", "D4 A4 A5");
    let singer = Seat::singing("A3-E5".parse().unwrap());
    let keys = best_keys(&tune, &[singer, Seat::playing(Instrument::mandolin())]);
    let voice = |ranked: &RankedKey| ranked.seats[0].voice.unwrap();
    assert_eq!(keys[0].key.to_string(), "A");
    assert_eq!((voice(&keys[0]).over, voice(&keys[0]).under), (0, 0));
    // In D, seven semitones under the lowest note are the lesser evil than five over the top.
    let d = keys.iter().find(|ranked| ranked.moved == 0).unwrap();
    assert_eq!((voice(d).over, voice(d).under), (-7, 7));
}

#[test]
fn a_beginner_is_offered_the_key_of_the_known_shapes() {
    let tune = tune("Bb", "Bb Eb F", "Bb4");
    let beginner = Seat {
        known: Some(Known::of(["G", "C", "D"].map(|c| c.parse().unwrap()))),
        ..Seat::playing(Instrument::mandolin())
    };
    let keys = best_keys(&tune, &[beginner]);
    let hands = keys[0].seats[0].hands.as_ref().unwrap();
    assert_eq!(
        (keys[0].key.to_string(), hands.capo.known, hands.drones),
        ("G".to_owned(), 3, 2)
    );
}

#[test]
fn mandolins_like_the_keys_of_the_circle_best() {
    // Common practice: G A C D before the flat keys.
    let keys = best_keys(
        &tune("Ab", "Ab Db Eb", "Ab4"),
        &[Seat::playing(Instrument::mandolin())],
    );
    let mut first = order(&keys)[..4].to_vec();
    first.sort();
    assert_eq!(first, ["A", "C", "D", "G"]);
}

#[test]
fn a_guitar_takes_a_capo_for_the_singers_key() {
    let seats = [Seat::playing(by_id("guitar"))];
    let keys = best_keys(&tune("Bb", "Bb Eb F", "Bb4"), &seats);
    let b_flat = keys.iter().find(|ranked| ranked.moved == 0).unwrap();
    let capo = &b_flat.seats[0].hands.as_ref().unwrap().capo;
    assert_eq!((capo.fret, capo.shapes.to_string()), (3, "G".to_owned()));
}

#[test]
fn a_melody_below_the_lowest_string_is_told_and_played_an_octave_up() {
    let low = melody_in_key(&Instrument::mandolin(), "E3-C4".parse().unwrap()).0;
    assert_eq!((low.octave, low.below, low.highest_fret), (1, 0, 0));
    let wide = melody_in_key(&Instrument::mandolin(), "F#3-B5".parse().unwrap()).0;
    assert_eq!((wide.octave, wide.below, wide.highest_fret), (0, 1, 7));
}

#[test]
fn a_banjo_is_set_up_for_the_key_and_its_shapes_are_those_of_that_tuning() {
    let keys = best_keys(&tune("D", "D G A", "D4"), &[Seat::playing(by_id("banjo"))]);
    let d = keys.iter().find(|ranked| ranked.moved == 0).unwrap();
    let hands = d.seats[0].hands.as_ref().unwrap();
    // The sheet of trade facts: D from double C, capo 2.
    assert_eq!(hands.setup.unwrap().tuning.unwrap().id, "double-c");
    assert_eq!(
        (hands.capo.fret, hands.capo.shapes.to_string()),
        (2, "C".to_owned())
    );
    assert!(hands.drones >= 2);
}

#[test]
fn a_clarinet_reads_its_own_key() {
    let keys = best_keys(&tune("A", "A D E", "A4"), &[Seat::reading(Reads::BFlat)]);
    let a = keys.iter().find(|ranked| ranked.moved == 0).unwrap();
    assert_eq!(a.seats[0].written.to_string(), "B");
    // Five sharps are two more than anybody reads gladly.
    assert_eq!(a.seats[0].effort, 1.0);
}

proptest! {
    #[test]
    fn all_twelve_keys_come_once_in_order_of_effort(
        low in 40..70, span in 0..30, melody in 50..80, wide in 0..24, mandolin in proptest::bool::ANY,
    ) {
        let key: Key = "D".parse().unwrap();
        let pitch = |midi| key.spell_midi(midi);
        let mut tune = tune("D", "D Em A7", "");
        tune.bars[0].notes = [melody, melody + wide]
            .map(|midi| Note::new(Ticks::ZERO, Ticks(161_280), pitch(midi)))
            .to_vec();
        let mut seats = vec![Seat::singing(Compass::between(pitch(low), pitch(low + span)))];
        if mandolin {
            seats.push(Seat::playing(Instrument::mandolin()));
        }
        let keys = best_keys(&tune, &seats);
        let mut classes: Vec<_> = keys.iter().map(|ranked| ranked.key.tonic.class()).collect();
        classes.sort();
        prop_assert_eq!(classes, (0..12).map(PitchClass::new).collect::<Vec<_>>());
        prop_assert!(keys.windows(2).all(|pair| pair[0].effort <= pair[1].effort));
        for ranked in keys {
            let voice = ranked.seats[0].voice.unwrap();
            prop_assert_eq!(voice.melody.semitones(), wide);
            prop_assert_eq!(voice.over, voice.melody.high.midi() - low - span);
            prop_assert_eq!((ranked.moved - voice.melody.low.midi() + melody).rem_euclid(12), 0);
        }
    }
}
