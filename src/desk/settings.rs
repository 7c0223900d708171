//! What the player has set.

use crate::frets::Capo;
use crate::theory::{Chord, Naming};

use super::ask::Ask;
use super::cards::{Hands, style};

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
}

impl Default for Settings {
    /// A mandolin in the hands of somebody after the first lessons.
    fn default() -> Self {
        Self {
            instrument: "mandolin".to_owned(),
            left_handed: false,
            theme: Theme::default(),
            language: None,
            naming: Naming::default(),
            less_motion: false,
            known: FIRST_CHORDS[..6]
                .iter()
                .map(|&chord| chord.to_owned())
                .collect(),
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
            Ask::LeftHanded(left) => self.left_handed = left,
            Ask::Theme(theme) => self.theme = theme,
            Ask::Language(language) => self.language = language,
            Ask::NoteNames(naming) => self.naming = naming,
            Ask::LessMotion(less) => self.less_motion = less,
            _ => {}
        }
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
            tuning: Hands::new(self, Capo::NONE.fret).courses(),
            chords: FIRST_CHORDS.iter().map(name).collect(),
        }
    }
}

/// The settings as a view shows them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SettingsView {
    /// What is set.
    pub settings: Settings,
    /// Instruments to choose from, by id.
    pub instruments: Vec<String>,
    /// The chosen instrument's courses, low to high, in the player's note names ("G D A E").
    pub tuning: Vec<String>,
    /// Chords that can be marked as known, with their names in the player's style and whether they are.
    pub chords: Vec<(String, String, bool)>,
}
