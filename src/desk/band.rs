//! What a player wishes of the band, and what is to be seen of it.

use crate::band::{Ending, Player, Style};

use super::players::Heard;

/// What sounds alone, with no end and with no tune.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Alone {
    /// The beat of the tune on the stand.
    Metronome,
    /// Tonic and fifth of its key.
    Drones,
}

/// A wish about the band.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BandAsk {
    /// Play aloud, or only keep the time.
    Sound(bool),
    /// How loud the whole band is; see [`BandSettings::loudness`].
    Loudness(u8),
    /// How loud a player is; see [`BandSettings::levels`].
    Level(Player, u8),
    /// Silence a player, or let it be heard.
    Mute(Player, bool),
    /// Count in, or begin at once.
    CountIn(bool),
    /// Play as uneven as people do, or exactly.
    Human(bool),
    /// The A of the tuning fork, in whole Hz.
    A4(u16),
    /// How long the sound takes from the device to the ear; see [`BandSettings::delay_ms`].
    Delay(u16),
    /// The finger has left what it set.
    LetGo,
    /// How the band accompanies, by the style's id.
    Style(String),
    /// How the last time through ends.
    Ending(Ending),
    /// Play the part that is played now again and again.
    LoopPart,
    /// Begin the loop so many bars later.
    LoopFrom(i32),
    /// End the loop so many bars later.
    LoopTo(i32),
    /// The next two bars that are touched on the map are the first and the last of the loop; or they are not.
    ChooseBars(bool),
    /// No loop any more.
    NoLoop,
    /// Faster after each clean pass, or no more.
    Ramp(bool),
    /// So many per cent more at each pass.
    RampPercent(i32),
    /// So many beats a minute more at most.
    RampCeiling(i32),
    /// Something sounds alone, or no more.
    Alone(Option<Alone>),
    /// A course of the instrument sounds, to tune it by, or none does.
    Tone(Option<usize>),
}

/// The highest level and loudness.
pub const MOST_LEVEL: u8 = 10;

/// The level of a player as the band was balanced.
pub const USUAL_LEVEL: u8 = 7;

/// The longest way of a sound from the device to the ear that can be set, and the step, in milliseconds.
pub const MOST_DELAY_MS: u16 = 500;
/// See [`MOST_DELAY_MS`].
pub const DELAY_STEP_MS: u16 = 10;

/// What is kept of the band between evenings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BandSettings {
    /// The band plays aloud.
    pub aloud: bool,
    /// How loud, from 0 to [`MOST_LEVEL`], which is as loud as the band was made; three decibels a step, and silence at 0.
    pub loudness: u8,
    /// How loud each player is, in the order of [`Player::ALL`], from 0 to [`MOST_LEVEL`]; two decibels a step from
    /// [`USUAL_LEVEL`] either way, and silence at 0.
    pub levels: [u8; Player::ALL.len()],
    /// Who is silent, in the same order.
    pub mutes: [bool; Player::ALL.len()],
    /// The A of the tuning fork, in whole Hz.
    pub a4: u16,
    /// The players are as uneven as people are.
    pub human: bool,
    /// It is counted in.
    pub count_in: bool,
    /// How long the sound takes from the device to the ear, as wireless headphones and loudspeakers do: in milliseconds, from
    /// 0 to [`MOST_DELAY_MS`] in steps of [`DELAY_STEP_MS`].
    pub delay_ms: u16,
}

impl Default for BandSettings {
    /// Silent, as a circle wants it; once it plays, at a moderate level.
    fn default() -> Self {
        Self {
            aloud: false,
            loudness: 7,
            levels: [USUAL_LEVEL; Player::ALL.len()],
            mutes: Player::ALL.map(|player| crate::band::SILENT_AT_FIRST.contains(&player)),
            a4: 440,
            human: true,
            count_in: true,
            delay_ms: 0,
        }
    }
}

impl BandSettings {
    /// Changes what an ask about these settings changes.
    pub(super) fn ask(&mut self, ask: &BandAsk) {
        match *ask {
            BandAsk::Sound(on) => self.aloud = on,
            BandAsk::Alone(Some(_)) | BandAsk::Tone(Some(_)) => self.aloud = true, // it is there to be heard
            BandAsk::Loudness(level) => self.loudness = level.min(MOST_LEVEL),
            BandAsk::Level(player, level) => {
                self.levels[player as usize] = level.min(MOST_LEVEL);
            }
            BandAsk::Mute(player, mute) => self.mutes[player as usize] = mute,
            BandAsk::CountIn(on) => self.count_in = on,
            BandAsk::Human(on) => self.human = on,
            BandAsk::Delay(ms) => {
                let ms = ms.min(MOST_DELAY_MS);
                self.delay_ms = ms - ms % DELAY_STEP_MS;
            }
            BandAsk::A4(hz) => self.a4 = within_a4(hz),
            _ => {}
        }
    }
}

/// The A of the tuning fork in the bounds that the band knows.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 415 to 466
pub(super) fn within_a4(hz: u16) -> u16 {
    let (least, most) = (*crate::band::A4.start(), *crate::band::A4.end());
    hz.clamp(least as u16, most as u16)
}

/// A player in the mixer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PlayerView {
    /// Who.
    pub player: Player,
    /// How loud, from 0 to [`MOST_LEVEL`].
    pub level: u8,
    /// Silent.
    pub muted: bool,
}

/// Bars that come again and again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LoopView {
    /// The first bar, as its part and its number there: `A2 · 1`; the number 0 is a pickup.
    pub from: String,
    /// The last bar, likewise.
    pub to: String,
    /// It is the whole part now.
    pub part: bool,
}

/// Which bar of the loop the next touch of the map chooses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Choosing {
    /// The first.
    First,
    /// The last, be it before or after the one that was chosen.
    Last,
}

/// How the band gets faster.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RampView {
    /// It does.
    pub on: bool,
    /// By how many per cent a pass.
    pub percent: u8,
    /// Up to how many beats a minute.
    pub ceiling: u16,
}

/// The band as it is seen.
#[derive(Debug, Clone, PartialEq)]
pub struct BandView {
    /// What is kept.
    pub settings: BandSettings,
    /// Whether it is heard, and if not, why.
    pub heard: Heard,
    /// The mixer.
    pub players: [PlayerView; Player::ALL.len()],
    /// How it accompanies.
    pub style: &'static Style,
    /// What would suit the tune.
    pub fitting: &'static Style,
    /// How it ends.
    pub ending: Ending,
    /// What comes again and again; `None` plays the tune.
    pub looped: Option<LoopView>,
    /// The map is there to choose bars of the loop on.
    pub choosing: Option<Choosing>,
    /// How it gets faster.
    pub ramp: RampView,
    /// What sounds alone.
    pub alone: Option<Alone>,
    /// Notes of the instrument's courses in the player's names.
    pub strings: Vec<String>,
    /// The course that sounds, to tune by.
    pub tone: Option<usize>,
}

impl BandView {
    /// It should be heard, and is not.
    pub fn is_missing(&self) -> bool {
        self.settings.aloud && matches!(self.heard, Heard::NoDevice | Heard::DeviceLost)
    }
}
