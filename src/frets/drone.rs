//! Drones: the open course beside the melody that rings along.
//!
//! The left hand does not change: the pick strikes a neighbouring open course with the melody's own, the next higher one
//! where that will do. Which notes get one is decided over the whole melody at once, by dynamic programming over one sum
//! of what rubs, what changes, and what does not ring.

use std::collections::HashMap;

use crate::theory::{Chord, Key, NoteName};

use super::cheapest::cheapest;
use super::instrument::{Capo, Instrument};
use super::ring::{InChord, InKey, ring_in_chord, ring_in_key};
use super::roughness::roughness;
use super::tab::Place;

/// Which drones are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Drones {
    /// None.
    Off,
    /// The rule of thumb: the key's tonic and fifth, where both are open courses, whatever the chord.
    #[default]
    Plain,
    /// What fits the chord now; colour where nothing fits, and nothing that clashes. Where there is no chord, the key.
    ByChord,
}

/// A note of the melody as it lies on the neck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sounding {
    /// MIDI key number.
    pub midi: i32,
    /// Where it is played; a note without a place gets no drone.
    pub place: Option<Place>,
    /// How long it sounds, in quarter notes.
    pub quarters: f32,
    /// It belongs to a fast run.
    pub fast: bool,
    /// It is picked upwards, between the beats.
    pub up: bool,
    /// The chord now.
    pub chord: Option<Chord>,
    /// The key now.
    pub key: Key,
}

/// An open course beside a note, and how it would sound with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Neighbour {
    /// The course, counted from 0.
    pub course: usize,
    /// MIDI key number of the open course, the capo counted.
    pub midi: i32,
    /// How it stands to the chord; `None` where no chord is played.
    pub in_chord: Option<InChord>,
    /// How it stands to the key.
    pub in_key: InKey,
    /// Roughness with the melody note, as a part of that of a half step above it: 1 is as rough.
    pub roughness: f32,
}

impl Neighbour {
    /// Whether it is a tone of the chord, or where there is none, the tonic or the fifth of the key.
    fn belongs(&self) -> bool {
        match self.in_chord {
            Some(standing) => standing == InChord::Fits,
            None => matches!(self.in_key, InKey::Drone | InKey::HalfDrone),
        }
    }
}

/// Whether two notes are a second or a seventh apart, in any octave: what only colours must not rub with the note either.
fn is_second_or_seventh(one: i32, other: i32) -> bool {
    matches!((one - other).rem_euclid(12), 1 | 2 | 10 | 11)
}

/// Why a note has the drone it has, or none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Why {
    /// Rings: the tonic or the fifth of the key, by the rule of thumb.
    Key,
    /// Rings: a tone of the chord.
    Chord,
    /// Rings: no tone of the chord, but it rubs with nothing.
    Colour,
    /// Does not: beside the note there is only what clashes with a tone of the chord.
    Clash {
        /// The tone that it rubs with.
        with: NoteName,
    },
    /// Does not: what there is beside it rubs with the note itself.
    Rough,
    /// Does not: beside the note there is nothing of the rule of thumb.
    NotOfKey,
    /// Does not: the run is fast.
    Fast,
    /// Does not: starting to ring for so short a while would be heard more than the ringing, or the note is off the neck.
    Passing,
}

impl Why {
    /// Whether it is why a drone rings.
    pub const fn rings(self) -> bool {
        matches!(self, Self::Key | Self::Chord | Self::Colour)
    }
}

/// What a note gets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// The open course that rings along, if one does.
    pub drone: Option<Neighbour>,
    /// Why.
    pub why: Why,
}

/// As rough as this, of a half step, a drone is never chosen (whole steps in the middle of the neck have 0.6 to 0.75).
const TOO_ROUGH: f32 = 0.85;
/// Each quarter note without a drone.
const DRY: f32 = 1.0;
/// Roughness of 1 through a quarter note.
const ROUGH: f32 = 0.5;
/// Colour where a tone of the chord is wanted, and a drone from outside the scale, through a quarter note.
const COLOUR: f32 = 0.3;
const OUTSIDE: f32 = 0.5;
/// A drone that is neither tonic nor fifth of the key.
const NOT_OF_KEY: f32 = 0.15;
/// The lower neighbour rather than the higher one: the pick reaches back for it.
const LOWER: f32 = 0.1;
/// Another drone than the note before had while the melody stays on its course, or starting or ending to ring.
const CHANGE: f32 = 0.2;

/// The open courses beside a place, the next higher one first, and how each stands to the chord and the key.
pub fn neighbours(instrument: &Instrument, capo: Capo, note: &Sounding) -> Vec<Neighbour> {
    Neck::new(instrument, capo).neighbours(note)
}

/// The drones of a melody.
pub fn drones(
    instrument: &Instrument,
    capo: Capo,
    melody: &[Sounding],
    wanted: Drones,
) -> Vec<Choice> {
    let mut neck = Neck::new(instrument, capo);
    let (columns, reasons): (Vec<Vec<Option<Neighbour>>>, Vec<Why>) = melody
        .iter()
        .map(|note| {
            let (ring, why) = neck.options(note, wanted);
            let options = std::iter::once(None).chain(ring.into_iter().map(Some));
            (options.collect::<Vec<_>>(), why)
        })
        .unzip();
    let own = |index: usize, drone: &Option<_>| cost(&melody[index], drone.as_ref(), wanted);
    let between = |index: usize, before: &Option<_>, after: &Option<_>| {
        change(
            (&melody[index - 1], before.as_ref()),
            (&melody[index], after.as_ref()),
        )
    };
    let chosen = cheapest(&columns, own, between);
    let choice = |index: usize| {
        let drone = columns[index][chosen[index]];
        let why = drone.map_or(reasons[index], |drone| {
            rings(&drone, &melody[index], wanted)
        });
        Choice { drone, why }
    };
    (0..melody.len()).map(choice).collect()
}

/// Why a chosen drone rings.
fn rings(drone: &Neighbour, note: &Sounding, wanted: Drones) -> Why {
    match (wanted, drone.in_chord) {
        (Drones::Plain, _) => Why::Key,
        (_, Some(InChord::Fits)) => Why::Chord,
        (_, None) if drone.in_key == InKey::Drone && note.chord.is_none() => Why::Key,
        _ => Why::Colour,
    }
}

fn cost(note: &Sounding, drone: Option<&Neighbour>, wanted: Drones) -> f32 {
    let Some(drone) = drone else {
        return DRY * note.quarters;
    };
    let lower = note.place.is_some_and(|place| drone.course < place.course);
    let stands = match (wanted, drone.in_chord) {
        (Drones::ByChord, Some(InChord::Fits)) => 0.0,
        (Drones::ByChord, Some(_)) => COLOUR,
        _ => 0.0,
    };
    let of_key = match (wanted, drone.in_key) {
        (Drones::ByChord, InKey::Outside) => OUTSIDE,
        (Drones::ByChord, InKey::Scale) => NOT_OF_KEY,
        _ => 0.0,
    };
    let held = note.quarters * (ROUGH * drone.roughness + stands + of_key);
    held + if lower { LOWER } else { 0.0 }
}

fn change(
    (played, before): (&Sounding, Option<&Neighbour>),
    (note, after): (&Sounding, Option<&Neighbour>),
) -> f32 {
    let course = |note: &Sounding| note.place.map(|place| place.course);
    let stays = course(played) == course(note);
    match (before, after) {
        (None, None) => 0.0,
        // The melody moves on, and the drone with it.
        (Some(_), Some(_)) if !stays => 0.0,
        (Some(one), Some(other)) if one.course == other.course => 0.0,
        _ => CHANGE,
    }
}

/// A neck with what has been found out about it.
struct Neck<'a> {
    instrument: &'a Instrument,
    capo: Capo,
    chords: HashMap<Chord, Vec<InChord>>,
    keys: HashMap<Key, Vec<InKey>>,
    rough: HashMap<(i32, i32), f32>,
}

impl<'a> Neck<'a> {
    fn new(instrument: &'a Instrument, capo: Capo) -> Self {
        Self {
            instrument,
            capo,
            chords: HashMap::new(),
            keys: HashMap::new(),
            rough: HashMap::new(),
        }
    }

    fn neighbours(&mut self, note: &Sounding) -> Vec<Neighbour> {
        let Some(place) = note.place else {
            return vec![];
        };
        let (instrument, capo) = (self.instrument, self.capo);
        let beside = [place.course.checked_add(1), place.course.checked_sub(1)];
        let mut found = Vec::with_capacity(2);
        for course in beside.into_iter().flatten() {
            let Some(midi) = self.instrument.midi(course, 0, self.capo) else {
                continue;
            };
            let in_chord = note.chord.and_then(|chord| {
                let standings = self.chords.entry(chord).or_insert_with(|| {
                    let ring = ring_in_chord(instrument, capo, chord);
                    ring.iter().map(|open| open.standing).collect()
                });
                standings.get(course).copied()
            });
            let standings = self.keys.entry(note.key).or_insert_with(|| {
                let ring = ring_in_key(instrument, capo, note.key);
                ring.iter().map(|open| open.standing).collect()
            });
            let in_key = standings.get(course).copied().unwrap_or(InKey::Outside);
            let rough = self.rough.entry((note.midi, midi)).or_insert_with(|| {
                let part = roughness(note.midi, midi) / roughness(note.midi, note.midi + 1);
                // A part of one: f32 is exact enough.
                #[allow(clippy::cast_possible_truncation)]
                let part = part as f32;
                part
            });
            let roughness = *rough;
            found.push(Neighbour {
                course,
                midi,
                in_chord,
                in_key,
                roughness,
            });
        }
        found
    }

    /// What may ring with a note, and why nothing does if nothing is chosen.
    fn options(&mut self, note: &Sounding, wanted: Drones) -> (Vec<Neighbour>, Why) {
        if wanted == Drones::Off || note.place.is_none() {
            return (vec![], Why::Passing);
        }
        if note.fast {
            return (vec![], Why::Fast);
        }
        let mut options = self.neighbours(note);
        if wanted == Drones::Plain {
            options.retain(|one| one.in_key == InKey::Drone);
            if options.is_empty() {
                return (options, Why::NotOfKey);
            }
        } else {
            let clash = options.iter().find_map(|one| match one.in_chord {
                Some(InChord::Clash { with, .. }) => Some(with),
                _ => None,
            });
            options.retain(|one| !matches!(one.in_chord, Some(InChord::Clash { .. })));
            if let (true, Some(with)) = (options.is_empty(), clash) {
                return (options, Why::Clash { with });
            }
            options.retain(|one| one.in_chord.is_some() || one.in_key != InKey::Outside);
            if options.is_empty() {
                return (options, Why::NotOfKey);
            }
            options.retain(|one| one.belongs() || !is_second_or_seventh(note.midi, one.midi));
        }
        options.retain(|one| one.roughness < TOO_ROUGH);
        let why = if options.is_empty() {
            Why::Rough
        } else {
            Why::Passing
        };
        (options, why)
    }
}
