//! The tones of a chord on an instrument: told apart by sound, each with how much the chord needs it.

use crate::theory::{Chord, Degree, Need, NoteName, PitchClass};

/// A tone of the chord.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tone {
    /// `None` for a slash bass from outside the chord.
    pub(super) degree: Option<Degree>,
    pub(super) name: NoteName,
    pub(super) need: Need,
}

/// The tones of a chord, told apart by sound.
#[derive(Debug, Clone)]
pub(super) struct Tones {
    list: Vec<Tone>,
    by_class: [Option<u8>; 12],
    /// The tone that must sound lowest, for a slash chord.
    pub(super) bass: Option<u8>,
}

impl Tones {
    pub(super) fn of(chord: Chord) -> Self {
        let mut tones = Self {
            list: Vec::new(),
            by_class: [None; 12],
            bass: None,
        };
        for (degree, name) in chord.tones() {
            tones.add(Tone {
                degree: Some(degree),
                name,
                need: chord.quality.need(degree),
            });
        }
        tones.bass = chord.bass.map(|name| {
            tones.add(Tone {
                degree: None,
                name,
                need: Need::Vital,
            })
        });
        tones
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
            .filter(|(_, tone)| tone.need == need)
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
        let tones = Tones::of(Chord::new("C".parse().unwrap(), quality));
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
}
