//! Playing order. The rules are those of ABC 2.1 (4.8 to 4.10) where it has one, and common practice elsewhere.

use super::*;

fn order(text: &str) -> String {
    played(&tune(text))
}

#[test]
fn a_repeated_section_is_played_twice() {
    assert_eq!(order("|: a b :| c"), "a b a b c");
    assert_eq!(order("|: a b :: c d :|"), "a b a b c d c d");
    assert_eq!(order("|: a ::| b"), "a a a b");
}

#[test]
fn a_repeat_without_start_sign_goes_back_as_the_standard_says() {
    // ABC 2.1, 4.8: to the beginning, or to the latest double bar line or end of a repeat.
    assert_eq!(order("a b :| c"), "a b a b c");
    assert_eq!(order("a b || c d :| e"), "a b c d c d e");
    assert_eq!(order("a :| b c :| d"), "a a b c b c d");
    assert_eq!(order("P:A a P:B b :|"), "a b b");
}

#[test]
fn a_pickup_before_the_start_sign_is_played_once_and_behind_it_each_time() {
    assert_eq!(order("p~1/8 |: a b~7/8 :|"), "p a b a b");
    assert_eq!(order("|: p~1/8 a b~7/8 :|"), "p a b p a b");
    assert_eq!(order("p~1/8 a b~7/8 :|"), "p a b p a b");
}

#[test]
fn a_double_bar_inside_signs_does_not_shorten_the_repeat() {
    assert_eq!(order("|: a || b :|"), "a b a b");
}

#[test]
fn a_start_sign_inside_a_repeat_begins_anew() {
    assert_eq!(order("|: a |: b :| c :|"), "a b b c c");
}

#[test]
fn first_and_second_endings() {
    assert_eq!(order("|: a [1 b :| [2 c || d"), "a b a c d");
    assert_eq!(
        order("a [1 b :| [2 c || d [1 e :| [2 f ||"),
        "a b a c d e d f"
    );
    assert_eq!(order("|: a [1 b b2 :| [2 c c2 || d"), "a b b2 a c c2 d");
    // The second ending closed by a repeat sign, as many write it, is not played again.
    assert_eq!(order("|: a [1 b :| [2 c :| d"), "a b a c d");
    assert_eq!(order("|: a [1 b :| [2 c |: d :|"), "a b a c d d");
}

#[test]
fn endings_for_several_passes() {
    // ABC 2.1, 4.10: 1,3 and 1-3 (the reader spells ranges out).
    assert_eq!(order("|: a [1,3 b :| [2,4 c :| d"), "a b a c a b a c d");
    assert_eq!(order("|: a [1,2,3 b :| [4 c ||"), "a b a b a b a c");
}

#[test]
fn missing_endings_are_made_up_for() {
    // Only a first ending: the second pass leaves before it.
    assert_eq!(order("|: a [1 b :| c d"), "a b a c d");
    // 1 and 3: the second pass ends like the first.
    assert_eq!(order("|: a [1 b :| [3 c || d"), "a b a b a c d");
    // Only a second: what is added the second time.
    assert_eq!(order("|: a :| [2 b || c"), "a a b c");
}

#[test]
fn a_last_ending_that_nothing_closes_is_as_long_as_the_first() {
    assert_eq!(
        order("a [1 b :| [2 c d e [1 f :| [2 g"),
        "a b a c d e f d e g"
    );
    assert_eq!(order("a [1 b :| [2 c d e f :|"), "a b a c d e f d e f");
    assert_eq!(order("a [1 b :| [2 c"), "a b a c");
}

#[test]
fn da_capo_al_fine() {
    assert_eq!(order("a b fine c d D.C."), "a b c d a b");
}

#[test]
fn da_capo_without_fine_plays_it_all_once_more() {
    assert_eq!(order("a b D.C."), "a b a b");
}

#[test]
fn repeats_are_not_taken_on_the_way_back_and_last_endings_are() {
    assert_eq!(order("|: a :| |: b :| D.C."), "a a b b a b");
    assert_eq!(
        order("|: a [1 b :| [2 c fine || |: d :| D.C."),
        "a b a c d d a c"
    );
}

#[test]
fn dal_segno_goes_to_the_sign() {
    assert_eq!(order("a segno b fine c D.S."), "a b c b");
    // No sign to go to: from the beginning.
    assert_eq!(order("a b fine c D.S."), "a b c a b");
}

#[test]
fn the_coda_is_reached_from_the_coda_sign() {
    assert_eq!(order("a b coda c D.C.coda || coda d"), "a b c a b d");
    assert_eq!(
        order("a segno b coda c D.S.coda || coda d e"),
        "a b c b d e"
    );
    // Only where the coda begins is marked: one plays on into it.
    assert_eq!(order("a b D.C.coda || coda d"), "a b a b d");
}

#[test]
fn the_form_says_which_parts_are_played() {
    let parts = "P:A a a2 P:B b";
    assert_eq!(played(&formed("AABA", parts)), "a a2 a a2 b a a2");
    assert_eq!(played(&formed("AXB", parts)), "a a2 b");
    // A form that names no part of the tune says nothing.
    assert_eq!(played(&formed("XY", parts)), "a a2 b");
}

#[test]
fn what_stands_before_the_first_part_leads_in_once() {
    assert_eq!(played(&formed("ABA", "p~1/4 P:A a P:B b")), "p a b a");
}

#[test]
fn letters_of_the_form_count_the_passes_of_repeated_parts() {
    let parts = "P:A |: a [1 b :| [2 c || P:B |: d :|";
    assert_eq!(played(&formed("AABB", parts)), "a b a c d d");
    assert_eq!(played(&formed("AABA", parts)), "a b a c d a c");
    // Nothing in a row: the letters name the parts with their repeats.
    assert_eq!(played(&formed("AB", parts)), "a b a c d d");
    assert_eq!(played(&formed("ABA", parts)), "a b a c d d a b a c");
}

#[test]
fn variant_endings_follow_the_form() {
    // ABC 2.1, 4.10: P:A4.B4 over parts with four endings each.
    let parts = "P:A a [1 a1 :| [2 a2 :| [3 a3 :| [4 a4 || P:B b [1,3 b1 || [2,4 b2 ||";
    assert_eq!(
        played(&formed("AAAABBBB", parts)),
        "a a1 a a2 a a3 a a4 b b1 b b2 b b1 b b2"
    );
}

#[test]
fn a_form_is_followed_instead_of_da_capo() {
    assert_eq!(played(&formed("AB", "P:A a fine P:B b D.C.")), "a b");
}

#[test]
fn a1_is_told_from_a2() {
    let passes = |tune: &Tune| -> String {
        let parts = tune.parts_or_derived();
        let bars = tune.playing().bars;
        let names = bars.iter().map(|bar| {
            let label = bar.part.map_or("-", |part| &parts[part].label);
            format!("{label}{}.{}", bar.part_pass, bar.number)
        });
        names.collect::<Vec<_>>().join(" ")
    };
    let dance = "|: p~1/4 a b c~3/4 :: q~1/4 d e f~3/4 :|";
    let expected =
        "A1.0 A1.1 A1.2 A1.3 A2.0 A2.1 A2.2 A2.3 B1.0 B1.1 B1.2 B1.3 B2.0 B2.1 B2.2 B2.3";
    assert_eq!(passes(&tune(dance)), expected);
    // The same with the parts named and counted by a form.
    let named = "P:A |: p~1/4 a b c~3/4 :| P:B |: q~1/4 d e f~3/4 :|";
    assert_eq!(passes(&formed("AABB", named)), expected);
    assert_eq!(passes(&tune(named)), expected);
    // A repeat from behind the pickup begins the part again as well.
    assert_eq!(
        passes(&tune("p~1/4 |: a b c :| d")),
        "A1.0 A1.1 A1.2 A1.3 A2.1 A2.2 A2.3 A2.4"
    );
    // A repeat inside a part does not.
    assert_eq!(passes(&tune("P:A a b |: c :|")), "A1.1 A1.2 A1.3 A1.4");
}

#[test]
fn a_bar_that_a_repeat_sign_splits_counts_once() {
    let tune = tune("|: p~1/2 a b c~1/2 :: q~1/2 d e f~1/2 :|");
    let playing = tune.playing();
    assert_eq!(playing.count(0), 3);
    assert_eq!(playing.run(5), 4..8);
    let pickups: Vec<_> = playing.bars.iter().filter(|bar| bar.pickup).collect();
    assert!(pickups.iter().all(|bar| bar.offset == Ticks::of(1, 2)));
    assert_eq!(pickups.len(), 4);
    assert_eq!(playing.length, Ticks::of(12, 1));
}

#[test]
fn a_pickup_begins_late_in_the_metre_and_a_last_short_bar_on_one() {
    let tune = tune("p~1/8 a b~7/8");
    assert_eq!(tune.first_offset(), Ticks::of(7, 8));
    assert_eq!(tune.pickup(), Ticks::of(1, 8));
    let playing = tune.playing();
    assert_eq!(
        playing.bars[0].metre.beats_before(playing.bars[0].offset),
        3.5
    );
    assert_eq!(playing.bars[2].offset, Ticks::ZERO);
    assert!(!playing.bars[2].pickup);
}

#[test]
fn crooked_bars_are_no_pickups() {
    assert_eq!(super::tune("a~3/4 b~3/4 c~3/4 d~3/4").pickup(), Ticks::ZERO);
    // A part that begins with a bar of three beats, and one with two bars of two.
    let tune = tune("a b || c~3/4 d || e~1/2 f~1/2 g");
    assert!(
        tune.playing()
            .bars
            .iter()
            .all(|bar| !bar.pickup && bar.offset == Ticks::ZERO)
    );
    assert_eq!(tune.playing().bars[6].start, Ticks::of(19, 4));
}

#[test]
fn repeats_and_double_bars_make_parts() {
    let labels = |text: &str| -> String {
        let parts = tune(text).parts_or_derived();
        let names = parts
            .iter()
            .map(|part| format!("{}{}", part.label, part.first_bar));
        names.collect::<Vec<_>>().join(" ")
    };
    assert_eq!(labels("|: a b c d :: e f g h :|"), "A0 B4");
    assert_eq!(labels("p~1/4 |: a b c d :| q~1/4 |: e f g h :|"), "A0 B5");
    assert_eq!(labels("a b c d || e f g h || i j ||"), "A0 B4");
    assert_eq!(labels("a b c d"), "A0");
    assert_eq!(labels("a :| b"), "A0");
    assert_eq!(labels(""), "");
}

#[test]
fn beats_left_count_in_the_metre_of_each_bar() {
    let mut tune = tune("p~1/8 a b c");
    tune.bars[2].metre = Some(Metre::new(6, 8));
    tune.bars[2].length = Ticks::of(6, 8);
    tune.bars[3].length = Ticks::of(6, 8);
    let playing = tune.playing();
    assert_eq!(playing.beats(Ticks::ZERO, Ticks::of(9, 8)), 4.5);
    assert_eq!(playing.beats(Ticks::of(1, 8), Ticks::of(9 + 6, 8)), 6.0);
    assert_eq!(playing.beats(Ticks::of(9 + 3, 8), playing.length), 3.0);
}

#[test]
fn a_bar_is_found_by_time_and_by_touch() {
    let playing = tune("|: a b :| c").playing();
    assert_eq!(playing.bar_at(Ticks::ZERO), Some(0));
    assert_eq!(playing.bar_at(Ticks::of(7, 2)), Some(3));
    assert_eq!(playing.bar_at(Ticks::of(5, 1)), None);
    assert_eq!(playing.bar_at(Ticks(-1)), None);
    assert_eq!(playing.find(1, 0), Some(1));
    assert_eq!(playing.find(1, 2), Some(3));
    assert_eq!(playing.find(1, 4), Some(3));
    assert_eq!(playing.find(7, 0), None);
}

#[test]
fn endless_wishes_are_cut() {
    let mut tune = tune("|: a :|");
    tune.bars = vec![tune.bars[0].clone(); 300];
    for bar in &mut tune.bars {
        bar.repeat_end = 255;
    }
    let playing = tune.playing();
    assert!(playing.cut);
    assert_eq!(playing.bars.len(), crate::chart::MAX_PLAYED);
}
