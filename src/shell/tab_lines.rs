//! The lines of a tablature: bars side by side, as many as the page is wide.

use super::page::{columns as width_of, pad};

/// Bars of a line, the first that fits.
const A_LINE: [usize; 3] = [4, 2, 1];

/// One movement of the hand.
#[derive(Default, Clone)]
pub(super) struct Column {
    pub(super) chord: String,
    pub(super) pick: String,
    /// What stands on each course, the first course first.
    pub(super) courses: Vec<String>,
    pub(super) finger: String,
    pub(super) count: String,
    pub(super) lyric: String,
    pub(super) width: usize,
}

/// A bar.
#[derive(Clone)]
pub(super) struct Drawn {
    /// As players count; 0 for a pickup.
    pub(super) number: u16,
    pub(super) columns: Vec<Column>,
    /// What stands over it: ending, metre, signs.
    pub(super) over: String,
    pub(super) pickup: bool,
    pub(super) starts: bool,
    pub(super) ends: bool,
    pub(super) closes: bool,
}

impl Drawn {
    fn width(&self) -> usize {
        1 + self
            .columns
            .iter()
            .map(|column| column.width)
            .sum::<usize>()
    }

    /// The bar line after it, before another bar or at the end of the line.
    fn line_before(&self, next: Option<&Self>) -> &'static str {
        let opens = next.is_some_and(|next| next.starts);
        match (self.ends, opens, self.closes) {
            (true, true, _) => ":||:",
            (true, false, _) => ":||",
            (false, true, _) => "||:",
            (false, false, true) => "||",
            (false, false, false) => "|",
        }
    }
}

/// The courses of an instrument as lines.
pub(super) struct Staff {
    /// Names of the courses, the first course first.
    names: Vec<String>,
    /// Whether there is a row of fingers.
    pub(super) fingers: bool,
    /// Width of the page.
    width: usize,
    margin: usize,
}

impl Staff {
    pub(super) fn new(names: Vec<String>, fingers: bool, width: usize) -> Self {
        let widest = names.iter().map(|name| width_of(name)).max();
        let margin = (widest.unwrap_or(1) + 1).max(3);
        Self {
            names,
            fingers,
            width,
            margin,
        }
    }

    /// The bars of a part, line below line.
    pub(super) fn systems(&self, bars: &[Drawn]) -> String {
        let fits = |lines: &Vec<Vec<Drawn>>| lines.iter().all(|line| self.fits(line));
        let found = A_LINE
            .into_iter()
            .map(|count| lines(bars, count))
            .find(fits);
        let lines = found.unwrap_or_else(|| self.broken(lines(bars, 1)));
        let systems: Vec<String> = lines.iter().map(|line| self.system(line)).collect();
        systems.join("\n")
    }

    fn fits(&self, line: &[Drawn]) -> bool {
        let bars = with_next(line).map(|(bar, next)| bar.width() + bar.line_before(next).len());
        self.margin + opening(line).len() + bars.sum::<usize>() <= self.width
    }

    /// Bars that are wider than the page, in pieces.
    fn broken(&self, lines: Vec<Vec<Drawn>>) -> Vec<Vec<Drawn>> {
        // The bar lines of a piece take six columns at most.
        let room = self.width.saturating_sub(self.margin + 6);
        let mut broken = Vec::new();
        for mut bar in lines.into_iter().flatten() {
            while bar.width() > room && bar.columns.len() > 1 {
                let mut used = 1;
                let fits = bar.columns.iter().take_while(|column| {
                    used += column.width;
                    used <= room
                });
                let count = fits.count().clamp(1, bar.columns.len() - 1);
                let rest = bar.columns.split_off(count);
                broken.push(vec![Drawn {
                    ends: false,
                    closes: false,
                    ..bar.clone()
                }]);
                // What is left has no number of its own.
                bar = Drawn {
                    number: 0,
                    columns: rest,
                    over: String::new(),
                    starts: false,
                    ..bar
                };
            }
            broken.push(vec![bar]);
        }
        broken
    }

    fn system(&self, line: &[Drawn]) -> String {
        let mut rows: Vec<String> = Vec::new();
        if line.iter().any(|bar| !bar.over.is_empty()) {
            rows.push(self.over(line));
        }
        let numbered = line
            .iter()
            .find(|bar| !bar.pickup)
            .map_or(0, |bar| bar.number);
        let number = if numbered > 1 {
            numbered.to_string()
        } else {
            String::new()
        };
        let chords = self.row(line, &number, |column| &column.chord);
        if !chords.is_empty() {
            rows.push(chords);
        }
        rows.push(self.row(line, "", |column| &column.pick));
        rows.extend(
            (0..self.names.len())
                .rev()
                .map(|course| self.course(line, course)),
        );
        rows.push(self.row(line, "", |column| &column.count));
        if self.fingers {
            rows.push(self.row(line, "", |column| &column.finger));
        }
        let lyrics = self.row(line, "", |column| &column.lyric);
        if !lyrics.is_empty() {
            rows.push(lyrics);
        }
        rows.join("\n") + "\n"
    }

    /// Endings, metres and signs over their bars.
    fn over(&self, line: &[Drawn]) -> String {
        let mut row = " ".repeat(self.margin + opening(line).len());
        for (bar, next) in with_next(line) {
            row += &pad(&bar.over, bar.width() + bar.line_before(next).len());
        }
        row.trim_end().to_owned()
    }

    /// A course with its frets.
    fn course(&self, line: &[Drawn], course: usize) -> String {
        // The dots of a repeat lie on both sides of the middle.
        let half = self.names.len() / 2;
        let above = if self.names.len().is_multiple_of(2) {
            half
        } else {
            half + 1
        };
        let dotted = course + 1 == half || course == above;
        let bar_line = |text: &str| match dotted {
            true => text.to_owned(),
            false => text.replace(':', "-"),
        };
        let mut row = pad(&self.names[course], self.margin) + &bar_line(opening(line));
        for (bar, next) in with_next(line) {
            row.push('-');
            for column in &bar.columns {
                let text = &column.courses[course];
                row += text;
                row += &"-".repeat(column.width.saturating_sub(width_of(text)));
            }
            row += &bar_line(bar.line_before(next));
        }
        row
    }

    /// A row of texts above or below the courses; a text may reach over the empty columns behind it.
    fn row(&self, line: &[Drawn], name: &str, cell: fn(&Column) -> &str) -> String {
        let mut row = pad(name, self.margin);
        let mut next_column = self.margin + opening(line).len();
        for (bar, next) in with_next(line) {
            next_column += 1;
            for column in &bar.columns {
                let text = cell(column);
                if !text.is_empty() {
                    row = pad(&row, next_column) + text;
                }
                next_column += column.width;
            }
            next_column += bar.line_before(next).len();
        }
        row.trim_end().to_owned()
    }
}

/// The bar line before the first bar.
fn opening(line: &[Drawn]) -> &'static str {
    match line.first().is_some_and(|bar| bar.starts) {
        true => "||:",
        false => "|",
    }
}

/// Each bar with the one after it in the line.
fn with_next(line: &[Drawn]) -> impl Iterator<Item = (&Drawn, Option<&Drawn>)> {
    line.iter()
        .enumerate()
        .map(|(i, bar)| (bar, line.get(i + 1)))
}

/// Bars in lines of so many full ones; a pickup joins the bar after it.
fn lines(bars: &[Drawn], a_line: usize) -> Vec<Vec<Drawn>> {
    let mut lines: Vec<Vec<Drawn>> = vec![vec![]];
    let mut full = 0;
    for bar in bars {
        if full == a_line {
            lines.push(vec![]);
            full = 0;
        }
        if let Some(line) = lines.last_mut() {
            line.push(bar.clone());
        }
        full += usize::from(!bar.pickup);
    }
    lines
}
