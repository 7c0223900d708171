//! How much of one core the band takes: wanted is over 100 times real time, and under 10 % of its deadline for the worst
//! block of 256 frames.

use std::hint::black_box;
use std::time::Instant;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use fourcourse::band::{Ensemble, Player, Touch};

const RATE: u32 = 48_000;
const SECOND: usize = 2 * RATE as usize;

/// An eighth of full playing, 0.25 s: a melody note, and in turn a bass note or the chords of guitar and chop.
fn eighth(band: &mut Ensemble, count: usize) {
    const SCALE: [u8; 8] = [67, 69, 71, 74, 76, 79, 83, 86];
    let note = SCALE[count % 8];
    let course = if note < 69 {
        1
    } else if note < 76 {
        2
    } else {
        3
    };
    band.strike(Player::Melody, course, note, 0.8, Touch::Ring);
    if count.is_multiple_of(2) {
        band.strike(Player::Bass, 1, 31, 0.8, Touch::Ring);
        band.strike(Player::Guitar, 0, 43, 0.8, Touch::Ring);
        band.click(count.is_multiple_of(8), 0.8);
    } else {
        for (course, midi) in [(0, 62), (1, 67), (2, 71), (3, 79)] {
            band.strike(Player::Chop, course, midi, 0.9, Touch::Chop);
        }
        for (course, midi) in [(2, 50), (3, 55), (4, 59), (5, 67)] {
            band.strike(Player::Guitar, course, midi, 0.7, Touch::Ring);
        }
    }
    if count.is_multiple_of(16) {
        band.strike(Player::Drones, 0, 55, 0.5, Touch::Ring);
        band.strike(Player::Drones, 1, 62, 0.5, Touch::Ring);
    }
}

fn sound(c: &mut Criterion) {
    let mut group = c.benchmark_group("band");
    group.throughput(Throughput::Elements(u64::from(RATE)));
    let mut out = vec![0.0; SECOND];
    group.bench_function("a second of everybody", |b| {
        let mut band = Ensemble::new(RATE, 440.0);
        let mut count = 0;
        b.iter(|| {
            for quarter in out.chunks_mut(SECOND / 4) {
                eighth(&mut band, count);
                count += 1;
                band.render(black_box(quarter));
            }
        });
    });
    group.bench_function("a second of silence", |b| {
        let mut band = Ensemble::new(RATE, 440.0);
        b.iter(|| band.render(black_box(&mut out)));
    });
    group.finish();
    worst_block();
}

/// The longest time that a block of 256 frames takes in a minute of playing, beside the time that it lasts. Every block
/// counts with the best of eight plays: they compute the same to the bit, and what else the machine does is left out.
fn worst_block() {
    const BLOCKS: usize = 60 * RATE as usize / 256;
    let deadline = 256.0 / f64::from(RATE);
    let mut shares = vec![f64::INFINITY; BLOCKS];
    for _ in 0..8 {
        let mut band = Ensemble::new(RATE, 440.0);
        let mut block = [0.0; 512];
        for (i, share) in shares.iter_mut().enumerate() {
            let start = Instant::now();
            if i % 46 == 0 {
                eighth(&mut band, i / 46);
            }
            band.render(black_box(&mut block));
            *share = share.min(100.0 * start.elapsed().as_secs_f64() / deadline);
        }
    }
    shares.sort_by(f64::total_cmp);
    println!(
        "band/blocks of 256 frames: median {:.2} %, worst {:.2} % of {:.2} ms",
        shares[BLOCKS / 2],
        shares[BLOCKS - 1],
        1000.0 * deadline
    );
}

criterion_group!(benches, sound);
criterion_main!(benches);
