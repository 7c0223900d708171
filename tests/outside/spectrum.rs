//! Sounds looked at through a general library of Fourier transforms (`realfft`).
#![allow(clippy::unwrap_used)] // a transform that is not as it should be fails the test

use std::f64::consts::{PI, TAU};

use fourcourse::band::{Course, Touch, Voice};
use realfft::RealFftPlanner;
use realfft::num_complex::Complex;

/// Frames in a long window: a third of a second.
pub(crate) const WINDOW: usize = 16_384;

/// And in a short one, for what changes soon.
pub(crate) const SHORT: usize = 4096;

/// A stroke on a voice alone, without body and room.
pub(crate) fn note(rate: f64, voice: Voice, hz: f64, force: f32, seconds: f64) -> Vec<f32> {
    let mut course = Course::new(rate, voice);
    course.strike(hz, force, Touch::Ring);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few seconds"
    )]
    let mut sound = vec![0.0; (seconds * rate) as usize];
    course.add(&mut sound);
    sound
}

/// The spectrum of a window that starts at a frame, under a Blackman-Harris window of four terms (F. Harris, 1978),
/// whose side lobes are 92 dB down.
pub(crate) fn spectrum(sound: &[f32], from: usize, window: usize) -> Vec<Complex<f64>> {
    let fft = RealFftPlanner::<f64>::new().plan_fft_forward(window);
    let mut input = fft.make_input_vec();
    for (i, (input, sound)) in input
        .iter_mut()
        .zip(&sound[from..from + window])
        .enumerate()
    {
        let turn = TAU * i as f64 / window as f64;
        let weight = 0.358_75 - 0.488_29 * turn.cos() + 0.141_28 * (2.0 * turn).cos()
            - 0.011_68 * (3.0 * turn).cos();
        *input = weight * f64::from(*sound);
    }
    let mut output = fft.make_output_vec();
    fft.process(&mut input, &mut output).unwrap();
    output
}

/// The strongest bin within a few bins of a frequency.
fn bin(spectrum: &[Complex<f64>], rate: f64, hz: f64) -> usize {
    let window = 2 * (spectrum.len() - 1);
    let near = hz * window as f64 / rate;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a bin"
    )]
    let near = near.round() as usize;
    let from = near.saturating_sub(3).max(1);
    (from..=near + 3)
        .max_by(|a, b| spectrum[*a].norm().total_cmp(&spectrum[*b].norm()))
        .unwrap()
}

/// The level of the partial near a frequency, as an amplitude.
pub(crate) fn amplitude(spectrum: &[Complex<f64>], rate: f64, hz: f64) -> f64 {
    spectrum[bin(spectrum, rate, hz)].norm()
}

pub(crate) fn db(ratio: f64) -> f64 {
    20.0 * ratio.log10()
}

/// The frequency of the partial near `hz`: how far its phase moves on between two windows. Decay does not bend that.
pub(crate) fn frequency(sound: &[f32], from: usize, rate: f64, hz: f64, window: usize) -> f64 {
    // An eighth of a window is less than half a turn for anything within the bins looked at; half a window is exact.
    let turn = |hop: usize, near: f64| {
        let (now, then) = (
            spectrum(sound, from, window),
            spectrum(sound, from + hop, window),
        );
        let at = bin(&now, rate, near);
        let moved = then[at].arg() - now[at].arg();
        let expected = TAU * near * hop as f64 / rate;
        let more = (moved - expected + PI).rem_euclid(TAU) - PI;
        near + more * rate / (TAU * hop as f64)
    };
    turn(window / 2, turn(window / 8, hz))
}

pub(crate) fn cents(hz: f64, wanted: f64) -> f64 {
    1200.0 * (hz / wanted).log2()
}
