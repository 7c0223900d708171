//! How rough two notes sound together.
//!
//! The model of W. A. Sethares, "Local consonance and the relationship between timbre and scale", Journal of the Acoustical
//! Society of America 94 (3), 1993, which puts the curves of Plomp and Levelt (1965) into a formula: two sines of
//! frequencies `f <= g` and amplitudes `v`, `w` have the roughness
//!
//! ```text
//! v w (exp(-3.5 s (g - f)) - exp(-5.75 s (g - f))),    s = 0.24 / (0.021 f + 19)
//! ```
//!
//! and two notes the sum over all pairs of a partial of the one with a partial of the other. The constants are from memory of
//! the paper.

use std::f64::consts::PI;

/// Partials of a note that are heard.
const PARTIALS: usize = 8;

/// Where the string is plucked, as a part of its length from the bridge.
const PLUCKED_AT: f64 = 0.2;

/// Roughness of two sines, frequencies in Hz and amplitudes of any one unit.
pub fn roughness_of_sines((f, v): (f64, f64), (g, w): (f64, f64)) -> f64 {
    let (low, apart) = (f.min(g), (f - g).abs());
    let s = 0.24 / (0.021 * low + 19.0);
    v * w * (f64::exp(-3.5 * s * apart) - f64::exp(-5.75 * s * apart))
}

/// The partials of a plucked string of a fundamental in Hz: frequencies in Hz, and amplitudes that add up to 1.
///
/// An ideal string plucked at a fifth of its length pulls at the bridge with the amplitudes `|sin(k pi / 5)| / k` (N. H.
/// Fletcher and T. D. Rossing, The Physics of Musical Instruments, chapter 2, from memory).
pub fn plucked(hz: f64) -> [(f64, f64); PARTIALS] {
    let mut partials = [(0.0, 0.0); PARTIALS];
    let mut number = 0.0;
    for partial in &mut partials {
        number += 1.0;
        *partial = (hz * number, (number * PI * PLUCKED_AT).sin().abs() / number);
    }
    let sum: f64 = partials.iter().map(|&(_, amplitude)| amplitude).sum();
    partials.map(|(hz, amplitude)| (hz, amplitude / sum))
}

/// Roughness between two plucked strings, from their MIDI keys in equal temperament at A4 = 440 Hz: about 0.035 for a half
/// step in the middle of a mandolin, 0 for a unison. What each note has in itself is not counted.
///
/// ```
/// use fourcourse::frets::roughness;
/// let (half_step, fifth) = (roughness(69, 70), roughness(69, 76));
/// assert!(half_step > 4.0 * fifth);
/// ```
pub fn roughness(one: i32, other: i32) -> f64 {
    let hz = |midi: i32| 440.0 * f64::exp2(f64::from(midi - 69) / 12.0);
    let (one, other) = (plucked(hz(one)), plucked(hz(other)));
    let pairs = one.iter().flat_map(|&a| other.iter().map(move |&b| (a, b)));
    pairs.map(|(a, b)| roughness_of_sines(a, b)).sum()
}
