//! The sound as a desk knows it: told what the band is told, asked what is heard.

use std::collections::VecDeque;
use std::fmt::Debug;
use std::mem::discriminant;
use std::time::Duration;

use crate::band::{Band, Command, CountIn, Transport};
use crate::desk::{Heard, Players};

use super::clock::Clock;
#[cfg(feature = "sound")]
use super::device::Device;
use super::wires::{Callback, Remote, Report, wires};
use super::{IN_HAND, RATE};

/// A device that asks for nothing for so long is lost.
const PATIENCE: Duration = Duration::from_millis(500);

/// A device that is being opened has so long until it asks for its first block.
const PATIENCE_AT_FIRST: Duration = Duration::from_secs(1);

/// After so long in which nobody asked, device and wall clock may have drifted apart: the device is then believed.
const UNWATCHED: Duration = Duration::from_secs(10);

/// Wires to a device that sounds.
#[derive(Debug)]
struct Line {
    remote: Remote,
    /// Sounds as long as it is kept.
    _device: Box<dyn Debug>,
    /// Frames between the band's place and the ear.
    late: u64,
    /// When the device last asked for a block, or was opened.
    alive: Duration,
    latest: Option<u64>,
    /// Commands that the band has not said to have carried out; the first `sent` of them are on their way.
    unanswered: VecDeque<Command>,
    sent: usize,
    answered: u64,
    /// Reports about frames that are still to be heard.
    ahead: VecDeque<Report>,
}

/// Opens a sound device for a callback. `None` where there is none.
type Open = Box<dyn Fn(Callback) -> Option<Box<dyn Debug>>>;

/// The sound, or the silence that keeps the same time.
pub struct Sound {
    clock: Clock,
    /// The transport as it is heard.
    transport: Transport,
    heard: Heard,
    line: Option<Line>,
    /// What a new device has to be told: score, levels, pitch.
    standing: Vec<Command>,
    /// The count of the last start: a device that is switched on meanwhile goes on counting.
    count: CountIn,
    /// From the device to the ear, besides.
    delay: Duration,
    open: Open,
    /// When somebody last asked which frame is heard.
    watched: Duration,
}

impl Debug for Sound {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Sound")
            .field("heard", &self.heard)
            .field("transport", &self.transport)
            .finish_non_exhaustive()
    }
}

impl Sound {
    /// Switched off; the transport runs by the wall clock. There is no device to switch on: see [`Self::with`].
    pub fn new(now: Duration) -> Self {
        Self {
            clock: Clock::new(RATE, now, 0),
            transport: *Band::new(RATE).transport(),
            heard: Heard::SwitchedOff,
            line: None,
            standing: Vec::new(),
            count: CountIn::default(),
            delay: Duration::ZERO,
            open: Box::new(|_| None),
            watched: now,
        }
    }

    /// Switched off, with a device of any kind to switch on: `open` has it call [`Callback::fill`] for each block, and
    /// returns what keeps it open until it is dropped.
    pub fn with<Device: Debug + 'static>(
        now: Duration,
        open: impl Fn(Callback) -> Option<Device> + 'static,
    ) -> Self {
        let boxed = |device| -> Box<dyn Debug> { Box::new(device) };
        Self {
            open: Box::new(move |callback| open(callback).map(boxed)),
            ..Self::new(now)
        }
    }

    /// Switched off, with the system's sound device to switch on. `clock` gives the moments that all else here is told as
    /// `now`. A build without sound knows no device.
    pub fn with_device(clock: impl Fn() -> Duration + Clone + Send + 'static) -> Self {
        let now = clock();
        #[cfg(feature = "sound")]
        let open = move |callback| Device::open(callback, clock.clone());
        #[cfg(not(feature = "sound"))]
        let open = |_| None::<()>;
        Self::with(now, open)
    }

    /// Whether the band is heard, and if not, why.
    pub fn heard(&self) -> Heard {
        self.heard
    }

    /// Switches to the sound device, where the tune goes on at its place.
    pub fn switch_on(&mut self, now: Duration) {
        let open = std::mem::replace(&mut self.open, Box::new(|_| None));
        self.attach(now, &open);
        self.open = open;
    }

    /// Switches to a device of any kind: `open` has it call [`Callback::fill`] for each block, and returns what keeps it
    /// open until it is dropped.
    pub fn attach<Device: Debug + 'static>(
        &mut self,
        now: Duration,
        open: impl FnOnce(Callback) -> Option<Device>,
    ) {
        self.fall_silent(now, Heard::SwitchedOff);
        let heard = self.frame(now);
        // What the band does first is heard when what it has in hand is over.
        let late = self.late();
        let band = Band::resuming(self.transport, heard + late).counting(self.count.clone());
        let (remote, callback) = wires(band);
        let Some(device) = open(callback) else {
            self.heard = Heard::NoDevice;
            return;
        };
        self.heard = Heard::Aloud;
        self.clock.begin(now);
        let unanswered: VecDeque<_> = self.standing.iter().cloned().collect();
        let mut line = Line {
            remote,
            _device: Box::new(device),
            late,
            alive: now,
            latest: None,
            unanswered,
            sent: 0,
            answered: 0,
            ahead: VecDeque::new(),
        };
        line.push();
        self.line = Some(line);
    }

    /// Switches the sound off; the tune goes on silently.
    pub fn switch_off(&mut self, now: Duration) {
        self.fall_silent(now, Heard::SwitchedOff);
    }

    /// How long the sound takes from the device to the ear, as wireless headphones and loudspeakers do. What is seen waits
    /// as long for it.
    pub fn set_delay(&mut self, now: Duration, delay: Duration) {
        self.delay = delay;
        let late = self.late();
        if let Some(line) = &mut self.line {
            line.late = late;
            line.latest = None;
            line.alive = now;
            self.clock.begin(now);
        }
    }

    /// Frames between the band's place and the ear: what the device has in hand, what the band looks ahead, and the way on.
    fn late(&self) -> u64 {
        let delay = self.delay.as_micros() * u128::from(RATE) / 1_000_000;
        IN_HAND + Band::new(RATE).latency() as u64 + u64::try_from(delay).unwrap_or(0)
    }

    /// Tells the band something.
    pub fn send(&mut self, now: Duration, command: Command) {
        self.remember(&command);
        let frame = self.frame(now);
        match &mut self.line {
            None => self.transport.obey(frame, &command),
            Some(line) => {
                line.unanswered.push_back(command);
                line.push();
            }
        }
    }

    /// The frame that is heard. Takes in what the device has to say.
    pub fn frame(&mut self, now: Duration) -> u64 {
        if let Some(line) = &mut self.line {
            if now.saturating_sub(self.watched) > UNWATCHED {
                self.clock.begin(now);
            }
            if let Err(why) = line.listen(now, &mut self.clock) {
                self.fall_silent(now, why);
            }
        }
        self.watched = now;
        let frame = self.clock.frame(now);
        if let Some(line) = &mut self.line {
            while let Some(report) = line.ahead.front().filter(|report| report.since <= frame) {
                self.transport = report.transport;
                line.ahead.pop_front();
            }
        }
        self.transport.advance(frame);
        frame
    }

    /// The transport as it is heard; [`Transport::place`] at [`Self::frame`] says where the circle is.
    pub fn transport(&self) -> &Transport {
        &self.transport
    }

    /// Goes on without a device, from what is heard now.
    fn fall_silent(&mut self, now: Duration, why: Heard) {
        self.heard = why;
        let Some(line) = self.line.take() else {
            return;
        };
        let frame = self.clock.frame(now);
        if let Some(latest) = line.ahead.back() {
            self.transport = latest.transport;
        }
        for command in &line.unanswered {
            self.transport.obey(frame, command);
        }
    }

    /// A new device is told what the old one knew.
    fn remember(&mut self, command: &Command) {
        if let Command::Play { count, .. } = command {
            self.count = count.clone();
        }
        let same = |other: &Command| match (command, other) {
            (Command::Level(one, _), Command::Level(other, _))
            | (Command::Mute(one, _), Command::Mute(other, _)) => one == other,
            _ => discriminant(command) == discriminant(other),
        };
        if matches!(
            command,
            Command::Score(_)
                | Command::Level(..)
                | Command::Mute(..)
                | Command::Human(_)
                | Command::Gain(_)
                | Command::A4(_)
                | Command::Tone(_)
        ) {
            self.standing.retain(|other| !same(other));
            self.standing.push(command.clone());
        }
    }
}

impl Line {
    /// Sends what waits, as far as there is room.
    fn push(&mut self) {
        while let Some(command) = self.unanswered.get(self.sent) {
            if self.remote.send(command.clone()).is_err() {
                break;
            }
            self.sent += 1;
        }
    }

    /// Whether all that was sent is heard by now.
    fn is_settled(&self) -> bool {
        self.unanswered.is_empty() && self.ahead.is_empty() && self.latest.is_some()
    }

    /// Takes in what the device and the band have to say.
    ///
    /// # Errors
    /// Why nothing is heard any more.
    fn listen(&mut self, now: Duration, clock: &mut Clock) -> Result<(), Heard> {
        self.remote.tidy();
        while let Some(report) = self.remote.report() {
            let answered = usize::try_from(report.done - self.answered).unwrap_or(0);
            let answered = answered.min(self.unanswered.len());
            self.unanswered.drain(..answered);
            self.sent = self.sent.saturating_sub(answered);
            self.answered = report.done;
            self.ahead.push_back(report);
        }
        self.push();
        if let Some((frame, asked)) = self.remote.pulse()
            && self.latest != Some(frame)
        {
            self.latest = Some(frame);
            self.alive = asked;
            let late = Duration::from_nanos(self.late * 1_000_000_000 / u64::from(RATE));
            let corrected = clock.correct(asked + late, frame);
            corrected.map_err(|_| Heard::DeviceLost)?;
        }
        let (patience, gone) = match self.latest {
            Some(_) => (PATIENCE, Heard::DeviceLost),
            None => (PATIENCE_AT_FIRST, Heard::NoDevice),
        };
        let waits = now.saturating_sub(self.alive) <= patience;
        match waits && !self.remote.is_abandoned() {
            true => Ok(()),
            false => Err(gone),
        }
    }
}

impl Players for Sound {
    fn tell(&mut self, now: Duration, command: Command) {
        self.send(now, command);
    }

    fn frame(&mut self, now: Duration) -> u64 {
        Self::frame(self, now)
    }

    fn transport(&self) -> Transport {
        *Self::transport(self)
    }

    fn is_settled(&self) -> bool {
        self.line.as_ref().is_none_or(Line::is_settled)
    }

    fn heard(&self) -> Heard {
        Self::heard(self)
    }

    fn set_delay(&mut self, now: Duration, delay: Duration) {
        Self::set_delay(self, now, delay);
    }

    fn switch(&mut self, now: Duration, on: bool) {
        if on {
            self.switch_on(now);
        } else {
            self.switch_off(now);
        }
    }
}
