//! Words as outlines that are turned half round, for those who sit opposite: not every renderer turns text.

use std::fmt::Write;

use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, MetadataProvider};

use super::{fonts, made};

/// The font size, in units of the outline.
const SIZE: f32 = 100.0;
/// Room above and below the base line for signs and for what hangs, in the same units.
const ABOVE: f32 = 88.0;
const BELOW: f32 = 20.0;

/// Collects what a glyph draws, each point turned half round.
struct Turned {
    commands: String,
    /// Where the glyph begins, from the left of the words.
    start: f32,
    /// How wide all of the words are.
    wide: f32,
}

impl Turned {
    fn point(&self, x: f32, y: f32) -> (f32, f32) {
        // The field's y grows downwards, the font's upwards: turning half round, it stays.
        (self.wide - self.start - x, BELOW + y)
    }

    fn draw(&mut self, sign: char, points: &[(f32, f32)]) {
        self.commands.push(sign);
        for &(x, y) in points {
            let (x, y) = self.point(x, y);
            // Writing into a text does not fail.
            let _ = write!(self.commands, "{x:.1} {y:.1} ");
        }
    }
}

impl OutlinePen for Turned {
    fn move_to(&mut self, x: f32, y: f32) {
        self.draw('M', &[(x, y)]);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.draw('L', &[(x, y)]);
    }

    fn quad_to(&mut self, cx: f32, cy: f32, x: f32, y: f32) {
        self.draw('Q', &[(cx, cy), (x, y)]);
    }

    fn curve_to(&mut self, ax: f32, ay: f32, bx: f32, by: f32, x: f32, y: f32) {
        self.draw('C', &[(ax, ay), (bx, by), (x, y)]);
    }

    fn close(&mut self) {
        self.commands.push('Z');
    }
}

/// The outline of words in the app's bold font; nothing of what the font lacks.
pub(super) fn outline(words: &str) -> made::Outline {
    let Ok(font) = FontRef::new(fonts::BOLD) else {
        return made::Outline::default();
    };
    let size = Size::new(SIZE);
    let (charmap, glyphs) = (font.charmap(), font.outline_glyphs());
    let metrics = font.glyph_metrics(size, LocationRef::default());
    let line: Vec<_> = { words.chars() }
        .filter_map(|letter| charmap.map(letter))
        .map(|glyph| (glyph, metrics.advance_width(glyph).unwrap_or(0.0)))
        .collect();
    let mut pen = Turned {
        commands: String::new(),
        start: 0.0,
        wide: line.iter().map(|(_, wide)| wide).sum(),
    };
    for (glyph, wide) in line {
        if let Some(outline) = glyphs.get(glyph) {
            let settings = DrawSettings::unhinted(size, LocationRef::default());
            // A glyph that cannot be drawn leaves its room.
            let _ = outline.draw(settings, &mut pen);
        }
        pen.start += wide;
    }
    made::Outline {
        commands: pen.commands.into(),
        wide: pen.wide,
        tall: ABOVE + BELOW,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All coordinates of an outline.
    fn points(outline: &made::Outline) -> Vec<(f32, f32)> {
        let plain: String = { outline.commands.chars() }
            .map(|sign| {
                if sign.is_ascii_alphabetic() {
                    ' '
                } else {
                    sign
                }
            })
            .collect();
        let numbers: Vec<f32> = { plain.split_whitespace() }
            .map(|number| number.parse().unwrap())
            .collect();
        numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
    }

    #[test]
    fn a_letter_stands_on_its_head_inside_its_field() {
        let l = outline("L");
        let points = points(&l);
        assert!(
            points
                .iter()
                .all(|&(x, y)| (0.0..=l.wide).contains(&x) && (0.0..=l.tall).contains(&y))
        );
        // The foot of an L, on its head, lies at the top and reaches to the left.
        let top = points
            .iter()
            .map(|point| point.1)
            .fold(f32::INFINITY, f32::min);
        let at_top = points.iter().filter(|point| point.1 < top + 1.0);
        let left = points
            .iter()
            .map(|point| point.0)
            .fold(f32::INFINITY, f32::min);
        assert!(at_top.map(|point| point.0).any(|x| x < left + 1.0));
    }

    #[test]
    fn flats_and_sharps_are_among_the_letters() {
        for sign in ["♭", "♯", "ü", "ñ", "7"] {
            assert!(!outline(sign).commands.is_empty(), "{sign}");
        }
        assert!(outline("F♯m").wide > outline("F").wide);
        assert!(outline("").commands.is_empty());
    }
}
