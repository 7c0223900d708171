//! Double stops: a second note under or over the melody, stopped on the neighbouring course.
//!
//! Beside a tone of the chord only its other tones come, a third, a sixth or a fifth away, so that the harmony stays what
//! it is: A over an A chord gets C♯ or E and never F♯ (common practice). Beside a passing note there may be a third or
//! sixth from the key that rubs with nothing. Unisons and octaves come where they are asked for. What no hand can hold, or
//! not at that speed, is left out, and so is a fifth stopped on one fret, for which two fingertips crowd (common practice);
//! the melody's own note stays as it is. Each finger keeps to the frets that it owns in the position.

use crate::theory::{Chord, PitchClass};

use super::cheapest::cheapest;
use super::drone::Sounding;
use super::effort::Weights;
use super::hand::{Reach, best_grip};
use super::instrument::{Capo, Instrument, MAX_COURSES};
use super::shape::{Finger, Order};
use super::tab::Place;

/// How far apart the two notes are, in steps of the scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Apart {
    Unison,
    Third,
    Fifth,
    Sixth,
    Octave,
}

/// Two notes at once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DoubleStop {
    /// The course of the second note, counted from 0.
    pub course: usize,
    /// Its fret, counted from the capo: 0 is open.
    pub fret: u8,
    /// Its MIDI key number.
    pub midi: i32,
    /// How far it is from the melody.
    pub apart: Apart,
    /// The finger on the melody's own note.
    pub melody_finger: Option<Finger>,
    /// The finger on the second note.
    pub finger: Option<Finger>,
    /// The effort of holding it, as for a chord shape of two notes; of no unit.
    pub effort: f32,
}

/// Which double stops are wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stops {
    /// Unisons too.
    pub unisons: bool,
    /// Octaves too.
    pub octaves: bool,
    /// The most effort for each quarter note there is time for: where it would be more, the plain note stays.
    pub most: f32,
}

impl Default for Stops {
    /// Thirds, fifths and sixths, in eighths where the hand hardly moves.
    fn default() -> Self {
        Self {
            unisons: false,
            octaves: false,
            most: 9.0,
        }
    }
}

/// A plain note where a double stop could be, through a quarter note: on a stroke down, and on one up, between the beats.
const DRY: f32 = 4.5;
const DRY_UP: f32 = 2.5;
/// A tone of the scale where a tone of the chord could be, through a quarter note.
const OF_SCALE: f32 = 1.5;
/// A fifth, which sounds hollow where a third or sixth could be, through a quarter note.
const HOLLOW: f32 = 0.75;
/// The second note above the melody, which is then no longer on top, through a quarter note.
const OVER: f32 = 1.0;
/// From one pair of courses or kind of interval to another, and from plain to double.
const CHANGE: f32 = 0.6;
/// Each fret that the second note's finger jumps from one double stop to the next.
const JUMP: f32 = 0.3;
/// The finger on the melody is another than it would be alone.
const REFINGERED: f32 = 0.5;
/// The little finger holds the second note.
const LITTLE: f32 = 1.0;
/// A note that stays down from one double stop to the next gets another finger.
const RELAID: f32 = 2.0;

/// The double stops of a melody, chosen over all of it; `None` where the plain note stays.
///
/// ```
/// use fourcourse::frets::{Apart, Capo, Instrument, Sounding, Stops, Tone, double_stops, place};
/// let mandolin = Instrument::mandolin();
/// let tone = Tone { midi: 71, quarters: 1.0, after_rest: true, up: false };
/// let note = Sounding {
///     midi: 71,
///     place: place(&mandolin, Capo::NONE, &[tone], 1)[0],
///     quarters: 1.0,
///     fast: false,
///     up: false,
///     chord: Some("G".parse().unwrap()),
///     key: "G".parse().unwrap(),
/// };
/// // B over G: the open D under it is a sixth.
/// let stop = double_stops(&mandolin, Capo::NONE, &[note], Stops::default())[0].unwrap();
/// assert_eq!((stop.course, stop.fret, stop.apart), (1, 0, Apart::Sixth));
/// ```
pub fn double_stops(
    instrument: &Instrument,
    capo: Capo,
    melody: &[Sounding],
    stops: Stops,
) -> Vec<Option<DoubleStop>> {
    let neck = Neck {
        instrument,
        capo,
        reach: Reach::of(instrument, capo),
        stops,
    };
    let last = melody.len().saturating_sub(1);
    let options = |(index, note): (usize, &Sounding)| {
        let found = neck.options(note, index == last).into_iter().map(Some);
        std::iter::once(None).chain(found).collect()
    };
    let columns: Vec<Vec<Option<DoubleStop>>> = melody.iter().enumerate().map(options).collect();
    let own = |index: usize, stop: &Option<DoubleStop>| neck.cost(&melody[index], stop.as_ref());
    let between = |index: usize, before: &Option<_>, after: &Option<_>| {
        let (played, place) = (melody[index - 1].place, melody[index].place);
        change((played, before.as_ref()), (place, after.as_ref()))
    };
    let chosen = cheapest(&columns, own, between);
    columns
        .iter()
        .zip(chosen)
        .map(|(options, at)| options[at])
        .collect()
}

fn change(
    (played, before): (Option<Place>, Option<&DoubleStop>),
    (place, after): (Option<Place>, Option<&DoubleStop>),
) -> f32 {
    let course = |place: Option<Place>| place.map(|place| place.course);
    match (before, after) {
        (None, None) => 0.0,
        (Some(one), Some(other)) => {
            let same_pair = course(played) == course(place) && one.course == other.course;
            let same = same_pair && one.apart == other.apart;
            JUMP * f32::from(one.fret.abs_diff(other.fret))
                + if same { 0.0 } else { CHANGE }
                + RELAID * relaid((played, one), (place, other))
        }
        _ => CHANGE,
    }
}

/// How many notes of a double stop are held on into another one by another finger.
fn relaid(
    (played, one): (Option<Place>, &DoubleStop),
    (place, other): (Option<Place>, &DoubleStop),
) -> f32 {
    let notes = |place: Option<Place>, stop: &DoubleStop| {
        let melody = place.map(|place| ((place.course, place.fret), stop.melody_finger));
        [melody, Some(((stop.course, stop.fret), stop.finger))]
    };
    let (before, after) = (notes(played, one), notes(place, other));
    let relaid = |&(at, finger): &(_, Option<Finger>)| {
        let held = before.iter().flatten().find(|(was, _)| *was == at);
        held.is_some_and(|&(_, was)| was != finger)
    };
    let count = after.iter().flatten().filter(|note| relaid(note)).count();
    f32::from(u8::try_from(count).unwrap_or(u8::MAX))
}

struct Neck<'a> {
    instrument: &'a Instrument,
    capo: Capo,
    reach: Reach,
    stops: Stops,
}

impl Neck<'_> {
    fn cost(&self, note: &Sounding, stop: Option<&DoubleStop>) -> f32 {
        let Some(stop) = stop else {
            return note.quarters * if note.up { DRY_UP } else { DRY };
        };
        let in_chord = note.chord.is_some_and(|chord| has(chord, stop.midi));
        let scale = if in_chord || note.chord.is_none() {
            0.0
        } else {
            OF_SCALE
        };
        let over = if stop.midi > note.midi { OVER } else { 0.0 };
        let hollow = if stop.apart == Apart::Fifth {
            HOLLOW
        } else {
            0.0
        };
        let alone = note.place.and_then(|place| place.finger);
        let refingered = if alone == stop.melody_finger {
            0.0
        } else {
            REFINGERED
        };
        let little = if stop.finger == Some(Finger::Little) {
            LITTLE
        } else {
            0.0
        };
        note.quarters * (scale + over + hollow) + refingered + little + stop.effort
    }

    /// The double stops that a note can have at its speed; the `last` one ends the tune.
    fn options(&self, note: &Sounding, last: bool) -> Vec<DoubleStop> {
        let Some(place) = note.place.filter(|_| !note.fast) else {
            return vec![];
        };
        let beside = [place.course.checked_sub(1), place.course.checked_add(1)];
        let mut found = Vec::new();
        for course in beside.into_iter().flatten() {
            let Some(strung) = self.instrument.courses.get(course) else {
                continue;
            };
            // A short string is there to ring; elsewhere the hand stays where the melody has it.
            let owned = self.reach.frets_a_finger.max(1);
            let highest = place.position.saturating_add(3 * owned);
            let highest = if strung.starts_at > 0 { 0 } else { highest };
            let reached = std::iter::once(0).chain(place.position..=highest);
            for fret in reached.filter(|&fret| fret <= self.instrument.last_fret(self.capo)) {
                let Some(midi) = self.instrument.midi(course, fret, self.capo) else {
                    continue;
                };
                let Some(apart) = self.apart(note.midi, midi) else {
                    continue;
                };
                if !fits(note, (midi, apart), last) {
                    continue;
                }
                found.extend(self.held(place, (course, fret, midi), apart));
            }
        }
        found.retain(|stop| stop.effort <= self.stops.most * note.quarters);
        found
    }

    fn apart(&self, melody: i32, other: i32) -> Option<Apart> {
        match (melody - other).abs() {
            0 if self.stops.unisons => Some(Apart::Unison),
            3 | 4 => Some(Apart::Third),
            7 => Some(Apart::Fifth),
            8 | 9 => Some(Apart::Sixth),
            12 if self.stops.octaves => Some(Apart::Octave),
            _ => None,
        }
    }

    /// The double stop with its fingers, where a hand can hold it, and with other ones where that is a matter of taste.
    fn held(
        &self,
        place: Place,
        (course, fret, midi): (usize, u8, i32),
        apart: Apart,
    ) -> Vec<DoubleStop> {
        // Between the two lies nothing, so that the lower of them can stand first.
        let low = place.course.min(course);
        let mut frets = [0; 2];
        frets[place.course - low] = place.fret;
        frets[course - low] = fret;
        let crowded = apart == Apart::Fifth && fret > 0 && fret == place.fret;
        if low + 1 >= MAX_COURSES || crowded {
            return vec![];
        }
        let Some(grip) = best_grip(&frets, &self.reach, Weights::of(Order::Beginner)) else {
            return vec![];
        };
        let mut fingers = self.fingers(place, (course, fret));
        if fingers.is_empty() {
            fingers.push((grip.fingers[place.course - low], grip.fingers[course - low]));
        }
        let stop = |(melody_finger, finger)| DoubleStop {
            course,
            fret,
            midi,
            apart,
            melody_finger,
            finger,
            effort: grip.effort,
        };
        fingers.into_iter().map(stop).collect()
    }

    /// The fingers on the melody and on a second note: those that own their frets. Where both have the same owner, either
    /// the higher note takes the next finger or the lower one the finger before.
    fn fingers(
        &self,
        place: Place,
        (course, fret): (usize, u8),
    ) -> Vec<(Option<Finger>, Option<Finger>)> {
        let owner = (fret > 0).then(|| self.reach.owner(place.position, fret));
        let (Some(alone), Some(second)) = (place.finger, owner) else {
            return vec![(place.finger, owner)];
        };
        let beside = |finger: Finger, up: bool| {
            let next = (finger.number() - 1).checked_add_signed(if up { 1 } else { -1 })?;
            Finger::ALL.get(usize::from(next)).copied()
        };
        let higher = (place.fret, place.course) < (fret, course);
        let pairs = match alone == second {
            true => [
                beside(second, higher).map(|second| (alone, second)),
                beside(alone, !higher).map(|melody| (melody, second)),
            ],
            false => [Some((alone, second)), None],
        };
        let held = |&(melody, second): &(Finger, Finger)| {
            let at = (melody, place.course, place.fret);
            self.reach.together(at, (second, course, fret))
        };
        let held = pairs.into_iter().flatten().filter(held);
        held.map(|(melody, second)| (Some(melody), Some(second)))
            .collect()
    }
}

fn has(chord: Chord, midi: i32) -> bool {
    chord
        .tones()
        .any(|(_, name)| name.class() == PitchClass::new(midi))
}

/// Whether a second note goes with the melody's. Beside a tone of the chord, and under the end of a tune, that is a tone of
/// the chord; else also one of the scale that rubs with none of them. A fifth is always one within the chord. A tune
/// without chords ends on that of its key.
fn fits(note: &Sounding, (midi, apart): (i32, Apart), last: bool) -> bool {
    let of_key = || note.key.called_chords().first().map(|&(_, chord)| chord);
    let chord = note.chord.or_else(|| last.then(of_key).flatten());
    let in_scale = || {
        let mut scale = note.key.scale().into_iter();
        scale.any(|name| name.class() == PitchClass::new(midi))
    };
    let Some(chord) = chord else {
        return in_scale() && apart != Apart::Fifth;
    };
    if last || apart == Apart::Fifth || has(chord, note.midi) {
        let of_chord = has(chord, note.midi) || apart != Apart::Fifth;
        return of_chord && has(chord, midi);
    }
    let rubs = || [-1, 1].into_iter().any(|step| has(chord, midi + step));
    has(chord, midi) || (in_scale() && !rubs())
}
