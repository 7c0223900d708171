//! The tune on the stand as a lesson: its arrangement, its page, what of it is practised.

use std::collections::HashMap;
use std::rc::Rc;

use crate::chart::{
    Arrangement, DroneReport, Phrase, Playing, StopDrill, Ticks, Tune, Version, Wishes, dots,
    easiest_that_rings,
};
use crate::engraving::{Hidden, Page, Paper, Piece};
use crate::frets::{Capo, Ease, Instrument};
use crate::theory::NoteStyle;

use super::log::Stretch;
use super::view::{ChangeView, OctaveView, PhraseView, StopView, VersionView};

/// What the page is laid out for, whatever tune lies on it.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::desk) struct PageDesk {
    /// Width and the distance of two courses, in dp.
    pub(in crate::desk) paper: (f32, f32),
    pub(in crate::desk) staff: bool,
    pub(in crate::desk) fingers: bool,
}

impl Default for PageDesk {
    fn default() -> Self {
        let paper = Paper::default();
        Self {
            paper: (paper.width, paper.space),
            staff: paper.staff,
            fingers: paper.fingers,
        }
    }
}

/// Double stops and chord changes.
pub(in crate::desk) type Exercises = (Rc<Vec<StopView>>, Rc<Vec<ChangeView>>);

/// An arrangement, with what its notes come to.
#[derive(Debug, Clone)]
pub(in crate::desk) struct Arranged {
    pub(in crate::desk) tab: Rc<Arrangement>,
    pub(in crate::desk) report: DroneReport,
    pub(in crate::desk) off_the_neck: usize,
    /// Bars in which the tune marks the pick against the hand.
    pub(in crate::desk) against: Option<String>,
}

impl Arranged {
    fn new(tune: &Tune, tab: Arrangement) -> Self {
        Self {
            report: tab.drone_report(),
            off_the_neck: tab.off_the_neck().count(),
            against: tab.bars_marked_against(tune),
            tab: Rc::new(tab),
        }
    }
}

/// A lesson: what is chosen, and what was computed of it so far.
#[derive(Debug)]
pub(in crate::desk) struct Lesson {
    pub(in crate::desk) version: Version,
    pub(in crate::desk) phrase: Option<usize>,
    pub(in crate::desk) hidden: Hidden,
    /// Octaves that the melody is to be moved by from what is written; `None` leaves it to the arrangement.
    octaves: Option<i8>,
    /// The move that was taken back.
    taken_back: Option<i8>,
    /// Beats a minute of the tune itself.
    pub(in crate::desk) usual: f32,
    phrases: Vec<Phrase>,
    /// The same by part, as they are seen.
    pub(in crate::desk) phrase_views: Rc<[PhraseView]>,
    /// When each written bar begins.
    starts: Vec<Ticks>,
    /// The arrangement of an exercise, which is not looked for.
    pub(in crate::desk) given: Option<Arrangement>,
    arranged: HashMap<Version, Arranged>,
    versions: Option<Rc<[VersionView]>>,
    page: Option<(Paper, Version, Rc<Page>)>,
    pub(in crate::desk) drills: Option<Exercises>,
    /// Clean passes that are written down already, or that do not count because something changed in them.
    pub(in crate::desk) counted: u32,
}

impl Lesson {
    pub(in crate::desk) fn new(tune: &Tune, usual: f32) -> Self {
        let mut lesson = Self {
            version: Version::Plain,
            phrase: None,
            hidden: Hidden::Nothing,
            octaves: None,
            taken_back: None,
            usual,
            starts: tune.starts(),
            phrases: tune.phrases(),
            phrase_views: Rc::default(),
            given: None,
            arranged: HashMap::new(),
            versions: None,
            page: None,
            drills: None,
            counted: 0,
        };
        lesson.phrase_views = lesson.views_of_phrases(tune);
        lesson
    }

    /// The key or the neck has changed.
    pub(in crate::desk) fn forget(&mut self) {
        (self.octaves, self.taken_back) = (None, None);
        self.arrange_anew();
    }

    /// The courses have other names.
    pub(in crate::desk) fn name_anew(&mut self) {
        self.drills = None;
    }

    /// The chords have changed.
    pub(in crate::desk) fn arrange_anew(&mut self) {
        self.arranged.clear();
        (self.versions, self.page, self.drills) = (None, None, None);
    }

    fn wishes(&self) -> Wishes {
        Wishes {
            octaves: self.octaves,
            ..Wishes::default()
        }
    }

    /// The octaves that the melody is moved by, or that would suit it better.
    pub(in crate::desk) fn octave(
        &mut self,
        tune: &Tune,
        hands: (&Instrument, Capo),
    ) -> Option<OctaveView> {
        let tab = &self.arrangement(tune, hands, self.version).tab;
        let (moved, usual, offered) = (tab.moved(), tab.usual, tab.offered);
        let on_offer = || Some(offered? - usual);
        let taken = moved != 0;
        let octaves = match taken {
            true => moved,
            false => on_offer().or(self.taken_back)?,
        };
        Some(OctaveView {
            octaves,
            taken,
            all: !taken && offered.is_some(),
        })
    }

    /// Moves the melody by these octaves, or back to where it is written.
    pub(in crate::desk) fn take_octave(
        &mut self,
        tune: &Tune,
        hands: (&Instrument, Capo),
        take: bool,
    ) {
        let octave = self.octave(tune, hands).map(|octave| octave.octaves);
        let moved = octave.filter(|_| take).unwrap_or(0);
        self.octaves = Some(hands.0.usual_octave() + moved);
        self.taken_back = octave.filter(|_| !take);
        self.arrange_anew();
    }

    pub(in crate::desk) fn phrases(&self) -> usize {
        self.phrases.len()
    }

    pub(in crate::desk) fn stretch(&self) -> Stretch {
        let phrase = self.phrase.and_then(|phrase| u16::try_from(phrase).ok());
        phrase.map_or(Stretch::Whole, Stretch::Phrase)
    }

    /// The tune arranged in a version.
    pub(in crate::desk) fn arrangement(
        &mut self,
        tune: &Tune,
        hands: (&Instrument, Capo),
        version: Version,
    ) -> &Arranged {
        let (given, wishes) = (&self.given, version.wishes(self.wishes()));
        let arrange = || {
            let tab = match given {
                Some(given) => given.clone(),
                None => tune.arranged(hands.0, hands.1, wishes),
            };
            Arranged::new(tune, tab)
        };
        self.arranged.entry(version).or_insert_with(arrange)
    }

    /// The versions with how hard they are.
    pub(in crate::desk) fn versions(
        &mut self,
        tune: &Tune,
        hands: (&Instrument, Capo),
    ) -> Rc<[VersionView]> {
        let wishes = self.wishes();
        let rate = || {
            let rated = tune.versions(hands.0, hands.1, wishes);
            let easiest = easiest_that_rings(&rated);
            let one = |(&(version, _), hard): (&(Version, Ease), u8)| VersionView {
                version,
                hard,
                easiest: easiest == Some(version),
            };
            rated.iter().zip(dots(&rated)).map(one).collect()
        };
        self.versions.get_or_insert_with(rate).clone()
    }

    /// The page, laid out anew only where something that it depends on has changed.
    pub(in crate::desk) fn page(
        &mut self,
        tune: &Tune,
        (instrument, capo): (&Instrument, Capo),
        desk: &PageDesk,
        style: NoteStyle,
    ) -> Rc<Page> {
        let paper = Paper {
            width: desk.paper.0,
            space: desk.paper.1,
            staff: desk.staff,
            fingers: desk.fingers,
            hidden: self.hidden,
            stretch: self
                .phrase
                .and_then(|phrase| Some(self.phrases.get(phrase)?.time.clone())),
            style,
            ..Paper::default()
        };
        if let Some((old, version, page)) = &self.page
            && *old == paper
            && *version == self.version
        {
            return Rc::clone(page);
        }
        let version = self.version;
        let tab = Rc::clone(&self.arrangement(tune, (instrument, capo), version).tab);
        let piece = Piece::of(tune, &tab, instrument);
        let page = Rc::new(Page::of(piece, &paper));
        self.page = Some((paper, self.version, Rc::clone(&page)));
        page
    }

    fn views_of_phrases(&self, tune: &Tune) -> Rc<[PhraseView]> {
        let parts = tune.parts_or_derived();
        let mut last = (None, 0);
        let one = |phrase: &Phrase| {
            let bar = self.bar_of(phrase.time.start);
            let part = parts.iter().rposition(|part| part.first_bar <= bar);
            last = match last {
                (same, number) if same == part => (part, number + 1),
                _ => (part, 1),
            };
            PhraseView {
                part: part.map_or(String::new(), |part| parts[part].label.clone()),
                number: last.1,
                same_as: phrase.same_as,
            }
        };
        self.phrases.iter().map(one).collect()
    }

    fn bar_of(&self, at: Ticks) -> usize {
        self.starts
            .partition_point(|&start| start <= at)
            .saturating_sub(1)
    }

    /// The phrase that a written bar begins in, or leads to.
    pub(in crate::desk) fn phrase_at(&self, bar: usize) -> Option<usize> {
        let start = *self.starts.get(bar)?;
        self.phrases
            .iter()
            .rposition(|phrase| phrase.time.start <= start)
    }

    /// From when to when a phrase goes in a time through: where it is played next from a bar on, as far as its bars follow
    /// each other.
    pub(in crate::desk) fn range(
        &self,
        playing: &Playing,
        phrase: usize,
        from: usize,
    ) -> Option<(Ticks, Ticks)> {
        let time = &self.phrases.get(phrase)?.time;
        let first = self.bar_of(time.start);
        let run = playing.run(from);
        let here = playing.bars[run.clone()]
            .iter()
            .position(|bar| bar.written == first);
        let begin = here
            .map(|here| run.start + here)
            .or_else(|| playing.find(first, from))?;
        let start = playing.bars[begin].start + (time.start - self.starts[first]);
        let mut end = start;
        let mut before = None;
        for bar in &playing.bars[begin..] {
            let written = self.starts[bar.written];
            if written >= time.end || before.is_some_and(|before| bar.written <= before) {
                break;
            }
            end = bar.start + bar.length.min(time.end - written);
            before = Some(bar.written);
        }
        (end > start).then_some((start, end))
    }
}

/// A double stop as it is shown; `name` gives the name of a course.
pub(in crate::desk) fn stop_view(drill: &StopDrill, name: impl Fn(usize) -> String) -> StopView {
    StopView {
        notes: drill.notes.map(|(course, fret, finger)| {
            let finger = finger.map_or(0, |finger| finger.number());
            (name(course), fret, finger)
        }),
        times: drill.times,
    }
}
