//! The porch: what is asked there, and what is then to be seen and written down.

use chrono::NaiveDate;

use crate::chart::Version;
use crate::store::shipped;

use super::*;

pub(super) fn day(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, day).unwrap()
}

pub(super) fn practice(bpm: u16) -> Practice {
    Practice {
        day: day(20),
        tune: TuneId(1),
        stretch: Stretch::Phrase(1),
        version: Version::KeyDrones,
        key: "G".parse().unwrap(),
        bpm,
        passes: 2,
    }
}

pub(super) fn desk_after(practice: Vec<Practice>, open: bool) -> Desk {
    let reel = abc::read(REEL.as_bytes()).tunes.remove(0).tune;
    let other = shipped::tunes().remove(0).1;
    let memory = Memory::new(vec![reel, other]).after(practice);
    desk_over(memory, open)
}

fn desk_over(memory: Memory, open: bool) -> Desk {
    let memory = Box::new(memory.on(day(26)));
    let mut desk = Desk::new(memory, silent(), Settings::default(), None);
    if open {
        desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    }
    desk.ask(Ask::Go(Room::Porch), Duration::ZERO);
    desk
}

/// A tune of one's own on the page.
pub(super) fn on_porch_with(text: &str) -> Desk {
    let tune = abc::read(text.as_bytes()).tunes.remove(0).tune;
    desk_over(Memory::new(vec![tune]), true)
}

pub(super) fn on_porch() -> Desk {
    desk_after(Vec::new(), true)
}

pub(super) fn porch(desk: &mut Desk, ask: PorchAsk, now: f64) {
    desk.ask(Ask::Porch(ask), beats(now));
}

pub(super) fn lesson(desk: &mut Desk, now: f64) -> LessonView {
    desk.porch(beats(now)).lesson.unwrap()
}

/// Part and number of the bar that is played.
fn bar(desk: &mut Desk, now: f64) -> (String, u32) {
    let view = view(desk, now);
    let chip = view
        .form
        .iter()
        .find(|chip| chip.passed == Passed::Now)
        .unwrap();
    (format!("{}{}", chip.part, chip.pass), view.bar.0)
}

#[test]
fn the_whole_tune_is_suggested_from_its_top() {
    let whole = Practice {
        stretch: Stretch::Whole,
        ..practice(60)
    };
    let mut desk = desk_after(vec![whole], true);
    desk.ask(Ask::JumpTo(6), Duration::ZERO);
    porch(&mut desk, PorchAsk::Home(true), 0.0);
    let found = desk.porch(Duration::ZERO).suggestions;
    let place = found.iter().position(|one| one.stretch == Stretch::Whole);
    porch(&mut desk, PorchAsk::Take(place.unwrap()), 0.0);
    assert_eq!(lesson(&mut desk, 0.0).phrase, None);
    assert_eq!(bar(&mut desk, 0.0).0, "A1");
    assert_eq!(lesson(&mut desk, 0.0).spot.unwrap().bar, 0);
}

#[test]
fn with_no_tune_it_says_what_to_practise_and_with_one_it_shows_its_page() {
    let mut desk = desk_after(Vec::new(), false);
    let view = desk.porch(Duration::ZERO);
    assert!(view.home && view.lesson.is_none());
    assert_eq!(view.suggestions[0].reason, Reason::New);
    let mut desk = on_porch();
    let view = desk.porch(Duration::ZERO);
    assert!(!view.home && view.suggestions.is_empty());
    let lesson = view.lesson.unwrap();
    assert_eq!(
        (lesson.title.as_str(), lesson.key.as_str(), lesson.phrase),
        ("Bucket Test", "A", None)
    );
    // It waits at the pickup.
    let spot = lesson.spot.unwrap();
    assert_eq!((spot.system, spot.figures[0].text.as_str()), (0, "2"));
}

#[test]
fn the_page_follows_the_called_key_the_capo_and_the_instrument() {
    let mut desk = on_porch();
    let first = |desk: &mut Desk| lesson(desk, 0.0).page.spots[0].figures[0].text.clone();
    assert_eq!(first(&mut desk), "2");
    desk.ask(Ask::KeyUp(-2), Duration::ZERO);
    assert_eq!(
        (
            lesson(&mut desk, 0.0).key.as_str(),
            first(&mut desk).as_str()
        ),
        ("G", "0")
    );
    desk.ask(Ask::WrittenKey, Duration::ZERO);
    desk.ask(Ask::Capo(2), Duration::ZERO);
    assert_eq!(first(&mut desk), "0");
    desk.ask(Ask::Capo(0), Duration::ZERO);
    desk.ask(Ask::Instrument("guitar".into()), Duration::ZERO);
    let page = lesson(&mut desk, 0.0).page;
    let (top, foot) = page.courses;
    assert!((foot - top - 5.0 * page.space).abs() < 0.1, "six courses");
}

#[test]
fn a_version_is_chosen_and_says_what_rings() {
    let mut desk = on_porch();
    let view = lesson(&mut desk, 0.0);
    assert_eq!(view.versions.len(), 4);
    assert_eq!(view.versions.iter().filter(|one| one.easiest).count(), 1);
    let hard: Vec<u8> = view.versions.iter().map(|one| one.hard).collect();
    assert!(
        hard[3] >= hard[0] && hard.iter().all(|hard| (1..=5).contains(hard)),
        "{hard:?}"
    );
    let figures = |desk: &mut Desk| {
        lesson(desk, 0.0)
            .page
            .spots
            .iter()
            .map(|spot| spot.figures.len())
            .max()
    };
    assert_eq!(figures(&mut desk), Some(1));
    porch(&mut desk, PorchAsk::Version(Version::KeyDrones), 0.0);
    assert_eq!(figures(&mut desk), Some(2));
    let (report, names) = lesson(&mut desk, 0.0).rings;
    assert!(report.rings > 0);
    assert!(
        names.iter().all(|name| ["A", "E"].contains(&name.as_str())),
        "{names:?}"
    );
}

#[test]
fn a_phrase_is_gone_to_and_played_again_and_again() {
    let mut desk = on_porch();
    let phrases = lesson(&mut desk, 0.0).phrases;
    let names: Vec<String> = phrases
        .iter()
        .map(|one| format!("{}{}", one.part, one.number))
        .collect();
    assert_eq!(names, ["A1", "B1"]);
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    porch(&mut desk, PorchAsk::PhraseBy(2), 0.0);
    let view = lesson(&mut desk, 0.0);
    assert_eq!((view.phrase, view.again), (Some(1), true));
    assert_eq!(bar(&mut desk, 0.0), ("B1".to_owned(), 1));
    desk.ask(Ask::Clock(true), beats(0.0));
    // Four bars of two beats, for ever.
    for pass in 0..4 {
        let now = 8.0 * f64::from(pass);
        assert_eq!(bar(&mut desk, now + 0.1), ("B1".to_owned(), 1));
        assert_eq!(bar(&mut desk, now + 7.9), ("B1".to_owned(), 4));
    }
    // Once: it goes on into the next pass of the part.
    porch(&mut desk, PorchAsk::Again(false), 24.5);
    assert_eq!(bar(&mut desk, 32.5).0, "B2");
    // The whole tune.
    porch(&mut desk, PorchAsk::PhraseBy(-9), 33.0);
    assert_eq!(lesson(&mut desk, 33.0).phrase, None);
}

#[test]
fn a_phrase_that_begins_inside_a_bar_begins_there() {
    let text = "X:1\nT:Inside\nM:4/4\nL:1/4\nQ:1/2=60\nK:G\nP:A\nGABc|d2 z d|edcB|A2 z d|edcB|A2 z B|cBAF|G4|]\n";
    let mut desk = super::on_stand(text);
    desk.ask(Ask::Go(Room::Porch), Duration::ZERO);
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    let phrases = lesson(&mut desk, 0.0).phrases.len();
    assert!(phrases > 1);
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    let spot = lesson(&mut desk, 0.0).spot.unwrap();
    desk.ask(Ask::Clock(true), beats(0.0));
    let begun = lesson(&mut desk, 0.01).spot.unwrap();
    assert_eq!((spot.bar, spot.at), (begun.bar, begun.at));
    assert!(spot.at > crate::chart::Ticks::ZERO, "in a bar: {spot:?}");
}

#[test]
fn clean_passes_are_written_down_with_the_fastest_tempo() {
    let mut desk = on_porch();
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    porch(&mut desk, PorchAsk::Version(Version::KeyDrones), 0.0);
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    desk.ask(Ask::Clock(true), beats(0.0));
    lesson(&mut desk, 7.9);
    assert_eq!(desk.songbook.practice(), []);
    assert_eq!(lesson(&mut desk, 8.1).clean, Some(60));
    lesson(&mut desk, 24.1);
    let log = desk.songbook.practice();
    let one = log[0];
    assert_eq!(log.len(), 1);
    assert_eq!(
        (one.day, one.tune, one.stretch),
        (day(26), TuneId(1), Stretch::Phrase(1))
    );
    assert_eq!(
        (one.version, one.bpm, one.passes),
        (Version::KeyDrones, 60, 3)
    );
    // Faster in mid-pass: that pass is none, the next one counts.
    porch(&mut desk, PorchAsk::Faster(2), 26.0);
    assert_eq!(lesson(&mut desk, 26.0).percent, 110);
    lesson(&mut desk, 32.0);
    assert_eq!(desk.songbook.practice()[0].bpm, 60);
    lesson(&mut desk, 44.0);
    assert_eq!(desk.songbook.practice()[0].bpm, 66);
}

#[test]
fn the_first_clean_pass_after_a_jump_or_a_stop_counts() {
    let passes = |desk: &mut Desk, now: f64| {
        lesson(desk, now);
        desk.songbook
            .practice()
            .iter()
            .map(|one| one.passes)
            .sum::<u16>()
    };
    let mut desk = on_porch();
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    desk.ask(Ask::Clock(true), beats(0.0));
    // From the top at 2: eight beats that do not count, and eight that do.
    porch(&mut desk, PorchAsk::FromTop, 2.0);
    assert_eq!(passes(&mut desk, 10.5), 0);
    assert_eq!(passes(&mut desk, 18.5), 1);
    // Another version spoils the pass under way; a hold in it does not spoil the next one as well.
    porch(&mut desk, PorchAsk::Version(Version::KeyDrones), 19.0);
    desk.ask(Ask::Hold, beats(20.0));
    desk.ask(Ask::Hold, beats(21.0));
    assert_eq!(passes(&mut desk, 27.5), 1);
    assert_eq!(passes(&mut desk, 35.5), 2);
    // Stopped and begun again.
    desk.ask(Ask::Clock(false), beats(36.0));
    porch(&mut desk, PorchAsk::FromTop, 37.0);
    desk.ask(Ask::Clock(true), beats(40.0));
    assert_eq!(passes(&mut desk, 47.5), 2);
    assert_eq!(passes(&mut desk, 48.5), 3);
}

#[test]
fn a_loop_that_is_not_the_stretch_is_not_written_down_as_it() {
    let mut desk = on_porch();
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    // The whole tune is chosen, and a part of it is looped.
    desk.ask(Ask::Band(BandAsk::LoopPart), Duration::ZERO);
    desk.ask(Ask::Clock(true), beats(0.0));
    lesson(&mut desk, 40.0);
    assert_eq!(desk.songbook.practice(), []);
    // The loop is lifted in mid-pass: what is left of the tune is no whole one, and the time after it is.
    desk.ask(Ask::Band(BandAsk::NoLoop), beats(41.0));
    lesson(&mut desk, 73.0);
    assert_eq!(desk.songbook.practice(), []);
    lesson(&mut desk, 105.0);
    let log = desk.songbook.practice();
    assert_eq!((log.len(), log[0].stretch), (1, Stretch::Whole));
    // A phrase is chosen, and the tune goes on beyond it.
    let mut desk = on_porch();
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    porch(&mut desk, PorchAsk::Phrase(Some(0)), 0.0);
    porch(&mut desk, PorchAsk::Again(false), 0.0);
    desk.ask(Ask::Clock(true), beats(0.0));
    lesson(&mut desk, 70.0);
    assert_eq!(desk.songbook.practice(), []);
}

#[test]
fn a_whole_tune_is_written_down_once_through_and_again_and_again() {
    for again in [false, true] {
        let mut desk = on_porch();
        desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
        porch(&mut desk, PorchAsk::Again(again), 0.0);
        desk.ask(Ask::Clock(true), beats(0.0));
        lesson(&mut desk, 36.0);
        let log = desk.songbook.practice();
        assert_eq!((log.len(), log[0].stretch), (1, Stretch::Whole), "{again}");
    }
}

#[test]
fn what_is_held_or_led_by_hand_or_played_elsewhere_is_not_written_down() {
    let mut desk = on_porch();
    desk.ask(Ask::Band(BandAsk::CountIn(false)), Duration::ZERO);
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 0.0);
    for step in 0..20 {
        desk.ask(Ask::NextBar, beats(f64::from(step) * 2.0));
    }
    assert_eq!(desk.songbook.practice(), []);
    porch(&mut desk, PorchAsk::Phrase(Some(1)), 50.0);
    desk.ask(Ask::Clock(true), beats(50.0));
    desk.ask(Ask::Hold, beats(52.0));
    desk.ask(Ask::Hold, beats(53.0));
    lesson(&mut desk, 60.0);
    assert_eq!(desk.songbook.practice(), [], "held");
    desk.ask(Ask::Go(Room::Stand), beats(60.0));
    view(&mut desk, 90.0);
    assert_eq!(desk.songbook.practice(), [], "on the stand");
}

#[test]
fn slower_and_faster_go_in_steps_of_the_tunes_own_tempo() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::Faster(-5), 0.0);
    let view = lesson(&mut desk, 0.0);
    assert_eq!((view.percent, view.tempo.0), (75, 45));
    desk.ask(Ask::Faster(1), Duration::ZERO); // 46 of 60
    porch(&mut desk, PorchAsk::Faster(1), 0.0);
    assert_eq!(lesson(&mut desk, 0.0).percent, 80);
    porch(&mut desk, PorchAsk::Faster(-99), 0.0);
    assert_eq!(lesson(&mut desk, 0.0).tempo.0, 30);
}

#[test]
fn the_page_is_covered_step_by_step_and_laid_out_for_its_paper() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::HideBy(3), 0.0);
    assert!(
        lesson(&mut desk, 0.0)
            .page
            .spots
            .iter()
            .all(|spot| spot.figures.is_empty())
    );
    porch(&mut desk, PorchAsk::HideBy(-9), 0.0);
    let before = lesson(&mut desk, 0.0).page;
    assert!(before == lesson(&mut desk, 9.0).page, "laid out once");
    porch(&mut desk, PorchAsk::Paper(864.0, 16.0), 0.0);
    let wide = lesson(&mut desk, 0.0).page;
    let right =
        |page: &crate::engraving::Page| page.systems[0].bars.last().map(|bar| bar.x + bar.width);
    assert!(right(&wide) > right(&before));
    porch(&mut desk, PorchAsk::Staff(true), 0.0);
    assert!(lesson(&mut desk, 0.0).page.height > wide.height);
}

#[test]
fn a_bar_of_the_page_is_jumped_to_and_the_top_is_gone_back_to() {
    let mut desk = on_porch();
    porch(&mut desk, PorchAsk::Bar(3), 0.0);
    assert_eq!(bar(&mut desk, 0.0), ("A1".to_owned(), 3));
    porch(&mut desk, PorchAsk::FromTop, 0.0);
    assert_eq!(bar(&mut desk, 0.0).1, 0);
}

#[test]
fn back_goes_where_one_came_from() {
    let mut desk = on_porch();
    desk.ask(Ask::Back, Duration::ZERO);
    assert_eq!(desk.room(), Room::Stand);
    desk.ask(Ask::Back, Duration::ZERO);
    assert_eq!(desk.room(), Room::Songbook);
    desk.ask(Ask::Go(Room::Porch), Duration::ZERO);
    desk.ask(Ask::Back, Duration::ZERO);
    assert_eq!(desk.room(), Room::Songbook);
    assert!(
        desk.porch(Duration::ZERO).lesson.is_none(),
        "nobody is there"
    );
}

#[test]
fn a_suggestion_is_begun_with_one_touch() {
    let mut desk = desk_after(vec![practice(48)], false);
    let view = desk.porch(Duration::ZERO);
    let one = &view.suggestions[0];
    assert_eq!(
        (one.reason, one.bpm, one.goal, one.days),
        (Reason::Due, 48, 50, Some(6))
    );
    porch(&mut desk, PorchAsk::Take(0), 0.0);
    let lesson = lesson(&mut desk, 0.0);
    assert_eq!(desk.room(), Room::Porch);
    assert_eq!(
        (lesson.title.as_str(), lesson.key.as_str()),
        ("Bucket Test", "G")
    );
    assert_eq!(
        (lesson.phrase, lesson.version, lesson.tempo.0),
        (Some(1), Version::KeyDrones, 48)
    );
    assert_eq!(bar(&mut desk, 0.0).0, "B1");
}

#[test]
fn a_tune_that_is_chosen_beside_the_porch_lies_on_its_page() {
    let mut desk = on_porch();
    desk.ask(Ask::Open(TuneId(2)), Duration::ZERO);
    assert_eq!(desk.room(), Room::Porch);
    assert_ne!(lesson(&mut desk, 0.0).title, "Bucket Test");
}

#[test]
fn a_change_of_chords_is_practised_on_the_stand() {
    let mut desk = on_porch();
    let change = lesson(&mut desk, 0.0).changes[0].clone();
    porch(&mut desk, PorchAsk::Change(0), 0.0);
    assert_eq!(desk.room(), Room::Stand);
    let stand = view(&mut desk, 0.0);
    assert_eq!(
        (stand.now.name, stand.next.unwrap().chord.name),
        change.chords
    );
    desk.ask(Ask::Back, beats(1.0));
    assert_eq!(desk.room(), Room::Porch);
    assert_eq!(lesson(&mut desk, 1.0).drill, None);
    assert_eq!(view(&mut desk, 1.0).form.len(), 4);
}
