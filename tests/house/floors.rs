//! Which room of the house knows which.

use std::path::Path;

use super::{code, files, root, shown};

/// The floors of the house from the ground up, each with the ones that it may know.
const FLOORS: [(&str, &str); 13] = [
    ("theory", ""),
    ("frets", "theory"),
    ("chart", "theory frets"),
    ("formats", "theory frets chart"),
    ("band", "theory frets chart"),
    ("circle", "theory frets chart"),
    ("engraving", "theory frets chart"),
    ("desk", "theory frets chart formats band circle engraving"),
    (
        "words",
        "theory frets chart formats band circle engraving desk",
    ),
    ("audio", "theory frets chart band desk"),
    ("store", "theory frets chart formats band circle desk"),
    ("start", "theory frets chart formats desk audio store"),
    (
        "bind",
        "theory frets chart formats band circle engraving desk words audio store start",
    ),
];

/// The names that stand in code right behind `prefix`, also in braces: `a` and `b` of `crate::{a::c, b}`.
fn behind(code: &str, prefix: &str) -> Vec<String> {
    let word = |text: &str| -> String {
        let letters = text.trim_start().chars();
        letters
            .take_while(|c| c.is_alphanumeric() || *c == '_')
            .collect()
    };
    let mut names = Vec::new();
    for (at, _) in code.match_indices(prefix) {
        let longer = code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_' || c == ':');
        let rest = &code[at + prefix.len()..];
        match rest.strip_prefix('{') {
            _ if longer => {}
            None => names.push(word(rest)),
            Some(list) => {
                let mut depth = 0;
                let mut start = true;
                for (at, c) in list.char_indices() {
                    match c {
                        '{' => depth += 1,
                        '}' if depth == 0 => break,
                        '}' => depth -= 1,
                        ',' if depth == 0 => start = true,
                        _ if start && !c.is_whitespace() => {
                            names.push(word(&list[at..]));
                            start = false;
                        }
                        _ => {}
                    }
                }
            }
        }
    }
    names
}

/// The rooms that a file of the library names, by `crate::` or by as many `super::` as lead out of its own room.
fn rooms(path: &Path) -> Vec<String> {
    let code = code(path);
    let place = shown(path);
    let inside = place.strip_prefix("src/").unwrap().trim_end_matches(".rs");
    let depth = inside.trim_end_matches("/mod").split('/').count();
    let mut names = behind(&code, "crate::");
    names.extend(behind(&code, &"super::".repeat(depth)));
    names
}

#[test]
fn each_floor_names_only_the_ones_it_may_know() {
    let mut wrong = Vec::new();
    for (floor, known) in FLOORS {
        // A room is a file, a folder, or a file with a folder beside it.
        let places = [format!("src/{floor}.rs"), format!("src/{floor}")];
        let there = places.iter().filter(|place| root().join(place).exists());
        for path in there.flat_map(|place| files(place, "rs")) {
            // A floor's own tests may stand on any floor.
            if shown(&path).contains("/tests") {
                continue;
            }
            let is_floor = |name: &String| FLOORS.iter().any(|(floor, _)| floor == name);
            for room in rooms(&path).into_iter().filter(is_floor) {
                if room != floor && !known.split(' ').any(|known| known == room) {
                    wrong.push(format!("{} names {room}", shown(&path)));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn the_scan_of_floors_sees_every_way_to_name_one() {
    let code = "use crate::{\n  desk::{Ask, store},\n  words,\n};\nfn f() { crate::bind::run(); my_crate::x(); }";
    assert_eq!(behind(code, "crate::"), ["desk", "words", "bind"]);
    let code = "use super::super::{limits, Counted};\nuse super::super::super::desk;";
    assert_eq!(
        behind(code, "super::super::"),
        ["limits", "Counted", "super"]
    );
    assert_eq!(behind(code, "super::super::super::"), ["desk"]);
}

#[test]
fn of_the_commands_only_the_app_and_pictures_know_the_interface() {
    for path in files("src/shell", "rs") {
        let may = path.ends_with("app.rs") || path.ends_with("picture.rs");
        let rooms = behind(&code(&path), "fourcourse::");
        assert!(
            may || !rooms.contains(&"bind".to_owned()),
            "{}",
            shown(&path)
        );
    }
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
        let pure = [
            "theory",
            "frets",
            "chart",
            "formats",
            "band",
            "circle",
            "engraving",
            "desk",
        ];
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
