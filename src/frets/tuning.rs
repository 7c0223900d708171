//! Tunings beside the usual one: those that the players of an instrument share, and any of one's own.

use std::ops::RangeInclusive;

use crate::theory::{Accidental, Letter, NoteName, Pitch};

use super::instrument::Instrument;

/// Semitones by which a course may be moved from its usual pitch: an octave down (the low G of some ukuleles), a fourth
/// up (common practice; thinner strings are needed well before that).
pub const RETUNE: RangeInclusive<i8> = -12..=5;

/// Tunings that players share, by instrument: semitones from the usual tuning, the first course first. Their notes are
/// checked in `tests/outside`, with a source for each.
const SHARED: [(&str, &[&[i8]]); 9] = [
    // A E A E, G D G D, G D A D, A D A E
    (
        "mandolin",
        &[
            &[2, 2, 0, 0],
            &[0, 0, -2, -2],
            &[0, 0, 0, -2],
            &[2, 0, 0, 0],
        ],
    ),
    (
        "fiddle",
        &[
            &[2, 2, 0, 0],
            &[0, 0, -2, -2],
            &[0, 0, 0, -2],
            &[2, 0, 0, 0],
        ],
    ),
    // G D A D, A D A D
    ("octave-mandolin", &[&[0, 0, 0, -2], &[2, 0, 0, -2]]),
    // G D A E
    ("tenor-banjo", &[&[-5, -5, -5, -5]]),
    // G D A E, D G B E
    ("tenor-guitar", &[&[-5, -5, -5, -5], &[2, 0, -3, -5]]),
    // D A D G B E, D A D G A D, D G D G B D
    (
        "guitar",
        &[
            &[-2, 0, 0, 0, 0, 0],
            &[-2, 0, 0, 0, -2, -2],
            &[-2, -2, 0, 0, 0, -2],
        ],
    ),
    // the low G, then A D F# B
    ("ukulele", &[&[-12, 0, 0, 0], &[2, 2, 2, 2]]),
    // g C G C D, g D G C D, g C G B D, f# D F# A D
    (
        "banjo",
        &[
            &[0, -2, 0, 1, 0],
            &[0, 0, 0, 1, 0],
            &[0, -2, 0, 0, 0],
            &[-1, 0, -1, -2, 0],
        ],
    ),
    // D A D G
    ("bass", &[&[-2, 0, 0, 0]]),
];

/// Tunings that the players of an instrument share, the usual one left out: semitones from it, the first course first.
pub fn shared_tunings(instrument: &str) -> &'static [&'static [i8]] {
    SHARED
        .iter()
        .find(|(id, _)| *id == instrument)
        .map_or(&[], |(_, tunings)| tunings)
}

impl Instrument {
    /// The same neck with each course so many semitones from its usual pitch, the first course first; what is not said
    /// stays, and what is beyond [`RETUNE`] stops there.
    ///
    /// ```
    /// use fourcourse::frets::{Capo, Instrument};
    /// let cross = Instrument::mandolin().retuned(&[2, 2, 0, 0]);
    /// assert_eq!(cross.sound(1, 0, Capo::NONE).unwrap().to_string(), "E4");
    /// ```
    pub fn retuned(self, semitones: &[i8]) -> Self {
        let by = |course: usize| semitones.get(course).copied().unwrap_or(0);
        if (0..self.courses.len()).all(|course| by(course) == 0) {
            return self;
        }
        let courses = self.courses.iter().enumerate();
        let open: Vec<Pitch> = courses
            .map(|(course, usual)| moved(usual.open, by(course)))
            .collect();
        self.tuned(&open)
    }
}

/// A pitch some semitones away, named as players name the note of a string: with the sharps and flats that most keys
/// have.
fn moved(pitch: Pitch, by: i8) -> Pitch {
    use Letter::{A, B, C, D, E, F, G};
    const NAMES: [(Letter, i32); 12] = [
        (C, 0),
        (C, 1),
        (D, 0),
        (E, -1),
        (E, 0),
        (F, 0),
        (F, 1),
        (G, 0),
        (G, 1),
        (A, 0),
        (B, -1),
        (B, 0),
    ];
    let by = by.clamp(*RETUNE.start(), *RETUNE.end());
    if by == 0 {
        return pitch;
    }
    let midi = pitch.midi() + i32::from(by);
    let (letter, sign) = NAMES[midi.rem_euclid(12) as usize];
    let accidental = Accidental::new(sign).unwrap_or(Accidental::NATURAL);
    let name = NoteName::new(letter, accidental);
    // None of the names crosses the octave, so the key number alone tells it; a course is far inside of i8.
    let octave = i8::try_from(midi.div_euclid(12) - 1).unwrap_or(pitch.octave);
    Pitch::new(name, octave)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::Capo;

    #[test]
    fn a_retuned_course_sounds_as_many_semitones_away() {
        for instrument in Instrument::all() {
            for by in RETUNE {
                let before = instrument.clone();
                let after = instrument.clone().retuned(&vec![by; before.courses.len()]);
                for (old, new) in before.courses.iter().zip(&after.courses) {
                    assert_eq!(new.open.midi() - old.open.midi(), i32::from(by));
                    assert_eq!((new.strings, new.starts_at), (old.strings, old.starts_at));
                }
            }
        }
    }

    #[test]
    fn nothing_moved_is_the_usual_instrument_and_a_wild_number_stops_at_the_bound() {
        let usual = Instrument::mandolin();
        assert_eq!(usual.clone().retuned(&[0, 0]), usual);
        let wild = usual.clone().retuned(&[127, -128]);
        let up = |course| wild.sound(course, 0, Capo::NONE).unwrap().midi();
        assert_eq!((up(0), up(1), up(2)), (55 + 5, 62 - 12, 69));
    }

    #[test]
    fn every_shared_tuning_moves_something_on_an_instrument_that_there_is() {
        for (id, tunings) in SHARED {
            let courses = Instrument::by_id(id).unwrap().courses.len();
            for tuning in tunings {
                assert_eq!(tuning.len(), courses, "{id}");
                assert!(tuning.iter().all(|by| RETUNE.contains(by)), "{id}");
                assert!(tuning.iter().any(|&by| by != 0), "{id}");
            }
        }
    }
}
