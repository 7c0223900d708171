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
fn each_style_reads_as_a_musician_would_write_it() {
    let mut page = String::new();
    for (file, style, range) in [
        ("millrace-reel.abc", "reel", 0..6),
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
    ] {
        let bars = bars(&shipped(file), style, range);
        let _ = writeln!(page, "{style}: {file}{bars}");
    }
    insta::assert_snapshot!(page);
}

#[test]
fn bars_of_any_metre_are_filled() {
    let mut page = String::new();
    for (metre, bar) in [
        ("5/4", r#""G"G2A2B2 c2d2|"C"e2d2c2 B2A2|"G"G10|"#),
        ("7/8", r#""Em"G2A B2c2|"D"e2d c2B2|"Em"G7|"#),
        ("7/4", r#""G"G14|"D"A14|"#),
        ("3/2", r#""G"G12|"D"A12|"#),
        ("12/8", r#""G"G12|"D"A12|"#),
        ("(3+3+2)/8", r#""G"G3 B3 d2|"#),
        ("1/4", r#""G"G2|"D"A2|"#),
        ("none", r#""G"G4 "D"A5|"#),
        ("9/8", r#"G3 "D"A3 B3|"N.C."c9|"G"B9|"#),
    ] {
        let tune = tune(&format!("X:1\nT:a\nM:{metre}\nL:1/8\nK:G\n{bar}\n"));
        let bars = bars(&tune, "boom-chuck", 0..tune.bars.len());
        let _ = writeln!(page, "{metre}{bars}");
    }
    // A bar of six and a bar of two quarters among bars of four: the beat goes on.
    let crooked = shipped("the-miller-counts-twice.abc");
    let _ = write!(page, "crooked{}", bars(&crooked, "reel", 2..5));
    let _ = write!(page, "crooked{}", bars(&crooked, "reel", 18..21));
    insta::assert_snapshot!(page);
}

#[test]
fn endings_are_held_and_lines_come_again() {
    let mut page = String::new();
    for (file, style, ending, from) in [
        ("millrace-reel.abc", "reel", Ending::Plain, 33),
        ("millrace-reel.abc", "reel", Ending::Held, 33),
        ("millrace-reel.abc", "reel", Ending::Tag, 33),
        (
            "the-long-way-to-the-hall.abc",
            "boom-chuck",
            Ending::Tag,
            51,
        ),
        ("the-ferrymans-good-coat.abc", "waltz", Ending::Held, 64),
    ] {
        let tune = shipped(file);
        let (playing, score) = score(&tune, style, ending);
        let start = playing.bars[from].start;
        let mut lengths: Vec<_> = playing.bars[from..].iter().map(|bar| bar.length).collect();
        if let Some(tag) = &score.tag {
            lengths.push(tag.at - playing.length);
            lengths.extend(playing.bars[tag.bars.clone()].iter().map(|bar| bar.length));
        }
        lengths.push(score.last_length - start - lengths.iter().copied().sum::<Ticks>());
        lengths.retain(|&length| length > Ticks::ZERO);
        let bars = written(&score.last, start, &lengths, Ticks::of(1, 8));
        let _ = writeln!(page, "{}: {file}\n{bars}", ending.id());
    }
    insta::assert_snapshot!(page);
}

#[test]
fn the_stand_can_tell_where_the_tag_is() {
    let tune = shipped("millrace-reel.abc");
    let (playing, score) = score(&tune, "reel", Ending::Tag);
    let tag = score.tag.clone().unwrap();
    assert_eq!(tag.bars, 32..36);
    // The last bar is short of the pickup, a quarter, which is filled up before the tag.
    assert_eq!(tag.at, playing.length + Ticks::QUARTER);
    let bar_at = |at: Ticks| playing.bar_at(score.in_tune(at, &playing));
    assert_eq!(bar_at(tag.at - Ticks(1)), Some(35));
    assert_eq!(bar_at(tag.at), Some(32));
    assert_eq!(bar_at(tag.at + Ticks::WHOLE), Some(33));
    assert_eq!(bar_at(score.last_length - Ticks(1)), Some(35));
    assert_eq!(bar_at(Ticks::ZERO), Some(0));
}

#[test]
fn a_chord_that_holds_into_the_last_line_holds_in_the_tag() {
    let line = r#""C"C8|"F"F8|"F"F8|"G7"G8|G8|"F"F8|"G"G8|"C"C8|]"#;
    let tune = tune(&format!("X:1\nT:a\nM:4/4\nL:1/8\nK:C\n{line}\n"));
    let (_, score) = score(&tune, "boom-chuck", Ending::Tag);
    let at = score.tag.unwrap().at;
    let bass = |event: &&Event| event.player == Player::Bass && event.at == at;
    let Sound::String { midi, .. } = score.last.iter().find(bass).unwrap().sound else {
        panic!("a bass note");
    };
    assert_eq!(midi, 31); // G1
}

#[test]
fn a_tune_without_chords_has_a_melody_drones_and_a_beat() {
    let tune = tune("X:1\nT:a\nM:4/4\nL:1/8\nK:G\nG2A2 B2c2|d8|\n");
    let (_, score) = score(&tune, "reel", Ending::Held);
    let plays = |player| score.events.iter().any(|event| event.player == player);
    assert_eq!(
        Player::ALL.map(plays),
        [true, false, false, false, true, true]
    );
}

#[test]
fn nothing_sounds_of_an_empty_tune() {
    let empty = Tune {
        bars: vec![],
        ..tune("X:1\nT:a\nK:G\nG|\n")
    };
    let (_, score) = score(&empty, "reel", Ending::Tag);
    assert_eq!(score, Score::default());
}

#[test]
fn every_row_of_the_table_shares_its_bar_evenly() {
    use crate::chart::Metre;
    for style in Style::all() {
        for row in style.rows {
            for &(count, unit) in row.metres {
                let bar = Metre::new(count, unit).bar();
                assert!(style.walks == style::Walks::Never || row.walk.contains('w'));
                for text in [row.bass, row.walk, row.guitar, row.chop] {
                    let marks = text.chars().filter(|c| !" >".contains(*c)).count();
                    let step = Ticks(bar.0 / i64::try_from(marks.max(1)).unwrap());
                    let whole = step * i64::try_from(marks).unwrap() == bar || marks == 0;
                    assert!(whole, "{} {text}", style.id());
                    // No line is finer than the hand: sixteenths, or eighths where they are counted.
                    assert!(
                        marks == 0 || step >= Ticks::of(1, 16),
                        "{} {text}",
                        style.id()
                    );
                    assert!(text.chars().all(|c| "135awDUduRx.> ".contains(c)), "{text}");
                }
            }
        }
    }
}

#[test]
fn styles_and_endings_have_their_words() {
    use crate::desk::Language;
    use crate::words::Words;
    for language in Language::ALL {
        let words = Words::new(language);
        let styles = Style::all().map(|style| format!("style-{}", style.id()));
        let endings = Ending::ALL.map(|ending| format!("ending-{}", ending.id()));
        for id in styles.chain(endings) {
            assert!(!words.get(&id).contains(&id), "{language:?} {id}");
        }
    }
}
