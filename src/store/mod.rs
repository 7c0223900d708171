//! The songbook on disk: a crash-safe embedded database of versioned values, and the search over its names.

pub mod search;
pub mod shipped;

mod day;
#[cfg(not(target_arch = "wasm32"))]
mod disk;
mod folder;
mod memory;
#[cfg(not(target_arch = "wasm32"))]
mod open;
#[cfg(not(target_arch = "wasm32"))]
mod quiet;
#[cfg(not(target_arch = "wasm32"))]
mod reluctant;
#[cfg(not(target_arch = "wasm32"))]
mod rescue;
#[cfg(test)]
mod round_trip;
mod v1;
mod value;
#[cfg(not(target_arch = "wasm32"))]
mod waiting;

#[cfg(not(target_arch = "wasm32"))]
pub use disk::{Added, Store, StoreError};
pub use folder::data_folder;
pub use memory::Memory;
#[cfg(not(target_arch = "wasm32"))]
pub use open::{Opened, SetAside};
