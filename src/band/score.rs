//! What the band plays: one time through a tune, and the last time with its ending.

use std::ops::Range;

use crate::chart::{Playing, Ticks, Tune};

use super::ending::{self, Closing, Ending};
use super::event::Event;
use super::loudness::Load;
use super::sheet::Sheet;
use super::style::Style;
use super::voicings::Voicings;
use super::{bass, chop, click, drones, guitar, melody};

/// What the band plays of a tune in a key, in one style. Made ahead of playing, never changed afterwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Score {
    /// Every time through but the last, in the order of time.
    pub events: Vec<Event>,
    /// How long a time through is: the length of the tune as played.
    pub length: Ticks,
    /// The last time through with its ending, from its own first tick.
    pub last: Vec<Event>,
    /// How long the last time through is, the ending included.
    pub last_length: Ticks,
    /// What is played once more at the end of the last time.
    pub tag: Option<Tag>,
    /// How much every player brings along to the loudness.
    pub load: Load,
}

/// Bars that come once more at the very end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tag {
    /// When they begin, from the start of the last time through.
    pub at: Ticks,
    /// Which they are in [`Playing::bars`].
    pub bars: Range<usize>,
}

/// What a score is made by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ScoreOptions {
    /// How the band accompanies.
    pub style: &'static Style,
    /// How it ends.
    pub ending: Ending,
}

impl ScoreOptions {
    /// What suits a tune: its style, with the last chord held.
    pub fn fitting(tune: &Tune) -> Self {
        Self {
            style: Style::of(tune),
            ending: Ending::Held,
        }
    }
}

impl Score {
    /// What the band plays of a tune, which stands in the key and with the chords that are wanted
    /// ([`Tune::in_key`], [`Tune::simplified`]); `playing` is its order of bars. All players have their part: a level
    /// decides who is heard.
    ///
    /// - Bass and chords begin with the first full bar; in the pickup before it the chords are light and the bass waits.
    ///   Until the first chord they play the tonic, over N.C. nothing, and nothing in a tune without chords.
    /// - Bars of any length are filled beat by beat: a short one has the beginning of the pattern, a long one begins it
    ///   again.
    /// - The melody has its ties, grace notes and chords; of the signs on notes it knows staccato and accent, and plays rolls,
    ///   trills and the rest plain. Where it goes below open G it is played an octave higher as a whole.
    /// - Two courses are never struck in one go but one after the other, in the direction of the stroke.
    pub fn of(
        tune: &Tune,
        playing: &Playing,
        options: &ScoreOptions,
        voicings: &mut Voicings,
    ) -> Self {
        let sheet = Sheet::new(tune, playing, options.style);
        let events = play(&sheet, voicings);
        let closing = Closing::new(playing, options.ending);
        let last = ending::sheet(tune, playing, &closing, options);
        Self {
            load: Load::of(&events, playing.length),
            events,
            length: playing.length,
            last: play(&last, voicings),
            last_length: last.length,
            tag: closing.tag.clone(),
        }
    }

    /// The time of the tune that sounds at a time of the last time through: later than it where a tag is played, and
    /// never past the end.
    pub fn in_tune(&self, at: Ticks, playing: &Playing) -> Ticks {
        let tag = self.tag.as_ref().filter(|tag| at >= tag.at);
        let first = tag.and_then(|tag| playing.bars.get(tag.bars.start));
        let at = match (tag, first) {
            (Some(tag), Some(first)) => first.start + (at - tag.at),
            _ => at,
        };
        at.min(playing.length - Ticks(1)).max(Ticks::ZERO)
    }
}

/// Everybody's part, in order of time.
fn play(sheet: &Sheet, voicings: &mut Voicings) -> Vec<Event> {
    let mut events = melody::play(sheet);
    events.extend(chop::play(sheet, voicings));
    events.extend(guitar::play(sheet, voicings));
    events.extend(bass::play(sheet));
    events.extend(drones::play(sheet));
    events.extend(click::play(sheet));
    events.retain(|event| event.at >= Ticks::ZERO && event.at < sheet.length);
    events.sort_by(|a, b| a.at.cmp(&b.at).then(a.after_ms.total_cmp(&b.after_ms)));
    events
}
