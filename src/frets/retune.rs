//! Instruments that are tuned anew for a key: the five-string banjo and, in old-time music, the fiddle.
//!
//! A banjo plays A from its G tuning with a capo at 2 and the fifth string up 2, and D from double C with a capo at 2
//! (the sheet of trade facts, common practice). Its other tunings and the fiddle's are common practice, from memory.

use crate::theory::{Accidental, Key, Letter, Letter::*, NoteName, Pitch};

use super::instrument::{Capo, Instrument};

/// The highest capo that a banjo is given: with it every key has a tuning.
const MOST_CAPO: u8 = 6;

/// A tuning that is played out of, and the key it lies in.
#[derive(Debug, PartialEq, Eq)]
pub struct Tuning {
    /// A plain id: `open-g`.
    pub id: &'static str,
    open: &'static [(Letter, i8)],
    home: Letter,
    minor: bool,
    major: bool,
    /// Whether it can be moved up with a capo.
    moves: bool,
}

impl Tuning {
    /// What the open courses sound without a capo, the first course first.
    pub fn open(&self) -> Vec<Pitch> {
        let name = |letter| NoteName::new(letter, Accidental::NATURAL);
        let pitch = |&(letter, octave): &(Letter, i8)| Pitch::new(name(letter), octave);
        self.open.iter().map(pitch).collect()
    }
}

const fn tuning(
    id: &'static str,
    open: &'static [(Letter, i8)],
    home: Letter,
    (major, minor): (bool, bool),
    moves: bool,
) -> Tuning {
    Tuning {
        id,
        open,
        home,
        minor,
        major,
        moves,
    }
}

static BANJO: [Tuning; 3] = [
    tuning(
        "open-g",
        &[(G, 4), (D, 3), (G, 3), (B, 3), (D, 4)],
        G,
        (true, false),
        true,
    ),
    tuning(
        "double-c",
        &[(G, 4), (C, 3), (G, 3), (C, 4), (D, 4)],
        C,
        (true, false),
        true,
    ),
    tuning(
        "sawmill",
        &[(G, 4), (D, 3), (G, 3), (C, 4), (D, 4)],
        G,
        (false, true),
        true,
    ),
];

static FIDDLE: [Tuning; 3] = [
    tuning(
        "cross-a",
        &[(A, 3), (E, 4), (A, 4), (E, 5)],
        A,
        (true, true),
        false,
    ),
    tuning(
        "high-bass",
        &[(A, 3), (D, 4), (A, 4), (E, 5)],
        D,
        (true, true),
        false,
    ),
    tuning(
        "cross-g",
        &[(G, 3), (D, 4), (G, 4), (D, 5)],
        G,
        (true, true),
        false,
    ),
];

/// How an instrument is set up for a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Setup {
    /// The tuning; `None` is the usual one.
    pub tuning: Option<&'static Tuning>,
    /// The capo, the fifth string raised with it.
    pub capo: Capo,
}

impl Setup {
    /// The usual tuning without a capo.
    pub const USUAL: Self = Self {
        tuning: None,
        capo: Capo::NONE,
    };

    /// What it takes to come here from another setup: a turned peg counts 2, a moved capo 1.
    pub fn work(&self, from: &Self, instrument: &Instrument) -> u32 {
        2 * self.pegs(from, instrument) + u32::from(self.capo != from.capo)
    }

    /// The pegs that are turned to come here from another setup.
    pub fn pegs(&self, from: &Self, instrument: &Instrument) -> u32 {
        let open = |setup: &Self| match setup.tuning {
            Some(tuning) => tuning.open(),
            None => instrument
                .courses
                .iter()
                .map(|course| course.open)
                .collect(),
        };
        let pegs = open(self)
            .iter()
            .zip(open(from))
            .filter(|(to, from)| to.midi() != from.midi())
            .count();
        u32::try_from(pegs).unwrap_or(u32::MAX / 4)
    }

    /// The instrument as it is then tuned; the capo is not on it.
    pub fn tuned(&self, instrument: &Instrument) -> Instrument {
        match self.tuning {
            Some(tuning) => instrument.clone().tuned(&tuning.open()),
            None => instrument.clone(),
        }
    }
}

/// How players of an instrument set it up for a key, the usual way first. Empty for instruments that stay as they are.
/// A fiddle need not retune: its cross tunings come after the usual one.
///
/// ```
/// use fourcourse::frets::{Instrument, setups};
/// let banjo = Instrument::by_id("banjo").unwrap();
/// let first = |key: &str| {
///     let setup = setups(&banjo, key.parse().unwrap())[0];
///     (setup.tuning.map_or("usual", |tuning| tuning.id), setup.capo.fret)
/// };
/// assert_eq!(first("A"), ("usual", 2));
/// assert_eq!(first("D"), ("double-c", 2));
/// ```
pub fn setups(instrument: &Instrument, key: Key) -> Vec<Setup> {
    let rows: &'static [Tuning] = match instrument.id {
        "banjo" => &BANJO,
        "fiddle" => &FIDDLE,
        _ => return Vec::new(),
    };
    let usual: Vec<i32> = { instrument.courses.iter() }
        .map(|course| course.open.midi())
        .collect();
    let mut found: Vec<Setup> = Vec::new();
    if instrument.id == "fiddle" {
        found.push(Setup::USUAL);
    }
    for row in rows {
        let up = (key.tonic.class().semitones() - row.home.semitones()).rem_euclid(12);
        let fret = u8::try_from(up).unwrap_or(u8::MAX);
        let suits = if key.mode.is_minor() {
            row.minor
        } else {
            row.major
        };
        if !suits || fret > if row.moves { MOST_CAPO } else { 0 } {
            continue;
        }
        let same = row
            .open()
            .iter()
            .map(|open| open.midi())
            .eq(usual.iter().copied());
        found.push(Setup {
            tuning: (!same).then_some(row),
            capo: Capo::at(fret),
        });
    }
    if found.is_empty() {
        // The modal tuning does not reach: the major key with the same notes is set up for.
        return setups(instrument, key.relative(crate::theory::Mode::Major));
    }
    found.sort_by_key(|setup| setup.capo.fret);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frets::{InKey, ring_in_key};
    use crate::theory::{Mode, PitchClass};

    fn by_id(id: &str) -> Instrument {
        Instrument::by_id(id).unwrap()
    }

    #[test]
    fn every_key_can_be_set_up_for_within_reach_of_the_capo() {
        for mode in Mode::ALL {
            for class in 0..12 {
                let key = Key::spelled_for_players(PitchClass::new(class), mode);
                for id in ["banjo", "fiddle"] {
                    let found = setups(&by_id(id), key);
                    assert!(!found.is_empty(), "{id} {key}");
                    assert!(found.iter().all(|setup| setup.capo.fret <= MOST_CAPO));
                }
                assert!(setups(&by_id("guitar"), key).is_empty());
            }
        }
    }

    #[test]
    fn a_tuning_is_for_the_drones_of_its_key() {
        for (id, key) in [
            ("banjo", "A"),
            ("banjo", "D"),
            ("banjo", "Gm"),
            ("fiddle", "A"),
            ("fiddle", "G"),
        ] {
            let key: Key = key.parse().unwrap();
            for setup in setups(&by_id(id), key) {
                let tuned = setup.tuned(&by_id(id));
                let ring = ring_in_key(&tuned, setup.capo, key);
                let drones = ring.iter().filter(|open| open.standing == InKey::Drone);
                assert!(drones.count() >= 2, "{id} {key} {setup:?}");
            }
        }
    }

    #[test]
    fn a_fiddle_in_a_key_of_its_own_may_cross_tune() {
        // Common practice: A E A E for the key of A.
        let found = setups(&by_id("fiddle"), "A".parse().unwrap());
        assert_eq!(found[0], Setup::USUAL);
        assert_eq!(found[1].tuning.unwrap().id, "cross-a");
        // From the usual G D A E two pegs are turned.
        assert_eq!(found[1].work(&found[0], &by_id("fiddle")), 4);
    }
}
