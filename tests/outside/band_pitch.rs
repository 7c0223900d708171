//! Every note of every voice is in tune: equal temperament around the A of ISO 16:1975 (440 Hz) and around others.

use fourcourse::band::Voice;
use fourcourse::band::voice::{BASS, CHOP, DRONES, GUITAR, MANDOLIN};

use crate::spectrum::{SHORT, WINDOW, cents, frequency, note};

/// The voices with their lowest and highest notes: a mandolin from open G to fret 24 of the E course, a guitar from the
/// low E of a dropped D to fret 20, a bass from a low B to two octaves above the open G. From memory.
const RANGES: [(&str, Voice, u8, u8); 5] = [
    ("mandolin", MANDOLIN, 55, 100),
    ("chop", CHOP, 55, 100),
    ("guitar", GUITAR, 38, 84),
    ("bass", BASS, 23, 67),
    ("drones", DRONES, 43, 88),
];

/// The pitch of a stroke, before the two strings of the course have drifted a quarter of a turn apart: then the first
/// partial beats, and what it does in the hollow of a beat is no pitch.
fn of_stroke(voice: Voice, rate: f64, hz: f64) -> f64 {
    let (window, seconds) = if hz < 400.0 {
        (WINDOW, 0.6)
    } else {
        (SHORT, 0.16)
    };
    frequency(&note(rate, voice, hz, 0.7, seconds), 480, rate, hz, window)
}

fn worst(a4: f64, rate: f64) -> Vec<String> {
    let mut wrong = Vec::new();
    for (name, voice, low, high) in RANGES {
        let mut most: f64 = 0.0;
        for midi in low..=high {
            let wanted = a4 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
            let off = cents(of_stroke(voice, rate, wanted), wanted);
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
fn what_rings_on_stays_within_a_cent() {
    // Over several beats the louder string is what a window of 1.4 s hears.
    let rate = 48_000.0;
    for (name, voice, _, high) in RANGES {
        for midi in [high - 12, high - 7, high] {
            let hz = 440.0 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
            let sound = note(rate, voice, hz, 0.7, 2.1);
            let off = cents(frequency(&sound, 480, rate, hz, 4 * WINDOW), hz);
            assert!(off.abs() < 1.0, "{name} {midi}: {off:.2} cents");
        }
    }
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
            let off = cents(of_stroke(alone, rate, wanted), wanted);
            assert!(off.abs() < 0.1, "{name} {midi}: {off:.3} cents");
        }
    }
}

#[test]
fn the_partials_of_wire_run_ahead_as_stiffness_makes_them() {
    // f(k) = k f sqrt(1 + B k^2): H. Fletcher, "Normal vibration frequencies of a stiff piano string", Journal of the
    // Acoustical Society of America 36(1), 1964; here from the first partial on, which is what is tuned.
    let rate = 48_000.0;
    // The bass is left out: what its strings lose bends its partials more than its wire would.
    for (name, voice, hz) in [
        ("mandolin", MANDOLIN, 293.66),
        ("mandolin", MANDOLIN, 440.0),
        ("guitar", GUITAR, 110.0),
        ("guitar", GUITAR, 196.0),
    ] {
        // Struck near the end, where no low partial has a node.
        let alone = Voice {
            second: 0.0,
            pick: 0.07,
            noise: 0.0,
            ..voice
        };
        let sound = note(rate, alone, hz, 1.0, 0.6);
        let b = voice.stiffness;
        for k in 2..=8 {
            let k = f64::from(k);
            let wanted = k * hz * ((1.0 + b * k * k) / (1.0 + b)).sqrt();
            let found = frequency(&sound, 480, rate, wanted, WINDOW);
            println!(
                "{name}, partial {k}: {:.2} cents ahead, {:.2} wanted",
                cents(found, k * hz),
                cents(wanted, k * hz)
            );
            let off = cents(found, wanted).abs();
            assert!(
                off < 0.03 + 0.15 * cents(wanted, k * hz),
                "{name}, partial {k}"
            );
        }
    }
}
