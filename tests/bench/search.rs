//! A songbook of ten thousand tunes: how long a key press in the search takes, and how long it takes to open.
//!
//! Wanted are less than 8 ms a key press, and an opening that leaves most of 400 ms to the window.

#![allow(clippy::unwrap_used)] // the tunes are our own

mod titles;

use std::hint::black_box;
use std::path::Path;
use std::time::Duration;

use chrono::DateTime;
use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use fourcourse::chart::Tune;
use fourcourse::desk::Songbook;
use fourcourse::store::{Opened, Store, shipped};

const TUNES: usize = 10_000;

/// The shipped tunes over and over under other names.
fn tunes() -> Vec<Tune> {
    let shipped = shipped::tunes();
    let names = titles::titles(TUNES).into_iter();
    names
        .zip(shipped.iter().cycle())
        .enumerate()
        .map(|(i, (title, (_, tune)))| Tune {
            title,
            // No two are the same tune.
            remarks: vec![i.to_string()],
            ..tune.clone()
        })
        .collect()
}

fn open(folder: &Path) -> Opened {
    Store::open(folder, DateTime::UNIX_EPOCH).unwrap()
}

fn songbook(criterion: &mut Criterion) {
    let folder = tempfile::tempdir().unwrap();
    let mut store = open(folder.path()).store;
    store.add(&tunes()).unwrap();
    assert_eq!(store.entries().len(), TUNES);

    let mut group = criterion.benchmark_group("search in 10,000 tunes");
    for typed in [
        "m",
        "mi",
        "mill",
        "milrace",
        "reel of",
        "the",
        "morning daugther",
    ] {
        assert!(!store.search(typed).is_empty(), "{typed}");
        group.bench_function(typed, |bencher| {
            bencher.iter(|| black_box(store.search(black_box(typed))));
        });
    }
    group.finish();
    drop(store);

    let size = std::fs::metadata(folder.path().join("songbook.redb"))
        .unwrap()
        .len();
    println!("the songbook has {} MB", size / 1_000_000);
    let mut group = criterion.benchmark_group("a songbook of 10,000 tunes");
    group
        .sample_size(10)
        .measurement_time(Duration::from_secs(10));
    group.bench_function("open", |bencher| {
        // Closing is not counted.
        bencher.iter_batched(|| (), |()| open(folder.path()), BatchSize::PerIteration);
    });
    let store = open(folder.path()).store;
    let id = store.entries()[TUNES / 2].id;
    group.bench_function("read a tune", |bencher| {
        bencher.iter(|| black_box(store.tune(black_box(id))));
    });
    group.finish();

    let mut group = criterion.benchmark_group("a new songbook");
    group.sample_size(10);
    group.bench_function("open and put the shipped tunes in", |bencher| {
        let fresh = || tempfile::tempdir().unwrap();
        bencher.iter_batched(
            fresh,
            |folder| {
                let mut store = open(folder.path()).store;
                store.restore(&shipped::tunes()).unwrap();
                (store, folder)
            },
            BatchSize::PerIteration,
        );
    });
    group.finish();
}

criterion_group!(benches, songbook);
criterion_main!(benches);
