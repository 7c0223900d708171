//! Which frame is heard at a moment.

use std::time::Duration;

/// What is heard differs so much from what should be: the device stands, or runs away.
const TOO_FAR: i128 = 250_000_000;

/// How much of a difference is made good at a time: device and wall clock differ by parts of a thousand, and the moment
/// at which a device asks for a block jitters by milliseconds.
const STEP: i128 = 16;

/// The device no longer keeps time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lost;

/// The frame that is heard, by the wall clock; a device corrects it. It never goes back.
#[derive(Debug, Clone)]
pub struct Clock {
    rate: u32,
    /// When frame 0 was heard or would have been, in nanoseconds from the beginning of the moments; that may be before it.
    origin: i128,
    /// No device has said anything yet.
    unsaid: bool,
    latest: u64,
}

impl Clock {
    /// A frame is heard at a moment. `rate` in frames a second.
    pub fn new(rate: u32, now: Duration, frame: u64) -> Self {
        let rate = rate.max(1);
        Self {
            rate,
            origin: nanos(now) - at(rate, frame),
            unsaid: true,
            latest: frame,
        }
    }

    /// The frame that is heard.
    pub fn frame(&mut self, now: Duration) -> u64 {
        let frames = (nanos(now) - self.origin) * i128::from(self.rate) / 1_000_000_000;
        self.latest = self.latest.max(u64::try_from(frames).unwrap_or(0));
        self.latest
    }

    /// A device is to be listened to from now on: its first word is taken as it is.
    pub fn listen(&mut self) {
        self.unsaid = true;
    }

    /// A device says that a frame was heard, or will be, at a moment.
    ///
    /// # Errors
    /// [`Lost`] when that is far from what the clock says; the clock then goes on as it was.
    pub fn correct(&mut self, now: Duration, frame: u64) -> Result<(), Lost> {
        let off = nanos(now) - at(self.rate, frame) - self.origin;
        if off.abs() > TOO_FAR && !self.unsaid {
            return Err(Lost);
        }
        self.origin += if self.unsaid { off } else { off / STEP };
        self.unsaid = false;
        Ok(())
    }
}

fn nanos(moment: Duration) -> i128 {
    i128::try_from(moment.as_nanos()).unwrap_or(i128::MAX)
}

fn at(rate: u32, frame: u64) -> i128 {
    i128::from(frame) * 1_000_000_000 / i128::from(rate)
}
