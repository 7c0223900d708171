//! Bar lines, repeats, endings, and the signs of the way.

use crate::chart::Jump;

use super::mark::{Ground, Rule, Tone, Word, ems};
use super::measure::Measure;
use super::pen::{NAMES, Pen, Rows, STAFF_SPACE, whole};

/// The bar line after a bar, and what stands before it where a repeat begins.
pub(super) fn bar_lines(
    pen: &mut Pen<'_>,
    rows: &Rows,
    measure: &Measure,
    last: bool,
    first_of_line: bool,
) {
    let space = pen.paper.space;
    let bar = &pen.piece.tune.bars[measure.bar];
    let (thin, thick) = (whole(0.09 * space), whole(0.28 * space));
    let end = measure.x + measure.width;
    if first_of_line && !bar.repeat_start && rows.staff.is_none() {
        stroke(pen, rows, measure.x.min(NAMES * space), thin);
    }
    if bar.repeat_start {
        let x = if first_of_line {
            measure.x - 0.1 * space
        } else {
            measure.x
        };
        stroke(pen, rows, x, thick);
        stroke(pen, rows, x + thick + 0.16 * space, thin);
        dots(pen, rows, x + thick + 0.32 * space);
        if first_of_line && rows.staff.is_none() {
            stroke(pen, rows, NAMES * space, thin);
        }
    }
    if bar.repeat_end > 0 {
        stroke(pen, rows, end - thick, thick);
        stroke(pen, rows, end - thick - 0.16 * space - thin, thin);
        dots(pen, rows, end - thick - 0.52 * space);
    } else if last {
        stroke(pen, rows, end - thick, thick);
        stroke(pen, rows, end - thick - 0.16 * space - thin, thin);
    } else if bar.section_end {
        stroke(pen, rows, end - thin, thin);
        stroke(pen, rows, end - 0.24 * space - thin, thin);
    } else {
        stroke(pen, rows, end - thin, thin);
    }
}

fn stroke(pen: &mut Pen<'_>, rows: &Rows, x: f32, width: f32) {
    let x = x.round();
    pen.rule(Rule {
        x,
        y: rows.tab,
        width,
        height: rows.foot - rows.tab,
        tone: Tone::Quiet,
    });
    if let Some(top) = rows.staff {
        let height = 4.0 * STAFF_SPACE * pen.paper.space;
        pen.rule(Rule {
            x,
            y: top,
            width,
            height,
            tone: Tone::Quiet,
        });
    }
}

/// The dots of a repeat, on both sides of the middle.
fn dots(pen: &mut Pen<'_>, rows: &Rows, x: f32) {
    let space = pen.paper.space;
    let middle = (rows.tab + rows.foot) / 2.0;
    // In the spaces beside the middle line, or beside the middle space.
    let off = if pen.piece.instrument.courses.len() % 2 == 1 {
        0.5
    } else {
        1.0
    };
    for y in [middle - off * space, middle + off * space] {
        pen.sign('\u{e1e7}', x, y, 0.45 * space, Tone::Quiet);
    }
    if let Some(top) = rows.staff {
        let staff_space = STAFF_SPACE * space;
        for line in [1.5, 2.5] {
            pen.sign(
                '\u{e1e7}',
                x,
                top + line * staff_space,
                staff_space,
                Tone::Quiet,
            );
        }
    }
}

/// Endings and the signs of the way.
pub(super) fn over(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
    let Some(y) = rows.over else { return };
    let space = pen.paper.space;
    let bars = &pen.piece.tune.bars;
    let bar = &bars[measure.bar];
    let thin = whole(0.09 * space);
    let opens = |bar: usize| bars.get(bar).is_some_and(|bar| !bar.ending.is_empty());
    // The ending that this bar lies in: it goes on to a repeat, to a double bar, or to the next ending.
    let ends = |bar: usize| bars[bar].repeat_end > 0 || bars[bar].section_end || opens(bar + 1);
    let begun = (0..=measure.bar).rev().find(|&bar| opens(bar));
    let inside = begun.is_some_and(|begun| (begun..measure.bar).all(|bar| !ends(bar)));
    let line = y - 0.5 * space;
    if inside {
        let closes = ends(measure.bar) && bar.repeat_end > 0;
        let gap = if ends(measure.bar) { 0.25 } else { 0.0 };
        let width = measure.width - gap * space;
        pen.rule(Rule {
            x: measure.x,
            y: line,
            width,
            height: thin,
            tone: Tone::Quiet,
        });
        if closes {
            pen.rule(Rule {
                x: measure.x + width - thin,
                y: line,
                width: thin,
                height: 0.8 * space,
                tone: Tone::Quiet,
            });
        }
    }
    let mut x = measure.x + 0.3 * space;
    if opens(measure.bar) {
        pen.rule(Rule {
            x: measure.x,
            y: line,
            width: thin,
            height: 0.9 * space,
            tone: Tone::Quiet,
        });
        let passes: Vec<String> = bar.ending.iter().map(u8::to_string).collect();
        x = label(pen, format!("{}.", passes.join(", ")), x, y);
    }
    for (there, sign) in [(bar.segno, '\u{e047}'), (bar.coda, '\u{e048}')] {
        if there {
            pen.sign(sign, x, y + 0.5 * space, 0.32 * space, Tone::Ink);
            x += 1.3 * space;
        }
    }
    let way = match bar.jump {
        Some(Jump::DaCapo { to_coda: false }) => "D.C.",
        Some(Jump::DaCapo { to_coda: true }) => "D.C. al Coda",
        Some(Jump::DalSegno { to_coda: false }) => "D.S.",
        Some(Jump::DalSegno { to_coda: true }) => "D.S. al Coda",
        None if bar.fine => "Fine",
        None => return,
    };
    let width = (ems(way) + 0.4) * 0.85 * space;
    label(
        pen,
        way.to_owned(),
        (measure.x + measure.width - width).max(x),
        y,
    );
}

fn label(pen: &mut Pen<'_>, text: String, x: f32, y: f32) -> f32 {
    let size = 0.85 * pen.paper.space;
    let width = (ems(&text) + 0.4) * size;
    pen.word(Word {
        x,
        y,
        width,
        size,
        text,
        centred: false,
        bold: true,
        ground: Ground::None,
        tone: Tone::Quiet,
    });
    x + width
}
