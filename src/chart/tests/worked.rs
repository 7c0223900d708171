//! Shipped tunes as a teacher of the instrument would write them out (common practice).

use super::super::{Arrangement, Tune, Wishes};
use crate::frets::{Capo, Instrument};

fn shipped(name: &str) -> Tune {
    let mut tunes = crate::store::shipped::tunes().into_iter();
    tunes.find(|(file, _)| file.starts_with(name)).unwrap().1
}

/// A shipped tune as tablature.
struct Page {
    instrument: Instrument,
    tab: Arrangement,
}

fn page(name: &str, instrument: &str, wishes: Wishes) -> Page {
    let instrument = Instrument::by_id(instrument).unwrap();
    let tab = shipped(name).arranged(&instrument, Capo::NONE, wishes);
    Page { instrument, tab }
}

impl Page {
    /// The melody of a written bar, counted from 0 with the pickup: the letter of the course and the fret of each note.
    fn bar(&self, index: usize) -> String {
        let notes = self.tab.notes.iter().filter(|note| note.note.bar == index);
        let notes = notes.filter_map(|note| note.place).map(|place| {
            let open = self.instrument.courses[place.course].open;
            format!("{}{}", open.name, place.fret)
        });
        notes.collect::<Vec<_>>().join(" ")
    }

    /// The fingers of the melody in a written bar, 0 for an open course.
    fn fingers(&self, index: usize) -> Vec<u8> {
        let notes = self.tab.notes.iter().filter(|note| note.note.bar == index);
        notes
            .map(|note| note.finger().map_or(0, |finger| finger.number()))
            .collect()
    }
}

#[test]
fn a_banjo_goes_up_the_neck_for_the_notes_that_need_it_and_comes_home() {
    let goose = page("nobody-told-the-goose", "banjo", Wishes::default());
    let bars: Vec<String> = [0, 1, 2, 4, 8].map(|bar| goose.bar(bar)).into();
    let low = ["B1", "D2 D2 D5 D2", "D7 D7 D10 D7", "D0 D0", "B1"];
    assert_eq!(bars, low);
    // The high C and D, their neighbours, and no more.
    let places = goose.tab.notes.iter().filter_map(|note| note.place);
    let high = places.filter(|place| place.fret > 7).count();
    assert!(high <= 14, "{high} of {}", goose.tab.notes.len());
    // The short string is there to ring.
    let mut places = goose.tab.notes.iter().filter_map(|note| note.place);
    assert!(places.all(|place| place.course > 0));
}

#[test]
fn a_ukulele_comes_down_from_a_high_note() {
    let smoke = page("smoke-down-the-flue", "ukulele", Wishes::default());
    assert_eq!(smoke.bar(0), "A12 A7 A5 E8 A0");
    assert_eq!(smoke.bar(4), "A12 A7 A3 A0 A3");
}

#[test]
fn a_phrase_that_comes_again_after_high_notes_has_its_places_and_fingers_again() {
    let ferryman = page("the-ferrymans-good-coat", "guitar", Wishes::default());
    for (once, again) in [(9, 26), (10, 27), (11, 28), (12, 29), (13, 30), (14, 31)] {
        assert_eq!(ferryman.bar(once), ferryman.bar(again));
        assert_eq!(ferryman.fingers(once), ferryman.fingers(again));
    }
    assert_eq!(ferryman.bar(1), "G0 G2 B0");
    assert_eq!(ferryman.bar(30), "G0 G2 B0");
}

#[test]
fn the_same_ending_lies_low_in_both_parts() {
    let rook = page("rook-in-the-flour-bin", "tenor-banjo", Wishes::default());
    assert_eq!(rook.bar(8), "D2 D2");
    assert_eq!(
        (rook.bar(17), rook.fingers(17)),
        (rook.bar(8), rook.fingers(8))
    );
}
