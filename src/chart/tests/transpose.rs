//! The key that was called.

use super::*;
use crate::chart::{Changes, Note, Simpler};
use crate::theory::Pitch;

fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn note(name: &str, octave: i8) -> Note {
    let pitch = Pitch::new(name.parse().unwrap(), octave);
    Note {
        grace: vec![pitch],
        ..Note::new(Ticks::ZERO, Ticks::QUARTER, pitch)
    }
}

fn symbols(tune: &Tune) -> String {
    let chords = tune.bars.iter().flat_map(|bar| &bar.chords);
    chords
        .map(|chord| chord.symbol.to_string())
        .collect::<Vec<_>>()
        .join(" ")
}

#[test]
fn melody_chords_and_keys_move_together() {
    let mut tune = tune("a=G,C@3 b=D7 c=Em");
    tune.key = key("G");
    tune.bars[0].notes.push(note("B", 4));
    tune.bars[2].key = Some(key("Em"));
    let moved = tune.in_key("Bb".parse().unwrap());
    assert_eq!(moved.key, key("Bb"));
    assert_eq!(symbols(&moved), "Bb Eb F7 Gm");
    assert_eq!(moved.bars[2].key, Some(key("Gm")));
    assert_eq!(moved.bars[0].notes[0].pitch.to_string(), "D5");
    assert_eq!(moved.bars[0].notes[0].grace[0].to_string(), "D5");
    assert_eq!(moved.in_key("G".parse().unwrap()), tune);
}

#[test]
fn a_tritone_and_back_is_the_octave_one_was_in() {
    let mut tune = tune("a");
    tune.key = key("C");
    tune.bars[0].notes.push(note("E", 4));
    let there = tune.in_key("F#".parse().unwrap());
    assert_eq!(there.bars[0].notes[0].pitch.midi(), 64 + 6);
    assert_eq!(there.in_key("C".parse().unwrap()), tune);
}

#[test]
fn a_stretch_in_another_key_is_spelled_for_its_own_new_key() {
    let mut tune = tune("a=C b=E,B@3 c=C");
    tune.key = key("C");
    tune.bars[1].key = Some(key("E"));
    tune.bars[2].key = Some(key("C"));
    let moved = tune.in_key("F#".parse().unwrap());
    // Not A# and E#: A# major would have ten sharps.
    assert_eq!(moved.bars[1].key, Some(key("Bb")));
    assert_eq!(symbols(&moved), "F# Bb F F#");
}

#[test]
fn a_tonic_that_cannot_be_written_is_spelled_the_other_way() {
    let mut tune = tune("a=Am");
    tune.key = key("Am");
    let moved = tune.in_key("Db".parse().unwrap());
    assert_eq!(moved.key, key("C#m"));
    assert_eq!(symbols(&moved), "C#m");
}

#[test]
fn simpler_chords_make_fewer_changes() {
    let mut tune = tune("a=G,G7@3 b=C,Am@3 c=D7 d=Em");
    tune.key = key("G");
    assert_eq!(symbols(&tune.simplified(Simpler::Triads)), "G G C Am D Em");
    assert_eq!(
        symbols(&tune.simplified(Simpler::ThreeChords)),
        "G G C C D G"
    );
    let fewer = tune.simplified(Simpler::Triads);
    assert_eq!(Changes::of(&tune, &tune.playing()).as_slice().len(), 6);
    assert_eq!(Changes::of(&fewer, &fewer.playing()).as_slice().len(), 5);
}
