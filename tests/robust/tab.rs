//! Any melody on any neck: what must hold of its tablature.

#![allow(clippy::unwrap_used)] // the names are our own

use fourcourse::chart::{Bar, Metre, Note, Ticks, Tune, Wishes, picking};
use fourcourse::frets::{
    Capo, Drones, FIRST_POSITION, Instrument, Place, Sounding, Stops, Tone, double_stops, drones,
    place,
};
use fourcourse::theory::{Chord, Key, Mode, PitchClass};
use proptest::prelude::*;

fn built_in() -> impl Strategy<Value = Instrument> {
    prop::sample::select(Instrument::all().collect::<Vec<_>>())
}

fn in_fifths() -> impl Strategy<Value = Instrument> {
    // On longer necks the first and the sixth fret lie further apart than a hand reaches, so that it must shift, or take
    // the note on a lower course where there is one.
    let within_reach = |one: &Instrument| one.fret_mm(7) - one.fret_mm(1) <= REACH;
    let fifths = Instrument::all().filter(|one| one.frets_a_finger == 2 && within_reach(one));
    prop::sample::select(fifths.collect::<Vec<_>>())
}

/// Notes by their distance from the lowest course, their length in eighths, and whether they are picked up.
fn melody(range: std::ops::Range<i32>) -> impl Strategy<Value = Vec<(i32, u8, bool)>> {
    prop::collection::vec((range, 1..9_u8, any::<bool>()), 1..40)
}

fn tones(melody: &[(i32, u8, bool)], lowest: i32) -> Vec<Tone> {
    let tone = |&(up_from, eighths, up): &(i32, u8, bool)| Tone {
        midi: lowest + up_from,
        quarters: f32::from(eighths) / 2.0,
        after_rest: false,
        up,
    };
    melody.iter().map(tone).collect()
}

fn lowest(instrument: &Instrument) -> i32 {
    let opens = instrument.courses.iter().map(|course| course.open.midi());
    opens.min().unwrap()
}

/// A chord and a key for each note.
fn sounding(tones: &[Tone], places: &[Option<Place>], chord: Chord, key: Key) -> Vec<Sounding> {
    let parts = tones.iter().zip(places);
    parts
        .map(|(tone, &place)| Sounding {
            midi: tone.midi,
            place,
            quarters: tone.quarters,
            fast: false,
            up: tone.up,
            chord: Some(chord),
            key,
        })
        .collect()
}

const CHORDS: [&str; 6] = ["A", "D7", "Em", "F#m", "Bb", "Gmaj7"];

/// Longest distance along the neck between two fingers that hold notes at once or go from one to the next, in mm.
const REACH: f64 = 120.0;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_note_sounds_as_written_or_is_off_the_neck(
        instrument in built_in(), melody in melody(-5..60), capo in 0_u8..5, home in 1_u8..8,
    ) {
        let capo = Capo::at(capo);
        let tones = tones(&melody, lowest(&instrument));
        for (tone, place) in tones.iter().zip(place(&instrument, capo, &tones, home)) {
            match place {
                Some(place) => {
                    let sound = instrument.sound(place.course, place.fret, capo).unwrap();
                    prop_assert_eq!(sound.midi(), tone.midi);
                    prop_assert_eq!(place.finger.is_none(), place.fret == 0);
                }
                None => for course in 0..instrument.courses.len() {
                    for fret in 0..=instrument.last_fret(capo) {
                        let sound = instrument.sound(course, fret, capo);
                        prop_assert!(sound.is_none_or(|sound| sound.midi() != tone.midi));
                    }
                },
            }
        }
    }

    #[test]
    fn no_finger_is_asked_to_reach_further_than_a_hand(instrument in built_in(), melody in melody(0..40)) {
        let tones = tones(&melody, lowest(&instrument));
        let places: Vec<Place> = place(&instrument, Capo::NONE, &tones, FIRST_POSITION).into_iter().flatten().collect();
        for pair in places.windows(2) {
            let stays = pair[0].position == pair[1].position;
            let held = pair[0].finger.is_some() && pair[1].finger.is_some();
            if stays && held && pair[0].finger != pair[1].finger {
                let along = instrument.fret_mm(pair[0].fret) - instrument.fret_mm(pair[1].fret);
                prop_assert!(along.abs() <= REACH, "{pair:?}");
                // A higher fret has a higher finger.
                prop_assert_eq!(pair[0].finger < pair[1].finger, pair[0].fret < pair[1].fret);
            }
        }
    }

    #[test]
    fn a_fifth_higher_is_one_course_across_with_the_same_frets(
        instrument in in_fifths(), melody in melody(0..21),
    ) {
        let low = tones(&melody, lowest(&instrument));
        let high = tones(&melody, lowest(&instrument) + 7);
        let (low, high) = (
            place(&instrument, Capo::NONE, &low, FIRST_POSITION),
            place(&instrument, Capo::NONE, &high, FIRST_POSITION),
        );
        for (low, high) in low.into_iter().zip(high) {
            let (low, high) = (low.unwrap(), high.unwrap());
            prop_assert_eq!(high, Place { course: low.course + 1, ..low });
        }
    }

    #[test]
    fn no_shift_is_made_that_is_not_needed(instrument in in_fifths(), melody in melody(0..28)) {
        let tones = tones(&melody, lowest(&instrument));
        let places = place(&instrument, Capo::NONE, &tones, FIRST_POSITION);
        prop_assert!(places.into_iter().flatten().all(|place| place.position == FIRST_POSITION));
    }

    #[test]
    fn never_two_notes_on_one_course_and_no_drone_on_a_stopped_one(
        instrument in built_in(), melody in melody(0..30),
        chord in prop::sample::select(&CHORDS[..]), tonic in 0..12,
        unisons in any::<bool>(),
    ) {
        let tones = tones(&melody, lowest(&instrument));
        let places = place(&instrument, Capo::NONE, &tones, FIRST_POSITION);
        let key = Key::spelled_for_players(PitchClass::new(tonic), Mode::Major);
        let chord = chord.parse().unwrap();
        let notes = sounding(&tones, &places, chord, key);
        for wanted in [Drones::Off, Drones::Plain, Drones::ByChord] {
            for (note, choice) in notes.iter().zip(drones(&instrument, Capo::NONE, &notes, wanted)) {
                let Some(drone) = choice.drone else { continue };
                let place = note.place.unwrap();
                prop_assert_eq!(drone.course.abs_diff(place.course), 1);
                prop_assert_eq!(instrument.sound(drone.course, 0, Capo::NONE).unwrap().midi(), drone.midi);
                prop_assert!(choice.why.rings() && wanted != Drones::Off);
            }
        }
        let stops = Stops { unisons, octaves: unisons, ..Stops::default() };
        for (note, stop) in notes.iter().zip(double_stops(&instrument, Capo::NONE, &notes, stops)) {
            let Some(stop) = stop else { continue };
            let place = note.place.unwrap();
            prop_assert_eq!(stop.course.abs_diff(place.course), 1);
            prop_assert_eq!(instrument.sound(stop.course, stop.fret, Capo::NONE).unwrap().midi(), stop.midi);
            prop_assert!(stop.effort <= stops.most * note.quarters);
            prop_assert_eq!(stop.finger.is_none(), stop.fret == 0);
            prop_assert_eq!(stop.melody_finger.is_none(), place.fret == 0);
            if stop.fret > 0 && place.fret > 0 {
                let along = instrument.fret_mm(stop.fret) - instrument.fret_mm(place.fret);
                prop_assert!(along.abs() <= REACH);
                prop_assert!(stop.fret == place.fret || stop.finger != stop.melody_finger);
            }
        }
    }

    #[test]
    fn each_note_of_any_bar_has_one_stroke(
        count in 0_u8..16, unit in prop::sample::select(vec![1_u8, 2, 4, 8, 16, 32]),
        lengths in prop::collection::vec((1..40_i64, any::<bool>()), 0..40), offset in 0..64_i64,
    ) {
        let mut at = Ticks::ZERO;
        let mut notes = Vec::new();
        for (sixty_fourths, rest) in lengths {
            let length = Ticks::of(sixty_fourths, 64);
            if !rest {
                let pitch = fourcourse::theory::Pitch::new("A".parse().unwrap(), 4);
                notes.push(Note::new(at, length, pitch));
            }
            at += length;
        }
        let count_of_notes = notes.len();
        let bar = Bar { length: at, notes, ..Bar::default() };
        let strokes = picking(&bar, Metre::new(count, unit), Ticks::of(offset, 64), false);
        prop_assert_eq!(strokes.iter().filter(|stroke| stroke.note.is_some()).count(), count_of_notes);
        prop_assert!(strokes.windows(2).all(|pair| pair[0].at < pair[1].at));
        prop_assert!(strokes.iter().all(|stroke| stroke.at >= Ticks::ZERO && stroke.at < bar.length));
    }

    #[test]
    fn phrases_hold_each_note_once(lengths in prop::collection::vec((1..9_i64, 0..14_i32), 1..120)) {
        let mut bars: Vec<Bar> = vec![Bar::default()];
        for (eighths, step) in lengths {
            let last = bars.last_mut().unwrap();
            let key: Key = "D".parse().unwrap();
            let pitch = key.spell_midi(60 + step);
            last.notes.push(Note::new(last.length, Ticks::of(eighths, 8), pitch));
            last.length += Ticks::of(eighths, 8);
            if last.length >= Ticks::WHOLE {
                bars.push(Bar::default());
            }
        }
        let tune = Tune { bars, ..Tune::new(Metre::COMMON, "D".parse().unwrap()) };
        let phrases = tune.phrases();
        let mut next = 0;
        for phrase in &phrases {
            prop_assert_eq!(phrase.notes.start, next);
            prop_assert!(phrase.notes.end > next);
            next = phrase.notes.end;
        }
        prop_assert_eq!(next, tune.melody().len());
    }
}

#[test]
fn odd_necks_and_empty_tunes_do_no_harm() {
    let mandolin = Instrument::mandolin();
    let none = mandolin.clone().tuned(&[]);
    let tune = Tune::new(Metre::FREE, "C".parse().unwrap());
    assert_eq!(
        tune.arranged(&mandolin, Capo::NONE, Wishes::default())
            .notes,
        []
    );
    assert_eq!(tune.phrases(), []);
    let tone = Tone {
        midi: 60,
        quarters: 0.0,
        after_rest: true,
        up: true,
    };
    assert_eq!(place(&none, Capo::NONE, &[tone], 0), [None]);
    assert!(place(&mandolin, Capo::at(255), &[tone], 255).len() == 1);
    let no_frets = Instrument {
        frets: 0,
        frets_a_finger: 0,
        scale_mm: 0.0,
        ..mandolin
    };
    assert_eq!(place(&no_frets, Capo::NONE, &[tone], 1), [None]);
}
