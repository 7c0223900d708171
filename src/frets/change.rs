//! How hard it is to go from one chord shape to the next.

use super::effort::FINGERS;
use super::instrument::Instrument;
use super::shape::{Finger, Shape};

/// A finger that moves so far along the neck counts as much as one more finger, in mm.
const FAR_MM: f64 = 60.0;
/// A finger that is only lifted.
const LIFTED: f32 = 0.3;

/// The effort of a change: fingers that come down where they were not, as many together as in a chord shape, how far those
/// move that were down already, and what is lifted. Of no unit; for ranking the changes of one tune (common practice: what
/// keeps a finger is easy, what moves all of them is hard).
pub fn change_effort(instrument: &Instrument, from: &Shape, to: &Shape) -> f32 {
    let (before, after) = (tips(from), tips(to));
    let (mut set, mut effort) = (0, 0.0);
    for (old, new) in before.into_iter().zip(after) {
        match (old, new) {
            (Some(old), Some(new)) if old == new => {}
            (Some((_, old)), Some((_, new))) => {
                set += 1;
                let along = (instrument.fret_mm(old) - instrument.fret_mm(new)).abs();
                // A ratio: f32 is exact enough.
                #[allow(clippy::cast_possible_truncation)]
                let far = (along / FAR_MM) as f32;
                effort += far;
            }
            (None, Some(_)) => set += 1,
            (Some(_), None) => effort += LIFTED,
            (None, None) => {}
        }
    }
    effort + FINGERS[set]
}

/// Where the tip of each finger is: course and fret.
fn tips(shape: &Shape) -> [Option<(usize, u8)>; 4] {
    Finger::ALL.map(|finger| {
        let course = shape.fingers.iter().position(|&on| on == Some(finger))?;
        Some((course, shape.frets.get(course).copied().flatten()?))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::{Capo, Order, shapes};

    #[test]
    fn a_change_that_keeps_a_finger_is_easier_than_one_that_moves_them_all() {
        let mandolin = Instrument::mandolin();
        let shape = |chord: &str| {
            let chord = chord.parse().unwrap();
            shapes(&mandolin, Capo::NONE, chord, Order::Beginner, 1).remove(0)
        };
        let effort = |from, to| change_effort(&mandolin, &shape(from), &shape(to));
        assert!(effort("G", "G") < 1e-6);
        // G 0023 to Em 0220 keeps no more than a finger; to B 4122 everything moves.
        assert!(effort("G", "Em") < effort("G", "B"));
        assert!(effort("G", "C") < effort("C", "F"));
    }
}
