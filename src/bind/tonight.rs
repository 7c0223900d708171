//! Tonight's list: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, SharedString, VecModel};

use super::keep::{fixed, int, keep, shared};
use super::{Interface, at, made, place};
use crate::desk::{Ask, Found, TonightAsk, TonightRow, TonightView};
use crate::words::Words;

/// Days that a tune was not played, to choose from.
const UNPLAYED: [Option<u16>; 4] = [None, Some(14), Some(60), Some(365)];

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Tonight {
    shown: Option<TonightView>,
    tunes: Rc<VecModel<made::ListTune>>,
    found: Rc<VecModel<made::FoundTune>>,
}

impl Tonight {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: TonightView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Tonight<'_>>();
        let words = interface.0.words.borrow();
        if self.shown.is_none() {
            global.set_tunes(shared(&self.tunes));
            global.set_found(shared(&self.found));
        }
        let row = |(at, row): (usize, &TonightRow)| line(&words, at, row);
        keep(&self.tunes, view.rows.iter().enumerate().map(row).collect());
        let found = view.finder.rows.iter().map(|row| self::found(&words, row));
        keep(&self.found, found.collect());
        global.set_count(words.list_count(view.rows.len()).into());
        global.set_found_count(words.found_count(&view.finder).into());
        let undo = view.undo.as_ref().map(|undo| words.undo(undo));
        global.set_undo(undo.unwrap_or_default().into());
        let saving = view.saving.as_ref().map(|saving| words.saving(saving));
        global.set_saving(saving.unwrap_or_default().into());
        let then = view.saving.map(|saving| saving.then);
        global.set_tight(then.is_some_and(|then| then.pegs > 0));
        let next = view.rows.iter().position(|row| row.next);
        let title = next.map(|next| view.rows[next].title.as_str());
        global.set_next(title.unwrap_or_default().into());
        global.set_next_at(next.map_or(-1, int));
        global.set_words(view.finder.finding.words.as_str().into());
        global.set_unplayed(place(&UNPLAYED, &view.finder.finding.unplayed));
        global.set_everyone(view.finder.finding.everyone);
        let mut log = Vec::new();
        for evening in &view.evenings {
            log.push(made::PlayedLine {
                day: words.evening(evening).into(),
                ..made::PlayedLine::default()
            });
            log.extend(evening.tunes.iter().map(|(title, key)| made::PlayedLine {
                day: SharedString::default(),
                title: title.into(),
                key: words.key_badge(&key.0, &key.1).into(),
            }));
        }
        global.set_log(fixed(log));
        drop(words);
        self.shown = Some(view);
    }
}

fn line(words: &Words, at: usize, row: &TonightRow) -> made::ListTune {
    let detail = words.listed(row);
    let key = words.key_badge(&row.key, &row.mode);
    made::ListTune {
        said: format!("{}. {}, {key}, {detail}", at + 1, row.title).into(),
        title: row.title.as_str().into(),
        detail: detail.into(),
        key: key.into(),
        moved: row.moved,
        open: row.open,
        played: row.last.as_ref().is_some_and(|last| last.days == 0),
    }
}

/// A tune that was found.
pub(super) fn found(words: &Words, row: &Found) -> made::FoundTune {
    let detail = words.found(row);
    let key = words.key_badge(&row.key, &row.mode);
    made::FoundTune {
        said: format!("{}, {key}, {detail}", row.title).into(),
        title: row.title.as_str().into(),
        detail: detail.into(),
        key: key.into(),
        listed: row.listed,
    }
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Tonight<'_>>();
    fn tonight(ask: TonightAsk) -> Option<Ask> {
        Some(Ask::Tonight(ask))
    }
    let place = |at: i32| usize::try_from(at).ok();
    global.on_back(interface.asks_for(Ask::Back));
    global.on_open(interface.asks(move |_, at| tonight(TonightAsk::Open(place(at)?))));
    global.on_remove(interface.asks(move |_, at| tonight(TonightAsk::Remove(place(at)?))));
    global.on_take_back(interface.asks_for(Ask::Tonight(TonightAsk::Undo)));
    global.on_by_keys(interface.asks_for(Ask::Tonight(TonightAsk::ByKeys)));
    global
        .on_find(interface.asks(|_, words: SharedString| tonight(TonightAsk::Find(words.into()))));
    global.on_set_unplayed(
        interface.asks(|_, index| tonight(TonightAsk::Unplayed(at(&UNPLAYED, index)?))),
    );
    global.on_set_everyone(interface.asks(|_, on| tonight(TonightAsk::Everyone(on))));
    let moves = interface
        .asks(move |_, (at, to): (i32, i32)| tonight(TonightAsk::Move(place(at)?, place(to)?)));
    global.on_move(move |at, to| moves((at, to)));
    let keys =
        interface.asks(move |_, (at, by): (i32, i32)| tonight(TonightAsk::KeyUp(place(at)?, by)));
    global.on_key_up(move |at, by| keys((at, by)));
    let lists = interface.asks(move |interface, (found, on): (i32, bool)| {
        let view = interface.0.tonight.borrow();
        let row = view.shown.as_ref()?.finder.rows.get(place(found)?)?;
        tonight(TonightAsk::List(row.id, on))
    });
    global.on_list(move |found, on| lists((found, on)));
}
