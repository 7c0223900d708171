//! Bars with their notes, and strums, version 1.

use serde::{Deserialize, Serialize};

use crate::chart;
use crate::theory::Symbol;

use super::music::{
    Chord, Key, Metre, Pitch, key, metre, pitch, place, restore_key, restore_metre, restore_pitch,
};
use super::optional;

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Note {
    at: i64,
    length: i64,
    pitch: Pitch,
    tied: bool,
    slurred: bool,
    tuplet: Option<(u8, u8, bool)>,
    grace: Vec<Pitch>,
    ornaments: Vec<u8>,
    syllables: Vec<Option<(String, bool)>>,
}

/// The ornaments in the order of version 1.
const ORNAMENTS: [chart::Ornament; 11] = [
    chart::Ornament::Staccato,
    chart::Ornament::Accent,
    chart::Ornament::Tenuto,
    chart::Ornament::Fermata,
    chart::Ornament::Roll,
    chart::Ornament::Trill,
    chart::Ornament::Mordent,
    chart::Ornament::Turn,
    chart::Ornament::UpBow,
    chart::Ornament::DownBow,
    chart::Ornament::Slide,
];

impl From<&chart::Note> for Note {
    fn from(note: &chart::Note) -> Self {
        Self {
            at: note.at.0,
            length: note.length.0,
            pitch: pitch(note.pitch),
            tied: note.tied,
            slurred: note.slurred,
            tuplet: note
                .tuplet
                .map(|tuplet| (tuplet.count, tuplet.instead_of, tuplet.first)),
            grace: note.grace.iter().copied().map(pitch).collect(),
            ornaments: note
                .ornaments
                .iter()
                .map(|ornament| place(&ORNAMENTS, ornament))
                .collect(),
            syllables: note
                .syllables
                .iter()
                .map(|syllable| {
                    syllable
                        .as_ref()
                        .map(|syllable| (syllable.text.clone(), syllable.joined))
                })
                .collect(),
        }
    }
}

impl Note {
    fn restore(self) -> Option<chart::Note> {
        Some(chart::Note {
            at: chart::Ticks(self.at),
            length: chart::Ticks(self.length),
            pitch: restore_pitch(self.pitch)?,
            tied: self.tied,
            slurred: self.slurred,
            tuplet: self.tuplet.map(|(count, instead_of, first)| chart::Tuplet {
                count,
                instead_of,
                first,
            }),
            grace: self
                .grace
                .into_iter()
                .map(restore_pitch)
                .collect::<Option<_>>()?,
            ornaments: self
                .ornaments
                .into_iter()
                .map(|ornament| ORNAMENTS.get(usize::from(ornament)).copied())
                .collect::<Option<_>>()?,
            syllables: self
                .syllables
                .into_iter()
                .map(|syllable| syllable.map(|(text, joined)| chart::Syllable { text, joined }))
                .collect(),
        })
    }
}

/// A pattern: name, metre, step, and per slot: up, stroke (0 silent, 1 bass, 2 strum, 3 chop), accent.
pub(super) type Strum = (String, Metre, i64, Vec<(bool, u8, bool)>);

/// The strokes in the order of version 1.
const STROKES: [chart::Stroke; 4] = [
    chart::Stroke::Silent,
    chart::Stroke::Bass,
    chart::Stroke::Strum,
    chart::Stroke::Chop,
];

pub(super) fn strum(pattern: &chart::StrumPattern) -> Strum {
    let slots = pattern
        .slots
        .iter()
        .map(|slot| {
            (
                slot.direction == chart::Direction::Up,
                place(&STROKES, &slot.stroke),
                slot.accent,
            )
        })
        .collect();
    (
        pattern.name.clone(),
        metre(pattern.metre),
        pattern.step.0,
        slots,
    )
}

pub(super) fn restore_strum((name, metre, step, slots): Strum) -> Option<chart::StrumPattern> {
    let slots = slots.into_iter().map(|(up, stroke, accent)| {
        Some(chart::Slot {
            direction: if up {
                chart::Direction::Up
            } else {
                chart::Direction::Down
            },
            stroke: *STROKES.get(usize::from(stroke))?,
            accent,
        })
    });
    Some(chart::StrumPattern {
        name,
        metre: restore_metre(metre)?,
        step: chart::Ticks(step),
        slots: slots.collect::<Option<_>>()?,
    })
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Bar {
    length: i64,
    metre: Option<Metre>,
    key: Option<Key>,
    notes: Vec<Note>,
    /// Start and chord; `None` is no chord.
    chords: Vec<(i64, Option<Chord>)>,
    annotations: Vec<(i64, String)>,
    repeat_start: bool,
    repeat_end: u8,
    ending: Vec<u8>,
    section_end: bool,
    segno: bool,
    coda: bool,
    fine: bool,
    /// From the sign (else from the beginning), leaving at the coda.
    jump: Option<(bool, bool)>,
    line_end: bool,
}

impl From<&chart::Bar> for Bar {
    fn from(bar: &chart::Bar) -> Self {
        let chord = |symbol| match symbol {
            Symbol::Chord(chord) => Some(chord.into()),
            Symbol::NoChord => None,
        };
        Self {
            length: bar.length.0,
            metre: bar.metre.map(metre),
            key: bar.key.map(key),
            notes: bar.notes.iter().map(Note::from).collect(),
            chords: bar
                .chords
                .iter()
                .map(|at| (at.at.0, chord(at.symbol)))
                .collect(),
            annotations: bar
                .annotations
                .iter()
                .map(|at| (at.at.0, at.text.clone()))
                .collect(),
            repeat_start: bar.repeat_start,
            repeat_end: bar.repeat_end,
            ending: bar.ending.clone(),
            section_end: bar.section_end,
            segno: bar.segno,
            coda: bar.coda,
            fine: bar.fine,
            jump: bar.jump.map(|jump| match jump {
                chart::Jump::DaCapo { to_coda } => (false, to_coda),
                chart::Jump::DalSegno { to_coda } => (true, to_coda),
            }),
            line_end: bar.line_end,
        }
    }
}

impl Bar {
    pub(super) fn restore(self) -> Option<chart::Bar> {
        let chord = |(at, chord): (i64, Option<Chord>)| {
            let symbol = match chord {
                Some(chord) => Symbol::Chord(chord.restore()?),
                None => Symbol::NoChord,
            };
            Some(chart::ChordAt {
                at: chart::Ticks(at),
                symbol,
            })
        };
        Some(chart::Bar {
            length: chart::Ticks(self.length),
            metre: optional(self.metre, restore_metre)?,
            key: optional(self.key, restore_key)?,
            notes: self
                .notes
                .into_iter()
                .map(Note::restore)
                .collect::<Option<_>>()?,
            chords: self.chords.into_iter().map(chord).collect::<Option<_>>()?,
            annotations: self
                .annotations
                .into_iter()
                .map(|(at, text)| chart::Annotation {
                    at: chart::Ticks(at),
                    text,
                })
                .collect(),
            repeat_start: self.repeat_start,
            repeat_end: self.repeat_end,
            ending: self.ending,
            section_end: self.section_end,
            segno: self.segno,
            coda: self.coda,
            fine: self.fine,
            jump: self.jump.map(|jump| match jump {
                (false, to_coda) => chart::Jump::DaCapo { to_coda },
                (true, to_coda) => chart::Jump::DalSegno { to_coda },
            }),
            line_end: self.line_end,
        })
    }
}
