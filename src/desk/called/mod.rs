//! Somebody calls a tune: by its title, by a key alone; or a neighbour's hand shows a chord.
//!
//! A call is answered in two touches from anywhere: into this room, and the key or the tune. So the room always opens on
//! titles and keys, with nothing typed and no key chosen.

mod held;
mod key;
mod tunes;

pub use held::{HeldName, HeldView, LAST_FRET};
pub use key::{CapoView, KeyView, OtherKey, ScaleMark, SetupView};
pub use tunes::{CalledTune, MOST_FOUND};

use crate::circle::Hands;
use crate::frets::Instrument;
use crate::theory::{Key, Letter, Mode, NoteName};

use super::ask::Room;
use super::cards::style;
use super::settings::Settings;
use super::songbook::{Songbook, TuneId};
use held::Held;
use key::Answer;

/// What is looked up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CalledFace {
    /// A title or a key.
    #[default]
    Call,
    /// What a neighbour's hand holds.
    Held,
}

/// A wish of somebody who looks something up.
#[derive(Debug, Clone, PartialEq)]
pub enum CalledAsk {
    /// Look up a call, or a held chord.
    Face(CalledFace),
    /// Tunes whose names hold these words.
    Words(String),
    /// This key was called; the same once more takes it back.
    Key(Key),
    /// The mode of what was called, and of the keys to choose from.
    Mode(Mode),
    /// This tune was called: to the stand, in the called key if there is one.
    Open(TuneId),
    /// The tune on the stand, or the best match of the words, in the called key.
    ToStand,
    /// Back to where one came from.
    Leave,
    /// A finger on a course, counted from the left as it is seen, at a fret; the same once more takes it away.
    Finger(usize, u8),
    /// The course, counted likewise, is not played, or sounds open.
    Damp(usize),
    /// Nothing is held any more.
    Release,
    /// The neighbour's instrument, by its id.
    HeldOn(String),
    /// The neighbour's capo, in frets.
    HeldCapo(u8),
}

/// A tune that one touch brings to the stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToStand {
    /// Its place in the songbook.
    pub id: TuneId,
    /// Its title.
    pub title: String,
    /// The key that it will be in, in the player's names.
    pub key: String,
    /// The mode of that key, by id.
    pub mode: String,
}

/// The view of the called tune, key or chord.
#[derive(Debug, Clone, PartialEq)]
pub struct CalledView {
    /// What is looked up.
    pub face: CalledFace,
    /// The room that the way back leads to.
    pub from: Room,
    /// What was typed.
    pub words: String,
    /// The best matches, [`MOST_FOUND`] at most; none where nothing was typed.
    pub tunes: Vec<CalledTune>,
    /// How many tunes the words find.
    pub found: usize,
    /// The twelve keys in the mode: name and key.
    pub keys: Vec<(String, Key)>,
    /// Which of them was called.
    pub chosen: Option<usize>,
    /// The mode.
    pub mode: Mode,
    /// All that the called key holds.
    pub key: Option<KeyView>,
    /// What one touch brings to the stand.
    pub to_stand: Option<ToStand>,
    /// What the hand holds.
    pub held: HeldView,
}

/// The tonics to choose from: the keys of most tunes first (the trade sheet: common practice), the others by how often a
/// circle meets them (from memory). They keep their places in every mode, so that a finger finds them again.
const TONICS: [i32; 12] = {
    let [c, d, e, f, g, a, b] = [
        Letter::C.semitones(),
        Letter::D.semitones(),
        Letter::E.semitones(),
        Letter::F.semitones(),
        Letter::G.semitones(),
        Letter::A.semitones(),
        Letter::B.semitones(),
    ];
    [g, d, a, e, c, f, b, b - 1, e - 1, a - 1, f + 1, d - 1]
};

/// What was called.
#[derive(Debug)]
pub(super) struct Called {
    face: CalledFace,
    from: Room,
    words: String,
    /// What the words find; looked for once.
    found: Option<Vec<usize>>,
    mode: Mode,
    key: Option<Key>,
    answer: Option<Answer>,
    held: Held,
    /// A guitarist's hands, who remember how hard chords are.
    guitar: Hands,
}

impl Called {
    pub(super) fn new() -> Self {
        Self {
            face: CalledFace::default(),
            from: Room::Songbook,
            words: String::new(),
            found: None,
            mode: Mode::Major,
            key: None,
            answer: None,
            held: Held::default(),
            guitar: Hands::new(Instrument::by_id("guitar").unwrap_or_else(Instrument::mandolin)),
        }
    }

    /// Somebody comes in from a room: a new call.
    pub(super) fn enter(&mut self, from: Room) {
        self.face = CalledFace::Call;
        if from != Room::Called {
            self.from = from;
            self.forget();
        }
    }

    /// The room that the way back leads to.
    pub(super) fn from(&self) -> Room {
        self.from
    }

    /// The call has been answered.
    pub(super) fn forget(&mut self) {
        self.words.clear();
        self.found = None;
        self.mode = Mode::Major;
        self.call(None);
    }

    /// The settings or the songbook have changed: another instrument, other names, other tunes.
    pub(super) fn set(&mut self) {
        self.answer = None;
        self.found = None;
    }

    fn call(&mut self, key: Option<Key>) {
        self.key = key;
        self.answer = None;
    }

    pub(super) fn ask(&mut self, ask: CalledAsk, settings: &Settings) {
        match ask {
            CalledAsk::Face(face) => self.face = face,
            CalledAsk::Words(words) => {
                self.words = words;
                self.found = None;
            }
            CalledAsk::Key(key) => {
                let key = Key::spelled_for_players(key.tonic.class(), key.mode);
                self.mode = key.mode;
                self.call((self.key != Some(key)).then_some(key));
            }
            CalledAsk::Mode(mode) => {
                self.mode = mode;
                let same = |key: Key| Key::spelled_for_players(key.tonic.class(), mode);
                self.call(self.key.map(same));
            }
            CalledAsk::Open(_) | CalledAsk::ToStand | CalledAsk::Leave => {}
            held => self.held.ask(held, settings),
        }
    }

    /// The tonic that a tune goes to the stand in; `None` for its own.
    pub(super) fn tonic(&self) -> Option<NoteName> {
        self.key.map(|key| key.tonic)
    }

    /// What is to be seen, with the tune on the stand and the key that it is played in.
    pub(super) fn view(
        &mut self,
        songbook: &dyn Songbook,
        settings: &Settings,
        open: Option<(TuneId, Key)>,
    ) -> CalledView {
        let style = style(settings);
        if let (Some(key), None) = (self.key, &self.answer) {
            self.answer = Some(Answer::of(key, settings, &self.guitar));
        }
        let found = self.found.get_or_insert_with(|| match self.words.trim() {
            "" => Vec::new(),
            words => songbook.search(words),
        });
        let count = found.len();
        let best: Vec<usize> = found.iter().copied().take(MOST_FOUND).collect();
        let tunes = tunes::rows(songbook, &best, settings, (self.tonic(), open));
        let keys = TONICS.map(|class| {
            let key = Key::spelled_for_players(crate::theory::PitchClass::new(class), self.mode);
            (key.tonic.in_style(style), key)
        });
        let class = self.key.map(|key| key.tonic.class());
        CalledView {
            face: self.face,
            from: self.from,
            words: self.words.clone(),
            found: count,
            chosen: keys
                .iter()
                .position(|(_, key)| Some(key.tonic.class()) == class),
            keys: keys.into(),
            mode: self.mode,
            key: self.answer.as_ref().map(|answer| answer.0.clone()),
            to_stand: tunes::to_stand(songbook, &tunes, settings, (self.tonic(), open)),
            held: self.held.view(settings),
            tunes,
        }
    }
}
