//! `fourcourse list [WORDS]`: the songbook.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::desk::{Entry, Songbook};

use super::page::table;
use super::{Failure, Said, Shell, header, songbook};

/// The tunes of the songbook, or those that words find: any part of a title or other name, slips and accents forgiven
#[derive(Debug, Args)]
pub(super) struct List {
    /// What to look for
    words: Vec<String>,

    /// Print JSON: a list of {"id","titles","rhythm","metre","key":{"tonic","mode"},"form"}
    #[arg(long)]
    json: bool,
}

impl List {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let (store, remark) = songbook::read(shell)?;
        let words = self.words.join(" ");
        let found = store.search(&words);
        if found.is_empty() && !words.trim().is_empty() {
            return Err(Failure::new("shell-tune-unknown").quoting(&words));
        }
        let found = found.into_iter().map(|place| &store.entries()[place]);
        let out = if self.json {
            format!("{}\n", Value::Array(found.map(row).collect()))
        } else {
            table(&found.map(|entry| cells(entry, shell)).collect::<Vec<_>>())
        };
        Ok(Said { out, err: remark })
    }
}

fn row(entry: &Entry) -> Value {
    json!({
        "id": entry.id.0,
        "titles": entry.titles,
        "rhythm": entry.rhythm,
        "metre": entry.metre,
        "key": {"tonic": entry.key.tonic.to_string(), "mode": entry.key.mode.id()},
        "form": entry.form,
    })
}

fn cells(entry: &Entry, shell: &Shell) -> Vec<String> {
    vec![
        format!("{:>4}", entry.id.0),
        entry.titles.first().cloned().unwrap_or_default(),
        shell.words.rhythm(&entry.rhythm),
        entry.metre.clone(),
        header::key(entry.key, shell),
        entry.form.clone(),
    ]
}
