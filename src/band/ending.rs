//! How the last time through ends.

use std::ops::Range;

use crate::chart::{PlayedBar, Playing, Ticks, Tune};

use super::harmony::Harmony;
use super::score::{ScoreOptions, Tag};
use super::sheet::{Again, Sheet};

/// How a tune ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Ending {
    /// With its last bar, as written; the bass stays on the root.
    #[default]
    Plain,
    /// The last chord is struck once where it begins in the last bar, and held for a full bar.
    Held,
    /// The last line comes once more, and then its last chord is held.
    Tag,
}

impl Ending {
    /// All of them, in the order of a list to choose from.
    pub const ALL: [Self; 3] = [Self::Plain, Self::Held, Self::Tag];

    /// The name in commands and in the Fluent files (`ending-tag`).
    pub const fn id(self) -> &'static str {
        match self {
            Self::Plain => "plain",
            Self::Held => "held",
            Self::Tag => "tag",
        }
    }
}

/// Bars of a last line, as a player counts them.
const LINE: usize = 4;

/// The bars of the last time through.
pub(super) struct Closing {
    pub(super) playing: Playing,
    pub(super) tag: Option<Tag>,
    /// How much was added to the last bar before the tag: where a tune begins with a pickup its last bar is short, and is
    /// filled up so that the beat goes on.
    filled: Ticks,
}

impl Closing {
    pub(super) fn new(playing: &Playing, ending: Ending) -> Self {
        let mut closing = Self {
            playing: playing.clone(),
            tag: None,
            filled: Ticks::ZERO,
        };
        if let Some(bars) = last_line(playing).filter(|_| ending == Ending::Tag) {
            closing.add(bars, playing);
        }
        closing
    }

    fn add(&mut self, bars: Range<usize>, playing: &Playing) {
        let (list, length) = (&mut self.playing.bars, &mut self.playing.length);
        if let Some(last) = list.iter_mut().rev().find(|bar| bar.length > Ticks::ZERO) {
            let missing = last.metre.bar() - (last.offset + last.length);
            self.filled = missing.max(Ticks::ZERO);
            last.length += self.filled;
            *length += self.filled;
        }
        let at = *length;
        for bar in &playing.bars[bars.clone()] {
            let start = *length;
            list.push(PlayedBar {
                start,
                ..bar.clone()
            });
            *length += bar.length;
        }
        self.tag = Some(Tag { at, bars });
    }

    /// What leads into the tag while the last bar is filled up: the end of the bar before the line.
    fn lead(&self) -> Option<Again> {
        let tag = self.tag.as_ref()?;
        let before = self.playing.bars.get(tag.bars.start.checked_sub(1)?)?;
        (self.filled > Ticks::ZERO && self.filled < before.length).then(|| Again {
            from: before.end() - self.filled,
            to: before.end(),
            at: tag.at - self.filled,
        })
    }
}

/// The last four bars, pickups not counted; fewer where the last part has fewer.
fn last_line(playing: &Playing) -> Option<Range<usize>> {
    let last = playing.bars.len().checked_sub(1)?;
    let run = playing.run(last);
    let counted = |&i: &usize| !playing.bars[i].pickup && playing.bars[i].length > Ticks::ZERO;
    let first = run.rev().filter(counted).take(LINE).last()?;
    Some(first..playing.bars.len())
}

/// The sheet of the last time through.
pub(super) fn sheet<'a>(
    tune: &'a Tune,
    once: &Playing,
    closing: &'a Closing,
    options: &ScoreOptions,
) -> Sheet<'a> {
    let playing = &closing.playing;
    let mut sheet = Sheet::new(tune, playing, options.style);
    if let Some(tag) = &closing.tag
        && let Some(first) = once.bars.get(tag.bars.start)
    {
        // A chord that is held from the bar before the line is held there again.
        sheet.harmony = Harmony::of(tune, once).with_again(once.length, first.start, tag.at);
    }
    sheet.again = closing.lead();
    sheet.final_bar = sheet.bars.iter().rposition(|bar| bar.length > Ticks::ZERO);
    if let Some(last) = sheet.final_bar.map(|i| sheet.bars[i])
        && options.ending != Ending::Plain
    {
        let end = last.end() - Ticks(1);
        let chord = sheet.harmony.at(end).map_or(last.start, |span| span.from);
        let hold = chord.max(last.start);
        let bar = last.metre.bar_or_whole();
        sheet.hold = Some(hold);
        sheet.length = playing.length.max(hold + bar);
    }
    sheet
}
