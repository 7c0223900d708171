//! The words of chord symbols: one table that the reader in `symbol.rs` walks.

use super::chord::Degree::{self, *};

/// What a word does to the chord read so far.
#[derive(Clone, Copy)]
pub(super) enum Word {
    /// Takes degrees out and puts others in.
    Swap(&'static [Degree], &'static [Degree]),
    /// A number: an extension, a note to add, or one to leave out.
    Number(&'static Number),
    /// Makes the seventh major: the one there is, or the next.
    Major,
    /// Makes the next seventh diminished.
    Diminished,
    /// From here on plain numbers add a single note.
    Single,
    /// The next note is added beside the natural one.
    Add,
    /// The next number is left out.
    Omit,
    /// Says nothing.
    Skip,
}

/// What a plain number means in each place.
pub(super) struct Number {
    /// Right after the root: what goes out and in.
    pub(super) alone: Option<(&'static [Degree], &'static [Degree])>,
    /// As an extension, with the notes that it implies. The seventh is written as the minor one.
    pub(super) extends: Option<&'static [Degree]>,
    /// Added on its own.
    pub(super) adds: Option<&'static [Degree]>,
    /// What leaves when it is left out.
    pub(super) omits: Option<&'static [Degree]>,
}

/// Where a word may stand.
#[derive(Clone, Copy)]
pub(super) enum When {
    /// Anywhere.
    Any,
    /// Only as the first word.
    First,
    /// Only after another word.
    Later,
}

/// A spelling and what it means.
pub(super) struct Row {
    pub(super) text: &'static str,
    pub(super) when: When,
    pub(super) words: &'static [Word],
    /// Whether capitals make a difference.
    exact: bool,
}

impl Row {
    /// Whether a text starts with this word.
    pub(super) fn starts(&self, text: &[char]) -> bool {
        let mut text = text.iter();
        self.text.chars().all(|want| {
            text.next()
                .is_some_and(|&c| c == want || !self.exact && c.to_ascii_lowercase() == want)
        })
    }
}

const fn row(text: &'static str, when: When, words: &'static [Word]) -> Row {
    Row {
        text,
        when,
        words,
        exact: false,
    }
}

const fn exact(text: &'static str, when: When, words: &'static [Word]) -> Row {
    Row {
        exact: true,
        ..row(text, when, words)
    }
}

const THIRDS: &[Degree] = &[MinorThird, MajorThird];
const MINOR: Word = Word::Swap(&[MajorThird], &[MinorThird]);
const AUGMENTED: Word = Word::Swap(&[Fifth], &[SharpFifth]);
const FLAT_FIFTH: Word = Word::Swap(&[Fifth], &[FlatFifth]);
const DIMINISHED: &[Word] = &[MINOR, FLAT_FIFTH, Word::Diminished];
const HALF_DIMINISHED: &[Word] = &[MINOR, FLAT_FIFTH, Word::Swap(&[], &[MinorSeventh])];
const TRIANGLE: &[Word] = &[Word::Swap(&[MinorSeventh], &[MajorSeventh]), Word::Major];
const SUS2: Word = Word::Swap(THIRDS, &[Second]);
const SUS4: Word = Word::Swap(THIRDS, &[Fourth]);
const FLAT_NINTH: Word = Word::Swap(&[Ninth], &[FlatNinth]);
const SHARP_NINTH: Word = Word::Swap(&[Ninth], &[SharpNinth]);
const SHARP_ELEVENTH: Word = Word::Swap(&[Eleventh], &[SharpEleventh]);
const FLAT_THIRTEENTH: Word = Word::Swap(&[Thirteenth], &[FlatThirteenth]);
const MAJOR_SEVENTH: Word = Word::Swap(&[MinorSeventh], &[MajorSeventh]);
const ALTERED: Word = Word::Swap(&[Fifth], &[SharpFifth, MinorSeventh, SharpNinth]);

const NOTHING: Number = Number {
    alone: None,
    extends: None,
    adds: None,
    omits: None,
};
const N2: Number = Number {
    adds: Some(&[Ninth]),
    ..NOTHING
};
const N3: Number = Number {
    omits: Some(THIRDS),
    ..NOTHING
};
const N4: Number = Number {
    alone: Some((THIRDS, &[Fourth])),
    adds: Some(&[Eleventh]),
    ..NOTHING
};
const N5: Number = Number {
    alone: Some((THIRDS, &[Fifth])),
    // A fifth that is already there in another size, as in `aug5`, stays as it is.
    extends: Some(&[]),
    adds: Some(&[Fifth]),
    omits: Some(&[Fifth]),
};
const N6: Number = Number {
    extends: Some(&[Sixth]),
    adds: Some(&[Sixth]),
    ..NOTHING
};
const N69: Number = Number {
    extends: Some(&[Sixth, Ninth]),
    adds: Some(&[Sixth, Ninth]),
    ..NOTHING
};
const N7: Number = Number {
    extends: Some(&[MinorSeventh]),
    adds: Some(&[MinorSeventh]),
    omits: Some(&[MinorSeventh, MajorSeventh, DiminishedSeventh]),
    ..NOTHING
};
const N9: Number = Number {
    extends: Some(&[MinorSeventh, Ninth]),
    adds: Some(&[Ninth]),
    omits: Some(&[Ninth]),
    ..NOTHING
};
const N11: Number = Number {
    extends: Some(&[MinorSeventh, Ninth, Eleventh]),
    adds: Some(&[Eleventh]),
    omits: Some(&[Eleventh]),
    ..NOTHING
};
const N13: Number = Number {
    extends: Some(&[MinorSeventh, Ninth, Thirteenth]),
    adds: Some(&[Thirteenth]),
    ..NOTHING
};

/// All words. Where several fit, the longest is meant.
pub(super) const WORDS: &[Row] = &[
    // Triads and their sevenths.
    exact("m", When::First, &[MINOR]),
    row("mi", When::First, &[MINOR]),
    row("min", When::First, &[MINOR]),
    row("minor", When::First, &[MINOR]),
    exact("-", When::First, &[MINOR]),
    exact("madd", When::First, &[MINOR, Word::Add]),
    exact("Madd", When::First, &[Word::Add]),
    exact("M", When::Any, &[Word::Major]),
    exact("j", When::Any, &[Word::Major]),
    row("ma", When::Any, &[Word::Major]),
    row("maj", When::Any, &[Word::Major]),
    row("major", When::Any, &[Word::Major]),
    exact("Δ", When::Any, TRIANGLE),
    row("dom", When::First, &[Word::Skip]),
    row("dim", When::First, DIMINISHED),
    row("diminished", When::First, DIMINISHED),
    exact("°", When::First, DIMINISHED),
    exact("o", When::First, DIMINISHED),
    exact("ø", When::First, HALF_DIMINISHED),
    row("half-dim", When::First, HALF_DIMINISHED),
    row("halfdim", When::First, HALF_DIMINISHED),
    row("halfdiminished", When::First, HALF_DIMINISHED),
    row("half-diminished", When::First, HALF_DIMINISHED),
    row("hdim", When::First, HALF_DIMINISHED),
    row("aug", When::Any, &[AUGMENTED]),
    row("augmented", When::Any, &[AUGMENTED]),
    exact("+", When::Any, &[AUGMENTED]),
    row("alt", When::Any, &[ALTERED]),
    // Suspensions.
    row("sus", When::Any, &[SUS4]),
    row("sus2", When::Any, &[SUS2]),
    row("sus4", When::Any, &[SUS4]),
    row("sus24", When::Any, &[SUS2, SUS4]),
    row("sus42", When::Any, &[SUS2, SUS4]),
    // Numbers.
    exact("2", When::Any, &[Word::Number(&N2)]),
    exact("3", When::Any, &[Word::Number(&N3)]),
    exact("4", When::Any, &[Word::Number(&N4)]),
    exact("5", When::Any, &[Word::Number(&N5)]),
    exact("6", When::Any, &[Word::Number(&N6)]),
    exact("69", When::Any, &[Word::Number(&N69)]),
    exact("7", When::Any, &[Word::Number(&N7)]),
    exact("9", When::Any, &[Word::Number(&N9)]),
    exact("11", When::Any, &[Word::Number(&N11)]),
    exact("13", When::Any, &[Word::Number(&N13)]),
    // Alterations. A plus or minus is a sign only where it cannot be a triad.
    exact("b5", When::Any, &[FLAT_FIFTH]),
    exact("-5", When::Any, &[FLAT_FIFTH]),
    exact("#5", When::Any, &[AUGMENTED]),
    exact("+5", When::Any, &[AUGMENTED]),
    exact("b9", When::Any, &[FLAT_NINTH]),
    exact("b2", When::Any, &[FLAT_NINTH]),
    exact("-9", When::Later, &[FLAT_NINTH]),
    exact("#9", When::Any, &[SHARP_NINTH]),
    exact("#2", When::Any, &[SHARP_NINTH]),
    exact("+9", When::Later, &[SHARP_NINTH]),
    exact("#11", When::Any, &[SHARP_ELEVENTH]),
    exact("#4", When::Any, &[SHARP_ELEVENTH]),
    exact("+11", When::Later, &[SHARP_ELEVENTH]),
    exact("b13", When::Any, &[FLAT_THIRTEENTH]),
    exact("b6", When::Any, &[FLAT_THIRTEENTH]),
    exact("-13", When::Later, &[FLAT_THIRTEENTH]),
    exact("b3", When::Any, &[MINOR]),
    exact("bb7", When::Any, &[Word::Swap(&[], &[DiminishedSeventh])]),
    exact("b7", When::Any, &[Word::Swap(&[], &[MinorSeventh])]),
    exact("-7", When::Later, &[Word::Swap(&[], &[MinorSeventh])]),
    exact("#7", When::Any, &[MAJOR_SEVENTH]),
    exact("+7", When::Later, &[MAJOR_SEVENTH]),
    // Adding and leaving out.
    row("add", When::Any, &[Word::Add]),
    row("add3", When::Any, &[Word::Swap(&[], &[MajorThird])]),
    row("no", When::Any, &[Word::Omit]),
    row("omit", When::Any, &[Word::Omit]),
    row("rd", When::Later, &[Word::Skip]),
    row("th", When::Later, &[Word::Skip]),
    exact("(", When::Any, &[Word::Single]),
    exact("[", When::Any, &[Word::Single]),
    exact(",", When::Any, &[Word::Single]),
    exact("/", When::Any, &[Word::Single]),
    exact(")", When::Any, &[Word::Skip]),
    exact("]", When::Any, &[Word::Skip]),
    exact(".", When::Later, &[Word::Skip]),
];
