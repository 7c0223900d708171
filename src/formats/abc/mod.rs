//! ABC in: the open [ABC standard 2.1](https://abcnotation.com/wiki/abc:standard:v2.1) and what people really write.
//!
//! From bytes to tunes in one direction: `encoding` makes text of bytes, `lines` tells what each line is, this
//! module finds the tunes, `tune` reads header and body, `token` takes music code apart and `music` with
//! `event` and `bars` puts it together again. The other files hold one small language each.
//!
//! Where the standard leaves a choice, or people choose otherwise:
//!
//! - An accidental holds for its letter in every octave up to the bar line (11.3, the default), and through a tie.
//! - All notes of a chord last as long as its first; its uppermost note is the melody.
//! - A tie to another pitch is a slur, as it was in old tunes.
//! - An empty line ends a tune, unless what follows can only be the rest of it.
//! - Macros (`m:`) are passed over, as are the notes of all voices but the first.

mod bar_line;
mod bars;
mod chord_text;
mod decoration;
mod encoding;
mod event;
mod fields;
mod key;
mod lines;
mod lyrics;
mod music;
mod ours;
mod pitch;
mod problems;
mod rhythm;
#[cfg(test)]
mod tests;
mod text;
mod token;
mod tune;

use std::borrow::Cow;

use super::visible::is_visible;
use super::{Book, Counted, ProblemKind, limits};
use lines::{Kind, Line, Lines};
use music::Room;
use problems::{Problems, Spot};
use tune::Field;

/// Reads a tune book.
///
/// ```
/// use fourcourse::formats::abc;
/// let book = abc::read(b"X:1\nT:Two Bars\nM:4/4\nK:G\n\"G\"G2B2 d2B2 | \"D7\"A2F2 \"G\"G4 |]\n");
/// let tune = &book.tunes[0].tune;
/// assert_eq!((tune.title.as_str(), tune.bars.len()), ("Two Bars", 2));
/// assert!(book.tunes[0].problems.is_empty());
/// ```
pub fn read(bytes: &[u8]) -> Book {
    let kept = &bytes[..bytes.len().min(limits::BYTES)];
    let (text, replaced) = encoding::decode(kept);
    let (text, invisible) = without_invisible(text);
    let mut finder = Finder::default();
    if replaced {
        finder.problems.add(start(&text), ProblemKind::Encoding);
    }
    if let Some(at) = invisible {
        finder.no_text = true;
        finder.problems.add(spot(&text, at), ProblemKind::Invisible);
    }
    finder.find(&text);
    if kept.len() < bytes.len() {
        let last = Lines::new(&text).last();
        let end = last.map_or(start(""), |line| Spot::start(line).plus(line.text.len()));
        finder.problems.add(end, ProblemKind::TooLong);
    }
    if finder.tunes.is_empty() {
        finder.problems.add(start(&text), ProblemKind::NoTune);
    }
    Book {
        tunes: finder.tunes,
        problems: finder.problems.finish(),
    }
}

/// The text without the characters that nobody sees, and where the first one of them stood that texts do not have.
fn without_invisible(text: Cow<'_, str>) -> (Cow<'_, str>, Option<usize>) {
    let stays = |c: char| is_visible(c) || matches!(c, '\n' | '\r' | '\t');
    if text.chars().all(stays) {
        return (text, None);
    }
    // A form feed between pages and the mark with which DOS ended a text.
    let strange = |c: char| !stays(c) && !matches!(c, '\u{c}' | '\u{1a}');
    let first = text.find(strange).map(|at| {
        let before = text[..at].chars().filter(|&c| stays(c));
        before.map(char::len_utf8).sum()
    });
    let mut seen = String::with_capacity(text.len());
    let mut parted = false;
    for c in text.chars() {
        if !stays(c) {
            parted |= seen.ends_with('\r');
            continue;
        }
        if std::mem::take(&mut parted) && c == '\n' {
            // Two ends of lines that something stood between are not one.
            seen.pop();
            seen.push('\n');
        }
        seen.push(c);
    }
    (Cow::Owned(seen), first)
}

/// A place of the text.
fn spot(text: &str, at: usize) -> Spot<'_> {
    let upto = Lines::new(text).take_while(|line| line.start <= at);
    upto.last()
        .map_or(start(text), |line| Spot::start(line).plus(at - line.start))
}

fn start(text: &str) -> Spot<'_> {
    let first = Lines::new(text).next();
    first.map_or(
        Spot {
            line: 1,
            text: "",
            byte: 0,
        },
        Spot::start,
    )
}

/// Finds the tunes of a book paragraph by paragraph.
#[derive(Default)]
struct Finder<'a> {
    tunes: Vec<super::ReadTune>,
    problems: Problems,
    /// The file header: fields before all tunes, which hold for each.
    defaults: Vec<Field<'a>>,
    bars: usize,
    notes: usize,
    full: bool,
    /// There are characters in it that texts do not have: it takes a number or a key to make a tune.
    no_text: bool,
}

/// Lines up to the next empty one.
struct Paragraph<'a> {
    lines: Lines<'a>,
    end: usize,
    first: Line<'a>,
    has_key: bool,
    has_music: bool,
    /// There is an `X:` in it.
    has_number: bool,
    /// There is a key before that, or no `X:` at all: a tune whose number somebody forgot.
    has_early_key: bool,
}

impl<'a> Paragraph<'a> {
    /// The next paragraph; `lines` goes on after it.
    fn next(lines: &mut Lines<'a>) -> Option<Self> {
        let mut paragraph: Option<Self> = None;
        loop {
            let before = *lines;
            let Some(line) = lines.next() else { break };
            let kind = line.kind();
            if kind == Kind::Empty {
                if paragraph.is_some() {
                    *lines = before;
                    break;
                }
                continue;
            }
            let paragraph = paragraph.get_or_insert(Self {
                lines: before,
                end: 0,
                first: line,
                has_key: false,
                has_music: false,
                has_number: false,
                has_early_key: false,
            });
            match kind {
                Kind::Field('K', _) => {
                    paragraph.has_key = true;
                    paragraph.has_early_key |= !paragraph.has_number;
                }
                Kind::Field('X', _) => paragraph.has_number = true,
                Kind::Text(text) if !paragraph.has_music => {
                    paragraph.has_music = token::looks_like_music(text);
                }
                _ => {}
            }
            paragraph.end = lines.place();
        }
        paragraph
    }
}

impl<'a> Finder<'a> {
    fn find(&mut self, text: &'a str) {
        let mut lines = Lines::new(text);
        // The tune that the paragraph before belongs to: where it starts and ends, and whether it had its key.
        let mut open: Option<(Lines<'a>, usize, bool)> = None;
        while let Some(paragraph) = Paragraph::next(&mut lines) {
            if let Some((_, end, has_key)) = &mut open
                && goes_on(&paragraph, *has_key)
            {
                *end = paragraph.end;
                *has_key |= paragraph.has_key;
                continue;
            }
            self.close(open.take());
            open = self.paragraph(&paragraph);
        }
        self.close(open);
    }

    fn close(&mut self, tune: Option<(Lines<'a>, usize, bool)>) {
        let Some((lines, end, _)) = tune else { return };
        let room = Room {
            bars: limits::BOOK_BARS.saturating_sub(self.bars),
            notes: limits::BOOK_NOTES.saturating_sub(self.notes),
        };
        if self.tunes.len() >= limits::TUNES || room.bars == 0 || room.notes == 0 {
            if !self.full {
                self.full = true;
                let line = lines.into_iter().next();
                let spot = line.map_or(start(""), Spot::start);
                self.problems
                    .add(spot, ProblemKind::TooMany(Counted::Tunes));
            }
            return;
        }
        let tune = tune::read(lines.until(end), &self.defaults, room);
        self.bars += tune.tune.bars.len();
        self.notes += tune
            .tune
            .bars
            .iter()
            .map(|bar| bar.notes.len())
            .sum::<usize>();
        self.tunes.push(tune);
    }

    /// Reads the tunes of a paragraph but the last, which may go on in the next paragraph.
    fn paragraph(&mut self, paragraph: &Paragraph<'a>) -> Option<(Lines<'a>, usize, bool)> {
        let mut lines = paragraph.lines.until(paragraph.end);
        let mut open: Option<(Lines<'a>, bool)> = None;
        // Somebody forgot the number: fields with a key among them, or music alone where there is no tune yet.
        let first_music = paragraph.has_music && !paragraph.has_number && self.tunes.is_empty();
        let bare = paragraph.has_early_key || (first_music && !self.no_text);
        loop {
            let before = lines;
            let Some(line) = lines.next() else { break };
            let kind = line.kind();
            match (kind, &mut open) {
                (Kind::Field('X', _), _) => {
                    let tune = open.take();
                    self.close(tune.map(|(lines, key)| (lines, line.start, key)));
                    open = Some((before, false));
                }
                (Kind::Field('K', _), Some((_, key))) => *key = true,
                (_, Some(_)) => {}
                _ => {
                    let begins = matches!(kind, Kind::Field('T' | 'M' | 'L' | 'K' | 'Q' | 'R', _))
                        || matches!(kind, Kind::Text(text) if token::looks_like_music(text));
                    if bare && begins {
                        open = Some((before, matches!(kind, Kind::Field('K', _))));
                    } else {
                        self.file_header(line);
                    }
                }
            }
        }
        open.map(|(lines, key)| (lines, paragraph.end, key))
    }

    /// A line outside of tunes: before the first tune its fields hold for all of them.
    fn file_header(&mut self, line: Line<'a>) {
        if !self.tunes.is_empty() {
            return;
        }
        match Field::of(line) {
            Some(field) if field.letter == '+' => {
                if let Some(last) = self.defaults.last_mut() {
                    last.extend(&field.value);
                }
            }
            Some(_) if self.defaults.len() >= limits::FIELDS => {
                let spot = Spot::start(line);
                self.problems
                    .add_once(spot, ProblemKind::TooMany(Counted::Fields));
            }
            Some(field) if "ABCDFHILMNORSUZ%".contains(field.letter) => self.defaults.push(field),
            _ => {}
        }
    }
}

/// Whether a paragraph is the rest of the tune before it, from which an empty line parts it.
fn goes_on(paragraph: &Paragraph<'_>, has_key: bool) -> bool {
    match paragraph.first.kind() {
        Kind::Field('X', _) => false,
        Kind::Field(_, _) if !has_key => true,
        // Words of a song, symbols, a voice or a part: nothing of that begins a tune.
        Kind::Field('W' | 'w' | 's' | 'V' | 'P', _) => true,
        Kind::Field('K' | 'M' | 'L' | 'Q', _) => paragraph.has_music,
        Kind::Text(text) => token::looks_like_music(text),
        _ => false,
    }
}
