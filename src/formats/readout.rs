//! What was understood of a tune, as plain data for other programs and for checks.

use serde_json::{Value, json};

use crate::chart::{Ticks, Tune};
use crate::theory::Mode;

use super::{Problem, ReadTune};

/// A note as one hears it: the notes that ties join are one, grace notes are none.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heard {
    /// Start, from the start of the tune.
    pub at: Ticks,
    /// How long it sounds.
    pub length: Ticks,
    /// MIDI key number: 60 is middle C.
    pub midi: i32,
}

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
pub fn notes(tune: &Tune, played: bool) -> Vec<Heard> {
    let mut heard: Vec<Heard> = Vec::new();
    // Notes with a tie that leads on, as places in `heard`.
    let mut held: Vec<usize> = Vec::new();
    for (bar, start) in bars(tune, played) {
        for note in &tune.bars[bar].notes {
            let (at, midi) = (start + note.at, note.pitch.midi());
            held.retain(|&index| heard[index].at + heard[index].length >= at);
            let joins = held.iter().position(|&index| {
                let before = heard[index];
                before.midi == midi && before.at + before.length == at
            });
            let index = match joins.map(|place| held.swap_remove(place)) {
                Some(index) => {
                    heard[index].length += note.length;
                    index
                }
                None => {
                    let length = note.length;
                    heard.push(Heard { at, length, midi });
                    heard.len() - 1
                }
            };
            if note.tied {
                held.push(index);
            }
        }
    }
    heard.sort_by_key(|note| note.at);
    heard
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
