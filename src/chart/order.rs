//! The order in which the bars of a tune are played.

use std::collections::HashMap;
use std::ops::Range;

use super::metre::Metre;
use super::section::{Section, sections};
use super::time::Ticks;
use super::tune::{Jump, Part, Tune};

/// The most bars that are played in one time through; a tune that asks for more is cut there.
pub const MAX_PLAYED: usize = 20_000;

/// A bar as it comes along in playing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlayedBar {
    /// Index in [`Tune::bars`].
    pub written: usize,
    /// Start, from the start of the tune.
    pub start: Ticks,
    /// Its length.
    pub length: Ticks,
    /// The metre it stands in.
    pub metre: Metre,
    /// Where in a full bar of the metre it begins: zero but for a pickup, which ends where a full bar would.
    pub offset: Ticks,
    /// It leads into the bar after it.
    pub pickup: bool,
    /// Which bar of its part it is as a player counts, from 1; a pickup does not count, and has the number of the bar
    /// before it (0 at the start of a part).
    pub number: u16,
    /// Index in [`Tune::parts_or_derived`].
    pub part: Option<usize>,
    /// How often a part of this name has begun in this time through: 1 in A1, 2 in A2.
    pub part_pass: u8,
    /// Which pass of its repeated section, from 1.
    pub pass: u8,
}

impl PlayedBar {
    /// Where it ends, from the start of the tune.
    pub fn end(&self) -> Ticks {
        self.start + self.length
    }
}

/// One time through a tune.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Playing {
    /// The bars in playing order.
    pub bars: Vec<PlayedBar>,
    /// Length of it all.
    pub length: Ticks,
    /// The tune asks for more than [`MAX_PLAYED`] bars, and the rest is left out.
    pub cut: bool,
}

impl Playing {
    /// The index of the bar that sounds at a time from the start; `None` before the start and from the end on.
    pub fn bar_at(&self, at: Ticks) -> Option<usize> {
        let after = self.bars.partition_point(|bar| bar.start <= at);
        let index = after.checked_sub(1)?;
        (at < self.length).then_some(index)
    }

    /// Felt beats from one time to another, with fractions: the beats left until a change.
    pub fn beats(&self, from: Ticks, to: Ticks) -> f64 {
        let first = self
            .bars
            .partition_point(|bar| bar.start <= from)
            .saturating_sub(1);
        let inside = self.bars[first..].iter().take_while(|bar| bar.start < to);
        inside
            .map(|bar| {
                let (from, to) = (from.max(bar.start), to.min(bar.end()));
                let place = |time: Ticks| bar.metre.beats_before(bar.offset + (time - bar.start));
                if to > from {
                    place(to) - place(from)
                } else {
                    0.0
                }
            })
            .sum()
    }

    /// The bars of the run through a part that bar `index` belongs to.
    pub fn run(&self, index: usize) -> Range<usize> {
        let Some(bar) = self.bars.get(index) else {
            return 0..0;
        };
        let same = |other: &PlayedBar| other.part == bar.part && other.part_pass == bar.part_pass;
        let start = self.bars[..index].iter().rposition(|b| !same(b));
        let end = self.bars[index..].iter().position(|b| !same(b));
        start.map_or(0, |i| i + 1)..end.map_or(self.bars.len(), |i| index + i)
    }

    /// How many bars a player counts in the run through a part that bar `index` belongs to.
    pub fn count(&self, index: usize) -> u16 {
        let run = self.run(index);
        self.bars[run].last().map_or(0, |bar| bar.number)
    }

    /// The playing of a written bar that is nearest to where one is: the next one from `from` on, or else the last
    /// one before.
    pub fn find(&self, written: usize, from: usize) -> Option<usize> {
        let from = from.min(self.bars.len());
        let is = |bar: &PlayedBar| bar.written == written;
        let next = self.bars[from..].iter().position(is).map(|i| from + i);
        next.or_else(|| self.bars[..from].iter().rposition(is))
    }
}

/// A written bar, the pass of its section, and the part it is played in.
#[derive(Clone, Copy)]
struct Step {
    written: usize,
    pass: u8,
    part: Option<usize>,
}

impl Tune {
    /// One time through the tune.
    ///
    /// - Repeats and endings as [ABC 2.1, 4.8 to 4.10](https://abcnotation.com/wiki/abc:standard:v2.1) has them.
    /// - A form ([`Tune::form`]) says which parts are played. Where it names a part in a row as often as the part's own
    ///   repeat sign plays it (`AABB` over repeated sections; `P:A4.B4` in ABC 2.1, 4.10), its letters count passes.
    ///   A form says everything: signs such as D.C. are not followed beside it.
    /// - D.C. and D.S. are followed once, after the last pass of their section; on the way back repeats are not taken
    ///   and last endings are played, up to the fine or the coda (common practice).
    ///
    /// Always ends, whatever the signs say.
    pub fn playing(&self) -> Playing {
        let parts = self.parts_or_derived();
        let mut steps = self.steps_by_form(&parts);
        if steps.is_empty() {
            steps = self.steps_as_written(&parts);
        }
        let cut = steps.len() > MAX_PLAYED;
        steps.truncate(MAX_PLAYED);
        self.counted(&steps, &parts, cut)
    }

    fn steps_as_written(&self, parts: &[Part]) -> Vec<Step> {
        // Parts that the tune does not name come from the sections, and say nothing about them.
        let starts: Vec<_> = self.parts.iter().map(|part| part.first_bar).collect();
        let starts = if starts.is_sorted() { starts } else { vec![] };
        let sections = sections(&self.bars, 0..self.bars.len(), &starts);
        let mut steps = Vec::new();
        for section in &sections {
            push_passes(&mut steps, section, 1..=section.times, None);
        }
        self.follow_jump(&sections, &mut steps);
        for step in &mut steps {
            let after = parts.partition_point(|part| part.first_bar <= step.written);
            step.part = after.checked_sub(1);
        }
        steps
    }

    fn follow_jump(&self, sections: &[Section], steps: &mut Vec<Step>) {
        let jumps = |step: &Step| self.bars[step.written].jump.is_some();
        let Some(from) = steps.iter().find(|step| jumps(step)).map(|s| s.written) else {
            return;
        };
        // A section that is repeated is repeated first.
        let Some(last) = steps.iter().rposition(|step| step.written == from) else {
            return;
        };
        let (target, to_coda) = match self.bars[from].jump {
            Some(Jump::DalSegno { to_coda }) => {
                let segno = self.bars[..=from].iter().rposition(|bar| bar.segno);
                (segno.unwrap_or(0), to_coda)
            }
            Some(Jump::DaCapo { to_coda }) => (0, to_coda),
            None => return,
        };
        steps.truncate(last + 1);
        let mut back = Vec::new();
        for section in sections {
            push_passes(&mut back, section, section.times..=section.times, None);
        }
        let coda = self.bars.iter().rposition(|bar| bar.coda);
        let mut ahead = to_coda;
        let mut i = back.partition_point(|step| step.written < target);
        while let Some(&step) = back.get(i) {
            let bar = &self.bars[step.written];
            if let Some(coda) = coda
                && ahead
                && bar.coda
            {
                ahead = false;
                i = back.partition_point(|step| step.written < coda);
                continue;
            }
            steps.push(step);
            if bar.fine && !ahead {
                break;
            }
            i += 1;
        }
    }

    fn steps_by_form(&self, parts: &[Part]) -> Vec<Step> {
        let order = self.form_order(parts);
        let Some(&first) = order.iter().min() else {
            return vec![];
        };
        let in_part: Vec<_> = (0..parts.len())
            .map(|part| {
                let end = parts.get(part + 1).map_or(self.bars.len(), |p| p.first_bar);
                sections(&self.bars, parts[part].first_bar..end, &[])
            })
            .collect();
        let repeat = |part: usize| single_repeat(&in_part[part]);
        let runs: Vec<&[usize]> = order.chunk_by(|a, b| a == b).collect();
        let letters_count_passes = runs
            .iter()
            .any(|run| repeat(run[0]).is_some_and(|times| run.len() >= usize::from(times)));

        let mut steps = Vec::new();
        if first == 0 {
            // What stands before the first part leads into it.
            for section in sections(&self.bars, 0..parts[0].first_bar, &[]) {
                push_passes(&mut steps, &section, 1..=section.times, None);
            }
        }
        for run in runs {
            let times = repeat(run[0]).filter(|_| letters_count_passes);
            for (i, &part) in run.iter().enumerate() {
                for section in &in_part[part] {
                    let passes = match times {
                        None => 1..=section.times,
                        Some(times) => {
                            let turn = u8::try_from(i % usize::from(times)).unwrap_or(u8::MAX) + 1;
                            let turn = if i + 1 == run.len() { times } else { turn };
                            let pass = turn.min(section.times);
                            pass..=pass
                        }
                    };
                    push_passes(&mut steps, section, passes, Some(part));
                }
                if steps.len() > MAX_PLAYED {
                    return steps;
                }
            }
        }
        steps
    }

    /// The names of the parts in the order in which they are played, such as `AABB`: with spaces where a name is longer
    /// than a letter, and empty where there are no parts.
    pub fn form_played(&self, playing: &Playing) -> String {
        let parts = self.parts_or_derived();
        let mut names = Vec::new();
        let mut bar = 0;
        while let Some(played) = playing.bars.get(bar) {
            let part = played.part.and_then(|part| parts.get(part));
            names.extend(part.map(|part| part.label.as_str()));
            bar = playing.run(bar).end.max(bar + 1);
        }
        let letters = names.iter().all(|name| name.chars().count() == 1);
        names.join(if letters { "" } else { " " })
    }

    /// The parts that the form names, as indices; names it does not know are left out. A name that several parts bear
    /// is the first of them, unless the form just lists the parts as they are written.
    fn form_order(&self, parts: &[Part]) -> Vec<usize> {
        if self.parts.is_empty() {
            return vec![]; // letters of our own making are not what the form means
        }
        if parts.iter().map(|part| &part.label).eq(&self.form) {
            return (0..parts.len()).collect();
        }
        let mut by_label = HashMap::new();
        for (i, part) in parts.iter().enumerate().rev() {
            by_label.insert(part.label.as_str(), i);
        }
        let form = self.form.iter().take(MAX_PLAYED);
        form.filter_map(|label| by_label.get(label.as_str()).copied())
            .collect()
    }

    fn counted(&self, steps: &[Step], parts: &[Part], cut: bool) -> Playing {
        let (metres, pickups) = (self.metres(), self.pickups(parts));
        let mut bars: Vec<PlayedBar> = Vec::with_capacity(steps.len());
        let mut begun: HashMap<&str, u8> = HashMap::new();
        let mut at = Ticks::ZERO;
        for (i, step) in steps.iter().enumerate() {
            let before = i.checked_sub(1).map(|i| steps[i]);
            let last = bars.last().filter(|bar| bar.part == step.part);
            let (mut number, mut part_pass) =
                last.map_or((0, 1), |bar| (bar.number, bar.part_pass));
            if let Some(part) = step.part {
                let entered = before.is_none_or(|b| b.part != step.part);
                let again = before.is_some_and(|b| step.written <= b.written);
                let lead = pickups[parts[part].first_bar..].iter();
                let first_full = parts[part].first_bar + lead.take_while(|&&p| p).count();
                if entered || (again && step.written <= first_full) {
                    let count = begun.entry(&parts[part].label).or_insert(0);
                    *count = count.saturating_add(1);
                    (number, part_pass) = (0, *count);
                }
            }
            let (metre, pickup) = (metres[step.written], pickups[step.written]);
            let length = self.bars[step.written].length.max(Ticks::ZERO);
            if !pickup && length > Ticks::ZERO {
                number = number.saturating_add(1);
            }
            let offset = if pickup {
                metre.bar() - length
            } else {
                Ticks::ZERO
            };
            bars.push(PlayedBar {
                written: step.written,
                start: at,
                length,
                metre,
                offset,
                pickup,
                number,
                part: step.part,
                part_pass,
                pass: step.pass,
            });
            at += length;
        }
        Playing {
            bars,
            length: at,
            cut,
        }
    }
}

/// How often the repeated section is played, where there is just one.
fn single_repeat(sections: &[Section]) -> Option<u8> {
    let mut repeated = sections.iter().filter(|section| section.times > 1);
    let times = repeated.next()?.times;
    repeated.next().is_none().then_some(times)
}

fn push_passes(
    steps: &mut Vec<Step>,
    section: &Section,
    passes: std::ops::RangeInclusive<u8>,
    part: Option<usize>,
) {
    for pass in passes {
        if steps.len() > MAX_PLAYED {
            return;
        }
        let bars = section.pass(pass);
        steps.extend(bars.map(|written| Step {
            written,
            pass,
            part,
        }));
    }
}
