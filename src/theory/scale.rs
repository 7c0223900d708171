//! What a key holds: its degrees, its chords, its relatives, and how it spells the notes outside it.

use super::chord::{Chord, Quality};
use super::key::{Key, Mode};
use super::number::Number;
use super::pitch::{Accidental, Letter, NoteName, Pitch, PitchClass};

/// The letters in the order in which sharps enter a signature, a fifth apart.
const FIFTHS: [Letter; 7] = [
    Letter::F,
    Letter::C,
    Letter::G,
    Letter::D,
    Letter::A,
    Letter::E,
    Letter::B,
];

impl NoteName {
    /// The name so many fifths above C (negative: below), as far as double signs go: -15 (F𝄫) to 19 (B𝄪).
    fn from_fifths(fifths: i32) -> Option<Self> {
        let above_f = fifths + 1;
        let accidental = Accidental::new(above_f.div_euclid(7))?;
        Some(Self::new(
            FIFTHS[above_f.rem_euclid(7) as usize],
            accidental,
        ))
    }
}

impl Key {
    /// Which degree of the scale a note is, 1 to 7; `None` for notes outside it. Names count, not sounds.
    pub fn degree(self, note: NoteName) -> Option<usize> {
        let place = self.scale().into_iter().position(|degree| degree == note);
        place.map(|i| i + 1)
    }

    /// The key of another mode with the same notes: C and A minor, D and A mixolydian.
    ///
    /// ```
    /// use fourcourse::theory::{Key, Mode};
    /// let key: Key = "A mixolydian".parse().unwrap();
    /// assert_eq!(key.relative(Mode::Major).to_string(), "D");
    /// ```
    pub fn relative(self, mode: Mode) -> Self {
        match NoteName::from_fifths(self.signature() - mode.sharps()) {
            Some(tonic) => Self::new(tonic, mode),
            None => Self::spelled_for_players(
                PitchClass::new(7 * (self.signature() - mode.sharps())),
                mode,
            ),
        }
    }

    /// The key of another mode on the same tonic: C and C minor.
    pub const fn parallel(self, mode: Mode) -> Self {
        Self::new(self.tonic, mode)
    }

    /// The triad on each degree of the scale, built from its notes alone.
    ///
    /// ```
    /// use fourcourse::theory::Key;
    /// let key: Key = "D dorian".parse().unwrap();
    /// let chords = key.chords().map(|(number, chord)| format!("{number} {chord}"));
    /// assert_eq!(chords, ["1m Dm", "2m Em", "b3 F", "4 G", "5m Am", "6dim Bdim", "b7 C"]);
    /// ```
    pub fn chords(self) -> [(Number, Chord); 7] {
        let scale = self.scale();
        std::array::from_fn(|i| {
            let above = |steps| {
                let note: NoteName = scale[(i + steps) % 7];
                (note.class().semitones() - scale[i].class().semitones()).rem_euclid(12)
            };
            let quality = match (above(2), above(4)) {
                (3, 6) => Quality::DIMINISHED,
                (3, _) => Quality::MINOR,
                _ => Quality::MAJOR,
            };
            let chord = Chord::new(scale[i], quality);
            (Number::of(chord, self.tonic), chord)
        })
    }

    /// The chords to have ready when this key is called, with their numbers, the ones met first in front.
    ///
    /// Major is the trade sheet's 1 4 5, 6m (b7) with 2m and 3m between, minor its 1m b7 b3 5 (any harmony textbook); the
    /// modes have the chords of their scale, 1 or 1m against b7 first where there is one.
    ///
    /// ```
    /// use fourcourse::theory::Key;
    /// let ready = |key: &str| {
    ///     let chords = key.parse::<Key>().unwrap().called_chords().into_iter();
    ///     chords.map(|(number, chord)| format!("{number} {chord}")).collect::<Vec<_>>().join(", ")
    /// };
    /// assert_eq!(ready("A"), "1 A, 4 D, 5 E, 6m F#m, 2m Bm, 3m C#m, b7 G");
    /// assert_eq!(ready("A dorian"), "1m Am, b7 G, 4 D, b3 C, 5m Em, 2m Bm");
    /// ```
    pub fn called_chords(self) -> Vec<(Number, Chord)> {
        let numbers = match self.mode {
            Mode::Major => "1 4 5 6m 2m 3m b7",
            Mode::Minor => "1m b7 b3 5 4m b6 5m",
            Mode::Dorian => "1m b7 4 b3 5m 2m",
            Mode::Mixolydian => "1 b7 4 5m 2m 6m",
            Mode::Lydian => "1 2 5 6m 3m 7m",
            Mode::Phrygian => "1m b2 b7m b3 4m b6",
            Mode::Locrian => "1dim b2 b7m b3m 4m b5 b6",
        };
        let numbers = numbers.split(' ').filter_map(|number| number.parse().ok());
        numbers
            .map(|number: Number| (number, number.chord(self.tonic)))
            .collect()
    }

    /// The name that a sounding note has in this key: its own notes first, then the chromatic ones as players mostly
    /// write them.
    ///
    /// The rule for those (after D. Temperley's line of fifths, The Cognition of Basic Musical Structures, from
    /// memory): of the names with one sound, the one nearest to the middle of the scale on the line of fifths; where
    /// two are as near, the sharp one. So C major has C♯ E♭ F♯ G♯ B♭, the thirds of its secondary dominants and the
    /// blue notes; A minor has the same, its raised sixth and seventh among them.
    ///
    /// ```
    /// use fourcourse::theory::{Key, PitchClass};
    /// let d: Key = "D".parse().unwrap();
    /// let names = (0..12).map(|n| d.spell(PitchClass::new(n)).to_string());
    /// assert_eq!(names.collect::<Vec<_>>().join(" "), "C C# D D# E F F# G G# A A# B");
    /// ```
    pub fn spell(self, class: PitchClass) -> NoteName {
        // The scale lies from `signature - 1` to `signature + 5` fifths above C. Twelve names from two fifths below
        // it to three above hold each sound once, the middle of the scale in their middle. Signatures beyond the usual
        // ones could run out of double signs.
        let lowest = self.signature().clamp(-12, 11) - 3;
        (lowest..lowest + 12)
            .filter_map(NoteName::from_fifths)
            .find(|name| name.class() == class)
            .unwrap_or(self.tonic)
    }

    /// The pitch of a MIDI key number as this key spells it.
    pub fn spell_midi(self, midi: i32) -> Pitch {
        let name = self.spell(PitchClass::new(midi));
        let natural = midi - name.letter.semitones() - name.accidental.semitones();
        let octave = i8::try_from(natural.div_euclid(12) - 1);
        Pitch::new(
            name,
            octave.unwrap_or(if midi < 0 { i8::MIN } else { i8::MAX }),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::tests::any_key;
    use proptest::prelude::*;

    fn chromatic(key: &str) -> String {
        let key: Key = key.parse().unwrap();
        let names = (0..12).map(|n| key.spell(PitchClass::new(n)).to_string());
        names.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn notes_outside_a_key_are_spelled_as_players_write_them() {
        // Common practice: raised seventh and sixth in minor, flat third and seventh as blue notes in major.
        assert_eq!(chromatic("C"), "C C# D Eb E F F# G G# A Bb B");
        assert_eq!(chromatic("Am"), "C C# D Eb E F F# G G# A Bb B");
        assert_eq!(chromatic("G"), "C C# D D# E F F# G G# A Bb B");
        assert_eq!(chromatic("Eb"), "C Db D Eb E F Gb G Ab A Bb B");
    }

    #[test]
    fn relatives_share_their_notes() {
        let key = |text: &str| text.parse::<Key>().unwrap();
        assert_eq!(key("C").relative(Mode::Minor), key("Am"));
        assert_eq!(key("F#m").relative(Mode::Major), key("A"));
        assert_eq!(key("A").parallel(Mode::Minor), key("Am"));
        assert_eq!(key("C#").relative(Mode::Locrian), key("B# locrian"));
    }

    #[test]
    fn the_chords_that_are_ready_are_those_of_the_scale_and_the_borrowed_ones() {
        for mode in Mode::ALL {
            let key = Key::new("D".parse().unwrap(), mode);
            let ready = key.called_chords();
            let own = key.chords().map(|(_, chord)| chord);
            let borrowed = ready.iter().filter(|(_, chord)| !own.contains(chord));
            let borrowed: Vec<_> = borrowed.map(|(number, _)| number.to_string()).collect();
            match mode {
                Mode::Major => assert_eq!(borrowed, ["b7"]),
                Mode::Minor => assert_eq!(borrowed, ["5"]),
                _ => assert!(borrowed.is_empty(), "{mode:?} {borrowed:?}"),
            }
            let main = key.main_chords();
            assert!(
                main.iter()
                    .all(|main| ready.iter().any(|(_, chord)| chord == main))
            );
            assert!(ready.len() >= 6, "{mode:?}");
        }
    }

    #[test]
    fn notes_know_their_degree() {
        let key: Key = "E minor".parse().unwrap();
        assert_eq!(key.degree("G".parse().unwrap()), Some(3));
        assert_eq!(key.degree("G#".parse().unwrap()), None);
    }

    proptest! {
        #[test]
        fn every_sound_has_a_name_and_the_scale_keeps_its_own(key in any_key(), midi in 0..128) {
            let pitch = key.spell_midi(midi);
            prop_assert_eq!(pitch.midi(), midi);
            let own = key.scale().into_iter().find(|n| n.class() == PitchClass::new(midi));
            if let (Some(own), ..=7) = (own, key.signature().abs()) {
                prop_assert_eq!(pitch.name, own);
            }
        }
    }
}
