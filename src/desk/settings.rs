//! What the player has set.

use crate::theory::Naming;

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
