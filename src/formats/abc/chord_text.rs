//! What stands in quotes above the music: chord symbols, annotations, and signs in words (ABC 2.1, 4.18 and 4.19).

use crate::theory::{Chord, Symbol};

use super::decoration::Sign;
use super::pitch::Transposition;
use super::text::decode;

/// What a text in quotes is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Quoted {
    /// A chord symbol, and words that stood beside it: an alternate chord, further chords.
    Chord(Symbol, Option<String>),
    /// Words.
    Words(String),
    /// Words for the order of playing.
    Sign(Sign),
    /// Words where a chord symbol was to be expected.
    Unreadable(String),
}

/// Understands a text in quotes. The words are not bounded yet.
pub(super) fn read(text: &str) -> Option<Quoted> {
    let decoded = decode(text);
    let text = decoded.trim();
    if text.is_empty() {
        return None;
    }
    if let Some(words) = text.strip_prefix(['^', '_', '<', '>', '@']) {
        let words = words
            .trim_start_matches(|c: char| "0123456789.,- ".contains(c) && text.starts_with('@'));
        return (!words.is_empty()).then(|| match Sign::named(words) {
            Some(sign) => Quoted::Sign(sign),
            None => Quoted::Words(words.to_owned()),
        });
    }
    if let Some(symbol) = symbol(text) {
        return Some(Quoted::Chord(symbol, None));
    }
    if let Some(sign) = Sign::named(text) {
        return Some(Quoted::Sign(sign));
    }
    if text.chars().all(|c| c.is_ascii_digit() || c == ' ') {
        return Some(Quoted::Words(text.to_owned())); // old books write fingers like that
    }
    // "Alternate chords can be indicated by enclosing them in parentheses after the regular chord"; people also write a
    // chord in parentheses alone, or one below the other.
    let within = text.strip_prefix('(').and_then(|t| t.strip_suffix(')'));
    if let Some(symbol) = within.and_then(|text| symbol(text.trim())) {
        return Some(Quoted::Chord(symbol, None));
    }
    let end = text
        .find(['(', ';', '\n', '\\', ',', ' '])
        .unwrap_or(text.len());
    let (first, other) = text.split_at(end);
    let other = other.trim_start_matches([';', '\n', '\\', ',', ' ']).trim();
    match symbol(first) {
        Some(symbol) if is_beside_chord(other) => Some(Quoted::Chord(
            symbol,
            (!other.is_empty()).then(|| other.to_owned()),
        )),
        _ => Some(Quoted::Unreadable(text.to_owned())),
    }
}

fn symbol(text: &str) -> Option<Symbol> {
    text.parse().ok()
}

/// Whether what follows a chord is another chord rather than the rest of a sentence ("A lively tune").
fn is_beside_chord(text: &str) -> bool {
    let bare = text.trim_matches(['(', ')', 'n', ' ']);
    bare.is_empty()
        || bare
            .split([';', ',', ' '])
            .all(|t| t.is_empty() || symbol(t).is_some())
}

/// The chord as it sounds.
pub(super) fn sounding(symbol: Symbol, transposition: Transposition) -> Symbol {
    match symbol {
        Symbol::Chord(chord) => Symbol::Chord(Chord {
            root: transposition.name(chord.root),
            bass: chord.bass.map(|bass| transposition.name(bass)),
            ..chord
        }),
        Symbol::NoChord => Symbol::NoChord,
    }
}
