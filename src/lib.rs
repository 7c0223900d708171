//! Fourcourse: a fully offline helper for jam circles.
//!
//! The house, from the ground up; each room knows only the ones before it:
//!
//! - [`theory`]: pitch, interval, key, scale, chord, number
//! - [`frets`]: instruments, chord shapes, open strings
//! - [`chart`]: tunes, bars, strums, the order in which bars are played
//! - [`formats`]: ABC in
//! - [`circle`]: who sits round, what each needs, and the key that suits all
//! - [`desk`]: what the app knows and can be asked
//! - [`words`]: kinds and numbers as sentences
//! - `bind`: the desk on the screen (with the `app` feature)
//! - [`start`]: puts a desk and its songbook together
//! - [`store`]: the songbook on disk, and the search over it

#[cfg(all(target_os = "android", feature = "app"))]
mod android;
#[cfg(feature = "app")]
pub mod bind;
pub mod chart;
pub mod circle;
pub mod desk;
pub mod formats;
pub mod frets;
pub mod start;
pub mod store;
pub mod theory;
pub mod words;
