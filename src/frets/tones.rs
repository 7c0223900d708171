//! The tones of a chord on an instrument: told apart by sound, each with how much the chord needs it.

use crate::theory::{Chord, Degree, Need, NoteName, PitchClass};

use super::instrument::Texture;

/// A tone of the chord.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tone {
    /// `None` for a slash bass from outside the chord.
    pub(super) degree: Option<Degree>,
    pub(super) name: NoteName,
    /// `None` likewise: what it costs to lack that bass is a matter of what sounds lowest.
    pub(super) need: Option<Need>,
}

/// Third and fifth of the triads, in semitones above the root: major, minor, diminished.
const TRIADS: [[i32; 2]; 3] = [[4, 7], [3, 7], [3, 6]];

/// The tones of a chord, told apart by sound; its root, or what stands for it, comes first.
#[derive(Debug, Clone)]
pub(super) struct Tones {
    list: Vec<Tone>,
    by_class: [Option<u8>; 12],
    /// The tone that should sound lowest, for a slash chord.
    pub(super) bass: Option<u8>,
    /// Sets of these tones that are a whole triad on another root, as bits by place.
    others: Vec<u16>,
}

impl Tones {
    pub(super) fn of(chord: Chord, texture: Texture) -> Self {
        let mut tones = Self {
            list: Vec::new(),
            by_class: [None; 12],
            bass: None,
            others: Vec::new(),
        };
        if texture == Texture::RootAndFifth {
            tones.add_ground(chord);
            return tones;
        }
        for (degree, name) in chord.tones() {
            tones.add(Tone {
                degree: Some(degree),
                name,
                need: Some(chord.quality.need(degree)),
            });
        }
        tones.bass = chord.bass.map(|name| {
            tones.add(Tone {
                degree: None,
                name,
                need: None,
            })
        });
        tones.others = tones.other_triads();
        tones
    }

    /// The tones of somebody who plays the ground: the slash bass, or the root and its fifth.
    fn add_ground(&mut self, chord: Chord) {
        let degree_of = |name: NoteName| {
            let mut tones = chord.tones();
            tones.find(|(_, tone)| tone.class() == name.class())
        };
        let name = chord.bass.unwrap_or(chord.root);
        self.add(Tone {
            degree: degree_of(name).map(|(degree, _)| degree),
            name,
            need: Some(Need::Vital),
        });
        let fifths = [Degree::Fifth, Degree::FlatFifth, Degree::SharpFifth];
        let mut tones = chord.tones();
        if chord.bass.is_none()
            && let Some((degree, name)) = tones.find(|(degree, _)| fifths.contains(degree))
        {
            self.add(Tone {
                degree: Some(degree),
                name,
                need: Some(Need::Fifth),
            });
        }
    }

    /// Three tones that are a triad on another of them than the first, which is the chord's root: C E G of Am7.
    fn other_triads(&self) -> Vec<u16> {
        let class = |tone: &Tone| tone.name.class().semitones();
        let place_of = |class: i32| self.by_class[usize::from(class_index(PitchClass::new(class)))];
        let triad = |root: &Tone, [third, fifth]: [i32; 2]| {
            let places = [0, third, fifth].map(|up| place_of(class(root) + up));
            places
                .into_iter()
                .try_fold(0, |mask, place| Some(mask | 1 << place?))
        };
        let roots = self.list.iter().skip(1);
        roots
            .flat_map(|root| TRIADS.map(|triad_of| triad(root, triad_of)))
            .flatten()
            .collect()
    }

    /// Whether tones, as bits by place, are all of a triad on another root, so that the ear takes them for that.
    pub(super) fn is_other_triad(&self, sounding: u16) -> bool {
        self.others.contains(&sounding)
    }

    /// Adds a tone unless one that sounds alike is there already; returns its place.
    fn add(&mut self, tone: Tone) -> u8 {
        let class = usize::from(class_index(tone.name.class()));
        if let Some(there) = self.by_class[class] {
            return there;
        }
        // At most twelve classes, so at most twelve places.
        let place = u8::try_from(self.list.len()).unwrap_or(u8::MAX);
        self.list.push(tone);
        self.by_class[class] = Some(place);
        place
    }

    pub(super) fn list(&self) -> &[Tone] {
        &self.list
    }

    pub(super) fn get(&self, place: u8) -> Tone {
        self.list[usize::from(place)]
    }

    /// The place of the tone that a MIDI key sounds.
    pub(super) fn sounded(&self, midi: i32) -> Option<u8> {
        self.by_class[usize::from(class_index(PitchClass::new(midi)))]
    }

    /// The tones of some need, as bits by place.
    pub(super) fn mask(&self, need: Need) -> u16 {
        let places = self.list.iter().enumerate();
        places
            .filter(|(_, tone)| tone.need == Some(need))
            .fold(0, |mask, (place, _)| mask | 1 << place)
    }
}

fn class_index(class: PitchClass) -> u8 {
    // A class is 0 to 11.
    u8::try_from(class.semitones()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::Quality;

    fn needs(quality: Quality, need: Need) -> Vec<Degree> {
        let chord = Chord::new("C".parse().unwrap(), quality);
        let tones = Tones::of(chord, Texture::Full);
        let mask = tones.mask(need);
        let list = tones.list().iter().enumerate();
        list.filter(|(place, _)| mask & (1 << place) != 0)
            .filter_map(|(_, tone)| tone.degree)
            .collect()
    }

    #[test]
    fn a_thirteenth_keeps_third_seventh_and_thirteenth() {
        let thirteenth = Quality::SEVENTH
            .with(Degree::Ninth)
            .with(Degree::Eleventh)
            .with(Degree::Thirteenth)
            .without(Degree::Eleventh);
        let vital = [Degree::MajorThird, Degree::MinorSeventh, Degree::Thirteenth];
        assert_eq!(needs(thirteenth, Need::Vital), vital);
        assert_eq!(
            needs(thirteenth, Need::Spare),
            [Degree::Fifth, Degree::Ninth]
        );
    }

    #[test]
    fn a_power_chord_keeps_both_tones() {
        assert_eq!(
            needs(Quality::POWER, Need::Vital),
            [Degree::Root, Degree::Fifth]
        );
    }

    #[test]
    fn a_triad_may_lack_its_third_and_a_diminished_one_may_not() {
        assert_eq!(needs(Quality::MINOR, Need::Third), [Degree::MinorThird]);
        assert_eq!(needs(Quality::DIMINISHED, Need::Third), []);
    }

    fn others(symbol: &str) -> Vec<String> {
        let tones = Tones::of(symbol.parse().unwrap(), Texture::Full);
        let name = |mask: u16| {
            let list = tones.list().iter().enumerate();
            list.filter(|(place, _)| mask & (1 << place) != 0)
                .map(|(_, tone)| tone.name.to_string())
                .collect()
        };
        tones.others.iter().copied().map(name).collect()
    }

    #[test]
    fn a_bigger_chord_holds_triads_that_it_must_not_be_taken_for() {
        assert_eq!(others("Am7"), ["CEG"]);
        assert_eq!(others("C6"), ["CEA"]);
        assert_eq!(others("F#m7b5"), ["ACE"]);
        assert_eq!(others("C"), [""; 0]);
    }

    #[test]
    fn a_ground_is_root_and_fifth_or_the_slash_bass() {
        let names = |symbol: &str| -> Vec<String> {
            let tones = Tones::of(symbol.parse().unwrap(), Texture::RootAndFifth);
            tones
                .list()
                .iter()
                .map(|tone| tone.name.to_string())
                .collect()
        };
        assert_eq!(names("Gm7"), ["G", "D"]);
        assert_eq!(names("Bdim"), ["B", "F"]);
        assert_eq!(names("D/F#"), ["F#"]);
    }
}
