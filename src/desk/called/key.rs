//! All that a called key holds, for one's own hands and for the neighbours'.

use crate::circle::{CapoHabit, Hands as Effort};
use crate::frets::{
    Capo, InKey, Instrument, Setup, capo_places, ring_in_key, scale_places, setups,
};
use crate::theory::{Chord, Key, Mode, NoteStyle, Symbol};

use super::super::cards::{Hands, style};
use super::super::settings::Settings;
use super::super::stand::{ChordCard, ChordNames, RingString, Verdict};

/// Frets of the fingerboard that the scale is shown on: first position on a neck of fifths.
const FRETS: u8 = 7;
/// The highest capo that guitarists are thought of with (common practice).
const MOST_CAPO: u8 = 7;
/// Chords that a capo is chosen for, and named by: the key's first three.
const MAIN: usize = 3;

/// A key that stands beside the called one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherKey {
    /// Its tonic in the player's names.
    pub name: String,
    /// The key.
    pub key: Key,
}

/// A note of the scale on the fingerboard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScaleMark {
    /// The course, counted from the left as the player sees it.
    pub course: usize,
    /// The fret; 0 is open.
    pub fret: u8,
    /// The note in the player's names.
    pub note: String,
    /// Its degree, 1 to 7.
    pub degree: u8,
}

/// A capo of the guitarists, and what their hands then show.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CapoView {
    /// The fret; 0 is none.
    pub fret: u8,
    /// The first three chords of the key as they are held.
    pub chords: Vec<String>,
    /// The easiest of the positions.
    pub easiest: bool,
}

/// How an instrument that is tuned anew for a key is set up for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetupView {
    /// The instrument, by its id.
    pub instrument: String,
    /// Its open strings in the player's names, a short one in lower case.
    pub strings: String,
    /// It is another tuning than the usual one.
    pub retuned: bool,
    /// The capo, the short string raised with it; 0 is none.
    pub capo: u8,
}

/// The called key.
#[derive(Debug, Clone, PartialEq)]
pub struct KeyView {
    /// Its tonic in the player's names.
    pub name: String,
    /// Its mode.
    pub mode: Mode,
    /// Its chords with their numbers as the other name, the main ones first.
    pub chords: Vec<ChordCard>,
    /// Which open strings ring through a tune in it, are of the scale, or are left alone.
    pub ring: Vec<RingString>,
    /// Names of the courses from the left as the player sees them.
    pub courses: Vec<String>,
    /// Strings on each of them: 1 or 2.
    pub strings: Vec<u8>,
    /// Frets of the fingerboard.
    pub frets: u8,
    /// Where the scale lies on it.
    pub scale: Vec<ScaleMark>,
    /// The key with the same notes.
    pub relative: OtherKey,
    /// The key on the same tonic.
    pub parallel: OtherKey,
    /// Where guitarists put their capos, from the nut up.
    pub capos: Vec<CapoView>,
    /// What fiddle and banjo may have to do, the usual way of each first.
    pub setups: Vec<SetupView>,
}

/// What the key's name asks for, worked out once.
#[derive(Debug)]
pub(super) struct Answer(pub(super) KeyView);

impl Answer {
    pub(super) fn of(key: Key, settings: &Settings, guitar: &Effort) -> Self {
        let style = style(settings);
        let mut hands = Hands::new(settings, 0);
        let chords: Vec<Chord> = { key.called_chords().into_iter() }
            .map(|(_, chord)| chord)
            .collect();
        let card =
            |&chord: &Chord| hands.card(Symbol::Chord(chord), key.tonic, ChordNames::Letters);
        let cards = chords.iter().map(card).collect();
        let (courses, strings) = hands.seen();
        let other = |key: Key| {
            // D flat major has no minor on D flat that anybody writes.
            let key = Key::spelled_for_players(key.tonic.class(), key.mode);
            let name = key.tonic.in_style(style);
            OtherKey { name, key }
        };
        let mode = match key.mode.is_minor() {
            true => Mode::Major,
            false => Mode::Minor,
        };
        Self(KeyView {
            name: key.tonic.in_style(style),
            mode: key.mode,
            chords: cards,
            ring: ring(key, settings, style),
            frets: FRETS.min(hands.instrument.last_fret(Capo::NONE)),
            scale: scale(key, settings, style),
            courses,
            strings,
            relative: other(key.relative(mode)),
            parallel: other(key.parallel(mode)),
            capos: capos(key, &chords, guitar, style),
            setups: retuned(key, style),
        })
    }
}

fn ring(key: Key, settings: &Settings, style: NoteStyle) -> Vec<RingString> {
    let instrument = settings.instrument();
    let ring = ring_in_key(&instrument, Capo::NONE, key).into_iter();
    let mut ring: Vec<_> = ring
        .map(|open| RingString {
            name: open.note.name.in_style(style),
            string: instrument.string_number(open.course),
            verdict: match open.standing {
                InKey::Drone | InKey::HalfDrone => Verdict::Ring,
                InKey::Scale => Verdict::Colour,
                InKey::Outside => Verdict::Clash,
            },
        })
        .collect();
    if settings.left_handed {
        ring.reverse();
    }
    ring
}

fn scale(key: Key, settings: &Settings, style: NoteStyle) -> Vec<ScaleMark> {
    let instrument = settings.instrument();
    let places = scale_places(&instrument, Capo::NONE, key, FRETS);
    let count = places.len();
    let mut marks = Vec::new();
    for (course, places) in places.into_iter().enumerate() {
        let seen = match settings.left_handed {
            true => count - 1 - course,
            false => course,
        };
        marks.extend(places.into_iter().map(|place| ScaleMark {
            course: seen,
            fret: place.fret,
            note: place.note.in_style(style),
            degree: place.degree,
        }));
    }
    marks
}

/// Capo positions with the shapes of a family, and which of them is the easiest for the key's main chords.
fn capos(key: Key, chords: &[Chord], guitar: &Effort, style: NoteStyle) -> Vec<CapoView> {
    let main = &chords[..chords.len().min(MAIN)];
    // Share and share alike: what a tune will ask for is not known yet.
    let shares: Vec<_> = main.iter().map(|&chord| (chord, 1.0 / 3.0)).collect();
    let places: Vec<_> = { capo_places(key).into_iter() }
        .filter(|place| place.fret <= MOST_CAPO)
        .collect();
    let advice = guitar.capo_advice(CapoHabit::UpTo(MOST_CAPO), None, key, &shares);
    let offered = |fret| places.iter().any(|place| place.fret == fret);
    let easiest = { advice.iter() }.find(|advice| offered(advice.fret));
    let easiest = easiest.map(|advice| advice.fret);
    let view = |place: &crate::frets::CapoPlace| {
        let held = place.shapes.called_chords().into_iter().take(MAIN);
        CapoView {
            fret: place.fret,
            chords: held.map(|(_, chord)| chord.in_style(style)).collect(),
            easiest: Some(place.fret) == easiest,
        }
    };
    places.iter().map(view).collect()
}

fn retuned(key: Key, style: NoteStyle) -> Vec<SetupView> {
    let of = |id: &str| {
        let instrument = Instrument::by_id(id)?;
        let view = |setup: Setup| SetupView {
            instrument: instrument.id.to_owned(),
            strings: strings(&setup.tuned(&instrument), style),
            retuned: setup.tuning.is_some(),
            capo: setup.capo.fret,
        };
        Some(setups(&instrument, key).into_iter().map(view).collect())
    };
    let all: [Option<Vec<_>>; 2] = ["fiddle", "banjo"].map(of);
    all.into_iter().flatten().flatten().collect()
}

fn strings(instrument: &Instrument, style: NoteStyle) -> String {
    let names = instrument.courses.iter().map(|course| {
        let name = course.open.name.in_style(style);
        match course.starts_at {
            0 => name,
            _ => name.to_lowercase(),
        }
    });
    names.collect::<Vec<_>>().join(" ")
}
