//! What was understood of a tune, as plain data for other programs and for checks.

use serde::{Serialize, Serializer};

use crate::chart::{Heard, Ticks, Tune};
use crate::theory::Symbol;

use super::{Counted, Problem, ProblemKind, ReadTune, limits};

/// The bars of a tune in the order in which they are listed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listing {
    /// Each bar by its index in [`Tune::bars`], and its start.
    pub bars: Vec<(usize, Ticks)>,
    /// Whether all bars are there; otherwise there were more than are listed.
    pub whole: bool,
}

impl Listing {
    /// All bars as they are written.
    pub fn written(tune: &Tune) -> Self {
        Self::of(tune, 0..tune.bars.len(), &mut { usize::MAX })
    }

    /// One time through as it is played, repeats, form and all. Repeats may ask for any number of bars, so bars, notes
    /// and chords are counted off `room` (at first [`limits::PLAYED`]), and from the first bar on that finds none all
    /// are left out.
    pub fn played(tune: &Tune, room: &mut usize) -> Self {
        if *room == 0 {
            return Self {
                bars: Vec::new(),
                whole: tune.bars.is_empty(),
            };
        }
        let playing = tune.playing();
        let mut listing = Self::of(tune, playing.bars.iter().map(|bar| bar.written), room);
        listing.whole &= !playing.cut;
        listing
    }

    fn of(tune: &Tune, order: impl IntoIterator<Item = usize>, room: &mut usize) -> Self {
        let mut listing = Self {
            bars: Vec::new(),
            whole: true,
        };
        let mut at = Ticks::ZERO;
        for index in order {
            let bar = &tune.bars[index];
            let Some(left) = room.checked_sub(1 + bar.notes.len() + bar.chords.len()) else {
                listing.whole = false;
                *room = 0;
                break;
            };
            *room = left;
            listing.bars.push((index, at));
            at += bar.length;
        }
        listing
    }

    /// The melody in order of time.
    pub fn notes<'a>(&self, tune: &'a Tune) -> Vec<Heard<'a>> {
        tune.heard(self.bars.iter().copied())
    }

    /// What is wrong with it: that there were more bars than are listed.
    pub fn problem(&self, read: &ReadTune) -> Option<Problem> {
        (!self.whole).then_some(Problem {
            line: read.line,
            column: 1,
            kind: ProblemKind::TooMany(Counted::Played),
        })
    }
}

/// The melody in order of time; `played` with repeats and form, otherwise bar after bar as written.
pub fn notes(tune: &Tune, played: bool) -> Vec<Heard<'_>> {
    let listing = if played {
        Listing::played(tune, &mut { limits::PLAYED })
    } else {
        Listing::written(tune)
    };
    listing.notes(tune)
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

fn as_fraction<S: Serializer>(length: &Ticks, to: S) -> Result<S::Ok, S::Error> {
    match length.fraction() {
        (whole, 1) => to.collect_str(&whole),
        (above, below) => to.collect_str(&format_args!("{above}/{below}")),
    }
}

/// A tune as it is written to JSON: `{"title","metre","key":{"tonic","mode"},"pickup","notes":[{"at","for","midi"}],
/// "chords":[{"at","symbol"}],"problems":[{"line","column","message"}]}`. Times are fractions of a quarter note in
/// strings, counted from the start of the tune.
#[derive(Debug, Serialize)]
pub struct ReadOut<'a> {
    title: &'a str,
    metre: String,
    key: KeyOut,
    #[serde(serialize_with = "as_fraction")]
    pickup: Ticks,
    notes: Vec<NoteOut>,
    chords: Vec<ChordOut>,
    problems: Vec<ProblemOut>,
}

#[derive(Debug, Serialize)]
struct KeyOut {
    tonic: String,
    mode: &'static str,
}

#[derive(Debug, Serialize)]
struct NoteOut {
    #[serde(serialize_with = "as_fraction")]
    at: Ticks,
    #[serde(rename = "for", serialize_with = "as_fraction")]
    length: Ticks,
    midi: i32,
}

#[derive(Debug, Serialize)]
struct ChordOut {
    #[serde(serialize_with = "as_fraction")]
    at: Ticks,
    #[serde(serialize_with = "as_text")]
    symbol: Symbol,
}

fn as_text<S: Serializer>(symbol: &Symbol, to: S) -> Result<S::Ok, S::Error> {
    to.collect_str(symbol)
}

#[derive(Debug, Serialize)]
struct ProblemOut {
    line: usize,
    column: usize,
    message: String,
}

impl<'a> ReadOut<'a> {
    /// What was read, in the order of a listing. `message` finds the words for a problem.
    pub fn of(read: &'a ReadTune, listing: &Listing, message: impl Fn(&Problem) -> String) -> Self {
        let tune = &read.tune;
        let bars = listing.bars.iter();
        let chords = bars.flat_map(|&(bar, start)| {
            let chords = tune.bars[bar].chords.iter();
            chords.map(move |chord| ChordOut {
                at: start + chord.at,
                symbol: chord.symbol,
            })
        });
        let notes = listing.notes(tune).into_iter().map(|note| NoteOut {
            at: note.at,
            length: note.length,
            midi: note.midi,
        });
        let cut = listing.problem(read);
        let problems = read.problems.iter().chain(&cut).map(|problem| ProblemOut {
            line: problem.line,
            column: problem.column,
            message: message(problem),
        });
        Self {
            title: &tune.title,
            metre: tune.metre.to_string(),
            key: KeyOut {
                tonic: tune.key.tonic.to_string(),
                mode: tune.key.mode.id(),
            },
            pickup: tune.pickup(),
            notes: notes.collect(),
            chords: chords.collect(),
            problems: problems.collect(),
        }
    }
}
