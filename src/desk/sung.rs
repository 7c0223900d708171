//! The words under the notes, as a singer reads them: phrase by phrase, syllables joined.

use std::collections::HashMap;

use crate::chart::{Playing, Ticks, Tune};

use super::follow::Place;
use super::stand::SungWords;

/// Characters that are taken in at a glance: a line of subtitles has 37 (common practice), and at a singer's size
/// the smallest phone has room for a few less.
const GLANCE: usize = 34;

/// A word and when it begins, from the start of the time through.
struct Word {
    at: Ticks,
    text: String,
}

/// The words of a time through, counted from 0, in the order of singing. Each pass of a part has the next of its verses;
/// they come round again when there are more passes than verses.
fn words(tune: &Tune, playing: &Playing, time: usize) -> Vec<Word> {
    let mut passes: HashMap<Option<usize>, usize> = HashMap::new();
    for bar in &playing.bars {
        let most = passes.entry(bar.part).or_default();
        *most = usize::from(bar.part_pass).max(*most);
    }
    let mut words: Vec<Word> = Vec::new();
    let mut joined = false;
    for bar in &playing.bars {
        let passes = passes.get(&bar.part).copied().unwrap_or(1);
        let verse = time * passes + usize::from(bar.part_pass).saturating_sub(1);
        for note in tune
            .bars
            .get(bar.written)
            .into_iter()
            .flat_map(|bar| &bar.notes)
        {
            let verses = note.syllables.len();
            let syllable = verse
                .checked_rem(verses)
                .and_then(|verse| note.syllables[verse].as_ref());
            let Some(syllable) = syllable.filter(|syllable| !syllable.text.is_empty()) else {
                continue; // held or not sung
            };
            match words.last_mut() {
                Some(word) if joined => word.text += &syllable.text,
                _ => words.push(Word {
                    at: bar.start + note.at,
                    text: syllable.text.clone(),
                }),
            }
            joined = syllable.joined;
        }
    }
    words
}

/// Whether a singer breathes after a word.
fn breathes(word: &Word) -> bool {
    word.text
        .trim_end_matches(['"', '”', '“', '»', '\'', '’', ')'])
        .ends_with([',', '.', ';', ':', '!', '?', '–', '—', '…'])
}

fn length(words: &[Word]) -> usize {
    let letters: usize = words.iter().map(|word| word.text.chars().count()).sum();
    letters + words.len().saturating_sub(1)
}

/// Words cut into phrases: where a singer breathes, and evenly where that is more than a glance. Short ones go together.
fn phrases(words: &[Word]) -> Vec<&[Word]> {
    let mut phrases: Vec<&[Word]> = Vec::new();
    let mut from = 0;
    for breath in words.split_inclusive(breathes) {
        let start = phrases.last().map_or(0, |last| from - last.len());
        let with_last = &words[start..from + breath.len()];
        if !phrases.is_empty() && length(with_last) <= GLANCE {
            phrases.pop();
            phrases.push(with_last);
        } else {
            phrases.extend(evenly(breath));
        }
        from += breath.len();
    }
    phrases
}

/// As few pieces of at most a glance as will do, about equally long.
fn evenly(mut words: &[Word]) -> Vec<&[Word]> {
    let mut pieces = Vec::new();
    let mut left = length(words).div_ceil(GLANCE).max(1);
    while !words.is_empty() {
        let share = length(words).div_ceil(left);
        // The cut nearest to an equal share that is still a glance; one word at least.
        let cut = (1..=words.len())
            .filter(|&cut| cut == 1 || length(&words[..cut]) <= GLANCE)
            .min_by_key(|&cut| length(&words[..cut]).abs_diff(share))
            .unwrap_or(1);
        let (piece, rest) = words.split_at(cut);
        pieces.push(piece);
        words = rest;
        left = left.saturating_sub(1).max(1);
    }
    pieces
}

fn text(words: &[Word]) -> String {
    let texts: Vec<&str> = words.iter().map(|word| word.text.as_str()).collect();
    texts.join(" ")
}

/// The phrase that is sung at a place, or the first before any is; and what follows it in this time through. `None` where
/// the tune has no words.
pub(super) fn sung(tune: &Tune, playing: &Playing, place: Place) -> Option<SungWords> {
    let time = usize::try_from(place.time).unwrap_or(0);
    let words = words(tune, playing, time);
    let phrases = phrases(&words);
    let begun =
        phrases.partition_point(|phrase| phrase.first().is_some_and(|word| word.at <= place.at));
    let now = begun.saturating_sub(1);
    Some(SungWords {
        now: text(phrases.get(now)?),
        then: text(phrases.get(now + 1).copied().unwrap_or_default()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formats::abc;

    fn tune(words: &str) -> Tune {
        let text = format!("X:1\nT:Song\nM:4/4\nL:1/4\nK:G\n{words}");
        abc::read(text.as_bytes()).tunes.remove(0).tune
    }

    fn cut(line: &str) -> Vec<String> {
        let words: Vec<Word> = line
            .split(' ')
            .map(|text| Word {
                at: Ticks::ZERO,
                text: text.to_owned(),
            })
            .collect();
        phrases(&words).into_iter().map(text).collect()
    }

    #[test]
    fn syllables_are_joined_and_holds_are_silent() {
        let tune = tune("GABc|dcBA|\nw:wa-ter runs un-der_ the stone\n");
        let words = words(&tune, &tune.playing(), 0);
        assert_eq!(text(&words), "water runs under the stone");
        assert_eq!(words[1].at, Ticks::QUARTER + Ticks::QUARTER);
    }

    #[test]
    fn phrases_end_where_a_singer_breathes_and_are_never_more_than_a_glance() {
        assert_eq!(
            cut("Ring low, ring low, beneath the mill water, ring low where none can see;"),
            [
                "Ring low, ring low,",
                "beneath the mill water,",
                "ring low where none can see;"
            ]
        );
        assert_eq!(
            cut("half a tune inside my coat to keep it from the rain and the wind"),
            [
                "half a tune inside my coat to keep",
                "it from the rain and the wind"
            ]
        );
        assert_eq!(cut("so, so, so"), ["so, so, so"]);
    }

    #[test]
    fn no_word_is_lost_in_the_cutting() {
        let lines = [
            "Donaudampfschifffahrtsgesellschaftskapitän, sing on",
            "a b c d e f g h i j k l m n o p q r s t u v w x y z a b c d e f",
            "one",
            "And then! she \"waited,\" (all the night,) by that gate… alone",
        ];
        for line in lines {
            assert_eq!(cut(line).join(" "), line);
            let words = |phrase: &String| phrase.split(' ').count();
            assert!(
                cut(line)
                    .iter()
                    .all(|one| one.chars().count() <= GLANCE || words(one) == 1)
            );
        }
    }

    #[test]
    fn each_pass_of_a_part_has_the_next_verse() {
        let tune =
            tune("P:A\n|:GABc:|\nw:one two three four\nw:five six seven eight\nP:B\nd4|\nw:O\n");
        let playing = tune.playing();
        let both = "one two three four five six seven eight O";
        assert_eq!(text(&words(&tune, &playing, 0)), both);
        assert_eq!(text(&words(&tune, &playing, 1)), both);
        let once =
            self::tune("P:A\nGABc|\nw:one two three four\nw:five six seven eight\nP:B\nd4|\nw:O\n");
        let again = words(&once, &once.playing(), 1);
        assert_eq!(text(&again), "five six seven eight O");
    }

    #[test]
    fn a_tune_without_words_has_none() {
        let tune = tune("GABc|\n");
        let place = Place {
            time: 0,
            bar: 0,
            at: Ticks::ZERO,
            counted: None,
            ended: false,
        };
        assert_eq!(sung(&tune, &tune.playing(), place), None);
    }
}
