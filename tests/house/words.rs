//! Words that players see: all there in every language, and all asked for.

use std::collections::BTreeSet;

use super::{code, files, root, shown, text};

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
fn no_file_of_words_lies_unread() {
    // Only this one of each folder is loaded.
    for path in files("ui/words", "ftl") {
        assert!(path.ends_with("fourcourse.ftl"), "{}", shown(&path));
    }
}

/// Whether a function is named in code anywhere but where it is written.
fn is_called(name: &str, code: &str) -> bool {
    code.match_indices(name).any(|(at, _)| {
        let (before, after) = (&code[..at], &code[at + name.len()..]);
        let part_of_a_name = |letter: char| letter.is_alphanumeric() || letter == '_';
        let alone = !before.ends_with(part_of_a_name) && !after.starts_with(part_of_a_name);
        let handed_on = before.ends_with("::") || (before.ends_with('(') && after.starts_with(')'));
        alone && (after.starts_with('(') || handed_on) && !before.ends_with("fn ")
    })
}

#[test]
fn every_sentence_of_the_words_has_a_caller() {
    assert!(is_called("bar", "words.bar(1)") && is_called("bar", "map(Words::bar)"));
    assert!(!is_called(
        "bar",
        "pub fn bar(&self) { self.rebar(); crowbar() }"
    ));
    let all = files("src", "rs").into_iter().map(|path| code(&path));
    let all: String = all.collect();
    let mut sentences = files("src/words", "rs");
    sentences.push(root().join("src/words.rs"));
    let mut idle = Vec::new();
    for path in sentences {
        for part in code(&path).split("pub fn ").skip(1) {
            let name: String = part.chars().take_while(|c| !"(<".contains(*c)).collect();
            if !is_called(&name, &all) {
                idle.push(format!("{}: {name}", shown(&path)));
            }
        }
    }
    assert!(idle.is_empty(), "nobody calls {idle:#?}");
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

#[test]
fn a_course_is_masculine_in_spanish() {
    // "El orden" is a course of strings, "la orden" a command.
    let file = root().join("ui/words/es/fourcourse.ftl");
    let courses = ["al aire", "traste", "$course"];
    for line in text(&file).lines() {
        let spoken = line.to_lowercase();
        let of_course = courses.iter().any(|word| spoken.contains(word));
        let feminine = ["la orden", "una orden", "ninguna orden", "las órdenes"];
        let wrong = feminine.iter().any(|words| spoken.contains(words));
        assert!(!(of_course && wrong), "{line}");
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
    let by_kind = [
        "rhythm-",
        "mode-",
        "instrument-",
        "style-",
        "ending-",
        "player-",
        "voice-",
    ];
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
