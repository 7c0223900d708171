//! What the reader promises beyond notes and lengths: signs for the order of playing, parts, voices, words, and what
//! becomes of texts that are not quite ABC.

use crate::chart::{Bar, Jump, Metre, Rhythm, Ticks, Tune};
use crate::formats::{Counted, ProblemKind, ReadTune};

use super::read;

mod lost;

fn one(text: &str) -> ReadTune {
    let mut book = read(text.as_bytes());
    assert_eq!(book.tunes.len(), 1, "{:?}", book.problems);
    book.tunes.remove(0)
}

/// A tune in C, 4/4, quarters.
fn tune(body: &str) -> Tune {
    let read = one(&format!("X:1\nT:Case\nM:4/4\nL:1/4\nK:C\n{body}"));
    assert_eq!(read.problems, [], "{body}");
    read.tune
}

fn problems(text: &str) -> Vec<(usize, usize, ProblemKind)> {
    let book = read(text.as_bytes());
    let of_tunes = book.tunes.into_iter().flat_map(|tune| tune.problems);
    let all = book.problems.into_iter().chain(of_tunes);
    all.map(|p| (p.line, p.column, p.kind)).collect()
}

/// The first notes of the bars that a test of bars is true for.
fn bars(tune: &Tune, is: impl Fn(&Bar) -> bool) -> String {
    let first = |bar: &Bar| bar.notes[0].pitch.to_string();
    tune.bars.iter().filter(|bar| is(bar)).map(first).collect()
}

fn midi(tune: &Tune) -> Vec<i32> {
    let notes = tune.bars.iter().flat_map(|bar| &bar.notes);
    notes.map(|note| note.pitch.midi()).collect()
}

#[test]
fn repeats_and_endings_stand_at_their_bars() {
    let tune = tune("c|:d4|1e4:|2f4||g4|::a4::|b4|]");
    assert_eq!(bars(&tune, |b| b.repeat_start), "D5A5");
    assert_eq!(bars(&tune, |b| b.repeat_end == 2), "E5");
    assert_eq!(bars(&tune, |b| b.repeat_end == 3), "A5");
    assert_eq!(bars(&tune, |b| b.ending == [1]), "E5");
    assert_eq!(bars(&tune, |b| b.ending == [2]), "F5");
    assert_eq!(bars(&tune, |b| b.section_end), "F5B5");
}

#[test]
fn a_bar_that_a_repeat_divides_stays_divided() {
    let tune = tune("c4|d2:|:e2|f4:|");
    let lengths: Vec<_> = tune.bars.iter().map(|bar| bar.length.fraction()).collect();
    assert_eq!(lengths, [(4, 1), (2, 1), (2, 1), (4, 1)]);
}

#[test]
fn signs_for_the_order_of_playing_are_on_the_right_side_of_the_bar_line() {
    let signs = tune("c4!segno!|d4|e4!dacoda!|f4!D.S.alcoda!|!coda!g4|a4|]");
    assert_eq!(bars(&signs, |b| b.segno), "D5");
    assert_eq!(bars(&signs, |b| b.coda), "F5G5");
    let jump = Some(Jump::DalSegno { to_coda: true });
    assert_eq!(bars(&signs, |b| b.jump == jump), "F5");
    let words = tune("c4|\"^Fine\"d4|e4|\"^D.C. al Fine\"f4|]");
    assert_eq!(bars(&words, |b| b.fine), "D5");
    let jump = Some(Jump::DaCapo { to_coda: false });
    assert_eq!(bars(&words, |b| b.jump == jump), "F5");
    // D.C. alone goes to the coda if there is one and no fine.
    let bare = tune("c4|d4!coda!|e4!D.C.!|!coda!f4|]");
    let jump = Some(Jump::DaCapo { to_coda: true });
    assert_eq!(bars(&bare, |b| b.jump == jump), "E5");
}

#[test]
fn parts_begin_at_their_marks_and_keep_their_strum() {
    let read = one(
        "X:1\nT:a\nP:A2.B\n%%fourcourse-strum chop\n%%fourcourse-times 3\nM:4/4\nL:1/4\nK:C\nP:A\nc4|d|\nP:B\n\
         %%fourcourse-strum D. DU D. D.\n e4|[P:Tail]f4|]\n",
    );
    assert_eq!(read.problems, []);
    let tune = read.tune;
    let parts: Vec<_> = tune
        .parts
        .iter()
        .map(|p| (p.label.as_str(), p.first_bar))
        .collect();
    assert_eq!(parts, [("A", 0), ("B", 2), ("Tail", 3)]);
    assert_eq!(tune.form.concat(), "AAB");
    assert_eq!(tune.times_through, Some(3));
    assert!(tune.strum.is_some() && tune.parts[1].strum.is_some() && tune.parts[0].strum.is_none());
}

#[test]
fn a_part_that_begins_in_a_bar_divides_it() {
    let tune = tune("P:A\nc4|d3\nP:B\ne|f4|]");
    assert_eq!(tune.bars.len(), 4);
    assert_eq!(tune.parts[1].first_bar, 2);
}

#[test]
fn changes_of_metre_and_key_stand_at_the_bar_where_they_begin() {
    let tune = tune("c4|[M:3/4][K:D]d3|\nM:4/4\nK:G\ne4|[K:G]f4|");
    let metres: Vec<_> = tune.bars.iter().map(|bar| bar.metre).collect();
    assert_eq!(
        metres[..3],
        [None, Some(Metre::new(3, 4)), Some(Metre::COMMON)]
    );
    assert_eq!(tune.metre, Metre::COMMON);
    let keys: Vec<_> = tune
        .bars
        .iter()
        .map(|bar| bar.key.map(|key| key.to_string()))
        .collect();
    assert_eq!(keys[..3], [None, Some("D".into()), Some("G".into())]);
}

#[test]
fn the_first_voice_is_the_melody() {
    let body = "V:B clef=bass\nV:A\n[V:A]c4|d4|\n[V:B]C,4|D,4|\n[V:A]e4|\n[V:B]E,4|\n";
    assert_eq!(midi(&tune(body)), [48, 50, 52]);
    // A voice that is only named has no melody; its company has.
    assert_eq!(midi(&tune("V:Drone\nV:A\nc4|\n")), [72]);
    assert_eq!(
        midi(&tune("V:1 octave=-1\nc4|\nV:2\nc4|\nV:1\nd4|\n")),
        [60, 62]
    );
}

#[test]
fn chords_of_an_overlay_are_of_use_its_notes_are_not() {
    let tune = tune("\"C\"c4 & z2 \"G\"G2 | \"F\"f4 |");
    assert_eq!(midi(&tune), [72, 77]);
    let at: Vec<_> = tune.bars[0]
        .chords
        .iter()
        .map(|c| (c.at.fraction().0, c.symbol.to_string()))
        .collect();
    assert_eq!(at, [(0, "C".into()), (2, "G".into())]);
}

#[test]
fn transposing_moves_notes_key_and_chords() {
    let read = one("X:1\nT:a\nM:4/4\nL:1/4\nK:D transpose=-2\n\"A7\"A2 \"D/F#\"F2|\n");
    assert_eq!(read.tune.key.to_string(), "C");
    assert_eq!(midi(&read.tune), [67, 64]);
    let chords: Vec<_> = read.tune.bars[0]
        .chords
        .iter()
        .map(|c| c.symbol.to_string())
        .collect();
    assert_eq!(chords, ["G7", "C/E"]);
}

#[test]
fn a_chord_over_a_bar_line_belongs_to_the_next_bar() {
    let tune = tune("c4\"G\"|d4|");
    assert!(tune.bars[0].chords.is_empty());
    assert_eq!(tune.bars[1].chords[0].at, Ticks::ZERO);
}

#[test]
fn what_is_no_chord_is_kept_as_words() {
    let text = "X:1\nT:a\nM:4/4\nL:1/4\nK:C\nc \"Handwaving\"d \"^slow\"e \"G(Em)\"f|\n";
    let read = one(text);
    let words: Vec<_> = read.tune.bars[0]
        .annotations
        .iter()
        .map(|a| a.text.as_str())
        .collect();
    assert_eq!(words, ["Handwaving", "slow", "(Em)"]);
    assert_eq!(
        problems(text),
        [(6, 15, ProblemKind::Chord("Handwaving".into()))]
    );
}

#[test]
fn ties_and_slurs_are_told_apart() {
    let tune = tune("(c-c|d) e-f z|");
    let notes: Vec<_> = tune
        .bars
        .iter()
        .flat_map(|b| &b.notes)
        .map(|n| (n.tied, n.slurred))
        .collect();
    // The tie from e to f is a slur, as in old tunes.
    assert_eq!(
        notes,
        [
            (true, true),
            (false, true),
            (false, false),
            (false, true),
            (false, false)
        ]
    );
}

#[test]
fn grace_notes_and_ornaments_stand_on_their_note() {
    let tune = tune("{/gA}~c !trill!.d [EGc]2|");
    let notes = &tune.bars[0].notes;
    assert_eq!((notes[0].grace.len(), notes[0].ornaments.len()), (2, 1));
    assert_eq!(notes[1].ornaments.len(), 2);
    // The melody of a chord comes first.
    assert_eq!(notes[2].pitch.to_string(), "C5");
}

#[test]
fn symbols_stand_over_notes_as_words_stand_under_them() {
    // ABC 2.1, 4.15: the chords stand on the first and third note, the accent on the third.
    let tune = tune("C2 C2 Ez A2|\ns: \"C\" * \"Am\" * |\ns: * * !>! * |\n");
    let bar = &tune.bars[0];
    let chords: Vec<_> = bar.chords.iter().map(|c| c.at.fraction().0).collect();
    assert_eq!(chords, [0, 4]);
    assert_eq!(bar.notes[2].ornaments.len(), 1);
}

#[test]
fn words_pass_over_lines_of_music_that_have_none() {
    let syllable = |tune: &Tune, bar: usize| tune.bars[bar].notes[0].syllables.len();
    let intro = tune("cdef|\ngggg|\nw:one two three four\n");
    assert_eq!((syllable(&intro, 0), syllable(&intro, 1)), (0, 1));
    let both = tune("cdef|\ngggg|\nw:one two three four five\n");
    assert_eq!((syllable(&both, 0), syllable(&both, 1)), (1, 1));
}

#[test]
fn verses_below_the_tune_are_told_apart() {
    let tune = tune("c4|\nW:One line\nW:and one\nW:\nW:2. Second\nW:verse\n");
    let lines: Vec<_> = tune
        .verses
        .iter()
        .map(|verse| verse.lines.join("/"))
        .collect();
    assert_eq!(lines, ["One line/and one", "Second/verse"]);
}

#[test]
fn a_tune_without_bar_lines_is_divided_by_its_metre() {
    let tune = tune("cdef gab2 c");
    let lengths: Vec<_> = tune
        .bars
        .iter()
        .map(|bar| bar.length.fraction().0)
        .collect();
    assert_eq!(lengths, [4, 4, 1]);
    let crossing = super::super::readout::notes(&tune, false);
    assert_eq!(crossing.len(), 8);
    let free = one("X:1\nT:a\nM:none\nL:1/4\nK:C\ncdef gab2 c\n");
    assert_eq!(free.tune.bars.len(), 1);
}

#[test]
fn fields_around_the_music_are_kept() {
    let read = one(
        "X:7\nT:The Sluice\nT:Caf\\'e, The\nC:A. Nobody\nS:a barn\nR:Double Jig\nN:slowly\n+:please\nH:It was\nlong ago\nQ:3/8=110\nM:6/8\nK:Ador\nc3 d3|\n",
    );
    let tune = &read.tune;
    assert_eq!((read.number, read.line), (Some(7), 1));
    assert_eq!(tune.other_titles, ["Café, The"]);
    assert_eq!(
        (tune.composer.as_str(), tune.source.as_str()),
        ("A. Nobody", "a barn")
    );
    assert_eq!(tune.rhythm, Some(Rhythm::Jig));
    assert_eq!(tune.remarks, ["slowly please", "It was", "long ago"]);
    assert_eq!(tune.tempo.map(|t| t.beat.fraction()), Some((3, 2)));
}

#[test]
fn the_file_header_holds_for_all_tunes() {
    let book = read(b"%abc-2.1\nM:3/4\nL:1/4\nC:All of us\nU:k=!trill!\n\nX:1\nT:a\nK:G\nkF3|\n\nX:2\nT:b\nM:2/4\nK:C\nF2|\n");
    let lengths: Vec<_> = book
        .tunes
        .iter()
        .map(|t| t.tune.bars[0].length.fraction().0)
        .collect();
    assert_eq!(lengths, [3, 2]);
    assert!(
        book.tunes
            .iter()
            .all(|t| t.tune.composer == "All of us" && t.problems.is_empty())
    );
    assert_eq!(book.tunes[0].tune.bars[0].notes[0].ornaments.len(), 1);
}

#[test]
fn what_people_forget_does_not_lose_the_tune() {
    // The number, the empty line between tunes, an empty line in the middle, the key.
    let book = read(b"T:a\nK:C\nCDEF|\nX:2\nT:b\nK:G\nGABc|\n\nGABc|\n\nT:c\nM:3/4\nL:1/4\nK:D\nd3|\n\nX:4\nT:d\nM:4/4\nG8|\n");
    let found: Vec<_> = book
        .tunes
        .iter()
        .map(|t| (t.tune.title.as_str(), t.tune.bars.len()))
        .collect();
    assert_eq!(found, [("a", 1), ("b", 2), ("c", 1), ("d", 1)]);
    assert_eq!(
        problems("GABc dedB|dedB G4|]"),
        [
            (1, 1, ProblemKind::MissingKey),
            (1, 1, ProblemKind::MissingTitle),
        ]
    );
    assert_eq!(
        problems("only a letter\n\nto a friend"),
        [(1, 1, ProblemKind::NoTune)]
    );
    assert_eq!(
        problems("X:1\nT:a\nK:C\nA|\n\nB|\n"),
        [(5, 1, ProblemKind::EmptyLine)]
    );
}

#[test]
fn problems_have_their_places() {
    for (line, column, kind) in [
        ("A B # C|", 5, ProblemKind::UnknownCharacter('#')),
        ("é A \"x B|", 1, ProblemKind::UnknownCharacter('é')),
        ("AB|[CEG", 4, ProblemKind::Unclosed('[')),
        ("A0 B|", 1, ProblemKind::Length),
        ("A (3BC|", 3, ProblemKind::Tuplet),
        ("A B>|", 4, ProblemKind::BrokenRhythm),
        (
            "A|[M:x]B|",
            3,
            ProblemKind::Field {
                field: 'M',
                value: "x".into(),
            },
        ),
        ("Thanks to my friends", 1, ProblemKind::NotMusic),
    ] {
        let found = problems(&format!("X:1\nT:a\nK:C\nA|\n{line}\n"));
        assert_eq!(found.first(), Some(&(5, column, kind)), "{line}: {found:?}");
    }
}

#[test]
fn limits_keep_what_lies_before_them() {
    let head = "X:1\nT:a\nM:4/4\nL:1/4\nK:C\n";
    let read = one(&format!("{head}{}", "C4|".repeat(3_000)));
    assert_eq!(read.tune.bars.len(), crate::formats::limits::BARS);
    assert_eq!(read.problems[0].kind, ProblemKind::TooMany(Counted::Bars));
    let read = one(&format!("{head}A|{}", "#".repeat(3_000)));
    assert_eq!(read.problems.len(), crate::formats::limits::PROBLEMS + 1);
    let read = one(&format!("{head}[CCCCCCCCCCCCCCC]|"));
    assert_eq!(
        read.problems[0].kind,
        ProblemKind::TooMany(Counted::ChordNotes)
    );
}
