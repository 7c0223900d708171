//! Worked examples, each named after what it promises.

mod arrange;
mod changes;
mod order;
mod passage;
mod safe;
mod strum;
mod tempo;
mod transpose;
mod worked;

use crate::theory::{Accidental, Chord, Key, Letter, Mode, NoteName, Quality, Symbol};

use super::{Bar, ChordAt, Jump, Metre, Part, Ticks, Tune};

pub(super) fn chord(text: &str) -> Symbol {
    let (root, rest) = NoteName::split(text).unwrap();
    let quality = match rest {
        "" => Quality::MAJOR,
        "m" => Quality::MINOR,
        "7" => Quality::SEVENTH,
        _ => panic!("{text}"),
    };
    Symbol::Chord(Chord::new(root, quality))
}

pub(super) fn empty(metre: Metre) -> Tune {
    let g = NoteName::new(Letter::G, Accidental::NATURAL);
    Tune::new(metre, Key::new(g, Mode::Major))
}

/// A tune of named bars in 4/4: a word is a bar (its name, and after `~` its length if not 1/1; after `=` its chords,
/// each with a beat after `@`); signs stand where they are written on paper.
pub(super) fn tune(text: &str) -> Tune {
    let mut tune = empty(Metre::COMMON);
    let mut next = Bar::default();
    for word in text.split_whitespace() {
        let last = tune.bars.len().wrapping_sub(1);
        match word {
            "|" => {}
            "|:" => next.repeat_start = true,
            ":|" => tune.bars[last].repeat_end = 2,
            "::|" => tune.bars[last].repeat_end = 3,
            "::" => {
                tune.bars[last].repeat_end = 2;
                next.repeat_start = true;
            }
            "||" => tune.bars[last].section_end = true,
            "fine" => tune.bars[last].fine = true,
            "D.C." => tune.bars[last].jump = Some(Jump::DaCapo { to_coda: false }),
            "D.C.coda" => tune.bars[last].jump = Some(Jump::DaCapo { to_coda: true }),
            "D.S." => tune.bars[last].jump = Some(Jump::DalSegno { to_coda: false }),
            "D.S.coda" => tune.bars[last].jump = Some(Jump::DalSegno { to_coda: true }),
            "segno" => next.segno = true,
            "coda" => next.coda = true,
            _ if word.starts_with('[') => {
                next.ending = word[1..].split(',').map(|n| n.parse().unwrap()).collect();
            }
            _ if word.starts_with("P:") => tune.parts.push(Part {
                label: word[2..].to_owned(),
                first_bar: tune.bars.len(),
                strum: None,
            }),
            _ => {
                let (word, chords) = word.split_once('=').unwrap_or((word, ""));
                let (word, length) = word.split_once('~').unwrap_or((word, "1/1"));
                let (count, unit) = length.split_once('/').unwrap();
                next.length = Ticks::of(count.parse().unwrap(), unit.parse().unwrap());
                next.annotations = vec![super::Annotation {
                    at: Ticks::ZERO,
                    text: word.to_owned(),
                }];
                for item in chords.split(',').filter(|item| !item.is_empty()) {
                    let (symbol, beat) = item.split_once('@').unwrap_or((item, "1"));
                    next.chords.push(ChordAt {
                        at: Ticks::QUARTER * (beat.parse::<i64>().unwrap() - 1),
                        symbol: chord(symbol),
                    });
                }
                tune.bars.push(std::mem::take(&mut next));
            }
        }
    }
    tune
}

/// The names of the bars as they are played.
pub(super) fn played(tune: &Tune) -> String {
    let bars = tune.playing().bars;
    let names = bars
        .iter()
        .map(|bar| tune.bars[bar.written].annotations[0].text.as_str());
    names.collect::<Vec<_>>().join(" ")
}

pub(super) fn formed(form: &str, text: &str) -> Tune {
    let mut tune = tune(text);
    tune.form = form.chars().map(String::from).collect();
    tune
}
