//! The tune on the stand, in the key that was called.

use std::time::Duration;

use crate::chart::{
    Changes, Count, Direction, Metre, Pace, Playing, Slot, Stroke, Ticks, Tune, count_at,
};
use crate::theory::{Chord, Key, Symbol, Transposition, three_chords};

use super::ask::Ask;
use super::cards::{Hands, chord_names, style};
use super::follow::{Follow, Place};
use super::map;
use super::settings::Settings;
use super::stand::{
    ChordCard, ChordNames, FollowState, NextCard, Simplify, SlotView, StandView, StrumView,
};

/// The highest capo; above it there is hardly a neck left (common practice).
const MOST_CAPO: u8 = 9;

/// Times through when the tune does not say: the least that a circle plays (common practice: 3 to 8).
const TIMES: u32 = 3;

/// A tune on the stand.
#[derive(Debug)]
pub(super) struct OnStand {
    tune: Tune,
    playing: Playing,
    /// The changes as written.
    written: Changes,
    /// The changes in the called key, as simple as wanted: one for each written one.
    symbols: Vec<Symbol>,
    key: Key,
    names: ChordNames,
    simplify: Simplify,
    hands: Hands,
    follow: Follow,
}

impl OnStand {
    pub(super) fn new(tune: Tune, settings: &Settings) -> Self {
        let playing = tune.playing();
        let written = Changes::of(&tune, &playing);
        let times = tune.times_through.map_or(TIMES, u32::from);
        let mut stand = Self {
            symbols: Vec::new(),
            key: tune.key,
            names: ChordNames::default(),
            simplify: Simplify::default(),
            hands: Hands::new(settings, 0),
            follow: Follow::new(&playing, tune.tempo_or_fitting(Pace::SlowJam), times),
            tune,
            playing,
            written,
        };
        stand.change_chords();
        stand
    }

    /// The settings have changed: another instrument, other names.
    pub(super) fn set(&mut self, settings: &Settings) {
        self.hands = Hands::new(settings, self.hands.capo.fret);
    }

    pub(super) fn is_moving(&self, now: Duration) -> bool {
        self.follow.is_moving(&self.playing, now)
    }

    fn symbol_in_key(&self, symbol: Symbol) -> Symbol {
        let Symbol::Chord(chord) = symbol else {
            return symbol;
        };
        let chord = Transposition::between(self.tune.key, self.key).chord(chord);
        Symbol::Chord(match self.simplify {
            Simplify::Written => chord,
            Simplify::Triads => chord.triad(),
            Simplify::ThreeChords => three_chords(chord, self.key),
        })
    }

    fn change_chords(&mut self) {
        self.symbols = self
            .written
            .as_slice()
            .iter()
            .map(|change| self.symbol_in_key(change.symbol))
            .collect();
    }

    fn set_key(&mut self, key: Key) {
        self.key = key;
        self.change_chords();
    }

    /// What the player wishes of the tune on the stand. Wishes about other things are left alone.
    pub(super) fn ask(&mut self, ask: &Ask, settings: &Settings, now: Duration) {
        let (follow, playing) = (&mut self.follow, &self.playing);
        match *ask {
            Ask::NextBar => follow.next_bar(playing, now),
            Ask::BarBack => follow.bar_back(playing, now),
            Ask::Hold => follow.hold(playing, now),
            Ask::ThisIsOne => follow.this_is_one(playing, now),
            Ask::JumpTo(bar) => follow.jump(playing, now, bar),
            Ask::JumpToPart(chip) => {
                if let Some(run) = map::runs(playing).get(chip) {
                    follow.jump(playing, now, run.2);
                }
            }
            Ask::Clock(on) => follow.clock(playing, now, on),
            Ask::Faster(bpm) => {
                #[allow(clippy::cast_precision_loss)] // a few beats a minute
                let bpm = follow.tempo().bpm.round() + bpm as f32;
                follow.change_bpm(playing, now, bpm);
            }
            Ask::TapTempo => follow.tap(playing, now),
            Ask::Times(times) => follow.set_times(playing, now, times),
            Ask::LastTime(last) => follow.set_last(playing, now, last),
            Ask::KeyUp(semitones) => self.set_key(self.key.up(semitones)),
            Ask::KeyOn(tonic) => self.set_key(Key::new(tonic, self.key.mode)),
            Ask::WrittenKey => self.set_key(self.tune.key),
            Ask::Names(names) => self.names = names,
            Ask::Simpler(simplify) => {
                self.simplify = simplify;
                self.change_chords();
            }
            Ask::Capo(fret) => self.hands = Hands::new(settings, fret.min(MOST_CAPO)),
            Ask::OtherShape => {
                let place = self.follow.place(&self.playing, now);
                if let Some(Symbol::Chord(chord)) = self.now(place).map(|at| self.symbols[at]) {
                    self.hands.next_shape(chord);
                }
            }
            _ => {}
        }
    }

    /// The index of the change that holds at a place. Before the first one, that is the one to get ready for.
    fn now(&self, place: Place) -> Option<usize> {
        let again = place.time > 0;
        match self.written.index_at(place.at) {
            Some(at) => Some(at),
            None if again => self.written.as_slice().len().checked_sub(1),
            None => (!self.written.as_slice().is_empty()).then_some(0),
        }
    }

    /// The next change that is heard as one, and when it comes, counted from the start of this time through.
    fn next(&self, now: usize, place: Place) -> Option<(usize, Ticks)> {
        let changes = self.written.as_slice();
        let later = (0..changes.len())
            .filter(|&at| changes[at].at > place.at)
            .map(|at| (at, changes[at].at));
        let again = (0..changes.len()).map(|at| (at, self.playing.length + changes[at].at));
        let again = again.take_while(|_| !self.follow.is_last(place.time));
        later
            .chain(again)
            .find(|&(at, _)| self.symbols[at] != self.symbols[now])
    }

    /// When the chord now began to be heard, for the dots that count it down.
    fn since(&self, now: usize, place: Place) -> Ticks {
        let changes = self.written.as_slice();
        let same = (0..=now)
            .rev()
            .take_while(|&at| self.symbols[at] == self.symbols[now]);
        same.last()
            .map_or(Ticks::ZERO, |at| changes[at].at)
            .min(place.at)
    }

    /// What is to be seen at a moment.
    pub(super) fn view(&mut self, settings: &Settings, now: Duration) -> StandView {
        let style = style(settings);
        let place = self.follow.place(&self.playing, now);
        let chord_now = self.now(place);
        let (card, next, ring) = match chord_now {
            None => (
                self.hands.card(Symbol::NoChord, self.key.tonic, self.names),
                None,
                Vec::new(),
            ),
            Some(at) => (
                self.hands
                    .card(self.symbols[at], self.key.tonic, self.names),
                self.next_card(at, place),
                self.hands.ring(self.symbols[at]),
            ),
        };
        let names = self.names;
        let name = |symbol| match self.symbol_in_key(symbol) {
            Symbol::Chord(chord) => short_name(chord, self.key, names, style),
            Symbol::NoChord => "–".to_owned(),
        };
        let (map, line) = map::map(&self.tune, &self.playing, place, name);
        let bar = self.playing.bars.get(place.bar);
        let tempo = self.follow.tempo();
        StandView {
            title: self.tune.title.clone(),
            rhythm: self
                .tune
                .rhythm
                .as_ref()
                .map_or(String::new(), |rhythm| rhythm.id().to_owned()),
            key: self.key.tonic.in_style(style),
            mode: self.key.mode.id().to_owned(),
            written_key: (self.key != self.tune.key).then(|| self.tune.key.tonic.in_style(style)),
            keys: (0..12)
                .map(|up| (self.tune.key.up(up).tonic.in_style(style), up))
                .collect(),
            names,
            simplify: self.simplify,
            capo: self.hands.capo.fret,
            time: place.time + 1,
            times: self.follow.times(),
            last_time: self.follow.is_last(place.time),
            tempo: (whole_bpm(tempo.bpm), part_of_whole(tempo.beat)),
            follow: self.follow_state(place),
            now: card,
            next,
            strum: self.strum(place),
            ring,
            form: map::form(&self.tune, &self.playing, place),
            has_words: self
                .tune
                .bars
                .iter()
                .flat_map(|bar| &bar.notes)
                .any(|note| !note.syllables.is_empty()),
            words: self.words(&map, line, place),
            map,
            line,
            bar: (
                bar.map_or(0, |bar| u32::from(bar.number)),
                u32::from(self.playing.count(place.bar)),
            ),
        }
    }

    fn next_card(&mut self, now: usize, place: Place) -> Option<NextCard> {
        let (at, when) = self.next(now, place)?;
        let chord: ChordCard = self
            .hands
            .card(self.symbols[at], self.key.tonic, self.names);
        let from = place.at;
        let bar = self.playing.bars.get(place.bar)?;
        let beats_left = map::beats_between(&self.playing, from, when);
        let in_bar = u32::try_from(bar.metre.beats().len().max(1)).unwrap_or(1);
        Some(NextCard {
            chord,
            beats_left,
            beats: map::beats_between(&self.playing, self.since(now, place), when).max(beats_left),
            bars_left: beats_left / in_bar,
        })
    }

    fn follow_state(&self, place: Place) -> FollowState {
        if place.ended {
            return FollowState::Ended;
        }
        if let Some(counted) = place.counted
            && let Some(bar) = self.playing.bars.get(place.bar)
        {
            let beats = bar.metre.beats();
            let beat = beats.first().copied().unwrap_or(Ticks::QUARTER);
            let (count, _) = counted.div_rem(beat);
            let in_bar = i64::try_from(beats.len().max(1)).unwrap_or(1);
            let number = |value: i64| u32::try_from(value).unwrap_or(0) + 1;
            return FollowState::CountIn {
                beat: number(count % in_bar),
                bar: number(count / in_bar),
            };
        }
        if self.follow.is_held() {
            FollowState::Held
        } else if self.follow.by_clock() {
            FollowState::ByClock
        } else if self.follow.is_waiting() {
            FollowState::Waiting
        } else {
            FollowState::ByHand
        }
    }

    fn strum(&self, place: Place) -> StrumView {
        let still = self.follow.is_waiting() || place.counted.is_some();
        // Before it begins, the player looks for the strum of a whole bar, not for what fits into the pickup.
        let ahead = self.playing.bars.iter().skip(place.bar);
        let Some(bar) = ahead
            .clone()
            .find(|bar| !(still && bar.pickup))
            .or(ahead.clone().next())
        else {
            return StrumView {
                name: String::new(),
                slots: Vec::new(),
                now: None,
            };
        };
        let pattern = self.tune.strum_at(bar.written);
        let into = place.at - bar.start;
        let slots: Vec<_> = pattern.for_bar(bar.length, bar.offset).collect();
        let moves = !still && !place.ended;
        let current = moves
            .then(|| slots.iter().rposition(|&(at, ..)| at <= into))
            .flatten();
        let slots = slots
            .iter()
            .map(|&(at, _, slot)| slot_view(slot, bar.metre, bar.offset + at));
        StrumView {
            slots: slots.collect(),
            now: current,
            name: pattern.name,
        }
    }

    /// The words under the line of the map where the bar now stands.
    fn words(&self, map: &[super::stand::MapLine], line: usize, place: Place) -> String {
        let bars = map
            .get(line)
            .map(|line| line.bars.as_slice())
            .unwrap_or_default();
        let written = bars
            .iter()
            .filter_map(|bar| self.playing.bars.get(bar.played))
            .map(|bar| bar.written);
        map::words(
            &self.tune,
            written,
            usize::try_from(place.time).unwrap_or(0),
        )
    }
}

fn slot_view(slot: Slot, metre: Metre, offset: Ticks) -> SlotView {
    let count = count_at(metre, offset);
    SlotView {
        count: match count {
            Count::Number(number) => number.to_string(),
            Count::And => "&".to_owned(),
            Count::E => "e".to_owned(),
            Count::A => "a".to_owned(),
            Count::Nothing => String::new(),
        },
        on_beat: starts_a_beat(metre, offset),
        up: slot.direction == Direction::Up,
        silent: slot.stroke == Stroke::Silent,
        bass: slot.stroke == Stroke::Bass,
        chop: slot.stroke == Stroke::Chop,
        accent: slot.accent,
    }
}

fn starts_a_beat(metre: Metre, offset: Ticks) -> bool {
    let mut start = Ticks::ZERO;
    metre.beats().into_iter().any(|beat| {
        let here = start == offset;
        start += beat;
        here
    })
}

/// What the map has room for: letters unless numbers are all that is wanted.
fn short_name(
    chord: Chord,
    key: Key,
    names: ChordNames,
    style: crate::theory::NoteStyle,
) -> String {
    let names = if names == ChordNames::Both {
        ChordNames::Letters
    } else {
        names
    };
    chord_names(chord, key.tonic, names, style).0
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 30 to 300
fn whole_bpm(bpm: f32) -> u32 {
    bpm.round() as u32
}

/// A length as a fraction of a whole note.
fn part_of_whole(length: Ticks) -> (u32, u32) {
    let (count, unit) = length.fraction();
    let (mut count, mut unit) = (count, unit * 4);
    while count % 2 == 0 && unit % 2 == 0 {
        (count, unit) = (count / 2, unit / 2);
    }
    (
        u32::try_from(count).unwrap_or(1),
        u32::try_from(unit).unwrap_or(4),
    )
}
