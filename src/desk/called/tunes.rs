//! The tunes that a call finds, in the key that they will be played in.

use crate::chart::called_key;
use crate::frets::Capo;
use crate::theory::{Key, NoteName, Transposition};

use super::super::cards::style;
use super::super::settings::Settings;
use super::super::songbook::{Entry, Songbook, TuneId, TuneRow};
use super::ToStand;

/// Most tunes that are shown: who has to read further types another letter.
pub const MOST_FOUND: usize = 12;

/// A tune that was called, in the key that it would be played in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CalledTune {
    /// What the songbook tells of it; key, course and fret are those of the key it would be played in.
    pub tune: TuneRow,
    /// Its first chord, in the player's names; empty where it has none.
    pub chord: String,
    /// It would be played in a key that was called.
    pub called: bool,
    /// It is on the stand.
    pub open: bool,
}

/// The tonic that was called, and the tune on the stand with the key that it is played in.
type Wanted = (Option<NoteName>, Option<(TuneId, Key)>);

/// The key of a tune that is called now, and the move there: the called tonic in its own mode; else as it lies on the
/// stand, or is written.
fn key_of(entry: &Entry, (tonic, open): Wanted) -> (Key, Transposition) {
    let open = open.filter(|(id, _)| *id == entry.id);
    let lies = open.map_or(entry.key, |(_, key)| key);
    called_key(entry.key, tonic.unwrap_or(lies.tonic))
}

/// The best matches.
pub(super) fn rows(
    songbook: &dyn Songbook,
    found: &[usize],
    settings: &Settings,
    wanted: Wanted,
) -> Vec<CalledTune> {
    let entries = songbook.entries();
    let (style, instrument) = (style(settings), settings.instrument());
    let row = |entry: &Entry| {
        let (key, by) = key_of(entry, wanted);
        let first = entry.first_note.map(|pitch| by.pitch(pitch));
        let start = first.and_then(|pitch| instrument.place(pitch, Capo::NONE));
        CalledTune {
            tune: TuneRow::of(entry, key, start, &instrument, style),
            chord: { entry.chords.first() }
                .map_or(String::new(), |&chord| by.chord(chord).in_style(style)),
            called: wanted.0.is_some(),
            open: wanted.1.is_some_and(|(id, _)| id == entry.id),
        }
    };
    let found = found.iter().filter_map(|&place| entries.get(place));
    found.map(row).collect()
}

/// What one touch brings to the stand: the best match of the words, and where none were typed the tune that lies there.
pub(super) fn to_stand(
    songbook: &dyn Songbook,
    tunes: &[CalledTune],
    settings: &Settings,
    wanted: Wanted,
) -> Option<ToStand> {
    if let Some(CalledTune { tune, .. }) = tunes.first() {
        return Some(ToStand {
            id: tune.id,
            title: tune.title.clone(),
            key: tune.key.clone(),
            mode: tune.mode.clone(),
        });
    }
    let (id, _) = wanted.1?;
    let entry = { songbook.entries().iter() }.find(|entry| entry.id == id)?;
    let (key, _) = key_of(entry, wanted);
    Some(ToStand {
        id,
        title: entry.titles.first().cloned().unwrap_or_default(),
        key: key.tonic.in_style(style(settings)),
        mode: key.mode.id().to_owned(),
    })
}
