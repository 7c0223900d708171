//! The bars of a chart in boxes, four a line: chords at their beats, repeats, endings, metres and signs.

use std::collections::HashSet;

use fourcourse::chart::{Bar, Jump, Playing, Ticks, Tune};
use fourcourse::theory::{NoteName, Number, Symbol};

use super::header::whole_notes;
use super::page::{Look, columns, pad};

/// Bars of a line where the page is wide enough.
const A_LINE: usize = 4;
/// A box is at least and, where there is room, at most so wide inside, in columns.
const NARROW: usize = 6;
const ROOMY: usize = 12;
/// The longest name of a part that is printed in the margin.
const MARGIN: usize = 8;

/// A box.
struct Cell {
    /// Chords from beat to beat, and their numbers.
    slots: Vec<(String, String)>,
    /// What stands over it: ending, metre, signs.
    over: String,
    starts: bool,
    ends: bool,
    closes: bool,
}

impl Cell {
    /// One of the two rows, each slot as wide as the wider of chord and number.
    fn row(&self, numbers: bool, both: bool) -> String {
        let slots = self.slots.iter().map(|(chord, number)| {
            let width = if both { columns(number) } else { 0 };
            let text = if numbers { number } else { chord };
            pad(text, width.max(columns(chord)))
        });
        slots.collect::<Vec<_>>().join(" ").trim_end().to_owned()
    }

    fn width(&self, both: bool) -> usize {
        let chords = columns(&self.row(false, both));
        let numbers = if both {
            columns(&self.row(true, both))
        } else {
            0
        };
        chords.max(numbers).max(columns(&self.over) + 1)
    }
}

/// The chart of a tune, part by part. `numbers` counts chords from the tonic of their key, below the letters.
pub(super) fn grid(tune: &Tune, playing: &Playing, numbers: bool, look: Look) -> String {
    let parts = cells(tune, playing, look);
    let all = parts.iter().flat_map(|(_, cells)| cells);
    let widest = all.map(|cell| cell.width(numbers)).max().unwrap_or(0);
    let margin = parts
        .iter()
        .map(|(label, _)| columns(label))
        .max()
        .unwrap_or(0)
        .min(MARGIN)
        + 1;
    let room = |bars: usize| (look.width.saturating_sub(margin + 1) / bars).saturating_sub(3);
    let bars = [A_LINE, 2].into_iter().find(|&bars| room(bars) >= widest);
    let bars = bars.unwrap_or(1);
    let width = widest.clamp(NARROW, room(bars).max(NARROW));
    let width = width.max(room(bars).min(ROOMY));
    let drawing = Drawing {
        margin,
        width,
        numbers,
        look,
    };
    let parts = parts.iter().map(|(label, cells)| {
        let lines: Vec<_> = cells.chunks(bars).collect();
        drawing.part(label, &lines)
    });
    parts.collect::<Vec<_>>().join("\n")
}

/// The boxes of each part with its name. Pickups without a chord have none.
fn cells(tune: &Tune, playing: &Playing, look: Look) -> Vec<(String, Vec<Cell>)> {
    let played = playing.bars.iter().filter(|bar| bar.pickup);
    let pickups: HashSet<usize> = played.map(|bar| bar.written).collect();
    let (metres, keys) = (tune.metres(), tune.keys());
    let parts = tune.parts_or_derived();
    let mut rows: Vec<(String, Vec<Cell>)> = vec![(String::new(), Vec::new())];
    let mut next = parts.iter().peekable();
    let mut held = None;
    let mut opens = false;
    for (i, bar) in tune.bars.iter().enumerate() {
        while let Some(part) = next.next_if(|part| part.first_bar <= i) {
            rows.push((part.label.chars().take(MARGIN).collect(), Vec::new()));
        }
        // A sign on a pickup belongs to the box after it.
        opens |= bar.repeat_start;
        let silent = bar.length <= Ticks::ZERO && bar.chords.is_empty();
        if silent || (pickups.contains(&i) && bar.chords.is_empty()) {
            continue;
        }
        let mut over = over(tune, i, look);
        let whole = bar.length == metres[i].bar() || metres[i].bar() == Ticks::ZERO;
        let last = bar.repeat_end > 0 || bar.section_end || i + 1 == tune.bars.len();
        let short_end = last && bar.length < metres[i].bar();
        let first = i == 0 || pickups.contains(&i);
        if !whole && !short_end && !first {
            over.push(whole_notes(bar.length));
        }
        let cell = Cell {
            slots: slots(bar, metres[i].beats(), &mut held, keys[i].tonic, look),
            over: over.join(" "),
            starts: std::mem::take(&mut opens),
            ends: bar.repeat_end > 0,
            closes: bar.section_end || bar.repeat_end > 0 || i + 1 == tune.bars.len(),
        };
        if let Some((_, cells)) = rows.last_mut() {
            cells.push(cell);
        }
    }
    rows.retain(|(_, cells)| !cells.is_empty());
    rows
}

/// What stands over a box.
pub(super) fn over(tune: &Tune, index: usize, look: Look) -> Vec<String> {
    let bar = &tune.bars[index];
    let mut over = Vec::new();
    if !bar.ending.is_empty() {
        let passes: Vec<_> = bar.ending.iter().map(u8::to_string).collect();
        over.push(passes.join(",") + ".");
    }
    if let Some(metre) = bar.metre.filter(|_| index > 0) {
        over.push(metre.to_string());
    }
    if let Some(key) = bar.key.filter(|_| index > 0) {
        let minor = if key.mode.is_minor() { "m" } else { "" };
        over.push(format!("={}{minor}", key.tonic.in_style(look.notes())));
    }
    if bar.segno {
        over.push("Segno".to_owned());
    }
    if bar.coda {
        over.push("Coda".to_owned());
    }
    if bar.repeat_end > 2 {
        over.push(format!("{}{}", bar.repeat_end, look.sign("×", "x")));
    }
    if bar.fine {
        over.push("Fine".to_owned());
    }
    if let Some(jump) = bar.jump {
        let (name, to_coda) = match jump {
            Jump::DaCapo { to_coda } => ("D.C.", to_coda),
            Jump::DalSegno { to_coda } => ("D.S.", to_coda),
        };
        over.push(format!("{name}{}", if to_coda { " al Coda" } else { "" }));
    }
    over
}

/// The chords of a bar at their beats. A bar that one chord fills shows just that; in others a dot is a beat on which
/// the chord stays.
fn slots(
    bar: &Bar,
    beats: Vec<Ticks>,
    held: &mut Option<Symbol>,
    tonic: NoteName,
    look: Look,
) -> Vec<(String, String)> {
    let name = |symbol: Symbol| {
        let number = match symbol {
            Symbol::Chord(chord) => Number::of(chord, tonic).in_style(look.notes().accidentals),
            Symbol::NoChord => String::new(),
        };
        (symbol.in_style(look.notes()), number)
    };
    let first = bar.chords.first().map(|chord| chord.at);
    let mut slots = Vec::new();
    if first != Some(Ticks::ZERO) {
        slots.push((Ticks::ZERO, held.map(name)));
    }
    slots.extend(bar.chords.iter().map(|at| (at.at, Some(name(at.symbol)))));
    *held = bar.chords.last().map(|at| at.symbol).or(*held);
    let nothing = || (String::new(), String::new());
    if let [(_, only)] = slots.as_slice() {
        return vec![only.clone().unwrap_or_else(nothing)];
    }
    let mut at = Ticks::ZERO;
    for beat in beats {
        if at < bar.length && slots.iter().all(|&(taken, _)| taken != at) {
            slots.push((at, None));
        }
        at += beat;
    }
    slots.sort_by_key(|&(at, _)| at);
    let dot = || (look.sign("·", ".").to_owned(), String::new());
    let slots = slots.into_iter().map(|(_, name)| name.unwrap_or_else(dot));
    slots.collect()
}

/// Lines and boxes.
struct Drawing {
    margin: usize,
    width: usize,
    numbers: bool,
    look: Look,
}

impl Drawing {
    fn part(&self, label: &str, lines: &[&[Cell]]) -> String {
        let mut page = String::new();
        let mut above = 0;
        for (i, line) in lines.iter().enumerate() {
            page += &self.rule(above, line);
            let label = if i == 0 { label } else { "" };
            page += &self.row(label, line, false);
            if self.numbers {
                page += &self.row("", line, true);
            }
            above = line.len();
        }
        page + &self.rule(above, &[])
    }

    /// The line between the boxes above, so many of them, and those below, with what stands over these.
    fn rule(&self, above: usize, below: &[Cell]) -> String {
        let count = above.max(below.len());
        let mut line = " ".repeat(self.margin);
        for i in 0..=count {
            let (up, down) = (
                above > 0 && i <= above,
                !below.is_empty() && i <= below.len(),
            );
            line += self.corner(up, down, i > 0, i < count);
            if i < count {
                let over = below.get(i).map_or("", |cell| cell.over.as_str());
                let dash = self.look.sign("─", "-");
                line += over;
                line += &dash.repeat((self.width + 2).saturating_sub(columns(over)));
            }
        }
        line + "\n"
    }

    fn corner(&self, up: bool, down: bool, left: bool, right: bool) -> &'static str {
        if !self.look.typographic {
            return "+";
        }
        match (up, down, left, right) {
            (false, true, false, _) => "┌",
            (false, true, true, false) => "┐",
            (false, true, true, true) => "┬",
            (true, false, false, _) => "└",
            (true, false, true, false) => "┘",
            (true, false, true, true) => "┴",
            (true, true, false, _) => "├",
            (true, true, true, false) => "┤",
            (true, true, true, true) => "┼",
            (false, false, ..) => "─",
        }
    }

    fn row(&self, label: &str, line: &[Cell], numbers: bool) -> String {
        let mut row = pad(label, self.margin);
        let bar = |heavy: bool| match heavy {
            true => self.look.sign("║", "|"),
            false => self.look.sign("│", "|"),
        };
        let mut closed = false;
        for cell in line {
            row += bar(closed || cell.starts);
            let colon = |there: bool| if there && !numbers { ":" } else { " " };
            row += colon(cell.starts);
            row += &pad(&cell.row(numbers, self.numbers), self.width);
            row += colon(cell.ends);
            closed = cell.closes;
        }
        row += bar(closed);
        row + "\n"
    }
}
