//! What a shape lacks to the ear: tones that do not sound, courses that are left out, and what lies lowest.

use crate::theory::{Degree, Need};

use super::effort::{Weights, times};
use super::hand::Frets;
use super::instrument::Texture;
use super::neck::Neck;

/// What sounds.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sounding {
    /// Tones, as bits by place.
    pub(super) tones: u16,
    /// Courses.
    pub(super) courses: u8,
    /// Courses left out after the last one that sounds.
    pub(super) run: u8,
}

/// Notes nearer than a fourth (in semitones) are mud when the lower one lies below G2 (a MIDI key): common practice;
/// arrangers draw the line for thirds somewhat higher, but every guitarist's open G has G2 and B2.
const FOURTH: i32 = 5;
const MUDDY_BELOW: i32 = 43;

/// A slash bass must lie in the lowest octave of a neck that has bass courses, or it is no bass (common practice).
const OCTAVE: i32 = 12;

/// What is lacking in the sound of some frets; `None` where the chord is no longer itself.
pub(super) fn lack(neck: &Neck, weights: &Weights, frets: &Frets, now: Sounding) -> Option<f32> {
    let tones = &neck.tones;
    let (mut lowest, mut next) = ((i32::MAX, 0), i32::MAX);
    let (mut foreign, mut roots) = (0_u8, 0_u8);
    for (row, &fret) in neck.at.iter().zip(frets) {
        let Some((midi, place)) = row.get(usize::from(fret)).copied().flatten() else {
            continue;
        };
        if midi < lowest.0 {
            next = lowest.0;
            lowest = (midi, place);
        } else {
            next = next.min(midi);
        }
        // The root is the first tone.
        roots += u8::from(place == 0);
        foreign += u8::from(tones.get(place).need.is_none());
    }
    let (low, lowest) = lowest;
    if foreign > u8::from(tones.bass == Some(lowest)) {
        return None;
    }
    let wanted = neck.together().min(4);
    let mut effort = weights.thin * times(wanted.saturating_sub(usize::from(now.courses)));
    if neck.texture == Texture::Full {
        // The strum runs on to the last course: one that is left out there must be damped too.
        effort += f32::from(now.run) * (weights.damped - weights.left_out);
    }
    for (place, tone) in tones.list().iter().enumerate() {
        if now.tones & (1 << place) == 0 {
            effort += match tone.need {
                Some(Need::Third) => weights.no_third,
                Some(Need::Fifth) => weights.no_fifth,
                Some(Need::Spare) => weights.no_spare,
                Some(Need::Root) => weights.no_root,
                Some(Need::Vital) => weights.no_third + weights.no_root,
                None => 0.0,
            };
        }
    }
    if roots == 1 {
        effort += weights.root_once;
    }
    if tones.is_other_triad(now.tones) {
        effort += weights.other_triad;
    }
    effort += off_ground(neck, weights, (low, lowest));
    let has_bass = neck.has_bass(weights.bass_beyond);
    if has_bass && low < MUDDY_BELOW && next.saturating_sub(low) < FOURTH && next > low {
        effort += weights.muddy;
    }
    Some(effort)
}

/// What it costs that a tone, given with its MIDI key, is the lowest.
pub(super) fn off_ground(neck: &Neck, weights: &Weights, (low, lowest): (i32, u8)) -> f32 {
    let tones = &neck.tones;
    let has_bass = neck.has_bass(weights.bass_beyond);
    let too_high = has_bass && low >= neck.lowest + OCTAVE;
    if tones.bass == Some(lowest) && !too_high {
        return 0.0;
    }
    let mut effort = 0.0;
    if tones.bass.is_some() {
        effort += if has_bass {
            weights.no_bass
        } else {
            weights.inverted
        };
    }
    // The root is the first tone.
    if has_bass && lowest != 0 {
        effort += weights.bass;
    }
    let firm = matches!(tones.get(lowest).degree, Some(Degree::Root | Degree::Fifth));
    if !firm {
        effort += if tones.list().len() > 3 {
            weights.inverted_big
        } else {
            weights.inverted
        };
    }
    effort
}
