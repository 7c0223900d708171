//! How easy a key is, as a player would say it: for one seat in a word, for all of them as a share.

use super::best_key::{RankedKey, SeatInKey};

/// How easy a key is for a seat. The borders are judgement (common practice).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum KeyEase {
    /// Nothing to think about.
    Easy,
    /// It goes, with some care.
    Fair,
    /// A strain, or shapes that are not there yet.
    Hard,
}

/// Semitones beyond a voice that still go in a pinch.
const STRETCH: i32 = 2;
/// Effort of a key over the seat's own easiest key, in fingers: where it is no longer easy, and where it is hard.
const FAIR: f32 = 1.2;
const HARD: f32 = 3.5;
/// A mean of so many fingers over everybody's own easiest keys takes the share to 1/e.
const FADES: f32 = 3.0;

/// How easy a key is for a seat, by the effort of hands and eyes that the seat's own easiest key takes.
fn seat_ease(in_key: &SeatInKey, least: f32) -> KeyEase {
    let voice = in_key
        .voice
        .map_or(KeyEase::Easy, |voice| match voice.over.max(voice.under) {
            ..=0 => KeyEase::Easy,
            1..=STRETCH => KeyEase::Fair,
            _ => KeyEase::Hard,
        });
    let unknown = in_key.hands.as_ref().map_or(KeyEase::Easy, |hands| {
        match hands.chords - hands.capo.known.min(hands.chords) {
            0 => KeyEase::Easy,
            // One shape is learned on the way; of many chords, most can be played along.
            1 => KeyEase::Fair,
            missing if missing * 4 <= hands.chords => KeyEase::Fair,
            _ => KeyEase::Hard,
        }
    });
    let over = in_key.effort_without_voice() - least;
    let effort = if over >= HARD {
        KeyEase::Hard
    } else if over >= FAIR {
        KeyEase::Fair
    } else {
        KeyEase::Easy
    };
    voice.max(unknown).max(effort)
}

/// The least effort of each seat over all keys.
fn least(keys: &[RankedKey], effort: impl Fn(&SeatInKey) -> f32) -> Vec<f32> {
    let seats = keys.first().map_or(0, |key| key.seats.len());
    let least = |seat: usize| {
        let efforts = keys.iter().map(|key| effort(&key.seats[seat]));
        efforts.fold(f32::INFINITY, f32::min)
    };
    (0..seats).map(least).collect()
}

/// Each ranked key's ease for all seats together, 0 to 1, and for each seat. The share is 1 where everybody has the own
/// easiest key, and falls with every finger that is asked for beyond; a key before another one never has the smaller share.
///
/// ```
/// use fourcourse::{chart::{Metre, Tune}, circle::{Seat, best_keys, tune_ease}, frets::Instrument};
/// let tune = Tune::new(Metre::COMMON, "G".parse().unwrap());
/// let keys = best_keys(&tune, &[Seat::playing(Instrument::mandolin())]);
/// let ease = tune_ease(&keys);
/// assert_eq!(ease[0].0, 1.0);
/// assert!(ease.windows(2).all(|pair| pair[0].0 >= pair[1].0));
/// ```
pub fn tune_ease(keys: &[RankedKey]) -> Vec<(f32, Vec<KeyEase>)> {
    let by_hand = least(keys, SeatInKey::effort_without_voice);
    let ideal: f32 = least(keys, |seat| seat.effort).iter().sum();
    let seats = u16::try_from(by_hand.len()).unwrap_or(u16::MAX).max(1);
    let share = |key: &RankedKey| {
        let over = (key.effort - ideal).max(0.0) / f32::from(seats);
        (-over / FADES).exp()
    };
    let key = |key: &RankedKey| {
        let seats = key.seats.iter().zip(&by_hand);
        let eases = seats.map(|(seat, &least)| seat_ease(seat, least));
        (share(key), eases.collect())
    };
    keys.iter().map(key).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::{Bar, ChordAt, Metre, Note, Ticks, Tune};
    use crate::circle::{Known, Seat, best_keys};
    use crate::frets::Instrument;

    fn tune() -> Tune {
        let quarter = Ticks(161_280);
        let mut tune = Tune::new(Metre::COMMON, "G".parse().unwrap());
        for chord in ["G", "C", "D"] {
            tune.bars.push(Bar {
                length: quarter * 4,
                chords: vec![ChordAt {
                    at: Ticks::ZERO,
                    symbol: chord.parse().unwrap(),
                }],
                ..Bar::default()
            });
        }
        let notes = ["D4", "D5"].map(|note| Note::new(Ticks::ZERO, quarter, note.parse().unwrap()));
        tune.bars[0].notes = notes.to_vec();
        tune
    }

    fn in_key(seat: Seat, key: &str) -> KeyEase {
        let keys = best_keys(&tune(), &[seat]);
        let ease = tune_ease(&keys);
        let at = keys.iter().position(|ranked| ranked.key.to_string() == key);
        ease[at.unwrap()].1[0]
    }

    #[test]
    fn a_beginner_finds_the_key_of_the_known_shapes_easy_and_others_hard() {
        let beginner = Seat {
            known: Some(Known::of(["G", "C", "D"].map(|c| c.parse().unwrap()))),
            ..Seat::playing(Instrument::mandolin())
        };
        assert_eq!(in_key(beginner.clone(), "G"), KeyEase::Easy);
        assert_eq!(in_key(beginner, "Eb"), KeyEase::Hard);
    }

    #[test]
    fn a_voice_is_told_by_its_top_note() {
        // D4 to D5 lies inside in G; two semitones up it is a stretch, three are too high.
        let singer = || Seat::singing("D4-D5".parse().unwrap());
        assert_eq!(in_key(singer(), "G"), KeyEase::Easy);
        assert_eq!(in_key(singer(), "A"), KeyEase::Fair);
        assert_eq!(in_key(singer(), "Bb"), KeyEase::Hard);
    }
}
