//! Speed of arranging: wanted is a 64-bar tune in less than 20 ms, and time that grows in proportion to the tune.

#![allow(clippy::unwrap_used)] // the texts are our own

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use fourcourse::chart::{Bar, ChordAt, Metre, Note, Ticks, Tune, Wishes};
use fourcourse::engraving::{Page, Paper, Piece};
use fourcourse::frets::{Capo, Drones, Instrument, Stops};
use fourcourse::theory::{Key, Pitch};

/// Bars of eight notes and two chords, up and down two octaves and a fourth from A3: beyond first position.
fn tune(bars: usize) -> Tune {
    let key: Key = "A".parse().unwrap();
    let chords = ["A", "F#m", "D", "E7"];
    let step = |i: usize| if i % 34 < 18 { i % 34 } else { 34 - i % 34 };
    let pitch = |i: usize| {
        let name = key.scale()[step(i) % 7];
        let above = i8::try_from((step(i) + 5) / 7).unwrap();
        Pitch::new(name, 3 + above)
    };
    let bar = |bar: usize| Bar {
        length: Ticks::WHOLE,
        notes: (0_u8..8)
            .map(|k| {
                let at = Ticks::of(i64::from(k), 8);
                Note::new(at, Ticks::of(1, 8), pitch(bar * 8 + usize::from(k)))
            })
            .collect(),
        chords: (0_u8..2)
            .map(|k| ChordAt {
                at: Ticks::of(i64::from(k), 2),
                symbol: chords[(bar * 2 + usize::from(k)) % 4].parse().unwrap(),
            })
            .collect(),
        ..Bar::default()
    };
    Tune {
        bars: (0..bars).map(bar).collect(),
        ..Tune::new(Metre::COMMON, key)
    }
}

fn arranging(c: &mut Criterion) {
    let wishes = Wishes {
        drones: Drones::ByChord,
        stops: Some(Stops::default()),
        ..Wishes::default()
    };
    for id in ["mandolin", "guitar", "banjo"] {
        let instrument = Instrument::by_id(id).unwrap();
        let tune = tune(64);
        c.bench_function(&format!("64 bars arranged for {id}"), |b| {
            b.iter(|| black_box(&tune).arranged(&instrument, Capo::NONE, wishes));
        });
    }
    let mandolin = Instrument::mandolin();
    let mut group = c.benchmark_group("growing with the tune");
    group.sample_size(10);
    for bars in [64, 640, 6400] {
        let tune = tune(bars);
        group.bench_with_input(BenchmarkId::new("arranged", bars), &tune, |b, tune| {
            b.iter(|| black_box(tune).arranged(&mandolin, Capo::NONE, wishes));
        });
        group.bench_with_input(BenchmarkId::new("phrases", bars), &tune, |b, tune| {
            b.iter(|| black_box(tune).phrases());
        });
    }
    group.finish();
}

/// The page of a 64-bar tune is laid out in less than 8 ms, and of an endless one in time that grows with it.
fn laying_out(c: &mut Criterion) {
    let mandolin = Instrument::mandolin();
    let paper = |staff| Paper {
        staff,
        fingers: true,
        ..Paper::default()
    };
    let mut group = c.benchmark_group("page");
    group.sample_size(20);
    for (bars, staff) in [(64, false), (64, true), (640, true), (6400, true)] {
        let tune = tune(bars);
        let tab = tune.arranged(&mandolin, Capo::NONE, Wishes::default());
        let piece = Piece::of(&tune, &tab, &mandolin);
        let name = if staff { "with a staff" } else { "tablature" };
        group.bench_with_input(BenchmarkId::new(name, bars), &piece, |b, piece| {
            b.iter(|| Page::of(black_box(*piece), &paper(staff)));
        });
    }
    group.finish();
}

criterion_group!(benches, arranging, laying_out);
criterion_main!(benches);
