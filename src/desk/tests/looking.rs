//! Looking through the songbook.

use super::*;
use crate::theory::{Key, Mode};

fn shipped() -> Desk {
    let tunes = crate::store::shipped::tunes()
        .into_iter()
        .map(|(_, tune)| tune)
        .collect();
    Desk::new(
        Box::new(Memory::new(tunes)),
        silent(),
        Settings::default(),
        None,
    )
}

fn titles(desk: &Desk) -> Vec<String> {
    desk.songbook()
        .rows
        .iter()
        .map(|row| row.title.clone())
        .collect()
}

fn ask(desk: &mut Desk, wish: Ask) {
    desk.ask(wish, Duration::ZERO);
}

#[test]
fn tunes_are_found_by_part_of_a_name_and_put_on_the_stand() {
    let mut desk = shipped();
    ask(&mut desk, Ask::Search("milrace".to_owned()));
    assert_eq!(titles(&desk), ["Millrace Reel"]);
    let id = desk.songbook().rows[0].id;
    ask(&mut desk, Ask::Open(id));
    assert_eq!(desk.room(), Room::Stand);
    assert_eq!(desk.stand(Duration::ZERO).unwrap().title, "Millrace Reel");
    assert_eq!(desk.songbook().open, Some(id));
}

#[test]
fn filters_narrow_and_say_when_nothing_fits() {
    let mut desk = shipped();
    let all = titles(&desk).len();
    ask(&mut desk, Ask::OnlyRhythm("waltz".to_owned()));
    let waltzes = titles(&desk).len();
    assert!(0 < waltzes && waltzes < all);
    ask(
        &mut desk,
        Ask::OnlyKey(Some(Key::new("F#".parse().unwrap(), Mode::Locrian))),
    );
    assert_eq!(desk.songbook().state, SongbookState::NothingFits);
    ask(&mut desk, Ask::OnlyKey(None));
    ask(&mut desk, Ask::OnlyRhythm(String::new()));
    assert_eq!(titles(&desk).len(), all);
}

#[test]
fn only_tunes_whose_shapes_are_known() {
    let mut desk = shipped();
    ask(&mut desk, Ask::OnlyKnown(true));
    let before = titles(&desk);
    for chord in FIRST_CHORDS {
        ask(&mut desk, Ask::Know(chord.to_owned(), true));
    }
    let after = titles(&desk);
    assert!(before.iter().all(|title| after.contains(title)));
    assert!(before.len() < after.len());
    for chord in FIRST_CHORDS {
        ask(&mut desk, Ask::Know(chord.to_owned(), false));
    }
    assert_eq!(desk.songbook().state, SongbookState::NothingFits);
}

#[test]
fn a_row_says_where_the_melody_starts() {
    let mut desk = shipped();
    ask(&mut desk, Ask::Search("Millrace Reel".to_owned()));
    let row = desk.songbook().rows[0].clone();
    assert_eq!(
        (row.key.as_str(), row.rhythm.as_str(), row.metre.as_str()),
        ("A", "reel", "4/4")
    );
    assert!(!row.start_course.is_empty());
}

#[test]
fn an_empty_songbook_can_be_filled_with_the_shipped_tunes() {
    let mut desk = Desk::new(
        Box::new(Memory::new(Vec::new())),
        silent(),
        Settings::default(),
        None,
    );
    assert_eq!(desk.songbook().state, SongbookState::Empty);
    ask(&mut desk, Ask::RestoreShipped);
    assert!(desk.songbook().total >= 24);
}

#[test]
fn a_tune_that_is_gone_is_said_to_be_and_nothing_else_changes() {
    let mut desk = shipped();
    ask(&mut desk, Ask::Open(TuneId(999)));
    assert_eq!(desk.notice(), Some(&Notice::TuneUnreadable));
    assert_eq!(desk.room(), Room::Songbook);
    ask(&mut desk, Ask::CloseNotice);
    assert_eq!(desk.notice(), None);
}
