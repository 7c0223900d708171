//! Adding to the songbook, listing it, and finding tunes in it.

use std::fs;
use std::path::{Path, PathBuf};

use super::{finish, program, run, run_in};

fn file(folder: &Path, name: &str, titles: &[&str]) -> PathBuf {
    let tunes = titles.iter().zip(1..).map(|(title, number)| {
        format!("X:{number}\nT:{title}\nR:reel\nM:4/4\nL:1/4\nK:G\n\"G\"GABc | \"D\"d4 |]\n\n")
    });
    let path = folder.join(name);
    fs::write(&path, tunes.collect::<String>()).unwrap();
    path
}

#[test]
fn a_new_songbook_has_the_shipped_tunes() {
    let shipped = fourcourse::store::shipped::files().len();
    assert_eq!(run(["list"]).page().lines().count(), shipped);
    assert_eq!(
        run(["list", "--json"]).json().as_array().unwrap().len(),
        shipped
    );
}

#[test]
fn list_finds_tunes_in_spite_of_slips() {
    assert!(
        run(["list", "ketle", "nooon"])
            .page()
            .contains("Kettle before Noon")
    );
    let rows = run(["list", "--json", "millrace", "reel"]).json();
    assert_eq!(rows[0]["titles"][0], "Millrace Reel");
    assert_eq!(
        rows[0]["key"],
        serde_json::json!({"tonic": "A", "mode": "major"})
    );
    assert_eq!(rows[0]["form"], "AABB");
}

#[test]
fn what_was_added_is_listed_and_charted() {
    let folder = tempfile::tempdir().unwrap();
    let path = file(folder.path(), "new.abc", &["Owl on the Sill", "Tin Moon"]);
    let add = ["add".as_ref(), path.as_os_str()];
    let said = run_in(folder.path(), add).page();
    assert_eq!(said, "Added: Owl on the Sill\nAdded: Tin Moon\n");
    let again = run_in(folder.path(), add).page();
    assert_eq!(
        again,
        "Already there: Owl on the Sill\nAlready there: Tin Moon\n"
    );
    assert!(
        run_in(folder.path(), ["list", "owl"])
            .page()
            .contains("Owl on the Sill")
    );
    let chart = run_in(folder.path(), ["chart", "tin moon"]).page();
    assert!(chart.starts_with("Tin Moon\n"));
}

#[test]
fn files_are_added_all_or_none() {
    let folder = tempfile::tempdir().unwrap();
    let path = file(folder.path(), "new.abc", &["Owl on the Sill"]);
    let none = folder.path().join("none.abc");
    let ran = run_in(
        folder.path(),
        ["add".as_ref(), path.as_os_str(), none.as_os_str()],
    );
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert_eq!(run_in(folder.path(), ["list", "owl"]).code, 1);
}

#[test]
fn a_title_as_it_stands_goes_before_others_with_the_same_words() {
    let folder = tempfile::tempdir().unwrap();
    let path = file(
        folder.path(),
        "new.abc",
        &["Weir", "Weir in Flood", "Old Weir"],
    );
    run_in(folder.path(), ["add".as_ref(), path.as_os_str()]).page();
    let chart = run_in(folder.path(), ["chart", "weir"]).page();
    assert!(chart.starts_with("Weir\n"), "{chart}");
}

#[test]
fn a_whole_word_goes_before_parts_of_words_and_slips() {
    let folder = tempfile::tempdir().unwrap();
    let titles = [
        "Vole on the Plank",
        "Voleville",
        "The Planks",
        "Eel Pie Reel",
    ];
    let path = file(folder.path(), "new.abc", &titles);
    run_in(folder.path(), ["add".as_ref(), path.as_os_str()]).page();
    for (words, title) in [
        ("plank", titles[0]),
        ("on VOLE", titles[0]),
        ("pie", titles[3]),
    ] {
        let chart = run_in(folder.path(), ["chart", words]).page();
        assert!(chart.starts_with(title), "{words}: {chart}");
    }
}

#[test]
fn each_word_that_only_one_shipped_title_has_is_enough_to_chart_it() {
    let folder = tempfile::tempdir().unwrap();
    for (word, title) in [
        ("Gate", ""),
        ("Lamps", ""),
        ("Snow", ""),
        ("reel", "Millrace Reel"),
    ] {
        let chart = run_in(folder.path(), ["chart", word]).page();
        let first = chart.lines().next().unwrap();
        assert!(first.contains(word) || first == title, "{first}");
    }
}

#[test]
fn rubbish_is_not_added_and_a_tune_without_a_title_gets_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("noise.abc");
    fs::write(&path, b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR a|b|c \xff").unwrap();
    let ran = run_in(folder.path(), ["add".as_ref(), path.as_os_str()]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert!(ran.err.starts_with("There is no tune in "), "{}", ran.err);
    assert!(!folder.path().join("songbook.redb").exists());

    let path = folder.path().join("From the Fair.abc");
    fs::write(&path, "X:1\nK:G\nG4|\n").unwrap();
    let ran = run_in(folder.path(), ["add".as_ref(), path.as_os_str()]);
    assert_eq!((ran.code, ran.out.as_str()), (0, "Added: From the Fair\n"));
    let two = "X:1\nK:G\nG4|\n\nX:2\nK:D\nd4|\n";
    let said = super::run_on(two, &["--language", "de", "add", "-"]);
    assert_eq!(
        said.out,
        "Aufgenommen: Ohne Titel 1\nAufgenommen: Ohne Titel 2\n"
    );
}

#[test]
fn no_control_character_of_a_file_reaches_the_terminal() {
    let text = "X:1\nT:Red \u{1b}[31mHerring\u{7} \u{202e}\nC:\u{9b}0m\nR:\u{1b}reel\nP:A\u{8}\nK:G\nP:\u{1b}A\n\
        \"\u{1b}x\"G4 \u{1b}|\nw:\u{1b}la\nW:\u{1b}la\n";
    for command in ["read", "chart", "add"] {
        let ran = super::run_on(text, &[command, "-"]);
        let said = ran.out + &ran.err;
        assert!(said.contains("Herring"), "{command}: {said}");
        let driving = |c: char| (c.is_control() && c != '\n') || c == '\u{202e}';
        assert!(!said.contains(driving), "{command}: {said:?}");
    }
}

#[test]
fn several_tunes_that_fit_alike_are_listed_to_choose_from() {
    let folder = tempfile::tempdir().unwrap();
    let ran = run_in(folder.path(), ["chart", "goo"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    let mut lines = ran.err.lines();
    assert_eq!(lines.next(), Some("Several tunes fit \"goo\":"));
    let tunes: Vec<_> = lines.collect();
    assert!(tunes.len() >= 2, "{tunes:?}");
    // A number of the list chooses.
    let goose = tunes.iter().find(|line| line.contains("Goose")).unwrap();
    let number = goose.trim().split(' ').next().unwrap();
    let chart = run_in(folder.path(), ["chart", number]).page();
    assert!(chart.starts_with("Nobody Told the Goose\n"), "{chart}");
}

#[test]
fn a_file_is_charted_without_being_kept() {
    let folder = tempfile::tempdir().unwrap();
    let one = file(folder.path(), "one.abc", &["Owl on the Sill"]);
    let chart = run_in(folder.path(), ["chart".as_ref(), one.as_os_str()]).page();
    assert!(chart.starts_with("Owl on the Sill\n"), "{chart}");
    assert!(!folder.path().join("songbook.redb").exists());

    let two = file(folder.path(), "two.abc", &["Owl on the Sill", "Tin Moon"]);
    let ran = run_in(folder.path(), ["chart".as_ref(), two.as_os_str()]);
    assert_eq!(ran.code, 1);
    assert!(
        ran.err.ends_with("\n  Owl on the Sill\n  Tin Moon\n"),
        "{}",
        ran.err
    );
}

#[test]
fn the_option_for_the_folder_goes_before_the_variable() {
    let (by_variable, by_option) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let kept = |folder: &Path| folder.join("songbook.redb").exists();
    finish(
        program(by_variable.path())
            .args(["list", "--data-folder"])
            .arg(by_option.path()),
    )
    .page();
    assert!(kept(by_option.path()) && !kept(by_variable.path()));
    run_in(by_variable.path(), ["list"]).page();
    assert!(kept(by_variable.path()));
}

#[cfg(target_os = "linux")]
#[test]
fn without_either_the_songbook_is_in_the_users_own_data_folder() {
    // XDG Base Directory Specification 0.8: XDG_DATA_HOME.
    let home = tempfile::tempdir().unwrap();
    let mut command = program(home.path());
    command.env_remove("FOURCOURSE_DATA");
    command.env("XDG_DATA_HOME", home.path());
    finish(command.arg("list")).page();
    assert!(home.path().join("fourcourse/songbook.redb").exists());
}
