//! A bar as a row of events, each with the room it needs.

use std::collections::HashMap;
use std::ops::Range;

use crate::chart::{Bar, Metre, Note, Ticks};

use super::beam;
use super::mark::ems;
use super::value::Value;
use super::{Paper, Piece};

/// What happens at a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A note of the bar; `tab` is its place in the arrangement where it is struck, and `None` where a tie holds it on.
    Note { note: usize, tab: Option<usize> },
    /// Silence.
    Rest,
}

/// That an event belongs to a tuplet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct InTuplet {
    /// Which one of the bar.
    pub(super) group: usize,
    /// How many notes it has.
    pub(super) count: u8,
}

/// A note value of the page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Event {
    /// When, from the start of the bar.
    pub(super) at: Ticks,
    /// How long.
    pub(super) length: Ticks,
    pub(super) kind: Kind,
    pub(super) value: Value,
    pub(super) tuplet: Option<InTuplet>,
    /// It is tied to the one before it.
    pub(super) tied: bool,
    /// The middle of its figure, from the start of the system, once it is laid out.
    pub(super) x: f32,
}

/// A bar with its events.
#[derive(Debug, Clone)]
pub(super) struct Measure {
    pub(super) bar: usize,
    pub(super) pickup: bool,
    pub(super) events: Vec<Event>,
    /// Events under one beam.
    pub(super) beams: Vec<Range<usize>>,
    /// Room of each event: as it looks best, and the least.
    natural: Vec<f32>,
    least: Vec<f32>,
    /// Room before the first event: for the bar line, a repeat sign, another key or metre.
    pub(super) before: f32,
    /// Room behind the last event, for the bar line or the end of a repeat.
    pub(super) behind: f32,
    /// Left bar line and width, once it is laid out.
    pub(super) x: f32,
    pub(super) width: f32,
}

/// How wide an eighth is at its best, in spaces; other lengths by the logarithm of their length.
const EIGHTH: f32 = 1.72;
/// Each doubling of the length takes so much more, as a part of that.
const DOUBLING: f32 = 0.42;

impl Measure {
    /// The events of a bar; `struck` says where in the tablature a note is.
    pub(super) fn new(
        piece: Piece<'_>,
        bar: usize,
        metre: Metre,
        offset: Ticks,
        struck: &HashMap<(usize, Ticks), usize>,
    ) -> Self {
        let written = &piece.tune.bars[bar];
        let mut events = Vec::new();
        let mut at = Ticks::ZERO;
        let onsets = onsets(written);
        let mut group = 0;
        for (place, &note) in onsets.iter().enumerate() {
            let of_bar = &written.notes[note];
            if of_bar.at > at {
                rests(&mut events, metre, offset, at..of_bar.at);
            }
            let next = onsets
                .get(place + 1)
                .map_or(written.length, |&next| written.notes[next].at);
            let length = of_bar.length.min(next - of_bar.at);
            group += usize::from(of_bar.tuplet.is_some_and(|tuplet| tuplet.first));
            let tab = struck.get(&(bar, of_bar.at)).copied();
            sounds(&mut events, of_bar, Kind::Note { note, tab }, length, group);
            at = of_bar.at + length;
        }
        if at < written.length {
            rests(&mut events, metre, offset, at..written.length);
        }
        let beams = beam::groups(&events, metre, offset);
        Self {
            bar,
            pickup: false,
            natural: Vec::new(),
            least: Vec::new(),
            before: 0.0,
            behind: 0.0,
            events,
            beams,
            x: 0.0,
            width: 0.0,
        }
    }

    /// Gives every event its room; `signs` says what an event needs on its left, in dp: accidentals.
    pub(super) fn space(&mut self, piece: Piece<'_>, paper: &Paper, signs: &[f32]) {
        let space = paper.space;
        let bar = &piece.tune.bars[self.bar];
        let eighth = Ticks::of(1, 8).quarters();
        let figure = |event: &Event| match event.kind {
            Kind::Note { tab: Some(tab), .. } => {
                let note = &piece.notes[tab];
                let fret = note.place.map_or(0, |place| place.fret);
                if fret.max(note.stop.map_or(0, |stop| stop.fret)) > 9 {
                    1.5
                } else {
                    0.95
                }
            }
            _ => 0.9,
        };
        self.natural.clear();
        self.least.clear();
        for (event, left) in self.events.iter().zip(signs) {
            // Lengths of notes: f32 is exact enough for room on a page.
            #[allow(clippy::cast_possible_truncation)]
            let doublings = (event.length.quarters() / eighth).max(0.1).log2() as f32;
            let natural = EIGHTH * (1.0 + DOUBLING * doublings).max(0.55);
            let least = figure(event) + 0.12;
            let dots = f32::from(event.value.dots) * 0.35;
            self.natural
                .push((natural.max(least) + dots) * space + left);
            self.least.push((least + dots) * space + left);
        }
        if self.events.is_empty() {
            self.natural.push(2.0 * EIGHTH * space);
            self.least.push(2.0 * space);
        }
        self.keep_apart(&chord_texts(bar, paper, &self.events), 0.35 * space);
        self.keep_apart(&syllables(bar, paper, &self.events), 0.3 * space);
    }

    /// Makes room for texts that stand over events, by index and width; each may reach over what has none.
    fn keep_apart(&mut self, texts: &[(usize, f32)], gap: f32) {
        for (place, &(index, width)) in texts.iter().enumerate() {
            let next = texts
                .get(place + 1)
                .map_or(self.natural.len(), |text| text.0);
            if next <= index {
                continue;
            }
            for room in [&mut self.natural, &mut self.least] {
                let there: f32 = room[index..next].iter().sum();
                let missing = width + gap - there;
                if missing > 0.0 {
                    let count = u16::try_from(next - index).unwrap_or(1);
                    for one in &mut room[index..next] {
                        *one += missing / f32::from(count);
                    }
                }
            }
        }
    }

    fn sides(&self) -> f32 {
        self.before + self.behind
    }

    /// Its width as it looks best.
    pub(super) fn natural(&self) -> f32 {
        self.natural.iter().sum::<f32>() + self.sides()
    }

    /// What its events take of that.
    pub(super) fn events_room(&self) -> f32 {
        self.natural.iter().sum()
    }

    /// What its events take at least.
    pub(super) fn least_room(&self) -> f32 {
        self.least.iter().sum()
    }

    /// Its least width.
    pub(super) fn least(&self) -> f32 {
        self.least.iter().sum::<f32>() + self.sides()
    }

    /// Puts it at a place: `ease` 0 gives every event its least room, 1 its best, more stretches that; below 0 it is the
    /// part of the least room that there is, where there is not even that.
    pub(super) fn lay(&mut self, paper: &Paper, x: f32, ease: f32, signs: &[f32]) {
        let room = |index: usize| {
            let (least, natural) = (self.least[index], self.natural[index]);
            match ease {
                ..0.0 => least * -ease,
                0.0..=1.0 => least + (natural - least) * ease,
                _ => natural * ease,
            }
        };
        let mut at = x + self.before;
        let rooms: Vec<f32> = (0..self.natural.len()).map(room).collect();
        for ((event, room), left) in self.events.iter_mut().zip(&rooms).zip(signs) {
            event.x = at + left + 0.5 * paper.space;
            at += room;
        }
        let width: f32 = rooms.iter().sum();
        self.x = x;
        self.width = width + self.sides();
    }

    /// Where a moment of the bar stands.
    pub(super) fn x_at(&self, at: Ticks) -> f32 {
        let after = self.events.partition_point(|event| event.at <= at);
        let Some(event) = after.checked_sub(1).map(|index| &self.events[index]) else {
            return self
                .events
                .first()
                .map_or(self.x + self.before, |event| event.x);
        };
        let next = self
            .events
            .get(after)
            .map_or(self.x + self.width, |next| next.x);
        if event.length <= Ticks::ZERO {
            return event.x;
        }
        #[allow(clippy::cast_possible_truncation)] // a part of one
        let part = ((at - event.at).quarters() / event.length.quarters()) as f32;
        event.x + (next - event.x) * part.clamp(0.0, 1.0)
    }
}

/// The melody of a bar: of notes that begin together the first, as indices.
fn onsets(bar: &Bar) -> Vec<usize> {
    let mut last = None;
    let new = |&index: &usize| {
        let note = &bar.notes[index];
        let new =
            note.length > Ticks::ZERO && note.at < bar.length && last.is_none_or(|at| note.at > at);
        if new {
            last = Some(note.at);
        }
        new
    };
    (0..bar.notes.len()).filter(new).collect()
}

/// A note as one value, or as several that are tied.
fn sounds(events: &mut Vec<Event>, note: &Note, kind: Kind, length: Ticks, group: usize) {
    let tuplet = note
        .tuplet
        .filter(|tuplet| tuplet.count > 0 && tuplet.instead_of > 0);
    let (count, instead) = tuplet.map_or((1, 1), |tuplet| {
        (tuplet.count.into(), tuplet.instead_of.into())
    });
    let mut at = note.at;
    let Kind::Note { note: index, tab } = kind else {
        return;
    };
    for (place, value) in Value::of_note(Ticks(length.0 * count / instead))
        .into_iter()
        .enumerate()
    {
        let length = Ticks(value.length().0 * instead / count);
        events.push(Event {
            at,
            length,
            kind: Kind::Note {
                note: index,
                tab: tab.filter(|_| place == 0),
            },
            value,
            tuplet: tuplet.map(|tuplet| InTuplet {
                group,
                count: tuplet.count,
            }),
            tied: place > 0 || tab.is_none(),
            x: 0.0,
        });
        at += length;
    }
}

fn rests(events: &mut Vec<Event>, metre: Metre, offset: Ticks, silence: Range<Ticks>) {
    let mut at = silence.start;
    for value in Value::of_rest(metre, offset + silence.start, offset + silence.end) {
        events.push(Event {
            at,
            length: value.length(),
            kind: Kind::Rest,
            value,
            tuplet: None,
            tied: false,
            x: 0.0,
        });
        at += value.length();
    }
}

/// Font sizes, in spaces.
pub(super) const CHORD: f32 = 1.12;
pub(super) const LYRIC: f32 = 0.95;

fn event_at(events: &[Event], at: Ticks) -> usize {
    events
        .partition_point(|event| event.at <= at)
        .saturating_sub(1)
}

fn chord_texts(bar: &Bar, paper: &Paper, events: &[Event]) -> Vec<(usize, f32)> {
    let width = |text: &str| ems(text) * CHORD * paper.space;
    let chords = bar.chords.iter();
    let mut texts: Vec<(usize, f32)> = Vec::new();
    for chord in chords {
        let one = (
            event_at(events, chord.at),
            width(&chord.symbol.in_style(paper.style)),
        );
        match texts.last_mut() {
            Some(last) if last.0 == one.0 => last.1 += one.1,
            _ => texts.push(one),
        }
    }
    texts
}

/// The syllable of the first verse under a note, with its hyphen.
pub(super) fn syllable(note: &Note) -> String {
    match note.syllables.first().and_then(Option::as_ref) {
        Some(syllable) if syllable.joined => format!("{}-", syllable.text),
        Some(syllable) => syllable.text.clone(),
        None => String::new(),
    }
}

fn syllables(bar: &Bar, paper: &Paper, events: &[Event]) -> Vec<(usize, f32)> {
    let all = events.iter().enumerate();
    all.filter_map(|(index, event)| match event.kind {
        Kind::Note { note, .. } if event.at == bar.notes[note].at => {
            let text = syllable(&bar.notes[note]);
            (!text.is_empty()).then(|| (index, ems(&text) * LYRIC * paper.space))
        }
        _ => None,
    })
    .collect()
}
