//! A key or a tune is called: what the commands around it answer.

use serde_json::{Value, json};

use super::{finish, program, run};

fn typographic(args: &[&str]) -> String {
    let folder = tempfile::tempdir().unwrap();
    finish(program(folder.path()).env("LANG", "en_GB.UTF-8").args(args)).page()
}

/// The values of a field of each row.
fn each(rows: &Value, field: &str) -> Vec<String> {
    let text = |row: &Value| match &row[field] {
        Value::String(text) => text.clone(),
        other => other.to_string(),
    };
    rows.as_array().unwrap().iter().map(text).collect()
}

#[test]
fn a_called_key_is_answered_on_one_page() {
    insta::assert_snapshot!(typographic(&["key", "A"]));
    insta::assert_snapshot!(run(["key", "E", "--mode", "minor", "--instrument", "banjo"]).page());
}

#[test]
fn a_called_key_has_its_chords_scale_and_neighbours() {
    let key = run(["key", "A", "--json"]).json();
    // Any harmony textbook; the sheet of trade facts: 1 4 5 6m (b7), drones A and E, banjo in its G tuning at 2.
    assert_eq!(
        each(&key["chords"], "number"),
        ["1", "4", "5", "6m", "2m", "3m", "b7"]
    );
    assert_eq!(
        each(&key["chords"], "chord"),
        ["A", "D", "E", "F#m", "Bm", "C#m", "G"]
    );
    assert_eq!(key["chords"][0]["shape"]["frets"], json!([2, 2, 0, 0]));
    assert_eq!(key["scale"], json!(["A", "B", "C#", "D", "E", "F#", "G#"]));
    assert_eq!(
        (&key["relative"], &key["parallel"]),
        (&json!("F#m"), &json!("Am"))
    );
    assert_eq!(
        each(&key["open"], "standing"),
        ["outside", "scale", "drone", "drone"]
    );
    assert_eq!(key["capo"][1], json!({"fret": 2, "shapes": "G"}));
    let banjo = &key["retune"]["banjo"][0];
    assert_eq!(
        (&banjo["capo"], &banjo["retuned"]),
        (&json!(2), &json!(false))
    );
    // Standard transposition: a major second, a major sixth and a fifth up.
    assert_eq!(
        key["written"],
        json!({"C": "A", "Bb": "B", "Eb": "F#", "F": "E"})
    );
}

#[test]
fn a_mode_may_be_said_apart_or_with_the_key() {
    let apart = run(["key", "A", "--mode", "mixolydian", "--json"]).json();
    assert_eq!(apart, run(["key", "A mixolydian", "--json"]).json());
    assert_eq!(each(&apart["chords"], "number")[..3], ["1", "b7", "4"]);
    // A key of ten sharps is meant by its sound.
    assert_eq!(run(["key", "A#", "--json"]).json()["key"], "Bb");
}

#[test]
fn a_held_chord_is_named_with_what_it_lacks() {
    // The sheet of trade facts: 2200 is an A without its third.
    let named = run(["name", "2200", "--json"]).json();
    assert_eq!(named["notes"], json!(["A3", "E4", "A4", "E5"]));
    assert_eq!(each(&named["names"], "symbol"), ["A", "A5", "Am"]);
    assert_eq!(named["names"][0]["missing"], json!(["third"]));
    assert_eq!(
        run(["name", "4022", "--json"]).json()["names"][0]["symbol"],
        "Bm"
    );
}

#[test]
fn a_held_chord_may_be_typed_in_pieces_and_lie_behind_a_capo() {
    for frets in [
        &["x-10-12-12"][..],
        &["x", "10", "12", "12"],
        &["x 10 12 12"],
    ] {
        let named = run(["name"].iter().chain(frets).chain(&["--json"])).json();
        assert_eq!(named["names"][0]["symbol"], "Am", "{frets:?}");
        assert_eq!(named["names"][0]["bass"], "C", "{frets:?}");
    }
    let args = [
        "name",
        "320003",
        "--instrument",
        "guitar",
        "--capo",
        "2",
        "--json",
    ];
    let named = run(args).json();
    // Common practice: G shapes behind a capo at 2 sound A.
    assert_eq!(named["names"][0]["symbol"], "A");
    assert_eq!(named["names"][0]["played_as"], "G");
}

#[test]
fn a_held_chord_is_drawn_over_its_names() {
    insta::assert_snapshot!(typographic(&["name", "0230"]));
    insta::assert_snapshot!(
        run(["name", "2 4 0 0", "--instrument", "ukulele", "--capo", "1"]).page()
    );
}

#[test]
fn every_capo_position_is_drawn_with_its_shapes() {
    insta::assert_snapshot!(typographic(&["capo", "A"]));
    let rows = run(["capo", "Bb", "--json"]).json();
    assert_eq!(each(&rows, "fret"), ["1", "3", "6", "8", "10"]);
    assert_eq!(each(&rows, "shapes"), ["A", "G", "E", "D", "C"]);
    let first = &rows[1]["chords"][0];
    assert_eq!(
        (&first["sounds"], &first["play"]),
        (&json!("Bb"), &json!("G"))
    );
    assert_eq!(first["shape"]["frets"], json!([3, 2, 0, 0, 0, 3]));
}

const CIRCLE: [&str; 12] = [
    "best-key",
    "millrace reel",
    "--seat",
    "mandolin",
    "--seat",
    "guitar:G,C,D,Em",
    "--seat",
    "banjo",
    "--seat",
    "Bb",
    "--singer",
    "A3-D5",
];

#[test]
fn the_best_key_comes_first_with_its_reasons() {
    insta::assert_snapshot!(typographic(&CIRCLE));
}

#[test]
fn all_twelve_keys_are_ranked_for_scripts() {
    let keys = run(CIRCLE.iter().chain(&["--json"])).json();
    let mut names = each(&keys, "key");
    assert_eq!(names.len(), 12);
    names.sort();
    names.dedup();
    assert_eq!(names.len(), 12);
    let efforts = keys
        .as_array()
        .unwrap()
        .iter()
        .map(|key| key["effort"].as_f64().unwrap());
    let efforts: Vec<_> = efforts.collect();
    assert!(efforts.is_sorted(), "{efforts:?}");
    let written = keys
        .as_array()
        .unwrap()
        .iter()
        .find(|key| key["moved"] == 0)
        .unwrap();
    assert_eq!(written["key"], "A");
    let seats = written["seats"].as_array().unwrap();
    assert_eq!(seats.len(), 5);
    assert_eq!(seats[2]["hands"]["capo"], 2);
    assert_eq!(seats[3]["written"], "B");
    assert!(seats[4]["voice"]["over"].is_i64());
}

#[test]
fn a_circle_is_told_of_in_other_languages() {
    let page = run(CIRCLE.iter().chain(&["--language", "de"])).page();
    assert!(page.contains("Je länger der Balken"), "{page}");
    let page = run(["--language", "es", "key", "A"]).page();
    assert!(page.contains("relativa F#m, paralela Am"), "{page}");
}

#[test]
fn pages_fit_80_columns() {
    for args in [
        &["key", "Ebm", "--instrument", "guitar"][..],
        &["capo", "F#"],
        &CIRCLE[..],
        &["key", "F#", "--capo", "3"],
    ] {
        let page = run(args).page();
        let wide = page.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{args:?}");
    }
}
