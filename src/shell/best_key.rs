//! `fourcourse best-key TUNE --seat mandolin --singer A3-D5`: the key that suits a circle.

use clap::Args;
use serde_json::{Value, json};

use fourcourse::circle::{
    CapoHabit, Compass, Known, MelodyInKey, RankedKey, Seat, SeatInKey, VoiceInKey, VoiceType,
    best_keys,
};
use fourcourse::frets::{FIRST_POSITION_ENDS, Instrument};
use fourcourse::theory::{Chord, NoteName, Reads};

use super::page::{columns, pad};
use super::{Failure, Said, Shell, header, key, shapes, songbook};

/// Keys that are told in full.
const TOLD: usize = 3;
/// From how much on, in fingers, something is in the way.
const NOTABLE: f32 = 0.5;
/// Columns of the longest bar.
const BAR: f32 = 16.0;
/// From how many fingers on a chord is named as the hardest.
const HARD: f32 = 4.0;

/// All twelve keys for a tune, the best for these players first, with the reasons
#[derive(Debug, Args)]
pub(super) struct BestKey {
    /// Words of its title, its number in the list, or a file
    tune: String,

    /// Somebody who plays: an instrument, after a colon the chords that a beginner knows (guitar:G,C,D,Em); or Bb, Eb or F
    /// for somebody who reads in that pitch
    #[arg(long = "seat", value_name = "SEAT")]
    seats: Vec<String>,

    /// Somebody who sings: the lowest and highest note (A3-D5), or group, soprano, mezzo, alto, tenor, baritone, bass
    #[arg(long = "singer", value_name = "RANGE")]
    singers: Vec<String>,

    /// Print JSON: a list of {"key","moved","effort","seats"}, the best first
    #[arg(long)]
    json: bool,
}

/// A seat and what it is called on the page.
struct Named {
    seat: Seat,
    name: String,
}

impl BestKey {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let players = self.seats.iter().map(|text| player(text, shell));
        let singers = self.singers.iter().map(|text| singer(text, shell));
        let named = players.chain(singers).collect::<Result<Vec<_>, _>>()?;
        if named.is_empty() {
            return Err(Failure::new("shell-best-nobody"));
        }
        let found = songbook::find(&self.tune, shell)?;
        let seats: Vec<Seat> = named.iter().map(|named| named.seat.clone()).collect();
        let keys = best_keys(&found.tune, &seats);
        let out = if self.json {
            let rows = keys.iter().map(|key| key_json(key, &named));
            format!("{}\n", Value::Array(rows.collect()))
        } else {
            let key = header::key(found.tune.key, shell);
            let title = [
                ("title", found.tune.title.as_str().into()),
                ("key", key.into()),
            ];
            let title = shell.words.say("shell-best-title", &title);
            let lead = shell.words.get("shell-best-lead");
            let mut page = format!("{title}\n{lead}\n\n{}", chart(&keys, &named, shell));
            let told = |(rank, key): &(usize, &RankedKey)| *rank < TOLD || key.moved == 0;
            for (_, key) in keys.iter().enumerate().filter(told) {
                page += &format!("\n{}", reasons(key, &named, shell));
            }
            page
        };
        Ok(Said {
            out,
            err: found.remark,
        })
    }
}

fn player(text: &str, shell: &Shell) -> Result<Named, Failure> {
    let (name, known) = match text.split_once(':') {
        Some((name, known)) => (name.trim(), Some(known)),
        None => (text.trim(), None),
    };
    let reads = Reads::ALL.into_iter().find(|reads| reads.id() == name);
    if let (Some(reads), None) = (reads, known) {
        let pitch = name.parse().map_or(String::new(), |note: NoteName| {
            note.in_style(shell.look.notes())
        });
        let pitch = shell
            .words
            .say("shell-best-reader", &[("pitch", pitch.into())]);
        return Ok(Named {
            seat: Seat::reading(reads),
            name: pitch,
        });
    }
    let instrument = shapes::instrument(name)?;
    let name = shell.words.instrument(instrument.id);
    let known = known.map(|known| {
        let chords = known.split(',').map(|symbol| {
            let symbol = symbol.trim();
            symbol
                .parse::<Chord>()
                .map_err(|_| Failure::new("shell-no-chord").with("text", symbol))
        });
        chords.collect::<Result<Vec<_>, _>>().map(Known::of)
    });
    Ok(Named {
        seat: Seat {
            known: known.transpose()?,
            ..Seat::playing(instrument)
        },
        name,
    })
}

fn singer(text: &str, shell: &Shell) -> Result<Named, Failure> {
    let text = text.trim();
    let voice = VoiceType::ALL.into_iter().find(|voice| voice.id() == text);
    let compass: Compass = match voice {
        Some(voice) => voice.compass(),
        None => text
            .parse()
            .map_err(|_| Failure::new("shell-best-no-range").with("text", text))?,
    };
    let range = range(compass, shell);
    Ok(Named {
        seat: Seat::singing(compass),
        name: shell
            .words
            .say("shell-best-singer", &[("range", range.into())]),
    })
}

fn range(compass: Compass, shell: &Shell) -> String {
    let note = |pitch: fourcourse::theory::Pitch| {
        format!(
            "{}{}",
            pitch.name.in_style(shell.look.notes()),
            pitch.octave
        )
    };
    let dash = shell.look.sign("–", "-");
    format!("{}{dash}{}", note(compass.low), note(compass.high))
}

/// A line for each key: a bar that is longer the better the key is, and what speaks most against it.
fn chart(keys: &[RankedKey], named: &[Named], shell: &Shell) -> String {
    let efforts = || keys.iter().map(|key| key.effort);
    let least = efforts().fold(f32::INFINITY, f32::min);
    let most = efforts().fold(f32::NEG_INFINITY, f32::max);
    let wide = keys.iter().map(|key| columns(&header::key(key.key, shell)));
    let wide = wide.max().unwrap_or(0);
    let lines = keys.iter().enumerate().map(|(rank, key)| {
        let share = 1.0 - (key.effort - least) / (most - least).max(1.0);
        // Between 1 and BAR columns.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let length = (1.0 + share * (BAR - 1.0)).round() as usize;
        let bar = shell.look.sign("█", "#").repeat(length);
        let name = header::key(key.key, shell);
        let mark = if key.moved == 0 { "*" } else { " " };
        let why = against(key, keys, named, shell).unwrap_or_default();
        let line = format!(
            "{:>2} {mark}{}  {}  {why}",
            rank + 1,
            pad(&name, wide),
            pad(&bar, length.max(16)),
        );
        line.trim_end().to_owned() + "\n"
    });
    let written = shell.words.get("shell-best-written");
    format!("{}\n * {written}\n", lines.collect::<String>().trim_end())
}

/// The seat that a key costs most over what its own best key costs, with its reason.
fn against(key: &RankedKey, keys: &[RankedKey], named: &[Named], shell: &Shell) -> Option<String> {
    let over = |seat: usize| {
        let best = keys.iter().map(|key| key.seats[seat].effort);
        key.seats[seat].effort - best.fold(f32::INFINITY, f32::min)
    };
    let seat = (0..named.len()).max_by(|&a, &b| over(a).total_cmp(&over(b)))?;
    if over(seat) < NOTABLE {
        return None;
    }
    let reason = words(&key.seats[seat], &named[seat].seat, false, shell);
    let reason = reason.first()?;
    Some(format!("{}: {reason}", named[seat].name))
}

/// A key and what it is to each seat.
fn reasons(key: &RankedKey, named: &[Named], shell: &Shell) -> String {
    let wide = named
        .iter()
        .map(|named| columns(&named.name))
        .max()
        .unwrap_or(0);
    let mut page = header::key(key.key, shell) + "\n";
    for (in_key, named) in key.seats.iter().zip(named) {
        let mut line = format!("  {} ", pad(&named.name, wide));
        let mut reasons = words(in_key, &named.seat, true, shell)
            .into_iter()
            .peekable();
        while let Some(mut reason) = reasons.next() {
            if reasons.peek().is_some() {
                reason.push(',');
            }
            if columns(&line) + 1 + columns(&reason) > shell.look.width {
                page += line.trim_end();
                page.push('\n');
                line = " ".repeat(wide + 3);
            }
            line.push(' ');
            line += &reason;
        }
        page += line.trim_end();
        page.push('\n');
    }
    page
}

/// What a key is to a seat, in words; what speaks for it only where `all` is to be said.
fn words(in_key: &SeatInKey, seat: &Seat, all: bool, shell: &Shell) -> Vec<String> {
    let (words, style) = (&shell.words, shell.look.notes());
    let mut said = Vec::new();
    if let Some(voice) = in_key.voice {
        said.push(voice_words(voice, shell));
    }
    if let Some(hands) = &in_key.hands {
        let shapes = header::key(hands.capo.shapes, shell);
        if all && hands.capo.fret > 0 {
            let fret = hands.capo.fret.to_string();
            said.push(words.say(
                "shell-capo-at",
                &[("fret", fret.into()), ("key", shapes.into())],
            ));
        } else if all && seat.capo != CapoHabit::Never {
            said.push(words.say("shell-capo-none", &[("key", shapes.into())]));
        }
        let retuned = hands.setup.filter(|setup| setup.tuning.is_some());
        if let (true, Some(setup), Some(instrument)) = (all, retuned, &seat.instrument) {
            let tuning = key::tuning(&setup, instrument, shell);
            said.push(words.say("shell-best-tuned", &[("tuning", tuning.into())]));
        }
        if seat.known.is_some() {
            let (known, chords) = (hands.capo.known.to_string(), hands.chords.to_string());
            said.push(words.say(
                "shell-best-known",
                &[("known", known.into()), ("chords", chords.into())],
            ));
        }
        if let Some((hardest, hard)) = hands.capo.hardest
            && hard >= HARD
        {
            let chord = hardest.in_style(style);
            said.push(words.say("shell-best-hardest", &[("chord", chord.into())]));
        }
        if all && hands.drones > 0 {
            said.push(words.get("shell-best-drones"));
        } else if all && hands.half_drones > 0 {
            let count = hands.half_drones.into();
            said.push(words.say("shell-best-open-rings", &[("count", count)]));
        }
    }
    if let Some(melody) = in_key.melody {
        said.extend(melody_words(melody, shell));
    }
    if seat.reads != Reads::Concert {
        let key = header::key(in_key.written, shell);
        said.push(words.say("shell-best-reads", &[("key", key.into())]));
    }
    said
}

fn melody_words(melody: MelodyInKey, shell: &Shell) -> Option<String> {
    let words = &shell.words;
    if melody.below > 0 {
        let count = melody.below.to_string();
        return Some(words.say("shell-best-below", &[("count", count.into())]));
    }
    if melody.highest_fret > FIRST_POSITION_ENDS {
        let fret = melody.highest_fret.to_string();
        return Some(words.say("shell-best-fret", &[("fret", fret.into())]));
    }
    None
}

fn voice_words(voice: VoiceInKey, shell: &Shell) -> String {
    let words = &shell.words;
    let range = range(voice.melody, shell);
    let count = |semitones: i32| semitones.to_string();
    match (voice.over > 0, voice.under > 0) {
        (false, false) => words.say("shell-best-fits", &[("range", range.into())]),
        (true, false) => words.say(
            "shell-best-over",
            &[("range", range.into()), ("over", count(voice.over).into())],
        ),
        (false, true) => words.say(
            "shell-best-under",
            &[
                ("range", range.into()),
                ("under", count(voice.under).into()),
            ],
        ),
        (true, true) => words.say(
            "shell-best-wide",
            &[
                ("range", range.into()),
                ("over", count(voice.over).into()),
                ("under", count(voice.under).into()),
            ],
        ),
    }
}

fn key_json(key: &RankedKey, named: &[Named]) -> Value {
    let seat = |(in_key, named): (&SeatInKey, &Named)| {
        let instrument = named
            .seat
            .instrument
            .as_ref()
            .map(|instrument: &Instrument| instrument.id);
        let hands = in_key.hands.as_ref().map(|hands| {
            json!({
                "capo": hands.capo.fret,
                "shapes": hands.capo.shapes.to_string(),
                "known": hands.capo.known,
                "chords": hands.chords,
                "hardest": hands.capo.hardest.map(|(chord, _)| chord.to_string()),
                "drones": hands.drones,
                "half_drones": hands.half_drones,
                "retuned": hands.setup.is_some_and(|setup| setup.tuning.is_some()),
            })
        });
        let melody = in_key.melody.map(|melody| {
            json!({
                "octave": melody.octave,
                "below": melody.below,
                "highest_fret": melody.highest_fret,
            })
        });
        let voice = in_key.voice.map(|voice| {
            json!({
                "low": voice.melody.low.to_string(),
                "high": voice.melody.high.to_string(),
                "over": voice.over,
                "under": voice.under,
            })
        });
        json!({
            "instrument": instrument,
            "hands": hands,
            "melody": melody,
            "voice": voice,
            "written": in_key.written.to_string(),
            "effort": in_key.effort,
        })
    };
    json!({
        "key": key.key.to_string(),
        "moved": key.moved,
        "effort": key.effort,
        "seats": key.seats.iter().zip(named).map(seat).collect::<Value>(),
    })
}
