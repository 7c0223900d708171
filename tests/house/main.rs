//! The rules of the house that a scan of its files can check.

#![allow(clippy::unwrap_used)] // a test stops where it fails

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn files(folder: &str, ending: &str) -> Vec<PathBuf> {
    fn walk(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
        for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                walk(&path, ending, found);
            } else if path.extension().is_some_and(|one| one == ending) {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    walk(&root().join(folder), ending, &mut found);
    found.sort();
    found
}

fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap()
}

fn shown(path: &Path) -> String {
    path.strip_prefix(root()).unwrap().display().to_string()
}

/// The code of a Rust file without its comments.
fn code(path: &Path) -> String {
    text(path)
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect::<Vec<_>>()
        .join("\n")
}

/// The floors of the house, each with what it must not name.
const FLOORS: [(&str, &[&str]); 7] = [
    (
        "src/theory",
        &[
            "frets", "chart", "formats", "band", "circle", "desk", "store", "audio", "bind",
            "words",
        ],
    ),
    (
        "src/frets",
        &[
            "chart", "formats", "band", "circle", "desk", "store", "audio", "bind", "words",
        ],
    ),
    (
        "src/chart",
        &[
            "formats", "band", "circle", "desk", "store", "audio", "bind", "words",
        ],
    ),
    (
        "src/formats",
        &["band", "circle", "desk", "store", "audio", "bind", "words"],
    ),
    (
        "src/circle",
        &["formats", "band", "desk", "store", "audio", "bind", "words"],
    ),
    ("src/desk", &["store", "audio", "bind", "words"]),
    ("src/store", &["audio", "bind", "words"]),
];

#[test]
fn each_floor_names_only_the_ones_below() {
    let mut wrong = Vec::new();
    for (folder, above) in FLOORS {
        for path in files(folder, "rs") {
            // A floor's own tests may stand on any floor.
            if shown(&path).contains("/tests") {
                continue;
            }
            let code = code(&path);
            for floor in above {
                if [format!("crate::{floor}::"), format!("crate::{floor};")]
                    .iter()
                    .any(|name| code.contains(name.as_str()))
                {
                    wrong.push(format!("{} names {floor}", shown(&path)));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn only_bind_names_slint_and_pure_rooms_name_no_outside_world() {
    const OUTSIDE: [&str; 7] = [
        "std::fs",
        "std::thread",
        "std::net",
        "std::env::",
        "Instant::now",
        "SystemTime::now",
        "Utc::now",
    ];
    let mut wrong = Vec::new();
    for path in files("src", "rs") {
        let code = code(&path);
        let name = shown(&path);
        // The phone's entry is made by Slint's own activity.
        let may = name.starts_with("src/bind") || name == "src/android.rs";
        if !may && (code.contains("slint::") || code.contains("use slint")) {
            wrong.push(format!("{name} names Slint"));
        }
        let pure = ["theory", "frets", "chart", "formats", "circle", "desk"];
        if pure
            .iter()
            .any(|room| name.starts_with(&format!("src/{room}/")))
        {
            for outside in OUTSIDE {
                if code.contains(outside) {
                    wrong.push(format!("{name} names {outside}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn files_stay_short() {
    // About 500; a frozen mirror of what is stored may run a little longer.
    const MOST: usize = 640;
    let sources = ["src", "tests", "ui", "benches"]
        .into_iter()
        .flat_map(|folder| [files(folder, "rs"), files(folder, "slint")].concat());
    let long: Vec<_> = sources
        .map(|path| (shown(&path), text(&path).lines().count()))
        .filter(|(_, lines)| *lines > MOST)
        .collect();
    assert!(long.is_empty(), "{long:#?}");
}

#[test]
fn colours_and_fonts_are_named_in_the_theme_only() {
    let mut wrong = Vec::new();
    for path in files("ui", "slint") {
        let name = shown(&path);
        if name.starts_with("ui/theme") {
            continue;
        }
        for (number, line) in text(&path).lines().enumerate() {
            let line = line.split("//").next().unwrap_or_default();
            let hex = line.match_indices('#').any(|(at, _)| {
                let digits = line[at + 1..]
                    .chars()
                    .take_while(char::is_ascii_hexdigit)
                    .count();
                digits >= 3
            });
            if hex
                || line.contains("rgb(")
                || line.contains("Colors.")
                || line.contains("font-family: \"")
            {
                wrong.push(format!("{name}:{}: {}", number + 1, line.trim()));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Ids of a Fluent file.
fn ids(language: &str) -> BTreeSet<String> {
    let file = root()
        .join("ui/words")
        .join(language)
        .join("fourcourse.ftl");
    text(&file)
        .lines()
        .filter(|line| line.starts_with(|first: char| first.is_ascii_alphabetic()))
        .filter_map(|line| line.split_once('=').map(|(id, _)| id.trim().to_owned()))
        .collect()
}

/// Arguments that each message of a Fluent file takes.
fn arguments(language: &str) -> BTreeSet<(String, String)> {
    let file = root()
        .join("ui/words")
        .join(language)
        .join("fourcourse.ftl");
    let mut id = String::new();
    let mut found = BTreeSet::new();
    for line in text(&file).lines() {
        if line.starts_with(|first: char| first.is_ascii_alphabetic()) {
            id = line.split('=').next().unwrap_or_default().trim().to_owned();
        }
        for part in line.split('$').skip(1) {
            let name = part
                .chars()
                .take_while(char::is_ascii_alphanumeric)
                .collect();
            found.insert((id.clone(), name));
        }
    }
    found
}

#[test]
fn every_language_has_every_word() {
    let english = ids("en");
    assert!(english.len() > 100);
    for language in ["es", "de"] {
        assert_eq!(english, ids(language), "{language}");
        assert_eq!(arguments("en"), arguments(language), "{language}");
    }
}

/// Quoted texts behind an opening, such as `Words.t(`; all that stand before the bracket closes.
fn quoted(code: &str, opening: &str) -> Vec<String> {
    let mut found = Vec::new();
    for part in code.split(opening).skip(1) {
        let mut depth = 1;
        let inside: String = part
            .chars()
            .take_while(|letter| {
                depth += i32::from(*letter == '(') - i32::from(*letter == ')');
                depth > 0
            })
            .collect();
        found.extend(inside.split('"').skip(1).step_by(2).map(String::from));
    }
    found
}

#[test]
fn every_word_that_is_asked_for_exists_and_every_word_is_asked_for() {
    let known = ids("en");
    let mut asked = BTreeSet::new();
    for path in files("ui", "slint") {
        asked.extend(quoted(&text(&path), "Words.t("));
    }
    for path in files("src", "rs") {
        // The first quoted text of fl! is the id.
        for part in code(&path).split("fl!(").skip(1) {
            asked.extend(part.split('"').nth(1).map(String::from));
        }
        asked.extend(quoted(&code(&path), "words.get("));
        // Failures of the shell and problems of a text carry their ids.
        let name = shown(&path);
        if name.starts_with("src/shell/") || name == "src/formats/problem.rs" {
            let code = code(&path);
            let quoted = code.split('"').skip(1).step_by(2);
            let is_id = |text: &&str| {
                ["shell-", "problem-", "window-"]
                    .iter()
                    .any(|kind| text.starts_with(kind))
            };
            asked.extend(quoted.filter(is_id).map(String::from));
        }
    }
    let missing: Vec<_> = asked.difference(&known).collect();
    assert!(missing.is_empty(), "asked for, but not there: {missing:?}");
    let by_kind = ["rhythm-", "mode-", "instrument-"];
    let idle: Vec<_> = known
        .difference(&asked)
        .filter(|id| !by_kind.iter().any(|kind| id.starts_with(kind)))
        .collect();
    assert!(idle.is_empty(), "there, but never asked for: {idle:?}");
}

#[test]
fn everything_visible_goes_through_the_words() {
    // A property that a player reads must not hold words of its own outside the sample data of an adapter.
    let mut wrong = Vec::new();
    for path in files("ui", "slint") {
        for (number, line) in text(&path).lines().enumerate() {
            let line = line.trim();
            for property in [
                "text: \"",
                "label: \"",
                "title: \"",
                "sentence: \"",
                "action: \"",
            ] {
                let Some(rest) = line.strip_prefix(property) else {
                    continue;
                };
                let words = rest.split('"').next().unwrap_or_default();
                if words
                    .chars()
                    .filter(|letter| letter.is_alphabetic())
                    .count()
                    > 1
                    && words != "Fourcourse"
                {
                    wrong.push(format!("{}:{}: {words}", shown(&path), number + 1));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
