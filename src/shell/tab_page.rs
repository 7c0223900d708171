//! Tablature as plain text: a line a course, a column for each movement of the hand, so that the rhythm is seen.

use std::collections::HashMap;

use fourcourse::chart::{
    Arrangement, Bar, Count, Direction, Metre, PickStroke, TabNote, Ticks, Tune, count_at,
};
use fourcourse::frets::Instrument;

use super::page::{columns as width_of, pad, wrapped};
use super::{Shell, grid};

/// Bars of a line, the first that fits.
const A_LINE: [usize; 3] = [4, 2, 1];

/// One movement of the hand.
#[derive(Default, Clone)]
struct Column {
    chord: String,
    pick: String,
    /// What stands on each course, the first course first.
    courses: Vec<String>,
    finger: String,
    count: String,
    lyric: String,
    width: usize,
}

/// A bar.
#[derive(Clone)]
struct Drawn {
    written: usize,
    columns: Vec<Column>,
    over: String,
    pickup: bool,
    starts: bool,
    ends: bool,
    closes: bool,
}

impl Drawn {
    fn width(&self) -> usize {
        1 + self
            .columns
            .iter()
            .map(|column| column.width)
            .sum::<usize>()
    }
}

/// The numbers of written bars as players count them, each with its part: `A 3, B 1`.
pub(super) fn bar_numbers(tune: &Tune, written: &[usize]) -> String {
    let (playing, parts) = (tune.playing(), tune.parts_or_derived());
    let mut said: Vec<String> = Vec::new();
    for written in written {
        let Some(bar) = playing.bars.iter().find(|bar| bar.written == *written) else {
            continue;
        };
        let part = bar.part.and_then(|part| parts.get(part));
        let name = format!("{} {}", part.map_or("", |part| &part.label), bar.number);
        if said.last() != Some(&name) {
            said.push(name);
        }
    }
    said.join(", ")
}

/// The page of a tune.
pub(super) fn page(
    tune: &Tune,
    tab: &Arrangement,
    instrument: &Instrument,
    fingers: bool,
    shell: &Shell,
) -> String {
    let page = Page::new(tune, tab, instrument, fingers, shell);
    let parts = tune.parts_or_derived();
    let mut out = String::new();
    let mut starts: Vec<usize> = parts.iter().map(|part| part.first_bar).collect();
    if starts.first() != Some(&0) {
        starts.insert(0, 0);
    }
    for (i, &first) in starts.iter().enumerate() {
        let next = starts.get(i + 1).copied().unwrap_or(tune.bars.len());
        let bars: Vec<Drawn> = (first..next).filter_map(|bar| page.bar(bar)).collect();
        if bars.is_empty() {
            continue;
        }
        if !out.is_empty() {
            out.push('\n');
        }
        let part = parts.iter().find(|part| part.first_bar == first);
        if let Some(part) = part.filter(|_| parts.len() > 1) {
            let name = vec![("part", part.label.clone())];
            out += &(shell.words.say("shell-tab-part", &name) + "\n");
        }
        out += &page.systems(&bars);
    }
    out.push('\n');
    let legend = shell.words.get("shell-tab-legend");
    for line in wrapped(&legend, shell.look.width) {
        out += &(line + "\n");
    }
    if tab.notes.iter().any(|note| note.drone.drone.is_some()) {
        out += &(shell.words.get("shell-tab-drone") + "\n");
    }
    out
}

struct Page<'a> {
    tune: &'a Tune,
    shell: &'a Shell,
    instrument: &'a Instrument,
    fingers: bool,
    notes: HashMap<(usize, Ticks), &'a TabNote>,
    /// When the last note before each bar ends, from the start of the bar.
    sounds_until: Vec<Ticks>,
    picking: Vec<Vec<PickStroke>>,
    metres: Vec<Metre>,
    offsets: Vec<Ticks>,
    /// Number of each written bar as players count, and whether it is a pickup.
    numbers: HashMap<usize, (u16, bool)>,
    /// The narrowest column: its widest fret and a dash.
    narrow: usize,
    margin: usize,
}

impl<'a> Page<'a> {
    fn new(
        tune: &'a Tune,
        tab: &'a Arrangement,
        instrument: &'a Instrument,
        fingers: bool,
        shell: &'a Shell,
    ) -> Self {
        let mut starts = Vec::with_capacity(tune.bars.len());
        let mut start = Ticks::ZERO;
        for bar in &tune.bars {
            starts.push(start);
            start += bar.length;
        }
        let until = |bar: usize| {
            let after = tab.notes.partition_point(|note| note.note.bar < bar);
            let before = after.checked_sub(1).map(|note| &tab.notes[note].note);
            before.map_or(Ticks::ZERO, |note| note.end() - starts[bar])
        };
        let playing = tune.playing();
        let mut numbers = HashMap::new();
        for bar in &playing.bars {
            numbers
                .entry(bar.written)
                .or_insert((bar.number, bar.pickup));
        }
        let wide = |note: &TabNote| {
            let melody = note.place.map_or(0, |place| place.fret);
            melody.max(note.stop.map_or(0, |stop| stop.fret)) > 9
        };
        let style = shell.look.notes();
        let names = instrument.courses.iter();
        let name = names
            .map(|course| width_of(&course.open.name.in_style(style)))
            .max();
        Self {
            sounds_until: (0..tune.bars.len()).map(until).collect(),
            notes: tab
                .notes
                .iter()
                .map(|note| ((note.note.bar, note.note.at), note))
                .collect(),
            picking: tune.picking(),
            metres: tune.metres(),
            offsets: tune.offsets(),
            numbers,
            narrow: if tab.notes.iter().any(wide) { 3 } else { 2 },
            margin: (name.unwrap_or(1) + 1).max(3),
            tune,
            shell,
            instrument,
            fingers,
        }
    }

    /// A bar; `None` where there is nothing to it.
    fn bar(&self, index: usize) -> Option<Drawn> {
        let bar = &self.tune.bars[index];
        let strokes = &self.picking[index];
        if strokes.is_empty() {
            return None;
        }
        let mut until = self.sounds_until[index];
        let mut columns: Vec<Column> = Vec::with_capacity(strokes.len());
        for stroke in strokes {
            let note = stroke
                .note
                .and_then(|_| self.notes.get(&(index, stroke.at)));
            let tied = stroke.note.is_none() && bar.notes.iter().any(|note| note.at == stroke.at);
            let rest = stroke.note.is_none() && until <= stroke.at;
            let pick = match (stroke.direction, stroke.note) {
                (Direction::Down, Some(_)) => "D",
                (Direction::Up, Some(_)) => "U",
                (Direction::Down, None) if tied || rest => "d",
                (Direction::Up, None) if tied || rest => "u",
                _ => "",
            };
            let mut column = Column {
                pick: pick.to_owned(),
                count: self.count(index, stroke.at),
                courses: vec![String::new(); self.instrument.courses.len()],
                ..Column::default()
            };
            if let Some(note) = note {
                until = stroke.at + note.note.length;
                self.set(&mut column, note);
            }
            column.lyric = lyric(bar, stroke.at);
            columns.push(column);
        }
        for chord in &bar.chords {
            let after = strokes.partition_point(|stroke| stroke.at <= chord.at);
            if let Some(column) = columns.get_mut(after.saturating_sub(1)) {
                column.chord = chord.symbol.in_style(self.shell.look.notes());
            }
        }
        self.space(&mut columns);
        let over = grid::over(self.tune, index, self.shell.look).join(" ");
        let (_, pickup) = self.numbers.get(&index).copied().unwrap_or((0, false));
        Some(Drawn {
            written: index,
            columns,
            over,
            pickup,
            starts: bar.repeat_start,
            ends: bar.repeat_end > 0,
            closes: bar.section_end || bar.repeat_end > 0 || index + 1 == self.tune.bars.len(),
        })
    }

    /// Writes a note into its column.
    fn set(&self, column: &mut Column, note: &TabNote) {
        let Some(place) = note.place else {
            let below = self
                .instrument
                .courses
                .iter()
                .all(|course| note.midi < course.open.midi());
            let course = if below { 0 } else { column.courses.len() - 1 };
            column.courses[course] = "?".to_owned();
            return;
        };
        let finger = |finger: Option<fourcourse::frets::Finger>| finger.map_or(0, |f| f.number());
        column.courses[place.course] = place.fret.to_string();
        column.finger = finger(note.finger()).to_string();
        if let Some(drone) = note.drone.drone {
            column.courses[drone.course] = "o".to_owned();
        }
        if let Some(stop) = note.stop {
            column.courses[stop.course] = stop.fret.to_string();
            let other = finger(stop.finger).to_string();
            column.finger = match stop.course < place.course {
                true => other + &column.finger,
                false => column.finger.clone() + &other,
            };
        }
    }

    fn count(&self, bar: usize, at: Ticks) -> String {
        match count_at(self.metres[bar], self.offsets[bar] + at) {
            Count::Number(number) => number.to_string(),
            Count::And => "&".to_owned(),
            Count::E => "e".to_owned(),
            Count::A => "a".to_owned(),
            Count::Nothing => "'".to_owned(),
        }
    }

    /// Makes columns as wide as what stands in them; chords and words may reach over columns that have none.
    fn space(&self, columns: &mut [Column]) {
        for column in &mut *columns {
            let courses = column.courses.iter().map(|text| width_of(text));
            let widest = courses.max().unwrap_or(0).max(width_of(&column.count));
            let finger = if self.fingers {
                width_of(&column.finger)
            } else {
                0
            };
            column.width = (widest.max(finger) + 1).max(self.narrow);
        }
        let chord: fn(&Column) -> &str = |column| &column.chord;
        let lyric: fn(&Column) -> &str = |column| &column.lyric;
        for text in [chord, lyric] {
            let mut room = 0;
            for at in (0..columns.len()).rev() {
                room += columns[at].width;
                let wanted = width_of(text(&columns[at]));
                if wanted > 0 {
                    columns[at].width += (wanted + 1).saturating_sub(room);
                    room = 0;
                }
            }
        }
    }

    /// The bars of a part in lines.
    fn systems(&self, bars: &[Drawn]) -> String {
        let fits = |lines: &Vec<Vec<Drawn>>| {
            let mut widths = lines.iter().map(|line| self.width(line));
            widths.all(|width| width <= self.shell.look.width)
        };
        let found = A_LINE
            .into_iter()
            .map(|count| lines(bars, count))
            .find(fits);
        let lines = found.unwrap_or_else(|| self.broken(lines(bars, 1)));
        let systems: Vec<String> = lines.iter().map(|line| self.system(line)).collect();
        systems.join("\n")
    }

    fn width(&self, line: &[Drawn]) -> usize {
        // Bar lines take up to four columns, one of them before the first bar.
        let bars: usize = line
            .iter()
            .map(|bar| bar.width() + self.line_after(bar, false).len())
            .sum();
        let first = if line.first().is_some_and(|bar| bar.starts) {
            3
        } else {
            1
        };
        self.margin + first + bars
    }

    /// Bars that are wider than the page, in pieces.
    fn broken(&self, lines: Vec<Vec<Drawn>>) -> Vec<Vec<Drawn>> {
        let room = self.shell.look.width.saturating_sub(self.margin + 6);
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
                let piece = Drawn {
                    ends: false,
                    closes: false,
                    ..bar.clone()
                };
                broken.push(vec![piece]);
                bar = Drawn {
                    columns: rest,
                    over: String::new(),
                    starts: false,
                    pickup: true,
                    ..bar
                };
            }
            broken.push(vec![bar]);
        }
        broken
    }

    /// The bar line after a bar; `opens` says that a repeat begins behind it.
    fn line_after(&self, bar: &Drawn, opens: bool) -> &'static str {
        match (bar.ends, opens, bar.closes) {
            (true, true, _) => ":||:",
            (true, false, _) => ":||",
            (false, true, _) => "||:",
            (false, false, true) => "||",
            (false, false, false) => "|",
        }
    }

    fn system(&self, line: &[Drawn]) -> String {
        let mut rows: Vec<String> = Vec::new();
        let courses = self.instrument.courses.len();
        let first = if line.first().is_some_and(|bar| bar.starts) {
            "||:"
        } else {
            "|"
        };
        let blank = |text: &str| " ".repeat(text.len());
        let row = |name: String, cell: &dyn Fn(&Column) -> String| {
            let mut row = pad(&name, self.margin) + &blank(first);
            for (i, bar) in line.iter().enumerate() {
                let mut cells = Over::default();
                cells.at(1);
                for column in &bar.columns {
                    cells.put(&cell(column), column.width);
                }
                row += &cells.text;
                row += &blank(self.line_after(bar, line.get(i + 1).is_some_and(|bar| bar.starts)));
            }
            row.trim_end().to_owned()
        };
        let over = line.iter().any(|bar| !bar.over.is_empty());
        if over {
            let mut row = " ".repeat(self.margin + first.len());
            for (i, bar) in line.iter().enumerate() {
                let after = self.line_after(bar, line.get(i + 1).is_some_and(|bar| bar.starts));
                row += &pad(&bar.over, bar.width() + after.len());
            }
            rows.push(row.trim_end().to_owned());
        }
        let number = line
            .iter()
            .find(|bar| !bar.pickup)
            .and_then(|bar| self.numbers.get(&bar.written));
        let number = number
            .filter(|(number, _)| *number > 1)
            .map_or(String::new(), |n| n.0.to_string());
        let chords = row(number, &|column| column.chord.clone());
        if !chords.is_empty() {
            rows.push(chords);
        }
        rows.push(row(String::new(), &|column| column.pick.clone()));
        let middle = [courses.div_ceil(2), courses / 2];
        for course in (0..courses).rev() {
            let name = self.instrument.courses[course]
                .open
                .name
                .in_style(self.shell.look.notes());
            let colon = middle.contains(&course) || courses == 1;
            let bar_line = |text: &str| {
                if colon {
                    text.to_owned()
                } else {
                    text.replace(':', "-")
                }
            };
            let mut row = pad(&name, self.margin) + &bar_line(first);
            for (i, bar) in line.iter().enumerate() {
                row.push('-');
                for column in &bar.columns {
                    let text = &column.courses[course];
                    row += text;
                    row += &"-".repeat(column.width.saturating_sub(width_of(text)));
                }
                let opens = line.get(i + 1).is_some_and(|bar| bar.starts);
                row += &bar_line(self.line_after(bar, opens));
            }
            rows.push(row);
        }
        rows.push(row(String::new(), &|column| column.count.clone()));
        if self.fingers {
            rows.push(row(String::new(), &|column| column.finger.clone()));
        }
        let lyrics = row(String::new(), &|column| column.lyric.clone());
        if !lyrics.is_empty() {
            rows.push(lyrics);
        }
        rows.join("\n") + "\n"
    }
}

/// A row in which a text may reach over the empty columns behind it.
#[derive(Default)]
struct Over {
    text: String,
    /// Where the next column begins.
    next: usize,
}

impl Over {
    fn at(&mut self, column: usize) {
        self.next += column;
        let missing = self.next.saturating_sub(width_of(&self.text));
        self.text += &" ".repeat(missing);
    }

    fn put(&mut self, text: &str, width: usize) {
        let start = self.next;
        if !text.is_empty() {
            self.text += &" ".repeat(start.saturating_sub(width_of(&self.text)));
            self.text += text;
        }
        self.next = start;
        self.at(width);
    }
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

/// The syllable of the first verse at a moment.
fn lyric(bar: &Bar, at: Ticks) -> String {
    let mut notes = bar.notes.iter().filter(|note| note.at == at);
    let syllable = notes
        .next()
        .and_then(|note| note.syllables.first()?.as_ref());
    syllable.map_or_else(String::new, |syllable| {
        format!(
            "{}{}",
            syllable.text,
            if syllable.joined { "-" } else { "" }
        )
    })
}
