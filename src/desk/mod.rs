//! The desk: what the app knows, what it can be asked, and what is then to be seen.
//!
//! A view is a plain struct of kinds and numbers; an [`Ask`] changes the state. Time is an argument, and what has to be
//! kept goes through [`Songbook`], what has to sound through [`Players`], so that a whole evening can be played through in a test in milliseconds.

mod ask;
mod band;
mod called;
mod cards;
mod circle;
mod downbeats;
mod evening;
mod finder;
mod follow;
mod leader;
mod list;
mod map;
mod on_stand;
mod plan;
mod players;
mod porch;
mod practise;
mod rooms;
mod safe;
mod settings;
mod songbook;
mod stand;
mod sung;
mod tonight;

use std::sync::Arc;
use std::time::Duration;

pub use ask::{Ask, Room};
pub use band::{
    Alone, BandAsk, BandSettings, BandView, Choosing, DELAY_STEP_MS, LoopView, MOST_DELAY_MS,
    MOST_LEVEL, PlayerView, RampView, USUAL_LEVEL,
};
pub use called::{
    CalledAsk, CalledFace, CalledTune, CalledView, CapoView, HeldName, HeldView, KeyView,
    LAST_FRET, MOST_FOUND, OtherKey, ScaleMark, SetupView, ToStand,
};
pub use circle::{
    CircleAsk, CircleTune, CircleView, KeyName, Knows, MOST_SEATS, Plays, RankedView, SeatChange,
    SeatChord, SeatKeyView, SeatSettings, SeatSheet, SeatTitle, SeatView, Sings, VoiceView,
};
pub use finder::{FinderView, Finding, Found, LastPlayed};
pub use follow::BPM;
pub use on_stand::MOST_CAPO;
pub use players::{Heard, Players};
pub use porch::{
    ChangeView, Drill, Laid, LessonView, OctaveView, PhraseView, PorchAsk, PorchView, Practice,
    Reason, StopView, Stretch, Suggestion, VersionView,
};
pub use safe::SafePart;
pub use settings::{FIRST_CHORDS, Language, Settings, SettingsView, Theme, Tuning};
pub use songbook::{Entry, Filter, Songbook, SongbookState, SongbookView, TuneId, TuneRow};
pub use stand::{
    ChordCard, ChordNames, FollowState, FormChip, MapBar, MapLine, MissingNote, NextCard, Passed,
    RingString, ShapeView, Simplify, SlotView, StandView, StrumView, SungWords, Verdict,
};
pub use tonight::{
    Evening, MOST_TUNES, NextTune, Planned, Played, Saving, TonightAsk, TonightRow, TonightView,
    Undo,
};

use crate::band::Command;
use crate::frets::Instrument;
use called::Called;
use circle::Circle;
use leader::Leader;
use list::List;
use on_stand::OnStand;
use players::Moment;
use porch::Porch;
use tonight::Tonight;

/// Something that went wrong and that the player should know of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Notice {
    /// The tune is in the list but cannot be read any more.
    TuneUnreadable,
    /// The settings hold for this evening but could not be kept.
    SettingsNotKept,
    /// The circle or tonight's list holds for this evening but could not be kept.
    EveningNotKept,
    /// The shipped tunes could not be put back.
    NotRestored,
    /// The songbook file could not be read; it stands aside under this name.
    SetAside {
        /// Name of the file that was put aside.
        file: String,
        /// Whether a newer app wrote it; otherwise it is damaged.
        newer: bool,
        /// How many of its tunes could be taken over.
        rescued: usize,
    },
    /// Nothing can be kept this evening: the songbook is in memory only.
    NothingKept,
    /// The songbook can be read, and not written to.
    ReadOnly,
}

/// The state of the app.
pub struct Desk {
    room: Room,
    /// The last of the rooms that are read from: the Stand, the circle or the porch.
    page: Room,
    songbook: Box<dyn Songbook>,
    leader: Leader,
    settings: Settings,
    list: List,
    called: Called,
    circle: Circle,
    tonight: Tonight,
    porch: Porch,
    open: Option<(TuneId, OnStand)>,
    notice: Option<Notice>,
    /// The settings are others than those that are kept.
    unkept: bool,
    /// So are the names of the seats.
    unkept_seats: bool,
    /// It was said that nothing of the evening can be kept.
    said_unkept: bool,
}

impl Drop for Desk {
    /// What a finger or a word was still setting when the app closed is kept.
    fn drop(&mut self) {
        self.keep();
    }
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
        let circle = Circle::new(songbook.circle());
        let tonight = Tonight::new(songbook.as_ref());
        let porch = Porch::new(songbook.as_ref());
        Self {
            room: Room::Songbook,
            page: Room::Stand,
            songbook,
            leader: Leader::new(players),
            settings,
            list,
            called: Called::new(),
            circle,
            tonight,
            porch,
            open: None,
            said_unkept: matches!(notice, Some(Notice::ReadOnly | Notice::NothingKept)),
            notice,
            unkept: false,
            unkept_seats: false,
        }
    }

    /// Which room is shown.
    pub fn room(&self) -> Room {
        self.room
    }

    /// Which room is read from: the Stand, the circle or the porch. Where the window is wide, it is seen beside the one that
    /// is looked through.
    pub fn page(&self) -> Room {
        self.page
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
        self.note_played(at);
        self.write_down(at);
        at
    }

    /// Grants a wish at a moment, counted from when the app was opened.
    pub fn ask(&mut self, ask: Ask, now: Duration) {
        let at = self.hear(now);
        let slides = matches!(
            ask,
            Ask::Band(BandAsk::Level(..) | BandAsk::Loudness(_))
                | Ask::Circle(CircleAsk::Change(_, SeatChange::Name(_)))
        );
        match ask {
            Ask::Go(Room::Stand) if self.open.is_none() => {}
            Ask::Go(room) => self.go(room),
            Ask::Back => self.back(at),
            Ask::CloseNotice => self.notice = None,
            Ask::Open(id) => self.put_on_stand(id, at),
            Ask::RestoreShipped => {
                if !self.songbook.restore_shipped() {
                    self.notice = Some(Notice::NotRestored);
                }
                self.called.set();
                self.list.reload(self.songbook.as_ref(), &self.settings);
                self.tonight.reload(self.songbook.as_ref());
                self.circle.forget();
                self.porch.forget();
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
            Ask::Circle(ask) => self.ask_circle(ask, at),
            Ask::Tonight(ask) => self.ask_tonight(ask, at),
            Ask::Porch(ask) => self.ask_porch(ask, at),
            ask => self.ask_stand(&ask, at),
        }
        let at = self.leader.moment(now);
        self.note_played(at);
        self.leader.mix(now, &self.settings.band);
        // While a finger slides or a name is typed, what that sets is not written at each step.
        if !slides {
            self.keep();
        }
    }

    /// What is asked of the tune on the stand; the band is told what comes of it.
    fn ask_stand(&mut self, ask: &Ask, at: Moment) {
        let drills_stop = |(_, stand): &(TuneId, OnStand)| stand.drills_stop();
        let elsewhere = ask.changes_key() || matches!(ask, Ask::Capo(_));
        if elsewhere && self.open.as_ref().is_some_and(drills_stop) {
            // A double stop is at its place on the neck: in another key there is another exercise.
            self.end_drill(at);
        }
        let Some((tune, stand)) = &mut self.open else {
            return;
        };
        if *ask == Ask::Clock(true) {
            self.leader.hush(at.now);
            self.leader.wake(at.now, &self.settings);
        }
        stand.ask(ask, &self.settings, at);
        self.leader.tell(at.now, stand.told());
        let keyed = (ask.changes_key() && !stand.is_drill()).then(|| (*tune, stand.key().tonic));
        // What sounds alone goes along with the tempo and the key.
        match (ask, self.leader.alone()) {
            (ask, Some(_)) if ask.changes_tempo() => {
                self.leader.tell(at.now, [Command::Tempo(stand.tempo())]);
            }
            (ask, Some(Alone::Drones)) if ask.changes_key() => {
                let score = Arc::new(stand.alone(Alone::Drones, at));
                self.leader.tell(at.now, [Command::Score(score)]);
            }
            _ => {}
        }
        // The list keeps the key that a tune of it is played in.
        if let Some((tune, tonic)) = keyed
            && self.tonight.remember(tune, tonic, self.songbook.as_ref())
        {
            self.keep_tonight();
        }
    }

    fn ask_band(&mut self, ask: BandAsk, at: Moment) {
        self.set(Ask::Band(ask.clone()), at.now);
        match ask {
            BandAsk::LetGo => {}
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
                    self.back(at);
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
        self.end_drill(at);
        if self.open.as_ref().is_some_and(|(open, _)| *open == id) {
            self.read_from(); // as it was left: the same key, the same place
            return;
        }
        match self.songbook.tune(id) {
            Some(tune) => {
                // The band does not play on what is no longer there.
                self.ask_stand(&Ask::Clock(false), at);
                self.leader.hush(at.now);
                let rate = self.leader.players().transport().rate();
                self.open = Some((id, OnStand::new(tune, &self.settings, rate)));
                self.tonight.put();
                self.circle.look_at_stand();
                self.porch.today = None;
                self.read_from();
            }
            None => self.notice = Some(Notice::TuneUnreadable),
        }
    }

    /// Keeps the settings and the names of the seats, if they are others than those that are kept.
    fn keep(&mut self) {
        if std::mem::take(&mut self.unkept_seats) {
            let kept = self.songbook.keep_circle(self.circle.kept());
            self.must_be_kept(kept);
        }
        if std::mem::take(&mut self.unkept) && !self.songbook.keep_settings(&self.settings) {
            self.notice = Some(Notice::SettingsNotKept);
        }
    }

    fn set(&mut self, ask: Ask, now: Duration) {
        let before = self.settings.clone();
        self.settings.ask(ask);
        if self.settings == before {
            return;
        }
        self.unkept = true;
        let unchanged = Settings {
            band: before.band.clone(),
            ..self.settings.clone()
        };
        if unchanged == before {
            return; // a matter of the band alone
        }
        let at = self.leader.moment(now);
        if self.settings.instrument() != before.instrument() {
            if self.leader.tone().is_some() {
                self.leader.hush(now); // its strings are others
            }
            // An exercise was made for the hands on the other one.
            self.end_drill(at);
        }
        if let Some((_, stand)) = &mut self.open {
            stand.set(&self.settings, at);
            self.leader.tell(now, stand.told());
        }
        self.called.set();
        self.porch.today = None;
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
        let (open, stand) = self.open.as_mut()?;
        let mut view = stand.view(&self.settings, &self.leader, at);
        view.listed = self.tonight.place(*open).is_some();
        view.next_tune = self
            .tonight
            .next_tune(*open, self.songbook.as_ref(), &self.settings);
        Some(view)
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
