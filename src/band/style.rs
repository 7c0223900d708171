//! Styles: how a band accompanies, as data.

use std::fmt;

use crate::chart::{Metre, Rhythm, Ticks, Tune, direction_at};

use super::line::{Hit, Line, Mark};
use super::style_table::{BOOM_CHUCK, STYLES};

/// What the accompaniment plays in some metres.
#[derive(Debug)]
pub(super) struct Row {
    pub(super) metres: &'static [(u8, u8)],
    pub(super) bass: &'static str,
    /// The bass of a bar that leads into another chord.
    pub(super) walk: &'static str,
    pub(super) guitar: &'static str,
    pub(super) chop: &'static str,
}

/// Which changes the bass walks into.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Walks {
    Never,
    /// Those that open a line of four bars, or end two bars and more of one chord.
    IntoLines,
    /// All that stand at a bar line.
    IntoChanges,
}

/// How a band accompanies: where bass, chords and chops fall in a bar, and how eighths are shared out.
pub struct Style {
    pub(super) id: &'static str,
    pub(super) swing: (i64, i64),
    pub(super) walks: Walks,
    pub(super) rows: &'static [Row],
}

impl Style {
    /// All styles, in the order of a list to choose from.
    pub fn all() -> impl Iterator<Item = &'static Self> {
        STYLES.iter()
    }

    /// The style of a name.
    ///
    /// ```
    /// use fourcourse::band::Style;
    /// assert_eq!(Style::named("reel").unwrap().id(), "reel");
    /// assert!(Style::named("kazoo").is_none());
    /// ```
    pub fn named(id: &str) -> Option<&'static Self> {
        STYLES.iter().find(|style| style.id == id)
    }

    /// The name in commands and in the Fluent files (`style-slip-jig`).
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// How a beat is shared by two eighths, the first to the second: 1 to 1, or 2 to 1 where they swing.
    pub const fn swing(&self) -> (i64, i64) {
        self.swing
    }

    /// What suits a kind of tune in this metre (common practice).
    ///
    /// ```
    /// use fourcourse::band::Style;
    /// use fourcourse::chart::{Metre, Rhythm};
    /// assert_eq!(Style::fitting(Some(&Rhythm::Song), Metre::new(3, 4)).id(), "waltz");
    /// ```
    pub fn fitting(rhythm: Option<&Rhythm>, metre: Metre) -> &'static Self {
        let by_metre = match (metre.count, metre.unit) {
            (3, 4 | 8) => "waltz",
            (6 | 12, 8) => "jig",
            (9, 8) => "slip-jig",
            _ => "boom-chuck",
        };
        let id = match rhythm {
            Some(Rhythm::Reel) => "reel",
            Some(Rhythm::Jig | Rhythm::Slide) => "jig",
            Some(Rhythm::SlipJig) => "slip-jig",
            Some(Rhythm::Hornpipe | Rhythm::Schottische) => "hornpipe",
            Some(Rhythm::Polka) => "polka",
            Some(Rhythm::Waltz | Rhythm::Mazurka) => "waltz",
            Some(Rhythm::March | Rhythm::Strathspey) => "march",
            Some(Rhythm::Air) => "air",
            Some(Rhythm::Swing) => "swing",
            Some(Rhythm::Rag | Rhythm::Song | Rhythm::Other(_)) | None => by_metre,
        };
        Self::named(id).unwrap_or(&STYLES[0])
    }

    /// What suits a tune: the strum that it brings along, or else what suits its kind.
    pub fn of(tune: &Tune) -> &'static Self {
        let own = tune.strum.is_some() || tune.parts.iter().any(|part| part.strum.is_some());
        if own && tune.rhythm != Some(Rhythm::Swing) {
            Self::named("strum").unwrap_or(&STYLES[0])
        } else {
            Self::fitting(tune.rhythm.as_ref(), tune.metre)
        }
    }

    /// Whether the guitar strums as the tune says.
    pub(super) fn strums_as_the_tune_says(&self) -> bool {
        self.id == "strum"
    }

    /// What is played in a metre: the style's own row, or that of the boom-chuck, or what follows from the beats.
    pub(super) fn pattern(&self, metre: Metre) -> Pattern {
        let fits =
            |row: &&Row| metre.groups[0] == 0 && row.metres.contains(&(metre.count, metre.unit));
        let row = self.rows.iter().find(fits);
        match row.or_else(|| BOOM_CHUCK.iter().find(fits)) {
            Some(row) => {
                let line = |text| Line::read(text, metre.bar());
                Pattern {
                    bass: line(row.bass),
                    walk: line(row.walk),
                    guitar: line(row.guitar),
                    chop: line(row.chop),
                }
            }
            None => Pattern::of_beats(metre),
        }
    }
}

impl fmt::Debug for Style {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Style({})", self.id)
    }
}

impl PartialEq for Style {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Eq for Style {}

/// A bar of accompaniment.
#[derive(Debug, Clone, Default)]
pub(super) struct Pattern {
    pub(super) bass: Line,
    pub(super) walk: Line,
    pub(super) guitar: Line,
    pub(super) chop: Line,
}

impl Pattern {
    /// A boom-chuck for any metre: each group of beats has its bass note first and its chords on what follows. Beats
    /// that are counted one by one go in twos with a three first where they are odd (5/4 is 3 and 2); of a beat that has
    /// notes of its own, the last one has the chord, so that 7/8 is `b.D bD bD`.
    fn of_beats(metre: Metre) -> Self {
        let (note, groups) = groups(metre);
        let counted = groups.counted;
        let mut pattern: [Vec<Option<Mark>>; 4] = Default::default();
        let mut at = Ticks::ZERO;
        let last_group = groups.notes.len().saturating_sub(1);
        for (i, &notes) in groups.notes.iter().enumerate() {
            for k in 0..notes {
                let chord = k > 0 && (counted || k + 1 == notes);
                let bass = if i == 0 { Hit::Root } else { Hit::Other };
                let walks = i == last_group && i > 0 && (k == 0 || k + 1 == notes);
                let on = |yes: bool, hit| {
                    yes.then(|| Mark {
                        direction: direction_at(metre, at),
                        ..Mark::new(hit)
                    })
                };
                pattern[0].push(on(k == 0, bass));
                pattern[1].push(on(walks, Hit::Walk).or(on(k == 0, bass)));
                pattern[2].push(on(k == 0, bass).or(on(chord, Hit::Chuck)));
                pattern[3].push(on(chord, Hit::Chop));
                at += note;
            }
        }
        let [bass, walk, guitar, chop] = pattern.map(|marks| Line::new(note, marks));
        Self {
            bass,
            walk,
            guitar,
            chop,
        }
    }
}

/// Notes in each group that has a bass note.
struct Groups {
    notes: Vec<usize>,
    /// The notes are beats, counted one by one.
    counted: bool,
}

/// The length of the smallest note that is played in a metre, and how these notes are grouped. In free time four quarters
/// are taken for a bar.
fn groups(metre: Metre) -> (Ticks, Groups) {
    let unit = i64::from(metre.unit.max(1));
    let note = Ticks::of(1, unit);
    let beats = match metre.beats() {
        beats if beats.is_empty() => vec![note; 4],
        beats => beats,
    };
    let counted = beats.iter().all(|&beat| beat == note);
    if counted && unit > 2 {
        let mut left = beats.len();
        let mut notes = Vec::new();
        while left > 0 {
            let group = if left % 2 == 1 && left > 1 {
                3
            } else {
                left.min(2)
            };
            notes.push(group);
            left -= group;
        }
        return (note, Groups { notes, counted });
    }
    let note = if counted {
        Ticks::of(1, unit * 2)
    } else {
        note
    };
    let notes = |beat: &Ticks| usize::try_from(beat.div_rem(note).0).unwrap_or(1).max(1);
    let notes = beats.iter().map(notes).collect();
    let counted = false;
    (note, Groups { notes, counted })
}
