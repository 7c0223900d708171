//! The count: in front of a tune, and along with it.

use crate::chart::{Metre, Playing, Ticks};

use super::event::{Event, Player, Sound};
use super::sheet::Sheet;

/// A click on each felt beat, the 1 of each bar marked. A level decides whether it is heard.
pub(super) fn play(sheet: &Sheet) -> Vec<Event> {
    let mut events = Vec::new();
    for bar in &sheet.bars {
        let beats = beats(bar.metre, bar.offset, bar.length);
        events.extend(beats.map(|at| click(bar.start + at, bar.offset + at == Ticks::ZERO)));
    }
    events
}

/// What is counted in front of a tune: events from zero on, and when the tune begins.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct CountIn {
    /// The clicks, in order of time.
    pub events: Vec<Event>,
    /// How long it takes.
    pub length: Ticks,
}

/// A full bar, and then the part of a bar that is missing before the pickup, which is
/// [`first_offset`](crate::chart::Tune::first_offset): "1 2 3 4, 1 2 3 *pickup*" (common practice). Counted are the felt
/// beats: a jig in two, a waltz in three.
///
/// ```
/// use fourcourse::band::count_in;
/// use fourcourse::chart::{Metre, Ticks};
/// let before_a_quarter = count_in(Metre::COMMON, Ticks::of(3, 4));
/// assert_eq!(before_a_quarter.events.len(), 7);
/// assert_eq!(before_a_quarter.length, Ticks::of(7, 4));
/// ```
pub fn count_in(metre: Metre, offset: Ticks) -> CountIn {
    let bar = metre.bar_or_whole();
    let offset = offset.clamp(Ticks::ZERO, bar);
    let full = beats(metre, Ticks::ZERO, bar);
    let part = beats(metre, Ticks::ZERO, offset).map(|at| bar + at);
    let events = full.chain(part);
    CountIn {
        events: events
            .map(|at| click(at, at == Ticks::ZERO || at == bar))
            .collect(),
        length: bar + offset,
    }
}

impl CountIn {
    /// What is counted in front of a moment of a tune; see [`count_in`]. A bar that is over early counts on, so that it
    /// leads into the next 1.
    pub fn to(playing: &Playing, at: Ticks) -> Self {
        let bar = playing.bar_at(at).and_then(|bar| playing.bars.get(bar));
        bar.map_or_else(Self::default, |bar| {
            count_in(bar.metre, bar.offset + (at - bar.start))
        })
    }
}

fn click(at: Ticks, first: bool) -> Event {
    Event {
        at,
        after_ms: 0.0,
        player: Player::Click,
        force: if first { 0.9 } else { 0.6 },
        sound: Sound::Click { first },
    }
}

/// The most beats of one bar; see the lines of strokes.
const MOST_BEATS: usize = 512;

/// Beats within a bar that begins `offset` into the metre, from the start of the bar; a bar longer than the metre begins
/// it again. In free time each quarter is a beat.
fn beats(metre: Metre, offset: Ticks, length: Ticks) -> impl Iterator<Item = Ticks> {
    let mut beats = metre.beats();
    if beats.iter().copied().sum::<Ticks>() <= Ticks::ZERO {
        beats = vec![Ticks::QUARTER];
    }
    let mut at = -offset;
    let starts = (0..MOST_BEATS).map(move |k| {
        let start = at;
        at += beats[k % beats.len()];
        start
    });
    starts
        .take_while(move |&at| at < length)
        .filter(|&at| at >= Ticks::ZERO)
}
