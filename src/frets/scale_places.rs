//! Where the notes of a key lie on the fingerboard.

use crate::theory::{Key, NoteName, PitchClass};

use super::instrument::{Capo, Instrument};

/// A note of a scale on a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ScalePlace {
    /// The fret, counted from the capo; 0 is open.
    pub fret: u8,
    /// The note.
    pub note: NoteName,
    /// Which degree of the scale it is, 1 to 7.
    pub degree: u8,
}

/// The notes of a key on each course, from open up to a fret, the first course first.
///
/// ```
/// use fourcourse::frets::{Capo, Instrument, scale_places};
/// let places = scale_places(&Instrument::mandolin(), Capo::NONE, "A".parse().unwrap(), 7);
/// let frets: Vec<u8> = places[3].iter().map(|place| place.fret).collect();
/// assert_eq!(frets, [0, 2, 4, 5, 7]); // E F# G# A B on the E course
/// assert_eq!(places[3][3].degree, 1);
/// ```
pub fn scale_places(
    instrument: &Instrument,
    capo: Capo,
    key: Key,
    last: u8,
) -> Vec<Vec<ScalePlace>> {
    let scale = key.scale();
    let place = |course: usize, fret: u8| {
        let class = PitchClass::new(instrument.midi(course, fret, capo)?);
        let degree = scale.iter().position(|note| note.class() == class)?;
        Some(ScalePlace {
            fret,
            note: scale[degree],
            degree: u8::try_from(degree + 1).unwrap_or(0),
        })
    };
    let course = |course| {
        (0..=last.min(instrument.last_fret(capo)))
            .filter_map(|fret| place(course, fret))
            .collect()
    };
    (0..instrument.courses.len()).map(course).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_sounds_its_note_and_none_is_left_out() {
        let key: Key = "Eb".parse().unwrap();
        for instrument in Instrument::all() {
            for capo in [Capo::NONE, Capo::at(3)] {
                let places = scale_places(&instrument, capo, key, 12);
                for (course, places) in places.iter().enumerate() {
                    for fret in 0..=12 {
                        let Some(sound) = instrument.sound(course, fret, capo) else {
                            continue;
                        };
                        let place = places.iter().find(|place| place.fret == fret);
                        let class = sound.name.class();
                        let degree = key.scale().iter().position(|note| note.class() == class);
                        assert_eq!(
                            place.map(|place| usize::from(place.degree)),
                            degree.map(|degree| degree + 1)
                        );
                    }
                }
            }
        }
    }
}
