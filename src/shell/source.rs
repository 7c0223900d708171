//! Texts from outside: files, and what comes in through a pipe.

use std::ffi::OsStr;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use fourcourse::formats::{self, Book, Problem, abc, limits};
use fourcourse::words::Words;

use super::failure::Failure;

/// Reads a tune book; `-` is standard input. Of an endless one no more is read than the reader takes.
pub(super) fn book(path: &Path) -> Result<Book, Failure> {
    let unreadable = |why: io::Error| {
        Failure::new("shell-file-unreadable")
            .with("file", path.display())
            .with("why", why)
    };
    let mut bytes = Vec::new();
    // One byte more, so that the reader sees that the text goes on.
    let most = limits::BYTES as u64 + 1;
    if path == Path::new("-") {
        io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes))
    }
    .map_err(unreadable)?;
    let extension = path.extension().and_then(OsStr::to_str).unwrap_or("");
    // A file of another name is most likely ABC too.
    let read = formats::for_extension(extension).map_or(abc::read as fn(&[u8]) -> Book, |f| f.read);
    Ok(read(&bytes))
}

/// A book that must hold a tune.
pub(super) fn tunes(path: &Path) -> Result<Book, Failure> {
    let book = book(path)?;
    if book.tunes.is_empty() {
        return Err(Failure::new("shell-no-tune").with("file", path.display()));
    }
    Ok(book)
}

/// The sentence for a problem.
pub(super) fn message(words: &Words, problem: &Problem) -> String {
    words.say(problem.kind.id(), &problem.kind.args())
}

/// Problems as compilers print them: `file:line:column: message`, one a line.
pub(super) fn problems(words: &Words, path: &Path, problems: &[Problem]) -> String {
    problems
        .iter()
        .map(|problem| {
            let (line, column) = (problem.line, problem.column);
            let message = message(words, problem);
            format!("{}:{line}:{column}: {message}\n", path.display())
        })
        .collect()
}
