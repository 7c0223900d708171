//! Nothing that comes in from outside makes the app panic, hang or lose its own rules; nothing that is kept gets lost.

mod abc;
mod abc_songbook;
mod chart;
mod frets;
mod store;
mod store_damage;
mod store_tunes;
