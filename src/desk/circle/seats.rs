//! The seats of the circle as they are kept, and what can be changed about one.

use crate::circle::{CapoHabit, Compass, Known, Seat, VoiceType};
use crate::frets::{Instrument, RETUNE};
use crate::theory::{Chord, Key, Mode, PitchClass, Reads};

use super::super::on_stand::MOST_CAPO;
use super::super::settings::{FIRST_CHORDS, Settings};

/// Most seats of a circle.
pub const MOST_SEATS: usize = 12;
/// Most characters of a name.
const NAME: usize = 24;
/// The lowest and the highest note that a singer can be given, as MIDI numbers: C2 to C6.
const VOICES: std::ops::RangeInclusive<u8> = 36..=84;
/// The least from a singer's lowest note to the highest, in semitones.
const NARROWEST: u8 = 5;

/// What somebody brings to the circle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Plays {
    /// An instrument with a fingerboard, by its id.
    Instrument(String),
    /// The melody, from a page in this pitch.
    Page(Reads),
    /// Nothing but the voice.
    Voice,
}

/// Which shapes somebody's hand finds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Knows {
    /// All of them.
    #[default]
    All,
    /// Those of the first lessons.
    First,
    /// A beginner's four.
    Four,
    /// What the player has marked in the settings.
    Marked,
}

/// How high and how low somebody sings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sings {
    /// As such voices do.
    Type(VoiceType),
    /// From the lowest note to the highest, as MIDI numbers.
    Notes(u8, u8),
}

impl Sings {
    /// The notes from the lowest to the highest, as MIDI numbers.
    pub fn notes(self) -> (u8, u8) {
        match self {
            Self::Type(voice) => {
                let compass = voice.compass();
                let midi = |note: i32| u8::try_from(note).unwrap_or(*VOICES.start());
                (midi(compass.low.midi()), midi(compass.high.midi()))
            }
            Self::Notes(low, high) => (low, high),
        }
    }

    /// The notes that are sung.
    pub fn compass(self) -> Compass {
        // Singers are told in the spelling that players choose.
        let plain = Key::spelled_for_players(PitchClass::new(0), Mode::Major);
        let (low, high) = self.notes();
        let pitch = |midi: u8| plain.spell_midi(i32::from(midi));
        Compass::between(pitch(low), pitch(high))
    }
}

/// Somebody in the circle, as it is kept. Of the first one, the player, instrument, tuning and hand stand in the settings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatSettings {
    /// What the player calls it; empty where its instrument says enough.
    pub name: String,
    /// What is played.
    pub plays: Plays,
    /// Semitones of each course from the usual tuning; empty is the usual one.
    pub tuning: Vec<i8>,
    /// What is done with a capo; `None` is as players of the instrument do.
    pub capo: Option<CapoHabit>,
    /// Shapes are drawn as a mirror.
    pub left_handed: bool,
    /// Which shapes are known.
    pub knows: Knows,
    /// What is sung.
    pub sings: Option<Sings>,
}

impl SeatSettings {
    /// Somebody new.
    pub fn new(plays: Plays) -> Self {
        let sings = (plays == Plays::Voice).then_some(Sings::Type(VoiceType::Group));
        Self {
            name: String::new(),
            plays,
            tuning: Vec::new(),
            capo: None,
            left_handed: false,
            knows: Knows::All,
            sings,
        }
    }

    /// The player before anything was settled.
    pub fn player() -> Self {
        Self {
            knows: Knows::Marked,
            ..Self::new(Plays::Instrument(Settings::default().instrument))
        }
    }

    /// The same with what the settings tell of the player.
    pub(super) fn of_player(&self, settings: &Settings) -> Self {
        let tuning = settings.retuned.get(&settings.instrument);
        Self {
            plays: Plays::Instrument(settings.instrument.clone()),
            tuning: tuning.cloned().unwrap_or_default(),
            left_handed: settings.left_handed,
            ..self.clone()
        }
    }

    /// The instrument in its tuning.
    pub(super) fn instrument(&self) -> Option<Instrument> {
        let Plays::Instrument(id) = &self.plays else {
            return None;
        };
        let usual = Instrument::by_id(id).unwrap_or_else(Instrument::mandolin);
        Some(usual.retuned(&self.tuning))
    }

    /// What is done with a capo.
    pub fn habit(&self) -> CapoHabit {
        let usual = self
            .instrument()
            .map(|instrument| Seat::playing(instrument).capo);
        self.capo.or(usual).unwrap_or_default()
    }

    /// The chords that are known, in the order of first lessons; `None` is all.
    pub(super) fn known(&self, settings: &Settings) -> Option<Vec<Chord>> {
        let read = |names: &[&str]| names.iter().filter_map(|name| name.parse().ok()).collect();
        match self.knows {
            Knows::All => None,
            Knows::First => Some(read(&FIRST_SHAPES)),
            Knows::Four => Some(read(self.four())),
            Knows::Marked => {
                let marked = { FIRST_CHORDS.into_iter() }
                    .filter(|chord| settings.known.iter().any(|known| known == chord));
                Some(read(&marked.collect::<Vec<_>>()))
            }
        }
    }

    /// A beginner's four chords (common practice).
    fn four(&self) -> &'static [&'static str] {
        match &self.plays {
            Plays::Instrument(id) if id == "ukulele" => &["C", "F", "G7", "Am"],
            Plays::Instrument(id) if id == "guitar" || id == "banjo" => &["G", "C", "D", "Em"],
            _ => &["G", "C", "D", "A"],
        }
    }

    /// The seat to reckon with.
    pub(super) fn seat(&self, settings: &Settings) -> Seat {
        let instrument = self.instrument();
        let known = self.known(settings).filter(|_| instrument.is_some());
        Seat {
            capo: self.habit(),
            known: known.map(Known::of),
            instrument,
            reads: match self.plays {
                Plays::Page(reads) => reads,
                _ => Reads::Concert,
            },
            left_handed: self.left_handed,
            sings: self.sings.map(Sings::compass),
        }
    }

    /// Changes what is to be changed; what makes no sense changes nothing.
    pub(super) fn change(&mut self, change: SeatChange) {
        match change {
            SeatChange::Name(name) => {
                let plain = name.chars().filter(|letter| !letter.is_control());
                self.name = plain.take(NAME).collect::<String>().trim_start().to_owned();
            }
            SeatChange::Tuning(mut semitones) => {
                for by in &mut semitones {
                    *by = (*by).clamp(*RETUNE.start(), *RETUNE.end());
                }
                let usual = semitones.iter().all(|&by| by == 0);
                self.tuning = if usual { Vec::new() } else { semitones };
            }
            SeatChange::Capo(habit) => {
                self.capo = Some(match habit {
                    CapoHabit::Never => CapoHabit::Never,
                    CapoHabit::UpTo(most) => CapoHabit::UpTo(most.clamp(1, MOST_CAPO)),
                    CapoHabit::Always(fret) => CapoHabit::Always(fret.clamp(1, MOST_CAPO)),
                });
            }
            SeatChange::LeftHanded(left) => self.left_handed = left,
            SeatChange::Knows(knows) => self.knows = knows,
            SeatChange::Voice(voice) => self.sings = Some(Sings::Type(voice)),
            SeatChange::Low(by) => self.sing(by, 0),
            SeatChange::High(by) => self.sing(0, by),
            // Who brings nothing but a voice sings.
            SeatChange::Silent if self.plays != Plays::Voice => self.sings = None,
            SeatChange::Silent => {}
        }
    }

    /// Moves the ends of the voice by semitones.
    fn sing(&mut self, low: i8, high: i8) {
        let notes = self.sings.unwrap_or(Sings::Type(VoiceType::Group)).notes();
        let moved = |note: u8, by: i8| note.saturating_add_signed(by);
        let (low, high) = (moved(notes.0, low), moved(notes.1, high));
        if VOICES.contains(&low) && VOICES.contains(&high) && low + NARROWEST <= high {
            self.sings = Some(Sings::Notes(low, high));
        }
    }
}

/// Shapes of the first lessons: two-finger shapes, then the minors, E, and the sevenths of these keys (the sheet of trade
/// facts, common practice).
const FIRST_SHAPES: [&str; 12] = [
    "G", "C", "D", "A", "Em", "Am", "E", "D7", "G7", "A7", "E7", "B7",
];

/// A change to a seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SeatChange {
    /// What it is called.
    Name(String),
    /// Semitones of each course from the usual tuning.
    Tuning(Vec<i8>),
    /// What is done with a capo.
    Capo(CapoHabit),
    /// Shapes are drawn as a mirror, or not.
    LeftHanded(bool),
    /// Which shapes are known.
    Knows(Knows),
    /// The voice is of this type.
    Voice(VoiceType),
    /// The lowest note, so many semitones higher.
    Low(i8),
    /// The highest note, so many semitones higher.
    High(i8),
    /// Does not sing.
    Silent,
}
