//! `fourcourse read FILE...`: what was understood of a text.

use std::path::PathBuf;

use clap::Args;

use fourcourse::chart::Ticks;
use fourcourse::formats::readout::{Listing, ReadOut};
use fourcourse::formats::{ReadTune, limits};

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
            let mut room = limits::PLAYED;
            for read in &book.tunes {
                let listing = if self.played {
                    Listing::played(&read.tune, &mut room)
                } else {
                    Listing::written(&read.tune)
                };
                if self.json {
                    let message = |problem: &_| source::message(&shell.words, problem);
                    let out = ReadOut::of(read, &listing, message);
                    rows.push(if rows.is_empty() { b'[' } else { b',' });
                    serde_json::to_writer(&mut rows, &out)
                        .map_err(|why| Failure::new("shell-out-unwritable").because(why.into()))?;
                } else {
                    said.out += &page(read, &listing, shell);
                    let cut = listing.problem(read);
                    let problems = read.problems.iter().chain(&cut);
                    said.err += &source::problems(&shell.words, file, problems);
                }
            }
        }
        if self.json {
            rows.extend(b"]\n");
            said.out = String::from_utf8(rows).unwrap_or_default(); // JSON is UTF-8
        }
        Ok(said)
    }
}

/// A tune in a few lines: what it is, how much of it there is, its chords bar by bar.
fn page(read: &ReadTune, listing: &Listing, shell: &Shell) -> String {
    let tune = &read.tune;
    let bars = || listing.bars.iter().map(|&(bar, _)| &tune.bars[bar]);
    let sounding = bars().filter(|bar| bar.length > Ticks::ZERO).count();
    let notes = listing.notes(tune).len();
    let counts = [("bars", sounding.into()), ("notes", notes.into())];
    let counts = shell.words.say("shell-read-counts", &counts);
    let chords = bars().map(|bar| {
        let symbols = bar.chords.iter();
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
