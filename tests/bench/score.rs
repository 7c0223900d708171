//! Speed of the band's score: wanted is well under 8 ms for a tune of 64 bars once its shapes are known.

#![allow(clippy::unwrap_used)] // the texts are our own

use std::fmt::Write;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::band::{Ending, Human, Score, ScoreOptions, Style, Voicings};
use fourcourse::chart::Tune;
use fourcourse::formats::abc;

/// 64 bars in four repeated sections, so 128 as played: eight notes and two chords a bar.
fn tune() -> Tune {
    let chords = ["A", "F#m7", "Bm7", "E7", "D/F#", "C#m7b5", "Esus4", "Amaj7"];
    let mut text = "X:1\nT:Sixty-Four Bars\nM:4/4\nL:1/8\nK:A\n".to_owned();
    for i in 0..64 {
        let open = if i % 16 == 0 { "|:" } else { "" };
        let close = if i % 16 == 15 { ":|\n" } else { "|" };
        let (one, two) = (chords[2 * i % 8], chords[(2 * i + 1) % 8]);
        let _ = write!(text, "{open}\"{one}\"ABce \"{two}\"fecA{close}");
    }
    abc::read(text.as_bytes()).tunes.remove(0).tune
}

fn score(c: &mut Criterion) {
    let tune = tune();
    let playing = tune.playing();
    assert_eq!(playing.bars.len(), 128);
    for (style, ending) in [
        ("reel", Ending::Held),
        ("strum", Ending::Tag),
        ("swing", Ending::Plain),
    ] {
        let style = Style::named(style).unwrap();
        let options = ScoreOptions { style, ending };
        let mut voicings = Voicings::default();
        c.bench_function(&format!("score of 64 bars: {}", style.id()), |b| {
            b.iter(|| Score::of(black_box(&tune), &playing, &options, &mut voicings));
        });
    }
    let options = ScoreOptions::fitting(&tune);
    c.bench_function("score of 64 bars: 8 chords for the first time", |b| {
        b.iter(|| {
            Score::of(
                black_box(&tune),
                &playing,
                &options,
                &mut Voicings::default(),
            )
        });
    });
    let events = Score::of(&tune, &playing, &options, &mut Voicings::default()).events;
    let human = Human {
        seed: 1,
        amount: 1.0,
    };
    c.bench_function("the unevenness of one event", |b| {
        b.iter(|| human.nudge(3, black_box(&events[events.len() / 2])));
    });
}

criterion_group!(benches, score);
criterion_main!(benches);
