//! A player's chair: the instrument, how loud it is, and where it sits.

use super::body::Body;
use super::course::{Course, SILENT};
use super::event::Touch;
use super::number::single;
use super::voice::Voice;

/// Frames rendered in one go, at most.
pub(super) const CHUNK: usize = 64;

/// Courses of a player; a stroke on a higher one comes back to the first.
const COURSES: usize = 8;

/// What the players play into.
pub(super) struct Bus {
    pub(super) left: [f32; CHUNK],
    pub(super) right: [f32; CHUNK],
    pub(super) room: [f32; CHUNK],
}

/// A player's instrument and its place.
#[derive(Debug)]
pub(super) struct Chair {
    courses: [Course; COURSES],
    body: Body,
    pub(super) gain: Glide,
    left: f32,
    right: f32,
    room: f32,
    awake: bool,
    /// Something was to be heard since it was last looked at.
    heard: bool,
}

impl Chair {
    pub(super) fn new(rate: f64, voice: Voice) -> Self {
        // Equal power: the squares of left and right add up to the same anywhere.
        let angle = (voice.place + 1.0) * std::f32::consts::FRAC_PI_4;
        Self {
            courses: std::array::from_fn(|_| Course::new(rate, voice)),
            body: Body::new(single(rate), voice.body),
            gain: Glide::new(rate),
            left: voice.level * angle.cos(),
            right: voice.level * angle.sin(),
            room: voice.level * voice.room,
            awake: false,
            heard: false,
        }
    }

    pub(super) fn strike(&mut self, course: u8, hz: f64, force: f32, touch: Touch) {
        self.courses[usize::from(course) % COURSES].strike(hz, force, touch);
        if !self.awake {
            self.awake = true;
            self.gain.arrive();
        }
    }

    /// How loud strokes from now on are.
    pub(super) fn set_loud(&mut self, loud: f32) {
        for course in &mut self.courses {
            course.set_loud(loud);
        }
    }

    pub(super) fn damp(&mut self, course: u8) {
        self.courses[usize::from(course) % COURSES].damp();
    }

    pub(super) fn damp_all(&mut self) {
        for course in &mut self.courses {
            course.damp();
        }
    }

    pub(super) const fn is_awake(&self) -> bool {
        self.awake
    }

    pub(super) fn add(&mut self, bus: &mut Bus, frames: usize) {
        if !self.awake {
            return;
        }
        let mut sound = [0.0; CHUNK];
        let sound = &mut sound[..frames];
        for course in &mut self.courses {
            course.add(sound);
        }
        self.body.run(sound);
        for sound in &*sound {
            self.heard |= sound.abs() > SILENT;
        }
        self.gain.run(sound);
        for (i, sound) in sound.iter().enumerate() {
            bus.left[i] += self.left * sound;
            bus.right[i] += self.right * sound;
            bus.room[i] += self.room * sound;
        }
    }

    pub(super) fn settle(&mut self) {
        if !self.heard && self.courses.iter().all(|course| !course.rings()) {
            self.body.rest();
            self.awake = false;
        }
        self.heard = false;
    }
}

/// A level that goes to where it is set in a few hundredths of a second.
#[derive(Debug)]
pub(super) struct Glide {
    now: f32,
    pub(super) level: f32,
    pub(super) mute: bool,
    step: f32,
}

impl Glide {
    /// Its time constant in seconds.
    const SECONDS: f64 = 0.01;

    pub(super) fn new(rate: f64) -> Self {
        Self {
            now: 1.0,
            level: 1.0,
            mute: false,
            step: single(1.0 - (-1.0 / (Self::SECONDS * rate)).exp()),
        }
    }

    const fn wanted(&self) -> f32 {
        if self.mute { 0.0 } else { self.level }
    }

    pub(super) fn run(&mut self, sound: &mut [f32]) {
        let wanted = self.wanted();
        #[expect(clippy::float_cmp, reason = "it arrives exactly")]
        if self.now == wanted {
            for sound in sound {
                *sound *= wanted;
            }
            return;
        }
        for sound in sound {
            let left = wanted - self.now;
            if left.abs() < SILENT {
                self.now = wanted;
            } else {
                self.now += self.step * left;
            }
            *sound *= self.now;
        }
    }

    /// While nothing sounds there is nothing to glide.
    pub(super) fn arrive(&mut self) {
        self.now = self.wanted();
    }
}
