//! Speed of the shape search: wanted is under 1 ms a chord.

#![allow(clippy::unwrap_used)] // the texts are our own

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::frets::{Capo, Instrument, Order, shapes};
use fourcourse::theory::Chord;

fn search(c: &mut Criterion) {
    // The thirteenth has the most tones and so the most places on the neck; a dozen shapes is what a view asks for.
    for (instrument, symbol) in [
        ("guitar", "C13"),
        ("guitar", "F#m7b5"),
        ("guitar", "G"),
        ("mandolin", "C13"),
        ("mandolin", "G"),
    ] {
        let neck = Instrument::by_id(instrument).unwrap();
        let chord: Chord = symbol.parse().unwrap();
        for (name, order) in [("beginner", Order::Beginner), ("chops", Order::Chops)] {
            c.bench_function(&format!("shapes: {symbol}, {instrument}, {name}"), |b| {
                b.iter(|| shapes(&neck, Capo::NONE, black_box(chord), order, 12));
            });
        }
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(50);
    targets = search
}
criterion_main!(benches);
