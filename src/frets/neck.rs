//! A neck with one chord on it: where its tones lie, and what a grip on them is called.

use crate::theory::Chord;

use super::hand::{self, Frets, Grip, NOT_PLAYED, Reach};
use super::instrument::{Capo, Instrument, MAX_COURSES, Texture};
use super::ring::spelled;
use super::shape::{BOX_FRETS, Shape};
use super::tones::Tones;

/// A neck with the tones of one chord on it.
pub(super) struct Neck {
    pub(super) tones: Tones,
    pub(super) courses: usize,
    /// MIDI key and tone of each course at each fret, where a tone of the chord is there.
    pub(super) at: Vec<[Option<(i32, u8)>; 32]>,
    /// Courses that start above the nut.
    pub(super) short: [bool; MAX_COURSES],
    pub(super) texture: Texture,
    /// MIDI key of the lowest open course, the capo counted.
    pub(super) lowest: i32,
    pub(super) last: u8,
    pub(super) reach: Reach,
}

impl Neck {
    pub(super) fn new(instrument: &Instrument, capo: Capo, chord: Chord) -> Self {
        let tones = Tones::of(chord, instrument.texture);
        let courses = instrument.courses.len().min(MAX_COURSES);
        let mut short = [false; MAX_COURSES];
        let mut at = vec![[None; 32]; courses];
        let last = instrument.last_fret(capo);
        for (course, row) in at.iter_mut().enumerate() {
            short[course] = instrument.courses[course].starts_at > 0;
            let open = instrument.courses[course].open.midi();
            for fret in 0..=last {
                let up = instrument.semitones(course, fret, capo);
                row[usize::from(fret)] = up.and_then(|up| {
                    let midi = open + i32::from(up);
                    tones.sounded(midi).map(|tone| (midi, tone))
                });
            }
        }
        let opens = (0..courses).filter_map(|course| instrument.sound(course, 0, capo));
        let lowest = opens.map(|open| open.midi()).min().unwrap_or(0);
        Self {
            tones,
            courses,
            at,
            short,
            texture: instrument.texture,
            lowest,
            last,
            reach: Reach::of(instrument, capo),
        }
    }

    /// Most courses that sound at once.
    pub(super) fn together(&self) -> usize {
        match self.texture {
            Texture::Full => self.courses,
            Texture::DoubleStop => self.courses.min(2),
            Texture::RootAndFifth => self.courses.min(self.tones.list().len()),
        }
    }

    /// Whether its lowest courses are heard as a bass: it has more courses than these, short strings not counted, or
    /// plays nothing else.
    pub(super) fn has_bass(&self, bass_beyond: usize) -> bool {
        let long = self.short[..self.courses].iter().filter(|short| !**short);
        self.texture == Texture::RootAndFifth || long.count() > bass_beyond
    }

    /// What the player is told of a grip on some frets.
    pub(super) fn shape(&self, frets: &Frets, grip: &Grip, cost: f32) -> Shape {
        let frets = &frets[..self.courses];
        let played = |fret: u8| (fret != NOT_PLAYED).then_some(fret);
        let sounding = frets.iter().enumerate().filter_map(|(course, &fret)| {
            played(fret).and_then(|fret| self.at[course][usize::from(fret)])
        });
        let sounding: Vec<(i32, u8)> = sounding.collect();
        let stopped = || {
            frets
                .iter()
                .copied()
                .filter(|&fret| fret != 0 && fret != NOT_PLAYED)
        };
        let (low, high) = (stopped().min().unwrap_or(0), stopped().max().unwrap_or(0));
        let missing = self
            .tones
            .list()
            .iter()
            .enumerate()
            .filter_map(|(place, tone)| {
                let sounds = sounding
                    .iter()
                    .any(|&(_, sounded)| usize::from(sounded) == place);
                if sounds { None } else { tone.degree }
            });
        let lowest = sounding.iter().min_by_key(|(midi, _)| *midi);
        let span = self.reach.fret_mm[usize::from(high)] - self.reach.fret_mm[usize::from(low)];
        Shape {
            frets: frets.iter().map(|&fret| played(fret)).collect(),
            fingers: grip.fingers[..self.courses].to_vec(),
            barres: hand::barres(frets, &grip.fingers),
            notes: sounding
                .iter()
                .map(|&(midi, tone)| spelled(self.tones.get(tone).name, midi))
                .collect(),
            missing: missing.collect(),
            lowest: lowest.and_then(|&(_, tone)| self.tones.get(tone).degree),
            bass_left_out: (self.tones.bass)
                .is_some_and(|bass| lowest.is_none_or(|&(_, tone)| tone != bass)),
            span_mm: if low == 0 { 0.0 } else { f64::from(span) },
            base_fret: if high <= BOX_FRETS { 1 } else { low },
            movable: !frets.contains(&0),
            cost,
        }
    }
}
