//! The words of a song below its chart: those under the notes line by line, then the verses below the tune.

use fourcourse::chart::Tune;

use super::page::columns;

/// The verses with an empty line before each, numbered where there are several, and no line wider than the page.
pub(super) fn lines(tune: &Tune, width: usize) -> Vec<String> {
    let below = tune.verses.iter().map(|verse| verse.lines.clone());
    let verses: Vec<_> = sung(tune).into_iter().chain(below).collect();
    let mut page = Vec::new();
    for (verse, number) in verses.iter().zip(1..) {
        let mut mark = match verses.len() {
            1 => String::new(),
            _ => format!("{number}. "),
        };
        let indent = " ".repeat(columns(&mark));
        page.push(String::new());
        for line in verse {
            wrap(
                &std::mem::replace(&mut mark, indent.clone()),
                line,
                width,
                &mut page,
            );
        }
    }
    page
}

/// What stands under the notes, a verse for each line of words under one line of music.
fn sung(tune: &Tune) -> Vec<Vec<String>> {
    let notes = tune.bars.iter().flat_map(|bar| &bar.notes);
    let count = notes.map(|note| note.syllables.len()).max().unwrap_or(0);
    let verses = (0..count).map(|verse| {
        let mut lines = vec![String::new()];
        for bar in &tune.bars {
            for note in &bar.notes {
                let syllable = note.syllables.get(verse).and_then(Option::as_ref);
                if let (Some(syllable), Some(line)) = (syllable, lines.last_mut()) {
                    *line += &syllable.text;
                    if !syllable.joined && !syllable.text.is_empty() {
                        line.push(' ');
                    }
                }
            }
            if bar.line_end {
                lines.push(String::new());
            }
        }
        lines.retain_mut(|line| {
            line.truncate(line.trim_end().len());
            !line.is_empty()
        });
        lines
    });
    verses.filter(|lines| !lines.is_empty()).collect()
}

/// Breaks a line between words; what follows stands two columns further in.
fn wrap(start: &str, text: &str, width: usize, page: &mut Vec<String>) {
    let further = " ".repeat(columns(start) + 2);
    let mut line = start.to_owned();
    let mut empty = true;
    for word in text.split_whitespace() {
        if !empty && columns(&line) + 1 + columns(word) > width {
            page.push(std::mem::replace(&mut line, further.clone()));
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line += word;
        empty = false;
    }
    page.push(line);
}

#[cfg(test)]
mod tests {
    use fourcourse::formats::abc;

    fn lines(abc: &str, width: usize) -> Vec<String> {
        let book = abc::read(abc.as_bytes());
        super::lines(&book.tunes[0].tune, width)
    }

    #[test]
    fn words_under_the_notes_are_put_together_again() {
        let song = "X:1\nT:a\nM:4/4\nL:1/4\nK:C\nCDEF|G4|\nw: O-ver the mill _\nw: Un-der the weir_\n\
            cBAG|]\nw: wa-ter * runs\n";
        let wanted = [
            "",
            "1. Over the mill",
            "   water runs",
            "",
            "2. Under the weir",
        ];
        assert_eq!(lines(song, 80), wanted);
    }

    #[test]
    fn verses_below_the_tune_follow_and_no_line_is_too_wide() {
        let song = "X:1\nT:a\nK:C\nC4|]\nw: la\nW:2. One two three four five\nW:six\n";
        let wanted = [
            "",
            "1. la",
            "",
            "2. One two",
            "     three four",
            "     five",
            "   six",
        ];
        assert_eq!(lines(song, 15), wanted);
        assert_eq!(lines("X:1\nT:a\nK:C\nC4|]\nW:alone\n", 16), ["", "alone"]);
        assert!(lines("X:1\nT:a\nK:C\nC4|]\n", 16).is_empty());
    }
}
