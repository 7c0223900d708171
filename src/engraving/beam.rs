//! Which short notes are joined by a beam.

use std::ops::Range;

use crate::chart::{Metre, Ticks};

use super::measure::{Event, Kind};

/// The groups of events of a bar that share a beam, each of two notes at least. Beams show the beat: notes of one felt
/// beat go together, four eighths of half a bar in 4/4 too, the notes of a tuplet among themselves, and nothing across a
/// rest (common practice).
pub(super) fn groups(events: &[Event], metre: Metre, offset: Ticks) -> Vec<Range<usize>> {
    let window =
        |event: &Event| window(metre, offset + event.at, fine(events, event, metre, offset));
    let mut groups: Vec<Range<usize>> = Vec::new();
    let mut start = 0;
    while start < events.len() {
        let first = &events[start];
        let mut end = start + 1;
        if short(first) {
            while events.get(end).is_some_and(|event| {
                short(event)
                    && event.tuplet.map(|tuplet| tuplet.group)
                        == first.tuplet.map(|tuplet| tuplet.group)
                    && (first.tuplet.is_some() || window(event) == window(first))
            }) {
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

/// Whether beats longer than a quarter are cut into quarters around an event, because there are sixteenths in them.
fn fine(events: &[Event], event: &Event, metre: Metre, offset: Ticks) -> bool {
    let beat = window(metre, offset + event.at, false);
    let same = |other: &&Event| window(metre, offset + other.at, false) == beat;
    !metre.is_compound()
        && events
            .iter()
            .filter(same)
            .any(|other| other.value.beams() > 1)
}

/// Where the beat begins that a moment lies in.
fn window(metre: Metre, at: Ticks, fine: bool) -> Ticks {
    let bar = metre.bar().max(Ticks::QUARTER);
    let (bars, into) = at.div_rem(bar);
    let mut start = Ticks::ZERO;
    for beat in metre.beats() {
        if into < start + beat {
            break;
        }
        start += beat;
    }
    if metre.beats().is_empty() || (fine && metre.beats()[0] > Ticks::QUARTER) {
        start += Ticks::QUARTER * (into - start).div_rem(Ticks::QUARTER).0;
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
