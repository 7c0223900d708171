//! Shapes that are no rectangles.

use super::mark::{Curve, Tone};

/// A slanted beam: its upper edge goes from one point to another.
pub(super) fn beam(from: (f32, f32), to: (f32, f32), thick: f32, tone: Tone) -> Curve {
    let top = from.1.min(to.1);
    let (left, right) = (from.1 - top, to.1 - top);
    let width = (to.0 - from.0).max(0.5);
    Curve {
        x: from.0,
        y: top,
        width,
        height: (from.1 - to.1).abs() + thick,
        commands: format!(
            "M0 {left:.2} L{width:.2} {right:.2} L{width:.2} {:.2} L0 {:.2} Z",
            right + thick,
            left + thick
        ),
        tone,
    }
}

/// A tie from one place to another at the same height, bowed up or down: thin at its ends and thicker in the middle.
pub(super) fn tie(from: f32, to: f32, y: f32, up: bool, space: f32, tone: Tone) -> Curve {
    let width = (to - from).max(space);
    let high = (0.28 * space + 0.035 * width).min(0.85 * space);
    let thick = 0.24 * space;
    let height = high + thick;
    let (a, b) = (0.3 * width, 0.7 * width);
    let commands = if up {
        let base = height;
        format!(
            "M0 {base:.2} C{a:.2} {:.2} {b:.2} {:.2} {width:.2} {base:.2} C{b:.2} 0 {a:.2} 0 0 {base:.2} Z",
            thick * 1.3,
            thick * 1.3
        )
    } else {
        format!(
            "M0 0 C{a:.2} {:.2} {b:.2} {:.2} {width:.2} 0 C{b:.2} {height:.2} {a:.2} {height:.2} 0 0 Z",
            height - thick * 1.3,
            height - thick * 1.3
        )
    };
    Curve {
        x: from,
        y: if up { y - height } else { y },
        width,
        height,
        commands,
        tone,
    }
}
