//! What bass, guitar, chop and count do, as the project's sheet of trade facts has it ("Right hand", "Drones", "Teaching
//! order"). Tags: C common practice without a source, X worked out.
#![allow(clippy::unwrap_used)] // a test stops where it fails

use fourcourse::band::{
    Ending, Event, Player, Score, ScoreOptions, Sound, Style, Touch, Voicings, count_in,
};
use fourcourse::chart::{Direction, Metre, Ticks, Tune, direction_at};
use fourcourse::formats::abc;
use fourcourse::store::shipped;

fn tune(abc: &str) -> Tune {
    abc::read(abc.as_bytes()).tunes.remove(0).tune
}

fn score(tune: &Tune, style: &str) -> Score {
    let options = ScoreOptions {
        style: Style::named(style).unwrap(),
        ending: Ending::Plain,
    };
    Score::of(tune, &tune.playing(), &options, &mut Voicings::default())
}

/// What a player does in a bar, an eighth a mark: `b` one note, `D` a stroke from the low strings to the high ones, `U` the
/// other way, `x` damped, `.` nothing.
fn marks(events: &[Event], player: Player, from: Ticks, eighths: i64) -> String {
    let mark = |i: i64| {
        let at = from + Ticks::of(i, 8);
        let there = events.iter().filter(|e| e.player == player && e.at == at);
        let courses: Vec<_> = there
            .filter_map(|event| match event.sound {
                Sound::String { course, touch, .. } => Some((course, touch)),
                Sound::Click { .. } => None,
            })
            .collect();
        match courses[..] {
            [] => '.',
            [(_, Touch::Chop), ..] => 'x',
            [_] => 'b',
            [first, second, ..] if second.0 > first.0 => 'D',
            _ => 'U',
        }
    };
    (0..eighths).map(mark).collect()
}

/// Guitar, chop and bass of the first bar of a piece in one chord.
fn first_bar(metre: &str, eighths: i64, style: &str) -> [String; 3] {
    let notes = format!("\"G\"G{eighths}|G{eighths}|");
    let tune = tune(&format!("X:1\nT:a\nM:{metre}\nL:1/8\nK:G\n{notes}\n"));
    let score = score(&tune, style);
    [Player::Guitar, Player::Chop, Player::Bass]
        .map(|player| marks(&score.events, player, Ticks::ZERO, eighths))
}

#[test]
fn boom_chuck_has_its_bass_on_1_and_3_and_its_chords_on_2_and_4() {
    // C: "boom-chuck: bass on 1 and 3, chuck on 2 and 4; chop on 2 and 4 only".
    assert_eq!(
        first_bar("4/4", 8, "boom-chuck"),
        ["b.D.b.D.", "..x...x.", "b...b..."]
    );
    assert_eq!(
        first_bar("C|", 8, "boom-chuck"),
        ["b.D.b.D.", "..x...x.", "b...b..."]
    );
}

#[test]
fn a_waltz_is_one_strong_and_two_light() {
    // C: "waltz D d d": the bass has the 1, the chords 2 and 3.
    assert_eq!(first_bar("3/4", 6, "waltz"), ["b.D.D.", "..x.x.", "b....."]);
}

#[test]
fn a_jig_goes_in_two() {
    // C: "Jigs: DUD DUD; 9/8: DUD three times": two (three) beats, the hand as its place in the bar says.
    assert_eq!(first_bar("6/8", 6, "jig"), ["b.DbUD", "..x..x", "b..b.."]);
    assert_eq!(
        first_bar("9/8", 9, "slip-jig"),
        ["b.Db.DbUD", "..x..x..x", "b..b..b.."]
    );
}

#[test]
fn a_polka_has_its_chords_on_the_off_beats() {
    // C: the off-beats; the direction by the sheet's "2/4: on-beat eighths down, off-beat up".
    assert_eq!(first_bar("2/4", 4, "polka"), ["bUbU", ".x.x", "b.b."]);
}

#[test]
fn the_hand_moves_as_the_place_in_the_bar_says() {
    // C: "Direction follows the position in the bar, not the count of notes". Strokes that swing come later than they are
    // written, so only even styles are looked at here. The single bars of 6/4 and 2/4 of the one crooked tune go on in the
    // beat of its other bars.
    let mut strokes = 0;
    for (name, tune) in shipped::tunes() {
        let playing = tune.playing();
        for style in [
            "boom-chuck",
            "reel",
            "jig",
            "march",
            "polka",
            "waltz",
            "strum",
            "air",
        ] {
            if (tune.metre, style) == (Metre::new(2, 4), "reel") {
                continue; // it goes in sixteenths
            }
            let score = score(&tune, style);
            for bar in &playing.bars {
                let eighths = bar.length.div_rem(Ticks::of(1, 8)).0;
                let marks = marks(&score.events, Player::Guitar, bar.start, eighths);
                for (i, mark) in (0..).zip(marks.chars()) {
                    let way = match direction_at(tune.metre, bar.offset + Ticks::of(i, 8)) {
                        Direction::Down => 'D',
                        Direction::Up => 'U',
                    };
                    assert!(
                        "b.x".contains(mark) || mark == way,
                        "{name} {style} {marks}"
                    );
                    strokes += usize::from(mark == way);
                }
            }
        }
    }
    assert!(strokes > 10_000, "{strokes}");
}

/// A count-in as it is spoken: the number of the beat in its bar.
fn spoken(tune: &Tune) -> String {
    let count = count_in(tune.metre, tune.first_offset());
    let mut number = 0;
    let words = count.events.iter().map(|event| {
        let first = event.sound == Sound::Click { first: true };
        number = if first { 1 } else { number + 1 };
        number.to_string()
    });
    words.collect::<Vec<_>>().join(" ")
}

#[test]
fn a_pickup_is_counted_in_with_a_full_bar_and_what_is_missing_before_it() {
    let counted = |metre: &str, notes: &str| {
        spoken(&tune(&format!(
            "X:1\nT:a\nM:{metre}\nL:1/8\nK:G\n{notes}\n"
        )))
    };
    // C: "one full bar, then up to the pickup ("1 2 3 4, 1 2 3 *pickup*")".
    assert_eq!(counted("4/4", "D2|G8|G8|"), "1 2 3 4 1 2 3");
    assert_eq!(counted("4/4", "G8|G8|"), "1 2 3 4");
    // C: an eighth before the 1 comes after the last beat; a waltz is counted in three, a jig in two, a slip jig in three.
    assert_eq!(counted("4/4", "D|G8|G8|"), "1 2 3 4 1 2 3 4");
    assert_eq!(counted("3/4", "D2|G6|G6|"), "1 2 3 1 2");
    assert_eq!(counted("6/8", "D|G6|G6|"), "1 2 1 2");
    assert_eq!(counted("6/8", "DEF|G6|G6|"), "1 2 1");
    assert_eq!(counted("9/8", "G9|G9|"), "1 2 3");
    assert_eq!(counted("C|", "D2|G8|G8|"), "1 2 1 2");
}

#[test]
fn after_the_count_the_first_full_bar_comes_where_the_next_1_would() {
    // X: count-in and pickup together are whole bars.
    let mut pickups = 0;
    for (name, tune) in shipped::tunes() {
        let count = count_in(tune.metre, tune.first_offset());
        let playing = tune.playing();
        let first = playing.bars.iter().find(|bar| !bar.pickup).unwrap();
        let (bars, rest) = (count.length + first.start).div_rem(tune.metre.bar());
        assert_eq!(rest, Ticks::ZERO, "{name}");
        assert_eq!(bars, 1 + i64::from(first.start > Ticks::ZERO), "{name}");
        pickups += usize::from(first.start > Ticks::ZERO);
    }
    assert!(pickups > 10, "{pickups}");
}

#[test]
fn the_band_begins_with_the_first_full_bar() {
    let tune = tune("X:1\nT:a\nM:4/4\nL:1/8\nK:G\nDE|\"G\"G8|G8|\n");
    let score = score(&tune, "boom-chuck");
    let first = |player| score.events.iter().find(|e| e.player == player).unwrap().at;
    assert_eq!(first(Player::Melody), Ticks::ZERO);
    assert_eq!(first(Player::Bass), Ticks::QUARTER);
    assert_eq!(first(Player::Drones), Ticks::QUARTER);
    // The chuck of the fourth beat is light.
    let chuck = |at| {
        let mut there = score
            .events
            .iter()
            .filter(|e| e.player == Player::Chop && e.at == at);
        there.next().unwrap().force
    };
    assert!(chuck(Ticks::ZERO) < chuck(Ticks::QUARTER * 2));
}
