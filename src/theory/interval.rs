//! Distances between notes, counted both in staff steps and in semitones.

use std::ops::{Add, Neg};

use serde::{Deserialize, Serialize};

use super::pitch::{Accidental, Letter, NoteName, Pitch};

/// A spelled distance: a major third is two steps of the staff and four semitones. Negative goes down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Interval {
    /// Steps of the staff.
    pub steps: i8,
    /// Semitones.
    pub semitones: i8,
}

impl Interval {
    /// The same note.
    pub const UNISON: Self = Self::new(0, 0);
    /// Perfect fifth up.
    pub const FIFTH: Self = Self::new(4, 7);
    /// Octave up.
    pub const OCTAVE: Self = Self::new(7, 12);

    /// An interval of staff steps and semitones.
    pub const fn new(steps: i8, semitones: i8) -> Self {
        Self { steps, semitones }
    }

    /// The smallest interval between two names, -6 to 6 semitones; a tritone goes up.
    pub fn nearest(from: NoteName, to: NoteName) -> Self {
        let steps = (to.letter.index() - from.letter.index()).rem_euclid(7);
        let semitones = to.letter.semitones() + to.accidental.semitones()
            - from.letter.semitones()
            - from.accidental.semitones()
            + if to.letter.index() < from.letter.index() {
                12
            } else {
                0
            };
        let (steps, semitones) = if semitones > 6 {
            (steps - 7, semitones - 12)
        } else {
            (steps, semitones)
        };
        // A letter apart at most an octave, signs at most two each way: both fit in i8.
        #[allow(clippy::cast_possible_truncation)]
        Self::new(steps as i8, semitones as i8)
    }
}

impl Neg for Interval {
    type Output = Self;

    fn neg(self) -> Self {
        Self::new(-self.steps, -self.semitones)
    }
}

impl Add<Interval> for NoteName {
    type Output = NoteName;

    /// Moves a name; where the exact spelling would need more than a double sign, the nearest simpler spelling is used.
    fn add(self, interval: Interval) -> NoteName {
        let index = self.letter.index() + i32::from(interval.steps);
        let letter = Letter::from_index(index);
        let octaves = index.div_euclid(7);
        let semitones =
            self.letter.semitones() + self.accidental.semitones() + i32::from(interval.semitones)
                - octaves * 12
                - letter.semitones();
        if let Some(accidental) = Accidental::new(semitones) {
            return NoteName::new(letter, accidental);
        }
        let class = self.class().semitones() + i32::from(interval.semitones);
        let spelled = |steps: i32| {
            let letter = Letter::from_index(letter.index() + steps * semitones.signum());
            let apart = (class - letter.semitones() + 6).rem_euclid(12) - 6;
            Accidental::new(apart).map(|accidental| NoteName::new(letter, accidental))
        };
        // Some letter is at most a semitone away from any sound.
        (1..7).find_map(spelled).unwrap_or(self)
    }
}

impl Add<Interval> for Pitch {
    type Output = Pitch;

    /// Moves a pitch; the octave follows the spelling, the sound is exact.
    fn add(self, interval: Interval) -> Pitch {
        let name = self.name + interval;
        let semitones = self.midi() + i32::from(interval.semitones);
        let natural = semitones - name.letter.semitones() - name.accidental.semitones();
        // `natural` is a whole number of octaves by construction; -10 to 20 covers every octave in use.
        let octave = (natural.div_euclid(12) - 1).clamp(-10, 20);
        #[allow(clippy::cast_possible_truncation)]
        Pitch::new(name, octave as i8)
    }
}
