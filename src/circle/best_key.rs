//! All twelve keys for a tune, the one that suits the circle best first.
//!
//! Each seat finds each key more or less hard, counted in fingers as the difficulty of shapes is, and the keys are ranked by the sum.
//! The weights are judgement, not measurement, and so what each seat says is handed out with the sum. A singer counts
//! most, and the top note more than the lowest ("fit the top note first, then offer the nearest easy keys": sheet of trade
//! facts).

use crate::chart::{Changes, Playing, Tune};
use crate::frets::{Capo, FIRST_POSITION_ENDS, InKey, Instrument, Setup, ring_in_key};
use crate::theory::{Chord, Key, Pitch, Symbol, Transposition};

use super::hands::{AllHands, CapoAdvice};
use super::seat::{CapoHabit, Seat};
use super::voice::Compass;

/// What it counts when the tune goes over a singer's top, or under the lowest note: each semitone.
const OVER: f32 = 4.0;
const UNDER: f32 = 2.0;
/// A tonic or fifth that is an open string: a good, so it is taken off; half where the other one is missing.
const DRONE: f32 = 0.3;
/// Melody notes below the lowest string, each semitone, and above the seventh fret of the highest course (below it lie
/// 96 % of the tunes of a dance corpus: sheet of trade facts).
const BELOW: f32 = 0.5;
const ABOVE: f32 = 0.15;
/// Melody notes that lie beyond the last fret, each semitone.
const OFF_THE_NECK: f32 = 0.5;
/// A turned peg or moved capo of somebody who sets up anew for a key; see [`Setup::work`].
const RETUNING: f32 = 0.1;
/// Each sharp or flat beyond three on a page that somebody reads.
const SIGN: f32 = 0.5;

/// The chords of a seat's hand in a key.
#[derive(Debug, Clone, PartialEq)]
pub struct HandsInKey {
    /// Where the capo goes best, and how the chords are then.
    pub capo: CapoAdvice,
    /// How many chords the tune has.
    pub chords: usize,
    /// Open strings, the capo counted, that are the tonic or fifth and have their partner.
    pub drones: usize,
    /// Open strings that are the tonic or fifth without their partner.
    pub half_drones: usize,
    /// How a banjo is set up.
    pub setup: Option<Setup>,
}

/// The melody on a seat's instrument.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MelodyInKey {
    /// Octaves from where the shorter way to the key brings it, -2 to 2: the nearest of those that lie best.
    pub octave: i8,
    /// Semitones that it goes below the lowest string.
    pub below: u8,
    /// Fret of its highest note on the course that is highest.
    pub highest_fret: u8,
}

/// The melody in a singer's voice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct VoiceInKey {
    /// What the tune asks for, in the octave that fits best.
    pub melody: Compass,
    /// Semitones over the singer's highest note; negative is room to spare.
    pub over: i32,
    /// Semitones under the singer's lowest note; negative is room to spare.
    pub under: i32,
}

impl VoiceInKey {
    /// What it asks of the voice, counted as fingers are.
    fn effort(self) -> f32 {
        OVER * times(self.over) + UNDER * times(self.under)
    }
}

/// What a key is to a seat.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatInKey {
    /// Its hands, where it has a fingerboard.
    pub hands: Option<HandsInKey>,
    /// The melody on its fingerboard, where the tune has one.
    pub melody: Option<MelodyInKey>,
    /// The melody in its voice.
    pub voice: Option<VoiceInKey>,
    /// The key on its page.
    pub written: Key,
    /// All of it, in fingers; smaller is better.
    pub effort: f32,
}

impl SeatInKey {
    /// What it asks of hands and eyes alone, in fingers.
    pub(super) fn effort_without_voice(&self) -> f32 {
        self.effort - self.voice.map_or(0.0, VoiceInKey::effort)
    }
}

/// A key and what it is to the circle.
#[derive(Debug, Clone, PartialEq)]
pub struct RankedKey {
    /// The key.
    pub key: Key,
    /// Semitones from the key that the tune is written in, -5 to 6.
    pub moved: i32,
    /// The sum of the seats' efforts; smaller is better.
    pub effort: f32,
    /// What it is to each seat.
    pub seats: Vec<SeatInKey>,
}

/// The twelve keys in the tune's mode, the best for these seats first; of equal ones the nearest to where the tune is
/// written. Without seats that is the order.
///
/// ```
/// use fourcourse::circle::{Seat, best_keys};
/// use fourcourse::chart::{Metre, Tune};
/// let tune = Tune::new(Metre::COMMON, "F#".parse().unwrap());
/// let keys = best_keys(&tune, &[]);
/// assert_eq!((keys.len(), keys[0].key.to_string()), (12, "F#".to_owned()));
/// ```
pub fn best_keys(tune: &Tune, seats: &[Seat]) -> Vec<RankedKey> {
    rank(tune, seats, &AllHands::default())
}

/// The same with hands that remember what was found out before.
pub(super) fn rank(tune: &Tune, seats: &[Seat], all_hands: &AllHands) -> Vec<RankedKey> {
    let chords = shares(tune);
    let notes = tune.bars.iter().flat_map(|bar| &bar.notes);
    let melody = Compass::of(notes.map(|note| note.pitch));
    let mut keys: Vec<RankedKey> = (-5..=6)
        .map(|moved| {
            let key = tune.key.up(moved);
            let by = Transposition::between(tune.key, key);
            let chords: Vec<_> = { chords.iter() }
                .map(|&(chord, share)| (by.chord(chord), share))
                .collect();
            let melody = melody.map(|melody| Compass {
                low: up(melody.low, moved, key),
                high: up(melody.high, moved, key),
            });
            let seats: Vec<_> = { seats.iter() }
                .map(|seat| in_key(seat, all_hands, key, &chords, melody))
                .collect();
            RankedKey {
                key,
                moved,
                effort: seats.iter().map(|seat| seat.effort).sum(),
                seats,
            }
        })
        .collect();
    keys.sort_by(|a, b| {
        let near = |key: &RankedKey| key.moved.abs();
        a.effort.total_cmp(&b.effort).then(near(a).cmp(&near(b)))
    });
    keys
}

/// A pitch so many semitones higher, as a key spells it.
fn up(pitch: Pitch, semitones: i32, key: Key) -> Pitch {
    key.spell_midi(pitch.midi() + semitones)
}

/// The chords of a tune, each with the share of a time through that it holds.
pub fn shares(tune: &Tune) -> Vec<(Chord, f32)> {
    let playing: Playing = tune.playing();
    let changes = Changes::of(tune, &playing);
    let mut held: Vec<(Chord, i64)> = Vec::new();
    for change in changes.as_slice() {
        if let Symbol::Chord(chord) = change.symbol {
            match held.iter_mut().find(|(there, _)| *there == chord) {
                Some((_, length)) => *length += change.length.0,
                None => held.push((chord, change.length.0)),
            }
        }
    }
    let whole = held.iter().map(|&(_, length)| length).sum::<i64>().max(1);
    // A share needs no more than f32 holds.
    #[allow(clippy::cast_possible_truncation)]
    let share = |length: i64| (length as f64 / whole as f64) as f32;
    held.into_iter()
        .map(|(chord, length)| (chord, share(length)))
        .collect()
}

fn in_key(
    seat: &Seat,
    all_hands: &AllHands,
    key: Key,
    chords: &[(Chord, f32)],
    melody: Option<Compass>,
) -> SeatInKey {
    let mut effort = 0.0;
    let in_hand = seat.set_up(key).map(|set_up| {
        let (in_hand, hard) = hands_in_key(seat, set_up, all_hands, key, chords);
        effort += hard;
        in_hand
    });
    let on_neck = seat
        .instrument
        .as_ref()
        .zip(melody)
        .map(|(instrument, melody)| {
            let (on_neck, hard) = melody_in_key(instrument, melody);
            effort += hard;
            on_neck
        });
    let voice = seat.sings.zip(melody).map(|(compass, melody)| {
        let (voice, hard) = voice_in_key(compass, melody, key);
        effort += hard;
        voice
    });
    let written = seat.reads.written_key(key);
    if seat.instrument.is_none() && seat.sings.is_none() {
        effort += SIGN * times(written.signature().abs() - 3);
    }
    SeatInKey {
        hands: in_hand,
        melody: on_neck,
        voice,
        written,
        effort,
    }
}

fn hands_in_key(
    seat: &Seat,
    (tuned, habit, setup): (Instrument, CapoHabit, Option<Setup>),
    all_hands: &AllHands,
    key: Key,
    chords: &[(Chord, f32)],
) -> (HandsInKey, f32) {
    let hands = all_hands.on(&tuned);
    let advice = hands.capo_advice(habit, seat.known.as_ref(), key, chords);
    let advice = advice.into_iter().next();
    let capo = advice.unwrap_or(CapoAdvice {
        fret: 0,
        shapes: key,
        known: 0,
        hardest: None,
        effort: 0.0,
    });
    let ring = ring_in_key(&tuned, Capo::at(capo.fret), key);
    let count = |standing| ring.iter().filter(|open| open.standing == standing).count();
    let (drones, half_drones) = (count(InKey::Drone), count(InKey::HalfDrone));
    // A guitar has many; more than three do not help more.
    let ringing = |count: usize| times(i32::try_from(count.min(3)).unwrap_or(0));
    let effort = capo.effort - DRONE * (ringing(drones) + 0.5 * ringing(half_drones))
        + setup
            .zip(seat.instrument.as_ref())
            .map_or(0.0, |(setup, usual)| {
                let work = setup.work(&Setup::USUAL, usual);
                RETUNING * times(i32::try_from(work).unwrap_or(i32::MAX))
            });
    let in_hand = HandsInKey {
        capo,
        chords: chords.len(),
        drones,
        half_drones,
        setup,
    };
    (in_hand, effort)
}

fn melody_in_key(instrument: &Instrument, melody: Compass) -> (MelodyInKey, f32) {
    // A short string is for ringing, not for the melody.
    let open = || {
        let long = instrument
            .courses
            .iter()
            .filter(|course| course.starts_at == 0);
        long.map(|course| course.open.midi())
    };
    let (lowest, highest) = (open().min().unwrap_or(0), open().max().unwrap_or(0));
    let octaves = [0_i8, -1, 1, -2, 2].map(|octave| {
        let moved = |pitch: Pitch| pitch.midi() + 12 * i32::from(octave);
        let below = (lowest - moved(melody.low)).max(0);
        let fret = (moved(melody.high) - highest).max(0);
        let effort = BELOW * times(below)
            + ABOVE * times(fret - i32::from(FIRST_POSITION_ENDS))
            + OFF_THE_NECK * times(fret - i32::from(instrument.frets));
        let on_neck = MelodyInKey {
            octave,
            below: u8::try_from(below).unwrap_or(u8::MAX),
            highest_fret: u8::try_from(fret).unwrap_or(u8::MAX),
        };
        (on_neck, effort)
    });
    let best = octaves.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
    best.unwrap_or(octaves[0])
}

fn voice_in_key(singer: Compass, melody: Compass, key: Key) -> (VoiceInKey, f32) {
    let octaves = [0, -1, 1, -2, 2].map(|octave| {
        let moved = |pitch| up(pitch, 12 * octave, key);
        let melody = Compass {
            low: moved(melody.low),
            high: moved(melody.high),
        };
        let over = melody.high.midi() - singer.high.midi();
        let under = singer.low.midi() - melody.low.midi();
        let voice = VoiceInKey {
            melody,
            over,
            under,
        };
        (voice, voice.effort())
    });
    let best = octaves.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
    best.unwrap_or(octaves[0])
}

/// A count as a factor; nothing below zero.
fn times(count: i32) -> f32 {
    f32::from(u16::try_from(count.max(0)).unwrap_or(u16::MAX))
}

#[cfg(test)]
mod tests;
