//! The queues between the desk and the sound device's callback.
//!
//! Commands go in, spent objects and reports come back, over rings of fixed size. The callback takes what is there and
//! waits for nothing; what does not fit into a ring is kept and tried again in the next block.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::Duration;

use rtrb::{Consumer, Producer, RingBuffer};

use crate::band::{Band, Command, Spent, Transport};

/// Most commands that wait for the next block.
const COMMANDS: usize = 256;

/// Most spent objects and reports that wait to be taken away.
const BACK: usize = 256;

/// The band did as it was told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Report {
    /// How many commands it has carried out in all.
    pub done: u64,
    /// From which frame on this holds.
    pub since: u64,
    /// The transport at that frame.
    pub transport: Transport,
}

/// How far the callback is. Both numbers change together, and a reader may get one from before and one from after: they
/// are then a block apart, as they may be anyway.
#[derive(Debug, Default)]
struct Pulse {
    /// The first frame of the latest block, plus one; 0 before the first.
    frame: AtomicU64,
    /// When it was asked for, in nanoseconds.
    asked: AtomicU64,
}

/// The end that the sound device calls.
#[derive(Debug)]
pub struct Callback {
    band: Band,
    commands: Consumer<Command>,
    spent: Producer<Spent>,
    reports: Producer<Report>,
    pulse: Arc<Pulse>,
    /// What found no room on its way back.
    kept: Option<Spent>,
    done: u64,
    reported: u64,
}

/// The end that the desk holds.
#[derive(Debug)]
pub struct Remote {
    commands: Producer<Command>,
    spent: Consumer<Spent>,
    reports: Consumer<Report>,
    pulse: Arc<Pulse>,
}

/// Both ends round a band.
pub fn wires(band: Band) -> (Remote, Callback) {
    let (commands, take_commands) = RingBuffer::new(COMMANDS);
    let (give_spent, spent) = RingBuffer::new(BACK);
    let (give_reports, reports) = RingBuffer::new(BACK);
    let pulse = Arc::new(Pulse::default());
    let remote = Remote {
        commands,
        spent,
        reports,
        pulse: Arc::clone(&pulse),
    };
    let callback = Callback {
        band,
        commands: take_commands,
        spent: give_spent,
        reports: give_reports,
        pulse,
        kept: None,
        done: 0,
        reported: 0,
    };
    (remote, callback)
}

impl Callback {
    /// The next block, left and right in turn, asked for at a moment. Neither allocates nor frees, locks, waits or logs.
    pub fn fill(&mut self, out: &mut [f32], now: Duration) {
        let asked = u64::try_from(now.as_nanos()).unwrap_or(u64::MAX);
        self.pulse.asked.store(asked, Ordering::Relaxed);
        let frame = self.band.frame() + 1;
        self.pulse.frame.store(frame, Ordering::Release);
        self.give_back();
        while self.kept.is_none()
            && let Ok(command) = self.commands.pop()
        {
            self.kept = self.band.apply(command);
            self.done += 1;
            self.give_back();
        }
        if self.reported < self.done {
            let report = Report {
                done: self.done,
                since: self.band.frame(),
                transport: *self.band.transport(),
            };
            if self.reports.push(report).is_ok() {
                self.reported = self.done;
            }
        }
        self.band.fill(out);
    }

    fn give_back(&mut self) {
        if let Some(spent) = self.kept.take()
            && let Err(rtrb::PushError::Full(spent)) = self.spent.push(spent)
        {
            self.kept = Some(spent);
        }
    }
}

impl Remote {
    /// Sends a command.
    ///
    /// # Errors
    /// The command itself, when too many wait already.
    pub fn send(&mut self, command: Command) -> Result<(), Command> {
        let sent = self.commands.push(command);
        sent.map_err(|rtrb::PushError::Full(command)| command)
    }

    /// Whether the other end is gone, so that nothing will be played any more.
    pub fn is_abandoned(&self) -> bool {
        self.commands.is_abandoned()
    }

    /// Frees what the band has done with.
    pub fn tidy(&mut self) {
        while self.spent.pop().is_ok() {}
    }

    /// The next report, if there is one.
    pub fn report(&mut self) -> Option<Report> {
        self.reports.pop().ok()
    }

    /// The first frame of the latest block, and when it was asked for; `None` before the first.
    pub fn pulse(&self) -> Option<(u64, Duration)> {
        let frame = self.pulse.frame.load(Ordering::Acquire).checked_sub(1)?;
        let asked = self.pulse.asked.load(Ordering::Relaxed);
        Some((frame, Duration::from_nanos(asked)))
    }
}
