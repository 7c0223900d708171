//! What goes wrong, as a kind; the sentence for it stands in the Fluent files.

use std::fmt::Display;
use std::io;

use fourcourse::formats::is_visible;
use fourcourse::store::StoreError;
use fourcourse::words::Words;

/// Letters of a text from outside that are told; of a longer one the beginning stands for it.
const MOST_TOLD: usize = 60;

/// Why a command fails.
#[derive(Debug)]
pub(super) struct Failure {
    id: &'static str,
    args: Vec<(&'static str, Detail)>,
    /// Lines that follow the sentence, such as the tunes to choose from.
    more: Vec<String>,
}

/// What a sentence is about.
#[derive(Debug)]
enum Detail {
    Text(String),
    /// Why the system refused.
    Why(io::Error),
}

/// What of a text a terminal can show.
pub(super) fn visible(text: &str) -> String {
    text.chars().filter(|&c| is_visible(c)).collect()
}

impl Failure {
    /// A failure by the Fluent id of its sentence.
    pub(super) fn new(id: &'static str) -> Self {
        Self {
            id,
            args: Vec::new(),
            more: Vec::new(),
        }
    }

    /// With an argument of its sentence.
    pub(super) fn with(mut self, name: &'static str, value: impl Display) -> Self {
        let text = visible(&value.to_string());
        self.args.push((name, Detail::Text(text)));
        self
    }

    /// With a text that was typed, or its beginning.
    pub(super) fn quoting(self, text: &str) -> Self {
        let text = text.trim();
        match text.char_indices().nth(MOST_TOLD) {
            Some((end, _)) => self.with("text", format_args!("{}...", &text[..end])),
            None => self.with("text", text),
        }
    }

    /// With the reason why the system refused.
    pub(super) fn because(mut self, why: io::Error) -> Self {
        self.args.push(("why", Detail::Why(why)));
        self
    }

    /// With a line below its sentence.
    pub(super) fn line(mut self, line: String) -> Self {
        self.more.push(line);
        self
    }

    /// The sentence, and what stands below it.
    pub(super) fn sentence(&self, words: &Words) -> String {
        let said = |detail: &Detail| match detail {
            Detail::Text(text) => text.clone(),
            Detail::Why(why) => words.why(why),
        };
        let args = self
            .args
            .iter()
            .map(|(name, detail)| (*name, said(detail).into()));
        let mut sentence = words.say(self.id, &args.collect::<Vec<_>>());
        for line in &self.more {
            sentence.push('\n');
            sentence += line;
        }
        sentence
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::InUse => Self::new("shell-songbook-in-use"),
            StoreError::Folder(why) => Self::new("shell-songbook-folder").because(why),
            StoreError::Database(why) => Self::new("shell-songbook-failed").with("why", why),
            StoreError::Newer => Self::new("shell-songbook-failed").with("why", error),
        }
    }
}
