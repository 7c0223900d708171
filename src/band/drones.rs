//! The drones: the key's tonic and fifth, ringing on.

use crate::chart::{Direction, Ticks};
use crate::frets::{Capo, Instrument};
use crate::theory::Key;

use super::event::{Event, Player, Touch};
use super::sheet::Sheet;
use super::stroke::{Strum, strum};
use super::voicings::Tone;

/// How high a finger may lie for a drone before the next pair of courses is better.
const HIGHEST_FRET: u8 = 5;

/// The tonic and the fifth of a key on two neighbouring courses of a mandolin, which are a fifth apart: both open where
/// the key has them (A, G and D: common practice), otherwise under one finger, as low as it goes.
pub(super) fn strings(key: Key) -> Vec<Tone> {
    let neck = Instrument::mandolin();
    let fret_of_tonic = |course: usize| {
        let open = neck.courses.get(course)?.open.midi();
        u8::try_from((key.tonic.class().semitones() - open).rem_euclid(12)).ok()
    };
    let pairs: Vec<(usize, u8)> = (0..neck.courses.len().saturating_sub(1))
        .filter_map(|course| Some((course, fret_of_tonic(course)?)))
        .collect();
    let open = pairs.iter().find(|pair| pair.1 == 0);
    let low = pairs.iter().find(|pair| pair.1 <= HIGHEST_FRET);
    let Some(&(course, fret)) = open.or(low).or(pairs.first()) else {
        return Vec::new();
    };
    let sounds = |course: usize| {
        let midi = neck.sound(course, fret, Capo::NONE)?.midi();
        Some((u8::try_from(course).ok()?, u8::try_from(midi).ok()?))
    };
    [course, course + 1]
        .into_iter()
        .filter_map(sounds)
        .collect()
}

/// The part of the drones: struck at each bar line, where bars are shorter than three quarters at each second one, and
/// wherever the key changes. They ring until they are struck again.
pub(super) fn play(sheet: &Sheet) -> Vec<Event> {
    let mut struck: Vec<(Ticks, Key)> = Vec::new();
    for bar in &sheet.bars {
        let again = match struck.last() {
            None => true,
            Some(&(at, key)) => {
                key.tonic.class() != bar.key.tonic.class() || bar.start - at >= Ticks::of(3, 4)
            }
        };
        let goes_on = sheet.hold.is_none_or(|hold| bar.start <= hold);
        if again && goes_on && !bar.pickup && bar.length > Ticks::ZERO {
            struck.push((bar.start, bar.key));
        }
    }
    let mut events = Vec::with_capacity(struck.len() * 2);
    for (i, &(at, key)) in struck.iter().enumerate() {
        let next = struck.get(i + 1).map_or(sheet.length, |next| next.0);
        let hand = Strum {
            player: Player::Drones,
            at,
            direction: Direction::Down,
            force: 0.45,
            rolled: false,
            rings: next - at,
            touch: Touch::Ring,
        };
        events.extend(strum(&strings(key), hand));
    }
    events
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn drones_are_the_open_strings_of_the_trade_and_else_under_one_finger() {
        let sounds = |key: &str| {
            let key: Key = key.parse().unwrap();
            let strings = strings(key);
            let names = strings
                .iter()
                .map(|&(_, midi)| key.spell_midi(midi.into()).to_string());
            names.collect::<Vec<_>>().join(" ")
        };
        // The trade sheet, common practice: "key A: open A and E; key G: open G and D; key D: open D and A".
        assert_eq!(sounds("A"), "A4 E5");
        assert_eq!(sounds("G"), "G3 D4");
        assert_eq!(sounds("Dm"), "D4 A4");
        assert_eq!(sounds("C"), "C4 G4");
        assert_eq!(sounds("E"), "E4 B4");
        assert_eq!(sounds("Bb"), "Bb3 F4");
    }
}
