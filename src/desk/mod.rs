//! The desk: what the app knows, what it can be asked, and what is then to be seen.
//!
//! A view is a plain struct of kinds and numbers; an [`Ask`] changes the state. Time is an argument, and what has to be
//! kept goes through [`Songbook`], what has to sound through [`Players`], so that a whole evening can be played through in a test in milliseconds.

mod ask;
mod band;
mod called;
mod cards;
mod downbeats;
mod follow;
mod leader;
mod list;
mod map;
mod on_stand;
mod plan;
mod players;
mod safe;
mod settings;
mod songbook;
mod stand;
mod sung;

use std::sync::Arc;
use std::time::Duration;

pub use ask::{Ask, Room};
pub use band::{
    Alone, BandAsk, BandSettings, BandView, LoopView, MOST_LEVEL, PlayerView, RampView, USUAL_LEVEL,
};
pub use called::{
    CalledAsk, CalledFace, CalledTune, CalledView, CapoView, HeldName, HeldView, KeyView,
    LAST_FRET, MOST_TUNES, OtherKey, ScaleMark, SetupView, ToStand,
};
pub use follow::BPM;
pub use on_stand::MOST_CAPO;
pub use players::{Heard, Players};
pub use safe::SafePart;
pub use settings::{FIRST_CHORDS, Language, Settings, SettingsView, Theme, Tuning};
pub use songbook::{Entry, Filter, Songbook, SongbookState, SongbookView, TuneId, TuneRow};
pub use stand::{
    ChordCard, ChordNames, FollowState, FormChip, MapBar, MapLine, MissingNote, NextCard, Passed,
    RingString, ShapeView, Simplify, SlotView, StandView, StrumView, SungWords, Verdict,
};

use crate::band::Command;
use crate::frets::Instrument;
use called::Called;
use leader::Leader;
use list::List;
use on_stand::OnStand;
use players::Moment;

/// Something that went wrong and that the player should know of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Notice {
    /// The tune is in the list but cannot be read any more.
    TuneUnreadable,
    /// The settings hold for this evening but could not be kept.
    SettingsNotKept,
    /// The shipped tunes could not be put back.
    NotRestored,
    /// The songbook file could not be read; it stands aside under this name.
    SetAside {
        /// Name of the file that was put aside.
        file: String,
        /// Whether a newer app wrote it; otherwise it is damaged.
        newer: bool,
    },
    /// Nothing can be kept this evening: the songbook is in memory only.
    NothingKept,
    /// The songbook can be read, and not written to.
    ReadOnly,
}

/// The state of the app.
pub struct Desk {
    room: Room,
    songbook: Box<dyn Songbook>,
    leader: Leader,
    settings: Settings,
    list: List,
    called: Called,
    open: Option<(TuneId, OnStand)>,
    notice: Option<Notice>,
}

impl std::fmt::Debug for Desk {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Desk")
            .field("room", &self.room)
            .field("open", &self.open)
            .finish_non_exhaustive()
    }
}

impl Desk {
    /// An app that has just been opened.
    pub fn new(
        songbook: Box<dyn Songbook>,
        players: Box<dyn Players>,
        settings: Settings,
        notice: Option<Notice>,
    ) -> Self {
        let list = List::new(songbook.as_ref(), &settings);
        Self {
            room: Room::Songbook,
            songbook,
            leader: Leader::new(players),
            settings,
            list,
            called: Called::new(),
            open: None,
            notice,
        }
    }

    /// Which room is shown.
    pub fn room(&self) -> Room {
        self.room
    }

    /// What the player has set.
    pub fn settings(&self) -> &Settings {
        &self.settings
    }

    /// What the player should know, until it is closed.
    pub fn notice(&self) -> Option<&Notice> {
        self.notice.as_ref()
    }

    /// Whether the stand moves by itself, so that its view must be asked for again.
    pub fn is_moving(&mut self, now: Duration) -> bool {
        let at = self.hear(now);
        let moves = |(_, stand): &(TuneId, OnStand)| stand.is_moving(at);
        self.open.as_ref().is_some_and(moves) || !self.leader.players().is_settled()
    }

    /// What the band has to say by now.
    fn hear(&mut self, now: Duration) -> Moment {
        let at = self.leader.moment(now);
        let players = self.leader.players();
        if let Some((_, stand)) = &mut self.open
            && players.is_settled()
        {
            stand.hear(players.transport());
        }
        at
    }

    /// Grants a wish at a moment, counted from when the app was opened.
    pub fn ask(&mut self, ask: Ask, now: Duration) {
        let at = self.hear(now);
        match ask {
            Ask::Go(Room::Stand) if self.open.is_none() => {}
            Ask::Go(Room::Called) => {
                self.called.enter(self.room);
                self.room = Room::Called;
            }
            Ask::Go(room) => self.room = room,
            Ask::Back if self.room == Room::Called => self.room = self.called.from(),
            Ask::Back => self.room = Room::Songbook,
            Ask::CloseNotice => self.notice = None,
            Ask::Open(id) => self.put_on_stand(id, at),
            Ask::RestoreShipped => {
                if !self.songbook.restore_shipped() {
                    self.notice = Some(Notice::NotRestored);
                }
                self.called.set();
                self.list.reload(self.songbook.as_ref(), &self.settings);
            }
            Ask::Search(_) | Ask::OnlyKey(_) | Ask::OnlyRhythm(_) | Ask::OnlyKnown(_) => {
                self.list.ask(ask, self.songbook.as_ref());
            }
            Ask::Know(..)
            | Ask::Instrument(_)
            | Ask::Retune(..)
            | Ask::Tuning(_)
            | Ask::LeftHanded(_)
            | Ask::Theme(_)
            | Ask::Language(_)
            | Ask::NoteNames(_)
            | Ask::LessMotion(_) => self.set(ask, now),
            Ask::Band(ask) => self.ask_band(ask, at),
            Ask::Called(ask) => self.ask_called(ask, at),
            ask => self.ask_stand(&ask, at),
        }
        self.leader.mix(now, &self.settings.band);
    }

    /// What is asked of the tune on the stand; the band is told what comes of it.
    fn ask_stand(&mut self, ask: &Ask, at: Moment) {
        let Some((_, stand)) = &mut self.open else {
            return;
        };
        if *ask == Ask::Clock(true) {
            self.leader.hush(at.now);
            self.leader.wake(at.now, &self.settings);
        }
        stand.ask(ask, &self.settings, at);
        self.leader.tell(at.now, stand.told());
        // What sounds alone goes along with the tempo and the key.
        match (ask, self.leader.alone()) {
            (Ask::Faster(_) | Ask::TapTempo, Some(_)) => {
                self.leader.tell(at.now, [Command::Tempo(stand.tempo())]);
            }
            (Ask::KeyUp(_) | Ask::KeyOn(_) | Ask::WrittenKey, Some(Alone::Drones)) => {
                let score = Arc::new(stand.alone(Alone::Drones, at));
                self.leader.tell(at.now, [Command::Score(score)]);
            }
            _ => {}
        }
    }

    fn ask_band(&mut self, ask: BandAsk, at: Moment) {
        self.set(Ask::Band(ask.clone()), at.now);
        match ask {
            BandAsk::Sound(on) => self.leader.switch(at.now, on),
            BandAsk::Tone(None) | BandAsk::Alone(None) => self.leader.hush(at.now),
            BandAsk::Tone(Some(course)) => {
                self.ask_stand(&Ask::Clock(false), at);
                self.leader.sound(at.now, &self.settings, course);
            }
            BandAsk::Alone(Some(alone)) => {
                self.ask_stand(&Ask::Clock(false), at);
                if let Some((_, stand)) = &self.open {
                    let score = (alone, stand.alone(alone, at));
                    let tempo = stand.tempo();
                    self.leader.alone_with(at.now, &self.settings, score, tempo);
                }
            }
            ask => self.ask_stand(&Ask::Band(ask), at),
        }
    }

    fn ask_called(&mut self, ask: CalledAsk, at: Moment) {
        let id = match ask {
            CalledAsk::Open(id) => id,
            CalledAsk::ToStand => match self.called().to_stand {
                Some(tune) => tune.id,
                None => return,
            },
            CalledAsk::Leave => {
                if self.room == Room::Called {
                    self.room = self.called.from();
                }
                return;
            }
            ask => return self.called.ask(ask, &self.settings),
        };
        self.put_on_stand(id, at);
        if self.room == Room::Stand {
            if let Some(tonic) = self.called.tonic() {
                self.ask_stand(&Ask::KeyOn(tonic), at);
            }
            self.called.forget();
        }
    }

    fn put_on_stand(&mut self, id: TuneId, at: Moment) {
        if self.open.as_ref().is_some_and(|(open, _)| *open == id) {
            self.room = Room::Stand; // as it was left: the same key, the same place
            return;
        }
        match self.songbook.tune(id) {
            Some(tune) => {
                // The band does not play on what is no longer there.
                self.ask_stand(&Ask::Clock(false), at);
                self.leader.hush(at.now);
                let rate = self.leader.players().transport().rate();
                self.open = Some((id, OnStand::new(tune, &self.settings, rate)));
                self.room = Room::Stand;
            }
            None => self.notice = Some(Notice::TuneUnreadable),
        }
    }

    fn set(&mut self, ask: Ask, now: Duration) {
        let before = self.settings.clone();
        self.settings.ask(ask);
        if self.settings == before {
            return;
        }
        if !self.songbook.keep_settings(&self.settings) {
            self.notice = Some(Notice::SettingsNotKept);
        }
        let unchanged = Settings {
            band: before.band.clone(),
            ..self.settings.clone()
        };
        if unchanged == before {
            return; // a matter of the band alone
        }
        if self.settings.instrument() != before.instrument() && self.leader.tone().is_some() {
            self.leader.hush(now); // its strings are others
        }
        if let Some((_, stand)) = &mut self.open {
            stand.set(&self.settings);
        }
        self.called.set();
        self.list.reload(self.songbook.as_ref(), &self.settings);
    }

    /// The view of what was called.
    pub fn called(&mut self) -> CalledView {
        let open = self.open.as_ref().map(|(id, stand)| (*id, stand.key()));
        self.called
            .view(self.songbook.as_ref(), &self.settings, open)
    }

    /// The songbook view.
    pub fn songbook(&self) -> SongbookView {
        self.list.view(self.open.as_ref().map(|(id, _)| *id))
    }

    /// The stand view, if a tune is on the stand.
    pub fn stand(&mut self, now: Duration) -> Option<StandView> {
        let at = self.hear(now);
        let (_, stand) = self.open.as_mut()?;
        Some(stand.view(&self.settings, &self.leader, at))
    }

    /// The settings view.
    pub fn settings_view(&self) -> SettingsView {
        self.settings.view(
            Instrument::all()
                .map(|instrument| instrument.id.to_owned())
                .collect(),
        )
    }
}

#[cfg(test)]
mod tests;
