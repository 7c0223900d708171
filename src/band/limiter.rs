//! Nothing leaves the band louder than the ceiling.

use super::number::single;

/// How far the limiter sees ahead, in frames: 1.5 ms at 44.1 kHz.
const AHEAD: usize = 64;

/// A look-ahead limiter for two channels, which share their gain.
///
/// The gain that a frame needs is known 63 frames before the frame leaves. It is held for as long, averaged over 64
/// frames, and so is down in time without a corner: of 64 gains that are each small enough for a frame, the mean is. What
/// it bounds is the sample; a converter may draw a peak between two samples a little higher.
#[derive(Debug)]
pub(super) struct Limiter {
    /// Frames on their way, left and right, and the gains of the last frames.
    frames: [(f32, f32); AHEAD],
    gains: [f32; AHEAD],
    at: usize,
    /// Of the gains. Exact: 64 numbers of 24 binary digits, none below 2^-20, fit into 53.
    sum: f64,
    gain: f32,
    hold: usize,
    recover: f32,
}

impl Limiter {
    /// -1 dB of full scale.
    pub(super) const CEILING: f32 = 0.891_250_9;

    /// Frames by which the sound is late.
    pub(super) const LATE: usize = AHEAD - 1;

    /// The gain comes back with this time constant, in seconds: slow enough to leave the wave of a bass alone.
    const RECOVERS_S: f64 = 0.08;

    pub(super) fn new(rate: f64) -> Self {
        Self {
            frames: [(0.0, 0.0); AHEAD],
            gains: [1.0; AHEAD],
            at: 0,
            sum: AHEAD as f64,
            gain: 1.0,
            hold: 0,
            recover: single(1.0 - (-1.0 / (Self::RECOVERS_S * rate)).exp()),
        }
    }

    pub(super) fn run(&mut self, left: f32, right: f32) -> (f32, f32) {
        let peak = left.abs().max(right.abs());
        let needed = if peak > Self::CEILING {
            (Self::CEILING / peak).max(1e-6)
        } else {
            1.0
        };
        if peak > Self::CEILING {
            self.hold = AHEAD;
        }
        if self.hold > 0 {
            self.hold -= 1;
        } else {
            self.gain += (1.0 - self.gain) * self.recover;
        }
        self.gain = self.gain.min(needed);

        self.frames[self.at] = (left, right);
        self.sum += f64::from(self.gain) - f64::from(self.gains[self.at]);
        self.gains[self.at] = self.gain;
        self.at = (self.at + 1) % AHEAD;
        let (left, right) = self.frames[self.at];
        let gain = single(self.sum / AHEAD as f64);
        // The mean is small enough but for its rounding.
        let bound = |frame: f32| (frame * gain).clamp(-Self::CEILING, Self::CEILING);
        (bound(left), bound(right))
    }

    /// Forgets what is on its way.
    pub(super) fn rest(&mut self) {
        self.frames = [(0.0, 0.0); AHEAD];
        self.gains = [1.0; AHEAD];
        self.sum = AHEAD as f64;
        (self.gain, self.hold) = (1.0, 0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_below_the_ceiling_leaves_unchanged_and_a_little_later() {
        let mut limiter = Limiter::new(48_000.0);
        let sound = |i: i16| f32::from(i * 7 % 101) / 120.0;
        for i in 0..2000 {
            let left = limiter.run(sound(i), -sound(i));
            let wanted = if i < 63 { 0.0 } else { sound(i - 63) };
            assert_eq!(left, (wanted, -wanted));
        }
    }

    #[test]
    fn the_mean_of_the_gains_is_small_enough_without_the_last_clamp() {
        // Peaks of any height at any distance: one a frame, one a window, one in several windows.
        for apart in [1, 2, 63, 64, 65, 200] {
            let mut limiter = Limiter::new(44_100.0);
            for i in 0..5000_i16 {
                let peak = if i % apart == 0 {
                    f32::from(1 + i % 17)
                } else {
                    0.1
                };
                limiter.run(peak, 0.0);
                let gain = single(limiter.sum / 64.0);
                let leaves = limiter.frames[limiter.at].0 * gain;
                assert!(
                    leaves <= Limiter::CEILING * 1.000_001,
                    "{apart}, {i}: {leaves}"
                );
            }
        }
    }

    #[test]
    fn the_gain_comes_back() {
        let mut limiter = Limiter::new(48_000.0);
        limiter.run(10.0, 0.0);
        for _ in 0..48_000 {
            limiter.run(0.5, 0.5);
        }
        assert!((limiter.run(0.5, 0.5).0 - 0.5).abs() < 1e-3);
    }
}
