//! Values of the smaller fields: metre, unit note, tempo, rhythm, and the parts of a form.

use crate::chart::{Metre, Rhythm, Tempo, Ticks};

use super::super::limits;

/// A metre (ABC 2.1, 3.1.6): `6/8`, `C`, `C|`, `2+3+2/8`, `(2+3)/8`, `none`.
pub(super) fn metre(value: &str) -> Option<Metre> {
    let value = value.trim();
    match value {
        "C" | "c" => return Some(Metre::COMMON),
        "C|" | "c|" => return Some(Metre::CUT),
        "" => return Some(Metre::FREE),
        _ if value.eq_ignore_ascii_case("none") => return Some(Metre::FREE),
        _ => {}
    }
    let compact: String = value
        .chars()
        .take(40)
        .filter(|c| !matches!(c, ' ' | '(' | ')'))
        .collect();
    let (above, below) = compact.split_once('/')?;
    if below.contains('/') {
        return sum_of_metres(&compact);
    }
    let unit: u8 = below.parse().ok()?;
    let mut groups = [0; 6];
    let mut count = 0_u8;
    for (i, group) in above.split('+').enumerate() {
        let number = group.parse().ok().filter(|&n| n > 0)?;
        count = count.checked_add(number)?;
        *groups.get_mut(i)? = number;
    }
    if groups[1] == 0 {
        groups[0] = 0; // one number is no grouping
    }
    let known = matches!(unit, 1 | 2 | 4 | 8 | 16 | 32) && (1..=64).contains(&count);
    known.then_some(Metre {
        count,
        unit,
        groups,
    })
}

/// `3/4+2/4`: the groups of the smallest unit.
fn sum_of_metres(text: &str) -> Option<Metre> {
    let mut parts = Vec::new();
    for part in text.split('+') {
        if part.matches('/').count() != 1 {
            return None;
        }
        let part = metre(part).filter(|m| m.count > 0)?;
        parts.push(part);
    }
    let unit = parts.iter().map(|m| m.unit).max()?;
    let mut groups = [0; 6];
    let mut count = 0_u8;
    for (i, part) in parts.iter().enumerate() {
        let number = part.count.checked_mul(unit / part.unit)?;
        count = count.checked_add(number)?;
        *groups.get_mut(i)? = number;
    }
    (count <= 64).then_some(Metre {
        count,
        unit,
        groups,
    })
}

/// The unit note where the tune does not say one (ABC 2.1, 3.1.7): a sixteenth if the metre is less than 3/4 as a
/// number, otherwise an eighth; an eighth too in free time.
pub(super) fn default_unit(metre: Metre) -> Ticks {
    if metre.count > 0 && metre.bar() < Ticks::of(3, 4) {
        Ticks::of(1, 16)
    } else {
        Ticks::of(1, 8)
    }
}

/// A unit note: `1/8`, `1`.
pub(super) fn unit(value: &str) -> Option<Ticks> {
    let value = value.trim();
    let (above, below) = value.split_once('/').unwrap_or((value, "1"));
    let (num, den): (u16, u16) = (above.trim().parse().ok()?, below.trim().parse().ok()?);
    let known = (1..=64).contains(&num) && (1..=512).contains(&den);
    known.then(|| Ticks::of(i64::from(num), i64::from(den)))
}

/// What a tempo field says.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct TempoField<'a> {
    /// The tempo, where it has a number.
    pub(super) tempo: Option<Tempo>,
    /// The words in quotes, such as Allegro.
    pub(super) words: &'a str,
}

/// A tempo (ABC 2.1, 3.1.8): `1/4=120`, `"Allegro" 1/4=120`, `3/8=50 "slowly"`, `1/4 3/8 1/4 3/8=40` and the old forms
/// `120` and `C3=40`, which count unit notes (ABC 2.1, 10.1).
pub(super) fn tempo(value: &str, unit_note: Ticks) -> Option<TempoField<'_>> {
    let mut words = "";
    let mut number = value.trim().to_owned();
    if let Some(start) = value.find('"') {
        let after = &value[start + 1..];
        let end = after.find('"').unwrap_or(after.len());
        words = after[..end].trim();
        let rest = after.get(end + 1..).unwrap_or_default();
        number = format!("{} {rest}", &value[..start]).trim().to_owned();
    }
    if number.is_empty() {
        return Some(TempoField { tempo: None, words });
    }
    let (beats, bpm) = match number.split_once('=') {
        Some((beats, bpm)) => (beats.trim(), bpm.trim()),
        None => ("", number.as_str()),
    };
    let bpm = bpm.split_whitespace().next()?.parse::<f32>().ok()?;
    let mut beat = Ticks::ZERO;
    for part in beats.split_whitespace().take(16) {
        beat += match part.strip_prefix(['C', 'c']) {
            Some("") => unit_note,
            Some(times) => unit_note * times.parse::<u8>().ok().map(i64::from)?,
            None => unit(part)?,
        };
    }
    if beats.is_empty() {
        beat = unit_note;
    }
    let usable = (1.0..=2_000.0).contains(&bpm) && beat > Ticks::ZERO && beat <= Ticks::WHOLE * 4;
    usable.then_some(TempoField {
        tempo: Some(Tempo { bpm, beat }),
        words,
    })
}

/// The kind of tune by the words that books use for it (common practice).
pub(super) fn rhythm(value: &str) -> Option<Rhythm> {
    let value = value.trim();
    let word: String = value
        .chars()
        .map(|c| if c.is_alphabetic() { c } else { ' ' })
        .flat_map(char::to_lowercase)
        .collect();
    let words: Vec<_> = word.split(' ').filter(|w| !w.is_empty()).collect();
    let has = |names: &[&str]| words.iter().any(|word| names.contains(word));
    let joined = words.join(" ");
    Some(match joined.as_str() {
        "" => return None,
        "slip jig" | "slipjig" | "hop jig" | "slip jigs" => Rhythm::SlipJig,
        "slide" | "single jig" => Rhythm::Slide,
        "jig" | "jigs" | "double jig" => Rhythm::Jig,
        "reel" | "reels" => Rhythm::Reel,
        _ if has(&["hornpipe", "hornpipes"]) => Rhythm::Hornpipe,
        _ if has(&["polka", "polkas"]) && words.len() == 1 => Rhythm::Polka,
        _ if has(&["waltz", "waltzes", "valse", "vals"]) => Rhythm::Waltz,
        _ if has(&["mazurka", "mazurkas"]) => Rhythm::Mazurka,
        _ if has(&["march", "marches"]) => Rhythm::March,
        "barn dance" | "barndance" | "barn dances" => Rhythm::BarnDance,
        "calypso" | "calypsos" => Rhythm::Calypso,
        _ if has(&["schottische", "schottish"]) => Rhythm::Schottische,
        _ if has(&["strathspey", "strathspeys"]) => Rhythm::Strathspey,
        _ if has(&["air", "airs"]) => Rhythm::Air,
        _ if has(&["song", "songs"]) => Rhythm::Song,
        _ if has(&["swing"]) => Rhythm::Swing,
        _ if has(&["rag", "ragtime"]) => Rhythm::Rag,
        _ => Rhythm::Other(value.chars().take(limits::TEXT).collect()),
    })
}

/// The order of parts, written out.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Form {
    pub(super) parts: Vec<String>,
    /// Something was left out for its size.
    pub(super) cut: bool,
    /// Each bracket has its partner.
    pub(super) balanced: bool,
}

/// The order of parts (ABC 2.1, 3.1.9), written out: `A(AB)3.A` is A ABABAB A. Dots are there for the eye only.
pub(super) fn form(value: &str) -> Form {
    let mut balanced = true;
    let mut stack: Vec<Vec<char>> = vec![Vec::new()];
    let mut cut = false;
    let mut last: Option<Vec<char>> = None;
    let mut chars = value.chars().peekable();
    let mut too_deep = 0_usize;
    while let Some(c) = chars.next() {
        match c {
            '(' if stack.len() > limits::NESTING => {
                too_deep += 1;
                cut = true;
            }
            '(' => {
                stack.push(Vec::new());
                last = None;
            }
            ')' if too_deep > 0 => too_deep -= 1,
            ')' if stack.len() > 1 => {
                let group = stack.pop().unwrap_or_default();
                extend(&mut stack, &group, 1, &mut cut);
                last = Some(group);
            }
            '0'..='9' => {
                let mut times = c.to_digit(10).unwrap_or(1);
                while let Some(digit) = chars.peek().and_then(|c| c.to_digit(10)) {
                    times = (times * 10 + digit).min(1_000);
                    chars.next();
                }
                if let Some(group) = last.take() {
                    extend(&mut stack, &group, times.saturating_sub(1), &mut cut);
                }
            }
            ')' => balanced = false,
            _ if c.is_alphabetic() => {
                extend(&mut stack, &[c], 1, &mut cut);
                last = Some(vec![c]);
            }
            _ => {}
        }
    }
    balanced &= stack.len() == 1 && too_deep == 0;
    while stack.len() > 1 {
        let group = stack.pop().unwrap_or_default();
        extend(&mut stack, &group, 1, &mut cut);
    }
    let parts = stack.pop().unwrap_or_default();
    Form {
        parts: parts.into_iter().map(String::from).collect(),
        cut,
        balanced,
    }
}

fn extend(stack: &mut [Vec<char>], group: &[char], times: u32, cut: &mut bool) {
    let Some(top) = stack.last_mut() else { return };
    for _ in 0..times {
        if top.len() + group.len() > limits::PARTS {
            *cut = true;
            return;
        }
        top.extend_from_slice(group);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn metres_are_read_in_every_spelling() {
        let text = |value| metre(value).map(|m| m.to_string());
        for (value, expected) in [
            ("6/8", "6/8"),
            ("C", "4/4"),
            ("C|", "2/2"),
            ("2+3+2/8", "2+3+2/8"),
            ("(2+3)/8", "2+3/8"),
            ("(2 + 3 + 2) / 8", "2+3+2/8"),
            ("none", "none"),
            ("", "none"),
            ("3/4+3/8", "6+3/8"),
        ] {
            assert_eq!(text(value).as_deref(), Some(expected), "{value}");
        }
        for value in [
            "x",
            "4",
            "0/4",
            "4/0",
            "4/5",
            "300/4",
            "1/1/1",
            "1+1+1+1+1+1+1/8",
        ] {
            assert_eq!(metre(value), None, "{value}");
        }
    }

    #[test]
    fn the_unit_note_follows_the_metre() {
        // ABC 2.1, 3.1.7: below 0.75 it is a sixteenth; 2/4 = 0.5, 3/4 = 0.75.
        for (value, den) in [
            ("2/4", 16),
            ("3/4", 8),
            ("4/4", 8),
            ("6/8", 8),
            ("3/8", 16),
            ("none", 8),
        ] {
            let unit = metre(value).map(default_unit);
            assert_eq!(unit, Some(Ticks::of(1, den)), "{value}");
        }
    }

    #[test]
    fn tempos_are_read_in_every_form() {
        let eighth = Ticks::of(1, 8);
        let read = |value| {
            let field = tempo(value, eighth)?;
            Some((field.tempo.map(|t| (t.bpm, t.beat.fraction())), field.words))
        };
        assert_eq!(read("1/4=120"), Some((Some((120.0, (1, 1))), "")));
        assert_eq!(
            read("\"Allegro\" 1/4=120"),
            Some((Some((120.0, (1, 1))), "Allegro"))
        );
        assert_eq!(
            read("3/8=50 \"Slowly\""),
            Some((Some((50.0, (3, 2))), "Slowly"))
        );
        assert_eq!(read("1/4 3/8 1/4 3/8=40"), Some((Some((40.0, (5, 1))), "")));
        assert_eq!(read("120"), Some((Some((120.0, (1, 2))), "")));
        assert_eq!(read("C=100"), Some((Some((100.0, (1, 2))), "")));
        assert_eq!(read("C3=40"), Some((Some((40.0, (3, 2))), "")));
        assert_eq!(read("\"Andante\""), Some((None, "Andante")));
        assert_eq!(read("fast"), None);
        assert_eq!(read("1/4=0"), None);
    }

    #[test]
    fn forms_are_written_out_within_bounds() {
        let text = |value| form(value).parts.concat();
        assert_eq!(text("ABABCDCD"), "ABABCDCD");
        assert_eq!(text("A2B2"), "AABB");
        assert_eq!(text("A.B.C"), "ABC");
        // ABC 2.1, 3.1.9: `P:((AB)3.(CD)3)2`.
        assert_eq!(text("((AB)3.(CD)3)2"), "ABABABCDCDCDABABABCDCDCD");
        assert_eq!(text("A(AB)3.A"), "AABABABA");
        assert_eq!(text("(AB"), "AB");
        assert!(!form("(AB").balanced && !form("AB)").balanced);
        let long = form("((((A99)99)99)99)99");
        assert!(long.cut && long.balanced && long.parts.len() <= limits::PARTS);
        assert!(form(&"(".repeat(100_000)).cut);
    }

    #[test]
    fn rhythms_are_known_by_their_names() {
        assert_eq!(rhythm("Slip-Jig"), Some(Rhythm::SlipJig));
        assert_eq!(rhythm("double jig"), Some(Rhythm::Jig));
        assert_eq!(rhythm("slow air"), Some(Rhythm::Air));
        assert_eq!(rhythm("Barn dance"), Some(Rhythm::BarnDance));
        assert_eq!(rhythm("Highland"), Some(Rhythm::Other("Highland".into())));
        assert_eq!(rhythm(" "), None);
    }
}
