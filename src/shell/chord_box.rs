//! Chord boxes in plain text: courses as lines from left to right, frets from top to bottom, fingers as numbers.

use fourcourse::desk::MissingNote;
use fourcourse::frets::{Barre, Capo, Instrument, Shape};
use fourcourse::theory::{Chord, NoteStyle};
use fourcourse::words::Words;

use super::page::{Look, columns, pad};

/// Frets that a box shows at least.
const ROWS: u8 = 4;

/// What stands over the boxes of a chord: its name and, with a capo, the chord whose shapes the hand makes.
pub(super) fn title(chord: Chord, capo: u8, style: NoteStyle, words: &Words) -> String {
    let name = chord.in_style(style);
    if capo == 0 {
        return name;
    }
    let played = chord.down(capo).in_style(style);
    format!("{name}  ({})", words.played_as(&played))
}

/// How many frets the boxes of some shapes show: all the same, so that they stand side by side.
pub(super) fn rows<'a>(shapes: impl IntoIterator<Item = &'a Shape>) -> u8 {
    let needed = shapes.into_iter().map(|shape| {
        let last = shape.frets.iter().flatten().max().copied().unwrap_or(0);
        (last + 1).saturating_sub(shape.base_fret)
    });
    needed.max().unwrap_or(0).max(ROWS)
}

/// A box of so many frets as lines: open and muted courses, nut or first fret, fingers, names of the courses.
pub(super) fn lines(
    shape: &Shape,
    rows: u8,
    instrument: &Instrument,
    capo: Capo,
    look: Look,
) -> Vec<String> {
    let names: Vec<_> = instrument
        .courses
        .iter()
        .map(|course| course.open.name.in_style(look.notes()))
        .collect();
    let step = names.iter().map(|name| columns(name)).max().unwrap_or(1) + 1;
    let base = shape.base_fret;

    // A line across the box, with what stands on the courses and what lies between them.
    let across = |cells: &[String], gap: &dyn Fn(usize) -> &'static str| {
        let mut line = String::new();
        for (i, cell) in cells.iter().enumerate() {
            line += cell;
            if i + 1 < cells.len() {
                line += &gap(i).repeat(step - columns(cell));
            }
        }
        line
    };
    let rule = |left: &str, middle: &str, right: &str, dash: &'static str| {
        let last = shape.frets.len().saturating_sub(1);
        let cells: Vec<_> = (0..shape.frets.len())
            .map(|i| match i {
                0 => left.to_owned(),
                i if i == last => right.to_owned(),
                _ => middle.to_owned(),
            })
            .collect();
        across(&cells, &|_| dash)
    };

    let marks: Vec<_> = shape
        .frets
        .iter()
        .map(|fret| match fret {
            None => "x".to_owned(),
            Some(0) => "o".to_owned(),
            Some(_) => " ".to_owned(),
        })
        .collect();
    let mut lines = vec![across(&marks, &|_| " ")];
    lines.push(match (base, look.typographic) {
        (1, true) => rule("╒", "╤", "╕", "═"),
        (1, false) => rule("=", "=", "=", "="),
        (_, true) => rule("┌", "┬", "┐", "─"),
        (_, false) => rule("+", "+", "+", "-"),
    });
    for fret in base..base.saturating_add(rows) {
        let cells: Vec<_> = (0..shape.frets.len())
            .map(|i| cell(shape, instrument, capo, i, fret, look))
            .collect();
        let flat = |i: usize| {
            let held = |barre: &Barre| barre.fret == fret && (barre.from..barre.to).contains(&i);
            match shape.barres.iter().any(held) {
                true => look.sign("─", "-"),
                false => " ",
            }
        };
        let mut line = across(&cells, &flat);
        if fret == base && base > 1 {
            line += &format!(" {base}");
        }
        lines.push(line);
        lines.push(
            match (fret + 1 == base.saturating_add(rows), look.typographic) {
                (true, true) => rule("└", "┴", "┘", "─"),
                (false, true) => rule("├", "┼", "┤", "─"),
                (_, false) => rule("+", "+", "+", "-"),
            },
        );
    }
    let names: Vec<_> = names.into_iter().map(|name| pad(&name, 1)).collect();
    lines.push(across(&names, &|_| " "));
    lines
}

/// One course at one fret.
fn cell(
    shape: &Shape,
    instrument: &Instrument,
    capo: Capo,
    course: usize,
    fret: u8,
    look: Look,
) -> String {
    if shape.frets[course] == Some(fret) {
        return match shape.fingers[course] {
            Some(finger) => finger.number().to_string(),
            None => look.sign("●", "*").to_owned(),
        };
    }
    // A short string has no frets before the one at which it begins.
    let begins = instrument.courses.get(course).map_or(0, |c| c.starts_at);
    if begins > 0 && fret.saturating_add(capo.fret) <= begins {
        return " ".to_owned();
    }
    // A finger that lies across it, stopped higher up itself.
    let crosses = |barre: &Barre| barre.fret == fret && (barre.from..barre.to).contains(&course);
    if shape.barres.iter().any(crosses) {
        return look.sign("┼", "+").to_owned();
    }
    look.sign("│", "|").to_owned()
}

/// What a shape leaves out, as a line for below its box.
pub(super) fn missing(shape: &Shape, words: &Words) -> Option<String> {
    let kinds = MissingNote::in_shape(shape);
    (!kinds.is_empty()).then(|| words.missing(&kinds))
}
