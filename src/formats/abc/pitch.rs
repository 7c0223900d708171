//! From written notes to sounding pitches: signature, accidentals and their scope, transposition.

use crate::theory::{Accidental, Interval, Key, Letter, NoteName, Pitch};

use super::super::limits::OCTAVES;
use super::key::{Moves, Signature};
use super::token::Written;

/// How far an accidental reaches (ABC 2.1, 11.3).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Scope {
    /// The note alone.
    Note,
    /// Its letter in its octave, up to the bar line.
    Octave,
    /// Its letter in every octave, up to the bar line: the default of the standard.
    #[default]
    Letter,
}

impl Scope {
    /// The scope by its name in `%%propagate-accidentals`.
    pub(super) fn named(name: &str) -> Option<Self> {
        match name {
            "not" => Some(Self::Note),
            "octave" => Some(Self::Octave),
            "pitch" => Some(Self::Letter),
            _ => None,
        }
    }
}

/// The accidentals that are in force in a bar.
#[derive(Debug, Clone)]
pub(super) struct InForce([Option<Accidental>; 7 * SPAN]);

const SPAN: usize = 2 * OCTAVES as usize + 2;

impl InForce {
    /// None, as after a bar line.
    pub(super) fn none() -> Self {
        Self([None; 7 * SPAN])
    }

    fn places(letter: Letter, octave: i8, scope: Scope) -> impl Iterator<Item = usize> {
        let letter = letter.index().unsigned_abs() as usize;
        let octave = usize::try_from(i32::from(octave) - 4 + i32::from(OCTAVES)).unwrap_or(0);
        let all = scope == Scope::Letter;
        let octaves = if all {
            0..SPAN
        } else {
            octave.min(SPAN - 1)..octave.min(SPAN - 1) + 1
        };
        octaves.map(move |octave| octave * 7 + letter)
    }

    /// The name of a written note; an accidental on it is in force from here on.
    pub(super) fn name(&mut self, note: Written, signature: &Signature, scope: Scope) -> NoteName {
        if let Some(accidental) = note.accidental {
            if scope != Scope::Note {
                for place in Self::places(note.letter, note.octave, scope) {
                    self.0[place] = Some(accidental);
                }
            }
            return NoteName::new(note.letter, accidental);
        }
        let mut own = Self::places(note.letter, note.octave, Scope::Octave);
        let in_force = own.next().and_then(|place| self.0[place]);
        let of_key = signature[note.letter.index().unsigned_abs() as usize];
        NoteName::new(note.letter, in_force.unwrap_or(of_key))
    }
}

/// From the page to what sounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Transposition {
    interval: Interval,
    octaves: i8,
}

impl Transposition {
    /// What a key or a voice says, with the spelling that keeps the key's signature small.
    pub(super) fn new(moves: Moves, key: Key) -> Self {
        let semitones = moves.semitones.unwrap_or(0);
        let wanted = i32::from(semitones);
        let candidates = (-21..=21_i8).filter_map(|steps| {
            let interval = Interval::new(steps, semitones);
            // About seven steps go to twelve semitones; within an augmented step of it lie all useful spellings.
            let off = i32::from(steps) * 12 - wanted * 7;
            (off.abs() <= 13).then_some(interval)
        });
        // A key that is not moved keeps its name, however many signs it has.
        let candidates = candidates.filter(|interval| semitones != 0 || interval.steps == 0);
        let signs = |interval: &Interval| {
            let moved = Key::new(key.tonic + *interval, key.mode);
            (moved.signature().abs(), interval.steps)
        };
        Self {
            interval: candidates.min_by_key(signs).unwrap_or(Interval::UNISON),
            octaves: moves.octaves.unwrap_or(0),
        }
    }

    pub(super) fn pitch(self, name: NoteName, octave: i8) -> Pitch {
        let pitch = Pitch::new(name, octave.saturating_add(self.octaves));
        if self.interval == Interval::UNISON {
            pitch
        } else {
            pitch + self.interval
        }
    }

    pub(super) fn name(self, name: NoteName) -> NoteName {
        name + self.interval
    }

    pub(super) fn key(self, key: Key) -> Key {
        Key::new(self.name(key.tonic), key.mode)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::Mode;

    #[test]
    fn transposing_takes_the_usual_key() {
        let c = Key::new(NoteName::new(Letter::C, Accidental::NATURAL), Mode::Major);
        let to = |semitones| {
            let moves = Moves {
                semitones: Some(semitones),
                octaves: None,
            };
            let transposition = Transposition::new(moves, c);
            let sound = transposition.pitch(c.tonic, 4).midi();
            (transposition.key(c).to_string(), sound)
        };
        assert_eq!(to(-2), ("Bb".into(), 58));
        assert_eq!(to(2), ("D".into(), 62));
        assert_eq!(to(3), ("Eb".into(), 63));
        assert_eq!(to(0), ("C".into(), 60));
        assert_eq!(to(-12), ("C".into(), 48));
        assert_eq!(to(36), ("C".into(), 96));
    }
}
