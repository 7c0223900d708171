//! How often the desk writes down what is set.

use std::cell::RefCell;
use std::rc::Rc;

use crate::band::Player;

use super::*;

/// A songbook that counts how often settings and seats are kept, or cannot keep anything of an evening.
struct Counting(Memory, Rc<RefCell<u32>>, bool);

impl Counting {
    fn new(kept: &Rc<RefCell<u32>>) -> Self {
        Self(Memory::new(Vec::new()), Rc::clone(kept), true)
    }

    fn count(&mut self) -> bool {
        *self.1.borrow_mut() += 1;
        self.2
    }
}

impl Songbook for Counting {
    fn entries(&self) -> &[Entry] {
        self.0.entries()
    }
    fn search(&self, words: &str) -> Vec<usize> {
        self.0.search(words)
    }
    fn tune(&self, id: TuneId) -> Option<crate::chart::Tune> {
        self.0.tune(id)
    }
    fn keep_settings(&mut self, _: &Settings) -> bool {
        self.count()
    }
    fn circle(&self) -> Vec<SeatSettings> {
        self.0.circle()
    }
    fn keep_circle(&mut self, seats: &[SeatSettings]) -> bool {
        self.0.keep_circle(seats);
        self.count()
    }
    fn tonight(&self) -> Vec<Planned> {
        self.0.tonight()
    }
    fn keep_tonight(&mut self, list: &[Planned]) -> bool {
        self.0.keep_tonight(list)
    }
    fn played(&self) -> Vec<Played> {
        self.0.played()
    }
    fn keep_played(&mut self, played: Played) -> bool {
        self.0.keep_played(played)
    }
    fn practice(&self) -> Vec<Practice> {
        self.0.practice()
    }
    fn keep_practice(&mut self, practice: &Practice) -> bool {
        self.0.keep_practice(practice)
    }
    fn today(&self) -> chrono::NaiveDate {
        self.0.today()
    }
    fn restore_shipped(&mut self) -> bool {
        false
    }
}

#[test]
fn what_a_finger_slides_is_kept_when_it_leaves() {
    let kept = Rc::default();
    let songbook = Counting::new(&kept);
    let mut desk = Desk::new(Box::new(songbook), silent(), Settings::default(), None);
    let mut ask = |ask| {
        desk.ask(Ask::Band(ask), Duration::ZERO);
        *kept.borrow()
    };
    for level in 0..10 {
        assert_eq!(ask(BandAsk::Level(Player::Bass, level)), 0);
        assert_eq!(ask(BandAsk::Loudness(level)), 0);
    }
    assert_eq!(ask(BandAsk::LetGo), 1);
    assert_eq!(ask(BandAsk::LetGo), 1, "nothing has changed");
    // Whatever else comes first keeps it too.
    ask(BandAsk::Loudness(3));
    assert_eq!(ask(BandAsk::Delay(40)), 2);
    assert_eq!(ask(BandAsk::Delay(44)), 2, "a step is ten milliseconds");
}

#[test]
fn a_name_is_kept_when_it_is_typed_and_not_at_each_letter() {
    let kept = Rc::default();
    let desk = || {
        let songbook = Box::new(Counting::new(&kept));
        Desk::new(songbook, silent(), Settings::default(), None)
    };
    let circle = |desk: &mut Desk, ask| {
        desk.ask(Ask::Circle(ask), Duration::ZERO);
        *kept.borrow()
    };
    let name = |name: &str| CircleAsk::Change(0, SeatChange::Name(name.to_owned()));
    let mut here = desk();
    for letters in ["I", "Im", "Imk", "Imke"] {
        assert_eq!(circle(&mut here, name(letters)), 0);
    }
    assert_eq!(here.circle().seats[0].title.name, "Imke");
    assert_eq!(circle(&mut here, CircleAsk::LetGo), 1);
    assert_eq!(here.songbook.circle()[0].name, "Imke");
    assert_eq!(
        circle(&mut here, CircleAsk::LetGo),
        1,
        "nothing has changed"
    );
    // Whatever else comes first keeps it too.
    circle(&mut here, name("Imk"));
    here.ask(Ask::Back, Duration::ZERO);
    assert_eq!(*kept.borrow(), 2);
    // So does closing the app.
    circle(&mut here, name("Im"));
    drop(here);
    assert_eq!(*kept.borrow(), 3);
}

#[test]
fn that_an_evening_cannot_be_kept_is_said_once() {
    let desk = |notice| {
        let songbook = Counting(Memory::new(Vec::new()), Rc::default(), false);
        Desk::new(Box::new(songbook), silent(), Settings::default(), notice)
    };
    let change = |desk: &mut Desk| {
        let voice = CircleAsk::Add(Plays::Voice);
        desk.ask(Ask::Circle(voice), Duration::ZERO);
        let said = desk.notice().cloned();
        desk.ask(Ask::CloseNotice, Duration::ZERO);
        said
    };
    let mut here = desk(None);
    assert_eq!(change(&mut here), Some(Notice::EveningNotKept));
    assert_eq!(change(&mut here), None);
    // Who was told when the app was opened is not told again.
    let mut here = desk(Some(Notice::ReadOnly));
    here.ask(Ask::CloseNotice, Duration::ZERO);
    assert_eq!(change(&mut here), None);
}
