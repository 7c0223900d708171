//! The styles: for each metre what bass, guitar and chop play in a bar (marks: see `Line::read`).
//!
//! Common practice: bass on the beats and chords on the off-beats, root and fifth in turn, the waltz, a jig in two, the
//! polka's off-beats, the chop on 2 and 4, two notes of the scale that lead into a change, hornpipes and swing with long
//! and short eighths; every direction of the hand, which follows from the place in the bar. From memory, unchecked: the up-strokes, the accents, and that a third group of three has the root.

use super::style::{Row, Style, Walks};

/// Eighths as written.
const EVEN: (i64, i64) = (1, 1);
/// The first of two eighths is twice as long as the second: the triplet feel.
const LONG_SHORT: (i64, i64) = (2, 1);

const FOUR: &[(u8, u8)] = &[(4, 4), (2, 2)];
const TWO: &[(u8, u8)] = &[(2, 4)];
const THREE: &[(u8, u8)] = &[(3, 4), (3, 8)];
const THREE_HALVES: &[(u8, u8)] = &[(3, 2)];
const SIX: &[(u8, u8)] = &[(6, 8), (6, 4)];
const NINE: &[(u8, u8)] = &[(9, 8)];
const TWELVE: &[(u8, u8)] = &[(12, 8)];

/// Metres, bass, bass that walks into a change, guitar, chop.
const fn row(metres: &'static [(u8, u8)], [bass, walk, guitar, chop]: [&'static str; 4]) -> Row {
    Row {
        metres,
        bass,
        walk,
        guitar,
        chop,
    }
}

/// Bass, chuck, bass, chuck: also for what another style does not say.
#[rustfmt::skip]
pub(super) const BOOM_CHUCK: &[Row] = &[
    row(FOUR,         ["1. .. 5. ..",    "1. .. w. w.",    "1. d. 5. d.",    ".. x. .. x."]),
    row(TWO,          ["1. 5.",          "1. ww",          "1>u 5>u",          ".x .x"]),
    row(THREE,        ["a. .. ..",       "1. w. w.",       "a. d. d.",       ".. x. x."]),
    row(THREE_HALVES, ["1... 5... 1...", "1... 5... w.w.", "1.d. 5.d. 1.d.", "..x. ..x. ..x."]),
    row(SIX,          ["1.. 5..",        "1.. w.w",        "1.d 5.d",        "..x ..x"]),
    row(NINE,         ["1.. 5.. 1..",    "1.. 5.. w.w",    "1.d 5.d 1.d",    "..x ..x ..x"]),
    row(TWELVE,       ["1.. 5.. 1.. 5..", "1.. 5.. 1.. w.w", "1.d 5.d 1.d 5.d", "..x ..x ..x ..x"]),
];

#[rustfmt::skip]
const REEL: &[Row] = &[
    row(FOUR,         ["1. .. 5. ..",    "1. .. w. w.",    "1. >du 5. >du",  ".. x. .. x."]),
    row(TWO,          ["1... 5...",      "1... w.w.",      "1.>du 5.>du",    "..x. ..x."]),
];

#[rustfmt::skip]
const JIG: &[Row] = &[
    row(SIX,          ["1.. 5..",        "1.. w.w",        "1.D 5uD",        "..x ..x"]),
    row(NINE,         ["1.. 5.. 1..",    "1.. 5.. w.w",    "1.D 5.D 1uD",    "..x ..x ..x"]),
    row(TWELVE,       ["1.. 5.. 1.. 5..", "1.. 5.. 1.. w.w", "1.D 5uD 1.D 5uD", "..x ..x ..x ..x"]),
];

#[rustfmt::skip]
const HORNPIPE: &[Row] = &[
    row(FOUR,         ["1. .. 5. ..",    "1. .. w. w.",    "1. du 5. d.",    ".. x. .. x."]),
    row(TWO,          ["1... 5...",      "1... w.w.",      "1.du 5.d.",      "..x. ..x."]),
    row(THREE_HALVES, ["1... 5... 1...", "1... 5... w.w.", "1.du 5.du 1.d.", "..x. ..x. ..x."]),
];

#[rustfmt::skip]
const MARCH: &[Row] = &[
    row(FOUR,         ["1. .. 5. ..",    "1. .. w. w.",    ">1. D. 5. D.",   ".. x. .. x."]),
    row(TWO,          ["1. 5.",          "1. ww",          ">1U 5U",         ".x .x"]),
    row(SIX,          ["1.. 5..",        "1.. w.w",        ">1.D 5.D",       "..x ..x"]),
];

#[rustfmt::skip]
const POLKA: &[Row] = &[
    row(TWO,          ["1. 5.",          "1. ww",          "1>u 5>u",        ".x .x"]),
    row(FOUR,         ["1. .. 5. ..",    "1. .. w. w.",    "1. >d. 5. >d.",  ".. x. .. x."]),
];

#[rustfmt::skip]
const WALTZ: &[Row] = &[
    row(THREE,        ["a. .. ..",       "1. w. w.",       "a. d. d.",       ".. x. x."]),
];

#[rustfmt::skip]
const SWING: &[Row] = &[
    row(FOUR,         ["1. 3. 5. 3.",    "1. 3. w. w.",    "d. >d. d. >d.",  ".. x. .. x."]),
    row(TWO,          ["13 53",          "13 ww",          "d>u d>u",        ".x .x"]),
    row(THREE,        ["1. 3. 5.",       "1. w. w.",       "d. d. >d.",      ".. x. x."]),
];

#[rustfmt::skip]
const AIR: &[Row] = &[
    row(FOUR,         ["1. .. .. ..",    "", "R. .. R. ..",    ""]),
    row(TWO,          ["1. ..",          "", "R. ..",          ""]),
    row(THREE,        ["1. .. ..",       "", "R. .. ..",       ""]),
    row(SIX,          ["1.. ...",        "", "R.. R..",        ""]),
    row(NINE,         ["1.. ... ...",    "", "R.. R.. R..",    ""]),
    row(TWELVE,       ["1.. ... 1.. ...", "", "R.. ... R.. ...", ""]),
];

const fn style(id: &'static str, swing: (i64, i64), walks: Walks, rows: &'static [Row]) -> Style {
    Style {
        id,
        swing,
        walks,
        rows,
    }
}

/// Every style, in the order of a list to choose from.
#[rustfmt::skip]
pub(super) const STYLES: [Style; 11] = [
    style("boom-chuck", EVEN,       Walks::IntoLines,   BOOM_CHUCK),
    style("reel",       EVEN,       Walks::IntoLines,   REEL),
    style("jig",        EVEN,       Walks::IntoLines,   JIG),
    style("slip-jig",   EVEN,       Walks::IntoLines,   JIG),
    style("hornpipe",   LONG_SHORT, Walks::IntoLines,   HORNPIPE),
    style("march",      EVEN,       Walks::IntoLines,   MARCH),
    style("polka",      EVEN,       Walks::IntoLines,   POLKA),
    style("waltz",      EVEN,       Walks::IntoLines,   WALTZ),
    style("swing",      LONG_SHORT, Walks::IntoChanges, SWING),
    style("air",        EVEN,       Walks::Never,       AIR),
    style("strum",      EVEN,       Walks::Never,       BOOM_CHUCK),
];
