//! The form as a map: the bars as on paper, and the parts in the order of playing.

use crate::chart::{Bar, Playing, Ticks, Tune};
use crate::theory::Symbol;

use super::follow::Place;
use super::stand::{FormChip, MapBar, MapLine, Passed};

/// Full bars on a line, as on paper.
const BARS_A_LINE: usize = 4;

fn passed(first: usize, last: usize, now: usize) -> Passed {
    if last < now {
        Passed::Played
    } else if first > now {
        Passed::Ahead
    } else {
        Passed::Now
    }
}

/// Each run through a part: the part, its pass, its first bar and its last in playing order.
pub(super) fn runs(playing: &Playing) -> Vec<(Option<usize>, u8, usize, usize)> {
    let mut runs: Vec<(Option<usize>, u8, usize, usize)> = Vec::new();
    for (index, bar) in playing.bars.iter().enumerate() {
        match runs.last_mut() {
            Some(run) if (run.0, run.1) == (bar.part, bar.part_pass) => run.3 = index,
            _ => runs.push((bar.part, bar.part_pass, index, index)),
        }
    }
    runs
}

/// The part that a bar in playing order is in, with its pass where it comes more than once: `A2`.
pub(super) fn part_name(tune: &Tune, playing: &Playing, bar: usize) -> String {
    let parts = tune.parts_or_derived();
    let label = |part: Option<usize>| Some(parts.get(part?)?.label.as_str());
    let Some(bar) = playing.bars.get(bar) else {
        return String::new();
    };
    let name = label(bar.part).unwrap_or_default();
    let same = playing
        .bars
        .iter()
        .filter(|other| label(other.part) == label(bar.part));
    match same.map(|other| other.part_pass).max() {
        Some(2..) => format!("{name}{}", bar.part_pass),
        _ => name.to_owned(),
    }
}

/// The parts in playing order.
pub(super) fn form(tune: &Tune, playing: &Playing, place: Place) -> Vec<FormChip> {
    let parts = tune.parts_or_derived();
    let runs = runs(playing);
    let label = |part: Option<usize>| {
        part.and_then(|part| parts.get(part))
            .map_or("", |part| part.label.as_str())
    };
    runs.iter()
        .map(|&(part, pass, first, last)| {
            let again = runs
                .iter()
                .filter(|run| label(run.0) == label(part))
                .count()
                > 1;
            FormChip {
                part: label(part).to_owned(),
                pass: if again { pass } else { 0 },
                passed: passed(first, last, place.bar),
            }
        })
        .collect()
}

/// The lines of the map and the line of the bar now. `name` gives a symbol's names in the key and style of the day: the
/// one that is chosen, and the one beside it; `loops` whether a played bar is in the loop.
pub(super) fn map(
    tune: &Tune,
    playing: &Playing,
    place: Place,
    name: impl Fn(Symbol, usize) -> (String, String),
    loops: impl Fn(usize) -> bool,
) -> (Vec<MapLine>, usize) {
    let parts = tune.parts_or_derived();
    let run_now = playing.run(place.bar);
    let now = playing.bars.get(place.bar).map(|bar| bar.written);
    let pickups: Vec<bool> = pickups(tune, playing);
    let mut lines: Vec<MapLine> = Vec::new();
    let mut line_now = 0;
    let mut full = 0;
    let mut part_of_line = None;
    // The chord that holds so far, on paper.
    let mut holds: Option<(Symbol, usize)> = None;
    let mut line_begins = false;
    for (written, bar) in tune.bars.iter().enumerate() {
        // A bar of this pass is meant in this pass, any other the next time it comes.
        let here = playing.bars[run_now.clone()]
            .iter()
            .position(|bar| bar.written == written);
        let here = here.map(|place| run_now.start + place);
        let Some(played) = here.or_else(|| playing.find(written, place.bar)) else {
            continue; // a bar that the form leaves out is on no map
        };
        let part = parts.iter().rposition(|part| part.first_bar <= written);
        let begins = lines.is_empty() || part != part_of_line;
        if begins || full == BARS_A_LINE {
            let label = part.filter(|_| begins).and_then(|part| parts.get(part));
            lines.push(MapLine {
                part: label.map_or(String::new(), |part| part.label.clone()),
                top: played,
                current: false,
                bars: Vec::new(),
            });
            full = 0;
            part_of_line = part;
            line_begins = true;
        }
        let pickup = pickups.get(written).copied().unwrap_or(false);
        if !pickup {
            full += 1;
        }
        let is_now = now == Some(written);
        let index = lines.len() - 1;
        if is_now {
            line_now = index;
        }
        if let Some(line) = lines.last_mut() {
            // What leads into a line is no bar of it: the first full one says what holds.
            let chords = chords(bar, &mut holds, line_begins && !pickup, written);
            line_begins &= pickup;
            let names = chords.into_iter().map(|(symbol, at)| name(symbol, at));
            let (chords, numbers): (Vec<_>, Vec<_>) = names.unzip();
            let ending: Vec<String> = bar.ending.iter().map(u8::to_string).collect();
            if line.bars.iter().all(|bar| bar.pickup) {
                line.top = played; // what leads into a line is no bar of it
            }
            line.bars.push(MapBar {
                played,
                chords: chords.join(" "),
                numbers: numbers.join(" ").trim().to_owned(),
                pickup,
                ending: ending.join(","),
                passed: match played {
                    _ if is_now => Passed::Now,
                    played if played < place.bar => Passed::Played,
                    _ => Passed::Ahead,
                },
                looped: loops(played),
            });
        }
    }
    let part_now = playing.bars.get(place.bar).and_then(|bar| bar.part);
    let mut part = None;
    for line in &mut lines {
        if !line.part.is_empty() {
            part = line
                .bars
                .first()
                .and_then(|bar| playing.bars.get(bar.played))
                .and_then(|bar| bar.part);
        }
        line.current = part == part_now;
    }
    (lines, line_now)
}

/// What stands in a bar of the map, each with the written bar that it came from: a letter only where the chord changes,
/// and at the start of a line or an ending the one that holds.
fn chords(
    bar: &Bar,
    holds: &mut Option<(Symbol, usize)>,
    line_begins: bool,
    written: usize,
) -> Vec<(Symbol, usize)> {
    let mut shown = Vec::new();
    let anew = line_begins || !bar.ending.is_empty();
    if anew
        && bar
            .chords
            .first()
            .is_none_or(|first| first.at > Ticks::ZERO)
    {
        shown.extend(*holds);
    }
    for chord in &bar.chords {
        let same = holds.is_some_and(|(symbol, _)| symbol == chord.symbol);
        if !same || (anew && shown.is_empty()) {
            shown.push((chord.symbol, written));
        }
        *holds = Some((chord.symbol, written));
    }
    shown
}

/// Whether each written bar is a pickup.
fn pickups(tune: &Tune, playing: &Playing) -> Vec<bool> {
    let mut pickups = vec![false; tune.bars.len()];
    for bar in &playing.bars {
        if let Some(pickup) = pickups.get_mut(bar.written) {
            *pickup = bar.pickup;
        }
    }
    pickups
}

/// Felt beats of the chord change at `from` up to `to`, whole ones, at least one.
pub(super) fn beats_between(playing: &Playing, from: Ticks, to: Ticks) -> u32 {
    let beats = if to <= playing.length {
        playing.beats(from, to)
    } else {
        playing.beats(from, playing.length) + playing.beats(Ticks::ZERO, to - playing.length)
    };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // `as` saturates
    let whole = (beats - 1e-6).ceil().max(1.0) as u32;
    whole
}
