//! The band on the stand: what it is told, and what is then to be seen.

use std::cell::RefCell;
use std::rc::Rc;

use crate::band::{Command, Player, Transport};
use crate::chart::Version;

use super::*;

/// A band by the wall clock that writes down what it is told, and that can be late or go away.
struct Written {
    sound: Sound,
    told: Rc<RefCell<Vec<Command>>>,
    heard: Rc<RefCell<Heard>>,
}

impl Players for Written {
    fn tell(&mut self, now: Duration, command: Command) {
        self.told.borrow_mut().push(command.clone());
        self.sound.tell(now, command);
    }

    fn frame(&mut self, now: Duration) -> u64 {
        self.sound.frame(now)
    }

    fn transport(&self) -> Transport {
        *self.sound.transport()
    }

    fn is_settled(&self) -> bool {
        self.sound.is_settled()
    }

    fn heard(&self) -> Heard {
        *self.heard.borrow()
    }

    fn switch(&mut self, _: Duration, on: bool) {
        let heard = if on { Heard::Aloud } else { Heard::SwitchedOff };
        if *self.heard.borrow() != Heard::NoDevice {
            *self.heard.borrow_mut() = heard;
        }
    }
}

struct Evening {
    desk: Desk,
    told: Rc<RefCell<Vec<Command>>>,
    heard: Rc<RefCell<Heard>>,
}

impl Evening {
    fn with(abc_text: &str) -> Self {
        let tune = abc::read(abc_text.as_bytes()).tunes.remove(0).tune;
        let told = Rc::default();
        let heard = Rc::new(RefCell::new(Heard::SwitchedOff));
        let players = Written {
            sound: Sound::new(Duration::ZERO),
            told: Rc::clone(&told),
            heard: Rc::clone(&heard),
        };
        let songbook = Box::new(Memory::new(vec![tune.clone(), tune]));
        let mut desk = Desk::new(songbook, Box::new(players), Settings::default(), None);
        desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
        told.borrow_mut().clear();
        Self { desk, told, heard }
    }

    fn ask(&mut self, ask: Ask, now: f64) -> Vec<Command> {
        self.desk.ask(ask, beats(now));
        self.told.take()
    }

    fn band(&mut self, ask: BandAsk, now: f64) -> Vec<Command> {
        self.ask(Ask::Band(ask), now)
    }

    fn view(&mut self, now: f64) -> StandView {
        view(&mut self.desk, now)
    }
}

/// Commands in a word each.
fn names(told: &[Command]) -> Vec<String> {
    let name = |command: &Command| {
        let debug = format!("{command:?}");
        let end = debug.find(|c: char| !c.is_alphanumeric());
        debug[..end.unwrap_or(debug.len())].to_owned()
    };
    told.iter().map(name).collect()
}

#[test]
fn the_clock_has_the_band_play_the_tune_from_the_bar_now_after_a_count() {
    let mut evening = Evening::with(REEL);
    let told = evening.ask(Ask::Clock(true), 0.0);
    assert_eq!(
        names(&told),
        ["Stop", "Score", "Tempo", "Times", "Loop", "Ramp", "Play"]
    );
    let Some(Command::Play { from, count }) = told.last() else {
        panic!("{told:?}");
    };
    // Four quarters, and three more before the pickup.
    assert_eq!((from.1.0, count.events.len()), (0, 7));
    assert_eq!(names(&evening.ask(Ask::Clock(false), 9.0)), ["Stop"]);
    assert_eq!(evening.view(20.0).bar, evening.view(9.0).bar);
    // From where the circle is, and without a count where none is wanted.
    evening.ask(Ask::JumpToPart(2), 21.0);
    evening.band(BandAsk::CountIn(false), 21.0);
    let told = evening.ask(Ask::Clock(true), 22.0);
    let Some(Command::Play { from, count }) = told.last() else {
        panic!("{told:?}");
    };
    assert_eq!(from.1.quarters(), 32.0);
    assert_eq!(count.events.len(), 0);
}

#[test]
fn the_band_plays_the_version_that_lies_on_the_porch() {
    let strings = |told: &[Command]| {
        let score = told.iter().find_map(|command| match command {
            Command::Score(score) => Some(score),
            _ => None,
        });
        let events = &score.expect("a score").events;
        let melody = events.iter().filter(|event| event.player == Player::Melody);
        melody.count()
    };
    let mut evening = Evening::with(REEL);
    let plain = strings(&evening.ask(Ask::Clock(true), 0.0));
    // In the middle of the tune the band goes on in the other version.
    let version = |version| Ask::Porch(PorchAsk::Version(version));
    let told = evening.ask(version(Version::KeyDrones), 9.0);
    assert!(strings(&told) > plain * 3 / 2);
    assert!(!names(&told).contains(&"Play".to_owned()), "{told:?}");
    assert_eq!(strings(&evening.ask(version(Version::Plain), 12.0)), plain);
    // Strings that were tuned otherwise give other drones at once.
    evening.ask(version(Version::KeyDrones), 12.5);
    let told = evening.ask(Ask::Retune(0, 2), 12.6);
    assert!(strings(&told) > plain, "{told:?}");
    evening.ask(Ask::Retune(0, -2), 12.7);
    // A double stop that is drilled is two strings each time.
    evening.ask(Ask::Clock(false), 13.0);
    evening.ask(Ask::Porch(PorchAsk::Stop(0)), 14.0);
    assert_eq!(strings(&evening.ask(Ask::Clock(true), 15.0)), 2 * (4 + 8));
}

#[test]
fn the_hand_leads_with_no_word_to_the_band() {
    let mut evening = Evening::with(REEL);
    for ask in [
        Ask::NextBar,
        Ask::NextBar,
        Ask::Hold,
        Ask::ThisIsOne,
        Ask::Faster(4),
        Ask::KeyUp(2),
        Ask::BarBack,
    ] {
        assert_eq!(evening.ask(ask.clone(), 3.0), [], "{ask:?}");
    }
}

#[test]
fn what_the_stand_asks_in_mid_tune_the_band_is_told() {
    let mut evening = Evening::with(REEL);
    evening.ask(Ask::Clock(true), 0.0);
    let mut told = |ask| names(&evening.ask(ask, 6.0));
    assert_eq!(told(Ask::Hold), ["Hold"]);
    assert_eq!(told(Ask::Hold), ["Hold"]);
    assert_eq!(told(Ask::JumpTo(3)), ["Go", "Hold"]);
    assert_eq!(told(Ask::Faster(2)), ["Tempo"]);
    assert_eq!(told(Ask::Times(5)), ["Times"]);
    assert_eq!(told(Ask::LastTime(true)), ["LastTime"]);
    assert_eq!(told(Ask::KeyUp(-2)), ["Score"]);
    assert_eq!(told(Ask::Simpler(Simplify::Triads)), ["Score"]);
    assert_eq!(told(Ask::Names(ChordNames::Numbers)), [""; 0]);
    assert_eq!(told(Ask::Band(BandAsk::Style("waltz".into()))), ["Score"]);
    assert_eq!(
        told(Ask::Band(BandAsk::Ending(crate::band::Ending::Tag))),
        ["Score"]
    );
    assert_eq!(told(Ask::Band(BandAsk::Ramp(true))), ["Ramp"]);
    assert_eq!(told(Ask::Band(BandAsk::LoopPart)), ["Loop"]);
    assert_eq!(told(Ask::Band(BandAsk::NoLoop)), ["Loop"]);
    // A change of key goes on at the place.
    let view = evening.view(6.0);
    assert_eq!((view.key.as_str(), view.bar.0), ("G", 3));
    assert_eq!(view.band.style.id(), "waltz");
    assert_eq!(view.band.fitting.id(), "reel");
}

#[test]
fn a_part_is_played_again_and_again_and_its_bars_are_marked() {
    let mut evening = Evening::with(REEL);
    evening.ask(Ask::JumpToPart(2), 0.0);
    evening.band(BandAsk::LoopPart, 0.0);
    let looped = |view: &StandView| {
        let bars = view.map.iter().flat_map(|line| &line.bars);
        bars.filter(|bar| bar.looped).count()
    };
    let view = evening.view(0.0);
    assert_eq!(looped(&view), 4);
    let shown = view.band.looped.unwrap();
    assert_eq!(
        (shown.from.as_str(), shown.to.as_str(), shown.part),
        ("B1 · 1", "B1 · 4", true)
    );
    // Eight beats a pass, a beat a second.
    evening.ask(Ask::Clock(true), 0.0);
    for pass in 0..5 {
        let now = 2.1 + 8.0 * f64::from(pass);
        let view = evening.view(now);
        assert_eq!((view.form[2].passed, view.bar.0), (Passed::Now, 1), "{now}");
    }
    evening.band(BandAsk::NoLoop, 42.2);
    assert_eq!(evening.view(50.5).form[3].passed, Passed::Now);
    assert_eq!(looped(&evening.view(50.5)), 0);
}

#[test]
fn a_loop_grows_and_shrinks_by_full_bars_and_takes_the_pickup_along() {
    let mut evening = Evening::with(REEL);
    let mut bars = |ask| {
        let told = evening.band(ask, 0.0);
        let looped = evening
            .view(0.0)
            .band
            .looped
            .map(|view| (view.from, view.to));
        (looped.unwrap_or_default(), told)
    };
    let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    // From the pickup that is waited at, the first bar is the next one.
    assert_eq!(bars(BandAsk::LoopFrom(1)).0, pair("A1 · 1", "A1 · 1"));
    assert_eq!(bars(BandAsk::LoopTo(1)).0, pair("A1 · 1", "A1 · 2"));
    assert_eq!(bars(BandAsk::LoopTo(2)).0, pair("A1 · 1", "A1 · 4"));
    assert_eq!(bars(BandAsk::LoopFrom(-1)).0, pair("A1 · 1", "A1 · 4"));
    assert_eq!(bars(BandAsk::LoopFrom(5)).0, pair("A2 · 2", "A2 · 2"));
    assert_eq!(bars(BandAsk::LoopTo(-3)).0, pair("A1 · 3", "A1 · 3"));
    bars(BandAsk::LoopFrom(-2));
    bars(BandAsk::LoopTo(1));
    // Bars 1 to 4 of the first A, with the quarter that leads into the second: four whole bars.
    let told = evening.ask(Ask::Clock(true), 0.0);
    let looped = told.iter().find_map(|command| match command {
        Command::Loop(range) => *range,
        _ => None,
    });
    let (from, to) = looped.unwrap();
    assert_eq!((to - from).quarters(), 16.0);
}

#[test]
fn the_band_gets_faster_after_each_clean_pass_up_to_the_ceiling() {
    let mut evening = Evening::with(PLAIN);
    evening.band(BandAsk::LoopPart, 0.0);
    evening.band(BandAsk::CountIn(false), 0.0);
    evening.band(BandAsk::RampPercent(7), 0.0);
    evening.band(BandAsk::RampCeiling(-200), 0.0);
    assert_eq!(evening.view(0.0).band.ramp.percent, 10);
    evening.band(BandAsk::RampCeiling(35), 0.0);
    evening.band(BandAsk::Ramp(true), 0.0);
    assert_eq!(evening.view(0.0).band.ramp.ceiling, 65);
    evening.ask(Ask::Clock(true), 0.0);
    assert_eq!(evening.view(7.9).tempo.0, 60);
    assert_eq!(evening.view(8.1).tempo.0, 65);
    assert_eq!(evening.view(40.0).tempo.0, 65);
}

/// Four bars of one part.
const PLAIN: &str =
    "X:1\nT:Pail Test\nM:4/4\nL:1/4\nQ:1/2=60\nK:G\n\"G\"G4|\"C\"c4|\"D\"d4|\"Em\"e4|]\n";

#[test]
fn levels_are_told_once_and_kept() {
    let mut evening = Evening::with(REEL);
    assert_eq!(
        evening.band(BandAsk::Mute(Player::Bass, true), 0.0),
        [Command::Mute(Player::Bass, true)]
    );
    assert_eq!(evening.band(BandAsk::Mute(Player::Bass, true), 0.0), []);
    // Seven of ten is nine decibels below the loudest; a player at seven is as the band was balanced.
    let told = evening.band(BandAsk::Level(Player::Chop, 10), 0.0);
    let [Command::Level(Player::Chop, level)] = told[..] else {
        panic!("{told:?}");
    };
    let db = 20.0 * level.log10();
    assert!((db - (6.0 - 9.0)).abs() < 1e-3, "{db} dB");
    let told = evening.band(BandAsk::Level(Player::Chop, 0), 0.0);
    assert_eq!(told, [Command::Level(Player::Chop, 0.0)]);
    let told = evening.band(BandAsk::Loudness(10), 0.0);
    assert_eq!(told.len(), 5, "all but the one at nothing");
    assert!(told.contains(&Command::Level(Player::Melody, 1.0)));
    assert_eq!(evening.band(BandAsk::A4(900), 0.0), [Command::A4(466.0)]);
    let kept = &evening.desk.settings().band;
    assert_eq!((kept.loudness, kept.a4, kept.levels[1]), (10, 466, 0));
}

#[test]
fn a_string_sounds_to_tune_by_until_the_tune_begins() {
    let mut evening = Evening::with(REEL);
    evening.band(BandAsk::Mute(Player::Melody, true), 0.0);
    let told = evening.band(BandAsk::Tone(Some(0)), 0.0);
    // The mandolin's G, heard although the melody is silent.
    assert!(told.contains(&Command::Mute(Player::Melody, false)));
    assert!(
        matches!(told.last(), Some(Command::Tone(Some(tone))) if tone.midi == 55),
        "{told:?}"
    );
    let band = evening.view(0.0).band;
    assert_eq!((band.tone, band.heard), (Some(0), Heard::Aloud));
    assert!(band.settings.aloud, "it is there to be heard");
    assert_eq!(band.strings, ["G", "D", "A", "E"]);
    // Another fork: it is struck anew.
    assert_eq!(names(&evening.band(BandAsk::A4(442), 1.0)), ["A4", "Tone"]);
    let told = evening.ask(Ask::Clock(true), 2.0);
    assert_eq!(told[0], Command::Tone(None));
    assert!(told.contains(&Command::Mute(Player::Melody, true)));
    assert_eq!(evening.view(2.0).band.tone, None);
    // And a tune that plays makes room for a string.
    let told = evening.band(BandAsk::Tone(Some(3)), 3.0);
    assert_eq!(names(&told)[0], "Stop");
    assert_eq!(evening.view(4.0).follow, FollowState::Waiting);
}

#[test]
fn metronome_and_drones_sound_alone_while_the_hand_leads() {
    let mut evening = Evening::with(REEL);
    let told = evening.band(BandAsk::Alone(Some(Alone::Metronome)), 0.0);
    assert!(told.contains(&Command::Mute(Player::Click, false)));
    assert!(told.contains(&Command::Times(0)));
    assert_eq!(names(&told).last().unwrap(), "Play");
    evening.ask(Ask::NextBar, 1.0);
    assert_eq!(evening.view(1.0).follow, FollowState::ByHand);
    assert_eq!(names(&evening.ask(Ask::Faster(4), 1.0)), ["Tempo"]);
    let told = evening.band(BandAsk::Alone(Some(Alone::Drones)), 2.0);
    assert_eq!(told[0], Command::Stop);
    assert!(told.contains(&Command::Mute(Player::Click, true)));
    assert!(told.contains(&Command::Mute(Player::Drones, false)));
    assert_eq!(names(&evening.ask(Ask::KeyUp(2), 3.0)), ["Score"]);
    let told = evening.band(BandAsk::Alone(None), 4.0);
    assert_eq!(told, [Command::Stop, Command::Mute(Player::Drones, true)]);
    assert_eq!(evening.view(4.0).band.alone, None);
    // Another tune on the stand: nothing goes on sounding.
    evening.band(BandAsk::Alone(Some(Alone::Drones)), 5.0);
    let told = evening.ask(Ask::Open(TuneId(2)), 6.0);
    assert_eq!(told[0], Command::Stop);
}

#[test]
fn the_stand_goes_on_and_says_so_when_the_device_is_lost() {
    let mut evening = Evening::with(REEL);
    evening.band(BandAsk::Sound(true), 0.0);
    evening.ask(Ask::Clock(true), 0.0);
    assert!(!evening.view(5.0).band.is_missing());
    *evening.heard.borrow_mut() = Heard::DeviceLost;
    assert!(evening.view(5.0).band.is_missing());
    assert_eq!(evening.view(5.1).bar.0, 1);
    assert_eq!(evening.view(7.1).bar.0, 2);
    // The next start looks for a device again.
    evening.ask(Ask::Clock(false), 8.0);
    evening.ask(Ask::Clock(true), 9.0);
    assert_eq!(evening.view(9.0).band.heard, Heard::Aloud);
    // Nothing is missing where silence is wanted.
    *evening.heard.borrow_mut() = Heard::NoDevice;
    evening.band(BandAsk::Sound(false), 10.0);
    assert!(!evening.view(10.0).band.is_missing());
    assert_eq!(evening.view(60.0).follow, FollowState::ByClock);
}

#[test]
fn until_a_command_is_heard_the_stand_shows_what_was_asked() {
    use crate::audio::BLOCK;
    // A device that takes its blocks when this test gives them.
    let callback = Rc::new(RefCell::new(None));
    let given = Rc::clone(&callback);
    let sound = Sound::with(Duration::ZERO, move |wires| {
        *given.borrow_mut() = Some(wires);
        Some(Rc::clone(&given))
    });
    let tune = abc::read(REEL.as_bytes()).tunes.remove(0).tune;
    let songbook = Box::new(Memory::new(vec![tune]));
    let mut desk = Desk::new(songbook, Box::new(sound), Settings::default(), None);
    desk.ask(Ask::Open(TuneId(1)), Duration::ZERO);
    desk.ask(Ask::JumpToPart(2), Duration::ZERO);
    desk.ask(Ask::Band(BandAsk::Sound(true)), Duration::ZERO);
    let mut out = [0.0; 2 * BLOCK];
    let mut block = |at: u64| {
        let due = Duration::from_nanos(at * BLOCK as u64 * 1_000_000_000 / 48_000);
        let mut callback = callback.borrow_mut();
        callback.as_mut().unwrap().fill(&mut out, due);
        due
    };
    for at in 0..100 {
        let now = block(at);
        desk.is_moving(now);
    }
    let now = block(100);
    assert!(!desk.is_moving(now));
    desk.ask(Ask::Clock(true), now);
    // Not a frame at the bar where the band was before, and not one in which nothing is begun.
    for at in 101..400 {
        let now = block(at);
        assert!(desk.is_moving(now));
        let view = desk.stand(now).unwrap();
        assert_eq!(view.form[2].passed, Passed::Now, "block {at}");
        assert_ne!(view.follow, FollowState::Waiting, "block {at}");
    }
    let view = desk.stand(block(400)).unwrap();
    assert_eq!(view.follow, FollowState::ByClock);
    assert_eq!(view.band.heard, Heard::Aloud);
}

#[test]
fn two_bars_touched_on_the_map_are_the_loop_and_a_part_is_all_of_it() {
    let mut evening = Evening::with(REEL);
    let looped = |evening: &mut Evening| {
        let view = evening.view(0.0);
        let bars = view.map.iter().flat_map(|line| &line.bars);
        let marked: Vec<usize> = bars
            .filter(|bar| bar.looped)
            .map(|bar| bar.played)
            .collect();
        (view.band.choosing, marked)
    };
    let before = evening.view(0.0).bar;
    evening.band(BandAsk::ChooseBars(true), 0.0);
    assert_eq!(looped(&mut evening), (Some(Choosing::First), vec![]));
    evening.ask(Ask::JumpTo(3), 0.0);
    assert_eq!(looped(&mut evening), (Some(Choosing::Last), vec![3]));
    // The last may be touched before the first.
    evening.ask(Ask::JumpTo(2), 0.0);
    assert_eq!(looped(&mut evening), (None, vec![2, 3]));
    assert_eq!(
        evening.view(0.0).bar,
        before,
        "nobody jumps while bars are chosen"
    );
    // B comes after A has come twice; from the second bar of A1 it is not the second bar of A2 that is meant.
    evening.band(BandAsk::ChooseBars(true), 0.0);
    evening.ask(Ask::JumpTo(1), 0.0);
    evening.ask(Ask::JumpTo(7), 0.0);
    assert_eq!(looped(&mut evening), (None, vec![1, 2]));
    // A part, and a way out.
    evening.band(BandAsk::ChooseBars(true), 0.0);
    evening.ask(Ask::JumpToPart(2), 0.0);
    assert_eq!(looped(&mut evening).0, None);
    assert_eq!(evening.view(0.0).band.looped.unwrap().from, "B1 · 1");
    evening.band(BandAsk::ChooseBars(true), 0.0);
    evening.band(BandAsk::ChooseBars(false), 0.0);
    evening.ask(Ask::JumpTo(2), 0.0);
    assert_eq!(evening.view(0.0).bar.0, 2);
}

#[test]
fn the_last_line_is_led_into_by_the_bar_before_and_a_clean_pass_at_its_join() {
    let mut evening = Evening::with(REEL);
    evening.band(BandAsk::ChooseBars(true), 0.0);
    evening.ask(Ask::JumpTo(3), 0.0);
    evening.ask(Ask::JumpTo(4), 0.0);
    evening.ask(Ask::JumpTo(3), 0.0);
    let told = evening.ask(Ask::Clock(true), 0.0);
    let range = told.iter().find_map(|command| match command {
        Command::Loop(range) => *range,
        _ => None,
    });
    let from = told.iter().find_map(|command| match command {
        Command::Play { from, count } => Some((from.1, count.length)),
        _ => None,
    });
    // Bars 3 and 4 of the first A: the last is a quarter short, so that the last quarter of bar 2 leads in.
    let (start, end) = range.unwrap();
    assert_eq!((start.quarters(), end.quarters()), (8.0, 16.0));
    let (from, count) = from.unwrap();
    assert_eq!((from.quarters(), count.quarters()), (8.0, 7.0));
}
