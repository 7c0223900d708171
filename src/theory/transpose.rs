//! Moving music from one key to another with the spelling that belongs there.

use super::chord::{Chord, Symbol};
use super::interval::Interval;
use super::key::Key;
use super::pitch::{Accidental, Letter, NoteName, Pitch};

/// Which way pitches move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Direction {
    /// The shorter way, at most six semitones; a tritone goes up.
    #[default]
    Nearest,
    /// Up, less than an octave.
    Up,
    /// Down, less than an octave.
    Down,
}

/// The move from one key to another: every note goes the spelled interval between the tonics, so that each keeps its
/// place in the key. The modes take no part: a tune called in another mode is another tune.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Transposition {
    interval: Interval,
}

impl Transposition {
    /// The move by the shorter way.
    ///
    /// ```
    /// use fourcourse::theory::{Key, Symbol, Transposition};
    /// let key = |text: &str| text.parse::<Key>().unwrap();
    /// let to_b_flat = Transposition::between(key("A"), key("Bb"));
    /// let moved = |text: &str| to_b_flat.symbol(text.parse::<Symbol>().unwrap()).to_string();
    /// assert_eq!(["A", "D", "E7", "F#m"].map(moved), ["Bb", "Eb", "F7", "Gm"]);
    /// ```
    pub fn between(from: Key, to: Key) -> Self {
        Self::toward(from, to, Direction::Nearest)
    }

    /// The move in a direction of choice, which only pitches feel. Between keys of one sound nothing sounds different.
    pub fn toward(from: Key, to: Key, direction: Direction) -> Self {
        let nearest = Interval::nearest(from.tonic, to.tonic);
        let octaves = match direction {
            Direction::Up if nearest.semitones < 0 => 1,
            Direction::Down if nearest.semitones > 0 => -1,
            _ => 0,
        };
        Self {
            interval: Interval::new(
                nearest.steps + octaves * Interval::OCTAVE.steps,
                nearest.semitones + octaves * Interval::OCTAVE.semitones,
            ),
        }
    }

    /// The move by an interval of choice, octaves and all.
    pub const fn by(interval: Interval) -> Self {
        Self { interval }
    }

    /// The interval that every pitch moves.
    pub const fn interval(self) -> Interval {
        self.interval
    }

    /// Moves a note. A spelling that would need a triple sign becomes the nearest simpler one.
    pub fn note(self, note: NoteName) -> NoteName {
        note + self.interval
    }

    /// Moves a pitch, octave and all.
    pub fn pitch(self, pitch: Pitch) -> Pitch {
        pitch + self.interval
    }

    /// Moves a chord. Roots and basses keep their place in the key as long as a single sign can write it, also where
    /// that is an E♯ or a C♭ (`B#dim` is the #4 of F♯); where it takes a double sign the plain name is written, as a
    /// player would (common practice): `F##dim` becomes `Gdim`.
    pub fn chord(self, chord: Chord) -> Chord {
        let moved = self.note(chord.root);
        let root = plain(moved);
        // A bass follows its root to the other side, so that the chord stays one shape on paper.
        let respelled = Interval::nearest(moved, root);
        Chord {
            root,
            quality: chord.quality,
            bass: chord.bass.map(|bass| plain(self.note(bass) + respelled)),
        }
    }

    /// Moves what a chart writes above a beat.
    pub fn symbol(self, symbol: Symbol) -> Symbol {
        match symbol {
            Symbol::Chord(chord) => Symbol::Chord(self.chord(chord)),
            Symbol::NoChord => Symbol::NoChord,
        }
    }

    /// Moves a key, such as that of a part in another key. One with more than seven signs is written as the key of
    /// the same sound that players use.
    pub fn key(self, key: Key) -> Key {
        let moved = Key::new(self.note(key.tonic), key.mode);
        if moved.signature().abs() > 7 {
            Key::spelled_for_players(moved.tonic.class(), moved.mode)
        } else {
            moved
        }
    }
}

/// The note with at most a single sign: a double one gives way to the letter next to it.
fn plain(note: NoteName) -> NoteName {
    let step = match note.accidental {
        Accidental::DOUBLE_SHARP => 1,
        Accidental::DOUBLE_FLAT => -1,
        _ => return note,
    };
    let letter = Letter::from_index(note.letter.index() + step);
    let apart = (note.class().semitones() - letter.semitones() + 6).rem_euclid(12) - 6;
    // The next letter is one or two semitones away from this one, so a natural or a single sign is left.
    let accidental = Accidental::new(apart).unwrap_or(Accidental::NATURAL);
    NoteName::new(letter, accidental)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::tests::{any_chord, any_key, any_note, usual_key};
    use crate::theory::{Mode, PitchClass};
    use proptest::prelude::*;

    fn key(text: &str) -> Key {
        text.parse().unwrap()
    }

    fn moved(from: &str, to: &str, chord: &str) -> String {
        let chord: Chord = chord.parse().unwrap();
        Transposition::between(key(from), key(to))
            .chord(chord)
            .to_string()
    }

    #[test]
    fn roots_with_double_signs_are_written_plainly() {
        // Common practice; the exact spelling is noted.
        for (from, to, chord, expected) in [
            ("G", "F#", "C#dim", "B#dim"), // a single sign stays
            ("C", "F#", "G#dim", "Ddim"),  // C##dim
            ("C", "Gb", "Db", "G"),        // Abb
            ("C", "B", "F#m", "E#m"),
            ("C", "B", "D#dim7/F#", "Ddim7/F"), // C##dim7/E#
            ("A", "F", "G/B", "Eb/G"),
        ] {
            assert_eq!(moved(from, to, chord), expected, "{chord}: {from} to {to}");
        }
    }

    #[test]
    fn pitches_go_the_way_that_is_asked_for() {
        let sound = |from, to, direction| {
            let middle_c = Pitch::new("C".parse().unwrap(), 4);
            let by = Transposition::toward(key(from), key(to), direction);
            by.pitch(middle_c).midi() - 60
        };
        assert_eq!(sound("C", "A", Direction::Nearest), -3);
        assert_eq!(sound("C", "A", Direction::Up), 9);
        assert_eq!(sound("C", "G", Direction::Nearest), -5);
        assert_eq!(sound("C", "D", Direction::Down), -10);
        assert_eq!(sound("C", "F#", Direction::Nearest), 6);
        assert_eq!(sound("C", "F#", Direction::Down), -6);
        assert_eq!(sound("F#", "Gb", Direction::Up), 0);
    }

    #[test]
    fn parts_in_another_key_move_along_without_impossible_signatures() {
        let by = Transposition::between(key("C"), key("F#"));
        assert_eq!(by.key(key("Am")), key("D#m"));
        assert_eq!(by.key(key("E")), key("Bb"));
    }

    proptest! {
        #[test]
        fn there_and_back_is_the_chord_that_was(chord in any_chord(), from in usual_key(), to in usual_key()) {
            let there = Transposition::between(from, to);
            let exact = [Some(chord.root), chord.bass].into_iter().flatten().all(|note| {
                let moved = there.note(note);
                let letter = note.letter.index() + i32::from(there.interval().steps);
                moved.letter == Letter::from_index(letter) && moved.accidental.semitones().abs() < 2
            });
            let back = Transposition::between(to, from).chord(there.chord(chord));
            prop_assert_eq!(back.root.class(), chord.root.class());
            prop_assert_eq!(back.lowest().class(), chord.lowest().class());
            if exact {
                prop_assert_eq!(back, chord);
            }
        }

        #[test]
        fn every_note_moves_as_far_as_the_tonic(note in any_note(), octave in 0_i8..9, from in any_key(), to in any_key()) {
            let apart = to.tonic.class().semitones() - from.tonic.class().semitones();
            let class = |note: NoteName| PitchClass::new(note.class().semitones() + apart);
            for direction in [Direction::Nearest, Direction::Up, Direction::Down] {
                let by = Transposition::toward(from, to, direction);
                prop_assert_eq!(by.note(note).class(), class(note));
                let pitch = Pitch::new(note, octave);
                let moved = by.pitch(pitch);
                prop_assert_eq!(moved.midi() - pitch.midi(), i32::from(by.interval().semitones));
                prop_assert_eq!(moved.name, by.note(note));
                let range = match direction {
                    Direction::Nearest => -6..=6,
                    Direction::Up => 0..=11,
                    Direction::Down => -11..=0,
                };
                prop_assert!(range.contains(&by.interval().semitones));
            }
        }

        #[test]
        fn chords_move_as_a_whole_and_are_never_written_with_double_signs(chord in any_chord(), from in any_key(), to in any_key()) {
            let by = Transposition::between(from, to);
            let moved = by.chord(chord);
            prop_assert_eq!(moved.quality, chord.quality);
            prop_assert_eq!(moved.root.class(), by.note(chord.root).class());
            prop_assert_eq!(moved.lowest().class(), by.note(chord.lowest()).class());
            for note in [moved.root, moved.lowest()] {
                prop_assert!(note.accidental.semitones().abs() < 2);
            }
        }

        #[test]
        fn the_scale_of_one_key_becomes_the_scale_of_the_other(from in usual_key(), to in usual_key()) {
            let to = Key::new(to.tonic, from.mode);
            prop_assume!(to.signature().abs() <= 7);
            let by = Transposition::between(from, to);
            prop_assert_eq!(from.scale().map(|note| by.note(note)), to.scale());
        }
    }

    #[test]
    fn a_spelling_beyond_all_signs_still_sounds_right() {
        // F flat to B sharp is a fourth augmented three times: what lies above B sharp is no E with any sign.
        let by = Transposition::between(key("Fb"), key("B#"));
        assert_eq!(by.note("B#".parse().unwrap()).class(), PitchClass::new(8));
    }

    #[test]
    fn a_key_change_keeps_mode_out_of_it() {
        let dorian = Key::new("D".parse().unwrap(), Mode::Dorian);
        let by = Transposition::between(dorian, key("E"));
        assert_eq!(by.interval(), Interval::new(1, 2));
    }
}
