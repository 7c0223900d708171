//! The exercises that a tune asks for, as a page.

use fourcourse::chart::{
    Arrangement, ChangeDrill, Direction, PickStroke, StopDrill, Tune, drill_bars,
};
use fourcourse::frets::{Capo, Instrument};

use super::Shell;
use super::page::{columns, pad, table, wrapped};

/// Double stops and changes that are printed.
const MOST: usize = 8;

/// The exercises of a tune, from an arrangement with double stops.
pub(super) fn page(
    tune: &Tune,
    tab: &Arrangement,
    instrument: &Instrument,
    capo: Capo,
    shell: &Shell,
) -> String {
    let words = &shell.words;
    let mut page = format!("{}\n\n", tune.title);
    let head = |text: &str| -> String {
        let lines = wrapped(text, shell.look.width).into_iter();
        lines.map(|line| line + "\n").collect()
    };
    let stops = tab.stop_drills();
    page += &head(&words.get(if stops.is_empty() {
        "shell-drill-no-stops"
    } else {
        "shell-drill-stops"
    }));
    for drill in stops.iter().take(MOST) {
        page.push('\n');
        page += &stop(drill, tune, instrument, shell);
    }
    let changes = tune.change_drills(instrument, capo);
    page.push('\n');
    page += &head(&words.get(if changes.is_empty() {
        "shell-drill-no-changes"
    } else {
        "shell-drill-changes"
    }));
    let rows: Vec<_> = changes
        .iter()
        .take(MOST)
        .map(|drill| change(drill, shell))
        .collect();
    page + &table(&rows)
}

/// A double stop: its two courses through a bar on the beat and a bar with the hand.
fn stop(drill: &StopDrill, tune: &Tune, instrument: &Instrument, shell: &Shell) -> String {
    let bars = drill_bars(tune.metre);
    // As many columns a stroke as make both bars about as long.
    let most = bars.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let cells = |bar: &[PickStroke]| (most * 2).div_ceil(bar.len().max(1)).max(3);
    let mark = |stroke: &PickStroke| match stroke.direction {
        Direction::Down => "D",
        Direction::Up => "U",
    };
    let mut page = String::from("     ");
    for bar in &bars {
        let marks = bar.iter().map(|stroke| pad(mark(stroke), cells(bar)));
        page += &marks.collect::<String>();
        page += "  ";
    }
    page = page.trim_end().to_owned() + "\n";
    for &(course, fret, finger) in drill.notes.iter().rev() {
        let name = instrument.courses[course]
            .open
            .name
            .in_style(shell.look.notes());
        page += &(pad(&name, 3) + "|");
        for bar in &bars {
            let fret = fret.to_string();
            let dashes = "-".repeat(cells(bar).saturating_sub(columns(&fret)));
            page += &format!("-{}|", format!("{fret}{dashes}").repeat(bar.len()));
        }
        page += &finger.map_or_else(String::new, |finger| format!(" ({})", finger.number()));
        page.push('\n');
    }
    format!("{page}     {}\n", shell.words.comes(drill.times))
}

/// A change: its chords, their shapes, how often it comes.
fn change(drill: &ChangeDrill, shell: &Shell) -> Vec<String> {
    let style = shell.look.notes();
    let name = |chord: fourcourse::theory::Chord| chord.in_style(style);
    let shapes = drill
        .shapes
        .as_ref()
        .map_or_else(String::new, |(from, to)| format!("{from} - {to}"));
    vec![
        format!("  {} - {}", name(drill.from), name(drill.to)),
        shapes,
        shell.words.comes(drill.times),
    ]
}
