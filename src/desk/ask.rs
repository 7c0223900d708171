//! Everything that the app can be asked.

use crate::theory::{Key, Naming, NoteName};

use super::band::BandAsk;
use super::called::CalledAsk;
use super::circle::CircleAsk;
use super::porch::PorchAsk;
use super::settings::{Language, Theme};
use super::songbook::TuneId;
use super::stand::{ChordNames, Simplify};
use super::tonight::TonightAsk;

/// The rooms of the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Room {
    Songbook,
    Called,
    Tonight,
    Circle,
    Porch,
    Stand,
    Settings,
}

/// A wish of the player. Views send these; the desk alone decides what comes of them.
#[derive(Debug, Clone, PartialEq)]
pub enum Ask {
    /// Show a room.
    Go(Room),
    /// Back to the songbook; from what was called, back to where one was.
    Back,
    /// The notice has been read.
    CloseNotice,

    /// Look for tunes whose names hold these words.
    Search(String),
    /// Only tunes in this key; `None` shows all keys.
    OnlyKey(Option<Key>),
    /// Only this rhythm, by its id (`reel`); empty shows all.
    OnlyRhythm(String),
    /// Only tunes whose every chord has a shape that the player knows.
    OnlyKnown(bool),
    /// The player knows a chord's shape, or does not yet.
    Know(String, bool),
    /// Put a tune on the stand.
    Open(TuneId),
    /// Bring back the tunes that came with the app.
    RestoreShipped,

    /// The next bar begins now.
    NextBar,
    /// One bar back.
    BarBack,
    /// Stop where we are, or go on.
    Hold,
    /// The player is on the first beat of a bar now.
    ThisIsOne,
    /// To a bar in playing order, counted from 0 in this time through. Where the clock leads, the nearest beat becomes the
    /// first of that bar.
    JumpTo(usize),
    /// We are at the top of a part as played: an index into the form chips. What leads into it is over.
    JumpToPart(usize),
    /// We are at the beginning of a line: its first full bar in playing order.
    JumpToLine(usize),
    /// Start the clock with a count-in, or stop it and go back to following by hand.
    Clock(bool),
    /// Change the tempo by so many beats a minute.
    Faster(i32),
    /// A tap in the tempo that is wanted.
    TapTempo,
    /// How often the tune is played; 0 goes on until it is stopped.
    Times(u32),
    /// This is the last time through, or it is not.
    LastTime(bool),

    /// Of the band.
    Band(BandAsk),
    /// Of what was called.
    Called(CalledAsk),
    /// About the circle.
    Circle(CircleAsk),
    /// About tonight's list.
    Tonight(TonightAsk),
    /// On the porch.
    Porch(PorchAsk),

    /// The circle plays it so many semitones higher.
    KeyUp(i32),
    /// The circle plays it in the key on this note.
    KeyOn(NoteName),
    /// Back to the key it is written in.
    WrittenKey,
    /// Letters, numbers or both.
    Names(ChordNames),
    /// How much simpler the chords should be.
    Simpler(Simplify),
    /// The player's capo, in frets.
    Capo(u8),
    /// Another of the shapes for the chord now.
    OtherShape,

    /// The instrument, by its id.
    Instrument(String),
    /// A course of the instrument, by its place, so many semitones higher.
    Retune(usize, i8),
    /// A tuning of the instrument: semitones of each course from the usual one.
    Tuning(Vec<i8>),
    /// Draw shapes for a left-handed player.
    LeftHanded(bool),
    /// The theme.
    Theme(Theme),
    /// The language; `None` follows the system.
    Language(Option<Language>),
    /// Names of the notes.
    NoteNames(Naming),
    /// Nothing moves except what has to.
    LessMotion(bool),
}

impl Ask {
    /// Whether it puts the tune on the stand into another key.
    pub(super) fn changes_key(&self) -> bool {
        matches!(self, Self::KeyUp(_) | Self::KeyOn(_) | Self::WrittenKey)
    }

    /// Whether it changes the tempo of the tune on the stand.
    pub(super) fn changes_tempo(&self) -> bool {
        matches!(self, Self::Faster(_) | Self::TapTempo)
    }
}
