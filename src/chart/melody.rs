//! The melody of a tune as it is played note by note: ties joined, with the chord and the key that hold and the way the
//! pick goes.

use crate::theory::{Chord, Key, Pitch, Symbol};

use super::pick::{PickStroke, onsets, picking};
use super::strum::{Direction, hand_step};
use super::time::Ticks;
use super::tune::{Ornament, Tune};

/// So many notes in a row that are shorter than a movement of the hand are a run; the short notes of dotted rhythms are not.
const FAST_RUN: usize = 3;

/// A note of the melody, in the order of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MelodyNote {
    /// Index of its bar in [`Tune::bars`].
    pub bar: usize,
    /// Start, from the start of that bar.
    pub at: Ticks,
    /// Where that bar begins in its metre; see [`Tune::offsets`].
    pub offset: Ticks,
    /// Start, from the start of the tune as written.
    pub start: Ticks,
    /// How long it sounds: what is tied to it is part of it.
    pub length: Ticks,
    /// Its pitch.
    pub pitch: Pitch,
    /// Which way the pick goes, from its place in the bar.
    pub direction: Direction,
    /// Which way the tune itself marks it, with a sign for down or up.
    pub marked: Option<Direction>,
    /// The chord that holds when it begins.
    pub chord: Option<Chord>,
    /// The key that it stands in.
    pub key: Key,
    /// It belongs to a fast run: a tuplet, or three notes in a row that are shorter than a movement of the hand, where most
    /// are not.
    pub fast: bool,
    /// Whether silence comes before it, or nothing.
    pub after_rest: bool,
}

impl MelodyNote {
    /// When it ends, from the start of the tune as written.
    pub fn end(&self) -> Ticks {
        self.start + self.length
    }

    /// Whether the tune marks it against the direction that its place in the bar asks for.
    pub fn is_marked_against(&self) -> bool {
        self.marked.is_some_and(|marked| marked != self.direction)
    }
}

impl Tune {
    /// Where each written bar begins in its metre: zero but for a pickup, which ends where a full bar would.
    pub fn offsets(&self) -> Vec<Ticks> {
        let pickups = self.pickups(&self.parts_or_derived());
        let bars = self.bars.iter().zip(self.metres()).zip(pickups);
        bars.map(|((bar, metre), pickup)| match pickup {
            true => metre.bar() - bar.length,
            false => Ticks::ZERO,
        })
        .collect()
    }

    /// What the picking hand does in each written bar.
    pub fn picking(&self) -> Vec<Vec<PickStroke>> {
        let places = self.metres().into_iter().zip(self.offsets());
        let mut tied: Option<i32> = None;
        let bars = self.bars.iter().zip(places);
        bars.map(|(bar, (metre, offset))| {
            let onsets = onsets(bar);
            let first = onsets.first().map(|&note| &bar.notes[note]);
            let held =
                first.is_some_and(|note| note.at == Ticks::ZERO && tied == Some(note.pitch.midi()));
            let last = onsets.last().map(|&note| &bar.notes[note]);
            if bar.length > Ticks::ZERO {
                let leads = last.filter(|note| note.tied && note.at + note.length >= bar.length);
                tied = leads.map(|note| note.pitch.midi());
            }
            let mut strokes = picking(bar, metre, offset, held);
            // Within the bar too, a tie is no new stroke.
            for pair in onsets.windows(2) {
                let (before, after) = (&bar.notes[pair[0]], &bar.notes[pair[1]]);
                let joined = before.tied
                    && before.pitch.midi() == after.pitch.midi()
                    && before.at + before.length == after.at;
                for stroke in strokes.iter_mut().filter(|_| joined) {
                    stroke.note = stroke.note.filter(|&note| note != pair[1]);
                }
            }
            strokes
        })
        .collect()
    }

    /// The melody in the order of the page, bar after bar as written. Of notes that sound together the first is the
    /// melody, which is the uppermost as tunes are read; grace notes are left out.
    pub fn melody(&self) -> Vec<MelodyNote> {
        let (metres, keys, offsets) = (self.metres(), self.keys(), self.offsets());
        let mut melody: Vec<MelodyNote> = Vec::new();
        let mut start = Ticks::ZERO;
        let mut holds: Option<Chord> = None;
        for (index, (bar, strokes)) in self.bars.iter().zip(self.picking()).enumerate() {
            let mut chords = bar.chords.iter().peekable();
            for note in onsets(bar) {
                let written = &bar.notes[note];
                while let Some(chord) = chords.next_if(|chord| chord.at <= written.at) {
                    holds = sounded(chord.symbol);
                }
                let at = start + written.at;
                let stroke = strokes.iter().find(|stroke| stroke.note == Some(note));
                let Some(stroke) = stroke else {
                    // Tied to the one before.
                    if let Some(before) = melody.last_mut() {
                        before.length = at + written.length - before.start;
                    }
                    continue;
                };
                melody.push(MelodyNote {
                    bar: index,
                    at: written.at,
                    offset: offsets[index],
                    start: at,
                    length: written.length,
                    pitch: written.pitch,
                    direction: stroke.direction,
                    marked: written.ornaments.iter().find_map(marked),
                    chord: holds,
                    key: keys[index],
                    fast: written.tuplet.is_some(),
                    after_rest: melody.last().is_none_or(|before| before.end() < at),
                });
            }
            holds = chords.last().map_or(holds, |chord| sounded(chord.symbol));
            start += bar.length;
        }
        let short = |note: &MelodyNote| note.length < hand_step(metres[note.bar]);
        let all = melody.len();
        let runs = melody.chunk_by_mut(|a, b| short(a) == short(b));
        let runs = runs.filter(|run| run.len() >= FAST_RUN && short(&run[0]));
        let runs: Vec<&mut [MelodyNote]> = runs.collect();
        // Where most notes are as short, they are how the tune goes: a reel in 2/4 is no faster than one in 4/4.
        if runs.iter().map(|run| run.len()).sum::<usize>() * 2 <= all {
            for note in runs.into_iter().flatten() {
                note.fast = true;
            }
        }
        melody
    }
}

fn sounded(symbol: Symbol) -> Option<Chord> {
    match symbol {
        Symbol::Chord(chord) => Some(chord),
        Symbol::NoChord => None,
    }
}

fn marked(ornament: &Ornament) -> Option<Direction> {
    match ornament {
        Ornament::DownBow => Some(Direction::Down),
        Ornament::UpBow => Some(Direction::Up),
        _ => None,
    }
}
