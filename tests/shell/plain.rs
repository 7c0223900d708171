//! Commands for scripts: notes, chords, shapes and open strings as lines and as JSON.

use serde_json::json;

use super::{run, run_on};

const TUNE: &str = "X:1\nT:Kettle\nM:6/8\nL:1/8\nK:Ador\n\
    E | \"Am\"{g}A2B c-cd | \"G7\"(3BcB A2 G2 |]\n";

#[test]
fn read_gives_tunes_as_json_in_quarter_notes() {
    // Worked out by hand from the ABC standard 2.1: a triplet of eighths takes a quarter, the grace note is left out,
    // the tied notes are one.
    let note = |at: &str, length: &str, midi: i32| json!({"at": at, "for": length, "midi": midi});
    assert_eq!(
        run_on(TUNE, &["read", "--json", "-"]).json(),
        json!([{
            "title": "Kettle",
            "metre": "6/8",
            "key": {"tonic": "A", "mode": "dorian"},
            "pickup": "1/2",
            "notes": [
                note("0", "1/2", 64),
                note("1/2", "1", 69),
                note("3/2", "1/2", 71),
                note("2", "1", 72),
                note("3", "1/2", 74),
                note("7/2", "1/3", 71),
                note("23/6", "1/3", 72),
                note("25/6", "1/3", 71),
                note("9/2", "1", 69),
                note("11/2", "1", 67),
            ],
            "chords": [{"at": "1/2", "symbol": "Am"}, {"at": "7/2", "symbol": "G7"}],
            "problems": [],
        }])
    );
}

#[test]
fn read_plays_repeats_only_when_asked() {
    let text = "X:1\nT:Twice\nM:2/4\nL:1/4\nK:C\n|: C D :|\n";
    let midi = |args: &[&str]| {
        let tunes = run_on(text, args).json();
        let notes = tunes[0]["notes"].as_array().unwrap().clone();
        let midi = notes.iter().map(|note| note["midi"].as_i64().unwrap());
        midi.collect::<Vec<_>>()
    };
    assert_eq!(midi(&["read", "--json", "-"]), [60, 62]);
    assert_eq!(midi(&["read", "--json", "--played", "-"]), [60, 62, 60, 62]);
}

#[test]
fn read_keeps_what_it_understands_and_says_where_it_does_not() {
    let text = "X:1\nT:Broken\nM:4/4\nL:1/4\nK:G\n\"Hm\"GABc | [de\n";
    let said = run_on(text, &["read", "-"]);
    assert_eq!(said.code, 0);
    assert!(said.out.starts_with("Broken\n  G, 4/4\n"), "{}", said.out);
    assert!(
        said.err.starts_with("-:6:5: \"Hm\" is not a chord"),
        "{}",
        said.err
    );

    let tunes = run_on(text, &["read", "--json", "-"]).json();
    let problem = &tunes[0]["problems"][0];
    assert_eq!(
        *problem,
        json!({"line": 6, "column": 5, "message": "\"Hm\" is not a chord. It was kept as words."})
    );
    assert_eq!(tunes[0]["notes"].as_array().unwrap().len(), 6);
}

#[test]
fn a_crooked_tune_has_no_pickup() {
    let text = "X:1\nT:Crooked\nM:4/4\nL:1/4\nK:C\nC3|D3|E3|F3|\n";
    assert_eq!(
        run_on(text, &["read", "--json", "-"]).json()[0]["pickup"],
        "0"
    );
    assert!(!run_on(text, &["chart", "-"]).page().contains("Pickup"));
}

#[test]
fn a_tune_that_asks_for_endless_playing_is_cut_and_says_so() {
    let text = format!("X:1\nT:Much\nP:A500\nK:C\nP:A\n{}|\n", "a".repeat(20_000));
    let tunes = run_on(&text, &["read", "--json", "--played", "-"]).json();
    assert_eq!(tunes[0]["notes"].as_array().unwrap().len(), 980_000);
    let problem = &tunes[0]["problems"][0]["message"];
    assert!(
        problem
            .as_str()
            .unwrap()
            .starts_with("Played with all its repeats")
    );
    let page = run_on(&text, &["read", "--played", "-"]);
    assert!(
        page.err.contains("Played with all its repeats"),
        "{}",
        page.err
    );
}

#[test]
fn signs_around_chords_stay_where_they_are() {
    let moved = |chords: &str| {
        let line = run(["transpose", chords, "--from", "A", "--to", "C"]).page();
        line.trim_end().to_owned()
    };
    assert_eq!(moved("|A D|E7|"), "|C F|G7|");
    assert_eq!(
        moved("|:A / D N.C.:| (E7) A(b5), D/F#."),
        "|:C / F N.C.:| (G7) C(b5), F/A."
    );
}

#[test]
fn a_key_is_written_with_the_signs_that_players_use() {
    // Circle of fifths: C flat (7 flats) is B (5 sharps), A flat minor (7 flats) is G sharp minor (5 sharps).
    let moved = |chords, from, to| run(["transpose", chords, "--from", from, "--to", to]).page();
    assert_eq!(moved("C F G", "C", "Cb"), "B E F#\n");
    assert_eq!(moved("Am Dm E7", "Am", "Abm"), "G#m C#m D#7\n");
    assert_eq!(moved("C F G", "C", "C#"), "Db Gb Ab\n");
    assert_eq!(moved("C F G", "C", "Gb"), "Gb Cb Db\n");
}

#[test]
fn read_tells_tunes_and_chords_to_the_eye() {
    insta::assert_snapshot!(run_on(TUNE, &["read", "-"]).page(), @r"
    Kettle
      A dorian, 6/8
      3 bars, 10 notes
      |  | Am | G7 |
    ");
}

#[test]
fn transpose_spells_for_the_key_that_was_called() {
    let line = |chords: &str, from: &str, to: &str| {
        run(["transpose", chords, "--from", from, "--to", to]).page()
    };
    assert_eq!(line("A D E7 F#m", "A", "Bb"), "Bb Eb F7 Gm\n");
    // A bare note keeps the mode; A sharp would take ten signs.
    assert_eq!(line("Am F E7", "Am", "C"), "Cm Ab G7\n");
    assert_eq!(line("A D E", "A", "A#"), "Bb Eb F\n");
    assert_eq!(line("|: D | G / A7 :|", "D", "C"), "|: C | F / G7 :|\n");
    assert_eq!(
        run([
            "transpose",
            "A",
            "E/G#",
            "--from",
            "A",
            "--to",
            "G",
            "--json"
        ])
        .json(),
        json!({"from": "A", "to": "G", "chords": ["G", "D/F#"]})
    );
}

#[test]
fn spell_gives_the_notes_a_line_for_each_chord() {
    assert_eq!(run(["spell", "F#m7"]).page(), "F# A C# E\n");
    assert_eq!(
        run(["spell", "Bbmaj7", "C/D"]).page(),
        "Bb D F A\nD C E G\n"
    );
    assert_eq!(
        run(["spell", "A-7", "--json"]).json(),
        json!([{"symbol": "Am7", "notes": ["A", "C", "E", "G"]}])
    );
}

#[test]
fn shapes_are_the_ones_that_are_taught_first() {
    // Common practice: Bm is 4022 with fingers 3011 on a mandolin, D is xx0232 on a guitar.
    assert_eq!(
        run(["shapes", "Bm", "--most", "1", "--json"]).json(),
        json!([{
            "frets": [4, 0, 2, 2], "fingers": [3, 0, 1, 1], "notes": ["B", "D", "B", "F#"], "missing": [],
        }])
    );
    let guitar = [
        "shapes",
        "D",
        "--instrument",
        "guitar",
        "--most",
        "1",
        "--json",
    ];
    assert_eq!(
        run(guitar).json()[0]["frets"],
        json!([null, null, 0, 2, 3, 2])
    );
    // Common practice: A is 2200 on a mandolin, without its third.
    let a = run(["shapes", "A", "--most", "1", "--json"]).json();
    assert_eq!(
        (&a[0]["frets"], &a[0]["missing"]),
        (&json!([2, 2, 0, 0]), &json!(["third"]))
    );
}

#[test]
fn with_a_capo_frets_are_counted_from_it() {
    // Common practice: G shapes behind a capo at 2 sound A.
    let args = ["shapes", "A", "--capo", "2", "--most", "1", "--json"];
    assert_eq!(run(args).json()[0]["frets"], json!([0, 0, 2, 3]));
}

#[test]
fn ring_tells_open_strings_over_a_chord() {
    // Worked out for the trade sheet: over D the open G rubs with F sharp, and E colours.
    let rows = run(["ring", "D7", "--json"]).json();
    let standing: Vec<_> = rows["chord"].as_array().unwrap().iter().collect();
    let standing: Vec<_> = standing.iter().map(|row| &row["standing"]).collect();
    assert_eq!(standing, ["clash", "fits", "fits", "colour"]);
    assert_eq!(
        rows["chord"][0],
        json!({"string": "G", "note": "G", "degree": "fourth", "standing": "clash", "with": "F#"})
    );
    assert_eq!(rows.get("key"), None);
}

#[test]
fn ring_tells_the_drones_of_a_key() {
    // Common practice: in A let A and E ring.
    let rows = run(["ring", "A mixolydian", "--json"]).json();
    let rows = rows["key"].as_array().unwrap();
    let drones = rows.iter().filter(|row| row["standing"] == "drone");
    assert_eq!(
        drones.map(|row| &row["string"]).collect::<Vec<_>>(),
        ["A", "E"]
    );
    let both = run(["ring", "A", "--json"]).json();
    assert!(both.get("key").is_some() && both.get("chord").is_some());
}

#[test]
fn ring_says_so_to_the_eye() {
    insta::assert_snapshot!(run(["ring", "D", "--capo", "2"]).page(), @r"
    Open strings over D
      G (A)   rings along
      D (E)   colours the chord
      A (B)   colours the chord
      E (F#)  rings along

    Open strings through a tune in D
      G (A)   the tonic or fifth, without its partner
      D (E)   belongs to the key
      A (B)   belongs to the key
      E (F#)  belongs to the key
    ");
}

#[test]
fn a_closed_pipe_is_no_failure() {
    let folder = tempfile::tempdir().unwrap();
    let mut command = super::program(folder.path());
    command.arg("list");
    command.stdout(std::process::Stdio::piped());
    command.stderr(std::process::Stdio::piped());
    let mut child = command.spawn().unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
    assert_eq!(output.status.code(), Some(0));
}

#[test]
fn help_names_every_command() {
    let help = run(["--help"]).page();
    for command in [
        "read",
        "transpose",
        "spell",
        "shapes",
        "ring",
        "key",
        "name",
        "capo",
        "best-key",
        "add",
        "list",
        "chart",
        "picture",
        "--data-folder",
    ] {
        assert!(help.contains(command), "{command}: {help}");
    }
}

#[test]
fn shapes_and_open_strings_follow_a_tuning_of_ones_own() {
    // A E A E: worked out by hand, an open A chord with no third but for the fret that adds it.
    let tuned = ["--tuning", "A3 e4 A4 E5", "--json"];
    let shapes = run([&["shapes", "A"], &tuned[..]].concat()).json();
    let open = shapes[0]["notes"].as_array().unwrap();
    assert!(
        open.iter()
            .all(|note| ["A", "E", "C#"].contains(&note.as_str().unwrap()))
    );
    assert_eq!(shapes[0]["frets"], json!([0, 0, 0, 0]));
    let ring = run([&["ring", "A7"], &tuned[..]].concat()).json();
    let standing = |string: usize| ring["chord"][string]["standing"].clone();
    assert_eq!([0, 1, 2, 3].map(standing), ["fits"; 4]);
    assert_eq!(ring["chord"][0]["string"], "A");
    // Another count of courses is another neck.
    let three = run(["shapes", "D", "--tuning", "D3 A3 D4", "--json"]).json();
    assert_eq!(three[0]["frets"].as_array().unwrap().len(), 3);
    for wrong in ["A E A E", "H3", "", "A3 E44"] {
        assert_eq!(run(["ring", "A", "--tuning", wrong]).code, 2, "{wrong}");
    }
}
