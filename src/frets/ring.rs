//! Which open strings may ring.
//!
//! Over a chord: an open string that sounds a tone of the chord **fits**. One that lies a half step from a tone of the
//! chord, in any octave, **clashes** with it. Any other is **colour**: a second, a fourth over a minor third, a sixth, a
//! flat seventh. For a whole tune in a key the rule of thumb is the key's tonic and fifth, where both are open strings
//! (common practice).

use crate::theory::{Chord, Degree, Key, NoteName, Pitch, PitchClass, Quality};

use super::instrument::{Capo, Instrument};

/// One open course and how it stands to what is played.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OpenString<Standing> {
    /// Which course, counted from 0.
    pub course: usize,
    /// What it sounds, the capo counted, as the chord or key spells it; outside of them by the string's own name.
    pub note: Pitch,
    /// Its distance from the root of the chord or the tonic of the key.
    pub degree: Degree,
    /// How it stands to the chord or key.
    pub standing: Standing,
}

/// How an open string stands to a chord.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InChord {
    /// It is a tone of the chord, or its bass.
    Fits,
    /// It is outside the chord and rubs with nothing.
    Colour,
    /// It lies a half step from a tone of the chord.
    Clash {
        /// The tone that it rubs with.
        with: NoteName,
        /// Which tone of the chord that is; `None` for a slash bass from outside.
        degree: Option<Degree>,
    },
}

/// How an open string stands to a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InKey {
    /// It is the tonic or the fifth, and the other one is an open string as well: let both ring through the tune.
    Drone,
    /// It is the tonic or the fifth, but its partner is no open string.
    HalfDrone,
    /// It belongs to the scale.
    Scale,
    /// It is outside the scale.
    Outside,
}

/// How each open course stands to a chord, the first course first.
///
/// ```
/// use fourcourse::frets::{Capo, InChord, Instrument, ring_in_chord};
/// use fourcourse::theory::{Chord, Degree, Quality};
/// let a = Chord::new("A".parse().unwrap(), Quality::MAJOR);
/// let ring = ring_in_chord(&Instrument::mandolin(), Capo::NONE, a);
/// assert_eq!(ring[0].standing, InChord::Colour); // G, the seventh
/// assert_eq!(
///     ring[1].standing, // D
///     InChord::Clash { with: "C#".parse().unwrap(), degree: Some(Degree::MajorThird) }
/// );
/// assert_eq!(ring[2].standing, InChord::Fits); // A
/// ```
pub fn ring_in_chord(
    instrument: &Instrument,
    capo: Capo,
    chord: Chord,
) -> Vec<OpenString<InChord>> {
    let bass = chord.bass.map(|name| (None, name));
    let tones = chord.tones().map(|(degree, name)| (Some(degree), name));
    let tones: Vec<_> = tones.chain(bass).collect();
    let judge = |class: PitchClass| {
        let apart = |name: NoteName| (name.class().semitones() - class.semitones()).rem_euclid(12);
        if tones.iter().any(|&(_, name)| apart(name) == 0) {
            return InChord::Fits;
        }
        let rubs = tones
            .iter()
            .find(|&&(_, name)| matches!(apart(name), 1 | 11));
        rubs.map_or(InChord::Colour, |&(degree, with)| InChord::Clash {
            with,
            degree,
        })
    };
    let names: Vec<NoteName> = tones.iter().map(|&(_, name)| name).collect();
    open_strings(instrument, capo, chord.root, chord.quality, &names, judge)
}

/// How each open course stands to a key, the first course first.
///
/// ```
/// use fourcourse::frets::{Capo, InKey, Instrument, ring_in_key};
/// use fourcourse::theory::{Key, Mode};
/// let key = Key::new("A".parse().unwrap(), Mode::Mixolydian);
/// let ring = ring_in_key(&Instrument::mandolin(), Capo::NONE, key);
/// let standing: Vec<_> = ring.iter().map(|open| open.standing).collect();
/// assert_eq!(standing, [InKey::Scale, InKey::Scale, InKey::Drone, InKey::Drone]);
/// ```
pub fn ring_in_key(instrument: &Instrument, capo: Capo, key: Key) -> Vec<OpenString<InKey>> {
    let scale = key.scale().map(NoteName::class);
    let (tonic, fifth) = (scale[0], PitchClass::new(scale[0].semitones() + 7));
    let opens: Vec<PitchClass> = (0..instrument.courses.len())
        .filter_map(|course| instrument.midi(course, 0, capo))
        .map(PitchClass::new)
        .collect();
    let both = opens.contains(&tonic) && opens.contains(&fifth);
    let judge = |class: PitchClass| {
        if class == tonic || class == fifth {
            if both { InKey::Drone } else { InKey::HalfDrone }
        } else if scale.contains(&class) {
            InKey::Scale
        } else {
            InKey::Outside
        }
    };
    let quality = if key.mode.is_minor() {
        Quality::MINOR
    } else {
        Quality::MAJOR
    };
    open_strings(instrument, capo, key.tonic, quality, &key.scale(), judge)
}

fn open_strings<Standing>(
    instrument: &Instrument,
    capo: Capo,
    root: NoteName,
    quality: Quality,
    names: &[NoteName],
    judge: impl Fn(PitchClass) -> Standing,
) -> Vec<OpenString<Standing>> {
    let open_string = |course| {
        let midi = instrument.midi(course, 0, capo)?;
        let class = PitchClass::new(midi);
        let degree = degree_above(root, quality, class);
        let named = names.iter().find(|name| name.class() == class);
        let note = match named {
            Some(&name) => spelled(name, midi),
            None => instrument.sound(course, 0, capo)?,
        };
        Some(OpenString {
            course,
            note,
            degree,
            standing: judge(class),
        })
    };
    (0..instrument.courses.len())
        .filter_map(open_string)
        .collect()
}

/// What a note is called above a root: as the chord calls it where it is a tone, and otherwise by its usual name.
fn degree_above(root: NoteName, quality: Quality, class: PitchClass) -> Degree {
    let semitones = (class.semitones() - root.class().semitones()).rem_euclid(12);
    let own = quality
        .degrees()
        .find(|degree| i32::from(degree.interval().semitones).rem_euclid(12) == semitones);
    own.unwrap_or(match semitones {
        0 => Degree::Root,
        1 => Degree::FlatNinth,
        2 => Degree::Second,
        3 if quality.has(Degree::MajorThird) => Degree::SharpNinth,
        3 => Degree::MinorThird,
        4 => Degree::MajorThird,
        5 => Degree::Fourth,
        6 if quality.has(Degree::Fifth) => Degree::SharpEleventh,
        6 => Degree::FlatFifth,
        7 => Degree::Fifth,
        8 if quality.has(Degree::Fifth) => Degree::FlatThirteenth,
        8 => Degree::SharpFifth,
        9 => Degree::Sixth,
        10 => Degree::MinorSeventh,
        _ => Degree::MajorSeventh,
    })
}

/// The pitch of a name that sounds as a MIDI key; the name must be of that class.
pub(super) fn spelled(name: NoteName, midi: i32) -> Pitch {
    let natural = midi - name.letter.semitones() - name.accidental.semitones();
    let octave = (natural.div_euclid(12) - 1).clamp(-100, 100);
    // Clamped to what an octave can hold.
    #[allow(clippy::cast_possible_truncation)]
    Pitch::new(name, octave as i8)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_capo_moves_what_rings() {
        // Shapes of G with the capo at the second fret: what is called is A.
        let guitar = Instrument::by_id("guitar").unwrap();
        let ring = ring_in_chord(&guitar, Capo::at(2), "A".parse().unwrap());
        let notes: Vec<String> = ring.iter().map(|open| open.note.to_string()).collect();
        assert_eq!(notes, ["F#2", "B2", "E3", "A3", "C#4", "F#4"]);
        assert_eq!(ring[4].standing, InChord::Fits);
        assert_eq!(ring[4].degree, Degree::MajorThird);
    }

    #[test]
    fn a_flat_key_names_the_strings_as_it_spells_them() {
        let banjo = Instrument::by_id("banjo").unwrap();
        let ring = ring_in_key(&banjo, Capo::at(3), "Bb".parse().unwrap());
        assert_eq!(ring[2].note.to_string(), "Bb3");
        assert_eq!(ring[2].standing, InKey::Drone);
    }

    #[test]
    fn a_bass_from_outside_fits_and_can_rub() {
        let ring = ring_in_chord(&Instrument::mandolin(), Capo::NONE, "C/D".parse().unwrap());
        assert_eq!(ring[1].standing, InChord::Fits);
        let ring = ring_in_chord(&Instrument::mandolin(), Capo::NONE, "D/D#".parse().unwrap());
        let with = "D#".parse().unwrap();
        assert_eq!(ring[3].standing, InChord::Clash { with, degree: None });
    }

    #[test]
    fn half_a_drone_is_told_from_a_whole_one() {
        let ring = ring_in_key(&Instrument::mandolin(), Capo::NONE, "E".parse().unwrap());
        assert_eq!(ring[3].standing, InKey::HalfDrone);
        assert_eq!(ring[0].standing, InKey::Outside);
        assert_eq!(ring[2].standing, InKey::Scale);
    }
}
