//! Tonight's list, and what is remembered of the evenings.

use super::*;
use chrono::{Days, NaiveDate};

fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 5, 8).unwrap()
}

/// Four short tunes in G, D, A and C; their ids count from 1.
fn memory() -> Memory {
    let tune = |(title, key): (&str, &str)| {
        let text = format!("X:1\nT:{title}\nM:4/4\nL:1/4\nK:{key}\n\"{key}\"G4|\n");
        abc::read(text.as_bytes()).tunes.remove(0).tune
    };
    let tunes = [("Weir", "G"), ("Eel", "D"), ("Goose", "A"), ("Sluice", "C")];
    Memory::new(tunes.map(tune).to_vec()).on(day())
}

fn desk_over(memory: Memory) -> Desk {
    Desk::new(Box::new(memory), silent(), Settings::default(), None)
}

fn with(desk: &mut Desk, asks: impl IntoIterator<Item = TonightAsk>) -> TonightView {
    for ask in asks {
        desk.ask(Ask::Tonight(ask), Duration::ZERO);
    }
    desk.tonight()
}

fn list(ids: impl IntoIterator<Item = u64>) -> Vec<TonightAsk> {
    let ask = |id| TonightAsk::List(TuneId(id), true);
    ids.into_iter().map(ask).collect()
}

fn titles(view: &TonightView) -> Vec<&str> {
    view.rows.iter().map(|row| row.title.as_str()).collect()
}

/// By hand to the end of the last time through.
fn play_through(desk: &mut Desk) {
    for _ in 0..9 {
        desk.ask(Ask::NextBar, Duration::ZERO);
    }
}

#[test]
fn tunes_come_on_the_list_once_and_move_and_go_and_come_back() {
    let mut desk = desk_over(memory());
    let view = with(&mut desk, list([1, 2, 1, 3, 99]));
    assert_eq!(titles(&view), ["Weir", "Eel", "Goose"]);
    let view = with(&mut desk, [TonightAsk::Move(2, 0), TonightAsk::Move(0, 9)]);
    assert_eq!(titles(&view), ["Goose", "Weir", "Eel"]);
    let view = with(&mut desk, [TonightAsk::Remove(1)]);
    assert_eq!(titles(&view), ["Goose", "Eel"]);
    assert_eq!(view.undo, Some(Undo::Removed("Weir".to_owned())));
    let view = with(&mut desk, [TonightAsk::Undo, TonightAsk::Undo]);
    assert_eq!(titles(&view), ["Goose", "Weir", "Eel"]);
    assert_eq!(view.undo, None);
    assert_eq!(desk.songbook.tonight().len(), 3);
}

#[test]
fn the_tune_to_go_on_with_is_marked_in_the_list() {
    let mut desk = desk_over(memory());
    let marked = |view: &TonightView| view.rows.iter().position(|row| row.next);
    assert_eq!(marked(&with(&mut desk, list([1, 2]))), Some(0));
    for (open, next) in [(1, Some(1)), (2, None), (4, Some(0))] {
        desk.ask(Ask::Open(TuneId(open)), Duration::ZERO);
        assert_eq!(marked(&desk.tonight()), next, "{open}");
    }
}

#[test]
fn what_came_after_a_removal_stays_when_it_is_undone() {
    let mut desk = desk_over(memory());
    with(&mut desk, list([1, 2, 3]));
    with(&mut desk, [TonightAsk::Remove(1)]);
    with(&mut desk, list([4]));
    with(&mut desk, [TonightAsk::KeyUp(0, 2), TonightAsk::Move(2, 0)]);
    let view = with(&mut desk, [TonightAsk::Undo]);
    assert_eq!(titles(&view), ["Sluice", "Eel", "Weir", "Goose"]);
    assert!(view.rows[2].moved, "the key wished for since");
    // Put on the list again by hand, it does not come twice.
    with(&mut desk, [TonightAsk::Remove(1)]);
    let view = with(&mut desk, list([2]));
    assert_eq!(view.undo, None);
    let view = with(&mut desk, [TonightAsk::Undo]);
    assert_eq!(titles(&view), ["Sluice", "Weir", "Goose", "Eel"]);
}

#[test]
fn an_order_is_taken_back_only_as_long_as_the_list_is_as_it_made_it() {
    let mut desk = desk_over(memory());
    let banjo = Plays::Instrument("banjo".to_owned());
    desk.ask(Ask::Circle(CircleAsk::Add(banjo)), Duration::ZERO);
    with(&mut desk, list([1, 2, 3]));
    let view = with(&mut desk, [TonightAsk::ByKeys]);
    assert_eq!(view.undo, Some(Undo::Reordered));
    let view = with(&mut desk, list([4]));
    assert_eq!(view.undo, None);
    let view = with(&mut desk, [TonightAsk::Undo]);
    assert_eq!(titles(&view), ["Weir", "Goose", "Eel", "Sluice"]);
}

#[test]
fn a_list_is_played_through_with_one_touch_a_tune() {
    let mut desk = desk_over(memory());
    with(&mut desk, list([2, 1]));
    let view = with(&mut desk, [TonightAsk::KeyUp(1, 2), TonightAsk::Open(0)]);
    assert!(view.rows[0].open && view.rows[1].moved);
    assert_eq!(desk.room(), Room::Stand);
    let stand = super::view(&mut desk, 0.0);
    assert_eq!((stand.title.as_str(), stand.listed), ("Eel", true));
    let next = stand.next_tune.unwrap();
    assert_eq!((next.title.as_str(), next.key.as_str()), ("Weir", "A"));
    with(&mut desk, [TonightAsk::Next]);
    let stand = super::view(&mut desk, 0.0);
    assert_eq!((stand.title.as_str(), stand.key.as_str()), ("Weir", "A"));
    assert_eq!(stand.next_tune, None);
}

#[test]
fn a_tune_called_in_between_is_followed_by_the_first_that_is_still_to_come() {
    let mut desk = desk_over(memory());
    with(&mut desk, list([1, 2, 3]));
    desk.ask(Ask::Open(TuneId(4)), Duration::ZERO);
    // Nobody plays the list yet.
    assert_eq!(super::view(&mut desk, 0.0).next_tune, None);
    with(&mut desk, [TonightAsk::Open(0)]);
    play_through(&mut desk);
    desk.ask(Ask::Open(TuneId(4)), Duration::ZERO);
    let stand = super::view(&mut desk, 0.0);
    assert!(!stand.listed);
    assert_eq!(stand.next_tune.unwrap().title, "Eel");
}

#[test]
fn the_key_that_a_tune_is_played_in_stays_with_it() {
    let mut desk = desk_over(memory());
    with(&mut desk, list([1]));
    with(&mut desk, [TonightAsk::Open(0)]);
    desk.ask(Ask::KeyOn("Bb".parse().unwrap()), Duration::ZERO);
    let row = &desk.tonight().rows[0];
    assert_eq!((row.key.as_str(), row.moved), ("B♭", true));
    desk.ask(Ask::WrittenKey, Duration::ZERO);
    assert!(!desk.tonight().rows[0].moved);
    assert_eq!(desk.songbook.tonight()[0].key, None);
}

#[test]
fn a_tune_counts_as_played_at_the_end_of_a_time_through_and_once() {
    let mut desk = desk_over(memory());
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    desk.ask(Ask::KeyOn("A".parse().unwrap()), Duration::ZERO);
    desk.ask(Ask::NextBar, Duration::ZERO);
    assert!(desk.songbook.played().is_empty());
    desk.ask(Ask::NextBar, Duration::ZERO);
    play_through(&mut desk);
    let played = desk.songbook.played();
    assert_eq!(played.len(), 1);
    assert_eq!(
        (played[0].key.to_string(), played[0].day),
        ("A".to_owned(), day())
    );
    let found = with(&mut desk, [TonightAsk::Find("weir".to_owned())]).finder;
    let last = found.rows[0].last.as_ref().unwrap();
    assert_eq!((last.days, last.key.as_str()), (0, "A"));
}

#[test]
fn a_tune_by_the_clock_counts_as_well() {
    let mut desk = desk_over(memory());
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    desk.ask(Ask::Clock(true), Duration::ZERO);
    desk.is_moving(beats(1.0));
    assert!(desk.songbook.played().is_empty());
    desk.is_moving(beats(60.0));
    assert_eq!(desk.songbook.played().len(), 1);
}

#[test]
fn evenings_are_told_with_the_last_one_first_and_in_the_order_of_playing() {
    let mut memory = memory();
    let ago = |days| day() - Days::new(days);
    let g: Key = "G".parse().unwrap();
    for (tune, days) in [(3, 7), (1, 1), (2, 1), (77, 1), (1, 0)] {
        memory.keep_played(Played {
            tune: TuneId(tune),
            key: g,
            day: ago(days),
        });
    }
    let view = desk_over(memory).tonight();
    let told: Vec<_> = { view.evenings.iter() }
        .map(|evening| {
            let titles: Vec<_> = evening
                .tunes
                .iter()
                .map(|(title, _)| title.as_str())
                .collect();
            (evening.days, titles.join(" "))
        })
        .collect();
    let told: Vec<_> = told
        .iter()
        .map(|(days, titles)| (*days, titles.as_str()))
        .collect();
    assert_eq!(told, [(0, "Weir"), (1, "Weir Eel"), (7, "Goose")]);
}

#[test]
fn tunes_not_played_lately_wait_in_line() {
    let mut memory = memory();
    let g: Key = "G".parse().unwrap();
    for (tune, days) in [(1, 40), (2, 3), (3, 90)] {
        let day = day() - Days::new(days);
        memory.keep_played(Played {
            tune: TuneId(tune),
            key: g,
            day,
        });
    }
    let mut desk = desk_over(memory);
    let found = with(&mut desk, [TonightAsk::Unplayed(Some(14))]).finder;
    let titles: Vec<_> = found.rows.iter().map(|row| row.title.as_str()).collect();
    assert_eq!(titles, ["Sluice", "Goose", "Weir"]);
    assert_eq!(found.count, 3);
}

#[test]
fn only_the_shapes_that_everyone_knows_are_asked_for() {
    let mut desk = desk_over(memory());
    let guitar = Plays::Instrument("guitar".to_owned());
    for ask in [
        CircleAsk::Add(guitar),
        CircleAsk::Change(1, SeatChange::Knows(Knows::Four)),
        CircleAsk::Change(1, SeatChange::Capo(crate::circle::CapoHabit::Never)),
    ] {
        desk.ask(Ask::Circle(ask), Duration::ZERO);
    }
    let found = with(&mut desk, [TonightAsk::Everyone(true)]).finder;
    let titles: Vec<_> = found.rows.iter().map(|row| row.title.as_str()).collect();
    // A guitarist's four are G C D Em: the tune in A is left out.
    assert_eq!(titles, ["Eel", "Sluice", "Weir"]);
    let found = with(&mut desk, list([2])).finder;
    assert!(found.rows[0].listed);
}

#[test]
fn the_order_by_keys_says_what_it_saves_and_can_be_taken_back() {
    let mut desk = desk_over(memory());
    let banjo = Plays::Instrument("banjo".to_owned());
    desk.ask(Ask::Circle(CircleAsk::Add(banjo)), Duration::ZERO);
    with(&mut desk, list([1, 2, 3, 4]));
    let view = desk.tonight();
    let saving = view.saving.unwrap();
    assert!(saving.then.pegs < saving.now.pegs);
    let ordered = with(&mut desk, [TonightAsk::ByKeys]);
    // G and A from the usual tuning, then D and C from double C.
    assert_eq!(titles(&ordered), ["Weir", "Goose", "Eel", "Sluice"]);
    assert_eq!(
        (ordered.saving, ordered.undo),
        (None, Some(Undo::Reordered))
    );
    let back = with(&mut desk, [TonightAsk::Undo]);
    assert_eq!(titles(&back), ["Weir", "Eel", "Goose", "Sluice"]);
}

#[test]
fn tunes_that_are_gone_are_left_out_quietly() {
    let mut memory = memory();
    let planned = |id| Planned {
        tune: TuneId(id),
        key: None,
    };
    memory.keep_tonight(&[planned(9), planned(2), planned(8)]);
    let desk = desk_over(memory);
    assert_eq!(titles(&desk.tonight()), ["Eel"]);
    assert_eq!(desk.notice(), None);
}

#[test]
fn a_list_holds_two_hundred_tunes() {
    let tune = |n: usize| {
        let text = format!("X:1\nT:Tune {n}\nM:4/4\nL:1/4\nK:G\n\"G\"G4|\n");
        abc::read(text.as_bytes()).tunes.remove(0).tune
    };
    let mut desk = desk_over(Memory::new((0..210).map(tune).collect()));
    let view = with(&mut desk, list(1..=210));
    assert_eq!((view.rows.len(), view.room), (MOST_TUNES, false));
}
