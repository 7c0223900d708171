//! Melodies as they are picked, arranged and cut into phrases.

use super::super::{Direction, Tune, Version, Wishes, dots, drill_bars, easiest_that_rings};
use crate::formats::abc;
use crate::frets::{Apart, Capo, Drones, Ease, Instrument, Stops, Why};
use crate::theory::{Chord, PitchClass};

fn tune(fields: &str, music: &str) -> Tune {
    let text = format!("X:1\nT:Bars\n{fields}\n{music}\n");
    abc::read(text.as_bytes()).tunes.remove(0).tune
}

/// Two strains of two phrases each, four bars long, with a pickup of an eighth; the first phrase comes three times.
const STRAINS: &str = "|: D | F2AF D2FA | B2dB A3A | d2cB A2GF | E2FG E3 D | F2AF D2FA | B2dB A3A | d2cB AGFE | D4 D3 :|\n\
    |: A | d2fd A2df | g2bg f3f | e2dc B2cd | e2AB c2 zD | F2AF D2FA | B2dB A3A | d2cB AGFE | D4 D3 :|";

#[test]
fn phrases_begin_with_their_pickups_and_know_each_other_again() {
    let tune = tune("M:4/4\nL:1/8\nK:D", STRAINS);
    let melody = tune.melody();
    let phrases = tune.phrases();
    let starts: Vec<_> = phrases
        .iter()
        .map(|phrase| {
            let first = &melody[phrase.notes.start];
            (first.pitch.to_string(), first.direction)
        })
        .collect();
    let up = |pitch: &str| (pitch.to_owned(), Direction::Up);
    assert_eq!(starts, [up("D4"), up("D4"), up("A4"), up("D4")]);
    // The last phrase is the second one again.
    let same: Vec<_> = phrases.iter().map(|phrase| phrase.same_as).collect();
    assert_eq!(same, [None, None, None, Some(1)]);
}

#[test]
fn a_reel_rings_in_two_four_as_in_four_four_and_a_run_in_it_does_not() {
    let rings = |fields: &str, music: &str| {
        let wishes = Version::KeyDrones.wishes(Wishes::default());
        let tab = tune(fields, music).arranged(&Instrument::mandolin(), Capo::NONE, wishes);
        let notes = tab.notes.iter();
        notes
            .map(|note| note.drone.drone.is_some())
            .collect::<Vec<_>>()
    };
    let reel = "EFAB cABc|";
    let wide = rings("M:4/4\nL:1/8\nK:A", reel);
    assert_eq!(rings("M:2/4\nL:1/16\nK:A", reel), wide);
    assert!(wide.iter().filter(|&&rings| rings).count() > 4, "{wide:?}");
    let run = rings("M:4/4\nL:1/8\nK:A", "A2 c2 e2 c2|A2 A/B/c/d/ e2 c2|A4 A4|");
    assert_eq!(run[5..9], [false; 4]);
    assert!(run[0] && run[9]);
}

/// Guitarists read a fiddle tune and play it an octave below the fiddle (common practice).
#[test]
fn a_guitar_plays_every_shipped_tune_an_octave_below_the_fiddle() {
    let guitar = Instrument::by_id("guitar").unwrap();
    for (name, tune) in crate::store::shipped::tunes() {
        let tab = tune.arranged(&guitar, Capo::NONE, Wishes::default());
        assert_eq!((tab.octaves, tab.moved()), (-1, 0), "{name}");
        assert_eq!(tab.off_the_neck().count(), 0, "{name}");
    }
}

#[test]
fn a_thickened_tune_sounds_as_its_page_reads() {
    let low = tune(
        "M:4/4\nL:1/4\nK:D",
        "\"D\" D F, A, [FD]- | F \"A\" E C A, | \"D\" D4 |]",
    );
    let reel = tune("M:4/4\nL:1/8\nK:D", STRAINS);
    for tune in [low, reel] {
        for version in Version::ALL {
            let wishes = version.wishes(Wishes::default());
            let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes);
            let thick = tune.thickened(&tab);
            let heard = thick.heard(tune.starts().into_iter().enumerate());
            let mut heard = heard.chunk_by(|a, b| a.at == b.at);
            for note in &tab.notes {
                let stop = note.stop.as_ref().map(|stop| stop.midi);
                let drone = note.drone.drone.as_ref().map(|drone| drone.midi);
                let read: Vec<i32> = [note.midi].into_iter().chain(stop).chain(drone).collect();
                let struck = heard.next().unwrap();
                let keys: Vec<i32> = struck.iter().map(|one| one.midi).collect();
                assert_eq!((keys, struck[0].at), (read, note.note.start), "{version:?}");
                let lasts = |one: &crate::chart::Heard| one.length == note.note.length;
                assert!(struck.iter().all(lasts), "{struck:?}");
            }
            assert!(heard.next().is_none());
        }
    }
}

#[test]
fn a_stroke_marked_against_the_hand_is_pointed_out() {
    let tune = tune("M:4/4\nL:1/8\nK:D", "uF2 vG2 AvB uc2 | d8 |]");
    let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, Wishes::default());
    let against: Vec<_> = tab
        .marked_against()
        .map(|note| note.note.pitch.to_string())
        .collect();
    assert_eq!(against, ["F#4", "B4", "C#5"]);
}

#[test]
fn a_note_below_the_neck_is_reported_with_the_octave_that_helps() {
    let tune = tune("M:4/4\nL:1/4\nK:D", "D F, A d | f g a b | a f d A | D4 |]");
    let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, Wishes::default());
    let off: Vec<_> = tab.off_the_neck().map(|note| note.midi).collect();
    assert_eq!((off, tab.octaves, tab.offered), (vec![54], 0, Some(1)));
    let wishes = Wishes {
        octaves: tab.offered,
        ..Wishes::default()
    };
    let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes);
    assert_eq!((tab.off_the_neck().count(), tab.offered), (0, None));
}

#[test]
fn a_position_that_is_asked_for_is_kept() {
    let tune = tune("M:4/4\nL:1/4\nK:B", "B, C D E | F G A B |]");
    let wishes = Wishes {
        position: 4,
        ..Wishes::default()
    };
    let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes);
    let places: Vec<_> = tab.notes.iter().filter_map(|note| note.place).collect();
    assert!(places.iter().all(|place| place.position == 4), "{places:?}");
    assert_eq!(places.len(), 8);
    assert_eq!(places[0].finger.map(|finger| finger.number()), Some(1));
}

#[test]
fn drones_leave_out_what_clashes_and_what_is_fast() {
    let music = "\"E\"G2 \"A\"A2 e2 E2 | \"A\"A/B/c/d/ e2 A4 |]";
    let tune = tune("M:4/4\nL:1/8\nK:A", music);
    let wishes = Wishes {
        drones: Drones::ByChord,
        ..Wishes::default()
    };
    let tab = tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes);
    let why: Vec<Why> = tab.notes.iter().map(|note| note.drone.why).collect();
    // G sharp on the D course: A and G beside it both rub with the E chord's third.
    assert_eq!(
        why[0],
        Why::Clash {
            with: "G#".parse().unwrap()
        }
    );
    assert!(why[1..4].iter().all(|&why| why == Why::Chord), "{why:?}");
    assert!(why[4..8].iter().all(|&why| why == Why::Fast), "{why:?}");
}

#[test]
fn a_dotted_rhythm_is_no_fast_run() {
    let tune = tune("M:4/4\nL:1/8\nK:D", "A>B c>d e<f (3gfe | d2 A/B/c A4 |]");
    let fast: Vec<bool> = tune.melody().iter().map(|note| note.fast).collect();
    let expected = [
        false, false, false, false, false, false, true, true, true, false, false, false, false,
        false,
    ];
    assert_eq!(fast, expected);
}

#[test]
fn double_stops_are_thirds_fifths_and_sixths() {
    let tune = tune(
        "M:4/4\nL:1/4\nK:G",
        "\"G\"B2 d2 | \"G\"B2 g2 | \"D\"A2 f2 | \"G\"g4 |]",
    );
    let arranged = |stops: Stops| {
        let wishes = Wishes {
            stops: Some(stops),
            ..Wishes::default()
        };
        tune.arranged(&Instrument::mandolin(), Capo::NONE, wishes)
    };
    let kinds = |tab: super::super::Arrangement| -> Vec<Apart> {
        tab.notes
            .iter()
            .filter_map(|note| note.stop)
            .map(|stop| stop.apart)
            .collect()
    };
    let usual = kinds(arranged(Stops::default()));
    assert!(usual.len() >= 5, "{usual:?}");
    assert!(
        usual
            .iter()
            .all(|kind| matches!(kind, Apart::Third | Apart::Fifth | Apart::Sixth))
    );
    // Nothing is held that asks for more than there is time for: without any, two open strings are left.
    let none = arranged(Stops {
        most: 0.0,
        ..Stops::default()
    });
    let stops: Vec<_> = none.notes.iter().filter_map(|note| note.stop).collect();
    assert!(
        stops
            .iter()
            .all(|stop| stop.effort == 0.0 && stop.fret == 0)
    );
    let tab = arranged(Stops::default());
    let drills = tab.stop_drills();
    assert!(drills.windows(2).all(|pair| pair[0].times >= pair[1].times));
    // Two open courses are nothing to practise.
    let held = |note: &&super::super::TabNote| {
        let melody = note.place.is_some_and(|place| place.fret > 0);
        note.stop.is_some_and(|stop| melody || stop.fret > 0)
    };
    let held = tab.notes.iter().filter(held).count();
    let times = drills.iter().map(|drill| drill.times).sum::<usize>();
    assert_eq!(times, held);
    assert!(
        0 < times && times < usual.len(),
        "{times} of {}",
        usual.len()
    );
}

#[test]
fn double_stops_leave_the_chord_what_it_is() {
    // Common practice: beside a tone of the chord stands another of its tones, or none; and so at the end of any tune.
    let has = |chord: Chord, midi: i32| {
        let mut tones = chord.tones();
        tones.any(|(_, name)| name.class() == PitchClass::new(midi))
    };
    let wishes = Wishes {
        stops: Some(Stops {
            unisons: true,
            octaves: true,
            ..Stops::default()
        }),
        ..Wishes::default()
    };
    let (mut within, mut ends) = (0, 0);
    for (file, tune) in crate::store::shipped::tunes() {
        let home = tune.key.called_chords()[0].1;
        for instrument in Instrument::all() {
            let tab = tune.arranged(&instrument, Capo::NONE, wishes);
            let last = tab.notes.len() - 1;
            for (index, note) in tab.notes.iter().enumerate() {
                let Some(stop) = note.stop else { continue };
                let told = format!("{file} on {}, note {index}", instrument.id);
                if let Some(chord) = note.note.chord.filter(|&chord| has(chord, note.midi)) {
                    assert!(has(chord, stop.midi), "{told}: {} over {chord}", stop.midi);
                    within += 1;
                }
                if index == last {
                    let chord = note.note.chord.unwrap_or(home);
                    assert!(has(chord, stop.midi), "{told}: the end on {chord}");
                    ends += 1;
                }
            }
        }
    }
    assert!(within > 1000 && ends > 10, "{within} within, {ends} ends");
}

#[test]
fn the_home_note_takes_its_own_third_and_fifth_or_stays_plain() {
    // A over A on the mandolin: no F sharp under it, which would make it F sharp minor.
    for (fields, music) in [
        ("M:4/4\nL:1/4\nK:A", "\"A\"e4 | \"E\"B4 | \"A\"A4 |]"),
        ("M:4/4\nL:1/4\nK:A", "e4 | c4 | A4 |]"),
    ] {
        let wishes = Version::DoubleStops.wishes(Wishes::default());
        let tab = tune(fields, music).arranged(&Instrument::mandolin(), Capo::NONE, wishes);
        let last = tab.notes[2].stop.map(|stop| stop.midi.rem_euclid(12));
        // C sharp or E.
        assert!(matches!(last, None | Some(1 | 4)), "{last:?}");
    }
}

#[test]
fn the_easiest_version_that_rings_is_the_one_of_least_effort_among_those_that_do() {
    let ease = |effort, ringing| Ease { effort, ringing };
    let versions = [
        (Version::Plain, ease(1.0, 0.0)),
        (Version::KeyDrones, ease(1.3, 0.4)),
        (Version::ChordDrones, ease(1.4, 0.9)),
        (Version::DoubleStops, ease(2.0, 0.6)),
    ];
    assert_eq!(easiest_that_rings(&versions), Some(Version::ChordDrones));
    assert_eq!(easiest_that_rings(&versions[..2]), None);
    // Of two about as easy, the one that is taught first.
    let versions = versions.map(|(version, _)| (version, ease(1.0, 0.5)));
    assert_eq!(easiest_that_rings(&versions), Some(Version::Plain));
}

#[test]
fn the_tick_has_the_fewest_dots_of_the_versions_that_ring_in_every_shipped_tune() {
    let mut counts = [0; 5];
    for (file, tune) in crate::store::shipped::tunes() {
        for instrument in Instrument::all() {
            let versions = tune.versions(&instrument, Capo::NONE, Wishes::default());
            let dots = dots(&versions);
            let rings = |at: &usize| versions[*at].1.ringing >= 0.5;
            let fewest = { 0..4 }.filter(rings).map(|at| dots[at]).min();
            let tick = easiest_that_rings(&versions);
            let tick = versions.iter().position(|one| Some(one.0) == tick);
            let told = format!("{file} on {}: {versions:?} {dots:?}", instrument.id);
            assert_eq!(tick.map(|at| dots[at]), fewest, "{told}");
            for (one, own) in versions.iter().zip(&dots) {
                for (other, its) in versions.iter().zip(&dots) {
                    assert!(one.1.effort > other.1.effort || own <= its, "{told}");
                }
                counts[usize::from(*own) - 1] += 1;
            }
            // Hardly any double stop makes hardly a difference.
            let few = versions[3].1.ringing < 0.1 && dots[0] == dots[3];
            assert!(dots[0] < dots[3] || few, "{told}");
        }
    }
    println!("versions with 1 to 5 dots: {counts:?}");
    assert!(counts.iter().all(|&count| count > 0), "{counts:?}");
}

#[test]
fn a_plain_tune_rings_by_the_rule_of_thumb() {
    let tune = tune("M:4/4\nL:1/8\nK:D", STRAINS);
    let versions = tune.versions(&Instrument::mandolin(), Capo::NONE, Wishes::default());
    assert!(versions[0].1.effort < versions[1].1.effort, "{versions:?}");
    assert!(versions[1].1.ringing > 0.9, "{versions:?}");
    assert_eq!(easiest_that_rings(&versions), Some(Version::KeyDrones));
}

#[test]
fn drills_strike_on_the_beat_and_then_with_the_hand() {
    let marks = |count, unit| {
        drill_bars(super::super::Metre::new(count, unit)).map(|bar| {
            let mark = |stroke: &super::super::PickStroke| match stroke.direction {
                Direction::Down => 'D',
                Direction::Up => 'U',
            };
            bar.iter().map(mark).collect::<String>()
        })
    };
    assert_eq!(marks(4, 4), ["DDDD", "DUDUDUDU"]);
    assert_eq!(marks(6, 8), ["DD", "DUDDUD"]);
    assert_eq!(marks(0, 4), ["DDDD", "DUDUDUDU"]);
}

#[test]
fn changes_are_drilled_hardest_first() {
    let tune = tune(
        "M:4/4\nL:1/4\nK:G",
        "\"G\"G4 | \"C\"G4 | \"G\"G4 | \"B\"F4 | \"Em\"G4 |]",
    );
    let drills = tune.change_drills(&Instrument::mandolin(), Capo::NONE);
    let said: Vec<_> = drills
        .iter()
        .map(|drill| (drill.from.to_string(), drill.to.to_string(), drill.times))
        .collect();
    assert_eq!(said.len(), 3);
    assert!(
        drills
            .windows(2)
            .all(|pair| pair[0].effort >= pair[1].effort)
    );
    // G to C and back is one change.
    assert!(said.contains(&("G".into(), "C".into(), 2)));
}
