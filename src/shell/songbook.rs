//! The player's songbook for the commands, and finding a tune in it.

use std::path::Path;

use chrono::{DateTime, Utc};

use fourcourse::chart::Tune;
use fourcourse::desk::{Entry, Settings, Songbook};
use fourcourse::frets::Instrument;
use fourcourse::store::search::fold;
use fourcourse::store::{Opened, Store, StoreError, data_folder, shipped};

use super::{Failure, Shell, header, notation, source};

/// Tunes that are named when several fit.
const MOST_NAMED: usize = 12;

/// Opens the songbook to write into it; a new one gets the shipped tunes first. The second value says what had to be put
/// aside.
pub(super) fn open(shell: &Shell) -> Result<(Store, String), Failure> {
    opened(shell, Store::open_soon)
}

/// The songbook to be looked into, also while the app has it open.
pub(super) fn read(shell: &Shell) -> Result<(Store, String), Failure> {
    opened(shell, Store::read)
}

fn opened(
    shell: &Shell,
    open: fn(&Path, DateTime<Utc>) -> Result<Opened, StoreError>,
) -> Result<(Store, String), Failure> {
    let folder = shell
        .data_folder
        .clone()
        .or_else(data_folder)
        .ok_or_else(|| Failure::new("shell-no-home"))?;
    let opened = open(&folder, Utc::now())?;
    let mut store = opened.store;
    if opened.new && !opened.read_only {
        store.restore(&shipped::tunes())?;
    }
    let remark = opened.set_aside.map_or_else(String::new, |aside| {
        let id = if aside.newer {
            "notice-set-aside-newer"
        } else {
            "notice-set-aside"
        };
        let file = aside.path.display().to_string();
        shell.words.say(id, &[("file", file.into())]) + "\n"
    });
    Ok((store, remark))
}

/// A tune that was asked for, the player's settings if there are any, and a remark.
pub(super) struct Found {
    pub(super) tune: Tune,
    pub(super) settings: Option<Settings>,
    pub(super) remark: String,
}

impl Found {
    /// The instrument that the player has set, or a mandolin.
    pub(super) fn instrument(&self) -> Instrument {
        let settings = self.settings.as_ref();
        settings.map_or_else(Instrument::mandolin, Settings::instrument)
    }

    /// The tune in the key that was called, if one was. A tune keeps its mode; where another one was called, the remark
    /// says so.
    pub(super) fn in_called_key(
        &mut self,
        key: Option<&str>,
        shell: &Shell,
    ) -> Result<Tune, Failure> {
        let Some(key) = key else {
            return Ok(self.tune.clone());
        };
        let called = notation::called(key, self.tune.key, shell)?;
        let tune = self.tune.in_key(called.tonic);
        if called.mode != tune.key.mode {
            let names = [("key", tune.key), ("called", called)];
            let names = names.map(|(name, key)| (name, header::key(key, shell).into()));
            self.remark += &shell.words.say("shell-keeps-mode", &names);
            self.remark.push('\n');
        }
        Ok(tune)
    }
}

/// Finds a tune by a path to a file, its number in the songbook, or words of its names. A title as it stands goes before
/// others that hold the same words, and whole words before parts of words and slips.
pub(super) fn find(wanted: &str, shell: &Shell) -> Result<Found, Failure> {
    let path = Path::new(wanted);
    if source::is_input(path) || path.is_file() {
        let mut book = source::tunes(path)?;
        source::name_untitled(&mut book, path, &shell.words);
        let mut tunes = book.tunes.into_iter();
        let first = tunes.next();
        if let Some(second) = tunes.next() {
            let titles = first.iter().chain([&second]).map(|read| &read.tune.title);
            let names: Vec<String> = titles
                .cloned()
                .chain(tunes.map(|read| read.tune.title))
                .collect();
            let failure = if source::is_input(path) {
                Failure::new("shell-many-in-input")
            } else {
                Failure::new("shell-many-in-file").with("file", path.display())
            };
            return Err(named(failure, &names));
        }
        let read = first.ok_or_else(|| Failure::new("shell-no-tune").with("file", wanted))?;
        return Ok(Found {
            remark: source::problems(&shell.words, path, &read.problems),
            tune: read.tune,
            settings: None,
        });
    }
    let (store, remark) = read(shell)?;
    let entry = choose(&store, wanted, shell)?;
    let tune = store
        .tune(entry.id)
        .ok_or_else(|| Failure::new("notice-tune-unreadable").line(entry.titles.concat()))?;
    Ok(Found {
        tune,
        settings: store.settings(),
        remark,
    })
}

fn choose<'a>(store: &'a Store, wanted: &str, shell: &Shell) -> Result<&'a Entry, Failure> {
    let entries = store.entries();
    if let Ok(number) = wanted.trim().parse::<u64>()
        && let Some(entry) = entries.iter().find(|entry| entry.id.0 == number)
    {
        return Ok(entry);
    }
    let unknown = || Failure::new("shell-tune-unknown").quoting(wanted);
    let wanted_words = fold(wanted);
    if wanted_words.is_empty() {
        return Err(unknown()); // no words find all tunes, which is no answer to a name
    }
    let found: Vec<&Entry> = store
        .search(wanted)
        .into_iter()
        .map(|place| &entries[place])
        .collect();
    let by = |fits: &dyn Fn(&str) -> bool| -> Vec<&Entry> {
        let fits = |entry: &&&Entry| entry.titles.iter().any(|title| fits(&fold(title)));
        found.iter().filter(fits).copied().collect()
    };
    let same = by(&|title| title == wanted_words);
    let whole = by(&|title| {
        let mut words = wanted_words.split(' ');
        words.all(|word| title.split(' ').any(|other| other == word))
    });
    let fitting = [same, whole, found]
        .into_iter()
        .find(|found| !found.is_empty());
    match fitting.as_deref() {
        None => Err(unknown()),
        Some(&[entry]) => Ok(entry),
        Some(several) => {
            let rows: Vec<_> = several.iter().map(|entry| line(entry, shell)).collect();
            let failure = Failure::new("shell-many-tunes").quoting(wanted);
            Err(named(failure, &rows))
        }
    }
}

/// A failure with the first of some names below it.
fn named(failure: Failure, names: &[String]) -> Failure {
    let mut failure = names
        .iter()
        .take(MOST_NAMED)
        .fold(failure, |failure, name| failure.line(format!("  {name}")));
    if names.len() > MOST_NAMED {
        failure = failure.line("  ...".to_owned());
    }
    failure
}

/// A tune to choose: its number, title and what tells it from others.
fn line(entry: &Entry, shell: &Shell) -> String {
    let title = entry.titles.first().map_or("", String::as_str);
    let rhythm = shell.words.rhythm(&entry.rhythm);
    let kind = [rhythm, header::key(entry.key, shell)];
    let kind: Vec<_> = kind.into_iter().filter(|word| !word.is_empty()).collect();
    format!("{} {title} ({})", entry.id.0, kind.join(", "))
}
