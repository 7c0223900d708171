//! Pickups, and the metre that each bar stands in.

use std::collections::HashMap;

use super::metre::Metre;
use super::strum::counts_notes;
use super::time::Ticks;
use super::tune::{Part, Tune};

impl Tune {
    /// The metre of each written bar. In a tune that counts the notes of its metre, a longer bar of the same notes is
    /// counted alike: 6/4 among bars of 4/4 has six beats, not two of three notes.
    pub fn metres(&self) -> Vec<Metre> {
        let mut metre = self.metre;
        let mut change = |new: Option<Metre>| {
            metre = new.map_or(metre, |new| self.as_counted(new));
            metre
        };
        self.bars.iter().map(|bar| change(bar.metre)).collect()
    }

    fn as_counted(&self, metre: Metre) -> Metre {
        let plain = metre.groups[0] == 0 && metre.is_compound() && metre.unit == self.metre.unit;
        let notes = usize::from(metre.count);
        if plain && !counts_notes(self.metre) && notes <= metre.groups.len() {
            let mut groups = [0; 6];
            groups[..notes].fill(1);
            return Metre { groups, ..metre };
        }
        metre
    }

    /// The metre that the hand feels in each written bar: a metre that holds for fewer than four bars is a crooked bar or
    /// two, in which the metre before goes on, as long as their beats are the same note. A metre that more than a quarter of
    /// the bars have is no slip.
    pub fn metres_felt(&self) -> Vec<Metre> {
        let mut felt = self.metres();
        let mut bars: HashMap<Metre, usize> = HashMap::new();
        for &metre in &felt {
            *bars.entry(metre).or_default() += 1;
        }
        let mut start = 0;
        while let Some(&metre) = felt.get(start) {
            let run = felt[start..].iter().take_while(|&&other| other == metre);
            let end = start + run.count();
            if let Some(&before) = start.checked_sub(1).and_then(|last| felt.get(last)) {
                let alike = before.unit == metre.unit
                    && before.count > 0
                    && counts_notes(before) == counts_notes(metre);
                let rare = bars.get(&metre).is_some_and(|bars| bars * 4 <= felt.len());
                if end - start < 4 && rare && alike {
                    felt[start..end].fill(before);
                }
            }
            start = end;
        }
        felt
    }

    /// Which written bars are pickups: short bars at the start of the tune and, where they fill a bar together with
    /// the short bar before them or are no more than half a bar, at the start of a section. A bar as short as the one
    /// after it is a bar of a crooked tune.
    pub(super) fn pickups(&self, parts: &[Part]) -> Vec<bool> {
        let sounding = self.bars.iter().position(|bar| bar.length > Ticks::ZERO);
        let mut pickups: Vec<bool> = Vec::with_capacity(self.bars.len());
        for (i, (bar, metre)) in self.bars.iter().zip(self.metres()).enumerate() {
            let before = i.checked_sub(1).map(|i| &self.bars[i]);
            let first = Some(i) == sounding;
            let section = first
                || bar.repeat_start
                || before.is_some_and(|b| {
                    b.repeat_end > 0 || b.section_end || b.fine || b.jump.is_some()
                })
                || parts.binary_search_by_key(&i, |p| p.first_bar).is_ok();
            let short = bar.length > Ticks::ZERO && bar.length < metre.bar();
            let next = self.bars.get(i + 1);
            let alone = next.is_some_and(|next| next.length != bar.length);
            let fits = first
                || bar.length * 2 <= metre.bar()
                || before.is_some_and(|b| b.length + bar.length == metre.bar());
            pickups.push(section && short && alone && fits && bar.ending.is_empty());
        }
        pickups
    }

    /// How long the pickup is that the tune begins with; zero where there is none.
    pub fn pickup(&self) -> Ticks {
        self.first_pickup()
            .map_or(Ticks::ZERO, |(length, _)| length)
    }

    /// Where the first bar begins in its metre: zero, or how much of a full bar is missing before a pickup. A count-in
    /// is one full bar and then this much.
    pub fn first_offset(&self) -> Ticks {
        self.first_pickup()
            .map_or(Ticks::ZERO, |(length, metre)| metre.bar() - length)
    }

    /// The length of the first bar that sounds and its metre, where it is a pickup.
    fn first_pickup(&self) -> Option<(Ticks, Metre)> {
        let first = self.bars.iter().position(|bar| bar.length > Ticks::ZERO)?;
        let pickup = self.pickups(&self.parts_or_derived())[first];
        pickup.then(|| (self.bars[first].length, self.metres()[first]))
    }
}
