//! Music code as tokens.

use std::borrow::Cow;

use crate::theory::{Accidental, Letter};

use super::bar_line::{BarLine, split_ending};
use super::decoration::Sign;
use super::rhythm::Ratio;

use super::super::limits::OCTAVES;

/// A note as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Written {
    pub(super) letter: Letter,
    /// 4 for upper case letters (the octave of middle C), 5 for lower case, moved by the octave marks.
    pub(super) octave: i8,
    /// The accidental before it.
    pub(super) accidental: Option<Accidental>,
    /// Its length in unit notes; `None` where what stands there is no length.
    pub(super) length: Option<Ratio>,
}

/// A piece of music code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Token<'a> {
    Note(Written),
    Rest(Option<Ratio>),
    /// So many bars of rest.
    BarRest(u32),
    /// `y`: room on the page, and a place to put signs.
    Spacer,
    ChordStart,
    ChordEnd(Option<Ratio>),
    GraceStart,
    GraceEnd,
    /// A decoration by its name.
    Named(&'a str),
    /// A decoration by its letter.
    Letter(char),
    /// Words in quotes, without them; whether they were closed.
    Quoted(&'a str, bool),
    Bar(BarLine),
    Ending(Vec<u8>),
    /// `(p:q:r`.
    Tuplet(u8, Option<u8>, Option<u8>),
    SlurStart,
    SlurEnd,
    Tie,
    /// Broken rhythm: whether the first note is the longer one, and how many marks.
    Broken(bool, u8),
    Overlay,
    /// A field in brackets.
    Field(char, &'a str),
    /// A backslash at the end of the line: the line on the page goes on.
    Continuation,
    /// `$` or a single `!`.
    LineBreak(char),
    Unclosed(char),
    Unknown(char),
}

/// Takes a line of music code apart. Yields each token with the place of its first byte.
#[derive(Clone)]
pub(super) struct Tokens<'a> {
    line: &'a str,
    at: usize,
    in_chord: bool,
    /// The token before was a bar line, so that a number is an ending.
    after_bar: bool,
    /// The line break sign is `!`, so that decorations stand between plus signs.
    plus: bool,
}

/// The ASCII sign that a typographic one stands for.
fn plain(c: char) -> char {
    if c.is_ascii() {
        return c;
    }
    match c {
        '“' | '”' | '„' | '‟' | '″' => '"',
        '’' | '‘' | '′' | '´' => '\'',
        '–' | '—' | '−' | '‐' | '\u{2011}' => '-',
        '\u{a0}' | '\u{2002}'..='\u{200b}' | '\u{feff}' => ' ',
        '‚' => ',',
        '♯' => '^',
        '♭' => '_',
        '♮' => '=',
        _ => c,
    }
}

impl<'a> Tokens<'a> {
    pub(super) fn new(line: &'a str, plus: bool) -> Self {
        Self {
            line,
            at: 0,
            in_chord: false,
            after_bar: false,
            plus,
        }
    }

    fn rest(&self) -> &'a str {
        &self.line[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next().map(plain)
    }

    fn eat(&mut self, wanted: char) -> bool {
        let next = self.rest().chars().next();
        if next == Some(wanted) {
            self.at += 1; // all signs that are looked for are ASCII
            return true;
        }
        if next.is_none_or(|c| c.is_ascii()) {
            return false;
        }
        let found = next.filter(|&c| plain(c) == wanted);
        self.at += found.map_or(0, char::len_utf8);
        found.is_some()
    }

    fn length(&mut self) -> Option<Ratio> {
        let (ratio, length) = Ratio::split(self.rest());
        self.at += length;
        ratio
    }

    fn small_number(&mut self) -> Option<u8> {
        let digits = self.rest().bytes().take_while(u8::is_ascii_digit).count();
        let number = self.rest()[..digits].parse().ok();
        self.at += digits;
        number.filter(|_| digits > 0)
    }

    /// What stands between here and a closing character of this line.
    fn until(&mut self, close: char) -> Option<&'a str> {
        let rest = self.rest();
        let (end, closing) = rest.char_indices().find(|&(_, c)| plain(c) == close)?;
        self.at += end + closing.len_utf8();
        Some(&rest[..end])
    }

    fn note(&mut self) -> Option<Written> {
        let start = self.at;
        let accidental = if self.eat('^') {
            let double = self.eat('^');
            Some(if double {
                Accidental::DOUBLE_SHARP
            } else {
                Accidental::SHARP
            })
        } else if self.eat('_') {
            let double = self.eat('_');
            Some(if double {
                Accidental::DOUBLE_FLAT
            } else {
                Accidental::FLAT
            })
        } else if self.eat('=') {
            Some(Accidental::NATURAL)
        } else {
            None
        };
        let Some((letter, mut octave)) = self.peek().and_then(note_letter) else {
            self.at = start;
            return None;
        };
        self.at += 1;
        loop {
            if self.eat('\'') {
                octave = (octave + 1).min(4 + OCTAVES);
            } else if self.eat(',') {
                octave = (octave - 1).max(4 - OCTAVES);
            } else {
                break;
            }
        }
        Some(Written {
            letter,
            octave,
            accidental,
            length: self.length(),
        })
    }

    fn quoted(&mut self) -> Token<'a> {
        if let Some(text) = self.until('"') {
            return Token::Quoted(text, true);
        }
        // The closing quote is missing: take the next word, so that the music after it is kept.
        let rest = self.rest();
        let end = rest.find([' ', '\t', '|']).unwrap_or(rest.len());
        self.at += end;
        Token::Quoted(&rest[..end], false)
    }

    fn exclaimed(&mut self, mark: char) -> Token<'a> {
        let rest = self.rest();
        let name = rest.find(mark).map(|end| &rest[..end]);
        let known = name.filter(|name| {
            let one_word = !name.is_empty() && !name.contains([' ', '\t', '|', '[', ']', ':']);
            one_word || Sign::named(name).is_some()
        });
        match known {
            Some(name) => {
                self.at += name.len() + 1;
                Token::Named(name.trim())
            }
            None if mark == '!' => Token::LineBreak('!'),
            None => Token::Unknown(mark),
        }
    }

    fn bracket(&mut self) -> Token<'a> {
        let rest = self.rest();
        if let [letter, b':', ref after @ ..] = *rest.as_bytes()
            && letter.is_ascii_alphabetic()
            && !matches!(after.first(), Some(b'|' | b':'))
        {
            let value = &rest[2..];
            let end = value.find(']');
            self.at = end.map_or(self.line.len(), |end| self.at + 2 + end + 1);
            return match end {
                Some(end) => Token::Field(char::from(letter), &value[..end]),
                None => Token::Unclosed('['),
            };
        }
        let words = rest.trim_start();
        if let Some((numbers, length)) = split_ending(words) {
            self.at += rest.len() - words.len() + length;
            return Token::Ending(numbers);
        }
        if let Some(words) = rest.strip_prefix('"')
            && let Some((numbers, _)) = split_ending(words)
            && let Some(end) = words.find('"')
        {
            self.at += 1 + end + 1;
            return Token::Ending(numbers);
        }
        self.in_chord = true;
        Token::ChordStart
    }

    fn parenthesis(&mut self) -> Token<'a> {
        let Some(p) = self.small_number() else {
            return Token::SlurStart;
        };
        let mut numbers = [None, None];
        for number in &mut numbers {
            let next = self.rest().as_bytes().get(1);
            if self.peek() != Some(':') || next == Some(&b'|') || !self.eat(':') {
                break;
            }
            *number = self.small_number();
        }
        Token::Tuplet(p, numbers[0], numbers[1])
    }

    fn token(&mut self, c: char, raw: char, after_bar: bool) -> Option<Token<'a>> {
        if matches!(c, '|' | ':' | '[' | ']')
            && !(self.in_chord && c == ']')
            && let Some((bar, length)) = BarLine::split(self.rest())
        {
            self.at += length;
            (self.in_chord, self.after_bar) = (false, true);
            return Some(Token::Bar(bar));
        }
        if after_bar && c.is_ascii_digit() {
            let (numbers, length) = split_ending(self.rest())?;
            self.at += length;
            return Some(Token::Ending(numbers));
        }
        if let Some(note) = self.note() {
            return Some(Token::Note(note));
        }
        self.at += raw.len_utf8();
        Some(match c {
            'z' | 'x' => Token::Rest(self.length()),
            'Z' | 'X' => {
                let digits = self.rest().bytes().take_while(u8::is_ascii_digit).count();
                let count = match self.rest()[..digits].parse() {
                    Ok(count) => u32::max(count, 1),
                    Err(_) if digits == 0 => 1,
                    Err(_) => u32::MAX,
                };
                self.at += digits;
                Token::BarRest(count)
            }
            'y' => {
                self.length();
                Token::Spacer
            }
            '"' => self.quoted(),
            '!' if !self.plus => self.exclaimed('!'),
            '!' => Token::LineBreak('!'),
            '+' => self.exclaimed('+'),
            '{' => {
                self.eat('/');
                Token::GraceStart
            }
            '}' => Token::GraceEnd,
            '[' => self.bracket(),
            ']' => {
                self.in_chord = false;
                Token::ChordEnd(self.length())
            }
            '(' => self.parenthesis(),
            ')' => Token::SlurEnd,
            '-' => Token::Tie,
            '>' | '<' => {
                let more = self.rest().chars().take_while(|&next| next == c).count();
                self.at += more;
                Token::Broken(c == '>', u8::try_from(more + 1).unwrap_or(u8::MAX))
            }
            '&' => Token::Overlay,
            '\\' if self.rest().trim().is_empty() => Token::Continuation,
            '$' => Token::LineBreak('$'),
            // A dot before a bar line, a slur or a tie makes it dotted, before a note it makes the note short.
            '.' if matches!(self.peek(), Some('|' | '(' | ')' | '-')) => return None,
            '.' | '~' | 'H'..='W' | 'h'..='w' => Token::Letter(c),
            // Room, beams, and the old signs for justifying a line.
            ' ' | '\t' | '`' | '*' | '\\' => return None,
            _ => Token::Unknown(raw),
        })
    }
}

/// The letter of a note and the octave that its case says.
fn note_letter(c: char) -> Option<(Letter, i8)> {
    let letter = Letter::named(c.to_ascii_uppercase())?;
    Some((letter, if c.is_ascii_uppercase() { 4 } else { 5 }))
}

impl<'a> Iterator for Tokens<'a> {
    type Item = (usize, Token<'a>);

    fn next(&mut self) -> Option<Self::Item> {
        loop {
            let start = self.at;
            let raw = self.rest().chars().next()?;
            let c = plain(raw);
            let after_bar = self.after_bar;
            self.after_bar = after_bar && matches!(c, ' ' | '\t');
            if let Some(token) = self.token(c, raw, after_bar) {
                return Some((start, token));
            }
        }
    }
}

/// Whether a line that stands alone is music rather than free text: it has bar lines, and all its letters are notes,
/// rests or usual signs.
pub(super) fn looks_like_music(line: &str) -> bool {
    let (mut bars, mut notes) = (0_u32, 0_u32);
    for (_, token) in Tokens::new(line, false) {
        match token {
            Token::Bar(_) => bars += 1,
            Token::Note(_) | Token::Rest(_) | Token::BarRest(_) => notes += 1,
            Token::Letter(c) if super::decoration::shorthand(c).is_none() => return false,
            Token::Unknown(_) | Token::Unclosed(_) => return false,
            _ => {}
        }
    }
    bars > 0 && notes > 0
}

/// Whether a line of a tune is words that somebody forgot to mark as such: no bar line, and several letters that are
/// no music.
pub(super) fn looks_like_words(line: &str, defined: impl Fn(char) -> bool) -> bool {
    if line.contains('|') {
        return false;
    }
    let mut strange = 0_u32;
    for (_, token) in Tokens::new(line, false) {
        match token {
            Token::Bar(_) => return false,
            Token::Letter(c) if super::decoration::shorthand(c).is_none() && !defined(c) => {
                strange += 1;
            }
            Token::Unknown(_) => strange += 1,
            _ => {}
        }
    }
    strange >= 3
}

/// The letters and signs of `U:` by what they stand for.
pub(super) type Definitions = Vec<(char, Cow<'static, str>)>;

#[cfg(test)]
mod tests {
    use super::*;

    fn tokens(line: &str) -> Vec<Token<'_>> {
        Tokens::new(line, false).map(|(_, token)| token).collect()
    }

    #[test]
    fn octave_marks_may_be_mixed() {
        // ABC 2.1, 4.1: `C,',` is `C,` and `C'` is `c`.
        let octave = |line| match tokens(line).as_slice() {
            [Token::Note(note)] => note.octave,
            other => panic!("{other:?}"),
        };
        assert_eq!(octave("C,',"), octave("C,"));
        assert_eq!(octave("C'"), octave("c"));
        assert_eq!(octave("c’"), 6);
        assert_eq!(octave("C,,,,,,,,,,,,,,,,,,,,"), 4 - OCTAVES);
    }

    #[test]
    fn brackets_open_chords_fields_endings_and_bar_lines() {
        assert!(matches!(
            tokens("[CE]2[K:G][1 [1,3 [|]")[..],
            [
                Token::ChordStart,
                Token::Note(_),
                Token::Note(_),
                Token::ChordEnd(Some(Ratio { num: 2, den: 1 })),
                Token::Field('K', "G"),
                Token::Ending(_),
                Token::Ending(_),
                Token::Bar(_)
            ]
        ));
        assert!(matches!(
            tokens("|1A:|2B| 3")[..],
            [
                Token::Bar(_),
                Token::Ending(_),
                Token::Note(_),
                Token::Bar(_),
                Token::Ending(_),
                Token::Note(_),
                Token::Bar(_),
                Token::Ending(_)
            ]
        ));
    }

    #[test]
    fn tuplets_and_slurs_are_told_apart() {
        assert_eq!(tokens("(3:2:4"), [Token::Tuplet(3, Some(2), Some(4))]);
        assert_eq!(tokens("(3::2"), [Token::Tuplet(3, None, Some(2))]);
        assert_eq!(tokens("(3:2"), [Token::Tuplet(3, Some(2), None)]);
        assert_eq!(
            tokens("(3.("),
            [Token::Tuplet(3, None, None), Token::SlurStart]
        );
    }

    #[test]
    fn quotes_and_exclamation_marks_need_not_be_closed() {
        assert!(matches!(
            tokens("\"G A2! !trill! !D.C. al fine!")[..],
            [
                Token::Quoted("G", false),
                Token::Note(_),
                Token::LineBreak('!'),
                Token::Named("trill"),
                Token::Named("D.C. al fine"),
            ]
        ));
        assert_eq!(tokens("“Am”"), [Token::Quoted("Am", true)]);
    }

    #[test]
    fn words_are_not_music() {
        assert!(looks_like_music("|: DEF G2A | B2d def :|"));
        assert!(!looks_like_music("see | page 5"));
        assert!(looks_like_words("Played at the mill", |_| false));
        assert!(!looks_like_words("ABc def gab", |_| false));
    }
}
