//! Tunes, version 1.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::chart;

use super::bar::{Bar, Strum, restore_strum, strum};
use super::music::{Key, Metre, key, metre, restore_key, restore_metre};
use super::optional;

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::store) struct Tune {
    titles: Vec<String>,
    composer: String,
    source: String,
    /// Id of the rhythm, or the tune's own word.
    rhythm: Option<String>,
    metre: Metre,
    key: Key,
    /// Beats a minute and the length of a beat in ticks.
    tempo: Option<(f32, i64)>,
    bars: Vec<Bar>,
    /// Label, first bar, strum.
    parts: Vec<(String, u32, Option<Strum>)>,
    form: Vec<String>,
    times_through: Option<u8>,
    strum: Option<Strum>,
    verses: Vec<Vec<String>>,
    remarks: Vec<String>,
    made: Option<DateTime<Utc>>,
    changed: Option<DateTime<Utc>>,
}

impl From<&chart::Tune> for Tune {
    fn from(tune: &chart::Tune) -> Self {
        Self {
            titles: std::iter::once(&tune.title)
                .chain(&tune.other_titles)
                .cloned()
                .collect(),
            composer: tune.composer.clone(),
            source: tune.source.clone(),
            rhythm: tune.rhythm.as_ref().map(|rhythm| rhythm.id().to_owned()),
            metre: metre(tune.metre),
            key: key(tune.key),
            tempo: tune.tempo.map(|tempo| (tempo.bpm, tempo.beat.0)),
            bars: tune.bars.iter().map(Bar::from).collect(),
            parts: tune
                .parts
                .iter()
                .map(|part| {
                    let first = u32::try_from(part.first_bar).unwrap_or(u32::MAX);
                    (part.label.clone(), first, part.strum.as_ref().map(strum))
                })
                .collect(),
            form: tune.form.clone(),
            times_through: tune.times_through,
            strum: tune.strum.as_ref().map(strum),
            verses: tune
                .verses
                .iter()
                .map(|verse| verse.lines.clone())
                .collect(),
            remarks: tune.remarks.clone(),
            made: tune.made,
            changed: tune.changed,
        }
    }
}

impl Tune {
    pub(in crate::store) fn restore(self) -> Option<chart::Tune> {
        let mut titles = self.titles.into_iter();
        let part = |(label, first, pattern): (String, u32, Option<Strum>)| {
            let first_bar = usize::try_from(first).ok()?;
            Some(chart::Part {
                label,
                first_bar,
                strum: optional(pattern, restore_strum)?,
            })
        };
        Some(chart::Tune {
            title: titles.next()?,
            other_titles: titles.collect(),
            composer: self.composer,
            source: self.source,
            rhythm: self.rhythm.map(rhythm),
            metre: restore_metre(self.metre)?,
            key: restore_key(self.key)?,
            tempo: self.tempo.map(|(bpm, beat)| chart::Tempo {
                bpm,
                beat: chart::Ticks(beat),
            }),
            bars: self
                .bars
                .into_iter()
                .map(Bar::restore)
                .collect::<Option<_>>()?,
            parts: self.parts.into_iter().map(part).collect::<Option<_>>()?,
            form: self.form,
            times_through: self.times_through,
            strum: optional(self.strum, restore_strum)?,
            verses: self
                .verses
                .into_iter()
                .map(|lines| chart::Verse { lines })
                .collect(),
            remarks: self.remarks,
            made: self.made,
            changed: self.changed,
        })
    }

    /// The tune without its dates.
    pub(in crate::store) fn undated(self) -> Self {
        Self {
            made: None,
            changed: None,
            ..self
        }
    }
}

fn rhythm(id: String) -> chart::Rhythm {
    let named = chart::Rhythm::NAMED
        .into_iter()
        .find(|rhythm| rhythm.id() == id);
    named.unwrap_or(chart::Rhythm::Other(id))
}
