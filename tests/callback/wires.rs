//! Ten minutes of playing, every command thrown at it from the desk's end, under the allocator that ends the program.

use std::sync::Arc;
use std::time::Duration;

use assert_no_alloc::assert_no_alloc;
use fourcourse::audio::{BLOCK, RATE, wires};
use fourcourse::band::{
    Band, Command, Human, Player, Ramp, SILENT_AT_FIRST, Score, ScoreOptions, Style, Voicings,
    count_in, tones,
};
use fourcourse::chart::{Pace, Tempo, Ticks, Tune};
use fourcourse::frets::{Capo, Instrument};

/// Blocks in ten minutes.
const BLOCKS: usize = 56_250;

fn tune() -> Tune {
    let text = include_bytes!("../../songbook/millrace-reel.abc");
    fourcourse::formats::abc::read(text).tunes.remove(0).tune
}

/// The next of a row of numbers that looks like chance, below a bound (Numerical Recipes' linear congruence).
fn chance(state: &mut u32, below: u32) -> u32 {
    *state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
    (*state >> 16) % below
}

struct Hands {
    tune: Tune,
    scores: Vec<Arc<Score>>,
    state: u32,
}

impl Hands {
    fn new() -> Self {
        let tune = tune();
        let playing = tune.playing();
        let mut voicings = Voicings::default();
        let scores = Style::all().map(|style| {
            let options = ScoreOptions {
                style,
                ..ScoreOptions::fitting(&tune)
            };
            Arc::new(Score::of(&tune, &playing, &options, &mut voicings))
        });
        let scores = scores.chain([
            Arc::new(Score::drones(tune.key)),
            Arc::new(Score::metronome(tune.metre)),
        ]);
        Self {
            scores: scores.collect(),
            tune,
            state: 1,
        }
    }

    fn chance(&mut self, below: u32) -> u32 {
        chance(&mut self.state, below)
    }

    fn bars(&mut self, below: u32) -> Ticks {
        Ticks::of(i64::from(self.chance(below)), 1)
    }

    /// Any command at all.
    fn command(&mut self, frame: u64) -> Command {
        let player = Player::ALL[self.chance(6) as usize];
        let small = |number: u32| f32::from(u16::try_from(number).unwrap());
        match self.chance(16) {
            0 => {
                let one = self.chance(16) as usize % self.scores.len();
                Command::Score(Arc::clone(&self.scores[one]))
            }
            1 | 2 => Command::Play {
                from: (self.chance(3), self.bars(16)),
                count: count_in(self.tune.metre, Ticks::ZERO),
            },
            3 => Command::Stop,
            4 => Command::Hold(self.chance(3) == 0),
            5 => Command::Go {
                to: (self.chance(3), self.bars(16)),
                since: frame.saturating_sub(2_000),
            },
            6 | 7 => {
                let bpm = small(self.chance(400));
                Command::Tempo(Tempo {
                    bpm,
                    ..self.tune.tempo_or_fitting(Pace::Danced)
                })
            }
            8 => Command::Times(self.chance(4)),
            9 => Command::LastTime(self.chance(2) == 0),
            10 => {
                let start = self.bars(12);
                let end = start + self.bars(5);
                Command::Loop((self.chance(2) == 0).then_some((start, end)))
            }
            11 => Command::Ramp(Some(Ramp {
                percent: small(self.chance(20)),
                ceiling: 300.0,
            })),
            12 => Command::Level(player, small(self.chance(40)) / 10.0),
            13 => Command::Mute(player, self.chance(3) == 0),
            14 => Command::Human(Human {
                seed: u64::from(self.chance(9)),
                amount: 1.0,
            }),
            _ if self.chance(2) == 0 => Command::A4(400.0 + f64::from(self.chance(100))),
            _ => {
                let tones = tones(&Instrument::mandolin(), Capo::NONE);
                Command::Tone(tones.get(self.chance(8) as usize).copied())
            }
        }
    }
}

#[test]
fn ten_minutes_of_every_command_allocate_nothing_and_stay_sound() {
    let mut hands = Hands::new();
    let (mut remote, mut callback) = wires(Band::new(RATE));
    let mut out = [0.0_f32; 2 * BLOCK];
    let (mut loudest, mut reports) = (0.0_f32, 0);
    for block in 0..BLOCKS {
        // A second of nothing, then a second with a command in every other block, and so on.
        for _ in 0..hands.chance(3) * u32::from(block / 94 % 2 == 1) {
            let command = hands.command((block * BLOCK) as u64);
            remote.send(command).unwrap();
        }
        let now = Duration::from_secs_f64((block * BLOCK) as f64 / f64::from(RATE));
        assert_no_alloc(|| callback.fill(&mut out, now));
        for sample in out {
            assert!(
                sample.is_finite() && sample.abs() <= 1.0,
                "{sample} in block {block}"
            );
            loudest = loudest.max(sample.abs());
        }
        // The desk looks in only now and then; what it has not taken away stays in the queue.
        if block % 7 == 0 {
            while remote.report().is_some() {
                reports += 1;
            }
            remote.tidy();
        }
    }
    assert!(loudest > 0.1 && reports > 100, "{loudest} {reports}");
}

#[test]
fn a_desk_that_takes_nothing_away_loses_nothing_and_stops_nothing() {
    let mut hands = Hands::new();
    let (mut remote, mut callback) = wires(Band::new(RATE));
    let mut out = [0.0_f32; 2 * BLOCK];
    let mut sent = 0;
    for block in 0..500 {
        let score = Arc::clone(&hands.scores[block % 3]);
        sent += u64::from(remote.send(Command::Score(score)).is_ok());
        assert_no_alloc(|| callback.fill(&mut out, Duration::from_millis(block as u64)));
    }
    // The way back is full; nothing was freed on it.
    hands.scores.truncate(3);
    let counts: Vec<_> = hands.scores.iter().map(Arc::strong_count).collect();
    assert!(counts.iter().sum::<usize>() > 250, "{counts:?}");
    for block in 500..1_000 {
        remote.tidy();
        assert_no_alloc(|| callback.fill(&mut out, Duration::from_millis(block)));
    }
    remote.tidy();
    let mut done = 0;
    while let Some(report) = remote.report() {
        done = report.done;
    }
    assert!(done <= sent);
    assert_no_alloc(|| callback.fill(&mut out, Duration::from_secs(1)));
    let counts: usize = hands.scores.iter().map(Arc::strong_count).sum();
    assert_eq!(counts, 4, "one is still played");
}

#[test]
fn a_tune_from_end_to_end_has_no_hole() {
    let tune = tune();
    let playing = tune.playing();
    let options = ScoreOptions::fitting(&tune);
    let score = Score::of(&tune, &playing, &options, &mut Voicings::default());
    let tempo = tune.tempo_or_fitting(Pace::Danced);
    let seconds = tempo.seconds(score.last_length);
    let mut band = Band::new(RATE);
    for player in SILENT_AT_FIRST {
        band.apply(Command::Mute(player, true));
    }
    band.apply(Command::Score(Arc::new(score)));
    band.apply(Command::Tempo(tempo));
    band.apply(Command::Times(1));
    let (from, count) = ((0, Ticks::ZERO), count_in(tune.metre, tune.first_offset()));
    band.apply(Command::Play {
        from,
        count: count.clone(),
    });
    let mut out = vec![0.0; 2 * RATE as usize / 2];
    let halves = ((tempo.seconds(count.length) + seconds) * 2.0).floor();
    for half in 0..500 {
        if f64::from(half) >= halves {
            break;
        }
        band.fill(&mut out);
        let peak = out
            .iter()
            .fold(0.0_f32, |peak, sample| peak.max(sample.abs()));
        assert!(peak > 0.003, "half second {half}");
    }
}
