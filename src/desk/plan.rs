//! What the band plays of the tune on the stand: style, ending, loop and ramp.

use std::borrow::Cow;
use std::sync::Arc;

use crate::band::{BPM, Ending, Ramp, Score, ScoreOptions, Style, Voicings};
use crate::chart::{Pace, Playing, Tempo, TempoRange, Ticks, Tune};

use super::band::{BandAsk, Choosing, LoopView, RampView};
use super::map;

/// Per cent at each pass, to choose from.
const PERCENT: std::ops::RangeInclusive<u8> = 1..=20;

/// What the band plays of a tune, and the score of it once it was needed.
#[derive(Debug)]
pub(super) struct Plan {
    pub(super) fitting: &'static Style,
    pub(super) style: &'static Style,
    pub(super) ending: Ending,
    /// First and last bar of the loop in playing order.
    looped: Option<(usize, usize)>,
    /// Which bar of it is chosen next on the map.
    choosing: Option<Choosing>,
    /// A stretch that need not begin or end with a bar, in place of that.
    stretch: Option<(Ticks, Ticks)>,
    ramp: RampView,
    voicings: Voicings,
    score: Option<Arc<Score>>,
}

impl Plan {
    /// What suits a tune, which is to be played at a tempo. A ramp leads to the tempo at which it is danced, and by a
    /// quarter more where it is played as fast as that already.
    pub(super) fn new(tune: &Tune, tempo: Tempo) -> Self {
        let options = ScoreOptions::fitting(tune);
        let danced = TempoRange::fitting(tune.rhythm.as_ref(), tune.metre, Pace::Danced).middle();
        let danced = danced.counted_in(tempo.beat).bpm;
        let ceiling = if danced > tempo.bpm {
            danced
        } else {
            tempo.bpm * 1.25
        };
        Self {
            fitting: options.style,
            style: options.style,
            ending: options.ending,
            looped: None,
            choosing: None,
            stretch: None,
            ramp: RampView {
                on: false,
                percent: 3,
                ceiling: within_bpm(ceiling),
            },
            voicings: Voicings::default(),
            score: None,
        }
    }

    /// What is played has changed: its score is made anew when it is needed.
    pub(super) fn forget(&mut self) {
        self.score = None;
    }

    /// Whether there is a score of what is played now.
    pub(super) fn has_score(&self) -> bool {
        self.score.is_some()
    }

    /// The score of a tune; `tune` is asked for only where there is none.
    pub(super) fn score<'a>(
        &mut self,
        tune: impl FnOnce() -> Cow<'a, Tune>,
        playing: &Playing,
    ) -> Arc<Score> {
        let options = ScoreOptions {
            style: self.style,
            ending: self.ending,
        };
        let voicings = &mut self.voicings;
        let score = self
            .score
            .get_or_insert_with(|| Arc::new(Score::of(&tune(), playing, &options, voicings)));
        Arc::clone(score)
    }

    /// Changes what a wish changes; `bar` is the one that is played now.
    pub(super) fn ask(&mut self, ask: &BandAsk, playing: &Playing, bar: usize) {
        if matches!(
            ask,
            BandAsk::LoopPart | BandAsk::LoopFrom(_) | BandAsk::LoopTo(_) | BandAsk::NoLoop
        ) {
            self.stretch = None;
        }
        match ask {
            BandAsk::Style(id) => {
                self.style = Style::named(id).unwrap_or(self.style);
                self.forget();
            }
            BandAsk::Ending(ending) => {
                self.ending = *ending;
                self.forget();
            }
            BandAsk::LoopPart => self.looped = part(playing, bar),
            BandAsk::LoopFrom(by) => {
                let (from, to) = self.looped.unwrap_or((bar, bar));
                let from = step(playing, from, *by);
                self.looped = Some((from, to.max(from)));
            }
            BandAsk::LoopTo(by) => {
                let (from, to) = self.looped.unwrap_or((bar, bar));
                let to = step(playing, to, *by);
                self.looped = Some((from.min(to), to));
            }
            BandAsk::NoLoop => self.looped = None,
            BandAsk::ChooseBars(on) => self.choosing = on.then_some(Choosing::First),
            BandAsk::Ramp(on) => self.ramp.on = *on,
            BandAsk::RampPercent(by) => {
                let percent = i32::from(self.ramp.percent) + by;
                let percent = percent.clamp((*PERCENT.start()).into(), (*PERCENT.end()).into());
                self.ramp.percent = u8::try_from(percent).unwrap_or(self.ramp.percent);
            }
            #[allow(clippy::cast_precision_loss)] // a few beats a minute
            BandAsk::RampCeiling(by) => {
                self.ramp.ceiling = within_bpm(f32::from(self.ramp.ceiling) + *by as f32);
            }
            _ => {}
        }
    }

    /// From when to when the loop goes.
    pub(super) fn range(&self, playing: &Playing) -> Option<(Ticks, Ticks)> {
        if self.stretch.is_some() {
            return self.stretch;
        }
        let (from, to) = self.looped?;
        playing.passage(from, to)
    }

    /// Which bar of the loop is chosen next on the map.
    pub(super) fn choosing(&self) -> Option<Choosing> {
        self.choosing
    }

    /// A bar was touched on the map: the first of the loop, or, near it, the last.
    pub(super) fn choose(&mut self, playing: &Playing, bar: usize) {
        let Some(touched) = playing.bars.get(bar) else {
            return;
        };
        let from = match (self.choosing, self.looped) {
            (Some(Choosing::Last), Some((from, _))) => from,
            _ => {
                (self.looped, self.stretch) = (Some((bar, bar)), None);
                self.choosing = Some(Choosing::Last);
                return;
            }
        };
        // The map shows each bar once: of the times that it comes, the nearest is meant.
        let comes = (0..playing.bars.len())
            .filter(|&bar| playing.bars[bar].written == touched.written)
            .min_by_key(|bar| bar.abs_diff(from));
        let to = comes.unwrap_or(bar);
        (self.looped, self.stretch) = (Some((from.min(to), from.max(to))), None);
        self.choosing = None;
    }

    /// A part was touched: all of it.
    pub(super) fn choose_part(&mut self, playing: &Playing, chip: usize) {
        if let Some(run) = map::runs(playing).get(chip) {
            (self.looped, self.stretch) = (Some((run.2, run.3)), None);
            self.choosing = None;
        }
    }

    /// Plays a stretch of the time through again and again, wherever it begins and ends, or no more. On the map its bars
    /// are marked.
    pub(super) fn set_stretch(&mut self, playing: &Playing, stretch: Option<(Ticks, Ticks)>) {
        self.stretch = stretch;
        self.looped = stretch.and_then(|(start, end)| {
            Some((playing.bar_at(start)?, playing.bar_at(end - Ticks(1))?))
        });
    }

    pub(super) fn ramp(&self) -> Option<Ramp> {
        self.ramp.on.then(|| Ramp {
            percent: self.ramp.percent.into(),
            ceiling: self.ramp.ceiling.into(),
        })
    }

    pub(super) fn ramp_view(&self) -> RampView {
        self.ramp
    }

    /// Whether a played bar is in the loop.
    pub(super) fn loops(&self, bar: usize) -> bool {
        self.looped
            .is_some_and(|(from, to)| (from..=to).contains(&bar))
    }

    pub(super) fn loop_view(&self, tune: &Tune, playing: &Playing, bar: usize) -> Option<LoopView> {
        let (from, to) = self.looped?;
        let name = |bar: usize| {
            let number = playing.bars.get(bar).map_or(0, |bar| bar.number);
            format!("{} · {number}", map::part_name(tune, playing, bar))
        };
        Some(LoopView {
            from: name(from),
            to: name(to),
            part: part(playing, bar) == self.looped,
        })
    }
}

/// First and last bar of the part that a bar is in, in this pass.
fn part(playing: &Playing, bar: usize) -> Option<(usize, usize)> {
    let mut runs = map::runs(playing).into_iter();
    let run = runs.find(|run| run.2 <= bar && bar <= run.3)?;
    Some((run.2, run.3))
}

/// So many full bars on from a bar.
fn step(playing: &Playing, bar: usize, by: i32) -> usize {
    let full: Vec<usize> = (0..playing.bars.len())
        .filter(|&bar| !playing.bars[bar].pickup)
        .collect();
    // From a pickup, the next bar is the one that it leads into.
    let here = full.partition_point(|&full| full < bar);
    let on_full = full.get(here) == Some(&bar);
    let here = i64::try_from(here).unwrap_or(0) - i64::from(!on_full && by > 0);
    let there = usize::try_from(here + i64::from(by)).unwrap_or(0);
    full.get(there).or(full.last()).copied().unwrap_or(bar)
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 30 to 300
fn within_bpm(bpm: f32) -> u16 {
    bpm.round().clamp(*BPM.start(), *BPM.end()) as u16
}
