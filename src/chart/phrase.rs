//! Phrases: where a melody takes breath.
//!
//! A phrase may begin after a rest or a long note, where a stretch begins that comes again, and where the first phrase of
//! its part began in the bar (a tune with a pickup has phrases with pickups); it must begin with a part. Of all ways to cut
//! the melody the one is taken with the most of that and with phrases nearest to four bars, found by dynamic programming.
//! The signs are those of E. Cambouropoulos' boundaries (rests, lengthened notes) and of parallelism in F. Lerdahl and R.
//! Jackendoff's grouping rules, from memory; the weights are fitted by ear.

use std::collections::HashMap;
use std::ops::Range;

use super::melody::MelodyNote;
use super::metre::Metre;
use super::time::Ticks;
use super::tune::Tune;

/// A phrase of the melody.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Phrase {
    /// Its notes, as indices in [`Tune::melody`].
    pub notes: Range<usize>,
    /// From when to when it goes, from the start of the tune as written: to where the next one begins.
    pub time: Range<Ticks>,
    /// The first phrase with the same notes, as an index, where it is not itself that.
    pub same_as: Option<usize>,
}

/// No phrase is longer, in full bars.
const LONGEST: f64 = 9.0;
/// A rest of a beat or more before a note, and a shorter one.
const REST: f64 = 1.5;
const SHORT_REST: f64 = 0.5;
/// The note before is twice as long as those around it.
const LONG: f64 = 1.0;
/// A stretch begins that comes again, and did not begin earlier.
const AGAIN: f64 = 1.0;
/// The note stands where the part's first note stands in its bar.
const LIKE_FIRST: f64 = 1.0;
/// Each bar that the length is away from an even number of them.
const UNEVEN: f64 = 2.0;

impl Tune {
    /// The phrases of the melody, in the order of the page. Every note belongs to one.
    pub fn phrases(&self) -> Vec<Phrase> {
        let melody = self.melody();
        let parts: Vec<usize> = self
            .parts_or_derived()
            .iter()
            .map(|part| part.first_bar)
            .collect();
        let metres = self.metres();
        let part = |note: &MelodyNote| parts.partition_point(|&first| first <= note.bar);
        let signs = signs(&melody, &metres);
        let mut starts = Vec::new();
        let mut first = 0;
        for notes in melody.chunk_by(|a, b| part(a) == part(b)) {
            let range = first..first + notes.len();
            starts.extend(cut(&melody, &signs, range.clone(), &metres));
            first = range.end;
        }
        let end = self.bars.iter().map(|bar| bar.length).sum();
        phrases(&melody, &starts, end)
    }
}

fn phrases(melody: &[MelodyNote], starts: &[usize], end: Ticks) -> Vec<Phrase> {
    let mut known: HashMap<Vec<(Ticks, i32)>, usize> = HashMap::new();
    let mut phrases = Vec::with_capacity(starts.len());
    for (index, &first) in starts.iter().enumerate() {
        let next = starts.get(index + 1).copied().unwrap_or(melody.len());
        let start = melody[first].start;
        let notes = melody[first..next].iter();
        let sung: Vec<_> = notes
            .map(|note| (note.start - start, note.pitch.midi()))
            .collect();
        let same = *known.entry(sung).or_insert(index);
        phrases.push(Phrase {
            notes: first..next,
            time: start..melody.get(next).map_or(end, |note| note.start),
            same_as: (same != index).then_some(same),
        });
    }
    phrases
}

/// The best starts of phrases in one part.
fn cut(melody: &[MelodyNote], signs: &[f64], part: Range<usize>, metres: &[Metre]) -> Vec<usize> {
    let bar = metres[melody[part.start].bar].bar_or_whole();
    let bars = |from: usize, to: usize| {
        let end = if to < part.end {
            melody[to].start
        } else {
            melody[to - 1].end()
        };
        (end - melody[from].start).quarters() / bar.quarters()
    };
    let first = &melody[part.start];
    let place = |note: &MelodyNote| (note.offset + note.at).div_rem(bar).1;
    let like_first = |note: usize| {
        if place(&melody[note]) == place(first) {
            LIKE_FIRST
        } else {
            0.0
        }
    };
    // The least cost of cutting up to each note, and where the phrase that ends there began.
    let mut ways: Vec<(f64, usize)> = vec![(0.0, part.start)];
    let mut earliest = part.start;
    for end in part.start + 1..=part.end {
        let sign = signs[part.start..part.end].get(end - part.start);
        let sign = sign.map_or(0.0, |sign| sign + like_first(end));
        while earliest + 1 < end && bars(earliest, end) > LONGEST {
            earliest += 1;
        }
        let way = (earliest..end).map(|from| {
            (
                ways[from - part.start].0 + length_cost(bars(from, end)) - sign,
                from,
            )
        });
        let best = way.min_by(|a, b| a.0.total_cmp(&b.0));
        ways.push(best.unwrap_or((0.0, part.start)));
    }
    let mut starts = Vec::new();
    let mut end = part.end;
    while end > part.start {
        end = ways[end - part.start].1;
        starts.push(end);
    }
    starts.reverse();
    starts
}

/// What a phrase of so many bars costs: nothing at four, a little at two and eight, more between the even numbers.
fn length_cost(bars: f64) -> f64 {
    let even = (bars / 2.0).round().max(1.0) * 2.0;
    let doublings = (bars.max(0.05) / 4.0).log2();
    doublings * doublings + 0.9 + UNEVEN * (bars - even).abs()
}

/// What speaks for a phrase to begin at each note, whatever its part.
fn signs(melody: &[MelodyNote], metres: &[Metre]) -> Vec<f64> {
    let again = beginnings_again(melody, metres);
    let sign = |(note, again): (usize, bool)| gap(melody, note) + if again { AGAIN } else { 0.0 };
    again.into_iter().enumerate().map(sign).collect()
}

/// The rest and the long note before a note.
fn gap(melody: &[MelodyNote], note: usize) -> f64 {
    /// Notes on either side that a length is compared with.
    const AROUND: usize = 4;
    let Some(before) = note.checked_sub(1).map(|before| &melody[before]) else {
        return 0.0;
    };
    let rest = melody[note].start - before.end();
    let rest = match rest {
        Ticks::ZERO => 0.0,
        rest if rest < Ticks::QUARTER => SHORT_REST,
        _ => REST,
    };
    let around = &melody[note.saturating_sub(AROUND)..(note + AROUND).min(melody.len())];
    let sum: Ticks = around.iter().map(|note| note.length).sum();
    let count = u32::try_from(around.len()).map_or(1.0, f64::from);
    let mean = sum.quarters() / count;
    let longer = (before.length.quarters() / mean.max(1e-3)).max(1e-3).log2();
    rest + LONG * longer.clamp(0.0, 1.5)
}

/// Whether a bar's worth of melody begins at each note that comes elsewhere too, after something else.
fn beginnings_again(melody: &[MelodyNote], metres: &[Metre]) -> Vec<bool> {
    /// Fewer notes are no stretch to be known again.
    const FEWEST: usize = 3;
    /// Longer stretches need not be compared.
    const MOST: usize = 32;
    type Sung = Vec<(Ticks, i32)>;
    let mut places: HashMap<Sung, Vec<usize>> = HashMap::new();
    for (first, note) in melody.iter().enumerate() {
        let bar = metres[note.bar].bar().max(Ticks::QUARTER);
        let stretch = melody[first..].iter().take(MOST);
        let stretch = stretch.take_while(|other| other.start < note.start + bar);
        let sung: Sung = stretch
            .map(|other| (other.start - note.start, other.pitch.midi()))
            .collect();
        if sung.len() >= FEWEST {
            places.entry(sung).or_default().push(first);
        }
    }
    let before = |note: usize| {
        let before = &melody[note.checked_sub(1)?];
        Some((melody[note].start - before.start, before.pitch.midi()))
    };
    let mut again = vec![false; melody.len()];
    for same in places.values() {
        if same.iter().any(|&note| before(note) != before(same[0])) {
            for &note in same {
                again[note] = true;
            }
        }
    }
    again
}
