//! The sheet that all players read from: one time through, bar by bar.

use std::collections::HashMap;

use crate::chart::{Metre, Playing, Ticks, Tune};
use crate::theory::Key;

use super::harmony::{Harmony, Span};
use super::line::{Hit, Line, Mark};
use super::style::{Pattern, Style};
use super::swing::Swing;

/// What a player does where a chord begins inside a bar.
#[derive(Debug, Clone, Copy)]
pub(super) enum OnChange {
    /// Waits for the next stroke of the line.
    Wait,
    /// Plays this, if the line has no stroke while the chord holds.
    Fill(Hit),
    /// Plays this, if the line has no stroke just there.
    Mark(Hit),
}

/// A bar as the players see it.
#[derive(Debug, Clone, Copy)]
pub(super) struct SheetBar {
    pub(super) start: Ticks,
    pub(super) length: Ticks,
    pub(super) offset: Ticks,
    /// The metre that is felt; see [`felt_metres`].
    pub(super) metre: Metre,
    pub(super) key: Key,
    pub(super) swing: Swing,
    /// It leads into another bar.
    pub(super) pickup: bool,
    /// It leads into the first full bar of the time through.
    pub(super) lead_in: bool,
    /// Its place among the bars of its part, from 1; see [`crate::chart::PlayedBar::number`].
    pub(super) number: u16,
    pattern: usize,
}

impl SheetBar {
    pub(super) fn end(&self) -> Ticks {
        self.start + self.length
    }

    /// A full bar of its metre.
    pub(super) fn is_full(&self) -> bool {
        self.length > Ticks::ZERO && self.length == self.metre.bar()
    }
}

/// The melody from one time to another, to be played again at a third.
#[derive(Debug, Clone, Copy)]
pub(super) struct Again {
    pub(super) from: Ticks,
    pub(super) to: Ticks,
    pub(super) at: Ticks,
}

/// One time through a tune.
pub(super) struct Sheet<'a> {
    pub(super) tune: &'a Tune,
    pub(super) playing: &'a Playing,
    pub(super) style: &'static Style,
    pub(super) harmony: Harmony,
    pub(super) bars: Vec<SheetBar>,
    patterns: Vec<Pattern>,
    /// How long it is, with what is held at the end.
    pub(super) length: Ticks,
    /// From here on one last chord is held.
    pub(super) hold: Option<Ticks>,
    /// The bar in which the tune is over.
    pub(super) final_bar: Option<usize>,
    /// A stretch of the melody that comes once more.
    pub(super) again: Option<Again>,
}

impl<'a> Sheet<'a> {
    pub(super) fn new(tune: &'a Tune, playing: &'a Playing, style: &'static Style) -> Self {
        let (metres, keys) = (felt_metres(tune), tune.keys());
        let mut patterns = Patterns::new(tune, style);
        let mut bars = Vec::with_capacity(playing.bars.len());
        let mut lead_in = true;
        for bar in &playing.bars {
            lead_in &= bar.pickup || bar.length <= Ticks::ZERO;
            let metre = metres.get(bar.written).copied().unwrap_or(bar.metre);
            bars.push(SheetBar {
                start: bar.start,
                length: bar.length,
                offset: bar.offset,
                metre,
                key: keys.get(bar.written).copied().unwrap_or(tune.key),
                swing: Swing::new(style.swing, metre),
                pickup: bar.pickup,
                lead_in,
                number: bar.number,
                pattern: patterns.at(bar.written, metre),
            });
        }
        Self {
            tune,
            playing,
            style,
            harmony: Harmony::of(tune, playing),
            bars,
            patterns: patterns.list,
            length: playing.length,
            hold: None,
            final_bar: None,
            again: None,
        }
    }

    pub(super) fn pattern(&self, bar: &SheetBar) -> &Pattern {
        &self.patterns[bar.pattern]
    }

    /// The strokes of a line in a bar, each with the time as written and the chord under it, and what marks the chords
    /// that begin inside the bar. Nothing is played where there is no chord, nor in what is held at the end.
    pub(super) fn strokes(
        &self,
        bar: &SheetBar,
        line: &Line,
        on_change: OnChange,
    ) -> Vec<(Ticks, Mark, Span)> {
        let held = self.hold.unwrap_or(Ticks(i64::MAX));
        let (start, end) = (bar.start, bar.end().min(held));
        let mut strokes: Vec<_> = line
            .in_bar(bar.length, bar.offset)
            .map(|(at, mark)| (start + at, mark))
            .filter(|&(at, _)| at < end)
            .filter_map(|(at, mark)| Some((at, mark, self.harmony.at(at)?)))
            .collect();
        for span in self.harmony.between(start, end) {
            let sounds = |at: Ticks| match on_change {
                OnChange::Mark(_) => at == span.from,
                _ => at >= span.from && at < span.to,
            };
            if let OnChange::Mark(hit) | OnChange::Fill(hit) = on_change
                && !strokes.iter().any(|&(at, ..)| sounds(at))
            {
                strokes.push((span.from, Mark::new(hit), span));
            }
        }
        strokes.sort_by_key(|&(at, ..)| at);
        strokes
    }

    /// The chord that is held at the end, and from when on.
    pub(super) fn held(&self) -> Option<(Ticks, Span)> {
        let at = self.hold?;
        Some((at, self.harmony.at(at)?))
    }

    /// When something written at a time within a bar is played.
    pub(super) fn swung(&self, bar: &SheetBar, at: Ticks) -> Ticks {
        bar.start + bar.swing.played(bar.offset + (at - bar.start)) - bar.offset
    }
}

/// The patterns that a tune needs, each made once.
struct Patterns<'a> {
    tune: &'a Tune,
    style: &'static Style,
    list: Vec<Pattern>,
    known: HashMap<(Metre, Option<usize>), usize>,
}

impl<'a> Patterns<'a> {
    fn new(tune: &'a Tune, style: &'static Style) -> Self {
        Self {
            tune,
            style,
            list: Vec::new(),
            known: HashMap::new(),
        }
    }

    fn at(&mut self, written: usize, metre: Metre) -> usize {
        // A strum may be that of a part.
        let strums = self.style.strums_as_the_tune_says();
        let parts = self.tune.parts.iter().map(|part| part.first_bar);
        let part = parts.filter(|&first| strums && first <= written).max();
        let (tune, style, list) = (self.tune, self.style, &mut self.list);
        *self.known.entry((metre, part)).or_insert_with(|| {
            let mut pattern = style.pattern(metre);
            if strums {
                let strum = tune.strum_at(written);
                if strum.fits(metre) {
                    pattern.guitar = Line::of_strum(&strum);
                }
            }
            list.push(pattern);
            list.len() - 1
        })
    }
}

/// The metre that is felt in each written bar. A single bar of another number of the same notes, such as 6/4 or 2/4
/// among bars of 4/4, is a bar of a crooked tune: the beat goes on, and nobody begins a jig for it. A metre that a
/// quarter of the bars have is no slip.
pub(super) fn felt_metres(tune: &Tune) -> Vec<Metre> {
    let written = tune.metres();
    let mut felt = written.clone();
    let mut bars: HashMap<Metre, usize> = HashMap::new();
    for &metre in &written {
        *bars.entry(metre).or_default() += 1;
    }
    for i in 1..written.len() {
        let (before, metre) = (felt[i - 1], written[i]);
        let alone = written.get(i + 1).is_none_or(|&after| after != metre);
        let rare = bars
            .get(&metre)
            .is_some_and(|&bars| bars * 4 <= written.len());
        let alike = metre.unit == before.unit && metre.groups[0] == 0 && before.count > 0;
        if metre != before && alone && rare && alike {
            felt[i] = before;
        }
    }
    felt
}
