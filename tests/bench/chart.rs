//! Speed of what happens when a key is called: wanted is well under 8 ms.

#![allow(clippy::unwrap_used)] // the texts are our own

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::chart::{Bar, Changes, ChordAt, Metre, Note, Ticks, Tune};
use fourcourse::theory::{Key, NoteName, Pitch};

/// 64 bars in four repeated sections: eight notes and two chords a bar.
fn tune() -> Tune {
    let key: Key = "A".parse().unwrap();
    let chords = ["A", "F#m7", "Bm7", "E7", "D/F#", "C#m7b5", "Esus4", "Amaj7"];
    let bar = |i: usize| Bar {
        length: Ticks::WHOLE,
        notes: (0_u8..8)
            .map(|k| {
                let pitch = Pitch::new(key.scale()[(i + usize::from(k)) % 7], 4);
                Note::new(Ticks::of(i64::from(k), 8), Ticks::of(1, 8), pitch)
            })
            .collect(),
        chords: (0_u8..2)
            .map(|k| ChordAt {
                at: Ticks::of(i64::from(k), 2),
                symbol: chords[(i * 2 + usize::from(k)) % 8].parse().unwrap(),
            })
            .collect(),
        repeat_start: i.is_multiple_of(16),
        repeat_end: if i % 16 == 15 { 2 } else { 0 },
        ..Bar::default()
    };
    Tune {
        bars: (0..64).map(bar).collect(),
        ..Tune::new(Metre::COMMON, key)
    }
}

fn key_change(c: &mut Criterion) {
    let tune = tune();
    let tonic: NoteName = "Bb".parse().unwrap();
    c.bench_function("key change of a 64-bar tune: everything", |b| {
        b.iter(|| {
            let moved = black_box(&tune).in_key(black_box(tonic));
            let playing = moved.playing();
            let changes = Changes::of(&moved, &playing);
            (moved, playing, changes)
        });
    });
    c.bench_function("playing order of a 64-bar tune", |b| {
        b.iter(|| black_box(&tune).playing());
    });
}

criterion_group!(benches, key_change);
criterion_main!(benches);
