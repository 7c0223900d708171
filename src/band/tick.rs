//! The click: a small block of wood for the 1, a larger one for the other beats.
//!
//! A bar of wood that lies free has modes at 1 : 2.756 : 5.404 (N. Fletcher and T. Rossing, "The Physics of Musical
//! Instruments", on bars), and wood swallows the high ones first. Each mode is a turning pointer; a stroke sets it off from
//! where it is, so that a new stroke never makes a jump.

use std::f64::consts::TAU;

use super::course::SILENT;
use super::number::single;

/// Modes of a free bar: frequency, loudness and decay beside the first.
const MODES: [(f64, f32, f64); 3] = [(1.0, 1.0, 1.0), (2.756, 0.5, 0.4), (5.404, 0.2, 0.2)];

/// The first mode of the two blocks in Hz, the seconds in which it falls by 60 dB, and how loud it is.
const BLOCKS: [(f64, f64, f32); 2] = [(1240.0, 0.09, 1.0), (830.0, 0.07, 0.7)];

#[derive(Debug, Clone, Copy)]
struct Mode {
    cos: f32,
    sin: f32,
    loud: f32,
    re: f32,
    im: f32,
}

/// Both blocks.
#[derive(Debug)]
pub(super) struct Click {
    blocks: [[Mode; 3]; 2],
    rings: bool,
}

impl Click {
    pub(super) fn new(rate: f64) -> Self {
        let mode = |(hz, t60, loud): (f64, f64, f32), (times, part, shorter): (f64, f32, f64)| {
            let keeps = 10_f64.powf(-3.0 / (t60 * shorter * rate));
            let w = TAU * hz * times / rate;
            Mode {
                cos: single(keeps * w.cos()),
                sin: single(keeps * w.sin()),
                loud: loud * part,
                re: 0.0,
                im: 0.0,
            }
        };
        Self {
            blocks: BLOCKS.map(|block| MODES.map(|one| mode(block, one))),
            rings: false,
        }
    }

    pub(super) fn strike(&mut self, first: bool, force: f32) {
        for mode in &mut self.blocks[usize::from(!first)] {
            mode.re += force * mode.loud;
        }
        self.rings |= force > 0.0;
    }

    pub(super) fn rings(&self) -> bool {
        self.rings
    }

    pub(super) fn add(&mut self, out: &mut [f32]) {
        if !self.rings {
            return;
        }
        for out in out {
            for mode in self.blocks.as_flattened_mut() {
                let re = mode.re * mode.cos - mode.im * mode.sin;
                mode.im = mode.re * mode.sin + mode.im * mode.cos;
                mode.re = re;
                *out += mode.im;
            }
        }
    }

    /// Puts a block that is not heard any more to rest.
    pub(super) fn settle(&mut self) {
        let modes = self.blocks.as_flattened_mut();
        self.rings = modes.iter().any(|mode| mode.re.hypot(mode.im) > SILENT);
        if !self.rings {
            for mode in modes {
                (mode.re, mode.im) = (0.0, 0.0);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_1_is_higher_and_louder_and_both_are_soon_over() {
        let play = |first| {
            let mut click = Click::new(48_000.0);
            click.strike(first, 1.0);
            let mut sound = [0.0; 9600];
            click.add(&mut sound);
            click.settle();
            assert!(!click.rings());
            sound
        };
        let (first, other) = (play(true), play(false));
        let turns = |sound: &[f32]| {
            sound[..1920]
                .windows(2)
                .filter(|two| two[0] < 0.0 && two[1] >= 0.0)
                .count()
        };
        let power = |sound: &[f32]| sound.iter().map(|x| x * x).sum::<f32>();
        assert!(turns(&first) > turns(&other));
        assert!(power(&first) > power(&other));
    }
}
