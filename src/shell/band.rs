//! `fourcourse band TUNE --out FILE.wav`: a tune to play along with, as the band plays it.

use std::path::PathBuf;
use std::sync::Arc;

use clap::Args;
use clap::builder::{PossibleValuesParser, TypedValueParser};

use fourcourse::band::{
    BPM, Command, CountIn, Ending, Human, Player, SILENT_AT_FIRST, Score, ScoreOptions, Style,
    Voicings,
};
use fourcourse::chart::{Pace, Playing, Tempo, Ticks, Tune};

use super::failure::visible;
use super::target::Target;
use super::track::Track;
use super::{Failure, Said, Shell, header, songbook};

/// Times through when the tune does not say: the least that a circle plays (common practice: 3 to 8).
const TIMES: u32 = 3;

/// Seconds that a file may last at most, its end included: a WAV file has 4 GiB.
const MOST_SECONDS: f64 = 3.0 * 3600.0;

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
    #[arg(long, value_name = "PART", value_parser = player())]
    mute: Vec<Player>,

    /// Play with this player only; may be said again
    #[arg(long, value_name = "PART", value_parser = player(), conflicts_with = "mute")]
    only: Vec<Player>,

    /// Let play along who is silent otherwise: drones, or a click on each beat
    #[arg(long, value_name = "PART", value_parser = player(), conflicts_with = "only")]
    with: Vec<Player>,

    /// Only these bars, again and again: counted from 1 as they are played, a pickup not counted
    #[arg(long = "loop", value_name = "5-8", value_parser = bars)]
    bars: Option<(usize, usize)>,

    /// How the last time ends
    #[arg(long, default_value = "held", value_parser = ending(), conflicts_with = "bars")]
    ending: Ending,

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

/// A player by name.
fn player() -> impl TypedValueParser<Value = Player> {
    named(Player::ALL.map(|player| (player.id(), player)))
}

/// How the last time ends, by name.
fn ending() -> impl TypedValueParser<Value = Ending> {
    named(Ending::ALL.map(|ending| (ending.id(), ending)))
}

fn named<T: Copy + Send + Sync + 'static, const N: usize>(
    all: [(&'static str, T); N],
) -> impl TypedValueParser<Value = T> {
    let names = PossibleValuesParser::new(all.map(|(name, _)| name));
    names.try_map(move |wanted| {
        let found = all.iter().find(|(name, _)| *name == wanted);
        found.map(|(_, value)| *value).ok_or(wanted)
    })
}

fn tempo(text: &str) -> Result<f32, String> {
    match text.parse() {
        Ok(bpm) if BPM.contains(&bpm) => Ok(bpm),
        _ => Err("a number from 30 to 300".to_owned()),
    }
}

fn bars(text: &str) -> Result<(usize, usize), String> {
    let (first, last) = text.split_once(['-', '–']).unwrap_or((text, text));
    match (first.trim().parse(), last.trim().parse()) {
        (Ok(first), Ok(last)) => Ok((first, last)),
        _ => Err("bars such as 5-8".to_owned()),
    }
}

/// What is made, as the line says it in which the command ends.
struct Made {
    track: Track,
    style: &'static Style,
    tempo: Tempo,
    times: u32,
}

impl PlayAlong {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut found = songbook::find(&self.tune, shell)?;
        let tune = found.in_called_key(self.key.as_deref(), shell)?;
        let made = self.made(&tune)?;
        let unwritable = |why: &dyn std::fmt::Display| {
            Failure::new("shell-file-unwritable")
                .with("file", self.out.display())
                .with("why", why)
        };
        let mut target = Target::open(&self.out).map_err(|why| unwritable(&why))?;
        let stream = target.is_stream();
        let seconds = made
            .track
            .write(self.float, &mut target)
            .map_err(|why| unwritable(&why))?;
        target.keep().map_err(|why| unwritable(&why))?;
        let line = self.line(&tune, &made, seconds, shell);
        // What goes through a pipe may be what is printed, too.
        let (out, said) = match stream {
            true => (String::new(), line),
            false => (line, String::new()),
        };
        let err = found.remark + &said;
        Ok(Said { out, err })
    }

    /// Title, key, style, tempo, how often, how long, where.
    fn line(&self, tune: &Tune, made: &Made, seconds: f64, shell: &Shell) -> String {
        let words = &shell.words;
        let times = made.times.into();
        let times = match self.bars {
            None => words.say("shell-band-times", &[("times", times)]),
            Some((first, last)) => words.say(
                "shell-band-loop",
                &[
                    ("times", times),
                    ("first", first.into()),
                    ("last", last.into()),
                ],
            ),
        };
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // three hours at most
        let seconds = seconds.round() as u64;
        let parts = [
            tune.title.clone(),
            header::key(tune.key, shell),
            words.style(made.style),
            header::counted(made.tempo, shell),
            times,
            format!("{}:{:02}", seconds / 60, seconds % 60),
            self.out.display().to_string(),
        ];
        visible(&parts.join(shell.look.sign(" · ", ", "))) + "\n"
    }

    /// The band with everything it has to know.
    fn made(&self, tune: &Tune) -> Result<Made, Failure> {
        let playing = tune.playing();
        if playing.length <= Ticks::ZERO {
            return Err(Failure::new("shell-band-no-music"));
        }
        let mut options = ScoreOptions::fitting(tune);
        if let Some(style) = self.style.as_deref().and_then(Style::named) {
            options.style = style;
        }
        options.ending = self.ending;
        let score = Score::of(tune, &playing, &options, &mut Voicings::default());
        let mut tempo = tune.tempo_or_fitting(Pace::SlowJam);
        tempo.bpm = self
            .tempo
            .unwrap_or(tempo.bpm)
            .clamp(*BPM.start(), *BPM.end());
        let times = tune.times_through.map_or(TIMES, u32::from).max(1);
        let times = self.times.unwrap_or(times);
        let range = self.bars.map(|bars| range(&playing, bars)).transpose()?;
        let (at, length) = match range {
            Some((start, end)) => (start, (end - start) * i64::from(times)),
            None => {
                let but_last = score.length * i64::from(times - 1);
                (Ticks::ZERO, but_last + score.last_length)
            }
        };
        let count = CountIn::to(&playing, at);
        let seconds = tempo.seconds(count.length + length);
        if seconds > MOST_SECONDS {
            return Err(Failure::new("shell-band-too-long"));
        }
        let rate = self.rate.parse().unwrap_or(48_000);
        let mut commands: Vec<Command> = Player::ALL
            .map(|player| Command::Mute(player, !self.plays(player)))
            .into();
        if !self.exact {
            let (seed, amount) = (self.seed, 1.0);
            commands.push(Command::Human(Human { seed, amount }));
        }
        let from = (0, at);
        commands.extend([
            Command::Score(Arc::new(score)),
            Command::Tempo(tempo),
            Command::Times(times),
            Command::Loop(range),
            Command::Play { from, count },
        ]);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // three hours at most
        let frames = (seconds * f64::from(rate)).round() as u64;
        let track = Track {
            rate,
            commands,
            frames,
        };
        Ok(Made {
            track,
            style: options.style,
            tempo,
            times,
        })
    }

    fn plays(&self, player: Player) -> bool {
        if self.only.is_empty() {
            let silent = SILENT_AT_FIRST.contains(&player) && !self.with.contains(&player);
            !silent && !self.mute.contains(&player)
        } else {
            self.only.contains(&player)
        }
    }
}

/// From when to when a loop of bars goes, as a player counts them.
fn range(playing: &Playing, (first, last): (usize, usize)) -> Result<(Ticks, Ticks), Failure> {
    let bars = playing.count_all();
    let outside = |bar: usize| {
        Failure::new("shell-loop-outside")
            .with("bar", bar)
            .with("bars", bars)
    };
    let find = |bar: usize| playing.counted(bar).ok_or_else(|| outside(bar));
    let (from, to) = (find(first)?, find(last)?);
    playing.passage(from, to).ok_or_else(|| {
        Failure::new("shell-loop-backwards")
            .with("first", first)
            .with("last", last)
            .with("bars", bars)
    })
}
