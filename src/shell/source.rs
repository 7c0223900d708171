//! Texts from outside: files, and what comes in through a pipe.

use std::ffi::OsStr;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use fourcourse::formats::{self, Book, Problem, abc, limits};
use fourcourse::words::Words;

use super::failure::{Failure, visible};

/// Whether a path stands for what comes in through a pipe.
pub(super) fn is_input(path: &Path) -> bool {
    path == Path::new("-")
}

/// Reads a tune book; `-` is standard input. Of an endless one no more is read than the reader takes.
fn book(path: &Path) -> Result<Book, Failure> {
    let mut bytes = Vec::new();
    // One byte more, so that the reader sees that the text goes on.
    let most = limits::BYTES as u64 + 1;
    if is_input(path) {
        io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes))
    }
    .map_err(|why| {
        Failure::new("shell-file-unreadable")
            .with("file", path.display())
            .because(why)
    })?;
    let extension = path.extension().and_then(OsStr::to_str).unwrap_or("");
    // A file of another name is most likely ABC too.
    let read = formats::for_extension(extension).map_or(abc::read as fn(&[u8]) -> Book, |f| f.read);
    Ok(read(&bytes))
}

/// A book that must hold a tune.
pub(super) fn tunes(path: &Path) -> Result<Book, Failure> {
    let book = book(path)?;
    if book.tunes.is_empty() {
        return Err(if is_input(path) {
            Failure::new("shell-no-tune-in-input")
        } else {
            Failure::new("shell-no-tune").with("file", path.display())
        });
    }
    Ok(book)
}

/// Gives tunes without a title one to find them by: the name of their file, with a number where it holds several, or
/// else that they have none.
pub(super) fn name_untitled(book: &mut Book, path: &Path, words: &Words) {
    let stem = path.file_stem().filter(|_| !is_input(path));
    let name = stem.map_or_else(
        || words.get("shell-untitled"),
        |stem| visible(&stem.to_string_lossy()),
    );
    let several = book.tunes.len() > 1;
    for (read, number) in book.tunes.iter_mut().zip(1..) {
        if read.tune.title.is_empty() {
            read.tune.title = if several {
                format!("{name} {number}")
            } else {
                name.clone()
            };
        }
    }
}

/// The sentence for a problem.
pub(super) fn message(words: &Words, problem: &Problem) -> String {
    let args = problem.kind.args().into_iter();
    let args: Vec<_> = args.map(|(name, text)| (name, text.into())).collect();
    words.say(problem.kind.id(), &args)
}

/// Problems as compilers print them: `file:line:column: message`, one a line.
pub(super) fn problems<'a>(
    words: &Words,
    path: &Path,
    problems: impl IntoIterator<Item = &'a Problem>,
) -> String {
    let path = visible(&path.display().to_string());
    let line = |problem: &Problem| {
        let (line, column) = (problem.line, problem.column);
        format!("{path}:{line}:{column}: {}\n", message(words, problem))
    };
    problems.into_iter().map(line).collect()
}
