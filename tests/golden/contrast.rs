//! How far the colours of each theme stand apart, by the formula of WCAG 2.2.
//!
//! Contrast is `(L1 + 0.05) / (L2 + 0.05)` of the lighter and the darker one, `L` being the relative luminance of sRGB:
//! `0.2126 R + 0.7152 G + 0.0722 B`, each channel `c / 12.92` up to 0.04045 and `((c + 0.055) / 1.055)^2.4` above (WCAG
//! 2.2, "contrast ratio" and "relative luminance"; <https://www.w3.org/TR/WCAG22/>). Text that is read in mid-tune has 7
//! (success criterion 1.4.6) whatever its size, other text 4.5 (1.4.3), shapes 3 (1.4.11).

use std::time::Duration;

use fourcourse::bind::picture::Sitting;
use fourcourse::bind::{Colours, ThemeGlobal};
use fourcourse::desk::{Room, Theme};
use slint::{Color, ComponentHandle};

use crate::still::Still;

/// What is read, what it is drawn in, and on what.
type Pair = (&'static str, fn(&Colours) -> [Color; 2]);

const IN_MID_TUNE: [Pair; 17] = [
    ("title and place", |c| [c.ink, c.ground]),
    ("last time", |c| [c.now, c.ground]),
    ("NOW, NEXT, the degree, off-beats and their &", |c| {
        [c.quiet, c.card]
    }),
    ("the chord now", |c| [c.now, c.card]),
    (
        "next chord, fret and course names, strokes, bars ahead",
        |c| [c.ink, c.card],
    ),
    ("finger numbers", |c| [c.card, c.ink]),
    ("the stroke, the bar and the part now", |c| {
        [c.on_now, c.now]
    }),
    ("bars and parts that were played", |c| [c.quiet, c.ground]),
    ("name of the part now", |c| [c.now, c.ground]),
    ("and in its pickup", |c| [c.now, c.card]),
    ("Let ring, names of other parts, words to come", |c| {
        [c.quiet, c.ground]
    }),
    ("a string that rings", |c| [c.on_ring, c.ring]),
    ("a string that clashes", |c| [c.clash, c.ground]),
    ("and on a card", |c| [c.clash, c.card]),
    ("the large controls", |c| [c.ink, c.raised]),
    ("figures of the page that ring along", |c| {
        [c.ring, c.ground]
    }),
    ("figures outside the phrase", |c| [c.quiet, c.ground]),
];

const ELSEWHERE: [Pair; 4] = [
    ("details of tunes and settings", |c| [c.quiet, c.card]),
    ("keys of the songbook", |c| [c.ink, c.ground]),
    ("what is chosen", |c| [c.on_now, c.now]),
    ("a course that is retuned", |c| [c.now, c.card]),
];

const SHAPES: [Pair; 10] = [
    ("frets, and beats that have gone by", |c| [c.faint, c.card]),
    ("bars that were played", |c| [c.faint, c.ground]),
    ("a string to leave", |c| [c.faint, c.ground]),
    ("courses", |c| [c.quiet, c.card]),
    ("beats that are left", |c| [c.now, c.card]),
    ("the bar and the part now", |c| [c.now, c.ground]),
    ("a ring", |c| [c.ring, c.ground]),
    ("a ring on a card", |c| [c.ring, c.card]),
    ("a switch that is off", |c| [c.quiet, c.card]),
    ("the field to search in", |c| [c.faint, c.ground]),
];

fn luminance(colour: Color) -> f64 {
    let linear = |channel: u8| {
        let channel = f64::from(channel) / 255.0;
        if channel <= 0.04045 {
            channel / 12.92
        } else {
            ((channel + 0.055) / 1.055).powf(2.4)
        }
    };
    0.2126 * linear(colour.red()) + 0.7152 * linear(colour.green()) + 0.0722 * linear(colour.blue())
}

fn contrast([one, two]: [Color; 2]) -> f64 {
    let (one, two) = (luminance(one), luminance(two));
    (one.max(two) + 0.05) / (one.min(two) + 0.05)
}

#[test]
fn the_formula_gives_what_the_standard_says() {
    let grey = |value| Color::from_rgb_u8(value, value, value);
    let black_on_white = contrast([grey(0), grey(255)]);
    assert!((black_on_white - 21.0).abs() < 1e-9);
    // #767676 is the lightest grey that has 4.5 on white (WebAIM, "Contrast and Color Accessibility").
    assert!(contrast([grey(0x76), grey(255)]) >= 4.5);
    assert!(contrast([grey(0x77), grey(255)]) < 4.5);
}

#[test]
fn what_is_read_stands_far_enough_from_its_ground_in_every_theme() {
    let still = Still::new(Room::Stand, Theme::Ebony);
    let sitting = Sitting::new(Box::new(still), (360, 640), 1.0, Duration::ZERO).unwrap();
    let global = sitting.interface().app().global::<ThemeGlobal<'_>>();
    let themes = [
        ("ebony", global.get_ebony()),
        ("spruce", global.get_spruce()),
        ("sun", global.get_sun()),
    ];
    let mut weak = Vec::new();
    for (theme, colours) in &themes {
        for (least, pairs) in [(7.0, &IN_MID_TUNE[..]), (4.5, &ELSEWHERE), (3.0, &SHAPES)] {
            for (what, pair) in pairs {
                let contrast = contrast(pair(colours));
                if contrast < least {
                    weak.push(format!("{theme}: {what} {contrast:.2}, not {least}"));
                }
            }
        }
    }
    assert!(weak.is_empty(), "{weak:#?}");
}
