//! The chop: short damped chords on the off-beats.

use crate::chart::{Direction, Ticks};

use super::event::{Event, Player, Touch};
use super::sheet::{OnChange, Sheet};
use super::stroke::{Strum, strum};
use super::voicings::Voicings;

/// The part of the chopping mandolin. The chord that is held at the end it lets ring.
pub(super) fn play(sheet: &Sheet, voicings: &mut Voicings) -> Vec<Event> {
    let mut events = Vec::new();
    for bar in &sheet.bars {
        let line = &sheet.pattern(bar).chop;
        for (at, mark, span) in sheet.strokes(bar, line, OnChange::Wait) {
            let force = if mark.accent { 0.85 } else { 0.7 };
            let hand = Strum {
                player: Player::Chop,
                at: sheet.swung(bar, at),
                direction: Direction::Down,
                force: force * if bar.lead_in { 0.6 } else { 1.0 },
                rolled: false,
                rings: Ticks::of(1, 16),
                touch: Touch::Chop,
            };
            events.extend(strum(voicings.chop(span.chord), hand));
        }
    }
    if let Some((at, span)) = sheet.held() {
        let hand = Strum {
            player: Player::Chop,
            at,
            direction: Direction::Down,
            force: 0.6,
            rolled: false,
            rings: sheet.length - at,
            touch: Touch::Ring,
        };
        events.extend(strum(voicings.chop(span.chord), hand));
    }
    events
}
