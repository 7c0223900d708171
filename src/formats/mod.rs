//! Reading tunes from text. A reader never fails: it gives what it understood and a list of problems with places.
//!
//! Every format is one module and one line of [`FORMATS`]; what a text from outside may cost is bounded in [`limits`].

use crate::chart::Tune;

pub mod abc;
pub mod limits;
mod problem;
pub mod readout;
mod visible;

pub use problem::{Counted, Problem, ProblemKind};
pub use visible::is_visible;

/// What was understood of a text.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Book {
    /// Its tunes in written order.
    pub tunes: Vec<ReadTune>,
    /// What is wrong outside the tunes.
    pub problems: Vec<Problem>,
}

/// A tune as far as it could be read.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadTune {
    /// The tune.
    pub tune: Tune,
    /// What could not be understood, in order of place.
    pub problems: Vec<Problem>,
    /// Its number in the book, where it says one.
    pub number: Option<u32>,
    /// The line of the text on which it begins, from 1.
    pub line: usize,
}

/// A format that can be read.
#[derive(Debug, Clone, Copy)]
pub struct Format {
    /// Its name among musicians.
    pub name: &'static str,
    /// How the names of its files end, in lower case and without the dot.
    pub extensions: &'static [&'static str],
    /// Its reader.
    pub read: fn(&[u8]) -> Book,
}

/// All formats that can be read.
pub const FORMATS: &[Format] = &[Format {
    name: "ABC",
    extensions: &["abc"],
    read: abc::read,
}];

/// The format of a file with this extension (without the dot, in any case).
///
/// ```
/// use fourcourse::formats;
/// assert_eq!(formats::for_extension("ABC").unwrap().name, "ABC");
/// assert!(formats::for_extension("mp3").is_none());
/// ```
pub fn for_extension(extension: &str) -> Option<&'static Format> {
    let is = |known: &&str| known.eq_ignore_ascii_case(extension);
    FORMATS
        .iter()
        .find(|format| format.extensions.iter().any(is))
}
