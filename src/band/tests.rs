//! What the band plays, written out as a musician can read it.

use std::fmt::Write;

use crate::chart::{Playing, Ticks, Tune};
use crate::formats::abc;

use super::*;

fn tune(abc: &str) -> Tune {
    abc::read(abc.as_bytes()).tunes.remove(0).tune
}

fn shipped(file: &str) -> Tune {
    let mut tunes = crate::store::shipped::tunes().into_iter();
    tunes.find(|(name, _)| name == file).unwrap().1
}

fn score(tune: &Tune, style: &str, ending: Ending) -> (Playing, Score) {
    let playing = tune.playing();
    let style = Style::named(style).unwrap();
    let options = ScoreOptions { style, ending };
    let score = Score::of(tune, &playing, &options, &mut Voicings::default());
    (playing, score)
}

/// The accompaniment of some bars: a column an eighth (`step`), a note by its name, a stroke by its direction and the
/// number of its courses, `x` damped, `'` later than written because it swings.
fn written(events: &[Event], from: Ticks, bars: &[Ticks], step: Ticks) -> String {
    let mut text = String::new();
    for player in [Player::Melody, Player::Chop, Player::Guitar, Player::Bass] {
        let _ = write!(text, "{:<7}", player.id());
        let mut start = from;
        for &length in bars {
            text.push('|');
            let mut at = start;
            while at < start + length {
                let _ = write!(text, "{:<4}", slot(events, player, at, at + step));
                at += step;
            }
            start += length;
        }
        text.truncate(text.trim_end().len());
        text.push_str("|\n");
    }
    text
}

fn slot(events: &[Event], player: Player, from: Ticks, to: Ticks) -> String {
    let there = |event: &&Event| event.player == player && (from..to).contains(&event.at);
    let strings: Vec<_> = events
        .iter()
        .filter(there)
        .filter_map(|event| match event.sound {
            Sound::String {
                midi,
                touch,
                course,
                ..
            } => Some((event.at, course, midi, touch)),
            Sound::Click { .. } => None,
        })
        .collect();
    let key = crate::theory::Key::new("C".parse().unwrap(), crate::theory::Mode::Major);
    let Some(&(at, course, midi, touch)) = strings.first() else {
        return ".".to_owned();
    };
    let late = if at > from { "'" } else { "" };
    let count = strings.iter().filter(|string| string.0 == at).count();
    let name = match (touch, count) {
        (Touch::Chop, _) => "x".to_owned(),
        (_, 1) => key.spell_midi(i32::from(midi)).to_string(),
        _ => format!("{}{count}", if strings[1].1 > course { '↓' } else { '↑' }),
    };
    format!("{name}{late}")
}

/// Some bars of a tune as played, from the index of the first one.
fn bars(tune: &Tune, style: &str, bars: std::ops::Range<usize>) -> String {
    let (playing, score) = score(tune, style, Ending::Plain);
    let lengths: Vec<_> = playing.bars[bars.clone()]
        .iter()
        .map(|bar| bar.length)
        .collect();
    let from = playing.bars[bars.start].start;
    "\n".to_owned() + &written(&score.events, from, &lengths, Ticks::of(1, 8))
}

#[test]
fn look() {
    for (file, style, range) in [
        ("millrace-reel.abc", "reel", 0..6),
        ("millrace-reel.abc", "boom-chuck", 6..12),
        ("the-long-way-to-the-hall.abc", "boom-chuck", 0..9),
        ("kettle-before-noon.abc", "jig", 0..6),
        ("nine-buckets-no-hands.abc", "slip-jig", 0..4),
        ("the-clockmenders-elbow.abc", "hornpipe", 0..5),
        ("the-wet-banner.abc", "march", 0..5),
        ("dag-wherrys-short-cut.abc", "polka", 0..6),
        ("lamps-along-the-tailrace.abc", "waltz", 0..9),
        ("two-sugars-solly.abc", "swing", 0..5),
        ("the-wheel-stands-still.abc", "air", 0..5),
        ("straw-hat-in-january.abc", "strum", 0..4),
        ("the-miller-counts-twice.abc", "reel", 2..6),
    ] {
        println!("{file} {style}{}", bars(&shipped(file), style, range));
    }
}
