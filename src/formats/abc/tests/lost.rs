//! Nothing of a text is lost without a word: chords and signs at bar lines, fields among voices, what a terminal must not
//! see.

use crate::chart::{Metre, Ticks, Tune};
use crate::formats::abc::read;
use crate::formats::{Counted, ProblemKind};

use super::{midi, one, tune};

/// Chords of each bar, `at:symbol` in quarters.
fn chords(tune: &Tune) -> Vec<String> {
    let bar = |bar: &crate::chart::Bar| {
        let chords = bar.chords.iter();
        let chords = chords.map(|at| format!("{}:{}", at.at.fraction().0, at.symbol));
        chords.collect::<Vec<_>>().join(" ")
    };
    tune.bars.iter().map(bar).collect()
}

#[test]
fn no_chord_is_lost_without_a_word() {
    let told = |music: &str| {
        let read = one(&format!("X:1\nT:a\nM:4/4\nL:1/4\nK:C\n{music}\n"));
        let lost = read.problems.iter().map(|problem| match &problem.kind {
            ProblemKind::ChordWithoutTime(chord) => chord.clone(),
            other => panic!("{other:?}"),
        });
        (chords(&read.tune), lost.collect::<Vec<_>>())
    };
    let lost = |chord: &str| vec![chord.to_owned()];
    assert_eq!(
        told("\"C\"C4 \"D\"|\"E\"z4|"),
        (vec!["0:C".into(), "0:E".into()], lost("D"))
    );
    assert_eq!(told("\"C\"\"G\"C4|"), (vec!["0:G".into()], lost("C")));
    assert_eq!(told("\"C\"C4 \"G\"|]"), (vec!["0:C".into()], lost("G")));
    assert_eq!(told("\"C\"\"C\"C4|"), (vec!["0:C".into()], vec![]));
    // One in brackets is another choice, and stays as words.
    assert_eq!(told("\"C\"\"(Am)\"C4|"), (vec!["0:C".into()], vec![]));
}

#[test]
fn signs_in_quotes_before_a_bar_line_belong_to_that_line() {
    let played = |music: &str| {
        let read = one(&format!("X:1\nT:a\nM:4/4\nL:1/4\nK:C\n{music}\n"));
        assert!(read.problems.is_empty(), "{:?}", read.problems);
        let notes = crate::formats::readout::notes(&read.tune, true);
        let names = notes.iter().map(|note| match note.midi {
            60 => 'C',
            62 => 'D',
            64 => 'E',
            _ => 'F',
        });
        names.collect::<String>()
    };
    for end in ["\"D.C.\"|]", "|]\"D.C.\"", "\"^D.C.\"", "!D.C.!|]"] {
        assert_eq!(played(&format!("C4|D4|E4|F4{end}")), "CDEFCDEF", "{end}");
    }
    for fine in [
        "D4\"Fine\"|",
        "\"Fine\"D4|",
        "D4!fine!|",
        "D4|\ns: * \"Fine\"\n",
    ] {
        assert_eq!(
            played(&format!("C4|{fine}E4|F4\"D.C.\"|]")),
            "CDEFCD",
            "{fine}"
        );
    }
    assert_eq!(
        played("C4\"Segno\"|D4|\"Fine\"E4|F4\"D.S. al Fine\"|]"),
        "CDEFDE"
    );
}

#[test]
fn fields_between_the_music_of_voices_hold_for_all_of_them() {
    let form = one(
        "X:1\nT:a\nM:4/4\nL:1/4\nP:AAB\nK:C\nP:A\n[V:1]C4|\n[V:2]E4|\nP:B\n[V:1]G4|\n[V:2]A4|\n",
    );
    let played = crate::formats::readout::notes(&form.tune, true);
    let heard: Vec<_> = played.iter().map(|note| note.midi).collect();
    assert_eq!(heard, [60, 60, 67]);
    let change = tune("[V:1]C4|\n[V:2]E4|\nM:3/4\nL:1/8\nK:G\n[V:1]F6|\n[V:2]A6|\n");
    assert_eq!(change.bars[1].metre, Some(Metre::new(3, 4)));
    assert_eq!(midi(&change), [60, 66]);
    assert_eq!(change.bars[1].length, Ticks::of(3, 4));
    // What stands right below the name of a voice, or within its line, is about that voice.
    let own = tune("V:1\nC4|\nV:2\nL:1/16\nK:Eb\nE16|\nV:1\nE4|\n[V:2][K:Eb]E4|\nV:1\nB4|\n");
    assert_eq!(midi(&own), [60, 64, 71]);
    let length = Ticks::WHOLE;
    assert!(own.bars.iter().all(|bar| bar.length == length));
}

#[test]
fn control_characters_and_marks_that_turn_the_writing_are_left_out() {
    let text = "X:1\nT:es\u{1b}[31mc \u{202e}rtl\nC:N\u{0}ul\u{7}\nK:G\n\"^a\u{1b}b\"GA\u{8}BC|\nw:l\u{9b}a\n";
    let book = read(text.as_bytes());
    let tune = &book.tunes[0].tune;
    assert_eq!(
        (tune.title.as_str(), tune.composer.as_str()),
        ("es[31mc rtl", "Nul")
    );
    assert_eq!(tune.bars[0].annotations[0].text, "ab");
    assert_eq!(midi(tune).len(), 4);
    let problem = &book.problems[0];
    assert_eq!((problem.line, problem.column), (2, 5));
    assert_eq!(problem.kind, ProblemKind::Invisible);
    // Page breaks and the end mark of DOS are nothing to tell of.
    let old = read(b"X:1\r\nT:a\r\nK:C\r\nC|\r\n\x0c\r\n\x1a");
    assert!(old.problems.is_empty() && old.tunes[0].problems.is_empty());
}

#[test]
fn bytes_that_are_no_text_make_no_tune_without_a_number_or_a_key() {
    let no_tune = |text: &[u8]| {
        let book = read(text);
        book.tunes.is_empty() && book.problems.iter().any(|p| p.kind == ProblemKind::NoTune)
    };
    assert!(no_tune(b"abc|def\0ga|\n"));
    assert!(!no_tune(b"abc|defga|\n"));
    assert!(!no_tune(b"X:1\nT:a\0b\nK:G\nG|\n"));
    // PNG, first bytes (ISO/IEC 15948, 5.2): a signature and a chunk.
    assert!(no_tune(
        b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x02\0\0\0\x02|A|B|"
    ));
}

#[test]
fn a_tune_without_bar_lines_that_is_too_long_says_so() {
    let long = one(&format!(
        "X:1\nT:a\nM:1/8\nL:1/8\nK:C\n{}\n",
        "C8".repeat(300)
    ));
    assert_eq!(long.tune.bars.len(), crate::formats::limits::BARS);
    assert_eq!(long.problems[0].kind, ProblemKind::TooMany(Counted::Bars));
}
