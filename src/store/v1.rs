//! Version 1 of what is stored: a frozen mirror of the domain.
//!
//! Nothing here ever changes once a version has been released: a byte fixture in `tests/robust` guards it. When the
//! domain grows, a `v2` is added beside it and this mirror learns to step forward.
//!
//! `restore` gives `None` for values that no app wrote (a letter 9, a metre in sevenths of nothing).

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::chart;
use crate::desk;
use crate::theory::{self, Accidental, Degree, Letter, Mode, Naming, NoteName, Quality, Symbol};

type Name = (u8, i8);
type Pitch = (u8, i8, i8);
type Key = (u8, i8, u8);
type Metre = (u8, u8, [u8; 6]);

fn name(name: NoteName) -> Name {
    (name.letter as u8, small(name.accidental.semitones()))
}

fn restore_name((letter, accidental): Name) -> Option<NoteName> {
    Some(NoteName::new(
        *Letter::ALL.get(usize::from(letter))?,
        Accidental::new(accidental.into())?,
    ))
}

fn small(value: i32) -> i8 {
    i8::try_from(value).unwrap_or_default()
}

fn pitch(pitch: theory::Pitch) -> Pitch {
    let (letter, accidental) = name(pitch.name);
    (letter, accidental, pitch.octave)
}

fn restore_pitch((letter, accidental, octave): Pitch) -> Option<theory::Pitch> {
    Some(theory::Pitch::new(
        restore_name((letter, accidental))?,
        octave,
    ))
}

/// Place of a value in a list that never loses a row.
fn place<T: PartialEq>(list: &[T], value: &T) -> u8 {
    list.iter()
        .position(|row| row == value)
        .and_then(|place| u8::try_from(place).ok())
        .unwrap_or(u8::MAX)
}

/// The modes in the order of version 1.
const MODES: [Mode; 7] = [
    Mode::Major,
    Mode::Minor,
    Mode::Dorian,
    Mode::Phrygian,
    Mode::Lydian,
    Mode::Mixolydian,
    Mode::Locrian,
];

fn key(key: theory::Key) -> Key {
    let (letter, accidental) = name(key.tonic);
    (letter, accidental, place(&MODES, &key.mode))
}

fn restore_key((letter, accidental, mode): Key) -> Option<theory::Key> {
    Some(theory::Key::new(
        restore_name((letter, accidental))?,
        *MODES.get(usize::from(mode))?,
    ))
}

fn metre(metre: chart::Metre) -> Metre {
    (metre.count, metre.unit, metre.groups)
}

fn restore_metre((count, unit, groups): Metre) -> Option<chart::Metre> {
    (unit > 0).then_some(chart::Metre {
        count,
        unit,
        groups,
    })
}

/// Root, degrees as bits in the order of version 1's list, bass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Chord(Name, u32, Option<Name>);

/// The degrees in the order of version 1.
const DEGREES: [Degree; 19] = [
    Degree::Root,
    Degree::Second,
    Degree::MinorThird,
    Degree::MajorThird,
    Degree::Fourth,
    Degree::FlatFifth,
    Degree::Fifth,
    Degree::SharpFifth,
    Degree::Sixth,
    Degree::DiminishedSeventh,
    Degree::MinorSeventh,
    Degree::MajorSeventh,
    Degree::FlatNinth,
    Degree::Ninth,
    Degree::SharpNinth,
    Degree::Eleventh,
    Degree::SharpEleventh,
    Degree::FlatThirteenth,
    Degree::Thirteenth,
];

impl From<theory::Chord> for Chord {
    fn from(chord: theory::Chord) -> Self {
        let degrees = DEGREES
            .iter()
            .zip(0..)
            .filter(|&(&degree, _)| chord.quality.has(degree));
        Self(
            name(chord.root),
            degrees.fold(0, |bits, (_, bit)| bits | 1 << bit),
            chord.bass.map(name),
        )
    }
}

impl Chord {
    fn restore(&self) -> Option<theory::Chord> {
        let degrees = DEGREES
            .iter()
            .zip(0..)
            .filter(|&(_, bit)| self.1 & (1 << bit) != 0);
        Some(theory::Chord {
            root: restore_name(self.0)?,
            quality: degrees.fold(Quality::of(&[]), |quality, (&degree, _)| {
                quality.with(degree)
            }),
            bass: match self.2 {
                Some(bass) => Some(restore_name(bass)?),
                None => None,
            },
        })
    }
}

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
type Strum = (String, Metre, i64, Vec<(bool, u8, bool)>);

/// The strokes in the order of version 1.
const STROKES: [chart::Stroke; 4] = [
    chart::Stroke::Silent,
    chart::Stroke::Bass,
    chart::Stroke::Strum,
    chart::Stroke::Chop,
];

fn strum(pattern: &chart::StrumPattern) -> Strum {
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

fn restore_strum((name, metre, step, slots): Strum) -> Option<chart::StrumPattern> {
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
struct Bar {
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
    fn restore(self) -> Option<chart::Bar> {
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

/// Restores what is there: `None` where it cannot be, `Some(None)` where there is nothing.
#[allow(clippy::option_option)]
fn optional<A, B>(value: Option<A>, restore: impl Fn(A) -> Option<B>) -> Option<Option<B>> {
    match value {
        None => Some(None),
        Some(value) => restore(value).map(Some),
    }
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Tune {
    titles: Vec<String>,
    composer: String,
    source: String,
    /// Id of the rhythm, or the tune's own word.
    rhythm: Option<String>,
    metre: Metre,
    key: Key,
    /// Beats a minute and the length of a beat in ticks.
    tempo: Option<(f32, i64)>,
    bars: Vec<Bar>,
    /// Label, first bar, strum.
    parts: Vec<(String, u32, Option<Strum>)>,
    form: Vec<String>,
    times_through: Option<u8>,
    strum: Option<Strum>,
    verses: Vec<Vec<String>>,
    remarks: Vec<String>,
    made: Option<DateTime<Utc>>,
    changed: Option<DateTime<Utc>>,
}

impl From<&chart::Tune> for Tune {
    fn from(tune: &chart::Tune) -> Self {
        Self {
            titles: std::iter::once(&tune.title)
                .chain(&tune.other_titles)
                .cloned()
                .collect(),
            composer: tune.composer.clone(),
            source: tune.source.clone(),
            rhythm: tune.rhythm.as_ref().map(|rhythm| rhythm.id().to_owned()),
            metre: metre(tune.metre),
            key: key(tune.key),
            tempo: tune.tempo.map(|tempo| (tempo.bpm, tempo.beat.0)),
            bars: tune.bars.iter().map(Bar::from).collect(),
            parts: tune
                .parts
                .iter()
                .map(|part| {
                    let first = u32::try_from(part.first_bar).unwrap_or(u32::MAX);
                    (part.label.clone(), first, part.strum.as_ref().map(strum))
                })
                .collect(),
            form: tune.form.clone(),
            times_through: tune.times_through,
            strum: tune.strum.as_ref().map(strum),
            verses: tune
                .verses
                .iter()
                .map(|verse| verse.lines.clone())
                .collect(),
            remarks: tune.remarks.clone(),
            made: tune.made,
            changed: tune.changed,
        }
    }
}

impl Tune {
    pub(super) fn restore(self) -> Option<chart::Tune> {
        let mut titles = self.titles.into_iter();
        let part = |(label, first, pattern): (String, u32, Option<Strum>)| {
            let first_bar = usize::try_from(first).ok()?;
            Some(chart::Part {
                label,
                first_bar,
                strum: optional(pattern, restore_strum)?,
            })
        };
        Some(chart::Tune {
            title: titles.next()?,
            other_titles: titles.collect(),
            composer: self.composer,
            source: self.source,
            rhythm: self.rhythm.map(rhythm),
            metre: restore_metre(self.metre)?,
            key: restore_key(self.key)?,
            tempo: self.tempo.map(|(bpm, beat)| chart::Tempo {
                bpm,
                beat: chart::Ticks(beat),
            }),
            bars: self
                .bars
                .into_iter()
                .map(Bar::restore)
                .collect::<Option<_>>()?,
            parts: self.parts.into_iter().map(part).collect::<Option<_>>()?,
            form: self.form,
            times_through: self.times_through,
            strum: optional(self.strum, restore_strum)?,
            verses: self
                .verses
                .into_iter()
                .map(|lines| chart::Verse { lines })
                .collect(),
            remarks: self.remarks,
            made: self.made,
            changed: self.changed,
        })
    }

    /// The tune without its dates.
    pub(super) fn undated(self) -> Self {
        Self {
            made: None,
            changed: None,
            ..self
        }
    }
}

fn rhythm(id: String) -> chart::Rhythm {
    let named = chart::Rhythm::NAMED
        .into_iter()
        .find(|rhythm| rhythm.id() == id);
    named.unwrap_or(chart::Rhythm::Other(id))
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Entry {
    titles: Vec<String>,
    rhythm: String,
    metre: String,
    form: String,
    key: Key,
    first_note: Option<Pitch>,
    chords: Vec<Chord>,
}

impl From<&desk::Entry> for Entry {
    fn from(entry: &desk::Entry) -> Self {
        Self {
            titles: entry.titles.clone(),
            rhythm: entry.rhythm.clone(),
            metre: entry.metre.clone(),
            form: entry.form.clone(),
            key: key(entry.key),
            first_note: entry.first_note.map(pitch),
            chords: entry.chords.iter().map(|&chord| chord.into()).collect(),
        }
    }
}

impl Entry {
    pub(super) fn restore(self, id: desk::TuneId) -> Option<desk::Entry> {
        Some(desk::Entry {
            id,
            titles: self.titles,
            rhythm: self.rhythm,
            metre: self.metre,
            form: self.form,
            key: restore_key(self.key)?,
            first_note: optional(self.first_note, restore_pitch)?,
            chords: self
                .chords
                .iter()
                .map(Chord::restore)
                .collect::<Option<_>>()?,
        })
    }
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Settings {
    instrument: String,
    left_handed: bool,
    theme: u8,
    language: Option<String>,
    naming: u8,
    less_motion: bool,
    known: Vec<String>,
}

/// Themes and namings in the order of version 1.
const THEMES: [desk::Theme; 3] = [desk::Theme::Ebony, desk::Theme::Spruce, desk::Theme::Sun];
const NAMINGS: [Naming; 3] = [Naming::English, Naming::German, Naming::Solfege];

impl From<&desk::Settings> for Settings {
    fn from(settings: &desk::Settings) -> Self {
        Self {
            instrument: settings.instrument.clone(),
            left_handed: settings.left_handed,
            theme: place(&THEMES, &settings.theme),
            language: settings.language.map(|language| language.tag().to_owned()),
            naming: place(&NAMINGS, &settings.naming),
            less_motion: settings.less_motion,
            known: settings.known.clone(),
        }
    }
}

impl Settings {
    pub(super) fn restore(self) -> Option<desk::Settings> {
        let language = |tag: String| {
            desk::Language::ALL
                .into_iter()
                .find(|language| language.tag() == tag)
        };
        Some(desk::Settings {
            instrument: self.instrument,
            left_handed: self.left_handed,
            theme: *THEMES.get(usize::from(self.theme))?,
            language: self.language.and_then(language),
            naming: *NAMINGS.get(usize::from(self.naming))?,
            less_motion: self.less_motion,
            known: self.known,
        })
    }
}
