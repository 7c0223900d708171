//! Which shapes a hand knows, and whether a tune needs others.

use crate::theory::{Chord, PitchClass, Quality};

use super::seat::{CapoHabit, Seat};

/// Pitch classes or frets below the octave as bits, 0 first.
type Twelve = u16;

/// Shapes that a hand finds by itself, by the chord that they are without a capo. A slash bass is left to others.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Known {
    /// For each quality, the roots on which it is known.
    roots: Vec<(Quality, Twelve)>,
}

impl Known {
    /// The shapes of some chords.
    pub fn of(chords: impl IntoIterator<Item = Chord>) -> Self {
        let mut known = Self::default();
        for chord in chords {
            let root = 1 << chord.root.class().semitones();
            match known
                .roots
                .iter_mut()
                .find(|(quality, _)| *quality == chord.quality)
            {
                Some((_, roots)) => *roots |= root,
                None => known.roots.push((chord.quality, root)),
            }
        }
        known
    }

    /// Whether a chord without a capo is known.
    pub fn knows(&self, chord: Chord) -> bool {
        self.behind_capo(chord) & 1 != 0
    }

    /// The capo frets, as bits, behind which a sounding chord is a known shape.
    fn behind_capo(&self, chord: Chord) -> Twelve {
        let there = self
            .roots
            .iter()
            .find(|(quality, _)| *quality == chord.quality);
        let roots = there.map_or(0, |&(_, roots)| roots);
        // Behind a capo at fret f the shape is that of the root f semitones lower: bit f is the bit of that root.
        let root = chord.root.class().semitones();
        (0..12).fold(0, |frets, fret| {
            let held = PitchClass::new(root - fret).semitones();
            frets | (roots >> held & 1) << fret
        })
    }
}

/// The players of a circle whose shapes count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Everyone(Vec<(Known, Twelve)>);

impl Everyone {
    /// The seats that do not know all shapes.
    pub fn of(seats: &[Seat]) -> Self {
        let seat = |seat: &Seat| {
            let known = seat.known.clone().filter(|_| seat.instrument.is_some())?;
            Some((known, frets(seat.capo)))
        };
        Self(seats.iter().filter_map(seat).collect())
    }

    /// Whether everybody has a capo position, none being one, from which all of the chords are known shapes.
    ///
    /// ```
    /// use fourcourse::{circle::{Everyone, Known, Seat}, frets::Instrument, theory::Chord};
    /// let chords = |text: &str| text.split(' ').map(|c| c.parse::<Chord>().unwrap()).collect::<Vec<_>>();
    /// let guitar = Seat {
    ///     known: Some(Known::of(chords("G C D"))),
    ///     ..Seat::playing(Instrument::by_id("guitar").unwrap())
    /// };
    /// let everyone = Everyone::of(&[guitar]);
    /// assert!(everyone.knows(&chords("A D E"))); // capo 2
    /// assert!(!everyone.knows(&chords("A D F#m")));
    /// ```
    pub fn knows(&self, chords: &[Chord]) -> bool {
        self.0.iter().all(|(known, frets)| {
            let behind = chords.iter().try_fold(*frets, |frets, &chord| {
                let frets = frets & known.behind_capo(chord);
                (frets != 0).then_some(frets)
            });
            behind.is_some()
        })
    }
}

fn frets(habit: CapoHabit) -> Twelve {
    habit.frets().fold(0, |frets, fret| frets | 1 << fret)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::Instrument;
    use crate::theory::{Key, Mode, Transposition};
    use proptest::prelude::*;

    fn chords(text: &str) -> Vec<Chord> {
        text.split(' ')
            .map(|chord| chord.parse().unwrap())
            .collect()
    }

    #[test]
    fn a_slash_bass_is_left_to_others() {
        assert!(Known::of(chords("D")).knows("D/F#".parse().unwrap()));
        assert!(!Known::of(chords("D")).knows("D7".parse().unwrap()));
    }

    #[test]
    fn a_tune_without_chords_is_known_to_everyone_and_nobody_is_asked_in_an_empty_circle() {
        let beginner = Seat {
            known: Some(Known::default()),
            ..Seat::playing(Instrument::mandolin())
        };
        assert!(Everyone::of(std::slice::from_ref(&beginner)).knows(&[]));
        assert!(!Everyone::of(&[beginner]).knows(&chords("G")));
        assert!(Everyone::of(&[]).knows(&chords("G")));
    }

    proptest! {
        #[test]
        fn what_is_known_is_known_behind_the_capo_that_moves_it_there(up in 0_u8..12, most in 0_u8..12) {
            let known = chords("G C D Em");
            let seat = Seat {
                capo: CapoHabit::UpTo(most),
                known: Some(Known::of(known.clone())),
                ..Seat::playing(Instrument::by_id("guitar").unwrap())
            };
            let g = Key::new("G".parse().unwrap(), Mode::Major);
            let by = Transposition::between(g, g.up(i32::from(up)));
            let moved: Vec<_> = known.into_iter().map(|chord| by.chord(chord)).collect();
            prop_assert_eq!(Everyone::of(&[seat]).knows(&moved), up <= most);
        }
    }
}
