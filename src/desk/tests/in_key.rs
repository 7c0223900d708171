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
