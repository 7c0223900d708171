//! The settings: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, SharedString, VecModel};

use super::keep::{fixed, keep, shared};
use super::{Interface, at, made, place};
use crate::desk::{Ask, Language, SettingsView, Theme, Tuning};
use crate::frets::RETUNE;
use crate::theory::Naming;

const THEMES: [Theme; 3] = [Theme::Ebony, Theme::Spruce, Theme::Sun];
const NAMINGS: [Naming; 3] = [Naming::English, Naming::German, Naming::Solfege];
const LANGUAGES: [Option<Language>; 4] = [
    None,
    Some(Language::English),
    Some(Language::Spanish),
    Some(Language::German),
];
/// Each language in its own words; the first place is the system's choice, which the view words.
const LANGUAGE_NAMES: [&str; 4] = ["", "English", "Español", "Deutsch"];

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Settings {
    shown: Option<SettingsView>,
    tunings: Rc<VecModel<made::Tuning>>,
    courses: Rc<VecModel<made::Course>>,
    known: Rc<VecModel<made::Known>>,
}

impl Settings {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: SettingsView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Settings<'_>>();
        let words = interface.0.words.borrow();
        let settings = &view.settings;
        let instrument = |id: &String| SharedString::from(words.instrument(id));
        global.set_instruments(fixed(view.instruments.iter().map(instrument)));
        global.set_instrument(place(&view.instruments, &settings.instrument));
        let tuning = |tuning: &Tuning| made::Tuning {
            notes: tuning.notes.join(" ").into(),
            chosen: tuning.chosen,
        };
        let course = |(name, off): &(String, i8)| made::Course {
            name: name.into(),
            off: (*off).into(),
            less_said: words.retune(name, false).into(),
            more_said: words.retune(name, true).into(),
        };
        if self.shown.is_none() {
            global.set_tunings(shared(&self.tunings));
            global.set_courses(shared(&self.courses));
        }
        keep(&self.tunings, view.tunings.iter().map(tuning).collect());
        keep(&self.courses, view.courses.iter().map(course).collect());
        global.set_tight(view.courses.iter().any(|&(_, off)| off > 0));
        global.set_least_off((*RETUNE.start()).into());
        global.set_most_off((*RETUNE.end()).into());
        global.set_left_handed(settings.left_handed);
        global.set_theme(place(&THEMES, &settings.theme));
        global.set_languages(fixed(LANGUAGE_NAMES.map(SharedString::from)));
        global.set_language(place(&LANGUAGES, &settings.language));
        global.set_note_names(place(&NAMINGS, &settings.naming));
        global.set_less_motion(settings.less_motion);
        global.set_version(words.version().into());
        let known = |(_, name, known): &(String, String, bool)| made::Known {
            name: name.into(),
            known: *known,
        };
        if self.shown.is_none() {
            global.set_known(shared(&self.known));
        }
        keep(&self.known, view.chords.iter().map(known).collect());
        drop(words);
        self.shown = Some(view);
    }
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Settings<'_>>();
    global.on_back(interface.asks_for(Ask::Back));
    global.on_restore(interface.asks_for(Ask::RestoreShipped));
    global.on_set_left_handed(interface.asks(|_, on| Some(Ask::LeftHanded(on))));
    global.on_set_less_motion(interface.asks(|_, on| Some(Ask::LessMotion(on))));
    global.on_set_theme(interface.asks(|_, index| at(&THEMES, index).map(Ask::Theme)));
    global.on_set_language(interface.asks(|_, index| at(&LANGUAGES, index).map(Ask::Language)));
    global.on_set_note_names(interface.asks(|_, index| at(&NAMINGS, index).map(Ask::NoteNames)));
    global.on_set_instrument(interface.asks(|interface, index: i32| {
        let view = interface.0.settings.borrow();
        let index = usize::try_from(index).ok()?;
        let id = view.shown.as_ref()?.instruments.get(index)?;
        Some(Ask::Instrument(id.clone()))
    }));
    global.on_set_tuning(interface.asks(|interface, index: i32| {
        let view = interface.0.settings.borrow();
        let index = usize::try_from(index).ok()?;
        let tuning = view.shown.as_ref()?.tunings.get(index)?;
        Some(Ask::Tuning(tuning.semitones.clone()))
    }));
    let weak = Rc::downgrade(&interface.0);
    global.on_retune(move |course, semitones| {
        let place = usize::try_from(course)
            .ok()
            .zip(i8::try_from(semitones).ok());
        if let Some((inner, (course, by))) = weak.upgrade().zip(place) {
            Interface(inner).ask(Ask::Retune(course, by));
        }
    });
    let weak = Rc::downgrade(&interface.0);
    global.on_set_known(move |index, known| {
        let Some(inner) = weak.upgrade() else { return };
        let id = {
            let view = inner.settings.borrow();
            let chords = view.shown.as_ref().map(|view| &view.chords);
            let index = usize::try_from(index).ok();
            let chord = chords
                .zip(index)
                .and_then(|(chords, index)| chords.get(index));
            chord.map(|(id, _, _)| id.clone())
        };
        if let Some(id) = id {
            Interface(inner).ask(Ask::Know(id, known));
        }
    });
}
