//! What a pick or a finger does to a string.
//!
//! A string that is pulled aside at a point and let go sends a box along the line: up when the kink arrives, down when it
//! comes back from the near end. So its partials fall as 1/k, from the `tilt` of the voice on, and those with a node under
//! the pick are missing: the pick-position comb of Jaffe and Smith (1983). The flesh or the plastic rounds the corners, the
//! more the softer the stroke: their dynamics low-pass. A breath of noise is the scratch of the pick on the winding.

use std::f64::consts::TAU;

use super::event::Touch;
use super::number::{single, whole};
use super::voice::Voice;

/// What a hand does to a course.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stroke {
    /// The pitch, in Hz.
    pub(super) hz: f64,
    /// From 0 to 1.
    pub(super) force: f32,
    pub(super) touch: Touch,
    /// Which noise its scratch is.
    pub(super) seed: u32,
}

/// One stroke, frame by frame.
#[derive(Debug, Clone)]
pub(super) struct Pick {
    age: usize,
    ends: usize,
    /// Frames from the pick to the near end and back, whole and part.
    lag: usize,
    part: f32,
    /// How the pull is lost: turns the two knocks into a box whose mean is nothing.
    leak: f32,
    pull: f32,
    /// The low-pass of the dynamics, twice.
    open: f32,
    once: f32,
    twice: f32,
    force: f32,
    /// Noise as it leaves the pick, and the same as it comes back.
    out: Noise,
    back: Noise,
}

impl Pick {
    pub(super) fn new() -> Self {
        Self {
            age: 0,
            ends: 0,
            lag: 0,
            part: 0.0,
            leak: 0.0,
            pull: 0.0,
            open: 0.0,
            once: 0.0,
            twice: 0.0,
            force: 0.0,
            out: Noise::default(),
            back: Noise::default(),
        }
    }

    pub(super) fn strike(&mut self, rate: f64, voice: &Voice, stroke: Stroke) {
        let Stroke {
            hz,
            force,
            touch,
            seed,
        } = stroke;
        // A chop is hit harder than it is pulled; on a damped string there is little to pull.
        let (pull, scratch) = match touch {
            Touch::Ring => (1.0, 1.0),
            Touch::Chop => (1.0, 2.0),
            Touch::Mute => (0.3, 4.0),
        };
        let period = rate / hz;
        let lag = (voice.pick * period).max(1.0);
        let corner = voice.soft_hz * (voice.hard_hz / voice.soft_hz).powf(f64::from(force));
        let open = 1.0 - (-TAU * corner / rate).exp();
        let scratch = Noise {
            state: seed | 1,
            level: force * scratch * voice.noise,
            fade: single((-1.0 / (voice.scratch_s * rate)).exp()),
        };
        *self = Self {
            age: 0,
            // The pull is down by 120 dB after 2.2 periods at most, the scratch after 14 of its time constants.
            ends: whole(lag + 2.5 * period + 14.0 * voice.scratch_s * rate + 14.0 / open),
            lag: whole(lag),
            part: single(lag.fract()),
            leak: single((-TAU * voice.tilt / period).exp()),
            open: single(open),
            force: force * pull,
            out: scratch,
            back: scratch,
            ..Self::new()
        };
    }

    /// It has let go, and `fill` would give zeros.
    pub(super) fn is_over(&self) -> bool {
        self.age >= self.ends
    }

    pub(super) fn fill(&mut self, drive: &mut [f32]) {
        for drive in drive {
            let knock = match self.age {
                0 => self.force,
                age if age == self.lag => -self.force * (1.0 - self.part),
                age if age == self.lag + 1 => -self.force * self.part,
                _ => 0.0,
            };
            self.pull = self.pull * self.leak + knock;
            let mut scratch = self.out.next();
            if self.age >= self.lag {
                scratch -= self.back.next();
            }
            self.once += self.open * (self.pull + scratch - self.once);
            self.twice += self.open * (self.once - self.twice);
            *drive = if self.is_over() { 0.0 } else { self.twice };
            self.age = self.age.saturating_add(1);
        }
    }
}

/// White noise that fades, the same for the same seed: G. Marsaglia's "Xorshift RNGs", Journal of Statistical Software
/// 8(14), 2003, with the shifts 13, 17 and 5.
#[derive(Debug, Clone, Copy, Default)]
struct Noise {
    state: u32,
    level: f32,
    fade: f32,
}

impl Noise {
    #[expect(
        clippy::cast_possible_wrap,
        reason = "half of the numbers are to be negative"
    )]
    #[expect(clippy::cast_precision_loss, reason = "noise")]
    fn next(&mut self) -> f32 {
        self.state ^= self.state << 13;
        self.state ^= self.state >> 17;
        self.state ^= self.state << 5;
        self.level *= self.fade;
        self.level * (self.state as i32 as f32 / 2_147_483_648.0)
    }
}
