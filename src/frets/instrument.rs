//! An instrument is data: what its courses sound, how long they are, where the frets lie.

use crate::theory::{Interval, Pitch};

use super::table;

/// Most courses that a tuning may have; further ones are left out.
pub const MAX_COURSES: usize = 12;

/// Most frets that a neck may have.
pub const MAX_FRETS: u8 = 30;

/// What a course is strung with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Strings {
    /// One string.
    Single,
    /// Two strings that sound alike.
    Pair,
    /// Two strings an octave apart; the course is named after the lower one.
    OctavePair,
}

/// One course of a neck: the strings that are stopped and struck together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Course {
    /// What it sounds when nothing touches it.
    pub open: Pitch,
    /// What it is strung with.
    pub strings: Strings,
    /// The fret at which the course begins: 0 at the nut, 5 for the short string of a banjo. The short string's frets are
    /// numbered like those of its neighbours, as banjo players do: fret 7 sounds two semitones above open.
    pub starts_at: u8,
}

/// A capo, and what is done to a short string meanwhile. Frets are counted from the capo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Capo {
    /// The fret that it lies on; 0 is none.
    pub fret: u8,
    /// Semitones that a short string is raised by, with a spike, a capo of its own or the tuner.
    pub short: u8,
}

impl Capo {
    /// No capo.
    pub const NONE: Self = Self::at(0);

    /// A capo on a fret, the short string raised as far (common practice: A is the G tuning, capo 2, fifth string up 2).
    pub const fn at(fret: u8) -> Self {
        Self { fret, short: fret }
    }
}

/// How an instrument sounds a chord: what its shapes are for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Texture {
    /// All courses in one stroke.
    Full,
    /// Two neighbouring courses at once: more do not fit under a bow.
    DoubleStop,
    /// The root and the fifth, on neighbouring courses and in turn: the harmony is left to the others (common practice).
    RootAndFifth,
}

/// A neck with its tuning.
#[derive(Debug, Clone, PartialEq)]
pub struct Instrument {
    /// Stable name for settings and for the shell, such as `octave-mandolin`; `custom` for a tuning of one's own.
    pub id: &'static str,
    /// Its courses as they lie under the right hand, the one nearest to the player's face first. Mostly that is from low
    /// to high; a ukulele starts with its high g and a banjo with its short string.
    pub courses: Vec<Course>,
    /// Length of the sounding string from nut to bridge, in mm.
    pub scale_mm: f64,
    /// Distance from course to course in the first frets, in mm.
    pub spacing_mm: f64,
    /// How many frets there are; at most [`MAX_FRETS`].
    pub frets: u8,
    /// Frets that each finger looks after when the hand is at the nut: two where the courses are a fifth apart (index 1-2,
    /// middle 3-4, ring 5-6, little 7), otherwise one (common practice).
    pub frets_a_finger: u8,
    /// How it sounds a chord.
    pub texture: Texture,
    /// Whether there are frets at all. A fiddle has none: numbers are then semitones, and marks for the fingers.
    pub fretted: bool,
}

impl Instrument {
    /// The instruments that are built in, the mandolin first.
    pub fn all() -> impl Iterator<Item = Self> {
        table::ROWS.iter().map(table::Row::instrument)
    }

    /// The built-in instrument of that name.
    ///
    /// ```
    /// use fourcourse::frets::Instrument;
    /// let banjo = Instrument::by_id("banjo").unwrap();
    /// assert_eq!(banjo.courses[0].open.to_string(), "G4");
    /// assert_eq!(Instrument::by_id("kazoo"), None);
    /// ```
    pub fn by_id(id: &str) -> Option<Self> {
        table::ROWS
            .iter()
            .find(|row| row.id == id)
            .map(table::Row::instrument)
    }

    /// The mandolin, which this app is for first of all.
    pub fn mandolin() -> Self {
        table::ROWS[0].instrument()
    }

    /// The same neck in another tuning, first course first. With as many courses as before, pairs and short strings stay
    /// what they were; otherwise every course is a single string from the nut. Courses beyond [`MAX_COURSES`] are left out.
    ///
    /// ```
    /// use fourcourse::frets::{Capo, Instrument};
    /// use fourcourse::theory::Pitch;
    /// let cross = [("A", 3), ("E", 4), ("A", 4), ("E", 5)]
    ///     .map(|(name, octave)| Pitch::new(name.parse().unwrap(), octave));
    /// let mandolin = Instrument::mandolin().tuned(&cross);
    /// assert_eq!(mandolin.sound(0, 2, Capo::NONE).unwrap().to_string(), "B3");
    /// ```
    pub fn tuned(self, open: &[Pitch]) -> Self {
        let same = open.len() == self.courses.len();
        let plain = |&open| Course {
            open,
            strings: Strings::Single,
            starts_at: 0,
        };
        let courses = if same {
            let pairs = self.courses.iter().zip(open);
            pairs
                .map(|(&course, &open)| Course { open, ..course })
                .collect()
        } else {
            open.iter().take(MAX_COURSES).map(plain).collect()
        };
        Self {
            id: "custom",
            courses,
            ..self
        }
    }

    /// Which string a course is as players count, from the highest one at 1, where the open course shares its letter with
    /// another; elsewhere the letter says it.
    ///
    /// ```
    /// use fourcourse::frets::Instrument;
    /// let banjo = Instrument::by_id("banjo").unwrap();
    /// let numbers: Vec<_> = (0..5).map(|course| banjo.string_number(course)).collect();
    /// assert_eq!(numbers, [Some(5), Some(4), Some(3), None, Some(1)]);
    /// ```
    pub fn string_number(&self, course: usize) -> Option<u8> {
        let name = self.courses.get(course)?.open.name;
        let alike = self.courses.iter().filter(|other| other.open.name == name);
        let number = u8::try_from(self.courses.len() - course).ok();
        number.filter(|_| alike.count() > 1)
    }

    /// Distance in mm from the nut to a fret: `scale (1 - 2^(-fret/12))`, the rule of equal temperament.
    pub fn fret_mm(&self, fret: u8) -> f64 {
        self.scale_mm * (1.0 - f64::exp2(-f64::from(fret) / 12.0))
    }

    /// The last fret that is left above a capo.
    pub fn last_fret(&self, capo: Capo) -> u8 {
        self.frets.min(MAX_FRETS).saturating_sub(capo.fret)
    }

    /// What a course sounds at a fret counted from the capo, 0 being open. `None` where there is no such course or fret,
    /// or where the short string does not reach.
    ///
    /// ```
    /// use fourcourse::frets::{Capo, Instrument};
    /// let guitar = Instrument::by_id("guitar").unwrap();
    /// assert_eq!(guitar.sound(0, 3, Capo::at(2)).unwrap().to_string(), "A2");
    /// ```
    pub fn sound(&self, course: usize, fret: u8, capo: Capo) -> Option<Pitch> {
        let Course { open, .. } = *self.courses.get(course)?;
        self.semitones(course, fret, capo)
            .map(|up| open + raise(up))
    }

    /// The MIDI key number of a course at a fret counted from the capo; see [`Self::sound`].
    pub(super) fn midi(&self, course: usize, fret: u8, capo: Capo) -> Option<i32> {
        let up = self.semitones(course, fret, capo)?;
        Some(self.courses[course].open.midi() + i32::from(up))
    }

    /// Semitones above the open course at a fret counted from the capo; see [`Self::sound`].
    pub(super) fn semitones(&self, course: usize, fret: u8, capo: Capo) -> Option<u8> {
        let starts_at = self.courses.get(course)?.starts_at;
        let stopped_at = match starts_at {
            0 => capo.fret,
            _ => starts_at.checked_add(capo.short)?,
        };
        let at = match fret {
            0 => stopped_at,
            _ => capo.fret.checked_add(fret)?,
        };
        let there = at <= self.frets.min(MAX_FRETS) && (fret == 0 || at > stopped_at);
        there.then(|| at - starts_at)
    }
}

/// The interval that a stopped string rises by, in the spelling that suits most roots (a fret above G is A flat).
fn raise(semitones: u8) -> Interval {
    const STEPS: [i8; 12] = [0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6];
    let octaves = semitones / 12;
    let (steps, semitones) = (STEPS[usize::from(semitones % 12)], semitones.min(60));
    // At most five octaves: both numbers are far inside i8.
    Interval::new(
        steps + 7 * octaves.min(5).cast_signed(),
        semitones.cast_signed(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_octave_lies_half_way_along_the_string() {
        let mandolin = Instrument::mandolin();
        assert!((mandolin.fret_mm(12) - mandolin.scale_mm / 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_capo_raises_every_course_and_the_spike_the_short_string() {
        let banjo = Instrument::by_id("banjo").unwrap();
        let open = |capo| -> Vec<String> {
            let courses = 0..banjo.courses.len();
            courses
                .map(|c| banjo.sound(c, 0, capo).unwrap().to_string())
                .collect()
        };
        assert_eq!(open(Capo::at(2)), ["A4", "E3", "A3", "C#4", "E4"]);
        assert_eq!(
            open(Capo { fret: 2, short: 0 }),
            ["G4", "E3", "A3", "C#4", "E4"]
        );
    }

    #[test]
    fn the_short_string_has_no_frets_below_its_own_nut() {
        let banjo = Instrument::by_id("banjo").unwrap();
        assert_eq!(banjo.sound(0, 5, Capo::NONE), None);
        assert_eq!(banjo.sound(0, 7, Capo::NONE).unwrap().to_string(), "A4");
        assert_eq!(
            banjo
                .sound(0, 5, Capo { fret: 2, short: 0 })
                .unwrap()
                .to_string(),
            "A4"
        );
    }

    #[test]
    fn numbers_off_the_neck_are_none() {
        let guitar = Instrument::by_id("guitar").unwrap();
        assert_eq!(guitar.sound(6, 0, Capo::NONE), None);
        assert_eq!(guitar.sound(0, 255, Capo::at(255)), None);
        assert_eq!(guitar.sound(0, 0, Capo::at(255)), None);
    }
}
