//! The melody that the band plays of 265 tunes of the Ryan collection, beside the notes that music21 and a plain reader of
//! the standard find in them (`fixtures/ryans`): every note at its time, with its pitch and its length.
#![allow(clippy::unwrap_used)] // a fixture that is not as it should be fails the test

use fourcourse::band::{Ending, Player, Score, ScoreOptions, Sound, Style, Voicings};
use fourcourse::chart::{Bar, Ornament, Tune};
use fourcourse::formats::{abc, readout};
use serde_json::Value;

const BOOK: &[u8] = include_bytes!("fixtures/ryans/ryans.abc");
const FACTS: &str = include_str!("fixtures/ryans/ryans-music21.jsonl");

/// Time, length and MIDI number.
type Note = (String, String, i64);

/// The facts have the tunes as written, without grace notes: so repeats, graces and what shortens notes are left out here.
fn plain(tune: &Tune) -> Tune {
    let bar = |bar: &Bar| Bar {
        repeat_start: false,
        repeat_end: 0,
        ending: vec![],
        jump: None,
        notes: bar
            .notes
            .iter()
            .cloned()
            .map(|mut note| {
                note.grace.clear();
                note.ornaments.retain(|&sign| sign != Ornament::Staccato);
                note
            })
            .collect(),
        ..bar.clone()
    };
    Tune {
        bars: tune.bars.iter().map(bar).collect(),
        parts: vec![],
        form: vec![],
        ..tune.clone()
    }
}

fn played(tune: &Tune) -> Vec<Note> {
    let tune = plain(tune);
    let options = ScoreOptions {
        style: Style::named("reel").unwrap(), // even eighths
        ending: Ending::Plain,
    };
    let score = Score::of(&tune, &tune.playing(), &options, &mut Voicings::default());
    let melody = score.events.iter().filter(|e| e.player == Player::Melody);
    let notes = melody.filter_map(|event| match event.sound {
        Sound::String { midi, rings, .. } => Some((
            (event.at, rings, midi),
            (
                readout::fraction(event.at),
                readout::fraction(rings),
                i64::from(midi),
            ),
        )),
        Sound::Click { .. } => None,
    });
    let mut notes: Vec<_> = notes.collect();
    notes.sort();
    notes.into_iter().map(|(_, note)| note).collect()
}

#[test]
fn the_band_plays_the_notes_that_other_readers_find() {
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let (mut tunes, mut notes, mut moved, mut wrong) = (0, 0, 0, Vec::new());
    for (read, fact) in abc::read(BOOK).tunes.iter().zip(FACTS.lines()) {
        let fact: Value = serde_json::from_str(fact).unwrap();
        if fact.get("strange").is_some() {
            continue; // stray characters: one reading among others
        }
        let expected = fact["notes"].as_array().unwrap().iter();
        let mut expected: Vec<Note> = expected
            .map(|n| (text(&n[0]), text(&n[1]), n[2].as_i64().unwrap()))
            .collect();
        // A tune that goes below open G is played an octave higher as a whole.
        if expected.iter().any(|note| note.2 < 55) {
            expected.iter_mut().for_each(|note| note.2 += 12);
            moved += 1;
        }
        let played = played(&read.tune);
        (tunes, notes) = (tunes + 1, notes + played.len());
        if played != expected {
            let at = played.iter().zip(&expected).position(|(a, b)| a != b);
            let at = at.unwrap_or(played.len().min(expected.len()));
            let title = &read.tune.title;
            let (got, wanted) = (played.get(at), expected.get(at));
            wrong.push(format!("{title}: note {at}: {got:?} instead of {wanted:?}"));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {tunes}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(
        tunes > 250 && notes > 20_000,
        "{tunes} tunes, {notes} notes"
    );
    assert!(moved < 20, "{moved}");
}
