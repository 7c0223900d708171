//! What a line begins with: courses, clef, signature and metre; and where these change.

use crate::chart::Metre;
use crate::theory::Key;

use super::mark::{Ground, Rule, Tone, Word};
use super::measure::Measure;
use super::pen::{Pen, Rows, STAFF_SPACE, whole};
use super::pitch::{Clef, signature};
use super::{Paper, Piece, tab};

/// What the change of a key or metre takes inside a line.
pub(super) fn before(
    piece: Piece<'_>,
    paper: &Paper,
    bar: usize,
    (metre, key): (Metre, Key),
) -> f32 {
    let written = &piece.tune.bars[bar];
    let repeat = if written.repeat_start { 0.7 } else { 0.0 };
    let staff_space = STAFF_SPACE * paper.space;
    let signs = match written.key {
        Some(_) if paper.staff && bar > 0 => signature_width(key),
        _ => 0.0,
    };
    let figures = match written.metre {
        Some(_) if bar > 0 && metre.count > 0 => metre_space(paper) * 2.8,
        _ => 0.0,
    };
    (0.35 + repeat) * paper.space + signs * staff_space + figures
}

/// What a bar line takes behind the last event of a bar, with the dots of a repeat.
pub(super) fn behind(piece: Piece<'_>, paper: &Paper, bar: usize) -> f32 {
    let repeat = if piece.tune.bars[bar].repeat_end > 0 {
        0.45
    } else {
        0.0
    };
    (0.15 + repeat) * paper.space
}

fn signature_width(key: Key) -> f32 {
    let signs = u16::try_from(key.signature().unsigned_abs().min(7)).map_or(0.0, f32::from);
    if signs > 0.0 { signs + 0.7 } else { 0.0 }
}

/// A staff space of the figures of a metre: they fill the staff, or most of a tablature.
fn metre_space(paper: &Paper) -> f32 {
    if paper.staff {
        STAFF_SPACE * paper.space
    } else {
        0.62 * paper.space
    }
}

pub(super) fn head_width(paper: &Paper, key: Key, metre: Option<Metre>) -> f32 {
    let staff_space = STAFF_SPACE * paper.space;
    let clef = if paper.staff {
        (3.6 + signature_width(key)) * staff_space
    } else {
        0.0
    };
    let figures = match metre {
        Some(metre) if metre.count > 9 => metre_space(paper) * 5.1,
        Some(metre) if metre.count > 0 => metre_space(paper) * 3.3,
        _ => 0.0,
    };
    clef + figures
}

/// What a line begins with: names of the courses, lines, clef, signature and metre.
pub(super) fn heads(
    pen: &mut Pen<'_>,
    rows: &Rows,
    (key, clef): (Key, Clef),
    metre: Option<Metre>,
    (x0, width): (f32, f32),
) {
    let space = pen.paper.space;
    let courses = pen.piece.instrument.courses.len();
    let thin = whole(0.06 * space);
    for (index, course) in pen.piece.instrument.courses.iter().enumerate() {
        let y = tab::course_y(rows, courses, index, space);
        pen.rule(Rule {
            x: x0,
            y: y - thin / 2.0,
            width: width - x0,
            height: thin,
            tone: Tone::Faint,
        });
        pen.word(Word {
            x: 0.0,
            y,
            width: x0 - 0.3 * space,
            size: 0.8 * space,
            text: course.open.name.in_style(pen.paper.style),
            centred: true,
            bold: false,
            ground: Ground::None,
            tone: Tone::Quiet,
        });
    }
    let staff_space = STAFF_SPACE * space;
    let mut x = x0 + 0.4 * staff_space;
    if let Some(top) = rows.staff {
        for line in 0_u8..5 {
            let y = top + f32::from(line) * staff_space - thin / 2.0;
            pen.rule(Rule {
                x: x0,
                y,
                width: width - x0,
                height: thin,
                tone: Tone::Faint,
            });
        }
        // One line joins staff and tablature.
        pen.rule(Rule {
            x: x0,
            y: top,
            width: thin,
            height: rows.foot - top,
            tone: Tone::Quiet,
        });
        let line = i16::try_from(clef.line).map_or(0.0, f32::from) / 2.0;
        pen.sign(
            clef.sign,
            x,
            top + line * staff_space,
            staff_space,
            Tone::Ink,
        );
        x += 3.2 * staff_space;
        x = key_signs(pen, (key, clef), (top, staff_space), x);
    }
    if let Some(metre) = metre {
        metre_figures(pen, rows, metre, x + 0.3 * staff_space);
    }
}

fn key_signs(pen: &mut Pen<'_>, (key, clef): (Key, Clef), (top, space): (f32, f32), x: f32) -> f32 {
    let mut x = x;
    for (height, sharp) in signature(key, clef) {
        let sign = if sharp { '\u{e262}' } else { '\u{e260}' };
        let y = top + i16::try_from(height).map_or(0.0, f32::from) / 2.0 * space;
        pen.sign(sign, x, y, space, Tone::Ink);
        x += space * if sharp { 1.0 } else { 0.92 };
    }
    x
}

/// The figures of a metre on the staff, or over the lines of the tablature.
fn metre_figures(pen: &mut Pen<'_>, rows: &Rows, metre: Metre, x: f32) {
    if metre.count == 0 {
        return;
    }
    let space = metre_space(pen.paper);
    let middle = match rows.staff {
        Some(top) => top + 2.0 * space,
        None => (rows.tab + rows.foot) / 2.0,
    };
    let digits = |number: u8| -> Vec<u32> {
        number
            .to_string()
            .chars()
            .filter_map(|digit| digit.to_digit(10))
            .collect()
    };
    let wide = 1.75 * space;
    let widest = digits(metre.count).len().max(digits(metre.unit).len());
    let total = wide * u16::try_from(widest).map_or(1.0, f32::from);
    // Over the lines of a tablature they stand a little apart.
    let off = if rows.staff.is_some() { 1.0 } else { 1.12 } * space;
    for (number, y) in [(metre.count, middle - off), (metre.unit, middle + off)] {
        let digits = digits(number);
        let own = wide * u16::try_from(digits.len()).map_or(1.0, f32::from);
        for (place, digit) in digits.into_iter().enumerate() {
            let at = x + (total - own) / 2.0 + wide * u16::try_from(place).map_or(0.0, f32::from);
            if let Some(sign) = char::from_u32(0xe080 + digit) {
                pen.sign(sign, at, y, space, Tone::Ink);
            }
        }
    }
}

/// Another key or metre inside a line.
pub(super) fn changes(
    pen: &mut Pen<'_>,
    rows: &Rows,
    measure: &Measure,
    (metre, key, clef): (Metre, Key, Clef),
) {
    let bar = &pen.piece.tune.bars[measure.bar];
    let repeat = if bar.repeat_start { 0.7 } else { 0.0 };
    let staff_space = STAFF_SPACE * pen.paper.space;
    let mut x = measure.x + (0.25 + repeat) * pen.paper.space;
    if let (Some(_), Some(top)) = (bar.key, rows.staff) {
        x = key_signs(pen, (key, clef), (top, staff_space), x) + 0.4 * staff_space;
    }
    if bar.metre.is_some() {
        metre_figures(pen, rows, metre, x);
    }
}
