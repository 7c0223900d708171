//! Finding tunes by words, forgiving of accents and of typing errors.
//!
//! Titles are folded to plain ASCII letters and cut into words; every distinct word is kept once with the tunes that
//! have it. A songbook of ten thousand tunes has only a few thousand distinct words, so each word of a query is
//! compared with all of them, letter by letter, in a fraction of a frame.

use std::collections::HashMap;

/// How well a word of the query fits a word of a title; higher is better, 0 is not at all.
type Score = u32;

const WHOLE: Score = 100;
const START: Score = 80;
const INSIDE: Score = 40;
const MISTYPED: Score = 20;

/// Letters of a word that is forgiven a slip only where nothing is found without.
const SHORT: usize = 3;

/// An index over the names of tunes.
#[derive(Debug, Default)]
pub struct Index {
    words: Vec<String>,
    /// For each word, which letters it has.
    letters: Vec<u64>,
    /// For each word, the tunes that have it, ascending.
    tunes: Vec<Vec<u32>>,
    /// Folded names of each tune, to favour a phrase as it was typed.
    names: Vec<String>,
}

/// Lower-case ASCII letters and digits with single spaces: `Mühle–Réel` becomes `muhle reel`.
pub fn fold(text: &str) -> String {
    let ascii = any_ascii::any_ascii(text);
    let mut folded = String::with_capacity(ascii.len());
    for c in ascii.chars() {
        match c {
            c if c.is_ascii_alphanumeric() => folded.push(c.to_ascii_lowercase()),
            '\'' => {} // miller's is looked for as millers
            _ if !folded.ends_with(' ') && !folded.is_empty() => folded.push(' '),
            _ => {}
        }
    }
    folded.truncate(folded.trim_end().len());
    folded
}

/// Which letters and digits a folded word has, a bit each.
fn letters(word: &str) -> u64 {
    word.bytes()
        .fold(0, |letters, byte| letters | 1 << (byte % 64))
}

/// How a word that was typed fits a word of a title. A word under four letters must fit exactly, up to seven letters
/// one slip is forgiven (a letter wrong, missing, doubled or swapped), from eight letters two.
///
/// `foreign` counts the letters of the typed word that the other does not have: it settles most pairs at once.
fn fit(typed: &str, word: &str, foreign: u32) -> Score {
    if let Some(at) = word.find(typed) {
        return match at {
            0 if word.len() == typed.len() => WHOLE,
            0 => START,
            _ => INSIDE,
        };
    }
    let slips = match typed.len() {
        0..=3 => return 0,
        4..=7 => 1,
        _ => 2,
    };
    if foreign as usize > slips || word.len() + slips < typed.len() {
        return 0;
    }
    // The word may go on after what was typed so far: its beginnings of about the same length are compared.
    let longest = (typed.len() + slips).min(word.len());
    let least = (typed.len() - slips..=longest)
        .map(|end| strsim::osa_distance(typed, &word[..end]))
        .min()
        .unwrap_or(usize::MAX);
    match least {
        1 if slips >= 1 => MISTYPED,
        2 if slips >= 2 => MISTYPED / 2,
        _ => 0,
    }
}

/// As [`fit`], and a word of three letters fits a whole word with one slip: `rel` is Reel. It is for queries that find
/// nothing else, since so short a word is near many others.
fn fit_or_short(typed: &str, word: &str, foreign: u32) -> Score {
    match fit(typed, word, foreign) {
        0 if typed.len() == SHORT && strsim::osa_distance(typed, word) == 1 => MISTYPED,
        score => score,
    }
}

impl Index {
    /// An index of tunes, each given by all its names; a tune's number is its place in the iterator.
    pub fn new<'a, N: IntoIterator<Item = &'a str>>(tunes: impl IntoIterator<Item = N>) -> Self {
        let mut index = Self::default();
        let mut places: HashMap<String, usize> = HashMap::new();
        for names in tunes {
            let number = u32::try_from(index.names.len()).unwrap_or(u32::MAX);
            let folded = names.into_iter().map(fold).collect::<Vec<_>>().join("\n");
            for word in folded.split_ascii_whitespace() {
                let place = *places.entry(word.to_owned()).or_insert_with(|| {
                    index.words.push(word.to_owned());
                    index.letters.push(letters(word));
                    index.tunes.push(Vec::new());
                    index.words.len() - 1
                });
                if index.tunes[place].last() != Some(&number) {
                    index.tunes[place].push(number);
                }
            }
            index.names.push(folded);
        }
        index
    }

    /// The tunes that fit every word of the query, best first, equal ones in their own order. No words find all. Where
    /// nothing fits, words of three letters are forgiven a slip too.
    ///
    /// ```
    /// use fourcourse::store::search::Index;
    /// let index = Index::new([vec!["Millrace Reel"], vec!["Réel de la Moulinière", "Weir Reel"], vec!["Old Millstone"]]);
    /// assert_eq!(index.find("mill reel"), [0]);
    /// assert_eq!(index.find("milrace"), [0]);
    /// assert_eq!(index.find("mouliniere"), [1]);
    /// assert_eq!(index.find("ston"), [2]);
    /// assert_eq!(index.find("milrace rel"), [0]);
    /// ```
    pub fn find(&self, query: &str) -> Vec<usize> {
        let query = fold(query);
        let found = self.fitting(&query, fit);
        let short = |word: &str| word.len() == SHORT;
        if found.is_empty() && query.split_ascii_whitespace().any(short) {
            return self.fitting(&query, fit_or_short);
        }
        found
    }

    /// The tunes that fit every word of a folded query, by how one word fits another.
    fn fitting(&self, query: &str, fit: fn(&str, &str, u32) -> Score) -> Vec<usize> {
        // What each tune has scored with the words so far, and with the word at hand; 0 is out of the running.
        let mut scores: Vec<Score> = vec![1; self.names.len()];
        let mut found: Vec<Score> = vec![0; self.names.len()];
        for typed in query.split_ascii_whitespace() {
            found.fill(0);
            let wanted = letters(typed);
            for (place, word) in self.words.iter().enumerate() {
                let score = fit(typed, word, (wanted & !self.letters[place]).count_ones());
                if score == 0 {
                    continue;
                }
                for &tune in &self.tunes[place] {
                    let (before, best) = (scores[tune as usize], &mut found[tune as usize]);
                    if before > 0 {
                        // A tune counts with its best word.
                        *best = before.saturating_add(score).max(*best);
                    }
                }
            }
            std::mem::swap(&mut scores, &mut found);
        }
        if query.is_empty() {
            return (0..self.names.len()).collect();
        }
        let places = scores.into_iter().enumerate();
        let mut hits: Vec<(Score, usize)> = places
            .filter(|&(_, score)| score > 0)
            .map(|(tune, score)| {
                let names = &self.names[tune];
                let phrase = if names.split('\n').any(|name| name.starts_with(query)) {
                    3 * WHOLE
                } else if names.contains(query) {
                    WHOLE
                } else {
                    0
                };
                (score.saturating_add(phrase), tune)
            })
            .collect();
        hits.sort_unstable_by_key(|&(score, tune)| (std::cmp::Reverse(score), tune));
        hits.into_iter().map(|(_, tune)| tune).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn index() -> Index {
        Index::new([
            vec!["Millrace Reel"],
            vec!["The Miller's Daughter", "La fille du meunier"],
            vec!["Reel of the Mill Lane"],
            vec!["Käthe am Wehr"],
        ])
    }

    #[test]
    fn any_part_of_any_name_finds_a_tune() {
        assert_eq!(index().find("race"), [0]);
        assert_eq!(index().find("meunier"), [1]);
        assert_eq!(index().find("millers d"), [1]);
    }

    #[test]
    fn a_name_that_begins_with_the_words_comes_first() {
        assert_eq!(index().find("reel"), [2, 0]);
        assert_eq!(index().find("mill"), [0, 2, 1]);
    }

    #[test]
    fn accents_and_slips_of_the_finger_are_forgiven() {
        for typed in [
            "kathe", "kaethe", "käthe", "milrace", "mlilrace", "millrase", "daugther",
        ] {
            assert_eq!(index().find(typed).len(), 1, "{typed}");
        }
    }

    #[test]
    fn short_words_and_other_words_are_not_stretched_to_fit() {
        assert!(index().find("mxl").is_empty());
        assert!(index().find("reel banjo").is_empty());
    }

    #[test]
    fn a_slip_in_a_word_of_three_letters_is_forgiven_where_nothing_else_is_found() {
        let index = Index::new([
            vec!["Millrace Reel"],
            vec!["Weir Jig"],
            vec!["Relic Jig"],
            vec!["Old Mill"],
        ]);
        assert_eq!(index.find("milrace rel"), [0]);
        assert_eq!(index.find("weir jgi"), [1]);
        assert_eq!(index.find("odl mill"), [3]);
        // What begins so is found, and what is only near it is not put beside it.
        assert_eq!(index.find("rel"), [2]);
        assert!(index.find("milrace waltz rel").is_empty());
    }

    #[test]
    fn no_words_find_all_in_their_own_order() {
        assert_eq!(index().find("  "), [0, 1, 2, 3]);
    }
}
