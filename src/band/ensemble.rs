//! The sound of the band: strokes in, stereo out.

use std::f64::consts::TAU;
use std::fmt;

use freeverb::Freeverb;

use super::chair::{Bus, CHUNK, Chair, Glide};
use super::course::SILENT;
use super::event::{Player, Touch};
use super::limiter::Limiter;
use super::number::{single, whole, within};
use super::tick::Click;
use super::voice::STRINGS;

/// Every so many frames what has faded is put to rest, counted from the first frame and not from the blocks asked for.
const SPAN: usize = 2048;

/// How loud the click is in the band, and how much of it goes to the room.
const CLICK_LEVEL: f32 = 0.3;
const CLICK_ROOM: f32 = 0.03;

/// How loud the room is, and the band as a whole where nobody says otherwise.
const ROOM_LEVEL: f32 = 0.5;
const LEVEL: f32 = 2.33;

/// The most that strokes are made louder.
const MOST_LOUD: f32 = 16.0;

/// All the players with their strings, the room around them and the limiter behind them.
///
/// Everything is made in [`Ensemble::new`]; what is called afterwards allocates nothing, waits for nothing and does not
/// panic. The sound is the same to the bit, whatever the blocks in which it is rendered.
pub struct Ensemble {
    rate: f64,
    a4: f64,
    chairs: [Chair; STRINGS.len()],
    click: Click,
    click_gain: Glide,
    click_loud: f32,
    room: Freeverb<f32>,
    dc: [DcBlocker; 2],
    limiter: Limiter,
    /// Nothing is to be heard, and nothing is computed.
    asleep: bool,
    age: usize,
    heard: bool,
}

impl Ensemble {
    /// A band at rest. `rate` in frames a second (44,100 or 48,000), `a4` the A of the tuning fork in Hz (415 to 466).
    #[must_use]
    pub fn new(rate: u32, a4: f64) -> Self {
        let rate = f64::from(rate);
        Self {
            rate,
            a4,
            chairs: STRINGS.map(|(_, voice)| Chair::new(rate, voice)),
            click: Click::new(rate),
            click_gain: Glide::new(rate),
            click_loud: 1.0,
            room: room(rate),
            dc: [DcBlocker::new(rate), DcBlocker::new(rate)],
            limiter: Limiter::new(rate),
            asleep: true,
            age: 0,
            heard: false,
        }
    }

    /// Frames from a stroke to its sound: the limiter looks so far ahead.
    #[must_use]
    pub const fn latency(&self) -> usize {
        Limiter::LATE
    }

    /// The A of the tuning fork in Hz, for strokes from now on.
    pub fn set_a4(&mut self, a4: f64) {
        self.a4 = a4;
    }

    /// Strikes a course of a player: `midi` is the sounding note, 69 being the A of the tuning fork; `force` from 0 to 1.
    /// The click has no courses; see [`Ensemble::click`].
    pub fn strike(&mut self, player: Player, course: u8, midi: u8, force: f32, touch: Touch) {
        let hz = self.a4 * 2_f64.powf((f64::from(midi) - 69.0) / 12.0);
        self.strike_hz(player, course, hz, force, touch);
    }

    /// The same at any pitch, in Hz.
    pub fn strike_hz(&mut self, player: Player, course: u8, hz: f64, force: f32, touch: Touch) {
        if let Some(chair) = self.chair(player) {
            chair.strike(course, hz, force, touch);
            self.asleep = false;
        }
    }

    /// A hand stops a course.
    pub fn damp(&mut self, player: Player, course: u8) {
        if let Some(chair) = self.chair(player) {
            chair.damp(course);
        }
    }

    /// All hands stop all strings.
    pub fn damp_all(&mut self) {
        for chair in &mut self.chairs {
            chair.damp_all();
        }
    }

    /// A tick of the metronome; `first` is the 1 of a bar. `force` from 0 to 1.
    pub fn click(&mut self, first: bool, force: f32) {
        if !self.click.rings() {
            self.click_gain.arrive();
        }
        self.click
            .strike(first, self.click_loud * within(force, 1.0));
        self.asleep = false;
    }

    /// How loud strokes from now on are, of strings and of the click: 1 as is usual, 16 at most. What rings goes on as it is,
    /// so that nothing is heard of a change but the next stroke.
    pub fn set_loud(&mut self, strings: f32, click: f32) {
        for chair in &mut self.chairs {
            chair.set_loud(within(strings, MOST_LOUD));
        }
        self.click_loud = within(click, MOST_LOUD);
    }

    /// How loud a player is: 1 as set for the band, 0 not at all, 2 (6 dB more) at most.
    pub fn set_level(&mut self, player: Player, gain: f32) {
        self.gain(player).level = within(gain, 2.0);
    }

    /// Silences a player, or lets it be heard again at its level.
    pub fn mute(&mut self, player: Player, mute: bool) {
        self.gain(player).mute = mute;
    }

    /// Renders the next frames, left and right in turn, over whatever is in `out`. A half frame at the end is zero.
    pub fn render(&mut self, out: &mut [f32]) {
        let (frames, half) = out.as_chunks_mut::<2>();
        half.fill(0.0);
        let mut rest = frames;
        while !rest.is_empty() {
            if self.asleep {
                rest.as_flattened_mut().fill(0.0);
                return;
            }
            let run = rest.len().min(CHUNK).min(SPAN - self.age);
            let (now, later) = rest.split_at_mut(run);
            self.run(now);
            self.age += run;
            if self.age == SPAN {
                self.settle();
            }
            rest = later;
        }
    }

    fn run(&mut self, out: &mut [[f32; 2]]) {
        let mut bus = Bus {
            left: [0.0; CHUNK],
            right: [0.0; CHUNK],
            // Too little to be heard, enough to keep the room from counting in denormal numbers.
            room: [1e-15; CHUNK],
        };
        for chair in &mut self.chairs {
            chair.add(&mut bus, out.len());
        }
        if self.click.rings() {
            let mut sound = [0.0; CHUNK];
            let sound = &mut sound[..out.len()];
            self.click.add(sound);
            self.click_gain.run(sound);
            for (i, sound) in sound.iter().enumerate() {
                bus.left[i] += CLICK_LEVEL * sound;
                bus.right[i] += CLICK_LEVEL * sound;
                bus.room[i] += CLICK_ROOM * sound;
            }
        }
        for (i, out) in out.iter_mut().enumerate() {
            let (left, right) = self.room.tick((bus.room[i], bus.room[i]));
            let left = self.dc[0].run(LEVEL * (bus.left[i] + left));
            let right = self.dc[1].run(LEVEL * (bus.right[i] + right));
            let (left, right) = self.limiter.run(left, right);
            self.heard |= left.abs().max(right.abs()) > SILENT;
            *out = [left, right];
        }
    }

    /// Puts to rest what has faded.
    fn settle(&mut self) {
        for chair in &mut self.chairs {
            chair.settle();
        }
        self.click.settle();
        let silent = !self.heard;
        (self.age, self.heard) = (0, false);
        if silent && !self.click.rings() && self.chairs.iter().all(|chair| !chair.is_awake()) {
            self.asleep = true;
            self.limiter.rest();
            for dc in &mut self.dc {
                dc.rest();
            }
        }
    }

    fn chair(&mut self, player: Player) -> Option<&mut Chair> {
        let at = STRINGS.iter().position(|(one, _)| *one == player)?;
        self.chairs.get_mut(at)
    }

    fn gain(&mut self, player: Player) -> &mut Glide {
        match STRINGS.iter().position(|(one, _)| *one == player) {
            Some(at) => &mut self.chairs[at].gain,
            None => &mut self.click_gain,
        }
    }
}

/// A small room with wooden walls: it falls by 60 dB in about 0.6 s. The reverberator is the one of Jezar at Dreampoint
/// (2000, public domain): combs and allpasses after M. Schroeder (1962) with the damped combs of J. Moorer (1979).
fn room(rate: f64) -> Freeverb<f32> {
    let mut room = Freeverb::new(whole(rate));
    room.set_room_size(0.05);
    room.set_dampening(0.6);
    room.set_width(1.0);
    room.set_wet(ROOM_LEVEL);
    room.set_dry(0.0);
    room
}

impl fmt::Debug for Ensemble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Ensemble")
            .field("rate", &self.rate)
            .field("a4", &self.a4)
            .finish_non_exhaustive()
    }
}

/// Takes out what does not swing: y = x - x1 + R y1, the DC blocker of J. Smith, "Introduction to Digital Filters".
#[derive(Debug)]
struct DcBlocker {
    keeps: f32,
    came: f32,
    went: f32,
}

impl DcBlocker {
    /// 3 dB down, in Hz: an octave below the lowest string of a bass.
    const CORNER_HZ: f64 = 15.0;

    fn new(rate: f64) -> Self {
        Self {
            keeps: single((-TAU * Self::CORNER_HZ / rate).exp()),
            came: 0.0,
            went: 0.0,
        }
    }

    fn run(&mut self, sound: f32) -> f32 {
        self.went = sound - self.came + self.keeps * self.went;
        self.came = sound;
        self.went
    }

    fn rest(&mut self) {
        (self.came, self.went) = (0.0, 0.0);
    }
}
