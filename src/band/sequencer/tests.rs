//! Which hand does what at which frame.

#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small numbers

use std::sync::Arc;

use crate::band::transport::tests::{seconds, transport};
use crate::band::{Action, Command, CountIn, Event, Player, Ramp, Score, Sequencer, Sound, Touch};
use crate::chart::{Tempo, Ticks};

const BAR: Ticks = Ticks::WHOLE;

/// A string of the guitar is struck at a quarter, counted from 0, and rings for so many quarters.
fn stroke(quarter: i64, rings: i64) -> Event {
    Event {
        at: Ticks::QUARTER * quarter,
        after_ms: 0.0,
        player: Player::Guitar,
        force: 0.5,
        sound: Sound::String {
            course: (quarter % 6) as u8,
            midi: (40 + quarter) as u8,
            rings: Ticks::QUARTER * rings,
            touch: Touch::Ring,
        },
    }
}

fn click(quarter: i64) -> Event {
    Event {
        player: Player::Click,
        sound: Sound::Click {
            first: quarter % 4 == 0,
        },
        ..stroke(quarter, 0)
    }
}

/// A bar of count, with so many clicks.
fn count(clicks: i64) -> CountIn {
    CountIn {
        events: (0..clicks).map(click).collect(),
        length: BAR,
    }
}

/// A quarter note on every beat of eight bars; the last time has two bars more.
fn score() -> Score {
    let events = |quarters| (0..quarters).map(|quarter| stroke(quarter, 1)).collect();
    Score {
        events: events(32),
        length: BAR * 8,
        last: events(40),
        last_length: BAR * 10,
        ..Score::default()
    }
}

fn sequencer() -> Sequencer {
    let mut sequencer = Sequencer::resuming(transport(), 0);
    sequencer.apply(0, Command::Score(Arc::new(score())));
    sequencer
}

/// Starts at frame 0.
fn play_from(sequencer: &mut Sequencer, from: (u32, Ticks), count: CountIn) {
    sequencer.apply(0, Command::Play { from, count });
}

fn bpm(bpm: f32) -> Command {
    let beat = Ticks::QUARTER;
    Command::Tempo(Tempo { bpm, beat })
}

/// What happens from one frame to another, asked for in blocks of a length.
fn play(sequencer: &mut Sequencer, from: u64, to: u64, block: u64) -> Vec<(u64, Action)> {
    let (mut done, mut at) = (Vec::new(), from);
    while at < to {
        let until = (at + block).min(to);
        while let Some((frame, action)) = sequencer.next(at, until) {
            assert!((at..until).contains(&frame));
            at = frame;
            done.push((frame, action));
        }
        at = until;
    }
    done
}

/// Note number and millisecond of each stroke.
fn strokes(actions: &[(u64, Action)]) -> Vec<(u8, u64)> {
    let strokes = actions.iter().filter_map(|&(frame, action)| match action {
        Action::Strike { midi, .. } => Some((midi, (frame + 24) / 48)),
        _ => None,
    });
    strokes.collect()
}

fn notes(actions: &[(u64, Action)]) -> Vec<u8> {
    strokes(actions).into_iter().map(|(midi, _)| midi).collect()
}

#[test]
fn every_event_comes_once_at_its_frame() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    let done = play(&mut sequencer, 0, seconds(16.0), 256);
    let expected: Vec<_> = (0..32).map(|i| (40 + i as u8, 500 * i)).collect();
    assert_eq!(strokes(&done), expected);
    // Each is damped when the next one comes, and not later.
    let damps = done
        .iter()
        .filter(|(_, action)| matches!(action, Action::Damp { .. }));
    assert_eq!(damps.count(), 31);
}

#[test]
fn blocks_of_any_length_do_the_same_at_the_same_frames() {
    let all = |block| {
        let mut sequencer = sequencer();
        let (percent, ceiling) = (7.0, 290.0);
        sequencer.apply(0, bpm(133.7));
        sequencer.apply(0, Command::Ramp(Some(Ramp { percent, ceiling })));
        sequencer.apply(0, Command::Loop(Some((BAR, BAR * 2))));
        play_from(&mut sequencer, (0, Ticks::ZERO), count(2));
        let mut done = play(&mut sequencer, 0, seconds(9.3), block);
        sequencer.apply(seconds(9.3), bpm(55.5));
        done.extend(play(&mut sequencer, seconds(9.3), seconds(30.0), block));
        done
    };
    let whole = all(u64::MAX / 2);
    for block in [11, 64, 4096] {
        assert_eq!(all(block), whole, "blocks of {block}");
    }
}

#[test]
fn the_count_clicks_before_the_start_and_the_beat_only_when_wanted() {
    let mut with_clicks = score();
    with_clicks.events.push(click(31));
    let clicks = |beat| {
        let mut sequencer = sequencer();
        sequencer.apply(0, Command::Score(Arc::new(with_clicks.clone())));
        sequencer.set_beat(beat);
        play_from(&mut sequencer, (0, BAR), count(4));
        let done = play(&mut sequencer, 0, seconds(16.0), 512);
        let clicks = done.iter().filter_map(|(frame, action)| match action {
            Action::Click { first, .. } => Some((*first, (frame + 24) / 48)),
            _ => None,
        });
        (clicks.collect::<Vec<_>>(), strokes(&done)[0])
    };
    let counted = [(true, 0), (false, 500), (false, 1000), (false, 1500)];
    assert_eq!(clicks(false), (counted.to_vec(), (44, 2000)));
    assert_eq!(clicks(true).0.len(), 5);
}

#[test]
fn a_loop_joins_with_no_stroke_lost_and_none_twice() {
    let mut sequencer = sequencer();
    sequencer.apply(0, Command::Loop(Some((BAR, BAR * 2))));
    play_from(&mut sequencer, (0, BAR), CountIn::default());
    let done = play(&mut sequencer, 0, seconds(20.0), 480);
    let expected: Vec<_> = (0..40).map(|i| (44 + (i % 4) as u8, 500 * i)).collect();
    assert_eq!(strokes(&done), expected);
    // A string that rings over the join is damped at its time.
    let late = |i| {
        done.iter().any(|&(frame, action)| {
            matches!(action, Action::Damp { course, .. } if course == 1)
                && (frame + 24) / 48 == 2000 * i
        })
    };
    assert!((1..10_u64).all(late));
}

#[test]
fn changes_of_tempo_in_every_block_lose_nothing_and_repeat_nothing() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    let (mut done, mut frame) = (Vec::new(), 0);
    for i in 0..4_000_u16 {
        sequencer.apply(frame, bpm(30.0 + f32::from(i.wrapping_mul(7919) % 271)));
        done.extend(play(&mut sequencer, frame, frame + 251, 251));
        frame += 251;
    }
    let heard = notes(&done);
    assert!(heard.len() > 40);
    for (i, midi) in heard.into_iter().enumerate() {
        assert_eq!(usize::from(midi), 40 + i % 32);
    }
}

#[test]
fn strokes_across_the_courses_come_late_whatever_the_tempo() {
    for speed in [60.0, 120.0, 300.0] {
        let mut sequencer = sequencer();
        let mut spread = score();
        spread.events.truncate(1);
        for ms in [12.0, 6.0] {
            spread.events.push(Event {
                after_ms: ms,
                ..stroke(0, 1)
            });
        }
        sequencer.apply(0, Command::Score(Arc::new(spread)));
        sequencer.apply(0, bpm(speed));
        play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
        let done = play(&mut sequencer, 0, seconds(0.1), 64);
        let at: Vec<_> = strokes(&done).into_iter().map(|(_, ms)| ms).collect();
        assert_eq!(at, [0, 6, 12], "{speed}");
    }
}

#[test]
fn the_last_time_may_be_said_in_its_middle() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    let mut done = play(&mut sequencer, 0, seconds(21.3), 256);
    sequencer.apply(seconds(21.3), Command::LastTime(true));
    done.extend(play(&mut sequencer, seconds(21.3), seconds(60.0), 256));
    let expected: Vec<u8> = (40..72).chain(40..80).collect();
    assert_eq!(notes(&done), expected);
    assert!(sequencer.transport().is_ended());
    assert!(matches!(done.last(), Some((_, Action::DampAll))));
}

#[test]
fn another_score_goes_on_from_the_same_moment() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    // The change comes at the very frame of a stroke.
    let mut done = play(&mut sequencer, 0, seconds(2.0), 100);
    sequencer.apply(seconds(2.0), Command::Score(Arc::new(score())));
    done.extend(play(&mut sequencer, seconds(2.0), seconds(4.0), 100));
    assert_eq!(notes(&done), (40..48).collect::<Vec<u8>>());
}

#[test]
fn held_and_gone_on_nothing_is_struck_again() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    let mut done = play(&mut sequencer, 0, seconds(2.25), 100);
    sequencer.apply(seconds(2.25), Command::Hold(true));
    let held = play(&mut sequencer, seconds(2.25), seconds(7.25), 100);
    assert_eq!(held, [(seconds(2.25), Action::DampAll)]);
    sequencer.apply(seconds(7.25), Command::Hold(false));
    done.extend(play(&mut sequencer, seconds(7.25), seconds(9.0), 100));
    assert_eq!(notes(&done), (40..48).collect::<Vec<u8>>());
    assert_eq!(strokes(&done)[5], (45, 7500));
}

#[test]
fn a_jump_goes_on_from_there_and_a_pull_skips_what_was_missed() {
    let mut sequencer = sequencer();
    play_from(&mut sequencer, (0, Ticks::ZERO), CountIn::default());
    play(&mut sequencer, 0, seconds(2.1), 100);
    let now = seconds(2.1);
    let to = (0, BAR * 3);
    sequencer.apply(now, Command::Go { to, since: now });
    let done = play(&mut sequencer, now, seconds(2.5), 100);
    assert_eq!(strokes(&done), [(52, 2100)]);
    // The player was there 0.1 s ago: what would have come since is not made up for.
    let now = seconds(2.5);
    let (to, since) = ((0, BAR * 5), seconds(2.4));
    sequencer.apply(now, Command::Go { to, since });
    let done = play(&mut sequencer, now, seconds(3.0), 100);
    assert_eq!(strokes(&done), [(61, 2900)]);
}
