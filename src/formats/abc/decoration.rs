//! Decorations by their names (ABC 2.1, 4.14).

use crate::chart::{Jump, Ornament};

/// What a decoration means to us.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Decoration {
    /// A sign on the note.
    Ornament(Ornament),
    /// A sign for the order of playing.
    Sign(Sign),
    /// Nothing that is played or shown: fingerings, dynamics, phrase marks, or a name that nobody knows, which the
    /// standard wants ignored.
    Nothing,
}

/// Signs for the order of playing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sign {
    Segno,
    Coda,
    /// Leave for the coda here; the place is marked like the coda itself.
    ToCoda,
    Fine,
    /// Go back; whether it ends at the coda or the fine, where it says so.
    Back {
        to_sign: bool,
        to_coda: Option<bool>,
    },
}

impl Sign {
    /// The jump of a sign to go back; without a word, one leaves at the coda if there is one and no fine.
    pub(super) fn jump(self, coda_without_fine: bool) -> Option<Jump> {
        let Self::Back { to_sign, to_coda } = self else {
            return None;
        };
        let to_coda = to_coda.unwrap_or(coda_without_fine);
        Some(if to_sign {
            Jump::DalSegno { to_coda }
        } else {
            Jump::DaCapo { to_coda }
        })
    }

    /// A sign in words, with or without dots and spaces: `D.C. al Fine`, `dacapo`, `To Coda`.
    pub(super) fn named(text: &str) -> Option<Self> {
        if text.len() > 40 {
            return None;
        }
        let word: String = text
            .chars()
            .filter(|c| !matches!(c, '.' | ' ' | '-' | '_'))
            .map(|c| c.to_ascii_lowercase())
            .collect();
        let back = |to_sign, to_coda| Some(Self::Back { to_sign, to_coda });
        match word.as_str() {
            "segno" => Some(Self::Segno),
            "coda" => Some(Self::Coda),
            "dacoda" | "tocoda" | "alcoda" => Some(Self::ToCoda),
            "fine" => Some(Self::Fine),
            "dc" | "dacapo" => back(false, None),
            "dcalfine" | "dacapoalfine" => back(false, Some(false)),
            "dcalcoda" | "dacapoalcoda" => back(false, Some(true)),
            "ds" | "dalsegno" => back(true, None),
            "dsalfine" | "dalsegnoalfine" => back(true, Some(false)),
            "dsalcoda" | "dalsegnoalcoda" => back(true, Some(true)),
            _ => None,
        }
    }
}

/// The decoration with a name, as it stands between exclamation marks.
pub(super) fn named(name: &str) -> Decoration {
    if let Some(sign) = Sign::named(name) {
        return Decoration::Sign(sign);
    }
    Decoration::Ornament(match name {
        "staccato" | "wedge" => Ornament::Staccato,
        ">" | "accent" | "emphasis" => Ornament::Accent,
        "tenuto" => Ornament::Tenuto,
        "fermata" | "invertedfermata" => Ornament::Fermata,
        "roll" => Ornament::Roll,
        "trill" | "trill(" => Ornament::Trill,
        "mordent" | "lowermordent" | "uppermordent" | "pralltriller" => Ornament::Mordent,
        "turn" | "turnx" | "invertedturn" | "invertedturnx" => Ornament::Turn,
        "upbow" => Ornament::UpBow,
        "downbow" => Ornament::DownBow,
        "slide" => Ornament::Slide,
        _ => return Decoration::Nothing,
    })
}

/// The name that a letter is short for, where the tune does not say otherwise.
pub(super) fn shorthand(letter: char) -> Option<&'static str> {
    Some(match letter {
        '.' => "staccato",
        '~' => "roll",
        'H' => "fermata",
        'L' => "accent",
        'M' => "lowermordent",
        'O' => "coda",
        'P' => "uppermordent",
        'S' => "segno",
        'T' => "trill",
        'u' => "upbow",
        'v' => "downbow",
        'J' => "slide", // common practice, not in the standard
        _ => return None,
    })
}
