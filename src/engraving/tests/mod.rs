//! What a page promises.

mod notation;

use super::*;
use crate::chart::{Arrangement, Direction, Metre, Version, Wishes};
use crate::formats::abc;
use crate::frets::Capo;
use crate::store::shipped;
use crate::theory::{Accidentals, Naming};

fn paper(width: f32) -> Paper {
    Paper {
        width,
        style: NoteStyle {
            naming: Naming::English,
            accidentals: Accidentals::Typographic,
        },
        ..Paper::default()
    }
}

fn shipped_tune(title: &str) -> Tune {
    let mut tunes = shipped::tunes().into_iter();
    tunes.find(|(_, tune)| tune.title == title).unwrap().1
}

fn read(text: &str) -> Tune {
    abc::read(text.as_bytes()).tunes.remove(0).tune
}

fn arranged(tune: &Tune, instrument: &Instrument, version: Version) -> Arrangement {
    tune.arranged(instrument, Capo::NONE, version.wishes(Wishes::default()))
}

fn page(tune: &Tune, version: Version, paper: &Paper) -> Page {
    let instrument = Instrument::mandolin();
    let tab = arranged(tune, &instrument, version);
    let piece = Piece::of(tune, &tab, &instrument);
    Page::of(piece, paper)
}

/// Every shipped tune at the widths of phones and desks, with and without a staff.
fn every_page(check: impl Fn(&str, &Tune, &Paper, &Page)) {
    for (name, tune) in shipped::tunes() {
        for width in [296.0, 336.0, 388.0, 570.0, 864.0] {
            for (staff, version) in [(false, Version::KeyDrones), (true, Version::DoubleStops)] {
                let paper = Paper {
                    staff,
                    fingers: true,
                    ..paper(width)
                };
                let page = page(&tune, version, &paper);
                check(
                    &format!("{name} at {width}, staff {staff}"),
                    &tune,
                    &paper,
                    &page,
                );
            }
        }
    }
}

#[test]
fn bars_are_whole_in_order_and_on_the_paper() {
    every_page(|name, tune, paper, page| {
        let places = page.systems.iter().flat_map(|system| &system.bars);
        let bars: Vec<usize> = places.map(|place| place.bar).collect();
        let written: Vec<usize> = (0..tune.bars.len())
            .filter(|&bar| tune.bars[bar].length > Ticks::ZERO)
            .collect();
        assert_eq!(bars, written, "{name}");
        for system in &page.systems {
            for pair in system.bars.windows(2) {
                assert!(
                    (pair[0].x + pair[0].width - pair[1].x).abs() < 0.01,
                    "{name}"
                );
            }
            let full = system.bars.iter().filter(|place| !place.pickup).count();
            assert!(full <= 4, "{name}: {full} bars");
            let last = system.bars.last().unwrap();
            assert!(
                last.x + last.width <= paper.width + 0.01,
                "{name}: {}",
                last.x + last.width
            );
        }
    });
}

#[test]
fn figures_and_words_do_not_run_into_each_other() {
    every_page(|name, _, paper, page| {
        for system in &page.systems {
            let mut words: Vec<&Word> = system
                .words
                .iter()
                .filter(|word| !word.text.is_empty())
                .collect();
            words.sort_by(|a, b| a.y.total_cmp(&b.y).then(a.x.total_cmp(&b.x)));
            for pair in words
                .windows(2)
                .filter(|pair| (pair[0].y - pair[1].y).abs() < 0.01)
            {
                // Figures are narrower than their patches.
                let room = if matches!(pair[0].ground, Ground::Patch | Ground::Ring) {
                    0.2 * paper.space
                } else {
                    0.0
                };
                assert!(
                    pair[0].x + pair[0].width - room <= pair[1].x + 0.05,
                    "{name}: {:?} and {:?}",
                    pair[0],
                    pair[1]
                );
            }
        }
    });
}

#[test]
fn every_mark_lies_in_its_system() {
    every_page(|name, _, paper, page| {
        for system in &page.systems {
            for rule in &system.rules {
                let inside = rule.x >= -0.5
                    && rule.y >= -0.5
                    && rule.x + rule.width <= paper.width + 1.0
                    && rule.y + rule.height <= page.height + 0.5;
                assert!(
                    inside,
                    "{name}: {rule:?} in {} x {}",
                    paper.width, page.height
                );
            }
            for curve in &system.curves {
                assert!(
                    curve.y >= -0.5 && curve.y + curve.height <= page.height + 0.5,
                    "{name}: {curve:?}"
                );
            }
            for word in &system.words {
                assert!(
                    word.y - 0.5 * word.size >= -1.0
                        && word.y + 0.5 * word.size <= page.height + 1.0,
                    "{name}: {word:?}"
                );
            }
        }
    });
}

#[test]
fn every_note_has_its_figures_and_stands_after_the_one_before() {
    for (name, tune) in shipped::tunes() {
        let instrument = Instrument::mandolin();
        let tab = arranged(&tune, &instrument, Version::ChordDrones);
        let page = page(&tune, Version::ChordDrones, &paper(388.0));
        for note in &tab.notes {
            let spot = page.spot(note.note.bar, note.note.at).unwrap();
            assert_eq!((spot.bar, spot.at), (note.note.bar, note.note.at), "{name}");
            let place = note.place.unwrap();
            assert_eq!(spot.figures[0].text, place.fret.to_string(), "{name}");
            assert_eq!(
                spot.figures.len(),
                1 + usize::from(note.drone.drone.is_some()),
                "{name}"
            );
            // SMuFL: stringsDownBow is U+E610, stringsUpBow U+E612.
            let sign = match note.note.direction {
                Direction::Down => '\u{e610}',
                Direction::Up => '\u{e612}',
            };
            assert_eq!(spot.pick.map(|pick| pick.sign), Some(sign), "{name}");
        }
        for pair in page
            .spots
            .windows(2)
            .filter(|pair| pair[0].system == pair[1].system)
        {
            assert!(pair[0].x < pair[1].x, "{name}");
            assert!(
                (pair[0].bar, pair[0].at) < (pair[1].bar, pair[1].at),
                "{name}"
            );
        }
    }
}

#[test]
fn a_phone_upright_has_two_bars_to_a_line_and_a_desk_four() {
    let reel = &shipped_tune("Millrace Reel");
    let full = |width: f32, version| {
        let page = page(reel, version, &paper(width));
        let line = page.systems[0]
            .bars
            .iter()
            .filter(|bar| !bar.pickup)
            .count();
        (line, page.systems.len())
    };
    assert_eq!(full(388.0, Version::KeyDrones), (2, 8));
    assert_eq!(full(864.0, Version::KeyDrones), (4, 4));
    // The pickup stands before the first bar of its line.
    let page = page(reel, Version::Plain, &paper(388.0));
    let first = |system: usize| page.systems[system].bars[0].pickup;
    assert_eq!([first(0), first(1), first(4)], [true, false, true]);
}

#[test]
fn what_is_covered_is_not_on_the_page_and_the_lines_do_not_move() {
    let tune = &shipped_tune("Nobody Told the Goose");
    let hidden = |hidden| {
        page(
            tune,
            Version::KeyDrones,
            &Paper {
                hidden,
                staff: true,
                ..paper(388.0)
            },
        )
    };
    let figures = |page: &Page| {
        page.systems
            .iter()
            .flat_map(|system| &system.words)
            .filter(|word| matches!(word.ground, Ground::Patch | Ground::Ring))
            .count()
    };
    let words = |page: &Page| {
        page.systems
            .iter()
            .flat_map(|system| &system.words)
            .filter(|word| word.text == "C")
            .count()
    };
    let pages = Hidden::STEPS.map(hidden);
    let shown = pages.each_ref().map(figures);
    assert!(shown.windows(2).all(|pair| pair[0] >= pair[1]), "{shown:?}");
    assert!(
        shown[0] > shown[1] && shown[1] > shown[2] && shown[2] > 0,
        "{shown:?}"
    );
    assert_eq!([shown[3], shown[4]], [0, 0]);
    assert!(words(&pages[3]) > 0);
    assert_eq!(words(&pages[4]), 0);
    for page in &pages {
        assert_eq!(page.height, pages[0].height);
        let at = |page: &Page| {
            page.spots
                .iter()
                .map(|spot| (spot.system, spot.x))
                .collect::<Vec<_>>()
        };
        assert_eq!(at(page), at(&pages[0]));
    }
    assert!(
        pages[3]
            .spots
            .iter()
            .all(|spot| spot.figures.is_empty() && spot.pick.is_none())
    );
}

#[test]
fn what_is_not_practised_is_quiet_and_what_is_has_a_line_under_it() {
    let tune = &shipped_tune("Millrace Reel");
    let phrase = tune.phrases()[1].clone();
    let page = page(
        tune,
        Version::Plain,
        &Paper {
            stretch: Some(phrase.time.clone()),
            ..paper(388.0)
        },
    );
    let figures = page
        .systems
        .iter()
        .flat_map(|system| &system.words)
        .filter(|word| matches!(word.ground, Ground::Patch | Ground::Ring));
    let loud = figures.filter(|word| word.tone == Tone::Ink).count();
    assert_eq!(loud, phrase.notes.len());
    let lines = page
        .systems
        .iter()
        .flat_map(|system| &system.rules)
        .filter(|rule| rule.tone == Tone::Ring);
    assert!(lines.filter(|rule| rule.width > 20.0).count() >= 1);
}

#[test]
fn drones_stand_in_a_ring_where_one_practises_and_elsewhere() {
    let tune = &shipped_tune("Millrace Reel");
    let stretch = tune.phrases()[1].time.clone();
    let paper = Paper {
        stretch: Some(stretch),
        ..paper(388.0)
    };
    let rings = |version| {
        let page = page(tune, version, &paper);
        let words = page.systems.iter().flat_map(|system| &system.words);
        let tones: Vec<Tone> = words
            .filter(|word| word.ground == Ground::Ring)
            .map(|word| word.tone)
            .collect();
        let played = page.spots.iter().flat_map(|spot| &spot.figures);
        assert_eq!(tones.len(), played.filter(|figure| figure.rings).count());
        tones
    };
    let tones = rings(Version::KeyDrones);
    for tone in [Tone::Ring, Tone::Quiet] {
        assert!(tones.contains(&tone), "{tones:?}");
    }
    assert_eq!(rings(Version::Plain), []);
}

#[test]
fn what_is_sung_stands_between_the_chords_and_the_courses() {
    let tune = read("X:1\nT:Sung\nM:4/4\nL:1/4\nK:D\n\"Bm\"DEFG|\nw: one two three four\n");
    for staff in [false, true] {
        let paper = Paper {
            staff,
            ..paper(388.0)
        };
        let page = page(&tune, Version::Plain, &paper);
        let y = |text: &str| {
            let mut words = page.systems[0].words.iter();
            words.find(|word| word.text == text).unwrap().y
        };
        assert!(y("Bm") < y("two") && y("two") < page.pick - paper.space);
    }
}

#[test]
fn a_pick_that_is_marked_against_the_hand_has_a_sign() {
    let tune = read("X:1\nT:Marked\nM:4/4\nL:1/4\nK:D\nvDuEvFvG|\n");
    let page = page(&tune, Version::Plain, &paper(388.0));
    let signs = page.systems[0].words.iter().filter(|word| word.text == "!");
    let signs: Vec<f32> = signs.map(|word| word.x).collect();
    let wrong = page.spots[1].x;
    assert!(matches!(signs[..], [x] if x > wrong && x < page.spots[2].x));
}

#[test]
fn a_tune_without_bars_has_an_empty_page_and_free_time_is_laid_out() {
    let empty = Tune::new(Metre::COMMON, "A".parse().unwrap());
    assert_eq!(page(&empty, Version::Plain, &paper(388.0)).systems.len(), 0);
    let free = read("X:1\nT:Free\nM:none\nL:1/4\nK:D\nDEFG A2 z2 d3 c|B4 A8|]\n");
    let page = page(
        &free,
        Version::Plain,
        &Paper {
            staff: true,
            ..paper(320.0)
        },
    );
    assert!(
        page.systems
            .iter()
            .map(|system| system.bars.len())
            .sum::<usize>()
            == 2
    );
}

#[test]
fn a_bar_that_is_too_full_for_the_paper_is_squeezed_onto_it() {
    let runs = "E/4F/4G/4A/4".repeat(16);
    let tune = read(&format!(
        "X:1\nT:Run\nM:4/4\nL:1/8\nK:C\n{}|{}|]\n",
        &runs[..8 * 4 * 3],
        "E8"
    ));
    let page = page(&tune, Version::Plain, &paper(296.0));
    let right = page
        .systems
        .iter()
        .flat_map(|system| &system.bars)
        .map(|bar| bar.x + bar.width);
    assert!(right.fold(0.0, f32::max) <= 296.01);
}
