//! How strings ring: against the formulas of D. Jaffe and J. Smith (1983) and of J. Smith, "Physical Audio Signal
//! Processing", and against the physics of a plucked string.

use fourcourse::band::voice::{BASS, DRONES, GUITAR, MANDOLIN};
use fourcourse::band::{Course, Touch, Voice};

use crate::spectrum::{WINDOW, amplitude, db, note, spectrum};

const RATE: f64 = 48_000.0;

/// Seconds in which the partial near `hz` falls by 60 dB, from two windows `apart` seconds apart.
fn t60(sound: &[f32], hz: f64, apart: f64) -> f64 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "frames"
    )]
    let later = 960 + (apart * RATE) as usize;
    let fall = amplitude(&spectrum(sound, 960, WINDOW), RATE, hz)
        / amplitude(&spectrum(sound, later, WINDOW), RATE, hz);
    60.0 * apart / db(fall)
}

#[test]
fn the_first_partial_falls_by_60_db_in_the_time_of_the_formula() {
    // A partial that loses the factor g = 10^(-3 P / T60) every period P falls by 60 dB in T60 (Smith). What T60 is
    // wanted is the voice's own: T60(f) = T60(440 Hz) (440 / f)^power.
    for (name, voice, notes) in [
        ("mandolin", MANDOLIN, [55, 62, 69, 76, 88]),
        ("guitar", GUITAR, [40, 45, 52, 64, 76]),
        ("bass", BASS, [28, 33, 38, 43, 55]),
        ("drones", DRONES, [43, 55, 62, 69, 76]),
    ] {
        for midi in notes {
            let hz = 440.0 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
            let wanted = voice.t60 * (440.0 / hz).powf(voice.t60_power);
            let alone = Voice {
                second: 0.0,
                ..voice
            };
            let found = t60(&note(RATE, alone, hz, 0.7, 0.8), hz, 0.4);
            let off = found / wanted - 1.0;
            assert!(
                off.abs() < 0.01,
                "{name} {midi}: {found:.3} s, not {wanted:.3} s"
            );
        }
    }
}

#[test]
fn a_partial_in_the_treble_falls_in_the_time_of_the_table() {
    for (name, voice, midi) in [
        ("mandolin", MANDOLIN, 69),
        ("guitar", GUITAR, 52),
        ("bass", BASS, 33),
    ] {
        let hz = 440.0 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
        let partial = (voice.treble_hz / hz).round();
        // Clear of a node under the pick, and not away from where it is looked for.
        let alone = Voice {
            second: 0.0,
            stiffness: 0.0,
            pick: 0.5 / partial,
            noise: 0.0,
            ..voice
        };
        let found = t60(&note(RATE, alone, hz, 1.0, 0.5), partial * hz, 0.05);
        let wanted = voice.treble_t60;
        // The partial lies up to half a string beside the treble frequency.
        assert!(
            (found / wanted - 1.0).abs() < 0.06,
            "{name}: {found:.3} s, not {wanted:.3} s"
        );
    }
}

#[test]
fn higher_partials_fall_sooner() {
    for (voice, hz) in [(MANDOLIN, 196.0), (GUITAR, 110.0), (BASS, 55.0)] {
        let alone = Voice {
            second: 0.0,
            pick: 0.07,
            ..voice
        };
        let sound = note(RATE, alone, hz, 1.0, 0.7);
        let times: Vec<f64> = (1..=8)
            .map(|k| t60(&sound, f64::from(k) * hz, 0.2))
            .collect();
        assert!(
            times.windows(2).all(|two| two[1] < two[0]),
            "{hz}: {times:.2?}"
        );
    }
}

#[test]
fn partials_with_a_node_under_the_pick_are_missing() {
    // Plucked at 1/n of its length, a string lacks partials n, 2n...: each has a node there (any textbook of acoustics).
    for (node, pick) in [(3, 1.0 / 3.0), (4, 0.25), (5, 0.2), (7, 1.0 / 7.0)] {
        let voice = Voice {
            pick,
            noise: 0.0,
            ..MANDOLIN
        };
        let (hz, rate) = (196.0, 48_000.0);
        let seen = spectrum(&note(rate, voice, hz, 1.0, 0.5), 480, WINDOW);
        let level = |k: i32| db(amplitude(&seen, rate, f64::from(k) * hz));
        for k in [node, 2 * node] {
            let around = level(k - 1).min(level(k + 1));
            assert!(
                around - level(k) > 25.0,
                "1/{node}, partial {k}: {:.1} dB",
                around - level(k)
            );
        }
    }
}

#[test]
fn a_harder_stroke_is_louder_and_brighter() {
    for (name, voice, hz) in [
        ("mandolin", MANDOLIN, 293.7),
        ("guitar", GUITAR, 110.0),
        ("bass", BASS, 49.0),
    ] {
        let share = |force: f32| {
            let seen = spectrum(&note(RATE, voice, hz, force, 0.5), 0, WINDOW);
            let sum = |from: f64, to: f64| {
                let bins = seen.iter().enumerate();
                let within =
                    bins.filter(|(i, _)| (from..to).contains(&(*i as f64 * RATE / WINDOW as f64)));
                within.map(|(_, bin)| bin.norm_sqr()).sum::<f64>()
            };
            (sum(0.0, RATE), sum(8.0 * hz, RATE) / sum(0.0, RATE))
        };
        let (soft, hard) = (share(0.25), share(1.0));
        assert!(
            hard.0 / soft.0 > 12.0,
            "{name}: {:.1} times the energy",
            hard.0 / soft.0
        );
        assert!(
            hard.1 > 2.0 * soft.1,
            "{name}: {:.1e} and {:.1e} above partial 8",
            soft.1,
            hard.1
        );
    }
}

#[test]
fn nothing_lies_between_the_partials() {
    // The line is linear and the same from frame to frame: it has no way to fold a partial back. What is found in the
    // middle third between two partials, from the scratch's end on, is at least 70 dB below the strongest partial.
    for (name, voice, hz) in [
        ("mandolin", MANDOLIN, 1318.5),
        ("mandolin", MANDOLIN, 659.3),
        ("guitar", GUITAR, 659.3),
        ("bass", BASS, 196.0),
    ] {
        let seen = spectrum(&note(RATE, voice, hz, 1.0, 0.6), 4800, WINDOW);
        let top = seen.iter().map(|bin| bin.norm()).fold(0.0, f64::max);
        let between = seen.iter().enumerate().skip(8).filter(|(i, _)| {
            let place = (*i as f64 * RATE / WINDOW as f64 / hz).fract();
            (0.33..0.67).contains(&place)
        });
        let most = between.map(|(_, bin)| bin.norm()).fold(0.0, f64::max);
        println!("{name} at {hz} Hz: {:.1} dB", db(most / top));
        assert!(
            db(most / top) < -70.0,
            "{name} at {hz} Hz: {:.1} dB",
            db(most / top)
        );
    }
}

#[test]
fn a_stroke_on_damped_strings_is_short_and_has_hardly_any_pitch() {
    // How much of the sound comes again after a period: near 1 where there is a pitch (its autocorrelation).
    for (name, voice, hz) in [("mandolin", MANDOLIN, 293.7), ("guitar", GUITAR, 110.0)] {
        let again = |touch| {
            let mut course = Course::new(RATE, voice);
            course.strike(hz, 0.8, touch);
            let mut sound = vec![0.0; 9600];
            course.add(&mut sound);
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "frames"
            )]
            let period = (RATE / hz).round() as usize;
            let product = |lag: usize| {
                sound
                    .iter()
                    .zip(&sound[lag..])
                    .map(|(a, b)| a * b)
                    .sum::<f32>()
            };
            let late = sound[4800..]
                .iter()
                .fold(0.0_f32, |peak, x| peak.max(x.abs()));
            (product(period) / product(0), late)
        };
        let (ring, mute) = (again(Touch::Ring), again(Touch::Mute));
        println!("{name}: {:.2} ringing, {:.2} damped", ring.0, mute.0);
        assert!(ring.0 > 0.9 && mute.0 < 0.6, "{name}: {ring:?}, {mute:?}");
        assert!(mute.1 < 1e-3, "{name}: {mute:?}");
    }
}
