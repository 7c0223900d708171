//! The porch: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, ModelRc};

use super::keep::{fixed, int};
use super::{Interface, made};
use crate::chart::Version;
use crate::desk::{Ask, FollowState, LessonView, PorchAsk, PorchView, Room};
use crate::engraving::{Ground, Page, Sign, Spot, System, Tone};
use crate::words::Words;

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Porch {
    shown: Option<PorchView>,
}

impl Porch {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: PorchView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Porch<'_>>();
        let words = interface.0.words.borrow();
        let old = self.shown.as_ref();
        global.set_there(view.lesson.is_some());
        global.set_home(view.home);
        if old.is_none_or(|old| old.suggestions != view.suggestions) {
            global.set_practise(practise(&words, &view));
        }
        if let Some(lesson) = &view.lesson {
            let old = old.and_then(|old| old.lesson.as_ref());
            show_state(&global, &words, lesson);
            if old.is_none_or(|old| {
                (&old.versions, old.version) != (&lesson.versions, lesson.version)
            }) {
                global.set_versions(versions(&words, lesson));
            }
            if old.is_none_or(|old| (&old.stops, &old.changes) != (&lesson.stops, &lesson.changes))
            {
                exercises(&global, &words, lesson);
            }
            let same_page = old.is_some_and(|old| old.page == lesson.page);
            if !same_page {
                global.set_systems(systems(&words, &lesson.page));
                global.set_system_height(lesson.page.height);
                global.set_system_foot(lesson.page.courses.1 + 0.5 * lesson.page.space);
            }
            if !same_page || old.is_none_or(|old| old.spot != lesson.spot) {
                global.set_head(head(&lesson.page, lesson.spot.as_ref()));
            }
        }
        drop(words);
        self.shown = Some(view);
    }
}

/// The plain values: Slint itself tells whether they change.
fn show_state(global: &made::Porch<'_>, words: &Words, view: &LessonView) {
    global.set_title(view.title.as_str().into());
    global.set_detail(words.lesson(view).into());
    global.set_warning(words.lesson_warning(view).into());
    global.set_why(words.lesson_why(view).into());
    global.set_phrase(words.phrase(view).into());
    global.set_can_back(view.phrase.is_some());
    global.set_can_on(
        view.phrase
            .is_none_or(|phrase| phrase + 1 < view.phrases.len()),
    );
    global.set_shown(words.hidden(view.hidden).into());
    global.set_can_show(view.hidden != view.hidden.step(-1));
    global.set_can_hide(view.hidden != view.hidden.step(1));
    global.set_staff(view.staff);
    global.set_fingers(view.fingers);
    global.set_again(view.again);
    global.set_held(view.follow == FollowState::Held);
    global.set_tempo(crate::words::tempo(view.tempo).into());
    global.set_percent(format!("{} %", view.percent).into());
    global.set_octave(view.octave.map_or_else(Default::default, |octave| {
        words.octave_way(octave.octaves).into()
    }));
    global.set_octave_taken(view.octave.is_some_and(|octave| octave.taken));
    global.set_drill(view.drill.is_some());
}

fn versions(words: &Words, view: &LessonView) -> ModelRc<made::VersionChoice> {
    let names: Vec<String> = view
        .versions
        .iter()
        .map(|one| words.version_chip(one.version))
        .collect();
    // A name's share of the room grows with its length; dots and tick need some in any case.
    let weight = |name: &String| u16::try_from(name.chars().count()).map_or(1.0, f32::from) + 8.0;
    let sum: f32 = names.iter().map(weight).sum();
    fixed(
        view.versions
            .iter()
            .zip(&names)
            .map(|(one, name)| made::VersionChoice {
                name: name.into(),
                hard: one.hard.into(),
                easiest: one.easiest,
                chosen: one.version == view.version,
                share: weight(name) / sum,
                said: words.version_said(one).into(),
            }),
    )
}

fn exercises(global: &made::Porch<'_>, words: &Words, view: &LessonView) {
    let row = |name: String, times: usize| {
        let detail = words.comes(times);
        made::Exercise {
            said: format!("{name}, {detail}").into(),
            name: name.into(),
            detail: detail.into(),
        }
    };
    global.set_stops(fixed(
        view.stops
            .iter()
            .map(|stop| row(words.stop(stop), stop.times)),
    ));
    global.set_changes(fixed(
        view.changes
            .iter()
            .map(|change| row(words.change(change), change.times)),
    ));
}

fn practise(words: &Words, view: &PorchView) -> ModelRc<made::Practise> {
    fixed(view.suggestions.iter().map(|one| {
        let tempo = format!("{} › {}", one.bpm, one.goal);
        made::Practise {
            title: one.title.as_str().into(),
            what: words.suggested(one).into(),
            why: words.suggested_why(one).into(),
            said: words.suggested_said(one, &tempo).into(),
            tempo: tempo.into(),
        }
    }))
}

fn tone(tone: Tone) -> made::Tone {
    match tone {
        Tone::Ink => made::Tone::Ink,
        Tone::Quiet => made::Tone::Quiet,
        Tone::Faint => made::Tone::Faint,
        Tone::Ring => made::Tone::Ring,
    }
}

fn ground(ground: Ground) -> made::PageGround {
    match ground {
        Ground::None => made::PageGround::None,
        Ground::Patch => made::PageGround::Patch,
        Ground::Ring => made::PageGround::Ring,
        Ground::Frame => made::PageGround::Frame,
    }
}

fn systems(words: &Words, page: &Page) -> ModelRc<made::PageSystem> {
    let mut bar = 0;
    let systems: Vec<_> = page
        .systems
        .iter()
        .map(|one| system(words, one, &mut bar))
        .collect();
    fixed(systems)
}

/// A system; `number` counts the full bars of the page.
fn system(words: &Words, system: &System, number: &mut usize) -> made::PageSystem {
    let mut bars: Vec<made::PageBar> = Vec::new();
    let mut lead: Option<f32> = None;
    for (index, place) in system.bars.iter().enumerate() {
        // A pickup is too small to touch: it belongs to the bar that it leads into.
        if place.pickup && index + 1 < system.bars.len() {
            lead.get_or_insert(place.x);
            continue;
        }
        *number += 1;
        let x = lead.take().unwrap_or(place.x);
        bars.push(made::PageBar {
            bar: int(place.bar),
            x,
            width: place.x + place.width - x,
            said: words.bar_of_page(*number).into(),
        });
    }
    made::PageSystem {
        bars: fixed(bars),
        signs: fixed(system.signs.iter().map(sign)),
        words: fixed(system.words.iter().map(|word| made::PageWord {
            x: word.x,
            y: word.y,
            width: word.width,
            size: word.size,
            text: word.text.as_str().into(),
            centred: word.centred,
            bold: word.bold,
            ground: ground(word.ground),
            tone: tone(word.tone),
        })),
        rules: fixed(system.rules.iter().map(|rule| made::PageRule {
            x: rule.x,
            y: rule.y,
            width: rule.width,
            height: rule.height,
            tone: tone(rule.tone),
        })),
        curves: fixed(system.curves.iter().map(|curve| made::PageCurve {
            x: curve.x,
            y: curve.y,
            width: curve.width,
            height: curve.height,
            commands: curve.commands.as_str().into(),
            tone: tone(curve.tone),
        })),
    }
}

fn sign(sign: &Sign) -> made::PageSign {
    made::PageSign {
        x: sign.x,
        y: sign.y,
        em: sign.em,
        sign: sign.sign.to_string().into(),
        tone: tone(sign.tone),
    }
}

/// The ground of the note now: from the pick marks to below the lowest course.
fn head(page: &Page, spot: Option<&Spot>) -> made::PageHead {
    let space = page.space;
    let Some(spot) = spot else {
        return made::PageHead::default();
    };
    let wide = spot.figures.iter().any(|figure| figure.text.len() > 1);
    let width = if wide { 1.8 } else { 1.35 } * space;
    let x = spot.x - width / 2.0;
    let (top, foot) = (page.pick - 1.1 * space, page.courses.1 + 0.65 * space);
    made::PageHead {
        there: true,
        system: int(spot.system),
        x,
        width,
        top,
        height: foot - top,
        size: 1.14 * space,
        figures: fixed(spot.figures.iter().map(|figure| made::PageFigure {
            y: figure.y,
            text: figure.text.as_str().into(),
            rings: figure.rings,
        })),
        pick: spot.pick.map_or_else(Default::default, |pick| {
            sign(&Sign {
                x: pick.x - x,
                y: pick.y - top,
                ..pick
            })
        }),
    }
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Porch<'_>>();
    let porch = |ask| Some(Ask::Porch(ask));
    let fixed = |ask| interface.asks_for(Ask::Porch(ask));
    let index = |index: i32| usize::try_from(index).ok();
    global.on_back(interface.back_from(Room::Porch));
    global.on_from_top(fixed(PorchAsk::FromTop));
    global.on_end_drill(fixed(PorchAsk::EndDrill));
    global.on_show_home(interface.asks(move |_, on| porch(PorchAsk::Home(on))));
    global.on_take(interface.asks(move |_, at| porch(PorchAsk::Take(index(at)?))));
    global.on_version(interface.asks(move |_, at| {
        let version = Version::ALL.get(index(at)?)?;
        porch(PorchAsk::Version(*version))
    }));
    global.on_phrase_by(interface.asks(move |_, by| porch(PorchAsk::PhraseBy(by))));
    global.on_set_again(interface.asks(move |_, on| porch(PorchAsk::Again(on))));
    global.on_faster(interface.asks(move |_, steps| porch(PorchAsk::Faster(steps))));
    global.on_hide_by(interface.asks(move |_, by| porch(PorchAsk::HideBy(by))));
    global.on_set_staff(interface.asks(move |_, on| porch(PorchAsk::Staff(on))));
    global.on_set_fingers(interface.asks(move |_, on| porch(PorchAsk::Fingers(on))));
    global.on_set_octave(interface.asks(move |_, on| porch(PorchAsk::Octave(on))));
    global.on_bar(interface.asks(move |_, at| porch(PorchAsk::Bar(index(at)?))));
    global.on_stop(interface.asks(move |_, at| porch(PorchAsk::Stop(index(at)?))));
    global.on_change(interface.asks(move |_, at| porch(PorchAsk::Change(index(at)?))));
    let weak = Rc::downgrade(&interface.0);
    global.on_paper(move |width, space| {
        if let Some(inner) = weak.upgrade() {
            Interface(inner).ask(Ask::Porch(PorchAsk::Paper(width, space)));
        }
    });
}
