//! How hard a version of a melody is, and how much of it rings.
//!
//! The measure counts what the hands do, in movements: a finger set down is one (several at once count a little more than
//! their number, as in a chord shape), and all else is put beside that by common practice. It compares versions of one
//! tune at one speed.

use super::double_stop::DoubleStop;
use super::drone::{Choice, Sounding};
use super::effort::FINGERS;
use super::shape::Finger;
use super::tab::Place;

/// What a version asks of the hands.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Ease {
    /// Movements for each quarter note.
    pub effort: f32,
    /// The part of the sounding time in which two courses sound: 0 to 1.
    pub ringing: f32,
}

/// The little finger, over and above any other.
const LITTLE: f32 = 0.5;
/// The hand moves along the neck.
const SHIFT: f32 = 2.0;
/// The pick goes to another course.
const CROSSING: f32 = 0.3;
/// The pick strikes two courses at once.
const TWO_COURSES: f32 = 0.25;
/// The pick begins or ends to strike two courses, or finds the other one on the other side of the melody.
const TURNING: f32 = 0.25;
/// What holding two notes takes beside setting them down, as a part of the effort of the shape.
const HOLDING: f32 = 0.2;

/// The fingers that hold a note: course, fret and finger of each.
type Held = [Option<(usize, u8, Finger)>; 2];

fn held(place: Place, stop: Option<&DoubleStop>) -> Held {
    let melody = stop.map_or(place.finger, |stop| stop.melody_finger);
    [
        melody.map(|finger| (place.course, place.fret, finger)),
        stop.and_then(|stop| stop.finger.map(|finger| (stop.course, stop.fret, finger))),
    ]
}

/// What a version asks. The lists have an entry for each note of the melody; where one is shorter, the notes are plain.
pub fn ease(melody: &[Sounding], drones: &[Choice], stops: &[Option<DoubleStop>]) -> Ease {
    let (mut effort, mut quarters, mut rings) = (0.0, 0.0, 0.0);
    let mut before: Option<(Place, Held)> = None;
    let mut side = None;
    for (index, note) in melody.iter().enumerate() {
        quarters += note.quarters;
        let Some(place) = note.place else {
            continue;
        };
        let stop = stops.get(index).and_then(Option::as_ref);
        let drone = drones.get(index).and_then(|choice| choice.drone);
        let other = stop
            .map(|stop| stop.course)
            .or(drone.map(|drone| drone.course));
        let holds = held(place, stop);
        let down = |finger: &&(usize, u8, Finger)| {
            before.is_none_or(|(_, held)| !held.iter().flatten().any(|other| other == *finger))
        };
        let set: Vec<_> = holds.iter().flatten().filter(down).collect();
        effort += FINGERS[set.len()];
        effort += LITTLE
            * set
                .iter()
                .map(|held| f32::from(u8::from(held.2 == Finger::Little)))
                .sum::<f32>();
        effort += stop.map_or(0.0, |stop| HOLDING * stop.effort);
        if let Some((played, _)) = before {
            effort += if played.position == place.position {
                0.0
            } else {
                SHIFT
            };
            effort += if played.course == place.course {
                0.0
            } else {
                CROSSING
            };
        }
        let now = other.map(|other| other > place.course);
        if before.is_some() && now != side {
            effort += TURNING;
        }
        side = now;
        if other.is_some() {
            effort += TWO_COURSES;
            rings += note.quarters;
        }
        before = Some((place, holds));
    }
    if quarters <= 0.0 {
        return Ease::default();
    }
    Ease {
        effort: effort / quarters,
        ringing: rings / quarters,
    }
}
