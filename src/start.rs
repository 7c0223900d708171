//! Starting: the songbook from its folder, the settings kept in it, the band, and a desk with all of them.

#[cfg(not(target_arch = "wasm32"))]
use std::path::PathBuf;
use std::time::Duration;

#[cfg(not(target_arch = "wasm32"))]
use chrono::{DateTime, Utc};

use crate::audio::Sound;
#[cfg(not(target_arch = "wasm32"))]
use crate::desk::Songbook;
use crate::desk::{Desk, Notice, Players, Settings};
use crate::store::{Memory, shipped};
#[cfg(not(target_arch = "wasm32"))]
use crate::store::{Store, StoreError, data_folder};

/// The band through the system's sound device, silent until it is switched on. `clock` gives the moments that the desk is
/// told.
pub fn players(clock: impl Fn() -> Duration + Clone + Send + 'static) -> Box<dyn Players> {
    Box::new(Sound::with_device(clock))
}

/// A band that never sounds, for pictures and tests; it begins at moment 0.
pub fn silent_players() -> Box<dyn Players> {
    Box::new(Sound::new(Duration::ZERO))
}

/// A desk over the songbook in a folder, or in the user's data folder where none is given. A new songbook gets the
/// shipped tunes. Where nothing can be kept, the evening goes on in memory, and the player is told.
///
/// # Errors
/// [`StoreError::InUse`] when another window keeps the songbook open: two would overwrite each other.
#[cfg(not(target_arch = "wasm32"))]
pub fn desk(
    folder: Option<PathBuf>,
    players: Box<dyn Players>,
    now: DateTime<Utc>,
) -> Result<Desk, StoreError> {
    let Some(folder) = folder.or_else(data_folder) else {
        return Ok(in_memory(players));
    };
    let opened = match Store::open_soon(&folder, now) {
        Ok(opened) => opened,
        Err(StoreError::InUse) => return Err(StoreError::InUse),
        Err(_) => return Ok(in_memory(players)),
    };
    let mut store = opened.store;
    let mut notice = opened.set_aside.map(|aside| Notice::SetAside {
        file: aside
            .path
            .file_name()
            .map_or(String::new(), |name| name.to_string_lossy().into_owned()),
        newer: aside.newer,
        rescued: aside.rescued,
    });
    if opened.read_only {
        notice = notice.or(Some(Notice::ReadOnly));
    } else if opened.new && !Songbook::restore_shipped(&mut store) {
        notice = notice.or(Some(Notice::NotRestored));
    }
    let settings = store.settings().unwrap_or_default();
    Ok(Desk::new(Box::new(store), players, settings, notice))
}

/// A desk over the shipped tunes that keeps nothing.
pub fn in_memory(players: Box<dyn Players>) -> Desk {
    let tunes = shipped::tunes().into_iter().map(|(_, tune)| tune).collect();
    Desk::new(
        Box::new(Memory::new(tunes)),
        players,
        Settings::default(),
        Some(Notice::NothingKept),
    )
}
