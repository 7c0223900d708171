//! Chords and keys as they are typed: in English letters and in the note names of the reader's language.
//!
//! Pages are printed in English letters, so those are read in every language, and a B is always the English B, a half
//! step below C. Beside it German reads what English has no meaning for: H, and the names on -is and -es. Spanish reads
//! Do Re Mi Fa Sol La Si, and these go first: there `Do` is a C chord, and a diminished D is `D°` or `Ddim`.

use std::borrow::Cow;
use std::str::FromStr;

use fourcourse::desk::Language;
use fourcourse::theory::{Key, NoteName, Symbol};

use super::{Failure, Shell};

type Names = &'static [(&'static str, &'static str)];

/// Note names (common practice); of two that fit, the longer one stands first.
const GERMAN: Names = &[
    ("Cis", "C#"),
    ("Ces", "Cb"),
    ("Dis", "D#"),
    ("Des", "Db"),
    ("Eis", "E#"),
    ("Es", "Eb"),
    ("Fis", "F#"),
    ("Fes", "Fb"),
    ("Gis", "G#"),
    ("Ges", "Gb"),
    ("Ais", "A#"),
    ("As", "Ab"),
    ("His", "B#"),
    ("H", "B"),
];
const SOLFEGE: Names = &[
    ("Do", "C"),
    ("Re", "D"),
    ("Mi", "E"),
    ("Fa", "F"),
    ("Sol", "G"),
    ("La", "A"),
    ("Si", "B"),
];

/// A text with the note that it begins with, and a bass after a slash, in English letters.
fn in_english(text: &str, names: Names) -> Cow<'_, str> {
    let start = |text: &str| {
        names
            .iter()
            .find(|(name, _)| text.starts_with(name))
            .copied()
    };
    let mut english = Cow::Borrowed(text);
    if let Some((name, letter)) = start(text) {
        english = Cow::Owned(format!("{letter}{}", &text[name.len()..]));
    }
    if let Some((chord, bass)) = english.rsplit_once('/')
        && let Some((name, letter)) = start(bass)
    {
        english = Cow::Owned(format!("{chord}/{letter}{}", &bass[name.len()..]));
    }
    english
}

/// Reads a text that begins with a note.
fn read<T: FromStr>(text: &str, language: Language) -> Option<T> {
    let text = text.trim();
    let plain = || text.parse().ok();
    match language {
        Language::English => plain(),
        Language::German => plain().or_else(|| in_english(text, GERMAN).parse().ok()),
        Language::Spanish => in_english(text, SOLFEGE).parse().ok().or_else(plain),
    }
}

/// A chord symbol that was typed.
pub(super) fn symbol(text: &str, shell: &Shell) -> Result<Symbol, Failure> {
    read(text, shell.words.language()).ok_or_else(|| Failure::new("shell-no-chord").quoting(text))
}

/// A key that was typed.
pub(super) fn key(text: &str, shell: &Shell) -> Result<Key, Failure> {
    read(text, shell.words.language()).ok_or_else(|| Failure::new("shell-no-key").quoting(text))
}

/// A key that was called for music in another one: a bare note keeps the mode. With seven signs or more it is written as
/// the key of the same sound that has fewer, as players do (common practice): B for C flat.
pub(super) fn called(text: &str, from: Key, shell: &Shell) -> Result<Key, Failure> {
    let called = match read::<NoteName>(text, shell.words.language()) {
        Some(tonic) => Key::new(tonic, from.mode),
        None => key(text, shell)?,
    };
    if called.signature().abs() > 6 {
        return Ok(Key::spelled_for_players(called.tonic.class(), called.mode));
    }
    Ok(called)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chord(text: &str, language: Language) -> Option<String> {
        read(text, language).map(|symbol: Symbol| symbol.to_string())
    }

    #[test]
    fn german_names_are_read_where_english_has_no_meaning_for_them() {
        for (text, expected) in [
            ("H7", "B7"),
            ("Hm", "Bm"),
            ("G/H", "G/B"),
            ("Fism", "F#m"),
            ("Es", "Eb"),
            ("As7/Es", "Ab7/Eb"),
            ("B", "B"),
            ("Esus4", "Esus4"),
            ("Asus2", "Asus2"),
            ("Cis", "C#"),
        ] {
            assert_eq!(
                chord(text, Language::German).as_deref(),
                Some(expected),
                "{text}"
            );
        }
        assert_eq!(chord("H", Language::English), None);
        assert_eq!(chord("H", Language::Spanish), None);
    }

    #[test]
    fn spanish_names_go_before_english_letters() {
        for (text, expected) in [
            ("Do", "C"),
            ("Do#m7", "C#m7"),
            ("Rem", "Dm"),
            ("Sol7/Si", "G7/B"),
            ("Lab", "Ab"),
            ("Fa6/9", "F6/9"),
            ("Am", "Am"),
            ("D°", "Ddim"),
        ] {
            assert_eq!(
                chord(text, Language::Spanish).as_deref(),
                Some(expected),
                "{text}"
            );
        }
        assert_eq!(chord("Do", Language::English).as_deref(), Some("Ddim"));
        assert_eq!(chord("Sol", Language::German), None);
    }
}
