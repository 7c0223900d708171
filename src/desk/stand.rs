//! The stand as it is seen.

use crate::frets::Shape;
use crate::theory::{Degree, NoteName};

use super::band::BandView;
use super::safe::SafePart;
use super::tonight::NextTune;

/// What chords are called. Their other name stands small on the card of the chord now either way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum ChordNames {
    /// By their letters.
    #[default]
    Letters,
    /// By their numbers in the key.
    Numbers,
    /// By their letters, with the numbers beside them on the cards and on the map.
    Both,
}

/// How much simpler than written the chords are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Simplify {
    /// As written.
    #[default]
    Written,
    /// Triads only.
    Triads,
    /// The key's three main chords only.
    ThreeChords,
}

/// A course above the nut: what the player should do with it while it is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Let it ring: it belongs to the chord.
    Ring,
    /// It colours the chord: leave it, or take it on purpose.
    Colour,
    /// It rubs against the chord by a half step.
    Clash,
}

/// An open string over the chord now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RingString {
    /// Its note in the player's names.
    pub name: String,
    /// Which string it is, the highest 1, where another has the same name.
    pub string: Option<u8>,
    /// Whether it may ring.
    pub verdict: Verdict,
}

/// What of a chord a shape leaves out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum MissingNote {
    Root,
    Third,
    Fifth,
    Seventh,
    Other,
    /// The slash bass: others in the circle play it.
    Bass,
}

impl MissingNote {
    /// Each kind of note that a shape lacks, once.
    pub fn in_shape(shape: &Shape) -> Vec<Self> {
        let mut missing = Self::of(&shape.missing);
        if shape.bass_left_out {
            missing.insert(0, Self::Bass);
        }
        missing
    }

    /// Each kind of note among degrees, once.
    pub fn of(degrees: &[Degree]) -> Vec<Self> {
        let mut missing = Vec::new();
        for degree in degrees {
            let note = match degree {
                Degree::Root => Self::Root,
                Degree::MinorThird | Degree::MajorThird => Self::Third,
                Degree::FlatFifth | Degree::Fifth | Degree::SharpFifth => Self::Fifth,
                Degree::DiminishedSeventh | Degree::MinorSeventh | Degree::MajorSeventh => {
                    Self::Seventh
                }
                _ => Self::Other,
            };
            if !missing.contains(&note) {
                missing.push(note);
            }
        }
        missing
    }
}

/// A chord shape, ready to be drawn. Courses run from the left as the player sees them, mirrored already for a
/// left-handed player.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShapeView {
    /// Names of the courses in the player's note names.
    pub courses: Vec<String>,
    /// Strings on each course: 1 or 2.
    pub strings: Vec<u8>,
    /// Fret of each course, 0 open, `None` not played.
    pub frets: Vec<Option<u8>>,
    /// Finger on each course, 1 index to 4 little, 0 none.
    pub fingers: Vec<u8>,
    /// Fingers that lie over several courses: finger, fret, leftmost and rightmost course.
    pub barres: Vec<(u8, u8, usize, usize)>,
    /// The fret at the top of the box; 1 draws the nut.
    pub first_fret: u8,
    /// Chord tones that the shape leaves out.
    pub missing: Vec<MissingNote>,
    /// How many shapes there are for this chord, and which this is, from 1.
    pub of: (usize, usize),
}

/// A chord as a card shows it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ChordCard {
    /// The large text: letters or numbers as the player chose, typographic; empty for no chord.
    pub name: String,
    /// Its other name: the number beside letters, the letters beside a number.
    pub other: String,
    /// With a capo: the chord whose shape is played.
    pub played_as: Option<String>,
    /// Nobody plays a chord here.
    pub no_chord: bool,
    /// Its shape, where the instrument has one.
    pub shape: Option<ShapeView>,
}

impl ChordCard {
    /// The name in two pieces: the root with its signs, and all that follows. A card sets the root large.
    ///
    /// ```
    /// # use fourcourse::desk::ChordCard;
    /// let pieces = |name: &str| {
    ///     let card = ChordCard { name: name.into(), ..ChordCard::default() };
    ///     let (root, rest) = card.pieces();
    ///     format!("{root} {rest}")
    /// };
    /// assert_eq!(pieces("F♯m7♭5/A"), "F♯ m7♭5/A");
    /// assert_eq!(pieces("Sol♯m"), "Sol♯ m");
    /// assert_eq!(pieces("♭7"), "♭7 ");
    /// assert_eq!(pieces("Fadd9"), "F add9");
    /// ```
    pub fn pieces(&self) -> (&str, &str) {
        const SIGNS: [char; 2] = ['♭', '♯'];
        const SYLLABLES: [&str; 7] = ["Do", "Re", "Mi", "Fa", "Sol", "La", "Si"];
        let name = self.name.as_str();
        let before = name.len() - name.trim_start_matches(SIGNS).len();
        let body = &name[before..];
        let syllable = SYLLABLES
            .into_iter()
            .find(|syllable| body.starts_with(syllable));
        let letter = match syllable {
            // F with an added note, not a syllable.
            Some("Fa") if body.starts_with("Fadd") => 1,
            Some(syllable) => syllable.len(),
            None => body.chars().next().map_or(0, char::len_utf8),
        };
        let after = body[letter..].trim_start_matches(SIGNS).len();
        // A number has its sign in front of it, so a sign behind it belongs to the quality.
        let number = body.starts_with(|first: char| first.is_ascii_digit());
        let cut = if number {
            before + letter
        } else {
            name.len() - after
        };
        name.split_at(cut)
    }
}

/// The chord after this one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NextCard {
    /// The chord.
    pub chord: ChordCard,
    /// Felt beats until it comes, rounded up: 1 is the last beat before it.
    pub beats_left: u32,
    /// Felt beats from the chord now to it: the number of dots to draw.
    pub beats: u32,
    /// Full bars until it comes, where it is more than a bar off.
    pub bars_left: u32,
}

/// A place in the strum lane.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlotView {
    /// What is counted under it: `1`, `&`, `2`.
    pub count: String,
    /// On a felt beat.
    pub on_beat: bool,
    /// The hand goes up (else down).
    pub up: bool,
    /// The hand passes without a sound.
    pub silent: bool,
    /// A bass note alone.
    pub bass: bool,
    /// Damped at once.
    pub chop: bool,
    /// Louder.
    pub accent: bool,
}

/// The strum of the bar now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StrumView {
    /// The pattern's name by id, or the tune's own word.
    pub name: String,
    /// Its places.
    pub slots: Vec<SlotView>,
    /// The place now.
    pub now: Option<usize>,
}

/// Whether a bar of the map has been played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Passed {
    Played,
    Now,
    Ahead,
}

/// A bar of the map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MapBar {
    /// Its place in playing order, to jump to: in this pass, or the next time it comes.
    pub played: usize,
    /// Chords that begin in it; empty where the chord before goes on.
    pub chords: String,
    /// The same as numbers, where letters and numbers are wanted.
    pub numbers: String,
    /// Whether it is a pickup, drawn narrow.
    pub pickup: bool,
    /// Passes of its ending (`1`, `2`), at the bar where the ending begins.
    pub ending: String,
    /// Whether it has been played.
    pub passed: Passed,
    /// Whether it is in the loop.
    pub looped: bool,
}

/// A line of the map: up to four bars and a pickup.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MapLine {
    /// The part that begins here, with its pass where it is played now (`A`); empty inside a part.
    pub part: String,
    /// Its first full bar in playing order: where the circle is whose line begins now.
    pub top: usize,
    /// Whether the bar now is in this part.
    pub current: bool,
    /// The bars.
    pub bars: Vec<MapBar>,
}

/// A part in the order of playing: A1 A2 B1 B2.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FormChip {
    /// The part (`A`).
    pub part: String,
    /// Which time it comes, from 1; 0 where it comes only once.
    pub pass: u8,
    /// Whether it has been played.
    pub passed: Passed,
}

/// Words under the notes, in phrases of a glance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SungWords {
    /// The phrase that is sung now, or that comes first.
    pub now: String,
    /// The phrase after it in this time through.
    pub then: String,
}

/// How the stand follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FollowState {
    /// Waiting at a bar for the player.
    Waiting,
    /// The player says where bars begin.
    ByHand,
    /// Counting in: which beat is counted, from 1, and how many there are; the beats of the pickup are not counted.
    CountIn {
        /// Beat of its bar, from 1.
        beat: u32,
        /// Bar of the count-in, from 1.
        bar: u32,
    },
    /// The clock runs.
    ByClock,
    /// Held.
    Held,
    /// The tune is over.
    Ended,
}

/// The stand view.
#[derive(Debug, Clone, PartialEq)]
pub struct StandView {
    /// Title of the tune.
    pub title: String,
    /// Rhythm by id, or the tune's own word.
    pub rhythm: String,
    /// Key now, in the player's names (`A`, `F♯m`).
    pub key: String,
    /// Its mode by id.
    pub mode: String,
    /// Key it is written in, where that is another.
    pub written_key: Option<String>,
    /// The twelve keys to choose from, upwards from the written one: name and tonic.
    pub keys: Vec<(String, NoteName)>,
    /// Letters, numbers or both.
    pub names: ChordNames,
    /// How much simpler.
    pub simplify: Simplify,
    /// Capo in frets.
    pub capo: u8,
    /// The time through, from 1.
    pub time: u32,
    /// How often in all; 0 is open.
    pub times: u32,
    /// This is the last time.
    pub last_time: bool,
    /// Beats a minute and the length of a beat as a fraction of a whole note (1/4, 3/8, 1/2).
    pub tempo: (u32, (u32, u32)),
    /// How it follows.
    pub follow: FollowState,
    /// The chord now.
    pub now: ChordCard,
    /// The chord after it; `None` when the last chord has come.
    pub next: Option<NextCard>,
    /// The strum.
    pub strum: StrumView,
    /// Open strings over the chord now.
    pub ring: Vec<RingString>,
    /// The parts in playing order.
    pub form: Vec<FormChip>,
    /// The map of the bars.
    pub map: Vec<MapLine>,
    /// The line of the map where the bar now stands.
    pub line: usize,
    /// What is safe to keep strumming when a change was missed, over each part.
    pub safe: Vec<SafePart>,
    /// The bar now within its part, from 1, and how many the part has, as a player counts.
    pub bar: (u32, u32),
    /// Words that are sung now; `None` where the tune has none.
    pub sung: Option<SungWords>,
    /// The band.
    pub band: BandView,
    /// Whether the tune is on tonight's list.
    pub listed: bool,
    /// The tune that comes after it, where the list is being played.
    pub next_tune: Option<NextTune>,
}
