//! The tune itself, on a mandolin.

use crate::chart::{Heard, Ornament, Ticks};

use super::event::{Event, Player, Sound, Touch};
use super::sheet::Sheet;

/// The open courses of a mandolin as MIDI numbers: G3 D4 A4 E5.
const OPEN: [i32; 4] = [55, 62, 69, 76];

/// The last fret, and what it sounds on the highest course.
const LAST_FRET: i32 = 20;
const HIGHEST: i32 = OPEN[3] + LAST_FRET;

/// How long a grace note takes, at most, from the note before it.
const GRACE: Ticks = Ticks::of(1, 40);

/// The part of the melody: the notes as written, ties joined, with their grace notes; notes of a chord under the melody
/// where there is a course left for them. Other ornaments are left to the player: the note is played plain. A grace note
/// with nothing before it is left out.
pub(super) fn play(sheet: &Sheet) -> Vec<Event> {
    let heard = heard(sheet);
    let octave = octave(&heard);
    let swing = MelodySwing::new(sheet, &heard);
    let final_note = heard.last().map(|note| note.at);
    let mut events = Vec::with_capacity(heard.len());
    let mut before = Ticks::ZERO;
    for chord in heard.chunk_by(|a, b| a.at == b.at) {
        let at = swing.played(chord[0].at);
        let graces = &chord[0].note.grace;
        let grace = grace_length(graces.len(), at - before);
        let mut free = [true; OPEN.len()];
        let first = Ticks(at.0 - grace.0 * i64::try_from(graces.len()).unwrap_or(0));
        for (i, pitch) in (0..).zip(graces).filter(|_| grace > Ticks::ZERO) {
            if let Some((course, midi)) = course(pitch.midi() + octave, &[true; OPEN.len()]) {
                let at = first + grace * i;
                events.push(event(at, (course, midi), grace, 0.45));
            }
        }
        for (i, note) in chord.iter().enumerate() {
            let Some((course, midi)) = course(note.midi + octave, &free) else {
                continue;
            };
            free[usize::from(course)] = false;
            let held = sheet.hold.is_some() && Some(note.at) == final_note;
            let end = if held {
                sheet.length
            } else {
                swing.played(note.at + note.length)
            };
            let short = note.note.ornaments.contains(&Ornament::Staccato);
            let rings = if short {
                Ticks((end - at).0 / 2)
            } else {
                end - at
            };
            let under = if i == 0 { 0.0 } else { 0.1 };
            let force = force(sheet, note) - under;
            events.push(event(at, (course, midi), rings.max(Ticks(1)), force));
        }
        before = at;
    }
    events
}

/// The notes in order of time, the melody first where several begin together; those that lead into a tag come once more.
fn heard<'a>(sheet: &Sheet<'a>) -> Vec<Heard<'a>> {
    let bars = &sheet.playing.bars;
    let mut heard = sheet
        .tune
        .heard(bars.iter().map(|bar| (bar.written, bar.start)));
    if let Some(again) = sheet.again {
        let lead: Vec<Heard> = heard
            .iter()
            .filter(|note| note.at >= again.from && note.at < again.to)
            .map(|note| {
                let at = again.at + (note.at - again.from);
                Heard {
                    at,
                    length: note.length.min(again.to - note.at),
                    bar: sheet.playing.bar_at(at).unwrap_or(note.bar),
                    ..*note
                }
            })
            .collect();
        heard.extend(lead);
        heard.sort_by_key(|note| note.at);
    }
    heard.retain(|note| note.at >= Ticks::ZERO && note.at < sheet.playing.length);
    heard
}

/// Semitones, whole octaves, that bring all of the melody onto the neck; none where it fits as it is.
fn octave(heard: &[Heard]) -> i32 {
    let range = || heard.iter().map(|note| note.midi);
    let (Some(lowest), Some(highest)) = (range().min(), range().max()) else {
        return 0;
    };
    [0, 12, -12, 24, -24]
        .into_iter()
        .find(|octave| lowest + octave >= OPEN[0] && highest + octave <= HIGHEST)
        .unwrap_or(0)
}

/// The free course where a note lies lowest on the neck, and its MIDI number. Single notes beyond the neck are moved by
/// octaves.
fn course(midi: i32, free: &[bool; OPEN.len()]) -> Option<(u8, u8)> {
    let midi = if midi < OPEN[0] {
        OPEN[0] + (midi - OPEN[0]).rem_euclid(12)
    } else if midi > HIGHEST {
        HIGHEST - (HIGHEST - midi).rem_euclid(12)
    } else {
        midi
    };
    let reaches = |&course: &usize| (0..=LAST_FRET).contains(&(midi - OPEN[course]));
    let course = (0..OPEN.len())
        .rev()
        .filter(|&course| free[course])
        .find(reaches)?;
    Some((u8::try_from(course).ok()?, u8::try_from(midi).ok()?))
}

/// The length of each of some grace notes: all together take at most half of the time since the note before.
fn grace_length(graces: usize, since: Ticks) -> Ticks {
    let graces = i64::try_from(graces).unwrap_or(i64::MAX).max(1);
    GRACE.min(Ticks(since.0 / graces.saturating_mul(2)))
}

/// Louder on the 1, a little on the other beats, and where an accent stands.
fn force(sheet: &Sheet, note: &Heard) -> f32 {
    let place = sheet.bars.get(note.bar).map_or(0.0, |bar| {
        let offset = bar.offset + (note.at - bar.start);
        let beats = bar.metre.beats_before(offset);
        if offset == Ticks::ZERO {
            0.12
        } else if beats.fract() == 0.0 {
            0.06
        } else {
            0.0
        }
    });
    let accent = if note.note.ornaments.contains(&Ornament::Accent) {
        0.15
    } else {
        0.0
    };
    0.65 + place + accent
}

fn event(at: Ticks, (course, midi): (u8, u8), rings: Ticks, force: f32) -> Event {
    Event {
        at,
        after_ms: 0.0,
        player: Player::Melody,
        force,
        sound: Sound::String {
            course,
            midi,
            rings,
            touch: Touch::Ring,
        },
    }
}

/// Which beats of the melody swing: those with a note just in their middle. Beats that are written as triplets or dotted
/// already have their rhythm.
struct MelodySwing<'a> {
    sheet: &'a Sheet<'a>,
    /// The middles of such beats, in order.
    middles: Vec<Ticks>,
}

impl<'a> MelodySwing<'a> {
    fn new(sheet: &'a Sheet<'a>, heard: &[Heard]) -> Self {
        let middle = |note: &Heard| {
            let bar = sheet.bars.get(note.bar)?;
            let middle = middle(bar, note.at);
            (bar.swing.swings() && middle == note.at).then_some(middle)
        };
        let mut middles: Vec<Ticks> = heard.iter().filter_map(middle).collect();
        middles.sort();
        Self { sheet, middles }
    }

    /// When something written at a time is played.
    fn played(&self, at: Ticks) -> Ticks {
        let bar = self.sheet.playing.bar_at(at).map(|i| &self.sheet.bars[i]);
        match bar {
            Some(bar)
                if bar.swing.swings() && self.middles.binary_search(&middle(bar, at)).is_ok() =>
            {
                self.sheet.swung(bar, at)
            }
            _ => at,
        }
    }
}

/// The middle of the beat that a time lies in.
fn middle(bar: &super::sheet::SheetBar, at: Ticks) -> Ticks {
    bar.start + bar.swing.middle(bar.offset + (at - bar.start)) - bar.offset
}
