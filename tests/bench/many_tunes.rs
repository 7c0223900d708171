//! As many tunes as are wanted, always the same: the shipped ones under invented titles.

use fourcourse::chart::Tune;
use fourcourse::store::shipped;

#[path = "titles.rs"]
mod titles;

/// So many tunes, no two alike.
pub(crate) fn many_tunes(count: usize) -> Vec<Tune> {
    let shipped = shipped::tunes();
    let titles = titles::titles(count);
    let tune = |(i, title): (usize, String)| Tune {
        title: format!("{title} {i}"),
        ..shipped[i % shipped.len()].1.clone()
    };
    titles.into_iter().enumerate().map(tune).collect()
}
