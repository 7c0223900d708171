//! An evening's views, with 10,000 tunes in the songbook and six people in the circle: each must fit in a frame (8 ms).

#![allow(clippy::unwrap_used, missing_docs)] // the texts are our own

use std::time::Duration;

use chrono::{Days, NaiveDate};
use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use fourcourse::chart::{Changes, Tune};
use fourcourse::circle::{CapoHabit, VoiceType};
use fourcourse::desk::{
    Ask, CircleAsk, Desk, Knows, Planned, Played, Plays, SeatChange, Settings, Songbook,
    TonightAsk, TuneId,
};
use fourcourse::start::silent_players;
use fourcourse::store::Memory;
use fourcourse::theory::Reads;

#[path = "many_tunes.rs"]
mod many_tunes;

fn chords(tune: &Tune) -> usize {
    Changes::of(tune, &tune.playing()).symbols().len()
}

/// 10,000 tunes, 3,000 of them played over two years, sixty on tonight's list; on the stand the one with the most chords.
fn desk() -> Desk {
    let tunes = many_tunes::many_tunes(10_000);
    let most = { (1..).zip(&tunes[..30]) }.max_by_key(|(_, tune)| chords(tune));
    let open = TuneId(most.map_or(1, |(id, _)| id));
    let today = NaiveDate::from_ymd_opt(2026, 11, 26).unwrap();
    let mut book = Memory::new(tunes).on(today);
    for n in 0..3_000_u64 {
        let entry = &book.entries()[usize::try_from(n * 7919 % 10_000).unwrap()];
        let (tune, key) = (entry.id, entry.key);
        let day = today - Days::new((3_000 - n) / 4);
        book.keep_played(Played { tune, key, day });
    }
    let planned = |id| Planned {
        tune: TuneId(id),
        key: None,
    };
    book.keep_tonight(&(1..=60).map(planned).collect::<Vec<_>>());
    let mut desk = Desk::new(Box::new(book), silent_players(), Settings::default(), None);
    let instrument = |id: &str| CircleAsk::Add(Plays::Instrument(id.to_owned()));
    for ask in [
        instrument("guitar"),
        CircleAsk::Change(1, SeatChange::Knows(Knows::Four)),
        instrument("banjo"),
        instrument("ukulele"),
        CircleAsk::Add(Plays::Page(Reads::BFlat)),
        CircleAsk::Add(Plays::Voice),
    ] {
        desk.ask(Ask::Circle(ask), Duration::ZERO);
    }
    desk.ask(Ask::Open(open), Duration::ZERO);
    desk
}

fn circle(c: &mut Criterion) {
    let mut desk = desk();
    let change = |change| Ask::Circle(CircleAsk::Change(1, change));
    let mut turn = 0_u8;
    c.bench_function("circle: six seats, one of them changed", |b| {
        b.iter(|| {
            turn = turn % 7 + 1;
            let capo = SeatChange::Capo(CapoHabit::UpTo(turn));
            desk.ask(change(capo), Duration::ZERO);
            desk.circle()
        });
    });
    let voices = VoiceType::ALL.into_iter().cycle();
    let mut voices =
        voices.map(|voice| Ask::Circle(CircleAsk::Change(5, SeatChange::Voice(voice))));
    c.bench_function("circle: six seats, another voice", |b| {
        b.iter_batched(
            || voices.next().unwrap(),
            |ask| {
                desk.ask(ask, Duration::ZERO);
                desk.circle()
            },
            BatchSize::SmallInput,
        );
    });
    c.bench_function("circle: six seats, another key", |b| {
        b.iter(|| {
            desk.ask(Ask::KeyUp(1), Duration::ZERO);
            desk.circle()
        });
    });
    c.bench_function("circle: six seats, nothing changed", |b| {
        b.iter(|| desk.circle())
    });
}

fn tonight(c: &mut Criterion) {
    let mut desk = desk();
    let mut measure = |name: &str, asks: &[TonightAsk]| {
        for ask in asks {
            desk.ask(Ask::Tonight(ask.clone()), Duration::ZERO);
        }
        c.bench_function(&format!("tonight, 10,000 tunes: {name}"), |b| {
            b.iter(|| desk.tonight());
        });
    };
    measure("the list", &[]);
    measure("not played lately", &[TonightAsk::Unplayed(Some(60))]);
    let everyone = [TonightAsk::Unplayed(None), TonightAsk::Everyone(true)];
    measure("only the shapes everyone knows", &everyone);
    let both = [
        TonightAsk::Unplayed(Some(60)),
        TonightAsk::Find("mill".to_owned()),
    ];
    measure("both, and a word", &both);
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(20);
    targets = circle, tonight
}
criterion_main!(benches);
