//! Bars as a hand says them: from one downbeat to the next.

use crate::chart::{Playing, Ticks};

use super::follow::Place;

/// Where the hand's bar ends that began here: a tick before the next downbeat, the pickup before it included.
pub(super) fn hand_limit(playing: &Playing, from: (u32, Ticks)) -> (u32, Ticks) {
    let place = Place::of(playing, from.0, from.1);
    let (time, bar) = next_downbeat(playing, place);
    let start = playing.bars.get(bar).map_or(Ticks::ZERO, |bar| bar.start);
    match start > Ticks::ZERO {
        true => (time, start - Ticks(1)),
        false => (place.time, playing.length - Ticks(1)),
    }
}

/// The next bar that begins with a downbeat: pickups belong to the bar before them.
pub(super) fn next_downbeat(playing: &Playing, place: Place) -> (u32, usize) {
    let after = playing.bars.iter().enumerate().skip(place.bar + 1);
    if let Some((bar, _)) = after.into_iter().find(|(_, bar)| !bar.pickup) {
        return (place.time, bar);
    }
    let first = playing.bars.iter().position(|bar| !bar.pickup).unwrap_or(0);
    (place.time.saturating_add(1), first)
}

/// How far it is from a place to the nearest beat, the beats counted from each bar line; below zero where that beat has
/// gone by.
pub(super) fn to_nearest_beat(playing: &Playing, place: Place, beat: Ticks) -> Ticks {
    let Some(bar) = playing.bars.get(place.bar) else {
        return Ticks::ZERO;
    };
    let (_, gone) = (bar.offset + (place.at - bar.start)).div_rem(beat.max(Ticks(1)));
    let next = playing.bars.get(place.bar + 1);
    let left = match next {
        // A pickup goes on with the bar that it completes.
        Some(next) if next.offset > Ticks::ZERO => beat - gone,
        _ => (beat - gone).min(bar.end() - place.at),
    };
    match gone <= left {
        true => Ticks::ZERO - gone,
        false => left,
    }
}

/// The downbeat at a place or the last one before it; `None` in what leads into the very first.
pub(super) fn downbeat_before(playing: &Playing, place: Place) -> Option<(u32, usize)> {
    let so_far = &playing.bars[..playing.bars.len().min(place.bar + 1)];
    if let Some(bar) = so_far.iter().rposition(|bar| !bar.pickup) {
        return Some((place.time, bar));
    }
    let last = playing.bars.iter().rposition(|bar| !bar.pickup)?;
    Some((place.time.checked_sub(1)?, last))
}
