//! Nothing that comes in from outside makes the app panic, hang or lose its own rules; nothing that is kept gets lost.

#![allow(clippy::unwrap_used)] // a test stops where it fails

mod abc;
mod abc_songbook;
mod band;
mod chart;
mod circle;
mod evening;
mod frets;
mod page;
mod rooms;
mod store;
mod store_aside;
mod store_damage;
mod store_evening;
mod store_tunes;
mod tab;
