//! A tune arranged for an instrument: its melody as tablature, with drones or double stops beside it.

use crate::frets::{
    Capo, Choice, DoubleStop, Drones, Ease, FIRST_POSITION, Finger, Instrument, Place, Sounding,
    Stops, Tone, Why, double_stops, drones, ease, octave_onto, place, suiting_octave,
};

use super::melody::MelodyNote;
use super::pick::onsets;
use super::strum::Direction;
use super::tune::{Note, Tune};

/// What is wanted of an arrangement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wishes {
    /// Octaves up or down from what is written; `None` leaves it to [`suiting_octave`].
    pub octaves: Option<i8>,
    /// The position that the hand keeps to.
    pub position: u8,
    /// Which drones.
    pub drones: Drones,
    /// Which double stops, if any. Where one is, there is no drone.
    pub stops: Option<Stops>,
}

impl Default for Wishes {
    /// The plain melody in first position.
    fn default() -> Self {
        Self {
            octaves: None,
            position: FIRST_POSITION,
            drones: Drones::Off,
            stops: None,
        }
    }
}

/// A note of the arrangement.
#[derive(Debug, Clone, PartialEq)]
pub struct TabNote {
    /// The note of the tune.
    pub note: MelodyNote,
    /// The MIDI key that is played: the note's own, moved by the arrangement's octaves.
    pub midi: i32,
    /// Where it is played; `None` where the neck does not have it.
    pub place: Option<Place>,
    /// The drone beside it, and why there is one or none.
    pub drone: Choice,
    /// The second note of a double stop.
    pub stop: Option<DoubleStop>,
}

impl TabNote {
    /// The finger that stops the melody's note.
    pub fn finger(&self) -> Option<Finger> {
        match &self.stop {
            Some(stop) => stop.melody_finger,
            None => self.place.and_then(|place| place.finger),
        }
    }
}

/// A melody arranged for an instrument.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrangement {
    /// Its notes, in the order of the page.
    pub notes: Vec<TabNote>,
    /// Octaves that it is moved by from what is written.
    pub octaves: i8,
    /// Octaves from what players of the instrument read to what sounds: -1 for a guitar, otherwise 0.
    pub usual: i8,
    /// Where notes are off the neck: the octaves from what is written that would bring all of them onto it.
    pub offered: Option<i8>,
    /// The drones that were wanted.
    pub wanted: Drones,
    /// What it asks of the hands, and how much of it rings.
    pub ease: Ease,
}

impl Arrangement {
    /// Octaves that it is moved by from what players of the instrument read.
    pub fn moved(&self) -> i8 {
        self.octaves - self.usual
    }

    /// The notes that the neck does not have.
    pub fn off_the_neck(&self) -> impl Iterator<Item = &TabNote> {
        self.notes.iter().filter(|note| note.place.is_none())
    }

    /// What rings and what does not, and why.
    pub fn drone_report(&self) -> DroneReport {
        let mut report = DroneReport {
            wanted: self.wanted,
            notes: 0,
            rings: 0,
            courses: Vec::new(),
            reasons: Vec::new(),
        };
        let single = self.notes.iter().filter(|note| note.stop.is_none());
        for choice in single.map(|note| note.drone) {
            report.notes += 1;
            if let Some(drone) = choice.drone {
                report.rings += 1;
                report.courses.push(drone.course);
            }
            match report
                .reasons
                .iter_mut()
                .find(|(why, _)| *why == choice.why)
            {
                Some((_, count)) => *count += 1,
                None => report.reasons.push((choice.why, 1)),
            }
        }
        report.courses.sort_unstable();
        report.courses.dedup();
        report
            .reasons
            .sort_by_key(|&(_, count)| std::cmp::Reverse(count));
        report
    }

    /// The notes that the tune marks against the direction that their place in the bar asks for.
    pub fn marked_against(&self) -> impl Iterator<Item = &TabNote> {
        self.notes
            .iter()
            .filter(|note| note.note.is_marked_against())
    }

    /// The names of the bars of these notes (see [`Tune::bar_names`]); `None` where there is none.
    pub fn bars_marked_against(&self, tune: &Tune) -> Option<String> {
        let mut bars = self.marked_against().map(|note| note.note.bar).peekable();
        bars.peek()?;
        Some(tune.bar_names(bars))
    }
}

/// The drones of an arrangement in numbers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DroneReport {
    /// Which were wanted.
    pub wanted: Drones,
    /// Notes of the melody without a double stop.
    pub notes: usize,
    /// Those with a drone.
    pub rings: usize,
    /// The courses that ring, in order.
    pub courses: Vec<usize>,
    /// How many notes have which reason, the most frequent first.
    pub reasons: Vec<(Why, usize)>,
}

impl DroneReport {
    /// How many notes have a reason of some kind.
    pub fn count(&self, is: impl Fn(Why) -> bool) -> usize {
        let fitting = self.reasons.iter().filter(|&&(why, _)| is(why));
        fitting.map(|&(_, count)| count).sum()
    }
}

/// The versions of a tune, in the order in which they are taught.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Version {
    /// The melody alone.
    Plain,
    /// With the drones of the key.
    KeyDrones,
    /// With drones by the chord.
    ChordDrones,
    /// With double stops.
    DoubleStops,
}

impl Version {
    /// All of them.
    pub const ALL: [Self; 4] = [
        Self::Plain,
        Self::KeyDrones,
        Self::ChordDrones,
        Self::DoubleStops,
    ];

    /// What it wants of an arrangement that otherwise wishes the same.
    pub fn wishes(self, wishes: Wishes) -> Wishes {
        let (drones, stops) = match self {
            Self::Plain => (Drones::Off, None),
            Self::KeyDrones => (Drones::Plain, None),
            Self::ChordDrones => (Drones::ByChord, None),
            Self::DoubleStops => (Drones::Off, Some(wishes.stops.unwrap_or_default())),
        };
        Wishes {
            drones,
            stops,
            ..wishes
        }
    }
}

/// A melody on a neck, to be thickened one way or another.
struct Laid {
    melody: Vec<MelodyNote>,
    sounding: Vec<Sounding>,
    octaves: i8,
    offered: Option<i8>,
}

impl Laid {
    fn of(tune: &Tune, instrument: &Instrument, capo: Capo, wishes: Wishes) -> Self {
        let melody = tune.melody();
        let written: Vec<i32> = melody.iter().map(|note| note.pitch.midi()).collect();
        let octaves = wishes
            .octaves
            .unwrap_or_else(|| suiting_octave(instrument, capo, &written));
        // Tones need no more than f32 for how long they last.
        #[allow(clippy::cast_possible_truncation)]
        let quarters = |note: &MelodyNote| note.length.quarters() as f32;
        let tones = melody.iter().map(|note| Tone {
            midi: note.pitch.midi() + 12 * i32::from(octaves),
            quarters: quarters(note),
            after_rest: note.after_rest,
            up: note.direction == Direction::Up,
        });
        let tones: Vec<Tone> = tones.collect();
        let places = place(instrument, capo, &tones, wishes.position);
        let off = places.iter().any(Option::is_none);
        let sounding = melody
            .iter()
            .zip(&tones)
            .zip(places)
            .map(|((note, tone), place)| Sounding {
                midi: tone.midi,
                place,
                quarters: tone.quarters,
                fast: note.fast,
                up: tone.up,
                chord: note.chord,
                key: note.key,
            });
        Self {
            sounding: sounding.collect(),
            octaves,
            offered: if off {
                octave_onto(instrument, capo, &written)
            } else {
                None
            },
            melody,
        }
    }

    fn arranged(self, instrument: &Instrument, capo: Capo, wishes: Wishes) -> Arrangement {
        let stops = match wishes.stops {
            Some(stops) => double_stops(instrument, capo, &self.sounding, stops),
            None => vec![None; self.sounding.len()],
        };
        let mut choices = drones(instrument, capo, &self.sounding, wishes.drones);
        for (choice, _) in choices
            .iter_mut()
            .zip(&stops)
            .filter(|(_, stop)| stop.is_some())
        {
            *choice = Choice {
                drone: None,
                why: Why::Passing,
            };
        }
        let ease = ease(&self.sounding, &choices, &stops);
        let parts = self
            .melody
            .into_iter()
            .zip(&self.sounding)
            .zip(choices)
            .zip(stops);
        let notes = parts.map(|(((note, sounding), drone), stop)| TabNote {
            note,
            midi: sounding.midi,
            place: sounding.place,
            drone,
            stop,
        });
        Arrangement {
            notes: notes.collect(),
            octaves: self.octaves,
            usual: instrument.usual_octave(),
            offered: self.offered,
            wanted: wishes.drones,
            ease,
        }
    }
}

impl Tune {
    /// The tune's melody arranged for an instrument.
    ///
    /// ```
    /// use fourcourse::chart::{Tune, Wishes};
    /// use fourcourse::formats::abc;
    /// use fourcourse::frets::{Capo, Instrument};
    /// let tune = abc::read(b"X:1\nT:Scale\nM:4/4\nL:1/4\nK:D\nDEFG|ABcd|]\n").tunes.remove(0).tune;
    /// let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, Wishes::default());
    /// let frets: Vec<_> = tab.notes.iter().map(|note| note.place.unwrap().fret).collect();
    /// assert_eq!(frets, [0, 2, 4, 5, 0, 2, 4, 5]);
    /// ```
    pub fn arranged(&self, instrument: &Instrument, capo: Capo, wishes: Wishes) -> Arrangement {
        Laid::of(self, instrument, capo, wishes).arranged(instrument, capo, wishes)
    }

    /// The tune as an arrangement of it is read: in the octave that players of the instrument read, with the drones and the
    /// second notes of double stops as notes under the melody. What the tune itself writes under its melody is left out,
    /// as on the page.
    pub fn thickened(&self, tab: &Arrangement) -> Self {
        let starts = tab.notes.iter().map(|note| (note.note.bar, note.note.at));
        let mut struck = starts.zip(&tab.notes).peekable();
        let mut tune = self.clone();
        // A tied note keeps what rings since it was struck.
        let mut beside: Vec<i32> = Vec::new();
        for (index, bar) in tune.bars.iter_mut().enumerate() {
            let mut notes = Vec::with_capacity(bar.notes.len());
            for onset in onsets(bar) {
                let mut melody = bar.notes[onset].clone();
                if let Some((_, note)) = struck.next_if(|(start, _)| *start == (index, melody.at)) {
                    let stop = note.stop.as_ref().map(|stop| stop.midi);
                    let drone = note.drone.drone.as_ref().map(|drone| drone.midi);
                    let read = |midi: i32| midi - 12 * i32::from(tab.usual);
                    beside = stop.into_iter().chain(drone).map(read).collect();
                }
                melody.pitch.octave = melody.pitch.octave.saturating_add(tab.moved());
                let under = beside.iter().map(|&midi| Note {
                    tied: melody.tied,
                    ..Note::new(melody.at, melody.length, self.key.spell_midi(midi))
                });
                let under: Vec<Note> = under.collect();
                notes.push(melody);
                notes.extend(under);
            }
            bar.notes = notes;
        }
        tune
    }

    /// What each version of the tune asks of the hands, in the order in which they are taught.
    pub fn versions(
        &self,
        instrument: &Instrument,
        capo: Capo,
        wishes: Wishes,
    ) -> [(Version, Ease); 4] {
        let laid = Laid::of(self, instrument, capo, wishes);
        Version::ALL.map(|version| {
            let wishes = version.wishes(wishes);
            let stops = wishes.stops.map_or_else(Vec::new, |stops| {
                double_stops(instrument, capo, &laid.sounding, stops)
            });
            let choices = drones(instrument, capo, &laid.sounding, wishes.drones);
            (version, ease(&laid.sounding, &choices, &stops))
        })
    }
}
