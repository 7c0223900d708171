//! How the band's hands hold a chord.

use std::collections::HashMap;

use crate::frets::{Capo, Instrument, Order, shapes};
use crate::theory::{Chord, Degree, NoteName, PitchClass};

/// A course and the MIDI number that it sounds.
pub(super) type Tone = (u8, u8);

/// The highest fret of a bass note on the guitar that is no part of the shape: the hand stays at the nut.
const BASS_FRETS: u8 = 4;

/// Courses of the guitar that are played as its bass: E, A and D.
const BASS_COURSES: usize = 3;

/// A chord on the guitar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Held {
    /// What sounds on each course of the shape, low to high.
    pub(super) strings: Vec<Tone>,
    /// The bass note, and the one that it takes turns with.
    pub(super) root: Tone,
    pub(super) fifth: Tone,
}

impl Held {
    /// The upper strings: from the D course on, and three at least.
    pub(super) fn upper(&self) -> &[Tone] {
        self.above(1)
    }

    /// The strings above that of the root, and three at least.
    pub(super) fn above_bass(&self) -> &[Tone] {
        self.above(self.root.0)
    }

    fn above(&self, course: u8) -> &[Tone] {
        let low = self.strings.iter().filter(|tone| tone.0 <= course).count();
        let from = low.min(self.strings.len().saturating_sub(3));
        &self.strings[from..]
    }
}

/// The shapes of the chords that came along, found once and then remembered: a search takes longer than all the rest of a
/// score. Keep it from one score to the next.
#[derive(Debug)]
pub struct Voicings {
    guitar_neck: Instrument,
    mandolin_neck: Instrument,
    guitar: HashMap<Chord, Option<Held>>,
    mandolin: HashMap<Chord, Vec<Tone>>,
}

impl Default for Voicings {
    fn default() -> Self {
        let mandolin = Instrument::mandolin();
        Self {
            guitar_neck: Instrument::by_id("guitar").unwrap_or(mandolin.clone()),
            mandolin_neck: mandolin,
            guitar: HashMap::new(),
            mandolin: HashMap::new(),
        }
    }
}

impl Voicings {
    /// A chord on the guitar: the easiest shape that the app shows. `None` where no hand can hold it.
    pub(super) fn guitar(&mut self, chord: Chord) -> Option<&Held> {
        let neck = &self.guitar_neck;
        let find = || hold(neck, chord);
        self.guitar.entry(chord).or_insert_with(find).as_ref()
    }

    /// A chop of a chord on the mandolin, low to high: movable, without the bass after a slash. Where no hand can hold one
    /// it is a shape with open strings; empty where there is none of these either.
    pub(super) fn chop(&mut self, chord: Chord) -> &[Tone] {
        let neck = &self.mandolin_neck;
        self.mandolin.entry(chord).or_insert_with(|| {
            let chord = Chord::new(chord.root, chord.quality);
            let mut found = [Order::Chops, Order::Beginner]
                .into_iter()
                .filter_map(|order| strings(neck, chord, order));
            found.next().unwrap_or_default()
        })
    }
}

/// What the first shape of a chord sounds on each course.
fn strings(neck: &Instrument, chord: Chord, order: Order) -> Option<Vec<Tone>> {
    let shape = shapes(neck, Capo::NONE, chord, order, 1)
        .into_iter()
        .next()?;
    let courses = shape.frets.iter().enumerate();
    let sounding = courses.filter_map(|(course, &fret)| tone(neck, course, fret?));
    Some(sounding.collect())
}

fn tone(neck: &Instrument, course: usize, fret: u8) -> Option<Tone> {
    let midi = neck.sound(course, fret, Capo::NONE)?.midi();
    Some((u8::try_from(course).ok()?, u8::try_from(midi).ok()?))
}

fn hold(neck: &Instrument, chord: Chord) -> Option<Held> {
    let strings = strings(neck, chord, Order::Beginner)?;
    let (first, second) = bass_notes(chord);
    let lowest = *strings.first()?;
    let root = bass_course(neck, &strings, first.class(), None).unwrap_or(lowest);
    let fifth = bass_course(neck, &strings, second.class(), Some(root)).unwrap_or(root);
    Some(Held {
        strings,
        root,
        fifth,
    })
}

/// Where the guitar plays a note as a bass: on a course of the shape, or where a finger can be moved to near the nut. A
/// first note lies as deep as the shape has it; one that takes turns with it below it, or else above.
fn bass_course(
    neck: &Instrument,
    strings: &[Tone],
    class: PitchClass,
    root: Option<Tone>,
) -> Option<Tone> {
    let is = |&(_, midi): &Tone| PitchClass::new(i32::from(midi)) == class;
    let near = |&(_, midi): &Tone| root.is_none_or(|(_, root)| midi.abs_diff(root) < 12);
    let in_shape = strings
        .iter()
        .copied()
        .filter(|&(course, _)| usize::from(course) < BASS_COURSES)
        .filter(is);
    let moved = (0..BASS_COURSES)
        .flat_map(|course| (0..=BASS_FRETS).filter_map(move |fret| tone(neck, course, fret)))
        .filter(is);
    let deepest = |tone: &Tone| tone.1;
    let held = in_shape.min_by_key(deepest);
    match root {
        None => held.or(moved.min_by_key(deepest)),
        Some((_, root)) => moved
            .chain(held)
            .filter(near)
            .min_by_key(|&(_, midi)| (midi > root, midi.abs_diff(root))),
    }
}

/// The two notes that a bass plays in turn under a chord: root and fifth; under a slash the bass and the fifth, or the
/// root where the bass is the fifth. A chord without a fifth, or over a bass of its own, stays on the one note.
pub(super) fn bass_notes(chord: Chord) -> (NoteName, NoteName) {
    let first = chord.lowest();
    let fifth = fifth(chord);
    let foreign = chord
        .bass
        .is_some_and(|bass| !chord.tones().any(|(_, name)| name.class() == bass.class()));
    let second = match fifth {
        _ if foreign => first,
        Some(fifth) if fifth.class() != first.class() => fifth,
        Some(_) => chord.root,
        None => first,
    };
    (first, second)
}

/// The fifth of a chord, altered or not.
pub(super) fn fifth(chord: Chord) -> Option<NoteName> {
    tone_of(
        chord,
        [Degree::Fifth, Degree::FlatFifth, Degree::SharpFifth],
    )
}

/// The third of a chord.
pub(super) fn third(chord: Chord) -> Option<NoteName> {
    tone_of(
        chord,
        [Degree::MajorThird, Degree::MinorThird, Degree::Fourth],
    )
}

fn tone_of(chord: Chord, wanted: [Degree; 3]) -> Option<NoteName> {
    let mut wanted = wanted
        .into_iter()
        .filter(|&degree| chord.quality.has(degree));
    wanted.next().map(|degree| chord.root + degree.interval())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::Key;

    fn chord(text: &str) -> Chord {
        text.parse().unwrap()
    }

    #[test]
    fn the_guitar_has_its_bass_notes_where_players_have_them() {
        let mut voicings = Voicings::default();
        let mut both = |text| {
            let key: Key = "C".parse().unwrap();
            let held = voicings.guitar(chord(text)).unwrap();
            let name = |(course, midi): Tone| format!("{}@{course}", key.spell_midi(midi.into()));
            format!("{} {}", name(held.root), name(held.fifth))
        };
        // Common practice: the fifth a fourth below where there is a string for it, on G and E above.
        assert_eq!(both("C"), "C3@1 G2@0");
        assert_eq!(both("D"), "D3@2 A2@1");
        assert_eq!(both("A"), "A2@1 E2@0");
        assert_eq!(both("Bm"), "B2@1 F#2@0");
        assert_eq!(both("G"), "G2@0 D3@2");
        assert_eq!(both("Em"), "E2@0 B2@1");
        // The shape of this one has no root in the bass; a finger finds it.
        assert_eq!(both("G7"), "G2@0 D3@2");
        assert_eq!(both("D/F#"), "F#2@0 A2@1");
    }

    #[test]
    fn a_chuck_leaves_the_bass_strings_alone() {
        let mut voicings = Voicings::default();
        let courses = |strings: &[Tone]| strings.iter().map(|tone| tone.0).collect::<Vec<_>>();
        let g = voicings.guitar(chord("G")).unwrap();
        assert_eq!(courses(g.upper()), [2, 3, 4, 5]);
        assert_eq!(courses(g.above_bass()), [1, 2, 3, 4, 5]);
        let d = voicings.guitar(chord("D")).unwrap();
        assert_eq!(courses(d.upper()), [2, 3, 4, 5]);
        assert_eq!(courses(d.above_bass()), [3, 4, 5]);
    }

    #[test]
    fn a_chop_is_the_movable_shape_of_the_trade() {
        // The trade sheet, common practice: "C 5-2-3-3; D 7-4-5-5"; the bass after a slash is another player's.
        let mut voicings = Voicings::default();
        let mut midi = |text| -> Vec<u8> {
            voicings
                .chop(chord(text))
                .iter()
                .map(|tone| tone.1)
                .collect()
        };
        assert_eq!(midi("C"), [60, 64, 72, 79]);
        assert_eq!(midi("D/F#"), [62, 66, 74, 81]);
    }
}
