//! The order in which bars are played, as music21 expands repeats (`fixtures/order.tsv`).

#![allow(clippy::unwrap_used)] // a broken fixture may stop the test

use fourcourse::chart::{Annotation, Bar, Jump, Metre, Ticks, Tune};

fn tune(written: &str) -> Tune {
    let mut tune = Tune::new(Metre::COMMON, "C".parse().unwrap());
    let mut next = Bar::default();
    for word in written.split_whitespace() {
        let last = tune.bars.len().wrapping_sub(1);
        match word {
            "|:" => next.repeat_start = true,
            ":|" => tune.bars[last].repeat_end = 2,
            "::|" => tune.bars[last].repeat_end = 3,
            "||" => tune.bars[last].section_end = true,
            "segno" => next.segno = true,
            "coda" => next.coda = true,
            "fine" => tune.bars[last].fine = true,
            _ if word.starts_with("D.") => {
                let to_coda = word.ends_with("coda");
                tune.bars[last].jump = Some(match &word[..4] {
                    "D.C." => Jump::DaCapo { to_coda },
                    "D.S." => Jump::DalSegno { to_coda },
                    _ => panic!("{word}"),
                });
            }
            _ if word.starts_with('[') => {
                let passes = word[1..].split(',');
                next.ending = passes.map(|pass| pass.parse().unwrap()).collect();
            }
            _ => {
                next.length = Ticks::WHOLE;
                next.annotations.push(Annotation {
                    at: Ticks::ZERO,
                    text: word.to_owned(),
                });
                tune.bars.push(std::mem::take(&mut next));
            }
        }
    }
    tune
}

#[test]
fn repeats_endings_and_jumps_are_played_as_music21_plays_them() {
    let mut rows = 0;
    for row in include_str!("fixtures/order.tsv").lines().skip(1) {
        let (written, expected) = row.split_once('\t').unwrap();
        let tune = tune(written);
        let playing = tune.playing();
        let played = playing.bars.iter();
        let names = played.map(|bar| tune.bars[bar.written].annotations[0].text.as_str());
        assert_eq!(names.collect::<Vec<_>>().join(" "), expected, "{written}");
        rows += 1;
    }
    assert_eq!(rows, 22);
}
