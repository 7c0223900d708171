//! `fourcourse key A`: a key was called; everything one wants to know of it at once.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::frets::{
    Capo, InKey, Instrument, OpenString, Order, Setup, capo_places, ring_in_key, scale_places,
    setups, shapes,
};
use fourcourse::theory::{self, Mode, NoteName, Reads};

use super::page::{columns, pad, side_by_side, table};
use super::shapes::Neck;
use super::{Failure, Said, Shell, chord_box, header, notation, shapes as shapes_command};

/// Frets of the fingerboard that are shown.
const FRETS: u8 = 7;

/// What a called key holds: its chords as shapes with their numbers, its scale, open strings, capo and tunings
#[derive(Debug, Args)]
pub(super) struct Key {
    /// The key: A, Em, "A mixolydian"
    #[arg(value_name = "KEY")]
    key: String,

    /// The mode, where the key does not say it: minor, dorian, mixolydian
    #[arg(long, value_name = "MODE")]
    mode: Option<String>,

    #[command(flatten)]
    neck: Neck,

    /// Print JSON: {"key","chords","scale","fingerboard","open","relative","parallel","capo","retune","written"}
    #[arg(long)]
    json: bool,
}

impl Key {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let called = match &self.mode {
            None => notation::key(&self.key, shell)?,
            Some(mode) => {
                let tonic = notation::key(&self.key, shell)?.tonic;
                notation::key(&format!("{tonic} {mode}"), shell)?
            }
        };
        // A key that nobody could write is meant by its sound.
        let called = notation::called(&called.to_string(), called, shell)?;
        let instrument = self.neck.instrument(Instrument::mandolin())?;
        let answer = Answer {
            key: called,
            instrument,
            capo: self.neck.capo(),
        };
        Ok(match self.json {
            true => format!("{}\n", answer.json()).into(),
            false => answer.page(shell).into(),
        })
    }
}

struct Answer {
    key: theory::Key,
    instrument: Instrument,
    capo: Capo,
}

/// The mode of the same tonic that is meant by the parallel key, and of the same notes by the relative one.
fn other(mode: Mode) -> Mode {
    if mode.is_minor() {
        Mode::Major
    } else {
        Mode::Minor
    }
}

impl Answer {
    fn json(&self) -> Value {
        let Self {
            key,
            ref instrument,
            capo,
        } = *self;
        let chord = |(number, chord): (theory::Number, theory::Chord)| {
            let shape = shapes(instrument, capo, chord, Order::Beginner, 1);
            json!({
                "number": number.to_string(),
                "chord": chord.to_string(),
                "shape": shape.first().map(shapes_command::json),
            })
        };
        let course = |(course, places): (usize, Vec<fourcourse::frets::ScalePlace>)| {
            let places = places.into_iter().map(|place| {
                json!({"fret": place.fret, "note": place.note.to_string(), "degree": place.degree})
            });
            json!({
                "string": instrument.courses[course].open.name.to_string(),
                "places": places.collect::<Value>(),
            })
        };
        let open = |open: OpenString<InKey>| {
            let standing = match open.standing {
                InKey::Drone => "drone",
                InKey::HalfDrone => "half-drone",
                InKey::Scale => "scale",
                InKey::Outside => "outside",
            };
            json!({"course": open.course, "note": open.note.name.to_string(), "standing": standing})
        };
        let retune = ["fiddle", "banjo"].map(|id| {
            let instrument = Instrument::by_id(id).unwrap_or_else(Instrument::mandolin);
            let rows = setups(&instrument, key).into_iter().map(|setup| {
                let tuned = setup.tuned(&instrument);
                json!({
                    "tuning": tuned.courses.iter().map(|c| c.open.to_string()).collect::<Value>(),
                    "retuned": setup.tuning.is_some(),
                    "capo": setup.capo.fret,
                })
            });
            (id.to_owned(), rows.collect::<Value>())
        });
        let capos = capo_places(key).into_iter();
        let written = Reads::ALL.map(|reads| {
            let written = reads.written_key(key).to_string();
            (reads.id().to_owned(), Value::String(written))
        });
        json!({
            "key": key.to_string(),
            "chords": key.called_chords().into_iter().map(chord).collect::<Value>(),
            "scale": key.scale().map(|note| note.to_string()),
            "fingerboard": scale_places(instrument, capo, key, FRETS)
                .into_iter().enumerate().map(course).collect::<Value>(),
            "open": ring_in_key(instrument, capo, key).into_iter().map(open).collect::<Value>(),
            "relative": key.relative(other(key.mode)).to_string(),
            "parallel": key.parallel(other(key.mode)).to_string(),
            "capo": capos
                .map(|place| json!({"fret": place.fret, "shapes": place.shapes.to_string()}))
                .collect::<Value>(),
            "retune": retune.into_iter().collect::<serde_json::Map<_, _>>(),
            "written": written.into_iter().collect::<serde_json::Map<_, _>>(),
        })
    }

    fn page(&self, shell: &Shell) -> String {
        let said = |key| header::key(key, shell);
        let (words, key) = (&shell.words, self.key);
        let mut page = said(key) + "\n";
        page += &words.say(
            "shell-key-others",
            &[
                ("relative", said(key.relative(other(key.mode))).into()),
                ("parallel", said(key.parallel(other(key.mode))).into()),
            ],
        );
        page += "\n\n";
        page += &self.chords(shell);
        page += "\n";
        page += &self.fingerboard(shell);
        page += "\n";
        page += &self.others(shell);
        page
    }

    /// The shapes of its chords with their numbers.
    fn chords(&self, shell: &Shell) -> String {
        let style = shell.look.notes();
        let found: Vec<_> = { self.key.called_chords().into_iter() }
            .map(|(number, chord)| {
                let shape = shapes(&self.instrument, self.capo, chord, Order::Beginner, 1).pop();
                (number, chord, shape)
            })
            .collect();
        let rows = chord_box::rows(found.iter().filter_map(|(_, _, shape)| shape.as_ref()));
        let lines = |(number, chord, shape): &(theory::Number, theory::Chord, Option<_>)| {
            let number = number.in_style(style.accidentals);
            let title = chord_box::title(*chord, self.capo.fret, style, &shell.words);
            let mut lines = vec![format!("{number} = {title}")];
            if let Some(shape) = shape {
                let (instrument, look) = (&self.instrument, shell.look);
                lines.extend(chord_box::lines(shape, rows, instrument, self.capo, look));
                lines.extend(chord_box::missing(shape, &shell.words));
            } else {
                lines.push(shell.look.sign("–", "-").to_owned());
            }
            lines
        };
        let boxes: Vec<_> = found.iter().map(lines).collect();
        side_by_side(&boxes, 4, shell.look.width)
    }

    /// The scale on the fingerboard, the last course on top as in tablature.
    fn fingerboard(&self, shell: &Shell) -> String {
        let (words, style) = (&shell.words, shell.look.notes());
        let places = scale_places(&self.instrument, self.capo, self.key, FRETS);
        let mut head = vec![words.get("shell-key-fret")];
        head.extend((0..=FRETS).map(|fret| fret.to_string()));
        let mut rows = vec![head];
        for (course, places) in places.iter().enumerate().rev() {
            let name = self.instrument.courses[course].open.name.in_style(style);
            let mut row = vec![name];
            row.extend((0..=FRETS).map(|fret| {
                let sounds = self.instrument.sound(course, fret, self.capo);
                match (places.iter().find(|place| place.fret == fret), sounds) {
                    (Some(place), _) => place.note.in_style(style),
                    (None, Some(_)) => shell.look.sign("·", ".").to_owned(),
                    (None, None) => String::new(),
                }
            }));
            rows.push(row);
        }
        table(&rows)
    }

    /// Open strings, capo, tunings, and what transposing instruments read.
    fn others(&self, shell: &Shell) -> String {
        let (words, style) = (&shell.words, shell.look.notes());
        let none = || shell.look.sign("–", "-").to_owned();
        let ring = ring_in_key(&self.instrument, self.capo, self.key);
        let named = |wanted: &[InKey]| {
            let open = ring.iter().filter(|open| wanted.contains(&open.standing));
            let mut names: Vec<String> = Vec::new();
            for open in open {
                let name = open.note.name.in_style(style);
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            match names.is_empty() {
                true => none(),
                false => names.join(" "),
            }
        };
        let mut rows = vec![
            (
                words.get("shell-key-rings"),
                named(&[InKey::Drone, InKey::HalfDrone]),
            ),
            (words.get("shell-key-leave"), named(&[InKey::Outside])),
        ];
        let capos: Vec<_> = { capo_places(self.key).into_iter() }
            .map(|place| capo_words(place.fret, place.shapes, shell))
            .collect();
        rows.push((words.get("shell-key-capo"), capos.join(", ")));
        for id in ["fiddle", "banjo"] {
            let Some(instrument) = Instrument::by_id(id) else {
                continue;
            };
            let ways: Vec<_> = { setups(&instrument, self.key).into_iter() }
                .map(|setup| setup_words(&setup, &instrument, shell))
                .collect();
            rows.push((words.instrument(id), ways.join("; ")));
        }
        let written: Vec<_> = { Reads::ALL.into_iter().skip(1) }
            .map(|reads| {
                let pitch = reads
                    .id()
                    .parse()
                    .map(|note: NoteName| note.in_style(style));
                let key = header::key(reads.written_key(self.key), shell);
                format!("{} = {key}", pitch.unwrap_or_default())
            })
            .collect();
        rows.push((words.get("shell-key-written"), written.join(", ")));
        let wide = rows
            .iter()
            .map(|(name, _)| columns(name))
            .max()
            .unwrap_or(0);
        let lines = rows
            .iter()
            .map(|(name, what)| format!("{}  {what}\n", pad(name, wide)));
        lines.collect()
    }
}

/// A capo position in words: `2 (G)`.
fn capo_words(fret: u8, key: theory::Key, shell: &Shell) -> String {
    let fret = match fret {
        0 => shell.words.get("capo-none"),
        fret => fret.to_string(),
    };
    format!("{fret} ({})", header::key(key, shell))
}

/// How an instrument is set up, in words: `g D G B D, capo 2`.
fn setup_words(setup: &Setup, instrument: &Instrument, shell: &Shell) -> String {
    let tuning = tuning(setup, instrument, shell);
    match setup.capo.fret {
        0 => tuning,
        fret => {
            let fret = fret.to_string();
            let capo = shell
                .words
                .say("shell-key-setup-capo", &[("fret", fret.into())]);
            format!("{tuning}, {capo}")
        }
    }
}

/// A tuning by its open strings, the short one in lower case.
pub(super) fn tuning(setup: &Setup, instrument: &Instrument, shell: &Shell) -> String {
    let tuned = setup.tuned(instrument);
    let names = tuned.courses.iter().map(|course| {
        let name = course.open.name.in_style(shell.look.notes());
        match course.starts_at {
            0 => name,
            _ => name.to_lowercase(),
        }
    });
    names.collect::<Vec<_>>().join(" ")
}
