//! The songbook on disk: a crash-safe embedded database of versioned values, and the search over its names.

pub mod search;
pub mod shipped;

#[cfg(not(target_arch = "wasm32"))]
mod disk;
mod folder;
mod memory;
mod v1;
mod value;

#[cfg(not(target_arch = "wasm32"))]
pub use disk::{Added, Opened, SetAside, Store, StoreError};
pub use folder::data_folder;
pub use memory::Memory;
