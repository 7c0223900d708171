//! Lines of the text and what they are.

/// A place in the text that lines are taken from, one after the other. Copies go on from the same place.
#[derive(Clone, Copy)]
pub(super) struct Lines<'a> {
    text: &'a str,
    position: usize,
    /// Lines are taken up to here.
    end: usize,
    number: usize,
    /// Where the last end mark of each kind of block stands: a block is passed over only if one is still to come.
    block_ends: [Option<usize>; BLOCKS.len()],
}

/// Blocks of lines that say nothing to us, from `%%begin...` to `%%end...`.
const BLOCKS: [(&str, &str); 4] = [
    ("begintext", "%%endtext"),
    ("beginps", "%%endps"),
    ("beginsvg", "%%endsvg"),
    ("beginml", "%%endml"),
];

/// A line without its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Line<'a> {
    /// From 1.
    pub(super) number: usize,
    /// Where it starts in the text.
    pub(super) start: usize,
    /// Its characters, as far as they are read.
    pub(super) text: &'a str,
    /// Whether it was longer.
    pub(super) cut: bool,
}

/// What a line is. The values are without comment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind<'a> {
    /// Nothing but white space.
    Empty,
    /// A remark, which is not an empty line.
    Comment,
    /// What follows `%%`.
    Directive(&'a str),
    /// A letter (or `+`), and what follows the colon.
    Field(char, &'a str),
    /// Anything else: music, or free text.
    Text(&'a str),
}

impl<'a> Lines<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self {
            text,
            position: 0,
            end: text.len(),
            number: 1,
            block_ends: BLOCKS.map(|(_, end)| text.rfind(end)),
        }
    }

    /// Where the next line starts in the text.
    pub(super) fn place(&self) -> usize {
        self.position
    }

    /// The lines up to a place of the text.
    pub(super) fn until(mut self, end: usize) -> Self {
        self.end = end;
        self
    }

    fn raw(&mut self) -> Option<Line<'a>> {
        let rest = self.text.get(self.position..self.end)?;
        if rest.is_empty() {
            return None;
        }
        let end = rest.find(['\n', '\r']).unwrap_or(rest.len());
        let stop = match rest.as_bytes()[end..] {
            [b'\r', b'\n', ..] => end + 2,
            [_, ..] => end + 1,
            [] => end,
        };
        let kept = rest.floor_char_boundary(end.min(super::super::limits::LINE));
        let line = Line {
            number: self.number,
            start: self.position,
            text: &rest[..kept],
            cut: kept < end,
        };
        self.position += stop;
        self.number += 1;
        Some(line)
    }
}

impl<'a> Iterator for Lines<'a> {
    type Item = Line<'a>;

    /// The next line; blocks of text for other programs are passed over, and stand as their first line.
    fn next(&mut self) -> Option<Line<'a>> {
        let line = self.raw()?;
        if let Some(directive) = line.text.strip_prefix("%%begin") {
            for (i, (begin, end)) in BLOCKS.into_iter().enumerate() {
                if directive.starts_with(&begin["begin".len()..])
                    && self.block_ends[i].is_some_and(|at| at >= self.position)
                {
                    while let Some(line) = self.raw() {
                        if line.text.contains(end) {
                            break;
                        }
                    }
                    break;
                }
            }
        }
        Some(line)
    }
}

impl<'a> Line<'a> {
    pub(super) fn kind(&self) -> Kind<'a> {
        if let Some(rest) = self.text.strip_prefix("%%") {
            return Kind::Directive(rest.trim());
        }
        if self.text.trim().is_empty() {
            return Kind::Empty;
        }
        let text = without_comment(self.text).trim_end();
        if text.trim_start().is_empty() {
            return Kind::Comment;
        }
        match *text.as_bytes() {
            [letter, b':', ref rest @ ..] if letter.is_ascii_alphabetic() || letter == b'+' => {
                // `d:|` is the last note of a repeat: letters of notes are no fields there.
                let bar = matches!(rest.first(), Some(b'|' | b':' | b']'));
                if bar && matches!(letter.to_ascii_uppercase(), b'A'..=b'G' | b'Z' | b'X') {
                    Kind::Text(text)
                } else {
                    Kind::Field(char::from(letter), &text[2..])
                }
            }
            _ => Kind::Text(text),
        }
    }
}

/// A line up to the percent sign that begins a remark; `\%` is an ordinary percent sign.
fn without_comment(text: &str) -> &str {
    let mut from = 0;
    while let Some(at) = text[from..].find('%') {
        let at = from + at;
        if !text[..at].ends_with('\\') {
            return &text[..at];
        }
        from = at + 1;
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_end_in_all_three_ways() {
        let texts: Vec<_> = Lines::new("a\nb\r\nc\rd\n\ne").map(|l| l.text).collect();
        assert_eq!(texts, ["a", "b", "c", "d", "", "e"]);
        assert_eq!(Lines::new("a\r\n\r\nb").last().map(|l| l.number), Some(3));
    }

    #[test]
    fn lines_are_told_apart() {
        let kind = |text| Lines::new(text).next().map(|line| line.kind());
        assert_eq!(kind("K:G % key"), Some(Kind::Field('K', "G")));
        assert_eq!(kind("d:|"), Some(Kind::Text("d:|")));
        assert_eq!(kind("%%text x"), Some(Kind::Directive("text x")));
        assert_eq!(kind("  "), Some(Kind::Empty));
        assert_eq!(kind(" % "), Some(Kind::Comment));
        assert_eq!(kind(r"W:50\% more %"), Some(Kind::Field('W', r"50\% more")));
    }

    #[test]
    fn blocks_for_other_programs_are_passed_over_if_they_are_closed() {
        let closed = "%%begintext\nX:1\n\n%%endtext\nT:x";
        let texts: Vec<_> = Lines::new(closed).map(|l| l.text).collect();
        assert_eq!(texts, ["%%begintext", "T:x"]);
        assert_eq!(Lines::new("%%begintext\nX:1\nT:x").count(), 3);
        // Found by the fuzzer: a letter of two bytes where the name of a block would end.
        assert_eq!(Lines::new("%%beginté\n%%beginp\u{3cf}1\n%%begi").count(), 3);
        assert_eq!(Lines::new("%%begin\u{a8}\u{3cf}1\n").count(), 1);
    }
}
