//! Every note of every voice is in tune: equal temperament around the A of ISO 16:1975 (440 Hz) and around others.

use fourcourse::band::Voice;
use fourcourse::band::voice::{BASS, CHOP, DRONES, GUITAR, MANDOLIN};

use crate::spectrum::{cents, frequency, note};

/// The voices with their lowest and highest notes: a mandolin from open G to fret 24 of the E course, a guitar from the
/// low E of a dropped D to fret 20, a bass from a low B to two octaves above the open G. From memory.
const RANGES: [(&str, Voice, u8, u8); 5] = [
    ("mandolin", MANDOLIN, 55, 100),
    ("chop", CHOP, 55, 100),
    ("guitar", GUITAR, 38, 84),
    ("bass", BASS, 23, 67),
    ("drones", DRONES, 43, 88),
];

fn worst(a4: f64, rate: f64) -> Vec<String> {
    let mut wrong = Vec::new();
    for (name, voice, low, high) in RANGES {
        let mut most: f64 = 0.0;
        for midi in low..=high {
            let wanted = a4 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
            let sound = note(rate, voice, wanted, 0.7, 0.55);
            let off = cents(frequency(&sound, 960, rate, wanted), wanted);
            most = most.max(off.abs());
            if off.abs() > 1.0 {
                wrong.push(format!(
                    "{name} {midi} at {a4} Hz and {rate}: {off:.2} cents"
                ));
            }
        }
        println!("{name} at A = {a4} Hz and {rate} frames a second: {most:.3} cents");
    }
    wrong
}

#[test]
fn every_note_is_within_a_cent_at_440() {
    let wrong = [worst(440.0, 44_100.0), worst(440.0, 48_000.0)].concat();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn every_note_is_within_a_cent_at_415() {
    let wrong = [worst(415.0, 44_100.0), worst(415.0, 48_000.0)].concat();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn every_note_is_within_a_cent_at_466() {
    let wrong = [worst(466.0, 44_100.0), worst(466.0, 48_000.0)].concat();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_line_alone_is_within_a_tenth_of_a_cent() {
    // Without the second string nothing beats: what is left is the error of the tuning filter.
    let rate = 44_100.0;
    for (name, voice, low, high) in RANGES {
        let alone = Voice {
            second: 0.0,
            ..voice
        };
        for midi in low..=high {
            let wanted = 440.0 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
            let off = cents(
                frequency(&note(rate, alone, wanted, 0.7, 0.6), 960, rate, wanted),
                wanted,
            );
            assert!(off.abs() < 0.1, "{name} {midi}: {off:.3} cents");
        }
    }
}
