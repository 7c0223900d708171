//! Puts a page together: rows, heads of the lines, bar lines, chords and words.

use std::collections::HashMap;

use crate::chart::{Jump, Metre, Ticks};
use crate::theory::Key;

use super::mark::{BarPlace, Curve, Rule, Sign, System, Tone, Word, ems};
use super::measure::{CHORD, Event, Kind, LYRIC, Measure, syllable};
use super::pitch::{Clef, signature};
use super::staff::Notes;
use super::{Hidden, Page, Paper, Piece, Spot, lines, rhythm, staff, tab};

/// A staff space, in spaces of the tablature.
const STAFF_SPACE: f32 = 0.5;
/// The column of the names of the courses, in spaces.
const NAMES: f32 = 1.5;

/// Upright strokes are whole dp thick, so that all of a kind look the same at any place.
pub(super) fn whole(thick: f32) -> f32 {
    thick.round().max(1.0)
}

/// Draws on one system after the other.
pub(super) struct Pen<'a> {
    pub(super) piece: Piece<'a>,
    pub(super) paper: &'a Paper,
    /// When each written bar begins.
    starts: Vec<Ticks>,
    system: System,
    /// Where the last note of this line stands, from which a tie may come.
    pub(super) last: Option<f32>,
}

/// The heights of the rows of a system.
pub(super) struct Rows {
    /// Endings and signs of the way, where the tune has any: the middle.
    over: Option<f32>,
    /// Chords: the middle.
    chords: f32,
    /// The upper line of the staff.
    staff: Option<f32>,
    /// Feet of the pick marks.
    pub(super) pick: f32,
    /// The highest course.
    pub(super) tab: f32,
    /// The lowest course.
    foot: f32,
    /// Fingers: the middle.
    pub(super) fingers: f32,
    /// Words: the middle.
    lyrics: f32,
    /// The line under the stretch that is practised.
    bracket: f32,
    height: f32,
}

impl<'a> Pen<'a> {
    pub(super) fn new(piece: Piece<'a>, paper: &'a Paper) -> Self {
        let mut at = Ticks::ZERO;
        let starts = piece.tune.bars.iter().map(|bar| {
            let start = at;
            at += bar.length;
            start
        });
        Self {
            starts: starts.collect(),
            piece,
            paper,
            system: System::default(),
            last: None,
        }
    }

    pub(super) fn rule(&mut self, rule: Rule) {
        self.system.rules.push(rule);
    }

    pub(super) fn word(&mut self, word: Word) {
        self.system.words.push(word);
    }

    pub(super) fn curve(&mut self, curve: Curve) {
        self.system.curves.push(curve);
    }

    /// A sign at a size given by the staff space.
    pub(super) fn sign(&mut self, sign: char, x: f32, y: f32, space: f32, tone: Tone) {
        self.system.signs.push(Sign {
            x,
            y,
            em: 4.0 * space,
            sign,
            tone,
        });
    }

    /// A rest with its dots, its middle at an event.
    pub(super) fn rest(&mut self, event: &Event, y: f32, space: f32, tone: Tone) {
        let step = u32::try_from(event.value.halved.max(0)).unwrap_or(0).min(6);
        let Some(sign) = char::from_u32(0xe4e3 + step) else {
            return;
        };
        self.sign(sign, event.x - 0.55 * space, y, space, tone);
        for place in 0..event.value.dots {
            let x = event.x + (0.75 + 0.6 * f32::from(place)) * space;
            self.sign('\u{e1e7}', x, y - 0.5 * space, space, tone);
        }
    }

    /// The number of a tuplet.
    pub(super) fn figures(&mut self, count: u8, x: f32, y: f32, space: f32, tone: Tone) {
        let digits: Vec<u32> = count
            .to_string()
            .chars()
            .filter_map(|digit| digit.to_digit(10))
            .collect();
        let wide = 1.15 * space;
        let mut at = x - wide * u16::try_from(digits.len()).map_or(1.0, f32::from) / 2.0;
        for digit in digits {
            if let Some(sign) = char::from_u32(0xe880 + digit) {
                self.sign(sign, at, y, space, tone);
            }
            at += wide;
        }
    }

    /// Whether an event belongs to what is practised.
    pub(super) fn tone(&self, measure: &Measure, event: &Event) -> Tone {
        self.tone_at(measure.bar, event.at)
    }

    fn tone_at(&self, bar: usize, at: Ticks) -> Tone {
        let time = self.starts.get(bar).copied().unwrap_or(Ticks::ZERO) + at;
        match &self.paper.stretch {
            Some(stretch) if !stretch.contains(&time) => Tone::Quiet,
            _ => Tone::Ink,
        }
    }

    /// The course on which the note that is held into an event was struck.
    pub(super) fn held_on(&self, measure: &Measure, note: usize, rows: &Rows) -> Option<f32> {
        let at = self.piece.tune.bars[measure.bar].notes.get(note)?.at;
        let after = self
            .piece
            .notes
            .partition_point(|one| (one.note.bar, one.note.at) <= (measure.bar, at));
        let place = self.piece.notes.get(after.checked_sub(1)?)?.place?;
        let courses = self.piece.instrument.courses.len();
        Some(tab::course_y(rows, courses, place.course, self.paper.space))
    }
}

/// Which events of a bar are not covered.
fn shown(hidden: Hidden, full_bar: usize, measure: &Measure) -> Vec<bool> {
    let first = measure
        .events
        .iter()
        .position(|event| matches!(event.kind, Kind::Note { tab: Some(_), .. }));
    let show = |index: usize| match hidden {
        Hidden::Nothing => true,
        Hidden::EveryOther => full_bar.is_multiple_of(2),
        Hidden::AllButFirst => Some(index) == first,
        Hidden::Notes | Hidden::Everything => false,
    };
    (0..measure.events.len()).map(show).collect()
}

pub(super) fn page(piece: Piece<'_>, paper: &Paper) -> Page {
    let bars = &piece.tune.bars;
    let mut pen = Pen::new(piece, paper);
    let (metres, keys, offsets) = (piece.tune.metres(), piece.tune.keys(), piece.tune.offsets());
    let clef = Clef::of(piece.instrument);
    let struck: HashMap<(usize, Ticks), usize> = piece
        .notes
        .iter()
        .enumerate()
        .map(|(index, note)| ((note.note.bar, note.note.at), index))
        .collect();
    let mut measures: Vec<Measure> = Vec::new();
    for bar in (0..bars.len()).filter(|&bar| bars[bar].length > Ticks::ZERO) {
        let mut measure = Measure::new(piece, bar, metres[bar], offsets[bar], &struck);
        measure.pickup = offsets[bar] > Ticks::ZERO;
        measure.before = before(piece, paper, bar, (metres[bar], keys[bar]));
        measures.push(measure);
    }
    if measures.is_empty() {
        return Page::default();
    }
    let staff_space = STAFF_SPACE * paper.space;
    let signs: Vec<Vec<f32>> = measures
        .iter()
        .map(|measure| match paper.staff {
            true => staff::left_room(&pen, measure, keys[measure.bar], staff_space),
            false => vec![0.0; measure.events.len()],
        })
        .collect();
    for (measure, signs) in measures.iter_mut().zip(&signs) {
        measure.space(piece, paper, signs);
    }
    let first_head = head_width(paper, keys[measures[0].bar], Some(metres[measures[0].bar]));
    let head = |measures: &[Measure], line: &[usize]| match line.first() {
        Some(0) | None => first_head,
        Some(&index) => head_width(paper, keys[measures[index].bar], None),
    };
    let x0 = NAMES * paper.space;
    let right = 0.3 * paper.space;
    let widest_head = measures
        .iter()
        .map(|measure| head_width(paper, keys[measure.bar], None))
        .fold(first_head, f32::max);
    let lines = lines::lines(
        piece,
        paper,
        &measures,
        paper.width - x0 - right - widest_head,
    );
    for line in &lines {
        let x = x0 + head(&measures, line);
        lines::lay(
            paper,
            &mut measures,
            line,
            &signs,
            (x, paper.width - right - x),
        );
    }
    let rows = rows(&pen, &measures, &keys, clef);
    let mut spots = Vec::new();
    let mut systems = Vec::with_capacity(lines.len());
    let mut full_bars = 0;
    for line in &lines {
        pen.system = System::default();
        pen.last = None;
        let Some(&first) = line.first() else { continue };
        let opening = (first == 0).then(|| metres[measures[first].bar]);
        heads(
            &mut pen,
            &rows,
            (keys[measures[first].bar], clef),
            opening,
            x0,
        );
        for &index in line {
            let measure = &measures[index];
            let shown = shown(paper.hidden, full_bars, measure);
            full_bars += usize::from(!measure.pickup);
            let key = keys[measure.bar];
            bar_lines(
                &mut pen,
                &rows,
                measure,
                index + 1 == measures.len(),
                Some(&index) == line.first(),
            );
            if index > 0 {
                changes(&mut pen, &rows, measure, (metres[measure.bar], key, clef));
            }
            tab::draw(&mut pen, measure, &rows, &shown);
            match rows.staff {
                Some(top) => {
                    staff::draw(&mut pen, measure, (key, clef), (top, staff_space), &shown)
                }
                None => rhythm::draw(&mut pen, measure, rows.foot, &shown),
            }
            chords(&mut pen, &rows, measure);
            if paper.hidden != Hidden::Everything {
                lyrics(&mut pen, &rows, measure);
            }
            over(&mut pen, &rows, measure);
            spots.extend(measure_spots(&pen, &rows, measure, &shown, systems.len()));
            pen.system.bars.push(BarPlace {
                bar: measure.bar,
                x: measure.x,
                width: measure.width,
                pickup: measure.pickup,
            });
        }
        bracket(&mut pen, &rows, line, &measures);
        systems.push(std::mem::take(&mut pen.system));
    }
    Page {
        systems,
        height: rows.height,
        pick: rows.pick,
        courses: (rows.tab, rows.foot),
        space: paper.space,
        spots,
    }
}

/// What the change of a key or metre takes inside a line.
fn before(piece: Piece<'_>, paper: &Paper, bar: usize, (metre, key): (Metre, Key)) -> f32 {
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

fn signature_width(key: Key) -> f32 {
    let signs = u16::try_from(key.signature().unsigned_abs().min(7)).map_or(0.0, f32::from);
    if signs > 0.0 { signs + 0.7 } else { 0.0 }
}

/// A staff space of the figures of a metre: they fill the staff, or most of a tablature.
fn metre_space(paper: &Paper) -> f32 {
    if paper.staff {
        STAFF_SPACE * paper.space
    } else {
        0.66 * paper.space
    }
}

fn head_width(paper: &Paper, key: Key, metre: Option<Metre>) -> f32 {
    let staff_space = STAFF_SPACE * paper.space;
    let clef = if paper.staff {
        (3.6 + signature_width(key)) * staff_space
    } else {
        0.0
    };
    let figures = match metre {
        Some(metre) if metre.count > 9 => metre_space(paper) * 4.6,
        Some(metre) if metre.count > 0 => metre_space(paper) * 2.8,
        _ => 0.0,
    };
    clef + figures
}

fn rows(pen: &Pen<'_>, measures: &[Measure], keys: &[Key], clef: Clef) -> Rows {
    let space = pen.paper.space;
    let bars = &pen.piece.tune.bars;
    let staff_space = STAFF_SPACE * space;
    let mut y = 0.0;
    let signed = bars.iter().any(|bar| {
        !bar.ending.is_empty() || bar.segno || bar.coda || bar.fine || bar.jump.is_some()
    });
    let mut row = |needed: bool, room: f32| {
        let middle = y + room / 2.0;
        if needed {
            y += room;
        }
        middle
    };
    let over = row(signed, 1.3 * space);
    let chords = row(true, 1.5 * space);
    let staff = pen.paper.staff.then(|| {
        let reach = measures
            .iter()
            .map(|measure| Notes::of(pen, measure, keys[measure.bar], clef, staff_space).reach())
            .fold((1.4_f32, 0.6_f32), |a, b| (a.0.max(b.0), a.1.max(b.1)));
        row(true, (reach.0 + 0.3) * staff_space);
        let middle = row(true, 4.0 * staff_space);
        row(true, (reach.1 + 0.3) * staff_space);
        middle - 2.0 * staff_space
    });
    let pick = row(true, 1.15 * space) + 0.4 * space;
    let courses = pen.piece.instrument.courses.len();
    let lines = u16::try_from(courses.saturating_sub(1)).map_or(0.0, f32::from) * space;
    let tab = row(true, 0.6 * space + lines) - lines / 2.0 + 0.3 * space;
    let foot = tab + lines;
    row(
        true,
        if pen.paper.staff { 0.7 } else { rhythm::ROOM } * space,
    );
    let figured = measures
        .iter()
        .flat_map(|measure| &measure.events)
        .any(|event| event.tuplet.is_some());
    row(figured && !pen.paper.staff, 0.55 * space);
    let fingers = row(pen.paper.fingers, 1.05 * space);
    let sung = |bar: &crate::chart::Bar| bar.notes.iter().any(|note| !syllable(note).is_empty());
    let lyrics = row(bars.iter().any(sung), 1.3 * space);
    let bracket = row(true, 0.5 * space);
    row(true, 0.35 * space);
    Rows {
        over: signed.then_some(over),
        chords,
        staff,
        pick,
        tab,
        foot,
        fingers,
        lyrics,
        bracket,
        height: y.ceil(),
    }
}

/// What a line begins with: names of the courses, lines, clef, signature and metre.
fn heads(pen: &mut Pen<'_>, rows: &Rows, (key, clef): (Key, Clef), metre: Option<Metre>, x0: f32) {
    let (space, width) = (pen.paper.space, pen.paper.width - 0.3 * pen.paper.space);
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
            patch: false,
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
    for (number, y) in [(metre.count, middle - space), (metre.unit, middle + space)] {
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
fn changes(
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

/// The bar line after a bar, and what stands before it where a repeat begins.
fn bar_lines(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure, last: bool, first_of_line: bool) {
    let space = pen.paper.space;
    let bar = pen.piece.tune.bars[measure.bar].clone();
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

fn chords(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
    let space = pen.paper.space;
    let tune = pen.piece.tune;
    let part = tune
        .parts_or_derived()
        .into_iter()
        .find(|part| part.first_bar == measure.bar);
    let first = pen.system.bars.is_empty();
    if let Some(part) = part.filter(|_| first) {
        pen.word(Word {
            x: 0.0,
            y: rows.chords,
            width: (ems(&part.label) + 0.3) * CHORD * space,
            size: CHORD * space,
            text: part.label,
            centred: false,
            bold: true,
            patch: false,
            tone: Tone::Quiet,
        });
    }
    if pen.paper.hidden == Hidden::Everything {
        return;
    }
    let mut free = 0.0;
    for chord in &tune.bars[measure.bar].chords {
        let text = chord.symbol.in_style(pen.paper.style);
        let width = (ems(&text) + 0.1) * CHORD * space;
        let x = (measure.x_at(chord.at) - 0.4 * space).max(free);
        free = x + width;
        pen.word(Word {
            x,
            y: rows.chords,
            width,
            size: CHORD * space,
            text,
            centred: false,
            bold: true,
            patch: false,
            tone: pen.tone_at(measure.bar, chord.at),
        });
    }
}

fn lyrics(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
    let space = pen.paper.space;
    let notes = &pen.piece.tune.bars[measure.bar].notes;
    for event in &measure.events {
        let Kind::Note { note, .. } = event.kind else {
            continue;
        };
        let text = syllable(&notes[note]);
        if text.is_empty() || event.at != notes[note].at {
            continue;
        }
        let tone = pen.tone(measure, event);
        pen.word(Word {
            x: event.x - 0.45 * space,
            y: rows.lyrics,
            width: (ems(&text) + 0.2) * LYRIC * space,
            size: LYRIC * space,
            text,
            centred: false,
            bold: false,
            patch: false,
            tone,
        });
    }
}

/// Endings and the signs of the way.
fn over(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
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
        let width = measure.width - 0.25 * space;
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
        patch: false,
        tone: Tone::Quiet,
    });
    x + width
}

/// The line under what is practised, with a foot at its beginning and at its end.
fn bracket(pen: &mut Pen<'_>, rows: &Rows, line: &[usize], measures: &[Measure]) {
    let Some(stretch) = pen.paper.stretch.clone() else {
        return;
    };
    let space = pen.paper.space;
    let inside =
        |measure: &Measure, event: &Event| stretch.contains(&(pen.starts[measure.bar] + event.at));
    let events: Vec<(&Measure, &Event)> = line
        .iter()
        .flat_map(|&index| {
            measures[index]
                .events
                .iter()
                .map(move |event| (&measures[index], event))
        })
        .filter(|(measure, event)| inside(measure, event))
        .collect();
    let (Some(&(from, first)), Some(&(to, last))) = (events.first(), events.last()) else {
        return;
    };
    let begins = pen.starts[from.bar] + first.at <= stretch.start;
    let end = pen.starts[to.bar] + last.at + last.length;
    let ends = end >= stretch.end;
    let (left, right) = (first.x - 0.5 * space, last.x + 0.55 * space);
    let thick = (0.22 * space).max(3.0);
    let y = rows.bracket - thick / 2.0;
    pen.rule(Rule {
        x: left,
        y,
        width: right - left,
        height: thick,
        tone: Tone::Ring,
    });
    for (there, x) in [(begins, left), (ends, right - thick)] {
        if there {
            pen.rule(Rule {
                x,
                y: y - 0.3 * space,
                width: thick,
                height: 0.3 * space + thick,
                tone: Tone::Ring,
            });
        }
    }
}

fn measure_spots(
    pen: &Pen<'_>,
    rows: &Rows,
    measure: &Measure,
    shown: &[bool],
    system: usize,
) -> Vec<Spot> {
    let spot = |(event, &shown): (&Event, &bool)| {
        let note = match event.kind {
            Kind::Note { tab: Some(tab), .. } if shown => Some(&pen.piece.notes[tab]),
            _ => None,
        };
        let figures = note
            .map(|note| tab::figures(pen, rows, note))
            .unwrap_or_default();
        Spot {
            bar: measure.bar,
            at: event.at,
            system,
            x: event.x,
            figures: figures.into_iter().map(|(y, text, _)| (y, text)).collect(),
            pick: note.map(|note| note.note.direction),
        }
    };
    measure.events.iter().zip(shown).map(spot).collect()
}
