//! What a seat plays for a tune in a key: what sounds, what the hand makes, what stands on its page.

use crate::frets::{Instrument, Setup, Shape};
use crate::theory::{Chord, Key, Transposition};

use super::hands::AllHands;
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
    /// The instrument as it is tuned for the key; the capo is not on it.
    pub instrument: Option<Instrument>,
    /// How an instrument that is tuned anew for a key is set up.
    pub setup: Option<Setup>,
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
        Self::by(seat, key, chords, &AllHands::default())
    }

    /// The same with hands that remember what was found out before.
    pub(super) fn by(seat: &Seat, key: Key, chords: &[(Chord, f32)], all_hands: &AllHands) -> Self {
        let (mut capo, mut held_key) = (0, key);
        let (mut hands, mut setup) = (None, None);
        if let Some((tuned, habit, set_up)) = seat.set_up(key) {
            let on = all_hands.on(&tuned);
            let advice = on.capo_advice(habit, seat.known.as_ref(), key, chords);
            if let Some(advice) = advice.first() {
                (capo, held_key) = (advice.fret, advice.shapes);
            }
            (hands, setup) = (Some(on), set_up);
        }
        let down = Transposition::between(key, held_key);
        let up = seat.reads.written(key);
        let line = |&(sounding, _): &(Chord, f32)| {
            let shape = { hands.as_ref() }.and_then(|hands| hands.shape(capo, sounding));
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
            instrument: hands.map(|hands| hands.instrument().clone()),
            setup,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::Instrument;

    #[test]
    fn a_banjo_plays_the_shapes_of_the_tuning_that_the_key_asks_for() {
        // The sheet of trade facts: D from double C, capo 2.
        let chords = ["D", "G", "A"].map(|chord| (chord.parse().unwrap(), 0.3));
        let banjo = Seat::playing(Instrument::by_id("banjo").unwrap());
        let sheet = Sheet::of(&banjo, "D".parse().unwrap(), &chords);
        assert_eq!((sheet.capo, sheet.shapes.to_string()), (2, "C".to_owned()));
        assert_eq!(sheet.setup.unwrap().tuning.unwrap().id, "double-c");
        let open = sheet.instrument.unwrap().courses[3].open;
        assert_eq!(open.to_string(), "C4");
        assert_eq!(sheet.lines[0].held.to_string(), "C");
    }

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
