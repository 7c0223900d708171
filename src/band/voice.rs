//! The voices of the band, as data.
//!
//! Resonances of bodies: typical values, from memory, of what N. Fletcher and T. Rossing, "The Physics of Musical
//! Instruments", and A. Askenfelt (for the double bass) measured; instruments differ by a tone or two. Decays, picks and
//! hands: set until envelope and spectrum looked like wood and wire.

use super::delay::Decay;
use super::event::Player;

/// A resonance of the body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peak {
    /// Where, in Hz.
    pub hz: f32,
    /// How far it stands out, in dB; below 0 it is a hollow.
    pub db: f32,
    /// How narrow.
    pub q: f32,
}

const fn peak(hz: f32, db: f32, q: f32) -> Peak {
    Peak { hz, db, q }
}

/// How many resonances a body has.
pub const PEAKS: usize = 4;

/// What makes an instrument sound as it does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Voice {
    /// How far the two strings of a course are apart, in cents; see [`Voice::off`]. Where the instrument has single
    /// strings, the second is the other direction of the string's swing: a little off, and sooner gone.
    pub apart_cents: f64,
    /// How loud the second is beside the first.
    pub second: f32,
    /// How long it rings beside the first.
    pub second_t60: f64,
    /// Where the string is struck, as a part of its length from the bridge.
    pub pick: f64,
    /// Where the low-pass of the softest stroke begins, in Hz.
    pub soft_hz: f64,
    /// Where that of the hardest begins.
    pub hard_hz: f64,
    /// Up to which partial the pull of the pick is held back, as a small body radiates low tones badly.
    pub tilt: f64,
    /// How loud the pick's scratch is beside the pull.
    pub noise: f32,
    /// Its time constant in seconds.
    pub scratch_s: f64,
    /// How stiff the string is: the B by which partial k lies at `k f sqrt(1 + B k^2)`, and not at `k f`.
    pub stiffness: f64,
    /// Seconds in which the first partial of A4 (440 Hz) falls by 60 dB.
    pub t60: f64,
    /// How that falls with pitch: by the power of the frequency.
    pub t60_power: f64,
    /// Seconds in which partials at `treble_hz` fall by 60 dB.
    pub treble_t60: f64,
    /// In Hz.
    pub treble_hz: f64,
    /// Seconds in which a hand that stops the string makes it fall by 60 dB.
    pub damp_s: f64,
    /// The same when a new stroke takes over.
    pub takeover_s: f64,
    /// Seconds after which the hand lets go in a chop.
    pub chop_after_s: f64,
    /// Seconds in which a chop then falls by 60 dB.
    pub chop_s: f64,
    /// Seconds in which a stroke on damped strings falls by 60 dB.
    pub mute_s: f64,
    /// The body.
    pub body: [Peak; PEAKS],
    /// Loudness in the band.
    pub level: f32,
    /// Place from left (-1) to right (1).
    pub place: f32,
    /// How much of it goes to the room.
    pub room: f32,
}

impl Voice {
    /// How a string of `hz` decays. Higher strings ring more shortly; a partial at the treble frequency never rings
    /// longer than the first.
    #[must_use]
    pub fn decay(&self, hz: f64) -> Decay {
        let first = self.t60 * (440.0 / hz).powf(self.t60_power);
        Decay {
            first,
            treble: self.treble_t60.min(0.6 * first),
            treble_hz: self.treble_hz,
        }
    }

    /// How far the two strings are off the pitch of the course, in cents: by as much the less as they are louder, so that
    /// the stroke has the pitch that was asked for, and the louder one keeps near it when they drift apart.
    #[must_use]
    pub fn off(&self) -> [f64; 2] {
        let louder = 1.0 / (1.0 + f64::from(self.second));
        [
            self.apart_cents * (1.0 - louder),
            -self.apart_cents * louder,
        ]
    }
}

/// The mandolin of the melody.
pub const MANDOLIN: Voice = Voice {
    apart_cents: 2.4,
    second: 0.6,
    second_t60: 1.0,
    pick: 0.14,
    soft_hz: 1200.0,
    hard_hz: 7500.0,
    tilt: 3.0,
    noise: 0.35,
    scratch_s: 0.002,
    stiffness: 3e-5,
    t60: 2.4,
    t60_power: 0.6,
    treble_t60: 0.5,
    treble_hz: 5000.0,
    damp_s: 0.12,
    takeover_s: 0.012,
    chop_after_s: 0.02,
    chop_s: 0.1,
    mute_s: 0.03,
    body: [
        peak(195.0, 5.0, 4.0),
        peak(430.0, 4.0, 3.0),
        peak(820.0, 3.0, 3.0),
        peak(2600.0, 3.0, 1.5),
    ],
    level: 0.24,
    place: 0.12,
    room: 0.25,
};

/// The mandolin that chops: a harder hand, nearer to the middle of the strings.
pub const CHOP: Voice = Voice {
    pick: 0.18,
    hard_hz: 6000.0,
    place: -0.45,
    level: 0.11,
    room: 0.2,
    ..MANDOLIN
};

/// A guitar with steel strings.
pub const GUITAR: Voice = Voice {
    apart_cents: 0.6,
    second: 0.5,
    second_t60: 0.4,
    pick: 0.17,
    soft_hz: 700.0,
    hard_hz: 5000.0,
    tilt: 2.0,
    noise: 0.2,
    scratch_s: 0.003,
    stiffness: 4e-5,
    t60: 3.6,
    t60_power: 0.55,
    treble_t60: 0.5,
    treble_hz: 4000.0,
    damp_s: 0.2,
    takeover_s: 0.015,
    chop_after_s: 0.05,
    chop_s: 0.15,
    mute_s: 0.04,
    body: [
        peak(103.0, 5.0, 4.0),
        peak(205.0, 5.0, 4.0),
        peak(410.0, 3.0, 3.0),
        peak(2200.0, 2.0, 1.2),
    ],
    level: 0.12,
    place: 0.45,
    room: 0.2,
};

/// An upright bass, plucked with the side of a finger over the end of the fingerboard.
pub const BASS: Voice = Voice {
    apart_cents: 0.8,
    second: 0.4,
    second_t60: 0.35,
    pick: 0.3,
    soft_hz: 220.0,
    hard_hz: 1300.0,
    tilt: 1.0,
    noise: 0.08,
    scratch_s: 0.008,
    stiffness: 1e-5,
    t60: 1.0,
    t60_power: 0.5,
    treble_t60: 0.2,
    treble_hz: 1500.0,
    damp_s: 0.25,
    takeover_s: 0.04,
    chop_after_s: 0.12,
    chop_s: 0.25,
    mute_s: 0.06,
    body: [
        peak(62.0, 4.0, 3.0),
        peak(105.0, 5.0, 4.0),
        peak(240.0, 3.0, 2.0),
        peak(750.0, -3.0, 1.0),
    ],
    level: 0.26,
    place: 0.0,
    room: 0.08,
};

/// Open mandolin strings, struck softly, that ring on.
pub const DRONES: Voice = Voice {
    pick: 0.22,
    soft_hz: 900.0,
    hard_hz: 3500.0,
    noise: 0.08,
    t60: 6.0,
    treble_t60: 0.9,
    damp_s: 0.4,
    takeover_s: 0.06,
    place: -0.15,
    level: 0.11,
    room: 0.35,
    ..MANDOLIN
};

/// The players with strings, in the order of a mixer, and what each plays.
pub(super) const STRINGS: [(Player, Voice); 5] = [
    (Player::Melody, MANDOLIN),
    (Player::Chop, CHOP),
    (Player::Guitar, GUITAR),
    (Player::Bass, BASS),
    (Player::Drones, DRONES),
];
