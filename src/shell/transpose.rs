//! `fourcourse transpose "A D E7 F#m" --from A --to Bb`: chords in another key.

use clap::Args;
use serde_json::json;

use fourcourse::theory::{Key, NoteName, Transposition};

use super::spell::symbol;
use super::{Failure, Said};

/// Chords in another key, on one line
#[derive(Debug, Args)]
pub(super) struct Transpose {
    /// Chord symbols; bar lines, slashes and dots between them stay where they are
    #[arg(required = true, value_name = "CHORDS")]
    chords: Vec<String>,

    /// The key they are in: A, Em, "D dorian"
    #[arg(long, value_name = "KEY")]
    from: String,

    /// The key that was called
    #[arg(long, value_name = "KEY")]
    to: String,

    /// Print JSON: {"from","to","chords"}
    #[arg(long)]
    json: bool,
}

/// A key that was typed.
pub(super) fn key(text: &str) -> Result<Key, Failure> {
    text.parse()
        .map_err(|_| Failure::new("shell-no-key").with("text", text.trim()))
}

/// A key that was called for music in another one: a bare note keeps the mode. A tonic that would take more than seven
/// signs is spelled the other way.
pub(super) fn called(text: &str, from: Key) -> Result<Key, Failure> {
    let called = match text.trim().parse::<NoteName>() {
        Ok(tonic) => Key::new(tonic, from.mode),
        Err(_) => key(text)?,
    };
    if called.signature().abs() > 7 {
        return Ok(Key::spelled_for_players(called.tonic.class(), called.mode));
    }
    Ok(called)
}

/// What stands between chords on a chart and is no chord.
fn is_sign(word: &str) -> bool {
    word.chars().all(|c| "|:/%.,-()[]{}".contains(c))
}

impl Transpose {
    pub(super) fn run(&self) -> Result<Said, Failure> {
        let from = key(&self.from)?;
        let to = called(&self.to, from)?;
        let by = Transposition::between(from, to);
        let mut moved = Vec::new();
        for word in self.chords.iter().flat_map(|text| text.split_whitespace()) {
            moved.push(if is_sign(word) {
                word.to_owned()
            } else {
                by.symbol(symbol(word)?).to_string()
            });
        }
        if self.json {
            let json = json!({"from": from.to_string(), "to": to.to_string(), "chords": moved});
            return Ok(format!("{json}\n").into());
        }
        Ok((moved.join(" ") + "\n").into())
    }
}
