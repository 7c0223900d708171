//! What was called: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, SharedString, VecModel};

use super::keep::{fixed, int, keep, shared};
use super::{Interface, made, stand};
use crate::desk::{
    Ask, CalledAsk, CalledFace, CalledView, ChordCard, ChordNames, HeldName, HeldView, KeyView,
    MOST_CAPO, Room, SetupView, Verdict,
};
use crate::theory::Mode;
use crate::words::Words;

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Called {
    shown: Option<CalledView>,
    models: Option<Models>,
}

/// Models whose rows stay what they are under a finger.
struct Models {
    tunes: Rc<VecModel<made::CalledTune>>,
    keys: Rc<VecModel<SharedString>>,
    chords: Rc<VecModel<made::Chord>>,
    ring: Rc<VecModel<made::RingString>>,
    hand: Rc<VecModel<made::TouchCourse>>,
}

impl Models {
    fn new(global: &made::Called<'_>) -> Self {
        let models = Self {
            tunes: Rc::default(),
            keys: Rc::default(),
            chords: Rc::default(),
            ring: Rc::default(),
            hand: Rc::default(),
        };
        global.set_tunes(shared(&models.tunes));
        global.set_keys(shared(&models.keys));
        global.set_chords(shared(&models.chords));
        global.set_ring(shared(&models.ring));
        global.set_hand(shared(&models.hand));
        models
    }
}

impl Called {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: CalledView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Called<'_>>();
        let words = interface.0.words.borrow();
        let models = self.models.get_or_insert_with(|| Models::new(&global));
        let old = self.shown.as_ref();
        show_call(&global, &words, models, &view);
        if old.is_none_or(|old| old.key != view.key)
            && let Some(key) = &view.key
        {
            show_key(&global, &words, models, key);
        }
        if old.is_none_or(|old| old.held != view.held) {
            show_held(&global, &words, models, &view.held);
        }
        drop(words);
        self.shown = Some(view);
    }
}

fn show_call(global: &made::Called<'_>, words: &Words, models: &Models, view: &CalledView) {
    global.set_held(view.face == CalledFace::Held);
    // These two have the screen to themselves, and no way bar leads back there.
    global.set_has_back(matches!(view.from, Room::Stand | Room::Porch));
    if global.get_words() != view.words {
        global.set_words(view.words.as_str().into());
    }
    let row = |row: &crate::desk::CalledTune| made::CalledTune {
        title: row.tune.title.as_str().into(),
        detail: words.called_tune(row).into(),
        start: words.called_start(row).into(),
        key: words.key_badge(&row.tune.key, &row.tune.mode).into(),
        called: row.called,
        open: row.open,
    };
    keep(&models.tunes, view.tunes.iter().map(row).collect());
    let more = view.found - view.tunes.len();
    global.set_more(words.called_more(more).into());
    global.set_nothing(!view.words.trim().is_empty() && view.found == 0);
    let names = view.keys.iter().map(|(name, _)| name.into());
    keep(&models.keys, names.collect());
    global.set_key(view.chosen.map_or(-1, int));
    global.set_modes(fixed(Mode::ALL.map(|mode| words.mode(mode).into())));
    global.set_mode(super::place(&Mode::ALL, &view.mode));
    let stand = view.to_stand.as_ref();
    let way = stand.map(|tune| words.to_stand_in(&words.key_badge(&tune.key, &tune.mode)));
    global.set_to_stand(way.unwrap_or_default().into());
    global.set_to_stand_tune(stand.map_or("", |tune| &tune.title).into());
}

fn show_key(global: &made::Called<'_>, words: &Words, models: &Models, view: &KeyView) {
    let chord = |card: &ChordCard| made::Chord {
        // The bare number: the card of the key's chords has no room for a word, and needs none.
        other: card.other.as_str().into(),
        ..stand::chord(words, ChordNames::Letters, card)
    };
    keep(&models.chords, view.chords.iter().map(chord).collect());
    let ring = |ring: &crate::desk::RingString| made::RingString {
        name: ring.name.as_str().into(),
        verdict: match ring.verdict {
            Verdict::Ring => made::Ringing::Ring,
            Verdict::Colour => made::Ringing::Leave,
            Verdict::Clash => made::Ringing::Clash,
        },
        said: words.ring_in_key(ring).into(),
    };
    keep(&models.ring, view.ring.iter().map(ring).collect());
    global.set_courses(fixed(view.courses.iter().map(SharedString::from)));
    global.set_strings(fixed(view.strings.iter().map(|&count| count.into())));
    global.set_frets(view.frets.into());
    let mark = |mark: &crate::desk::ScaleMark| made::ScaleMark {
        course: int(mark.course),
        fret: mark.fret.into(),
        note: mark.note.as_str().into(),
        degree: mark.degree.into(),
    };
    global.set_scale(fixed(view.scale.iter().map(mark)));
    global.set_scale_said(words.scale(view).into());
    let badge = |other: &crate::desk::OtherKey| words.key_badge(&other.name, other.key.mode.id());
    global.set_relative(badge(&view.relative).into());
    global.set_parallel(badge(&view.parallel).into());
    let capo = |capo: &crate::desk::CapoView| made::Setup {
        words: words.capo(capo).into(),
        good: capo.easiest,
    };
    global.set_capos(fixed(view.capos.iter().map(capo)));
    let setups = |id: &str| {
        let ways = view.setups.iter().filter(|setup| setup.instrument == id);
        let way = |(at, setup): (usize, &SetupView)| made::Setup {
            words: words.setup(setup).into(),
            good: at == 0,
        };
        fixed(ways.enumerate().map(way))
    };
    global.set_fiddle(setups("fiddle"));
    global.set_banjo(setups("banjo"));
}

fn show_held(global: &made::Called<'_>, words: &Words, models: &Models, view: &HeldView) {
    let instruments = view.instruments.iter();
    global.set_instruments(fixed(instruments.map(|id| words.instrument(id).into())));
    global.set_instrument(int(view.instrument));
    global.set_neighbour(words.neighbour(view).into());
    global.set_capo(view.capo.into());
    global.set_most_capo(MOST_CAPO.into());
    let course = |at: usize| {
        let (name, fret) = (&view.courses[at], view.frets[at]);
        made::TouchCourse {
            name: name.into(),
            strings: view.strings[at].into(),
            fret: fret.map_or(-1, i32::from),
            first: view.first_frets[at].into(),
            said: words.above_nut(name, fret).into(),
        }
    };
    keep(&models.hand, (0..view.courses.len()).map(course).collect());
    global.set_last_fret(view.last_fret.into());
    global.set_untouched(view.untouched);
    global.set_notes(words.sounds(&view.notes).into());
    let name = |name: &HeldName| {
        let card = ChordCard {
            name: name.name.clone(),
            ..ChordCard::default()
        };
        let (root, rest) = card.pieces();
        let detail = words.held_detail(name);
        made::HeldName {
            root: root.into(),
            rest: rest.into(),
            said: format!("{} {detail}", name.name).trim().into(),
            detail: detail.into(),
        }
    };
    global.set_names(fixed(view.names.iter().map(name)));
}

/// An ask that what is shown decides.
fn shown<T, F>(interface: &Interface, ask: F) -> impl Fn(T) + use<T, F>
where
    T: 'static,
    F: Fn(&CalledView, T) -> Option<CalledAsk> + 'static,
{
    interface.asks(move |interface, value| {
        let called = interface.0.called.borrow();
        ask(called.shown.as_ref()?, value).map(Ask::Called)
    })
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Called<'_>>();
    let index = |at: i32| usize::try_from(at).ok();
    global.on_back(interface.asks_for(Ask::Called(CalledAsk::Leave)));
    global.on_face(interface.asks(|_, held| {
        let face = if held {
            CalledFace::Held
        } else {
            CalledFace::Call
        };
        Some(Ask::Called(CalledAsk::Face(face)))
    }));
    global.on_search(
        interface.asks(|_, words: SharedString| Some(Ask::Called(CalledAsk::Words(words.into())))),
    );
    global.on_choose_key(shown(interface, move |view, at| {
        view.keys
            .get(index(at)?)
            .map(|(_, key)| CalledAsk::Key(*key))
    }));
    global
        .on_choose_mode(interface.asks(|_, at| {
            super::at(&Mode::ALL, at).map(|mode| Ask::Called(CalledAsk::Mode(mode)))
        }));
    let relative = shown(interface, |view, ()| {
        Some(CalledAsk::Key(view.key.as_ref()?.relative.key))
    });
    global.on_choose_relative(move || relative(()));
    let parallel = shown(interface, |view, ()| {
        Some(CalledAsk::Key(view.key.as_ref()?.parallel.key))
    });
    global.on_choose_parallel(move || parallel(()));
    global.on_open(shown(interface, move |view, at| {
        view.tunes
            .get(index(at)?)
            .map(|row| CalledAsk::Open(row.tune.id))
    }));
    global.on_go_to_stand(interface.asks_for(Ask::Called(CalledAsk::ToStand)));
    let finger = interface.asks(move |_, (course, fret): (i32, i32)| {
        let fret = u8::try_from(fret).ok()?;
        Some(Ask::Called(CalledAsk::Finger(index(course)?, fret)))
    });
    global.on_finger(move |course, fret| finger((course, fret)));
    global.on_damp(
        interface.asks(move |_, course| Some(Ask::Called(CalledAsk::Damp(index(course)?)))),
    );
    global.on_release(interface.asks_for(Ask::Called(CalledAsk::Release)));
    global.on_held_on(shown(interface, move |view, at| {
        view.held
            .instruments
            .get(index(at)?)
            .cloned()
            .map(CalledAsk::HeldOn)
    }));
    global.on_set_capo(interface.asks(|_, fret: i32| {
        u8::try_from(fret)
            .ok()
            .map(|fret| Ask::Called(CalledAsk::HeldCapo(fret)))
    }));
}
