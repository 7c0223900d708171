//! Naming what a neighbour's hand holds, by touching a fingerboard where the fingers are.

use crate::frets::{self, Capo, Instrument};
use crate::theory::ChordName;

use super::super::cards::{Hands, style};
use super::super::on_stand::MOST_CAPO;
use super::super::settings::Settings;
use super::super::stand::MissingNote;
use super::CalledAsk;

/// The last fret that can be touched, counted from the capo.
pub const LAST_FRET: u8 = 12;
/// How far behind the first name another one may be; see [`ChordName::far`].
const FAR: u16 = 60;
/// Most names that are told.
const MOST_NAMES: usize = 4;

/// A name of what is held.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldName {
    /// The chord that sounds, in the player's names, with its bass.
    pub name: String,
    /// What of it does not sound.
    pub missing: Vec<MissingNote>,
    /// With a capo: the chord whose shape the hand makes.
    pub played_as: Option<String>,
}

/// What a hand holds. Courses run from the left as the player sees them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldView {
    /// Instruments that the neighbour may have, by id: one's own, and then the others.
    pub instruments: Vec<String>,
    /// Which of them it is.
    pub instrument: usize,
    /// The capo in frets.
    pub capo: u8,
    /// Names of the courses, the capo counted.
    pub courses: Vec<String>,
    /// Strings on each course: 1 or 2.
    pub strings: Vec<u8>,
    /// The first fret of each course: 1, but further up on a short string.
    pub first_frets: Vec<u8>,
    /// The last fret that can be touched.
    pub last_fret: u8,
    /// The fret on each course; 0 is open, `None` is not played.
    pub frets: Vec<Option<u8>>,
    /// Nothing has been touched yet.
    pub untouched: bool,
    /// What sounds, in the player's names.
    pub notes: Vec<String>,
    /// What it can be called, the plainest reading first; empty where no name fits.
    pub names: Vec<HeldName>,
}

/// The hand; courses are those of the instrument, not as they are seen.
#[derive(Debug, Default)]
pub(super) struct Held {
    /// The neighbour's instrument, by id; `None` while it is one's own.
    instrument: Option<String>,
    capo: u8,
    /// Empty until something is touched.
    frets: Vec<Option<u8>>,
}

impl Held {
    /// The instrument: one's own in the tuning of today, another in its usual one.
    fn instrument(&self, settings: &Settings) -> Instrument {
        let other = self.instrument.as_deref().and_then(Instrument::by_id);
        other.unwrap_or_else(|| settings.instrument())
    }

    /// The frets on the courses of an instrument; one that it has not under this capo is open.
    fn frets(&self, instrument: &Instrument) -> Vec<Option<u8>> {
        let capo = Capo::at(self.capo);
        let there = |course, fret| instrument.sound(course, fret, capo).is_some();
        let course = |course| match self.frets.get(course) {
            Some(None) => None,
            Some(&Some(fret)) if there(course, fret) => Some(fret),
            _ => Some(0),
        };
        (0..instrument.courses.len()).map(course).collect()
    }

    pub(super) fn ask(&mut self, ask: CalledAsk, settings: &Settings) {
        let instrument = self.instrument(settings);
        let count = instrument.courses.len();
        let course = |seen: usize| match settings.left_handed {
            true => (count.checked_sub(1)?).checked_sub(seen),
            false => (seen < count).then_some(seen),
        };
        match ask {
            CalledAsk::Finger(seen, fret) => {
                let capo = Capo::at(self.capo);
                let Some(at) = course(seen) else { return };
                if instrument.sound(at, fret, capo).is_some() && fret <= LAST_FRET {
                    self.frets = self.frets(&instrument);
                    let there = self.frets[at] == Some(fret);
                    self.frets[at] = Some(if there { 0 } else { fret });
                }
            }
            CalledAsk::Damp(seen) => {
                let Some(at) = course(seen) else { return };
                self.frets = self.frets(&instrument);
                self.frets[at] = match self.frets[at] {
                    Some(0) => None,
                    _ => Some(0),
                };
            }
            CalledAsk::Release => self.frets.clear(),
            CalledAsk::HeldOn(id) => {
                self.instrument = (id != settings.instrument).then_some(id);
                self.frets.clear();
            }
            CalledAsk::HeldCapo(fret) => self.capo = fret.min(MOST_CAPO),
            _ => {}
        }
    }

    pub(super) fn view(&self, settings: &Settings) -> HeldView {
        let (style, capo) = (style(settings), Capo::at(self.capo));
        let instrument = self.instrument(settings);
        let mut frets = self.frets(&instrument);
        let held = frets::name_frets(&instrument, capo, &frets).ok();
        let told = |name: &ChordName| HeldName {
            name: name.chord.in_style(style),
            missing: MissingNote::of(&name.missing),
            played_as: (self.capo > 0).then(|| name.chord.down(self.capo).in_style(style)),
        };
        let names = held.as_ref().map_or(Vec::new(), |held| {
            let first = held.names.first().map_or(0, |name| name.far);
            let near = held.names.iter().take_while(|name| name.far <= first + FAR);
            near.take(MOST_NAMES).map(told).collect()
        });
        let notes = held.map_or(Vec::new(), |held| held.notes);
        let last_fret = LAST_FRET.min(instrument.last_fret(capo));
        let first =
            |course| (1..=last_fret).find(|&at| instrument.sound(course, at, capo).is_some());
        let mut first_frets: Vec<u8> = (0..instrument.courses.len())
            .map(|course| first(course).unwrap_or(last_fret + 1))
            .collect();
        if settings.left_handed {
            frets.reverse();
            first_frets.reverse();
        }
        let (courses, strings) = Hands::on(instrument, settings, self.capo).seen();
        let own = settings.instrument.as_str();
        let others = Instrument::all()
            .map(|other| other.id)
            .filter(|&id| id != own);
        let instruments: Vec<String> = std::iter::once(own)
            .chain(others)
            .map(str::to_owned)
            .collect();
        let chosen = self.instrument.as_deref().unwrap_or(own);
        HeldView {
            instrument: { instruments.iter() }
                .position(|id| id == chosen)
                .unwrap_or(0),
            instruments,
            capo: self.capo,
            courses,
            strings,
            first_frets,
            last_fret,
            frets,
            untouched: self.frets.is_empty(),
            notes: notes.iter().map(|note| note.name.in_style(style)).collect(),
            names,
        }
    }
}
