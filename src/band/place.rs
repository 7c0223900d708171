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

impl Transport {
    /// Where the circle is at a frame, which is not before the last change.
    pub fn place(mut self, playing: &Playing, frame: u64) -> Place {
        self.advance(frame);
        let at = self.at(frame);
        if at < self.begin() {
            return Place {
                counted: Some(at - (self.begin() - self.count())),
                ..Place::of(playing, self.time(), self.begin())
            };
        }
        let ended = self.is_ended() && playing.length > Ticks::ZERO;
        let at = at - Ticks(i64::from(ended));
        let tag = self.tag().filter(|&(from, _)| at >= from);
        let first = tag.and_then(|(from, bar)| Some((from, playing.bars.get(bar)?.start)));
        let at = first.map_or(at, |(from, start)| start + (at - from));
        Place {
            ended,
            ..Place::of(playing, self.time(), at.min(playing.length - Ticks(1)))
        }
    }
}
