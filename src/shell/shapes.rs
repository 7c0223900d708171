//! `fourcourse shapes CHORD`: how to hold a chord.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::frets::{Capo, Instrument, MAX_COURSES, Order, Shape, shapes};
use fourcourse::theory::{Degree, Pitch, Symbol};

use super::chord_box::{self, missing};
use super::notation::symbol;
use super::page::side_by_side;
use super::{Failure, Said, Shell};

/// Shapes for a chord, the easiest first
#[derive(Debug, Args)]
pub(super) struct Shapes {
    /// The chord as it sounds: G, Bm7, D/F#
    chord: String,

    #[command(flatten)]
    neck: Neck,

    /// How many shapes at most
    #[arg(long, value_name = "N", default_value_t = 4, value_parser = clap::value_parser!(u8).range(1..=100))]
    most: u8,

    /// Movable shapes without open strings, the ones that chop well first
    #[arg(long)]
    chops: bool,

    /// Print JSON: a list of {"frets","fingers","notes","missing"}, from the first course on; null is not played
    #[arg(long)]
    json: bool,
}

/// The neck that a command is about.
#[derive(Debug, Args)]
pub(super) struct Neck {
    /// The instrument, such as mandolin (which is meant without this), guitar, ukulele, banjo
    #[arg(long, value_name = "NAME")]
    pub(super) instrument: Option<String>,

    /// Another tuning, from the first course on, each note with its octave: "A3 E4 A4 E5"
    #[arg(long, value_name = "NOTES", value_parser = tuning)]
    tuning: Option<Tuned>,

    /// A capo on this fret; frets are counted from it
    #[arg(long, value_name = "N", default_value_t = 0, value_parser = clap::value_parser!(u8).range(0..=12))]
    pub(super) capo: u8,
}

impl Neck {
    /// The instrument in its tuning, or `otherwise` where none was asked for.
    pub(super) fn instrument(&self, otherwise: Instrument) -> Result<Instrument, Failure> {
        let instrument = match &self.instrument {
            None => otherwise,
            Some(name) => instrument(name)?,
        };
        Ok(match &self.tuning {
            None => instrument,
            Some(Tuned(open)) => instrument.tuned(open),
        })
    }

    pub(super) fn capo(&self) -> Capo {
        if self.capo == 0 {
            Capo::NONE
        } else {
            Capo::at(self.capo)
        }
    }
}

/// The instrument of a name, however it is typed.
pub(super) fn instrument(name: &str) -> Result<Instrument, Failure> {
    let id = name.trim().to_lowercase().replace([' ', '_'], "-");
    Instrument::by_id(&id).ok_or_else(|| {
        let known: Vec<_> = Instrument::all().map(|known| known.id).collect();
        Failure::new("shell-no-instrument")
            .quoting(name)
            .with("known", known.join(", "))
    })
}

/// What the courses sound, the first one first.
#[derive(Debug, Clone)]
pub(super) struct Tuned(Vec<Pitch>);

/// Notes with octaves, separated by spaces; small letters are as good as large ones.
fn tuning(text: &str) -> Result<Tuned, String> {
    let note = |word: &str| {
        let (letter, rest) = word.split_at_checked(1).unwrap_or((word, ""));
        let pitch = format!("{}{rest}", letter.to_uppercase()).parse();
        pitch.map_err(|_| format!("\"{word}\" is no note with its octave, such as A3"))
    };
    let open: Vec<Pitch> = text
        .split_whitespace()
        .map(note)
        .collect::<Result<_, _>>()?;
    if (1..=MAX_COURSES).contains(&open.len()) {
        Ok(Tuned(open))
    } else {
        Err(format!("a neck has 1 to {MAX_COURSES} courses"))
    }
}

impl Shapes {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let instrument = self.neck.instrument(Instrument::mandolin())?;
        let Symbol::Chord(chord) = symbol(&self.chord, shell)? else {
            return Err(Failure::new("shell-no-chord").quoting(&self.chord));
        };
        let order = if self.chops {
            Order::Chops
        } else {
            Order::Beginner
        };
        let capo = self.neck.capo();
        let found = shapes(&instrument, capo, chord, order, self.most.into());
        if self.json {
            let rows = found.iter().map(json);
            return Ok(format!("{}\n", Value::Array(rows.collect())).into());
        }
        if found.is_empty() {
            return Err(Failure::new("shell-no-shape")
                .with("chord", chord)
                .with("instrument", shell.words.instrument(instrument.id)));
        }
        let title = chord_box::title(chord, self.neck.capo, shell.look.notes(), &shell.words);
        let rows = chord_box::rows(&found);
        let boxes: Vec<_> = found
            .iter()
            .map(|shape| {
                let mut lines = chord_box::lines(shape, rows, &instrument, capo, shell.look);
                lines.extend(missing(shape, &shell.words));
                lines
            })
            .collect();
        Ok(format!("{title}\n\n{}", side_by_side(&boxes, 4, shell.look.width)).into())
    }
}

/// A shape as plain data.
pub(super) fn json(shape: &Shape) -> Value {
    let fingers: Vec<Option<u8>> = shape
        .frets
        .iter()
        .zip(&shape.fingers)
        .map(|(fret, finger)| fret.map(|_| finger.map_or(0, |finger| finger.number())))
        .collect();
    let mut sounding = shape.notes.iter();
    let notes: Vec<Option<String>> = shape
        .frets
        .iter()
        .map(|fret| fret.and_then(|_| sounding.next().map(|note| note.name.to_string())))
        .collect();
    let missing = shape.missing.iter().copied().map(degree_word);
    let bass = shape.bass_left_out.then_some("bass");
    let missing: Vec<_> = bass.into_iter().chain(missing).collect();
    json!({"frets": shape.frets, "fingers": fingers, "notes": notes, "missing": missing})
}

/// The plain English word for a chord tone.
pub(super) const fn degree_word(degree: Degree) -> &'static str {
    match degree {
        Degree::Root => "root",
        Degree::Second => "second",
        Degree::MinorThird | Degree::MajorThird => "third",
        Degree::Fourth => "fourth",
        Degree::FlatFifth | Degree::Fifth | Degree::SharpFifth => "fifth",
        Degree::Sixth => "sixth",
        Degree::DiminishedSeventh | Degree::MinorSeventh | Degree::MajorSeventh => "seventh",
        Degree::FlatNinth | Degree::Ninth | Degree::SharpNinth => "ninth",
        Degree::Eleventh | Degree::SharpEleventh => "eleventh",
        Degree::FlatThirteenth | Degree::Thirteenth => "thirteenth",
    }
}
