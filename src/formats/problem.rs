//! What can be wrong with a text.

/// Something in a text that could not be understood, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// What is wrong.
    pub kind: ProblemKind,
}

/// Something of which there can be more than is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Counted {
    Tunes,
    Bars,
    Notes,
    ChordNotes,
    GraceNotes,
    Signs,
    Lyrics,
    Lines,
    Parts,
    Definitions,
    Fields,
    Problems,
    Played,
}

/// What can be wrong with a text. The words for it are in the Fluent files, under [`ProblemKind::id`].
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum ProblemKind {
    /// The text is longer than is read.
    TooLong,
    /// The line is longer than is read.
    LineTooLong,
    /// These words are longer than is kept.
    WordsTooLong,
    /// There are more of them than are read.
    TooMany(Counted),
    /// Some bytes are not text; they were replaced.
    Encoding,
    /// Control characters and marks that turn the direction of writing were left out.
    Invisible,
    /// There is no tune in the text.
    NoTune,
    /// The tune has no notes.
    NoMusic,
    /// The tune has no title.
    MissingTitle,
    /// The tune does not say its key; it is read in C.
    MissingKey,
    /// An empty line stands in the middle of the tune.
    EmptyLine,
    /// The line is neither music nor a field.
    NotMusic,
    /// The character means nothing here.
    UnknownCharacter(char),
    /// Something is opened by this character and not closed on its line.
    Unclosed(char),
    /// A note length that is no length.
    Length,
    /// The field cannot be read.
    Field {
        /// Its letter.
        field: char,
        /// What it says.
        value: String,
    },
    /// The chord symbol cannot be read; it is kept as words.
    Chord(String),
    /// The chord has no time of its own: another one stands at the same moment, or the tune is over.
    ChordWithoutTime(String),
    /// The tune ends before its tuplet does.
    Tuplet,
    /// Broken rhythm without a note on both sides.
    BrokenRhythm,
    /// The form names a part that the tune does not have.
    UnknownPart(String),
    /// There is no such strum.
    Strum(String),
    /// Our own line `%%fourcourse-...` with this name says nothing that can be read.
    Directive(String),
}

impl ProblemKind {
    /// The Fluent id of its sentence.
    pub fn id(&self) -> &'static str {
        match self {
            Self::TooLong => "problem-too-long",
            Self::LineTooLong => "problem-line-too-long",
            Self::WordsTooLong => "problem-words-too-long",
            Self::TooMany(Counted::Tunes) => "problem-too-many-tunes",
            Self::TooMany(Counted::Bars) => "problem-too-many-bars",
            Self::TooMany(Counted::Notes) => "problem-too-many-notes",
            Self::TooMany(Counted::ChordNotes) => "problem-too-many-chord-notes",
            Self::TooMany(Counted::GraceNotes) => "problem-too-many-grace-notes",
            Self::TooMany(Counted::Signs) => "problem-too-many-signs",
            Self::TooMany(Counted::Lyrics) => "problem-too-many-lyrics",
            Self::TooMany(Counted::Lines) => "problem-too-many-lines",
            Self::TooMany(Counted::Parts) => "problem-too-many-parts",
            Self::TooMany(Counted::Definitions) => "problem-too-many-definitions",
            Self::TooMany(Counted::Fields) => "problem-too-many-fields",
            Self::TooMany(Counted::Problems) => "problem-too-many-problems",
            Self::TooMany(Counted::Played) => "problem-too-many-played",
            Self::Encoding => "problem-encoding",
            Self::Invisible => "problem-invisible",
            Self::NoTune => "problem-no-tune",
            Self::NoMusic => "problem-no-music",
            Self::MissingTitle => "problem-missing-title",
            Self::MissingKey => "problem-missing-key",
            Self::EmptyLine => "problem-empty-line",
            Self::NotMusic => "problem-not-music",
            Self::UnknownCharacter(_) => "problem-unknown-character",
            Self::Unclosed(_) => "problem-unclosed",
            Self::Length => "problem-length",
            Self::Field { .. } => "problem-field",
            Self::Chord(_) => "problem-chord",
            Self::ChordWithoutTime(_) => "problem-chord-without-time",
            Self::Tuplet => "problem-tuplet",
            Self::BrokenRhythm => "problem-broken-rhythm",
            Self::UnknownPart(_) => "problem-unknown-part",
            Self::Strum(_) => "problem-strum",
            Self::Directive(_) => "problem-directive",
        }
    }

    /// The arguments of its sentence, by their Fluent names.
    pub fn args(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::UnknownCharacter(c) | Self::Unclosed(c) => vec![("character", c.to_string())],
            Self::Field { field, value } => {
                vec![("field", field.to_string()), ("value", value.clone())]
            }
            Self::Chord(text) | Self::UnknownPart(text) => vec![("text", text.clone())],
            Self::Strum(text) | Self::Directive(text) | Self::ChordWithoutTime(text) => {
                vec![("text", text.clone())]
            }
            _ => vec![],
        }
    }
}
