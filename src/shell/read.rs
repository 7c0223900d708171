//! `fourcourse read FILE...`: what was understood of a text.

use std::path::PathBuf;

use clap::Args;
use serde_json::Value;

use fourcourse::chart::Ticks;
use fourcourse::formats::{ReadTune, readout};

use super::{Failure, Said, Shell, header, source};

/// What is understood of tune books, without keeping it
#[derive(Debug, Args)]
pub(super) struct Read {
    /// ABC files; - is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,

    /// Print JSON: a list of tunes with their notes and chords in quarter notes
    #[arg(long)]
    json: bool,

    /// Bars as they are played, repeats and all, instead of as they are written
    #[arg(long)]
    played: bool,
}

impl Read {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut said = Said::default();
        let mut rows = Vec::new();
        for file in &self.files {
            let book = source::tunes(file)?;
            said.err += &source::problems(&shell.words, file, &book.problems);
            for read in &book.tunes {
                if self.json {
                    let message = |problem: &_| source::message(&shell.words, problem);
                    rows.push(readout::json(read, self.played, message));
                } else {
                    said.out += &self.page(read, shell);
                    said.err += &source::problems(&shell.words, file, &read.problems);
                }
            }
        }
        if self.json {
            said.out = format!("{}\n", Value::Array(rows));
        }
        Ok(said)
    }

    /// A tune in a few lines: what it is, how much of it there is, its chords bar by bar.
    fn page(&self, read: &ReadTune, shell: &Shell) -> String {
        let tune = &read.tune;
        let played;
        let bars: Vec<_> = if self.played {
            played = tune.playing();
            played.bars.iter().map(|bar| bar.written).collect()
        } else {
            (0..tune.bars.len()).collect()
        };
        let sounding = bars
            .iter()
            .filter(|&&bar| tune.bars[bar].length > Ticks::ZERO)
            .count();
        let notes = readout::notes(tune, self.played).len();
        let counts = shell.words.say(
            "shell-read-counts",
            &[("bars", sounding.to_string()), ("notes", notes.to_string())],
        );
        let chords = bars.iter().map(|&bar| {
            let symbols = tune.bars[bar].chords.iter();
            let symbols: Vec<_> = symbols
                .map(|at| at.symbol.in_style(shell.look.notes()))
                .collect();
            symbols.join(" ")
        });
        let chords: Vec<_> = chords.collect();
        let mut page = format!(
            "{}\n  {}\n  {counts}\n",
            tune.title,
            header::kind(tune, shell)
        );
        if chords.iter().any(|bar| !bar.is_empty()) {
            page += &format!("  | {} |\n", chords.join(" | "));
        }
        page
    }
}
