//! What a seat plays for a tune in a key: what sounds, what the hand makes, what stands on its page.

use crate::frets::{Capo, Order, Shape, shapes};
use crate::theory::{Chord, Key, Transposition};

use super::seat::Seat;

/// A chord of the tune in the terms of a seat.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// As it sounds.
    pub sounding: Chord,
    /// The chord whose shape the hand makes behind the capo; the sounding one without.
    pub held: Chord,
    /// As it stands on a transposed page; the sounding one at concert pitch.
    pub written: Chord,
    /// How it is held, mirrored for a left-handed player; `None` without a fingerboard or where no hand can hold it.
    pub shape: Option<Shape>,
}

/// What a seat needs for a tune in a key.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The fret of the capo; 0 is none.
    pub capo: u8,
    /// The key whose shapes the hand makes.
    pub shapes: Key,
    /// The key on the page.
    pub written: Key,
    /// The tune's chords, in the order that they were given.
    pub lines: Vec<Line>,
}

impl Sheet {
    /// The sheet of a seat for chords in a key, each with the share of the tune that it holds.
    ///
    /// ```
    /// use fourcourse::{circle::{Seat, Sheet}, frets::Instrument, theory::Reads};
    /// let chords = ["Bb", "Eb", "F"].map(|chord| (chord.parse().unwrap(), 0.3));
    /// let key = "Bb".parse().unwrap();
    /// let guitar = Sheet::of(&Seat::playing(Instrument::by_id("guitar").unwrap()), key, &chords);
    /// assert_eq!((guitar.capo, guitar.lines[0].held.to_string()), (3, "G".to_owned()));
    /// let clarinet = Sheet::of(&Seat::reading(Reads::BFlat), key, &chords);
    /// assert_eq!(clarinet.lines[1].written.to_string(), "F");
    /// ```
    pub fn of(seat: &Seat, key: Key, chords: &[(Chord, f32)]) -> Self {
        let advice = seat.capo_advice(key, chords).into_iter().next();
        let (capo, held_key) = advice.map_or((0, key), |advice| (advice.fret, advice.shapes));
        let down = Transposition::between(key, held_key);
        let up = seat.reads.written(key);
        let line = |&(sounding, _): &(Chord, f32)| {
            let shape = seat.instrument.as_ref().and_then(|instrument| {
                shapes(instrument, Capo::at(capo), sounding, Order::Beginner, 1).pop()
            });
            Line {
                sounding,
                held: down.chord(sounding),
                written: up.chord(sounding),
                shape: match seat.left_handed {
                    true => shape.map(Shape::mirrored),
                    false => shape,
                },
            }
        };
        Self {
            capo,
            shapes: held_key,
            written: seat.reads.written_key(key),
            lines: chords.iter().map(line).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::Instrument;

    #[test]
    fn a_left_handed_sheet_is_a_mirror_of_the_same_chords() {
        let chords = ["G", "C", "D"].map(|chord| (chord.parse().unwrap(), 0.3));
        let right = Seat::playing(Instrument::mandolin());
        let left = Seat {
            left_handed: true,
            ..right.clone()
        };
        let of = |seat: &Seat| Sheet::of(seat, "G".parse().unwrap(), &chords).lines;
        for (right, left) in of(&right).into_iter().zip(of(&left)) {
            assert_eq!(left.sounding, right.sounding);
            assert_eq!(left.shape, right.shape.map(Shape::mirrored));
        }
    }
}
