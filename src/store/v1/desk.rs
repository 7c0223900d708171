//! Entries of the list and settings, version 1.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::desk;
use crate::theory::Naming;

use super::music::{Chord, Key, Pitch, key, pitch, place, restore_key, restore_pitch};
use super::optional;

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Entry {
    titles: Vec<String>,
    rhythm: String,
    metre: String,
    form: String,
    key: Key,
    first_note: Option<Pitch>,
    chords: Vec<Chord>,
}

impl From<&desk::Entry> for Entry {
    fn from(entry: &desk::Entry) -> Self {
        Self {
            titles: entry.titles.clone(),
            rhythm: entry.rhythm.clone(),
            metre: entry.metre.clone(),
            form: entry.form.clone(),
            key: key(entry.key),
            first_note: entry.first_note.map(pitch),
            chords: entry.chords.iter().map(|&chord| chord.into()).collect(),
        }
    }
}

impl Entry {
    pub(in crate::store) fn restore(self, id: desk::TuneId) -> Option<desk::Entry> {
        Some(desk::Entry {
            id,
            titles: self.titles,
            rhythm: self.rhythm,
            metre: self.metre,
            form: self.form,
            key: restore_key(self.key)?,
            first_note: optional(self.first_note, restore_pitch)?,
            chords: self
                .chords
                .iter()
                .map(Chord::restore)
                .collect::<Option<_>>()?,
        })
    }
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Settings {
    instrument: String,
    left_handed: bool,
    theme: u8,
    language: Option<String>,
    naming: u8,
    less_motion: bool,
    known: Vec<String>,
}

/// Themes and namings in the order of version 1.
const THEMES: [desk::Theme; 3] = [desk::Theme::Ebony, desk::Theme::Spruce, desk::Theme::Sun];
const NAMINGS: [Naming; 3] = [Naming::English, Naming::German, Naming::Solfege];

impl From<&desk::Settings> for Settings {
    fn from(settings: &desk::Settings) -> Self {
        Self {
            instrument: settings.instrument.clone(),
            left_handed: settings.left_handed,
            theme: place(&THEMES, &settings.theme),
            language: settings.language.map(|language| language.tag().to_owned()),
            naming: place(&NAMINGS, &settings.naming),
            less_motion: settings.less_motion,
            known: settings.known.clone(),
        }
    }
}

impl Settings {
    pub(in crate::store) fn restore(self) -> Option<desk::Settings> {
        let language = |tag: String| {
            desk::Language::ALL
                .into_iter()
                .find(|language| language.tag() == tag)
        };
        Some(desk::Settings {
            instrument: self.instrument,
            retuned: BTreeMap::new(), // a value of its own
            left_handed: self.left_handed,
            theme: *THEMES.get(usize::from(self.theme))?,
            language: self.language.and_then(language),
            naming: *NAMINGS.get(usize::from(self.naming))?,
            less_motion: self.less_motion,
            known: self.known,
            band: desk::BandSettings::default(), // likewise
        })
    }
}

/// Instruments that are not in their usual tuning: id, and semitones of each course from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Tunings(Vec<(String, Vec<i8>)>);

impl From<&BTreeMap<String, Vec<i8>>> for Tunings {
    fn from(retuned: &BTreeMap<String, Vec<i8>>) -> Self {
        let pairs = retuned.iter();
        Self(pairs.map(|(id, by)| (id.clone(), by.clone())).collect())
    }
}

impl Tunings {
    pub(in crate::store) fn restore(self) -> BTreeMap<String, Vec<i8>> {
        self.0.into_iter().collect()
    }
}

/// What is kept of the band, players in the order of [`crate::band::Player::ALL`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Band {
    aloud: bool,
    loudness: u8,
    players: Vec<(u8, bool)>,
    a4: u16,
    human: bool,
    count_in: bool,
}

impl From<&desk::BandSettings> for Band {
    fn from(band: &desk::BandSettings) -> Self {
        Self {
            aloud: band.aloud,
            loudness: band.loudness,
            players: band.levels.into_iter().zip(band.mutes).collect(),
            a4: band.a4,
            human: band.human,
            count_in: band.count_in,
        }
    }
}

impl Band {
    pub(in crate::store) fn restore(self) -> Option<desk::BandSettings> {
        let (levels, mutes): (Vec<_>, Vec<_>) = self.players.into_iter().unzip();
        let level = |level: u8| level <= desk::MOST_LEVEL;
        let whole = levels.iter().copied().chain([self.loudness]).all(level);
        let pitch = crate::band::A4.contains(&f64::from(self.a4));
        (whole && pitch).then_some(())?;
        Some(desk::BandSettings {
            aloud: self.aloud,
            loudness: self.loudness,
            levels: levels.try_into().ok()?,
            mutes: mutes.try_into().ok()?,
            a4: self.a4,
            human: self.human,
            count_in: self.count_in,
            delay_ms: 0, // stands behind it
        })
    }
}
