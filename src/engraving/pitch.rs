//! Where pitches stand on a staff, and which signs they need.

use std::collections::HashMap;

use crate::frets::Instrument;
use crate::theory::{Accidental, Key, Letter, Pitch};

use super::Piece;
use super::measure::{Kind, Measure};

/// How a staff is read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Clef {
    pub(super) sign: char,
    /// The step of the upper line: letters counted from C0.
    pub(super) top: i32,
    /// Half spaces from the upper line down to the baseline of the clef.
    pub(super) line: i32,
    /// Octaves that are read above what sounds.
    pub(super) raised: i32,
    /// Half spaces that its signature stands lower than in the G clef.
    pub(super) lower: i32,
}

/// An instrument whose highest open course is lower than this reads the F clef.
const LOW: i32 = 50;

impl Clef {
    /// The clef that players of an instrument read: G, G with an 8 below, or F for a bass, which sounds an octave lower
    /// than it reads too.
    pub(super) fn of(instrument: &Instrument) -> Self {
        let highest = instrument
            .courses
            .iter()
            .map(|course| course.open.midi())
            .max();
        let g = Self {
            sign: '\u{e050}',
            top: 38,
            line: 6,
            raised: 0,
            lower: 0,
        };
        if highest.is_some_and(|midi| midi < LOW) {
            Self {
                sign: '\u{e062}',
                top: 26,
                line: 2,
                raised: 1,
                lower: 2,
            }
        } else if instrument.sounds_an_octave_lower() {
            Self {
                sign: '\u{e052}',
                raised: 1,
                ..g
            }
        } else {
            g
        }
    }

    /// Half spaces from the upper line down to a note.
    pub(super) fn below_top(self, pitch: Pitch) -> i32 {
        self.top - (i32::from(pitch.octave) + self.raised) * 7 - pitch.name.letter.index()
    }
}

/// The signs of a signature from the left: half spaces below the upper line, and whether they are sharps. Sharps enter as
/// F C G D A E B, flats the other way round, at their usual heights (common practice).
pub(super) fn signature(key: Key, clef: Clef) -> Vec<(i32, bool)> {
    const SHARPS: [i32; 7] = [0, 3, -1, 2, 5, 1, 4];
    const FLATS: [i32; 7] = [4, 1, 5, 2, 6, 3, 7];
    let count = key.signature();
    let (heights, sharp) = if count > 0 {
        (SHARPS, true)
    } else {
        (FLATS, false)
    };
    let signs = usize::try_from(count.abs()).unwrap_or(0).min(7);
    heights[..signs]
        .iter()
        .map(|height| (height + clef.lower, sharp))
        .collect()
}

/// The pitches that an event has on the staff, the melody first.
pub(super) fn sounding(piece: Piece<'_>, measure: &Measure, index: usize, key: Key) -> Vec<Pitch> {
    let Kind::Note { note, tab } = measure.events[index].kind else {
        return Vec::new();
    };
    let written = piece.tune.bars[measure.bar].notes[note].pitch;
    let melody = Pitch::new(written.name, written.octave.saturating_add(piece.octaves));
    let stop = tab.and_then(|tab| piece.notes[tab].stop);
    let second = stop.map(|stop| key.spell_midi(stop.midi));
    std::iter::once(melody).chain(second).collect()
}

/// The accidental of each pitch of each event of a bar, where one is needed: not what the signature says, and not what
/// stood before in the bar on the same line. What is tied over the bar line keeps its own.
pub(super) fn accidentals(
    piece: Piece<'_>,
    measure: &Measure,
    key: Key,
) -> Vec<Vec<Option<Accidental>>> {
    let mut holds: HashMap<(Letter, i8), Accidental> = HashMap::new();
    let events = 0..measure.events.len();
    events
        .map(|index| {
            let event = &measure.events[index];
            let one = |pitch: Pitch| {
                let place = (pitch.name.letter, pitch.octave);
                let said = holds
                    .get(&place)
                    .copied()
                    .unwrap_or(key.accidental(pitch.name.letter));
                if event.tied || said == pitch.name.accidental {
                    return None;
                }
                holds.insert(place, pitch.name.accidental);
                Some(pitch.name.accidental)
            };
            sounding(piece, measure, index, key)
                .into_iter()
                .map(one)
                .collect()
        })
        .collect()
}

/// The sign of an accidental and its width in staff spaces.
pub(super) fn accidental(accidental: Accidental) -> (char, f32) {
    match accidental.semitones() {
        ..=-2 => ('\u{e264}', 1.65),
        -1 => ('\u{e260}', 0.9),
        0 => ('\u{e261}', 0.67),
        1 => ('\u{e262}', 1.0),
        2.. => ('\u{e263}', 1.0),
    }
}
