//! The rules of the house that a scan of its files can check.

#![allow(clippy::unwrap_used)] // a test stops where it fails

mod floors;
mod words;

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// All files below a folder whose names end so; a single file stands for itself.
fn files(folder: &str, ending: &str) -> Vec<PathBuf> {
    fn walk(path: PathBuf, ending: &str, found: &mut Vec<PathBuf>) {
        if path.is_dir() {
            for entry in fs::read_dir(path).unwrap() {
                walk(entry.unwrap().path(), ending, found);
            }
        } else if path.extension().is_some_and(|one| one == ending) {
            found.push(path);
        }
    }
    let path = root().join(folder);
    assert!(path.exists(), "there is no {folder}");
    let mut found = Vec::new();
    walk(path, ending, &mut found);
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

#[test]
fn files_stay_short() {
    const MOST: usize = 500;
    let sources = ["src", "tests", "ui"]
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
