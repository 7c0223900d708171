//! Exercises that a tune itself asks for: its double stops for the right hand, its chord changes for the left.

use std::collections::HashMap;

use crate::frets::{
    Apart, Capo, Choice, DoubleStop, Drones, Ease, FIRST_POSITION, Finger, Instrument, Order,
    Place, Shape, Why, change_effort, shapes,
};
use crate::theory::{Chord, Key, Symbol};

use super::arrange::{Arrangement, TabNote};
use super::changes::Changes;
use super::metre::Metre;
use super::pick::PickStroke;
use super::strum::{direction_at, hand_step};
use super::time::Ticks;
use super::tune::{Bar, ChordAt, Note, Tune};

/// A double stop that the tune needs, to be struck again and again.
#[derive(Debug, Clone, PartialEq)]
pub struct StopDrill {
    /// Course, fret and finger of the two notes, the lower course first.
    pub notes: [(usize, u8, Option<Finger>); 2],
    /// How often the tune has it.
    pub times: usize,
}

/// A change of chords, to be gone round and round.
#[derive(Debug, Clone, PartialEq)]
pub struct ChangeDrill {
    /// The chord before.
    pub from: Chord,
    /// The chord after.
    pub to: Chord,
    /// Their first shapes; `None` where no hand can hold the chord here.
    pub shapes: Option<(Shape, Shape)>,
    /// How often the tune has the change, one way or the other.
    pub times: usize,
    /// Its effort: see [`change_effort`].
    pub effort: f32,
}

impl Arrangement {
    /// The double stops of the arrangement that the left hand has to hold, the ones that come most often first. Two open
    /// courses are nothing to practise.
    pub fn stop_drills(&self) -> Vec<StopDrill> {
        let mut drills: Vec<StopDrill> = Vec::new();
        for note in &self.notes {
            let (Some(place), Some(stop)) = (note.place, note.stop) else {
                continue;
            };
            if place.fret == 0 && stop.fret == 0 {
                continue;
            }
            let mut notes = [
                (place.course, place.fret, stop.melody_finger),
                (stop.course, stop.fret, stop.finger),
            ];
            notes.sort_by_key(|note| note.0);
            match drills.iter_mut().find(|drill| drill.notes == notes) {
                Some(drill) => drill.times += 1,
                None => drills.push(StopDrill { notes, times: 1 }),
            }
        }
        // Of equal ones the first in the tune.
        drills.sort_by_key(|drill| std::cmp::Reverse(drill.times));
        drills
    }
}

impl StopDrill {
    /// The double stop as an exercise: a bar on the beat and a bar with the hand (see [`drill_bars`]), as a tune with the
    /// lower note for its melody, and as it is held. `None` where the notes are not on the instrument.
    pub fn exercise(
        &self,
        metre: Metre,
        key: Key,
        (instrument, capo): (&Instrument, Capo),
    ) -> Option<(Tune, Arrangement)> {
        let [(low, low_fret, low_finger), (high, high_fret, high_finger)] = self.notes;
        let pitch = |course, fret| {
            let midi = instrument.sound(course, fret, capo)?.midi();
            Some(key.spell_midi(midi))
        };
        let (melody, second) = (pitch(low, low_fret)?, pitch(high, high_fret)?);
        let mut tune = Tune::new(metre, key);
        for strokes in drill_bars(metre) {
            let length = metre.bar_or_whole();
            let ends = strokes
                .iter()
                .skip(1)
                .map(|stroke| stroke.at)
                .chain([length]);
            let notes = strokes
                .iter()
                .zip(ends)
                .map(|(stroke, end)| Note::new(stroke.at, end - stroke.at, melody));
            tune.bars.push(Bar {
                length,
                notes: notes.collect(),
                ..Bar::default()
            });
        }
        let place = Place {
            course: low,
            fret: low_fret,
            finger: low_finger,
            position: FIRST_POSITION,
        };
        let stop = DoubleStop {
            course: high,
            fret: high_fret,
            midi: second.midi(),
            apart: Apart::Third,
            melody_finger: low_finger,
            finger: high_finger,
            effort: 0.0,
        };
        let notes = tune.melody().into_iter().map(|note| TabNote {
            midi: melody.midi(),
            note,
            place: Some(place),
            drone: Choice {
                drone: None,
                why: Why::Passing,
            },
            stop: Some(stop),
        });
        let tab = Arrangement {
            notes: notes.collect(),
            octaves: 0,
            usual: 0,
            offered: None,
            wanted: Drones::Off,
            ease: Ease::default(),
        };
        Some((tune, tab))
    }
}

impl ChangeDrill {
    /// The change as an exercise: a bar of each chord.
    pub fn exercise(&self, metre: Metre, key: Key) -> Tune {
        let length = metre.bar_or_whole();
        let bar = |chord| Bar {
            length,
            chords: vec![ChordAt {
                at: Ticks::ZERO,
                symbol: Symbol::Chord(chord),
            }],
            ..Bar::default()
        };
        Tune {
            bars: vec![bar(self.from), bar(self.to)],
            ..Tune::new(metre, key)
        }
    }
}

/// The right hand of a drill: a bar with a stroke on each beat (quarters in 4/4, dotted quarters in a jig), and a bar with
/// one on each movement of the hand (eighths).
pub fn drill_bars(metre: Metre) -> [Vec<PickStroke>; 2] {
    let bar = metre.bar_or_whole();
    let stroke = |at| PickStroke {
        at,
        direction: direction_at(metre, at),
        note: Some(0),
    };
    let beats = match metre.beats() {
        beats if beats.is_empty() => vec![Ticks::QUARTER; 4],
        beats => beats,
    };
    let mut at = Ticks::ZERO;
    let on_beats = beats.into_iter().map(|beat| {
        let stroke = stroke(at);
        at += beat;
        stroke
    });
    let on_beats = on_beats.collect();
    let steps = bar.div_rem(hand_step(metre)).0;
    let on_steps = (0..steps).map(|step| stroke(hand_step(metre) * step));
    [on_beats, on_steps.collect()]
}

impl Tune {
    /// The chord changes of the tune as it is played, the hardest first; there and back is one change.
    pub fn change_drills(&self, instrument: &Instrument, capo: Capo) -> Vec<ChangeDrill> {
        let changes = Changes::of(self, &self.playing());
        let mut first_shapes: HashMap<Chord, Option<Shape>> = HashMap::new();
        let mut shape = |chord: Chord| {
            let found = || shapes(instrument, capo, chord, Order::Beginner, 1).pop();
            first_shapes.entry(chord).or_insert_with(found).clone()
        };
        let mut drills: Vec<ChangeDrill> = Vec::new();
        for pair in changes.as_slice().windows(2) {
            let (Symbol::Chord(from), Symbol::Chord(to)) = (pair[0].symbol, pair[1].symbol) else {
                continue;
            };
            let same = |drill: &&mut ChangeDrill| {
                (drill.from, drill.to) == (from, to) || (drill.from, drill.to) == (to, from)
            };
            if let Some(drill) = drills.iter_mut().find(same) {
                drill.times += 1;
                continue;
            }
            let shapes = shape(from).zip(shape(to));
            let effort = shapes.as_ref().map_or(0.0, |(one, other)| {
                // Round and round: both ways.
                change_effort(instrument, one, other) + change_effort(instrument, other, one)
            });
            drills.push(ChangeDrill {
                from,
                to,
                shapes,
                times: 1,
                effort,
            });
        }
        drills.sort_by(|a, b| b.effort.total_cmp(&a.effort));
        drills
    }
}
