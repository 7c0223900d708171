//! Where a single note of a melody lies under the hand.

use crate::theory::Pitch;

use super::instrument::{Capo, Instrument};

/// The last fret of first position on a neck of fifths, and about where a guitarist's hand ends too (common practice).
pub const FIRST_POSITION_ENDS: u8 = 7;

/// An octave in semitones.
const OCTAVE: i32 = 12;

impl Instrument {
    /// Whether melodies are written for it an octave above what sounds, as for guitar, octave mandolin, banjo and bass
    /// (standard transposition; MusicXML writes it `octave-change` -1). An instrument whose highest open course is below
    /// G4, the short one of a banjo left aside, is taken for one of them.
    pub fn sounds_an_octave_lower(&self) -> bool {
        let long = self.courses.iter().filter(|course| course.starts_at == 0);
        let highest = long.map(|course| course.open.midi()).max();
        highest.is_some_and(|midi| midi < 67)
    }

    /// The octaves from what is written to what sounds where its players read a melody: -1 or 0.
    pub fn usual_octave(&self) -> i8 {
        -i8::from(self.sounds_an_octave_lower())
    }

    /// The course and the fret, counted from the capo, at which a player finds a note of a melody as it is written: in
    /// first position, on the course that has it lowest. A note that is not there is looked for in other octaves, nearest
    /// first. The short string of a banjo is not for melodies.
    ///
    /// ```
    /// use fourcourse::frets::{Capo, Instrument};
    /// use fourcourse::theory::Pitch;
    /// let d5 = Pitch::new("D".parse().unwrap(), 5);
    /// assert_eq!(Instrument::mandolin().place(d5, Capo::NONE), Some((2, 5)));
    /// // The guitarist reads the same note, and an octave lower sounds: the third fret of the B string.
    /// assert_eq!(Instrument::by_id("guitar").unwrap().place(d5, Capo::NONE), Some((4, 3)));
    /// ```
    pub fn place(&self, written: Pitch, capo: Capo) -> Option<(usize, u8)> {
        let sounding = written.midi() + OCTAVE * i32::from(self.usual_octave());
        let shifts = [0, -1, 1, -2, 2, -3, 3].map(|octaves| octaves * OCTAVE);
        let mut found = shifts.into_iter().filter_map(|shift| {
            let courses =
                (0..self.courses.len()).filter(|&course| self.courses[course].starts_at == 0);
            let places = courses.filter_map(|course| {
                let open = self.sound(course, 0, capo)?.midi();
                let fret = u8::try_from(sounding + shift - open).ok()?;
                (fret <= FIRST_POSITION_ENDS.min(self.last_fret(capo))).then_some((course, fret))
            });
            places.min_by_key(|&(_, fret)| fret)
        });
        found.next()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Where a teacher of each instrument says that a note is (common practice).
    #[test]
    fn a_note_is_found_where_a_teacher_of_the_instrument_finds_it() {
        for (instrument, note, octave, course, fret) in [
            ("mandolin", "G", 3, 0, 0),
            ("mandolin", "B", 5, 3, 7),
            ("octave-mandolin", "D", 5, 2, 5),
            ("octave-mandolin", "E", 5, 3, 0),
            ("guitar", "E", 5, 5, 0),
            ("guitar", "G", 3, 0, 3),
            ("banjo", "D", 5, 4, 0),
            ("banjo", "E", 5, 4, 2),
            ("ukulele", "A", 3, 3, 0),
            ("ukulele", "C", 4, 1, 0),
            ("baritone-ukulele", "E", 5, 3, 0),
            ("bass", "A", 3, 3, 2),
        ] {
            let neck = Instrument::by_id(instrument).unwrap();
            let pitch = Pitch::new(note.parse().unwrap(), octave);
            let place = neck.place(pitch, Capo::NONE);
            assert_eq!(
                place,
                Some((course, fret)),
                "{note}{octave} on {instrument}"
            );
        }
    }

    #[test]
    fn every_note_of_a_melody_has_a_place_on_every_instrument() {
        const NAMES: [&str; 12] = [
            "C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B",
        ];
        for neck in Instrument::all() {
            for (name, octave) in NAMES
                .into_iter()
                .flat_map(|name| (3..=6).map(move |octave| (name, octave)))
            {
                let pitch = Pitch::new(name.parse().unwrap(), octave);
                let place = neck.place(pitch, Capo::NONE);
                assert!(place.is_some(), "{pitch} on {}", neck.id);
            }
        }
    }
}
