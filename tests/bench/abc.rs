//! Speed of reading a book of 265 tunes (`cargo bench --bench abc` prints tunes a second).

use std::hint::black_box;

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

criterion_group!(benches, read);
criterion_main!(benches);
