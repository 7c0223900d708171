//! One string: a delay as long as its period, closed into a loop.
//!
//! What runs along a string comes back after a period, a little weaker and a little duller. K. Karplus and A. Strong,
//! "Digital synthesis of plucked-string and drum timbres", Computer Music Journal 7(2), 1983, loop a delay through a
//! low-pass; D. Jaffe and J. Smith, "Extensions of the Karplus-Strong plucked-string algorithm", in the same number, tune
//! it with an allpass and set how long it rings. The loss filter here has one pole, as in V. Välimäki and others,
//! "Physical modeling of plucked string instruments", Journal of the Audio Engineering Society 44(5), 1996: an average of
//! two samples would let a bass string ring for a minute at 1 kHz. A second allpass makes the high partials run ahead, as
//! they do on wire: it is what J. Smith's and S. Van Duyne's "A simplified approach to modeling dispersion caused by
//! stiffness in strings and plates", ICMC 1994, do with many, and one is enough for the partials that are heard best.

use std::f64::consts::TAU;

use super::number::{single, whole};

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
pub(super) struct Line {
    /// What is on its way; only the first `length` samples are in use.
    ring: Vec<f32>,
    length: usize,
    at: usize,
    end: End,
}

/// What happens at the end of the line.
#[derive(Debug, Clone, Copy, Default)]
struct End {
    /// The loss filter `b / (1 - a z^-1)` and its last output.
    b: f32,
    a: f32,
    low: f32,
    /// The stiffness `(d + z^-1) / (1 + d z^-1)`; its last input is `low`.
    d: f32,
    stiff: f32,
    /// The tuning filter `(c + z^-1) / (1 + c z^-1)`; its last input is `stiff`.
    c: f32,
    tuned: f32,
}

impl End {
    /// What leaves, when `arrives` comes and the pick adds `drive`.
    #[inline]
    fn turn(&mut self, arrives: f32, drive: f32) -> f32 {
        let low = self.b * arrives + self.a * self.low;
        let stiff = (self.d * low + self.low) - self.d * self.stiff;
        self.tuned = (self.c * stiff + self.stiff) - self.c * self.tuned;
        (self.low, self.stiff) = (low, stiff);
        drive + self.tuned
    }
}

impl Line {
    /// The lowest pitch of any line, in Hz: below the low A of a grand piano at any pitch of the fork.
    pub(super) const LOWEST_HZ: f64 = 24.0;

    /// A line at rest. `rate` in frames a second.
    pub(super) fn new(rate: f64) -> Self {
        Self {
            ring: vec![0.0; whole(1.01 * rate / Self::LOWEST_HZ)],
            length: 1,
            at: 0,
            end: End::default(),
        }
    }

    /// Silences the line and tunes it: the first partial lies at `hz`, whatever the filters of the loop do to its phase.
    /// `hz` lies between [`Line::LOWEST_HZ`] and a twelfth of the rate, or a few cents beside; `stiffness` is the B of
    /// [`Voice::stiffness`](super::Voice::stiffness).
    pub(super) fn tune(&mut self, rate: f64, hz: f64, decay: Decay, stiffness: f64) {
        let w = TAU * hz / rate;
        let (a, b) = loss(rate, hz, decay);
        let ahead = ahead(rate / hz, a, stiffness);
        let d = (1.0 - ahead) / (1.0 + ahead);

        // All the delays of the loop at the first partial add up to its period.
        let lost = (a * w.sin()).atan2(1.0 - a * w.cos()) / w;
        let bent = 2.0 * (ahead * (w / 2.0).tan()).atan() / w;
        let rest = rate / hz - lost - bent;
        // Between half a sample and one and a half the allpass is short and flat.
        let length = (rest - 0.5).floor().max(1.0);
        let part = rest - length;
        let c = ((1.0 - part) * w / 2.0).sin() / ((1.0 + part) * w / 2.0).sin();

        self.length = whole(length).clamp(1, self.ring.len());
        self.ring[..self.length].fill(0.0);
        self.at = 0;
        self.end = End {
            a: single(a),
            b: single(b),
            c: single(c),
            d: single(d),
            ..End::default()
        };
    }

    /// The loudest of what is on its way: all of the last period.
    pub(super) fn peak(&self) -> f32 {
        self.ring[..self.length]
            .iter()
            .fold(0.0, |peak, on| peak.max(on.abs()))
    }

    fn advance(&mut self, run: usize) {
        self.at += run;
        if self.at == self.length {
            self.at = 0;
        }
    }
}

/// Adds the sound of the next frames of two lines under one pick to `out`, the other one times `second`. `drive` is what
/// the pick does meanwhile. Each frame of a line waits for the one before: two lines side by side wait together.
pub(super) fn add(lines: &mut [Line; 2], drive: &[f32], second: f32, out: &mut [f32]) {
    let [one, two] = lines;
    // The state in locals, so that it stays in registers; the rings stay where they are.
    let (mut a, mut b) = (one.end, two.end);
    let mut done = 0;
    while done < out.len() {
        let run = (one.length - one.at)
            .min(two.length - two.at)
            .min(out.len() - done);
        let slots = one.ring[one.at..one.at + run]
            .iter_mut()
            .zip(&mut two.ring[two.at..two.at + run]);
        let frames = drive[done..done + run]
            .iter()
            .zip(&mut out[done..done + run]);
        for ((slot, other), (drive, out)) in slots.zip(frames) {
            *slot = a.turn(*slot, *drive);
            *other = b.turn(*other, *drive);
            *out += *slot + second * *other;
        }
        done += run;
        one.advance(run);
        two.advance(run);
    }
    (one.end, two.end) = (a, b);
}

/// How many frames the allpass of the stiffness delays the low partials.
///
/// Partial k of a stiff string lies at `k f sqrt(1 + B k^2)` (H. Fletcher, 1964), so the loop of `period` frames must be
/// shorter for it by the part `B k^2 / 2`. At the frequency w an allpass of one pole that delays low frequencies by t
/// frames delays by `t - (t^3 - t) w^2 / 12`, the loss filter by `a / (1 - a) - a (1 + a) w^2 / (6 (1 - a)^3)`: as far as
/// w^2 goes, the two together do what is wanted.
fn ahead(period: f64, a: f64, stiffness: f64) -> f64 {
    let wanted = stiffness * period.powi(3) / (2.0 * TAU.powi(2));
    let lost = a * (1.0 + a) / (6.0 * (1.0 - a).powi(3));
    let cube = (12.0 * (wanted - lost)).max(0.0);
    // t^3 - t = cube by Newton's method, from above.
    let mut t = 1.0 + cube.cbrt();
    for _ in 0..12 {
        t -= (t.powi(3) - t - cube) / (3.0 * t * t - 1.0);
    }
    t.min(period / 8.0).max(1.0)
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
