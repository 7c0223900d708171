//! What is safe to keep strumming over each part when a change was missed.

use crate::chart::{Changes, Playing, Safe, Tune, safe_over};
use crate::theory::{NoteName, NoteStyle, Symbol};

use super::cards::Hands;
use super::map;
use super::stand::{ChordCard, ChordNames};

/// What is safe over a part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SafePart {
    /// The part (`A`).
    pub part: String,
    /// The circle is in it.
    pub now: bool,
    /// The chord that goes with all of it as well as anything does.
    pub chord: ChordCard,
    /// For how much of the part's time its notes belong to what the others play, in per cent.
    pub fits: u8,
    /// The one note that does, in the player's names.
    pub note: String,
    /// The course that it lies lowest on, in the player's names; empty where it lies nowhere.
    pub course: String,
    /// The fret on that course; 0 is open.
    pub fret: u8,
}

/// A part and what is safe over it.
#[derive(Debug)]
pub(super) struct Stretch {
    part: Option<usize>,
    label: String,
    safe: Safe,
}

impl Stretch {
    /// Each part of a tune that is played, once. Chords of its first run through count; its other endings do not.
    pub(super) fn of(tune: &Tune, playing: &Playing) -> Vec<Self> {
        let parts = tune.parts_or_derived();
        let changes = Changes::of(tune, playing);
        let mut found: Vec<Self> = Vec::new();
        for (part, _, first, last) in map::runs(playing) {
            if found.iter().any(|there| there.part == part) {
                continue;
            }
            if let Some(safe) = safe_over(tune, playing, &changes, first..last + 1) {
                let label = part.and_then(|part| parts.get(part));
                found.push(Self {
                    part,
                    label: label.map_or(String::new(), |part| part.label.clone()),
                    safe,
                });
            }
        }
        found
    }

    /// As it is to be seen, in somebody's hands; `now` is the part that the circle is in.
    pub(super) fn view(
        &self,
        hands: &mut Hands,
        (tonic, names): (NoteName, ChordNames),
        now: Option<Option<usize>>,
        style: NoteStyle,
    ) -> SafePart {
        let place = hands.lowest_place(self.safe.note);
        let (course, fret) = place.unwrap_or_default();
        // A share from 0 to 1.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let fits = (self.safe.chord_fit.fits * 100.0).round() as u8;
        SafePart {
            part: self.label.clone(),
            now: now == Some(self.part),
            chord: hands.card(Symbol::Chord(self.safe.chord), tonic, names),
            fits,
            note: self.safe.note.in_style(style),
            course,
            fret,
        }
    }
}
