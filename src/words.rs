//! Words for the player: the one place where kinds and numbers become sentences, in the player's language.
//!
//! The words themselves stand in Fluent files under `ui/words/`, one folder a language.

mod band;
mod called;
mod circle;
mod porch;
mod tab;
mod tonight;

use std::io;

pub use fluent_bundle::FluentValue as Arg;
use i18n_embed::fluent::{FluentLanguageLoader, fluent_language_loader};
use i18n_embed_fl::fl;
use rust_embed::RustEmbed;

use crate::desk::{
    ChordCard, FollowState, FormChip, Language, MapBar, MissingNote, NextCard, Notice, RingString,
    ShapeView, SlotView, SongbookView, StandView, TuneRow, Verdict,
};

#[derive(RustEmbed)]
#[folder = "ui/words"]
#[include = "*.ftl"]
struct Files;

/// Words in one language; English stands in for what a language lacks.
///
/// ```
/// use fourcourse::{desk::Language, words::Words};
/// let mut words = Words::new(Language::German);
/// assert_eq!(words.get("stand-next"), "Nächster");
/// words.speak(Language::Spanish);
/// assert_eq!(words.get("stand-next"), "Siguiente");
/// ```
#[derive(Debug)]
pub struct Words {
    loader: FluentLanguageLoader,
    language: Language,
}

impl Words {
    /// Words in a language.
    pub fn new(language: Language) -> Self {
        let mut words = Self {
            loader: fluent_language_loader!(),
            language,
        };
        words.speak(language);
        words
    }

    /// Changes the language.
    pub fn speak(&mut self, language: Language) {
        self.language = language;
        if let Ok(tag) = language.tag().parse() {
            // Embedded files that do not load are a mistake of ours; then ids are shown, and a test has failed.
            let _ = i18n_embed::select(&self.loader, &Files, &[tag]);
        }
        // No direction marks round arguments: all three languages run from the left.
        self.loader.set_use_isolating(false);
    }

    /// The language that is spoken.
    pub fn language(&self) -> Language {
        self.language
    }

    /// The words of an id; the id itself where there are none.
    pub fn get(&self, id: &str) -> String {
        if self.loader.has(id) {
            self.loader.get(id)
        } else {
            id.to_owned()
        }
    }

    /// The sentence of an id with its arguments by name; the id itself where there are none. Numbers are given as
    /// numbers, so that the language can choose its plural.
    ///
    /// ```
    /// use fourcourse::{desk::Language, words::Words};
    /// let words = Words::new(Language::English);
    /// let said = |bars: usize| words.say("shell-read-counts", &[("bars", bars.into()), ("notes", 3.into())]);
    /// assert_eq!([said(1), said(2)], ["1 bar, 3 notes", "2 bars, 3 notes"]);
    /// ```
    pub fn say(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        if !self.loader.has(id) {
            return self.get(id);
        }
        self.loader
            .get_args_concrete(id, args.iter().cloned().collect())
    }

    /// Why the system refused, in the middle of a sentence.
    pub fn why(&self, error: &io::Error) -> String {
        match error.kind() {
            io::ErrorKind::NotFound => fl!(self.loader, "io-not-found"),
            io::ErrorKind::PermissionDenied => fl!(self.loader, "io-not-allowed"),
            io::ErrorKind::ReadOnlyFilesystem => fl!(self.loader, "io-read-only"),
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
                fl!(self.loader, "io-full")
            }
            io::ErrorKind::IsADirectory => fl!(self.loader, "io-is-folder"),
            io::ErrorKind::NotADirectory => fl!(self.loader, "io-not-folder"),
            io::ErrorKind::AlreadyExists => fl!(self.loader, "io-exists"),
            _ => {
                let text = error.to_string();
                let text = text.split(" (os error").next().unwrap_or_default();
                fl!(self.loader, "io-other", text = text)
            }
        }
    }

    /// The name of a rhythm by its id, or the tune's own word.
    pub fn rhythm(&self, id: &str) -> String {
        self.named("rhythm", id)
    }

    /// The name of an instrument by its id.
    pub fn instrument(&self, id: &str) -> String {
        self.named("instrument", id)
    }

    fn named(&self, kind: &str, id: &str) -> String {
        let key = format!("{kind}-{id}");
        if self.loader.has(&key) {
            self.loader.get(&key)
        } else {
            id.to_owned()
        }
    }

    /// A key with the name of a mode that its letters do not show: `A mixolydian`, `Em`.
    pub fn key(&self, key: &str, mode: &str) -> String {
        match mode {
            "major" | "minor" | "" => key.to_owned(),
            other => format!("{key} {}", self.named("mode", other)),
        }
    }

    /// A key as short as a badge needs it: `D`, `Dm`, `D dor`. The three letters are those of the ABC standard 2.1, which
    /// players of all languages read.
    pub fn key_badge(&self, tonic: &str, mode: &str) -> String {
        match mode {
            "major" | "" => tonic.to_owned(),
            "minor" => format!("{tonic}m"),
            other => format!("{tonic} {}", other.get(..3).unwrap_or(other)),
        }
    }

    /// What stands under a title in the songbook: `reel · starts on open A · AABB`, so that what is cut first is the form. The
    /// mode stands on the badge of the key.
    pub fn tune(&self, row: &TuneRow) -> String {
        let mut said = Vec::new();
        if !row.rhythm.is_empty() {
            said.push(self.rhythm(&row.rhythm));
        } else if !row.metre.is_empty() {
            said.push(row.metre.clone());
        }
        let start = self.start(row);
        if !start.is_empty() {
            said.push(start);
        }
        // A form that does not fit a glance says less than none.
        if !row.form.is_empty() && row.form.chars().count() <= 8 {
            said.push(row.form.clone());
        }
        said.join(" · ")
    }

    /// Where the melody of a tune begins; empty where there is none.
    fn start(&self, row: &TuneRow) -> String {
        match (row.start_course.as_str(), row.start_fret) {
            ("", _) => String::new(),
            (course, 0) => fl!(self.loader, "tune-starts-open", course = course),
            (course, fret) => fl!(
                self.loader,
                "tune-starts-fret",
                course = course,
                fret = fret
            ),
        }
    }

    /// How many tunes are shown, of how many.
    pub fn tunes(&self, view: &SongbookView) -> String {
        self.tunes_of(view.rows.len(), view.total)
    }

    /// So many tunes, of so many.
    fn tunes_of(&self, shown: usize, count: usize) -> String {
        if shown == count {
            fl!(self.loader, "songbook-count", count = count)
        } else {
            fl!(
                self.loader,
                "songbook-count-of",
                shown = shown,
                count = count
            )
        }
    }

    /// Where in the tune the player is: `A2 · bar 3 of 8 · time 2 of 3`, or without the bar.
    pub fn place(&self, view: &StandView, with_bar: bool) -> String {
        let mut said = Vec::new();
        let now = |chip: &&FormChip| chip.passed == crate::desk::Passed::Now;
        if let Some(chip) = view.form.iter().find(now) {
            said.push(chip_name(chip));
        }
        let (bar, bars) = view.bar;
        if with_bar && bar == 0 && bars > 0 {
            said.push(fl!(self.loader, "map-pickup"));
        } else if with_bar && bars > 0 {
            said.push(fl!(self.loader, "stand-bar-of", bar = bar, bars = bars));
        }
        said.push(if view.last_time {
            fl!(self.loader, "stand-last")
        } else if view.times == 0 {
            fl!(self.loader, "stand-time", time = view.time)
        } else {
            fl!(
                self.loader,
                "stand-time-of",
                time = view.time,
                times = view.times
            )
        });
        said.join(" · ")
    }

    /// How the Stand follows, in a word or three.
    pub fn state(&self, follow: FollowState) -> String {
        match follow {
            FollowState::Waiting => fl!(self.loader, "state-waiting"),
            FollowState::ByHand | FollowState::ByClock => fl!(self.loader, "state-now"),
            FollowState::CountIn { .. } => fl!(self.loader, "state-count-in"),
            FollowState::Held => fl!(self.loader, "state-held"),
            FollowState::Ended => fl!(self.loader, "state-ended"),
        }
    }

    /// How often the tune is played.
    pub fn times(&self, times: u32) -> String {
        if times == 0 {
            fl!(self.loader, "stand-open-end")
        } else {
            times.to_string()
        }
    }

    /// The key that a tune is written in.
    pub fn written_in(&self, key: &str) -> String {
        fl!(self.loader, "stand-written-in", key = key)
    }

    /// When the next chord comes.
    pub fn until(&self, next: &NextCard) -> String {
        if next.bars_left > 0 {
            fl!(self.loader, "next-in-bars", bars = next.bars_left)
        } else {
            fl!(self.loader, "next-in-beats", beats = next.beats_left)
        }
    }

    /// A chord by its number in the key: the 1 chord.
    pub fn degree(&self, number: &str) -> String {
        fl!(self.loader, "chord-degree", number = number)
    }

    /// With a capo: what the fingers play.
    pub fn played_as(&self, chord: &str) -> String {
        fl!(self.loader, "chord-played-as", chord = chord)
    }

    /// What a shape leaves out.
    pub fn missing(&self, missing: &[MissingNote]) -> String {
        let word = |note: &MissingNote| match note {
            MissingNote::Root => fl!(self.loader, "missing-root"),
            MissingNote::Third => fl!(self.loader, "missing-third"),
            MissingNote::Fifth => fl!(self.loader, "missing-fifth"),
            MissingNote::Seventh => fl!(self.loader, "missing-seventh"),
            MissingNote::Other => fl!(self.loader, "missing-other"),
            MissingNote::Bass => fl!(self.loader, "missing-bass"),
        };
        let mut words: Vec<_> = missing.iter().map(word).collect();
        words.dedup();
        words.join(", ")
    }

    /// Which of its shapes a chord is shown with.
    pub fn shape_of(&self, (which, count): (usize, usize)) -> String {
        if count < 2 {
            return String::new();
        }
        fl!(self.loader, "stand-shape-of", which = which, count = count)
    }

    /// A chord's name for those who listen.
    pub fn chord(&self, card: &ChordCard) -> String {
        if card.no_chord {
            return fl!(self.loader, "chord-none");
        }
        card.name.clone()
    }

    /// A shape for those who listen: every course with its fret and finger.
    pub fn shape(&self, chord: &str, shape: &ShapeView) -> String {
        let course = |(i, course): (usize, &String)| {
            let course = course.as_str();
            let finger = shape.fingers.get(i).copied().unwrap_or(0);
            match shape.frets.get(i).copied().flatten() {
                None => fl!(self.loader, "course-mute", course = course),
                Some(0) => fl!(self.loader, "course-open", course = course),
                Some(fret) if finger == 0 => {
                    fl!(self.loader, "course-fret", course = course, fret = fret)
                }
                Some(fret) => fl!(
                    self.loader,
                    "course-fret-finger",
                    course = course,
                    fret = fret,
                    finger = finger
                ),
            }
        };
        let courses: Vec<_> = shape.courses.iter().enumerate().map(course).collect();
        fl!(
            self.loader,
            "shape-said",
            chord = chord,
            courses = courses.join(", ")
        )
    }

    /// An open string for those who listen.
    pub fn ring(&self, ring: &RingString) -> String {
        let number = ring.string.map(|number| format!(" {number}"));
        let course = ring.name.clone() + &number.unwrap_or_default();
        match ring.verdict {
            Verdict::Ring => fl!(self.loader, "ring-yes", course = course),
            Verdict::Colour => fl!(self.loader, "ring-leave", course = course),
            Verdict::Clash => fl!(self.loader, "ring-clash", course = course),
        }
    }

    /// The strum for those who listen: the strokes of a bar in turn.
    pub fn strum(&self, slots: &[SlotView]) -> String {
        let stroke = |slot: &SlotView| {
            if slot.silent {
                fl!(self.loader, "stroke-silent")
            } else if slot.chop {
                fl!(self.loader, "stroke-chop")
            } else if slot.bass {
                fl!(self.loader, "stroke-bass")
            } else if slot.up {
                fl!(self.loader, "stroke-up")
            } else {
                fl!(self.loader, "stroke-down")
            }
        };
        let strokes: Vec<_> = slots.iter().map(stroke).collect();
        fl!(self.loader, "strum-said", strokes = strokes.join(", "))
    }

    /// A bar of the map for those who listen.
    pub fn bar(&self, bar: &MapBar) -> String {
        if bar.pickup {
            fl!(self.loader, "map-pickup")
        } else if bar.chords.is_empty() {
            fl!(self.loader, "map-bar-same")
        } else {
            fl!(self.loader, "map-bar", chords = bar.chords.as_str())
        }
    }

    /// A part of the form for those who listen.
    pub fn chip(&self, chip: &FormChip) -> String {
        let part = chip.part.as_str();
        if chip.pass == 0 {
            fl!(self.loader, "form-chip", part = part)
        } else {
            fl!(self.loader, "form-chip-pass", part = part, pass = chip.pass)
        }
    }

    /// A course a half step lower or higher, for those who listen.
    pub fn retune(&self, course: &str, up: bool) -> String {
        if up {
            fl!(self.loader, "settings-tune-up", course = course)
        } else {
            fl!(self.loader, "settings-tune-down", course = course)
        }
    }

    /// The version, as the settings tell it.
    pub fn version(&self) -> String {
        fl!(
            self.loader,
            "settings-version",
            version = env!("CARGO_PKG_VERSION")
        )
    }

    /// What the player should know.
    pub fn notice(&self, notice: &Notice) -> String {
        match notice {
            Notice::TuneUnreadable => fl!(self.loader, "notice-tune-unreadable"),
            Notice::SettingsNotKept => fl!(self.loader, "notice-settings-not-kept"),
            Notice::EveningNotKept => fl!(self.loader, "notice-evening-not-kept"),
            Notice::NotRestored => fl!(self.loader, "notice-not-restored"),
            Notice::SetAside {
                file, newer: true, ..
            } => {
                fl!(self.loader, "notice-set-aside-newer", file = file.as_str())
            }
            Notice::SetAside { file, rescued, .. } => {
                let (file, rescued) = (file.as_str(), *rescued);
                fl!(
                    self.loader,
                    "notice-set-aside",
                    file = file,
                    rescued = rescued
                )
            }
            Notice::NothingKept => fl!(self.loader, "notice-nothing-kept"),
            Notice::ReadOnly => fl!(self.loader, "notice-read-only"),
        }
    }
}

/// A part as the player calls it: `A2`, or `C` where it comes once.
pub fn chip_name(chip: &FormChip) -> String {
    if chip.pass == 0 {
        chip.part.clone()
    } else {
        format!("{}{}", chip.part, chip.pass)
    }
}

/// A tempo as musicians write it: the note that is counted, then beats a minute. The note values stand where the SMuFL
/// standard puts them, and the app's own font has them there.
pub fn tempo((bpm, (number, of)): (u32, (u32, u32))) -> String {
    let note = match (number, of) {
        (1, 2) => "\u{e1d3}",
        (3, 4) => "\u{e1d3}\u{e1e7}",
        (1, 8) => "\u{e1d7}",
        (3, 8) => "\u{e1d5}\u{e1e7}",
        (1, 4) => "\u{e1d5}",
        _ => return format!("{number}/{of} = {bpm}"),
    };
    format!("{note} = {bpm}")
}

/// The language that the system asks for first, of those that the app speaks; else English.
pub fn system_language() -> Language {
    i18n_embed::DesktopLanguageRequester::requested_languages()
        .iter()
        .find_map(|wanted| {
            Language::ALL
                .into_iter()
                .find(|known| wanted.language.as_str() == known.tag())
        })
        .unwrap_or(Language::English)
}
