//! A songbook of 10,000 tunes must be no burden: each key press in the search fits in a frame (8 ms).

#![allow(clippy::unwrap_used, missing_docs)] // the texts are our own

use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::audio::Sound;
use fourcourse::desk::{Ask, Desk, Settings};
use fourcourse::store::Memory;

#[path = "many_tunes.rs"]
mod many_tunes;

/// What is typed, letter by letter, with and without slips, and how many tunes it finds is for the reader to see.
const TYPED: [&str; 6] = [
    "m",
    "mi",
    "mill",
    "milrace",
    "the mill r",
    "reel of the wintre rose",
];

fn key_press(c: &mut Criterion) {
    let tunes = many_tunes::many_tunes(10_000);
    let mut desk = Desk::new(
        Box::new(Memory::new(tunes)),
        Box::new(Sound::new(Duration::ZERO)),
        Settings::default(),
        None,
    );
    for typed in TYPED {
        desk.ask(Ask::Search(typed.to_owned()), Duration::ZERO);
        let found = desk.songbook().rows.len();
        c.bench_function(&format!("10,000 tunes: \"{typed}\" ({found} found)"), |b| {
            b.iter(|| {
                desk.ask(Ask::Search(black_box(typed).to_owned()), Duration::ZERO);
                desk.songbook()
            });
        });
    }
    desk.ask(Ask::Search(String::new()), Duration::ZERO);
    c.bench_function("10,000 tunes: only shapes that are known", |b| {
        b.iter(|| {
            desk.ask(Ask::OnlyKnown(true), Duration::ZERO);
            desk.songbook()
        });
    });
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30);
    targets = key_press
}
criterion_main!(benches);
