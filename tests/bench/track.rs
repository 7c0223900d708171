//! A track of three minutes, from the chart to the last frame: how many times faster than it lasts, what the worst block
//! of 256 frames takes of its time, and, beside it, a SoundFont synthesiser of the registry (rustysynth) on the same
//! strokes where a SoundFont is installed.

use std::fs::File;
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use fourcourse::band::{
    Action, Band, Command, CountIn, Human, Player, Score, ScoreOptions, Sequencer, Transport,
    Voicings,
};
use fourcourse::chart::{Tempo, Ticks, Tune};
use rustysynth::{SoundFont, Synthesizer, SynthesizerSettings};

const RATE: u32 = 48_000;
const BLOCK: usize = 256;
const SECONDS: u64 = 180;

/// Where Debian puts `timgm6mb-soundfont`.
const SOUND_FONT: &str = "/usr/share/sounds/sf2/TimGM6mb.sf2";

fn tune() -> Tune {
    let text = include_bytes!("../../songbook/millrace-reel.abc");
    fourcourse::formats::abc::read(text).tunes.remove(0).tune
}

fn score(tune: &Tune) -> Score {
    let options = ScoreOptions::fitting(tune);
    Score::of(tune, &tune.playing(), &options, &mut Voicings::default())
}

/// Everybody plays, drones and clicks too, at a dancer's tempo.
fn commands(tune: &Tune) -> Vec<Command> {
    let (seed, amount) = (1, 1.0);
    let beat = Ticks::of(1, 2);
    vec![
        Command::Score(Arc::new(score(tune))),
        Command::Tempo(Tempo { bpm: 112.0, beat }),
        Command::Human(Human { seed, amount }),
        Command::Mute(Player::Click, false),
        Command::Play {
            from: (0, Ticks::ZERO),
            count: CountIn::default(),
        },
    ]
}

fn blocks() -> usize {
    usize::try_from(SECONDS * u64::from(RATE)).unwrap_or(0) / BLOCK
}

/// The time of each block.
fn band(tune: &Tune) -> Vec<Duration> {
    let mut band = Band::new(RATE);
    for command in commands(tune) {
        band.apply(command);
    }
    let mut block = [0.0; 2 * BLOCK];
    let block = |_| {
        let start = Instant::now();
        band.fill(&mut block);
        start.elapsed()
    };
    (0..blocks()).map(block).collect()
}

/// The same strokes as notes of General MIDI: steel guitar for the plucked, acoustic bass.
fn sound_font(tune: &Tune, font: &Arc<SoundFont>) -> Option<Vec<Duration>> {
    let settings = SynthesizerSettings::new(i32::try_from(RATE).ok()?);
    let mut synthesizer = Synthesizer::new(font, &settings).ok()?;
    for (channel, program) in [(0, 25), (1, 25), (2, 25), (3, 32), (4, 25)] {
        synthesizer.process_midi_message(channel, 0xC0, program, 0);
    }
    let beat = Ticks::QUARTER;
    let mut sequencer = Sequencer::resuming(Transport::new(RATE, Tempo { bpm: 120.0, beat }), 0);
    for command in commands(tune) {
        sequencer.apply(0, command);
    }
    let mut sounding = [[None::<i32>; 12]; 6];
    let (mut left, mut right) = ([0.0; BLOCK], [0.0; BLOCK]);
    let mut frame = 0;
    let mut times = Vec::new();
    for _ in 0..blocks() {
        let start = Instant::now();
        let until = frame + BLOCK as u64;
        let mut done = 0;
        while let Some((at, action)) = sequencer.next(frame, until) {
            let ready = done + usize::try_from(at - frame).unwrap_or(0);
            synthesizer.render(&mut left[done..ready], &mut right[done..ready]);
            (done, frame) = (ready, at);
            match action {
                Action::Strike {
                    player,
                    course,
                    midi,
                    force,
                    ..
                } => {
                    let channel = i32::from(player as u8);
                    let slot = &mut sounding[player as usize][usize::from(course)];
                    if let Some(before) = slot.replace(i32::from(midi)) {
                        synthesizer.note_off(channel, before);
                    }
                    #[allow(clippy::cast_possible_truncation)] // 0 to 127
                    synthesizer.note_on(channel, i32::from(midi), (force * 127.0) as i32);
                }
                Action::Damp { player, course } => {
                    if let Some(note) = sounding[player as usize][usize::from(course)].take() {
                        synthesizer.note_off(i32::from(player as u8), note);
                    }
                }
                Action::Faster => {}
                Action::DampAll => synthesizer.note_off_all(false),
                Action::Click { .. } => synthesizer.note_on(9, 37, 100),
            }
        }
        synthesizer.render(&mut left[done..], &mut right[done..]);
        frame = until;
        times.push(start.elapsed());
    }
    Some(times)
}

fn report(name: &str, mut times: Vec<Duration>) {
    let total: Duration = times.iter().sum();
    times.sort();
    let deadline = BLOCK as f64 / f64::from(RATE);
    let share = |time: Duration| 100.0 * time.as_secs_f64() / deadline;
    println!(
        "{name}: {SECONDS} s in {:.2} s, {:.0} times real time; blocks of {BLOCK} frames: median {:.2} %, 99.9th per cent \
         {:.2} %, worst {:.2} % of their time",
        total.as_secs_f64(),
        SECONDS as f64 / total.as_secs_f64(),
        share(times[times.len() / 2]),
        share(times[times.len() * 999 / 1000]),
        share(times[times.len() - 1]),
    );
}

fn track(c: &mut Criterion) {
    let tune = tune();
    c.bench_function("track/the score of a reel", |b| b.iter(|| score(&tune)));
    report("track/the band", band(&tune));
    let font = File::open(Path::new(SOUND_FONT)).ok();
    match font.and_then(|mut file| SoundFont::new(&mut file).ok()) {
        None => println!("track/rustysynth: SKIPPED, no SoundFont at {SOUND_FONT}"),
        Some(font) => {
            if let Some(times) = sound_font(&tune, &Arc::new(font)) {
                report("track/rustysynth", times);
            }
        }
    }
}

criterion_group!(benches, track);
criterion_main!(benches);
