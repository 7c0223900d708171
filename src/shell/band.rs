//! `fourcourse band TUNE --out FILE.wav`: a tune to play along with, as the band plays it.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, BufWriter, IsTerminal, Seek, Write, stderr};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use clap::builder::PossibleValuesParser;
use clap::{Args, ValueEnum};
use hound::{SampleFormat, WavSpec, WavWriter};
use indicatif::{ProgressBar, ProgressStyle};

use fourcourse::band::{
    BPM, Band, Command, Ending, Human, Player, SILENT_AT_FIRST, Score, ScoreOptions, Style,
    Voicings, count_in,
};
use fourcourse::chart::{Pace, Playing, Ticks, Tune};

use super::{Failure, Said, Shell, songbook};

/// Times through when the tune does not say: the least that a circle plays (common practice: 3 to 8).
const TIMES: u32 = 3;

/// Seconds that a file may last at most, its end included: a WAV file has 4 GiB.
const MOST_SECONDS: f64 = 3.0 * 3600.0;

/// Seconds that the last sound may take to fade.
const FADE_SECONDS: u32 = 4;

/// What is no longer heard: -80 dB.
const SILENT: f32 = 1e-4;

/// Frames rendered in one go.
const CHUNK: usize = 4096;

/// A tune as the band plays it, counted in, in a WAV file
#[derive(Debug, Args)]
pub(super) struct PlayAlong {
    /// Words of its title, its number in the list, or a file
    tune: String,

    /// The key that was called: A, Bb
    #[arg(long, value_name = "KEY")]
    key: Option<String>,

    /// Beats a minute, in the beat that the tune is counted in: 30 to 300
    #[arg(long, value_name = "BPM", value_parser = tempo)]
    tempo: Option<f32>,

    /// How often it is played, or the loop
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=100))]
    times: Option<u32>,

    /// How the band accompanies; without it, as suits the tune
    #[arg(long, value_parser = PossibleValuesParser::new(Style::all().map(Style::id)))]
    style: Option<String>,

    /// Leave out a player; may be said again
    #[arg(long, value_name = "PART")]
    mute: Vec<Who>,

    /// Play with this player only; may be said again
    #[arg(long, value_name = "PART", conflicts_with = "mute")]
    only: Vec<Who>,

    /// Let play along who is silent otherwise: drones, or a click on each beat
    #[arg(long, value_name = "PART", conflicts_with = "only")]
    with: Vec<Who>,

    /// Only these bars, again and again: counted from 1 as they are played, a pickup not counted
    #[arg(long = "loop", value_name = "5-8", value_parser = bars)]
    bars: Option<(u32, u32)>,

    /// How the last time ends
    #[arg(long, default_value = "held", conflicts_with = "bars")]
    ending: End,

    /// Another number is another evening: hands are late by other small amounts
    #[arg(long, value_name = "N", default_value_t = 1)]
    seed: u64,

    /// Nobody is ever late, and each stroke as strong as written
    #[arg(long)]
    exact: bool,

    /// Frames a second
    #[arg(long, default_value = "48000", value_parser = ["44100", "48000"])]
    rate: String,

    /// 32-bit floating point instead of 16 bits
    #[arg(long)]
    float: bool,

    /// The file to write
    #[arg(long, value_name = "FILE.wav")]
    out: PathBuf,
}

#[derive(Debug, Clone, Copy, PartialEq, ValueEnum)]
enum Who {
    Melody,
    Chop,
    Guitar,
    Bass,
    Drones,
    Click,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum End {
    /// As written
    Plain,
    /// The last chord is held
    Held,
    /// The last line comes once more
    Tag,
}

fn tempo(text: &str) -> Result<f32, String> {
    match text.parse() {
        Ok(bpm) if BPM.contains(&bpm) => Ok(bpm),
        _ => Err("a number from 30 to 300".to_owned()),
    }
}

fn bars(text: &str) -> Result<(u32, u32), String> {
    let (first, last) = text.split_once(['-', '–']).unwrap_or((text, text));
    match (first.trim().parse(), last.trim().parse()) {
        (Ok(first), Ok(last)) if 1 <= first && first <= last => Ok((first, last)),
        _ => Err("bars such as 5-8".to_owned()),
    }
}

impl Who {
    fn player(self) -> Player {
        match self {
            Self::Melody => Player::Melody,
            Self::Chop => Player::Chop,
            Self::Guitar => Player::Guitar,
            Self::Bass => Player::Bass,
            Self::Drones => Player::Drones,
            Self::Click => Player::Click,
        }
    }
}

impl PlayAlong {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let found = songbook::find(&self.tune, shell)?;
        let tune = found.in_called_key(self.key.as_deref(), shell)?;
        let mut track = self.track(&tune)?;
        self.write(&mut track).map_err(|why| {
            Failure::new("shell-file-unwritable")
                .with("file", self.out.display())
                .with("why", why)
        })?;
        Ok(Said {
            out: String::new(),
            err: found.remark,
        })
    }

    /// The band with everything it has to know.
    fn track(&self, tune: &Tune) -> Result<Track, Failure> {
        let playing = tune.playing();
        if playing.length <= Ticks::ZERO {
            return Err(Failure::new("shell-band-no-music"));
        }
        let mut options = ScoreOptions::fitting(tune);
        if let Some(style) = self.style.as_deref().and_then(Style::named) {
            options.style = style;
        }
        options.ending = match self.ending {
            End::Plain => Ending::Plain,
            End::Held => Ending::Held,
            End::Tag => Ending::Tag,
        };
        let score = Score::of(tune, &playing, &options, &mut Voicings::default());
        let mut tempo = tune.tempo_or_fitting(Pace::SlowJam);
        tempo.bpm = self
            .tempo
            .unwrap_or(tempo.bpm)
            .clamp(*BPM.start(), *BPM.end());
        let times = tune.times_through.map_or(TIMES, u32::from).max(1);
        let times = self.times.unwrap_or(times);
        let range = self.bars.map(|bars| range(&playing, bars)).transpose()?;
        let (bar, at, length) = match range {
            Some((bar, start, end)) => (bar, start, (end - start) * i64::from(times)),
            None => {
                let but_last = score.length * i64::from(times - 1);
                (0, Ticks::ZERO, but_last + score.last_length)
            }
        };
        let first = &playing.bars[bar];
        let count = count_in(first.metre, first.offset);
        let seconds = tempo.seconds(count.length + length);
        if seconds > MOST_SECONDS {
            return Err(Failure::new("shell-band-too-long"));
        }
        let rate = self.rate.parse().unwrap_or(48_000);
        let mut band = Band::new(rate);
        for player in Player::ALL {
            band.apply(Command::Mute(player, !self.plays(player)));
        }
        if !self.exact {
            let (seed, amount) = (self.seed, 1.0);
            band.apply(Command::Human(Human { seed, amount }));
        }
        band.apply(Command::Score(Arc::new(score)));
        band.apply(Command::Tempo(tempo));
        band.apply(Command::Times(times));
        band.apply(Command::Loop(range.map(|(_, start, end)| (start, end))));
        let from = (0, at);
        band.apply(Command::Play { from, count });
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // three hours at most
        let frames = (seconds * f64::from(rate)).round() as u64;
        Ok(Track { band, rate, frames })
    }

    fn plays(&self, player: Player) -> bool {
        let named = |parts: &[Who]| parts.iter().any(|part| part.player() == player);
        if self.only.is_empty() {
            let silent = SILENT_AT_FIRST.contains(&player) && !named(&self.with);
            !silent && !named(&self.mute)
        } else {
            named(&self.only)
        }
    }

    /// Writes beside the file that is wanted, and puts it in its place when it is whole.
    fn write(&self, track: &mut Track) -> Result<(), Box<dyn std::error::Error>> {
        let part = Part::beside(&self.out)?;
        let spec = WavSpec {
            channels: 2,
            sample_rate: track.rate,
            bits_per_sample: if self.float { 32 } else { 16 },
            sample_format: match self.float {
                true => SampleFormat::Float,
                false => SampleFormat::Int,
            },
        };
        track.play(
            WavWriter::new(BufWriter::new(&part.file), spec)?,
            self.float,
        )?;
        part.keep(&self.out)?;
        Ok(())
    }
}

/// A file that is not whole yet. It is removed unless it is kept.
struct Part {
    path: PathBuf,
    file: File,
}

impl Part {
    fn beside(out: &Path) -> io::Result<Self> {
        let mut name = OsString::from(".");
        name.push(out.file_name().unwrap_or_default());
        name.push(format!(".{}.part", std::process::id()));
        let path = out.with_file_name(name);
        let file = File::create_new(&path)?;
        Ok(Self { path, file })
    }

    fn keep(self, out: &Path) -> io::Result<()> {
        fs::rename(&self.path, out)
    }
}

impl Drop for Part {
    fn drop(&mut self) {
        // Once it is kept there is none; and where it cannot be removed, nothing better can be done.
        let _ = fs::remove_file(&self.path);
    }
}

/// Where a loop of bars begins: its first bar in playing order, and its first and last moment.
fn range(playing: &Playing, (first, last): (u32, u32)) -> Result<(usize, Ticks, Ticks), Failure> {
    let counted = || {
        playing
            .bars
            .iter()
            .enumerate()
            .filter(|(_, bar)| !bar.pickup)
    };
    let find = |number: u32| {
        let found = counted().nth(number as usize - 1);
        found.ok_or_else(|| Failure::new("shell-no-bar").with("bar", number))
    };
    let (bar, start) = find(first)?;
    let (_, end) = find(last)?;
    Ok((bar, start.start, end.end()))
}

/// A band that is about to play, and for how long.
struct Track {
    band: Band,
    rate: u32,
    /// Frames until the tune is over.
    frames: u64,
}

impl Track {
    fn play<W: Write + Seek>(
        &mut self,
        mut wav: WavWriter<W>,
        float: bool,
    ) -> Result<(), hound::Error> {
        let bar = progress(self.frames);
        let mut block = [0.0; 2 * CHUNK];
        // What the band holds back is not to be a silence in front.
        let late = self.band.latency();
        self.band.fill(&mut block[..2 * late.min(CHUNK)]);
        let end = self.frames + late as u64;
        let most = end + u64::from(FADE_SECONDS * self.rate);
        while self.band.frame() < most {
            let over = self.band.frame() >= end;
            if over && self.band.transport().is_going() {
                self.band.apply(Command::Stop);
            }
            let left = if over { most } else { end } - self.band.frame();
            let frames = usize::try_from(left).map_or(CHUNK, |left| left.min(CHUNK));
            let block = &mut block[..2 * frames];
            self.band.fill(block);
            for &sample in &*block {
                if float {
                    wav.write_sample(sample)?;
                } else {
                    #[allow(clippy::cast_possible_truncation)] // the limiter keeps it below 1
                    wav.write_sample((sample * 32_767.0).round() as i16)?;
                }
            }
            bar.set_position(self.band.frame());
            if over && block.iter().all(|sample| sample.abs() < SILENT) {
                break;
            }
        }
        bar.finish_and_clear();
        wav.finalize()
    }
}

/// A bar on a terminal, and nothing in a file or a pipe.
fn progress(frames: u64) -> ProgressBar {
    if !stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new(frames);
    match ProgressStyle::with_template("{bar:40} {percent:>3} %") {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}
