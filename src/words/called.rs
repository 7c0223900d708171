//! Words for what was called, and for what is safe to strum.

use i18n_embed_fl::fl;

use super::Words;
use crate::desk::{
    CalledTune, CapoView, HeldName, HeldView, KeyView, RingString, SafePart, SetupView, Verdict,
};
use crate::theory::Mode;

impl Words {
    /// Rhythm and form of a tune that was called.
    pub fn called_tune(&self, row: &CalledTune) -> String {
        let tune = &row.tune;
        let kind = match tune.rhythm.as_str() {
            "" => tune.metre.clone(),
            rhythm => self.rhythm(rhythm),
        };
        // A form that does not fit a glance says less than none.
        let form = Some(&tune.form).filter(|form| form.chars().count() <= 8);
        joined([kind, form.cloned().unwrap_or_default()])
    }

    /// Where the melody of a called tune begins, and on which chord.
    pub fn called_start(&self, row: &CalledTune) -> String {
        let chord = match row.chord.as_str() {
            "" => String::new(),
            chord => fl!(self.loader, "called-begins", chord = chord),
        };
        joined([self.start(&row.tune), chord])
    }

    /// How many matches are not shown; empty where all are.
    pub fn called_more(&self, count: usize) -> String {
        match count {
            0 => String::new(),
            _ => fl!(self.loader, "called-more", count = count),
        }
    }

    /// The way to the stand, and in which key.
    pub fn to_stand_in(&self, key: &str) -> String {
        fl!(self.loader, "called-to-stand", key = key)
    }

    /// A mode as a control names it.
    pub fn mode(&self, mode: Mode) -> String {
        let name = self.named("mode", mode.id());
        let mut letters = name.chars();
        let first: String = letters
            .next()
            .into_iter()
            .flat_map(char::to_uppercase)
            .collect();
        first + letters.as_str()
    }

    /// A capo and what guitarists then hold.
    pub fn capo(&self, capo: &CapoView) -> String {
        let chords = capo.chords.join(" ");
        match capo.fret {
            0 => fl!(self.loader, "called-capo-none", chords = chords),
            fret => fl!(self.loader, "called-capo", fret = fret, chords = chords),
        }
    }

    /// How an instrument is tuned for a key.
    pub fn setup(&self, setup: &SetupView) -> String {
        let strings = setup.strings.as_str();
        let tuning = match setup.retuned {
            true => fl!(self.loader, "called-tuned-anew", strings = strings),
            false => strings.to_owned(),
        };
        match setup.capo {
            0 => tuning,
            fret => fl!(
                self.loader,
                "called-tuned-capo",
                tuning = tuning,
                fret = fret
            ),
        }
    }

    /// An open string in a key, for those who listen.
    pub fn ring_in_key(&self, ring: &RingString) -> String {
        let number = ring.string.map(|number| format!(" {number}"));
        let course = ring.name.clone() + &number.unwrap_or_default();
        match ring.verdict {
            Verdict::Ring => fl!(self.loader, "ring-yes", course = course),
            Verdict::Colour => fl!(self.loader, "ring-scale", course = course),
            Verdict::Clash => fl!(self.loader, "ring-outside", course = course),
        }
    }

    /// The scale on the fingerboard for those who listen: its notes, and the frets of each course.
    pub fn scale(&self, view: &KeyView) -> String {
        let course = |(at, name): (usize, &String)| {
            let marks = view.scale.iter().filter(|mark| mark.course == at);
            let frets: Vec<_> = marks.map(|mark| mark.fret.to_string()).collect();
            format!("{name} {}", frets.join(" "))
        };
        let courses: Vec<_> = view.courses.iter().enumerate().map(course).collect();
        fl!(self.loader, "called-scale-said", notes = courses.join(", "))
    }

    /// Whose hand it is: the instrument and its capo.
    pub fn neighbour(&self, view: &HeldView) -> String {
        let id = view.instruments.get(view.instrument);
        let instrument = self.instrument(id.map_or("", String::as_str));
        match view.capo {
            0 => fl!(self.loader, "called-whose-no-capo", instrument = instrument),
            fret => fl!(
                self.loader,
                "called-whose-capo",
                instrument = instrument,
                fret = fret
            ),
        }
    }

    /// What a held chord lacks, and what the hand makes behind a capo.
    pub fn held_detail(&self, name: &HeldName) -> String {
        let held = name.played_as.as_deref();
        joined([
            self.missing(&name.missing),
            held.map(|chord| self.played_as(chord)).unwrap_or_default(),
        ])
    }

    /// What the hand sounds.
    pub fn sounds(&self, notes: &[String]) -> String {
        match notes {
            [] => String::new(),
            notes => fl!(self.loader, "called-sounds", notes = notes.join(" ")),
        }
    }

    /// What is above the nut of a course, for those who listen.
    pub fn above_nut(&self, course: &str, fret: Option<u8>) -> String {
        match fret {
            None => fl!(self.loader, "course-mute", course = course),
            Some(0) => fl!(self.loader, "course-open", course = course),
            Some(fret) => fl!(self.loader, "course-fret", course = course, fret = fret),
        }
    }

    /// Over what it is safe.
    pub fn safe_over(&self, part: &SafePart) -> String {
        match part.part.as_str() {
            "" => fl!(self.loader, "safe-over-tune"),
            part => fl!(self.loader, "safe-over", part = part),
        }
    }

    /// How much of the time it fits, of 100: as much as one takes in while strumming.
    pub fn safe_fits(&self, part: &SafePart) -> String {
        match part.fits {
            90.. => fl!(self.loader, "safe-fits-nearly"),
            60.. => fl!(self.loader, "safe-fits-most"),
            _ => fl!(self.loader, "safe-fits-some"),
        }
    }

    /// The one note that is safe, and where it lies.
    pub fn safe_note(&self, part: &SafePart) -> String {
        let (note, course) = (part.note.as_str(), part.course.as_str());
        match (course, part.fret) {
            ("", _) => fl!(self.loader, "safe-note-alone", note = note),
            (_, 0) => fl!(self.loader, "safe-note", note = note, course = course),
            (_, fret) => fl!(
                self.loader,
                "safe-note-fret",
                note = note,
                course = course,
                fret = fret
            ),
        }
    }
}

/// What there is of two, with a dot between.
fn joined(parts: [String; 2]) -> String {
    let said: Vec<_> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    said.join(" · ")
}
