//! Simpler chords, for a learner who wants to keep strumming.

use super::chord::{
    Chord,
    Degree::{self, *},
    Quality,
};
use super::key::{Key, Mode};
use super::number::ScaleDegree;
use super::pitch::{Accidental, PitchClass};

impl Chord {
    /// The triad inside a chord: without sevenths, additions and slash. Suspensions resolve to their third; a chord of
    /// root and fifth alone has no third to show and stays as it is. A fifth counts as diminished under a minor third
    /// and as augmented over a major one; another altered fifth is taken as colour and becomes perfect.
    ///
    /// ```
    /// use fourcourse::theory::Chord;
    /// let simple = |text: &str| text.parse::<Chord>().unwrap().triad().to_string();
    /// assert_eq!(["A7sus4", "Bm7b5", "D/F#", "Em9"].map(simple), ["A", "Bdim", "D", "Em"]);
    /// ```
    pub fn triad(self) -> Self {
        let quality = self.quality;
        let only = |fifth: Degree| quality.has(fifth) && !quality.has(Fifth);
        let triad = if quality == Quality::POWER {
            Quality::POWER
        } else if quality.is_minor() {
            if only(FlatFifth) {
                Quality::DIMINISHED
            } else {
                Quality::MINOR
            }
        } else if only(SharpFifth) && quality.has(MajorThird) {
            Quality::AUGMENTED
        } else {
            Quality::MAJOR
        };
        Self::new(self.root, triad)
    }
}

impl Key {
    /// The three chords that carry a tune in this key, the commonest first.
    ///
    /// Major: 1 5 4. Minor: 1m b7 5 (over a corpus of dance tunes b3 is as common as 5, but it shares two notes with
    /// 1m and so is missed less). Dorian: 1m b7 4. Mixolydian: 1 b7 4. Lydian: 1 5 2. Phrygian: 1m b2 b7m. Locrian:
    /// 1dim b2 b7m. The order in major and minor is counted over about 950 dance tunes; the modes are from memory.
    pub fn main_chords(self) -> [Chord; 3] {
        const MAJOR: Quality = Quality::MAJOR;
        const MINOR: Quality = Quality::MINOR;
        const DIMINISHED: Quality = Quality::DIMINISHED;
        let numbers = match self.mode {
            Mode::Major => [(1, 0, MAJOR), (5, 0, MAJOR), (4, 0, MAJOR)],
            Mode::Minor => [(1, 0, MINOR), (7, -1, MAJOR), (5, 0, MAJOR)],
            Mode::Dorian => [(1, 0, MINOR), (7, -1, MAJOR), (4, 0, MAJOR)],
            Mode::Mixolydian => [(1, 0, MAJOR), (7, -1, MAJOR), (4, 0, MAJOR)],
            Mode::Lydian => [(1, 0, MAJOR), (5, 0, MAJOR), (2, 0, MAJOR)],
            Mode::Phrygian => [(1, 0, MINOR), (2, -1, MAJOR), (7, -1, MINOR)],
            Mode::Locrian => [(1, 0, DIMINISHED), (2, -1, MAJOR), (7, -1, MINOR)],
        };
        numbers.map(|(number, sign, quality)| {
            let degree = Accidental::new(sign).and_then(|sign| ScaleDegree::new(number, sign));
            let root = degree.map_or(self.tonic, |degree| degree.note(self.tonic));
            Chord::new(root, quality)
        })
    }
}

/// The one of a key's three main chords that stands in best for a chord, without a slash.
///
/// That is the one that shares most notes with the chord's triad; of two that share two notes, the commoner. A chord
/// that shares less than two with all of them is away from home and stays so: the tonic is its last choice, so that
/// the change is still heard. In major this makes 2m a 4, 6m and 3m a 1, 2 a 5.
///
/// ```
/// use fourcourse::theory::{Chord, Key, three_chords};
/// let d: Key = "D".parse().unwrap();
/// let simple = |text: &str| three_chords(text.parse::<Chord>().unwrap(), d).to_string();
/// assert_eq!(["D", "Em7", "F#m", "Bm", "A7sus4", "G/B"].map(simple), ["D", "G", "D", "D", "A", "G"]);
/// ```
pub fn three_chords(chord: Chord, key: Key) -> Chord {
    let notes = classes(chord.triad());
    let main = key.main_chords();
    let mut best = (main[0], 0);
    for (i, candidate) in main.into_iter().enumerate() {
        let shared = classes(candidate).filter(|note| notes.clone().any(|n| n == *note));
        // Doubled to leave room between: a tonic that shares only one note comes after the others, even those that
        // share none.
        let score = match (i, shared.count()) {
            (0, ..2) => 1,
            (_, shared) => 2 * shared + 2,
        };
        if score > best.1 {
            best = (candidate, score);
        }
    }
    best.0
}

fn classes(chord: Chord) -> impl Iterator<Item = PitchClass> + Clone {
    Degree::ALL
        .into_iter()
        .filter(move |&degree| chord.quality.has(degree))
        .map(move |degree| {
            let semitones = i32::from(degree.interval().semitones);
            PitchClass::new(chord.root.class().semitones() + semitones)
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::tests::{any_chord, any_key};
    use proptest::prelude::*;

    fn simple(key: &str, chords: &str) -> String {
        let key: Key = key.parse().unwrap();
        let chords = chords.split(' ').map(|text| {
            let chord: Chord = text.parse().unwrap();
            three_chords(chord, key).to_string()
        });
        chords.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn other_chords_give_way_to_the_main_ones_they_share_most_with() {
        // Major: the trade's rule (2m to 4; 6m and 3m to 1), counted over dance tunes. The rest is common practice.
        assert_eq!(simple("C", "C Dm Em F G Am Bdim"), "C F C F G C G");
        assert_eq!(simple("C", "D7 Bb A7 E7 Fm C/E"), "G G F G F C");
        assert_eq!(simple("Am", "Am G E7 C F Dm Em Bdim"), "Am G E Am Am G G G");
        assert_eq!(simple("A mixolydian", "A G D E Em F#m"), "A G D G G A");
        assert_eq!(simple("D dorian", "Dm C G F Am"), "Dm C G Dm C");
    }

    #[test]
    fn triads_keep_what_makes_them_major_minor_diminished_or_augmented() {
        let triad = |text: &str| text.parse::<Chord>().unwrap().triad().to_string();
        assert_eq!(
            [
                "Cdim7",
                "C7#5",
                "C7b5",
                "Cm#5",
                "C5",
                "Csus2",
                "C11",
                "Cm(maj7)/B"
            ]
            .map(triad),
            ["Cdim", "Caug", "C", "Cm", "C5", "C", "C", "Cm"]
        );
    }

    proptest! {
        #[test]
        fn simpler_is_one_of_three_and_is_simple_for_good(chord in any_chord(), key in any_key()) {
            let simple = three_chords(chord, key);
            prop_assert!(key.main_chords().contains(&simple));
            prop_assert_eq!(three_chords(simple, key), simple);
            prop_assert_eq!(chord.triad().triad(), chord.triad());
        }
    }
}
