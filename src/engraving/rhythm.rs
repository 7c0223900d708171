//! The rhythm under a tablature: stems with flat beams and flags, pointing down.

use super::mark::{Rule, Tone};
use super::measure::{Event, Kind, Measure};
use super::pen::{Pen, whole};

/// In spaces: from the lowest course to the stem, the stem, a beam, from one beam to the next.
const DOWN_TO: f32 = 0.62;
const STEM: f32 = 1.1;
const BEAM: f32 = 0.24;
const APART: f32 = 0.36;
/// From the uppermost beam up to the middle of a dot.
const CLEAR: f32 = 0.2;
/// The staff space of the signs of this row, in spaces of the tablature.
const SMALL: f32 = 0.42;

/// Room that the row takes, in spaces.
pub(super) const ROOM: f32 = 2.0;

/// Stems, beams, flags, dots and the figures of tuplets of a bar whose lowest course lies at `y`. `shown` says which
/// events are not covered.
pub(super) fn draw(pen: &mut Pen<'_>, measure: &Measure, y: f32, shown: &[bool]) {
    let space = pen.paper.space;
    let (top, tip) = (y + DOWN_TO * space, y + (DOWN_TO + STEM) * space);
    let thin = whole(0.1 * space);
    for (index, event) in measure.events.iter().enumerate() {
        if !shown[index] || event.kind == Kind::Rest {
            continue;
        }
        let tone = pen.tone(measure, event);
        if event.value.has_stem() {
            // A half note has half a stem (common practice in tablature).
            let top = if event.value.halved == 1 {
                tip - 0.5 * STEM * space
            } else {
                top
            };
            pen.rule(Rule {
                x: (event.x - thin / 2.0).round(),
                y: top,
                width: thin,
                height: tip - top,
                tone,
            });
        }
        let beamed = measure.beams.iter().any(|beam| beam.contains(&index));
        let dot = event.x + 0.32 * space;
        // The stems hang down and the beams join their tips: a dot stands in the clear above all of them.
        let up = match event.value.beams() {
            beams if beamed && beams > 0 => BEAM + level_offset(beams - 1) + CLEAR,
            _ => 0.15,
        };
        for place in 0..event.value.dots {
            pen.sign(
                '\u{e1e7}',
                dot + 0.3 * space * f32::from(place),
                tip - up * space,
                SMALL * space,
                tone,
            );
        }
        if !beamed && event.value.beams() > 0 {
            flag(pen, event, tip, tone);
        }
    }
    for beam in &measure.beams {
        if shown[beam.clone()].iter().all(|&shown| shown) {
            beams(pen, measure, &measure.events[beam.clone()], tip);
        }
    }
    tuplets(pen, measure, tip, shown);
}

fn flag(pen: &mut Pen<'_>, event: &Event, tip: f32, tone: Tone) {
    let flags = u32::try_from(event.value.beams().clamp(1, 4)).unwrap_or(1);
    // flag8thDown, flag16thDown and so on stand at every second code point.
    if let Some(sign) = char::from_u32(0xe241 + 2 * (flags - 1)) {
        let space = pen.paper.space;
        pen.sign(sign, event.x - 0.05 * space, tip, SMALL * space, tone);
    }
}

fn beams(pen: &mut Pen<'_>, measure: &Measure, events: &[Event], tip: f32) {
    let space = pen.paper.space;
    let half = 0.05 * space;
    let thick = whole(BEAM * space);
    for (level, from, to) in runs(events) {
        let y = tip - thick - level_offset(level) * space;
        let tone = pen.tone(measure, &events[0]);
        let (left, right) = ends(events, from, to, 0.62 * space);
        pen.rule(Rule {
            x: left - half,
            y,
            width: right - left + 2.0 * half,
            height: thick,
            tone,
        });
    }
}

fn level_offset(level: usize) -> f32 {
    u16::try_from(level).map_or(0.0, f32::from) * APART
}

/// Left and right end of a beam from one event to another; a beam of one is a stub towards its neighbour.
pub(super) fn ends(events: &[Event], from: usize, to: usize, stub: f32) -> (f32, f32) {
    let (left, right) = (events[from].x, events[to].x);
    match (from == to, from) {
        (false, _) => (left, right),
        (true, 0) => (left, left + stub),
        (true, _) => (left - stub, left),
    }
}

/// The beams of a group: level from 0, first and last event of each.
pub(super) fn runs(events: &[Event]) -> Vec<(usize, usize, usize)> {
    let most = events
        .iter()
        .map(|event| event.value.beams())
        .max()
        .unwrap_or(0);
    let mut runs = Vec::new();
    for level in 0..most {
        let mut from = None;
        for index in 0..=events.len() {
            let has = events
                .get(index)
                .is_some_and(|event| event.value.beams() > level);
            match (from, has) {
                (None, true) => from = Some(index),
                (Some(first), false) => {
                    runs.push((level, first, index - 1));
                    from = None;
                }
                _ => {}
            }
        }
    }
    runs
}

fn tuplets(pen: &mut Pen<'_>, measure: &Measure, tip: f32, shown: &[bool]) {
    let space = pen.paper.space;
    for (range, count) in groups(&measure.events) {
        if shown[range.clone()].iter().any(|shown| !shown) {
            continue;
        }
        let (first, last) = (measure.events[range.start], measure.events[range.end - 1]);
        let middle = (first.x + last.x) / 2.0;
        let tone = pen.tone(measure, &first);
        pen.figures(count, middle, tip + 0.72 * space, SMALL * space, tone);
    }
}

/// The tuplets of a bar: their events and how many notes they have.
pub(super) fn groups(events: &[Event]) -> Vec<(std::ops::Range<usize>, u8)> {
    let mut found: Vec<(std::ops::Range<usize>, u8, usize)> = Vec::new();
    for (index, event) in events.iter().enumerate() {
        let Some(tuplet) = event.tuplet else { continue };
        match found.last_mut() {
            Some((range, _, group)) if *group == tuplet.group => range.end = index + 1,
            _ => found.push((index..index + 1, tuplet.count, tuplet.group)),
        }
    }
    found
        .into_iter()
        .map(|(range, count, _)| (range, count))
        .collect()
}
