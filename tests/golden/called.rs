//! Pictures of what was called, as a desk over the shipped tunes answers it.

use std::time::Duration;

use fourcourse::desk::{Ask, CalledAsk, CalledFace, Desk, Room, Settings, Theme, TuneId};
use fourcourse::start::silent_players;
use fourcourse::store::Memory;

use crate::still::Still;
use crate::{compare, compare_after};

/// A desk with no tunes at which nothing was called.
pub(crate) fn nothing_called() -> Desk {
    let empty = Box::new(Memory::new(Vec::new()));
    Desk::new(empty, silent_players(), Settings::default(), None)
}

/// The Millrace Reel is on the stand, and this is asked.
fn asked(theme: Theme, asks: &[CalledAsk]) -> Still {
    let mut desk = fourcourse::start::in_memory(silent_players());
    let rows = desk.songbook().rows;
    let reel = rows.iter().find(|row| row.title == "Millrace Reel");
    let reel = reel.map_or(TuneId(1), |row| row.id);
    let asks = asks.iter().cloned().map(Ask::Called);
    let before = [Ask::Open(reel), Ask::Go(Room::Called)];
    for ask in before.into_iter().chain(asks) {
        desk.ask(ask, Duration::ZERO);
    }
    let mut still = Still::new(Room::Called, theme);
    still.called = Some(desk.called());
    still
}

pub(crate) fn tune(theme: Theme) -> Still {
    asked(theme, &[CalledAsk::Words("mill".into())])
}

pub(crate) fn key(theme: Theme) -> Still {
    asked(theme, &[CalledAsk::Key("A".parse().unwrap())])
}

pub(crate) fn chord(theme: Theme) -> Still {
    let asks = [
        CalledAsk::Face(CalledFace::Held),
        CalledAsk::Finger(0, 2),
        CalledAsk::Finger(1, 2),
    ];
    asked(theme, &asks)
}

/// The hardest to fit: a guitar behind a capo, a long name, a mode from the second row.
pub(crate) fn far_key(theme: Theme) -> Still {
    asked(theme, &[CalledAsk::Key("Eb phrygian".parse().unwrap())])
}

pub(crate) fn far_chord(theme: Theme) -> Still {
    let asks = [
        CalledAsk::Face(CalledFace::Held),
        CalledAsk::HeldOn("guitar".into()),
        CalledAsk::HeldCapo(3),
        CalledAsk::Damp(0),
        CalledAsk::Finger(1, 3),
        CalledAsk::Finger(2, 2),
        CalledAsk::Finger(3, 3),
        CalledAsk::Finger(4, 3),
    ];
    asked(theme, &asks)
}

pub(crate) fn nothing(theme: Theme) -> Still {
    asked(theme, &[])
}

pub(crate) fn no_match(theme: Theme) -> Still {
    asked(theme, &[CalledAsk::Words("zzzz".into())])
}

#[test]
fn a_called_tune_looks_as_it_did() {
    compare("called-tune", 1, tune);
}

#[test]
fn a_called_key_looks_as_it_did() {
    compare("called-key", 1, key);
}

#[test]
fn a_held_chord_looks_as_it_did() {
    compare("called-chord", 1, chord);
}

#[test]
fn what_is_safe_to_strum_looks_as_it_did() {
    compare_after("z", "safe", 1, |theme| Still::new(Room::Stand, theme));
}
