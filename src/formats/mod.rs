//! Reading tunes from text. A reader never fails: it gives what it understood and a list of problems with places.

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

/// What can be wrong with a text. The words for it are in the Fluent files.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum ProblemKind {
    /// The text is longer than is read.
    TooLong,
}
