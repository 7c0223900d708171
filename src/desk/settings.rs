//! What the player has set.

use std::collections::BTreeMap;

use crate::frets::{Capo, Instrument, RETUNE, shared_tunings};
use crate::theory::{Chord, Naming};

use super::ask::Ask;
use super::band::BandSettings;
use super::cards::style;

/// Chords that can be marked as known, in the order of first lessons: two-finger shapes, then the minors, then E, the
/// sevenths, and what tunes ask for after that (common practice).
pub const FIRST_CHORDS: [&str; 24] = [
    "G", "C", "D", "A", "Em", "Am", "E", "F", "Bm", "Dm", "B", "F#m", "Gm", "Bb", "D7", "A7", "G7",
    "E7", "B7", "C7", "F#7", "C#m", "Cm", "Eb",
];

/// Colours of the room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Theme {
    /// Dark wood, for the evening.
    #[default]
    Ebony,
    /// Light wood, for the day.
    Spruce,
    /// Black on white, for full sun.
    Sun,
}

/// Languages that the app speaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Language {
    English,
    Spanish,
    German,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::English, Self::Spanish, Self::German];

    /// The language tag (BCP 47) and the name of its folder of words.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
            Self::German => "de",
        }
    }
}

/// The player's settings, kept between evenings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// The instrument, by its id.
    pub instrument: String,
    /// Instruments that are not in their usual tuning, by id: semitones from it, the first course first.
    pub retuned: BTreeMap<String, Vec<i8>>,
    /// Shapes are drawn for a left-handed player.
    pub left_handed: bool,
    /// Colours.
    pub theme: Theme,
    /// Language; `None` follows the system.
    pub language: Option<Language>,
    /// Names of the notes.
    pub naming: Naming,
    /// Nothing moves except what has to.
    pub less_motion: bool,
    /// Chords whose shapes the player knows, in ASCII house style.
    pub known: Vec<String>,
    /// The band.
    pub band: BandSettings,
}

impl Default for Settings {
    /// A mandolin in the hands of somebody after the first lessons.
    fn default() -> Self {
        Self {
            instrument: "mandolin".to_owned(),
            retuned: BTreeMap::new(),
            left_handed: false,
            theme: Theme::default(),
            language: None,
            naming: Naming::default(),
            less_motion: false,
            known: FIRST_CHORDS[..6]
                .iter()
                .map(|&chord| chord.to_owned())
                .collect(),
            band: BandSettings::default(),
        }
    }
}

impl Settings {
    /// Changes what an ask about settings changes.
    pub(super) fn ask(&mut self, ask: Ask) {
        match ask {
            Ask::Know(chord, true) if !self.known.contains(&chord) => self.known.push(chord),
            Ask::Know(chord, false) => self.known.retain(|known| *known != chord),
            Ask::Instrument(id) if crate::frets::Instrument::by_id(&id).is_some() => {
                self.instrument = id
            }
            Ask::Retune(course, by) => {
                let mut tuning = self.semitones();
                if let Some(course) = tuning.get_mut(course) {
                    *course = course.saturating_add(by);
                }
                self.tune(tuning);
            }
            Ask::Tuning(semitones) => self.tune(semitones),
            Ask::LeftHanded(left) => self.left_handed = left,
            Ask::Theme(theme) => self.theme = theme,
            Ask::Language(language) => self.language = language,
            Ask::NoteNames(naming) => self.naming = naming,
            Ask::LessMotion(less) => self.less_motion = less,
            Ask::Band(ask) => self.band.ask(&ask),
            _ => {}
        }
    }

    /// The instrument in the player's hands, in its tuning of today.
    pub fn instrument(&self) -> Instrument {
        self.usual().retuned(&self.semitones())
    }

    fn usual(&self) -> Instrument {
        Instrument::by_id(&self.instrument).unwrap_or_else(Instrument::mandolin)
    }

    /// Semitones of each course from the usual tuning.
    fn semitones(&self) -> Vec<i8> {
        let mut semitones = self.retuned.get(&self.instrument).cloned();
        let courses = self.usual().courses.len();
        semitones.get_or_insert_default().resize(courses, 0);
        semitones.unwrap_or_default()
    }

    /// Tunes the instrument; all courses at their usual pitch are no tuning of one's own.
    fn tune(&mut self, mut semitones: Vec<i8>) {
        semitones.resize(self.usual().courses.len(), 0);
        for by in &mut semitones {
            *by = (*by).clamp(*RETUNE.start(), *RETUNE.end());
        }
        if semitones.iter().all(|&by| by == 0) {
            self.retuned.remove(&self.instrument);
        } else {
            self.retuned.insert(self.instrument.clone(), semitones);
        }
    }

    /// The usual tuning and those that players share.
    fn tunings(&self) -> Vec<Tuning> {
        self.tunings_of(&self.instrument, &self.semitones())
    }

    /// The usual tuning of an instrument and those that players share; `now` are the semitones from the usual one.
    pub(super) fn tunings_of(&self, id: &str, now: &[i8]) -> Vec<Tuning> {
        let instrument = Instrument::by_id(id).unwrap_or_else(Instrument::mandolin);
        let usual = vec![0; instrument.courses.len()];
        let shared = shared_tunings(id);
        let all = std::iter::once(usual.as_slice()).chain(shared.iter().copied());
        all.map(|semitones| Tuning {
            notes: self.notes(&instrument.clone().retuned(semitones)),
            semitones: semitones.to_vec(),
            chosen: semitones == now || (now.is_empty() && semitones == usual),
        })
        .collect()
    }

    /// Notes of the open courses in the player's names.
    pub(super) fn notes(&self, instrument: &Instrument) -> Vec<String> {
        let courses = 0..instrument.courses.len();
        let notes = courses.filter_map(|course| instrument.sound(course, 0, Capo::NONE));
        notes.map(|note| note.name.in_style(style(self))).collect()
    }

    pub(super) fn view(&self, instruments: Vec<String>) -> SettingsView {
        let name = |&chord: &&str| {
            let shown = chord
                .parse::<Chord>()
                .map_or(chord.to_owned(), |chord| chord.in_style(style(self)));
            (
                chord.to_owned(),
                shown,
                self.known.iter().any(|known| known == chord),
            )
        };
        SettingsView {
            settings: self.clone(),
            instruments,
            courses: self
                .notes(&self.instrument())
                .into_iter()
                .zip(self.semitones())
                .collect(),
            tunings: self.tunings(),
            chords: FIRST_CHORDS.iter().map(name).collect(),
        }
    }
}

/// A tuning to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tuning {
    /// Notes of the courses in the player's names, the first course first.
    pub notes: Vec<String>,
    /// Semitones of each course from the usual tuning.
    pub semitones: Vec<i8>,
    /// Whether it is the instrument's tuning now.
    pub chosen: bool,
}

/// The settings as a view shows them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SettingsView {
    /// What is set.
    pub settings: Settings,
    /// Instruments to choose from, by id.
    pub instruments: Vec<String>,
    /// The chosen instrument's courses, the first one first: the note in the player's names, and how many semitones that
    /// is from the usual one.
    pub courses: Vec<(String, i8)>,
    /// The instrument's usual tuning, then those that players share.
    pub tunings: Vec<Tuning>,
    /// Chords that can be marked as known, with their names in the player's style and whether they are.
    pub chords: Vec<(String, String, bool)>,
}
