//! Invented titles of tunes, as many as are wanted and always the same: a few thousand distinct words.

/// A generator with a seed (Knuth's MMIX constants).
struct Random(u64);

impl Random {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % end
    }

    fn of<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words[self.below(words.len())]
    }
}

const STARTS: &[&str] = &[
    "mil", "wei", "ten", "hol", "bra", "cor", "dun", "fen", "gil", "har", "ken", "lor", "mor",
    "nor", "pen", "quil", "ros", "stan", "thorn", "ul", "ver", "wag", "yar", "zel", "blos", "clo",
    "drum", "fal", "gren", "häl",
];
const MIDDLES: &[&str] = &[
    "a", "e", "i", "o", "u", "ra", "le", "ni", "to", "ver", "ling", "ber", "mé", "dow", "sa", "ter",
];
const ENDS: &[&str] = &[
    "race", "ford", "well", "ton", "by", "ster", "ley", "wick", "mere", "ing", "y", "an", "ie",
    "beck", "field",
];
const KINDS: &[&str] = &["Reel", "Jig", "Waltz", "Hornpipe", "Polka", "March", "Air"];
const COMMON: &[&str] = &[
    "Mill", "Weir", "Miller's", "Daughter", "Morning", "Lamp", "Chair", "Goose", "River", "Snow",
    "Kettle", "Old", "Lady", "Road", "Bridge", "Garden", "Winter", "Rose",
];

/// A word of two or three syllables: some seven thousand are possible, and some come often.
fn word(random: &mut Random) -> String {
    if random.below(3) == 0 {
        return random.of(COMMON).to_owned();
    }
    let mut word = random.of(STARTS).to_owned();
    word += random.of(MIDDLES);
    word += random.of(ENDS);
    let first = word.chars().next().unwrap().to_uppercase().to_string();
    first + &word[word.chars().next().unwrap().len_utf8()..]
}

/// So many titles.
pub(crate) fn titles(count: usize) -> Vec<String> {
    let mut random = Random(24);
    let random = &mut random;
    let title = |_| match random.below(5) {
        0 => format!("The {} {}", word(random), random.of(KINDS)),
        1 => format!("{} in the {}", word(random), word(random)),
        2 => format!("The {}'s {}", word(random), word(random)),
        3 => format!("{} of {} {}", random.of(KINDS), word(random), word(random)),
        _ => format!("{} {} {}", word(random), word(random), random.of(KINDS)),
    };
    (0..count).map(title).collect()
}
