//! Words under the notes (ABC 2.1, 5) and lines of symbols (4.15), which are aligned in the same way.

use crate::chart::{Bar, Syllable};

use super::super::limits;
use super::text::decode;

/// A note that words can be put under.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Place {
    /// Index of its bar.
    pub(super) bar: usize,
    /// Index of it in the bar; of a chord, the first note.
    pub(super) note: usize,
}

/// The notes that lines of words refer to.
#[derive(Debug, Default)]
pub(super) struct Alignment {
    places: Vec<Place>,
    /// The first place of each line of music.
    lines: Vec<usize>,
    words: Block,
    symbols: Block,
    verse: usize,
}

/// Which notes the next line of one kind stands under.
#[derive(Debug, Default)]
struct Block {
    /// The first place after those of the line before.
    from: usize,
    /// Where the lines of words under the same notes begin, once the first of them came.
    start: Option<usize>,
}

/// A piece of a line of words or symbols.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Piece {
    /// A syllable, and whether the word goes on.
    Syllable(String, bool),
    /// The syllable before is held for this note.
    Hold(bool),
    /// Nothing under this note.
    Skip,
    /// On to the next bar.
    Bar,
    /// A decoration by its name.
    Named(String),
    /// A decoration by its letter.
    Letter(char),
    /// Words in quotes.
    Quoted(String),
}

impl Alignment {
    /// A note or a chord of the music.
    pub(super) fn note(&mut self, place: Place) {
        for block in [&mut self.words, &mut self.symbols] {
            if block.start.take().is_some() {
                block.from = self.places.len();
            }
        }
        self.places.push(place);
    }

    /// A line of music begins.
    pub(super) fn line(&mut self) {
        if self.lines.last() != Some(&self.places.len()) {
            self.lines.push(self.places.len());
        }
    }

    /// Where a line with so many pieces begins. The standard says: "from the first note after the notes aligned to the
    /// previous" line of words. Tunes in the wild leave lines of music without words, though, so it is the nearest line
    /// of music above from which on there are notes enough; a line of words for several lines of music starts at the
    /// first of them either way.
    fn start(&self, from: usize, needed: usize) -> usize {
        let within = self.lines.iter().rev().take_while(|&&line| line >= from);
        let mut nearest = within.filter(|&&line| self.places.len() - line >= needed.max(1));
        nearest.next().copied().unwrap_or(from)
    }

    fn begin(&mut self, pieces: &[Piece], symbols: bool) -> usize {
        let needed = pieces.iter().filter(|piece| **piece != Piece::Bar).count();
        let block = if symbols { &self.symbols } else { &self.words };
        let start = block
            .start
            .unwrap_or_else(|| self.start(block.from, needed));
        let block = if symbols {
            &mut self.symbols
        } else {
            &mut self.words
        };
        if block.start.is_none() && !symbols {
            self.verse = 0;
        }
        block.start = Some(start);
        start
    }

    /// Gives each piece its note. "If there are not as many syllables as notes in a measure, typing a `|` automatically
    /// advances to the next bar; if there are too many syllables the `|` is just ignored."
    fn align<'p>(&self, start: usize, pieces: &'p [Piece]) -> Vec<(Place, &'p Piece)> {
        let mut at = start;
        let mut bar = self.places.get(start).map_or(0, |place| place.bar);
        let mut aligned = Vec::with_capacity(pieces.len());
        for piece in pieces {
            if *piece == Piece::Bar {
                bar += 1;
                while self.places.get(at).is_some_and(|place| place.bar < bar) {
                    at += 1;
                }
                continue;
            }
            let Some(&place) = self.places.get(at) else {
                break;
            };
            at += 1;
            aligned.push((place, piece));
        }
        aligned
    }

    /// Puts a line of words under its notes; `false` if there are more lines than are read.
    pub(super) fn words(&mut self, text: &str, bars: &mut [Bar]) -> bool {
        let pieces = words(text);
        let start = self.begin(&pieces, false);
        let verse = self.verse;
        self.verse += 1;
        if verse >= limits::LYRICS {
            return false;
        }
        for (place, piece) in self.align(start, &pieces) {
            let syllable = match piece {
                Piece::Syllable(text, joined) => Some((text.clone(), *joined)),
                Piece::Hold(joined) => Some((String::new(), *joined)),
                _ => None,
            };
            let note = bars
                .get_mut(place.bar)
                .and_then(|bar| bar.notes.get_mut(place.note));
            if let (Some(note), Some((text, joined))) = (note, syllable) {
                note.syllables.resize(verse, None);
                note.syllables.push(Some(Syllable { text, joined }));
            }
        }
        true
    }

    /// The notes of a line of symbols.
    pub(super) fn symbols<'p>(&mut self, pieces: &'p [Piece]) -> Vec<(Place, &'p Piece)> {
        let start = self.begin(pieces, true);
        self.align(start, pieces)
    }
}

/// The pieces of a line of words.
fn words(text: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut syllable = String::new();
    let end = |syllable: &mut String, joined: bool, pieces: &mut Vec<Piece>| {
        if !syllable.is_empty() {
            let text = decode(syllable).chars().take(limits::TEXT).collect();
            pieces.push(Piece::Syllable(text, joined));
            syllable.clear();
        }
    };
    let mut chars = without_number(text).chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '\\' if chars.peek() == Some(&'-') => {
                chars.next();
                syllable.push('-');
            }
            '\\' => {
                syllable.push('\\');
                // The character after it belongs to it, whatever it is elsewhere: `\~n`.
                syllable.extend(chars.next_if(|next| !next.is_whitespace()));
            }
            '~' | '\u{a0}' => syllable.push(' '),
            // "If - is preceded by a space or another hyphen, it is regarded as a separate syllable."
            '-' if syllable.is_empty() => pieces.push(Piece::Hold(true)),
            '-' => end(&mut syllable, true, &mut pieces),
            '_' => {
                end(&mut syllable, false, &mut pieces);
                pieces.push(Piece::Hold(false));
            }
            '*' => {
                end(&mut syllable, false, &mut pieces);
                pieces.push(Piece::Skip);
            }
            '|' => {
                end(&mut syllable, false, &mut pieces);
                pieces.push(Piece::Bar);
            }
            _ if c.is_whitespace() => end(&mut syllable, false, &mut pieces),
            _ => syllable.push(c),
        }
    }
    end(&mut syllable, false, &mut pieces);
    pieces
}

/// "If the first word of a w: line starts with a digit, this is interpreted as numbering of a stanza" (ABC 2.1, 5.3).
fn without_number(text: &str) -> &str {
    let text = text.trim();
    let rest = text.trim_start_matches(|c: char| c.is_ascii_digit());
    match rest.strip_prefix(['.', ')', ':']) {
        Some(rest) if text.starts_with(|c: char| c.is_ascii_digit()) => {
            rest.trim_start_matches(['~', ' ', '\t'])
        }
        _ => text,
    }
}

/// The pieces of a line of symbols.
pub(super) fn symbols(text: &str) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        rest = &rest[c.len_utf8()..];
        match c {
            '*' => pieces.push(Piece::Skip),
            '|' => pieces.push(Piece::Bar),
            '"' | '!' => {
                let end = rest.find(c).unwrap_or(rest.len());
                let text = rest[..end].to_owned();
                pieces.push(if c == '"' {
                    Piece::Quoted(text)
                } else {
                    Piece::Named(text)
                });
                rest = rest.get(end + 1..).unwrap_or_default();
            }
            _ if c.is_whitespace() => {}
            _ => pieces.push(Piece::Letter(c)),
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spoken(text: &str) -> Vec<String> {
        let show = |piece| match piece {
            Piece::Syllable(text, true) => text + "-",
            Piece::Syllable(text, false) => text,
            Piece::Hold(_) => "_".into(),
            Piece::Skip => "*".into(),
            _ => "|".into(),
        };
        words(text).into_iter().map(show).collect()
    }

    #[test]
    fn words_are_taken_apart_as_in_the_standard() {
        // ABC 2.1, 5.1: the table of `syll-a-ble` and its company.
        assert_eq!(spoken("syll-a-ble"), ["syll-", "a-", "ble"]);
        assert_eq!(spoken("syll-a--ble"), ["syll-", "a-", "_", "ble"]);
        assert_eq!(spoken("syll-a -ble"), ["syll-", "a", "_", "ble"]);
        assert_eq!(spoken("time__"), ["time", "_", "_"]);
        assert_eq!(spoken("of~the day"), ["of the", "day"]);
        assert_eq!(spoken(r"of\-the * day|x"), ["of-the", "*", "day", "|", "x"]);
        assert_eq!(spoken("1.~Three blind"), ["Three", "blind"]);
        assert_eq!(spoken("2. Three"), ["Three"]);
        assert_eq!(spoken("3 mice"), ["3", "mice"]);
        assert_eq!(spoken(r"ma\~nana"), ["mañana"]);
    }
}
