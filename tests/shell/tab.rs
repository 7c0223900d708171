//! Tablature from the shell.

use super::{finish, program, run, run_on};

/// A crooked tune with a tuplet, sixteenths, a tie over the bar line, a note below the neck, a stroke marked against the
/// hand, endings, a key change, words, and a bar that no page is wide enough for.
const CROOKED: &str = r#"X:1
T:Three Wheels on the Cart
M:4/4
L:1/8
K:D
P:A
DE | "D"F2(3FGA B/A/G/F/ "A7/C#"E>F | "Bm"B4 z2 cd- | d2uB2 A<G F,2 | [M:5/4] "G"B2 z2 B2 "A"A4 |[M:4/4] z8 |1 "D"D6 DE :|2 "D"D8 ||
P:B
[K:G] |: "G"G4 G4 | "Cmaj7"c"F#m7b5"d"G"e"D"f g4 :|
w: Row the old boat up-stream, Hal-le-lu-jah now
M:none
"D"F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2 F2 A2 d2|]
"#;

#[test]
fn a_reel_has_its_pickup_parts_picks_and_counts() {
    insta::assert_snapshot!(run(["tab", "millrace"]).page());
}

#[test]
fn a_crooked_tune_keeps_to_the_page() {
    insta::assert_snapshot!(run_on(CROOKED, &["tab", "-"]).page());
}

#[test]
fn a_waltz_with_drones_says_why_in_the_language_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let args = [
        "--language",
        "es",
        "tab",
        "ferryman",
        "--drones",
        "chord",
        "--fingers",
    ];
    let mut command = program(folder.path());
    insta::assert_snapshot!(finish(command.env("LANG", "en_GB.UTF-8").args(args)).page());
}

#[test]
fn exercises_come_from_the_tune() {
    insta::assert_snapshot!(run(["tab", "bell beneath", "--exercises"]).page());
}

#[test]
fn every_shipped_tune_fits_the_page_on_every_instrument() {
    use fourcourse::frets::Instrument;
    // One process a tune; the instruments take turns.
    let instruments: Vec<_> = Instrument::all().map(|one| one.id).collect();
    for (i, (name, tune)) in fourcourse::store::shipped::tunes().into_iter().enumerate() {
        let path = format!("{}/songbook/{name}", env!("CARGO_MANIFEST_DIR"));
        let instrument = instruments[i % instruments.len()];
        let args = [
            "tab",
            &path,
            "--instrument",
            instrument,
            "--drones",
            "chord",
            "--double-stops",
            "--fingers",
        ];
        let page = run(args).page();
        let wide = page.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{name} on {instrument}");
        assert!(page.is_ascii(), "{name}");
        for at in tune.bars.iter().flat_map(|bar| &bar.chords) {
            let symbol = at.symbol.to_string();
            assert!(page.contains(&symbol), "{name}: {symbol}\n{page}");
        }
    }
}

#[test]
fn the_place_a_tune_starts_at_is_that_of_the_first_note_below_it() {
    use fourcourse::frets::Instrument;
    let instruments: Vec<_> = Instrument::all().collect();
    for (i, (name, _)) in fourcourse::store::shipped::tunes().iter().enumerate() {
        let path = format!("{}/songbook/{name}", env!("CARGO_MANIFEST_DIR"));
        // One tune on three instruments; they take turns.
        for instrument in (0..3).map(|turn| &instruments[(i + turn) % instruments.len()]) {
            let args = ["tab", &path, "--instrument", instrument.id];
            let page = run(args).page();
            let start = page.lines().find(|line| line.starts_with("Starts on "));
            let rows = run(args.into_iter().chain(["--json"])).json();
            let Some(course) = rows[0]["course"].as_u64() else {
                // Off the neck: the note alone.
                assert!(!start.unwrap().contains('('), "{name}: {start:?}");
                continue;
            };
            let course = usize::try_from(course).unwrap();
            let mut place = instrument.courses[course].open.name.to_string();
            if let Some(number) = instrument.string_number(course) {
                place += &format!(" {number}");
            }
            place += &match rows[0]["fret"].as_u64().unwrap() {
                0 => " course, open)".to_owned(),
                fret => format!(" course, fret {fret})"),
            };
            assert!(
                start.unwrap().ends_with(&format!("({place}")),
                "{name} on {}: {start:?}, {place}",
                instrument.id
            );
        }
    }
}

#[test]
fn a_tune_that_starts_off_the_neck_says_only_its_first_note() {
    let page = run_on(
        "X:1\nT:Deep\nK:D\nD,,4 A4|d4 f4|]\n",
        &["tab", "-", "--octave", "0"],
    )
    .page();
    assert!(page.contains("\nStarts on D\n"), "{page}");
}

#[test]
fn json_has_a_row_for_each_note_with_its_place_and_its_pick() {
    let rows = run_on(CROOKED, &["tab", "-", "--json", "--drones", "plain"]).json();
    let rows = rows.as_array().unwrap();
    assert_eq!(
        rows[0].to_string(),
        r#"{"at":"0","course":1,"drone":2,"finger":0,"for":"1/2","fret":0,"midi":62,"pick":"down"}"#
    );
    // The note below the neck has no place, and still its time and stroke.
    let below = rows.iter().find(|row| row["midi"] == 54).unwrap();
    assert!(below["course"].is_null() && below["fret"].is_null() && below["finger"].is_null());
    assert_eq!(
        (below["at"].as_str(), below["pick"].as_str()),
        (Some("12"), Some("down"))
    );
    // A tie is one note.
    let tied = rows.iter().find(|row| row["at"] == "17/2").unwrap();
    assert_eq!(tied["for"], "3/2");
    // With double stops each row says what it has beside it.
    let rows = run(["tab", "millrace", "--json", "--double-stops"]).json();
    let rows = rows.as_array().unwrap();
    assert!(rows.iter().all(|row| row.get("stop").is_some()));
    assert!(rows.iter().any(|row| row["stop"]["fret"].is_u64()));
}

#[test]
fn a_tune_without_notes_is_said_to_have_none() {
    let ran = run_on("X:1\nT:Chords\nK:G\n\"G\"z4|\"C\"z4|]\n", &["tab", "-"]);
    assert_eq!(
        (ran.code, ran.err.as_str()),
        (1, "\"Chords\" has no melody.\n")
    );
}

/// What the program says about a tune between its head and its tablature, on one line.
fn remarks(text: &str, args: &[&str]) -> String {
    let page = run_on(text, args).page();
    let block = page.split("\n\n").nth(1).unwrap();
    block.replace('\n', " ")
}

#[test]
fn notes_off_the_neck_come_with_what_to_do() {
    let wide = "X:1\nT:Wide\nM:4/4\nL:1/4\nK:D\nD,, A d d'''|D,, A d d'''|]\n";
    let one = "X:1\nT:One\nM:4/4\nL:1/4\nK:D\nD A d d''''|]\n";
    for (tag, text, said) in [
        (
            "en",
            wide,
            "4 notes are off this neck; they are marked ?. Leave them out, or try the tune in another key.",
        ),
        (
            "en",
            one,
            "One note is off this neck; it is marked ?. Leave it out, or try the tune in another key.",
        ),
        (
            "de",
            wide,
            "4 Noten liegen nicht auf diesem Hals; dort steht ein ?. Lass sie weg oder versuch das Stück in einer anderen Tonart.",
        ),
        (
            "es",
            one,
            "Una nota queda fuera de este mástil; lleva un ?. Déjala fuera o prueba la melodía en otro tono.",
        ),
    ] {
        let args = ["--language", tag, "tab", "-", "--instrument", "ukulele"];
        let found = remarks(text, &args);
        assert!(found.ends_with(said), "{found}");
    }
}

#[test]
fn one_course_rings_and_several_ring_and_each_reason_is_said() {
    let chords = "X:1\nT:Two\nM:4/4\nL:1/4\nK:D\n\"D\"D A d f|\"A\"A c e a|\"D\"d4|]\n";
    let found = remarks(chords, &["tab", "-", "--drones", "chord"]);
    assert!(
        found.contains(" ring along with ") && found.contains(" notes: a tone of the chord"),
        "{found}"
    );
    // No chord anywhere: the drones are those of the key, and here only one of them rings.
    let bare = "X:1\nT:Bare\nM:4/4\nL:1/2\nK:A\nA B|c B|]\n";
    for (tag, said) in [
        (
            "en",
            "E rings along with 4 of 4 notes: tonic or fifth, where there is no chord.",
        ),
        (
            "de",
            "E klingt bei 4 von 4 Noten mit: Grundton oder Quinte, wo kein Akkord steht.",
        ),
        (
            "es",
            "E suena con 4 de 4 notas: tónica o quinta, donde no hay acorde.",
        ),
    ] {
        let args = ["--language", tag, "tab", "-", "--drones", "chord"];
        let found = remarks(bare, &args);
        assert!(found.contains(said), "{found}");
    }
    let found = remarks(bare, &["tab", "-", "--drones", "plain"]);
    assert!(
        found.contains("E rings along: the tonic or the fifth of A."),
        "{found}"
    );
}

#[test]
fn a_tune_is_found_with_a_slip_in_each_of_its_words() {
    let page = run(["tab", "Milrace Rel"]).page();
    assert!(page.starts_with("Millrace Reel\n"), "{page}");
    let list = run(["list", "Milrace", "Rel"]).page();
    assert!(
        list.lines().count() == 1 && list.contains(" Millrace Reel "),
        "{list}"
    );
}

#[test]
fn two_fingers_stand_in_the_order_of_the_lines_above_them() {
    let args = ["tab", "millrace reel", "--double-stops"];
    let rows = run(args.into_iter().chain(["--json"])).json();
    let finger = |note: &serde_json::Value| note["finger"].as_u64().unwrap();
    let fingers = rows.as_array().unwrap().iter().map(|row| {
        let (melody, stop) = (finger(row), &row["stop"]);
        if stop.is_null() {
            melody.to_string()
        } else if stop["course"].as_u64() > row["course"].as_u64() {
            format!("{}/{melody}", finger(stop))
        } else {
            format!("{melody}/{}", finger(stop))
        }
    });
    let fingers: Vec<String> = fingers.collect();
    let page = run(args.into_iter().chain(["--fingers"])).page();
    // The row of fingers comes below that of the counts, and each starts where its pick does.
    let lines: Vec<&str> = page.lines().collect();
    let counts =
        |line: &str| line.trim_start().len() > 1 && line.starts_with("  ") && line.contains(" & ");
    let mut said = Vec::new();
    for (at, _) in lines.iter().enumerate().filter(|(_, line)| counts(line)) {
        let row = lines[at + 1];
        said.extend(row.split_whitespace().map(String::from));
        let picks = lines[at - 5];
        for (column, _) in row.match_indices(|c: char| c.is_ascii_digit()) {
            let starts = column == 0 || row.as_bytes()[column - 1] == b' ';
            let pick = picks.as_bytes().get(column);
            assert!(
                !starts || matches!(pick, Some(b'D' | b'U')),
                "{picks}\n{row}"
            );
        }
    }
    assert_eq!(said, fingers);
    assert!(said.iter().any(|one| one.contains('/')));
    assert!(
        page.ends_with("\nFingers 2/0: on the upper course and on the lower one; 0 is open.\n")
    );
}

#[test]
fn exercises_fit_the_page_in_every_language() {
    for tag in ["en", "de", "es"] {
        let page = run(["--language", tag, "tab", "millrace reel", "--exercises"]).page();
        let wide = page.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{tag}");
    }
}
