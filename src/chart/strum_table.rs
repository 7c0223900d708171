//! The built-in strum patterns, and which one suits a tune.

use super::metre::Metre;
use super::strum::{Stroke, StrumPattern, beat_at, hand_step};
use super::time::Ticks;
use super::tune::{Rhythm, Tune};

/// A name, the metres it is for, and its marks.
type Row = (&'static str, &'static [(u8, u8)], &'static str);

/// Patterns under their trade names (marks: see [`StrumPattern::read`]).
///
/// Common practice: `beginner`, `down-up`, `d-du`, `island`, `boom-chuck`, `chop`, `waltz`, `waltz-du`, `jig`, `slip-jig`, and
/// every direction. From memory, unchecked: the accents, `shuffle` (long-short-short), `reel`, `hornpipe`, `polka`,
/// `march`, `mazurka`, `swing` and `slow`.
const TABLE: &[Row] = &[
    ("beginner", &[(4, 4), (2, 2)], "D. DU D. D."),
    ("boom-chuck", &[(4, 4), (2, 2)], "b. D. b. D."),
    ("d-du", &[(4, 4), (2, 2)], "D. DU D. DU"),
    ("island", &[(4, 4), (2, 2)], "D. DU .U DU"),
    ("reel", &[(4, 4), (2, 2)], ">D. DU >D. DU"),
    ("shuffle", &[(4, 4), (2, 2)], "D. >DU D. >DU"),
    ("hornpipe", &[(4, 4), (2, 2)], ">D. DU >D. D."),
    ("swing", &[(4, 4), (2, 2)], "D. >D. D. >D."),
    ("march", &[(4, 4), (2, 2)], ">D. D. >D. D."),
    ("chop", &[(4, 4), (2, 2)], ".. x. .. x."),
    ("slow", &[(4, 4), (2, 2)], "D. .. D. .."),
    ("beginner", &[(2, 4)], "D. DU"),
    ("boom-chuck", &[(2, 4)], "bU bU"),
    ("reel", &[(2, 4)], ">D.DU >D.DU"),
    ("hornpipe", &[(2, 4)], ">D.DU >D.D."),
    ("polka", &[(2, 4)], "D>U D>U"),
    ("march", &[(2, 4)], ">D. D."),
    ("chop", &[(2, 4)], ".x .x"),
    ("slow", &[(2, 4)], "D. .."),
    ("waltz", &[(3, 4), (3, 8)], ">D. D. D."),
    ("waltz-du", &[(3, 4), (3, 8)], ">D. DU DU"),
    ("boom-chuck", &[(3, 4), (3, 8)], "b. D. D."),
    ("mazurka", &[(3, 4)], "D. >D. D."),
    ("chop", &[(3, 4), (3, 8)], ".. x. x."),
    ("slow", &[(3, 4), (3, 8)], "D. .. .."),
    ("jig", &[(6, 8), (6, 4)], ">DUD >DUD"),
    ("boom-chuck", &[(6, 8), (6, 4)], "b.D b.D"),
    ("march", &[(6, 8), (6, 4)], ">D.D >D.D"),
    ("chop", &[(6, 8), (6, 4)], "..x ..x"),
    ("slow", &[(6, 8), (6, 4)], "D.. D.."),
    ("slip-jig", &[(9, 8)], ">DUD DUD DUD"),
    ("boom-chuck", &[(9, 8)], "b.D b.D b.D"),
    ("chop", &[(9, 8)], "..x ..x ..x"),
    ("slow", &[(9, 8)], "D.. D.. D.."),
    ("jig", &[(12, 8)], ">DUD DUD >DUD DUD"),
    ("boom-chuck", &[(12, 8)], "b.D b.D b.D b.D"),
    ("chop", &[(12, 8)], "..x ..x ..x ..x"),
    ("slow", &[(12, 8)], "D.. ... D.. ..."),
    ("hornpipe", &[(3, 2)], ">D.DU D.DU D.DU"),
    ("boom-chuck", &[(3, 2)], "b.D. b.D. b.D."),
    ("chop", &[(3, 2)], "..x. ..x. ..x."),
    ("slow", &[(3, 2)], "D... .... ...."),
    ("beginner", &[(5, 4)], "D. DU D. D. DU"),
    ("boom-chuck", &[(5, 4)], "b. D. D. b. D."),
    ("chop", &[(5, 4)], ".. x. x. .. x."),
];

impl StrumPattern {
    /// The names of all built-in patterns; those after the first two are for some metres only.
    pub const NAMES: [&'static str; 19] = [
        "beats",
        "down-up",
        "beginner",
        "boom-chuck",
        "d-du",
        "island",
        "reel",
        "shuffle",
        "hornpipe",
        "swing",
        "march",
        "chop",
        "slow",
        "polka",
        "waltz",
        "waltz-du",
        "mazurka",
        "jig",
        "slip-jig",
    ];

    /// The built-in patterns for a metre, the simplest first. Every metre has `beats`, a stroke on each beat, and
    /// `down-up`, the hand that never stops.
    pub fn built_in(metre: Metre) -> Vec<Self> {
        let mut patterns = vec![Self::beats(metre), Self::down_up(metre)];
        let rows = TABLE.iter().filter(|(_, metres, _)| {
            metre.groups[0] == 0 && metres.contains(&(metre.count, metre.unit))
        });
        patterns
            .extend(rows.filter_map(|(name, _, marks)| Self::from_marks(name, marks, metre).ok()));
        patterns
    }

    /// The built-in pattern of a name for a metre.
    pub fn named(name: &str, metre: Metre) -> Option<Self> {
        let mut patterns = Self::built_in(metre).into_iter();
        patterns.find(|pattern| pattern.name == name)
    }

    /// What suits a tune of this kind in this metre; where nothing is known, what a beginner plays.
    ///
    /// ```
    /// use fourcourse::chart::{Metre, Rhythm, StrumPattern};
    /// assert_eq!(StrumPattern::fitting(Some(&Rhythm::Jig), Metre::new(6, 8)).to_string(), ">DUD >DUD");
    /// ```
    pub fn fitting(rhythm: Option<&Rhythm>, metre: Metre) -> Self {
        let wanted: &[&str] = match rhythm {
            Some(Rhythm::Reel) => &["reel"],
            Some(Rhythm::Jig | Rhythm::Slide) => &["jig"],
            Some(Rhythm::Hornpipe) => &["hornpipe"],
            Some(Rhythm::Polka) => &["polka"],
            Some(Rhythm::Mazurka) => &["mazurka"],
            Some(Rhythm::March) => &["march"],
            Some(Rhythm::Schottische | Rhythm::BarnDance | Rhythm::Strathspey | Rhythm::Rag) => {
                &["boom-chuck"]
            }
            Some(Rhythm::Calypso) => &["island"],
            // A song in threes is carried, not driven.
            Some(Rhythm::Song) | None if metre.is_compound() => &["boom-chuck"],
            Some(Rhythm::Swing) => &["swing"],
            Some(Rhythm::Air) => &["slow"],
            Some(Rhythm::SlipJig | Rhythm::Waltz | Rhythm::Song | Rhythm::Other(_)) | None => &[],
        };
        let usual = ["waltz", "jig", "slip-jig", "beginner", "boom-chuck"];
        let mut patterns = Self::built_in(metre);
        let names = wanted.iter().chain(&usual);
        let found = names
            .filter_map(|name| patterns.iter().position(|pattern| pattern.name == *name))
            .next();
        patterns.swap_remove(found.unwrap_or(0))
    }

    /// A stroke down on each beat, the first accented.
    fn beats(metre: Metre) -> Self {
        Self::generated("beats", metre, |into_beat| into_beat == Ticks::ZERO)
    }

    /// The hand goes down and up without a rest.
    fn down_up(metre: Metre) -> Self {
        Self::generated("down-up", metre, |_| true)
    }

    /// In steps of the hand; where that would be too many slots, of beats; and where even those are too many, a single
    /// stroke for the whole bar.
    fn generated(name: &str, metre: Metre, sounds: impl Fn(Ticks) -> bool) -> Self {
        let bar = metre.bar_or_whole();
        let slots = |step: Ticks| usize::try_from(bar.div_rem(step).0).unwrap_or(usize::MAX);
        let steps = [hand_step(metre), Ticks::of(1, i64::from(metre.unit))];
        let step = steps
            .into_iter()
            .find(|&step| slots(step) <= Self::MOST_SLOTS)
            .unwrap_or(bar);
        let mut at = Ticks::ZERO;
        let mut strokes = Vec::new();
        for _ in 0..slots(step) {
            let stroke = match beat_at(metre, at) {
                (_, into_beat) if sounds(into_beat) => Stroke::Strum,
                _ => Stroke::Silent,
            };
            strokes.push((stroke, strokes.is_empty()));
            at += step;
        }
        Self::of(name, metre, step, &strokes)
    }
}

impl Tune {
    /// The strum of a written bar: its part's, or the tune's own where it fits the metre of the bar, or what suits the
    /// kind of tune. Through a crooked bar the hand goes on as before: [`StrumPattern::for_bar`] cuts the pattern or
    /// begins it again.
    pub fn strum_at(&self, bar: usize) -> StrumPattern {
        let felt = self.metres_felt();
        let metre = felt.get(bar).or(felt.last()).copied();
        let metre = metre.unwrap_or(self.metre);
        let parts = self.parts.iter().filter(|part| part.first_bar <= bar);
        let part = parts.max_by_key(|part| part.first_bar);
        part.and_then(|part| part.strum.as_ref())
            .into_iter()
            .chain(&self.strum)
            .find(|strum| strum.fits(metre))
            .cloned()
            .unwrap_or_else(|| StrumPattern::fitting(self.rhythm.as_ref(), metre))
    }
}
