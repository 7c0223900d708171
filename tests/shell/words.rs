//! The language of the sentences.

use super::{run, run_on};

#[test]
fn the_language_is_the_one_asked_for_or_the_systems() {
    assert_eq!(
        run(["--language", "de", "spell", "Xm"]).err,
        "„Xm“ ist kein Akkord.\n"
    );
    let folder = tempfile::tempdir().unwrap();
    let mut command = super::program(folder.path());
    let said = super::finish(command.env("LANG", "es_ES.UTF-8").args(["spell", "Hm"]));
    assert_eq!(said.err, "«Hm» no es un acorde.\n");
}

#[test]
fn one_is_one_and_many_are_many_in_every_language() {
    let text = |bars: &str| format!("X:1\nT:a\nM:4/4\nL:1/4\nK:C\n{bars}|\n");
    for (tag, one, two) in [
        ("en", "1 bar, 1 note", "2 bars, 3 notes"),
        ("es", "1 compás, 1 nota", "2 compases, 3 notas"),
        ("de", "1 Takt, 1 Ton", "2 Takte, 3 Töne"),
    ] {
        for (bars, counts) in [("C4", one), ("C4|D2E2", two)] {
            let page = run_on(&text(bars), &["--language", tag, "read", "-"]).page();
            assert_eq!(page.lines().nth(2), Some(format!("  {counts}").as_str()));
        }
    }
}

#[test]
fn chords_and_keys_are_read_in_the_note_names_of_the_language() {
    assert_eq!(
        run(["--language", "de", "spell", "H7"]).page(),
        "B D# F# A\n"
    );
    assert_eq!(run(["--language", "es", "spell", "Do"]).page(), "C E G\n");
    assert_eq!(run(["spell", "Do"]).page(), "D F Ab\n");
    let moved = |tag, chords, from, to| {
        let line = run([
            "--language",
            tag,
            "transpose",
            chords,
            "--from",
            from,
            "--to",
            to,
        ]);
        line.page().trim_end().to_owned()
    };
    assert_eq!(moved("de", "H E", "H", "E"), "E A");
    assert_eq!(moved("es", "|Sol Re7|", "Sol", "La"), "|A E7|");
}
