//! How hard chords are on an instrument, and where its capo helps.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use crate::chart::Tune;
use crate::frets::{Capo, Instrument, Order, Shape, families, family, shapes};
use crate::theory::{Chord, Key, Mode, Transposition};

use super::best_key::{RankedKey, rank};
use super::known::Known;
use super::seat::{CapoHabit, Seat};
use super::sheet::Sheet;

/// An instrument that remembers how hard its chords are.
///
/// The effort of a chord is the [difficulty](crate::frets::Shape::difficulty) of its first shape without a capo, in
/// fingers; a capo moves the shape, and that the frets lie closer there is left out of account.
#[derive(Debug)]
pub struct Hands {
    instrument: Instrument,
    efforts: RefCell<HashMap<Chord, f32>>,
    /// The first shape of a sounding chord behind a capo.
    shapes: RefCell<HashMap<(u8, Chord), Option<Shape>>>,
}

/// What a chord counts that no hand can hold, in fingers: more than any shape.
const NO_SHAPE: f32 = 12.0;
/// What a shape counts that is not known yet, on top of its effort.
const UNKNOWN: f32 = 5.0;
/// How much harder, in fingers, an unknown chord is to learn than another so that it matters.
const HARDER: f32 = 0.5;
/// What it counts to put a capo on, and each fret that it lies up the neck.
const CAPO_ON: f32 = 0.3;
const CAPO_FRET: f32 = 0.1;
/// Each place in the list of [families] behind the first: who uses a capo thinks in G and C shapes first
/// (common practice). A key of no family counts as one more place.
const FAMILY: f32 = 0.15;

/// A capo position for a seat, and what it comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct CapoAdvice {
    /// The fret of the capo; 0 is none.
    pub fret: u8,
    /// The key whose shapes the hand makes.
    pub shapes: Key,
    /// How many of the tune's chords are then known shapes.
    pub known: usize,
    /// The hardest chord, as it is held, and how hard it is in fingers.
    pub hardest: Option<(Chord, f32)>,
    /// Effort of the shapes by the time that they hold, what is unknown and the capo counted, in fingers.
    pub effort: f32,
}

impl Hands {
    /// Hands on an instrument.
    pub fn new(instrument: Instrument) -> Self {
        Self {
            instrument,
            efforts: RefCell::default(),
            shapes: RefCell::default(),
        }
    }

    /// The instrument.
    pub fn instrument(&self) -> &Instrument {
        &self.instrument
    }

    /// How hard a chord is without a capo, in fingers; a slash bass is left to others.
    pub fn effort(&self, chord: Chord) -> f32 {
        let chord = Chord::new(
            Key::spelled_for_players(chord.root.class(), Mode::Major).tonic,
            chord.quality,
        );
        if let Some(&effort) = self.efforts.borrow().get(&chord) {
            return effort;
        }
        let easiest = shapes(&self.instrument, Capo::NONE, chord, Order::Beginner, 1);
        let effort = easiest.first().map_or(NO_SHAPE, Shape::difficulty);
        self.efforts.borrow_mut().insert(chord, effort);
        effort
    }

    /// The easiest shape of a sounding chord behind a capo.
    pub(super) fn shape(&self, fret: u8, chord: Chord) -> Option<Shape> {
        let find = || shapes(&self.instrument, Capo::at(fret), chord, Order::Beginner, 1).pop();
        let mut shapes = self.shapes.borrow_mut();
        shapes.entry((fret, chord)).or_insert_with(find).clone()
    }

    /// Where the capo of a seat may go for chords in a key, each with the share of the tune that it holds; the best first:
    /// with the fewest chords that are unknown, of these where the unknown ones are easier to learn, and then by effort.
    /// There is always at least one position.
    pub fn capo_advice(
        &self,
        habit: CapoHabit,
        known: Option<&Known>,
        key: Key,
        chords: &[(Chord, f32)],
    ) -> Vec<CapoAdvice> {
        let mut advice: Vec<_> = habit
            .frets()
            .map(|fret| self.behind_capo((fret, habit), known, key, chords))
            .collect();
        let order = |(advice, learning): &(CapoAdvice, f32)| {
            let steps = (learning / HARDER).round();
            (chords.len() - advice.known, steps, advice.effort)
        };
        advice.sort_by(|a, b| {
            let (a, b) = (order(a), order(b));
            a.0.cmp(&b.0)
                .then(a.1.total_cmp(&b.1))
                .then(a.2.total_cmp(&b.2))
        });
        advice.into_iter().map(|(advice, _)| advice).collect()
    }

    /// The position, and how hard all its unknown chords are together, in fingers.
    fn behind_capo(
        &self,
        (fret, habit): (u8, CapoHabit),
        known: Option<&Known>,
        key: Key,
        chords: &[(Chord, f32)],
    ) -> (CapoAdvice, f32) {
        let shapes = key.down(i32::from(fret));
        let down = Transposition::between(key, shapes);
        let mut effort = match (fret, habit) {
            (_, CapoHabit::Never | CapoHabit::Always(_)) => 0.0,
            (0, _) => family_effort(shapes),
            (fret, _) => family_effort(shapes) + CAPO_ON + CAPO_FRET * f32::from(fret),
        };
        let mut hardest: Option<(Chord, f32)> = None;
        let (mut count, mut learning) = (0, 0.0);
        for &(chord, share) in chords {
            let held = down.chord(chord);
            let hard = self.effort(held);
            let knows = known.is_none_or(|known| known.knows(held));
            count += usize::from(knows);
            effort += share * hard;
            if !knows {
                learning += hard;
                effort += share * UNKNOWN;
            }
            if hardest.is_none_or(|(_, most)| hard > most) {
                hardest = Some((held, hard));
            }
        }
        let advice = CapoAdvice {
            fret,
            shapes,
            known: count,
            hardest,
            effort,
        };
        (advice, learning)
    }
}

/// Hands on every instrument and tuning that comes up: seats with the same share what is found out about its chords, and
/// whoever keeps this does not have it found out again.
#[derive(Debug, Default)]
pub struct AllHands(RefCell<Vec<Rc<Hands>>>);

/// More instruments and tunings than that are not remembered.
const MOST_HANDS: usize = 48;

impl AllHands {
    pub(super) fn on(&self, instrument: &Instrument) -> Rc<Hands> {
        let mut all = self.0.borrow_mut();
        let same = |hands: &&Rc<Hands>| hands.instrument() == instrument;
        if let Some(there) = all.iter().find(same) {
            return there.clone();
        }
        if all.len() >= MOST_HANDS {
            all.clear();
        }
        let hands = Rc::new(Hands::new(instrument.clone()));
        all.push(hands.clone());
        hands
    }

    /// The twelve keys for a tune, as [`best_keys`](super::best_keys) ranks them.
    pub fn best_keys(&self, tune: &Tune, seats: &[Seat]) -> Vec<RankedKey> {
        rank(tune, seats, self)
    }

    /// The sheet of a seat, as [`Sheet::of`] writes it.
    pub fn sheet(&self, seat: &Seat, key: Key, chords: &[(Chord, f32)]) -> Sheet {
        Sheet::by(seat, key, chords, self)
    }
}

/// How far a key is from the shapes that one thinks in behind a capo.
fn family_effort(shapes: Key) -> f32 {
    let place = family(shapes).unwrap_or(families(shapes.mode).len());
    let place = u8::try_from(place).unwrap_or(u8::MAX);
    FAMILY * f32::from(place)
}

impl Seat {
    /// Capo advice for this seat; see [`Hands::capo_advice`]. Empty without a fingerboard.
    pub fn capo_advice(&self, key: Key, chords: &[(Chord, f32)]) -> Vec<CapoAdvice> {
        self.instrument
            .as_ref()
            .map_or_else(Vec::new, |instrument| {
                let hands = Hands::new(instrument.clone());
                hands.capo_advice(self.capo, self.known.as_ref(), key, chords)
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn advice(seat: &Seat, key: &str, chords: &str) -> Vec<(u8, String)> {
        let chords: Vec<_> = chords
            .split(' ')
            .map(|c| (c.parse().unwrap(), 0.25))
            .collect();
        let advice = seat.capo_advice(key.parse().unwrap(), &chords);
        advice
            .iter()
            .map(|a| (a.fret, a.shapes.to_string()))
            .collect()
    }

    #[test]
    fn a_guitar_plays_a_flat_key_behind_a_capo() {
        let guitar = Seat::playing(Instrument::by_id("guitar").unwrap());
        // The sheet of trade facts: G shapes at 3 are B flat.
        assert_eq!(advice(&guitar, "Bb", "Bb Eb F Gm")[0], (3, "G".to_owned()));
        assert_eq!(advice(&guitar, "G", "G C D Em")[0], (0, "G".to_owned()));
    }

    #[test]
    fn known_shapes_go_before_easy_ones() {
        let guitar = Seat {
            known: Some(Known::of(["D", "G", "A"].map(|c| c.parse().unwrap()))),
            ..Seat::playing(Instrument::by_id("guitar").unwrap())
        };
        assert_eq!(advice(&guitar, "E", "E A B")[0], (2, "D".to_owned()));
    }

    #[test]
    fn of_two_unknown_chords_the_easier_one_is_learnt() {
        // Common practice: A is learnt with the first three chords, F long after them. C shapes at 2 ask for F.
        let guitar = Seat {
            known: Some(Known::of(["G", "C", "D", "Em"].map(|c| c.parse().unwrap()))),
            ..Seat::playing(Instrument::by_id("guitar").unwrap())
        };
        let chords = [("D", 0.3), ("G", 0.2), ("A", 0.5)];
        let chords = chords.map(|(chord, share)| (chord.parse().unwrap(), share));
        let advice = guitar.capo_advice("D".parse().unwrap(), &chords);
        // Within reach of a capo there are G shapes with all of them.
        let unknown: Vec<_> = { advice.iter() }
            .filter(|advice| advice.known == 2)
            .map(|advice| (advice.fret, advice.shapes.to_string()))
            .collect();
        assert_eq!(unknown[0], (0, "D".to_owned()), "{unknown:?}");
    }

    #[test]
    fn a_mandolin_has_the_one_position_without() {
        let mandolin = Seat::playing(Instrument::mandolin());
        assert_eq!(advice(&mandolin, "Bb", "Bb Eb F"), [(0, "Bb".to_owned())]);
    }
}
