//! The tune on the stand, in the key that was called.

mod band;
mod porch;
mod strum;

use crate::chart::{Change, Changes, Note, Pace, Playing, Simpler, Tempo, TempoRange, Ticks, Tune};
use crate::theory::{Chord, Key, NoteName, NoteStyle, Symbol};

use super::ask::Ask;
use super::cards::{Hands, chord_names, style};
use super::follow::{BPM, Follow, Place};
use super::leader::Leader;
use super::map;
use super::plan::Plan;
use super::players::Moment;
use super::porch::{Drill, Lesson};
use super::safe::{SafePart, Stretch};
use super::settings::Settings;
use super::stand::{ChordCard, ChordNames, FollowState, NextCard, Simplify, StandView};
use super::sung;

/// The highest capo; above it there is hardly a neck left (common practice).
pub const MOST_CAPO: u8 = 9;

/// Times through when the tune does not say: the least that a circle plays (common practice: 3 to 8).
const TIMES: u32 = 3;

/// A tune on the stand.
#[derive(Debug)]
pub(super) struct OnStand {
    /// As it is written.
    tune: Tune,
    playing: Playing,
    /// As it is played: in the called key, as simple as wanted.
    played: Tune,
    /// Its chord changes.
    changes: Changes,
    /// The key of each of its written bars.
    keys: Vec<Key>,
    names: ChordNames,
    simplify: Simplify,
    hands: Hands,
    follow: Follow,
    plan: Plan,
    /// What is safe to strum over each part, in the key now.
    safe: Vec<Stretch>,
    lesson: Lesson,
    /// It is an exercise, and this is the tune that it stands in place of.
    drill: Option<(Drill, Option<Box<Self>>)>,
}

impl OnStand {
    /// `rate` is the band's frames a second.
    pub(super) fn new(tune: Tune, settings: &Settings, rate: u32) -> Self {
        let playing = tune.playing();
        let usual = if holds_its_verses(&tune) { 1 } else { TIMES };
        let times = tune.times_through.map_or(usual, u32::from);
        let tempo = usual_tempo(&tune);
        let mut stand = Self {
            played: tune.clone(),
            changes: Changes::default(),
            keys: Vec::new(),
            names: ChordNames::default(),
            simplify: Simplify::default(),
            hands: Hands::new(settings, 0),
            follow: Follow::new(&playing, tempo, times, rate),
            plan: Plan::new(&tune, tempo),
            safe: Vec::new(),
            lesson: Lesson::new(&tune, tempo.bpm),
            drill: None,
            tune,
            playing,
        };
        stand.arrange(stand.tune.key.tonic);
        stand
    }

    /// The settings have changed: another instrument, other names.
    pub(super) fn set(&mut self, settings: &Settings, at: Moment) {
        self.take(Hands::new(settings, self.hands.capo.fret), at);
        self.replace(at);
        if let Some((_, Some(tune))) = &mut self.drill {
            tune.set(settings, at);
        }
    }

    fn take(&mut self, hands: Hands, at: Moment) {
        if self.hands.change_to(hands) {
            self.lesson.name_anew();
        } else {
            self.plan.forget();
            self.lesson.forget();
            self.begin_anew(at);
        }
    }

    pub(super) fn is_moving(&self, at: Moment) -> bool {
        self.follow.is_moving(&self.playing, at)
    }

    /// Puts the tune into a key, as simple as is wanted now.
    fn arrange(&mut self, tonic: NoteName) {
        let key = self.key();
        let moved = self.tune.in_key(tonic);
        // The others play what is written, however simple one's own chords are.
        self.safe = Stretch::of(&moved, &self.playing);
        self.played = match self.simplify {
            Simplify::Written => moved,
            Simplify::Triads => moved.simplified(Simpler::Triads),
            Simplify::ThreeChords => moved.simplified(Simpler::ThreeChords),
        };
        self.changes = Changes::of(&self.played, &self.playing);
        self.keys = self.played.keys();
        self.plan.forget();
        if key == self.key() {
            self.lesson.arrange_anew();
        } else {
            self.lesson.forget();
        }
    }

    /// Its rhythm by id, or the tune's own word.
    fn rhythm(&self) -> String {
        let rhythm = self.tune.rhythm.as_ref();
        rhythm.map_or(String::new(), |rhythm| rhythm.id().to_owned())
    }

    /// The key of the tune as it is played.
    pub(super) fn key(&self) -> Key {
        self.played.key
    }

    /// The tune as it is written, and how much simpler it is played.
    pub(super) fn written(&self) -> (&Tune, Simplify) {
        (&self.tune, self.simplify)
    }

    /// How many times through have been played to their end.
    pub(super) fn times_played(&self, at: Moment) -> u32 {
        let place = self.follow.place(&self.playing, at);
        place.time + u32::from(place.ended)
    }

    /// The tonic of the key that holds in a written bar.
    fn tonic(&self, written: usize) -> NoteName {
        self.keys.get(written).copied().unwrap_or(self.key()).tonic
    }

    /// The card of a chord change.
    fn card(&mut self, change: Change) -> ChordCard {
        let bar = self.playing.bars.get(change.played_bar);
        let tonic = self.tonic(bar.map_or(0, |bar| bar.written));
        self.hands.card(change.symbol, tonic, self.names)
    }

    /// What the player wishes of the tune on the stand. Wishes about other things are left alone.
    pub(super) fn ask(&mut self, ask: &Ask, settings: &Settings, at: Moment) {
        if self.plan.choosing().is_some() && self.choose_bars(ask, at) {
            return;
        }
        let (follow, playing) = (&mut self.follow, &self.playing);
        match *ask {
            Ask::NextBar => follow.next_bar(playing, at),
            Ask::BarBack => follow.bar_back(playing, at),
            Ask::Hold => follow.hold(playing, at),
            Ask::ThisIsOne => follow.this_is_one(playing, at),
            Ask::JumpTo(bar) => follow.jump(playing, at, bar),
            Ask::JumpToPart(chip) => {
                if let Some(run) = map::runs(playing).get(chip) {
                    follow.at_top(playing, at, run.2);
                }
            }
            Ask::JumpToLine(bar) => follow.at_top(playing, at, bar),
            Ask::Clock(true) => {
                let score = self.score();
                self.follow
                    .play(&self.playing, at, score, settings.band.count_in);
                self.lesson.counted = 0;
            }
            Ask::Clock(false) => follow.stop(playing, at),
            Ask::Faster(bpm) => {
                #[allow(clippy::cast_precision_loss)] // a few beats a minute
                let bpm = follow.tempo().bpm.round() + bpm as f32;
                follow.change_bpm(playing, at, bpm);
            }
            Ask::TapTempo => follow.tap(playing, at),
            Ask::Times(times) => follow.set_times(playing, at, times),
            Ask::LastTime(last) => follow.set_last(playing, at, last),
            Ask::KeyUp(semitones) => self.arrange(self.key().up(semitones).tonic),
            Ask::KeyOn(tonic) => self.arrange(tonic),
            Ask::WrittenKey => self.arrange(self.tune.key.tonic),
            Ask::Names(names) => self.names = names,
            Ask::Simpler(simplify) => {
                self.simplify = simplify;
                self.arrange(self.key().tonic);
            }
            Ask::Capo(fret) => {
                self.take(Hands::new(settings, fret.min(MOST_CAPO)), at);
            }
            Ask::OtherShape => {
                let place = self.follow.place(&self.playing, at);
                if let Some(Change {
                    symbol: Symbol::Chord(chord),
                    ..
                }) = self.now(place)
                {
                    self.hands.next_shape(chord);
                }
            }
            Ask::Band(ref ask) => self.ask_band(ask, at),
            _ => {}
        }
        // A pass in another tempo or key is not the one that was begun.
        if ask.changes_tempo() || ask.changes_key() {
            self.begin_anew(at);
        }
        self.replace(at);
    }

    /// The change that holds at a place. Before the first one, that is the one to get ready for.
    fn now(&self, place: Place) -> Option<Change> {
        let held = self.changes.at(place.at, place.time > 0);
        held.or(self.changes.as_slice().first()).copied()
    }

    /// The next change that is heard as one, and when it comes, counted from the start of this time through.
    fn next(&self, now: Change, place: Place) -> Option<(Change, Ticks)> {
        let changes = self.changes.as_slice().iter();
        let later = changes.clone().map(|&change| (change, change.at));
        let again = changes.map(|&change| (change, self.playing.length + change.at));
        let again = again.take_while(|_| !self.follow.is_last(place.time));
        later
            .chain(again)
            .find(|&(change, at)| at > place.at && change.symbol != now.symbol)
    }

    /// What is to be seen at a moment.
    pub(super) fn view(&mut self, settings: &Settings, leader: &Leader, at: Moment) -> StandView {
        let style = style(settings);
        let place = self.follow.place(&self.playing, at);
        let chord_now = self.now(place);
        let (card, next, ring) = match chord_now {
            None => {
                let none = self
                    .hands
                    .card(Symbol::NoChord, self.key().tonic, self.names);
                (none, None, Vec::new())
            }
            Some(change) => (
                self.card(change),
                self.next_card(change, place),
                self.hands.ring(change.symbol),
            ),
        };
        let safe = self.safe_parts(place, settings);
        let name = |symbol, written| match symbol {
            Symbol::Chord(chord) => short_names(chord, self.tonic(written), self.names, style),
            Symbol::NoChord => ("N.C.".to_owned(), String::new()),
        };
        let loops = |bar| self.plan.loops(bar);
        let (map, line) = map::map(&self.played, &self.playing, place, name, loops);
        let bar = self.playing.bars.get(place.bar);
        let tempo = self.follow.tempo();
        StandView {
            title: self.tune.title.clone(),
            rhythm: self.rhythm(),
            key: self.key().tonic.in_style(style),
            mode: self.key().mode.id().to_owned(),
            written_key: (self.key() != self.tune.key).then(|| self.tune.key.tonic.in_style(style)),
            keys: self.choices(style),
            names: self.names,
            simplify: self.simplify,
            capo: self.hands.capo.fret,
            time: place.time + 1,
            times: self.follow.times(),
            last_time: self.follow.calls_the_last(place.time),
            tempo: (whole_bpm(tempo.bpm), part_of_whole(tempo.beat)),
            follow: self.follow_state(place),
            now: card,
            next,
            strum: self.strum(place),
            ring,
            form: map::form(&self.tune, &self.playing, place),
            sung: sung::sung(&self.tune, &self.playing, place),
            map,
            line,
            safe,
            bar: (
                bar.map_or(0, |bar| u32::from(bar.number)),
                u32::from(self.playing.count(place.bar)),
            ),
            band: self.band(settings, leader, place),
            listed: false,
            next_tune: None,
        }
    }

    /// What is safe to strum, part by part.
    fn safe_parts(&mut self, place: Place, settings: &Settings) -> Vec<SafePart> {
        let tonic = self.key().tonic;
        let part = self.playing.bars.get(place.bar).map(|bar| bar.part);
        let (hands, names) = (&mut self.hands, self.names);
        let safe = self.safe.iter();
        safe.map(|stretch| stretch.view(hands, (tonic, names), part, style(settings)))
            .collect()
    }

    /// Keys to choose from, the written one first and as it is written.
    fn choices(&self, style: NoteStyle) -> Vec<(String, NoteName)> {
        let keys = (0..12).map(|up| self.tune.key.up(up).tonic);
        keys.map(|tonic| (tonic.in_style(style), tonic)).collect()
    }

    fn next_card(&mut self, now: Change, place: Place) -> Option<NextCard> {
        let (next, when) = self.next(now, place)?;
        let chord = self.card(next);
        let from = place.at;
        let bar = self.playing.bars.get(place.bar)?;
        let beats_left = map::beats_between(&self.playing, from, when);
        let in_bar = u32::try_from(bar.metre.beats().len().max(1)).unwrap_or(1);
        Some(NextCard {
            chord,
            beats_left,
            beats: map::beats_between(&self.playing, now.at.min(from), when).max(beats_left),
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
}

/// What the map shows of a chord: its name, and the number beside letters only where both are wanted.
fn short_names(
    chord: Chord,
    tonic: NoteName,
    names: ChordNames,
    style: NoteStyle,
) -> (String, String) {
    let (name, other) = chord_names(chord, tonic, names, style);
    match names {
        ChordNames::Both => (name, other),
        ChordNames::Letters | ChordNames::Numbers => (name, String::new()),
    }
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 30 to 300
pub(super) fn whole_bpm(bpm: f32) -> u32 {
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

/// The tempo of a tune, or what a slow jam plays it at, counted in what can be counted.
pub(super) fn usual_tempo(tune: &Tune) -> Tempo {
    let tempo = tune.tempo_or_fitting(Pace::SlowJam);
    if BPM.contains(&tempo.bpm) {
        return tempo;
    }
    // Counted in notes that are too quick or too slow to count: in what is felt, then.
    let felt = TempoRange::fitting(tune.rhythm.as_ref(), tune.metre, Pace::SlowJam);
    tempo.counted_in(felt.beat)
}

/// Whether the form of a song goes through its verses: it comes back to a part after another one.
fn holds_its_verses(tune: &Tune) -> bool {
    let sung = |note: &Note| !note.syllables.is_empty();
    let words = !tune.verses.is_empty() || tune.bars.iter().flat_map(|bar| &bar.notes).any(sung);
    let mut form = tune.form.clone();
    form.dedup();
    words && (1..form.len()).any(|at| form[..at].contains(&form[at]))
}
