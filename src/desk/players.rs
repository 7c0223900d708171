//! The band as the desk knows it: told what to play, asked what is heard.

use std::time::Duration;

use crate::band::{Command, Transport};

/// Whether the band is heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Heard {
    /// Through a sound device.
    Aloud,
    /// Not, because it is switched off.
    SwitchedOff,
    /// Not, because there is no device.
    NoDevice,
    /// Not, because the device went away while it was used.
    DeviceLost,
}

/// The band, wherever it plays: through a sound device, or silently by the wall clock. Nothing here waits.
pub trait Players {
    /// Tells the band something.
    fn tell(&mut self, now: Duration, command: Command);
    /// The frame that is heard.
    fn frame(&mut self, now: Duration) -> u64;
    /// The transport there; [`Transport::place`] at that frame says where the circle is.
    fn transport(&self) -> Transport;
    /// Whether all that the band was told is heard by now.
    fn is_settled(&self) -> bool;
    /// Whether the band is heard, and if not, why.
    fn heard(&self) -> Heard;
    /// How long the sound takes from the device to the ear. What is silent takes no time.
    fn set_delay(&mut self, _now: Duration, _delay: Duration) {}
    /// Opens the sound device, or closes it; the tune goes on at its place.
    fn switch(&mut self, now: Duration, on: bool);
}

/// A moment: since the app was opened, and as the frame that is heard then.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Moment {
    pub(super) now: Duration,
    pub(super) frame: u64,
}
