//! The tune on the stand as it is practised on the porch.

use std::rc::Rc;

use chrono::NaiveDate;

use crate::chart::{Tempo, Ticks, Tune, Version};

use super::super::cards::style;
use super::super::follow::Place;
use super::super::players::Moment;
use super::super::porch::{
    Drill, Exercises, Laid, LessonView, PageDesk, PorchAsk, Practice, stop_view,
};
use super::super::settings::Settings;
use super::super::songbook::TuneId;
use super::{OnStand, part_of_whole, whole_bpm};

/// The tempo in per cent of the tune's own: a step, the least and the most.
const PERCENT: i32 = 5;
const LEAST: i32 = 25;
const MOST: i32 = 150;
/// Exercises of each kind that are offered.
const EXERCISES: usize = 8;

impl OnStand {
    /// What the player wishes of the lesson. Wishes about other things are left alone.
    pub(in crate::desk) fn ask_porch(&mut self, ask: &PorchAsk, at: Moment) {
        match *ask {
            // An exercise has none of these.
            PorchAsk::Version(_)
            | PorchAsk::Phrase(_)
            | PorchAsk::PhraseBy(_)
            | PorchAsk::Octave(_)
                if self.is_drill() => {}
            PorchAsk::Version(version) => {
                self.lesson.version = version;
                self.plan.forget();
                self.begin_anew(at);
            }
            PorchAsk::Phrase(phrase) => {
                self.lesson.phrase = phrase.filter(|&phrase| phrase < self.lesson.phrases());
                self.loop_stretch(self.lesson.phrase.is_some(), at);
                self.go_to_stretch(at);
            }
            PorchAsk::PhraseBy(by) => {
                let count = i64::try_from(self.lesson.phrases()).unwrap_or(0);
                let now = self
                    .lesson
                    .phrase
                    .map_or(-1, |phrase| i64::try_from(phrase).unwrap_or(0));
                let next = (now + i64::from(by)).clamp(-1, count - 1);
                self.ask_porch(&PorchAsk::Phrase(usize::try_from(next).ok()), at);
            }
            PorchAsk::Again(again) => {
                self.loop_stretch(again, at);
            }
            PorchAsk::Faster(steps) => {
                let now = i32::try_from(self.percent()).unwrap_or(100);
                let step = if steps > 0 {
                    now.div_euclid(PERCENT)
                } else {
                    (now + PERCENT - 1).div_euclid(PERCENT)
                };
                let percent = ((step + steps) * PERCENT).clamp(LEAST, MOST);
                #[allow(clippy::cast_precision_loss)] // 25 to 150
                let bpm = self.lesson.usual * percent as f32 / 100.0;
                self.follow.change_bpm(&self.playing, at, bpm);
                self.begin_anew(at);
            }
            PorchAsk::HideBy(by) => self.lesson.hidden = self.lesson.hidden.step(by),
            PorchAsk::Octave(take) => {
                let hands = (&self.hands.instrument, self.hands.capo);
                self.lesson.take_octave(&self.played, hands, take);
                self.plan.forget();
                self.begin_anew(at);
            }
            PorchAsk::FromTop => {
                if self.again() {
                    self.loop_stretch(true, at);
                }
                self.go_to_stretch(at);
            }
            PorchAsk::Bar(bar) => {
                let place = self.follow.place(&self.playing, at);
                if let Some(played) = self.playing.find(bar, place.bar) {
                    self.follow.jump(&self.playing, at, played);
                }
            }
            _ => {}
        }
        self.replace(at);
    }

    /// Sets the tempo in beats a minute.
    pub(in crate::desk) fn set_bpm(&mut self, bpm: u16, at: Moment) {
        self.follow.change_bpm(&self.playing, at, bpm.into());
        self.begin_anew(at);
    }

    /// The stretch that is practised begins again: a pass in which something changed is no clean pass of either.
    pub(super) fn begin_anew(&mut self, at: Moment) {
        let (passes, _) = self.follow.clean_passes(at);
        self.lesson.counted = passes + u32::from(self.follow.is_clean(at));
    }

    fn go_to_stretch(&mut self, at: Moment) {
        let place = self.follow.place(&self.playing, at);
        let from = if place.ended { 0 } else { place.bar };
        let written = self.playing.bars.get(from).map_or(0, |bar| bar.written);
        // In the whole tune, the phrase that is played now.
        let here = || self.lesson.phrase_at(written).filter(|_| from > 0);
        let phrase = self.lesson.phrase.or_else(here);
        let range = phrase.and_then(|phrase| self.lesson.range(&self.playing, phrase, from));
        self.go_to(range.map_or(Ticks::ZERO, |range| range.0), at);
    }

    /// To a moment of the time through, where a pass begins.
    pub(in crate::desk) fn go_to(&mut self, start: Ticks, at: Moment) {
        self.follow.jump_to(&self.playing, at, start);
        self.begin_anew(at);
    }

    /// Whether what is practised comes again and again: it, and not another loop.
    fn again(&self) -> bool {
        self.plan.range(&self.playing).is_some() && self.plays_stretch()
    }

    /// Plays what is practised again and again, or no more.
    fn loop_stretch(&mut self, again: bool, at: Moment) {
        let place = self.follow.place(&self.playing, at);
        let from = if place.ended { 0 } else { place.bar };
        let range = match self.lesson.phrase {
            _ if !again => None,
            Some(phrase) => self.lesson.range(&self.playing, phrase, from),
            None => Some((Ticks::ZERO, self.playing.length)),
        };
        self.plan.set_stretch(&self.playing, range);
        self.follow.set_range(at, self.plan.range(&self.playing));
        self.begin_anew(at);
    }

    fn percent(&self) -> u32 {
        whole_bpm(self.follow.tempo().bpm * 100.0 / self.lesson.usual.max(1.0))
    }

    /// Clean passes of the stretch that have not been written down: how many, in beats a minute of the last one.
    pub(in crate::desk) fn practised(&mut self, at: Moment) -> Option<(u16, u16)> {
        let (passes, bpm) = self.follow.clean_passes(at);
        // One ahead is a pass that is not to count; it is none ahead where that is no clean one any more.
        let ahead = u32::from(self.follow.is_clean(at));
        self.lesson.counted = self.lesson.counted.min(passes + ahead);
        let new = passes
            .checked_sub(self.lesson.counted)
            .filter(|&new| new > 0)?;
        self.lesson.counted = passes;
        self.plays_stretch().then_some((
            u16::try_from(new).unwrap_or(u16::MAX),
            u16::try_from(whole_bpm(bpm)).unwrap_or(u16::MAX),
        ))
    }

    /// Whether a pass is one of the stretch that is practised, and not of another loop or of the whole tune around it.
    fn plays_stretch(&self) -> bool {
        let range = self.plan.range(&self.playing);
        let Some(phrase) = self.lesson.phrase else {
            let whole = (Ticks::ZERO, self.playing.length);
            return range.is_none_or(|range| range == whole);
        };
        let bar = range.and_then(|(start, _)| self.playing.bar_at(start));
        let own = bar.and_then(|bar| self.lesson.range(&self.playing, phrase, bar));
        own.is_some() && own == range
    }

    /// What is practised now, on a day, with no pass so far.
    pub(in crate::desk) fn practises(&self, tune: TuneId, day: NaiveDate) -> Practice {
        Practice {
            day,
            tune,
            stretch: self.lesson.stretch(),
            version: self.lesson.version,
            key: self.key().tonic,
            bpm: 0,
            passes: 0,
        }
    }

    /// Whether it is an exercise, and nothing of the songbook.
    pub(in crate::desk) fn is_drill(&self) -> bool {
        self.drill.is_some()
    }

    /// Whether it is a double stop, which lies at one place of the neck.
    pub(in crate::desk) fn drills_stop(&self) -> bool {
        matches!(self.drill, Some((Drill::Stop(_), _)))
    }

    /// The tune, also where an exercise stands in place of it.
    pub(in crate::desk) fn whole(&self) -> &Self {
        match &self.drill {
            Some((_, Some(tune))) => tune,
            _ => self,
        }
    }

    /// The lesson as it is seen at a moment. `clean` is the fastest clean pass of what is practised, today.
    pub(in crate::desk) fn lesson(
        &mut self,
        settings: &Settings,
        desk: &PageDesk,
        clean: Option<u16>,
        at: Moment,
    ) -> LessonView {
        let style = style(settings);
        let place = self.follow.place(&self.playing, at);
        let hands = (&self.hands.instrument, self.hands.capo);
        let page = self.lesson.page(&self.played, hands, desk, style);
        let versions = self.lesson.versions(&self.played, hands);
        let version = self.lesson.version;
        let octave = self.lesson.octave(&self.played, hands);
        let arranged = self.lesson.arrangement(&self.played, hands, version);
        let (report, off_the_neck) = (arranged.report.clone(), arranged.off_the_neck);
        let against = arranged.against.clone();
        let names = self.hands.courses();
        let rings = report
            .courses
            .iter()
            .map(|&course| names.get(course).cloned().unwrap_or_default());
        let rings = rings.collect();
        let (stops, changes) = self.exercises();
        let tempo = self.follow.tempo();
        let spot = self.spot_at(&page, place);
        LessonView {
            title: self.tune.title.clone(),
            rhythm: self.rhythm(),
            key: self.key().tonic.in_style(style),
            mode: self.key().mode.id().to_owned(),
            versions,
            version: self.lesson.version,
            phrases: self.lesson.phrase_views.clone(),
            phrase: self.lesson.phrase,
            again: self.again(),
            hidden: self.lesson.hidden,
            staff: desk.staff,
            fingers: desk.fingers,
            rings: (report, rings),
            off_the_neck,
            octave,
            against,
            spot,
            page: Laid(page),
            follow: self.follow_state(place),
            tempo: (whole_bpm(tempo.bpm), part_of_whole(tempo.beat)),
            percent: self.percent(),
            ramp: self.plan.ramp_view(),
            clean,
            stops,
            changes,
            drill: self.drill.as_ref().map(|(drill, _)| drill.clone()),
        }
    }

    fn spot_at(
        &self,
        page: &crate::engraving::Page,
        place: Place,
    ) -> Option<crate::engraving::Spot> {
        let bar = self.playing.bars.get(place.bar)?;
        page.spot(bar.written, place.at - bar.start).cloned()
    }

    /// The exercises of the tune.
    fn exercises(&mut self) -> Exercises {
        if let Some((stops, changes)) = &self.lesson.drills {
            return (Rc::clone(stops), Rc::clone(changes));
        }
        // An exercise has no exercises.
        if self.is_drill() {
            return Exercises::default();
        }
        let drills = self.stop_drills();
        let names = self.hands.courses();
        let name = |course: usize| names.get(course).cloned().unwrap_or_default();
        let stops = drills.iter().map(|drill| stop_view(drill, name)).collect();
        let changes = self
            .played
            .change_drills(&self.hands.instrument, self.hands.capo);
        let changes = changes.into_iter().take(EXERCISES);
        let changes = changes.map(|drill| self.hands.change(&drill)).collect();
        let (stops, changes) = (Rc::new(stops), Rc::new(changes));
        self.lesson.drills = Some((Rc::clone(&stops), Rc::clone(&changes)));
        (stops, changes)
    }

    fn stop_drills(&mut self) -> Vec<crate::chart::StopDrill> {
        let hands = (&self.hands.instrument, self.hands.capo);
        let arranged = self
            .lesson
            .arrangement(&self.played, hands, Version::DoubleStops);
        let mut drills = arranged.tab.stop_drills();
        drills.truncate(EXERCISES);
        drills
    }

    /// An exercise in place of the tune, which is put aside: a double stop for the porch, a change of chords for the stand.
    pub(in crate::desk) fn drill(
        &mut self,
        ask: &PorchAsk,
        settings: &Settings,
        rate: u32,
    ) -> Option<Self> {
        if self.is_drill() {
            return None;
        }
        let (metre, key) = (self.tune.metre, self.played.key);
        let names = self.hands.courses();
        let name = |course: usize| names.get(course).cloned().unwrap_or_default();
        let (tune, given, drill) = match *ask {
            PorchAsk::Stop(index) => {
                let found = self.stop_drills().into_iter().nth(index)?;
                let view = stop_view(&found, name);
                let (tune, tab) =
                    found.exercise(metre, key, (&self.hands.instrument, self.hands.capo))?;
                (tune, Some(tab), Drill::Stop(view))
            }
            PorchAsk::Change(index) => {
                let changes = self
                    .played
                    .change_drills(&self.hands.instrument, self.hands.capo);
                let found = changes.into_iter().nth(index)?;
                let style = style(settings);
                let said = Drill::Change(found.from.in_style(style), found.to.in_style(style));
                (found.exercise(metre, key), None, said)
            }
            _ => return None,
        };
        let capo = self.hands.capo.fret;
        let mut exercise = Self::new(
            Tune {
                title: self.tune.title.clone(),
                ..tune
            },
            settings,
            rate,
        );
        exercise.hands = super::Hands::new(settings, capo);
        exercise.names = self.names;
        exercise.lesson.version = Version::DoubleStops;
        exercise.lesson.given = given;
        exercise.drill = Some((drill, None));
        Some(exercise)
    }

    /// Keeps the tune that an exercise stands in place of, and begins the loop at its tempo.
    pub(in crate::desk) fn instead_of(&mut self, tune: Self, at: Moment) {
        let tempo = tune.tempo();
        let usual = Tempo {
            bpm: tune.lesson.usual,
            ..tempo
        };
        if let Some((_, aside)) = &mut self.drill {
            *aside = Some(Box::new(tune));
        }
        // The exercise may count in another note than the tune.
        let beat = self.follow.tempo().beat;
        self.lesson.usual = usual.counted_in(beat).bpm;
        let bpm = tempo.counted_in(beat).bpm;
        self.follow.change_bpm(&self.playing, at, bpm);
        self.loop_stretch(true, at);
    }

    /// The tune that this exercise stands in place of.
    pub(in crate::desk) fn put_back(self) -> Option<Self> {
        self.drill.and_then(|(_, aside)| aside).map(|aside| *aside)
    }
}
