//! What has been practised, and what that says about today.
//!
//! The rule for today is an expanding one: what went well comes again after 1, 2, 4, 7, 14 and 30 days, and what went
//! clearly slower than before comes again tomorrow (spaced practice with growing gaps is common practice in learning by
//! heart; these figures are our own). Whoever plays a phrase clean takes the next step in tempo, 5 % and 2 beats a minute
//! at least (the trade sheet's step after a clean pass, common practice).

use chrono::NaiveDate;

use crate::chart::Version;
use crate::desk::songbook::TuneId;
use crate::theory::NoteName;

/// What of a tune is practised.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stretch {
    /// A phrase, counted from 0 in the order of the page.
    Phrase(u16),
    /// All of it.
    Whole,
}

/// A stretch as it was practised on a day: one entry a day for a stretch in a version and a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Practice {
    /// The day.
    pub day: NaiveDate,
    /// The tune.
    pub tune: TuneId,
    /// What of it.
    pub stretch: Stretch,
    /// In which version.
    pub version: Version,
    /// In the key on this note.
    pub key: NoteName,
    /// Beats a minute, as the Stand counts the tune, of the fastest clean pass.
    pub bpm: u16,
    /// Clean passes of that day.
    pub passes: u16,
}

impl Practice {
    /// Whether two entries are of the same day and thing.
    pub fn same(&self, other: &Self) -> bool {
        (self.day, self.tune, self.stretch, self.version, self.key)
            == (
                other.day,
                other.tune,
                other.stretch,
                other.version,
                other.key,
            )
    }
}

/// Why something is suggested.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reason {
    /// Its day has come.
    Due,
    /// A step or two from the tempo of the circle.
    NearlyThere,
    /// The phrases before it are sure.
    Next,
    /// Not practised so far.
    New,
}

/// Something to practise today.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Suggestion {
    /// The tune.
    pub tune: TuneId,
    /// Its title.
    pub title: String,
    /// What of it.
    pub stretch: Stretch,
    /// The part of that phrase and its number there; `None` for the whole tune.
    pub place: Option<(String, u16)>,
    /// In which version.
    pub version: Version,
    /// In the key on this note; `None` as it is written.
    pub key: Option<NoteName>,
    /// Begin at so many beats a minute.
    pub bpm: u16,
    /// And go for so many today.
    pub goal: u16,
    /// Why.
    pub reason: Reason,
    /// Days since it was practised last.
    pub days: Option<u16>,
}

/// What has to be known of a tune.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::desk) struct Facts {
    pub(in crate::desk) title: String,
    /// Phrases that are not the same as one before: the only ones worth practising, by their place on the page.
    pub(in crate::desk) own: Vec<u16>,
    /// Part and number there of each phrase.
    pub(in crate::desk) phrases: Vec<(String, u16)>,
    /// Beats a minute of the tune itself.
    pub(in crate::desk) bpm: u16,
}

impl Facts {
    fn place(&self, stretch: Stretch) -> Option<(String, u16)> {
        match stretch {
            Stretch::Phrase(phrase) => self.phrases.get(usize::from(phrase)).cloned(),
            Stretch::Whole => None,
        }
    }
}

/// Days until a stretch comes again, after so many times that it went well.
const GAPS: [i64; 6] = [1, 2, 4, 7, 14, 30];
/// Slower than this part of the best tempo before, it did not go well.
const WORSE: f32 = 0.9;
/// From this part of the tune's tempo on one is nearly there, and from this one on a phrase is sure enough for the next.
const NEARLY: f32 = 0.9;
const SURE: f32 = 0.8;
/// A new stretch begins at this part of the tune's tempo.
const BEGIN: f32 = 0.7;
/// So many suggestions are enough for a sitting of half an hour.
const MOST: usize = 5;

/// A stretch and how it has gone.
struct Gone {
    tune: TuneId,
    stretch: Stretch,
    version: Version,
    key: NoteName,
    best: u16,
    last: NaiveDate,
    well: usize,
}

fn part(bpm: u16, of: f32) -> u16 {
    // Beats a minute: at most 300.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let part = (f32::from(bpm) * of).round() as u16;
    part
}

/// The next step in tempo, up to the tune's own.
pub(in crate::desk) fn next_step(bpm: u16, tune: u16) -> u16 {
    part(bpm, 1.05)
        .max(bpm.saturating_add(2))
        .min(tune.max(bpm))
}

/// What has been practised, a line for each stretch, from entries in any order.
fn gone(log: &[Practice]) -> Vec<Gone> {
    let mut log: Vec<&Practice> = log.iter().collect();
    log.sort_by_key(|entry| entry.day);
    let mut all: Vec<Gone> = Vec::new();
    for entry in log {
        let same = |gone: &&mut Gone| (gone.tune, gone.stretch) == (entry.tune, entry.stretch);
        let Some(gone) = all.iter_mut().find(same) else {
            all.push(Gone {
                tune: entry.tune,
                stretch: entry.stretch,
                version: entry.version,
                key: entry.key,
                best: entry.bpm,
                last: entry.day,
                well: 1,
            });
            continue;
        };
        if entry.version > gone.version {
            // A harder version is begun anew.
            (gone.best, gone.well) = (entry.bpm, 1);
        } else if entry.bpm < part(gone.best, WORSE) {
            (gone.best, gone.well) = (entry.bpm, 1);
        } else if entry.day > gone.last {
            gone.best = gone.best.max(entry.bpm);
            gone.well += 1;
        } else {
            gone.best = gone.best.max(entry.bpm);
        }
        (gone.version, gone.key, gone.last) = (entry.version, entry.key, entry.day);
    }
    all
}

/// What to practise on a day: what is due, longest overdue first, then what is nearly there, then the next phrase of tunes
/// that are being learnt, then one tune that is new. `facts` knows the tunes, and `fresh` names tunes to begin with.
pub(in crate::desk) fn suggestions(
    log: &[Practice],
    today: NaiveDate,
    facts: impl Fn(TuneId) -> Option<Facts>,
    fresh: impl Iterator<Item = TuneId>,
) -> Vec<Suggestion> {
    let gone = gone(log);
    let mut found: Vec<(Reason, i64, Suggestion)> = Vec::new();
    for one in &gone {
        let Some(tune) = facts(one.tune) else {
            continue;
        };
        let days = (today - one.last).num_days();
        let gap = GAPS[(one.well - 1).min(GAPS.len() - 1)];
        let nearly = one.best >= part(tune.bpm, NEARLY) && one.best < tune.bpm;
        let reason = match (days >= gap, nearly) {
            (true, false) => Reason::Due,
            (_, true) if days >= 1 => Reason::NearlyThere,
            _ => continue,
        };
        let order = match reason {
            Reason::Due => -days * 100 / gap,
            _ => i64::from(tune.bpm) - i64::from(one.best),
        };
        let suggestion = Suggestion {
            tune: one.tune,
            place: tune.place(one.stretch),
            title: tune.title,
            stretch: one.stretch,
            version: one.version,
            key: Some(one.key),
            bpm: one.best,
            goal: next_step(one.best, tune.bpm),
            reason,
            days: u16::try_from(days).ok(),
        };
        found.push((reason, order, suggestion));
    }
    let mut tunes: Vec<TuneId> = gone.iter().map(|one| one.tune).collect();
    tunes.sort_unstable();
    tunes.dedup();
    for &id in &tunes {
        let Some(tune) = facts(id) else { continue };
        let of_tune = || gone.iter().filter(|one| one.tune == id);
        let practised = |stretch| of_tune().any(|one| one.stretch == stretch);
        let sure = of_tune().all(|one| one.best >= part(tune.bpm, SURE));
        let phrases = tune.own.iter().map(|&phrase| Stretch::Phrase(phrase));
        let next = phrases
            .chain([Stretch::Whole])
            .find(|&stretch| !practised(stretch));
        if let (true, Some(stretch), Some(like)) = (
            sure && !practised(Stretch::Whole),
            next,
            of_tune().next_back(),
        ) {
            let begin = begin(
                id,
                &tune,
                stretch,
                (like.version, Some(like.key)),
                Reason::Next,
            );
            found.push((Reason::Next, 0, begin));
        }
    }
    let new = fresh
        .filter(|id| !tunes.contains(id))
        .find_map(|id| Some((id, facts(id)?)));
    if let Some((id, tune)) = new {
        let stretch = tune
            .own
            .first()
            .map_or(Stretch::Whole, |&phrase| Stretch::Phrase(phrase));
        let begin = begin(id, &tune, stretch, (Version::Plain, None), Reason::New);
        found.push((Reason::New, 0, begin));
    }
    found.sort_by_key(|(reason, order, _)| (*reason, *order));
    found.truncate(MOST);
    found
        .into_iter()
        .map(|(_, _, suggestion)| suggestion)
        .collect()
}

fn begin(
    id: TuneId,
    tune: &Facts,
    stretch: Stretch,
    (version, key): (Version, Option<NoteName>),
    reason: Reason,
) -> Suggestion {
    let bpm = part(tune.bpm, BEGIN);
    Suggestion {
        tune: id,
        title: tune.title.clone(),
        stretch,
        place: tune.place(stretch),
        version,
        key,
        bpm,
        goal: next_step(bpm, tune.bpm),
        reason,
        days: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 11, day).unwrap()
    }

    fn entry(on: u32, tune: u64, phrase: u16, bpm: u16) -> Practice {
        Practice {
            day: day(on),
            tune: TuneId(tune),
            stretch: Stretch::Phrase(phrase),
            version: Version::Plain,
            key: "A".parse().unwrap(),
            bpm,
            passes: 3,
        }
    }

    /// Tunes of three phrases of which the third is like the first, at 100 beats a minute.
    fn facts(id: TuneId) -> Option<Facts> {
        (id.0 < 10).then(|| Facts {
            title: format!("Tune {}", id.0),
            own: vec![0, 1],
            phrases: vec![("A".into(), 1), ("A".into(), 2), ("A".into(), 3)],
            bpm: 100,
        })
    }

    fn said(log: &[Practice], today: u32, fresh: &[u64]) -> Vec<String> {
        let fresh = fresh.iter().map(|&id| TuneId(id));
        let say = |one: Suggestion| {
            format!(
                "{:?} {} {:?} {}>{}",
                one.reason, one.tune.0, one.stretch, one.bpm, one.goal
            )
        };
        suggestions(log, day(today), facts, fresh)
            .into_iter()
            .map(say)
            .collect()
    }

    #[test]
    fn the_first_day_begins_a_tune_with_its_first_phrase_slowly() {
        assert_eq!(said(&[], 10, &[4, 5]), ["New 4 Phrase(0) 70>74"]);
        assert_eq!(said(&[], 10, &[]), [""; 0]);
    }

    #[test]
    fn what_went_well_comes_again_after_growing_gaps() {
        let once = [entry(1, 1, 0, 60)];
        assert_eq!(said(&once, 1, &[]), [""; 0], "not on the same day");
        assert_eq!(said(&once, 2, &[]), ["Due 1 Phrase(0) 60>63"]);
        let twice = [entry(1, 1, 0, 60), entry(2, 1, 0, 63)];
        assert_eq!(said(&twice, 3, &[]), [""; 0]);
        assert_eq!(said(&twice, 4, &[]), ["Due 1 Phrase(0) 63>66"]);
        let thrice = [entry(1, 1, 0, 60), entry(2, 1, 0, 63), entry(4, 1, 0, 64)];
        assert_eq!(said(&thrice, 7, &[]), [""; 0]);
        assert_eq!(said(&thrice, 8, &[]), ["Due 1 Phrase(0) 64>67"]);
    }

    #[test]
    fn what_went_clearly_slower_comes_again_tomorrow() {
        let log = [entry(1, 1, 0, 70), entry(2, 1, 0, 72), entry(4, 1, 0, 60)];
        assert_eq!(said(&log, 5, &[]), ["Due 1 Phrase(0) 60>63"]);
        // A little slower is a day like any other.
        let log = [entry(1, 1, 0, 70), entry(2, 1, 0, 72), entry(4, 1, 0, 68)];
        assert_eq!(said(&log, 5, &[]), [""; 0]);
    }

    #[test]
    fn who_is_nearly_there_may_go_on_the_next_day_up_to_the_tunes_own_tempo() {
        let log = [entry(1, 1, 0, 96), entry(2, 1, 0, 97), entry(2, 1, 1, 97)];
        let today = said(&log, 3, &[]);
        assert_eq!(
            today,
            [
                "NearlyThere 1 Phrase(0) 97>100",
                "NearlyThere 1 Phrase(1) 97>100",
                "Next 1 Whole 70>74"
            ]
        );
    }

    #[test]
    fn the_next_phrase_waits_until_those_before_it_are_sure() {
        assert_eq!(said(&[entry(1, 1, 0, 79)], 1, &[]), [""; 0]);
        assert_eq!(
            said(&[entry(1, 1, 0, 80)], 1, &[]),
            ["Next 1 Phrase(1) 70>74"]
        );
        let both = [entry(1, 1, 0, 100), entry(1, 1, 1, 100)];
        // The third phrase is the first again: what comes then is the whole tune.
        assert_eq!(said(&both, 1, &[]), ["Next 1 Whole 70>74"]);
    }

    #[test]
    fn the_longest_overdue_goes_first_and_a_sitting_has_five_at_most() {
        let log: Vec<Practice> = (1..9)
            .map(|tune| entry(u32::try_from(tune).unwrap(), tune, 0, 60))
            .collect();
        let today = said(&log, 10, &[9]);
        assert_eq!(today.len(), 5);
        assert!(
            today[0].starts_with("Due 1") && today[4].starts_with("Due 5"),
            "{today:?}"
        );
    }

    #[test]
    fn a_tune_that_is_gone_is_not_suggested() {
        assert_eq!(said(&[entry(1, 77, 0, 60)], 5, &[78]), [""; 0]);
    }
}
