//! How often the desk writes down what is set.

use std::cell::RefCell;
use std::rc::Rc;

use crate::band::Player;

use super::*;

/// A songbook that counts how often settings are kept.
struct Counting(Memory, Rc<RefCell<u32>>);

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
        *self.1.borrow_mut() += 1;
        true
    }
    fn circle(&self) -> Vec<SeatSettings> {
        self.0.circle()
    }
    fn keep_circle(&mut self, seats: &[SeatSettings]) -> bool {
        self.0.keep_circle(seats)
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
    let songbook = Counting(Memory::new(Vec::new()), Rc::clone(&kept));
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
