//! Sections: stretches of bars that are repeated as one, and their numbered endings.

use std::ops::Range;

use super::tune::Bar;

/// Bars that are played once or several times before the next begin.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Section {
    /// Its bars, endings and all.
    pub(super) bars: Range<usize>,
    /// How often it is played, at least once.
    pub(super) times: u8,
    endings: Vec<Ending>,
    /// The part before the first ending is itself closed by a repeat sign: a pass without an ending goes no further.
    bare: bool,
}

#[derive(Debug, Clone, PartialEq, Eq)]
struct Ending {
    bars: Range<usize>,
    passes: Vec<u8>,
}

impl Section {
    /// The bars of one pass in playing order.
    pub(super) fn pass(&self, pass: u8) -> impl Iterator<Item = usize> + '_ {
        let chosen = self.ending(pass);
        let body = self.endings.first().map_or(self.bars.end, |e| e.bars.start);
        (self.bars.start..body).chain(chosen.map_or(0..0, |e| e.bars.clone()))
    }

    /// The ending of a pass. A pass that none names takes the one before it if later ones follow (`1` and `3` written,
    /// the second pass ends like the first), and otherwise none: the bars after the section are its ending.
    fn ending(&self, pass: u8) -> Option<&Ending> {
        let named = self.endings.iter().find(|e| e.passes.contains(&pass));
        if named.is_some() || self.bare {
            return named;
        }
        let all = || self.endings.iter().flat_map(|e| e.passes.iter().copied());
        if all().all(|p| p < pass) {
            return None;
        }
        let before = all().filter(|&p| p < pass).max()?;
        self.endings.iter().find(|e| e.passes.contains(&before))
    }
}

/// Cuts `range` of the bars into sections, in order and without gaps.
///
/// A repeat without a start sign goes back to the latest double bar or end of a repeat, or to the beginning (ABC 2.1,
/// 4.8), or to where a part begins (`part_starts`, ascending). Endings close as in ABC 2.1, 4.10; a last ending that
/// nothing closes before the next repeat is taken to be as long as the first one.
pub(super) fn sections(bars: &[Bar], range: Range<usize>, part_starts: &[usize]) -> Vec<Section> {
    let range = range.start.min(bars.len())..range.end.min(bars.len());
    let mut cutter = Cutter::new(range.start);
    for i in range.clone() {
        let bar = &bars[i];
        cutter.before(i, bar, part_starts.binary_search(&i).is_ok());
        cutter.after(i, bar);
    }
    cutter.close(range.end);
    cutter.done
}

struct Cutter {
    done: Vec<Section>,
    start: usize,
    /// A start sign stands at the start.
    signed: bool,
    times: u8,
    endings: Vec<Ending>,
    /// The last ending goes on.
    open: bool,
    /// The section ends here unless another ending follows.
    ended: bool,
    bare: bool,
}

impl Cutter {
    fn new(start: usize) -> Self {
        Self {
            done: Vec::new(),
            start,
            signed: false,
            times: 1,
            endings: Vec::new(),
            open: false,
            ended: false,
            bare: false,
        }
    }

    fn before(&mut self, i: usize, bar: &Bar, part_start: bool) {
        let begins = bar.ending.iter().any(|&pass| pass > 0);
        let first = bar.ending.contains(&1);
        let continues = begins && !first && (self.ended || !self.endings.is_empty());
        if begins && !continues && self.open {
            self.close_overlong(i, 0);
        }
        let parted = part_start && (!self.signed || self.ended || self.open);
        let regrouped = begins && !continues && !self.endings.is_empty();
        if i > self.start
            && (parted || regrouped || (!continues && (self.ended || bar.repeat_start)))
        {
            self.close(i);
        }
        if i == self.start && bar.repeat_start {
            self.signed = true;
        }
        if begins {
            self.end_ending(i);
            if self.endings.is_empty() {
                self.bare = self.ended;
            }
            self.endings.push(Ending {
                bars: i..i + 1,
                passes: bar.ending.clone(),
            });
            self.open = true;
            self.ended = false;
        }
    }

    fn after(&mut self, i: usize, bar: &Bar) {
        if bar.repeat_end > 0 {
            // More than twice the first ending: the repeat sign is that of a section of its own.
            self.close_overlong(i + 1, 1);
            self.times = self.times.max(bar.repeat_end);
        }
        if bar.repeat_end > 0 || (bar.section_end && (self.open || !self.signed)) {
            self.end_ending(i + 1);
            self.ended = true;
        }
    }

    /// Closes the section after a last ending that has run on to `end`, where it is longer than the first ending by
    /// more than `spare` times.
    fn close_overlong(&mut self, end: usize, spare: usize) {
        let [first, .., last] = self.endings.as_slice() else {
            return;
        };
        let (usual, start) = (first.bars.len(), last.bars.start);
        if self.open && end - start > usual * (1 + spare) {
            self.end_ending(start + usual);
            self.close(start + usual);
        }
    }

    fn end_ending(&mut self, end: usize) {
        if self.open
            && let Some(ending) = self.endings.last_mut()
        {
            ending.bars.end = end;
        }
        self.open = false;
    }

    fn close(&mut self, end: usize) {
        self.end_ending(end);
        let named = self.endings.iter().flat_map(|e| &e.passes).max();
        let section = Section {
            bars: self.start..end,
            times: self.times.max(named.copied().unwrap_or(1)),
            endings: std::mem::take(&mut self.endings),
            bare: self.bare,
        };
        let done = std::mem::take(&mut self.done);
        *self = Self::new(end);
        self.done = done;
        if !section.bars.is_empty() {
            self.done.push(section);
        }
    }
}
