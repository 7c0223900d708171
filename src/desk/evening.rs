//! What the desk grants about the circle and tonight's list, and what is then to be seen of them.

use super::circle::{CircleAsk, CircleView, Looked};
use super::finder::Shelf;
use super::players::Moment;
use super::tonight::{Planned, Played, TonightAsk, TonightView};
use super::{Ask, Desk, Notice, Room};

impl Desk {
    /// A tune has been played when the end of a time through is reached.
    pub(super) fn note_played(&mut self, at: Moment) {
        let Some((tune, stand)) = self.open.as_ref() else {
            return;
        };
        // An exercise is no tune, and practising is not playing with others.
        if stand.is_drill() {
            return;
        }
        let practises = self.page == Room::Porch;
        if !self.tonight.reach(stand.times_played(at), practises) {
            return;
        }
        let (tune, key, day) = (*tune, stand.key(), self.songbook.today());
        if let Some(played) = self.tonight.note(Played { tune, key, day }) {
            let kept = self.songbook.keep_played(played);
            self.must_be_kept(kept);
        }
    }

    /// That something could not be kept is said once: it will not be otherwise this evening.
    pub(super) fn must_be_kept(&mut self, kept: bool) {
        if !kept && !std::mem::replace(&mut self.said_unkept, true) {
            self.notice = Some(Notice::EveningNotKept);
        }
    }

    pub(super) fn ask_circle(&mut self, ask: CircleAsk, at: Moment) {
        if let CircleAsk::Play(tonic) = ask {
            self.end_drill(at);
            if let Some(tune) = self.circle.other().map(|(tune, _)| tune) {
                self.put_on_stand(tune, at);
            }
            self.circle.look_at_stand();
            self.ask_stand(&Ask::KeyOn(tonic), at);
            if self.open.is_some() {
                self.read_from();
            }
        } else {
            self.unkept_seats |= self.circle.ask(ask, self.songbook.as_ref());
        }
    }

    pub(super) fn ask_tonight(&mut self, ask: TonightAsk, at: Moment) {
        let planned = match ask {
            TonightAsk::Open(place) => self.tonight.at(place),
            TonightAsk::Next => {
                let open = self.open.as_ref().map(|(open, _)| *open);
                open.and_then(|open| self.tonight.next(open, self.songbook.today()))
            }
            TonightAsk::ListOpen(on) => {
                if let Some((tune, stand)) = &self.open {
                    let (tune, tonic) = (*tune, stand.key().tonic);
                    self.ask_tonight(TonightAsk::List(tune, on), at);
                    if self.tonight.remember(tune, tonic, self.songbook.as_ref()) {
                        self.keep_tonight();
                    }
                }
                None
            }
            ask => {
                let seats = self.circle.seats(&self.settings);
                if self.tonight.ask(ask, self.songbook.as_ref(), &seats) {
                    self.keep_tonight();
                }
                None
            }
        };
        if let Some(Planned { tune, key }) = planned {
            let new = self.open.as_ref().is_none_or(|(open, _)| *open != tune);
            self.put_on_stand(tune, at);
            if let Some(tonic) = key.filter(|_| new) {
                self.ask_stand(&Ask::KeyOn(tonic), at);
            }
        }
    }

    pub(super) fn keep_tonight(&mut self) {
        let kept = self.songbook.keep_tonight(self.tonight.planned());
        self.must_be_kept(kept);
    }

    /// The circle view.
    pub fn circle(&mut self) -> CircleView {
        let looked = self.open.as_ref().map(|(id, stand)| {
            let stand = stand.whole();
            let (tune, simplify) = stand.written();
            Looked {
                id: *id,
                tune,
                key: stand.key(),
                simplify,
                on_stand: true,
            }
        });
        let seats = self.circle.seats(&self.settings);
        let shelf = Shelf {
            songbook: self.songbook.as_ref(),
            settings: &self.settings,
            seats: &seats,
            tonight: &self.tonight,
        };
        self.circle.view(looked, &shelf)
    }

    /// The view of tonight's list.
    pub fn tonight(&self) -> TonightView {
        let seats = self.circle.seats(&self.settings);
        let shelf = Shelf {
            songbook: self.songbook.as_ref(),
            settings: &self.settings,
            seats: &seats,
            tonight: &self.tonight,
        };
        self.tonight
            .view(self.open.as_ref().map(|(id, _)| *id), &shelf)
    }
}
