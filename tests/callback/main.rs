//! What a sound callback must not do: under an allocator that ends the program when it is asked for anything.

#![allow(clippy::unwrap_used)] // a test stops where it fails

mod wires;

use assert_no_alloc::{AllocDisabler, assert_no_alloc};
use fourcourse::band::{Ensemble, Player, Touch};

#[global_allocator]
static ALLOCATOR: AllocDisabler = AllocDisabler;

#[test]
fn the_band_plays_without_allocating() {
    let mut band = Ensemble::new(48_000, 440.0);
    let mut out = vec![0.0; 512];
    assert_no_alloc(|| {
        for round in 0..400_u16 {
            let step = u8::try_from(round % 40).unwrap_or(0);
            for player in Player::ALL {
                let touch = [Touch::Ring, Touch::Chop, Touch::Mute][usize::from(round % 3)];
                band.strike(player, step % 8, 30 + step, 0.5, touch);
                band.set_level(player, f32::from(round % 5) / 4.0);
                band.mute(player, round % 7 == 0);
                band.damp(player, (step + 3) % 8);
            }
            band.strike_hz(Player::Guitar, 2, 82.4, 0.5, Touch::Ring);
            band.click(round % 4 == 0, 0.8);
            band.set_a4(415.0 + f64::from(step));
            if round % 50 == 49 {
                band.damp_all();
            }
            band.render(&mut out);
        }
    });
    assert!(out.iter().any(|x| *x != 0.0));
}
