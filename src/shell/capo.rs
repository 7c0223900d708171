//! `fourcourse capo A`: where a capo may go for a key, and the shapes it gives.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::frets::{self, CapoPlace, Instrument, Order, capo_places, shapes};
use fourcourse::theory::{Chord, Key, Transposition};

use super::page::side_by_side;
use super::{Failure, Said, Shell, chord_box, header, notation, shapes as shapes_command};

/// Chords of the key that are drawn for each position.
const CHORDS: usize = 4;

/// Every capo position below the octave that gives open shapes for a key (G, C, D, A, E; Am, Em, Dm), with the shapes
#[derive(Debug, Args)]
pub(super) struct Capo {
    /// The key as it sounds: A, Bb, Em
    #[arg(value_name = "KEY")]
    key: String,

    /// The instrument (guitar is meant without this)
    #[arg(long, value_name = "NAME")]
    instrument: Option<String>,

    /// Print JSON: a list of {"fret","shapes","chords":[{"sounds","play","shape"}]}
    #[arg(long)]
    json: bool,
}

impl Capo {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let key = notation::key(&self.key, shell)?;
        let key = notation::called(&key.to_string(), key, shell)?;
        let instrument =
            shapes_command::instrument(self.instrument.as_deref().unwrap_or("guitar"))?;
        if self.json {
            let rows = capo_places(key).into_iter().map(|place| {
                let chords = chords(key, place).map(|(sounding, held)| {
                    let shape = first(&instrument, place, sounding);
                    json!({
                        "sounds": sounding.to_string(),
                        "play": held.to_string(),
                        "shape": shape.as_ref().map(shapes_command::json),
                    })
                });
                json!({
                    "fret": place.fret,
                    "shapes": place.shapes.to_string(),
                    "chords": chords.collect::<Value>(),
                })
            });
            return Ok(format!("{}\n", Value::Array(rows.collect())).into());
        }
        let title = shell.words.say(
            "shell-capo-title",
            &[
                ("key", header::key(key, shell).into()),
                ("instrument", shell.words.instrument(instrument.id).into()),
                ("arrow", shell.look.sign("→", ">").to_owned().into()),
            ],
        );
        let mut page = title + "\n";
        for place in capo_places(key) {
            page.push('\n');
            page += &self.position(key, place, &instrument, shell);
        }
        Ok(page.into())
    }

    fn position(
        &self,
        key: Key,
        place: CapoPlace,
        instrument: &Instrument,
        shell: &Shell,
    ) -> String {
        let (words, style) = (&shell.words, shell.look.notes());
        let shapes = header::key(place.shapes, shell);
        let head = match place.fret {
            0 => words.say("shell-capo-none", &[("key", shapes.into())]),
            fret => words.say(
                "shell-capo-at",
                &[("fret", fret.to_string().into()), ("key", shapes.into())],
            ),
        };
        let found: Vec<_> = chords(key, place)
            .map(|(sounding, held)| (sounding, held, first(instrument, place, sounding)))
            .collect();
        let rows = chord_box::rows(found.iter().filter_map(|(_, _, shape)| shape.as_ref()));
        let boxes: Vec<_> = found
            .iter()
            .map(|(sounding, held, shape)| {
                let mut title = held.in_style(style);
                if place.fret > 0 {
                    let arrow = shell.look.sign("→", ">");
                    title += &format!(" {arrow} {}", sounding.in_style(style));
                }
                let mut lines = vec![title];
                let capo = frets::Capo::at(place.fret);
                if let Some(shape) = shape {
                    lines.extend(chord_box::lines(shape, rows, instrument, capo, shell.look));
                    lines.extend(chord_box::missing(shape, words));
                } else {
                    lines.push(shell.look.sign("–", "-").to_owned());
                }
                lines
            })
            .collect();
        format!("{head}\n{}", side_by_side(&boxes, 4, shell.look.width))
    }
}

/// The first chords of the key: as they sound, and as they are held.
fn chords(key: Key, place: CapoPlace) -> impl Iterator<Item = (Chord, Chord)> {
    let down = Transposition::between(key, place.shapes);
    let chords = key.called_chords().into_iter().take(CHORDS);
    chords.map(move |(_, chord)| (chord, down.chord(chord)))
}

fn first(instrument: &Instrument, place: CapoPlace, chord: Chord) -> Option<frets::Shape> {
    let capo = frets::Capo::at(place.fret);
    shapes(instrument, capo, chord, Order::Beginner, 1).pop()
}
