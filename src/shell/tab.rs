//! `fourcourse tab TUNE`: the melody as tablature.

use clap::{Args, ValueEnum};
use serde_json::{Value, json};

use fourcourse::chart::{
    Arrangement, Direction, TabNote, Tune, Version, Wishes, easiest_that_rings,
};
use fourcourse::formats::readout::fraction;
use fourcourse::frets::{Capo, Drones, FIRST_POSITION, Instrument, Stops};

use super::page::wrapped;
use super::shapes::Neck;
use super::{Failure, Said, Shell, drills, header, songbook, tab_page};

/// The melody of a tune as tablature: pick directions and chords above, counts below
#[derive(Debug, Args)]
pub(super) struct Tab {
    /// Words of its title, its number in the list, or a file
    tune: String,

    /// The key that was called: A, Bb
    #[arg(long, value_name = "KEY")]
    key: Option<String>,

    #[command(flatten)]
    neck: Neck,

    /// Octaves up or down from what is written; without this, what suits the neck
    #[arg(long, value_name = "N", allow_negative_numbers = true, value_parser = clap::value_parser!(i8).range(-4..=4))]
    octave: Option<i8>,

    /// The position that the hand keeps to, by the fret of the index
    #[arg(long, value_name = "FRET", default_value_t = FIRST_POSITION, value_parser = clap::value_parser!(u8).range(1..=12))]
    position: u8,

    /// Open courses that ring along with the melody
    #[arg(long, value_enum, default_value_t = Ringing::Off)]
    drones: Ringing,

    /// A second note a third, fifth or sixth away where the hand has time for it
    #[arg(long)]
    double_stops: bool,

    /// Double stops in unisons and octaves too
    #[arg(long, requires = "double_stops")]
    unisons: bool,

    /// A row of fingers: 1 index to 4 little
    #[arg(long)]
    fingers: bool,

    /// The exercises that the tune asks for, instead of the tablature
    #[arg(long)]
    exercises: bool,

    /// Print JSON: a list of {"at","for","midi","course","fret","finger","pick","drone"}, times in quarter notes, bars as
    /// written, courses from 0; finger 0 is open, null is off the neck. With --double-stops a "stop" of
    /// {"course","fret","finger"} or null
    #[arg(long)]
    json: bool,
}

/// Which drones, as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Ringing {
    /// None
    Off,
    /// The key's tonic and fifth, where both are open
    Plain,
    /// What fits the chord now
    Chord,
}

impl Tab {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut found = songbook::find(&self.tune, shell)?;
        let instrument = self.neck.instrument(found.instrument())?;
        let capo = self.neck.capo();
        let written = found.tune.key;
        let tune = found.in_called_key(self.key.as_deref(), shell)?;
        let wishes = self.wishes();
        let tab = tune.arranged(&instrument, capo, wishes);
        if tab.notes.is_empty() {
            return Err(Failure::new("shell-tab-no-notes").with("title", &tune.title));
        }
        if tab.notes.iter().all(|note| note.place.is_none()) {
            let what = match tab.offered {
                Some(_) => shell.words.onto_the_neck(tab.notes.len(), tab.offered),
                None => shell.words.get("shell-tab-try"),
            };
            let failure = Failure::new("shell-tab-all-off").with("title", &tune.title);
            return Err(failure.line(what));
        }
        let out = if self.json {
            let rows = tab.notes.iter().map(|note| self.row(note));
            format!("{}\n", Value::Array(rows.collect()))
        } else if self.exercises {
            drills::page(
                &tune,
                &self.with_stops(&tune, &instrument, capo),
                &instrument,
                capo,
                shell,
            )
        } else {
            let mut page = String::new();
            let start = tab.notes.first().map(|first| {
                let place = first.place.map(|place| (place.course, place.fret));
                header::start(first.note.pitch.name, place, &instrument, shell)
            });
            for line in header::lines(&tune, &tune.playing(), written, start, capo, shell) {
                page += &line;
                page.push('\n');
            }
            for remark in self.remarks(&tune, &tab, &instrument, capo, shell) {
                for line in wrapped(&remark, shell.look.width) {
                    page += &line;
                    page.push('\n');
                }
            }
            page.push('\n');
            page + &tab_page::page(&tune, &tab, &instrument, self.fingers, shell)
        };
        Ok(Said {
            out,
            err: found.remark,
        })
    }

    fn wishes(&self) -> Wishes {
        Wishes {
            octaves: self.octave,
            position: self.position,
            drones: match self.drones {
                Ringing::Off => Drones::Off,
                Ringing::Plain => Drones::Plain,
                Ringing::Chord => Drones::ByChord,
            },
            stops: self.double_stops.then(|| Stops {
                unisons: self.unisons,
                octaves: self.unisons,
                ..Stops::default()
            }),
        }
    }

    /// The arrangement that exercises come from: with double stops, whatever was asked for.
    fn with_stops(&self, tune: &Tune, instrument: &Instrument, capo: Capo) -> Arrangement {
        let wishes = Version::DoubleStops.wishes(self.wishes());
        tune.arranged(instrument, capo, wishes)
    }

    /// What there is to say about the arrangement.
    fn remarks(
        &self,
        tune: &Tune,
        tab: &Arrangement,
        instrument: &Instrument,
        capo: Capo,
        shell: &Shell,
    ) -> Vec<String> {
        let words = &shell.words;
        let mut remarks = Vec::new();
        if tab.moved() != 0 {
            remarks.push(words.octaves(tab.moved()));
        }
        let off = tab.off_the_neck().count();
        if off > 0 {
            remarks.push(words.off_the_neck(off, tab.offered));
        }
        if let Some(against) = tab.bars_marked_against(tune) {
            remarks.push(words.marked_against(&against));
        }
        let style = shell.look.notes();
        if self.drones != Ringing::Off {
            let report = tab.drone_report();
            let key = header::key(tune.key, shell);
            let names: Vec<String> = report
                .courses
                .iter()
                .map(|&course| {
                    instrument
                        .courses
                        .get(course)
                        .map_or_else(String::new, |course| course.open.name.in_style(style))
                })
                .collect();
            remarks.push(words.drones(&report, &names, &key));
            remarks.extend(words.left_out(&report, style));
        }
        if self.drones != Ringing::Off || self.double_stops {
            let versions = tune.versions(instrument, capo, self.wishes());
            remarks.push(words.easiest(easiest_that_rings(&versions)));
        }
        remarks
    }

    fn row(&self, note: &TabNote) -> Value {
        let mut row = json!({
            "at": fraction(note.note.start),
            "for": fraction(note.note.length),
            "midi": note.midi,
            "course": note.place.map(|place| place.course),
            "fret": note.place.map(|place| place.fret),
            "finger": note.place.map(|_| note.finger().map_or(0, |finger| finger.number())),
            "pick": match note.note.direction {
                Direction::Down => "down",
                Direction::Up => "up",
            },
            "drone": note.drone.drone.map(|drone| drone.course),
        });
        if self.double_stops {
            row["stop"] = note.stop.map_or(Value::Null, |stop| {
                let finger = stop.finger.map_or(0, |finger| finger.number());
                json!({"course": stop.course, "fret": stop.fret, "finger": finger})
            });
        }
        row
    }
}
