//! The tune on the stand and the band that plays it.

use std::borrow::Cow;
use std::sync::Arc;

use crate::band::{Command, Player, Score, Transport};
use crate::chart::{Playing, Tempo, Version};

use super::super::ask::Ask;
use super::super::band::{Alone, BandAsk, BandView, PlayerView};
use super::super::follow::Place;
use super::super::leader::Leader;
use super::super::plan::Plan;
use super::super::players::Moment;
use super::super::settings::Settings;
use super::OnStand;

impl OnStand {
    /// What the player wishes of the band and this tune.
    pub(super) fn ask_band(&mut self, ask: &BandAsk, at: Moment) {
        let place = self.follow.place(&self.playing, at);
        let ramp = self.plan.ramp();
        self.with_loop(at, |plan, playing| plan.ask(ask, playing, place.bar));
        let plan = &self.plan;
        if plan.ramp() != ramp {
            self.follow.set_ramp(at, plan.ramp());
        }
    }

    /// While bars of the loop are chosen, a touch of the map is a bar or a part of it; says whether it was one.
    pub(super) fn choose_bars(&mut self, ask: &Ask, at: Moment) -> bool {
        match *ask {
            Ask::JumpTo(bar) => self.with_loop(at, |plan, playing| plan.choose(playing, bar)),
            Ask::JumpToPart(chip) => {
                self.with_loop(at, |plan, playing| plan.choose_part(playing, chip));
            }
            _ => return false,
        }
        true
    }

    /// Changes the plan; the band is told where the loop has become another.
    fn with_loop(&mut self, at: Moment, change: impl FnOnce(&mut Plan, &Playing)) {
        let (plan, playing) = (&mut self.plan, &self.playing);
        let range = plan.range(playing);
        change(plan, playing);
        let new = plan.range(playing);
        if new != range {
            self.follow.set_range(at, new);
            self.begin_anew(at);
        }
    }

    /// Where the band leads, it goes on from here in what is played now.
    pub(super) fn replace(&mut self, at: Moment) {
        if self.follow.is_led() && !self.plan.has_score() {
            let score = self.score();
            self.follow.replace(at, score);
        }
    }

    /// The score of the tune, its melody in the version that is practised.
    pub(super) fn score(&mut self) -> Arc<Score> {
        let (version, drill) = (self.lesson.version, self.is_drill());
        let tune = || {
            let hands = (&self.hands.instrument, self.hands.capo);
            let tab = &self.lesson.arrangement(&self.played, hands, version).tab;
            // The plain melody as written keeps what the tune writes beside it.
            if version == Version::Plain && tab.moved() == 0 && !drill {
                Cow::Borrowed(&self.played)
            } else {
                Cow::Owned(self.played.thickened(tab))
            }
        };
        self.plan.score(tune, &self.playing)
    }

    /// Takes what the band is to be told.
    pub(in crate::desk) fn told(&mut self) -> Vec<Command> {
        self.follow.told()
    }

    /// The band's transport, when all that it was told is heard.
    pub(in crate::desk) fn hear(&mut self, transport: Transport) {
        self.follow.hear(transport);
    }

    /// The tempo.
    pub(in crate::desk) fn tempo(&self) -> Tempo {
        self.follow.tempo()
    }

    /// What can sound alone beside this tune.
    pub(in crate::desk) fn alone(&self, alone: Alone, at: Moment) -> Score {
        let place = self.follow.place(&self.playing, at);
        let bar = self.playing.bars.get(place.bar);
        match alone {
            Alone::Metronome => Score::metronome(bar.map_or(self.tune.metre, |bar| bar.metre)),
            Alone::Drones => Score::drones(self.key()),
        }
    }

    /// The band as it is seen.
    pub(super) fn band(&self, settings: &Settings, leader: &Leader, place: Place) -> BandView {
        let band = &settings.band;
        let player = |player: Player| PlayerView {
            player,
            level: band.levels[player as usize],
            muted: band.mutes[player as usize],
        };
        BandView {
            settings: band.clone(),
            heard: leader.players().heard(),
            players: Player::ALL.map(player),
            style: self.plan.style,
            fitting: self.plan.fitting,
            ending: self.plan.ending,
            choosing: self.plan.choosing(),
            looped: self.plan.loop_view(&self.tune, &self.playing, place.bar),
            ramp: self.plan.ramp_view(),
            alone: leader.alone(),
            strings: settings.notes(&settings.instrument()),
            tone: leader.tone(),
        }
    }
}
