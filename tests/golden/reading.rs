//! The chords can be read from where a player sits, by the arithmetic of the sizes at which they are laid out.
//!
//! 22 minutes of arc for the height of a capital are the upper end of what ISO 9241-303 prefers (as the trade sheet
//! quotes it, second-hand). Distances are the project's own: 1.5 m for the chord now, 0.7 m for the next one.

use std::cell::RefCell;
use std::rc::Rc;
use std::time::Duration;

use fourcourse::bind::picture::Sitting;
use fourcourse::bind::{Host, StandGlobal};
use fourcourse::desk::{
    Ask, CalledView, CircleView, Notice, Room, SettingsView, SongbookView, StandView, Theme,
    TonightView,
};
use slint::ComponentHandle;

use crate::sample;
use crate::still::Still;

/// Height of a capital over the font size in Fourcourse Sans: 1490 of 2048 units.
const CAPITAL: f64 = 1490.0 / 2048.0;

/// Short side in mm of a screen of 6 inches across, 20 to 9.
fn short_side() -> f64 {
    6.0 * 25.4 * 9.0 / f64::hypot(20.0, 9.0)
}

/// Height in mm that fills 22 minutes of arc at a distance in mm.
fn needed(distance: f64) -> f64 {
    2.0 * distance * (22.0_f64 / 60.0 / 2.0).to_radians().tan()
}

/// A host whose Stand can be changed from outside.
struct Changing(Still, Rc<RefCell<StandView>>);

impl Host for Changing {
    fn ask(&mut self, _: Ask, _: Duration) {}

    fn room(&self) -> Room {
        Room::Stand
    }

    fn stand(&mut self, _: Duration) -> Option<StandView> {
        Some(self.1.borrow().clone())
    }

    fn is_moving(&mut self, _: Duration) -> bool {
        false
    }

    fn songbook(&self) -> SongbookView {
        self.0.songbook()
    }

    fn called(&mut self) -> CalledView {
        self.0.called()
    }

    fn settings(&self) -> SettingsView {
        self.0.settings()
    }

    fn circle(&mut self) -> CircleView {
        self.0.circle()
    }

    fn tonight(&self) -> TonightView {
        self.0.tonight()
    }

    fn notice(&self) -> Option<Notice> {
        None
    }
}

#[test]
fn the_font_has_the_capitals_that_the_arithmetic_counts_on() {
    let file = include_bytes!("../../ui/theme/fonts/FourcourseSans-Bold.ttf");
    let word = |at: usize| u16::from_be_bytes([file[at], file[at + 1]]);
    let tables = usize::from(word(4));
    let table = |tag: &[u8]| {
        let entry = (0..tables)
            .map(|i| 12 + 16 * i)
            .find(|&at| &file[at..at + 4] == tag);
        let at = entry.unwrap() + 8;
        u32::from_be_bytes(file[at..at + 4].try_into().unwrap()) as usize
    };
    // OpenType: unitsPerEm stands 18 bytes into `head`, sCapHeight 88 bytes into `OS/2`.
    assert_eq!(word(table(b"head") + 18), 2048);
    assert_eq!(word(table(b"OS/2") + 88), 1490);
}

#[test]
fn the_chord_now_and_the_next_can_be_read_from_where_a_player_sits() {
    let names = [
        "A",
        "F♯m",
        "B♭7",
        "G/B",
        "C♯m7",
        "E♭maj7",
        "F♯m7♭5/A",
        "Sol♯m7♭5/La♯",
        "♭7m7",
        "N.C.",
    ];
    let courses = [
        sample::shape("G D A E", true, "2200", "1100"),
        sample::shape("E A D G B E", false, "x0221x", "003210"),
    ];
    let view = Rc::new(RefCell::new(sample::reel()));
    let mut small = Vec::new();
    for (width, height) in [(412, 915), (360, 800), (360, 640), (915, 412), (800, 360)] {
        let mm = short_side() / f64::from(width.min(height));
        let still = Still::new(Room::Stand, Theme::Ebony);
        let host = Box::new(Changing(still, Rc::clone(&view)));
        let sitting = Sitting::new(host, (width, height), 0.5, Duration::ZERO).unwrap();
        for shape in &courses {
            for name in names {
                {
                    let mut view = view.borrow_mut();
                    view.now = sample::card(name, "", Some(shape.clone()));
                    view.next.as_mut().unwrap().chord = sample::card(name, "", Some(shape.clone()));
                }
                sitting.interface().refresh();
                sitting.settle();
                let stand = sitting.interface().app().global::<StandGlobal<'_>>();
                let now = f64::from(stand.get_laid_now()) * CAPITAL * mm;
                let next = f64::from(stand.get_laid_next()) * CAPITAL * mm;
                let size = format!("{width}x{height}, {} courses, {name}", shape.courses.len());
                if now < needed(1500.0) {
                    small.push(format!(
                        "{size}: now {now:.1} mm, not {:.1}",
                        needed(1500.0)
                    ));
                }
                if next < needed(700.0) {
                    small.push(format!(
                        "{size}: next {next:.1} mm, not {:.1}",
                        needed(700.0)
                    ));
                }
            }
        }
    }
    assert!(small.is_empty(), "{small:#?}");
}
