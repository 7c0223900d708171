//! What a page is made of.

/// How a mark stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Tone {
    /// What is read.
    #[default]
    Ink,
    /// What is read when there is time, and what is outside the stretch that is practised.
    Quiet,
    /// Lines that carry the rest.
    Faint,
    /// What rings along.
    Ring,
}

/// A sign of the music font.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sign {
    /// Its left edge.
    pub x: f32,
    /// Its baseline.
    pub y: f32,
    /// An em, which is four staff spaces.
    pub em: f32,
    /// Its code point in the SMuFL standard.
    pub sign: char,
    /// How it stands out.
    pub tone: Tone,
}

/// What a word stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Ground {
    /// Nothing: what is behind it shows through.
    #[default]
    None,
    /// A patch that interrupts the line behind it.
    Patch,
    /// A patch in a ring: a drone, told by its form in any tone.
    Ring,
    /// A frame, as musicians put round the letter of a part so that nobody takes it for a chord.
    Frame,
}

/// A word or a figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Word {
    /// Left edge of its box.
    pub x: f32,
    /// The middle of its line.
    pub y: f32,
    /// Width of its box.
    pub width: f32,
    /// Size of the type.
    pub size: f32,
    /// What it says.
    pub text: String,
    /// It stands in the middle of its box, not at the left.
    pub centred: bool,
    /// It is heavy.
    pub bold: bool,
    /// What it stands on.
    pub ground: Ground,
    /// How it stands out.
    pub tone: Tone,
}

/// A filled rectangle: a line, a stem, a bar line.
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(missing_docs)]
pub struct Rule {
    pub x: f32,
    pub y: f32,
    pub width: f32,
    pub height: f32,
    pub tone: Tone,
}

/// A filled shape that is no rectangle: a slanted beam, a tie.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// Left edge.
    pub x: f32,
    /// Upper edge.
    pub y: f32,
    /// Width of its field.
    pub width: f32,
    /// Height of its field.
    pub height: f32,
    /// Its outline from the corner of the field, as commands of an SVG path.
    pub commands: String,
    /// How it stands out.
    pub tone: Tone,
}

/// Where a bar stands in its system.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarPlace {
    /// The written bar.
    pub bar: usize,
    /// Its left bar line.
    pub x: f32,
    /// To its right bar line.
    pub width: f32,
    /// It leads into the bar after it.
    pub pickup: bool,
}

/// A line of the page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct System {
    /// Its bars from the left.
    pub bars: Vec<BarPlace>,
    /// Signs of the music font.
    pub signs: Vec<Sign>,
    /// Words and figures.
    pub words: Vec<Word>,
    /// Lines and stems.
    pub rules: Vec<Rule>,
    /// Beams and ties.
    pub curves: Vec<Curve>,
}

/// About how wide a text is, in its font size: enough to keep words apart, as no font is known here. Measured roughly
/// from the app's own typeface, on the wide side.
pub(super) fn ems(text: &str) -> f32 {
    let letter = |letter: char| match letter {
        'i' | 'l' | 'j' | 'I' | '.' | ',' | '\'' | '’' | ':' | ';' | '!' | '|' => 0.3,
        't' | 'f' | 'r' | ' ' | '-' | '(' | ')' | '/' => 0.42,
        'm' | 'w' | 'M' | 'W' => 0.92,
        upper if upper.is_uppercase() => 0.72,
        _ => 0.62,
    };
    text.chars().map(letter).sum()
}
