//! The tunes that come with the app: the files of the `songbook` folder, carried inside the program.

use rust_embed::RustEmbed;

use crate::chart::Tune;
use crate::formats::abc;

#[derive(RustEmbed)]
#[folder = "songbook/"]
#[include = "*.abc"]
struct Files;

/// Name and ABC text of every shipped tune, in the order of their names.
pub fn files() -> Vec<(String, Vec<u8>)> {
    let mut names: Vec<String> = Files::iter().map(|name| name.into_owned()).collect();
    names.sort();
    names
        .into_iter()
        .filter_map(|name| Files::get(&name).map(|file| (name, file.data.into_owned())))
        .collect()
}

/// Every shipped tune with the name of its file.
pub fn tunes() -> Vec<(String, Tune)> {
    files()
        .into_iter()
        .filter_map(|(name, text)| {
            let tune = abc::read(&text).tunes.into_iter().next()?.tune;
            Some((name, tune))
        })
        .collect()
}
