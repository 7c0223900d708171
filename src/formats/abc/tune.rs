//! A tune: its header, its music, and what stands around it.

use std::borrow::Cow;

use crate::chart::{Tune, Verse};

use super::super::{Counted, ProblemKind, ReadTune, limits};
use super::lines::{Kind, Line, Lines};
use super::music::{Music, Room, split_name};
use super::problems::{Spot, excerpt};
use super::text::decode;
use super::token::{Token, Tokens};
use super::{fields, ours};

/// A field or directive with its place.
#[derive(Debug, Clone)]
pub(super) struct Field<'a> {
    line: Line<'a>,
    /// Its letter; `%` for a directive.
    pub(super) letter: char,
    pub(super) value: Cow<'a, str>,
}

impl<'a> Field<'a> {
    /// The field or directive that a line is.
    pub(super) fn of(line: Line<'a>) -> Option<Self> {
        let (letter, value) = match line.kind() {
            Kind::Field(letter, value) => (letter, value),
            Kind::Directive(value) => ('%', value),
            _ => return None,
        };
        Some(Self {
            line,
            letter,
            value: Cow::Borrowed(value),
        })
    }

    /// Adds a `+:` line (ABC 2.1, 3.3).
    pub(super) fn extend(&mut self, value: &str) {
        let room = limits::LINE.saturating_sub(self.value.len());
        let value = value.trim();
        let value = &value[..value.floor_char_boundary(room)];
        let whole = format!(
            "{} {value}",
            self.value.trim_end().trim_end_matches('\\').trim_end()
        );
        self.value = Cow::Owned(whole);
    }

    fn spot(&self) -> Spot<'a> {
        Spot::start(self.line).plus(2)
    }
}

/// What of the tune is not music.
#[derive(Default)]
struct Around {
    titles: Vec<String>,
    composers: Vec<String>,
    sources: Vec<String>,
    remarks: Vec<String>,
    verses: Vec<Verse>,
    rhythm: Option<crate::chart::Rhythm>,
    form: Vec<String>,
    number: Option<u32>,
    lines: usize,
}

struct Reader<'a> {
    music: Music,
    around: Around,
    ours: ours::Ours,
    in_music: bool,
    key_seen: bool,
    /// Our own lines of the header: a strum can be read when the metre is known.
    late: Vec<(String, Spot<'a>)>,
    /// The field that a `+:` line would go on with.
    open: Option<Field<'a>>,
    end: Spot<'a>,
}

/// Reads the tune in these lines; `defaults` are the fields before all tunes, `room` is what the book has left.
pub(super) fn read<'a>(lines: Lines<'a>, defaults: &[Field<'a>], room: Room) -> ReadTune {
    let first = lines.into_iter().next();
    let end = Spot {
        line: first.map_or(1, |line| line.number),
        text: first.map_or("", |line| line.text),
        byte: 0,
    };
    let mut reader = Reader {
        music: Music::new(Room {
            bars: room.bars.min(limits::BARS),
            notes: room.notes.min(limits::NOTES),
        }),
        around: Around::default(),
        ours: ours::Ours::default(),
        in_music: false,
        key_seen: false,
        late: Vec::new(),
        open: None,
        end,
    };
    reader.music.melody = melody(lines);
    for field in defaults {
        reader.header_field(field.letter, &field.value, end);
    }
    let mut empty = None;
    for line in lines {
        if line.cut {
            let spot = Spot::start(line).plus(limits::LINE);
            reader.music.problems.add(spot, ProblemKind::LineTooLong);
        }
        match line.kind() {
            Kind::Empty => {
                empty.get_or_insert(line);
                continue;
            }
            Kind::Comment => continue,
            _ => {}
        }
        if let Some(empty) = empty.take() {
            let spot = Spot::start(empty);
            reader.music.problems.add_once(spot, ProblemKind::EmptyLine);
        }
        reader.line(line);
    }
    reader.end_field();
    reader.finish(lines, end)
}

impl<'a> Reader<'a> {
    fn line(&mut self, line: Line<'a>) {
        self.end = Spot::start(line).plus(line.text.len());
        if let Kind::Field('+', value) = line.kind() {
            match &mut self.open {
                Some(field) => field.extend(value),
                None => self
                    .music
                    .problems
                    .add(Spot::start(line), ProblemKind::UnknownCharacter('+')),
            }
            return;
        }
        self.end_field();
        if let Some(field) = Field::of(line) {
            self.open = Some(field);
            return;
        }
        let Kind::Text(text) = line.kind() else {
            return;
        };
        if !self.in_music {
            if !super::token::looks_like_music(text) {
                // Old tunes go on with a history over several lines.
                let text = text.to_owned();
                self.remark(&text, Spot::start(line));
                return;
            }
            self.begin_music(Spot::start(line));
        }
        self.music.line(text, Spot::start(line));
    }

    /// The field before is complete.
    fn end_field(&mut self) {
        let Some(field) = self.open.take() else {
            return;
        };
        if self.in_music {
            self.body_field(&field);
        } else {
            self.header_field(field.letter, &field.value, field.spot());
            if field.letter == 'K' {
                self.key_seen = true;
                self.begin_music(field.spot());
            }
        }
    }

    fn begin_music(&mut self, spot: Spot<'_>) {
        self.in_music = true;
        if !self.key_seen {
            self.music.problems.add(spot, ProblemKind::MissingKey);
        }
        if self.music.unit.is_none() {
            self.music.unit = Some(self.music.unit());
        }
        for (text, spot) in std::mem::take(&mut self.late) {
            self.our_line(&text, spot);
        }
    }

    fn header_field(&mut self, letter: char, value: &str, spot: Spot<'a>) {
        match letter {
            'X' => self.around.number = value.trim().parse().ok(),
            'P' => {
                let form = fields::form(value);
                self.around.form = form.parts;
                if form.cut {
                    let kind = ProblemKind::TooMany(Counted::Parts);
                    self.music.problems.add(spot, kind);
                }
                if !form.balanced {
                    let value = excerpt(value);
                    let kind = ProblemKind::Field { field: 'P', value };
                    self.music.problems.add(spot, kind);
                }
            }
            'V' => self.music.declare_voice(value),
            'R' => {
                self.around.rhythm = fields::rhythm(&decode(value)).or(self.around.rhythm.take())
            }
            '%' | 'I' if self.is_ours(value) => {
                if self.late.len() < limits::DEFINITIONS {
                    self.late.push((value.trim().to_owned(), spot));
                }
            }
            '%' => self.music.directive(value),
            _ => self.common_field(letter, value, spot),
        }
    }

    fn body_field(&mut self, field: &Field<'_>) {
        let (value, spot) = (&field.value, field.spot());
        match field.letter {
            'w' => self
                .music
                .words(value.trim_end().trim_end_matches('\\'), spot),
            's' => self.music.symbols(value, spot),
            'R' => self.around.rhythm = self.around.rhythm.take().or_else(|| fields::rhythm(value)),
            'T' => self.music.pending.words(&decode(value.trim())),
            '%' | 'I' if self.is_ours(value) => self.our_line(value.trim(), spot),
            '%' => self.music.directive(value),
            'X' => {}
            letter => self.common_field(letter, value, spot),
        }
    }

    /// A field that means the same everywhere.
    fn common_field(&mut self, letter: char, value: &str, spot: Spot<'_>) {
        let decoded = decode(value);
        let text = decoded.trim();
        match letter {
            'T' => self.text(text, spot, |around| &mut around.titles),
            'C' => self.text(text, spot, |around| &mut around.composers),
            'S' | 'O' | 'A' | 'B' | 'D' | 'F' => {
                self.text(text, spot, |around| &mut around.sources);
            }
            'N' | 'H' | 'Z' => self.remark(text, spot),
            'W' => self.verse_line(text, spot),
            // Groups, remarks, macros, and letters that the standard does not know.
            'G' | 'r' | 'm' => {}
            _ => self.music.line_field(letter, value, spot),
        }
    }

    fn is_ours(&self, value: &str) -> bool {
        value.trim_start().starts_with(ours::PREFIX)
    }

    fn our_line(&mut self, text: &str, spot: Spot<'_>) {
        let (name, value) = split_name(text);
        let name = name.strip_prefix(ours::PREFIX).unwrap_or(name);
        let metre = self.music.metre;
        let part = self.music.bars.parts.last_mut();
        if let Err(kind) = self.ours.line(name, value, metre, part) {
            self.music.problems.add(spot, kind);
        }
    }

    /// Keeps a line of text, within bounds.
    fn bounded(&mut self, text: &str, spot: Spot<'_>) -> Option<String> {
        if self.around.lines >= limits::LINES {
            self.music
                .problems
                .add_once(spot, ProblemKind::TooMany(Counted::Lines));
            return None;
        }
        self.around.lines += 1;
        let kept: String = text.chars().take(limits::TEXT).collect();
        if kept.len() < text.len() {
            self.music.problems.add(spot, ProblemKind::WordsTooLong);
        }
        Some(kept)
    }

    fn text(&mut self, text: &str, spot: Spot<'_>, list: fn(&mut Around) -> &mut Vec<String>) {
        if text.is_empty() {
            return;
        }
        if let Some(text) = self.bounded(text, spot) {
            list(&mut self.around).push(text);
        }
    }

    fn remark(&mut self, text: &str, spot: Spot<'_>) {
        self.text(text, spot, |around| &mut around.remarks);
    }

    /// A line of a verse below the tune: an empty one, or one with a number, begins a verse.
    fn verse_line(&mut self, text: &str, spot: Spot<'_>) {
        let digits = text.bytes().take_while(u8::is_ascii_digit).count();
        let numbered = digits > 0 && text[digits..].starts_with(['.', ')', ':']);
        let begins = text.is_empty() || numbered || self.around.verses.is_empty();
        if begins
            && self
                .around
                .verses
                .last()
                .is_none_or(|verse| !verse.lines.is_empty())
        {
            self.around.verses.push(Verse::default());
        }
        let words = if numbered {
            text[digits + 1..].trim_start()
        } else {
            text
        };
        if words.is_empty() {
            return;
        }
        if let Some(line) = self.bounded(words, spot)
            && let Some(verse) = self.around.verses.last_mut()
        {
            verse.lines.push(line);
        }
    }

    fn finish(mut self, lines: Lines<'_>, start: Spot<'_>) -> ReadTune {
        if !self.in_music && !self.key_seen {
            self.music.problems.add(self.end, ProblemKind::MissingKey);
        }
        let (bars, parts) = self.music.finish(lines, self.end);
        if bars.is_empty() {
            self.music.problems.add(self.end, ProblemKind::NoMusic);
        }
        if self.around.titles.is_empty() {
            self.music.problems.add(start, ProblemKind::MissingTitle);
        }
        if !parts.is_empty() {
            let unknown = |label: &&String| !parts.iter().any(|part| part.label == **label);
            if let Some(label) = self.around.form.iter().find(unknown) {
                let label = excerpt(label);
                self.music
                    .problems
                    .add(start, ProblemKind::UnknownPart(label));
            }
        }
        let around = self.around;
        let mut titles = around.titles.into_iter();
        let mut verses = around.verses;
        verses.retain(|verse| !verse.lines.is_empty());
        let tune = Tune {
            title: titles.next().unwrap_or_default(),
            other_titles: titles.collect(),
            composer: around.composers.join(", "),
            source: around.sources.join("; "),
            rhythm: around.rhythm,
            metre: self.music.first_metre(),
            key: self.music.first_key(),
            tempo: self.music.tempo,
            bars,
            parts,
            form: around.form,
            times_through: self.ours.times,
            strum: self.ours.strum,
            verses,
            remarks: around.remarks,
            made: None,
            changed: None,
        };
        ReadTune {
            tune,
            problems: self.music.problems.finish(),
            number: around.number,
            line: start.line,
        }
    }
}

/// The first voice that has notes, where there are voices: they are ordered as they are named, in the header and in
/// the body. Music before any voice field belongs to the first.
fn melody(lines: Lines<'_>) -> Option<String> {
    let names_voice = |line: Line<'_>| line.text.starts_with("V:") || line.text.contains("[V:");
    if !lines.into_iter().any(names_voice) {
        return None;
    }
    let mut voices: Vec<(&str, bool)> = Vec::new();
    let mut current = None;
    fn named<'a>(voices: &mut Vec<(&'a str, bool)>, value: &'a str) -> Option<usize> {
        let (name, _) = split_name(value);
        let known = voices.iter().position(|(voice, _)| *voice == name);
        known.or_else(|| {
            let room = voices.len() < limits::VOICES && name != "*";
            room.then(|| {
                voices.push((name, false));
                voices.len() - 1
            })
        })
    }
    for line in lines {
        match line.kind() {
            Kind::Field('V', value) => current = named(&mut voices, value),
            Kind::Text(text) => {
                if voices.first().is_some_and(|voice| voice.1) && !text.contains("[V:") {
                    continue; // the melody is known
                }
                for (_, token) in Tokens::new(text, false) {
                    match token {
                        Token::Field('V', value) => current = named(&mut voices, value),
                        Token::Note(_) => {
                            if let Some(voice) = voices.get_mut(current.unwrap_or(0)) {
                                voice.1 = true;
                            }
                        }
                        _ => {}
                    }
                }
            }
            _ => {}
        }
    }
    let first = voices.first()?.0;
    let sounding = voices.iter().find(|(_, notes)| *notes);
    Some(sounding.map_or(first, |(name, _)| name).to_owned())
}
