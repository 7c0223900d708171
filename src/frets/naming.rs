//! Naming what a hand holds: frets to notes, and notes to chords.

use crate::theory::{ChordName, Degree, Key, Mode, Pitch, PitchClass, Quality, chord_names};

use super::instrument::{Capo, Instrument, MAX_FRETS};
use super::ring::spelled;

/// What a hand holds: what sounds, and what it can be called.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// What each played course sounds, the first course first, spelled as the first name spells it.
    pub notes: Vec<Pitch>,
    /// The chords that it can be, the plainest reading first; empty where no name fits. Where the lowest string of the neck
    /// is no bass, inversions are called by their plain names, a root that sounds goes before one that is imagined, and
    /// of a root and a fifth the chord that they stand for before the bare fifth (common practice).
    pub names: Vec<ChordName>,
}

/// Why a text or a list of frets is no shape on an instrument.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotAShape {
    /// Something in it is neither a fret nor an `x`.
    #[error("not a fret: {0}")]
    NotAFret(String),
    /// It has not one entry for each course.
    #[error("{given} frets for {courses} courses")]
    Courses {
        /// How many entries it has.
        given: usize,
        /// How many courses the instrument has.
        courses: usize,
    },
    /// The neck has no such fret on that course, or the short string begins above it.
    #[error("no fret {fret} on course {course}")]
    OffTheNeck {
        /// The course, counted from 0.
        course: usize,
        /// The fret, counted from the capo.
        fret: u8,
    },
    /// Nothing sounds.
    #[error("nothing sounds")]
    Silent,
}

/// Reads frets as charts write shapes, the first course first: a digit or `x` (not played) for each course, `2200`,
/// `x32010`. With frets above 9 they are parted by hyphens, commas or spaces: `x-10-12-12`.
///
/// ```
/// use fourcourse::frets::read_frets;
/// assert_eq!(read_frets("x320"), Ok(vec![None, Some(3), Some(2), Some(0)]));
/// assert_eq!(read_frets("x 10 12-12"), Ok(vec![None, Some(10), Some(12), Some(12)]));
/// assert!(read_frets("h2").is_err());
/// ```
pub fn read_frets(text: &str) -> Result<Vec<Option<u8>>, NotAShape> {
    let parted = |c: char| c.is_whitespace() || matches!(c, '-' | ',' | '–');
    let words: Vec<&str> = text.split(parted).filter(|word| !word.is_empty()).collect();
    let fret = |word: &str| match word {
        "x" | "X" => Ok(None),
        _ => match word.parse() {
            Ok(fret) if fret <= MAX_FRETS && !word.starts_with('+') => Ok(Some(fret)),
            _ => Err(NotAShape::NotAFret(word.to_owned())),
        },
    };
    match words[..] {
        // A run of signs is one for each course.
        [run] => {
            let mut buffer = [0; 4];
            run.chars()
                .map(|sign| fret(sign.encode_utf8(&mut buffer)))
                .collect()
        }
        _ => words.into_iter().map(fret).collect(),
    }
}

/// What frets sound and what they are called; they are counted from the capo, as [`Shape::frets`](super::Shape) are.
///
/// ```
/// use fourcourse::frets::{Capo, Instrument, name_frets, read_frets};
/// let named = |instrument: &str, capo, frets: &str| {
///     let instrument = Instrument::by_id(instrument).unwrap();
///     let held = name_frets(&instrument, capo, &read_frets(frets).unwrap()).unwrap();
///     held.names[0].chord.to_string()
/// };
/// assert_eq!(named("mandolin", Capo::NONE, "2200"), "A");
/// assert_eq!(named("mandolin", Capo::NONE, "4022"), "Bm");
/// assert_eq!(named("guitar", Capo::at(2), "320003"), "A");
/// ```
pub fn name_frets(
    instrument: &Instrument,
    capo: Capo,
    frets: &[Option<u8>],
) -> Result<Held, NotAShape> {
    let courses = instrument.courses.len();
    if frets.len() != courses {
        return Err(NotAShape::Courses {
            given: frets.len(),
            courses,
        });
    }
    let mut midi = Vec::new();
    for (course, fret) in frets.iter().enumerate() {
        if let Some(fret) = *fret {
            let sounds = instrument.midi(course, fret, capo);
            midi.push(sounds.ok_or(NotAShape::OffTheNeck { course, fret })?);
        }
    }
    let lowest = *midi.iter().min().ok_or(NotAShape::Silent)?;
    let mut names = chord_names(
        PitchClass::new(lowest),
        midi.iter().copied().map(PitchClass::new),
    );
    if !has_bass(instrument) {
        call_plainly(&mut names);
    }
    let spell = |midi: i32| {
        let class = PitchClass::new(midi);
        let chord = names.first().map(|name| name.chord);
        let tone = chord.and_then(|chord| {
            let tones = chord.tones().map(|(_, note)| note).chain(chord.bass);
            { tones }.find(|note| note.class() == class)
        });
        let plain = || Key::spelled_for_players(class, Mode::Major).tonic;
        spelled(tone.unwrap_or_else(plain), midi)
    };
    Ok(Held {
        notes: midi.iter().copied().map(spell).collect(),
        names,
    })
}

/// Whether the lowest string is heard as a bass. In a neck of fifths and in one whose first course is not the lowest the
/// chord's tones lie as the fingers find them, and somebody else has the bass (common practice).
fn has_bass(instrument: &Instrument) -> bool {
    let long = { instrument.courses.iter() }.filter(|course| course.starts_at == 0);
    let open: Vec<i32> = long.map(|course| course.open.midi()).collect();
    let re_entrant = open.iter().min() != open.first();
    // Frets are looked after in pairs where courses are a fifth apart.
    instrument.frets_a_finger < 2 && !re_entrant
}

/// Names as they are said where there is no bass.
fn call_plainly(names: &mut Vec<ChordName>) {
    for name in names.iter_mut().filter(|name| name.lowest.is_some()) {
        name.chord.bass = None;
    }
    names.sort_by_key(|name| name.missing.contains(&Degree::Root));
    let Some(bare) = names
        .iter()
        .position(|name| name.chord.quality == Quality::POWER)
    else {
        return;
    };
    let root = names[bare].chord.root;
    let is_major =
        |name: &ChordName| name.chord.root == root && name.chord.quality == Quality::MAJOR;
    if let Some(at) = names.iter().position(is_major).filter(|&at| at > bare) {
        let major = names.remove(at);
        names.insert(bare, major);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::{Order, shapes};
    use proptest::prelude::*;

    fn held(instrument: &str, capo: Capo, frets: &str) -> Result<Held, NotAShape> {
        let instrument = Instrument::by_id(instrument).unwrap();
        name_frets(&instrument, capo, &read_frets(frets).unwrap())
    }

    #[test]
    fn the_short_string_sounds_where_it_begins() {
        let open = held("banjo", Capo::NONE, "00000").unwrap();
        assert_eq!(open.names[0].chord.to_string(), "G/D");
        let off = NotAShape::OffTheNeck { course: 0, fret: 3 };
        assert_eq!(held("banjo", Capo::NONE, "30000"), Err(off));
    }

    #[test]
    fn what_does_not_fit_the_instrument_is_told() {
        let courses = NotAShape::Courses {
            given: 6,
            courses: 4,
        };
        assert_eq!(held("mandolin", Capo::NONE, "320003"), Err(courses));
        assert_eq!(held("mandolin", Capo::NONE, "xxxx"), Err(NotAShape::Silent));
        assert_eq!(read_frets("2a00"), Err(NotAShape::NotAFret("a".to_owned())));
        assert_eq!(
            read_frets("2 -1 400 0"),
            Err(NotAShape::NotAFret("400".to_owned()))
        );
    }

    #[test]
    fn missing_notes_are_told_with_the_name() {
        let a = held("mandolin", Capo::NONE, "2200").unwrap();
        let said = |name: &ChordName| (name.chord.to_string(), name.missing.clone());
        let said: Vec<_> = a.names.iter().map(said).collect();
        assert_eq!(
            said,
            [
                ("A".to_owned(), vec![Degree::MajorThird]),
                ("A5".to_owned(), vec![]),
                ("Am".to_owned(), vec![Degree::MinorThird]),
            ]
        );
    }

    #[test]
    fn where_no_string_is_a_bass_inversions_have_their_plain_names() {
        // Common practice: nobody calls a mandolin chord by the string that happens to be lowest.
        let first = |instrument: &str, frets: &str| {
            let held = held(instrument, Capo::NONE, frets).unwrap();
            held.names[0].chord.to_string()
        };
        assert_eq!(first("mandolin", "x023"), "G");
        assert_eq!(first("mandolin", "0230"), "C");
        assert_eq!(first("octave-mandolin", "4022"), "Bm");
        assert_eq!(first("ukulele", "0232"), "G");
        assert_eq!(first("baritone-ukulele", "0003"), "G/D");
        assert_eq!(first("guitar", "xx0003"), "G/D");
        // A root and a fifth stand for the chord there; on a guitar they are meant as they are.
        assert_eq!(first("guitar", "x022xx"), "A5");
    }

    #[test]
    fn a_root_that_sounds_goes_before_one_that_is_imagined() {
        for instrument in ["mandolin", "ukulele"] {
            for frets in ["5522", "0023", "2453", "4522", "1023"] {
                let names = held(instrument, Capo::NONE, frets).unwrap().names;
                let imagined = |name: &ChordName| name.missing.contains(&Degree::Root);
                assert!(names.is_sorted_by_key(imagined), "{frets}");
            }
        }
        // C G B F sharp: no third, but a root.
        let held = held("mandolin", Capo::NONE, "5522").unwrap();
        assert_eq!(held.names[0].chord.root.to_string(), "C");
    }

    #[test]
    fn a_printed_shape_is_read_back() {
        for shape in shapes(
            &Instrument::mandolin(),
            Capo::NONE,
            "C7".parse().unwrap(),
            Order::Beginner,
            200,
        ) {
            assert_eq!(read_frets(&shape.to_string()), Ok(shape.frets));
        }
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused_without_panic(text in "[0-9xX ,\\-a]{0,30}", other in ".{0,30}") {
            let _ = read_frets(&text);
            let _ = read_frets(&other);
        }

        #[test]
        fn any_frets_are_named_or_refused_without_panic(
            frets in proptest::collection::vec(proptest::option::of(0_u8..40), 0..8),
            capo in 0_u8..30,
        ) {
            for instrument in Instrument::all() {
                if let Ok(held) = name_frets(&instrument, Capo::at(capo), &frets) {
                    prop_assert_eq!(held.notes.len(), frets.iter().flatten().count());
                }
            }
        }
    }
}
