//! What a singer can sing.

use std::fmt;
use std::str::FromStr;

use crate::theory::Pitch;

/// The notes from a singer's lowest to the highest, as they sound. Also the notes that a melody reaches over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Compass {
    /// The lowest note.
    pub low: Pitch,
    /// The highest note.
    pub high: Pitch,
}

/// The text is no compass.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not two notes")]
pub struct NotACompass;

impl Compass {
    /// The compass between two notes that somebody sang, in any order.
    pub fn between(one: Pitch, other: Pitch) -> Self {
        if one.midi() <= other.midi() {
            Self {
                low: one,
                high: other,
            }
        } else {
            Self {
                low: other,
                high: one,
            }
        }
    }

    /// The compass of some notes; `None` of none.
    pub fn of(notes: impl IntoIterator<Item = Pitch>) -> Option<Self> {
        let notes = notes.into_iter().map(|note| Self {
            low: note,
            high: note,
        });
        { notes }.reduce(|all, note| Self {
            low: if note.low.midi() < all.low.midi() {
                note.low
            } else {
                all.low
            },
            high: if note.high.midi() > all.high.midi() {
                note.high
            } else {
                all.high
            },
        })
    }

    /// Semitones from the lowest note to the highest.
    pub const fn semitones(self) -> i32 {
        self.high.midi() - self.low.midi()
    }
}

impl FromStr for Compass {
    type Err = NotACompass;

    /// Reads two notes with a hyphen between them: `A3-D5`.
    ///
    /// ```
    /// use fourcourse::circle::Compass;
    /// let compass: Compass = "A3-D5".parse().unwrap();
    /// assert_eq!(compass.semitones(), 17);
    /// assert!("A3".parse::<Compass>().is_err());
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let (low, high) = text.split_once(['-', '–']).ok_or(NotACompass)?;
        let note = |text: &str| text.parse().map_err(|_| NotACompass);
        Ok(Self::between(note(low)?, note(high)?))
    }
}

impl fmt::Display for Compass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.low, self.high)
    }
}

/// A kind of voice, for singers who do not want to sing two notes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum VoiceType {
    /// All together.
    Group,
    Soprano,
    Mezzo,
    Alto,
    Tenor,
    Baritone,
    Bass,
}

impl VoiceType {
    /// All of them, everybody together first, then from high to low.
    pub const ALL: [Self; 7] = [
        Self::Group,
        Self::Soprano,
        Self::Mezzo,
        Self::Alto,
        Self::Tenor,
        Self::Baritone,
        Self::Bass,
    ];

    /// A plain id.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Group => "group",
            Self::Soprano => "soprano",
            Self::Mezzo => "mezzo",
            Self::Alto => "alto",
            Self::Tenor => "tenor",
            Self::Baritone => "baritone",
            Self::Bass => "bass",
        }
    }

    /// What such a voice is asked for. A group reaches from about A3 to D5 (sheet of trade facts, common practice). The
    /// others are what choral parts ask of amateurs (common practice; books differ by a third either way), so two sung
    /// notes are better.
    pub fn compass(self) -> Compass {
        use crate::theory::{Accidental, Letter, NoteName};
        let note = |letter, octave| Pitch::new(NoteName::new(letter, Accidental::NATURAL), octave);
        let (low, high) = match self {
            Self::Group => (note(Letter::A, 3), note(Letter::D, 5)),
            Self::Soprano => (note(Letter::C, 4), note(Letter::A, 5)),
            Self::Mezzo => (note(Letter::A, 3), note(Letter::F, 5)),
            Self::Alto => (note(Letter::F, 3), note(Letter::D, 5)),
            Self::Tenor => (note(Letter::C, 3), note(Letter::G, 4)),
            Self::Baritone => (note(Letter::A, 2), note(Letter::E, 4)),
            Self::Bass => (note(Letter::E, 2), note(Letter::C, 4)),
        };
        Compass { low, high }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_compass_is_read_in_either_order_and_printed_from_low_to_high() {
        let read = |text: &str| text.parse::<Compass>().map(|compass| compass.to_string());
        assert_eq!(read("D5-A3"), Ok("A3-D5".to_owned()));
        assert_eq!(read("Bb2 – F#4"), Ok("Bb2-F#4".to_owned()));
        for wrong in ["", "-", "A-D", "A3-", "A3-D5-E5", "H3-D5", "A3-D55"] {
            assert_eq!(read(wrong), Err(NotACompass), "{wrong}");
        }
    }

    #[test]
    fn voices_span_a_tenth_at_least_and_lie_one_below_the_other() {
        // An untrained singer manages about a tenth (sheet of trade facts): 15 or 16 semitones.
        let voices = VoiceType::ALL.map(VoiceType::compass);
        assert!(voices.iter().all(|voice| voice.semitones() >= 15));
        let falls = |pair: &[Compass]| {
            pair[0].high.midi() > pair[1].high.midi() && pair[0].low.midi() > pair[1].low.midi()
        };
        assert!(voices[1..].windows(2).all(falls));
    }
}
