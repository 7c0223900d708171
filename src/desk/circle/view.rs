//! The circle as it is seen.

use crate::circle::{KeyEase, RankedKey, SeatInKey, Sheet, tune_ease};
use crate::frets::{Capo, Instrument};
use crate::theory::{NoteName, NoteStyle, Pitch, Reads};

use super::super::cards::{Hands, key_name, style};
use super::super::finder::FinderView;
use super::super::settings::{Settings, Tuning};
use super::super::songbook::TuneId;
use super::super::stand::ShapeView;
use super::seats::{Plays, SeatSettings, Sings};

/// A key as it is told: its tonic in the player's names, and its mode by id.
pub type KeyName = (String, String);

/// What a seat is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatTitle {
    /// The player's own name for it; empty where there is none.
    pub name: String,
    /// What is played.
    pub plays: Plays,
    /// Which of several that play the same and have no name, from 1; 0 where it is alone.
    pub number: usize,
    /// Whether it is the player of the settings.
    pub player: bool,
}

/// A chord in the terms of a seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatChord {
    /// As it sounds.
    pub sounding: String,
    /// The chord whose shape the hand makes behind a capo.
    pub held: Option<String>,
    /// As it stands on a transposed page.
    pub written: Option<String>,
    /// How it is held.
    pub shape: Option<ShapeView>,
}

impl SeatChord {
    /// What the player of the seat calls it: the shape that is held or what is on the page, else what sounds.
    pub fn own(&self) -> &str {
        let own = self.held.as_ref().or(self.written.as_ref());
        own.unwrap_or(&self.sounding)
    }
}

/// What a seat plays of the tune in its key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatSheet {
    /// The fret of the capo; 0 is none.
    pub capo: u8,
    /// The key whose shapes the hand makes.
    pub shapes: KeyName,
    /// The key on a transposed page.
    pub written: Option<KeyName>,
    /// Notes of the courses, where it is tuned anew for the key.
    pub tuned: Option<String>,
    /// Whether a course is then above its usual pitch.
    pub tight: bool,
    /// The tune's chords in the order of their coming.
    pub chords: Vec<SeatChord>,
}

/// A seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatView {
    /// What it is called.
    pub title: SeatTitle,
    /// What is set.
    pub set: SeatSettings,
    /// The usual tuning and those that players share; empty without a fingerboard.
    pub tunings: Vec<Tuning>,
    /// Names of the chords that are known; `None` is all.
    pub known: Option<Vec<String>>,
    /// The lowest and the highest note that is sung.
    pub voice: Option<(String, String)>,
    /// What it plays; `None` without a tune.
    pub sheet: Option<SeatSheet>,
}

/// The tune that the circle looks at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CircleTune {
    /// Its place in the songbook.
    pub id: TuneId,
    /// Its title.
    pub title: String,
    /// The key it is looked at in.
    pub key: KeyName,
    /// Whether it is on the stand.
    pub on_stand: bool,
}

/// What a key asks of a voice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VoiceView {
    /// The melody's lowest note.
    pub low: String,
    /// The melody's highest note.
    pub high: String,
    /// The singer's highest note, and semitones that the melody goes above it.
    pub top: (String, i32),
    /// The singer's lowest note, and semitones that the melody goes below it.
    pub bottom: (String, i32),
}

/// What a key is to a seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeatKeyView {
    /// How easy it is.
    pub ease: KeyEase,
    /// Capo and the key whose shapes are held, where there is a fingerboard.
    pub capo: Option<(u8, KeyName)>,
    /// Whether the seat uses a capo at all, so that none is worth telling.
    pub uses_capo: bool,
    /// Chords of the tune, and how many of them are known shapes, where not all are.
    pub known: Option<(usize, usize)>,
    /// The hardest chord as it is held, where it is hard.
    pub hardest: Option<String>,
    /// Whether open strings ring through.
    pub drones: bool,
    /// Notes of the courses, where it is tuned anew for the key.
    pub tuned: Option<String>,
    /// Semitones of the melody below the lowest string, and its highest fret.
    pub melody: Option<(u8, u8)>,
    /// The melody in the voice.
    pub voice: Option<VoiceView>,
    /// The key on a transposed page.
    pub written: Option<KeyName>,
}

/// A key and what it is to the circle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RankedView {
    /// The key.
    pub key: KeyName,
    /// Its tonic.
    pub tonic: NoteName,
    /// Whether the circle plays in it now.
    pub called: bool,
    /// Whether the tune is written in it.
    pub written: bool,
    /// How easy it is for all together, 0 to 100.
    pub ease: u8,
    /// What it is to each seat.
    pub seats: Vec<SeatKeyView>,
}

/// The circle view.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CircleView {
    /// The tune; `None` where there is none on the stand and none was chosen.
    pub tune: Option<CircleTune>,
    /// The seats, the player first.
    pub seats: Vec<SeatView>,
    /// The twelve keys, the best first; empty without a tune.
    pub keys: Vec<RankedView>,
    /// Which of them is looked at.
    pub looked_at: usize,
    /// The seat that was removed last and can be put back.
    pub removed: Option<SeatTitle>,
    /// Whether another seat finds room.
    pub room: bool,
    /// Tunes to choose from.
    pub finder: FinderView,
}

/// Difficulty, in fingers, from which the hardest chord is worth a word.
const HARD: f32 = 4.0;

/// The titles of seats, those without a name numbered where several play the same.
pub(super) fn titles(seats: &[SeatSettings]) -> Vec<SeatTitle> {
    let alike = |one: &SeatSettings, other: &SeatSettings| {
        one.name.is_empty() && other.name.is_empty() && one.plays == other.plays
    };
    let title = |(place, seat): (usize, &SeatSettings)| {
        let count = seats.iter().filter(|other| alike(seat, other)).count();
        let before = { seats[..place].iter() }.filter(|other| alike(seat, other));
        SeatTitle {
            name: seat.name.trim_end().to_owned(),
            plays: seat.plays.clone(),
            number: if count > 1 { before.count() + 1 } else { 0 },
            player: place == 0,
        }
    };
    seats.iter().enumerate().map(title).collect()
}

/// A seat with its sheet.
pub(super) fn seat(
    title: SeatTitle,
    set: &SeatSettings,
    sheet: Option<&Sheet>,
    settings: &Settings,
) -> SeatView {
    let style = style(settings);
    let known = set.known(settings).filter(|_| set.instrument().is_some());
    SeatView {
        title,
        tunings: match &set.plays {
            Plays::Instrument(id) => settings.tunings_of(id, &set.tuning),
            _ => Vec::new(),
        },
        known: known.map(|known| known.iter().map(|chord| chord.in_style(style)).collect()),
        voice: set.sings.map(|sings| {
            let compass = sings.compass();
            (note(compass.low, style), note(compass.high, style))
        }),
        sheet: sheet.map(|sheet| seat_sheet(set, sheet, settings)),
        set: set.clone(),
    }
}

fn seat_sheet(set: &SeatSettings, sheet: &Sheet, settings: &Settings) -> SeatSheet {
    let style = style(settings);
    let hands = { sheet.instrument.clone() }
        .map(|instrument| Hands::of(instrument, sheet.capo, set.left_handed, style));
    let reads = matches!(set.plays, Plays::Page(reads) if reads != Reads::Concert);
    let chords = sheet.lines.iter().map(|line| SeatChord {
        sounding: line.sounding.in_style(style),
        held: (sheet.capo > 0).then(|| line.held.in_style(style)),
        written: reads.then(|| line.written.in_style(style)),
        shape: { line.shape.clone().zip(hands.as_ref()) }
            .map(|(shape, hands)| hands.drawn(shape, (1, 1))),
    });
    let retuned = sheet.setup.is_some_and(|setup| setup.tuning.is_some());
    let tuned = sheet.instrument.as_ref().filter(|_| retuned);
    SeatSheet {
        capo: sheet.capo,
        shapes: key_name(sheet.shapes, settings),
        written: reads.then(|| key_name(sheet.written, settings)),
        tuned: tuned.map(|tuned| courses(tuned, style)),
        tight: tuned.zip(set.instrument()).is_some_and(|(tuned, usual)| {
            let pairs = tuned.courses.iter().zip(&usual.courses);
            { pairs }.any(|(tuned, usual)| tuned.open.midi() > usual.open.midi())
        }),
        chords: chords.collect(),
    }
}

fn courses(instrument: &Instrument, style: NoteStyle) -> String {
    let open = |course| instrument.sound(course, 0, Capo::NONE);
    let names = (0..instrument.courses.len()).filter_map(open);
    let names: Vec<_> = names.map(|note| note.name.in_style(style)).collect();
    names.join(" ")
}

fn note(pitch: Pitch, style: NoteStyle) -> String {
    format!("{}{}", pitch.name.in_style(style), pitch.octave)
}

/// The ranked keys as they are told.
pub(super) fn keys(
    ranked: &[RankedKey],
    (called, written): (NoteName, NoteName),
    seats: &[SeatSettings],
    settings: &Settings,
) -> Vec<RankedView> {
    let eases = tune_ease(ranked);
    let key = |(key, (share, eases)): (&RankedKey, (f32, Vec<KeyEase>))| {
        let each = key.seats.iter().zip(seats).zip(eases);
        // Between 0 and 100.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let ease = (share * 100.0).round() as u8;
        RankedView {
            key: key_name(key.key, settings),
            tonic: key.key.tonic,
            called: key.key.tonic.class() == called.class(),
            written: key.key.tonic.class() == written.class(),
            ease,
            seats: each
                .map(|((in_key, set), ease)| in_words(in_key, set, ease, settings))
                .collect(),
        }
    };
    ranked.iter().zip(eases).map(key).collect()
}

fn in_words(
    in_key: &SeatInKey,
    set: &SeatSettings,
    ease: KeyEase,
    settings: &Settings,
) -> SeatKeyView {
    let style = style(settings);
    let hands = in_key.hands.as_ref();
    let reads = matches!(set.plays, Plays::Page(reads) if reads != Reads::Concert);
    SeatKeyView {
        ease,
        capo: hands.map(|hands| (hands.capo.fret, key_name(hands.capo.shapes, settings))),
        uses_capo: set.habit() != crate::circle::CapoHabit::Never,
        known: { hands }
            .filter(|hands| hands.capo.known < hands.chords)
            .map(|hands| (hands.capo.known, hands.chords)),
        hardest: hands
            .and_then(|hands| hands.capo.hardest)
            .filter(|&(_, hard)| hard >= HARD)
            .map(|(chord, _)| chord.in_style(style)),
        drones: hands.is_some_and(|hands| hands.drones > 0),
        tuned: hands
            .and_then(|hands| hands.setup)
            .filter(|setup| setup.tuning.is_some())
            .zip(set.instrument())
            .map(|(setup, usual)| courses(&setup.tuned(&usual), style)),
        melody: in_key
            .melody
            .map(|melody| (melody.below, melody.highest_fret)),
        voice: in_key
            .voice
            .zip(set.sings.map(Sings::compass))
            .map(|(asked, sings)| VoiceView {
                low: note(asked.melody.low, style),
                high: note(asked.melody.high, style),
                top: (note(sings.high, style), asked.over),
                bottom: (note(sings.low, style), asked.under),
            }),
        written: reads.then(|| key_name(in_key.written, settings)),
    }
}
