//! The staff: heads, stems, beams, accidentals, ledger lines, rests and ties.

use std::ops::Range;

use crate::theory::Key;

use super::curve;
use super::mark::{Rule, Tone};
use super::measure::{Event, Kind, Measure};
use super::pen::{Pen, whole};
use super::pitch::{Clef, accidental, accidentals, sounding};
use super::rhythm::{ends, groups, runs};

/// Half a black head and half a stem, in staff spaces (SMuFL metadata of the font).
const HALF_HEAD: f32 = 0.59;
const STEM_WIDTH: f32 = 0.12;
/// A stem, and the least of one under a beam, in staff spaces.
const STEM: f32 = 3.5;
const BEAMED: f32 = 2.9;
/// Thickness of a beam, and from one to the next, in staff spaces.
const BEAM: f32 = 0.5;
const BEAMS_APART: f32 = 0.75;
/// The middle line, in half spaces below the upper one.
const MIDDLE: i32 = 4;

/// The stem of an event: where it points and where it ends, from the upper line, in staff spaces.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stem {
    pub(super) up: bool,
    pub(super) tip: f32,
}

/// What a bar has on the staff.
pub(super) struct Notes {
    /// Half spaces below the upper line of the pitches of each event, the melody first.
    pub(super) heads: Vec<Vec<i32>>,
    pub(super) stems: Vec<Option<Stem>>,
}

fn half(heights: i32) -> f32 {
    i16::try_from(heights).map_or(0.0, f32::from) / 2.0
}

impl Notes {
    /// The heads and stems of a bar; `space` is a staff space in dp.
    pub(super) fn of(pen: &Pen<'_>, measure: &Measure, key: Key, clef: Clef, space: f32) -> Self {
        let events = 0..measure.events.len();
        let heads: Vec<Vec<i32>> = events
            .map(|index| {
                let pitches = sounding(pen.piece, measure, index, key);
                pitches
                    .into_iter()
                    .map(|pitch| clef.below_top(pitch))
                    .collect()
            })
            .collect();
        let mut stems = vec![None; heads.len()];
        for (index, event) in measure.events.iter().enumerate() {
            if !heads[index].is_empty() && event.value.has_stem() {
                stems[index] = Some(single(&heads[index], event));
            }
        }
        for beam in &measure.beams {
            beamed(measure, beam.clone(), &heads, &mut stems, space);
        }
        Self { heads, stems }
    }

    /// How far it reaches above the upper line and below the lower one, in staff spaces.
    pub(super) fn reach(&self) -> (f32, f32) {
        let heads = self
            .heads
            .iter()
            .flatten()
            .map(|&head| (half(head) - 0.6, half(head) + 0.6));
        let stems = self
            .stems
            .iter()
            .flatten()
            .map(|stem| (stem.tip - 0.1, stem.tip + 0.1));
        heads.chain(stems).fold((0.0, 0.0), |reach, (top, foot)| {
            (reach.0.max(-top), reach.1.max(foot - 4.0))
        })
    }
}

/// Up where the head that is farthest from the middle line is below it; on the middle line down.
fn points_up<'a>(heads: impl Iterator<Item = &'a i32> + Clone) -> bool {
    let (high, low) = (heads.clone().min(), heads.max());
    match (high, low) {
        (Some(high), Some(low)) => low - MIDDLE > MIDDLE - high,
        _ => false,
    }
}

fn single(heads: &[i32], event: &Event) -> Stem {
    let up = points_up(heads.iter());
    let flags = u16::try_from(event.value.beams().saturating_sub(2)).map_or(0.0, f32::from);
    let length = STEM + 0.75 * flags;
    let near = |head: Option<&i32>| half(head.copied().unwrap_or(MIDDLE));
    // From beyond the ledger lines a stem reaches the middle line.
    let tip = match up {
        true => (near(heads.iter().min()) - length).min(half(MIDDLE)),
        false => (near(heads.iter().max()) + length).max(half(MIDDLE)),
    };
    Stem { up, tip }
}

fn beamed(
    measure: &Measure,
    beam: Range<usize>,
    heads: &[Vec<i32>],
    stems: &mut [Option<Stem>],
    space: f32,
) {
    let up = points_up(heads[beam.clone()].iter().flatten());
    let near = |index: usize| match up {
        true => half(heads[index].iter().min().copied().unwrap_or(MIDDLE)),
        false => half(heads[index].iter().max().copied().unwrap_or(MIDDLE)),
    };
    let (first, last) = (beam.start, beam.end - 1);
    let x = |index: usize| measure.events[index].x / space;
    let run = (x(last) - x(first)).max(0.1);
    let beams = measure.events[beam.clone()]
        .iter()
        .map(|event| event.value.beams())
        .max();
    let more = u16::try_from(beams.unwrap_or(1).saturating_sub(1)).map_or(0.0, f32::from);
    let length = BEAMED + 0.5 * more;
    let between = |index: usize| (x(index) - x(first)) / run;
    // The slant follows the outer notes, by half, a space at most; it is level where an inner note is nearest to the beam.
    let towards = |index: usize| if up { -near(index) } else { near(index) };
    let outer = towards(first).max(towards(last));
    let inner = (first + 1..last).any(|index| towards(index) >= outer);
    let slant = if inner {
        0.0
    } else {
        ((near(last) - near(first)) * 0.5).clamp(-1.0, 1.0)
    };
    let slant = slant.clamp(-0.3 * run, 0.3 * run);
    let ideal = beam.clone().map(|index| match up {
        true => near(index) - length - slant * between(index),
        false => near(index) + length - slant * between(index),
    });
    let mut start = match up {
        true => ideal.fold(f32::INFINITY, f32::min),
        false => ideal.fold(f32::NEG_INFINITY, f32::max),
    };
    let (lower, upper) = (start.max(start + slant), start.min(start + slant));
    let middle = half(MIDDLE);
    if up && lower > middle {
        start -= lower - middle;
    }
    if !up && upper < middle {
        start += middle - upper;
    }
    for index in beam {
        stems[index] = Some(Stem {
            up,
            tip: start + slant * between(index),
        });
    }
}

/// What each event needs on its left for its accidentals, in dp.
pub(super) fn left_room(pen: &Pen<'_>, measure: &Measure, key: Key, space: f32) -> Vec<f32> {
    let signs = accidentals(pen.piece, measure, key);
    signs
        .iter()
        .map(|signs| {
            let wide: f32 = signs
                .iter()
                .flatten()
                .map(|&sign| accidental(sign).1 + 0.2)
                .sum();
            wide * space
        })
        .collect()
}

/// Draws a bar on the staff whose upper line lies at `top`.
pub(super) fn draw(
    pen: &mut Pen<'_>,
    measure: &Measure,
    (key, clef): (Key, Clef),
    (top, space): (f32, f32),
    shown: &[bool],
) {
    let notes = Notes::of(pen, measure, key, clef, space);
    let signs = accidentals(pen.piece, measure, key);
    for (index, event) in measure.events.iter().enumerate() {
        let tone = pen.tone(measure, event);
        if !shown[index] {
            pen.last = None;
            continue;
        }
        if event.kind == Kind::Rest {
            let whole = measure.events.len() == 1 && event.value.halved == 0;
            let line = if event.value.halved == 0 { 1.0 } else { 2.0 };
            let x = if whole {
                measure.x + (measure.width + measure.before) / 2.0
            } else {
                event.x
            };
            pen.rest(&Event { x, ..*event }, top + line * space, space, tone);
            continue;
        }
        heads(pen, event, &notes.heads[index], (top, space), tone);
        let mut left = event.x - (HALF_HEAD + 0.22) * space;
        for (head, sign) in notes.heads[index].iter().zip(&signs[index]) {
            if let Some(sign) = sign {
                let (sign, width) = accidental(*sign);
                left -= width * space;
                pen.sign(sign, left, top + half(*head) * space, space, tone);
                left -= 0.1 * space;
            }
        }
        if let Some(stem) = notes.stems[index] {
            draw_stem(pen, event, &notes.heads[index], stem, (top, space), tone);
            let beamed = measure.beams.iter().any(|beam| beam.contains(&index));
            if !beamed && event.value.beams() > 0 {
                flag(pen, event, stem, (top, space), tone);
            }
        }
        if event.tied {
            let from = pen.last.unwrap_or(measure.x + 0.2 * space);
            let up = notes.stems[index].is_some_and(|stem| !stem.up);
            if let Some(&head) = notes.heads[index].first() {
                let off = if up { -0.65 } else { 0.65 };
                let y = top + (half(head) + off) * space;
                pen.curve(curve::tie(
                    from + 0.3 * space,
                    event.x - 0.3 * space,
                    y,
                    up,
                    space,
                    tone,
                ));
            }
        }
        pen.last = Some(event.x);
    }
    for beam in &measure.beams {
        if shown[beam.clone()].iter().all(|&shown| shown) {
            beams(pen, measure, beam.clone(), &notes, (top, space));
        }
    }
    for (range, count) in groups(&measure.events) {
        if shown[range.clone()].iter().all(|&shown| shown) {
            tuplet(pen, measure, range, count, &notes, (top, space));
        }
    }
}

fn heads(pen: &mut Pen<'_>, event: &Event, heads: &[i32], (top, space): (f32, f32), tone: Tone) {
    let (sign, width) = match event.value.halved {
        ..0 => ('\u{e0a0}', 2.4),
        0 => ('\u{e0a2}', 1.69),
        1 => ('\u{e0a3}', 1.18),
        _ => ('\u{e0a4}', 1.18),
    };
    let left = event.x - width / 2.0 * space;
    for &head in heads {
        let y = top + half(head) * space;
        pen.sign(sign, left, y, space, tone);
        let ledgers = (head..=-2).chain(10..=head).filter(|line| line % 2 == 0);
        for line in ledgers {
            let y = top + (half(line) - 0.08) * space;
            pen.rule(Rule {
                x: left - 0.4 * space,
                y,
                width: (width + 0.8) * space,
                height: 0.16 * space,
                tone,
            });
        }
        // A dot stands in a space.
        let dot = top + half(if head % 2 == 0 { head - 1 } else { head }) * space;
        for place in 0..event.value.dots {
            let x = event.x + (width / 2.0 + 0.35 + 0.6 * f32::from(place)) * space;
            pen.sign('\u{e1e7}', x, dot, space, tone);
        }
    }
}

/// The left edge of a stem.
fn stem_x(event: &Event, up: bool, space: f32) -> f32 {
    match up {
        true => event.x + (HALF_HEAD - STEM_WIDTH) * space,
        false => event.x - HALF_HEAD * space,
    }
}

fn draw_stem(
    pen: &mut Pen<'_>,
    event: &Event,
    heads: &[i32],
    stem: Stem,
    (top, space): (f32, f32),
    tone: Tone,
) {
    let far = match stem.up {
        true => half(heads.iter().max().copied().unwrap_or(MIDDLE)) - 0.17,
        false => half(heads.iter().min().copied().unwrap_or(MIDDLE)) + 0.17,
    };
    let (from, to) = (far.min(stem.tip), far.max(stem.tip));
    pen.rule(Rule {
        x: stem_x(event, stem.up, space).round(),
        y: top + from * space,
        width: whole(STEM_WIDTH * space),
        height: (to - from) * space,
        tone,
    });
}

fn flag(pen: &mut Pen<'_>, event: &Event, stem: Stem, (top, space): (f32, f32), tone: Tone) {
    let flags = u32::try_from(event.value.beams().clamp(1, 4)).unwrap_or(1);
    let down = u32::from(!stem.up);
    if let Some(sign) = char::from_u32(0xe240 + 2 * (flags - 1) + down) {
        pen.sign(
            sign,
            stem_x(event, stem.up, space),
            top + stem.tip * space,
            space,
            tone,
        );
    }
}

fn beams(
    pen: &mut Pen<'_>,
    measure: &Measure,
    beam: Range<usize>,
    notes: &Notes,
    (top, space): (f32, f32),
) {
    let events = &measure.events[beam.clone()];
    let Some(first) = notes.stems[beam.start] else {
        return;
    };
    let Some(last) = notes.stems[beam.end - 1] else {
        return;
    };
    let (x0, x1) = (events[0].x, events[events.len() - 1].x);
    let width = STEM_WIDTH * space;
    let tip = |x: f32| first.tip + (last.tip - first.tip) * (x - x0) / (x1 - x0).max(0.1);
    let shift = stem_x(&events[0], first.up, space) - x0;
    let tone = pen.tone(measure, &events[0]);
    for (level, from, to) in runs(events) {
        let (left, right) = ends(events, from, to, 1.1 * space);
        let level = u16::try_from(level).map_or(0.0, f32::from) * BEAMS_APART;
        let off = if first.up { level } else { -level - BEAM };
        let y = |x: f32| top + (tip(x) + off) * space;
        let (a, b) = ((left + shift, y(left)), (right + shift + width, y(right)));
        pen.curve(curve::beam(a, b, BEAM * space, tone));
    }
}

fn tuplet(
    pen: &mut Pen<'_>,
    measure: &Measure,
    range: Range<usize>,
    count: u8,
    notes: &Notes,
    (top, space): (f32, f32),
) {
    let tips = notes.stems[range.clone()].iter().flatten();
    let up = notes.stems[range.start].is_none_or(|stem| stem.up);
    let edge = match up {
        true => tips.map(|stem| stem.tip).fold(0.0, f32::min) - 0.5,
        false => tips.map(|stem| stem.tip).fold(4.0, f32::max) + 1.6,
    };
    let (first, last) = (measure.events[range.start], measure.events[range.end - 1]);
    let tone = pen.tone(measure, &first);
    pen.figures(
        count,
        (first.x + last.x) / 2.0,
        top + edge * space,
        0.8 * space,
        tone,
    );
}
