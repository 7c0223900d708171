//! Who tells the band what to play: levels as they are set, the tune, or something alone.

use std::sync::Arc;
use std::time::Duration;

use crate::band::{Command, CountIn, Human, Player, Score, Tone, tones};
use crate::chart::{Tempo, Ticks};
use crate::frets::Capo;

use super::band::{Alone, BandSettings, MOST_LEVEL, USUAL_LEVEL};
use super::players::{Heard, Moment, Players};
use super::settings::Settings;

/// The seed of what is uneven: the same at all times, as nothing here is left to chance.
const SEED: u64 = 1;

/// How the players are heard.
#[derive(Debug, Clone, PartialEq)]
struct Mix {
    levels: [f32; Player::ALL.len()],
    mutes: [bool; Player::ALL.len()],
    a4: f64,
    human: Human,
    delay: Duration,
}

/// The band with what it was told.
pub(super) struct Leader {
    players: Box<dyn Players>,
    alone: Option<Alone>,
    tone: Option<(usize, Tone)>,
    told: Option<Mix>,
}

/// How many times as loud a level of the mixer is: two decibels a step.
fn gain(level: u8) -> f32 {
    decibels(level, 2.0 * (f32::from(level) - f32::from(USUAL_LEVEL)))
}

/// How many times as loud the whole band is: three decibels a step.
fn loudness(level: u8) -> f32 {
    decibels(level, 3.0 * (f32::from(level) - f32::from(MOST_LEVEL)))
}

fn decibels(level: u8, db: f32) -> f32 {
    match level {
        0 => 0.0,
        _ => 10_f32.powf(db / 20.0),
    }
}

impl Leader {
    pub(super) fn new(players: Box<dyn Players>) -> Self {
        Self {
            players,
            alone: None,
            tone: None,
            told: None,
        }
    }

    /// A moment as the band counts it.
    pub(super) fn moment(&mut self, now: Duration) -> Moment {
        let frame = self.players.frame(now);
        Moment { now, frame }
    }

    pub(super) fn players(&self) -> &dyn Players {
        self.players.as_ref()
    }

    pub(super) fn alone(&self) -> Option<Alone> {
        self.alone
    }

    /// The course that sounds, to tune by.
    pub(super) fn tone(&self) -> Option<usize> {
        self.tone.map(|(course, _)| course)
    }

    pub(super) fn tell(&mut self, now: Duration, commands: impl IntoIterator<Item = Command>) {
        for command in commands {
            self.players.tell(now, command);
        }
    }

    /// Something is about to sound: the device is opened, if it is wanted and not there.
    pub(super) fn wake(&mut self, now: Duration, settings: &Settings) {
        if settings.band.aloud && self.players.heard() != Heard::Aloud {
            self.players.switch(now, true);
        }
    }

    /// Aloud, or silent.
    pub(super) fn switch(&mut self, now: Duration, on: bool) {
        if !on {
            self.hush(now);
        }
        self.players.switch(now, on);
    }

    /// Has everybody play as loud and as evenly as is set; who sounds alone is heard whatever the mixer says.
    pub(super) fn mix(&mut self, now: Duration, band: &BandSettings) {
        let all = loudness(band.loudness);
        let mut mix = Mix {
            levels: band.levels.map(|level| gain(level) * all),
            mutes: band.mutes,
            a4: f64::from(band.a4),
            delay: Duration::from_millis(band.delay_ms.into()),
            human: match band.human {
                true => Human {
                    seed: SEED,
                    amount: 1.0,
                },
                false => Human::EXACT,
            },
        };
        let alone = match self.alone {
            Some(Alone::Metronome) => Some(Player::Click),
            Some(Alone::Drones) => Some(Player::Drones),
            None => None,
        };
        let tone = self.tone.map(|(_, tone)| tone.player);
        for player in [alone, tone].into_iter().flatten() {
            let place = player as usize;
            mix.mutes[place] = false;
            mix.levels[place] = mix.levels[place].max(all);
        }
        let old = self.told.replace(mix.clone());
        let mut commands = Vec::new();
        for (place, player) in Player::ALL.into_iter().enumerate() {
            let before = old
                .as_ref()
                .map(|old| (old.levels[place], old.mutes[place]));
            let (level, mute) = (mix.levels[place], mix.mutes[place]);
            if before.map(|before| before.0) != Some(level) {
                commands.push(Command::Level(player, level));
            }
            if before.map(|before| before.1) != Some(mute) {
                commands.push(Command::Mute(player, mute));
            }
        }
        if old.as_ref().map(|old| old.a4) != Some(mix.a4) {
            commands.push(Command::A4(mix.a4));
            // What sounds to tune by is struck anew at the new pitch.
            let tone = self.tone.map(|(_, tone)| Command::Tone(Some(tone)));
            commands.extend(tone);
        }
        if old.as_ref().map_or(Duration::ZERO, |old| old.delay) != mix.delay {
            self.players.set_delay(now, mix.delay);
        }
        if old.map(|old| old.human) != Some(mix.human) {
            commands.push(Command::Human(mix.human));
        }
        self.tell(now, commands);
    }

    /// What sounds alone or to tune by ends.
    pub(super) fn hush(&mut self, now: Duration) {
        if self.alone.take().is_some() {
            self.tell(now, [Command::Stop]);
        }
        if self.tone.take().is_some() {
            self.tell(now, [Command::Tone(None)]);
        }
    }

    /// A course of the instrument sounds again and again.
    pub(super) fn sound(&mut self, now: Duration, settings: &Settings, course: usize) {
        self.hush(now);
        let Some(&tone) = tones(&settings.instrument(), Capo::NONE).get(course) else {
            return;
        };
        self.wake(now, settings);
        self.tone = Some((course, tone));
        self.mix(now, &settings.band);
        self.tell(now, [Command::Tone(Some(tone))]);
    }

    /// Something sounds alone, at this tempo.
    pub(super) fn alone_with(
        &mut self,
        now: Duration,
        settings: &Settings,
        (alone, score): (Alone, Score),
        tempo: Tempo,
    ) {
        self.hush(now);
        self.wake(now, settings);
        self.alone = Some(alone);
        self.mix(now, &settings.band);
        let play = Command::Play {
            from: (0, Ticks::ZERO),
            count: CountIn::default(),
        };
        self.tell(
            now,
            [
                Command::Score(Arc::new(score)),
                Command::Tempo(tempo),
                Command::Times(0),
                Command::Loop(None),
                Command::Ramp(None),
                play,
            ],
        );
    }
}
