//! What stands over a chart: kind, key, metre, tempo, form, and how the tune begins.

use fourcourse::chart::{Metre, Pace, Playing, Tempo, Ticks, Tune};
use fourcourse::frets::{Capo, Instrument};
use fourcourse::theory::{Key, Mode, NoteName};

use super::Shell;
use super::page::Look;

/// A key with the words of the player's language: `A`, `Em`, `A mixolydian`.
pub(super) fn key(key: Key, shell: &Shell) -> String {
    let tonic = key.tonic.in_style(shell.look.notes());
    let tonic = match key.mode {
        Mode::Minor => tonic + "m",
        _ => tonic,
    };
    shell.words.key(&tonic, key.mode.id())
}

/// The kind of a tune in a line: rhythm, key, metre, tempo, as far as the tune says them.
pub(super) fn kind(tune: &Tune, shell: &Shell) -> String {
    let mut parts = Vec::new();
    if let Some(rhythm) = &tune.rhythm {
        parts.push(shell.words.rhythm(rhythm.id()));
    }
    parts.push(key(tune.key, shell));
    if tune.metre != Metre::FREE {
        parts.push(tune.metre.to_string());
    }
    if let Some(tempo) = tune.tempo {
        parts.push(self::tempo(tempo, shell.look));
    }
    parts.join(shell.look.sign(" · ", ", "))
}

/// A tempo with the note that is counted: `♩ = 112`, `1/2 = 112`.
pub(super) fn tempo(tempo: Tempo, look: Look) -> String {
    let (count, unit) = tempo.beat.fraction();
    // Of a quarter; the fraction of a whole note is what musicians write.
    let beat = match (look.typographic, count, unit) {
        (true, 1, 1) => "♩".to_owned(),
        (true, 3, 2) => "♩.".to_owned(),
        (true, 1, 2) => "♪".to_owned(),
        _ => whole_notes(tempo.beat),
    };
    format!("{beat} = {}", tempo.bpm)
}

/// A tempo in words: `half note = 72`.
pub(super) fn counted(tempo: Tempo, shell: &Shell) -> String {
    let note = whole_notes(tempo.beat);
    let beat = match note.as_str() {
        "1/2" => "half",
        "1/4" => "quarter",
        "3/8" => "dotted-quarter",
        "1/8" => "eighth",
        "3/4" => "dotted-half",
        _ => "other",
    };
    let bpm = tempo.bpm.to_string();
    let args = [
        ("beat", beat.into()),
        ("note", note.into()),
        ("bpm", bpm.into()),
    ];
    shell.words.say("shell-band-tempo", &args)
}

/// A length as a part of a whole note: `3/8`.
pub(super) fn whole_notes(length: Ticks) -> String {
    let (count, unit) = Ticks(length.0 / 4).fraction();
    if unit == 1 && length.0 % 4 == 0 {
        return count.to_string();
    }
    let (count, unit) = length.fraction();
    // A fraction of a quarter, made one of a whole note in lowest terms.
    let (unit, divisor) = (unit * 4, if count % 4 == 0 { 4 } else { 2 - count % 2 });
    format!("{}/{}", count / divisor, unit / divisor)
}

/// The lines over a chart or a tablature. The tune is in the key that was called already; `written` is the one it comes
/// from, `start` says where the melody starts (see [`start`]).
pub(super) fn lines(
    tune: &Tune,
    playing: &Playing,
    written: Key,
    start: Option<String>,
    capo: Capo,
    shell: &Shell,
) -> Vec<String> {
    let (look, words) = (shell.look, &shell.words);
    let mut lines = vec![tune.title.clone()];
    if !tune.other_titles.is_empty() {
        lines.push(format!("({})", tune.other_titles.join(", ")));
    }
    let timed = Tune {
        tempo: Some(tune.tempo_or_fitting(Pace::SlowJam)),
        bars: Vec::new(),
        ..tune.clone()
    };
    let mut kind = kind(&timed, shell);
    if written != tune.key {
        kind += &format!(" ({})", words.written_in(&key(written, shell)));
    }
    lines.push(kind);
    if !tune.composer.is_empty() {
        lines.push(tune.composer.clone());
    }
    lines.push(String::new());

    let mut form = tune.form_played(playing);
    if let Some(times) = tune.times_through {
        form += &format!(" {} {times}", look.sign("×", "x"));
    }
    if !form.is_empty() {
        lines.push(words.say("shell-chart-form", &[("form", form.into())]));
    }
    let pickup = tune.pickup();
    if pickup > Ticks::ZERO {
        let length = whole_notes(pickup);
        lines.push(words.say("shell-chart-pickup", &[("length", length.into())]));
    }
    lines.extend(start);
    let full = playing.bars.iter().find(|bar| !bar.pickup);
    if let Some(bar) = full.or(playing.bars.first()) {
        let strum = tune.strum_at(bar.written);
        let marks = strum.to_string();
        let strum = match strum.name.as_str() {
            "" => marks,
            name => format!("{name} ({marks})"),
        };
        lines.push(words.say("shell-chart-strum", &[("strum", strum.into())]));
    }
    if capo != Capo::NONE {
        lines.push(words.say("shell-chart-capo", &[("fret", capo.fret.into())]));
    }
    lines
}

/// Where the melody starts: the note, and its course and fret where it has them.
pub(super) fn start(
    note: NoteName,
    place: Option<(usize, u8)>,
    instrument: &Instrument,
    shell: &Shell,
) -> String {
    let (look, words) = (shell.look, &shell.words);
    let note = note.in_style(look.notes());
    let Some((course, fret)) = place else {
        return words.say("shell-chart-start", &[("note", note.into())]);
    };
    let number = instrument.string_number(course);
    let mut course = instrument.courses[course].open.name.in_style(look.notes());
    if let Some(number) = number {
        course += &format!(" {number}");
    }
    if fret == 0 {
        return words.say(
            "shell-chart-start-open",
            &[("note", note.into()), ("course", course.into())],
        );
    }
    words.say(
        "shell-chart-start-fret",
        &[
            ("note", note.into()),
            ("course", course.into()),
            ("fret", fret.into()),
        ],
    )
}
