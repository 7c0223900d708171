//! What goes wrong ends with 1 and one sentence, a wrong use of the command line with 2.

use std::fs;

use super::{Ran, run, run_in};

#[track_caller]
fn sentence(ran: Ran, sentence: &str) {
    assert_eq!(
        (ran.code, ran.out.as_str(), ran.err.as_str()),
        (1, "", format!("{sentence}\n").as_str())
    );
}

#[test]
fn what_is_not_understood_is_said_in_a_sentence() {
    sentence(run(["spell", "Am", "Hm"]), "\"Hm\" is not a chord symbol.");
    sentence(run(["shapes", "N.C."]), "\"N.C.\" is not a chord symbol.");
    sentence(
        run(["transpose", "A X", "--from", "A", "--to", "B"]),
        "\"X\" is not a chord symbol.",
    );
    sentence(
        run(["transpose", "A", "--from", "A", "--to", "Q"]),
        "\"Q\" is not a key such as A, Bb or F#m.",
    );
    for command in ["spell", "shapes"] {
        sentence(run([command, ""]), "\"\" is not a chord symbol.");
    }
    sentence(
        run(["transpose", " ", "--from", "A", "--to", "B"]),
        "\"\" is not a chord symbol.",
    );
    sentence(
        run(["list", "--json", "zzyzx"]),
        "No tune in the songbook is called \"zzyzx\". \"fourcourse list\" shows them all.",
    );
    for nothing in ["", ".", "  "] {
        let ran = run(["chart", nothing]);
        assert_eq!((ran.code, ran.err.lines().count()), (1, 1), "{nothing}");
    }
    sentence(
        run(["chart", "millrace reel", "--key", "la"]),
        "\"la\" is not a key such as A, Bb or F#m.",
    );
    sentence(
        run(["key", "X"]),
        "\"X\" is not a key such as A, Bb or F#m.",
    );
    sentence(
        run(["key", "A", "--mode", "sad"]),
        "\"A sad\" is not a key such as A, Bb or F#m.",
    );
    sentence(
        run(["capo", "Hm"]),
        "\"Hm\" is not a key such as A, Bb or F#m.",
    );
    sentence(run(["name", "2z00"]), "\"z\" is neither a fret nor an x.");
    sentence(run(["name", "320003"]), "6 frets for 4 courses (Mandolin).");
    sentence(
        run(["name", "xxxx"]),
        "Nothing sounds: every course is left out.",
    );
    sentence(
        run(["name", "30000", "--instrument", "banjo"]),
        "Course 1 has no fret 3 there (Five-string banjo).",
    );
    sentence(
        run(["best-key", "millrace reel"]),
        "Nobody sits in the circle yet: name a --seat or a --singer.",
    );
    sentence(
        run(["best-key", "millrace reel", "--singer", "loud"]),
        "\"loud\" is no range of a voice, such as A3-D5 or tenor.",
    );
    sentence(
        run(["best-key", "millrace reel", "--seat", "mandolin:G,Hm"]),
        "\"Hm\" is not a chord symbol.",
    );
    sentence(run(["ring", "?"]), "\"?\" is neither a key nor a chord.");
    sentence(
        run(["chart", "zzyzx"]),
        "No tune in the songbook is called \"zzyzx\". \"fourcourse list\" shows them all.",
    );
    sentence(
        run(["list", "zzyzx"]),
        "No tune in the songbook is called \"zzyzx\". \"fourcourse list\" shows them all.",
    );
    let kazoo = run(["shapes", "A", "--instrument", "kazoo"]);
    assert_eq!(kazoo.code, 1);
    assert!(
        kazoo
            .err
            .starts_with("There is no instrument \"kazoo\". Known are mandolin, "),
        "{}",
        kazoo.err
    );
}

#[test]
fn a_size_without_room_for_words_is_answered_with_one_that_has_it() {
    let ran = run(["picture", "porch", "--size", "12x12", "--out", "x.png"]);
    assert!(
        ran.err
            .contains("a width and a height from 200 to 10000, such as 412x915"),
        "{}",
        ran.err
    );
}

#[test]
fn keys_that_are_named_for_example_are_keys_in_that_language() {
    for (tag, keys) in [
        ("en", ["A", "Bb", "F#m"]),
        ("de", ["A", "Es", "F#m"]),
        ("es", ["La", "Sib", "Fa#m"]),
    ] {
        let said = run(["--language", tag, "key", "Q"]).err;
        for key in keys {
            assert!(said.contains(key), "{said}");
            assert_eq!(run(["--language", tag, "key", key]).code, 0, "{tag} {key}");
        }
    }
}

#[test]
fn a_tune_that_no_neck_could_reach_is_said_so_with_the_octave_that_helps() {
    sentence(
        run(["tab", "millrace reel", "--octave", "3"]),
        "Not one note of \"Millrace Reel\" is on this neck.\nWith --octave 0 all of them are on it.",
    );
    // Wider than the neck: no octave has all of it.
    let wide = "X:1\nT:Wide\nM:4/4\nL:1/4\nK:D\nD A d d\'\'\'\'|]\n";
    let args = ["tab", "-", "--instrument", "ukulele", "--octave", "4"];
    sentence(
        super::run_on(wide, &args),
        "Not one note of \"Wide\" is on this neck.\nTry it without --octave, or in another key.",
    );
}

#[test]
fn files_that_cannot_be_read_are_named() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("none.abc");
    let ran = run(["read".as_ref(), path.as_os_str()]);
    let start = format!("{} cannot be read: ", path.display());
    assert!(ran.code == 1 && ran.err.starts_with(&start), "{ran:?}");

    fs::write(&path, "just a letter\n").unwrap();
    sentence(
        run(["read".as_ref(), path.as_os_str()]),
        &format!("There is no tune in {}.", path.display()),
    );
}

#[test]
fn what_was_typed_is_told_no_longer_than_it_takes_and_without_control_characters() {
    let long = "H".repeat(100_000);
    let told = format!("\"{}...\" is not a chord symbol.", &long[..60]);
    sentence(run(["spell", &long]), &told);
    sentence(
        run(["spell", "\u{1b}[31mH\u{202e}"]),
        "\"[31mH\" is not a chord symbol.",
    );
}

#[test]
fn nothing_on_standard_input_is_said_plainly() {
    for command in ["read", "add", "chart"] {
        sentence(run([command, "-"]), "There is no tune in what came in.");
    }
}

#[test]
fn reasons_of_the_system_are_told_in_the_readers_language() {
    for (tag, sentence_) in [
        (
            "en",
            "none.abc cannot be read: there is no such file or folder",
        ),
        (
            "es",
            "No se puede leer none.abc: no existe ese archivo o carpeta",
        ),
        (
            "de",
            "none.abc lässt sich nicht lesen: eine solche Datei oder einen solchen Ordner gibt es nicht",
        ),
    ] {
        sentence(run(["--language", tag, "read", "none.abc"]), sentence_);
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_page_that_cannot_be_printed_is_a_failure_with_a_sentence() {
    let folder = tempfile::tempdir().unwrap();
    let full = fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .unwrap();
    let ran = super::finish_piped(super::program(folder.path()).arg("list").stdout(full));
    assert_eq!(ran.code, 1);
    assert_eq!(
        ran.err,
        "The answer could not be printed: there is no room left\n"
    );
}

#[test]
fn the_usage_does_not_ask_for_what_need_not_be_given() {
    let ran = run(["spell"]);
    let usage = ran.err.lines().find(|line| line.starts_with("Usage:"));
    assert_eq!(usage, Some("Usage: fourcourse spell <CHORD>..."));
}

#[cfg(unix)]
#[test]
fn an_endless_file_is_read_no_further_than_the_limit() {
    let ran = run(["read", "/dev/zero"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
}

#[test]
fn a_songbook_that_is_open_elsewhere_is_read_but_not_touched() {
    let folder = tempfile::tempdir().unwrap();
    let list = || run_in(folder.path(), ["list"]).page();
    let before = list();
    let now = chrono::DateTime::UNIX_EPOCH;
    let _open = fourcourse::store::Store::open(folder.path(), now).unwrap();
    assert_eq!(list(), before);
    assert!(run_in(folder.path(), ["chart", "millrace reel"]).code == 0);
    let tune = folder.path().join("a.abc");
    fs::write(&tune, "X:1\nT:Owl\nK:G\nG4|\n").unwrap();
    sentence(
        run_in(folder.path(), ["add".as_ref(), tune.as_os_str()]),
        "The songbook is open in another window or command. Close the window, or wait for the command, and try again.",
    );
    assert_eq!(list(), before);
}

#[test]
fn a_folder_that_cannot_be_used_is_said_so() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("taken");
    fs::write(&taken, "a letter").unwrap();
    let ran = run_in(&taken, ["list"]);
    let start = "The folder of the songbook cannot be used: ";
    assert!(ran.code == 1 && ran.err.starts_with(start), "{ran:?}");
    assert_eq!(ran.err.lines().count(), 1);
}

#[test]
fn a_damaged_songbook_is_set_aside_and_the_shipped_tunes_are_there() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("songbook.redb"), "not a songbook").unwrap();
    let ran = run_in(folder.path(), ["list", "millrace"]);
    assert_eq!(ran.code, 0);
    assert!(ran.out.contains("Millrace Reel"), "{ran:?}");
    assert!(ran.err.contains("songbook-set-aside-"), "{ran:?}");
    assert_eq!(run_in(folder.path(), ["list", "millrace"]).err, "");
}

#[test]
fn a_wrong_use_of_the_command_line_ends_with_2() {
    let wrong: [&[&str]; 11] = [
        &["frobnicate"],
        &["spell"],
        &["read"],
        &["transpose", "A D"],
        &["shapes", "A", "--capo", "99"],
        &["shapes", "A", "--most", "0"],
        &["picture", "stand"],
        &["picture", "stand", "--size", "big", "--out", "x.png"],
        &["picture", "stand", "--size", "12x12", "--out", "x.png"],
        &["picture", "stand", "--size", "412x199", "--out", "x.png"],
        &["--language", "tlh", "list"],
    ];
    for args in wrong {
        let ran = run(args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert!(
            ran.err.contains("--help") || ran.err.contains("for '"),
            "{args:?}: {}",
            ran.err
        );
    }
}

#[cfg(not(feature = "app"))]
#[test]
fn a_build_without_a_window_says_so() {
    sentence(
        run([] as [&str; 0]),
        "This build of fourcourse has no window, only the commands. \"fourcourse help\" lists them.",
    );
    sentence(
        run(["picture", "stand", "--out", "x.png"]),
        "This build of fourcourse has no window and draws no pictures.",
    );
}
