//! Texts that nobody meant to be read: cut, damaged, made up. The reader gives what it can, with places inside the text,
//! and no more than the text is long. How fast it reads is measured in `tests/bench`.
#![allow(clippy::unwrap_used)] // a fixture that is not as it should be fails the test

use fourcourse::chart::Ticks;
use fourcourse::formats::readout::Listing;
use fourcourse::formats::{Book, Counted, ProblemKind, abc, limits};
use proptest::prelude::*;

const RYANS: &str = include_str!("../outside/fixtures/ryans/ryans.abc");
const CASES: &str = include_str!("../outside/fixtures/abc-standard/cases.json");

/// Fixed so that a failure comes again.
const SEED: u64 = 0x5eed_f04c_0423_0007;

/// A small generator of our own (xorshift64*, Vigna 2016), so that damage is the same on every machine.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let number = self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 33;
        usize::try_from(number).unwrap() % most.max(1)
    }
}

/// The texts of all fixtures: each case of the standard, and the tunes of the collection one by one.
fn texts() -> Vec<String> {
    let cases: Vec<serde_json::Value> = serde_json::from_str(CASES).unwrap();
    let cases = cases
        .iter()
        .map(|case| case["abc"].as_str().unwrap().to_owned());
    let tunes = RYANS.split_inclusive("\n\n").map(str::to_owned);
    cases.chain(tunes).collect()
}

/// Reads, and looks at what every reading must keep to.
fn read(bytes: &[u8]) -> Book {
    let book = abc::read(bytes);
    let text = String::from_utf8_lossy(bytes).into_owned();
    let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
    let lines: Vec<usize> = text
        .replace("\r\n", "\n")
        .split(['\n', '\r'])
        .map(|line| line.chars().count().max(line.len()))
        .collect();
    let inside = |problem: &fourcourse::formats::Problem| {
        let length = lines.get(problem.line - 1);
        assert!(problem.line >= 1 && problem.column >= 1, "{problem:?}");
        assert!(
            length.is_some_and(|&length| problem.column <= length + 1),
            "{problem:?}"
        );
    };
    // UTF-16 counts other bytes than these.
    let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
    for problem in book
        .problems
        .iter()
        .chain(book.tunes.iter().flat_map(|t| &t.problems))
    {
        if !wide {
            inside(problem);
        }
    }
    for tune in &book.tunes {
        assert!(tune.problems.len() <= limits::PROBLEMS + 1);
        assert!(tune.tune.bars.len() <= limits::BARS);
        let mut notes = 0;
        for bar in &tune.tune.bars {
            assert!(bar.length > Ticks::ZERO);
            for note in &bar.notes {
                assert!(
                    note.at >= Ticks::ZERO && note.length > Ticks::ZERO,
                    "{note:?}"
                );
                assert!(
                    note.at + note.length <= bar.length,
                    "{note:?} in {:?}",
                    bar.length
                );
            }
            assert!(bar.notes.is_sorted_by_key(|note| note.at));
            assert!(bar.chords.is_sorted_by_key(|chord| chord.at));
            assert!(bar.repeat_end <= limits::TIMES);
            notes += bar.notes.len();
        }
        // Dividing a tune without bar lines adds the notes that cross.
        assert!(notes <= limits::NOTES + limits::BARS * limits::CHORD_NOTES);
        // A note takes a letter, and comes once more in each bar that it is tied into; a sign for rests takes one, too.
        let bars = tune.tune.bars.len();
        assert!(notes <= bytes.len() + bars * limits::CHORD_NOTES);
        assert!(bars <= bytes.len() * limits::REST_BARS as usize);
        for part in &tune.tune.parts {
            assert!(part.first_bar < tune.tune.bars.len());
        }
    }
    book
}

#[test]
fn a_text_may_end_anywhere() {
    for text in texts() {
        let step = (text.len() / 16).max(1);
        for end in (0..text.len()).step_by(step) {
            read(&text.as_bytes()[..end]);
        }
    }
}

#[test]
fn a_text_may_be_damaged_anywhere() {
    let mut chance = Chance(SEED);
    let signs = b"|:[](){}<>-&!+\"%\\/0123456789^_=,'~.zZxXyABcdKMLPQTVUWw\n\r \x00\xff\xc3\xe9";
    for text in texts() {
        for _ in 0..3 {
            let mut bytes = text.clone().into_bytes();
            for _ in 0..=chance.below(5) {
                let at = chance.below(bytes.len());
                let sign = signs[chance.below(signs.len())];
                match chance.below(4) {
                    0 => bytes[at] = sign,
                    1 => bytes.insert(at, sign),
                    2 => drop(bytes.remove(at)),
                    _ => {
                        let end = (at + chance.below(30)).min(bytes.len());
                        let piece = bytes[at..end].to_vec();
                        let to = chance.below(bytes.len());
                        bytes.splice(to..to, piece);
                    }
                }
                if bytes.is_empty() {
                    break;
                }
            }
            read(&bytes);
        }
    }
}

/// Texts that ask for a lot with little.
#[test]
fn a_text_costs_what_its_length_says() {
    let head = "X:1\nT:Much\nM:4/4\nL:1/8\nK:C\n";
    let big = 1 << 16;
    for piece in [
        "A",
        "[",
        "[A",
        "(",
        "((3",
        ")",
        "-",
        ">",
        "{",
        "{a",
        "\"",
        "\"A",
        "\"A\"",
        "!",
        "!a",
        "+",
        "&",
        "|",
        "||:",
        ":",
        "[1",
        "[1-32 ",
        "Z500|",
        "Z500 ",
        "z",
        "^",
        "`",
        "\\",
        "[K:",
        "[K:G]",
        "[V:1]",
        "[P:A]A",
        "[M:3/4]A|",
        "%",
        "$",
        "A-|",
        "A>",
        "é",
        "\u{1f3bb}",
        "A\nw:",
        "A\nw:a\n",
        "\nw:a-",
        "\ns:!a!",
        "\nV:",
        "\nP:A",
        "\nT:",
        "\nT:a\nK:G\n",
        "\n\nX:1",
        "\n\n",
        "\n\nX:1\nT:a\nK:C\nZ500",
        "\n%%begintext",
        "\n%%begintext\n\n%%endps",
        "\nK:C",
        "\nU:T=!trill!",
        "\n+:a",
        "\nW:",
        "\nW:1.a",
        "\nP:A9",
        "\r",
        "\r\n",
        "&amp;",
        "\\u",
        "(3:2:2",
        "~",
        "T",
        "h",
        "x",
        "y",
        "A/",
        "A//////",
        "A999",
        "[AAAAAAAAAAAA]",
        "{aaaaaaaa}A",
        "\n%%abc-charset",
    ] {
        let body = piece.repeat(big / piece.len());
        read(format!("{head}{body}").as_bytes());
        read(body.as_bytes());
        read(
            format!("X:1\nP:{body}\nT:{body}\nK:{body}\nM:{body}\nQ:{body}\nL:{body}\nA|")
                .as_bytes(),
        );
        read(format!("{head}A\nw:{body}").as_bytes());
        read(format!("{head}{}\nw:{body}\ns:{body}", "A".repeat(1000)).as_bytes());
    }
}

#[test]
fn a_text_beyond_the_limit_is_read_up_to_it() {
    let tune = "X:1\nT:Again\nM:4/4\nK:G\nGABc dedB|\n\n";
    let book = read(tune.repeat(limits::BYTES / tune.len() + 10).as_bytes());
    assert!(book.tunes.len() > 1_000);
    assert!(!book.problems.is_empty());
}

#[test]
fn a_book_holds_no_more_notes_than_a_book_may() {
    let tune = format!("X:1\nT:Notes\nK:C\n{}|\n\n", "C".repeat(10_000));
    let book = read(tune.repeat(limits::BYTES / tune.len()).as_bytes());
    let bars = book.tunes.iter().flat_map(|read| &read.tune.bars);
    let notes: usize = bars.map(|bar| bar.notes.len()).sum();
    assert_eq!(notes, limits::BOOK_NOTES);
    let kinds: Vec<_> = book.problems.iter().map(|problem| &problem.kind).collect();
    assert_eq!(kinds, [&ProblemKind::TooMany(Counted::Tunes)]);
}

/// Tunes of a few bytes that ask for a lot of playing: each is cut, says so, and keeps what lies before the cut.
#[test]
fn a_form_and_repeats_cannot_ask_for_more_than_is_listed() {
    let much = "a".repeat(20_000);
    let chords = "\"C\"a\"D\"b".repeat(5_000);
    for (form, bar, repeat) in [
        ("A500", much.as_str(), ""),
        ("A500", &chords, ""),
        ("(AB)250", &much, "|:::::::::::::::::::::::::::::::"),
    ] {
        let text =
            format!("X:1\nT:Much\nM:4/4\nL:1/8\nP:{form}\nK:C\nP:A\n{repeat}{bar}:|\nP:B\nc|\n");
        let book = read(text.as_bytes());
        let mut room = limits::PLAYED;
        let tune = &book.tunes[0];
        let listing = Listing::played(&tune.tune, &mut room);
        let written = Listing::written(&tune.tune).notes(&tune.tune).len();
        let played = listing.notes(&tune.tune).len();
        assert!(
            played <= limits::PLAYED && played > 10 * written.min(1_000),
            "{form}: {played}"
        );
        let told = listing.problem(tune).map(|problem| problem.kind);
        assert_eq!(told, Some(ProblemKind::TooMany(Counted::Played)), "{form}");
        // What has been cut leaves no room for another such tune of the book.
        let second = Listing::played(&tune.tune, &mut room);
        assert!(second.bars.is_empty() && !second.whole);
    }
}

/// Words of ABC in any order.
fn abc_words() -> impl Strategy<Value = String> {
    let words = prop::sample::select(vec![
        "A",
        "B2",
        "c/",
        "d3/2",
        "^F",
        "__B",
        "=e'",
        "C,,",
        "z",
        "z2",
        "Z",
        "Z3",
        "x",
        "y",
        "|",
        "||",
        "|]",
        "[|",
        "|:",
        ":|",
        "::",
        "|1",
        ":|2",
        "[1",
        "[1,3",
        "[2-4",
        ".|",
        "[|]",
        "(3",
        "(5:4:6",
        "(2",
        "(3::2",
        "(",
        ")",
        "-",
        ">",
        "<",
        ">>",
        "[CEG]2",
        "[C",
        "]",
        "{g}",
        "{/ab}",
        "{",
        "}",
        "\"Am\"",
        "\"^slow\"",
        "\"G(Em)\"",
        "\"D.C. al Fine\"",
        "\"",
        "!trill!",
        "!segno!",
        "!D.S.alcoda!",
        "!fine!",
        "!",
        "+f+",
        "~",
        ".",
        "T",
        "u",
        "&",
        "\\",
        "$",
        "`",
        "[K:Em]",
        "[M:6/8]",
        "[L:1/16]",
        "[V:2]",
        "[P:B]",
        "[Q:90]",
        "[r:x]",
        "[I:linebreak !]",
        "\n",
        "\n\n",
        "\nX:2\n",
        "\nT:Title\n",
        "\nK:D mix ^g\n",
        "\nM:C|\n",
        "\nL:1/4\n",
        "\nV:1\n",
        "\nV:2 clef=bass\n",
        "\nP:A\n",
        "\nP:(AB)3.C\n",
        "\nw:la-la _ * | la~la\n",
        "\ns: !f! * \"Am\" |\n",
        "\n+:more\n",
        "\nW:verse\n",
        "\n%%fourcourse-strum D. DU D. D.\n",
        "\n%%fourcourse-times 3\n",
        "\n%%propagate-accidentals octave\n",
        "\n%%begintext\n",
        "\n%%endtext\n",
        "\nU:T=!fermata!\n",
        "\nQ:\"x\" 1/4=100\n",
        "%",
        " ",
        "é",
        "“G”",
        "♯",
    ]);
    prop::collection::vec(words, 0..120).prop_map(|words| words.concat())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn words_of_abc_may_come_in_any_order(body in abc_words(), head in any::<bool>()) {
        let head = if head { "X:1\nT:Any\nM:6/8\nK:G\n" } else { "" };
        read(format!("{head}{body}").as_bytes());
    }

    #[test]
    fn any_bytes_may_come(bytes in prop::collection::vec(any::<u8>(), 0..2000)) {
        read(&bytes);
    }

    #[test]
    fn any_characters_may_come_in_a_tune(body in "(?s).{0,400}") {
        read(format!("X:1\nT:Any\nK:G\n{body}").as_bytes());
    }
}
