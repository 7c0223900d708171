//! The upright bass: root and fifth, and the walk into another chord.

use crate::chart::Ticks;
use crate::theory::{Chord, Key, NoteName, PitchClass};

use super::event::{Event, Player, Sound, Touch};
use super::harmony::Span;
use super::line::{Hit, Mark};
use super::sheet::{OnChange, Sheet, SheetBar};
use super::style::Walks;
use super::voicings::{bass_notes, third};

/// The open courses as MIDI numbers: E1 A1 D2 G2 (as the `bass` of `frets`).
const OPEN: [u8; 4] = [28, 33, 38, 43];

/// The lowest note; roots lie in the octave above it, but for those that are walked up to.
const LOWEST: i32 = 28;

/// The highest root that is walked up to: the open G.
const HIGHEST_ROOT: i32 = 43;

/// A bass note before its length is known.
struct Plucked {
    at: Ticks,
    midi: i32,
    force: f32,
    /// When its chord is over.
    until: Ticks,
}

/// The part of the bass.
pub(super) fn play(sheet: &Sheet) -> Vec<Event> {
    let mut plucked: Vec<Plucked> = Vec::new();
    let mut before: Option<Span> = None;
    let mut on_root = false;
    // Where the root of the chord now is played, and where a walk has led to.
    let mut root = LOWEST;
    let mut landed: Option<i32> = None;
    for (i, bar) in sheet.bars.iter().enumerate() {
        if bar.lead_in {
            continue;
        }
        let last = sheet.final_bar == Some(i);
        let pattern = sheet.pattern(bar);
        let target = walk_target(sheet, i);
        let line = if target.is_some() {
            &pattern.walk
        } else {
            &pattern.bass
        };
        let strokes = sheet.strokes(bar, line, OnChange::Mark(Hit::Root));
        let walks = strokes
            .iter()
            .filter(|(_, mark, _)| mark.hit == Hit::Walk)
            .count();
        let mut way = Vec::new().into_iter();
        for (i, (at, mark, span)) in strokes.into_iter().enumerate() {
            let fresh = begins(before, span);
            if fresh {
                root = arrive(landed, span.chord);
            }
            if i == 0 {
                landed = target.map(|target| nearest(root, target));
                let walked = landed.map(|end| walk((root, end), span.chord, bar.key, walks));
                way = walked.unwrap_or_default().into_iter();
            }
            let hit = if fresh || last { Hit::Root } else { mark.hit };
            before = Some(span);
            let midi = match hit {
                Hit::Walk => way.next().unwrap_or(root),
                Hit::Third => third(span.chord).map_or(root, |name| above(root, name.class())),
                Hit::Fifth => fifth(root, span.chord),
                Hit::Other if on_root => fifth(root, span.chord),
                _ => root,
            };
            on_root = midi == root;
            plucked.push(Plucked {
                at: sheet.swung(bar, at),
                midi,
                force: force(bar, at, mark),
                until: span.to,
            });
        }
    }
    if let Some((at, span)) = sheet.held() {
        plucked.push(Plucked {
            at,
            midi: arrive(landed, span.chord),
            force: 0.8,
            until: sheet.length,
        });
    }
    ring(&plucked)
}

/// Whether a chord is heard as a new one in the bass: D7 after D is not.
pub(super) fn begins(before: Option<Span>, span: Span) -> bool {
    before.is_none_or(|before| {
        let same = bass_notes(before.chord).0.class() == bass_notes(span.chord).0.class();
        before != span && !(same && before.to == span.from)
    })
}

fn force(bar: &SheetBar, at: Ticks, mark: Mark) -> f32 {
    let first = at == bar.start;
    let base = if first { 0.8 } else { 0.7 };
    if mark.accent { base + 0.1 } else { base }
}

/// Each note rings until the next one, or until its chord is over.
fn ring(plucked: &[Plucked]) -> Vec<Event> {
    let mut events = Vec::with_capacity(plucked.len());
    for (i, note) in plucked.iter().enumerate() {
        let next = plucked
            .get(i + 1)
            .map_or(note.until, |next| next.at.min(note.until));
        let midi = u8::try_from(note.midi).unwrap_or(OPEN[0]);
        let course = OPEN.iter().rposition(|&open| open <= midi).unwrap_or(0);
        events.push(Event {
            at: note.at,
            after_ms: 0.0,
            player: Player::Bass,
            force: note.force,
            sound: Sound::String {
                course: u8::try_from(course).unwrap_or(0),
                midi,
                rings: next - note.at,
                touch: Touch::Ring,
            },
        });
    }
    events
}

/// The root, or the bass after a slash.
fn root_class(chord: Chord) -> PitchClass {
    bass_notes(chord).0.class()
}

/// Where the root of a chord that begins is played: where a walk has led, else in the octave from E1 to D♯2.
fn arrive(landed: Option<i32>, chord: Chord) -> i32 {
    let class = root_class(chord);
    let here = landed.filter(|&midi| PitchClass::new(midi) == class);
    here.unwrap_or(lowest(class))
}

/// The root of a chord as near as the instrument has it; of two as near, the lower.
fn nearest(from: i32, chord: Chord) -> i32 {
    let low = lowest(root_class(chord));
    let places = [low, low + 12].into_iter();
    let there = places.filter(|&midi| midi <= HIGHEST_ROOT);
    there.min_by_key(|midi| (midi - from).abs()).unwrap_or(low)
}

/// Where the note that takes turns with the root is played: below it where the bass goes as deep, else above.
fn fifth(root: i32, chord: Chord) -> i32 {
    let class = bass_notes(chord).1.class();
    let below = root - (root - class.semitones()).rem_euclid(12);
    if below >= LOWEST { below } else { below + 12 }
}

/// A note above the root.
fn above(root: i32, class: PitchClass) -> i32 {
    root + (class.semitones() - root).rem_euclid(12)
}

/// The lowest place of a note.
fn lowest(class: PitchClass) -> i32 {
    LOWEST + (class.semitones() - LOWEST).rem_euclid(12)
}

/// The chord that the bass walks into from bar `i`, if it does: one chord through a whole bar, another one on the next
/// downbeat.
fn walk_target(sheet: &Sheet, i: usize) -> Option<Chord> {
    let (bar, next) = (sheet.bars.get(i)?, sheet.bars.get(i + 1)?);
    let now = sheet.harmony.at(bar.start)?;
    let then = sheet.harmony.at(next.start)?;
    let whole = now.from <= bar.start && now.to == bar.end() && bar.is_full() && !next.pickup;
    let moves = root_class(now.chord) != root_class(then.chord);
    let wanted = match sheet.style.walks {
        Walks::Never => false,
        Walks::IntoChanges => true,
        Walks::IntoLines => next.number % 4 == 1 || now.from <= bar.start - bar.length,
    };
    (whole
        && moves
        && wanted
        && sheet
            .hold
            .is_none_or(|hold| next.start < hold || then.from == hold))
    .then_some(then.chord)
}

/// The last notes before a chord, as many as asked for: notes of the scale between one root and the other. Between roots
/// a whole step apart lies the half step; what is left at the beginning stays on the root (common practice: G A B to C,
/// G F♯ to Em, G G♯ to A).
fn walk((start, end): (i32, i32), from: Chord, key: Key, notes: usize) -> Vec<i32> {
    let step = (end - start).signum();
    let scale = scale_under(from, key);
    let way: Vec<i32> = (1..(end - start).abs())
        .map(|k| start + step * k)
        .filter(|&midi| scale[usize::try_from(midi.rem_euclid(12)).unwrap_or(0)])
        .collect();
    let mut last: Vec<i32> = way[way.len().saturating_sub(notes)..].to_vec();
    if last.is_empty() && (end - start).abs() == 2 {
        last.push(start + step);
    }
    // Up to a leading note by an augmented second is no walk: the sixth is raised too (melodic minor).
    if let [.., below, leading] = last[..]
        && leading - below == 3
    {
        let at = last.len() - 2;
        last[at] = below + 1;
    }
    let stays = notes.saturating_sub(last.len());
    std::iter::repeat_n(start, stays).chain(last).collect()
}

/// The scale of the key as it sounds under a chord: a tone of the chord takes the place of the note of its letter.
fn scale_under(chord: Chord, key: Key) -> [bool; 12] {
    let tones: Vec<NoteName> = chord.tones().map(|(_, name)| name).collect();
    let own = |note: &NoteName| {
        tones
            .iter()
            .find(|tone| tone.letter == note.letter)
            .copied()
    };
    let mut scale = [false; 12];
    for note in key.scale() {
        let class = own(&note).unwrap_or(note).class();
        scale[usize::try_from(class.semitones()).unwrap_or(0)] = true;
    }
    scale
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chord(text: &str) -> Chord {
        text.parse().unwrap()
    }

    fn names(midi: &[i32]) -> String {
        let key: Key = "C".parse().unwrap();
        let names = midi.iter().map(|&midi| key.spell_midi(midi).to_string());
        names.collect::<Vec<_>>().join(" ")
    }

    fn both(text: &str) -> String {
        let chord = chord(text);
        let root = arrive(None, chord);
        names(&[root, fifth(root, chord)])
    }

    #[test]
    fn the_bass_has_its_root_low_and_the_fifth_below_where_it_goes_as_deep() {
        assert_eq!(both("A"), "A1 E1");
        assert_eq!(both("D"), "D2 A1");
        assert_eq!(both("C"), "C2 G1");
        assert_eq!(both("G"), "G1 D2");
        assert_eq!(both("E"), "E1 B1");
        assert_eq!(both("Bdim"), "B1 F1");
        assert_eq!(both("Caug"), "C2 G#1");
    }

    #[test]
    fn a_slash_bass_is_what_the_bass_plays() {
        assert_eq!(both("D/F#"), "F#1 A1");
        assert_eq!(both("C/G"), "G1 C2");
        assert_eq!(both("G/A"), "A1 A1");
    }

    #[test]
    fn walks_are_those_that_players_know() {
        let walked = |from, to, key: &str| {
            let (from, key) = (chord(from), key.parse().unwrap());
            let start = arrive(None, from);
            let end = nearest(start, chord(to));
            names(&[walk((start, end), from, key, 2), vec![end]].concat())
        };
        // Common practice.
        assert_eq!(walked("G", "C", "G"), "A1 B1 C2");
        assert_eq!(walked("C", "G", "G"), "B1 A1 G1");
        assert_eq!(walked("D", "G", "G"), "E2 F#2 G2");
        assert_eq!(walked("D", "E", "A"), "D2 Eb2 E2");
        assert_eq!(walked("D", "Em", "G"), "D2 Eb2 E2");
        assert_eq!(walked("C", "F", "C"), "D2 E2 F2");
        assert_eq!(walked("G", "D", "D"), "B1 C#2 D2");
        assert_eq!(walked("A", "D", "D"), "B1 C#2 D2");
        assert_eq!(walked("G", "Em", "G"), "G1 F#1 E1");
        assert_eq!(walked("G", "A", "G"), "G1 G#1 A1");
        assert_eq!(walked("E7", "Am", "Am"), "F#1 G#1 A1");
        assert_eq!(walked("Em", "F", "C"), "E1 E1 F1");
        assert_eq!(walked("A7", "D", "G"), "B1 C#2 D2");
    }
}
