//! The circle: who sits round, what each of them plays of the tune, and which key suits all of them best.

mod seats;
mod view;

use crate::chart::{Simpler, Tune};
use crate::circle::{AllHands, RankedKey, Seat, Sheet, shares};
use crate::theory::{Key, NoteName};

use super::cards::key_name;
use super::finder::{Finding, Shelf, find};
use super::settings::Settings;
use super::songbook::{Songbook, TuneId};
use super::stand::Simplify;

pub use seats::{Knows, MOST_SEATS, Plays, SeatChange, SeatSettings, Sings};
pub use view::{
    CircleTune, CircleView, KeyName, RankedView, SeatChord, SeatKeyView, SeatSheet, SeatTitle,
    SeatView, VoiceView,
};

/// A wish about the circle. Seats are named by their place, the player's being 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CircleAsk {
    /// Somebody sits down.
    Add(Plays),
    /// Something about a seat.
    Change(usize, SeatChange),
    /// The name that was typed is done.
    LetGo,
    /// Somebody leaves; the player stays.
    Remove(usize),
    /// Who left last comes back.
    PutBack,
    /// A seat moves so many places on; the player stays the first.
    Move(usize, i32),
    /// Look at a tune of the songbook; `None` is the one on the stand.
    Tune(Option<TuneId>),
    /// Look at the key on this note.
    Look(NoteName),
    /// Play the tune in the key on this note: it goes on the stand.
    Play(NoteName),
    /// Words of a tune to look at.
    Find(String),
}

/// The tune that the circle looks at, as it is written, and how it is played.
pub(super) struct Looked<'a> {
    pub(super) id: TuneId,
    pub(super) tune: &'a Tune,
    pub(super) key: Key,
    pub(super) simplify: Simplify,
    pub(super) on_stand: bool,
}

/// What an answer was worked out from: tune, how simple, key and seats.
type From = (TuneId, Simplify, Option<Key>, Vec<Seat>);

#[derive(Debug, Default)]
pub(super) struct Circle {
    /// The seats as they are kept, the player first.
    kept: Vec<SeatSettings>,
    removed: Option<(usize, SeatSettings)>,
    /// A tune that is not on the stand.
    other: Option<(TuneId, Tune)>,
    looked_at: Option<NoteName>,
    finding: Finding,
    /// What was found out about instruments that sat here.
    hands: AllHands,
    /// The answers worked out last.
    ranked: Option<(From, Vec<RankedKey>)>,
    sheets: Option<(From, Vec<Sheet>)>,
}

impl Circle {
    pub(super) fn new(mut kept: Vec<SeatSettings>) -> Self {
        if kept.is_empty() {
            kept.push(SeatSettings::player());
        }
        kept.truncate(MOST_SEATS);
        Self {
            kept,
            ..Self::default()
        }
    }

    /// The seats as they are kept.
    pub(super) fn kept(&self) -> &[SeatSettings] {
        &self.kept
    }

    /// The seats with what the settings tell of the player.
    fn set(&self, settings: &Settings) -> Vec<SeatSettings> {
        let mut set = self.kept.clone();
        if let Some(player) = set.first_mut() {
            *player = player.of_player(settings);
        }
        set
    }

    /// The seats to reckon with.
    pub(super) fn seats(&self, settings: &Settings) -> Vec<Seat> {
        let set = self.set(settings);
        set.iter().map(|seat| seat.seat(settings)).collect()
    }

    /// Grants a wish about seats and what is looked at; whether the seats are others then.
    pub(super) fn ask(&mut self, ask: CircleAsk, songbook: &dyn Songbook) -> bool {
        let before = self.kept.clone();
        match ask {
            CircleAsk::Add(plays) if self.kept.len() < MOST_SEATS => {
                self.kept.push(SeatSettings::new(plays));
            }
            CircleAsk::Change(place, change) => {
                if let Some(seat) = self.kept.get_mut(place) {
                    seat.change(change);
                }
            }
            CircleAsk::Remove(place) if (1..self.kept.len()).contains(&place) => {
                self.removed = Some((place, self.kept.remove(place)));
            }
            CircleAsk::PutBack => {
                if let Some((place, seat)) = self.removed.take()
                    && self.kept.len() < MOST_SEATS
                {
                    self.kept.insert(place.min(self.kept.len()), seat);
                }
            }
            CircleAsk::Move(place, by) => {
                let to = i32::try_from(place).unwrap_or(0).saturating_add(by);
                let to = usize::try_from(to).unwrap_or(0);
                let others = 1..self.kept.len();
                if others.contains(&place) && others.contains(&to) {
                    let seat = self.kept.remove(place);
                    self.kept.insert(to, seat);
                }
            }
            CircleAsk::Tune(id) => {
                self.other = id.and_then(|id| Some((id, songbook.tune(id)?)));
                self.looked_at = None;
            }
            CircleAsk::Look(tonic) => self.looked_at = Some(tonic),
            CircleAsk::Find(words) => self.finding.words = words,
            CircleAsk::Add(_) | CircleAsk::Remove(_) | CircleAsk::Play(_) | CircleAsk::LetGo => {}
        }
        self.kept != before
    }

    /// The tune that was chosen to be looked at instead of the one on the stand.
    pub(super) fn other(&self) -> Option<(TuneId, &Tune)> {
        self.other.as_ref().map(|(id, tune)| (*id, tune))
    }

    /// Looks at the tune on the stand again.
    pub(super) fn look_at_stand(&mut self) {
        self.other = None;
        self.looked_at = None;
    }

    /// The circle view. `looked` is the tune on the stand; one that was chosen goes before it.
    pub(super) fn view(&mut self, stand: Option<Looked<'_>>, shelf: &Shelf<'_>) -> CircleView {
        let settings = shelf.settings;
        let set = self.set(settings);
        let titles = view::titles(&set);
        let other = self.other.take();
        let looked = match &other {
            Some((id, tune)) => Some(Looked {
                id: *id,
                tune,
                key: tune.key,
                simplify: Simplify::Written,
                on_stand: false,
            }),
            None => stand,
        };
        let (mut keys, mut looked_at) = (Vec::new(), 0);
        if let Some(looked) = &looked {
            self.work_out(looked, shelf.seats);
            let ranked = self.ranked.as_ref().map_or(&[][..], |(_, ranked)| ranked);
            let tonics = (looked.key.tonic, looked.tune.key.tonic);
            keys = view::keys(ranked, tonics, &set, settings);
            let wanted = self.looked_at.map(|tonic| tonic.class());
            let place = |key: &RankedView| Some(key.tonic.class()) == wanted;
            looked_at = keys.iter().position(place).unwrap_or(0);
        }
        let sheets = looked.as_ref().and(self.sheets.as_ref());
        let each = titles.into_iter().zip(&set).enumerate();
        let seats = each
            .map(|(place, (title, set))| {
                let sheet = sheets.and_then(|(_, sheets)| sheets.get(place));
                view::seat(title, set, sheet, settings)
            })
            .collect();
        let removed = self.removed.as_ref().map(|(_, seat)| seat.clone());
        let view = CircleView {
            tune: looked.as_ref().map(|looked| CircleTune {
                id: looked.id,
                title: looked.tune.title.clone(),
                key: key_name(looked.key, settings),
                on_stand: looked.on_stand,
            }),
            seats,
            keys,
            looked_at,
            removed: removed.map(|seat| SeatTitle {
                name: seat.name,
                plays: seat.plays,
                number: 0,
                player: false,
            }),
            room: self.kept.len() < MOST_SEATS,
            finder: find(&self.finding, shelf),
        };
        self.other = other;
        view
    }

    /// Ranks the keys and writes the sheets, unless that is what was done last.
    fn work_out(&mut self, looked: &Looked<'_>, seats: &[Seat]) {
        let from = |key| (looked.id, looked.simplify, key, seats.to_vec());
        let ranks = from(None);
        let plain = || simpler(looked.tune, looked.simplify);
        if self
            .ranked
            .as_ref()
            .is_none_or(|(there, _)| *there != ranks)
        {
            self.ranked = Some((ranks, self.hands.best_keys(&plain(), seats)));
        }
        let writes = from(Some(looked.key));
        if self
            .sheets
            .as_ref()
            .is_none_or(|(there, _)| *there != writes)
        {
            let chords = shares(&simpler(
                &looked.tune.in_key(looked.key.tonic),
                looked.simplify,
            ));
            let sheet = |seat| self.hands.sheet(seat, looked.key, &chords);
            self.sheets = Some((writes, seats.iter().map(sheet).collect()));
        }
    }

    /// Forgets what was worked out from tunes that may be others now.
    pub(super) fn forget(&mut self) {
        (self.ranked, self.sheets, self.other) = (None, None, None);
    }
}

fn simpler(tune: &Tune, simplify: Simplify) -> Tune {
    match simplify {
        Simplify::Written => tune.clone(),
        Simplify::Triads => tune.simplified(Simpler::Triads),
        Simplify::ThreeChords => tune.simplified(Simpler::ThreeChords),
    }
}
