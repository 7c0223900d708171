//! Chord symbols in the house style.
//!
//! A quality is printed as the trade name that needs the fewest additions to say exactly its degrees, so that equal
//! chords always look equal and what is printed can be read back. The house style in ASCII: `m`, `dim`, `aug`, `sus4`,
//! `maj7`, `m(maj7)`, `dim7`, `m7b5`, `aug7`, `6/9`, `add9`; alterations follow at once (`7b9`), what is added or left
//! out stands in brackets (`m(add9)`, `7(no3)`). Typographic: `°`, `°7`, `ø7`, `+`, `+7` and true ♭ and ♯.

use std::fmt;

use super::chord::{
    Chord,
    Degree::{self, *},
    Quality, Symbol,
};
use super::pitch::{Accidentals, NoteStyle};

/// A trade name for a quality.
struct Name {
    ascii: &'static str,
    typographic: &'static str,
    quality: Quality,
    /// Whether alterations and additions may follow it.
    open: bool,
}

const fn name(text: &'static str, quality: Quality) -> Name {
    Name {
        ascii: text,
        typographic: text,
        quality,
        open: true,
    }
}

const fn signed(
    ascii: &'static str,
    typographic: &'static str,
    open: bool,
    quality: Quality,
) -> Name {
    Name {
        ascii,
        typographic,
        quality,
        open,
    }
}

const MAJOR: Quality = Quality::MAJOR;
const MINOR: Quality = Quality::MINOR;
const SEVENTH: Quality = Quality::SEVENTH;
const MINOR_SEVENTH: Quality = MINOR.with(MinorSeventh);
const MAJOR_SEVENTH: Quality = MAJOR.with(MajorSeventh);
const MINOR_MAJOR: Quality = MINOR.with(MajorSeventh);
const DIMINISHED: Quality = Quality::DIMINISHED;

/// Of two names that fit equally well, the earlier is printed.
const NAMES: &[Name] = &[
    name("", MAJOR),
    name("m", MINOR),
    name("7", SEVENTH),
    name("m7", MINOR_SEVENTH),
    name("maj7", MAJOR_SEVENTH),
    name("m(maj7)", MINOR_MAJOR),
    name("6", MAJOR.with(Sixth)),
    name("m6", MINOR.with(Sixth)),
    name("6/9", MAJOR.with(Sixth).with(Ninth)),
    name("m6/9", MINOR.with(Sixth).with(Ninth)),
    name("9", SEVENTH.with(Ninth)),
    name("m9", MINOR_SEVENTH.with(Ninth)),
    name("maj9", MAJOR_SEVENTH.with(Ninth)),
    name("m(maj9)", MINOR_MAJOR.with(Ninth)),
    name("11", SEVENTH.with(Ninth).with(Eleventh).without(MajorThird)),
    name("m11", MINOR_SEVENTH.with(Ninth).with(Eleventh)),
    name("13", SEVENTH.with(Ninth).with(Thirteenth)),
    name("m13", MINOR_SEVENTH.with(Ninth).with(Thirteenth)),
    name("maj13", MAJOR_SEVENTH.with(Ninth).with(Thirteenth)),
    name("m(maj13)", MINOR_MAJOR.with(Ninth).with(Thirteenth)),
    signed("dim", "°", true, DIMINISHED),
    signed("dim7", "°7", true, DIMINISHED.with(DiminishedSeventh)),
    signed("dim(maj7)", "°(maj7)", true, DIMINISHED.with(MajorSeventh)),
    signed("m7b5", "ø7", false, DIMINISHED.with(MinorSeventh)),
    signed("aug", "+", true, Quality::AUGMENTED),
    signed("aug7", "+7", false, Quality::AUGMENTED.with(MinorSeventh)),
    name("5", Quality::POWER),
];

/// Altered notes, what each is called, and the natural note it takes the place of.
const ALTERED: [(Degree, &str, Degree); 6] = [
    (FlatFifth, "b5", Fifth),
    (SharpFifth, "#5", Fifth),
    (FlatNinth, "b9", Ninth),
    (SharpNinth, "#9", Ninth),
    (SharpEleventh, "#11", Eleventh),
    (FlatThirteenth, "b13", Thirteenth),
];

/// Notes that can only be added.
const ADDED: [(Degree, &str); 10] = [
    (MinorThird, "addb3"),
    (MajorThird, "add3"),
    (Fifth, "add5"),
    (Sixth, "add6"),
    (DiminishedSeventh, "addbb7"),
    (MinorSeventh, "add7"),
    (MajorSeventh, "addmaj7"),
    (Ninth, "add9"),
    (Eleventh, "add11"),
    (Thirteenth, "add13"),
];

/// How a quality is said on top of a name.
#[derive(Default)]
struct Wording {
    suspensions: Vec<&'static str>,
    alterations: Vec<&'static str>,
    bracketed: Vec<String>,
}

impl Wording {
    /// What must be said after `name` to mean `quality`; `None` if that cannot be said.
    fn of(quality: Quality, name: &Name) -> Option<Self> {
        let mut wording = Self::default();
        // What the words so far say, exactly as the reader would take them.
        let mut said = name.quality;
        if said == quality {
            return Some(wording);
        }
        if !name.open {
            return None;
        }
        for (degree, text) in [(Second, "sus2"), (Fourth, "sus4")] {
            if quality.has(degree) {
                said = said.without(MinorThird).without(MajorThird).with(degree);
                wording.suspensions.push(text);
            }
        }
        let seventh = [MinorSeventh, MajorSeventh].iter().any(|&d| said.has(d));
        for (degree, text, natural) in ALTERED {
            if !quality.has(degree) || said.has(degree) {
                continue;
            }
            if !quality.has(natural) && (seventh || natural == Fifth) {
                said = said.without(natural);
                wording.alterations.push(text);
            } else {
                wording.bracketed.push(format!("add{text}"));
            }
            said = said.with(degree);
        }
        for (degree, text) in ADDED {
            if quality.has(degree) && !said.has(degree) {
                said = said.with(degree);
                wording.bracketed.push(text.to_owned());
            }
        }
        for (degrees, text) in [(&[MinorThird, MajorThird][..], "no3"), (&[Fifth], "no5")] {
            let extra = degrees.iter().any(|&d| said.has(d) && !quality.has(d));
            if extra {
                said = degrees.iter().fold(said, |q, &d| q.without(d));
                wording.bracketed.push(text.to_owned());
            }
        }
        (said == quality).then_some(wording)
    }

    /// How much a player has to take in beside the name.
    fn cost(&self) -> usize {
        self.suspensions.len() + self.alterations.len() + 2 * self.bracketed.len()
    }

    /// The words after a name.
    fn write(mut self, name: &str) -> String {
        let mut text = name.to_owned() + &self.suspensions.concat();
        if text.is_empty() && !self.alterations.is_empty() {
            // Right after the root a flat or sharp would be read as the root's own.
            let alterations = self.alterations.drain(..).map(str::to_owned);
            self.bracketed.splice(0..0, alterations);
        }
        text += &self.alterations.concat();
        match &self.bracketed[..] {
            [] => {}
            [one] if text.is_empty() && one.starts_with("add") => text += one,
            all => text += &format!("({})", all.join(",")),
        }
        text
    }
}

impl Quality {
    /// What is written after the root, in the house style.
    ///
    /// ```
    /// use fourcourse::theory::{Accidentals, Degree, Quality};
    /// let half_diminished = Quality::DIMINISHED.with(Degree::MinorSeventh);
    /// assert_eq!(half_diminished.suffix(Accidentals::Ascii), "m7b5");
    /// assert_eq!(half_diminished.suffix(Accidentals::Typographic), "ø7");
    /// assert_eq!(Quality::SEVENTH.with(Degree::FlatNinth).suffix(Accidentals::Typographic), "7♭9");
    /// ```
    pub fn suffix(self, accidentals: Accidentals) -> String {
        let best = NAMES
            .iter()
            .filter_map(|name| Some((Wording::of(self, name)?, name)))
            .min_by_key(|(wording, _)| wording.cost());
        let Some((wording, name)) = best else {
            // Unreachable: "5", suspensions, additions and "no5" can say every set.
            return String::new();
        };
        match accidentals {
            Accidentals::Ascii => wording.write(name.ascii),
            // No word but an alteration has a `b` in it.
            Accidentals::Typographic => wording
                .write(name.typographic)
                .replace('b', "♭")
                .replace('#', "♯"),
        }
    }
}

impl fmt::Display for Quality {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.suffix(Accidentals::Ascii))
    }
}

impl Chord {
    /// The symbol in a style of names and signs.
    ///
    /// ```
    /// use fourcourse::theory::{Accidentals, Chord, Naming, NoteStyle};
    /// let chord: Chord = "Bbm7b5/Fb".parse().unwrap();
    /// let style = NoteStyle { naming: Naming::English, accidentals: Accidentals::Typographic };
    /// assert_eq!(chord.in_style(style), "B♭ø7/F♭");
    /// assert_eq!(chord.in_style(NoteStyle { naming: Naming::Solfege, ..style }), "Si♭ø7/Fa♭");
    /// ```
    pub fn in_style(self, style: NoteStyle) -> String {
        let mut text = self.root.in_style(style) + &self.quality.suffix(style.accidentals);
        if let Some(bass) = self.bass {
            text.push('/');
            text += &bass.in_style(style);
        }
        text
    }
}

impl fmt::Display for Chord {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.in_style(NoteStyle::default()))
    }
}

impl Symbol {
    /// The symbol in a style of names and signs; no chord is `N.C.` in all of them.
    pub fn in_style(self, style: NoteStyle) -> String {
        match self {
            Self::Chord(chord) => chord.in_style(style),
            Self::NoChord => "N.C.".to_owned(),
        }
    }

    /// The chord, if there is one.
    pub const fn chord(self) -> Option<Chord> {
        match self {
            Self::Chord(chord) => Some(chord),
            Self::NoChord => None,
        }
    }
}

impl fmt::Display for Symbol {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.in_style(NoteStyle::default()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All of them take seconds unoptimised; a prime step still meets every pair of degrees.
    const STEP: usize = if cfg!(debug_assertions) { 101 } else { 1 };

    /// Every set of degrees on a root: 2^18.
    fn every_quality() -> impl Iterator<Item = Quality> {
        (0_u32..1 << 18).map(|bits| {
            let chosen = (1..19).filter(|i| bits & 1 << (i - 1) != 0);
            Quality::of(&chosen.map(|i| Degree::ALL[i]).collect::<Vec<_>>())
        })
    }

    #[test]
    fn every_possible_quality_can_be_read_back_in_both_styles() {
        for quality in every_quality().step_by(STEP) {
            for style in [Accidentals::Ascii, Accidentals::Typographic] {
                let text = quality.suffix(style);
                assert_eq!(text.parse(), Ok(quality), "{text}");
            }
        }
    }
}
