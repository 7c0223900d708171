//! The small unevenness of hands.

use super::event::Event;

/// How uneven the players are. The same seed gives the same unevenness, at whatever speed and however often it is asked
/// for: nothing is remembered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Human {
    /// Another seed is another evening.
    pub seed: u64,
    /// From 0, exactly as written, to 1, as uneven as a good circle is.
    pub amount: f32,
}

/// What becomes of an event.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nudge {
    /// How much later, in milliseconds: 0 to [`Human::MOST_MS`], on top of [`Event::after_ms`].
    pub ms: f32,
    /// What its force is multiplied by: 0.85 to 1.15. The product may lie above 1.
    pub force_factor: f32,
}

impl Human {
    /// The most that a hand is late, in milliseconds (from memory: ensemble playing spreads by some 10 to 20 ms).
    pub const MOST_MS: f32 = 10.0;

    /// The most that a stroke is softer or harder, as a part of its force.
    const MOST_FORCE: f32 = 0.15;

    /// Nobody is uneven.
    pub const EXACT: Self = Self {
        seed: 0,
        amount: 0.0,
    };

    /// The unevenness of an event in a time through, counted from 0. All that one player strikes at one moment is one
    /// movement of the hand, so it moves together and a stroke keeps its direction. Takes no memory and no time to speak
    /// of: fit for the moment of playing.
    pub fn nudge(&self, time: u32, event: &Event) -> Nudge {
        let amount = self.amount.clamp(0.0, 1.0);
        let mut hash = self.seed;
        // Two's complement bits; only their difference counts.
        for part in [
            u64::from(time),
            event.player as u64,
            event.at.0.cast_unsigned(),
        ] {
            hash = split_mix(hash ^ part);
        }
        let late = (unit(hash) + unit(split_mix(hash))) / 2.0;
        let force = unit(split_mix(hash ^ 1)) * 2.0 - 1.0;
        Nudge {
            ms: amount * Self::MOST_MS * late,
            force_factor: 1.0 + amount * Self::MOST_FORCE * force,
        }
    }
}

/// One step of SplitMix64 (G. Steele, D. Lea, C. Flood, Fast Splittable Pseudorandom Number Generators, 2014), which
/// makes a well mixed number of any other.
const fn split_mix(state: u64) -> u64 {
    let state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mixed = (state ^ (state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    mixed ^ (mixed >> 31)
}

/// A number from 0 to 1 of the upper 16 bits.
fn unit(hash: u64) -> f32 {
    let upper = u16::try_from(hash >> 48).unwrap_or(u16::MAX);
    f32::from(upper) / f32::from(u16::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::band::{Player, Sound, Touch};
    use crate::chart::Ticks;

    fn event(at: i64, course: u8) -> Event {
        Event {
            at: Ticks::of(at, 8),
            after_ms: 0.0,
            player: Player::Guitar,
            force: 0.7,
            sound: Sound::String {
                course,
                midi: 50,
                rings: Ticks::QUARTER,
                touch: Touch::Ring,
            },
        }
    }

    const HUMAN: Human = Human {
        seed: 7,
        amount: 1.0,
    };

    #[test]
    fn the_hash_is_splitmix64() {
        // The first numbers from seed 1234567 as other implementations print them (from memory: Rosetta Code).
        let step = 0x9E37_79B9_7F4A_7C15_u64;
        let numbers =
            [0, 1, 2].map(|k| split_mix(1_234_567_u64.wrapping_add(step.wrapping_mul(k))));
        assert_eq!(
            numbers,
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423
            ]
        );
    }

    #[test]
    fn a_hand_is_late_by_a_few_milliseconds_and_never_early() {
        let nudges: Vec<Nudge> = (0..2000).map(|at| HUMAN.nudge(0, &event(at, 0))).collect();
        let mean = |value: fn(&Nudge) -> f32| nudges.iter().map(value).sum::<f32>() / 2000.0;
        assert!(
            nudges
                .iter()
                .all(|nudge| (0.0..=Human::MOST_MS).contains(&nudge.ms))
        );
        assert!(
            nudges
                .iter()
                .all(|nudge| (0.85..=1.15).contains(&nudge.force_factor))
        );
        assert!((mean(|nudge| nudge.ms) - 5.0).abs() < 0.25);
        assert!((mean(|nudge| nudge.force_factor) - 1.0).abs() < 0.01);
    }

    #[test]
    fn a_stroke_moves_as_one_and_each_time_through_differs() {
        assert_eq!(HUMAN.nudge(0, &event(4, 0)), HUMAN.nudge(0, &event(4, 5)));
        assert_ne!(HUMAN.nudge(0, &event(4, 0)), HUMAN.nudge(1, &event(4, 0)));
        assert_ne!(HUMAN.nudge(0, &event(4, 0)), HUMAN.nudge(0, &event(5, 0)));
        let other = Human { seed: 8, ..HUMAN };
        assert_ne!(HUMAN.nudge(0, &event(4, 0)), other.nudge(0, &event(4, 0)));
    }

    #[test]
    fn off_is_exactly_as_written() {
        let nudge = Human::EXACT.nudge(3, &event(4, 0));
        assert_eq!((nudge.ms, nudge.force_factor), (0.0, 1.0));
    }
}
