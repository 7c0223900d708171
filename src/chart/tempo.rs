//! Tempos: what is counted, what suits a kind of tune, and how long it takes.

use super::metre::Metre;
use super::time::Ticks;
use super::tune::{Rhythm, Tempo, Tune};

/// What the circle plays for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Pace {
    /// So that everybody can join.
    #[default]
    SlowJam,
    /// So that dancers can dance, or as a song is usually sung.
    Danced,
}

/// The tempos that suit a kind of tune: beats a minute from and to, and what is counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TempoRange {
    /// The slowest and the fastest, in beats a minute.
    pub bpm: (f32, f32),
    /// The note that is one beat.
    pub beat: Ticks,
}

impl TempoRange {
    /// What suits a kind of tune.
    ///
    /// Common practice or from memory: reel and jig 108 to 124 danced and 60 to 80 in a slow jam; hornpipe 92 to 100
    /// and 55 to 70; polka 132 to 140 and 70 to 90; slip jig about 144 and 70 to 90; waltz 110 to 130 and 80 to 96;
    /// song 90 to 130 and about 70. Counted is what is felt: two beats a bar in 2/4, 4/4, 2/2 and 6/8, else the beats
    /// of the metre. From memory, unchecked: march, mazurka, schottische, strathspey, swing, rag and air.
    pub fn fitting(rhythm: Option<&Rhythm>, metre: Metre, pace: Pace) -> Self {
        let beat = felt_beat(metre);
        let two_a_bar = metre.bar() == beat * 2;
        let (slow, danced) = match rhythm {
            Some(Rhythm::Hornpipe) => ((55.0, 70.0), (92.0, 100.0)),
            Some(Rhythm::Polka) => ((70.0, 90.0), (132.0, 140.0)),
            Some(Rhythm::SlipJig) => ((70.0, 90.0), (140.0, 148.0)),
            Some(Rhythm::Waltz) => ((80.0, 96.0), (110.0, 130.0)),
            Some(Rhythm::Mazurka) => ((80.0, 96.0), (120.0, 132.0)),
            Some(Rhythm::Reel | Rhythm::Jig | Rhythm::Slide) => ((60.0, 80.0), (108.0, 124.0)),
            Some(Rhythm::March) => ((60.0, 80.0), (90.0, 116.0)),
            Some(Rhythm::Schottische | Rhythm::BarnDance | Rhythm::Strathspey) => {
                ((50.0, 60.0), (66.0, 80.0))
            }
            Some(Rhythm::Air) => ((40.0, 50.0), (50.0, 60.0)),
            Some(
                Rhythm::Song | Rhythm::Swing | Rhythm::Rag | Rhythm::Calypso | Rhythm::Other(_),
            )
            | None => {
                match (metre.count, two_a_bar) {
                    (3, _) => ((80.0, 96.0), (110.0, 130.0)), // as a waltz
                    (9, _) => ((70.0, 90.0), (140.0, 148.0)), // as a slip jig
                    (_, true) => ((66.0, 74.0), (90.0, 130.0)),
                    _ => ((80.0, 100.0), (120.0, 160.0)), // from memory
                }
            }
        };
        let bpm = match pace {
            Pace::SlowJam => slow,
            Pace::Danced => danced,
        };
        Self { bpm, beat }
    }

    /// The middle of it, to a whole number of beats.
    pub fn middle(self) -> Tempo {
        Tempo {
            bpm: ((self.bpm.0 + self.bpm.1) / 2.0).round(),
            beat: self.beat,
        }
    }
}

/// What a player counts: half a bar where a bar has two halves that are felt, else the beat of the metre.
fn felt_beat(metre: Metre) -> Ticks {
    match (metre.count, metre.unit) {
        (4, 4) | (2, 2) | (2, 4) => Ticks::of(i64::from(metre.count), 2 * i64::from(metre.unit)),
        _ => {
            let beats = metre.beats();
            let even = beats.iter().all(|beat| Some(beat) == beats.first());
            let note = Ticks::of(1, i64::from(metre.unit.max(1)));
            // Uneven beats cannot be counted at one speed: their notes are.
            beats.first().copied().filter(|_| even).unwrap_or(note)
        }
    }
}

impl Tempo {
    /// How fast a tempo may be, in quarter notes a minute.
    pub const QUARTERS_A_MINUTE: (f64, f64) = (5.0, 1000.0);

    /// Quarter notes a minute, within [`Self::QUARTERS_A_MINUTE`] whatever stands in the tune.
    pub fn quarters_a_minute(self) -> f64 {
        let (slowest, fastest) = Self::QUARTERS_A_MINUTE;
        let quarters = f64::from(self.bpm) * self.beat.quarters();
        if quarters.is_nan() {
            120.0
        } else {
            quarters.clamp(slowest, fastest)
        }
    }

    /// The same speed counted in another note.
    ///
    /// ```
    /// use fourcourse::chart::{Tempo, Ticks};
    /// let reel = Tempo { bpm: 112.0, beat: Ticks::of(1, 2) };
    /// assert_eq!(reel.counted_in(Ticks::QUARTER).bpm, 224.0);
    /// ```
    pub fn counted_in(self, beat: Ticks) -> Self {
        if beat <= Ticks::ZERO {
            return self;
        }
        let bpm = f64::from(self.bpm) * self.beat.quarters() / beat.quarters();
        #[allow(clippy::cast_possible_truncation)] // to the nearest f32
        Self {
            bpm: bpm as f32,
            beat,
        }
    }

    /// Seconds that a length lasts.
    pub fn seconds(self, length: Ticks) -> f64 {
        length.quarters() * 60.0 / self.quarters_a_minute()
    }

    /// The length that passes in so many seconds.
    pub fn ticks(self, seconds: f64) -> Ticks {
        Ticks::from_quarters(seconds * self.quarters_a_minute() / 60.0)
    }
}

impl Tune {
    /// Its own tempo or, where it says none, the middle of what suits it.
    pub fn tempo_or_fitting(&self, pace: Pace) -> Tempo {
        let fitting = || TempoRange::fitting(self.rhythm.as_ref(), self.metre, pace).middle();
        self.tempo.unwrap_or_else(fitting)
    }
}
