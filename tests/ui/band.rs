//! The band, from the Stand and from its sheet.

use fourcourse::bind::BandGlobal;
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery};
use slint::platform::Key;
use slint::{ComponentHandle, Model};

use crate::evening::Evening;
use crate::{place, state};

/// Tall enough that the whole sheet is there to be touched, as if a finger had scrolled.
const ROLL: (f32, f32) = (412.0, 2800.0);

fn open(evening: &Evening) {
    evening.touch("Band, ");
    assert!(evening.sees("Players"));
}

fn band(evening: &Evening) -> BandGlobal<'_> {
    evening.app().global::<BandGlobal<'_>>()
}

fn tempo(evening: &Evening) -> String {
    let stand = evening.app().global::<fourcourse::bind::StandGlobal<'_>>();
    stand.get_tempo().to_string()
}

fn on_the_stand(evening: Evening) -> Evening {
    evening.open_tune("Millrace Reel");
    evening
}

#[test]
fn without_a_device_the_stand_goes_on_and_says_so() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    assert!(!evening.sees("NOW · NO SOUND DEVICE"));
    open(&evening);
    assert!(evening.sees("The Stand keeps the time in silence."));
    evening.touch("Sound");
    assert!(evening.sees("Silent: there is no sound device."));
    evening.touch("Play");
    evening.wait(8000);
    evening.touch("Close");
    assert!(evening.sees("NOW · NO SOUND DEVICE"));
    let there = place(&evening);
    evening.wait(4000);
    assert_ne!(place(&evening), there);
    open(&evening);
    evening.touch("Sound");
    assert!(!evening.sees("NOW · NO SOUND DEVICE"));
    evening.touch("Stop");
    let there = place(&evening);
    evening.wait(4000);
    assert_eq!(place(&evening), there);
}

#[test]
fn a_device_that_is_pulled_out_in_mid_tune_does_not_stop_the_stand() {
    let evening = on_the_stand(Evening::aloud(ROLL.0, ROLL.1));
    open(&evening);
    evening.touch("Sound");
    evening.wait(200);
    assert!(evening.sees("The band plays aloud."));
    evening.touch("Count in");
    evening.touch("Play");
    evening.wait(1500);
    assert_eq!(state(&evening), "Now");
    evening.pull_out();
    evening.wait(100);
    assert!(evening.sees("Silent: the sound device is gone."));
    assert!(evening.sees("NOW · SOUND LOST"));
    let there = place(&evening);
    evening.wait(3400);
    assert_ne!(place(&evening), there);
    // It is plugged in again: the next start finds it.
    evening.touch("Stop");
    evening.touch("Play");
    evening.wait(200);
    assert!(evening.sees("The band plays aloud."));
}

#[test]
fn players_are_silenced_and_set_by_touch_and_by_key() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    open(&evening);
    evening.touch("Silence Bass");
    assert!(evening.sees("Let Bass play"));
    let level = |player: usize| band(&evening).get_players().row_data(player).unwrap().level;
    let fader = &evening.called("Melody: how loud")[0];
    assert_eq!(fader.accessible_role(), Some(AccessibleRole::Slider));
    assert_eq!(level(0), 7);
    fader.invoke_accessible_increment_action();
    evening.wait(100);
    assert_eq!(level(0), 8);
    fader.set_accessible_value("2");
    evening.wait(100);
    assert_eq!(level(0), 2);
    // A finger that draws the knob to the right.
    let (at, size) = (fader.absolute_position(), fader.size());
    let y = at.y + size.height / 2.0;
    evening.swipe((at.x + 40.0, y), (at.x + size.width - 4.0, y));
    assert_eq!(level(0), 10);
    // And one that only scrolls past.
    evening.swipe((at.x + 40.0, y), (at.x + 42.0, y - 200.0));
    assert_eq!(level(0), 10);
}

#[test]
fn a_style_an_ending_and_a_string_to_tune_by_are_chosen() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    open(&evening);
    let chosen = |evening: &Evening| {
        let styles = band(evening).get_styles();
        let chosen = styles.iter().find(|style| style.chosen).unwrap();
        chosen.name.to_string()
    };
    assert_eq!(chosen(&evening), "reel");
    assert!(evening.sees("reel, suits the tune"));
    evening.touch("waltz");
    assert_eq!(chosen(&evening), "waltz");
    evening.touch("last line again");
    assert_eq!(band(&evening).get_ending(), 2);
    evening.touch("D to tune by");
    let sounds = |evening: &Evening| -> Vec<bool> {
        band(evening)
            .get_strings()
            .iter()
            .map(|one| one.sounds)
            .collect()
    };
    assert_eq!(sounds(&evening), [false, true, false, false]);
    evening.touch("A higher A");
    assert_eq!(band(&evening).get_a4(), "441 Hz");
    evening.touch("D to tune by");
    assert_eq!(sounds(&evening), [false; 4]);
    evening.touch("Metronome");
    assert_eq!(state(&evening), "Tap to begin");
    evening.touch("Play");
    assert_eq!(state(&evening), "Counting in");
}

#[test]
fn a_part_is_looped_ever_faster() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    evening.touch("Part B, time 1");
    open(&evening);
    evening.touch("This part");
    assert_eq!(band(&evening).get_loop_from(), "B1 · 0", "the pickup");
    assert_eq!(band(&evening).get_loop_to(), "B1 · 8");
    evening.touch("Begin a bar later");
    evening.touch("End a bar earlier");
    assert_eq!(band(&evening).get_loop_to(), "B1 · 7");
    evening.touch("End a bar later");
    evening.touch("This part");
    evening.touch("Faster after each clean pass");
    evening.touch("More at each pass");
    assert_eq!(band(&evening).get_ramp_percent(), "4 %");
    evening.touch("Count in");
    evening.touch("Play");
    let before = tempo(&evening);
    // Eight bars of two half notes at 72 are 13.3 seconds.
    evening.wait(16_000);
    assert!(place(&evening).starts_with("B1"), "{}", place(&evening));
    assert_ne!(tempo(&evening), before);
    evening.touch("Whole tune");
    evening.wait(14_000);
    assert!(place(&evening).starts_with("B2"), "{}", place(&evening));
}

#[test]
fn the_key_b_opens_the_band_and_escape_closes_it() {
    let evening = on_the_stand(Evening::open(412.0, 915.0));
    for (width, height) in [
        (412.0, 915.0),
        (360.0, 640.0),
        (800.0, 360.0),
        (1280.0, 800.0),
    ] {
        evening.turn(width, height);
        assert!(!evening.sees("Players"), "{width} x {height}");
        evening.press("b");
        evening.wait(400);
        assert!(evening.sees("Players"), "{width} x {height}");
        // The chord now is not covered: neither by the sheet nor beyond the window.
        let now = &evening.called("Next bar")[0];
        let sheet = ElementHandle::find_by_element_type_name(evening.app(), "BandSheet");
        let title = evening.called("Close")[0].absolute_position();
        let (at, size) = (now.absolute_position(), now.size());
        assert_eq!(sheet.count(), 1);
        let below = at.y + size.height <= title.y;
        let beside = at.x + size.width <= title.x - 300.0 || at.x >= title.x;
        assert!(
            below || beside,
            "{width} x {height}: {at:?} {size:?} {title:?}"
        );
        evening.press(Key::Escape);
        assert!(!evening.sees("Players"), "{width} x {height}");
    }
}

#[test]
fn beside_a_wide_stand_the_band_leaves_the_pedal_alone() {
    let evening = on_the_stand(Evening::open(1280.0, 800.0));
    open(&evening);
    assert!(!evening.sees("Find a tune"));
    let there = place(&evening);
    evening.press(Key::PageDown);
    evening.press(Key::PageDown);
    assert_ne!(place(&evening), there);
    evening.touch("Band, ");
    assert!(evening.sees("Find a tune"));
}

#[test]
fn nothing_of_the_band_is_smaller_than_a_finger_or_reaches_beyond_the_page() {
    const ROLES: [AccessibleRole; 4] = [
        AccessibleRole::Button,
        AccessibleRole::RadioButton,
        AccessibleRole::Switch,
        AccessibleRole::Slider,
    ];
    let evening = on_the_stand(Evening::open(412.0, 915.0));
    let mut wrong = Vec::new();
    for width in [320.0, 360.0, 412.0, 560.0] {
        evening.turn(width, 3000.0);
        evening.press("b");
        evening.wait(400);
        evening.touch("Faster after each clean pass");
        for role in ROLES {
            let query = ElementQuery::from_root(evening.app()).match_descendants();
            for element in query.match_accessible_role(role).find_all() {
                let (at, size) = (element.absolute_position(), element.size());
                let small = size.width < 48.0 || size.height < 48.0;
                if small || at.x < 0.0 || at.x + size.width > width {
                    wrong.push((width, element.accessible_label(), at, size));
                }
            }
        }
        evening.touch("Faster after each clean pass");
        evening.press(Key::Escape);
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_wireless_delay_is_set_in_steps_and_kept_within_its_bounds() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    open(&evening);
    assert_eq!(band(&evening).get_delay(), "0 ms");
    assert!(band(&evening).get_delay_least());
    for _ in 0..18 {
        evening.touch("A longer delay");
    }
    assert_eq!(band(&evening).get_delay(), "180 ms");
    evening.touch("A shorter delay");
    assert_eq!(band(&evening).get_delay(), "170 ms");
    for _ in 0..40 {
        evening.touch("A longer delay");
    }
    assert_eq!(band(&evening).get_delay(), "500 ms");
    assert!(band(&evening).get_delay_most());
}

#[test]
fn with_a_delay_the_stand_waits_for_the_sound() {
    let evening = on_the_stand(Evening::aloud(ROLL.0, ROLL.1));
    open(&evening);
    evening.touch("Count in");
    evening.touch("Sound");
    evening.wait(200);
    evening.touch("Play");
    // Milliseconds until the Stand shows the next bar, to the frame.
    let next_bar = || {
        let there = place(&evening);
        let mut waited: u64 = 0;
        while place(&evening) == there && waited < 20_000 {
            evening.wait(16);
            waited += 16;
        }
        waited
    };
    for _ in 0..3 {
        next_bar();
    }
    let bar = next_bar();
    band(&evening).invoke_delay_by(40);
    let later = next_bar();
    assert!((bar + 360..=bar + 440).contains(&later), "{bar} {later}");
    assert!(next_bar().abs_diff(bar) <= 48);
}

#[test]
fn two_bars_of_the_map_are_the_loop() {
    let evening = on_the_stand(Evening::open(ROLL.0, ROLL.1));
    open(&evening);
    evening.touch("Choose bars on the map");
    // The sheet is gone, and the Stand says what to do.
    assert!(!evening.sees("Players"));
    assert!(evening.sees("Touch the first bar"));
    let looped = || -> Vec<i32> {
        let stand = evening.app().global::<fourcourse::bind::StandGlobal<'_>>();
        let lines = stand.get_map();
        let lines = lines
            .iter()
            .flat_map(|line| line.bars.iter().collect::<Vec<_>>());
        lines
            .filter(|bar| bar.looped)
            .map(|bar| bar.played)
            .collect()
    };
    let stand = evening.app().global::<fourcourse::bind::StandGlobal<'_>>();
    let there = place(&evening);
    stand.invoke_jump_to(4);
    evening.wait(50);
    assert!(evening.sees("Touch the last bar"));
    assert_eq!(looped(), [4]);
    // Backwards is as good.
    stand.invoke_jump_to(2);
    evening.wait(50);
    assert_eq!(looped(), [2, 3, 4]);
    assert!(!evening.sees("Touch the last bar") && evening.sees("This is 1"));
    assert_eq!(place(&evening), there, "a touch that chooses does not jump");
    // Another start, and a way out of it.
    open(&evening);
    evening.touch("Choose bars on the map");
    evening.touch("Cancel");
    assert!(evening.sees("This is 1"));
    assert_eq!(looped(), [2, 3, 4]);
}
