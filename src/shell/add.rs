//! `fourcourse add FILE...`: tunes into the songbook.

use std::path::PathBuf;

use chrono::Utc;
use clap::Args;

use fourcourse::store::Added;

use super::{Failure, Said, Shell, songbook, source};

/// Put the tunes of files into the songbook, all or none
#[derive(Debug, Args)]
pub(super) struct Add {
    /// ABC files; - is standard input
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
}

impl Add {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut said = Said::default();
        let mut tunes = Vec::new();
        let now = Utc::now();
        for file in &self.files {
            let mut book = source::tunes(file)?;
            source::name_untitled(&mut book, file, &shell.words);
            said.err += &source::problems(&shell.words, file, &book.problems);
            for mut read in book.tunes {
                said.err += &source::problems(&shell.words, file, &read.problems);
                read.tune.made = Some(now);
                read.tune.changed = Some(now);
                tunes.push(read.tune);
            }
        }
        let (mut store, remark) = songbook::open(shell)?;
        said.err += &remark;
        for (added, tune) in store.add(&tunes)?.into_iter().zip(&tunes) {
            let id = match added {
                Added::New(_) => "shell-added",
                Added::Same(_) => "shell-added-before",
            };
            said.out += &shell
                .words
                .say(id, &[("title", tune.title.as_str().into())]);
            said.out.push('\n');
        }
        Ok(said)
    }
}
