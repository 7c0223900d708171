//! Bar lines and the numbers of endings, in every spelling.

use super::super::limits::TIMES;

/// What a bar line says (ABC 2.1, 4.8).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct BarLine {
    /// Dots before it: a section ends that is played once more often than there are dots.
    pub(super) ends: u8,
    /// Dots after it: a section begins that is played once more often than there are dots.
    pub(super) starts: u8,
    /// A double or thick line.
    pub(super) double: bool,
}

impl BarLine {
    /// The bar line at the start of `text` and its length in bytes. "Bar lines may have any shape, using a sequence of
    /// `|`, `[` or `]`, and `:`" (ABC 2.1, 4.8), as long as a `[` does not open something else.
    pub(super) fn split(text: &str) -> Option<(Self, usize)> {
        let bytes = text.as_bytes();
        let mut length = 0;
        while let Some(&byte) = bytes.get(length) {
            let next = bytes.get(length + 1);
            match byte {
                b'|' | b':' | b']' => length += 1,
                b'[' if matches!(next, Some(b'|' | b']')) => length += 1,
                b'[' if length > 0 && next == Some(&b':') => length += 1,
                _ => break,
            }
        }
        let shape = &text[..length];
        if matches!(shape, "" | ":" | "[]") {
            return None;
        }
        let dots = |count: usize| u8::try_from(count).unwrap_or(TIMES).min(TIMES - 1);
        let lines = shape.trim_matches(':');
        if lines.is_empty() {
            return Some((
                Self {
                    ends: dots(length.div_ceil(2)),
                    starts: dots(length / 2),
                    double: false,
                },
                length,
            ));
        }
        let mut ends = shape.len() - shape.trim_start_matches(':').len();
        let starts = shape.len() - shape.trim_end_matches(':').len();
        let inner = lines.matches(':').count();
        if ends == 0 && inner > 0 {
            ends = inner; // `|:|` and the like: the dots can only belong to what lies before
        }
        let thick = lines.len() > 1 && lines != "[|]" || lines == "]";
        let line = Self {
            ends: dots(ends),
            starts: dots(starts),
            double: thick && !(ends > 0 && starts > 0),
        };
        Some((line, length))
    }
}

/// The numbers of an ending at the start of `text`, such as `1`, `1,3`, `1-3` or `1.`, and their length in bytes.
pub(super) fn split_ending(text: &str) -> Option<(Vec<u8>, usize)> {
    let bytes = text.as_bytes();
    if !bytes.first()?.is_ascii_digit() {
        return None;
    }
    let mut length = 0;
    let mut numbers = Vec::new();
    let mut from: Option<u8> = None;
    loop {
        let digits = bytes[length..]
            .iter()
            .take_while(|b| b.is_ascii_digit())
            .count();
        if digits == 0 {
            break;
        }
        let number = text[length..length + digits].parse().unwrap_or(TIMES);
        let number = u8::clamp(number, 1, TIMES);
        numbers.extend(from.take().map_or(number, |from| from.min(number))..=number);
        length += digits;
        let more = bytes.get(length + 1).is_some_and(u8::is_ascii_digit);
        match bytes.get(length) {
            Some(b'-') if more => from = Some(number),
            Some(b',' | b'.') if more => {}
            Some(b'.') => {
                length += 1;
                break;
            }
            _ => break,
        }
        length += 1;
    }
    numbers.sort_unstable();
    numbers.dedup();
    Some((numbers, length))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bar_lines_of_the_standard_and_of_the_wild_are_understood() {
        let plain = |text| BarLine::split(text).map(|(l, n)| (l.ends, l.starts, l.double, n));
        for (text, expected) in [
            ("|", (0, 0, false, 1)),
            ("||", (0, 0, true, 2)),
            ("|]", (0, 0, true, 2)),
            ("[|", (0, 0, true, 2)),
            ("|:", (0, 1, false, 2)),
            (":|", (1, 0, false, 2)),
            ("::", (1, 1, false, 2)),
            (":|:", (1, 1, false, 3)),
            (":||:", (1, 1, false, 4)),
            ("|::", (0, 2, false, 3)),
            ("::|", (2, 0, false, 3)),
            ("[|:", (0, 1, true, 3)),
            (":|]", (1, 0, true, 3)),
            (":||", (1, 0, true, 3)),
            ("||:", (0, 1, true, 3)),
            ("[|]", (0, 0, false, 3)),
            ("|[|", (0, 0, true, 3)),
            ("[|:::", (0, 3, true, 5)),
            ("::::", (2, 2, false, 4)),
            ("]", (0, 0, true, 1)),
            ("|[CEG]", (0, 0, false, 1)),
            ("|[1 a", (0, 0, false, 1)),
            ("|[K:G]", (0, 0, false, 1)),
            (":|[2", (1, 0, false, 2)),
        ] {
            assert_eq!(plain(text), Some(expected), "{text}");
        }
        assert_eq!(plain("[CEG]"), None);
        assert_eq!(plain(":"), None);
    }

    #[test]
    fn endings_are_lists_and_ranges() {
        let numbers = |text| split_ending(text);
        assert_eq!(numbers("1 a"), Some((vec![1], 1)));
        assert_eq!(numbers("1,3,5-7 a"), Some((vec![1, 3, 5, 6, 7], 7)));
        assert_eq!(numbers("1-3"), Some((vec![1, 2, 3], 3)));
        assert_eq!(numbers("2.a"), Some((vec![2], 2)));
        assert_eq!(numbers("9999999999"), Some((vec![TIMES], 10)));
        assert_eq!(numbers("a"), None);
    }
}
