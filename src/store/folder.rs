//! Where the songbook lives.

use std::path::PathBuf;

/// The user's data folder for this app, as the system has it (XDG on Linux, Application Support on macOS, Roaming on
/// Windows). `None` where the system names no home.
#[cfg(not(any(target_arch = "wasm32", target_os = "android")))]
pub fn data_folder() -> Option<PathBuf> {
    directories::ProjectDirs::from("", "", "fourcourse").map(|dirs| dirs.data_dir().to_path_buf())
}

/// Phones and browsers hand the folder over when the app starts.
#[cfg(any(target_arch = "wasm32", target_os = "android"))]
pub fn data_folder() -> Option<PathBuf> {
    None
}
