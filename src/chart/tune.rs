//! A tune as it is written down.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::theory::{Key, Pitch, Symbol};

use super::metre::Metre;
use super::strum::StrumPattern;
use super::time::Ticks;

/// What kind of tune it is, which sets its usual tempo and strum.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Rhythm {
    Reel,
    Jig,
    SlipJig,
    Slide,
    Hornpipe,
    Polka,
    Waltz,
    Mazurka,
    March,
    Schottische,
    BarnDance,
    Strathspey,
    Song,
    Air,
    Swing,
    Rag,
    Calypso,
    /// Any other word of the tune's own.
    Other(String),
}

impl Rhythm {
    /// The rhythms that have a name in every language.
    pub const NAMED: [Self; 17] = [
        Self::Reel,
        Self::Jig,
        Self::SlipJig,
        Self::Slide,
        Self::Hornpipe,
        Self::Polka,
        Self::Waltz,
        Self::Mazurka,
        Self::March,
        Self::Schottische,
        Self::BarnDance,
        Self::Strathspey,
        Self::Song,
        Self::Air,
        Self::Swing,
        Self::Rag,
        Self::Calypso,
    ];

    /// A plain id (`slip-jig`), or the tune's own word.
    pub fn id(&self) -> &str {
        match self {
            Self::Reel => "reel",
            Self::Jig => "jig",
            Self::SlipJig => "slip-jig",
            Self::Slide => "slide",
            Self::Hornpipe => "hornpipe",
            Self::Polka => "polka",
            Self::Waltz => "waltz",
            Self::Mazurka => "mazurka",
            Self::March => "march",
            Self::Schottische => "schottische",
            Self::BarnDance => "barn-dance",
            Self::Strathspey => "strathspey",
            Self::Song => "song",
            Self::Air => "air",
            Self::Swing => "swing",
            Self::Rag => "rag",
            Self::Calypso => "calypso",
            Self::Other(word) => word,
        }
    }
}

/// A tempo and what is counted: 112 half notes a minute and 224 quarters are the same speed felt differently.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Tempo {
    /// Beats a minute.
    pub bpm: f32,
    /// The note that is one beat.
    pub beat: Ticks,
}

/// A syllable under a note.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Syllable {
    /// The letters; empty where a syllable before is held.
    pub text: String,
    /// Whether the word goes on in the next syllable (a hyphen stands between).
    pub joined: bool,
}

/// Signs on a note that change how it is played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Ornament {
    Staccato,
    Accent,
    Tenuto,
    Fermata,
    Roll,
    Trill,
    Mordent,
    Turn,
    UpBow,
    DownBow,
    Slide,
}

/// A note of a tuplet: `count` notes in the time of `instead_of`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Tuplet {
    /// Notes played.
    pub count: u8,
    /// Notes whose time they take.
    pub instead_of: u8,
    /// Whether this note is the first of its group.
    pub first: bool,
}

/// A note of the melody. Time between notes is silence; notes of a chord share their start, the melody first.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Note {
    /// Start, from the start of the bar.
    pub at: Ticks,
    /// How long it sounds, up to the end of its bar at most; a tie carries it on.
    pub length: Ticks,
    /// The pitch as it sounds.
    pub pitch: Pitch,
    /// Tied to the next note of this pitch.
    pub tied: bool,
    /// Slurred to the next note.
    pub slurred: bool,
    /// Which tuplet it belongs to.
    pub tuplet: Option<Tuplet>,
    /// Grace notes before it.
    pub grace: Vec<Pitch>,
    /// Signs on it.
    pub ornaments: Vec<Ornament>,
    /// Its syllable in each verse written under the notes; `None` where a verse has none here.
    pub syllables: Vec<Option<Syllable>>,
}

impl Note {
    /// A plain note: no tie, no tuplet, nothing on it.
    pub const fn new(at: Ticks, length: Ticks, pitch: Pitch) -> Self {
        Self {
            at,
            length,
            pitch,
            tied: false,
            slurred: false,
            tuplet: None,
            grace: Vec::new(),
            ornaments: Vec::new(),
            syllables: Vec::new(),
        }
    }
}

/// A chord symbol above a moment of the bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ChordAt {
    /// Start, from the start of the bar.
    pub at: Ticks,
    /// What is played from here on.
    pub symbol: Symbol,
}

/// Words written at a moment of the bar that are not a chord ("slowly").
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Annotation {
    /// Start, from the start of the bar.
    pub at: Ticks,
    /// The words.
    pub text: String,
}

/// Where a bar sends the player when it has been played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Jump {
    /// Back to the beginning; `to_coda` leaves at the coda sign, otherwise play ends at the fine, if there is one.
    DaCapo {
        /// Leave at the coda sign.
        to_coda: bool,
    },
    /// Back to the sign.
    DalSegno {
        /// Leave at the coda sign.
        to_coda: bool,
    },
}

/// A bar as written, of any length.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct Bar {
    /// Length of what is written in it: shorter than the metre in a pickup, anything in a crooked tune.
    pub length: Ticks,
    /// A metre that begins here.
    pub metre: Option<Metre>,
    /// A key that begins here.
    pub key: Option<Key>,
    /// The melody.
    pub notes: Vec<Note>,
    /// Chords that begin in this bar, in order of time.
    pub chords: Vec<ChordAt>,
    /// Other words above it.
    pub annotations: Vec<Annotation>,
    /// A repeat begins before it.
    pub repeat_start: bool,
    /// A repeat ends after it: how often the section is played in all (2 is the plain repeat sign), 0 where none ends.
    pub repeat_end: u8,
    /// The passes for which this bar begins an ending (1st, 2nd...); empty where none begins.
    pub ending: Vec<u8>,
    /// A double or final bar line stands after it, which closes an ending.
    pub section_end: bool,
    /// The sign that a `DalSegno` goes back to stands before it.
    pub segno: bool,
    /// The coda sign stands before it: where the coda begins, and on the way, where one leaves for it.
    pub coda: bool,
    /// Play ends after it on the way back.
    pub fine: bool,
    /// Where to go after it.
    pub jump: Option<Jump>,
    /// A line of the page ends after it.
    pub line_end: bool,
}

/// A part of the tune: it reaches to the next part, or to the end.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Part {
    /// Its letter or name: `A`.
    pub label: String,
    /// Index of its first bar in [`Tune::bars`].
    pub first_bar: usize,
    /// A strum of its own.
    pub strum: Option<StrumPattern>,
}

/// A verse that stands below the tune, line by line.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct Verse {
    /// The lines of the verse.
    pub lines: Vec<String>,
}

/// A tune of the songbook.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tune {
    /// Its first title.
    pub title: String,
    /// What else it is called.
    pub other_titles: Vec<String>,
    /// Who made it.
    pub composer: String,
    /// Where it was found.
    pub source: String,
    /// What kind of tune.
    pub rhythm: Option<Rhythm>,
    /// The metre it begins in.
    pub metre: Metre,
    /// The key it begins in.
    pub key: Key,
    /// Its tempo, where the tune says one.
    pub tempo: Option<Tempo>,
    /// Its bars in written order.
    pub bars: Vec<Bar>,
    /// Its parts in written order; bars before the first part belong to none.
    pub parts: Vec<Part>,
    /// Labels of parts in the order in which they are played; empty where the bars are simply played through.
    pub form: Vec<String>,
    /// How often it is usually played.
    pub times_through: Option<u8>,
    /// The strum of the whole tune, where the tune says one.
    pub strum: Option<StrumPattern>,
    /// Verses below the tune.
    pub verses: Vec<Verse>,
    /// Remarks on it.
    pub remarks: Vec<String>,
    /// When it came into the songbook.
    pub made: Option<DateTime<Utc>>,
    /// When it was changed last.
    pub changed: Option<DateTime<Utc>>,
}

impl Tune {
    /// A tune with nothing in it yet.
    pub const fn new(metre: Metre, key: Key) -> Self {
        Self {
            title: String::new(),
            other_titles: Vec::new(),
            composer: String::new(),
            source: String::new(),
            rhythm: None,
            metre,
            key,
            tempo: None,
            bars: Vec::new(),
            parts: Vec::new(),
            form: Vec::new(),
            times_through: None,
            strum: None,
            verses: Vec::new(),
            remarks: Vec::new(),
            made: None,
            changed: None,
        }
    }
}
