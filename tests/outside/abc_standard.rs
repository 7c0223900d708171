//! Snippets of ABC and what the standard (abc 2.1, C. Walshaw, December 2011) makes of them; see `fixtures/README.md`.
#![allow(clippy::unwrap_used)] // a fixture that is not as it should be fails the test

use fourcourse::chart::{Rhythm, Tune};
use fourcourse::formats::{abc, readout};
use serde_json::{Value, json};

const CASES: &str = include_str!("fixtures/abc-standard/cases.json");

/// Where we know better than the case, or the standard leaves the choice: the case, what, and why.
const OUR_SIDE: &[(&str, &str, &str)] = &[(
    "K:HP",
    "notes",
    "`HP` leaves the signature off the page; the pipes have no F and C but sharp ones, as in `Hp` (common practice)",
)];

fn found(book: &fourcourse::formats::Book, what: &str) -> Value {
    let Some(read) = book.tunes.first() else {
        return Value::Null;
    };
    let tune = &read.tune;
    match what {
        "notes" => {
            let mut notes = readout::notes(tune, false);
            notes.sort_by_key(|n| (n.at, n.midi));
            notes
                .iter()
                .map(|n| json!([readout::fraction(n.at), readout::fraction(n.length), n.midi]))
                .collect()
        }
        "played" => readout::notes(tune, true).iter().map(|n| n.midi).collect(),
        "chords" => {
            let listing = readout::Listing::written(tune);
            let out = readout::ReadOut::of(read, &listing, |_| String::new());
            let chords = serde_json::to_value(out).unwrap()["chords"].take();
            let chords = chords.as_array().unwrap().iter();
            chords
                .map(|chord| json!([chord["at"], chord["symbol"]]))
                .collect()
        }
        "key" => {
            json!({"tonic": tune.key.tonic.to_string(), "mode": tune.key.mode.id()})
        }
        "metre" => json!(format!("{}/{}", tune.metre.count, tune.metre.unit)),
        "tempo" => tune.tempo.map_or(Value::Null, |tempo| {
            let bpm = f64::from(tempo.bpm);
            json!({"beat": readout::fraction(tempo.beat), "per_minute": bpm})
        }),
        "title" => json!(tune.title),
        "titles" => {
            let others = tune.other_titles.iter();
            std::iter::once(&tune.title)
                .chain(others)
                .map(|t| json!(t))
                .collect()
        }
        "composer" => json!(tune.composer),
        "rhythm" => json!(rhythm(tune)),
        "tunes" => book
            .tunes
            .iter()
            .map(|read| json!(read.tune.title))
            .collect(),
        "lyrics" => lyrics(tune),
        "words_after" => tune
            .verses
            .iter()
            .flat_map(|v| &v.lines)
            .map(|l| json!(l))
            .collect(),
        _ => panic!("the fixture asks for {what}"),
    }
}

fn rhythm(tune: &Tune) -> &str {
    match &tune.rhythm {
        Some(Rhythm::SlipJig) => "slip jig",
        other => panic!("{other:?}"),
    }
}

fn lyrics(tune: &Tune) -> Value {
    let mut verses: Vec<Vec<Value>> = Vec::new();
    let mut start = fourcourse::chart::Ticks::ZERO;
    for bar in &tune.bars {
        for note in &bar.notes {
            for (verse, syllable) in note.syllables.iter().enumerate() {
                verses.resize(verses.len().max(verse + 1), Vec::new());
                if let Some(syllable) = syllable.as_ref().filter(|s| !s.text.is_empty()) {
                    verses[verse].push(json!([readout::fraction(start + note.at), syllable.text]));
                }
            }
        }
        start += bar.length;
    }
    json!(verses)
}

/// Numbers as they are written may differ (50 and 50.0).
fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.as_f64() == b.as_f64(),
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len()
                && a.iter()
                    .all(|(key, a)| b.get(key).is_some_and(|b| same(a, b)))
        }
        _ => a == b,
    }
}

#[test]
fn snippets_of_abc_come_to_what_the_standard_says() {
    let cases: Vec<Value> = serde_json::from_str(CASES).unwrap();
    assert!(cases.len() > 200);
    let mut wrong = Vec::new();
    for case in &cases {
        let name = case["name"].as_str().unwrap();
        let book = abc::read(case["abc"].as_str().unwrap().as_bytes());
        for (what, expected) in case["expect"].as_object().unwrap() {
            let ours = OUR_SIDE.iter().any(|(n, w, _)| n == &name && w == what);
            if what == "problems_at_least" {
                let problems =
                    book.problems.len() + book.tunes.first().map_or(0, |t| t.problems.len());
                if (problems as u64) < expected.as_u64().unwrap() {
                    wrong.push(format!("{name}: {problems} problems told"));
                }
                continue;
            }
            let found = found(&book, what);
            if same(&found, expected) == ours {
                wrong.push(format!(
                    "{name} ({}): {what} is\n  {found} instead of\n  {expected}",
                    case["section"]
                ));
            }
        }
        let legal =
            case["legal"].as_bool().unwrap() && case["expect"].get("problems_at_least").is_none();
        if let Some(read) = book
            .tunes
            .first()
            .filter(|t| legal && !t.problems.is_empty())
        {
            wrong.push(format!("{name}: legal, but {:?}", read.problems));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} differ:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
