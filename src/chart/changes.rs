//! The chord changes of a tune in the order in which they are played.

use crate::theory::Symbol;

use super::order::Playing;
use super::time::Ticks;
use super::tune::Tune;

/// A chord and how long it holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Change {
    /// When it begins, from the start of the tune.
    pub at: Ticks,
    /// How long it holds: over bar lines and repeats, up to the next change or the end.
    pub length: Ticks,
    /// What is played.
    pub symbol: Symbol,
    /// Index in [`Playing::bars`] of the bar it begins in.
    pub played_bar: usize,
}

impl Change {
    /// When the next one begins, or the tune ends.
    pub fn end(&self) -> Ticks {
        self.at + self.length
    }
}

/// All chord changes of one time through, in order of time. A chord that is written again while it holds is no change.
/// Before the first one nobody plays a chord.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changes(Vec<Change>);

impl Changes {
    /// The changes of a tune as it is played.
    pub fn of(tune: &Tune, playing: &Playing) -> Self {
        let mut changes: Vec<Change> = Vec::new();
        for (index, bar) in playing.bars.iter().enumerate() {
            let Some(written) = tune.bars.get(bar.written) else {
                continue;
            };
            for chord in &written.chords {
                let at = bar.start + chord.at.clamp(Ticks::ZERO, bar.length);
                // Of two at one moment, the later one is meant; one out of order is put where the one before it is.
                let at = changes.last().map_or(at, |last| at.max(last.at));
                if changes.last().is_some_and(|last| last.at == at) {
                    changes.pop();
                }
                if changes
                    .last()
                    .is_none_or(|last| last.symbol != chord.symbol)
                {
                    changes.push(Change {
                        at,
                        length: Ticks::ZERO,
                        symbol: chord.symbol,
                        played_bar: index,
                    });
                }
            }
        }
        changes.retain(|change| change.at < playing.length);
        let mut end = playing.length;
        for change in changes.iter_mut().rev() {
            change.length = end - change.at;
            end = change.at;
        }
        Self(changes)
    }

    /// The changes in order of time.
    pub fn as_slice(&self) -> &[Change] {
        &self.0
    }

    /// The index of the change that holds at a time; `None` before the first.
    pub fn index_at(&self, at: Ticks) -> Option<usize> {
        self.0
            .partition_point(|change| change.at <= at)
            .checked_sub(1)
    }

    /// What holds at a time. Before the first change nothing does the first time through (`again` false), and when the
    /// tune comes round again, the last chord of the time before.
    pub fn at(&self, at: Ticks, again: bool) -> Option<&Change> {
        match self.index_at(at) {
            Some(index) => self.0.get(index),
            None if again => self.0.last(),
            None => None,
        }
    }

    /// The next change after a time, within this time through.
    pub fn next(&self, at: Ticks) -> Option<&Change> {
        self.0.get(self.0.partition_point(|change| change.at <= at))
    }

    /// Each different symbol in the order in which it first comes: the chords to know before one starts.
    pub fn symbols(&self) -> Vec<Symbol> {
        let mut symbols = Vec::new();
        for change in &self.0 {
            if !symbols.contains(&change.symbol) {
                symbols.push(change.symbol);
            }
        }
        symbols
    }
}
