//! The sequencer: which hand does what at which frame.
//!
//! It walks through the score with a finger on the next event. A change of tempo moves the frames at which events come
//! due, never the finger, so that nothing is struck twice and nothing is left out. Everything it needs to remember has a
//! place of fixed size: it allocates nothing.

use std::sync::Arc;

use crate::chart::Ticks;
use crate::frets::MAX_COURSES;

use super::click::CountIn;
use super::command::{Command, Spent, Tone};
use super::event::{Event, Player, Sound, Touch};
use super::human::Human;
use super::score::Score;
use super::transport::Transport;

/// Most strokes that are on their way across the courses at a time; what is more is struck at once.
const MOST_LATE: usize = 128;

/// Seconds after which a string to tune by is struck again.
const TONE_AGAIN: u64 = 3;

/// What the hands do at a frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Action {
    /// A course is struck.
    Strike {
        /// Who.
        player: Player,
        /// The course, from 0.
        course: u8,
        /// The sounding pitch as a MIDI note number.
        midi: u8,
        /// How hard, from 0 to 1.
        force: f32,
        /// What the hands do.
        touch: Touch,
    },
    /// A hand damps a course.
    Damp {
        /// Who.
        player: Player,
        /// The course, from 0.
        course: u8,
    },
    /// All hands damp.
    DampAll,
    /// The band has got faster at a join.
    Faster,
    /// A tick of the metronome.
    Click {
        /// The 1 of a bar.
        first: bool,
        /// How loud, from 0 to 1.
        force: f32,
    },
}

/// A stroke on its way across the courses.
#[derive(Debug, Clone, Copy)]
struct Late {
    frame: u64,
    event: Event,
}

/// What comes next; of what comes at the same frame, the first of these.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Due {
    Damp(usize, usize),
    Count,
    Event,
    Join,
    Tone,
    Late(usize),
}

/// The finger on the score, and what the hands have still to do.
#[derive(Debug)]
pub struct Sequencer {
    transport: Transport,
    score: Arc<Score>,
    /// The next event of the score, or of its last time through.
    next: usize,
    /// Events from this moment on are still to come.
    still: Ticks,
    /// The count before the start, counted from its own beginning.
    count: CountIn,
    next_count: usize,
    /// The clicks of the score sound, and not only those of the count.
    beat: bool,
    late: Vec<Late>,
    /// When a hand damps each course, from the start of the time through.
    damps: [[Option<Ticks>; MAX_COURSES]; Player::ALL.len()],
    hush: bool,
    human: Human,
    /// A string to tune by, and when it is struck next.
    tone: Option<(u64, Tone)>,
}

impl Sequencer {
    /// Goes on from where a transport is at a frame, with nothing to play until it is told.
    pub fn resuming(mut transport: Transport, frame: u64) -> Self {
        transport.advance(frame);
        Self {
            transport,
            score: Arc::default(),
            next: 0,
            still: transport.at(frame).max(transport.begin()),
            count: CountIn::default(),
            next_count: 0,
            beat: false,
            late: Vec::with_capacity(MOST_LATE),
            damps: [[None; MAX_COURSES]; Player::ALL.len()],
            hush: false,
            human: Human::EXACT,
            tone: None,
        }
    }

    /// Goes on counting where the transport counts in: what has been counted is over.
    pub fn count_on(&mut self, frame: u64, count: CountIn) {
        let counted = self.transport.at(frame) - (self.transport.begin() - count.length);
        self.next_count = count.events.partition_point(|event| event.at < counted);
        self.count = count;
    }

    /// The transport, all joins crossed that have come.
    pub fn transport(&self) -> &Transport {
        &self.transport
    }

    /// What is played.
    pub fn score(&self) -> &Score {
        &self.score
    }

    /// Whether the clicks of the score sound; those of a count always do.
    pub fn set_beat(&mut self, beat: bool) {
        self.beat = beat;
    }

    /// Does as told from a frame on, which is the first that was not asked for yet; gives back what is no longer needed.
    /// Levels are not its business.
    pub fn apply(&mut self, frame: u64, command: Command) -> Option<Spent> {
        match &command {
            Command::Human(human) => self.human = *human,
            Command::Tone(tone) => {
                self.hush();
                self.tone = tone.map(|tone| (frame, tone));
            }
            _ => self.steer(frame, &command),
        }
        match command {
            Command::Score(score) => {
                let old = std::mem::replace(&mut self.score, score);
                self.find();
                Some(Spent::Score(old))
            }
            Command::Play { count, .. } => {
                self.next_count = 0;
                Some(Spent::Count(std::mem::replace(&mut self.count, count)))
            }
            _ => None,
        }
    }

    /// Changes the transport; where that moves the place, what rings keeps the time it had left.
    fn steer(&mut self, frame: u64, command: &Command) {
        self.arrive(frame);
        let before = (self.transport.time(), self.transport.at(frame));
        self.transport.obey(frame, command);
        let after = (self.transport.time(), self.transport.at(frame));
        match command {
            Command::Play { .. } | Command::Stop | Command::Hold(true) => self.hush(),
            Command::Go { .. } => self.next_count = self.count.events.len(),
            _ => {}
        }
        if let Command::Play { from, .. } = command {
            self.still = from.1;
        } else if after != before {
            self.shift(after.1 - before.1);
            self.still = after.1;
        }
        self.find();
    }

    /// Crosses the joins that come before anything else can happen at a frame.
    fn arrive(&mut self, frame: u64) {
        while let Some(join) = self.transport.join().filter(|&join| join <= frame) {
            self.cross(join);
        }
    }

    fn hush(&mut self) {
        self.late.clear();
        self.damps = Default::default();
        self.hush = true;
    }

    /// Moves what is counted from the start of the time through.
    fn shift(&mut self, by: Ticks) {
        for damp in self.damps.iter_mut().flatten().flatten() {
            *damp += by;
        }
    }

    /// Events of this time through.
    fn events(&self) -> &[Event] {
        match self.transport.is_last(self.transport.time()) {
            true => &self.score.last,
            false => &self.score.events,
        }
    }

    /// Puts the finger on the first event that is still to come.
    fn find(&mut self) {
        let still = self.still;
        // What a hand does a little before the first beat belongs to it.
        self.next = match still > Ticks::ZERO {
            true => self.events().partition_point(|event| event.at < still),
            false => 0,
        };
    }

    fn next_event(&self) -> Option<Event> {
        let event = self.events().get(self.next).copied();
        event.filter(|event| event.at < self.transport.reach())
    }

    fn cross(&mut self, join: u64) {
        while let Some(event) = self.next_event() {
            self.next += 1;
            self.postpone(join, event);
        }
        let before = self.transport.at(join);
        self.transport.cross(join);
        if self.transport.is_ended() {
            self.damps = Default::default();
            self.hush = true;
            return;
        }
        self.shift(self.transport.at(join) - before);
        self.still = self.transport.begin();
        self.find();
    }

    fn postpone(&mut self, frame: u64, event: Event) -> bool {
        let room = self.late.len() < self.late.capacity();
        if room {
            self.late.push(Late { frame, event });
        }
        room
    }

    /// The next thing to do, and its frame.
    fn due(&self) -> Option<(u64, Due)> {
        let transport = &self.transport;
        let at = |moment: Ticks, due: Due| transport.frame_of(moment).map(|frame| (frame, due));
        let damps = self.damps.iter().enumerate().flat_map(|(player, damps)| {
            let courses = damps.iter().enumerate();
            courses.filter_map(move |(course, damp)| Some(((*damp)?, Due::Damp(player, course))))
        });
        let damp = damps.min().and_then(|(moment, due)| at(moment, due));
        let counted = self.count.events.get(self.next_count).and_then(|event| {
            let moment = transport.begin() - self.count.length + event.at;
            at(moment, Due::Count)
        });
        let event = self.next_event();
        let event = event.and_then(|event| at(event.at, Due::Event));
        let join = transport.join().map(|join| (join, Due::Join));
        let late = self.late.iter().enumerate();
        let late = late.map(|(i, late)| (late.frame, Due::Late(i))).min();
        let tone = self.tone.map(|(frame, _)| (frame, Due::Tone));
        [damp, counted, event, join, tone, late]
            .into_iter()
            .flatten()
            .min()
    }

    /// What the hands do next, before frame `until`; `from` is the first frame that was not asked for yet.
    pub fn next(&mut self, from: u64, until: u64) -> Option<(u64, Action)> {
        if std::mem::take(&mut self.hush) {
            return Some((from, Action::DampAll));
        }
        while let Some((frame, due)) = self.due().filter(|&(frame, _)| frame < until) {
            let frame = frame.max(from);
            let action = match due {
                Due::Damp(player, course) => self.damp(player, course),
                Due::Count => self.count_click(),
                Due::Event => self.event(frame),
                Due::Join => {
                    let before = self.transport.tempo();
                    self.cross(frame);
                    match std::mem::take(&mut self.hush) {
                        true => Some(Action::DampAll),
                        false => (self.transport.tempo() != before).then_some(Action::Faster),
                    }
                }
                Due::Tone => self.strike_tone(frame),
                Due::Late(i) => {
                    let late = self.late.swap_remove(i);
                    self.strike(frame, late.event)
                }
            };
            if let Some(action) = action {
                return Some((frame, action));
            }
        }
        if self.transport.is_going() && until > 0 {
            self.still = self.still.max(self.transport.at(until - 1) + Ticks(1));
        }
        None
    }

    fn damp(&mut self, player: usize, course: usize) -> Option<Action> {
        self.damps[player][course] = None;
        Some(Action::Damp {
            player: Player::ALL[player],
            course: u8::try_from(course).ok()?,
        })
    }

    fn count_click(&mut self) -> Option<Action> {
        let event = self.count.events[self.next_count];
        self.next_count += 1;
        let Sound::Click { first } = event.sound else {
            return None;
        };
        let force = event.force;
        Some(Action::Click { first, force })
    }

    fn event(&mut self, frame: u64) -> Option<Action> {
        let mut event = self.next_event()?;
        self.next += 1;
        if !matches!(event.sound, Sound::Click { .. }) {
            let nudge = self.human.nudge(self.transport.time(), &event);
            event.after_ms += nudge.ms;
            event.force = (event.force * nudge.force_factor).min(1.0);
        }
        let after = f64::from(event.after_ms.clamp(0.0, 1000.0)) / 1000.0;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // at most a second
        let after = (after * f64::from(self.transport.rate())).round() as u64;
        if after > 0 && self.postpone(frame + after, event) {
            return None;
        }
        self.strike(frame, event)
    }

    fn strike_tone(&mut self, frame: u64) -> Option<Action> {
        let (at, tone) = self.tone.as_mut()?;
        *at = frame + TONE_AGAIN * u64::from(self.transport.rate());
        Some(Action::Strike {
            player: tone.player,
            course: tone.course,
            midi: tone.midi,
            force: 0.6,
            touch: Touch::Ring,
        })
    }

    fn strike(&mut self, frame: u64, event: Event) -> Option<Action> {
        let Event { player, force, .. } = event;
        match event.sound {
            Sound::Click { first } => self.beat.then_some(Action::Click { first, force }),
            Sound::String {
                course,
                midi,
                rings,
                touch,
            } => {
                let at = self.transport.at(frame);
                let damp = self.damps[player as usize].get_mut(usize::from(course))?;
                *damp = Some(at + rings);
                Some(Action::Strike {
                    player,
                    course,
                    midi,
                    force,
                    touch,
                })
            }
        }
    }
}

#[cfg(test)]
mod tests;
