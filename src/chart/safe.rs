//! What is safe to keep strumming when a change was missed.

use std::ops::Range;

use crate::theory::{Chord, Key, NoteName, PitchClass, Quality, Symbol};

use super::changes::Changes;
use super::order::Playing;
use super::tune::Tune;

/// How something goes with a stretch of the tune, each as a share of its time from 0 to 1; what is left is colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// It belongs to the chord.
    pub fits: f32,
    /// It lies a half step from a tone of the chord.
    pub clashes: f32,
}

/// A chord and a note that go with all of a stretch as well as anything does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Safe {
    /// The chord.
    pub chord: Chord,
    /// How its notes go, on the average.
    pub chord_fit: Fit,
    /// The note: one course, struck on and on.
    pub note: NoteName,
    /// How it goes.
    pub note_fit: Fit,
}

/// How good a share is: a clash is heard more than a fit.
fn worth(fit: Fit) -> f32 {
    fit.fits - 2.0 * fit.clashes
}

/// The chord and the note that are safest over some played bars: what belongs to the chords for most of the time and
/// rubs with them for the least, a clash counting twice. The note is one of the scale or of the chords; the chord is one
/// of the stretch or the tonic's, with its third or without (the bare fifth of the tonic is the usual answer: common
/// practice). `None` where no chord sounds.
pub fn safe_over(
    tune: &Tune,
    playing: &Playing,
    changes: &Changes,
    bars: Range<usize>,
) -> Option<Safe> {
    let bars = playing.bars.get(bars)?;
    let (first, last) = (bars.first()?, bars.last()?);
    let key: Key = {
        let keys = tune.keys();
        keys.get(first.written).copied().unwrap_or(tune.key)
    };
    let mut held: Vec<(Chord, f32)> = Vec::new();
    for change in changes.as_slice() {
        let length = change.end().min(last.end()).0 - change.at.max(first.start).0;
        let Symbol::Chord(chord) = change.symbol else {
            continue;
        };
        if length <= 0 {
            continue;
        }
        // Ticks of a part are far inside what a share needs.
        #[allow(clippy::cast_possible_truncation)]
        let length = length as f64 as f32;
        match held.iter_mut().find(|(there, _)| *there == chord) {
            Some((_, time)) => *time += length,
            None => held.push((chord, length)),
        }
    }
    let whole: f32 = held.iter().map(|(_, time)| time).sum();
    if held.is_empty() {
        return None;
    }
    held.sort_by(|a, b| b.1.total_cmp(&a.1));

    let of_note = |class: PitchClass| {
        let mut fit = Fit {
            fits: 0.0,
            clashes: 0.0,
        };
        for &(chord, time) in &held {
            let apart =
                |note: NoteName| (note.class().semitones() - class.semitones()).rem_euclid(12);
            let tones: Vec<NoteName> = { chord.tones() }
                .map(|(_, note)| note)
                .chain(chord.bass)
                .collect();
            if tones.iter().any(|&note| apart(note) == 0) {
                fit.fits += time / whole;
            } else if tones.iter().any(|&note| matches!(apart(note), 1 | 11)) {
                fit.clashes += time / whole;
            }
        }
        fit
    };
    let of_chord = |chord: Chord| {
        let (mut fit, mut count) = (
            Fit {
                fits: 0.0,
                clashes: 0.0,
            },
            0.0,
        );
        for (_, note) in chord.tones() {
            let note = of_note(note.class());
            fit.fits += note.fits;
            fit.clashes += note.clashes;
            count += 1.0;
        }
        Fit {
            fits: fit.fits / count,
            clashes: fit.clashes / count,
        }
    };

    // Of equal candidates the first is taken: the tonic, then what is held longest.
    let tonic = key.main_chords()[0];
    let roots = std::iter::once(tonic).chain(held.iter().map(|(chord, _)| chord.triad()));
    let chords = roots.flat_map(|chord| {
        let bare = matches!(chord.quality, Quality::MAJOR | Quality::MINOR);
        let bare = bare.then(|| Chord::new(chord.root, Quality::POWER));
        std::iter::once(chord).chain(bare)
    });
    let chord = best(chords.map(|chord| (chord, of_chord(chord))))?;
    let scale = key.scale();
    let in_scale = [0, 4, 1, 2, 3, 5, 6].map(|degree: usize| scale[degree]);
    let tones = held
        .iter()
        .flat_map(|(chord, _)| chord.tones().map(|(_, note)| note));
    let notes = in_scale.into_iter().chain(tones);
    let note = best(notes.map(|note| (note, of_note(note.class()))))?;
    Some(Safe {
        chord: chord.0,
        chord_fit: chord.1,
        note: note.0,
        note_fit: note.1,
    })
}

/// The first of the best.
fn best<T>(candidates: impl Iterator<Item = (T, Fit)>) -> Option<(T, Fit)> {
    // A little margin, so that what is equal but for rounding stays in its order.
    candidates.reduce(|best, next| {
        if worth(next.1) > worth(best.1) + 1e-4 {
            next
        } else {
            best
        }
    })
}
