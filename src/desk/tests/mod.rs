//! Triples: a chart, asks, and what is then to be seen.

mod band;
mod called;
mod circle;
mod following;
mod getting_in;
mod in_key;
mod keeping;
mod lesson;
mod looking;
mod porch;
mod rooms;
mod tonight;
mod tuning;

use std::time::Duration;

use crate::audio::Sound;
use crate::formats::abc;
use crate::store::Memory;
use crate::theory::Key;

use super::*;

/// Two bars of pickup and reel: short enough to count on one's fingers.
pub(super) const REEL: &str = "X:1\nT:Bucket Test\nR:reel\nM:4/4\nL:1/8\nQ:1/2=60\nK:A\n\
    P:A\n|:EF|\"A\"A4 A4|\"D\"d4 \"E7\"e4|\"A\"A4 A4|\"E\"e4 \"A\"A2:|\n\
    P:B\n|:\"D\"d8|\"A\"A8|\"E\"e8|\"A\"A8:|\n";

pub(super) fn beats(beats: f64) -> Duration {
    Duration::from_secs_f64(beats) // a half note a second: a beat of these tests is a second
}

/// A band that plays by the wall clock.
pub(super) fn silent() -> Box<dyn Players> {
    Box::new(Sound::new(Duration::ZERO))
}

/// A desk with this tune on the stand.
pub(super) fn on_stand(abc_text: &str) -> Desk {
    let tune = abc::read(abc_text.as_bytes()).tunes.remove(0).tune;
    let mut desk = Desk::new(
        Box::new(Memory::new(vec![tune])),
        silent(),
        Settings::default(),
        None,
    );
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    desk
}

pub(super) fn view(desk: &mut Desk, now: f64) -> StandView {
    desk.stand(beats(now)).unwrap()
}

/// Chord now, next chord and beats to it.
pub(super) fn seen(desk: &mut Desk, now: f64) -> String {
    let view = view(desk, now);
    match view.next {
        Some(next) => format!(
            "{} > {} in {}",
            view.now.name, next.chord.name, next.beats_left
        ),
        None => format!("{} >", view.now.name),
    }
}
