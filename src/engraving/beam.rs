//! Which short notes are joined by a beam.

use std::ops::Range;

use crate::chart::{Metre, Ticks};

use super::measure::{Event, Kind};

/// The groups of events of a bar that share a beam, each of two notes at least. Beams show the beat: notes of one felt
/// beat go together, four eighths of half a bar in 4/4 too, the notes of a tuplet among themselves, and nothing across a
/// rest (common practice).
pub(super) fn groups(events: &[Event], metre: Metre, offset: Ticks) -> Vec<Range<usize>> {
    let beats = windows(events, metre, offset);
    let group = |event: usize| events[event].tuplet.map(|tuplet| tuplet.group);
    let joins = |first: usize, event: usize| {
        short(&events[event])
            && group(event) == group(first)
            && (group(first).is_some() || beats[event] == beats[first])
    };
    let mut groups: Vec<Range<usize>> = Vec::new();
    let mut start = 0;
    while start < events.len() {
        let mut end = start + 1;
        if short(&events[start]) {
            while end < events.len() && joins(start, end) {
                end += 1;
            }
            if end - start > 1 {
                groups.push(start..end);
            }
        }
        start = end;
    }
    by_halves(events, metre, offset, groups)
}

fn short(event: &Event) -> bool {
    matches!(event.kind, Kind::Note { .. }) && event.value.beams() > 0
}

/// Where the beat begins that each event lies in. Beats longer than a quarter are cut into quarters where there are
/// sixteenths in them.
fn windows(events: &[Event], metre: Metre, offset: Ticks) -> Vec<Ticks> {
    let lengths = metre.beats();
    let felt = |event: &Event| window(metre, &lengths, offset + event.at);
    let mut windows: Vec<Ticks> = events.iter().map(felt).collect();
    let long = lengths.first().is_none_or(|&beat| beat > Ticks::QUARTER);
    if metre.is_compound() || !long {
        return windows;
    }
    let mut from = 0;
    while from < events.len() {
        let beat = windows[from];
        let same = windows[from..].iter().take_while(|&&other| other == beat);
        let to = from + same.count();
        let fine = events[from..to].iter().any(|event| event.value.beams() > 1);
        if fine || lengths.is_empty() {
            for (window, event) in windows[from..to].iter_mut().zip(&events[from..to]) {
                let into = offset + event.at - beat;
                *window += Ticks::QUARTER * into.div_rem(Ticks::QUARTER).0;
            }
        }
        from = to;
    }
    windows
}

/// Where the felt beat begins that a moment lies in; without beats, the bar.
fn window(metre: Metre, beats: &[Ticks], at: Ticks) -> Ticks {
    let bar = metre.bar().max(Ticks::QUARTER);
    let (bars, into) = at.div_rem(bar);
    let mut start = Ticks::ZERO;
    for &beat in beats {
        if into < start + beat {
            break;
        }
        start += beat;
    }
    bar * bars + start
}

/// In 4/4, the pairs of eighths of both beats of a half bar under one beam.
fn by_halves(
    events: &[Event],
    metre: Metre,
    offset: Ticks,
    groups: Vec<Range<usize>>,
) -> Vec<Range<usize>> {
    let half = Ticks::of(1, 2);
    let quarters =
        metre.beats().len() == 4 && metre.beats().iter().all(|&beat| beat == Ticks::QUARTER);
    let pair = |group: &Range<usize>| {
        group.len() == 2
            && events[group.clone()]
                .iter()
                .all(|event| event.tuplet.is_none() && event.value.length() == Ticks::of(1, 8))
    };
    let mut joined: Vec<Range<usize>> = Vec::new();
    for group in groups {
        match joined.last_mut() {
            Some(last)
                if quarters
                    && last.end == group.start
                    && pair(last)
                    && pair(&group)
                    && (offset + events[last.start].at).div_rem(half).1 == Ticks::ZERO =>
            {
                last.end = group.end;
            }
            _ => joined.push(group),
        }
    }
    joined
}
