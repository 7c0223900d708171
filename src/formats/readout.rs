//! What was understood of a tune, as plain data for other programs and for checks.

use serde_json::{Value, json};

use crate::chart::{Heard, Ticks, Tune};
use crate::theory::Mode;

use super::{Problem, ReadTune};

/// The bars of a tune by index with their starts: as written, or one time through as played.
fn bars(tune: &Tune, played: bool) -> Vec<(usize, Ticks)> {
    if played {
        let bars = tune.playing().bars;
        return bars.iter().map(|bar| (bar.written, bar.start)).collect();
    }
    let mut at = Ticks::ZERO;
    let mut bars = Vec::with_capacity(tune.bars.len());
    for (index, bar) in tune.bars.iter().enumerate() {
        bars.push((index, at));
        at += bar.length;
    }
    bars
}

/// The melody in order of time; `played` with repeats and form, otherwise bar after bar as written.
pub fn notes(tune: &Tune, played: bool) -> Vec<Heard<'_>> {
    tune.heard(bars(tune, played))
}

/// A length as a fraction of a quarter note in lowest terms: `3/2`, `4`.
///
/// ```
/// use fourcourse::{chart::Ticks, formats::readout};
/// assert_eq!(readout::fraction(Ticks::of(3, 8)), "3/2");
/// assert_eq!(readout::fraction(Ticks::WHOLE), "4");
/// ```
pub fn fraction(length: Ticks) -> String {
    match length.fraction() {
        (whole, 1) => whole.to_string(),
        (above, below) => format!("{above}/{below}"),
    }
}

/// The English word for a mode, in lower case.
pub const fn mode_word(mode: Mode) -> &'static str {
    match mode {
        Mode::Major => "major",
        Mode::Minor => "minor",
        Mode::Dorian => "dorian",
        Mode::Phrygian => "phrygian",
        Mode::Lydian => "lydian",
        Mode::Mixolydian => "mixolydian",
        Mode::Locrian => "locrian",
    }
}

/// How long the pickup of a tune is: the length of a first bar that is shorter than its metre, otherwise zero.
fn pickup(tune: &Tune) -> Ticks {
    match tune.bars.first() {
        Some(bar) if bar.length < tune.metre.bar() => bar.length,
        _ => Ticks::ZERO,
    }
}

/// A tune as JSON: `{"title","metre","key":{"tonic","mode"},"pickup","notes":[{"at","for","midi"}],
/// "chords":[{"at","symbol"}],"problems":[{"line","column","message"}]}`. Times are fractions of a quarter note in
/// strings, counted from the start of the tune; bars come as written, or one time through if `played`. `message` finds
/// the words for a problem.
pub fn json(read: &ReadTune, played: bool, message: impl Fn(&Problem) -> String) -> Value {
    let tune = &read.tune;
    let notes: Vec<_> = notes(tune, played)
        .into_iter()
        .map(|note| {
            json!({"at": fraction(note.at), "for": fraction(note.length), "midi": note.midi})
        })
        .collect();
    let chords: Vec<_> = bars(tune, played)
        .into_iter()
        .flat_map(|(bar, start)| tune.bars[bar].chords.iter().map(move |chord| (start, chord)))
        .map(|(start, chord)| {
            json!({"at": fraction(start + chord.at), "symbol": chord.symbol.to_string()})
        })
        .collect();
    let problems: Vec<_> = read
        .problems
        .iter()
        .map(|problem| {
            json!({"line": problem.line, "column": problem.column, "message": message(problem)})
        })
        .collect();
    json!({
        "title": tune.title,
        "metre": tune.metre.to_string(),
        "key": {"tonic": tune.key.tonic.to_string(), "mode": mode_word(tune.key.mode)},
        "pickup": fraction(pickup(tune)),
        "notes": notes,
        "chords": chords,
        "problems": problems,
    })
}
