//! Tunings of one's own: what the Stand and the list make of them.

use super::*;

fn frets(desk: &mut Desk) -> Vec<Option<u8>> {
    view(desk, 0.0).now.shape.unwrap().frets
}

#[test]
fn stand_and_list_follow_a_course_that_is_retuned_at_once() {
    let mut desk = on_stand(REEL);
    let start = |desk: &Desk| {
        let row = desk.songbook().rows[0].clone();
        (row.start_course.clone(), row.start_fret)
    };
    // The reel starts on E above middle C: second fret of the D course.
    assert_eq!(start(&desk), ("D".to_owned(), 2));
    let before = frets(&mut desk);
    for course in [0, 1] {
        desk.ask(Ask::Retune(course, 1), beats(0.0));
        desk.ask(Ask::Retune(course, 1), beats(0.0));
    }
    let now = view(&mut desk, 0.0);
    assert_eq!(
        now.now.shape.as_ref().unwrap().courses,
        ["A", "E", "A", "E"]
    );
    assert_ne!(frets(&mut desk), before);
    let ring: Vec<_> = now.ring.iter().map(|ring| ring.name.as_str()).collect();
    assert_eq!(ring, ["A", "E", "A", "E"]);
    assert!(now.ring.iter().all(|ring| ring.verdict == Verdict::Ring));
    assert_eq!(start(&desk), ("E".to_owned(), 0));
}

#[test]
fn a_shared_tuning_is_chosen_at_one_touch_and_left_at_another() {
    let mut desk = on_stand(REEL);
    let usual = desk.settings().clone();
    let tunings = desk.settings_view().tunings;
    assert!(tunings[0].chosen);
    assert_eq!(tunings[1].notes, ["A", "E", "A", "E"]);
    desk.ask(Ask::Tuning(tunings[1].semitones.clone()), beats(0.0));
    let view = desk.settings_view();
    assert!(view.tunings[1].chosen && !view.tunings[0].chosen);
    assert_eq!(view.courses[0], ("A".to_owned(), 2));
    desk.ask(Ask::Tuning(tunings[0].semitones.clone()), beats(0.0));
    assert_eq!(*desk.settings(), usual);
}

#[test]
fn each_instrument_keeps_its_own_tuning() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Retune(3, -2), beats(0.0));
    desk.ask(Ask::Instrument("guitar".to_owned()), beats(0.0));
    let names = |desk: &Desk| {
        let courses = desk.settings_view().courses;
        courses
            .into_iter()
            .map(|(name, _)| name)
            .collect::<Vec<_>>()
    };
    assert_eq!(names(&desk), ["E", "A", "D", "G", "B", "E"]);
    desk.ask(Ask::Instrument("mandolin".to_owned()), beats(0.0));
    assert_eq!(names(&desk), ["G", "D", "A", "D"]);
}

#[test]
fn no_course_is_tuned_beyond_its_bounds_and_no_course_that_is_not_there() {
    let mut desk = on_stand(REEL);
    for _ in 0..40 {
        desk.ask(Ask::Retune(0, 1), beats(0.0));
        desk.ask(Ask::Retune(1, -1), beats(0.0));
        desk.ask(Ask::Retune(9, 1), beats(0.0));
    }
    let semitones: Vec<_> = desk
        .settings_view()
        .courses
        .iter()
        .map(|(_, by)| *by)
        .collect();
    assert_eq!(semitones, [5, -12, 0, 0]);
    desk.ask(Ask::Tuning(vec![127; 99]), beats(0.0));
    assert_eq!(desk.settings_view().courses.len(), 4);
}
