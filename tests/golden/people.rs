//! The Millrace Hall circle and an evening of it, as the desk itself gives them.

use std::sync::OnceLock;
use std::time::Duration;

use chrono::{Days, NaiveDate};
use fourcourse::circle::{CapoHabit, VoiceType};
use fourcourse::desk::{
    Ask, CircleAsk, CircleView, Desk, Knows, Planned, Played, Plays, SeatChange, Settings,
    Songbook, TonightView, TuneId,
};
use fourcourse::start::silent_players;
use fourcourse::store::{Memory, shipped};
use fourcourse::theory::Reads;

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 26).unwrap()
}

/// The shipped tunes with an evening's list, two of them played tonight and some a while ago.
fn songbook() -> (Memory, TuneId) {
    let tunes = shipped::tunes().into_iter().map(|(_, tune)| tune);
    let mut memory = Memory::new(tunes.collect()).on(day());
    let entry = |memory: &Memory, words: &str| {
        let found = memory.search(words)[0];
        (memory.entries()[found].id, memory.entries()[found].key)
    };
    let evening = [
        ("Millrace Reel", 0),
        ("Boots on the Fender", 0),
        ("Nobody Told the Goose", 12),
        ("Put the Chairs Away", 1),
    ];
    let mut list = Vec::new();
    for (title, days) in evening {
        let (tune, key) = entry(&memory, title);
        let day = day() - Days::new(days);
        memory.keep_played(Played { tune, key, day });
        list.push(Planned { tune, key: None });
    }
    list[3].key = Some("Bb".parse().unwrap());
    for entry in { memory.entries() }.iter().step_by(5).take(4) {
        let (tune, key) = (entry.id, None);
        if list.iter().all(|planned| planned.tune != tune) {
            list.push(Planned { tune, key });
        }
    }
    let open = list[2].tune;
    memory.keep_tonight(&list);
    (memory, open)
}

fn asked(asks: impl IntoIterator<Item = Ask>) -> Desk {
    let (memory, open) = songbook();
    let mut desk = Desk::new(
        Box::new(memory),
        silent_players(),
        Settings::default(),
        None,
    );
    for ask in [Ask::Open(open)].into_iter().chain(asks) {
        desk.ask(ask, Duration::ZERO);
    }
    desk
}

/// A mandolin, two guitars, a banjo, a clarinet and a singer.
fn seats() -> Vec<Ask> {
    let guitar = || CircleAsk::Add(Plays::Instrument("guitar".into()));
    let change = |seat, change| CircleAsk::Change(seat, change);
    let asks = [
        guitar(),
        change(1, SeatChange::Knows(Knows::First)),
        guitar(),
        change(2, SeatChange::Knows(Knows::Four)),
        change(2, SeatChange::Capo(CapoHabit::Never)),
        CircleAsk::Add(Plays::Instrument("banjo".into())),
        CircleAsk::Add(Plays::Page(Reads::BFlat)),
        CircleAsk::Add(Plays::Voice),
        change(5, SeatChange::Voice(VoiceType::Alto)),
        change(5, SeatChange::Name("Rosa".into())),
    ];
    asks.map(Ask::Circle).to_vec()
}

/// The circle over the tune on the stand.
pub(crate) fn circle() -> CircleView {
    static VIEW: OnceLock<CircleView> = OnceLock::new();
    VIEW.get_or_init(|| asked(seats()).circle()).clone()
}

/// The evening's list.
pub(crate) fn tonight() -> TonightView {
    static VIEW: OnceLock<TonightView> = OnceLock::new();
    VIEW.get_or_init(|| asked(seats()).tonight()).clone()
}

/// An evening without a list.
pub(crate) fn no_list() -> TonightView {
    let mut view = tonight();
    view.rows.clear();
    view.evenings.clear();
    view.saving = None;
    view
}
