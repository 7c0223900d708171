//! The songbook: view struct to Slint, callbacks to asks.

use std::cell::RefCell;
use std::rc::Rc;

use slint::{ComponentHandle, Model, ModelNotify, ModelRc, ModelTracker, SharedString};

use super::keep::{fixed, int};
use super::{Interface, made};
use crate::desk::{Ask, Room, SongbookState, SongbookView, TuneId, TuneRow};
use crate::theory::Key;
use crate::words::Words;

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Songbook {
    shown: Option<SongbookView>,
    tunes: Option<Rc<Tunes>>,
}

/// The list of tunes: a row is put into words only when it comes into view, so that ten thousand cost what ten do.
struct Tunes {
    rows: RefCell<Vec<Rc<TuneRow>>>,
    open: RefCell<Option<TuneId>>,
    words: Rc<RefCell<Words>>,
    notify: ModelNotify,
}

impl Model for Tunes {
    type Data = made::Tune;

    fn row_count(&self) -> usize {
        self.rows.borrow().len()
    }

    fn row_data(&self, row: usize) -> Option<made::Tune> {
        let rows = self.rows.borrow();
        let tune = rows.get(row)?;
        Some(made::Tune {
            title: tune.title.as_str().into(),
            detail: self.words.borrow().tune(tune).into(),
            key: self.words.borrow().key_badge(&tune.key, &tune.mode).into(),
            open: *self.open.borrow() == Some(tune.id),
        })
    }

    fn model_tracker(&self) -> &dyn ModelTracker {
        &self.notify
    }
}

impl Songbook {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: SongbookView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Songbook<'_>>();
        let tunes = self.tunes.get_or_insert_with(|| {
            let tunes = Rc::new(Tunes {
                rows: RefCell::default(),
                open: RefCell::default(),
                words: Rc::clone(&interface.0.words),
                notify: ModelNotify::default(),
            });
            global.set_tunes(ModelRc::from(
                Rc::clone(&tunes) as Rc<dyn Model<Data = made::Tune>>
            ));
            tunes
        });
        let words = interface.0.words.borrow();
        let old = self.shown.as_ref();
        global.set_shelf(match view.state {
            SongbookState::Tunes => made::Shelf::Tunes,
            SongbookState::Empty => made::Shelf::Empty,
            SongbookState::NothingFits => made::Shelf::NothingFits,
        });
        global.set_count(words.tunes(&view).into());
        global.set_words(view.filter.words.as_str().into());
        global.set_known(view.filter.known);
        if old.is_none_or(|old| old.keys != view.keys) {
            let badge = |(name, key): &(String, Key)| words.key_badge(name, key.mode.id()).into();
            global.set_keys(fixed(view.keys.iter().map(badge)));
        }
        if old.is_none_or(|old| old.rhythms != view.rhythms) {
            let name = |id: &String| SharedString::from(words.rhythm(id));
            global.set_rhythms(fixed(view.rhythms.iter().map(name)));
        }
        let key = view.filter.key;
        let key = view.keys.iter().position(|(_, one)| Some(*one) == key);
        global.set_key(key.map_or(-1, int));
        let rhythm = &view.filter.rhythm;
        let rhythm = view.rhythms.iter().position(|one| one == rhythm);
        global.set_rhythm(rhythm.map_or(-1, int));
        drop(words);
        let same = old.is_some_and(|old| old.rows == view.rows && old.open == view.open);
        if !same {
            tunes.rows.replace(view.rows.clone());
            tunes.open.replace(view.open);
            tunes.notify.reset();
        }
        self.shown = Some(view);
    }
}

/// Tells which tune waits on the stand.
pub(super) fn on_stand(interface: &Interface, title: String) {
    let global = interface.app().global::<made::Songbook<'_>>();
    global.set_on_stand(title.into());
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Songbook<'_>>();
    global.on_search(interface.asks(|_, words: SharedString| Some(Ask::Search(words.into()))));
    global.on_only_known(interface.asks(|_, on| Some(Ask::OnlyKnown(on))));
    global.on_to_stand(interface.asks_for(Ask::Go(Room::Stand)));
    global.on_to_settings(interface.asks_for(Ask::Go(Room::Settings)));
    global.on_restore(interface.asks_for(Ask::RestoreShipped));
    global.on_choose_key(interface.asks(|interface, index| {
        let view = interface.0.songbook.borrow();
        let keys = &view.shown.as_ref()?.keys;
        let key = usize::try_from(index)
            .ok()
            .and_then(|index| keys.get(index));
        Some(Ask::OnlyKey(key.map(|(_, key)| *key)))
    }));
    global.on_choose_rhythm(interface.asks(|interface, index| {
        let view = interface.0.songbook.borrow();
        let rhythms = &view.shown.as_ref()?.rhythms;
        let index = usize::try_from(index).ok();
        let rhythm = index.and_then(|index| rhythms.get(index));
        Some(Ask::OnlyRhythm(rhythm.cloned().unwrap_or_default()))
    }));
    global.on_open(interface.asks(|interface, index: i32| {
        let view = interface.0.songbook.borrow();
        let row = usize::try_from(index).ok()?;
        let tune = view.shown.as_ref()?.rows.get(row)?;
        Some(Ask::Open(tune.id))
    }));
    let weak = Rc::downgrade(&interface.0);
    global.on_clear(move || {
        if let Some(inner) = weak.upgrade() {
            let interface = Interface(inner);
            interface.ask(Ask::Search(String::new()));
            interface.ask(Ask::OnlyKey(None));
            interface.ask(Ask::OnlyRhythm(String::new()));
            interface.ask(Ask::OnlyKnown(false));
        }
    });
}
