//! `fourcourse name 2200`: what a hand holds.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::frets::{BOX_FRETS, Held, Instrument, NotAShape, Shape, name_frets, read_frets};
use fourcourse::theory::{Chord, ChordName, Degree};

use super::page::table;
use super::shapes::{Neck, degree_word};
use super::{Failure, Said, Shell, chord_box};

/// How far behind the first name a name may be to stand on the page; see [`ChordName::far`].
const FAR: u16 = 60;

/// The names of a chord by the frets that a hand holds, the plainest first
#[derive(Debug, Args)]
pub(super) struct Name {
    /// A fret for each course from the first on, x where it is not played: 2200, x32010, x-10-12-12 or "x 10 12 12"
    #[arg(required = true, value_name = "FRETS")]
    frets: Vec<String>,

    #[command(flatten)]
    neck: Neck,

    /// Print JSON: {"notes","names":[{"symbol","chord","bass","notes","missing","played_as"}]}
    #[arg(long)]
    json: bool,
}

impl Name {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let instrument = self.neck.instrument(Instrument::mandolin())?;
        let frets =
            read_frets(&self.frets.join(" ")).map_err(|why| failure(why, &instrument, shell))?;
        let held = name_frets(&instrument, self.neck.capo(), &frets)
            .map_err(|why| failure(why, &instrument, shell))?;
        Ok(match self.json {
            true => format!("{}\n", self.json(&held)).into(),
            false => self.page(&instrument, &frets, &held, shell).into(),
        })
    }

    fn json(&self, held: &Held) -> Value {
        let name = |name: &ChordName| {
            let chord = name.chord;
            let lowest = { chord.tones() }.find(|&(degree, _)| Some(degree) == name.lowest);
            let lowest = lowest.map_or(chord.lowest(), |(_, note)| note);
            json!({
                "symbol": chord.to_string(),
                "chord": Chord::new(chord.root, chord.quality).to_string(),
                "bass": lowest.to_string(),
                "notes": chord.tones().map(|(_, note)| note.to_string()).collect::<Value>(),
                "missing": name.missing.iter().map(|&degree| degree_word(degree)).collect::<Value>(),
                "played_as": chord.down(self.neck.capo).to_string(),
            })
        };
        json!({
            "notes": held.notes.iter().map(ToString::to_string).collect::<Value>(),
            "names": held.names.iter().map(name).collect::<Value>(),
        })
    }

    fn page(
        &self,
        instrument: &Instrument,
        frets: &[Option<u8>],
        held: &Held,
        shell: &Shell,
    ) -> String {
        let (words, style) = (&shell.words, shell.look.notes());
        let shape = drawn(frets, held);
        let rows = chord_box::rows([&shape]);
        let capo = self.neck.capo();
        let mut page = String::new();
        for line in chord_box::lines(&shape, rows, instrument, capo, shell.look) {
            page += line.trim_end();
            page.push('\n');
        }
        let notes: Vec<_> = held
            .notes
            .iter()
            .map(|note| note.name.in_style(style))
            .collect();
        page += &format!(
            "\n{}\n",
            words.say("shell-name-notes", &[("notes", notes.join(" ").into())])
        );
        if held.names.is_empty() {
            return page + &words.get("shell-name-none") + "\n";
        }
        let near = |name: &&ChordName| name.far < held.names[0].far + FAR;
        let names = held
            .names
            .iter()
            .filter(near)
            .map(|name| self.row(name, shell));
        page.push('\n');
        page + &table(&names.collect::<Vec<_>>())
    }

    /// A name and what is to be said of it.
    fn row(&self, name: &ChordName, shell: &Shell) -> Vec<String> {
        let (words, style) = (&shell.words, shell.look.notes());
        let mut remarks = Vec::new();
        let symbol = name.chord.in_style(style);
        let note = name.chord.lowest().in_style(style);
        // Players call an inversion by its plain name.
        let said = match name.lowest {
            Some(Degree::Root) => symbol,
            // Where the lowest string is no bass, an inversion has no name of its own.
            Some(_) if name.chord.bass.is_none() => symbol,
            Some(_) => {
                remarks.push(words.say(
                    "shell-name-lowest",
                    &[("note", note.into()), ("symbol", symbol.into())],
                ));
                Chord::new(name.chord.root, name.chord.quality).in_style(style)
            }
            None => {
                remarks.push(words.say("shell-name-foreign", &[("note", note.into())]));
                symbol
            }
        };
        let kinds = fourcourse::desk::MissingNote::of(&name.missing);
        if !kinds.is_empty() {
            remarks.push(words.missing(&kinds));
        }
        if self.neck.capo > 0 {
            let shape = name.chord.down(self.neck.capo).in_style(style);
            remarks.push(words.played_as(&shape));
        }
        vec![said, remarks.join(", ")]
    }
}

/// The shape as it was touched: no fingers are known.
fn drawn(frets: &[Option<u8>], held: &Held) -> Shape {
    let stopped = || frets.iter().flatten().copied().filter(|&fret| fret > 0);
    let (low, high) = (stopped().min().unwrap_or(1), stopped().max().unwrap_or(1));
    Shape {
        frets: frets.to_vec(),
        fingers: vec![None; frets.len()],
        barres: Vec::new(),
        notes: held.notes.clone(),
        missing: Vec::new(),
        lowest: None,
        bass_left_out: false,
        span_mm: 0.0,
        base_fret: if high <= BOX_FRETS { 1 } else { low },
        movable: false,
        cost: 0.0,
    }
}

fn failure(why: NotAShape, instrument: &Instrument, shell: &Shell) -> Failure {
    let name = shell.words.instrument(instrument.id);
    match why {
        NotAShape::NotAFret(text) => Failure::new("shell-name-not-a-fret").with("text", text),
        NotAShape::Courses { given, courses } => Failure::new("shell-name-courses")
            .with("given", given)
            .with("courses", courses)
            .with("instrument", name),
        NotAShape::OffTheNeck { course, fret } => Failure::new("shell-name-off-the-neck")
            .with("course", course + 1)
            .with("fret", fret)
            .with("instrument", name),
        NotAShape::Silent => Failure::new("shell-name-silent"),
    }
}
