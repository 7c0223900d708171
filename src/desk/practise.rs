//! The desk on the porch: what is asked there, what is written down, what is seen.

use std::time::Duration;

use crate::chart::Ticks;

use super::ask::{Ask, Room};
use super::on_stand::OnStand;
use super::players::Moment;
use super::porch::{PorchAsk, PorchView, Practice, Stretch};
use super::songbook::TuneId;
use super::{Desk, list};

impl Desk {
    /// The tune that an exercise stands in place of comes back.
    pub(super) fn end_drill(&mut self, at: Moment) {
        let drill = |(_, stand): &(TuneId, OnStand)| stand.is_drill();
        if !self.open.as_ref().is_some_and(drill) {
            return;
        }
        self.ask_stand(&Ask::Clock(false), at);
        self.open = self
            .open
            .take()
            .and_then(|(id, stand)| Some((id, stand.put_back()?)));
    }

    pub(super) fn ask_porch(&mut self, ask: PorchAsk, at: Moment) {
        match ask {
            PorchAsk::Paper(width, space) => self.porch.desk.paper = (width, space),
            PorchAsk::Staff(on) => self.porch.desk.staff = on,
            PorchAsk::Fingers(on) => self.porch.desk.fingers = on,
            PorchAsk::Home(home) => self.porch.home = home || self.open.is_none(),
            PorchAsk::Take(index) => self.take(index, at),
            PorchAsk::Stop(_) | PorchAsk::Change(_) => self.drill(&ask, at),
            PorchAsk::EndDrill => {
                self.end_drill(at);
                self.go(Room::Porch);
            }
            ask => {
                let Some((_, stand)) = &mut self.open else {
                    return;
                };
                stand.ask_porch(&ask, at);
                self.leader.tell(at.now, stand.told());
            }
        }
    }

    fn drill(&mut self, ask: &PorchAsk, at: Moment) {
        self.ask_stand(&Ask::Clock(false), at);
        let rate = self.leader.players().transport().rate();
        let Some((id, mut stand)) = self.open.take() else {
            return;
        };
        match stand.drill(ask, &self.settings, rate) {
            Some(mut exercise) => {
                exercise.instead_of(stand, at);
                self.open = Some((id, exercise));
                self.go(match ask {
                    PorchAsk::Stop(_) => Room::Porch,
                    _ => Room::Stand,
                });
            }
            None => self.open = Some((id, stand)),
        }
    }

    /// A suggestion: its tune on the stand, and all of it as it is suggested.
    fn take(&mut self, index: usize, at: Moment) {
        let Some(one) = self.suggested().get(index).cloned() else {
            return;
        };
        self.end_drill(at);
        self.put_on_stand(one.tune, at);
        if self.open.as_ref().is_none_or(|(id, _)| *id != one.tune) {
            return;
        }
        self.go(Room::Porch);
        self.porch.home = false;
        self.ask_stand(&Ask::Clock(false), at);
        // Which key the list has for it is another matter.
        let key = one.key.map_or(Ask::WrittenKey, Ask::KeyOn);
        if let Some((_, stand)) = &mut self.open {
            stand.ask(&key, &self.settings, at);
            self.leader.tell(at.now, stand.told());
        }
        let phrase = match one.stretch {
            Stretch::Phrase(phrase) => Some(usize::from(phrase)),
            Stretch::Whole => None,
        };
        self.ask_porch(PorchAsk::Version(one.version), at);
        self.ask_porch(PorchAsk::Phrase(phrase), at);
        if let Some((_, stand)) = &mut self.open {
            if one.stretch == Stretch::Whole {
                stand.go_to(Ticks::ZERO, at);
            }
            stand.set_bpm(one.bpm, at);
            self.leader.tell(at.now, stand.told());
        }
    }

    /// Today's suggestions.
    fn suggested(&mut self) -> &[super::porch::Suggestion] {
        let open = self.open.as_ref().map(|(id, _)| *id);
        let (songbook, settings) = (self.songbook.as_ref(), &self.settings);
        let known = || list::known(songbook, settings).into_iter();
        let fresh = || open.into_iter().chain(known()).collect();
        self.porch.today(songbook, fresh)
    }

    /// Writes down the clean passes that have been played on the porch since it was last asked.
    pub(super) fn write_down(&mut self, at: Moment) {
        let Some((id, stand)) = &mut self.open else {
            return;
        };
        let Some((passes, bpm)) = stand.practised(at) else {
            return;
        };
        if self.page != Room::Porch || stand.is_drill() {
            return;
        }
        let practice = Practice {
            bpm,
            passes,
            ..stand.practises(*id, self.songbook.today())
        };
        self.porch.keep(self.songbook.as_mut(), practice);
    }

    /// The porch view.
    pub fn porch(&mut self, now: Duration) -> PorchView {
        if self.page != Room::Porch {
            return PorchView::default();
        }
        let at = self.hear(now);
        let home = self.porch.home || self.open.is_none();
        let suggestions = if home {
            self.suggested().to_vec()
        } else {
            Vec::new()
        };
        let day = self.songbook.today();
        let (log, desk, settings) = (&self.porch.log, &self.porch.desk, &self.settings);
        let lesson = self.open.as_mut().map(|(id, stand)| {
            let now = stand.practises(*id, day);
            let today = log.iter().find(|entry| entry.same(&now));
            let clean = today.map(|entry| entry.bpm).filter(|_| !stand.is_drill());
            stand.lesson(settings, desk, clean, at)
        });
        PorchView {
            home,
            suggestions,
            lesson,
        }
    }
}
