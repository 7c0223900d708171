//! Chord cards: a chord's names and its shape on the player's instrument.

use std::collections::HashMap;
use std::rc::Rc;

use crate::chart::ChangeDrill;
use crate::frets::{self, Capo, InChord, Instrument, Order, Shape};
use crate::theory::{Accidentals, Chord, Key, NoteName, NoteStyle, Number, Symbol};

use super::porch::ChangeView;
use super::settings::Settings;
use super::stand::{ChordCard, ChordNames, MissingNote, RingString, ShapeView, Verdict};

/// Shapes that a player may leaf through for one chord.
const SHAPES: usize = 12;

/// What chord cards are made with: an instrument in somebody's hands.
#[derive(Debug)]
pub(super) struct Hands {
    pub(super) instrument: Instrument,
    pub(super) capo: Capo,
    left_handed: bool,
    style: NoteStyle,
    /// Shapes computed so far, by sounding chord.
    shapes: HashMap<Chord, Rc<[Shape]>>,
    /// Which of its shapes the player chose for a chord.
    chosen: HashMap<Chord, usize>,
}

/// Note names for people, as the player has set them.
pub(super) fn style(settings: &Settings) -> NoteStyle {
    NoteStyle {
        naming: settings.naming,
        accidentals: Accidentals::Typographic,
    }
}

/// A key in the player's names: its tonic, and its mode by id.
pub(super) fn key_name(key: Key, settings: &Settings) -> (String, String) {
    let mode = key.mode.id().to_owned();
    (key.tonic.in_style(style(settings)), mode)
}

impl Hands {
    pub(super) fn new(settings: &Settings, capo: u8) -> Self {
        Self::on(settings.instrument(), settings, capo)
    }

    /// The same on any instrument.
    pub(super) fn on(instrument: Instrument, settings: &Settings, capo: u8) -> Self {
        Self::of(instrument, capo, settings.left_handed, style(settings))
    }

    /// Somebody else's hands.
    pub(super) fn of(
        instrument: Instrument,
        capo: u8,
        left_handed: bool,
        style: NoteStyle,
    ) -> Self {
        Self {
            instrument,
            capo: Capo::at(capo),
            left_handed,
            style,
            shapes: HashMap::new(),
            chosen: HashMap::new(),
        }
    }

    /// Other hands on a neck. Where it is the same one, what was chosen for it stays; says whether it is.
    pub(super) fn change_to(&mut self, to: Self) -> bool {
        let same = self.instrument == to.instrument && self.capo == to.capo;
        if same {
            (self.left_handed, self.style) = (to.left_handed, to.style);
        } else {
            *self = to;
        }
        same
    }

    /// The shapes of a sounding chord, easiest first.
    fn shapes(&mut self, chord: Chord) -> Rc<[Shape]> {
        let (instrument, capo) = (&self.instrument, self.capo);
        let compute = || frets::shapes(instrument, capo, chord, Order::Beginner, SHAPES).into();
        self.shapes.entry(chord).or_insert_with(compute).clone()
    }

    /// Another of the shapes of a chord, the first again after the last.
    pub(super) fn next_shape(&mut self, chord: Chord) {
        let count = self.shapes(chord).len().max(1);
        let chosen = self.chosen.entry(chord).or_default();
        *chosen = (*chosen + 1) % count;
    }

    /// The card of a symbol in a key.
    pub(super) fn card(&mut self, symbol: Symbol, tonic: NoteName, names: ChordNames) -> ChordCard {
        let Symbol::Chord(chord) = symbol else {
            return ChordCard {
                name: String::new(),
                other: String::new(),
                played_as: None,
                no_chord: true,
                shape: None,
            };
        };
        let (name, other) = chord_names(chord, tonic, names, self.style);
        let played_as =
            (self.capo.fret > 0).then(|| chord.down(self.capo.fret).in_style(self.style));
        ChordCard {
            name,
            other,
            played_as,
            no_chord: false,
            shape: self.shape(chord),
        }
    }

    fn shape(&mut self, chord: Chord) -> Option<ShapeView> {
        let shapes = self.shapes(chord);
        let chosen = self.chosen.get(&chord).copied().unwrap_or(0);
        let shape = shapes.get(chosen)?;
        Some(self.draw(shape.clone(), (chosen + 1, shapes.len())))
    }

    fn draw(&self, shape: Shape, of: (usize, usize)) -> ShapeView {
        let shape = if self.left_handed {
            shape.mirrored()
        } else {
            shape
        };
        self.drawn(shape, of)
    }

    /// A shape that is mirrored already for a left-handed player.
    pub(super) fn drawn(&self, shape: Shape, of: (usize, usize)) -> ShapeView {
        let (courses, strings) = self.seen();
        ShapeView {
            courses,
            strings,
            fingers: shape
                .fingers
                .iter()
                .map(|finger| finger.map_or(0, frets::Finger::number))
                .collect(),
            barres: shape
                .barres
                .iter()
                .map(|barre| (barre.finger.number(), barre.fret, barre.from, barre.to))
                .collect(),
            first_fret: shape.base_fret,
            missing: MissingNote::in_shape(&shape),
            frets: shape.frets,
            of,
        }
    }

    /// Names of the open courses and how many strings each has, from the left as the player sees them.
    pub(super) fn seen(&self) -> (Vec<String>, Vec<u8>) {
        let mut courses = self.courses();
        let count = |course: &frets::Course| match course.strings {
            frets::Strings::Single => 1,
            frets::Strings::Pair | frets::Strings::OctavePair => 2,
        };
        let mut strings: Vec<u8> = self.instrument.courses.iter().map(count).collect();
        if self.left_handed {
            courses.reverse();
            strings.reverse();
        }
        (courses, strings)
    }

    /// The course that a note lies lowest on, in the player's names, and its fret: one course to strike on and on.
    pub(super) fn lowest_place(&self, note: NoteName) -> Option<(String, u8)> {
        let courses = 0..self.instrument.courses.len();
        let sounds = |course, fret| {
            let sound = self.instrument.sound(course, fret, self.capo);
            sound.is_some_and(|sound| sound.name.class() == note.class())
        };
        let (course, fret) = courses
            .filter_map(|course| Some((course, (0..12).find(|&fret| sounds(course, fret))?)))
            .min_by_key(|&(_, fret)| fret)?;
        Some((self.courses().swap_remove(course), fret))
    }

    /// A change of chords with the shapes of both.
    pub(super) fn change(&mut self, drill: &ChangeDrill) -> ChangeView {
        let shape = |shape: &Shape| self.draw(shape.clone(), (1, 1));
        let shapes = drill.shapes.as_ref();
        ChangeView {
            chords: (
                drill.from.in_style(self.style),
                drill.to.in_style(self.style),
            ),
            shapes: shapes.map(|(from, to)| (shape(from), shape(to))),
            times: drill.times,
        }
    }

    /// Names of the open courses, the capo counted, the first course first.
    pub(super) fn courses(&self) -> Vec<String> {
        let courses = 0..self.instrument.courses.len();
        let names = courses.map(|course| self.instrument.sound(course, 0, self.capo));
        names
            .map(|pitch| pitch.map_or(String::new(), |pitch| pitch.name.in_style(self.style)))
            .collect()
    }

    /// The open strings over a chord; over no chord nobody has to mind them.
    pub(super) fn ring(&self, symbol: Symbol) -> Vec<RingString> {
        let Symbol::Chord(chord) = symbol else {
            return Vec::new();
        };
        let mut ring: Vec<RingString> = frets::ring_in_chord(&self.instrument, self.capo, chord)
            .into_iter()
            .map(|open| RingString {
                name: open.note.name.in_style(self.style),
                string: self.instrument.string_number(open.course),
                verdict: match open.standing {
                    InChord::Fits => Verdict::Ring,
                    InChord::Colour => Verdict::Colour,
                    InChord::Clash { .. } => Verdict::Clash,
                },
            })
            .collect();
        if self.left_handed {
            ring.reverse();
        }
        ring
    }
}

/// Large name and other name of a chord.
pub(super) fn chord_names(
    chord: Chord,
    tonic: NoteName,
    names: ChordNames,
    style: NoteStyle,
) -> (String, String) {
    let letters = chord.in_style(style);
    let number = Number::of(chord, tonic).in_style(style.accidentals);
    match names {
        ChordNames::Letters | ChordNames::Both => (letters, number),
        ChordNames::Numbers => (number, letters),
    }
}
