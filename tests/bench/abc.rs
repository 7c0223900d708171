//! Speed of reading a book of 265 tunes, in tunes a second, beside a library of musicology where that is installed.

use std::hint::black_box;
use std::process::Command;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use fourcourse::formats::abc;

const BOOK: &[u8] = include_bytes!("../outside/fixtures/ryans/ryans.abc");

fn read(criterion: &mut Criterion) {
    let tunes = abc::read(BOOK).tunes.len();
    let mut group = criterion.benchmark_group("abc");
    group.throughput(Throughput::Elements(tunes as u64));
    group.bench_function("read the Ryan collection", |bencher| {
        bencher.iter(|| black_box(abc::read(black_box(BOOK))));
    });
    group.finish();
}

/// The same tunes through music21, if this machine has it. It prints what it measures, or why it does not.
fn beside(_: &mut Criterion) {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests");
    let ran = Command::new("python3")
        .arg(format!("{folder}/bench/abc_beside.py"))
        .arg(format!("{folder}/outside/fixtures/ryans/ryans.abc"))
        .arg("100")
        .status();
    if let Err(why) = ran {
        println!("nothing to compare with: python3 does not start ({why})");
    }
}

criterion_group!(benches, read, beside);
criterion_main!(benches);
