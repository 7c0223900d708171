//! Whatever is asked of the circle and tonight's list in whatever order, both stay whole.

use std::collections::HashSet;
use std::time::Duration;

use fourcourse::circle::{CapoHabit, VoiceType};
use fourcourse::desk::{
    Ask, CircleAsk, Desk, Knows, MOST_SEATS, MOST_TUNES, Plays, Room, SeatChange, Settings,
    TonightAsk, TuneId,
};
use fourcourse::start::silent_players;
use fourcourse::store::Memory;
use fourcourse::theory::{Accidental, Letter, NoteName, Reads};
use proptest::prelude::*;

use super::store_tunes::tune;

fn plays() -> impl Strategy<Value = Plays> {
    prop_oneof![
        prop::sample::select(vec!["guitar", "banjo", "fiddle", "bass", "no such thing"])
            .prop_map(|id| Plays::Instrument(id.to_owned())),
        prop::sample::select(&Reads::ALL[..]).prop_map(Plays::Page),
        Just(Plays::Voice),
    ]
}

fn change() -> impl Strategy<Value = SeatChange> {
    let habit = prop_oneof![
        Just(CapoHabit::Never),
        any::<u8>().prop_map(CapoHabit::UpTo),
        any::<u8>().prop_map(CapoHabit::Always),
    ];
    let knows = vec![Knows::All, Knows::First, Knows::Four, Knows::Marked];
    prop_oneof![
        ".{0,40}".prop_map(SeatChange::Name),
        prop::collection::vec(any::<i8>(), 0..14).prop_map(SeatChange::Tuning),
        habit.prop_map(SeatChange::Capo),
        any::<bool>().prop_map(SeatChange::LeftHanded),
        prop::sample::select(knows).prop_map(SeatChange::Knows),
        prop::sample::select(&VoiceType::ALL[..]).prop_map(SeatChange::Voice),
        any::<i8>().prop_map(SeatChange::Low),
        any::<i8>().prop_map(SeatChange::High),
        Just(SeatChange::Silent),
    ]
}

fn tonic() -> impl Strategy<Value = NoteName> {
    let letter = prop::sample::select(&Letter::ALL[..]);
    let sign = prop::sample::select(vec![-1, 0, 1]);
    (letter, sign).prop_map(|(letter, sign)| {
        NoteName::new(letter, Accidental::new(sign).unwrap_or(Accidental::NATURAL))
    })
}

fn ask() -> impl Strategy<Value = Ask> {
    let seat = || 0..15_usize;
    let id = || (0..9_u64).prop_map(TuneId);
    let circle = prop_oneof![
        plays().prop_map(CircleAsk::Add),
        (seat(), change()).prop_map(|(seat, change)| CircleAsk::Change(seat, change)),
        seat().prop_map(CircleAsk::Remove),
        Just(CircleAsk::PutBack),
        (seat(), any::<i32>()).prop_map(|(seat, by)| CircleAsk::Move(seat, by)),
        prop::option::of(id()).prop_map(CircleAsk::Tune),
        tonic().prop_map(CircleAsk::Look),
        tonic().prop_map(CircleAsk::Play),
    ];
    let place = || 0..9_usize;
    let tonight = prop_oneof![
        (id(), any::<bool>()).prop_map(|(id, on)| TonightAsk::List(id, on)),
        any::<bool>().prop_map(TonightAsk::ListOpen),
        place().prop_map(TonightAsk::Remove),
        (place(), place()).prop_map(|(from, to)| TonightAsk::Move(from, to)),
        Just(TonightAsk::Undo),
        place().prop_map(TonightAsk::Open),
        Just(TonightAsk::Next),
        (place(), -30..30).prop_map(|(place, by)| TonightAsk::KeyUp(place, by)),
        Just(TonightAsk::ByKeys),
        prop::option::of(any::<u16>()).prop_map(TonightAsk::Unplayed),
        any::<bool>().prop_map(TonightAsk::Everyone),
    ];
    prop_oneof![
        circle.prop_map(Ask::Circle),
        tonight.prop_map(Ask::Tonight),
        Just(Ask::NextBar),
        tonic().prop_map(Ask::KeyOn),
        Just(Ask::Go(Room::Circle)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn circle_and_list_stay_whole(asks in prop::collection::vec(ask(), 1..24)) {
        let tunes = (0..6).map(|n| tune(&format!("Tune {n}"), n, 4)).collect();
        let memory = Box::new(Memory::new(tunes));
        let mut desk = Desk::new(memory, silent_players(), Settings::default(), None);
        for ask in asks {
            desk.ask(ask, Duration::ZERO);
        }
        let circle = desk.circle();
        prop_assert!((1..=MOST_SEATS).contains(&circle.seats.len()));
        prop_assert!(circle.seats[0].title.player);
        prop_assert!(circle.seats[1..].iter().all(|seat| !seat.title.player));
        prop_assert_eq!(circle.keys.len(), if circle.tune.is_some() { 12 } else { 0 });
        prop_assert!(circle.keys.iter().all(|key| key.seats.len() == circle.seats.len()));
        let list = desk.tonight().rows;
        let different: HashSet<_> = list.iter().map(|row| row.id).collect();
        prop_assert_eq!(different.len(), list.len());
        prop_assert!(list.len() <= MOST_TUNES);
        prop_assert!(desk.notice().is_none());
    }
}
