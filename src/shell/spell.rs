//! `fourcourse spell CHORD...`: the notes of chords.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::theory::{NoteName, Symbol};

use super::notation::symbol;
use super::{Failure, Said, Shell};

/// The notes of each chord, lowest first, one chord a line
#[derive(Debug, Args)]
pub(super) struct Spell {
    /// Chord symbols in any spelling: Am7, "Bb7(#9)", F#-7/E
    #[arg(required = true, value_name = "CHORD")]
    chords: Vec<String>,

    /// Print JSON: a list of {"symbol","notes"}
    #[arg(long)]
    json: bool,
}

/// The notes of a chord: its bass, then the others in spelling order.
fn notes(symbol: Symbol) -> Vec<NoteName> {
    let Symbol::Chord(chord) = symbol else {
        return Vec::new();
    };
    let mut notes = vec![chord.lowest()];
    notes.extend(
        chord
            .tones()
            .map(|(_, note)| note)
            .filter(|&note| note != chord.lowest()),
    );
    notes
}

impl Spell {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut chords = Vec::new();
        for text in &self.chords {
            // Several chords may come in one pair of quotes; nothing in quotes is no chord.
            let words = text.split_whitespace();
            let nothing = text.trim().is_empty().then_some("");
            for word in words.chain(nothing) {
                chords.push(symbol(word, shell)?);
            }
        }
        let names = |symbol: Symbol| -> Vec<String> {
            notes(symbol).iter().map(NoteName::to_string).collect()
        };
        if self.json {
            let rows = chords
                .into_iter()
                .map(|symbol| json!({"symbol": symbol.to_string(), "notes": names(symbol)}));
            return Ok(format!("{}\n", Value::Array(rows.collect())).into());
        }
        let lines = chords.into_iter().map(|symbol| match symbol {
            Symbol::Chord(_) => names(symbol).join(" ") + "\n",
            Symbol::NoChord => format!("{symbol}\n"),
        });
        Ok(lines.collect::<String>().into())
    }
}
