//! Whatever is asked in whatever room and order, each room shows what is true of the tune that is on the stand.

use std::time::Duration;

use fourcourse::chart::Version;
use fourcourse::desk::{
    Ask, BandAsk, CalledAsk, CircleAsk, Desk, PorchAsk, Room, Settings, TonightAsk, TuneId,
};
use fourcourse::start::silent_players;
use fourcourse::store::{Memory, shipped};
use fourcourse::theory::NoteName;
use proptest::prelude::*;

const ROOMS: [Room; 7] = [
    Room::Songbook,
    Room::Called,
    Room::Tonight,
    Room::Circle,
    Room::Porch,
    Room::Stand,
    Room::Settings,
];

fn ask() -> impl Strategy<Value = Ask> {
    let place = || 0..4_usize;
    let id = || (1..8_u64).prop_map(TuneId);
    let tonic = || prop::sample::select(vec!["G", "A", "Bb", "F#"]);
    let note = |text: &str| -> NoteName { text.parse().unwrap() };
    let porch = prop_oneof![
        place().prop_map(PorchAsk::Stop),
        place().prop_map(PorchAsk::Change),
        Just(PorchAsk::EndDrill),
        place().prop_map(PorchAsk::Take),
        any::<bool>().prop_map(PorchAsk::Home),
        prop::option::of(place()).prop_map(PorchAsk::Phrase),
        any::<bool>().prop_map(PorchAsk::Again),
        Just(PorchAsk::FromTop),
        prop::sample::select(&Version::ALL[..]).prop_map(PorchAsk::Version),
        (200.0..900.0_f32).prop_map(|width| PorchAsk::Paper(width, 15.0)),
    ];
    let called = prop_oneof![
        id().prop_map(CalledAsk::Open),
        Just(CalledAsk::ToStand),
        Just(CalledAsk::Leave),
    ];
    let tonight = prop_oneof![
        any::<bool>().prop_map(TonightAsk::ListOpen),
        (id(), any::<bool>()).prop_map(|(id, on)| TonightAsk::List(id, on)),
        Just(TonightAsk::Next),
        Just(TonightAsk::Undo),
    ];
    let desk = prop_oneof![
        prop::sample::select(&ROOMS[..]).prop_map(Ask::Go),
        Just(Ask::Back),
        id().prop_map(Ask::Open),
        prop::sample::select(vec!["guitar", "banjo", "fiddle"])
            .prop_map(|id| Ask::Instrument(id.to_owned())),
        any::<bool>().prop_map(Ask::LeftHanded),
        any::<bool>().prop_map(Ask::Clock),
        (0..60_usize).prop_map(Ask::JumpTo),
        (-3..4).prop_map(Ask::KeyUp),
        Just(Ask::NextBar),
        any::<bool>().prop_map(|on| Ask::Band(BandAsk::Sound(on))),
    ];
    prop_oneof![
        3 => desk,
        2 => porch.prop_map(Ask::Porch),
        1 => called.prop_map(Ask::Called),
        1 => tonight.prop_map(Ask::Tonight),
        1 => tonic().prop_map(move |text| Ask::Circle(CircleAsk::Play(note(text)))),
    ]
}

/// What must hold whenever a tune is on the stand; the circle is asked each time, so that all that it remembers is used.
fn check(desk: &mut Desk, now: Duration) -> Result<(), TestCaseError> {
    let Some(stand) = desk.stand(now) else {
        return Ok(());
    };
    if desk.page() == Room::Porch {
        let view = desk.porch(now);
        prop_assert!(view.lesson.is_some(), "the page of {} is gone", stand.title);
    }
    let circle = desk.circle();
    prop_assert_eq!(circle.keys.len(), 12);
    let tune = circle.tune.as_ref().map(|tune| tune.title.clone());
    prop_assert_eq!(tune, Some(stand.title));
    prop_assert!(desk.notice().is_none());
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_room_goes_with_the_tune_on_the_stand(
        asks in prop::collection::vec((ask(), 0..4_000_u64), 1..30),
    ) {
        let tunes = shipped::tunes().into_iter().map(|(_, tune)| tune).take(7).collect();
        let memory = Box::new(Memory::new(tunes));
        let mut desk = Desk::new(memory, silent_players(), Settings::default(), None);
        let mut now = Duration::ZERO;
        for (ask, later) in asks {
            now += Duration::from_millis(later);
            desk.ask(ask, now);
            check(&mut desk, now)?;
        }
        for _ in 0..10 {
            desk.ask(Ask::Back, now);
            check(&mut desk, now)?;
        }
        prop_assert_eq!(desk.room(), Room::Songbook);
    }
}
