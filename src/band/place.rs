//! Where the circle is, as a player counts: time through, bar, beat.

use crate::chart::{Playing, Ticks};

use super::transport::Transport;

/// Where the circle is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Place {
    /// Time through, from 0.
    pub time: u32,
    /// Index of the bar in playing order.
    pub bar: usize,
    /// From the start of the time through.
    pub at: Ticks,
    /// While counting in: how much of the count has gone by.
    pub counted: Option<Ticks>,
    /// The tune is over: the place is its last moment.
    pub ended: bool,
}

impl Place {
    /// The place of a moment of a time through.
    pub fn of(playing: &Playing, time: u32, at: Ticks) -> Self {
        let at = at.max(Ticks::ZERO);
        let last = playing.bars.len().saturating_sub(1);
        Self {
            time,
            bar: playing.bar_at(at).unwrap_or(last),
            at,
            counted: None,
            ended: false,
        }
    }
}

/// How long the count before a bar is: a full bar, and the beats before a pickup: four and three for a quarter's pickup
/// in 4/4 (common practice).
pub fn count_before(playing: &Playing, bar: usize) -> Ticks {
    let bar = playing.bars.get(bar);
    bar.map_or(Ticks::ZERO, |bar| bar.metre.bar() + bar.offset)
}

impl Transport {
    /// Where the circle is at a frame, at the last settled moment or later.
    pub fn place(mut self, playing: &Playing, frame: u64) -> Place {
        self.advance(frame);
        let at = self.at(frame);
        if at < self.begin() {
            let place = Place::of(playing, self.time(), self.begin());
            let count = count_before(playing, place.bar);
            return Place {
                counted: Some(count - (self.begin() - at)),
                ..place
            };
        }
        let ended = self.is_ended() && playing.length > Ticks::ZERO;
        Place {
            ended,
            ..Place::of(playing, self.time(), at - Ticks(i64::from(ended)))
        }
    }
}
