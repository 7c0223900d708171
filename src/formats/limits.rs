//! How much of a text from outside is read.
//!
//! What lies beyond a limit is left out and reported as a [`Problem`](super::Problem); everything before it is kept.
//! The limits are far beyond what tunes need (the longest tunes in books of dance music have about 200 bars) and keep
//! the worst texts that were tried within 350 MB and, on a busy machine, ten seconds.

/// Bytes of a text: 4 MiB, about 8,000 tunes. The rest is not read.
pub const BYTES: usize = 4 << 20;
/// Tunes of a book. Further ones are not read.
pub const TUNES: usize = 10_000;
/// Bytes of a line; the rest of a longer one is not read.
pub const LINE: usize = 64 << 10;
/// Bars of a tune. Music after them is not read.
pub const BARS: usize = 2_000;
/// Bars of all tunes of a book together.
pub const BOOK_BARS: usize = 500_000;
/// Notes of a tune as written, those of chords counted each. Further ones are not read.
pub const NOTES: usize = 20_000;
/// Notes of all tunes of a book together. Further ones are not read.
pub const BOOK_NOTES: usize = 1_000_000;
/// Bars, notes and chords that a read-out of a book lists when repeats and forms are played. The bars after them are
/// left out.
pub const PLAYED: usize = 1_000_000;
/// Notes that sound together. Further ones are left out.
pub const CHORD_NOTES: usize = 10;
/// Grace notes before one note. Further ones are left out.
pub const GRACE: usize = 24;
/// Ornaments, chord symbols and other words at one moment. Further ones are left out.
pub const SIGNS: usize = 16;
/// Lines of lyrics under the same notes. Further ones are left out.
pub const LYRICS: usize = 24;
/// Characters of a title, a remark, a verse line or words above a bar. The rest is cut off.
pub const TEXT: usize = 1_000;
/// Lines of one kind in a tune: titles, remarks, sources, lines of verses. Further ones are left out.
pub const LINES: usize = 500;
/// Parts that a form names when written out, and parts of a tune. Further ones are left out.
pub const PARTS: usize = 500;
/// Brackets within brackets in a form. Deeper ones are left out.
pub const NESTING: usize = 8;
/// How often a section may be repeated, and the highest number of an ending.
pub const TIMES: u8 = 32;
/// Voices of a tune that are told apart. The notes of further ones are not looked at.
pub const VOICES: usize = 64;
/// Signs that a tune or a book defines for itself. Further ones are left out.
pub const DEFINITIONS: usize = 64;
/// Fields before the music of a tune, or before all tunes. Further ones are left out.
pub const FIELDS: usize = 1_000;
/// Problems that are told of one tune, or of the book outside its tunes. Further ones are not told.
pub const PROBLEMS: usize = 100;
/// The longest note in whole notes; a longer one is cut to it. Numbers beyond 4096 in a length are no length.
pub const WHOLE_NOTES: u32 = 64;
/// Bars of rest in one sign; a sign for more stands for one bar.
pub const REST_BARS: u32 = 500;
/// Octaves that marks may move a note up or down.
pub const OCTAVES: i8 = 8;
