//! The desk: what the app knows, what it can be asked, and what is then to be seen.
//!
//! A view is a plain struct of kinds and numbers; an [`Ask`] changes the state. Time is an argument, and what has to be
//! kept goes through [`Songbook`], so that a whole evening can be played through in a test in milliseconds.

mod ask;
mod cards;
mod follow;
mod list;
mod map;
mod on_stand;
mod settings;
mod songbook;
mod stand;
mod sung;

use std::time::Duration;

pub use ask::{Ask, Room};
pub use follow::BPM;
pub use on_stand::MOST_CAPO;
pub use settings::{FIRST_CHORDS, Language, Settings, SettingsView, Theme, Tuning};
pub use songbook::{Entry, Filter, Songbook, SongbookState, SongbookView, TuneId, TuneRow};
pub use stand::{
    ChordCard, ChordNames, FollowState, FormChip, MapBar, MapLine, MissingNote, NextCard, Passed,
    RingString, ShapeView, Simplify, SlotView, StandView, StrumView, SungWords, Verdict,
};

use crate::frets::Instrument;
use list::List;
use on_stand::OnStand;

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
    settings: Settings,
    list: List,
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
    pub fn new(songbook: Box<dyn Songbook>, settings: Settings, notice: Option<Notice>) -> Self {
        let list = List::new(songbook.as_ref(), &settings);
        Self {
            room: Room::Songbook,
            songbook,
            settings,
            list,
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
    pub fn is_moving(&self, now: Duration) -> bool {
        self.open
            .as_ref()
            .is_some_and(|(_, stand)| stand.is_moving(now))
    }

    /// Grants a wish at a moment, counted from when the app was opened.
    pub fn ask(&mut self, ask: Ask, now: Duration) {
        match ask {
            Ask::Go(Room::Stand) if self.open.is_none() => {}
            Ask::Go(room) => self.room = room,
            Ask::Back => self.room = Room::Songbook,
            Ask::CloseNotice => self.notice = None,
            Ask::Open(id) => self.put_on_stand(id),
            Ask::RestoreShipped => {
                if !self.songbook.restore_shipped() {
                    self.notice = Some(Notice::NotRestored);
                }
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
            | Ask::LessMotion(_) => self.set(ask),
            ask => {
                if let Some((_, stand)) = &mut self.open {
                    stand.ask(&ask, &self.settings, now);
                }
            }
        }
    }

    fn put_on_stand(&mut self, id: TuneId) {
        if self.open.as_ref().is_some_and(|(open, _)| *open == id) {
            self.room = Room::Stand; // as it was left: the same key, the same place
            return;
        }
        match self.songbook.tune(id) {
            Some(tune) => {
                self.open = Some((id, OnStand::new(tune, &self.settings)));
                self.room = Room::Stand;
            }
            None => self.notice = Some(Notice::TuneUnreadable),
        }
    }

    fn set(&mut self, ask: Ask) {
        let before = self.settings.clone();
        self.settings.ask(ask);
        if self.settings == before {
            return;
        }
        if !self.songbook.keep_settings(&self.settings) {
            self.notice = Some(Notice::SettingsNotKept);
        }
        if let Some((_, stand)) = &mut self.open {
            stand.set(&self.settings);
        }
        self.list.reload(self.songbook.as_ref(), &self.settings);
    }

    /// The songbook view.
    pub fn songbook(&self) -> SongbookView {
        self.list.view(self.open.as_ref().map(|(id, _)| *id))
    }

    /// The stand view, if a tune is on the stand.
    pub fn stand(&mut self, now: Duration) -> Option<StandView> {
        let (_, stand) = self.open.as_mut()?;
        Some(stand.view(&self.settings, now))
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
