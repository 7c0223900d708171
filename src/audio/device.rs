//! The sound device, through tinyaudio.

use std::time::Duration;

use tinyaudio::{OutputDevice, OutputDeviceParameters, run_output_device};

use super::wires::Callback;
use super::{BLOCK, RATE};

/// An open device. It sounds until it is dropped, silence where the band is silent.
pub(super) struct Device(Option<OutputDevice>);

impl Device {
    /// Opens the system's usual device. `None` where there is none or it does not open.
    pub(super) fn open(
        mut callback: Callback,
        clock: impl Fn() -> Duration + Send + 'static,
    ) -> Option<Self> {
        let parameters = OutputDeviceParameters {
            sample_rate: RATE as usize,
            channels_count: 2,
            channel_sample_count: BLOCK,
        };
        let device = run_output_device(parameters, move |out| callback.fill(out, clock()));
        device.ok().map(|device| Self(Some(device)))
    }
}

impl Drop for Device {
    /// Closing waits for the device, which may take its time: it does so on a thread of its own.
    fn drop(&mut self) {
        let device = self.0.take();
        #[cfg(not(target_arch = "wasm32"))]
        {
            // Where no thread can be had, the device is closed here.
            let closing = std::thread::Builder::new().name("close sound device".to_owned());
            let _ = closing.spawn(move || drop(device));
        }
        #[cfg(target_arch = "wasm32")]
        drop(device);
    }
}

impl std::fmt::Debug for Device {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Device")
    }
}
