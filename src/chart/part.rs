//! The parts of a tune: as it names them, or as its repeats and double bars show them.

use std::collections::HashMap;
use std::collections::hash_map::DefaultHasher;
use std::hash::BuildHasherDefault;

use crate::theory::Pitch;

use super::section::sections;
use super::time::Ticks;
use super::tune::{Bar, Part, Tune};

/// Fewer full bars than this make no part of their own.
const SHORTEST: i64 = 3;

impl Tune {
    /// Its parts in written order, each within the tune: those it names or, where it names none, parts A, B, C...
    /// made from its repeated sections and double bars. Fragments shorter than three bars join a neighbour; a section
    /// written out again with the same melody (but for its last two bars) has the same letter.
    ///
    /// The indices in [`PlayedBar::part`](super::PlayedBar::part) are those of this list.
    pub fn parts_or_derived(&self) -> Vec<Part> {
        let mut parts: Vec<Part> = self
            .parts
            .iter()
            .filter(|part| part.first_bar < self.bars.len())
            .cloned()
            .collect();
        parts.sort_by_key(|part| part.first_bar);
        if parts.is_empty() {
            parts = self.derived_parts();
        }
        parts
    }

    /// When each written bar begins, from the start of the page.
    pub fn starts(&self) -> Vec<Ticks> {
        let mut at = Ticks::ZERO;
        let bars = self.bars.iter().map(|bar| {
            let start = at;
            at += bar.length;
            start
        });
        bars.collect()
    }

    /// Written bars as players name them, each once: the part and the number of the bar in it, as `A 3, B 1`. Bars that
    /// are never played are left out.
    pub fn bar_names(&self, written: impl IntoIterator<Item = usize>) -> String {
        let (playing, parts) = (self.playing(), self.parts_or_derived());
        let mut names: Vec<String> = Vec::new();
        for written in written {
            let Some(bar) = playing.bars.iter().find(|bar| bar.written == written) else {
                continue;
            };
            let part = bar.part.and_then(|part| parts.get(part));
            let name = format!("{} {}", part.map_or("", |part| &part.label), bar.number);
            if names.last() != Some(&name) {
                names.push(name);
            }
        }
        names.join(", ")
    }

    fn derived_parts(&self) -> Vec<Part> {
        let metres = self.metres();
        let mut starts = Vec::new();
        let mut waiting = None;
        for section in sections(&self.bars, 0..self.bars.len(), &[]) {
            let full = metres[section.bars.start].bar();
            let length: Ticks = self.bars[section.bars.clone()]
                .iter()
                .map(|bar| bar.length)
                .sum();
            let start = waiting.unwrap_or(section.bars.start);
            if length < full || (starts.is_empty() && length < full * SHORTEST) {
                waiting = Some(start); // a pickup, or a lead-in: it belongs to what follows
            } else if waiting.take().is_some() || length >= full * SHORTEST {
                starts.push(start);
            }
        }
        if starts.is_empty() && !self.bars.is_empty() {
            starts.push(0);
        }
        self.labelled(&starts)
    }

    fn labelled(&self, starts: &[usize]) -> Vec<Part> {
        let mut known: HashMap<_, usize, BuildHasherDefault<DefaultHasher>> = HashMap::default();
        let mut letters = 0;
        let mut parts = Vec::with_capacity(starts.len());
        for (i, &first_bar) in starts.iter().enumerate() {
            let end = starts.get(i + 1).copied().unwrap_or(self.bars.len());
            let melody = melody(&self.bars[first_bar..end]);
            let sings = melody.iter().any(|&(_, pitch)| pitch.is_some());
            let number = if sings {
                *known.entry(melody).or_insert(letters)
            } else {
                letters
            };
            letters = letters.max(number + 1);
            parts.push(Part {
                label: letter(number),
                first_bar,
                strum: None,
            });
        }
        parts
    }
}

/// The notes of a section for comparing: without a short first bar, and without the last two bars of eight and more.
fn melody(bars: &[Bar]) -> Vec<(Ticks, Option<Pitch>)> {
    let skip = usize::from(bars.len() > 1 && bars[0].length < bars[1].length);
    let end = bars.len() - if bars.len() >= 8 { 2 } else { 0 };
    let mut notes = Vec::new();
    for bar in &bars[skip..end] {
        notes.extend(bar.notes.iter().map(|note| (note.at, Some(note.pitch))));
        notes.push((bar.length, None));
    }
    notes
}

/// A to Z, then AA, AB...
fn letter(number: usize) -> String {
    let last = char::from(b'A' + u8::try_from(number % 26).unwrap_or(0));
    match number / 26 {
        0 => last.to_string(),
        more => letter(more - 1) + last.encode_utf8(&mut [0; 4]),
    }
}
