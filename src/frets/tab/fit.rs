//! Melodies that lie off the neck, and the octave that brings them onto it.

use crate::frets::instrument::{Capo, Instrument};
use crate::frets::place::FIRST_POSITION_ENDS;

/// Octaves that are tried each way.
const MOST: i8 = 4;

/// What a note counts that the neck does not have, and one that first position does not have.
const OFF: usize = 8;
const HIGH: usize = 1;

/// Whether a neck has a note at all, and whether the hand at the nut has it.
fn reached(instrument: &Instrument, capo: Capo, midi: i32) -> (bool, bool) {
    let mut on = false;
    for course in 0..instrument.courses.len() {
        for fret in 0..=instrument.last_fret(capo) {
            if instrument.midi(course, fret, capo) == Some(midi) {
                on = true;
                if fret <= FIRST_POSITION_ENDS {
                    return (true, true);
                }
                break;
            }
        }
    }
    (on, false)
}

/// Octaves from nearest to farthest, up first.
fn octaves() -> impl Iterator<Item = i8> {
    std::iter::once(0).chain((1..=MOST).flat_map(|octaves| [octaves, -octaves]))
}

/// The octaves that a melody (MIDI keys) is best moved by on a neck: the least sum of notes that the neck does not have,
/// eight each, of notes beyond first position, one each, and of an eighth of all notes for each octave away from where its
/// players read them. So a bass plays a fiddle tune where a bass has it, a mandolin leaves out two low notes rather than
/// play a whole tune up the neck, and a guitar plays a reel an octave below the fiddle with a few notes at the fifth fret,
/// not two octaves below without them. The weights are common practice put into numbers.
///
/// ```
/// use fourcourse::frets::{Capo, Instrument, suiting_octave};
/// let tune = [62, 69, 74, 78];
/// assert_eq!(suiting_octave(&Instrument::mandolin(), Capo::NONE, &tune), 0);
/// let octave_mandolin = Instrument::by_id("octave-mandolin").unwrap();
/// assert_eq!(suiting_octave(&octave_mandolin, Capo::NONE, &tune), -1);
/// ```
pub fn suiting_octave(instrument: &Instrument, capo: Capo, midi: &[i32]) -> i8 {
    let counted = counted(midi);
    let cost = |octaves: i8| -> usize {
        let cost = |&(midi, times): &(i32, usize)| {
            times
                * match reached(instrument, capo, midi + 12 * i32::from(octaves)) {
                    (false, _) => OFF,
                    (true, false) => HIGH,
                    (true, true) => 0,
                }
        };
        let usual = instrument.usual_octave();
        let moved = midi.len() / 8 * usize::from(octaves.abs_diff(usual));
        counted.iter().map(cost).sum::<usize>() + moved
    };
    octaves().min_by_key(|&octaves| cost(octaves)).unwrap_or(0)
}

/// The nearest octave move after which a neck has every note of a melody; `None` where none does.
pub fn octave_onto(instrument: &Instrument, capo: Capo, midi: &[i32]) -> Option<i8> {
    let counted = counted(midi);
    octaves().find(|&octaves| {
        let moved = counted
            .iter()
            .map(|&(midi, _)| midi + 12 * i32::from(octaves));
        { moved }.all(|midi| reached(instrument, capo, midi).0)
    })
}

/// Each different note and how often it comes.
fn counted(midi: &[i32]) -> Vec<(i32, usize)> {
    let mut midi = midi.to_vec();
    midi.sort_unstable();
    midi.chunk_by(|a, b| a == b)
        .map(|same| (same[0], same.len()))
        .collect()
}
