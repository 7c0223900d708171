//! Which frame is heard at a moment.

use std::time::Duration;

/// What is heard differs by so many nanoseconds from what should be: the device stuttered, or runs away.
const TOO_FAR: i128 = 250_000_000;

/// The same while a device begins: it may fill a buffer of its own first.
const TOO_FAR_AT_FIRST: i128 = 1_000_000_000;

/// How long a device begins.
const AT_FIRST: Duration = Duration::from_secs(1);

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
    /// Until then a device begins.
    begins: Duration,
    latest: u64,
}

impl Clock {
    /// A frame is heard at a moment. `rate` in frames a second.
    pub fn new(rate: u32, now: Duration, frame: u64) -> Self {
        let rate = rate.max(1);
        Self {
            rate,
            origin: nanos(now) - at(rate, frame),
            begins: Duration::ZERO,
            latest: frame,
        }
    }

    /// The frame that is heard.
    pub fn frame(&mut self, now: Duration) -> u64 {
        let frames = (nanos(now) - self.origin) * i128::from(self.rate) / 1_000_000_000;
        self.latest = self.latest.max(u64::try_from(frames).unwrap_or(0));
        self.latest
    }

    /// A device begins now: its first words are taken as they are.
    pub fn begin(&mut self, now: Duration) {
        self.begins = now + AT_FIRST;
    }

    /// A device says that a frame was heard, or will be, at a moment. After one that stuttered the clock stands until the
    /// sound is where it was.
    ///
    /// # Errors
    /// [`Lost`] when that is far before the moment at which the clock would have it; the clock then goes on as it was.
    pub fn correct(&mut self, now: Duration, frame: u64) -> Result<(), Lost> {
        let off = nanos(now) - at(self.rate, frame) - self.origin;
        let begins = now < self.begins;
        let far = if begins { TOO_FAR_AT_FIRST } else { TOO_FAR };
        if off < -far {
            return Err(Lost);
        }
        self.origin += if begins || off > TOO_FAR {
            off
        } else {
            off / STEP
        };
        Ok(())
    }
}

fn nanos(moment: Duration) -> i128 {
    i128::try_from(moment.as_nanos()).unwrap_or(i128::MAX)
}

fn at(rate: u32, frame: u64) -> i128 {
    i128::from(frame) * 1_000_000_000 / i128::from(rate)
}
