//! Chord symbols as people write them, read into chords.
//!
//! A symbol is a root, words that say what stands on it, and perhaps a bass after a slash. The words are rows of one
//! table; reading takes the longest row that fits, again and again, and each row changes the set of degrees.
//!
//! Where writers differ, this reader takes (common practice unless another source is named):
//! - `+` right after the root is an augmented fifth, later a sharp: `A+9` has a raised fifth, `A7+9` a raised ninth.
//!   `-` right after the root is minor: `A-9` is `Am9`, `A7-9` is `A7b9`. Before a 5 both are signs: `A-5` is `A(b5)`.
//! - A triangle is a major seventh with or without the 7. `maj`, `M` or `j` makes the next seventh major.
//! - `A2` adds the ninth and keeps the third, `A4` and `Asus` suspend it.
//! - `11` leaves out the major third and `13` the eleventh, with which they clash; `m11` keeps its third.
//! - `alt` is the dominant seventh with raised fifth and raised ninth.
//! - A plain number in parentheses adds its note and brings no seventh along: `A(9)` is `Aadd9`; a thirteenth beside a
//!   seventh still means the ninth too: `A7(13)` is `A13`.

use std::str::FromStr;

use super::chord::{Chord, Degree, Quality, Symbol};
use super::pitch::NoteName;
use super::words::{Number, WORDS, When, Word};

/// Symbols longer than this (in characters) are not read. The house style stays below it for every chord.
pub const LONGEST_SYMBOL: usize = 100;

/// Why a text is not a chord symbol.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SymbolError {
    /// It does not start with a note in upper case.
    #[error("no root")]
    NoRoot,
    /// Part of it means nothing in a chord symbol.
    #[error("not understood from character {at}")]
    NotUnderstood {
        /// The first character that was not understood, counted from 1 in the text without its surroundings (spaces
        /// and a pair of brackets round the whole).
        at: usize,
    },
    /// It has more than [`LONGEST_SYMBOL`] characters.
    #[error("too long")]
    TooLong,
}

impl FromStr for Symbol {
    type Err = SymbolError;

    /// Reads a chord or one of the spellings of "no chord".
    ///
    /// ```
    /// use fourcourse::theory::Symbol;
    /// assert_eq!("n.c.".parse(), Ok(Symbol::NoChord));
    /// assert_eq!("A-7/G".parse::<Symbol>().unwrap().to_string(), "Am7/G");
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let bare: String = text
            .chars()
            .take(LONGEST_SYMBOL)
            .filter(|c| !c.is_whitespace() && !matches!(c, '.' | '/' | '(' | ')'))
            .collect();
        if bare.eq_ignore_ascii_case("nc") || bare.eq_ignore_ascii_case("nochord") {
            return Ok(Self::NoChord);
        }
        text.parse().map(Self::Chord)
    }
}

impl FromStr for Chord {
    type Err = SymbolError;

    /// Reads a chord symbol in any spelling.
    ///
    /// ```
    /// use fourcourse::theory::Chord;
    /// let same = ["Bm7b5", "Bø", "B-7(b5)", "Bmin7♭5", "B half-dim"];
    /// assert!(same.iter().all(|text| text.parse::<Chord>() == "Bm7b5".parse()));
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let text = without_brackets(text.trim());
        if text.chars().nth(LONGEST_SYMBOL).is_some() {
            return Err(SymbolError::TooLong);
        }
        let (root, rest) = NoteName::split(text).ok_or(SymbolError::NoRoot)?;
        let (suffix, bass) = split_bass(rest);
        let quality = quality(suffix).map_err(|understood| SymbolError::NotUnderstood {
            at: text.chars().count() - rest.chars().count() + understood + 1,
        })?;
        Ok(Self {
            root,
            quality,
            bass: bass.filter(|&bass| bass != root),
        })
    }
}

impl FromStr for Quality {
    type Err = SymbolError;

    /// Reads what follows the root: `m7`, `sus4`, or nothing for a major triad.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        if text.chars().nth(LONGEST_SYMBOL).is_some() {
            return Err(SymbolError::TooLong);
        }
        quality(text).map_err(|understood| SymbolError::NotUnderstood { at: understood + 1 })
    }
}

/// A chord that may be left out is written in brackets; the chord is the same.
fn without_brackets(text: &str) -> &str {
    [('(', ')'), ('[', ']')]
        .into_iter()
        .find_map(|(open, close)| text.strip_prefix(open)?.strip_suffix(close))
        .map_or(text, str::trim)
}

/// Splits a bass off: what follows the last slash, if it is a note and nothing else (`6/9` has no bass). A bass may be
/// in lower case.
pub(super) fn split_bass(text: &str) -> (&str, Option<NoteName>) {
    let note = |bass: &str| {
        let bass = bass.trim().trim_end_matches([')', ']']);
        let mut chars = bass.chars();
        let letter = chars.next()?.to_ascii_uppercase();
        format!("{letter}{}", chars.as_str()).parse().ok()
    };
    match text.rsplit_once('/') {
        Some((suffix, bass)) => match note(bass) {
            Some(bass) => (suffix, Some(bass)),
            None => (text, None),
        },
        None => (text, None),
    }
}

/// The quality that a suffix names, or how many characters were understood.
fn quality(suffix: &str) -> Result<Quality, usize> {
    let (places, plain): (Vec<usize>, Vec<char>) = suffix
        .chars()
        .map(plain)
        .enumerate()
        .filter(|(_, c)| !c.is_whitespace())
        .unzip();
    let mut reading = Reading::default();
    let mut rest = &plain[..];
    while !rest.is_empty() {
        let place = places[plain.len() - rest.len()];
        let row = WORDS
            .iter()
            .filter(|row| row.when.allows(reading.begun) && row.starts(rest))
            .max_by_key(|row| row.text.len())
            .ok_or(place)?;
        for word in row.words {
            reading.take(word).ok_or(place)?;
        }
        rest = &rest[row.text.chars().count()..];
    }
    reading.finish().ok_or(suffix.chars().count())
}

/// The sign that a character stands for.
fn plain(c: char) -> char {
    match c {
        '♭' => 'b',
        '♯' => '#',
        '–' | '−' | '‐' | '‑' => '-',
        'º' | '˚' | 'ᵒ' => '°',
        '∆' | '△' | '^' => 'Δ',
        'Ø' | '∅' | '⌀' => 'ø',
        '²' => '2',
        '⁴' => '4',
        '⁵' => '5',
        '⁶' => '6',
        '⁷' => '7',
        '⁹' => '9',
        '¹' => '1',
        '³' => '3',
        '⁺' => '+',
        c => c,
    }
}

/// What has been understood of a suffix so far.
#[derive(Default)]
struct Reading {
    quality: Option<Quality>,
    /// Whether a word has been read; brackets do not count.
    begun: bool,
    /// Whether a plain number adds a single note.
    single: bool,
    /// `maj` was read and waits for its seventh.
    major: bool,
    /// Whether the next seventh is a diminished one.
    diminished: bool,
    /// The next note stands beside the natural one instead of in its place.
    beside: bool,
    /// The next number is left out of the chord.
    omit: bool,
}

impl Reading {
    fn quality(&self) -> Quality {
        self.quality.unwrap_or(Quality::MAJOR)
    }

    fn swap(&mut self, out: &[Degree], put: &[Degree]) {
        let quality = out.iter().fold(self.quality(), |q, &d| q.without(d));
        self.quality = Some(put.iter().fold(quality, |q, &d| q.with(d)));
    }

    /// Takes a word in; `None` if it makes no sense here.
    fn take(&mut self, word: &Word) -> Option<()> {
        let number = matches!(word, Word::Number(_));
        if self.omit && !number {
            return None;
        }
        match *word {
            Word::Skip => return Some(()),
            Word::Single => {
                self.single = true;
                return Some(());
            }
            Word::Add => {
                (self.single, self.beside, self.major) = (true, true, false);
                self.begun = true;
                return Some(());
            }
            Word::Omit => self.omit = true,
            Word::Major if !self.beside && self.quality().has(Degree::MinorSeventh) => {
                self.swap(&[Degree::MinorSeventh], &[Degree::MajorSeventh]);
            }
            Word::Major => {
                self.major = true;
                self.begun = true;
                return Some(());
            }
            Word::Diminished => self.diminished = true,
            Word::Swap(out, put) => self.swap(if self.beside { &[] } else { out }, put),
            Word::Number(number) => self.number(number)?,
        }
        self.begun = true;
        self.beside = false;
        Some(())
    }

    fn number(&mut self, number: &Number) -> Option<()> {
        if self.omit {
            self.omit = false;
            self.swap(number.omits?, &[]);
            return Some(());
        }
        let single = self.single && !self.major;
        if let Some((out, put)) = number.alone.filter(|_| !self.begun && !single) {
            self.swap(out, put);
            return Some(());
        }
        let put = match number.extends {
            Some(degrees) if !single => degrees,
            _ => number.adds?,
        };
        // `A7(13)` is `A13` with brackets round it; `A7b9(13)` has its ninth already.
        let quality = self.quality();
        let has = |degrees: &[Degree]| degrees.iter().any(|&degree| quality.has(degree));
        if single
            && !self.beside
            && put.contains(&Degree::Thirteenth)
            && has(&[Degree::MinorSeventh, Degree::MajorSeventh])
            && !has(&[Degree::FlatNinth, Degree::SharpNinth])
        {
            self.swap(&[], &[Degree::Ninth]);
        }
        // A major third clashes with an eleventh that was not expressly added; a minor one does not.
        if put.contains(&Degree::Eleventh) && put.len() > 1 {
            self.swap(&[Degree::MajorThird], &[]);
        }
        let seventh = match (self.major, self.diminished) {
            _ if self.beside && !self.major => Degree::MinorSeventh,
            (true, _) => Degree::MajorSeventh,
            (_, true) => Degree::DiminishedSeventh,
            _ => Degree::MinorSeventh,
        };
        for &degree in put {
            let degree = if degree == Degree::MinorSeventh {
                seventh
            } else {
                degree
            };
            self.swap(&[], &[degree]);
        }
        self.single |= number.extends.is_some();
        self.major = false;
        Some(())
    }

    fn finish(self) -> Option<Quality> {
        let quality = self.quality();
        // `maj` alone is a major triad; after a minor one it promises what never comes.
        let dangling = self.omit
            || self.beside
            || self.major && quality.is_minor() && !quality.has(Degree::MajorSeventh);
        (!dangling).then_some(quality)
    }
}

impl When {
    fn allows(self, begun: bool) -> bool {
        match self {
            Self::Any => true,
            Self::First => !begun,
            Self::Later => begun,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn house(text: &str) -> String {
        text.parse::<Symbol>()
            .map_or_else(|error| format!("{error}"), |symbol| symbol.to_string())
    }

    #[test]
    fn spellings_from_the_wild_are_read_as_players_mean_them() {
        // Common practice; the outside tests hold the spellings that other libraries confirm.
        for (written, meant) in [
            ("A", "A"),
            ("Asus", "Asus4"),
            ("A2", "Aadd9"),
            ("A4", "Asus4"),
            ("A5", "A5"),
            ("A(no3)", "A5"),
            ("Ano3", "A5"),
            ("A (omit 3rd)", "A5"),
            ("A+9", "A9#5"),
            ("A7+9", "A7#9"),
            ("A-9", "Am9"),
            ("A7-9", "A7b9"),
            ("A7#9b13", "A7#9b13"),
            ("A7alt", "A7#5#9"),
            ("A°7", "Adim7"),
            ("AmMaj7", "Am(maj7)"),
            ("Am(maj7)", "Am(maj7)"),
            ("A-Δ7", "Am(maj7)"),
            ("Am/maj7", "Am(maj7)"),
            ("A7M", "Amaj7"),
            ("A7/G", "A7/G"),
            ("Am/g", "Am/G"),
            ("C6/9/E", "C6/9/E"),
            ("C13(#11)", "C13#11"),
            ("C13b9", "C13b9"),
            ("C(9)", "Cadd9"),
            ("C/9", "Cadd9"),
            ("C7(13)", "C13"),
            ("C7b9(13)", "C13b9"),
            ("C7(b9,13)", "C13b9"),
            ("C7(13,b9)", "C13b9"),
            ("C7add13", "C7(add13)"),
            ("Cmaj(add9)", "Cadd9"),
            ("C9sus", "C9sus4"),
            ("C7 (b9, #11)", "C7b9#11"),
            ("Cm+7", "Cm(maj7)"),
            ("C half dim", "Cm7b5"),
            ("(Em7)", "Em7"),
            ("[ D ]", "D"),
            ("G / B", "G/B"),
            ("G/G", "G"),
            ("B♭ø⁷", "Bbm7b5"),
            ("Ab b5", "Ab(b5)"),
            ("N.C.", "N.C."),
            ("(no chord)", "N.C."),
        ] {
            assert_eq!(house(written), meant, "{written}");
        }
    }

    #[test]
    fn what_is_no_symbol_is_refused_with_the_place() {
        for (text, error) in [
            ("", SymbolError::NoRoot),
            ("am", SymbolError::NoRoot),
            ("Hm", SymbolError::NoRoot),
            ("Fine", SymbolError::NotUnderstood { at: 2 }),
            ("Chorus", SymbolError::NotUnderstood { at: 2 }),
            ("C3", SymbolError::NotUnderstood { at: 2 }),
            ("Am7 x", SymbolError::NotUnderstood { at: 5 }),
            ("CmM", SymbolError::NotUnderstood { at: 4 }),
            ("Cadd", SymbolError::NotUnderstood { at: 5 }),
            ("C/H", SymbolError::NotUnderstood { at: 3 }),
        ] {
            assert_eq!(text.parse::<Symbol>(), Err(error), "{text}");
        }
        let long = "C".to_owned() + &"(".repeat(LONGEST_SYMBOL);
        assert_eq!(long.parse::<Symbol>(), Err(SymbolError::TooLong));
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused_without_panic(text in ".{0,120}") {
            let _ = text.parse::<Symbol>();
        }

        #[test]
        fn whatever_is_read_is_the_same_chord_in_the_house_style(text in "[A-G][#b♭]?[-+°øΔmMajsuddino#b(),/ 0-9]{0,14}") {
            if let Ok(symbol) = text.parse::<Symbol>() {
                prop_assert_eq!(symbol.to_string().parse(), Ok(symbol));
            }
        }
    }
}
