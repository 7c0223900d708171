//! Shipped tunes as a teacher of the instrument would write them out (common practice).

use super::super::{Arrangement, Direction, TabNote, Tune, Version, Wishes};
use crate::frets::{Apart, Capo, Finger, InChord, InKey, Instrument, Why};

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

/// The notes that a hand holds for a note of the melody, with their fingers: what is open takes none.
fn held(note: &TabNote) -> Vec<((usize, u8), Option<u8>)> {
    let number = |finger: Option<Finger>| finger.map(Finger::number);
    let melody = note
        .place
        .map(|place| ((place.course, place.fret), number(note.finger())));
    let second = note
        .stop
        .map(|stop| ((stop.course, stop.fret), number(stop.finger)));
    let both = melody.into_iter().chain(second);
    both.filter(|((_, fret), _)| *fret > 0).collect()
}

/// Double stops of all shipped tunes on an instrument, as rows of notes.
fn doubled(instrument: &Instrument) -> Vec<(String, Arrangement)> {
    let wishes = Version::DoubleStops.wishes(Wishes::default());
    let tunes = crate::store::shipped::tunes().into_iter();
    tunes
        .map(|(name, tune)| (name, tune.arranged(instrument, Capo::NONE, wishes)))
        .collect()
}

#[test]
fn no_beginner_is_asked_to_stop_a_fifth_on_one_fret() {
    let (mut fifths, mut stops) = (0, 0);
    for instrument in Instrument::all() {
        for (name, tab) in doubled(&instrument) {
            for note in &tab.notes {
                let (Some(place), Some(stop)) = (note.place, note.stop) else {
                    continue;
                };
                stops += 1;
                if stop.apart == Apart::Fifth {
                    let told = format!("{name} on {}: {place:?} {stop:?}", instrument.id);
                    assert!(place.fret != stop.fret || stop.fret == 0, "{told}");
                    fifths += 1;
                }
            }
        }
    }
    assert!(fifths > 100 && stops > 5000, "{fifths} of {stops}");
}

#[test]
fn each_finger_of_a_double_stop_keeps_to_its_own_frets() {
    let wishes = Version::DoubleStops.wishes(Wishes::default());
    let alma = page("almas-tall-chair", "fiddle", wishes);
    // A3 over D7.
    let stop = alma.tab.notes.iter().filter(|note| note.note.bar == 1);
    let stop = stop.filter(|note| note.stop.is_some()).map(held);
    let middle_and_little = vec![((2, 3), Some(2)), ((1, 7), Some(4))];
    assert!({ stop }.any(|stop| stop == middle_and_little));
    // Index 1-2, middle 3-4, ring 5-6, little 7; where two notes lie under one finger, its neighbour takes one of them.
    let (mut own, mut shared) = (0, 0);
    for (name, tab) in doubled(&Instrument::mandolin()) {
        for note in tab.notes.iter().filter(|note| note.stop.is_some()) {
            let held = held(note);
            let owner = |fret: u8| fret.div_ceil(2).min(4);
            let owners: Vec<u8> = held.iter().map(|((_, fret), _)| owner(*fret)).collect();
            let fingers: Vec<u8> = held.iter().filter_map(|(_, finger)| *finger).collect();
            if owners.len() == 2 && owners[0] == owners[1] {
                assert_eq!(fingers[0].abs_diff(fingers[1]), 1, "{name}: {held:?}");
                assert!(fingers.contains(&owners[0]), "{name}: {held:?}");
                shared += 1;
            } else {
                assert_eq!(fingers, owners, "{name}: {held:?}");
                own += 1;
            }
        }
    }
    assert!(own > 500 && shared > 0, "{own} and {shared}");
}

#[test]
fn a_note_that_stays_down_keeps_its_finger() {
    let mut stays = 0;
    for (name, tab) in doubled(&Instrument::mandolin()) {
        let pairs = tab.notes.windows(2);
        for pair in pairs.filter(|pair| pair.iter().all(|note| note.stop.is_some())) {
            for (at, finger) in held(&pair[1]) {
                let before = held(&pair[0]).into_iter().find(|(was, _)| *was == at);
                if let Some((_, was)) = before {
                    assert_eq!(was, finger, "{name}: {pair:?}");
                    stays += 1;
                }
            }
        }
    }
    assert!(stays > 100, "{stays}");
}

#[test]
fn before_the_first_chord_only_what_is_of_the_key_rings() {
    let wishes = Version::ChordDrones.wishes(Wishes::default());
    // E major: no open D beside the B of the pickup.
    let water = page("the-waters-at-the-second-stone", "mandolin", wishes);
    let pickup = &water.tab.notes[0];
    assert_eq!((pickup.note.chord, pickup.drone.drone), (None, None));
    assert_eq!(pickup.drone.why, Why::NotOfKey);
    for (name, tune) in crate::store::shipped::tunes() {
        for instrument in Instrument::all() {
            let tab = tune.arranged(&instrument, Capo::NONE, wishes);
            let early = tab.notes.iter().filter(|note| note.note.chord.is_none());
            let mut drones = early.filter_map(|note| note.drone.drone);
            assert!(drones.all(|drone| drone.in_key != InKey::Outside), "{name}");
        }
    }
}

#[test]
fn a_drone_that_only_colours_rubs_with_no_note_of_the_melody() {
    let wishes = Version::ChordDrones.wishes(Wishes::default());
    let (mut colours, mut rings) = (0, 0);
    for (name, tune) in crate::store::shipped::tunes() {
        let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes);
        for note in &tab.notes {
            let Some(drone) = note.drone.drone else {
                continue;
            };
            rings += 1;
            if drone.in_chord == Some(InChord::Colour) {
                let apart = (note.midi - drone.midi).rem_euclid(12);
                assert!(!matches!(apart, 1 | 2 | 10 | 11), "{name}: {note:?}");
                colours += 1;
            }
        }
    }
    assert!(colours > 50 && rings > 1000, "{colours} of {rings}");
}

#[test]
fn of_notes_that_sound_together_the_uppermost_is_the_melody() {
    // Its last bar is D2F2 [DA]4.
    let pepper = page("pepper-in-the-flour", "mandolin", Wishes::default());
    let last = pepper.tab.notes.last().unwrap().note.bar;
    assert_eq!(pepper.bar(last), "D0 D4 A0");
}

#[test]
fn a_half_step_under_the_ring_finger_goes_to_the_little_finger_and_back() {
    let mandolin = Instrument::mandolin();
    let bb = shipped("the-clockmenders-elbow").in_key("Bb".parse().unwrap());
    let tab = bb.arranged(&mandolin, Capo::NONE, Wishes::default());
    let fingers = tab.notes.windows(2).filter_map(|pair| {
        let place = |at: usize| pair[at].place.unwrap();
        let along = place(0).course == place(1).course && (place(0).fret, place(1).fret) == (6, 5);
        along.then(|| [0, 1].map(|at| pair[at].finger().map(Finger::number)))
    });
    let fingers: Vec<_> = fingers.collect();
    assert!(!fingers.is_empty());
    assert!(
        fingers.iter().all(|pair| *pair == [Some(4), Some(3)]),
        "{fingers:?}"
    );
}

#[test]
fn what_the_index_has_on_the_next_course_is_not_reached_for_with_the_little_finger() {
    let mandolin = Instrument::mandolin();
    let e = shipped("two-sugars-solly").in_key("E".parse().unwrap());
    let tab = e.arranged(&mandolin, Capo::NONE, Wishes::default());
    let reached = |note: &&TabNote| note.place.is_some_and(|p| p.fret == 8 && p.course < 3);
    assert_eq!(tab.notes.iter().filter(reached).count(), 0);
    let index = |note: &&TabNote| note.place.is_some_and(|p| (p.course, p.fret) == (2, 1));
    let a_sharps: Vec<_> = tab.notes.iter().filter(index).collect();
    assert!(a_sharps.len() > 2);
    assert!(
        a_sharps
            .iter()
            .all(|note| note.finger() == Some(Finger::Index))
    );
}

#[test]
fn double_stops_come_on_the_strong_beats_first() {
    let wishes = Version::DoubleStops.wishes(Wishes::default());
    let dag = page("dag-wherrys-short-cut", "mandolin", wishes);
    let part_b = dag
        .tab
        .notes
        .iter()
        .position(|note| note.note.bar == 8)
        .unwrap();
    // Down, up, down, up.
    assert_eq!(dag.bar(8), "E5 E0 A4 E0");
    let doubled = |note: &TabNote| note.stop.is_some();
    let bar: Vec<bool> = dag.tab.notes[part_b..part_b + 4]
        .iter()
        .map(doubled)
        .collect();
    assert!(!bar[1] && !bar[3], "{bar:?}");
    let (mut down, mut up) = ([0, 0], [0, 0]);
    for (_, tab) in self::doubled(&Instrument::mandolin()) {
        for note in &tab.notes {
            let count = match note.note.direction {
                Direction::Down => &mut down,
                Direction::Up => &mut up,
            };
            count[0] += usize::from(doubled(note));
            count[1] += 1;
        }
    }
    assert!(down[0] * up[1] > 2 * up[0] * down[1], "{down:?} and {up:?}");
}
