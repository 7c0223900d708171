//! Which chords a set of sounding notes can be.
//!
//! Every quality of a small vocabulary is tried on every root. A name fits when nothing sounds that is not in its chord
//! (but a bass of its own under a plain triad) and nothing is missing that the chord [needs](Need). Names
//! are ranked by one sum: how plain the quality is, which tone lies lowest, and what does not sound. So the root position
//! of a plain chord comes first, an inversion of a plain chord before the root position of a rare one, and names that
//! need a note imagined come last.

use super::chord::{
    Chord,
    Degree::{self, *},
    Quality,
};
use super::key::{Key, Mode};
use super::need::Need;
use super::pitch::{Accidental, NoteName, PitchClass};

/// A chord that sounding notes can be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChordName {
    /// The chord; with a bass where another tone than the root lies lowest, but on a neck without a bass only where that is
    /// from outside the chord.
    pub chord: Chord,
    /// Tones of the chord that do not sound.
    pub missing: Vec<Degree>,
    /// Which tone lies lowest; `None` where it is a bass from outside the chord.
    pub lowest: Option<Degree>,
    /// How far the name is from the plainest one that there is, a major triad on its root (0). Of no unit: an inversion is
    /// 25, and from about 60 behind the first name on only the context makes a name likely.
    pub far: u16,
}

const MAJOR: Quality = Quality::MAJOR;
const MINOR: Quality = Quality::MINOR;
const SEVENTH: Quality = Quality::SEVENTH;
const MINOR_SEVENTH: Quality = MINOR.with(MinorSeventh);
const MAJOR_SEVENTH: Quality = MAJOR.with(MajorSeventh);
const MINOR_MAJOR: Quality = MINOR.with(MajorSeventh);
const SUS2: Quality = Quality::POWER.with(Second);
const SUS4: Quality = Quality::POWER.with(Fourth);

/// What names are made of, and how much it takes to think of each: the order in which players meet them (common
/// practice), in units of which an inversion costs [`INVERTED`].
const VOCABULARY: [(Quality, u16); 49] = [
    (MAJOR, 0),
    (MINOR, 0),
    (Quality::POWER, 10),
    (SEVENTH, 10),
    (MINOR_SEVENTH, 15),
    (MAJOR_SEVENTH, 20),
    (SUS4, 20),
    (SUS2, 25),
    (Quality::DIMINISHED, 25),
    (MAJOR.with(Sixth), 28),
    (Quality::DIMINISHED.with(DiminishedSeventh), 30),
    (Quality::AUGMENTED, 30),
    (MAJOR.with(Ninth), 30),
    (SUS4.with(MinorSeventh), 30),
    (Quality::DIMINISHED.with(MinorSeventh), 34),
    (MINOR.with(Sixth), 35),
    (SEVENTH.with(Ninth), 35),
    (MINOR.with(Ninth), 35),
    (MINOR_SEVENTH.with(Ninth), 40),
    (MAJOR_SEVENTH.with(Ninth), 40),
    (MAJOR.with(Sixth).with(Ninth), 40),
    (MINOR_MAJOR, 40),
    (Quality::AUGMENTED.with(MinorSeventh), 45),
    (SEVENTH.with(FlatNinth), 45),
    (SEVENTH.with(SharpNinth), 45),
    (SEVENTH.with(Ninth).with(Thirteenth), 50),
    (SEVENTH.without(Fifth).with(FlatFifth), 50),
    (SUS4.with(MinorSeventh).with(Ninth), 50),
    (MINOR_SEVENTH.with(Ninth).with(Eleventh), 55),
    (SUS4.with(MinorSeventh).with(Ninth).with(Thirteenth), 58),
    (SUS2.with(MinorSeventh), 55),
    (MAJOR_SEVENTH.with(SharpEleventh), 55),
    (SEVENTH.with(SharpEleventh), 55),
    (MAJOR.without(Fifth).with(FlatFifth), 60),
    (Quality::AUGMENTED.with(MajorSeventh), 60),
    (SEVENTH.with(Ninth).without(Fifth).with(FlatFifth), 60),
    (SEVENTH.with(Ninth).without(Fifth).with(SharpFifth), 60),
    (MINOR_MAJOR.with(Ninth), 60),
    (MINOR.with(Sixth).with(Ninth), 60),
    (MINOR_SEVENTH.with(Ninth).with(Thirteenth), 60),
    (MAJOR_SEVENTH.with(Ninth).with(Thirteenth), 60),
    (SEVENTH.with(Ninth).with(Eleventh).without(MajorThird), 60),
    (MAJOR_SEVENTH.with(SharpEleventh).without(MajorThird), 75),
    // With the note that the plain name leaves out because it rubs.
    (SEVENTH.with(Ninth).with(Eleventh), 70),
    (SEVENTH.with(Ninth).with(Eleventh).with(Thirteenth), 70),
    (
        MINOR_SEVENTH.with(Ninth).with(Eleventh).with(Thirteenth),
        70,
    ),
    (
        MAJOR_SEVENTH.with(Ninth).with(Eleventh).with(Thirteenth),
        70,
    ),
    (Quality::AUGMENTED.with(MinorSeventh).with(SharpNinth), 65),
    (Quality::DIMINISHED.with(MajorSeventh), 65),
];

/// Third or fifth lowest.
const INVERTED: u16 = 25;
/// A seventh lowest, and then any other tone.
const SEVENTH_LOWEST: u16 = 30;
const COLOUR_LOWEST: u16 = 35;
/// A bass from outside, under a plain chord.
const FOREIGN_BASS: u16 = 55;
/// What it takes to imagine a tone.
const NO_THIRD: u16 = 20;
const NO_SPARE: u16 = 18;
const NO_ROOT: u16 = 45;

/// Pitch classes as bits, C first.
type Classes = u16;

fn bit(class: PitchClass) -> Classes {
    1 << class.semitones()
}

fn classes(root: PitchClass, quality: Quality) -> Classes {
    let class =
        |degree: Degree| PitchClass::new(root.semitones() + i32::from(degree.interval().semitones));
    quality
        .degrees()
        .fold(0, |set, degree| set | bit(class(degree)))
}

/// The chords that sounding notes can be, the plainest reading first; empty where no name fits.
///
/// Which notes sound twice or in which octave makes no difference, only which one is lowest. Roots are spelled as players
/// write them for the quality (C♯ minor, D♭ major).
///
/// ```
/// use fourcourse::theory::{NoteName, chord_names};
/// let named = |notes: &str| {
///     let notes = notes.split(' ').map(|note| note.parse::<NoteName>().unwrap().class());
///     let notes: Vec<_> = notes.collect();
///     chord_names(notes[0], notes.iter().copied()).remove(0).chord.to_string()
/// };
/// assert_eq!(["C E G A", "A C E G", "G C E", "A E", "C D E G", "D C E G"].map(named), [
///     "C6", "Am7", "C/G", "A5", "Cadd9", "C/D",
/// ]);
/// ```
pub fn chord_names(
    lowest: PitchClass,
    sounding: impl IntoIterator<Item = PitchClass>,
) -> Vec<ChordName> {
    let sounding = sounding
        .into_iter()
        .fold(bit(lowest), |set, class| set | bit(class));
    let mut names = Vec::new();
    for semitones in 0..12 {
        let root = PitchClass::new(lowest.semitones() + semitones);
        for (order, &(quality, plain)) in VOCABULARY.iter().enumerate() {
            if let Some(name) = fit(root, (quality, plain), lowest, sounding) {
                names.push(((name.far, semitones, order), name));
            }
        }
    }
    names.sort_by_key(|(rank, _)| *rank);
    names.into_iter().map(|(_, name)| name).collect()
}

/// A bass from outside as the chord's key spells it, but never B♯ for C and the like.
fn foreign_bass(bass: PitchClass, key: Key) -> NoteName {
    let natural = Key::spelled_for_players(bass, Mode::Major).tonic;
    if natural.accidental == Accidental::NATURAL {
        natural
    } else {
        key.spell(bass)
    }
}

/// The name that a quality, with what it takes to think of it, gives on a root.
fn fit(
    root: PitchClass,
    (quality, plain): (Quality, u16),
    lowest: PitchClass,
    sounding: Classes,
) -> Option<ChordName> {
    let chord = classes(root, quality);
    let foreign = sounding & !chord;
    if foreign & !bit(lowest) != 0 || sounding.count_ones() < 2 {
        return None;
    }
    let minor = quality.is_minor() || quality.has(FlatFifth) && !quality.has(MajorThird);
    let mode = if minor { Mode::Minor } else { Mode::Major };
    let name = Key::spelled_for_players(root, mode).tonic;
    let mut missing = Vec::new();
    let mut bass: Option<(Degree, NoteName)> = None;
    let mut far = plain;
    for (degree, note) in Chord::new(name, quality).tones() {
        if note.class() == lowest {
            bass = Some((degree, note));
        }
        if sounding & bit(note.class()) == 0 {
            far += match quality.need(degree) {
                Need::Vital => return None,
                Need::Third => NO_THIRD,
                Need::Root if sounding.count_ones() < 3 => return None,
                Need::Root => NO_ROOT,
                Need::Fifth | Need::Spare => NO_SPARE,
            };
            missing.push(degree);
        }
    }
    let Some((degree, note)) = bass else {
        // Nothing else may be uncertain where the bass is a stranger already.
        let plain = quality == MAJOR || quality == MINOR;
        let bass = foreign_bass(lowest, Key::new(name, mode));
        return (plain && missing.is_empty()).then_some(ChordName {
            chord: Chord {
                root: name,
                quality,
                bass: Some(bass),
            },
            missing,
            lowest: None,
            far: far + FOREIGN_BASS,
        });
    };
    far += match degree {
        Root => 0,
        MinorThird | MajorThird | FlatFifth | Fifth | SharpFifth => INVERTED,
        DiminishedSeventh | MinorSeventh | MajorSeventh => SEVENTH_LOWEST,
        _ => COLOUR_LOWEST,
    };
    Some(ChordName {
        chord: Chord {
            root: name,
            quality,
            bass: (degree != Root).then_some(note),
        },
        missing,
        lowest: Some(degree),
        far,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn names(notes: &str) -> Vec<String> {
        let notes: Vec<_> = notes
            .split(' ')
            .map(|note| note.parse::<NoteName>().unwrap().class())
            .collect();
        chord_names(notes[0], notes.iter().copied())
            .into_iter()
            .map(|name| name.chord.to_string())
            .collect()
    }

    #[test]
    fn the_lowest_note_decides_between_names_of_the_same_notes() {
        // Common practice: C6 and Am7, Am6 and F#m7b5, Csus4 and Fsus2, and the four names of a diminished seventh.
        for (notes, name) in [
            ("C E G A", "C6"),
            ("A C E G", "Am7"),
            ("A C E F#", "Am6"),
            ("F# A C E", "F#m7b5"),
            ("C F G", "Csus4"),
            ("F C G", "Fsus2"),
            ("B D F Ab", "Bdim7"),
            ("D F Ab B", "Ddim7"),
            ("G C E A", "Am7/G"),
        ] {
            assert_eq!(names(notes)[0], name, "{notes}");
        }
    }

    #[test]
    fn two_notes_are_a_bare_chord_first_and_a_triad_with_a_note_missing_after() {
        assert_eq!(names("A E"), ["A5", "A", "Am"]);
        assert_eq!(names("C E")[0], "C");
        assert!(names("C D").is_empty());
        assert!(names("C").is_empty());
    }

    #[test]
    fn a_bass_from_outside_goes_under_a_plain_chord() {
        assert_eq!(names("D C E G")[0], "C/D");
        assert_eq!(names("F# A C E")[1], "Am/F#");
        assert_eq!(names("Db C E G")[0], "C/C#");
        assert_eq!(names("C E G# B")[0], "E/C");
    }

    proptest! {
        #[test]
        fn whatever_a_name_says_sounds_or_is_said_to_be_missing(lowest in 0..12, set in 0_u16..4096) {
            let sounding = (0..12).filter(|n| set & 1 << n != 0).map(PitchClass::new);
            let lowest = PitchClass::new(lowest);
            let heard: Vec<_> = sounding.clone().chain([lowest]).collect();
            for name in chord_names(lowest, sounding) {
                prop_assert_eq!(name.chord.lowest().class(), lowest);
                for (degree, note) in name.chord.tones() {
                    prop_assert_eq!(heard.contains(&note.class()), !name.missing.contains(&degree));
                }
                let said = |class: &PitchClass| {
                    *class == lowest || name.chord.tones().any(|(_, note)| note.class() == *class)
                };
                prop_assert!(heard.iter().all(said));
                prop_assert_eq!(name.chord.to_string().parse(), Ok(name.chord));
            }
        }

        #[test]
        fn names_move_with_the_notes(lowest in 0..12, set in 0_u16..4096, up in 0..12) {
            let sounding = (0..12).filter(|n| set & 1 << n != 0);
            let here = chord_names(PitchClass::new(lowest), sounding.clone().map(PitchClass::new));
            let there = chord_names(
                PitchClass::new(lowest + up),
                sounding.map(|n| PitchClass::new(n + up)),
            );
            prop_assert_eq!(here.len(), there.len());
            for (here, there) in here.iter().zip(&there) {
                prop_assert_eq!(here.chord.quality, there.chord.quality);
                prop_assert_eq!(PitchClass::new(here.chord.root.class().semitones() + up), there.chord.root.class());
                prop_assert_eq!(&here.missing, &there.missing);
            }
        }
    }
}
