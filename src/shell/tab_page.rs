//! Tablature as plain text: a line a course, a column for each movement of the hand, so that the rhythm is seen.

use std::collections::HashMap;

use fourcourse::chart::{
    Arrangement, Bar, Count, Direction, Metre, PickStroke, TabNote, Ticks, Tune, count_at,
};
use fourcourse::frets::Instrument;

use super::page::{columns as width_of, wrapped};
use super::tab_lines::{Column, Drawn, Staff};
use super::{Shell, grid};

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
            let name = vec![("part", part.label.as_str().into())];
            out += &(shell.words.say("shell-tab-part", &name) + "\n");
        }
        out += &page.staff.systems(&bars);
    }
    out.push('\n');
    let legend = shell.words.get("shell-tab-legend");
    for line in wrapped(&legend, shell.look.width) {
        out += &(line + "\n");
    }
    if tab.notes.iter().any(|note| note.drone.drone.is_some()) {
        out += &(shell.words.get("shell-tab-drone") + "\n");
    }
    if fingers && tab.notes.iter().any(|note| note.stop.is_some()) {
        out += &(shell.words.get("shell-tab-two-fingers") + "\n");
    }
    out
}

struct Page<'a> {
    tune: &'a Tune,
    shell: &'a Shell,
    instrument: &'a Instrument,
    staff: Staff,
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
        let names: Vec<String> = names
            .map(|course| course.open.name.in_style(style))
            .collect();
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
            staff: Staff::new(names, fingers, shell.look.width),
            tune,
            shell,
            instrument,
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
        let (number, pickup) = self.numbers.get(&index).copied().unwrap_or((0, false));
        Some(Drawn {
            number,
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
            let other = finger(stop.finger);
            let melody = &column.finger;
            // As the lines of the tablature stand: the higher course first.
            column.finger = match stop.course > place.course {
                true => format!("{other}/{melody}"),
                false => format!("{melody}/{other}"),
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
            let finger = if self.staff.fingers {
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
