//! The strum of the bar now.

use crate::chart::{Count, Direction, Metre, Slot, Stroke, Ticks, count_at};
use crate::theory::Symbol;

use super::super::follow::Place;
use super::super::stand::{SlotView, StrumView};
use super::OnStand;

impl OnStand {
    /// The strum as it is to be seen at a place.
    pub(super) fn strum(&self, place: Place) -> StrumView {
        let still = self.follow.is_waiting() || place.counted.is_some();
        // Before it begins, the player looks for the strum of a whole bar, not for what fits into the pickup.
        let ahead = self.playing.bars.iter().skip(place.bar);
        let Some(bar) = ahead
            .clone()
            .find(|bar| !(still && bar.pickup))
            .or(ahead.clone().next())
        else {
            return StrumView {
                name: String::new(),
                slots: Vec::new(),
                now: None,
            };
        };
        let pattern = self.tune.strum_at(bar.written);
        let into = place.at - bar.start;
        let slots: Vec<_> = pattern.for_bar(bar.length, bar.offset).collect();
        let moves = !still && !place.ended;
        let current = moves
            .then(|| slots.iter().rposition(|&(at, ..)| at <= into))
            .flatten();
        let slots = slots.iter().map(|&(at, _, slot)| {
            let chord = self.changes.at(bar.start + at, false);
            let stops = chord.is_some_and(|change| change.symbol == Symbol::NoChord);
            let stroke = if stops { Stroke::Silent } else { slot.stroke };
            slot_view(Slot { stroke, ..slot }, bar.metre, bar.offset + at)
        });
        StrumView {
            slots: slots.collect(),
            now: current,
            name: pattern.name,
        }
    }
}

fn slot_view(slot: Slot, metre: Metre, offset: Ticks) -> SlotView {
    let count = count_at(metre, offset);
    SlotView {
        count: match count {
            Count::Number(number) => number.to_string(),
            Count::And => "&".to_owned(),
            Count::E => "e".to_owned(),
            Count::A => "a".to_owned(),
            Count::Nothing => String::new(),
        },
        on_beat: starts_a_beat(metre, offset),
        up: slot.direction == Direction::Up,
        silent: slot.stroke == Stroke::Silent,
        bass: slot.stroke == Stroke::Bass,
        chop: slot.stroke == Stroke::Chop,
        accent: slot.accent,
    }
}

fn starts_a_beat(metre: Metre, offset: Ticks) -> bool {
    let mut start = Ticks::ZERO;
    metre.beats().into_iter().any(|beat| {
        let here = start == offset;
        start += beat;
        here
    })
}
