//! The band as a whole: loudness after ITU-R BS.1770 by a general library (`ebur128`), no clipping, no clicks, no DC.
#![allow(clippy::unwrap_used)] // a meter that is not as it should be fails the test

use ebur128::{EbuR128, Mode};
use fourcourse::band::voice::{BASS, CHOP, DRONES, GUITAR, MANDOLIN};
use fourcourse::band::{Course, Ensemble, Player, Touch};

const RATE: u32 = 48_000;

/// Frames of an eighth note at 120 beats a minute.
const EIGHTH: usize = RATE as usize / 4;

/// Plays an eighth of a bar of G, C and D in 4/4 into `out`: melody in eighths, bass, boom-chuck and chop in quarters,
/// drones. A pick crosses a course in 5 ms.
fn eighth(band: &mut Ensemble, count: usize, out: &mut [f32]) {
    const TUNE: [[u8; 8]; 4] = [
        [67, 69, 71, 74, 71, 69, 67, 71],
        [72, 76, 79, 76, 72, 71, 72, 76],
        [74, 78, 81, 78, 74, 72, 69, 72],
        [71, 67, 69, 71, 67, 62, 67, 67],
    ];
    let bar = count / 8 % 4;
    let (roots, chop, chuck) = [
        ([31, 38], [62, 67, 71, 79], [55, 59, 67]),
        ([36, 31], [64, 67, 72, 79], [55, 60, 64]),
        ([38, 33], [62, 69, 74, 78], [57, 62, 66]),
        ([31, 38], [62, 67, 71, 79], [55, 59, 67]),
    ][bar];
    let note = TUNE[bar][count % 8];
    let course = match note {
        ..62 => 0,
        62..69 => 1,
        69..76 => 2,
        _ => 3,
    };
    let force = if count.is_multiple_of(2) { 0.75 } else { 0.6 };
    band.strike(Player::Melody, course, note, force, Touch::Ring);
    if count.is_multiple_of(16) {
        band.strike(Player::Drones, 0, 55, 0.6, Touch::Ring);
        band.strike(Player::Drones, 1, 62, 0.6, Touch::Ring);
    }
    if count.is_multiple_of(4) {
        let root = roots[count / 4 % 2];
        band.strike(Player::Bass, 1, root, 0.8, Touch::Ring);
        band.strike(Player::Guitar, 0, root + 12, 0.7, Touch::Ring);
    }
    for (i, out) in out.chunks_mut(2 * 240).enumerate() {
        if count % 4 == 2 {
            if let Some((course, midi)) = (0..).zip(chop).nth(i) {
                band.strike(Player::Chop, course, midi, 0.8, Touch::Chop);
            }
            if let Some((course, midi)) = (3..).zip(chuck).nth(i) {
                band.strike(Player::Guitar, course, midi, 0.55, Touch::Ring);
            }
        }
        band.render(out);
    }
}

fn tune(a4: f64, eighths: usize) -> Vec<f32> {
    let mut band = Ensemble::new(RATE, a4);
    let mut sound = vec![0.0; 2 * EIGHTH * eighths];
    for (count, out) in sound.chunks_mut(2 * EIGHTH).enumerate() {
        eighth(&mut band, count, out);
    }
    sound
}

fn loudness(sound: &[f32]) -> f64 {
    let mut meter = EbuR128::new(2, RATE, Mode::I).unwrap();
    meter.add_frames_f32(sound).unwrap();
    meter.loudness_global().unwrap()
}

fn slope(sound: &[f32]) -> f32 {
    sound
        .windows(2)
        .map(|two| (two[1] - two[0]).abs())
        .fold(0.0, f32::max)
}

#[test]
fn a_full_band_is_at_16_lufs() {
    // The level that the streaming trade asks of stereo music (AES TD1008, 2021: -16 LUFS for a mixed programme).
    let found = loudness(&tune(440.0, 128));
    println!("{found:.2} LUFS");
    assert!((found + 16.0).abs() < 0.5, "{found:.2} LUFS");
}

#[test]
fn the_limiter_has_little_to_do_in_mid_tune() {
    // At a quarter of the level it does nothing; four times that is what it has to bring down to -1 dB.
    let mut band = Ensemble::new(RATE, 440.0);
    for player in Player::ALL {
        band.set_level(player, 0.25);
    }
    let mut sound = vec![0.0; 2 * EIGHTH * 64];
    for (count, out) in sound.chunks_mut(2 * EIGHTH).enumerate() {
        eighth(&mut band, count, out);
    }
    let peak = 4.0 * sound.iter().fold(0.0_f32, |peak, x| peak.max(x.abs()));
    let over = 20.0 * peak.log10() + 1.0;
    println!("{over:.2} dB");
    assert!(over < 2.0, "{over:.2} dB");
}

#[test]
fn nothing_is_louder_than_the_ceiling() {
    // -1 dB of full scale, with everything struck at full force and every level at its top.
    let mut band = Ensemble::new(RATE, 440.0);
    let mut most: f32 = 0.0;
    let mut out = vec![0.0; 2 * EIGHTH];
    for player in Player::ALL {
        band.set_level(player, 2.0);
    }
    for round in 0..8_u8 {
        for player in Player::ALL {
            for course in 0..8 {
                band.strike(player, course, 28 + 7 * course + round, 1.0, Touch::Ring);
            }
        }
        band.click(true, 1.0);
        band.render(&mut out);
        most = out.iter().fold(most, |most, x| most.max(x.abs()));
    }
    let ceiling = 10_f32.powf(-1.0 / 20.0);
    assert!(most <= ceiling + 1e-6 && most > 0.8 * ceiling, "{most}");
}

#[test]
fn there_is_no_dc() {
    let sound = tune(440.0, 64);
    for channel in 0..2 {
        let frames = || sound.iter().skip(channel).step_by(2).map(|x| f64::from(*x));
        let number = frames().count() as f64;
        let (mean, power) = (
            frames().sum::<f64>() / number,
            frames().map(|x| x * x).sum::<f64>() / number,
        );
        let below = 20.0 * (mean.abs() / power.sqrt()).log10();
        println!("{below:.1} dB");
        assert!(below < -60.0, "{below:.1} dB");
    }
}

#[test]
fn a_new_stroke_takes_over_without_a_click() {
    // The line is linear: what two strokes sound like less what the second sounds like alone is how the first goes. It
    // must not jump by more than it did while it rang.
    let rate = f64::from(RATE);
    for (name, voice) in [
        ("mandolin", MANDOLIN),
        ("chop", CHOP),
        ("guitar", GUITAR),
        ("bass", BASS),
        ("drones", DRONES),
    ] {
        for wait in [1000, 4000, 11_111, 20_000] {
            let play = |first: f32| {
                let mut course = Course::new(rate, voice);
                let mut sound = vec![0.0; wait + 9600];
                course.strike(110.0, first, Touch::Ring);
                course.add(&mut sound[..wait]);
                course.strike(123.0, 0.8, Touch::Ring);
                course.add(&mut sound[wait..]);
                sound
            };
            let (both, second) = (play(0.8), play(0.0));
            let goes: Vec<f32> = both
                .iter()
                .zip(&second)
                .map(|(both, second)| both - second)
                .collect();
            let before = slope(&goes[wait.saturating_sub(2000)..wait]);
            let after = slope(&goes[wait - 1..]);
            assert!(
                after <= 1.05 * before,
                "{name}, {wait}: {after} after {before}"
            );
            assert!(
                goes[wait + 9000..].iter().all(|x| x.abs() < 1e-4),
                "{name}, {wait}: still there"
            );
        }
    }
}

#[test]
fn a_hand_stops_a_string_without_a_click() {
    for player in Player::ALL {
        let mut band = Ensemble::new(RATE, 440.0);
        band.strike(player, 1, 50, 0.8, Touch::Ring);
        let mut rang = vec![0.0; 2 * RATE as usize];
        band.render(&mut rang);
        band.damp(player, 1);
        let mut stopped = vec![0.0; 2 * RATE as usize];
        band.render(&mut stopped);
        for channel in 0..2 {
            let one = |sound: &[f32]| {
                sound
                    .iter()
                    .skip(channel)
                    .step_by(2)
                    .copied()
                    .collect::<Vec<_>>()
            };
            let (before, after) = (slope(&one(&rang[48_000..])), slope(&one(&stopped)));
            assert!(after <= 1.05 * before, "{player:?}: {after} after {before}");
        }
        assert!(
            stopped[90_000..].iter().all(|x| x.abs() < 2e-3),
            "{player:?} rings on"
        );
    }
}

#[test]
fn levels_and_mutes_do_not_crackle() {
    let mut band = Ensemble::new(RATE, 440.0);
    band.strike(Player::Bass, 0, 33, 0.8, Touch::Ring);
    let mut sound = vec![0.0; 96_000];
    band.render(&mut sound);
    let left = |sound: &[f32]| sound.iter().step_by(2).copied().collect::<Vec<_>>();
    let before = slope(&left(&sound[48_000..]));
    for (mute, level) in [(true, 1.0), (false, 0.3), (false, 1.0)] {
        band.mute(Player::Bass, mute);
        band.set_level(Player::Bass, level);
        let mut next = vec![0.0; 9600];
        band.render(&mut next);
        let after = slope(&left(&next));
        assert!(after <= 1.5 * before, "{after} after {before}");
    }
    band.mute(Player::Bass, true);
    band.render(&mut sound);
    // The room has faded too.
    assert!(sound[90_000..].iter().all(|x| x.abs() < 1e-3));
}

/// Everybody at once.
fn stroke(band: &mut Ensemble, count: usize) {
    for (player, touch) in [
        (Player::Melody, Touch::Ring),
        (Player::Chop, Touch::Chop),
        (Player::Guitar, Touch::Mute),
        (Player::Bass, Touch::Ring),
        (Player::Drones, Touch::Ring),
    ] {
        for (course, midi) in [(0, 50), (1, 57), (2, 66)] {
            band.strike(
                player,
                course,
                midi + u8::try_from(count).unwrap(),
                0.7,
                touch,
            );
        }
    }
}

#[test]
fn the_sound_does_not_depend_on_the_block() {
    // One frame at a time and 4,096 at a time, to the bit, with commands in between.
    let play = |block: usize| {
        let mut band = Ensemble::new(44_100, 442.0);
        let mut sound = Vec::new();
        for count in 0..40 {
            if count < 24 {
                stroke(&mut band, count);
                band.click(count % 4 == 0, 0.7);
            }
            match count {
                5 => band.set_level(Player::Guitar, 0.4),
                9 => band.mute(Player::Melody, true),
                13 => band.damp(Player::Bass, 1),
                15 => band.set_a4(415.0),
                17 => band.mute(Player::Melody, false),
                24 => band.damp_all(),
                _ => {}
            }
            let mut next = vec![0.0; 2 * 1777];
            for out in next.chunks_mut(2 * block) {
                band.render(out);
            }
            sound.extend(next);
        }
        sound.iter().map(|x| x.to_bits()).collect::<Vec<_>>()
    };
    let whole = play(4096);
    for block in [1, 7, 64, 256, 1000] {
        assert!(play(block) == whole, "blocks of {block}");
    }
}

#[test]
fn silence_is_exact_and_comes_soon() {
    let mut band = Ensemble::new(RATE, 440.0);
    let mut out = vec![1.0; 1001];
    band.render(&mut out);
    assert!(out.iter().all(|x| *x == 0.0));
    for count in 0..16 {
        eighth(&mut band, count, &mut out);
    }
    band.damp_all();
    let mut out = vec![1.0; 2 * 3 * RATE as usize];
    band.render(&mut out);
    assert!(out[out.len() - 100..].iter().all(|x| *x == 0.0));
}

#[test]
fn every_frame_is_a_plain_number() {
    for sound in [tune(415.0, 24), tune(466.0, 24)] {
        assert!(sound.iter().all(|x| *x == 0.0 || x.is_normal()));
    }
    // Whatever it is asked for.
    let mut band = Ensemble::new(RATE, 440.0);
    let mut out = vec![0.0; 9600];
    for player in Player::ALL {
        for (course, hz, force) in [
            (0, 0.0, 1.0),
            (255, 1e9, 9.0),
            (1, f64::NAN, 0.5),
            (2, 440.0, f32::NAN),
            (3, -1.0, -1.0),
        ] {
            for touch in [Touch::Ring, Touch::Chop, Touch::Mute] {
                band.strike_hz(player, course, hz, force, touch);
                band.render(&mut out);
                assert!(
                    out.iter().all(|x| x.is_finite()),
                    "{player:?}, {hz}, {force}"
                );
            }
        }
        band.set_level(player, f32::NAN);
        band.strike(player, 0, 69, 0.5, Touch::Ring);
    }
    band.click(true, f32::NAN);
    band.render(&mut out);
    assert!(out.iter().all(|x| x.is_finite()));
}
