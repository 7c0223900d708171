//! A passage: bars in a row that are practised again and again, and what leads into them.

use super::order::{PlayedBar, Playing};
use super::time::Ticks;

impl Playing {
    /// From when to when one played bar to another go, both included, when they are played again and again. `None` where
    /// there are no such bars.
    ///
    /// Where the last bar is short because a pickup completes it, the passage begins as much earlier: with the pickup of
    /// its part or, from the middle of a part, with the end of the bar before. So a teacher says "from the pickup", and so
    /// each pass is whole: the 1 comes where the hand expects it. At the start of a tune where nothing comes before, it
    /// ends with the pickup that leads on instead. A bar that is short by itself, in a crooked tune, stays as it is.
    pub fn passage(&self, first: usize, last: usize) -> Option<(Ticks, Ticks)> {
        let bars = self.bars.get(first..=last)?;
        let end = bars.last()?.end();
        let begin = bars.iter().find(|bar| !bar.pickup).or(bars.first())?.start;
        let lead = self.lead_after(last);
        Some(match begin >= lead {
            true => (begin - lead, end),
            false => (begin, (end + lead).min(self.length)),
        })
    }

    /// How much of a played bar is left to a pickup that comes after it; after the end the tune begins again.
    fn lead_after(&self, bar: usize) -> Ticks {
        let sounds = |bar: &&PlayedBar| bar.length > Ticks::ZERO;
        let after = self.bars[bar + 1..].iter().chain(&self.bars).find(sounds);
        let last = &self.bars[bar];
        match after {
            Some(next) if next.pickup && !last.pickup => {
                let missing = last.metre.bar() - (last.offset + last.length);
                missing.max(Ticks::ZERO)
            }
            _ => Ticks::ZERO,
        }
    }

    /// The played bar that counts as number `number` of all, from 1, where pickups do not count.
    pub fn counted(&self, number: usize) -> Option<usize> {
        let mut full = (0..self.bars.len()).filter(|&bar| !self.bars[bar].pickup);
        full.nth(number.checked_sub(1)?)
    }

    /// How many bars there are in all where pickups do not count.
    pub fn count_all(&self) -> usize {
        self.bars.iter().filter(|bar| !bar.pickup).count()
    }
}
