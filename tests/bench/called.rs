//! Somebody calls a tune: each look-up must fit in a frame (8 ms), with 10,000 tunes in the songbook.

#![allow(clippy::unwrap_used, missing_docs)] // the texts are our own

use std::hint::black_box;
use std::time::Duration;

use chrono::NaiveDate;
use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::chart::{Changes, safe_over};
use fourcourse::circle::{
    Everyone, Known, Seat, Sheet, best_keys, least_retuning, longest_unplayed,
};
use fourcourse::desk::{Ask, CalledAsk, Desk, Settings, Songbook};
use fourcourse::frets::{
    Capo, Instrument, Order, capo_places, name_frets, read_frets, ring_in_key, scale_places,
    setups, shapes,
};
use fourcourse::start::silent_players;
use fourcourse::store::Memory;
use fourcourse::theory::{Chord, Key, Mode};

#[path = "many_tunes.rs"]
mod many_tunes;

fn by_id(id: &str) -> Instrument {
    Instrument::by_id(id).unwrap()
}

/// A beginner on a mandolin, a guitar, a banjo, a ukulele, and a singer.
fn circle() -> Vec<Seat> {
    let known = ["G", "C", "D", "A", "Em", "Am"].map(|chord| chord.parse().unwrap());
    let beginner = Seat {
        known: Some(Known::of(known)),
        ..Seat::playing(Instrument::mandolin())
    };
    let guitar = Seat {
        known: Some(Known::of(known)),
        ..Seat::playing(by_id("guitar"))
    };
    vec![
        beginner,
        guitar,
        Seat::playing(by_id("banjo")),
        Seat::playing(by_id("ukulele")),
        Seat::singing("A3-D5".parse().unwrap()),
    ]
}

fn one_key(c: &mut Criterion) {
    let key: Key = "Bb".parse().unwrap();
    for id in ["mandolin", "guitar"] {
        let instrument = by_id(id);
        c.bench_function(&format!("called: all of a key, {id}"), |b| {
            b.iter(|| {
                let key = black_box(key);
                let chords = key.called_chords().into_iter();
                let shapes: Vec<_> = chords
                    .map(|(_, chord)| shapes(&instrument, Capo::NONE, chord, Order::Beginner, 1))
                    .collect();
                (
                    shapes,
                    scale_places(&instrument, Capo::NONE, key, 12),
                    ring_in_key(&instrument, Capo::NONE, key),
                    capo_places(key),
                    setups(&by_id("banjo"), key),
                    setups(&by_id("fiddle"), key),
                )
            });
        });
    }
    let guitar = by_id("guitar");
    let frets = read_frets("320033").unwrap();
    c.bench_function("called: what a hand holds", |b| {
        b.iter(|| name_frets(&guitar, Capo::at(2), black_box(&frets)));
    });
}

fn one_tune(c: &mut Criterion) {
    // The shipped tune with the most chords.
    let tunes = many_tunes::many_tunes(30);
    let chords =
        |tune: &fourcourse::chart::Tune| Changes::of(tune, &tune.playing()).symbols().len();
    let tune = tunes.into_iter().max_by_key(|tune| chords(tune)).unwrap();
    let seats = circle();
    let count = chords(&tune);
    c.bench_function(
        &format!("called: best key of twelve, {count} chords, five seats"),
        |b| {
            b.iter(|| best_keys(black_box(&tune), &seats));
        },
    );
    let shares: Vec<(Chord, f32)> = Changes::of(&tune, &tune.playing())
        .symbols()
        .iter()
        .filter_map(|symbol| Some((symbol.chord()?, 0.1)))
        .collect();
    c.bench_function("called: every seat's own chords and shapes", |b| {
        let sheet = |seat| Sheet::of(seat, black_box(tune.key), &shares);
        b.iter(|| seats.iter().map(sheet).collect::<Vec<_>>());
    });
    let playing = tune.playing();
    let changes = Changes::of(&tune, &playing);
    c.bench_function("called: safe to strum over all of a tune", |b| {
        b.iter(|| safe_over(&tune, &playing, black_box(&changes), 0..playing.bars.len()));
    });
}

fn all_tunes(c: &mut Criterion) {
    let book = Memory::new(many_tunes::many_tunes(10_000));
    let entries = book.entries();
    let everyone = Everyone::of(&circle());
    c.bench_function("10,000 tunes: only the shapes that everyone knows", |b| {
        b.iter(|| {
            let known = entries.iter().filter(|entry| everyone.knows(&entry.chords));
            known.count()
        });
    });
    let day = |n: usize| {
        let first = NaiveDate::from_ymd_opt(2024, 1, 1).unwrap();
        (!n.is_multiple_of(3))
            .then(|| first + chrono::Days::new(u64::try_from(n * 7919 % 700).unwrap()))
    };
    let last: Vec<_> = (0..entries.len()).map(day).collect();
    let since = NaiveDate::from_ymd_opt(2025, 6, 1).unwrap();
    c.bench_function("10,000 tunes: longest unplayed", |b| {
        b.iter(|| longest_unplayed(black_box(&last), since));
    });
    let keys: Vec<Key> = entries.iter().take(60).map(|entry| entry.key).collect();
    c.bench_function("a list of 60 tunes in the order of least retuning", |b| {
        let seats = circle();
        b.iter(|| least_retuning(black_box(&keys), &seats));
    });
}

/// What a touch or a letter costs, the view that answers it included.
fn looked_up(c: &mut Criterion) {
    let book = Memory::new(many_tunes::many_tunes(10_000));
    let mut desk = Desk::new(Box::new(book), silent_players(), Settings::default(), None);
    let first = desk.songbook().rows[0].id;
    desk.ask(Ask::Open(first), Duration::ZERO);
    let mut answer = |asks: &[CalledAsk]| {
        for ask in asks {
            desk.ask(Ask::Called(ask.clone()), Duration::ZERO);
        }
        desk.called()
    };
    for words in ["m", "mill", "the milrace rel", "zzzz"] {
        c.bench_function(&format!("10,000 tunes: \"{words}\" was typed"), |b| {
            let ask = [CalledAsk::Words(words.to_owned())];
            b.iter(|| answer(black_box(&ask)));
        });
    }
    c.bench_function("10,000 tunes: \"mill\", in a called key", |b| {
        let keys = ["G", "Bb"].map(|key| CalledAsk::Key(key.parse().unwrap()));
        let mut turn = 0;
        answer(&[CalledAsk::Words("mill".to_owned())]);
        b.iter(|| {
            turn = 1 - turn;
            answer(black_box(&keys[turn..=turn]))
        });
    });
    c.bench_function("10,000 tunes: a key was called", |b| {
        // Round and round through all keys of all modes, so that nothing is known from the last time.
        let keys = Mode::ALL
            .into_iter()
            .flat_map(|mode| (0..12).map(move |up| Key::new("C".parse().unwrap(), mode).up(up)));
        let mut keys = keys
            .map(CalledAsk::Key)
            .collect::<Vec<_>>()
            .into_iter()
            .cycle();
        answer(&[CalledAsk::Words(String::new())]);
        b.iter(|| answer(&[keys.next().unwrap()]));
    });
    c.bench_function("10,000 tunes: a finger on a neighbour's guitar", |b| {
        answer(&[CalledAsk::HeldOn("guitar".to_owned())]);
        let mut fret = 0;
        b.iter(|| {
            fret = fret % 5 + 1;
            answer(&[CalledAsk::Finger(2, fret)])
        });
    });
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30);
    targets = one_key, one_tune, all_tunes, looked_up
}
criterion_main!(benches);
