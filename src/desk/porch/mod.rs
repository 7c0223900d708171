//! The porch: where one practises what the circle will play.
//!
//! It shows the tune that is on the stand, in the called key and for the player's hands, and plays it with the same band
//! and clock; what is added is the page, a version, a phrase, what is covered, and a log.

mod lesson;
mod log;
mod view;

use std::cell::RefCell;
use std::collections::HashMap;

use chrono::NaiveDate;

use crate::chart::{Tune, Version};

pub(in crate::desk) use lesson::{Exercises, Lesson, PageDesk, stop_view};
pub(in crate::desk) use log::{Facts, suggestions};
pub use log::{Practice, Reason, Stretch, Suggestion};
pub use view::{
    ChangeView, Drill, Laid, LessonView, OctaveView, PhraseView, PorchView, StopView, VersionView,
};

use super::ask::Room;
use super::on_stand::{usual_tempo, whole_bpm};
use super::songbook::{Songbook, TuneId};

/// A wish on the porch.
#[derive(Debug, Clone, PartialEq)]
pub enum PorchAsk {
    /// The page is so wide, and its courses lie so far apart, in dp.
    Paper(f32, f32),
    /// What there is to practise today, or back to the page.
    Home(bool),
    /// One of today's suggestions, by its place: its tune, phrase, version, key and tempo.
    Take(usize),
    /// A version of the tune.
    Version(Version),
    /// A phrase, or the whole tune.
    Phrase(Option<usize>),
    /// So many phrases on; before the first is the whole tune.
    PhraseBy(i32),
    /// Again and again, or once.
    Again(bool),
    /// So many steps of five per cent of the tune's own tempo faster.
    Faster(i32),
    /// So many steps more of the page covered, or fewer below 0.
    HideBy(i32),
    /// A staff above the tablature.
    Staff(bool),
    /// A row of fingers.
    Fingers(bool),
    /// The melody in the octave that is on offer, or as written.
    Octave(bool),
    /// From the top of the phrase that is played.
    FromTop,
    /// To a written bar of the page.
    Bar(usize),
    /// A double stop of the tune as an exercise, by its place in the list.
    Stop(usize),
    /// A change of chords as an exercise, on the stand.
    Change(usize),
    /// Back from an exercise to the tune.
    EndDrill,
}

/// What the porch keeps beside the tune on the stand.
#[derive(Debug)]
pub(super) struct Porch {
    pub(super) desk: PageDesk,
    /// What to practise is shown, not the page.
    pub(super) home: bool,
    /// Where one came from.
    pub(super) from: Room,
    pub(super) log: Vec<Practice>,
    /// What is known of tunes that were practised.
    facts: HashMap<TuneId, Option<Facts>>,
    /// Today's suggestions, as long as nothing has changed.
    pub(super) today: Option<(NaiveDate, Vec<Suggestion>)>,
}

impl Porch {
    pub(super) fn new(songbook: &dyn Songbook) -> Self {
        Self {
            desk: PageDesk::default(),
            home: false,
            from: Room::Songbook,
            log: songbook.practice(),
            facts: HashMap::new(),
            today: None,
        }
    }

    /// Today's suggestions. Tunes to begin with are the one on the stand, then those whose chords are known.
    pub(super) fn today(
        &mut self,
        songbook: &dyn Songbook,
        fresh: impl FnOnce() -> Vec<TuneId>,
    ) -> &[Suggestion] {
        let day = songbook.today();
        if self.today.as_ref().is_none_or(|(known, _)| *known != day) {
            let known = RefCell::new(&mut self.facts);
            let facts = |id| {
                let mut known = known.borrow_mut();
                let look = || songbook.tune(id).map(|tune| facts_of(&tune));
                known.entry(id).or_insert_with(look).clone()
            };
            let found = suggestions(&self.log, day, facts, fresh().into_iter());
            self.today = Some((day, found));
        }
        self.today.as_ref().map_or(&[], |(_, found)| found)
    }

    /// The songbook is another one: nothing that was found out about its tunes holds any more.
    pub(super) fn forget(&mut self) {
        self.facts.clear();
        self.today = None;
    }

    /// Writes down a clean pass.
    pub(super) fn keep(&mut self, songbook: &mut dyn Songbook, practice: Practice) {
        self.today = None;
        let same = self.log.iter_mut().find(|entry| entry.same(&practice));
        let entry = match same {
            Some(entry) => {
                entry.bpm = entry.bpm.max(practice.bpm);
                entry.passes = entry.passes.saturating_add(practice.passes);
                *entry
            }
            None => {
                self.log.push(practice);
                practice
            }
        };
        // That nothing can be kept this evening is said when the songbook is opened.
        let _ = songbook.keep_practice(&entry);
    }
}

/// What the suggestions have to know of a tune.
fn facts_of(tune: &Tune) -> Facts {
    let views = Lesson::new(tune, 0.0).phrase_views;
    let own = views
        .iter()
        .zip(0_u16..)
        .filter(|(view, _)| view.same_as.is_none());
    Facts {
        title: tune.title.clone(),
        own: own.map(|(_, place)| place).collect(),
        phrases: views
            .iter()
            .map(|view| (view.part.clone(), view.number))
            .collect(),
        bpm: u16::try_from(whole_bpm(usual_tempo(tune).bpm)).unwrap_or(u16::MAX),
    }
}
