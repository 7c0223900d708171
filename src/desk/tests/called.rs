//! A title, a key or a hand is called, and answered.

use super::*;
use crate::theory::{Key, Mode};

const THREE: &str = "X:1\nT:Bucket Reel\nR:reel\nM:4/4\nL:1/8\nK:A\nP:A\n|:\"D\"A4 A4|\"A\"d4 e4:|\n\n\
    X:2\nT:Bucket Waltz\nR:waltz\nM:3/4\nL:1/4\nK:Em\nP:A\n|:\"Em\"E3|\"D\"F3:|\n\n\
    X:3\nT:Pail of Rain\nM:4/4\nL:1/4\nK:G\nP:A\n|:\"G\"G4|\"C\"c4:|\n";

fn circle() -> Desk {
    let tunes = abc::read(THREE.as_bytes()).tunes;
    let tunes = tunes.into_iter().map(|read| read.tune).collect();
    Desk::new(
        Box::new(Memory::new(tunes)),
        silent(),
        Settings::default(),
        None,
    )
}

fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn ask(desk: &mut Desk, ask: CalledAsk) {
    desk.ask(Ask::Called(ask), Duration::ZERO);
}

fn words(desk: &mut Desk, words: &str) {
    ask(desk, CalledAsk::Words(words.to_owned()));
}

/// Rows as title, key, where it begins and on which chord.
fn rows(desk: &mut Desk) -> Vec<String> {
    let tunes = desk.called().tunes;
    let row = |row: &CalledTune| {
        let tune = &row.tune;
        let minor = if tune.mode == "minor" { "m" } else { "" };
        let (course, fret) = (&tune.start_course, tune.start_fret);
        format!(
            "{} {}{minor} {course}{fret} {}",
            tune.title, tune.key, row.chord
        )
    };
    tunes.iter().map(row).collect()
}

#[test]
fn letters_find_tunes_with_first_note_and_opening_chord() {
    let mut desk = circle();
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    assert!(desk.called().tunes.is_empty(), "nothing was typed");
    words(&mut desk, "buck");
    let mut found = rows(&mut desk);
    found.sort();
    assert_eq!(found, ["Bucket Reel A A0 D", "Bucket Waltz Em D2 Em"]);
}

#[test]
fn a_tune_opens_with_what_sounds_first_and_not_with_what_is_written_first() {
    let text =
        "X:1\nT:Turned Pail\nP:BA\nM:4/4\nL:1/4\nK:G\nP:A\n\"G\"G4|\nP:B\n\"C\"c4|\"D\"d4|\n";
    let mut desk = on_stand(text);
    words(&mut desk, "pail");
    assert_eq!(rows(&mut desk), ["Turned Pail G A3 C"]);
}

#[test]
fn in_a_called_key_rows_tell_what_will_be_played() {
    let mut desk = circle();
    words(&mut desk, "buck");
    ask(&mut desk, CalledAsk::Key(key("G")));
    let mut found = rows(&mut desk);
    found.sort();
    // A whole tone down from the open A and a minor third up from E, both G above the open D; the waltz stays in its mode.
    assert_eq!(found, ["Bucket Reel G D5 C", "Bucket Waltz Gm D5 Gm"]);
}

#[test]
fn a_row_goes_to_the_stand_in_the_called_key_and_else_in_its_own() {
    let mut desk = circle();
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    ask(&mut desk, CalledAsk::Key(key("C")));
    ask(&mut desk, CalledAsk::Open(TuneId(3)));
    assert_eq!(desk.room(), Room::Stand);
    assert_eq!(
        (view(&mut desk, 0.0).title, view(&mut desk, 0.0).key),
        ("Pail of Rain".into(), "C".into())
    );
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    // The call is answered: the next one begins with nothing chosen.
    assert_eq!((desk.called().chosen, desk.called().key), (None, None));
    ask(&mut desk, CalledAsk::Open(TuneId(1)));
    assert_eq!(view(&mut desk, 0.0).key, "A");
}

#[test]
fn the_tune_on_the_stand_goes_there_in_the_called_key_unless_words_find_another() {
    let mut desk = circle();
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    ask(&mut desk, CalledAsk::ToStand);
    assert_eq!(desk.room(), Room::Called, "no tune, nothing to bring");
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    desk.ask(Ask::NextBar, Duration::ZERO);
    let bar = view(&mut desk, 0.0).bar;
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    ask(&mut desk, CalledAsk::Key(key("Dm")));
    let offered = desk.called().to_stand.unwrap();
    assert_eq!(
        (
            offered.title.as_str(),
            offered.key.as_str(),
            offered.mode.as_str()
        ),
        ("Bucket Reel", "D", "major")
    );
    ask(&mut desk, CalledAsk::ToStand);
    let stand = view(&mut desk, 0.0);
    assert_eq!(
        (stand.key.as_str(), stand.bar),
        ("D", bar),
        "where it was, in another key"
    );
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    words(&mut desk, "pail");
    ask(&mut desk, CalledAsk::ToStand);
    assert_eq!(view(&mut desk, 0.0).title, "Pail of Rain");
}

#[test]
fn the_way_back_leads_to_where_one_was() {
    let mut desk = circle();
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    for room in [Room::Stand, Room::Porch, Room::Settings, Room::Songbook] {
        desk.ask(Ask::Go(room), Duration::ZERO);
        desk.ask(Ask::Go(Room::Called), Duration::ZERO);
        desk.ask(Ask::Go(Room::Called), Duration::ZERO);
        assert_eq!(desk.called().from, room);
        desk.ask(Ask::Back, Duration::ZERO);
        assert_eq!(desk.room(), room);
    }
}

#[test]
fn the_room_opens_on_titles_and_keys_wherever_one_was_in_it() {
    let mut desk = circle();
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    ask(&mut desk, CalledAsk::Face(CalledFace::Held));
    desk.ask(Ask::Go(Room::Called), Duration::ZERO);
    assert_eq!(desk.called().face, CalledFace::Call);
}

#[test]
fn a_key_is_answered_with_shapes_numbers_strings_capos_and_tunings() {
    let mut desk = circle();
    ask(&mut desk, CalledAsk::Key(key("A")));
    let called = desk.called();
    assert_eq!(called.keys[called.chosen.unwrap()].0, "A");
    let answer = called.key.unwrap();
    let chords: Vec<_> = answer
        .chords
        .iter()
        .map(|card| format!("{}={}", card.other, card.name))
        .collect();
    assert_eq!(
        chords,
        ["1=A", "4=D", "5=E", "6m=F♯m", "2m=Bm", "3m=C♯m", "♭7=G"]
    );
    assert!(answer.chords.iter().all(|card| card.shape.is_some()));
    // The trade sheet's rule of thumb: key A, open A and E.
    let rings: Vec<_> = answer
        .ring
        .iter()
        .map(|open| (open.name.as_str(), open.verdict))
        .collect();
    use Verdict::{Clash, Colour, Ring};
    assert_eq!(
        rings,
        [("G", Clash), ("D", Colour), ("A", Ring), ("E", Ring)]
    );
    assert_eq!(
        (answer.relative.name.as_str(), answer.parallel.key),
        ("F♯", key("Am"))
    );
    // The trade sheet: G shapes with the capo at 2 are A.
    let capo = answer.capos.iter().find(|capo| capo.fret == 2).unwrap();
    assert_eq!(capo.chords, ["G", "C", "D"]);
    assert_eq!(answer.capos.iter().filter(|capo| capo.easiest).count(), 1);
    // And the banjo's G tuning with the capo at 2; the fiddle may cross its tuning.
    let banjo = answer
        .setups
        .iter()
        .find(|setup| setup.instrument == "banjo")
        .unwrap();
    assert_eq!(
        (banjo.strings.as_str(), banjo.retuned, banjo.capo),
        ("g D G B D", false, 2)
    );
    let fiddle: Vec<_> = answer
        .setups
        .iter()
        .filter(|setup| setup.instrument == "fiddle")
        .collect();
    assert_eq!(
        (fiddle[0].retuned, fiddle[1].strings.as_str()),
        (false, "A E A E")
    );
    // E F♯ G♯ A B on the last course.
    let frets: Vec<_> = answer
        .scale
        .iter()
        .filter(|mark| mark.course == 3)
        .map(|mark| mark.fret)
        .collect();
    assert_eq!(frets, [0, 2, 4, 5, 7]);
}

#[test]
fn a_mode_keeps_the_tonic_and_the_same_key_once_more_takes_it_back() {
    let mut desk = circle();
    ask(&mut desk, CalledAsk::Key(key("A")));
    ask(&mut desk, CalledAsk::Mode(Mode::Mixolydian));
    let answer = desk.called().key.unwrap();
    let numbers: Vec<_> = answer
        .chords
        .iter()
        .map(|card| card.other.as_str())
        .collect();
    assert_eq!(
        (answer.name.as_str(), &numbers[..3]),
        ("A", &["1", "♭7", "4"][..])
    );
    let again = desk.called().keys[2].1;
    ask(&mut desk, CalledAsk::Key(again));
    assert_eq!(desk.called().key, None);
    assert_eq!(desk.called().mode, Mode::Mixolydian);
    ask(&mut desk, CalledAsk::Key(again));
    ask(&mut desk, CalledAsk::Key(key("F#m")));
    assert_eq!(
        (desk.called().mode, desk.called().key.unwrap().name),
        (Mode::Minor, "F♯".to_owned())
    );
}

#[test]
fn a_key_that_nobody_writes_is_spelled_as_players_do() {
    let mut desk = circle();
    ask(&mut desk, CalledAsk::Key(key("Db")));
    assert_eq!(desk.called().key.unwrap().parallel.key, key("C#m"));
    ask(&mut desk, CalledAsk::Key(key("Eb phrygian")));
    let called = desk.called();
    assert_eq!(
        called.key.unwrap().name,
        called.keys[called.chosen.unwrap()].0
    );
}

#[test]
fn keys_keep_their_places_in_every_mode() {
    let mut desk = circle();
    let classes = |desk: &mut Desk| -> Vec<_> {
        let keys = desk.called().keys;
        keys.iter().map(|(_, key)| key.tonic.class()).collect()
    };
    let major = classes(&mut desk);
    let names: Vec<_> = desk
        .called()
        .keys
        .into_iter()
        .map(|(name, _)| name)
        .collect();
    assert_eq!(names[..6], ["G", "D", "A", "E", "C", "F"]);
    for mode in Mode::ALL {
        ask(&mut desk, CalledAsk::Mode(mode));
        assert_eq!(classes(&mut desk), major);
    }
}

fn hold(desk: &mut Desk, frets: &[(usize, u8)]) -> Vec<String> {
    ask(desk, CalledAsk::Release);
    for &(course, fret) in frets {
        ask(desk, CalledAsk::Finger(course, fret));
    }
    let held = desk.called().held;
    held.names.iter().map(|name| name.name.clone()).collect()
}

#[test]
fn a_held_chord_is_named_as_it_is_touched() {
    let mut desk = circle();
    assert!(desk.called().held.untouched);
    assert_eq!(hold(&mut desk, &[(2, 2), (3, 3)])[0], "G");
    let a = hold(&mut desk, &[(0, 2), (1, 2)]);
    assert_eq!(a[..2], ["A", "A5"]);
    let held = desk.called().held;
    assert_eq!(
        (held.frets, held.notes.join(" ")),
        (vec![Some(2), Some(2), Some(0), Some(0)], "A E A E".into())
    );
    assert_eq!(held.names[0].missing, [MissingNote::Third]);
    // The same place once more takes the finger away; a course can be left out.
    ask(&mut desk, CalledAsk::Finger(0, 2));
    ask(&mut desk, CalledAsk::Damp(3));
    assert_eq!(desk.called().held.frets, [Some(0), Some(2), Some(0), None]);
    for course in 0..4 {
        ask(&mut desk, CalledAsk::Damp(course));
        ask(&mut desk, CalledAsk::Damp(course));
    }
    ask(&mut desk, CalledAsk::Release);
    assert!(desk.called().held.untouched);
}

#[test]
fn a_neighbours_guitar_behind_a_capo_is_named_by_what_sounds() {
    let mut desk = circle();
    ask(&mut desk, CalledAsk::HeldOn("guitar".into()));
    ask(&mut desk, CalledAsk::HeldCapo(2));
    let names = hold(&mut desk, &[(0, 3), (1, 2), (5, 3)]);
    assert_eq!(names[0], "A");
    let held = desk.called().held;
    assert_eq!(held.names[0].played_as.as_deref(), Some("G"));
    assert_eq!(held.courses.join(" "), "F♯ B E A C♯ F♯");
    assert_eq!(held.instruments[held.instrument], "guitar");
}

#[test]
fn left_handed_the_courses_run_the_other_way() {
    let mut desk = circle();
    desk.ask(Ask::LeftHanded(true), Duration::ZERO);
    let names = hold(&mut desk, &[(1, 2), (0, 3)]);
    let held = desk.called().held;
    assert_eq!(
        (names[0].as_str(), held.courses.join(" ")),
        ("G", "E A D G".into())
    );
    assert_eq!(held.frets, [Some(3), Some(2), Some(0), Some(0)]);
}

#[test]
fn a_short_string_has_frets_only_where_it_has_them() {
    let mut desk = circle();
    ask(&mut desk, CalledAsk::HeldOn("banjo".into()));
    assert_eq!(desk.called().held.first_frets[..2], [6, 1]);
    ask(&mut desk, CalledAsk::Finger(0, 3));
    assert!(desk.called().held.untouched, "there is no such fret");
    ask(&mut desk, CalledAsk::Finger(0, 7));
    ask(&mut desk, CalledAsk::HeldCapo(9));
    assert!(desk.called().held.frets[0].is_some());
}
