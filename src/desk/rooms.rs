//! The way from room to room, and back.

use super::Desk;
use super::ask::Room;
use super::players::Moment;

impl Desk {
    /// To a room; one that is read from is the page from then on.
    pub(super) fn go(&mut self, room: Room) {
        if room == Room::Porch && self.room != Room::Porch {
            // Who asked what was called there comes back to where they were before.
            let from = match self.room {
                Room::Called => self.called.from(),
                room => room,
            };
            if from != Room::Porch {
                self.porch.from = from;
            }
            self.porch.home = self.open.is_none();
        }
        match room {
            Room::Stand | Room::Circle | Room::Porch => self.page = room,
            Room::Called => self.called.enter(self.room),
            _ => {}
        }
        self.room = room;
    }

    /// To where a tune is read from: the Stand, or the porch for who is there.
    pub(super) fn read_from(&mut self) {
        self.porch.home = false;
        if self.room != Room::Porch {
            self.go(Room::Stand);
        }
    }

    /// Back to where one came from; from an exercise to its tune, which was practised on the porch.
    pub(super) fn back(&mut self, at: Moment) {
        let drill = self
            .open
            .as_ref()
            .is_some_and(|(_, stand)| stand.is_drill());
        match self.room {
            Room::Called => self.room = self.called.from(),
            Room::Porch | Room::Stand if drill => {
                self.end_drill(at);
                self.go(Room::Porch);
            }
            room => {
                let from = match (room, self.porch.from) {
                    (Room::Porch, from) if !matches!(from, Room::Settings | Room::Called) => from,
                    _ => Room::Songbook,
                };
                if room == self.page {
                    self.page = Room::Stand;
                }
                self.go(from);
            }
        }
    }
}
