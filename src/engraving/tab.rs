//! The tablature: a line for each course, figures on patches of ground, drones in rings.

use crate::chart::{Direction, TabNote};

use super::mark::{Ground, Rule, Sign, Tone, Word, ems};
use super::measure::{Kind, Measure};
use super::pen::{Pen, Rows, whole};
use super::{Figure, curve};

/// The height of a row of fingers, in spaces.
pub(super) const FINGER_ROW: f32 = 1.05;

/// Size of the figures, in spaces.
const FIGURE: f32 = 1.06;

/// The height of a course in a system, the first course lowest.
pub(super) fn course_y(rows: &Rows, courses: usize, course: usize, space: f32) -> f32 {
    let above = courses.saturating_sub(course + 1);
    rows.tab + u16::try_from(above).map_or(0.0, f32::from) * space
}

/// What a note strikes. A note off the neck is a question mark at the edge that it lies beyond.
pub(super) fn figures(pen: &Pen<'_>, rows: &Rows, note: &TabNote) -> Vec<Figure> {
    let courses = &pen.piece.instrument.courses;
    let figure = |course, text: String, rings| Figure {
        y: course_y(rows, courses.len(), course, pen.paper.space),
        text,
        rings,
    };
    let Some(place) = note.place else {
        let below = courses.iter().all(|course| note.midi < course.open.midi());
        let course = if below {
            0
        } else {
            courses.len().saturating_sub(1)
        };
        return vec![figure(course, "?".to_owned(), false)];
    };
    let mut figures = vec![figure(place.course, place.fret.to_string(), false)];
    figures.extend(
        note.stop
            .map(|stop| figure(stop.course, stop.fret.to_string(), false)),
    );
    figures.extend(
        note.drone
            .drone
            .map(|drone| figure(drone.course, "0".to_owned(), true)),
    );
    figures
}

/// Lines, figures, pick marks and fingers of a bar.
pub(super) fn draw(pen: &mut Pen<'_>, measure: &Measure, rows: &Rows, shown: &[bool]) {
    let space = pen.paper.space;
    ringing(pen, measure, rows, shown);
    for (index, event) in measure.events.iter().enumerate() {
        let tone = pen.tone(measure, event);
        match event.kind {
            Kind::Note { tab: Some(tab), .. } if shown[index] => {
                let note = &pen.piece.notes[tab];
                for figure in figures(pen, rows, note) {
                    draw_figure(pen, event.x, figure, tone);
                }
                pick(pen, event.x, rows, note, tone);
                if pen.paper.fingers {
                    fingers(pen, event.x, rows.fingers, note, tone);
                }
            }
            Kind::Note { note, tab: None } if shown[index] && !pen.paper.staff => {
                // A tie from the figure before to the place where its note goes on.
                let from = pen.last_figure.unwrap_or(measure.x);
                if let Some(y) = pen.held_on(measure, note, rows) {
                    pen.curve(curve::tie(
                        from + 0.4 * space,
                        event.x,
                        y + 0.42 * space,
                        false,
                        0.8 * space,
                        tone,
                    ));
                }
            }
            Kind::Rest if shown[index] && !pen.paper.staff => {
                let courses = pen.piece.instrument.courses.len();
                let middle = (rows.tab + course_y(rows, courses, 0, space)) / 2.0;
                pen.rest(event, middle, 0.55 * space, Tone::Quiet);
            }
            _ => {}
        }
        if event.kind != Kind::Rest {
            pen.last_figure = Some(event.x);
        }
    }
}

/// What is read rings in its own colour; what recedes keeps its tone.
fn drone_tone(tone: Tone) -> Tone {
    match tone {
        Tone::Ink => Tone::Ring,
        tone => tone,
    }
}

fn draw_figure(pen: &mut Pen<'_>, x: f32, figure: Figure, tone: Tone) {
    let space = pen.paper.space;
    let Figure { y, text, rings } = figure;
    let width = if text.len() > 1 { 1.5 } else { 0.95 } * space;
    let (ground, tone) = match rings {
        true => (Ground::Ring, drone_tone(tone)),
        false => (Ground::Patch, tone),
    };
    pen.word(Word {
        x: x - width / 2.0,
        y,
        width,
        size: FIGURE * space,
        text,
        centred: true,
        bold: true,
        ground,
        tone,
    });
}

/// A thick line on the course of a drone, from its first figure to its last.
fn ringing(pen: &mut Pen<'_>, measure: &Measure, rows: &Rows, shown: &[bool]) {
    let space = pen.paper.space;
    let courses = pen.piece.instrument.courses.len();
    let drone = |index: usize| match measure.events[index].kind {
        Kind::Note { tab: Some(tab), .. } if shown[index] => {
            pen.piece.notes[tab].drone.drone.map(|drone| drone.course)
        }
        _ => None,
    };
    let mut from = 0;
    let mut lines = Vec::new();
    for index in 1..=measure.events.len() {
        let goes_on = index < measure.events.len() && drone(index) == drone(from);
        if !goes_on {
            if let Some(course) = drone(from) {
                let (first, last) = (&measure.events[from], &measure.events[index - 1]);
                let end = if index == from + 1 {
                    first.x + 0.75 * space
                } else {
                    last.x + 0.5 * space
                };
                let tone = drone_tone(pen.tone(measure, first));
                let thick = whole(0.17 * space);
                let y = course_y(rows, courses, course, space) - thick / 2.0;
                lines.push(Rule {
                    x: first.x,
                    y,
                    width: end - first.x,
                    height: thick,
                    tone,
                });
            }
            from = index;
        }
    }
    lines.into_iter().for_each(|line| pen.rule(line));
}

/// The squared bracket for down and the V for up; beside it an exclamation mark where the tune marks the other way.
fn pick(pen: &mut Pen<'_>, x: f32, rows: &Rows, note: &TabNote, tone: Tone) {
    let direction = note.note.direction;
    if note.note.is_marked_against() {
        pen.word(Word {
            x: x + 0.42 * pen.paper.space,
            y: rows.pick - 0.35 * pen.paper.space,
            width: 0.3 * pen.paper.space,
            size: 0.8 * pen.paper.space,
            text: "!".to_owned(),
            centred: true,
            bold: true,
            ground: Ground::None,
            tone,
        });
    }
    let sign = pick_sign(pen, x, rows, direction, tone);
    pen.system.signs.push(sign);
}

/// The sign of a stroke.
pub(super) fn pick_sign(
    pen: &Pen<'_>,
    x: f32,
    rows: &Rows,
    direction: Direction,
    tone: Tone,
) -> Sign {
    // Width in staff spaces, and how large the sign is beside the other.
    let (sign, width, size) = match direction {
        Direction::Down => ('\u{e610}', 1.25, 0.5),
        Direction::Up => ('\u{e612}', 1.0, 0.41),
    };
    let size = size * pen.paper.space;
    Sign {
        x: x - width / 2.0 * size,
        y: rows.pick,
        em: 4.0 * size,
        sign,
        tone,
    }
}

/// The finger of a note, or those of two, the higher course above.
fn fingers(pen: &mut Pen<'_>, x: f32, y: f32, note: &TabNote, tone: Tone) {
    let number = |finger: Option<crate::frets::Finger>| finger.map_or(0, |finger| finger.number());
    let Some(place) = note.place else { return };
    let melody = number(note.finger());
    let fingers = match note.stop {
        Some(stop) if stop.course < place.course => vec![melody, number(stop.finger)],
        Some(stop) => vec![number(stop.finger), melody],
        None => vec![melody],
    };
    let space = pen.paper.space;
    let size = 0.8 * space;
    // Two stand close, around the middle of the row.
    let mut y = y - if note.stop.is_some() { 0.45 } else { 0.0 } * FINGER_ROW * space;
    for finger in fingers {
        let text = finger.to_string();
        let width = ems(&text) * size;
        pen.word(Word {
            x: x - width / 2.0,
            y,
            width,
            size,
            text,
            centred: true,
            bold: false,
            ground: Ground::None,
            tone: if tone == Tone::Ink { Tone::Quiet } else { tone },
        });
        y += 0.9 * FINGER_ROW * space;
    }
}
