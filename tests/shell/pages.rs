//! Pages for the eye, as they look.

use super::{finish, program, run, run_on};

/// A crooked tune with a bit of everything that a chart can show.
const CROOKED: &str = r#"X:1
T:Three Wheels on the Cart
T:The Cart
C:Hob Tallis
R:march
M:4/4
L:1/4
Q:1/4=100
K:D
P:A
D | "D"d2 "A7/C#"c2 | "Bm"B4 | "G"G2 "Em7"E "F#7"F | "G"B2 "A7"A2 |
"D"dA FA | [M:5/4] "G"B2 B "A"A2 | [M:4/4] z4 |1 "D"D3 D :|2 "D"D4 ||
P:B
[K:G] |: "G"G4 | "C"c3 "D"d | "G"B2 "NC"G2 | "D7"A3 F "G"G :|
P:C
!segno! "Em"e4 | "Am"a4 |: "G"g2 "C"e2 | "D"d4 :|3 "G"G4 !D.S.! |]
"#;

fn typographic(args: &[&str]) -> String {
    let folder = tempfile::tempdir().unwrap();
    finish(program(folder.path()).env("LANG", "en_GB.UTF-8").args(args)).page()
}

#[test]
fn a_chart_fits_on_a_page() {
    insta::assert_snapshot!(typographic(&["chart", "ferryman"]));
}

#[test]
fn a_chart_in_another_key_with_numbers_in_plain_signs() {
    insta::assert_snapshot!(run(["chart", "kettle before", "--key", "Bb", "--numbers"]).page());
}

#[test]
fn a_chart_behind_a_capo_says_what_the_hand_plays() {
    let args = [
        "chart",
        "miller counts",
        "--instrument",
        "guitar",
        "--capo",
        "2",
    ];
    insta::assert_snapshot!(typographic(&args));
}

#[test]
fn a_crooked_chart_keeps_its_endings_metres_keys_and_signs() {
    insta::assert_snapshot!(run_on(CROOKED, &["chart", "-", "--numbers"]).page());
}

#[test]
fn shapes_are_drawn_as_boxes() {
    insta::assert_snapshot!(typographic(&["shapes", "F"]));
    insta::assert_snapshot!(run(["shapes", "C", "--instrument", "banjo", "--most", "2"]).page());
    insta::assert_snapshot!(run(["shapes", "A", "--chops", "--capo", "2"]).page());
}

#[test]
fn ascii_is_plain_in_any_locale() {
    let folder = tempfile::tempdir().unwrap();
    let mut command = program(folder.path());
    command.env("LC_ALL", "de_DE.UTF-8");
    command.args([
        "--ascii",
        "--language",
        "en",
        "chart",
        "kettle before",
        "--key",
        "Bb",
    ]);
    assert!(finish(&mut command).page().is_ascii());
}

#[test]
fn every_shipped_tune_fits_the_page_and_shows_each_of_its_chords() {
    for (name, tune) in fourcourse::store::shipped::tunes() {
        let path = format!("{}/songbook/{name}", env!("CARGO_MANIFEST_DIR"));
        let chart = run(["chart", &path]).page();
        let wide = chart.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{name}");
        let grid = chart.split("+--").skip(1).collect::<String>();
        let shown: Vec<_> = grid
            .split(|c: char| c.is_whitespace() || c == '|' || c == ':')
            .collect();
        for at in tune.bars.iter().flat_map(|bar| &bar.chords) {
            let symbol = at.symbol.to_string();
            assert!(
                shown.contains(&symbol.as_str()),
                "{name}: {symbol}\n{chart}"
            );
        }
    }
}
