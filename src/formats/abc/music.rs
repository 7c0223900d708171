//! Music code becomes bars.

use crate::chart::{Bar, Metre, Part, Tempo, Ticks};
use crate::theory::Key;

use super::super::{Counted, ProblemKind, limits};
use super::bars::Bars;
use super::event::{Chord, Last, Pending};
use super::key::{self, C_MAJOR, Moves, Signature};
use super::lines::Lines;
use super::lyrics::{self, Alignment, Piece};
use super::pitch::{InForce, Scope, Transposition};
use super::problems::{Problems, Spot, excerpt};
use super::rhythm::{OpenTuplet, Ratio, broken};
use super::token::{Definitions, Token, Tokens, looks_like_words};
use super::{decoration, fields};

/// Everything that music code depends on and adds to.
pub(super) struct Music {
    pub(super) bars: Bars,
    pub(super) problems: Problems,
    /// The metre in force.
    pub(super) metre: Metre,
    /// The metre of the first bar.
    first_metre: Metre,
    /// The length of a note without a number, once it is known.
    pub(super) unit: Option<Ticks>,
    /// The key in force as written.
    key: Key,
    /// The key of the first bar as it sounds.
    first_key: Key,
    signature: Signature,
    key_moves: Moves,
    voice_moves: Moves,
    pub(super) transposition: Transposition,
    pub(super) scope: Scope,
    pub(super) in_force: InForce,
    pub(super) tempo: Option<Tempo>,
    /// Signs that the tune defines for itself.
    pub(super) definitions: Definitions,
    /// The voice that is the melody, where there are several.
    pub(super) melody: Option<String>,
    /// We are in another voice.
    silent: bool,
    /// That voice was named on a line of its own, and has had no music yet: fields here are about it alone.
    about_voice: bool,
    breaks: Breaks,

    pub(super) tuplet: Option<(OpenTuplet, Place)>,
    /// What broken rhythm does to the next note.
    pub(super) broken: Option<(Ratio, Place)>,
    pub(super) last: Option<Last>,
    pub(super) pending: Pending,
    in_grace: bool,
    pub(super) chord: Option<Chord>,
    pub(super) slurs: u32,
    /// Time in another voice that is laid over the bar, where we are in one.
    pub(super) overlay: Option<Ticks>,
    pub(super) alignment: Alignment,
    /// Notes that there is room for.
    pub(super) notes: usize,
}

/// How much of a tune may be read.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    pub(super) bars: usize,
    pub(super) notes: usize,
}

/// Line and byte, for a problem that may have to be told later.
pub(super) type Place = (usize, usize);

/// What ends a line on the page (ABC 2.1, 9.1).
#[derive(Debug, Clone, Copy)]
struct Breaks {
    line_ends: bool,
    dollars: bool,
    exclamations: bool,
}

impl Music {
    pub(super) fn new(room: Room) -> Self {
        Self {
            bars: Bars::new(room.bars),
            problems: Problems::default(),
            metre: Metre::FREE,
            first_metre: Metre::FREE,
            unit: None,
            key: C_MAJOR,
            first_key: C_MAJOR,
            signature: key::signature(C_MAJOR),
            key_moves: Moves::default(),
            voice_moves: Moves::default(),
            transposition: Transposition::new(Moves::default(), C_MAJOR),
            scope: Scope::default(),
            in_force: InForce::none(),
            tempo: None,
            definitions: Definitions::new(),
            melody: None,
            silent: false,
            about_voice: false,
            breaks: Breaks {
                line_ends: true,
                dollars: true,
                exclamations: false,
            },
            tuplet: None,
            broken: None,
            last: None,
            pending: Pending::default(),
            in_grace: false,
            chord: None,
            slurs: 0,
            overlay: None,
            alignment: Alignment::default(),
            notes: room.notes,
        }
    }

    pub(super) fn first_metre(&self) -> Metre {
        self.first_metre
    }

    pub(super) fn first_key(&self) -> Key {
        self.first_key
    }

    pub(super) fn signature(&self) -> &Signature {
        &self.signature
    }

    pub(super) fn unit(&self) -> Ticks {
        self.unit
            .unwrap_or_else(|| fields::default_unit(self.metre))
    }

    /// A field on a line of its own. Between the music of voices it holds for all of them, also where another voice
    /// than the melody came last; right below the `V:` line of a voice it is about that voice. Parts are parts of the
    /// whole tune wherever they stand. (ABC 2.1 has no rule; this reads both ways in which scores are written.)
    pub(super) fn line_field(&mut self, letter: char, value: &str, spot: Spot<'_>) {
        let silent = std::mem::take(&mut self.silent);
        if !(silent && self.about_voice && "KMLQ".contains(letter)) {
            self.field(letter, value, spot);
        }
        if letter == 'V' {
            self.about_voice = self.silent;
        } else {
            self.silent = silent;
        }
    }

    /// A field that music depends on; any other says nothing. `spot` is where its value starts.
    fn field(&mut self, letter: char, value: &str, spot: Spot<'_>) {
        if letter == 'V' {
            self.voice(value);
            return;
        }
        if self.silent {
            return;
        }
        let understood = match letter {
            'M' => fields::metre(value).map(|metre| self.set_metre(metre)),
            'L' => fields::unit(value).map(|unit| self.unit = Some(unit)),
            'K' => key::read(value).map(|field| {
                self.key_moves = field.moves.or(self.key_moves);
                if let Some((key, signature)) = field.key {
                    (self.key, self.signature) = (key, signature);
                }
                self.set_key();
            }),
            'Q' => fields::tempo(value, self.unit()).map(|field| {
                if self.bars.is_empty() {
                    self.tempo = field.tempo.or(self.tempo);
                }
                if !field.words.is_empty() {
                    self.pending.words(field.words);
                }
            }),
            'P' => {
                self.part(value, spot);
                Some(())
            }
            'U' => self.define(value, spot),
            'I' => {
                self.directive(value);
                Some(())
            }
            _ => return,
        };
        if understood.is_none() {
            let value = excerpt(value);
            self.problems.add(
                spot,
                ProblemKind::Field {
                    field: letter,
                    value,
                },
            );
        }
    }

    fn set_metre(&mut self, metre: Metre) {
        if self.bars.is_empty() {
            self.first_metre = metre;
        } else if metre != self.metre {
            self.bars.metre(metre);
        }
        self.metre = metre;
    }

    fn set_key(&mut self) {
        self.transposition = Transposition::new(self.voice_moves.or(self.key_moves), self.key);
        let sounding = self.transposition.key(self.key);
        if self.bars.is_empty() {
            self.first_key = sounding;
        } else {
            self.bars.key(sounding);
        }
    }

    fn part(&mut self, value: &str, spot: Spot<'_>) {
        let label: String = value.trim().chars().take(limits::TEXT).collect();
        if !label.is_empty() && !self.bars.part(label) {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Parts));
        }
    }

    /// A voice field in the header: only what it says of the melody counts.
    pub(super) fn declare_voice(&mut self, value: &str) {
        let (name, rest) = split_name(value);
        if self.melody.as_deref().is_none_or(|melody| melody == name) {
            self.voice_moves = key::read_moves(rest).or(self.voice_moves);
            self.set_key();
        }
    }

    fn voice(&mut self, value: &str) {
        let (name, rest) = split_name(value);
        self.silent = self.melody.as_deref().is_some_and(|melody| melody != name) && name != "*";
        if !self.silent && !rest.is_empty() {
            self.voice_moves = key::read_moves(rest).or(self.voice_moves);
            self.set_key();
        }
    }

    fn define(&mut self, value: &str, spot: Spot<'_>) -> Option<()> {
        let (name, meaning) = value.split_once('=')?;
        let mut letters = name.trim().chars();
        let letter = letters.next().filter(|_| letters.next().is_none())?;
        let meaning = meaning.trim().trim_matches('!').chars().take(limits::TEXT);
        let meaning: String = meaning.collect();
        self.definitions.retain(|(known, _)| *known != letter);
        if self.definitions.len() >= limits::DEFINITIONS {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Definitions));
        } else {
            self.definitions.push((letter, meaning.into()));
        }
        Some(())
    }

    /// An instruction that reading music depends on.
    pub(super) fn directive(&mut self, text: &str) {
        let (name, value) = split_name(text);
        match name {
            "propagate-accidentals" => {
                self.scope = Scope::named(value.trim()).unwrap_or(self.scope);
            }
            "linebreak" => {
                self.breaks = Breaks {
                    line_ends: value.contains("EOL"),
                    dollars: value.contains('$'),
                    exclamations: value.contains('!'),
                };
            }
            _ => {}
        }
    }

    /// A line of words under the music before.
    pub(super) fn words(&mut self, text: &str, spot: Spot<'_>) {
        if self.silent {
            return;
        }
        let alignment = &mut self.alignment;
        if !self.bars.with_all(|bars| alignment.words(text, bars)) {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Lyrics));
        }
    }

    /// A line of symbols over the music before.
    pub(super) fn symbols(&mut self, text: &str, spot: Spot<'_>) {
        if self.silent {
            return;
        }
        let pieces = lyrics::symbols(text);
        for (place, piece) in self.alignment.symbols(&pieces) {
            let bar = self.bars.bar(place.bar);
            let Some(at) = bar.notes.get(place.note).map(|note| note.at) else {
                continue;
            };
            match piece {
                Piece::Quoted(text) => self.put_quoted(text, place.bar, at, spot),
                Piece::Named(name) => self.put_named(&name.clone(), place.bar, place.note),
                Piece::Letter(letter) => {
                    if let Some(name) = self.meaning(*letter) {
                        self.put_named(&name, place.bar, place.note);
                    }
                }
                _ => {}
            }
        }
    }

    /// What a letter before a note stands for.
    pub(super) fn meaning(&self, letter: char) -> Option<String> {
        let defined = self.definitions.iter().find(|(known, _)| *known == letter);
        match defined {
            Some((_, meaning)) => Some(meaning.to_string()),
            None => decoration::shorthand(letter).map(str::to_owned),
        }
    }

    /// A line of music code.
    pub(super) fn line(&mut self, text: &str, spot: Spot<'_>) {
        let defined = |c| self.definitions.iter().any(|(known, _)| *known == c);
        if !self.silent && looks_like_words(text, defined) {
            self.problems.add(spot, ProblemKind::NotMusic);
            return;
        }
        self.about_voice = false;
        self.alignment.line();
        let mut goes_on = self.silent;
        for (byte, token) in Tokens::new(text, self.breaks.exclamations) {
            let spot = spot.plus(byte);
            if let Token::Field(letter, value) = token {
                self.field(letter, value, spot);
                goes_on |= self.silent;
                continue;
            }
            if self.silent {
                continue;
            }
            if self.bars.is_full() {
                self.problems
                    .add_once(spot, ProblemKind::TooMany(Counted::Bars));
                return;
            }
            goes_on = token == Token::Continuation;
            self.token(token, spot);
        }
        self.close_chord(spot);
        if std::mem::take(&mut self.in_grace) {
            self.problems
                .add(spot.plus(text.len()), ProblemKind::Unclosed('{'));
        }
        if !goes_on && self.breaks.line_ends {
            self.bars.line_end();
        }
    }

    fn token(&mut self, token: Token<'_>, spot: Spot<'_>) {
        match token {
            Token::Note(note) if self.in_grace => self.grace(note, spot),
            Token::Note(note) => self.note(note, spot),
            Token::Rest(length) if !self.in_grace => {
                let length = self.checked(length, spot);
                if let Some(chord) = &mut self.chord {
                    chord.length.get_or_insert(length);
                } else {
                    self.event(&[], length, spot);
                }
            }
            Token::BarRest(count) => self.bar_rest(count, spot),
            Token::Spacer => self.place_pending(spot),
            Token::ChordStart if !self.in_grace => {
                self.close_chord(spot);
                self.chord = Some(Chord::new((spot.line, spot.byte)));
            }
            Token::ChordEnd(length) if !self.in_grace => self.end_chord(length, spot),
            Token::GraceStart => self.in_grace = true,
            Token::GraceEnd => self.in_grace = false,
            Token::Named(name) => self.pending.decoration(name),
            Token::Letter(letter) => match self.meaning(letter) {
                Some(name) if name.starts_with('"') => self.pending.quoted(name.trim_matches('"')),
                Some(name) => self.pending.decoration(&name),
                None => self
                    .problems
                    .add(spot, ProblemKind::UnknownCharacter(letter)),
            },
            Token::Quoted(text, closed) => {
                if !closed {
                    self.problems.add(spot, ProblemKind::Unclosed('"'));
                }
                self.pending.quoted(text);
            }
            Token::Bar(line) => {
                self.close_chord(spot);
                self.overlay = None;
                self.bars.line(line);
                self.in_force = InForce::none();
                self.signs_on_line();
                self.pending.ornaments.clear();
            }
            Token::Ending(numbers) => self.bars.ending(numbers),
            Token::Tuplet(p, q, r) if p > 1 && self.overlay.is_none() => {
                let tuplet = OpenTuplet::new(p, q, r, self.metre);
                self.tuplet = Some((tuplet, (spot.line, spot.byte)));
            }
            Token::SlurStart => self.slurs = self.slurs.saturating_add(1),
            Token::SlurEnd => self.end_slur(),
            Token::Tie => self.tie(),
            Token::Broken(longer_first, marks) if !self.in_grace => {
                self.break_rhythm(broken(longer_first, marks), spot);
            }
            Token::Overlay => self.overlay = Some(Ticks::ZERO),
            Token::LineBreak('$') if self.breaks.dollars => self.bars.line_end(),
            Token::LineBreak('!') if self.breaks.exclamations => self.bars.line_end(),
            Token::Unclosed(c) => self.problems.add(spot, ProblemKind::Unclosed(c)),
            Token::Unknown(c) => self.problems.add(spot, ProblemKind::UnknownCharacter(c)),
            _ => {}
        }
    }

    /// The bars and parts of it all. `lines` are the tune's, `spot` is its end.
    pub(super) fn finish(&mut self, lines: Lines<'_>, spot: Spot<'_>) -> (Vec<Bar>, Vec<Part>) {
        self.finish_events(lines, spot);
        let bars = std::mem::take(&mut self.bars);
        let (bars, parts, whole) = bars.finish(self.first_metre);
        if !whole {
            self.problems
                .add_once(spot, ProblemKind::TooMany(Counted::Bars));
        }
        (bars, parts)
    }
}

/// A name and what follows it.
pub(super) fn split_name(text: &str) -> (&str, &str) {
    let text = text.trim();
    let end = text.find(char::is_whitespace).unwrap_or(text.len());
    (&text[..end], text[end..].trim())
}
