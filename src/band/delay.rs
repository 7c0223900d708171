//! One string: a delay as long as its period, closed into a loop.
//!
//! What runs along a string comes back after a period, a little weaker and a little duller. K. Karplus and A. Strong,
//! "Digital synthesis of plucked-string and drum timbres", Computer Music Journal 7(2), 1983, loop a delay through a
//! low-pass; D. Jaffe and J. Smith, "Extensions of the Karplus-Strong plucked-string algorithm", in the same number, tune
//! it with an allpass and set how long it rings. The loss filter here has one pole, as in V. Välimäki and others,
//! "Physical modeling of plucked string instruments", Journal of the Audio Engineering Society 44(5), 1996: an average of
//! two samples would let a bass string ring for a minute at 1 kHz.

use std::f64::consts::TAU;

/// How long a string rings: the time in which a partial falls by 60 dB.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Decay {
    /// Of the first partial, in seconds.
    pub first: f64,
    /// Of a partial at `treble_hz`, in seconds; shorter than `first`.
    pub treble: f64,
    /// Where that is, in Hz; above the first partial.
    pub treble_hz: f64,
}

impl Decay {
    /// The gain of a loop of `hz` that makes a partial fall by 60 dB in `t60` seconds: `10^(-3 P / T60)`, P being the
    /// period (J. Smith, "Physical Audio Signal Processing", on the loop gain of a string).
    fn gain(hz: f64, t60: f64) -> f64 {
        10_f64.powf(-3.0 / (hz * t60))
    }
}

/// A waveguide loop with its tuning and its losses.
#[derive(Debug, Clone)]
pub struct Line {
    /// What is on its way; only the first `length` samples are in use.
    ring: Vec<f32>,
    length: usize,
    at: usize,
    /// The loss filter `b / (1 - a z^-1)` and its last output.
    b: f32,
    a: f32,
    low: f32,
    /// The tuning filter `(c + z^-1) / (1 + c z^-1)`, its last input and output.
    c: f32,
    came: f32,
    went: f32,
}

impl Line {
    /// The lowest pitch of any line, in Hz: below the low A of a grand piano at any pitch of the fork.
    pub const LOWEST_HZ: f64 = 24.0;

    /// A line at rest. `rate` in frames a second.
    #[must_use]
    pub fn new(rate: f64) -> Self {
        Self {
            ring: vec![0.0; whole(rate / Self::LOWEST_HZ) + 2],
            length: 1,
            at: 0,
            b: 0.0,
            a: 0.0,
            low: 0.0,
            c: 0.0,
            came: 0.0,
            went: 0.0,
        }
    }

    /// Silences the line and tunes it: the first partial lies at `hz`, whatever the loss filter does to its phase.
    /// `hz` is kept between [`Line::LOWEST_HZ`] and a twelfth of the rate.
    pub fn tune(&mut self, rate: f64, hz: f64, decay: Decay) {
        let hz = hz.max(Self::LOWEST_HZ).min(rate / 12.0);
        let w = TAU * hz / rate;
        let (a, b) = loss(rate, hz, decay);

        // All the delays of the loop at the first partial add up to its period.
        let lost = (a * w.sin()).atan2(1.0 - a * w.cos()) / w;
        let rest = rate / hz - lost;
        // Between half a sample and one and a half the allpass is short and flat.
        let length = (rest - 0.5).floor().max(1.0);
        let part = rest - length;
        let c = ((1.0 - part) * w / 2.0).sin() / ((1.0 + part) * w / 2.0).sin();

        self.length = whole(length).clamp(1, self.ring.len());
        self.ring[..self.length].fill(0.0);
        self.at = 0;
        (self.a, self.b, self.c) = (single(a), single(b), single(c));
        (self.low, self.came, self.went) = (0.0, 0.0, 0.0);
    }

    /// Adds the sound of the next frames, times `gain`, to `out`. `drive` is what the pick does meanwhile.
    pub fn add(&mut self, drive: &[f32], gain: f32, out: &mut [f32]) {
        let Self { b, a, c, .. } = *self;
        let (mut low, mut came, mut went) = (self.low, self.came, self.went);
        let mut done = 0;
        while done < out.len() {
            let run = (self.length - self.at).min(out.len() - done);
            let ring = &mut self.ring[self.at..self.at + run];
            let frames = drive[done..done + run]
                .iter()
                .zip(&mut out[done..done + run]);
            for (slot, (drive, out)) in ring.iter_mut().zip(frames) {
                low = b * *slot + a * low;
                went = (c * low + came) - c * went;
                came = low;
                *slot = drive + went;
                *out += gain * *slot;
            }
            done += run;
            self.at += run;
            if self.at == self.length {
                self.at = 0;
            }
        }
        (self.low, self.came, self.went) = (low, came, went);
    }
}

/// `a` and `b` of the filter `b / (1 - a z^-1)` with the gains that `decay` asks for at its two frequencies.
fn loss(rate: f64, hz: f64, decay: Decay) -> (f64, f64) {
    let treble_hz = decay.treble_hz.max(2.0 * hz).min(0.4 * rate);
    let first = Decay::gain(hz, decay.first);
    let treble = Decay::gain(hz, decay.treble);
    let (near, far) = ((TAU * hz / rate).cos(), (TAU * treble_hz / rate).cos());
    // |H|^2 = b^2 / (1 - 2 a cos w + a^2) at both; divided by each other, a quadratic in a.
    let ratio = (first / treble).powi(2);
    let half = ratio * near - far;
    let a = if ratio > 1.0 {
        let root = (half * half - (ratio - 1.0).powi(2)).max(0.0).sqrt();
        // The smaller of the two roots, whose product is 1, in the form that loses no digits.
        (ratio - 1.0) / (half + root)
    } else {
        0.0
    };
    let b = first * (1.0 - 2.0 * a * near + a * a).sqrt();
    // Nothing may grow, not even a constant.
    (a, b.min((1.0 - a) * 0.999_99))
}

#[expect(clippy::cast_possible_truncation, reason = "audio is single precision")]
pub(super) fn single(value: f64) -> f32 {
    value as f32
}

/// A number of frames; what is negative is none.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from a float saturates"
)]
pub(super) fn whole(frames: f64) -> usize {
    frames as usize
}
