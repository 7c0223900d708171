//! Which chord sounds when.

use crate::chart::{Changes, Playing, Ticks, Tune};
use crate::theory::{Chord, Key, Quality, Symbol};

/// A chord and the time that it holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    pub(super) from: Ticks,
    pub(super) to: Ticks,
    pub(super) chord: Chord,
}

/// The chords of one time through, in order of time; where the chart says N.C. there is none.
#[derive(Debug, Clone, Default)]
pub(super) struct Harmony(Vec<Span>);

impl Harmony {
    /// The chords of a tune. Before its first one the tonic is played (common practice: nine tunes of ten begin on it). A
    /// tune without any has no harmony: chords that nobody wrote would quarrel with the melody.
    pub(super) fn of(tune: &Tune, playing: &Playing) -> Self {
        let changes = Changes::of(tune, playing);
        let mut spans = Vec::with_capacity(changes.as_slice().len() + 1);
        if let Some(first) = changes.as_slice().first()
            && first.at > Ticks::ZERO
        {
            spans.push(Span {
                from: Ticks::ZERO,
                to: first.at,
                chord: tonic(tune.key),
            });
        }
        for change in changes.as_slice() {
            let Symbol::Chord(chord) = change.symbol else {
                continue;
            };
            match spans.last_mut() {
                // The tonic that was played before it was written.
                Some(last) if last.to == change.at && last.chord == chord => last.to = change.end(),
                _ => spans.push(Span {
                    from: change.at,
                    to: change.end(),
                    chord,
                }),
            }
        }
        Self(spans)
    }

    /// The chords of a time through of this length, and then from `at` on those from `from` on once more; until then the
    /// last one goes on.
    pub(super) fn with_again(mut self, length: Ticks, from: Ticks, at: Ticks) -> Self {
        let again: Vec<Span> = self
            .0
            .iter()
            .filter(|span| span.to > from)
            .map(|span| Span {
                from: at + (span.from.max(from) - from),
                to: at + (span.to - from),
                ..*span
            })
            .collect();
        if let Some(last) = self.0.last_mut().filter(|last| last.to == length) {
            last.to = at;
        }
        self.0.extend(again);
        self
    }

    /// What sounds at a time.
    pub(super) fn at(&self, at: Ticks) -> Option<Span> {
        let after = self.0.partition_point(|span| span.from <= at);
        let span = self.0[after.checked_sub(1)?];
        (at < span.to).then_some(span)
    }

    /// Chords that begin after one time and before another.
    pub(super) fn between(&self, after: Ticks, before: Ticks) -> impl Iterator<Item = Span> + '_ {
        let first = self.0.partition_point(|span| span.from <= after);
        self.0[first..]
            .iter()
            .copied()
            .take_while(move |span| span.from < before)
    }
}

/// The triad on the tonic.
fn tonic(key: Key) -> Chord {
    let minor = key.mode.is_minor();
    let quality = if minor {
        Quality::MINOR
    } else {
        Quality::MAJOR
    };
    Chord::new(key.tonic, quality)
}
