//! Sentences about tablature, drones and exercises.

use i18n_embed_fl::fl;

use crate::chart::{DroneReport, Version};
use crate::frets::{Drones, Why};
use crate::theory::NoteStyle;

use super::Words;

impl Words {
    /// That a melody is played in another octave than it is written in.
    pub fn octaves(&self, octaves: i8) -> String {
        let count = octaves.unsigned_abs();
        if octaves < 0 {
            fl!(self.loader, "tab-octaves-down", count = count)
        } else {
            fl!(self.loader, "tab-octaves-up", count = count)
        }
    }

    /// That notes are off the neck, and what to do (see [`Words::onto_the_neck`]).
    pub fn off_the_neck(&self, count: usize, offered: Option<i8>) -> String {
        let off = fl!(self.loader, "tab-off-the-neck", count = count);
        format!("{off} {}", self.onto_the_neck(count, offered))
    }

    /// What to do about notes that are off the neck: the octave that would bring them onto it, or where there is none to
    /// offer, to leave them out or change the key.
    pub fn onto_the_neck(&self, count: usize, offered: Option<i8>) -> String {
        match offered {
            Some(octaves) => {
                let octaves = octaves.to_string();
                fl!(self.loader, "tab-octave-offered", octaves = octaves)
            }
            None => fl!(self.loader, "tab-no-octave", count = count),
        }
    }

    /// That the tune marks notes against the hand, in these bars.
    pub fn marked_against(&self, bars: &str) -> String {
        fl!(self.loader, "tab-marked-against", bars = bars)
    }

    /// Which open courses ring along, and why. `names` are those of the courses of the report.
    pub fn drones(&self, report: &DroneReport, names: &[String], key: &str) -> String {
        let (courses, count) = (names.join(", "), names.len());
        match report.wanted {
            Drones::Off => fl!(self.loader, "tab-drones-off"),
            _ if names.is_empty() && report.wanted == Drones::Plain => {
                fl!(self.loader, "tab-drones-not-open", key = key)
            }
            _ if names.is_empty() => fl!(self.loader, "tab-drones-none"),
            Drones::Plain => fl!(
                self.loader,
                "tab-drones-key",
                count = count,
                courses = courses,
                key = key
            ),
            Drones::ByChord => {
                let why = |why| match why {
                    Why::Chord => fl!(self.loader, "why-chord"),
                    Why::Colour => fl!(self.loader, "why-colour"),
                    _ => fl!(self.loader, "why-key-no-chord"),
                };
                let rings = report.reasons.iter().filter(|(why, _)| why.rings());
                let said: Vec<String> = match rings.clone().count() {
                    1 => rings.map(|&(one, _)| why(one)).collect(),
                    _ => rings
                        .map(|&(one, notes)| format!("{} ({notes})", why(one)))
                        .collect(),
                };
                fl!(
                    self.loader,
                    "tab-drones-chord",
                    count = count,
                    courses = courses,
                    rings = report.rings,
                    notes = report.notes,
                    reasons = said.join(", ")
                )
            }
        }
    }

    /// Why notes have no drone, the most frequent reason first; `None` where all of them ring.
    pub fn left_out(&self, report: &DroneReport, style: NoteStyle) -> Option<String> {
        // That the key has no drones is said already.
        if report.rings == 0 && report.wanted == Drones::Plain {
            return None;
        }
        let silent = report.reasons.iter().filter(|(why, _)| !why.rings());
        let said: Vec<String> = silent
            .map(|&(why, count)| format!("{} ({count})", self.drone_why(why, style)))
            .collect();
        (!said.is_empty() && report.wanted != Drones::Off)
            .then(|| fl!(self.loader, "tab-left-out", reasons = said.join(", ")))
    }

    /// Why a note has its drone, or none.
    pub fn drone_why(&self, why: Why, style: NoteStyle) -> String {
        match why {
            Why::Key => fl!(self.loader, "why-key"),
            Why::Chord => fl!(self.loader, "why-chord"),
            Why::Colour => fl!(self.loader, "why-colour"),
            Why::Clash { with } => fl!(self.loader, "why-clash", note = with.in_style(style)),
            Why::Rough => fl!(self.loader, "why-rough"),
            Why::NotOfKey => fl!(self.loader, "why-not-of-key"),
            Why::Fast => fl!(self.loader, "why-fast"),
            Why::Passing => fl!(self.loader, "why-passing"),
        }
    }

    /// The name of a version of a tune.
    pub fn version_of_tune(&self, version: Version) -> String {
        match version {
            Version::Plain => fl!(self.loader, "version-plain"),
            Version::KeyDrones => fl!(self.loader, "version-key-drones"),
            Version::ChordDrones => fl!(self.loader, "version-chord-drones"),
            Version::DoubleStops => fl!(self.loader, "version-double-stops"),
        }
    }

    /// The easiest version of a tune in which most of it rings.
    pub fn easiest(&self, version: Option<Version>) -> String {
        match version {
            Some(version) => {
                let version = self.version_of_tune(version);
                fl!(self.loader, "tab-easiest", version = version)
            }
            None => fl!(self.loader, "tab-none-rings"),
        }
    }

    /// How often a double stop or a change comes.
    pub fn comes(&self, count: usize) -> String {
        fl!(self.loader, "drill-times", count = count)
    }
}
