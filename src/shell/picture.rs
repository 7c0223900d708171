//! `fourcourse picture VIEW [TUNE]`: any view as a PNG file, with no display.

use std::ops::RangeInclusive;
use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::tab::Ringing;
use super::{Failure, Said, Shell};

/// A view drawn into a PNG file; no display is needed
#[derive(Debug, Args)]
pub(super) struct Picture {
    /// What to draw
    view: View,

    /// Words of a tune's title, its number in the list, or a file; without it the first tune of the songbook
    tune: Option<String>,

    /// The key that was called: A, Bb
    #[arg(long, value_name = "KEY")]
    key: Option<String>,

    /// The bar that is being played: counted from 1 as it is played, a pickup not counted
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
    bar: Option<u32>,

    /// The time through that is being played
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=99))]
    time: u32,

    /// The instrument in the hands; without it the one of the settings
    #[arg(long, value_name = "NAME")]
    instrument: Option<String>,

    /// A capo, in frets
    #[arg(long, value_name = "N", default_value_t = 0, value_parser = clap::value_parser!(u8).range(..=9))]
    capo: u8,

    /// What chords are called
    #[arg(long)]
    names: Option<Names>,

    /// On the porch: open courses that ring along with the melody
    #[arg(long, value_enum, default_value_t = Ringing::Off)]
    drones: Ringing,

    /// On the porch: a second note a third, fifth or sixth away where the hand has time for it
    #[arg(long)]
    double_stops: bool,

    /// On the porch: a staff above the tablature
    #[arg(long)]
    staff: bool,

    /// On the porch: a row of fingers
    #[arg(long)]
    fingers: bool,

    /// Width and height in points
    #[arg(long, value_name = "WxH", default_value = "412x915", value_parser = size)]
    size: (u32, u32),

    /// Pixels for each point
    #[arg(long, value_name = "N", default_value_t = 2.0, value_parser = density)]
    density: f32,

    /// The colours
    #[arg(long)]
    theme: Option<Colours>,

    /// The file to write
    #[arg(long, value_name = "FILE.png")]
    out: PathBuf,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum View {
    Stand,
    Porch,
    Songbook,
    Called,
    Circle,
    Tonight,
    Settings,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Colours {
    Ebony,
    Spruce,
    Sun,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Names {
    Letters,
    Numbers,
    Both,
}

/// Points that a side of a picture may have; with fewer a view has no room for its words.
const SIDE: RangeInclusive<u32> = 200..=10_000;

fn size(text: &str) -> Result<(u32, u32), String> {
    let sides = text.split_once(['x', 'X', '×']);
    let sides = sides.and_then(|(width, height)| Some((width.parse().ok()?, height.parse().ok()?)));
    match sides {
        Some((width, height)) if SIDE.contains(&width) && SIDE.contains(&height) => {
            Ok((width, height))
        }
        _ => Err(format!(
            "a width and a height from {} to {}, such as 412x915",
            SIDE.start(),
            SIDE.end()
        )),
    }
}

fn density(text: &str) -> Result<f32, String> {
    match text.parse() {
        Ok(density) if (0.25..=8.0).contains(&density) => Ok(density),
        _ => Err("a number from 0.25 to 8".to_owned()),
    }
}

impl Picture {
    /// Says that this build draws nothing.
    #[cfg(not(feature = "app"))]
    pub(super) fn run(&self, _shell: &Shell) -> Result<Said, Failure> {
        Err(Failure::new("shell-no-picture").with("view", format!("{:?}", self.view)))
    }

    /// Draws from a copy of the songbook in memory, so that nothing is changed or kept.
    #[cfg(feature = "app")]
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        use std::collections::HashMap;
        use std::time::Duration;

        use fourcourse::audio::Sound;
        use fourcourse::desk::{
            Ask, CalledAsk, ChordNames, Desk, Planned, Played, PorchAsk, Room, Songbook, Theme,
            TuneId,
        };
        use fourcourse::store::Memory;

        use super::{notation, shapes, songbook, target};

        let now = Duration::ZERO;
        let mut remark = String::new();
        let (mut tunes, mut settings) = (Vec::new(), None);
        if let Some(wanted) = &self.tune {
            let found = songbook::find(wanted, shell)?;
            tunes.push(found.tune);
            settings = found.settings;
            remark += &found.remark;
        }
        let all = matches!(self.view, View::Songbook | View::Called | View::Tonight);
        let mut evening = None;
        if tunes.is_empty() || all || matches!(self.view, View::Circle) {
            let (store, aside) = songbook::read(shell)?;
            let mut ids = HashMap::new();
            // The first tune is on the stand; the list sorts itself.
            let most = if all { usize::MAX } else { 1 };
            for entry in store.entries() {
                if tunes.len() >= most {
                    break;
                }
                let Some(tune) = store.tune(entry.id) else {
                    continue;
                };
                let there = tunes.first() == Some(&tune);
                if !there {
                    tunes.push(tune);
                }
                let place = if there { 1 } else { tunes.len() as u64 };
                ids.insert(entry.id, TuneId(place));
            }
            settings = settings.or(store.settings());
            remark += &aside;
            evening = Some((store, ids));
        }
        let first = tunes.first().map(|tune| tune.key);
        let title = tunes.first().map(|tune| tune.title.clone());
        let place = match (self.bar, tunes.first()) {
            (Some(bar), Some(tune)) => Some(place(tune, bar)?),
            _ => None,
        };
        let mut settings = settings.unwrap_or_default();
        settings.language = Some(shell.words.language());
        if let Some(theme) = self.theme {
            settings.theme = match theme {
                Colours::Ebony => Theme::Ebony,
                Colours::Spruce => Theme::Spruce,
                Colours::Sun => Theme::Sun,
            };
        }
        if let Some(name) = &self.instrument {
            settings.instrument = shapes::instrument(name)?.id.to_owned();
        }
        let mut memory = Memory::new(tunes);
        if let Some((store, ids)) = evening {
            memory.keep_circle(&store.circle());
            // Tunes have other places in the copy.
            let list = store.tonight().into_iter();
            let list = list.filter_map(|planned| {
                let tune = *ids.get(&planned.tune)?;
                Some(Planned { tune, ..planned })
            });
            memory.keep_tonight(&list.collect::<Vec<_>>());
            for played in store.played() {
                if let Some(&tune) = ids.get(&played.tune) {
                    memory.keep_played(Played { tune, ..played });
                }
            }
        }
        let mut desk = Desk::new(Box::new(memory), Box::new(Sound::new(now)), settings, None);
        desk.ask(Ask::Open(TuneId(1)), now);
        if let (Some(key), Some(written)) = (&self.key, first) {
            desk.ask(
                Ask::KeyOn(notation::called(key, written, shell)?.tonic),
                now,
            );
        }
        desk.ask(Ask::Capo(self.capo), now);
        if let Some(names) = self.names {
            let names = match names {
                Names::Letters => ChordNames::Letters,
                Names::Numbers => ChordNames::Numbers,
                Names::Both => ChordNames::Both,
            };
            desk.ask(Ask::Names(names), now);
        }
        let times = desk.stand(now).map_or(0, |view| view.times);
        if times > 0 {
            desk.ask(Ask::Times(times.max(self.time)), now);
        }
        // A bar is begun where it is waited for; once the tune has begun, the bar after the last begins the next time.
        let begun = self.time > 1;
        if begun {
            desk.ask(Ask::NextBar, now);
        }
        for _ in 1..self.time {
            desk.ask(Ask::JumpTo(usize::MAX), now);
            desk.ask(Ask::NextBar, now);
        }
        if let Some(place) = place {
            desk.ask(Ask::JumpTo(place), now);
            if !begun {
                desk.ask(Ask::NextBar, now);
            }
        }
        desk.ask(
            Ask::Go(match self.view {
                View::Stand => Room::Stand,
                View::Porch => Room::Porch,
                View::Songbook => Room::Songbook,
                View::Called => Room::Called,
                View::Tonight => Room::Tonight,
                View::Circle => Room::Circle,
                View::Settings => Room::Settings,
            }),
            now,
        );
        for wish in [
            PorchAsk::Version(self.version()),
            PorchAsk::Staff(self.staff),
            PorchAsk::Fingers(self.fingers),
        ] {
            desk.ask(Ask::Porch(wish), now);
        }
        if let (View::Called, Some(_)) = (self.view, &self.tune) {
            let words = CalledAsk::Words(title.unwrap_or_default());
            desk.ask(Ask::Called(words), now);
        }
        if let (View::Called, Some(key)) = (self.view, &self.key) {
            let key = notation::key(key, shell)?;
            let key = notation::called(&key.to_string(), key, shell)?;
            desk.ask(Ask::Called(CalledAsk::Key(key)), now);
        }
        let png = fourcourse::bind::picture::render(Box::new(desk), self.size, self.density, now)
            .map_err(|why| Failure::new("shell-picture-failed").with("why", why))?;
        target::write(&self.out, &png).map_err(|why| {
            Failure::new("shell-file-unwritable")
                .with("file", self.out.display())
                .because(why)
        })?;
        Ok(Said {
            out: String::new(),
            err: remark,
        })
    }
}

#[cfg(feature = "app")]
impl Picture {
    fn version(&self) -> fourcourse::chart::Version {
        use fourcourse::chart::Version;
        match self.drones {
            _ if self.double_stops => Version::DoubleStops,
            Ringing::Off => Version::Plain,
            Ringing::Plain => Version::KeyDrones,
            Ringing::Chord => Version::ChordDrones,
        }
    }
}

/// Where in playing order the bar of a number is.
#[cfg(any(feature = "app", test))]
fn place(tune: &fourcourse::chart::Tune, number: u32) -> Result<usize, Failure> {
    let playing = tune.playing();
    let bars = playing.bars.iter().enumerate();
    let counted: Vec<usize> = bars
        .filter(|(_, bar)| !bar.pickup)
        .map(|(place, _)| place)
        .collect();
    let found = counted.get(number as usize - 1).copied();
    found.ok_or_else(|| {
        Failure::new("shell-no-bar")
            .with("bar", number)
            .with("bars", counted.len())
    })
}

#[cfg(test)]
mod tests {
    use fourcourse::desk::Language;
    use fourcourse::formats::abc;
    use fourcourse::words::Words;

    use super::*;

    #[test]
    fn a_bar_that_is_not_there_comes_with_how_many_there_are() {
        let text = b"X:1\nT:Two\nM:2/4\nL:1/4\nK:D\nA|:d f|e c:|\n";
        let tune = abc::read(text).tunes.remove(0).tune;
        assert_eq!(place(&tune, 4).unwrap(), 4);
        let failure = place(&tune, 5).unwrap_err();
        assert_eq!(
            failure.sentence(&Words::new(Language::English)),
            "The tune has no bar 5; it has 4."
        );
    }
}
