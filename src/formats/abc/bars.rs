//! The bars of a tune while it is read: closed ones, and the one that notes are put into.

use crate::chart::{Bar, Metre, Note, Part, Ticks};
use crate::theory::Key;

use super::super::limits;
use super::bar_line::BarLine;
use super::decoration::Sign;

#[derive(Debug, Default)]
pub(super) struct Bars {
    closed: Vec<Bar>,
    open: Bar,
    /// How much of the open bar is filled.
    at: Ticks,
    /// Dots of the repeat sign that began the section.
    starts: u8,
    next_metre: Option<Metre>,
    next_key: Option<Key>,
    /// Bars that there is room for.
    room: usize,
    pub(super) parts: Vec<Part>,
    jumps: Vec<(usize, Sign)>,
    barred: bool,
}

impl Bars {
    pub(super) fn new(room: usize) -> Self {
        Self {
            room,
            ..Self::default()
        }
    }

    /// Whether there is no room for further bars.
    pub(super) fn is_full(&self) -> bool {
        self.closed.len() >= self.room
    }

    /// Whether no music was put in yet.
    pub(super) fn is_empty(&self) -> bool {
        self.closed.is_empty() && self.at == Ticks::ZERO
    }

    /// Index of the open bar.
    pub(super) fn index(&self) -> usize {
        self.closed.len()
    }

    /// How much of the open bar is filled.
    pub(super) fn at(&self) -> Ticks {
        self.at
    }

    /// The bar that notes are put into.
    pub(super) fn open(&mut self) -> &mut Bar {
        &mut self.open
    }

    /// A bar by its index; the open one for any other.
    pub(super) fn bar(&mut self, index: usize) -> &mut Bar {
        self.closed.get_mut(index).unwrap_or(&mut self.open)
    }

    /// All bars up to now as a list, to put words under.
    pub(super) fn with_all<T>(&mut self, work: impl FnOnce(&mut [Bar]) -> T) -> T {
        self.closed.push(std::mem::take(&mut self.open));
        let result = work(&mut self.closed);
        self.open = self.closed.pop().unwrap_or_default();
        result
    }

    /// Time goes on in the open bar.
    pub(super) fn advance(&mut self, length: Ticks) {
        self.at += length;
    }

    /// The notes of an earlier moment get another length, and what follows moves.
    pub(super) fn change_length(&mut self, bar: usize, notes: std::ops::Range<usize>, by: Ticks) {
        if bar == self.index() {
            self.at += by;
        } else {
            self.bar(bar).length += by;
        }
        if let Some(notes) = self.bar(bar).notes.get_mut(notes) {
            for note in notes {
                note.length += by;
            }
        }
    }

    /// Ends the open bar if there is anything in it.
    pub(super) fn close(&mut self) {
        if self.at == Ticks::ZERO || self.is_full() {
            return;
        }
        self.open.length = self.at;
        self.closed.push(std::mem::take(&mut self.open));
        self.at = Ticks::ZERO;
        self.open.metre = self.next_metre.take();
        self.open.key = self.next_key.take();
    }

    /// A bar line: ends the bar, and says something of what is before and after it.
    pub(super) fn line(&mut self, line: BarLine) {
        self.barred |= !self.is_empty();
        self.close();
        if let Some(last) = self.closed.last_mut() {
            if line.ends > 0 {
                last.repeat_end = (line.ends.max(self.starts) + 1).min(limits::TIMES);
            }
            last.section_end |= line.double;
        }
        if line.ends > 0 {
            self.starts = 0;
        }
        if line.starts > 0 && !self.is_full() {
            self.open.repeat_start = true;
            self.starts = line.starts;
        }
    }

    /// An ending begins here; a bar that has begun is divided.
    pub(super) fn ending(&mut self, numbers: Vec<u8>) {
        self.close();
        self.open.ending = numbers;
    }

    /// A part begins here; a bar that has begun is divided. `false` if there are too many.
    pub(super) fn part(&mut self, label: String) -> bool {
        self.close();
        let first_bar = self.index();
        self.parts.retain(|part| part.first_bar < first_bar);
        if self.parts.len() >= limits::PARTS {
            return false;
        }
        self.parts.push(Part {
            label,
            first_bar,
            strum: None,
        });
        true
    }

    /// A line of the page ends.
    pub(super) fn line_end(&mut self) {
        if self.at > Ticks::ZERO {
            self.open.line_end = true;
        } else if let Some(last) = self.closed.last_mut() {
            last.line_end = true;
        }
    }

    /// A new metre, from the next bar on if this one has begun.
    pub(super) fn metre(&mut self, metre: Metre) {
        if self.at > Ticks::ZERO {
            self.next_metre = Some(metre);
        } else {
            self.open.metre = Some(metre);
        }
    }

    /// A new key, from the next bar on if this one has begun.
    pub(super) fn key(&mut self, key: Key) {
        if self.at > Ticks::ZERO {
            self.next_key = Some(key);
        } else {
            self.open.key = Some(key);
        }
    }

    /// A sign over a note of a bar.
    pub(super) fn sign_on_note(&mut self, bar: usize, sign: Sign) {
        match sign {
            Sign::Segno => self.bar(bar).segno = true,
            Sign::Coda | Sign::ToCoda => self.bar(bar).coda = true,
            Sign::Fine => self.bar(bar).fine = true,
            Sign::Back { .. } => self.jumps.push((bar, sign)),
        }
    }

    /// A sign over the bar line after the last closed bar: where to come back to is after it, what ends is before it.
    pub(super) fn sign_on_line(&mut self, sign: Sign) {
        match (sign, self.closed.len()) {
            (Sign::Segno, _) => self.open.segno = true,
            (Sign::Coda | Sign::ToCoda, _) => self.open.coda = true,
            (_, 0) => {}
            (Sign::Fine, last) => self.closed[last - 1].fine = true,
            (Sign::Back { .. }, last) => self.jumps.push((last - 1, sign)),
        }
    }

    /// The finished bars and parts, and whether all bars had room. A tune that has a metre and not one bar line is
    /// divided by the metre.
    pub(super) fn finish(mut self, metre: Metre) -> (Vec<Bar>, Vec<Part>, bool) {
        self.close();
        let fine = self.closed.iter().any(|bar| bar.fine);
        let coda = self.closed.iter().any(|bar| bar.coda);
        for (bar, sign) in self.jumps {
            if let Some(bar) = self.closed.get_mut(bar) {
                bar.jump = sign.jump(coda && !fine);
            }
        }
        let mut bars = self.closed;
        let mut whole = true;
        if !self.barred
            && bars.len() == 1
            && metre.count > 0
            && let Some(bar) = bars.pop_if(|bar| bar.length > metre.bar())
        {
            (bars, whole) = divide(bar, metre.bar(), self.room);
        }
        self.parts.retain(|part| part.first_bar < bars.len());
        (bars, self.parts, whole)
    }
}

/// Divides a bar into bars of a length, and says whether all of them had room; notes that cross are tied.
fn divide(mut bar: Bar, length: Ticks, room: usize) -> (Vec<Bar>, bool) {
    let (full, rest) = bar.length.div_rem(length);
    let count = usize::try_from(full).unwrap_or(0) + usize::from(rest > Ticks::ZERO);
    let mut bars = vec![Bar::default(); count.min(room)];
    let place = |at: Ticks| {
        let (index, at) = at.div_rem(length);
        (usize::try_from(index).unwrap_or(0), at)
    };
    let mut left = bar.length;
    for bar in &mut bars {
        bar.length = left.min(length);
        left -= length;
    }
    for note in std::mem::take(&mut bar.notes) {
        let (mut index, at) = place(note.at);
        let mut note = Note { at, ..note };
        while let Some(bar) = bars.get_mut(index) {
            let room = bar.length - note.at;
            if note.length <= room {
                bar.notes.push(note);
                break;
            }
            let rest = Note {
                at: Ticks::ZERO,
                length: note.length - room,
                grace: vec![],
                ornaments: vec![],
                syllables: vec![],
                ..note.clone()
            };
            bar.notes.push(Note {
                length: room,
                tied: true,
                ..note
            });
            note = rest;
            index += 1;
        }
    }
    for chord in bar.chords {
        let (index, at) = place(chord.at);
        if let Some(bar) = bars.get_mut(index) {
            bar.chords.push(crate::chart::ChordAt { at, ..chord });
        }
    }
    for annotation in bar.annotations {
        let (index, at) = place(annotation.at);
        if let Some(bar) = bars.get_mut(index) {
            bar.annotations
                .push(crate::chart::Annotation { at, ..annotation });
        }
    }
    if let Some(last) = bars.last_mut() {
        last.line_end = bar.line_end;
        (last.fine, last.jump) = (bar.fine, bar.jump);
    }
    if let Some(first) = bars.first_mut() {
        (first.segno, first.coda) = (bar.segno, bar.coda);
        first.ending = bar.ending;
    }
    (bars, count <= room)
}
