//! What goes wrong, as a kind; the sentence for it stands in the Fluent files.

use std::fmt::Display;

use fourcourse::store::StoreError;
use fourcourse::words::Words;

/// Why a command fails.
#[derive(Debug)]
pub(super) struct Failure {
    id: &'static str,
    args: Vec<(&'static str, String)>,
    /// Lines that follow the sentence, such as the tunes to choose from.
    more: Vec<String>,
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
        self.args.push((name, value.to_string()));
        self
    }

    /// With a line below its sentence.
    pub(super) fn line(mut self, line: String) -> Self {
        self.more.push(line);
        self
    }

    /// The sentence, and what stands below it.
    pub(super) fn sentence(&self, words: &Words) -> String {
        let mut sentence = words.say(self.id, &self.args);
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
            StoreError::Folder(why) => Self::new("shell-songbook-folder").with("why", why),
            StoreError::Database(why) => Self::new("shell-songbook-failed").with("why", why),
        }
    }
}
