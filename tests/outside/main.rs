//! Checks against facts that were made elsewhere: see `fixtures/README.md` for where each comes from.

mod abc_ryans;
mod abc_standard;
mod band_decay;
mod band_loudness;
mod band_pitch;
mod band_ryans;
mod band_sound;
mod band_track;
mod band_trade;
mod chart_hands;
mod chart_keys;
mod chart_order;
mod chart_ryans;
mod frets_chords_db;
mod frets_naming;
mod frets_teacher;
mod frets_trade;
mod frets_tunings;
mod spectrum;
mod tab_hands;
mod tab_ryans;
mod theory_chords;
mod theory_keys;
mod theory_moves;

/// The rows of a fixture below its heading, split at the tabs.
fn rows(table: &str) -> impl Iterator<Item = Vec<&str>> {
    table.lines().skip(1).map(|line| line.split('\t').collect())
}
