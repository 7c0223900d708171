//! The pick: which way it goes on every note of a bar, and where the hand passes over the strings in silence.
//!
//! Direction follows from the place in the bar ([`direction_at`](super::direction_at)), never from the count of notes.
//! Two things are added to the rule of the strum. Where notes fall between two movements of the hand, it moves twice as
//! fast through that beat, so that sixteenths go down, up, down, up. And the notes of a tuplet take turns from the
//! direction of its first: a triplet goes like a beat of a jig, down, up, down, and the next beat is down again (common
//! practice).

use super::metre::Metre;
use super::strum::{Direction, beat_at, direction_by, hand_step};
use super::time::Ticks;
use super::tune::{Bar, Note};

/// The finest movement of the hand that is looked for, as a part of its usual one.
const FINEST: i64 = 32;

/// One movement of the picking hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PickStroke {
    /// When, from the start of the bar.
    pub at: Ticks,
    /// Which way.
    pub direction: Direction,
    /// The note that it strikes, as an index in [`Bar::notes`]; `None` is a silent stroke over the strings.
    pub note: Option<usize>,
}

/// The movements of the hand through a bar that begins `offset` into its metre (see
/// [`PlayedBar::offset`](super::PlayedBar::offset)), in order of time. Each melody note has its stroke; on rests, through
/// long notes and where `held` says that a tie carries the first note over, the hand goes on in silence.
///
/// ```
/// use fourcourse::chart::{Bar, Direction, Metre, Note, Ticks, picking};
/// let e = "E".parse().unwrap();
/// let pitch = fourcourse::theory::Pitch::new(e, 5);
/// // A quarter rest and an eighth rest, then an eighth: the note is on the "and" of two.
/// let note = Note::new(Ticks::of(3, 8), Ticks::of(1, 8), pitch);
/// let bar = Bar { length: Ticks::of(1, 2), notes: vec![note], ..Bar::default() };
/// let strokes = picking(&bar, Metre::COMMON, Ticks::ZERO, false);
/// assert_eq!(strokes.len(), 4);
/// assert_eq!((strokes[3].direction, strokes[3].note), (Direction::Up, Some(0)));
/// assert!(strokes[..3].iter().all(|stroke| stroke.note.is_none()));
/// ```
pub fn picking(bar: &Bar, metre: Metre, offset: Ticks, held: bool) -> Vec<PickStroke> {
    let onsets = onsets(bar);
    let mut strokes = struck(bar, &onsets, metre, offset);
    let rings: Vec<(Ticks, Ticks)> = tuplets(bar, &onsets)
        .map(|group| span(bar, group))
        .collect();
    // The hand's own steps, where no note falls into them.
    let step = hand_step(metre).max(Ticks(1));
    let (mut next_note, mut next_ring) = (0, 0);
    let mut silent = Vec::new();
    let mut at = Ticks::ZERO;
    while at < bar.length {
        let (_, into) = beat_at(metre, offset + at);
        let next = at + (step - into.div_rem(step).1);
        while strokes.get(next_note).is_some_and(|stroke| stroke.at < at) {
            next_note += 1;
        }
        while rings.get(next_ring).is_some_and(|&(_, end)| end <= at) {
            next_ring += 1;
        }
        let note = strokes
            .get(next_note)
            .is_some_and(|stroke| stroke.at < next);
        let in_tuplet = rings.get(next_ring).is_some_and(|&(start, _)| start <= at);
        if !note && !in_tuplet {
            let direction = direction_by(metre, offset + at, step);
            silent.push(PickStroke {
                at,
                direction,
                note: None,
            });
        }
        at = next;
    }
    if held && let Some(first) = strokes.first_mut().filter(|first| first.at == Ticks::ZERO) {
        first.note = None;
    }
    strokes.append(&mut silent);
    strokes.sort_by_key(|stroke| stroke.at);
    strokes
}

/// The strokes of the notes themselves.
fn struck(bar: &Bar, onsets: &[usize], metre: Metre, offset: Ticks) -> Vec<PickStroke> {
    let mut strokes = Vec::with_capacity(onsets.len());
    let beat_of = |&note: &usize| beat(metre, offset + bar.notes[note].at);
    for notes in onsets.chunk_by(|a, b| beat_of(a) == beat_of(b)) {
        let between = notes.iter().map(|&note| &bar.notes[note]);
        let between = between.filter(|note| note.tuplet.is_none());
        let step = step_through(metre, between.map(|note| offset + note.at));
        strokes.extend(notes.iter().map(|&note| PickStroke {
            at: bar.notes[note].at,
            direction: direction_by(metre, offset + bar.notes[note].at, step),
            note: Some(note),
        }));
    }
    // Tuplets take turns from their first note, wherever their notes fall.
    let mut from = 0;
    for group in tuplets(bar, onsets) {
        let slot = group
            .iter()
            .fold(0, |slot, &note| gcd(slot, bar.notes[note].length.0));
        while strokes[from].note != Some(group[0]) {
            from += 1;
        }
        let first = strokes[from];
        for stroke in &mut strokes[from..from + group.len()] {
            let turns = (stroke.at - first.at).0.checked_div(slot).unwrap_or(0);
            stroke.direction = match turns % 2 {
                0 => first.direction,
                _ => first.direction.other(),
            };
        }
    }
    strokes
}

/// The melody of a bar: the first note at each moment, as indices.
pub(super) fn onsets(bar: &Bar) -> Vec<usize> {
    let mut onsets: Vec<usize> = Vec::with_capacity(bar.notes.len());
    for (index, note) in bar.notes.iter().enumerate() {
        let same = |&last: &usize| bar.notes[last].at == note.at;
        if !onsets.last().is_some_and(same) {
            onsets.push(index);
        }
    }
    onsets
}

/// The runs of notes that make up tuplets.
fn tuplets<'a>(bar: &'a Bar, onsets: &'a [usize]) -> impl Iterator<Item = &'a [usize]> {
    let note = |index: usize| -> &Note { &bar.notes[index] };
    let goes_on = move |&a: &usize, &b: &usize| match (note(a).tuplet, note(b).tuplet) {
        (Some(_), Some(tuplet)) => !tuplet.first,
        (None, None) => true,
        _ => false,
    };
    let is_tuplet = move |group: &&[usize]| note(group[0]).tuplet.is_some();
    onsets.chunk_by(goes_on).filter(is_tuplet)
}

/// From the first note of a group to the end of its last.
fn span(bar: &Bar, group: &[usize]) -> (Ticks, Ticks) {
    let (first, last) = (&bar.notes[group[0]], &bar.notes[group[group.len() - 1]]);
    (first.at, last.at + last.length)
}

/// Which beat, counted through all bars of the metre, a moment falls into.
fn beat(metre: Metre, at: Ticks) -> (i64, usize) {
    match metre.bar() {
        Ticks::ZERO => (at.div_rem(Ticks::QUARTER).0, 0),
        bar => (at.div_rem(bar).0, beat_at(metre, at).0),
    }
}

/// How fast the hand moves through a beat with notes at these moments: half as long a step while two of them fall into one
/// movement, or one falls between two and would go the wrong way.
fn step_through(metre: Metre, moments: impl Iterator<Item = Ticks> + Clone) -> Ticks {
    let usual = hand_step(metre);
    let mut step = usual;
    let misses = |step: Ticks| {
        let mut before = None;
        moments.clone().any(|at| {
            let (movement, left) = beat_at(metre, at).1.div_rem(step);
            let shared = before.replace(movement) == Some(movement);
            let finer = Ticks(step.0 / 2);
            let wrong = direction_by(metre, at, step) != direction_by(metre, at, finer);
            shared || (left != Ticks::ZERO && wrong)
        })
    };
    while step.0 % 2 == 0 && step.0 * FINEST > usual.0 && misses(step) {
        step = Ticks(step.0 / 2);
    }
    step
}

const fn gcd(mut a: i64, mut b: i64) -> i64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.abs()
}
