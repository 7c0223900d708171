//! `fourcourse ring KEY_OR_CHORD`: which open strings may ring.

use clap::Args;
use serde_json::{Map, Value, json};

use fourcourse::frets::{InChord, InKey, Instrument, OpenString, ring_in_chord, ring_in_key};
use fourcourse::theory::{Chord, Key, Symbol};

use super::notation::{key, symbol};
use super::page::{Look, table};
use super::shapes::{Neck, degree_word};
use super::{Failure, Said, Shell, header};

/// Which open strings may ring over a chord, or through a tune in a key
#[derive(Debug, Args)]
pub(super) struct Ring {
    /// A chord or a key: A7, Em, "A mixolydian". What can be both, such as D, is answered as both
    #[arg(value_name = "KEY_OR_CHORD")]
    what: String,

    #[command(flatten)]
    neck: Neck,

    /// Print JSON: {"chord":[{"string","standing"...}],"key":[...]}, from the first course on
    #[arg(long)]
    json: bool,
}

impl Ring {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let instrument = self.neck.instrument(Instrument::mandolin())?;
        let chord = match symbol(&self.what, shell) {
            Ok(Symbol::Chord(chord)) => Some(chord),
            _ => None,
        };
        let key = key(&self.what, shell).ok();
        if chord.is_none() && key.is_none() {
            return Err(Failure::new("shell-no-key-or-chord").quoting(&self.what));
        }
        if self.json {
            let mut answers = Map::new();
            if let Some(chord) = chord {
                answers.insert("chord".to_owned(), self.chord_json(&instrument, chord));
            }
            if let Some(key) = key {
                answers.insert("key".to_owned(), self.key_json(&instrument, key));
            }
            return Ok(format!("{}\n", Value::Object(answers)).into());
        }
        let mut pages = Vec::new();
        if let Some(chord) = chord {
            pages.push(self.chord_page(&instrument, chord, shell));
        }
        if let Some(key) = key {
            pages.push(self.key_page(&instrument, key, shell));
        }
        Ok(pages.join("\n").into())
    }

    fn chord_json(&self, instrument: &Instrument, chord: Chord) -> Value {
        let rows = ring_in_chord(instrument, self.neck.capo(), chord);
        let row = |open: OpenString<InChord>| {
            let mut row = json!({
                "string": string(instrument, &open),
                "note": open.note.name.to_string(),
                "degree": degree_word(open.degree),
                "standing": match open.standing {
                    InChord::Fits => "fits",
                    InChord::Colour => "colour",
                    InChord::Clash { .. } => "clash",
                },
            });
            if let InChord::Clash { with, .. } = open.standing {
                row["with"] = json!(with.to_string());
            }
            row
        };
        rows.into_iter().map(row).collect()
    }

    fn key_json(&self, instrument: &Instrument, key: Key) -> Value {
        let rows = ring_in_key(instrument, self.neck.capo(), key);
        let row = |open: OpenString<InKey>| {
            json!({
                "string": string(instrument, &open),
                "note": open.note.name.to_string(),
                "standing": match open.standing {
                    InKey::Drone => "drone",
                    InKey::HalfDrone => "half-drone",
                    InKey::Scale => "scale",
                    InKey::Outside => "outside",
                },
            })
        };
        rows.into_iter().map(row).collect()
    }

    fn chord_page(&self, instrument: &Instrument, chord: Chord, shell: &Shell) -> String {
        let (look, words) = (shell.look, &shell.words);
        let rows = ring_in_chord(instrument, self.neck.capo(), chord);
        let row = |open: OpenString<InChord>| {
            let why = match open.standing {
                InChord::Fits => words.get("shell-ring-fits"),
                InChord::Colour => words.get("shell-ring-colour"),
                InChord::Clash { with, .. } => {
                    let note = with.in_style(look.notes());
                    words.say("shell-ring-clash", &[("note", note.into())])
                }
            };
            vec![name(instrument, &open, look), why]
        };
        let title = words.say(
            "shell-ring-chord",
            &[("chord", chord.in_style(look.notes()).into())],
        );
        let rows: Vec<_> = rows.into_iter().map(row).collect();
        format!("{title}\n{}", table(&rows))
    }

    fn key_page(&self, instrument: &Instrument, key: Key, shell: &Shell) -> String {
        let (look, words) = (shell.look, &shell.words);
        let rows = ring_in_key(instrument, self.neck.capo(), key);
        let row = |open: OpenString<InKey>| {
            let id = match open.standing {
                InKey::Drone => "shell-ring-drone",
                InKey::HalfDrone => "shell-ring-half-drone",
                InKey::Scale => "shell-ring-scale",
                InKey::Outside => "shell-ring-outside",
            };
            vec![name(instrument, &open, look), words.get(id)]
        };
        let title = header::key(key, shell);
        let title = words.say("shell-ring-key", &[("key", title.into())]);
        let rows: Vec<_> = rows.into_iter().map(row).collect();
        format!("{title}\n{}", table(&rows))
    }
}

/// The course by what it is tuned to.
fn string<S>(instrument: &Instrument, open: &OpenString<S>) -> String {
    let course = instrument.courses.get(open.course);
    course.map_or_else(String::new, |course| course.open.name.to_string())
}

/// The course for the eye: with a capo, what it sounds too.
fn name<S>(instrument: &Instrument, open: &OpenString<S>, look: Look) -> String {
    let number = instrument.string_number(open.course);
    let number = number.map_or_else(String::new, |number| format!(" {number}"));
    let sounds = open.note.name.in_style(look.notes());
    match instrument.courses.get(open.course) {
        Some(course) if course.open.name.class() != open.note.name.class() => {
            let name = course.open.name.in_style(look.notes());
            format!("  {name}{number} ({sounds})")
        }
        _ => format!("  {sounds}{number}"),
    }
}
