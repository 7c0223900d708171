//! From the band to the ear: the sound device, the queues to it and back, and the clock of what is heard.
//!
//! [`Sound`] is what a desk holds as its [`Players`](crate::desk::Players). It is told what the band is told, and it says at any moment which frame is heard and
//! where the tune is there. With a device that is the sound's own place, its delay counted; with none, or with one that
//! went away, the same transport goes on by the wall clock.

mod clock;
#[cfg(feature = "sound")]
mod device;
mod sound;
mod wires;

pub use clock::{Clock, Lost};
pub use sound::Sound;
pub use wires::{Callback, Remote, Report, wires};

/// Frames a second.
pub const RATE: u32 = 48_000;

/// Frames that a device asks for at a time: 10.7 ms.
pub const BLOCK: usize = 512;

/// Frames that lie between the band and the ear: a device has two blocks in hand, one that sounds and one that waits
/// (tinyaudio's own figure for Linux; no system says what comes after it).
pub const IN_HAND: u64 = 2 * BLOCK as u64;

#[cfg(test)]
mod tests;
