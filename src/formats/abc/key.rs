//! The key field (ABC 2.1, 3.1.14) and what may stand beside a key or a voice (4.6).

use crate::theory::{Accidental, Key, Letter, Mode, NoteName};

/// The sign that each letter has where a note has none, by [`Letter::index`].
pub(super) type Signature = [Accidental; 7];

/// What a key field says; what it does not say stays as it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct KeyField {
    /// Its key and signature.
    pub(super) key: Option<(Key, Signature)>,
    /// What it says about pitch on top.
    pub(super) moves: Moves,
}

/// How notes are moved from the page to what sounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Moves {
    /// Octaves up, by `octave=` and by a clef with 8 (they add up).
    pub(super) octaves: Option<i8>,
    /// Semitones up.
    pub(super) semitones: Option<i8>,
}

impl Moves {
    /// These, and where they say nothing, the others.
    pub(super) fn or(self, other: Self) -> Self {
        Self {
            octaves: self.octaves.or(other.octaves),
            semitones: self.semitones.or(other.semitones),
        }
    }
}

/// The signs that a key puts on the letters.
pub(super) fn signature(key: Key) -> Signature {
    Letter::ALL.map(|letter| key.accidental(letter))
}

/// C major, which also stands for no key.
pub(super) const C_MAJOR: Key =
    Key::new(NoteName::new(Letter::C, Accidental::NATURAL), Mode::Major);

/// Reads a key field; `None` where its first word is neither a key nor anything else of a key field.
pub(super) fn read(value: &str) -> Option<KeyField> {
    let mut words = value.split_whitespace().peekable();
    let Some(&first) = words.peek() else {
        return Some(of(C_MAJOR));
    };
    let mut field = KeyField::default();
    let mut explicit = false;
    let mut marks = "";
    match first {
        "HP" | "Hp" => {
            // Bagpipe music sounds with F sharp and C sharp on an A (ABC 2.1, 3.1.14).
            let a = NoteName::new(Letter::A, Accidental::NATURAL);
            field = of(Key::new(a, Mode::Mixolydian));
            words.next();
        }
        _ if first.eq_ignore_ascii_case("none") => {
            field = of(C_MAJOR);
            words.next();
        }
        _ => {
            if let Some((tonic, mode, rest)) = split_key(first) {
                words.next();
                let next = words.peek().filter(|_| rest.is_empty());
                let mode = match mode {
                    Some(mode) => mode,
                    None => match next.and_then(|word| split_mode(word)) {
                        Some((mode, _)) => {
                            let word = words.next().unwrap_or_default();
                            marks = split_mode(word).map_or("", |(_, rest)| rest);
                            mode
                        }
                        None => Mode::Major,
                    },
                };
                if !rest.is_empty() {
                    marks = rest;
                }
                field = of(Key::new(tonic, mode));
            } else if !is_beside_key(first) {
                return None;
            }
        }
    }
    let mut moves = MoveReader::default();
    let mut more = Vec::new();
    push_marks(marks, &mut more);
    for word in words {
        if word.eq_ignore_ascii_case("exp") {
            explicit = true;
        } else if word.starts_with(['^', '_', '=']) {
            push_marks(word, &mut more);
        } else {
            moves.word(word);
        }
    }
    field.moves = moves.result();
    if let Some((key, signature)) = &mut field.key {
        if explicit {
            *signature = [Accidental::NATURAL; 7];
        }
        for (letter, accidental) in more {
            signature[letter.index().unsigned_abs() as usize] = accidental;
        }
        if explicit {
            key.mode = mode_of(key.tonic, signature);
        }
    }
    Some(field)
}

/// Reads what follows the name in a voice field.
pub(super) fn read_moves(words: &str) -> Moves {
    let mut moves = MoveReader::default();
    for word in words.split_whitespace() {
        moves.word(word);
    }
    moves.result()
}

fn of(key: Key) -> KeyField {
    KeyField {
        key: Some((key, signature(key))),
        moves: Moves::default(),
    }
}

/// A tonic, a mode where one is attached, and what is left of the word.
fn split_key(word: &str) -> Option<(NoteName, Option<Mode>, &str)> {
    let first = word.chars().next()?;
    let upper = first.to_ascii_uppercase().to_string() + &word[first.len_utf8()..];
    let (tonic, rest) = NoteName::split(&upper)?;
    let rest = &word[word.len() - rest.len()..];
    if rest.is_empty() || rest.starts_with(['^', '_', '=']) {
        return Some((tonic, None, rest));
    }
    let (mode, rest) = split_mode(rest)?;
    Some((tonic, Some(mode), rest))
}

/// A mode at the start of a word: "the capitalisation is ignored and only the first three letters are parsed"; a
/// single m is minor. Accidentals may follow at once.
fn split_mode(word: &str) -> Option<(Mode, &str)> {
    let letters = word.bytes().take_while(u8::is_ascii_alphabetic).count();
    let (name, rest) = word.split_at(letters);
    if !(rest.is_empty() || rest.starts_with(['^', '_', '='])) {
        return None;
    }
    let mode = match name {
        "m" | "M" => Mode::Minor,
        _ => match name.get(..3)?.to_ascii_lowercase().as_str() {
            "maj" | "ion" => Mode::Major,
            "min" | "aeo" => Mode::Minor,
            "dor" => Mode::Dorian,
            "phr" => Mode::Phrygian,
            "lyd" => Mode::Lydian,
            "mix" => Mode::Mixolydian,
            "loc" => Mode::Locrian,
            _ => return None,
        },
    };
    Some((mode, rest))
}

/// Accidentals in a row, such as `^f_b`.
fn push_marks(word: &str, marks: &mut Vec<(Letter, Accidental)>) {
    let mut semitones = 0;
    let mut plain = false;
    for c in word.chars() {
        match c {
            '^' => semitones += 1,
            '_' => semitones -= 1,
            '=' => plain = true,
            _ => {
                let name = NoteName::split(c.to_ascii_uppercase().encode_utf8(&mut [0; 4]))
                    .map(|(name, _)| name);
                let accidental = Accidental::new(if plain { 0 } else { semitones });
                if let (Some(name), Some(accidental)) = (name, accidental) {
                    marks.push((name.letter, accidental));
                }
                (semitones, plain) = (0, false);
            }
        }
    }
}

/// The mode that a signature gives a tonic, or else the one that its third suggests.
fn mode_of(tonic: NoteName, signature_: &Signature) -> Mode {
    let fits = |mode: &Mode| signature(Key::new(tonic, *mode)) == *signature_;
    Mode::ALL.into_iter().find(fits).unwrap_or_else(|| {
        let third = Letter::from_index(tonic.letter.index() + 2);
        let sign = signature_[third.index().unsigned_abs() as usize];
        let semitones = NoteName::new(third, sign).class().semitones() - tonic.class().semitones();
        if semitones.rem_euclid(12) == 3 {
            Mode::Minor
        } else {
            Mode::Major
        }
    })
}

/// Whether a word belongs to a key field without being a key.
fn is_beside_key(word: &str) -> bool {
    word.contains('=')
        || word.starts_with(['^', '_'])
        || word.eq_ignore_ascii_case("exp")
        || Clef::split(word).is_some()
}

/// A clef, as far as it moves notes.
#[derive(Clone, Copy)]
struct Clef {
    /// Octaves of the 8 above or below it.
    octaves: i8,
}

impl Clef {
    fn split(word: &str) -> Option<Self> {
        let letters = word.bytes().take_while(u8::is_ascii_alphabetic).count();
        let (name, rest) = word.split_at(letters);
        let known = ["treble", "none", "perc", "alto", "tenor", "bass"];
        if !known.contains(&name.to_ascii_lowercase().as_str()) {
            return None;
        }
        let rest = rest.trim_start_matches(|c: char| c.is_ascii_digit());
        let octaves = match rest {
            "+8" | "^8" => 1,
            "-8" | "_8" => -1,
            "+15" => 2,
            "-15" => -2,
            _ => 0,
        };
        Some(Self { octaves })
    }
}

/// `middle=` is not read: it says which note stands on the middle line, not how it sounds (ABC 2.1, 4.6; the bass of
/// the example in section 7 has `middle=d` and needs `transpose=-24` beside it to sound two octaves lower).
#[derive(Default)]
struct MoveReader {
    octaves: Option<i8>,
    semitones: Option<i8>,
    clef: Option<Clef>,
}

impl MoveReader {
    fn word(&mut self, word: &str) {
        let (name, value) = word.split_once('=').unwrap_or(("clef", word));
        match name {
            "octave" => self.octaves = value.parse().ok().map(|n: i8| n.clamp(-4, 4)),
            "transpose" | "t" => self.semitones = value.parse().ok().map(|n: i8| n.clamp(-36, 36)),
            "clef" => self.clef = Clef::split(value.trim_matches('"')).or(self.clef),
            _ => {} // "unknown names should be ignored"
        }
    }

    fn result(self) -> Moves {
        let clef = self.clef.map(|clef| clef.octaves);
        let said = self.octaves.is_some() || clef.is_some();
        Moves {
            octaves: said.then(|| self.octaves.unwrap_or(0) + clef.unwrap_or(0)),
            semitones: self.semitones,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(value: &str) -> String {
        read(value)
            .and_then(|f| f.key)
            .map_or_else(String::new, |(key, _)| key.to_string())
    }

    fn signs(value: &str) -> Vec<i32> {
        let (_, signature) = read(value).and_then(|f| f.key).unwrap();
        signature.iter().map(|a| a.semitones()).collect()
    }

    #[test]
    fn modes_are_read_in_any_case_and_length() {
        for value in ["F#mix", "F#MIX", "F# mixolydian", "F#Mixolydian clef=bass"] {
            assert_eq!(key(value), "F# mixolydian", "{value}");
        }
        for value in [
            "Am",
            "AM",
            "A minor",
            "AMin",
            "Aaeolian",
            "am",
            "A min treble-8",
        ] {
            assert_eq!(key(value), "Am", "{value}");
        }
        for value in ["Bb", "Bbmaj", "Bb Ionian", "bb"] {
            assert_eq!(key(value), "Bb", "{value}");
        }
        assert_eq!(key(""), "C");
        assert_eq!(key("none"), "C");
        assert_eq!(read("nonsense"), None);
        assert_eq!(key("clef=bass"), "");
    }

    #[test]
    fn accidentals_change_the_signature() {
        // ABC 2.1, 3.1.14: `K:D Phr ^f` has a flat on B and E and a sharp on F; `K:D exp _b _e ^f` is the same.
        assert_eq!(signs("D Phr ^f"), [0, 0, -1, 1, 0, 0, -1]);
        assert_eq!(signs("D exp _b _e ^f"), [0, 0, -1, 1, 0, 0, -1]);
        assert_eq!(signs("D =c"), [0, 0, 0, 1, 0, 0, 0]);
        assert_eq!(signs("HP"), [1, 0, 0, 1, 0, 0, 0]);
        assert_eq!(signs("A^f_b"), [1, 0, 0, 1, 1, 0, -1]);
        assert_eq!(key("D exp ^f ^c"), "D");
        assert_eq!(key("A exp ^f"), "A dorian");
    }

    #[test]
    fn clefs_and_their_company_move_the_notes() {
        let moves = |value| {
            read(value)
                .map(|f| (f.moves.octaves, f.moves.semitones))
                .unwrap()
        };
        assert_eq!(moves("C"), (None, None));
        assert_eq!(moves("C treble-8"), (Some(-1), None));
        assert_eq!(moves("C clef=bass+8 octave=-1"), (Some(0), None));
        // ABC 2.1, section 7: `V:B1 middle=d clef=bass name="Bass I" snm="B.I" transpose=-24`.
        assert_eq!(moves("bass middle=d"), (Some(0), None));
        assert_eq!(
            moves("middle=d clef=bass transpose=-24"),
            (Some(0), Some(-24))
        );
        assert_eq!(moves("C middle=d"), (None, None));
        assert_eq!(moves("C transpose=-2"), (None, Some(-2)));
        assert_eq!(moves("C t=3 octave=1"), (Some(1), Some(3)));
    }
}
