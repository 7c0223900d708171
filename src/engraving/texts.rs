//! Chords and words above the notes, and the line under what is practised.

use crate::chart::Part;

use super::Hidden;
use super::mark::{Ground, Rule, Tone, Word, ems};
use super::measure::{CHORD, Event, Kind, LYRIC, Measure, syllable};
use super::pen::{Pen, Rows};

pub(super) fn chords(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
    let space = pen.paper.space;
    // At the beginning of a line only, where there is room beside the names of the courses.
    let begins = |part: &&Part| pen.system.bars.is_empty() && part.first_bar == measure.bar;
    if let Some(part) = pen.parts.iter().find(begins).cloned() {
        let size = 0.8 * CHORD * space;
        pen.word(Word {
            x: 0.0,
            y: rows.chords,
            width: (ems(&part.label) + 0.5) * size,
            size,
            text: part.label,
            centred: true,
            bold: true,
            ground: Ground::Frame,
            tone: Tone::Quiet,
        });
    }
    if pen.paper.hidden == Hidden::Everything {
        return;
    }
    let mut free = 0.0;
    for chord in &pen.piece.tune.bars[measure.bar].chords {
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
            ground: Ground::None,
            tone: pen.tone_at(measure.bar, chord.at),
        });
    }
}

pub(super) fn lyrics(pen: &mut Pen<'_>, rows: &Rows, measure: &Measure) {
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
            ground: Ground::None,
            tone,
        });
    }
}

/// The line under what is practised, with a foot at its beginning and at its end.
pub(super) fn bracket(pen: &mut Pen<'_>, rows: &Rows, line: &[usize], measures: &[Measure]) {
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
