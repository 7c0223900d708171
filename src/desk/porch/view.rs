//! The porch as it is seen.

use std::ops::Deref;
use std::rc::Rc;

use crate::chart::{DroneReport, Version};
use crate::engraving::{Hidden, Page, Spot};

use super::super::band::RampView;
use super::super::stand::{FollowState, ShapeView};
use super::log::Suggestion;

/// A page that is laid out. It is equal to itself alone: comparing two pages mark by mark at every frame would cost more
/// than drawing them.
#[derive(Debug, Clone)]
pub struct Laid(pub(in crate::desk) Rc<Page>);

impl PartialEq for Laid {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Deref for Laid {
    type Target = Page;

    fn deref(&self) -> &Page {
        &self.0
    }
}

/// A version of the tune to choose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct VersionView {
    /// Which.
    pub version: Version,
    /// How hard it is, from 1 to 5.
    pub hard: u8,
    /// It is the easiest in which two courses ring half of the time.
    pub easiest: bool,
}

/// A phrase to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhraseView {
    /// The part that it lies in.
    pub part: String,
    /// Which phrase of the part it is, from 1.
    pub number: u16,
    /// It has the notes of this one, by its place in the list.
    pub same_as: Option<usize>,
}

/// A move by octaves that suits the neck better than what is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OctaveView {
    /// How many, from what players of the instrument read; down below 0.
    pub octaves: i8,
    /// It is made; otherwise it is on offer.
    pub taken: bool,
    /// It is on offer because it brings all notes onto the neck.
    pub all: bool,
}

/// A double stop as an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StopView {
    /// Course, fret and finger of both notes, the lower course first; finger 0 is open.
    pub notes: [(String, u8, u8); 2],
    /// How often the tune has it.
    pub times: usize,
}

/// A change of chords as an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangeView {
    /// The chords in the player's names.
    pub chords: (String, String),
    /// Their shapes.
    pub shapes: Option<(ShapeView, ShapeView)>,
    /// How often the tune has the change.
    pub times: usize,
}

/// The exercise that is played in place of the tune.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Drill {
    /// A double stop.
    Stop(StopView),
    /// A change of chords.
    Change(String, String),
}

/// The porch view.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PorchView {
    /// What there is to practise is shown, and not the page.
    pub home: bool,
    /// Today's suggestions.
    pub suggestions: Vec<Suggestion>,
    /// The page of the tune on the stand; `None` where there is none.
    pub lesson: Option<LessonView>,
}

/// The tune that is practised.
#[derive(Debug, Clone, PartialEq)]
pub struct LessonView {
    /// Its title.
    pub title: String,
    /// Its rhythm by id, or the tune's own word.
    pub rhythm: String,
    /// The key that it is played in, in the player's names.
    pub key: String,
    /// Its mode by id.
    pub mode: String,
    /// The versions in the order in which they are taught.
    pub versions: Rc<[VersionView]>,
    /// The one that is shown.
    pub version: Version,
    /// The phrases.
    pub phrases: Rc<[PhraseView]>,
    /// The one that is practised; `None` is the whole tune.
    pub phrase: Option<usize>,
    /// It is played again and again.
    pub again: bool,
    /// What is covered.
    pub hidden: Hidden,
    /// There is a staff.
    pub staff: bool,
    /// There is a row of fingers.
    pub fingers: bool,
    /// What rings and why, with the names of the courses that do.
    pub rings: (DroneReport, Vec<String>),
    /// Notes that the neck does not have.
    pub off_the_neck: usize,
    /// The move by octaves that brings them onto it, or that suits it better.
    pub octave: Option<OctaveView>,
    /// Bars in which the tune marks the pick against the hand.
    pub against: Option<String>,
    /// The page.
    pub page: Laid,
    /// The moment of the page that is played now.
    pub spot: Option<Spot>,
    /// How it is followed.
    pub follow: FollowState,
    /// Beats a minute and the length of a beat as a fraction of a whole note.
    pub tempo: (u32, (u32, u32)),
    /// The same in per cent of the tune's own tempo.
    pub percent: u32,
    /// Faster after each clean pass.
    pub ramp: RampView,
    /// Beats a minute of the fastest clean pass of what is practised, today.
    pub clean: Option<u16>,
    /// Double stops that the tune needs, the most frequent first.
    pub stops: Rc<Vec<StopView>>,
    /// Its changes of chords, the hardest first.
    pub changes: Rc<Vec<ChangeView>>,
    /// The exercise that is played in place of the tune.
    pub drill: Option<Drill>,
}
