//! Checks against facts that were made elsewhere: see `fixtures/README.md` for where each comes from.

mod abc_ryans;
mod abc_standard;
mod chart_hands;
mod chart_keys;
mod chart_order;
mod chart_ryans;
mod frets_chords_db;
mod frets_teacher;
mod frets_trade;
mod theory_chords;
mod theory_keys;
mod theory_moves;

/// The rows of a fixture below its heading, split at the tabs.
fn rows(table: &str) -> impl Iterator<Item = Vec<&str>> {
    table.lines().skip(1).map(|line| line.split('\t').collect())
}
