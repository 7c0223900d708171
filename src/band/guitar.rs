//! The guitar: bass notes and chords in turn, or a strum.

use crate::chart::{Direction, Ticks};

use super::bass::begins;
use super::event::{Event, Player, Sound, Touch};
use super::harmony::Span;
use super::line::{Hit, Mark};
use super::sheet::{OnChange, Sheet};
use super::stroke::{Strum, strum};
use super::voicings::Voicings;

/// A stroke of the hand before its length is known.
struct Stroke {
    at: Ticks,
    hit: Hit,
    mark: Mark,
    span: Span,
    force: f32,
    /// Of a bass note, whether it is the one that takes turns with the root.
    fifth: bool,
    /// Of a strum, whether bass notes come between: then it leaves the bass course alone.
    above_bass: bool,
}

/// The part of the guitar. In the pickup before the first full bar it plays its chords lightly and no bass.
pub(super) fn play(sheet: &Sheet, voicings: &mut Voicings) -> Vec<Event> {
    let strokes = strokes(sheet);
    let mut events = Vec::new();
    for (i, stroke) in strokes.iter().enumerate() {
        let Some(held) = voicings.guitar(stroke.span.chord) else {
            continue;
        };
        let until = stroke.span.to.max(stroke.at);
        let next = |wanted: fn(&Stroke) -> bool| {
            let next = strokes[i + 1..].iter().find(|stroke| wanted(stroke));
            next.map_or(until, |next| next.at.min(until)) - stroke.at
        };
        if stroke.hit.is_bass() {
            let (course, midi) = if stroke.fifth { held.fifth } else { held.root };
            events.push(Event {
                at: stroke.at,
                after_ms: 0.0,
                player: Player::Guitar,
                force: stroke.force,
                sound: Sound::String {
                    course,
                    midi,
                    rings: next(|other| other.hit.is_bass()),
                    touch: Touch::Ring,
                },
            });
            continue;
        }
        let up = stroke.mark.direction == Direction::Up;
        let strings = match stroke.hit {
            Hit::Chuck | Hit::Chop => held.upper(),
            _ if up => held.upper(),
            _ if stroke.above_bass => held.above_bass(),
            _ => &held.strings,
        };
        let (rings, touch) = match stroke.hit {
            // Let go in time for the bass note to stand alone.
            Hit::Chuck => (Ticks(next(|_| true).0 / 5 * 3), Touch::Ring),
            Hit::Chop => (Ticks::of(1, 16), Touch::Chop),
            _ => (next(|other| !other.hit.is_bass()), Touch::Ring),
        };
        let hand = Strum {
            player: Player::Guitar,
            at: stroke.at,
            direction: stroke.mark.direction,
            force: stroke.force,
            rolled: stroke.hit == Hit::Roll,
            rings,
            touch,
        };
        events.extend(strum(strings, hand));
    }
    events
}

fn strokes(sheet: &Sheet) -> Vec<Stroke> {
    let mut strokes = Vec::new();
    let mut before = None;
    let mut on_root = false;
    for (i, bar) in sheet.bars.iter().enumerate() {
        let last = sheet.final_bar == Some(i);
        let line = &sheet.pattern(bar).guitar;
        for (at, mark, span) in sheet.strokes(bar, line, OnChange::Fill(Hit::Strum)) {
            if bar.lead_in && mark.hit.is_bass() {
                continue;
            }
            let mut fifth = false;
            if mark.hit.is_bass() {
                let fresh = begins(before, span);
                fifth = match mark.hit {
                    _ if fresh || last => false,
                    Hit::Fifth => true,
                    Hit::Other => on_root,
                    _ => false,
                };
                (before, on_root) = (Some(span), !fifth);
            }
            strokes.push(Stroke {
                at: sheet.swung(bar, at),
                hit: mark.hit,
                mark,
                span,
                force: force(mark) * if bar.lead_in { 0.6 } else { 1.0 },
                fifth,
                above_bass: line.has_bass(),
            });
        }
    }
    if let Some((at, span)) = sheet.held() {
        let to = sheet.length;
        strokes.push(Stroke {
            at,
            hit: Hit::Strum,
            mark: Mark::new(Hit::Strum),
            span: Span { to, ..span },
            force: 0.75,
            fifth: false,
            above_bass: false,
        });
    }
    strokes
}

fn force(mark: Mark) -> f32 {
    let base = match mark.hit {
        Hit::Chuck if mark.direction == Direction::Up => 0.4,
        Hit::Chuck => 0.55,
        Hit::Roll => 0.45,
        Hit::Strum if mark.direction == Direction::Up => 0.5,
        Hit::Strum => 0.6,
        Hit::Chop => 0.6,
        _ => 0.7,
    };
    if mark.accent { base + 0.15 } else { base }
}
