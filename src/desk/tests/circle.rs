//! Who sits round, what each of them plays, and which key suits them best.

use super::*;
use crate::circle::{CapoHabit, KeyEase, VoiceType};
use crate::theory::Reads;

fn circle(desk: &mut Desk, asks: impl IntoIterator<Item = CircleAsk>) -> CircleView {
    for ask in asks {
        desk.ask(Ask::Circle(ask), Duration::ZERO);
    }
    desk.circle()
}

fn instrument(id: &str) -> Plays {
    Plays::Instrument(id.to_owned())
}

fn own_chords(seat: &SeatView) -> Vec<&str> {
    let sheet = seat.sheet.as_ref().unwrap();
    sheet.chords.iter().map(SeatChord::own).collect()
}

#[test]
fn the_first_seat_is_the_player_of_the_settings() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::LeftHanded(true), Duration::ZERO);
    desk.ask(Ask::Instrument("ukulele".to_owned()), Duration::ZERO);
    let view = circle(&mut desk, [CircleAsk::Remove(0)]);
    let player = &view.seats[0];
    assert_eq!(view.seats.len(), 1);
    assert!(player.title.player && player.set.left_handed);
    assert_eq!(player.title.plays, instrument("ukulele"));
    // The settings' own marked chords.
    assert_eq!(player.known.as_ref().unwrap()[..3], ["G", "C", "D"]);
}

#[test]
fn every_seat_has_its_own_chords_for_the_tune_in_its_key() {
    let mut desk = on_stand(REEL);
    let view = circle(
        &mut desk,
        [
            CircleAsk::Add(instrument("guitar")),
            CircleAsk::Change(1, SeatChange::Capo(CapoHabit::Always(2))),
            CircleAsk::Add(Plays::Page(Reads::BFlat)),
            CircleAsk::Add(Plays::Voice),
        ],
    );
    assert_eq!(own_chords(&view.seats[0]), ["A", "D", "E7", "E"]);
    assert_eq!(own_chords(&view.seats[1]), ["G", "C", "D7", "D"]);
    assert_eq!(own_chords(&view.seats[2]), ["B", "E", "F♯7", "F♯"]);
    let guitar = view.seats[1].sheet.as_ref().unwrap();
    assert_eq!((guitar.capo, guitar.shapes.0.as_str()), (2, "G"));
    let frets: Vec<_> = { guitar.chords[0].shape.as_ref().unwrap().frets.iter() }
        .map(|fret| fret.unwrap())
        .collect();
    assert_eq!(frets, [3, 2, 0, 0, 0, 3]);
    let clarinet = view.seats[2].sheet.as_ref().unwrap();
    assert_eq!(clarinet.written.as_ref().unwrap().0, "B");
    assert!(clarinet.chords.iter().all(|chord| chord.shape.is_none()));
    // All of it follows the called key.
    desk.ask(Ask::KeyOn("G".parse().unwrap()), Duration::ZERO);
    assert_eq!(own_chords(&desk.circle().seats[0]), ["G", "C", "D7", "D"]);
}

#[test]
fn simpler_chords_of_the_stand_are_the_chords_of_the_circle() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Simpler(Simplify::Triads), Duration::ZERO);
    assert_eq!(own_chords(&desk.circle().seats[0]), ["A", "D", "E"]);
}

#[test]
fn seats_of_one_kind_are_numbered_until_they_have_names() {
    let mut desk = on_stand(REEL);
    let add = || CircleAsk::Add(instrument("guitar"));
    let view = circle(&mut desk, [add(), add(), CircleAsk::Add(Plays::Voice)]);
    let numbers: Vec<_> = view.seats.iter().map(|seat| seat.title.number).collect();
    assert_eq!(numbers, [0, 1, 2, 0]);
    let name = SeatChange::Name("  Imke\u{7} of the very long name indeed".to_owned());
    let view = circle(&mut desk, [CircleAsk::Change(1, name)]);
    assert_eq!(view.seats[1].title.name, "Imke of the very long");
    assert_eq!(view.seats[2].title.number, 0);
}

#[test]
fn seats_move_and_leave_and_come_back_and_the_player_stays_the_first() {
    let mut desk = on_stand(REEL);
    let plays = |view: &CircleView| -> Vec<Plays> {
        view.seats
            .iter()
            .map(|seat| seat.title.plays.clone())
            .collect()
    };
    let all = [instrument("mandolin"), instrument("banjo"), Plays::Voice];
    let view = circle(&mut desk, all[1..].iter().cloned().map(CircleAsk::Add));
    assert_eq!(plays(&view), all);
    let view = circle(&mut desk, [CircleAsk::Move(1, -1), CircleAsk::Move(0, 1)]);
    assert_eq!(plays(&view), all);
    let view = circle(&mut desk, [CircleAsk::Move(1, 1)]);
    assert_eq!(plays(&view)[1..], [Plays::Voice, instrument("banjo")]);
    let view = circle(&mut desk, [CircleAsk::Remove(1)]);
    assert_eq!(plays(&view), all[..2]);
    assert_eq!(view.removed.as_ref().unwrap().plays, Plays::Voice);
    let view = circle(&mut desk, [CircleAsk::PutBack]);
    assert_eq!(plays(&view)[1], Plays::Voice);
    assert_eq!(view.removed, None);
}

#[test]
fn a_circle_holds_so_many_and_no_more() {
    let mut desk = on_stand(REEL);
    let view = circle(
        &mut desk,
        vec![CircleAsk::Add(Plays::Voice); 2 * MOST_SEATS],
    );
    assert_eq!((view.seats.len(), view.room), (MOST_SEATS, false));
}

#[test]
fn a_voice_is_set_by_its_type_or_by_two_notes() {
    let mut desk = on_stand(REEL);
    let view = circle(
        &mut desk,
        [
            CircleAsk::Add(Plays::Voice),
            CircleAsk::Change(1, SeatChange::Voice(VoiceType::Tenor)),
        ],
    );
    let voice = |view: &CircleView| view.seats[1].voice.clone().unwrap();
    assert_eq!(voice(&view), ("C3".to_owned(), "G4".to_owned()));
    let changes = [SeatChange::Low(-2), SeatChange::High(2), SeatChange::Silent];
    let view = circle(
        &mut desk,
        changes.map(|change| CircleAsk::Change(1, change)),
    );
    assert_eq!(voice(&view), ("B♭2".to_owned(), "A4".to_owned()));
    // A voice does not become narrower than one can sing with, nor leave what is sung.
    let narrow = vec![CircleAsk::Change(1, SeatChange::High(-1)); 60];
    let view = circle(&mut desk, narrow);
    assert_eq!(voice(&view).1, "E♭3");
}

#[test]
fn twelve_keys_are_ranked_with_the_called_one_among_them() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::KeyOn("Bb".parse().unwrap()), Duration::ZERO);
    let view = circle(&mut desk, []);
    assert_eq!(view.keys.len(), 12);
    assert!(
        view.keys
            .windows(2)
            .all(|pair| pair[0].ease >= pair[1].ease)
    );
    let called: Vec<_> = view.keys.iter().filter(|key| key.called).collect();
    assert_eq!((called.len(), called[0].key.0.as_str()), (1, "B♭"));
    let written: Vec<_> = view.keys.iter().filter(|key| key.written).collect();
    assert_eq!((written.len(), written[0].key.0.as_str()), (1, "A"));
    // Marked are G C D A Em Am: in G, all are known but the seventh.
    let best = &view.keys[0];
    assert_eq!(best.key.0, "G");
    assert_eq!(best.seats[0].known, Some((3, 4)));
    assert_eq!(best.seats[0].ease, KeyEase::Fair);
    assert_eq!(called[0].seats[0].ease, KeyEase::Hard);
}

#[test]
fn a_key_that_is_looked_at_is_played_with_one_touch() {
    let mut desk = on_stand(REEL);
    desk.ask(Ask::Go(Room::Circle), Duration::ZERO);
    let c = "C".parse().unwrap();
    let view = circle(&mut desk, [CircleAsk::Look(c)]);
    assert_eq!(view.keys[view.looked_at].key.0, "C");
    circle(&mut desk, [CircleAsk::Play(c)]);
    assert_eq!(desk.room(), Room::Stand);
    assert_eq!(super::view(&mut desk, 0.0).key, "C");
}

#[test]
fn a_singer_is_told_which_note_is_too_high() {
    let mut desk = on_stand(REEL);
    let view = circle(&mut desk, [CircleAsk::Add(Plays::Voice)]);
    // E4 to E5 in A; a group sings A3 to D5.
    let in_a = view.keys.iter().find(|key| key.written).unwrap();
    let voice = in_a.seats[1].voice.as_ref().unwrap();
    assert_eq!(
        (voice.high.as_str(), voice.top.clone()),
        ("E5", ("D5".to_owned(), 2))
    );
    assert_eq!(in_a.seats[1].ease, KeyEase::Fair);
}

#[test]
fn another_tune_is_looked_at_without_leaving_the_one_on_the_stand() {
    let other = "X:1\nT:Weir Waltz\nM:3/4\nL:1/4\nK:F\n\"F\"F3|\"C\"c3|\n";
    let tunes = [REEL, other].map(|text| abc::read(text.as_bytes()).tunes.remove(0).tune);
    let memory = Box::new(Memory::new(tunes.to_vec()));
    let mut desk = Desk::new(memory, silent(), Settings::default(), None);
    let empty = circle(&mut desk, []);
    assert!(empty.tune.is_none() && empty.keys.is_empty() && empty.seats[0].sheet.is_none());
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    let view = circle(&mut desk, [CircleAsk::Tune(Some(TuneId(2)))]);
    let tune = view.tune.as_ref().unwrap();
    assert_eq!((tune.title.as_str(), tune.on_stand), ("Weir Waltz", false));
    assert_eq!(own_chords(&view.seats[0]), ["F", "C"]);
    assert_eq!(super::view(&mut desk, 0.0).title, "Bucket Test");
    circle(&mut desk, [CircleAsk::Play("G".parse().unwrap())]);
    let stand = super::view(&mut desk, 0.0);
    assert_eq!(
        (stand.title.as_str(), stand.key.as_str()),
        ("Weir Waltz", "G")
    );
    assert!(desk.circle().tune.unwrap().on_stand);
    // Who puts another tune on the stand looks at that one.
    circle(&mut desk, [CircleAsk::Tune(Some(TuneId(1)))]);
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    assert!(desk.circle().tune.unwrap().on_stand);
    let view = circle(&mut desk, [CircleAsk::Find("bucket".to_owned())]);
    assert_eq!(view.finder.rows[0].title, "Bucket Test");
}

#[test]
fn a_banjo_is_told_how_to_tune_and_that_a_string_goes_up() {
    let mut desk = on_stand("X:1\nT:Test\nM:4/4\nL:1/4\nK:D\n\"D\"D4|\"A\"A4|\n");
    let view = circle(&mut desk, [CircleAsk::Add(instrument("banjo"))]);
    let sheet = view.seats[1].sheet.as_ref().unwrap();
    assert_eq!(sheet.tuned.as_deref(), Some("G C G C D"));
    assert!(sheet.tight);
    assert_eq!((sheet.capo, sheet.chords[0].own()), (2, "C"));
}

#[test]
fn the_circle_is_kept() {
    let mut desk = on_stand(REEL);
    circle(&mut desk, [CircleAsk::Add(Plays::Voice)]);
    assert_eq!(desk.songbook.circle().len(), 2);
    let kept = desk.songbook.circle();
    assert_eq!(Circle::new(kept.clone()).kept(), kept);
}
