//! A host whose views stand still, so that a picture of them can be told from another.

use std::time::Duration;

use fourcourse::bind::Host;
use fourcourse::desk::{
    Ask, CalledView, CircleView, Language, Notice, Room, SettingsView, SongbookView, StandView,
    Theme, TonightView,
};

use super::{called, people, sample};

/// A host whose views stand still.
#[derive(Clone)]
pub(crate) struct Still {
    pub(crate) room: Room,
    pub(crate) stand: Option<StandView>,
    pub(crate) songbook: SongbookView,
    pub(crate) called: Option<CalledView>,
    pub(crate) settings: SettingsView,
    pub(crate) notice: Option<Notice>,
    pub(crate) circle: CircleView,
    pub(crate) tonight: TonightView,
}

impl Host for Still {
    fn ask(&mut self, _: Ask, _: Duration) {}

    fn room(&self) -> Room {
        self.room
    }

    fn stand(&mut self, _: Duration) -> Option<StandView> {
        self.stand.clone()
    }

    fn is_moving(&mut self, _: Duration) -> bool {
        false
    }

    fn notice(&self) -> Option<Notice> {
        self.notice.clone()
    }

    fn circle(&mut self) -> CircleView {
        self.circle.clone()
    }

    fn tonight(&self) -> TonightView {
        self.tonight.clone()
    }

    fn songbook(&self) -> SongbookView {
        self.songbook.clone()
    }

    fn called(&mut self) -> CalledView {
        let view = self.called.clone();
        view.unwrap_or_else(|| called::nothing_called().called())
    }

    fn settings(&self) -> SettingsView {
        self.settings.clone()
    }
}

impl Still {
    pub(crate) fn new(room: Room, theme: Theme) -> Self {
        Self {
            room,
            stand: Some(sample::reel()),
            songbook: sample::songbook(),
            called: None,
            settings: sample::settings(theme),
            notice: None,
            circle: people::circle(),
            tonight: people::tonight(),
        }
    }

    pub(crate) fn speaking(mut self, language: Language) -> Self {
        self.settings.settings.language = Some(language);
        self
    }

    pub(crate) fn with(mut self, stand: StandView) -> Self {
        self.stand = Some(stand);
        self
    }
}
