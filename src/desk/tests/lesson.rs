//! What of a lesson stays and what goes where something else is set, and its exercises.

use crate::chart::Version;

use super::porch::{day, desk_after, lesson, on_porch, on_porch_with, porch, practice};
use super::*;

#[test]
fn notes_below_the_neck_are_told_and_the_octave_that_helps_can_be_taken_and_left() {
    let on_porch =
        |music: &str| on_porch_with(&format!("X:1\nT:Low\nM:4/4\nL:1/4\nK:D\n{music}\n"));
    let seen = |desk: &mut Desk| {
        let view = lesson(desk, 0.0);
        let octave = view.octave.map(|octave| (octave.octaves, octave.taken));
        let figure = |spot: usize| view.page.spots[spot].figures[0].text.clone();
        (view.off_the_neck, octave, figure(0), figure(1))
    };
    let is = |off, taken, first: &str, second: &str| {
        (off, Some((1, taken)), first.to_owned(), second.to_owned())
    };
    // The octave that a teacher would take is taken at once, one that makes the hand shift is offered.
    let mut desk = on_porch("D F, A, D|A, D E F|D4|]");
    assert_eq!(seen(&mut desk), is(0, true, "5", "4"));
    porch(&mut desk, PorchAsk::Octave(false), 0.0);
    assert_eq!(seen(&mut desk), is(1, false, "0", "?"));
    porch(&mut desk, PorchAsk::Octave(true), 0.0);
    assert_eq!(seen(&mut desk), is(0, true, "5", "4"));
    let mut desk = on_porch("D F, A d|vfugvavb|a f d A|D4|]");
    assert_eq!(seen(&mut desk), is(1, false, "0", "?"));
    porch(&mut desk, PorchAsk::Octave(true), 0.0);
    assert_eq!(seen(&mut desk), is(0, true, "5", "4"));
    // In a key in which all notes are on the neck nothing is moved.
    porch(&mut desk, PorchAsk::Octave(true), 0.0);
    desk.ask(Ask::KeyOn("E".parse().unwrap()), Duration::ZERO);
    assert_eq!(seen(&mut desk).1, None);
    // The second bar marks its second note against the hand: on a beat the hand goes down.
    assert_eq!(lesson(&mut desk, 0.0).against.as_deref(), Some("A 2"));
}

#[test]
fn what_is_set_about_the_app_leaves_the_lesson_as_it_is() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::Version(Version::DoubleStops), 0.0);
    desk.ask(Ask::OtherShape, Duration::ZERO);
    let chosen = view(&mut desk, 0.0).now.shape.unwrap().of;
    let page = lesson(&mut desk, 0.0).page;
    for ask in [
        Ask::Theme(Theme::Sun),
        Ask::LessMotion(true),
        Ask::Know("A".to_owned(), false),
    ] {
        desk.ask(ask, Duration::ZERO);
    }
    assert_eq!(view(&mut desk, 0.0).now.shape.unwrap().of, chosen);
    assert_eq!(chosen.0, 2);
    assert!(lesson(&mut desk, 0.0).page == page);
}

#[test]
fn an_exercise_goes_at_the_tempo_of_its_tune_whatever_note_is_counted() {
    for (metre, tempo, bars) in [("4/4", "1/4=100", "D4|"), ("3/4", "1/2=60", "D3|")] {
        let text = format!("X:1\nM:{metre}\nL:1/4\nQ:{tempo}\nK:D\n\"D\"{bars}\"A\"{bars}");
        let mut desk = on_porch_with(&text);
        let percent = |desk: &mut Desk| lesson(desk, 0.0).percent;
        assert_eq!(percent(&mut desk), 100);
        porch(&mut desk, PorchAsk::Change(0), 0.0);
        desk.ask(Ask::Go(Room::Porch), Duration::ZERO);
        assert_eq!(percent(&mut desk), 100, "{tempo}");
        porch(&mut desk, PorchAsk::Faster(1), 0.0);
        assert_eq!(percent(&mut desk), 105, "{tempo}");
        // There is no exercise in an exercise, no phrase and no version.
        porch(&mut desk, PorchAsk::PhraseBy(1), 0.0);
        porch(&mut desk, PorchAsk::Change(0), 0.0);
        let view = lesson(&mut desk, 0.0);
        assert!(view.changes.is_empty() && view.again);
        porch(&mut desk, PorchAsk::EndDrill, 0.0);
        assert_eq!(lesson(&mut desk, 0.0).drill, None);
    }
}

#[test]
fn an_exercise_for_one_place_of_the_neck_ends_where_the_key_changes() {
    for ask in [Ask::KeyUp(2), Ask::Capo(2)] {
        let mut desk = on_porch();
        porch(&mut desk, PorchAsk::Stop(0), 0.0);
        assert!(lesson(&mut desk, 0.0).drill.is_some());
        desk.ask(ask, Duration::ZERO);
        let view = lesson(&mut desk, 0.0);
        assert_eq!(view.drill, None);
        assert!(view.page.systems.len() > 1, "the tune's own page");
    }
}

#[test]
fn again_is_what_the_band_really_repeats() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    assert!(lesson(&mut desk, 0.0).again);
    desk.ask(Ask::Band(BandAsk::NoLoop), Duration::ZERO);
    assert!(!lesson(&mut desk, 0.0).again);
    porch(&mut desk, PorchAsk::Again(true), 0.0);
    assert!(lesson(&mut desk, 0.0).again);
    // A loop of the band's own is neither called that nor taken away by a way back to the top.
    porch(&mut desk, PorchAsk::Phrase(None), 0.0);
    desk.ask(Ask::Band(BandAsk::LoopPart), Duration::ZERO);
    porch(&mut desk, PorchAsk::FromTop, 0.0);
    assert!(!lesson(&mut desk, 0.0).again);
    assert!(view(&mut desk, 0.0).band.looped.is_some());
}

#[test]
fn what_was_clean_today_was_clean_in_its_key() {
    let today = Practice {
        day: day(26),
        stretch: Stretch::Whole,
        version: Version::Plain,
        key: "A".parse().unwrap(),
        ..practice(60)
    };
    let mut desk = desk_after(vec![today], true);
    assert_eq!(lesson(&mut desk, 0.0).clean, Some(60));
    desk.ask(Ask::KeyUp(1), Duration::ZERO);
    assert_eq!(lesson(&mut desk, 0.0).clean, None);
}

#[test]
fn a_double_stop_becomes_an_exercise_and_the_tune_comes_back_as_it_was() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    porch(&mut desk, PorchAsk::Faster(-4), 0.0);
    let stop = lesson(&mut desk, 0.0).stops[0].clone();
    porch(&mut desk, PorchAsk::Stop(0), 0.0);
    let view = lesson(&mut desk, 0.0);
    assert_eq!(view.drill, Some(Drill::Stop(stop.clone())));
    assert_eq!((view.again, view.tempo.0), (true, 48));
    // A bar on the beat and a bar with the hand, the same two figures throughout.
    assert_eq!(view.page.spots.len(), 4 + 8);
    let frets: Vec<String> = stop.notes.iter().map(|note| note.1.to_string()).collect();
    for spot in &view.page.spots {
        let figures: Vec<&String> = spot.figures.iter().map(|figure| &figure.text).collect();
        assert!(figures == frets.iter().collect::<Vec<_>>(), "{figures:?}");
    }
    // It is played for ever, and is nothing to be remembered.
    desk.ask(Ask::Clock(true), beats(0.0));
    lesson(&mut desk, 60.0);
    assert_eq!(desk.songbook.practice(), []);
    porch(&mut desk, PorchAsk::EndDrill, 60.0);
    let view = lesson(&mut desk, 60.0);
    assert_eq!((view.drill, view.phrase, view.percent), (None, Some(1), 80));
    assert_eq!(view.follow, FollowState::Waiting);
}
