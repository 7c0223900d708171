//! A course: two strings that are struck together, and the hands that stop them.

use super::delay::{self, Decay, Line};
use super::event::Touch;
use super::number::{single, whole, within};
use super::pick::{Pick, Stroke};
use super::voice::Voice;

/// Frames rendered in one go, at most.
const CHUNK: usize = 64;

/// After so many frames below [`SILENT`] a course is at rest: more than a period of the lowest line.
const SPAN: usize = 2048;

/// -120 dB of a full stroke.
pub(super) const SILENT: f32 = 1e-6;

/// The strings of one course of a voice.
///
/// A new stroke takes over the course: what rang fades in a few milliseconds while the new note starts on another pair
/// of lines, so that neither a jump nor a bent pitch is heard. Three pairs do for any hand; a fourth stroke within those
/// milliseconds ends the oldest.
#[derive(Debug, Clone)]
pub struct Course {
    voice: Voice,
    rate: f64,
    pairs: [Pair; 3],
    current: usize,
    seed: u32,
    loud: f32,
}

impl Course {
    /// A course at rest. `rate` in frames a second.
    #[must_use]
    pub fn new(rate: f64, voice: Voice) -> Self {
        Self {
            voice,
            rate,
            pairs: std::array::from_fn(|_| Pair::new(rate)),
            current: 0,
            seed: 0x9e37_79b9,
            loud: 1.0,
        }
    }

    /// Strikes the course: `hz` is its pitch, from 24 to a twelfth of the rate; `force` from 0 to 1. What is beyond counts
    /// as the nearest that is not.
    pub fn strike(&mut self, hz: f64, force: f32, touch: Touch) {
        let voice = &self.voice;
        // In this order, what is no number is the least.
        let hz = hz.max(Line::LOWEST_HZ).min(self.rate / 12.0);
        let force = within(force, 1.0);
        self.pairs[self.current].fade(0, self.rate, voice.takeover_s);
        self.current = (self.current + 1) % self.pairs.len();
        self.seed = self
            .seed
            .wrapping_mul(1_664_525)
            .wrapping_add(1_013_904_223);
        let stroke = Stroke {
            hz,
            force,
            touch,
            seed: self.seed,
        };
        self.pairs[self.current].strike(self.rate, voice, stroke, self.loud);
    }

    /// How loud strokes from now on are; what rings goes on as it is. A harder stroke is another one: see `force`.
    pub(super) fn set_loud(&mut self, loud: f32) {
        self.loud = loud;
    }

    /// The hand stops the string.
    pub fn damp(&mut self) {
        self.pairs[self.current].fade(0, self.rate, self.voice.damp_s);
    }

    /// Something is still to be heard.
    #[must_use]
    pub fn rings(&self) -> bool {
        self.pairs.iter().any(|pair| pair.rings)
    }

    /// Adds the next frames to `out`.
    pub fn add(&mut self, out: &mut [f32]) {
        for pair in self.pairs.iter_mut().filter(|pair| pair.rings) {
            let mut rest = &mut *out;
            while !rest.is_empty() && pair.rings {
                let run = rest.len().min(CHUNK).min(SPAN - pair.age);
                let (now, later) = rest.split_at_mut(run);
                pair.add(now);
                rest = later;
            }
        }
    }
}

/// Two lines under one pick and one hand.
#[derive(Debug, Clone)]
struct Pair {
    lines: [Line; 2],
    second: f32,
    pick: Pick,
    rings: bool,
    /// Frames until the hand comes (`usize::MAX` is as good as never), what it leaves of the sound from frame to frame then,
    /// and how loud it is by now.
    until: usize,
    leaves: f32,
    gain: f32,
    /// Frames since the peak was looked at.
    age: usize,
}

impl Pair {
    fn new(rate: f64) -> Self {
        Self {
            lines: [Line::new(rate), Line::new(rate)],
            second: 0.0,
            pick: Pick::new(),
            rings: false,
            until: usize::MAX,
            leaves: 1.0,
            gain: 1.0,
            age: 0,
        }
    }

    fn strike(&mut self, rate: f64, voice: &Voice, stroke: Stroke, loud: f32) {
        let Stroke {
            hz, force, touch, ..
        } = stroke;
        let decay = match touch {
            Touch::Ring | Touch::Chop => voice.decay(hz),
            // The hand lies on the string: all of it is lost at once.
            Touch::Mute => Decay {
                first: voice.mute_s,
                treble: voice.mute_s,
                ..voice.decay(hz)
            },
        };
        let [one, two] = voice.off().map(|cents| hz * 2_f64.powf(cents / 1200.0));
        let other = Decay {
            first: decay.first * voice.second_t60,
            treble: decay.treble * voice.second_t60,
            ..decay
        };
        self.lines[0].tune(rate, one, decay, voice.stiffness);
        self.lines[1].tune(rate, two, other, voice.stiffness);
        self.second = voice.second;
        self.pick.strike(rate, voice, stroke);
        self.rings = force > 0.0;
        (self.gain, self.age) = (loud, 0);
        (self.until, self.leaves) = (usize::MAX, 1.0);
        if touch == Touch::Chop {
            self.fade(whole(voice.chop_after_s * rate), rate, voice.chop_s);
        }
    }

    /// After so many frames what sounds falls by 60 dB in `seconds`; a hand that is there already stays as firm.
    fn fade(&mut self, after: usize, rate: f64, seconds: f64) {
        let leaves = single(10_f64.powf(-3.0 / (seconds * rate)));
        self.leaves = if self.until == 0 {
            self.leaves.min(leaves)
        } else {
            leaves
        };
        self.until = self.until.min(after);
    }

    /// At most [`CHUNK`] frames, none beyond the end of a span.
    fn add(&mut self, out: &mut [f32]) {
        let mut drive = [0.0; CHUNK];
        let mut sound = [0.0; CHUNK];
        let (drive, sound) = (&mut drive[..out.len()], &mut sound[..out.len()]);
        if !self.pick.is_over() {
            self.pick.fill(drive);
        }
        delay::add(&mut self.lines, drive, self.second, sound);
        let rung = sound.len().min(self.until);
        for (out, sound) in out.iter_mut().zip(&sound[..rung]) {
            *out += self.gain * sound;
        }
        for (out, sound) in out[rung..].iter_mut().zip(&sound[rung..]) {
            self.gain *= self.leaves;
            *out += self.gain * sound;
        }
        self.until -= rung;
        self.age += out.len();
        if self.age == SPAN {
            self.age = 0;
            self.rings = self.gain * self.lines[0].peak().max(self.lines[1].peak()) > SILENT;
        }
    }
}
