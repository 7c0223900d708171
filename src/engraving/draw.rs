//! Puts a page together.

use std::collections::HashMap;

use crate::chart::Ticks;
use crate::theory::Key;

use super::bars::{bar_lines, over};
use super::line_heads::{before, behind, changes, head_width, heads};
use super::mark::{BarPlace, System, Tone};
use super::measure::{Event, Kind, Measure, syllable};
use super::pen::{NAMES, Pen, Rows, STAFF_SPACE};
use super::pitch::Clef;
use super::staff::Notes;
use super::texts::{bracket, chords, lyrics};
use super::{Hidden, Page, Paper, Piece, Spot, lines, rhythm, staff, tab};

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
        measure.behind = behind(piece, paper, bar);
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
        &pen.parts,
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
        (pen.last, pen.last_figure) = (None, None);
        let Some(&first) = line.first() else { continue };
        let end = line
            .last()
            .map_or(0.0, |&last| measures[last].x + measures[last].width);
        let opening = (first == 0).then(|| metres[measures[first].bar]);
        heads(
            &mut pen,
            &rows,
            (keys[measures[first].bar], clef),
            opening,
            (x0, end),
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
    let sung = |bar: &crate::chart::Bar| bar.notes.iter().any(|note| !syllable(note).is_empty());
    let lyrics = row(bars.iter().any(sung), 1.3 * space);
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
    let two = pen.piece.notes.iter().any(|note| note.stop.is_some());
    let fingers = row(
        pen.paper.fingers,
        tab::FINGER_ROW * if two { 1.9 } else { 1.0 } * space,
    );
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
            figures,
            pick: note
                .map(|note| tab::pick_sign(pen, event.x, rows, note.note.direction, Tone::Ink)),
        }
    };
    measure.events.iter().zip(shown).map(spot).collect()
}
