//! Fourcourse: a fully offline helper for jam circles.
//!
//! The house, from the ground up; each room knows only ones before it:
//!
//! - [`theory`]: pitch, interval, key, scale, chord, number
//! - [`frets`]: instruments, chord shapes, open strings
//! - [`chart`]: tunes, bars, strums, the order in which bars are played
//! - [`formats`]: ABC in
//! - [`band`]: what a band plays to a chart, and its sound
//! - [`circle`]: who sits round, what each needs, and the key that suits all
//! - [`engraving`]: a page of tablature and notation, as marks to be drawn
//! - [`desk`]: what the app knows and can be asked
//! - [`words`]: kinds and numbers as sentences
//! - [`audio`]: the band to the ear, and the clock of what is heard
//! - [`store`]: the songbook on disk, and the search over it
//! - [`start`]: puts a desk and its songbook together
//! - `bind`: the desk on the screen (with the `app` feature)
//!
//! The binary's `shell`, the commands, stands beside `bind` on top of all others.

#[cfg(all(target_os = "android", feature = "app"))]
mod android;
pub mod audio;
pub mod band;
#[cfg(feature = "app")]
pub mod bind;
pub mod chart;
pub mod circle;
pub mod desk;
pub mod engraving;
pub mod formats;
pub mod frets;
pub mod start;
pub mod store;
pub mod theory;
pub mod words;
