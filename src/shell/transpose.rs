//! `fourcourse transpose "A D E7 F#m" --from A --to Bb`: chords in another key.

use clap::Args;
use serde_json::json;

use fourcourse::theory::Transposition;

use super::notation::{called, key, symbol};
use super::{Failure, Said, Shell};

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

/// What stands between chords on a chart and is no chord.
fn is_sign(c: char) -> bool {
    "|:/%.,-()[]{}".contains(c)
}

/// Whether a chord may end like this: with signs of its own (`N.C.`, `A-`, `C(b5)`), not with those of the chart.
fn ends_chord(text: &str) -> bool {
    let count = |sign| text.matches(sign).count();
    let closed = count('(') == count(')');
    closed && (text.ends_with(['-', ')']) || text == "N.C." || !text.ends_with(is_sign))
}

/// A word with its chords moved; the signs before, between and after them stay.
fn moved(word: &str, by: Transposition, shell: &Shell) -> Result<String, Failure> {
    let mut out = String::new();
    for piece in word.split_inclusive(['|', ':']) {
        let piece = match piece.char_indices().find(|&(_, c)| !is_sign(c)) {
            Some((start, _)) => {
                out += &piece[..start];
                &piece[start..]
            }
            None => {
                out += piece;
                continue;
            }
        };
        let signs = piece.char_indices().rev().take_while(|&(_, c)| is_sign(c));
        let ends = std::iter::once(piece.len()).chain(signs.map(|(at, _)| at));
        let found = ends
            .filter(|&end| ends_chord(&piece[..end]))
            .find_map(|end| Some((symbol(&piece[..end], shell).ok()?, end)));
        let Some((symbol, end)) = found else {
            return Err(Failure::new("shell-no-chord").quoting(piece.trim_end_matches(is_sign)));
        };
        out += &by.symbol(symbol).to_string();
        out += &piece[end..];
    }
    Ok(out)
}

impl Transpose {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let from = key(&self.from, shell)?;
        let to = called(&self.to, from, shell)?;
        let by = Transposition::between(from, to);
        let words = self.chords.iter().flat_map(|text| text.split_whitespace());
        let chords = words
            .map(|word| moved(word, by, shell))
            .collect::<Result<Vec<_>, _>>()?;
        if chords.is_empty() {
            return Err(Failure::new("shell-no-chord").quoting(""));
        }
        if self.json {
            let json = json!({"from": from.to_string(), "to": to.to_string(), "chords": chords});
            return Ok(format!("{json}\n").into());
        }
        Ok((chords.join(" ") + "\n").into())
    }
}
