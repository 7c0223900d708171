//! Nothing that comes in from outside makes the app panic, hang or lose its own rules.

mod abc;
mod abc_songbook;
mod chart;
