//! The key that was called, names, simpler chords, capo.

use super::*;

fn map_chords(desk: &mut Desk) -> Vec<String> {
    let view = view(desk, 0.0);
    view.map
        .iter()
        .flat_map(|line| &line.bars)
        .map(|bar| bar.chords.clone())
        .collect()
}

#[test]
fn the_whole_stand_follows_the_called_key() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::KeyOn("G".parse().unwrap()), beats(0.0));
    let view = view(&mut desk, 0.0);
    assert_eq!(
        (view.key.as_str(), view.written_key.as_deref()),
        ("G", Some("A"))
    );
    assert_eq!(view.now.name, "G");
    assert_eq!(
        view.now.shape.unwrap().frets,
        [Some(0), Some(0), Some(2), Some(3)]
    );
    assert_eq!(
        map_chords(&mut desk),
        ["", "G", "C D7", "G", "D G", "C", "G", "D", "G"]
    );
    desk.ask(Ask::WrittenKey, beats(0.0));
    assert_eq!(map_chords(&mut desk)[2], "D E7");
}

#[test]
fn keys_go_up_and_down_in_the_spelling_that_players_choose() {
    let mut desk = on_stand(REEL);
    let mut keys = Vec::new();
    for _ in 0..12 {
        desk.ask(Ask::KeyUp(1), beats(0.0));
        keys.push(view(&mut desk, 0.0).key);
    }
    assert_eq!(keys[..3], ["B♭", "B", "C"]);
    assert_eq!(keys[11], "A");
}

#[test]
fn numbers_stand_for_letters_or_beside_them() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Names(ChordNames::Numbers), beats(0.0));
    assert_eq!(map_chords(&mut desk)[2], "4 5⁷");
    desk.ask(Ask::Names(ChordNames::Both), beats(0.0));
    let now = view(&mut desk, 0.0).now;
    assert_eq!((now.name.as_str(), now.other.as_str()), ("A", "1"));
}

#[test]
fn simpler_chords_merge_into_fewer_changes() {
    let mut desk =
        on_stand("X:1\nT:Test\nM:4/4\nL:1/4\nK:G\n\"G\"G2 \"Em\"E2|\"C\"c2 \"Am7\"A2|\"D7\"d4|\n");
    assert_eq!(seen(&mut desk, 0.0), "G > Em in 2");
    desk.ask(Ask::Simpler(Simplify::Triads), beats(0.0));
    assert_eq!(map_chords(&mut desk), ["G Em", "C Am", "D"]);
    desk.ask(Ask::Simpler(Simplify::ThreeChords), beats(0.0));
    assert_eq!(seen(&mut desk, 0.0), "G > C in 4");
}

#[test]
fn a_capo_shows_what_sounds_and_what_is_held() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Instrument("guitar".to_owned()), beats(0.0));
    desk.ask(Ask::Capo(2), beats(0.0));
    let now = view(&mut desk, 0.0).now;
    assert_eq!(
        (now.name.as_str(), now.played_as.as_deref()),
        ("A", Some("G"))
    );
    let frets: Vec<_> = now
        .shape
        .unwrap()
        .frets
        .into_iter()
        .map(Option::unwrap)
        .collect();
    assert_eq!(frets, [3, 2, 0, 0, 0, 3]);
}

#[test]
fn a_left_handed_player_sees_courses_frets_and_open_strings_mirrored() {
    let mut desk = on_stand(REEL);
    let right = view(&mut desk, 0.0);
    desk.ask(Ask::LeftHanded(true), beats(0.0));
    let left = view(&mut desk, 0.0);
    let (right_shape, left_shape) = (right.now.shape.unwrap(), left.now.shape.unwrap());
    let mirrored: Vec<_> = right_shape.frets.into_iter().rev().collect();
    assert_eq!(left_shape.frets, mirrored);
    assert_eq!(left_shape.courses, ["E", "A", "D", "G"]);
    assert_eq!(left.ring[0].name, "E");
}

#[test]
fn other_shapes_come_round_to_the_first() {
    let mut desk = on_stand(REEL);
    let first = view(&mut desk, 0.0).now.shape.unwrap();
    desk.ask(Ask::OtherShape, beats(0.0));
    let second = view(&mut desk, 0.0).now.shape.unwrap();
    assert_ne!(first.frets, second.frets);
    for _ in 1..first.of.1 {
        desk.ask(Ask::OtherShape, beats(0.0));
    }
    assert_eq!(view(&mut desk, 0.0).now.shape.unwrap(), first);
}

#[test]
fn note_names_follow_the_setting() {
    let mut desk = on_stand("X:1\nT:Test\nM:4/4\nL:1/4\nK:Bb\n\"Bb\"B4|\"Eb\"e4|\n");
    assert_eq!(view(&mut desk, 0.0).now.name, "B♭");
    desk.ask(Ask::NoteNames(crate::theory::Naming::German), beats(0.0));
    assert_eq!(view(&mut desk, 0.0).now.name, "B");
    desk.ask(Ask::NoteNames(crate::theory::Naming::Solfege), beats(0.0));
    assert_eq!(view(&mut desk, 0.0).now.name, "Si♭");
}

#[test]
fn a_tune_without_chords_or_bars_shows_an_empty_stand() {
    for text in [
        "X:1\nT:Bare\nM:4/4\nK:C\n",
        "X:1\nT:Plain\nM:4/4\nK:C\nCDEF|GABc|\n",
    ] {
        let mut desk = on_stand(text);
        for ask in [
            Ask::NextBar,
            Ask::ThisIsOne,
            Ask::Hold,
            Ask::Clock(true),
            Ask::BarBack,
            Ask::JumpTo(99),
        ] {
            desk.ask(ask, beats(1.0));
            assert!(view(&mut desk, 2.0).now.no_chord);
        }
    }
}

/// G in A, E minor in B.
const TWO_KEYS: &str = "X:1\nT:Two Pails\nM:4/4\nL:1/4\nK:G\nP:A\n\"G\"G4|\"Am7\"A4|\"D7\"d4|\"G\"G4|\nP:B\n\
    K:E\n\"E\"E4|\"F#m\"F4|\"B7\"B4|\"E\"E4|]\n";

#[test]
fn numbers_and_three_chords_follow_the_key_of_the_stretch() {
    let mut desk = on_stand(TWO_KEYS);
    let chords = |desk: &mut Desk| -> Vec<String> {
        let map = view(desk, 0.0).map;
        map.iter()
            .flat_map(|line| &line.bars)
            .map(|bar| bar.chords.clone())
            .collect()
    };
    desk.ask(Ask::Names(ChordNames::Numbers), beats(0.0));
    assert_eq!(
        chords(&mut desk),
        ["1", "2m⁷", "5⁷", "1", "1", "2m", "5⁷", "1"]
    );
    desk.ask(Ask::Names(ChordNames::Letters), beats(0.0));
    desk.ask(Ask::Simpler(Simplify::ThreeChords), beats(0.0));
    assert_eq!(chords(&mut desk), ["G", "C", "D", "G", "E", "A", "B", "E"]);
    desk.ask(Ask::KeyUp(2), beats(0.0));
    assert_eq!(
        chords(&mut desk),
        ["A", "D", "E", "A", "F♯", "B", "C♯", "F♯"]
    );
}

#[test]
fn where_nobody_plays_the_hand_makes_no_sound() {
    let mut desk = on_stand("X:1\nT:Stop\nM:4/4\nL:1/4\nK:G\n\"G\"G4|\"N.C.\"z4|\"D\"d4|]\n");
    desk.ask(Ask::NextBar, beats(0.0));
    assert!(
        !view(&mut desk, 0.0)
            .strum
            .slots
            .iter()
            .all(|slot| slot.silent)
    );
    desk.ask(Ask::NextBar, beats(2.0));
    let stop = view(&mut desk, 2.0);
    assert!(stop.now.no_chord && stop.strum.slots.iter().all(|slot| slot.silent));
    assert_eq!(stop.map[0].bars[1].chords, "N.C.");
}

#[test]
fn the_map_shows_a_letter_where_the_chord_changes_and_at_the_start_of_a_line() {
    let mut desk = on_stand(
        "X:1\nT:Held\nM:4/4\nL:1/4\nK:G\n\"G\"G4|\"G\"G4|\"C\"c4|\"G\"G2\"G\"G2|G4|\"G\"G4|\"D\"d4|\"G\"G4|]\n",
    );
    let map = view(&mut desk, 0.0).map;
    let chords: Vec<_> = map
        .iter()
        .flat_map(|line| &line.bars)
        .map(|bar| bar.chords.as_str())
        .collect();
    assert_eq!(chords, ["G", "", "C", "G", "G", "", "D", "G"]);
}

#[test]
fn what_leads_into_a_line_leaves_its_chord_to_the_first_full_bar() {
    let mut desk = on_stand(
        "X:1\nT:Led\nM:4/4\nL:1/4\nK:A\nP:A\n|:\"A\"A4|\"E\"E4|\"A\"A3:|\nP:B\n|:c|\"A\"A4|\"D\"d4|\"A\"A3:|\n",
    );
    let map = view(&mut desk, 0.0).map;
    let of_b: Vec<_> = map[1].bars.iter().map(|bar| bar.chords.as_str()).collect();
    assert_eq!(of_b, ["", "A", "D", "A"]);
}

#[test]
fn a_form_that_goes_through_the_verses_is_played_once() {
    let song = "X:1\nT:Song\nP:ABABAB\nM:4/4\nL:1/4\nK:G\nP:A\n\"G\"GABc|\nw:a b c d\nP:B\n\"D\"d4|\nw:e\n";
    let view = view(&mut on_stand(song), 0.0);
    assert_eq!((view.times, view.last_time), (1, false));
}
