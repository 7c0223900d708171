//! The body of an instrument: a few resonances in a row.

use biquad::{Biquad, Coefficients, DirectForm2Transposed, Hertz, Type};

use super::voice::{PEAKS, Peak};

/// Peaking filters after R. Bristow-Johnson's "Cookbook formulae for audio equalizer biquad filter coefficients".
#[derive(Debug)]
pub(super) struct Body {
    filters: [DirectForm2Transposed<f32>; PEAKS],
}

impl Body {
    pub(super) fn new(rate: f32, peaks: [Peak; PEAKS]) -> Self {
        Self {
            filters: peaks.map(|peak| DirectForm2Transposed::<f32>::new(coefficients(rate, peak))),
        }
    }

    pub(super) fn run(&mut self, sound: &mut [f32]) {
        let [one, two, three, four] = &mut self.filters;
        for sound in sound {
            *sound = four.run(three.run(two.run(one.run(*sound))));
        }
    }

    /// As if it had never sounded.
    pub(super) fn rest(&mut self) {
        for filter in &mut self.filters {
            filter.reset_state();
        }
    }
}

/// A peak that cannot be had at this rate is left out.
fn coefficients(rate: f32, peak: Peak) -> Coefficients<f32> {
    let filter = |rate, hz| {
        Coefficients::<f32>::from_params(Type::PeakingEQ(peak.db), rate, hz, peak.q).ok()
    };
    Hertz::<f32>::from_hz(rate)
        .ok()
        .zip(Hertz::<f32>::from_hz(peak.hz).ok())
        .and_then(|(rate, hz)| filter(rate, hz))
        .unwrap_or(Coefficients {
            a1: 0.0,
            a2: 0.0,
            b0: 1.0,
            b1: 0.0,
            b2: 0.0,
        })
}
