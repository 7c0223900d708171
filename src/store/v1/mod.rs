//! Version 1 of what is stored: a frozen mirror of the domain.
//!
//! Nothing here ever changes once a version has been released: a byte fixture in `tests/robust` guards it. When the
//! domain grows, a `v2` is added beside it and this mirror learns to step forward.
//!
//! `restore` gives `None` for values that no app wrote (a letter 9, a metre in sevenths of nothing).

mod bar;
mod circle;
mod desk;
mod music;
mod practice;
mod tonight;
mod tune;

pub(super) use circle::Seat;
pub(super) use desk::{Band, Entry, Settings, Tunings};
pub(super) use practice::Practice;
pub(super) use tonight::{Planned, Played};
pub(super) use tune::Tune;

/// Restores what is there: `None` where it cannot be, `Some(None)` where there is nothing.
#[allow(clippy::option_option)]
fn optional<A, B>(value: Option<A>, restore: impl Fn(A) -> Option<B>) -> Option<Option<B>> {
    match value {
        None => Some(None),
        Some(value) => restore(value).map(Some),
    }
}
