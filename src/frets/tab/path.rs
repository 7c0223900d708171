//! The best path over the neck for a whole melody.

use crate::frets::cheapest::cheapest;
use crate::frets::hand::Reach;
use crate::frets::instrument::{Capo, Instrument, MAX_COURSES};
use crate::frets::shape::Finger;

use super::cost::{Cost, Lie};
use super::{Place, Tone};

/// How far a finger reaches beyond the fret it owns.
const BEYOND: u8 = 1;

/// Positions that are tried above the highest that a note needs.
const SPARE: u8 = 2;

/// The best place for each note of a melody: the path of least cost over all of it, found by dynamic programming in time
/// linear in the number of notes. `None` is a note that the neck does not have; see [`octave_onto`](super::octave_onto).
///
/// `home` is the position that the hand is to keep to, [`FIRST_POSITION`](super::FIRST_POSITION) or where a player asks
/// for it. It is only left where the notes cannot be reached from there.
///
/// ```
/// use fourcourse::frets::{Capo, FIRST_POSITION, Instrument, Tone, place};
/// let tone = |midi| Tone { midi, quarters: 0.5, after_rest: false, up: false };
/// let scale = [55, 57, 59, 60, 62, 64, 66, 67].map(tone);
/// let places = place(&Instrument::mandolin(), Capo::NONE, &scale, FIRST_POSITION);
/// let frets: Vec<_> = places.iter().flatten().map(|place| (place.course, place.fret)).collect();
/// assert_eq!(frets, [(0, 0), (0, 2), (0, 4), (0, 5), (1, 0), (1, 2), (1, 4), (1, 5)]);
/// ```
pub fn place(instrument: &Instrument, capo: Capo, tones: &[Tone], home: u8) -> Vec<Option<Place>> {
    let reach = Reach::of(instrument, capo);
    let home = home.clamp(1, instrument.last_fret(capo).max(1));
    let neck = Neck {
        instrument,
        capo,
        cost: Cost {
            reach: &reach,
            home,
        },
        tones,
    };
    let stays = neck.path(home, home);
    let misses = |path: &Path| path.parted || path.places.iter().any(Option::is_none);
    if !misses(&stays) {
        return stays.places;
    }
    let (mut low, mut high) = (home, home);
    for tone in tones {
        let positions = neck
            .courses(tone.midi)
            .map(|(_, fret)| neck.positions(fret));
        let nearest = positions.min_by_key(|&(from, to)| distance(home, from, to));
        if let Some((from, to)) = nearest {
            low = low.min(to.max(1));
            high = high.max(from);
        }
    }
    let last = instrument.last_fret(capo).max(1);
    neck.path(
        low.saturating_sub(SPARE).max(1),
        high.saturating_add(SPARE).min(last),
    )
    .places
}

fn distance(home: u8, from: u8, to: u8) -> u8 {
    from.saturating_sub(home).max(home.saturating_sub(to))
}

/// A path, and whether it has a place where no hand gets from one note to the next.
struct Path {
    places: Vec<Option<Place>>,
    parted: bool,
}

struct Neck<'a> {
    instrument: &'a Instrument,
    capo: Capo,
    cost: Cost<'a>,
    tones: &'a [Tone],
}

impl Neck<'_> {
    /// The best path with the hand in positions `low..=high` only.
    fn path(&self, low: u8, high: u8) -> Path {
        /// What it counts to go where no hand gets: dearer than any way round.
        const PARTED: f32 = 1e3;
        let (mut notes, mut columns) = (Vec::new(), Vec::new());
        for (index, tone) in self.tones.iter().enumerate() {
            let places = self.places(index, tone.midi, low, high);
            if !places.is_empty() {
                notes.push(index);
                columns.push(places);
            }
        }
        let own = |_: usize, place: &Place| self.cost.of(*place, self.lie(place.course));
        let between = |column: usize, before: &Place, after: &Place| {
            let tone = |column: usize| self.tones[notes[column]];
            self.cost
                .between((*before, tone(column - 1)), (*after, tone(column)))
        };
        let cost = |column: usize, before: &Place, after: &Place| {
            between(column, before, after).unwrap_or(PARTED)
        };
        let chosen = cheapest(&columns, own, cost);
        let chosen: Vec<Place> = columns
            .iter()
            .zip(chosen)
            .map(|(places, at)| places[at])
            .collect();
        let mut pairs = chosen.windows(2).enumerate();
        let parted = pairs.any(|(column, pair)| between(column + 1, &pair[0], &pair[1]).is_none());
        let mut places = vec![None; self.tones.len()];
        for (note, place) in notes.iter().zip(chosen) {
            places[*note] = Some(place);
        }
        Path { places, parted }
    }

    fn lie(&self, course: usize) -> Lie {
        let (strung, next) = (
            &self.instrument.courses[course],
            self.instrument.courses.get(course + 1),
        );
        Lie {
            short: strung.starts_at > 0,
            out_of_order: next.is_some_and(|next| next.open.midi() < strung.open.midi()),
        }
    }

    /// The courses that have a note, with the fret.
    fn courses(&self, midi: i32) -> impl Iterator<Item = (usize, u8)> {
        let courses = self.instrument.courses.iter().take(MAX_COURSES).enumerate();
        courses.filter_map(move |(course, strung)| {
            // Sounding at the fret 0 counts the capo in, and a short string its own nut.
            let open = self.instrument.midi(course, 0, self.capo)?;
            let fret = match strung.starts_at {
                0 => u8::try_from(midi - open).ok()?,
                _ if midi == open => 0,
                at => {
                    let up = u8::try_from(midi - strung.open.midi()).ok()?;
                    (at.checked_add(up)?).checked_sub(self.capo.fret)?
                }
            };
            (self.instrument.midi(course, fret, self.capo)? == midi).then_some((course, fret))
        })
    }

    /// The lowest and the highest position from which a fret is within reach.
    fn positions(&self, fret: u8) -> (u8, u8) {
        if fret == 0 {
            return (1, u8::MAX);
        }
        let owned = self.frets_a_finger();
        let highest = fret.saturating_add(u8::from(owned == 1) * BEYOND);
        (fret.saturating_sub(3 * owned + BEYOND).max(1), highest)
    }

    fn frets_a_finger(&self) -> u8 {
        self.cost.reach.frets_a_finger.clamp(1, 4)
    }

    /// All places of the note of that index with the hand in positions `low..=high`, the lowest position first.
    fn places(&self, index: usize, midi: i32, low: u8, high: u8) -> Vec<Place> {
        let beside = [index.checked_sub(1), index.checked_add(1)];
        let mut beside = beside
            .into_iter()
            .flatten()
            .filter_map(|at| self.tones.get(at));
        let half_step = beside.any(|tone| tone.midi == midi - 1);
        let mut places = Vec::new();
        for (course, fret) in self.courses(midi) {
            let (from, to) = self.positions(fret);
            for position in from.max(low)..=to.min(high) {
                let finger = (fret > 0).then(|| self.cost.reach.owner(position, fret));
                let place = Place {
                    course,
                    fret,
                    finger,
                    position,
                };
                places.push(place);
                if half_step && self.cost.beside_ring(position) == Some(fret) {
                    let finger = Some(Finger::Little);
                    places.push(Place { finger, ..place });
                }
            }
        }
        places
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scale_on_a_ukulele_runs_over_the_three_courses_in_order() {
        let tone = |midi| Tone {
            midi,
            quarters: 0.5,
            after_rest: false,
            up: false,
        };
        let scale = [60, 62, 64, 65, 67, 69, 71, 72].map(tone);
        let ukulele = Instrument::by_id("ukulele").unwrap();
        let places = place(&ukulele, Capo::NONE, &scale, 1);
        let frets: Vec<_> = places
            .iter()
            .flatten()
            .map(|place| (place.course, place.fret))
            .collect();
        assert_eq!(
            frets,
            [
                (1, 0),
                (1, 2),
                (2, 0),
                (2, 1),
                (2, 3),
                (3, 0),
                (3, 2),
                (3, 3)
            ]
        );
    }
}
