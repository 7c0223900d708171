//! The sound device, through tinyaudio.

#[cfg(not(target_arch = "wasm32"))]
use std::sync::mpsc;
use std::time::Duration;

use tinyaudio::{OutputDevice, OutputDeviceParameters, run_output_device};

use super::wires::Callback;
use super::{BLOCK, RATE};

/// A device that sounds until this is dropped, silence where the band is silent.
///
/// Opening and closing wait for the system, which may take its time: both are done on a thread of their own. Where no
/// device opens, the callback is dropped.
#[cfg(not(target_arch = "wasm32"))]
#[derive(Debug)]
pub(super) struct Device {
    /// Its other end waits for this one to go.
    _kept: mpsc::Sender<()>,
}

#[cfg(not(target_arch = "wasm32"))]
impl Device {
    /// Has the system's usual device opened. `None` where not even a thread can be had.
    pub(super) fn open(
        callback: Callback,
        clock: impl Fn() -> Duration + Send + 'static,
    ) -> Option<Self> {
        let (kept, until) = mpsc::channel();
        let thread = std::thread::Builder::new().name("sound device".to_owned());
        let opened = thread.spawn(move || {
            let device = open(callback, clock);
            if device.is_some() {
                // Nothing is ever sent: this ends when the other end is dropped.
                let _ = until.recv();
            }
        });
        opened.ok().map(|_| Self { _kept: kept })
    }
}

/// In a browser, a device that sounds until this is dropped; it can be opened only where a player has touched something.
#[cfg(target_arch = "wasm32")]
pub(super) struct Device(
    #[expect(dead_code, reason = "sounds as long as it is kept")] OutputDevice,
);

#[cfg(target_arch = "wasm32")]
impl Device {
    /// Opens it. `None` where it does not open.
    pub(super) fn open(
        callback: Callback,
        clock: impl Fn() -> Duration + Send + 'static,
    ) -> Option<Self> {
        open(callback, clock).map(Self)
    }
}

#[cfg(target_arch = "wasm32")]
impl std::fmt::Debug for Device {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Device")
    }
}

fn open(
    mut callback: Callback,
    clock: impl Fn() -> Duration + Send + 'static,
) -> Option<OutputDevice> {
    let parameters = OutputDeviceParameters {
        sample_rate: RATE as usize,
        channels_count: 2,
        channel_sample_count: BLOCK,
    };
    run_output_device(parameters, move |out| callback.fill(out, clock())).ok()
}
