//! What sounds at a moment: notes, chords, rests, and the signs that wait for them.

use crate::chart::{Annotation, ChordAt, Note, Ornament, Ticks};
use crate::theory::{NoteName, Pitch};

use super::super::{Counted, ProblemKind, limits};
use super::chord_text::{self, Quoted};
use super::decoration::{self, Decoration, Sign};
use super::lines::Lines;
use super::lyrics;
use super::music::{Music, Place};
use super::problems::{Spot, excerpt};
use super::rhythm::Ratio;
use super::token::Written;

/// A note that sounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Sound {
    written: (NoteName, i8),
    pitch: Pitch,
    tied: bool,
}

/// A chord that is being read.
#[derive(Debug)]
pub(super) struct Chord {
    place: Place,
    sounds: Vec<Sound>,
    /// "The chord duration is that of the first note" (ABC 2.1, 4.17).
    pub(super) length: Option<Ratio>,
}

impl Chord {
    pub(super) fn new(place: Place) -> Self {
        Self {
            place,
            sounds: Vec::new(),
            length: None,
        }
    }
}

/// What was put in last.
#[derive(Debug)]
pub(super) struct Last {
    bar: usize,
    first: usize,
    length: Ratio,
    ticks: Ticks,
    /// The notes, as they stand in the bar.
    sounds: Vec<Sound>,
}

/// Signs and words that stand before what they belong to.
#[derive(Debug, Default)]
pub(super) struct Pending {
    grace: Vec<Pitch>,
    pub(super) ornaments: Vec<Ornament>,
    pub(super) signs: Vec<Sign>,
    /// Texts in quotes; words of tempo fields carry the sign of an annotation.
    texts: Vec<String>,
    /// More of one of these than is read.
    over: Option<Counted>,
}

impl Pending {
    pub(super) fn decoration(&mut self, name: &str) {
        match decoration::named(name) {
            _ if self.ornaments.len() + self.signs.len() >= limits::SIGNS => {
                self.over = Some(Counted::Signs);
            }
            Decoration::Ornament(ornament) => self.ornaments.push(ornament),
            Decoration::Sign(sign) => self.signs.push(sign),
            Decoration::Nothing => {}
        }
    }

    pub(super) fn quoted(&mut self, text: &str) {
        if self.texts.len() >= limits::SIGNS {
            self.over = Some(Counted::Signs);
        } else {
            self.texts.push(text.to_owned());
        }
    }

    pub(super) fn words(&mut self, text: &str) {
        self.quoted(&format!("^{text}"));
    }
}

impl Music {
    /// A length, or else the unit note.
    pub(super) fn checked(&mut self, length: Option<Ratio>, spot: Spot<'_>) -> Ratio {
        if length.is_none_or(|length| length.is_too_long(self.unit())) {
            self.problems.add(spot, ProblemKind::Length);
        }
        length.unwrap_or(Ratio::ONE)
    }

    fn sound(&mut self, note: Written) -> Sound {
        if note.accidental.is_none() {
            // A tie carries the accidental over the bar line.
            let tied = self
                .last
                .iter()
                .flat_map(|last| &last.sounds)
                .find(|sound| {
                    sound.tied
                        && (sound.written.0.letter, sound.written.1) == (note.letter, note.octave)
                });
            if let Some(sound) = tied {
                let name = sound.written.0;
                let pitch = self.transposition.pitch(name, note.octave);
                return Sound {
                    written: (name, note.octave),
                    pitch,
                    tied: false,
                };
            }
        }
        let signature = *self.signature();
        let name = self.in_force.name(note, &signature, self.scope);
        Sound {
            written: (name, note.octave),
            pitch: self.transposition.pitch(name, note.octave),
            tied: false,
        }
    }

    pub(super) fn grace(&mut self, note: Written, spot: Spot<'_>) {
        let sound = self.sound(note);
        if self.pending.grace.len() >= limits::GRACE {
            self.problems
                .add(spot, ProblemKind::TooMany(Counted::GraceNotes));
        } else {
            self.pending.grace.push(sound.pitch);
        }
    }

    pub(super) fn note(&mut self, note: Written, spot: Spot<'_>) {
        let length = self.checked(note.length, spot);
        let sound = self.sound(note);
        match &mut self.chord {
            Some(chord) if chord.sounds.len() >= limits::CHORD_NOTES => {
                self.problems
                    .add(spot, ProblemKind::TooMany(Counted::ChordNotes));
            }
            Some(chord) => {
                chord.length.get_or_insert(length);
                chord.sounds.push(sound);
            }
            None => self.event(&[sound], length, spot),
        }
    }

    /// Ends a chord that nobody closed.
    pub(super) fn close_chord(&mut self, spot: Spot<'_>) {
        if let Some(chord) = &self.chord {
            let opened = Spot {
                byte: chord.place.1,
                ..spot
            };
            self.problems.add(opened, ProblemKind::Unclosed('['));
            self.end_chord(Some(Ratio::ONE), spot);
        }
    }

    pub(super) fn end_chord(&mut self, length: Option<Ratio>, spot: Spot<'_>) {
        let Some(mut chord) = self.chord.take() else {
            return;
        };
        let Some(inner) = chord.length else { return };
        let outer = self.checked(length, spot);
        // The melody of a double stop is mostly its upper note (common practice).
        chord
            .sounds
            .sort_by_key(|sound| std::cmp::Reverse(sound.pitch.midi()));
        self.event(&chord.sounds, inner.times(outer), spot);
    }

    /// Puts signs and words where we are in the bar.
    pub(super) fn place_pending(&mut self, spot: Spot<'_>) {
        if let Some(counted) = self.pending.over.take() {
            self.problems.add_once(spot, ProblemKind::TooMany(counted));
        }
        let (bar, at) = (self.bars.index(), self.overlay.unwrap_or(self.bars.at()));
        for text in std::mem::take(&mut self.pending.texts) {
            self.put_quoted(&text, bar, at, spot);
        }
        for sign in std::mem::take(&mut self.pending.signs) {
            self.bars.sign_on_note(bar, sign);
        }
    }

    /// Puts the signs that stand before a bar line, also those in quotes, on that line. Chords and words wait for the
    /// next bar.
    pub(super) fn signs_on_line(&mut self) {
        let mut signs = std::mem::take(&mut self.pending.signs);
        self.pending
            .texts
            .retain(|text| match chord_text::read(text) {
                Some(Quoted::Sign(sign)) => {
                    signs.push(sign);
                    false
                }
                _ => true,
            });
        for sign in signs {
            self.bars.sign_on_line(sign);
        }
    }

    /// Puts a text in quotes at a moment of a bar.
    pub(super) fn put_quoted(&mut self, text: &str, bar: usize, at: Ticks, spot: Spot<'_>) {
        let words = match chord_text::read(text) {
            None => return,
            Some(Quoted::Sign(sign)) => return self.bars.sign_on_note(bar, sign),
            Some(Quoted::Words(words)) => words,
            Some(Quoted::Unreadable(words)) => {
                self.problems.add(spot, ProblemKind::Chord(excerpt(&words)));
                words
            }
            Some(Quoted::Chord(..)) if text.trim().starts_with('(') && self.has_chord(bar, at) => {
                text.trim().to_owned() // another choice beside the chord that there is
            }
            Some(Quoted::Chord(symbol, beside)) => {
                let symbol = chord_text::sounding(symbol, self.transposition);
                self.put_chord(ChordAt { at, symbol }, bar, spot);
                match beside {
                    Some(words) => words,
                    None => return,
                }
            }
        };
        let kept: String = words.chars().take(limits::TEXT).collect();
        if kept.len() < words.len() {
            self.problems.add(spot, ProblemKind::WordsTooLong);
        }
        let annotations = &mut self.bars.bar(bar).annotations;
        let place = annotations.partition_point(|annotation| annotation.at <= at);
        annotations.insert(place, Annotation { at, text: kept });
    }

    fn has_chord(&mut self, bar: usize, at: Ticks) -> bool {
        let chords = &self.bars.bar(bar).chords;
        chords.iter().any(|chord| chord.at == at)
    }

    /// Puts a chord in a bar. Of two at one moment the later one counts, as it does for a player who reads on.
    fn put_chord(&mut self, chord: ChordAt, bar: usize, spot: Spot<'_>) {
        let chords = &mut self.bars.bar(bar).chords;
        let place = chords.partition_point(|other| other.at <= chord.at);
        let before = chords[..place].last_mut();
        if let Some(before) = before.filter(|before| before.at == chord.at) {
            let lost = std::mem::replace(before, chord).symbol;
            if lost != chord.symbol {
                let kind = ProblemKind::ChordWithoutTime(lost.to_string());
                self.problems.add(spot, kind);
            }
        } else if chords.len() >= limits::NOTES {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Signs));
        } else {
            chords.insert(place, chord);
        }
    }

    /// Puts a decoration on a note.
    pub(super) fn put_named(&mut self, name: &str, bar: usize, note: usize) {
        if let Decoration::Ornament(ornament) = decoration::named(name)
            && let Some(note) = self.bars.bar(bar).notes.get_mut(note)
            && note.ornaments.len() < limits::SIGNS
        {
            note.ornaments.push(ornament);
        }
    }

    /// Something sounds, or with no notes rests, for a time.
    pub(super) fn event(&mut self, sounds: &[Sound], length: Ratio, spot: Spot<'_>) {
        self.place_pending(spot);
        if let Some(at) = self.overlay {
            // Another voice: only its chord symbols are of use to us.
            self.overlay = Some(at + length.of(self.unit()));
            self.pending.grace.clear();
            self.pending.ornaments.clear();
            return;
        }
        self.resolve_ties(sounds);
        let mut length = length;
        if let Some((ratio, _)) = self.broken.take() {
            length = length.times(ratio);
        }
        let mut tuplet = None;
        if let Some((open, place)) = self.tuplet.take() {
            length = length.times(open.ratio());
            let (of_note, rest) = open.take();
            tuplet = Some(of_note);
            self.tuplet = rest.map(|rest| (rest, place));
        }
        let ticks = length.of(self.unit());
        let (bar, at) = (self.bars.index(), self.bars.at());
        let slurred = self.slurs > 0;
        let mut grace = std::mem::take(&mut self.pending.grace);
        let mut ornaments = std::mem::take(&mut self.pending.ornaments);
        let mut sounds = sounds.to_vec();
        if sounds.len() > self.notes {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Notes));
            sounds.clear();
        }
        self.notes -= sounds.len();
        let notes = &mut self.bars.open().notes;
        let first = notes.len();
        notes.extend(sounds.iter().map(|sound| Note {
            at,
            length: ticks,
            pitch: sound.pitch,
            tied: sound.tied,
            slurred,
            tuplet,
            grace: std::mem::take(&mut grace),
            ornaments: std::mem::take(&mut ornaments),
            syllables: vec![],
        }));
        if !sounds.is_empty() {
            self.alignment.note(lyrics::Place { bar, note: first });
        }
        self.bars.advance(ticks);
        self.last = Some(Last {
            bar,
            first,
            length,
            ticks,
            sounds,
        });
    }

    /// A tie goes to a note of the same pitch that follows at once. Old tunes write a tie where they mean a slur: a tie
    /// to another note is taken as one, a tie to a rest as none.
    fn resolve_ties(&mut self, next: &[Sound]) {
        let Some(last) = &self.last else { return };
        for (i, sound) in last.sounds.iter().enumerate() {
            let met = next.iter().any(|next| next.written == sound.written);
            if sound.tied && !met {
                let bar = self.bars.bar(last.bar);
                if let Some(note) = bar.notes.get_mut(last.first + i) {
                    note.tied = false;
                    note.slurred |= !next.is_empty();
                }
            }
        }
    }

    pub(super) fn tie(&mut self) {
        if let Some(chord) = &mut self.chord {
            if let Some(sound) = chord.sounds.last_mut() {
                sound.tied = true;
            }
            return;
        }
        if self.overlay.is_some() {
            return;
        }
        let Some(last) = &mut self.last else { return };
        let bar = self.bars.bar(last.bar);
        for (i, sound) in last.sounds.iter_mut().enumerate() {
            sound.tied = true;
            if let Some(note) = bar.notes.get_mut(last.first + i) {
                note.tied = true;
            }
        }
    }

    pub(super) fn end_slur(&mut self) {
        self.slurs = self.slurs.saturating_sub(1);
        if self.slurs > 0 || self.overlay.is_some() {
            return;
        }
        let Some(last) = &self.last else { return };
        let notes = last.first..last.first + last.sounds.len();
        if let Some(notes) = self.bars.bar(last.bar).notes.get_mut(notes) {
            for note in notes {
                note.slurred = false;
            }
        }
    }

    pub(super) fn break_rhythm(&mut self, (before, after): (Ratio, Ratio), spot: Spot<'_>) {
        if self.overlay.is_some() {
            return;
        }
        let unit = self.unit();
        let Some(last) = self.last.as_mut().filter(|_| self.broken.is_none()) else {
            self.problems.add(spot, ProblemKind::BrokenRhythm);
            return;
        };
        last.length = last.length.times(before);
        let ticks = last.length.of(unit);
        let by = ticks - last.ticks;
        last.ticks = ticks;
        let notes = last.first..last.first + last.sounds.len();
        self.bars.change_length(last.bar, notes, by);
        self.broken = Some((after, (spot.line, spot.byte)));
    }

    /// Bars of rest.
    pub(super) fn bar_rest(&mut self, mut count: u32, spot: Spot<'_>) {
        self.place_pending(spot);
        if count > limits::REST_BARS {
            self.problems.add(spot, ProblemKind::Length);
            count = 1;
        }
        let bar = self.metre.bar_or_whole();
        if let Some(at) = self.overlay {
            self.overlay = Some(at + bar);
            return;
        }
        self.resolve_ties(&[]);
        self.last = None;
        self.pending.grace.clear();
        self.pending.ornaments.clear();
        for i in 0..count {
            if i > 0 {
                self.bars.close();
            }
            if self.bars.is_full() {
                self.problems
                    .add_once(spot, ProblemKind::TooMany(Counted::Bars));
                break;
            }
            self.bars.advance(bar);
        }
    }

    /// Ends what is open at the end of the tune. `lines` are its lines, `spot` is its end.
    pub(super) fn finish_events(&mut self, lines: Lines<'_>, spot: Spot<'_>) {
        self.resolve_ties(&[]);
        let tuplet = self
            .tuplet
            .take()
            .map(|(_, place)| (place, ProblemKind::Tuplet));
        let broken = self
            .broken
            .take()
            .map(|(_, place)| (place, ProblemKind::BrokenRhythm));
        for ((number, byte), kind) in tuplet.into_iter().chain(broken) {
            let line = lines.into_iter().find(|line| line.number == number);
            let spot = line.map_or(spot, |line| Spot::start(line).plus(byte));
            self.problems.add(spot, kind);
        }
        if self.bars.at() > Ticks::ZERO {
            self.place_pending(spot);
        } else {
            self.signs_on_line();
            if let Some(bar) = self.bars.index().checked_sub(1) {
                let at = self.bars.bar(bar).length;
                for text in std::mem::take(&mut self.pending.texts) {
                    match chord_text::read(&text) {
                        Some(Quoted::Chord(symbol, _)) => {
                            let symbol = chord_text::sounding(symbol, self.transposition);
                            let kind = ProblemKind::ChordWithoutTime(symbol.to_string());
                            self.problems.add(spot, kind);
                        }
                        _ => self.put_quoted(&text, bar, at, spot),
                    }
                }
            }
        }
        if self.slurs > 0 {
            self.slurs = 1;
            self.overlay = None;
            self.end_slur();
        }
    }
}
