//! How loud a score will be, from its strokes alone, and how much louder or softer the band has to play it.
//!
//! Loudness after ITU-R BS.1770 is a mean power, weighted by ear. Strokes do not know of each other, so their energies
//! add up: what a stroke brings along follows from the player, the pitch, the force and how long it may ring. The figures
//! of [`KINDS`] were measured on the voices with a meter after that standard; `tests/outside` holds the sums to it.

use crate::chart::{Tempo, Ticks};

use super::event::{Event, Player, Sound, Touch};
use super::number::single;

/// Integrated loudness of a band, in LUFS (AES TD1008, 2021, for stereo programmes of mixed kind).
pub const TARGET_LUFS: f64 = -16.0;

/// One player alone, beside the band, in LU: he is not to sound as large as all of them.
const ONE_ALONE: f64 = -2.0;

/// Drones or a metronome alone, beside the band, in LU: one plays along with them.
const BESIDE: f64 = -4.0;

/// The most that the band is made louder, and the least.
const GAINS: (f64, f64) = (0.1, 8.0);

/// The click keeps its place beside a band; alone it goes where it is wanted, within these: its 1 is at the ceiling already,
/// and with the other beats made louder than this nobody would tell it from them.
const CLICK_GAINS: (f64, f64) = (0.25, 2.0);

/// What a click may take of the loudness at most before the others give way no more.
const MOST_CLICK: f64 = 0.5;

/// What BS.1770 adds to ten times the logarithm of the weighted mean power, in dB.
const OFFSET: f64 = -0.691;

/// Power is measured in blocks of 0.4 s, and quiet ones do not count: so long a stroke is heard at most, in seconds and in
/// taus besides. What is rarer is not heard as softer.
const BLOCKS: f64 = 1.2;
const TAUS: f64 = 5.0;

/// How the energy of a stroke grows with its force.
const BY_FORCE: f64 = 2.4;

/// Energy comes in as 1 - exp(-(t / tau)^p), as a course has a fast and a slow string.
const BY_TIME: f64 = 0.8;

/// Semitones down in which tau doubles.
const TAU_DOUBLES: f64 = 14.0;

/// What a stroke of force 0.7 on C4 brings along.
struct Kind {
    /// Its weighted energy at the band's usual level, in dB of a second at full scale.
    db: f64,
    /// By how many dB less an octave higher.
    octave: f64,
    /// The time in which most of it has come, in seconds.
    tau: f64,
    /// A chop and a muted stroke beside it, in dB.
    chop: f64,
    mute: f64,
}

/// By player; of the click, the 1 and the other beats.
const KINDS: [Kind; Player::ALL.len()] = [
    kind(-21.8, 2.2, 0.115, -5.4, -12.6),
    kind(-28.5, 2.2, 0.13, -5.9, -12.9),
    kind(-27.5, 2.5, 0.2, -5.2, -19.0),
    kind(-22.3, 0.0, 0.035, -0.9, -19.0),
    kind(-26.3, 2.2, 0.3, -10.0, -25.0),
    kind(-31.0, 0.0, 0.0, 5.0, 0.0),
];

const fn kind(db: f64, octave: f64, tau: f64, chop: f64, mute: f64) -> Kind {
    Kind {
        db,
        octave,
        tau,
        chop,
        mute,
    }
}

/// Strokes are told apart by how long they ring beside their tau at one quarter a second: 1/4, 1/2, 1... of it.
const SPANS: usize = 9;
const FIRST_SPAN: f64 = -2.0;

/// The energy of a score by player, in a form from which its loudness at any tempo takes a microsecond.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Load {
    /// What all strokes bring along that ring for so long.
    energy: [[f32; SPANS]; Player::ALL.len()],
    /// How often each player strikes.
    strokes: [f32; Player::ALL.len()],
    /// How long it all is, in quarters.
    quarters: f64,
}

/// How loud the players are to play: factors of the level at which [`KINDS`] were measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Gains {
    pub(super) strings: f32,
    pub(super) click: f32,
}

impl Load {
    /// What the events of one time through bring along.
    pub(super) fn of(events: &[Event], length: Ticks) -> Self {
        let mut last = [None; Player::ALL.len()];
        let mut load = Self {
            quarters: length.quarters(),
            ..Self::default()
        };
        for event in events {
            let player = event.player as usize;
            let (energy, span) = energy(event);
            load.energy[player][span] += single(energy);
            if last[player].replace(event.at) != Some(event.at) {
                load.strokes[player] += 1.0;
            }
        }
        load
    }

    /// The weighted mean power of a player at a tempo.
    fn power(&self, player: Player, tempo: Tempo) -> f64 {
        let quarter = 60.0 / tempo.quarters_a_minute();
        let energy = self.energy[player as usize].iter().zip(0_u32..);
        let energy: f64 = energy
            .map(|(&energy, span)| {
                f64::from(energy) * comes_in(f64::from(span) + FIRST_SPAN, quarter)
            })
            .sum();
        let heard = BLOCKS + TAUS * KINDS[player as usize].tau;
        let strokes = f64::from(self.strokes[player as usize]);
        let seconds = (self.quarters * quarter).min(strokes * heard);
        if seconds > 0.0 { energy / seconds } else { 0.0 }
    }

    /// How the band has to play at a tempo, with the players heard at these levels; 0 is not at all. A level moves one
    /// player beside the others; what all of them have in common is left to the player's wish.
    pub(super) fn gains(&self, tempo: Tempo, levels: [f32; Player::ALL.len()]) -> Gains {
        let most = levels.iter().copied().fold(0.0, f32::max);
        let power = Player::ALL.map(|player| {
            let level = f64::from(levels[player as usize] / most.max(f32::MIN_POSITIVE));
            level.powi(2) * self.power(player, tempo)
        });
        let click = power[Player::Click as usize];
        let strings: f64 = power.iter().sum::<f64>() - click;
        let heard = |player: &Player| power[*player as usize] > 0.0;
        let beside = |player: &Player| matches!(player, Player::Drones | Player::Click);
        let players = Player::ALL
            .iter()
            .filter(|p| heard(p) && !beside(p))
            .count();
        let lufs = TARGET_LUFS
            + match players {
                0 => BESIDE,
                1 => ONE_ALONE,
                _ => 0.0,
            };
        let wanted = 10_f64.powf((lufs - OFFSET) / 10.0);
        let gain = |wanted: f64, power: f64, (least, most): (f64, f64)| match power > 0.0 {
            true => single((wanted / power).sqrt().clamp(least, most)),
            false => 1.0,
        };
        let alone = strings <= 0.0;
        Gains {
            strings: gain(wanted - click.min(MOST_CLICK * wanted), strings, GAINS),
            click: if alone {
                gain(wanted, click, CLICK_GAINS)
            } else {
                1.0
            },
        }
    }
}

/// The part of its energy that a stroke has brought along when it is stopped; `span` is the logarithm of how long that is,
/// in taus at one quarter a second.
fn comes_in(span: f64, quarter: f64) -> f64 {
    1.0 - (-(span.exp2() * quarter).powf(BY_TIME)).exp()
}

/// What a stroke brings along if it rings to its end, and the span that it is counted under.
fn energy(event: &Event) -> (f64, usize) {
    let kind = &KINDS[event.player as usize];
    let (db, taus) = match event.sound {
        Sound::Click { first } => (
            kind.db + if first { kind.chop } else { kind.mute },
            f64::MAX,
        ),
        Sound::String {
            midi, rings, touch, ..
        } => {
            let octaves = (f64::from(midi) - 60.0) / 12.0;
            let tau = kind.tau * (-octaves * 12.0 / TAU_DOUBLES).exp2();
            let ring = kind.db - kind.octave * octaves;
            match touch {
                Touch::Ring => (ring, rings.quarters() / tau),
                Touch::Chop => (kind.db + kind.chop, f64::MAX),
                Touch::Mute => (kind.db + kind.mute, f64::MAX),
            }
        }
    };
    let force = (f64::from(event.force) / 0.7).powf(BY_FORCE);
    let span = (taus.log2() - FIRST_SPAN)
        .round()
        .clamp(0.0, (SPANS - 1) as f64);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // one of a few
    let span = span as usize;
    (10_f64.powf(db / 10.0) * force, span)
}
