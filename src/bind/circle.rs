//! The circle: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, SharedString, VecModel};

use super::keep::{fixed, int, keep, shared};
use super::outline::outline;
use super::stand::shape;
use super::{Interface, made, place};
use crate::circle::{CapoHabit, KeyEase, VoiceType};
use crate::desk::{
    Ask, CircleAsk, CircleView, Knows, Plays, Room, SeatChange, SeatChord, SeatView, Sings,
};
use crate::frets::Instrument;
use crate::theory::Reads;
use crate::words::Words;

const KNOWS: [Knows; 4] = [Knows::All, Knows::First, Knows::Four, Knows::Marked];
/// Where a capo goes that somebody has just begun to use (common practice).
const FIRST_CAPO: u8 = 5;

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Circle {
    shown: Option<CircleView>,
    /// The seat that is changed.
    changing: Option<usize>,
    seats: Rc<VecModel<made::SeatCard>>,
    keys: Rc<VecModel<made::KeyRow>>,
}

/// What can be added, in the order of the sheet.
fn to_add() -> Vec<Plays> {
    let instruments = Instrument::all().map(|one| Plays::Instrument(one.id.to_owned()));
    let pages = [Reads::BFlat, Reads::EFlat, Reads::F].map(Plays::Page);
    instruments.chain([Plays::Voice]).chain(pages).collect()
}

impl Circle {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: CircleView) {
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let global = interface.app().global::<made::Circle<'_>>();
        let words = interface.0.words.borrow();
        if self.shown.is_none() {
            global.set_seats(shared(&self.seats));
            global.set_keys(shared(&self.keys));
            let name = |plays: &Plays| SharedString::from(words.plays(plays));
            global.set_to_add(fixed(to_add().iter().map(name)));
            let voice = |&voice: &VoiceType| SharedString::from(words.voice(voice));
            global.set_voices(fixed(VoiceType::ALL.iter().map(voice)));
        }
        let tune = view.tune.as_ref();
        global.set_there(tune.is_some());
        global.set_tune(tune.map_or("", |tune| &tune.title).into());
        let key = tune.map(|tune| words.key_badge(&tune.key.0, &tune.key.1));
        global.set_key(key.unwrap_or_default().into());
        global.set_room(view.room);
        let removed = view.removed.as_ref().map(|seat| words.put_back(seat));
        global.set_removed(removed.unwrap_or_default().into());
        let cards: Vec<_> = view.seats.iter().map(|seat| card(&words, seat)).collect();
        let with_chords = view.seats.iter().zip(&cards).filter(|(seat, _)| {
            let sheet = seat.sheet.as_ref();
            seat.set.plays != Plays::Voice && sheet.is_some_and(|sheet| !sheet.chords.is_empty())
        });
        global.set_rows(fixed(with_chords.map(|(_, card)| card.clone())));
        keep(&self.seats, cards);
        let sheet = view.seats.first().and_then(|seat| seat.sheet.as_ref());
        let sounding = sheet.map_or(&[][..], |sheet| &sheet.chords);
        global.set_sounding(fixed(sounding.iter().map(|chord| {
            let plain = SeatChord {
                held: None,
                written: None,
                shape: None,
                ..chord.clone()
            };
            self::chord(&words, &plain)
        })));
        keep(&self.keys, keys(&words, &view));
        global.set_looked_at(int(view.looked_at));
        let looked_at = view.keys.get(view.looked_at);
        let tuned = looked_at.is_some_and(|key| key.seats.iter().any(|seat| seat.tuned.is_some()));
        let care = tuned.then(|| words.get("retune-care"));
        global.set_care(care.unwrap_or_default().into());
        global.set_found(fixed(
            view.finder
                .rows
                .iter()
                .map(|row| super::tonight::found(&words, row)),
        ));
        global.set_found_count(words.found_count(&view.finder).into());
        drop(words);
        self.shown = Some(view);
        self.show_change(interface);
    }

    /// Shows what can be changed about the seat that is changed.
    fn show_change(&self, interface: &Interface) {
        let global = interface.app().global::<made::Circle<'_>>();
        let Some(view) = &self.shown else { return };
        let changing = self.changing.filter(|&seat| seat < view.seats.len());
        global.set_changing(changing.map_or(-1, int));
        if let Some(seat) = changing {
            let words = interface.0.words.borrow();
            global.set_change(change(&words, &view.seats[seat], (seat, view.seats.len())));
        }
    }
}

fn chord(words: &Words, chord: &SeatChord) -> made::SeatChord {
    let own = chord.own();
    let higher = chord.shape.as_ref().filter(|shape| shape.first_fret > 1);
    made::SeatChord {
        own: own.into(),
        sounding: if own == chord.sounding {
            ""
        } else {
            &chord.sounding
        }
        .into(),
        has_shape: chord.shape.is_some(),
        shape: { chord.shape.as_ref() }
            .map(|view| shape(words, own, view))
            .unwrap_or_default(),
        turned: outline(own),
        fret: outline(&higher.map_or(String::new(), |shape| shape.first_fret.to_string())),
    }
}

fn card(words: &Words, seat: &SeatView) -> made::SeatCard {
    let name = words.seat(&seat.title);
    let (show, change) = words.seat_signs(&seat.title);
    let tight = seat.sheet.as_ref().is_some_and(|sheet| sheet.tight);
    // Who brings nothing but a voice plays no chords.
    let sheet = { seat.sheet.as_ref() }.filter(|_| seat.set.plays != Plays::Voice);
    let chords = sheet.map_or(&[][..], |sheet| &sheet.chords);
    // Across the circle, the capo belongs to the name.
    let across = match sheet.filter(|sheet| sheet.capo > 0) {
        Some(sheet) => format!("{name} · {} {}", words.get("stand-capo"), sheet.capo),
        None => name.clone(),
    };
    made::SeatCard {
        turned: outline(&across),
        across: across.into(),
        name: name.into(),
        detail: words.seat_detail(seat).into(),
        care: if tight {
            words.get("retune-care")
        } else {
            String::new()
        }
        .into(),
        chords: fixed(chords.iter().map(|chord| self::chord(words, chord))),
        show_said: show.into(),
        change_said: change.into(),
    }
}

fn ease(ease: KeyEase) -> made::Ease {
    match ease {
        KeyEase::Easy => made::Ease::Easy,
        KeyEase::Fair => made::Ease::Fair,
        KeyEase::Hard => made::Ease::Hard,
    }
}

fn keys(words: &Words, view: &CircleView) -> Vec<made::KeyRow> {
    let row = |key: &crate::desk::RankedView| {
        let name = words.key_badge(&key.key.0, &key.key.1);
        let sentence = words.key_sentence(key, view, false);
        let mark = words.key_mark(key);
        let cell = |(in_key, seat): (&crate::desk::SeatKeyView, &SeatView)| {
            let (word, reasons) = words.seat_in_key(in_key);
            made::SeatCell {
                name: words.seat(&seat.title).into(),
                ease: ease(in_key.ease),
                word: word.into(),
                reasons: reasons.into(),
            }
        };
        made::KeyRow {
            said: format!("{name} {mark}, {sentence}")
                .replace(" ,", ",")
                .into(),
            name: name.into(),
            ease: key.ease.into(),
            sentence: sentence.into(),
            brief: words.key_sentence(key, view, true).into(),
            mark: mark.into(),
            play: words.play_in(&key.key).into(),
            cells: fixed(key.seats.iter().zip(&view.seats).map(cell)),
        }
    };
    view.keys.iter().map(row).collect()
}

fn change(words: &Words, seat: &SeatView, (at, count): (usize, usize)) -> made::SeatChange {
    let (capo, fret) = match seat.set.habit() {
        CapoHabit::Never => (0, FIRST_CAPO),
        CapoHabit::UpTo(most) => (1, most),
        CapoHabit::Always(fret) => (2, fret),
    };
    let tuning = seat.tunings.iter().position(|tuning| tuning.chosen);
    let (low, high) = seat.voice.clone().unwrap_or_default();
    made::SeatChange {
        name: seat.title.name.as_str().into(),
        title: words.seat(&seat.title).into(),
        player: seat.title.player,
        fretted: matches!(seat.set.plays, Plays::Instrument(_)),
        tunings: fixed(
            { seat.tunings.iter() }.map(|tuning| SharedString::from(tuning.notes.join(" "))),
        ),
        tuning: tuning.map_or(-1, int),
        capo,
        capo_fret: fret.into(),
        left_handed: seat.set.left_handed,
        knows: place(&KNOWS, &seat.set.knows),
        known: { seat.known.as_ref() }
            .map_or(String::new(), |known| known.join(" "))
            .into(),
        sings: seat.set.sings.is_some(),
        only_voice: seat.set.plays == Plays::Voice,
        voice: match seat.set.sings {
            Some(Sings::Type(voice)) => place(&VoiceType::ALL, &voice),
            _ => -1,
        },
        low: low.into(),
        high: high.into(),
        first: at <= 1,
        last: at + 1 == count,
    }
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Circle<'_>>();
    let circle = |ask| Some(Ask::Circle(ask));
    global.on_back(interface.back_from(Room::Circle));
    global.on_add(interface.asks(move |_, index: i32| {
        let plays = to_add().into_iter().nth(usize::try_from(index).ok()?)?;
        circle(CircleAsk::Add(plays))
    }));
    global.on_remove(
        interface.asks(move |_, seat: i32| circle(CircleAsk::Remove(usize::try_from(seat).ok()?))),
    );
    global.on_put_back(interface.asks_for(Ask::Circle(CircleAsk::PutBack)));
    let moves = interface.asks(move |interface, (seat, by): (i32, i32)| {
        let seat = usize::try_from(seat).ok()?;
        // The sheet stays with the seat.
        let mut circle = interface.0.circle.borrow_mut();
        circle.changing = seat.checked_add_signed(isize::try_from(by).ok()?);
        Some(Ask::Circle(CircleAsk::Move(seat, by)))
    });
    global.on_move(move |seat, by| moves((seat, by)));
    global.on_look(
        interface
            .asks(|interface, key| tonic(interface, key).map(CircleAsk::Look).map(Ask::Circle)),
    );
    global.on_play(
        interface
            .asks(|interface, key| tonic(interface, key).map(CircleAsk::Play).map(Ask::Circle)),
    );
    global.on_find(
        interface.asks(move |_, words: SharedString| circle(CircleAsk::Find(words.into()))),
    );
    global.on_choose(interface.asks(move |interface, found: i32| {
        let Ok(found) = usize::try_from(found) else {
            return circle(CircleAsk::Tune(None));
        };
        let view = interface.0.circle.borrow();
        let row = view.shown.as_ref()?.finder.rows.get(found)?;
        circle(CircleAsk::Tune(Some(row.id)))
    }));
    global.on_to_settings(interface.asks_for(Ask::Go(Room::Settings)));
    let weak = Rc::downgrade(&interface.0);
    global.on_changes(move |seat| {
        if let Some(inner) = weak.upgrade() {
            let interface = Interface(inner);
            let mut circle = interface.0.circle.borrow_mut();
            circle.changing = usize::try_from(seat).ok();
            circle.show_change(&interface);
        }
    });
    hook_changes(interface, &global);
}

/// Callbacks about the seat that is changed.
fn hook_changes(interface: &Interface, global: &made::Circle<'_>) {
    fn of(interface: &Interface, change: SeatChange) -> Option<Ask> {
        let seat = interface.0.circle.borrow().changing?;
        Some(Ask::Circle(CircleAsk::Change(seat, change)))
    }
    global.on_set_name(
        interface
            .asks(|interface, name: SharedString| of(interface, SeatChange::Name(name.into()))),
    );
    global.on_let_go(interface.asks_for(Ask::Circle(CircleAsk::LetGo)));
    global.on_set_tuning(interface.asks(|interface, index: i32| {
        let seat = interface.0.circle.borrow().changing?;
        let circle = interface.0.circle.borrow();
        let tunings = &circle.shown.as_ref()?.seats.get(seat)?.tunings;
        let tuning = tunings.get(usize::try_from(index).ok()?)?;
        of(interface, SeatChange::Tuning(tuning.semitones.clone()))
    }));
    let capo = interface.asks(|interface, (habit, fret): (i32, i32)| {
        let fret = u8::try_from(fret).ok()?;
        let habit = match habit {
            1 => CapoHabit::UpTo(fret),
            2 => CapoHabit::Always(fret),
            _ => CapoHabit::Never,
        };
        of(interface, SeatChange::Capo(habit))
    });
    global.on_set_capo(move |habit, fret| capo((habit, fret)));
    global.on_set_left_handed(
        interface.asks(|interface, on| of(interface, SeatChange::LeftHanded(on))),
    );
    global.on_set_knows(
        interface
            .asks(|interface, index| of(interface, SeatChange::Knows(super::at(&KNOWS, index)?))),
    );
    global.on_set_sings(interface.asks(|interface, on: bool| {
        let voice = SeatChange::Voice(VoiceType::Group);
        of(interface, if on { voice } else { SeatChange::Silent })
    }));
    global.on_set_voice(interface.asks(|interface, index| {
        of(
            interface,
            SeatChange::Voice(super::at(&VoiceType::ALL, index)?),
        )
    }));
    global.on_low(
        interface.asks(|interface, by: i32| of(interface, SeatChange::Low(i8::try_from(by).ok()?))),
    );
    global.on_high(
        interface
            .asks(|interface, by: i32| of(interface, SeatChange::High(i8::try_from(by).ok()?))),
    );
}

/// The tonic of a ranked key.
fn tonic(interface: &Interface, key: i32) -> Option<crate::theory::NoteName> {
    let circle = interface.0.circle.borrow();
    let keys = &circle.shown.as_ref()?.keys;
    Some(keys.get(usize::try_from(key).ok()?)?.tonic)
}
