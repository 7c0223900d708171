//! How pages look: the signs that the terminal has, and its width.

use std::env;

use fourcourse::theory::{Accidentals, NoteStyle};

/// Width of a page where no terminal says one, in columns.
const USUAL_WIDTH: usize = 80;
/// Wider lines are hard to follow, narrower ones hold no bar.
const WIDTHS: std::ops::RangeInclusive<usize> = 32..=120;

/// The signs and the width of a page.
#[derive(Debug, Clone, Copy)]
pub(super) struct Look {
    /// Lines, flats and sharps are drawn with Unicode signs.
    pub(super) typographic: bool,
    /// Columns.
    pub(super) width: usize,
}

impl Look {
    /// What suits the terminal: typographic signs where the locale is UTF-8, unless plain ones are asked for.
    pub(super) fn of_terminal(ascii: bool) -> Self {
        let locale = ["LC_ALL", "LC_CTYPE", "LANG"]
            .into_iter()
            .find_map(|name| env::var(name).ok().filter(|value| !value.is_empty()))
            .unwrap_or_default()
            .to_ascii_lowercase();
        let utf8 = locale.ends_with("utf-8") || locale.ends_with("utf8");
        let width = terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
        Self {
            typographic: utf8 && !ascii,
            width: width
                .unwrap_or(USUAL_WIDTH)
                .clamp(*WIDTHS.start(), *WIDTHS.end()),
        }
    }

    /// How notes and chords are printed.
    pub(super) fn notes(self) -> NoteStyle {
        NoteStyle {
            accidentals: if self.typographic {
                Accidentals::Typographic
            } else {
                Accidentals::Ascii
            },
            ..NoteStyle::default()
        }
    }

    /// The typographic sign, or the plain one.
    pub(super) fn sign(self, typographic: &'static str, plain: &'static str) -> &'static str {
        if self.typographic { typographic } else { plain }
    }
}

/// Columns that a text takes. Everything that is laid out is letters and signs of one column.
pub(super) fn columns(text: &str) -> usize {
    text.chars().count()
}

/// A text filled up with spaces to some columns.
pub(super) fn pad(text: &str, width: usize) -> String {
    let missing = width.saturating_sub(columns(text));
    format!("{text}{}", " ".repeat(missing))
}

/// A sentence in lines of a width, broken between words.
pub(super) fn wrapped(text: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.is_empty() => line.push_str(word),
            Some(line) if columns(line) + 1 + columns(word) <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Rows of text side by side with a gap, and as many of them in a row as the page is wide.
pub(super) fn side_by_side(blocks: &[Vec<String>], gap: usize, width: usize) -> String {
    let mut page = String::new();
    let mut rest = blocks;
    while !rest.is_empty() {
        let mut taken = 0;
        let mut used = 0;
        for block in rest {
            let wide = block_width(block) + if taken > 0 { gap } else { 0 };
            if taken > 0 && used + wide > width {
                break;
            }
            used += wide;
            taken += 1;
        }
        let (row, later) = rest.split_at(taken);
        let lines = row.iter().map(Vec::len).max().unwrap_or(0);
        for i in 0..lines {
            let cells = row.iter().map(|block| {
                let line = block.get(i).map_or("", String::as_str);
                pad(line, block_width(block))
            });
            let line = cells.collect::<Vec<_>>().join(&" ".repeat(gap));
            page += line.trim_end();
            page.push('\n');
        }
        if !later.is_empty() {
            page.push('\n');
        }
        rest = later;
    }
    page
}

fn block_width(block: &[String]) -> usize {
    block.iter().map(|line| columns(line)).max().unwrap_or(0)
}

/// A table with columns as wide as their widest cell, the last one ragged.
pub(super) fn table(rows: &[Vec<String>]) -> String {
    let count = rows.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..count)
        .map(|i| {
            let cells = rows.iter().filter_map(|row| row.get(i));
            cells.map(|cell| columns(cell)).max().unwrap_or(0)
        })
        .collect();
    let mut page = String::new();
    for row in rows {
        let cells = row.iter().zip(&widths);
        let line: Vec<_> = cells.map(|(cell, &width)| pad(cell, width)).collect();
        page += line.join("  ").trim_end();
        page.push('\n');
    }
    page
}
