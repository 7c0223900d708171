//! What the band plays keeps its promises for every tune, style, key and ending.

use fourcourse::band::{
    Ending, Event, Human, Player, Score, ScoreOptions, Sound, Style, Touch, Voicings,
};
use fourcourse::chart::{Changes, ChordAt, Playing, Ticks, Tune};
use fourcourse::formats::abc;
use fourcourse::store::shipped;
use fourcourse::theory::{Chord, Key, PitchClass, Symbol};
use proptest::prelude::*;

/// Open courses as MIDI numbers.
const MANDOLIN: &[u8] = &[55, 62, 69, 76];
const GUITAR: &[u8] = &[40, 45, 50, 55, 59, 64];
const BASS: &[u8] = &[28, 33, 38, 43];

/// Strikes of a player: time, delay, course, MIDI number, touch.
fn strikes(events: &[Event], player: Player) -> Vec<(Ticks, f32, u8, u8, Touch)> {
    let strikes = events.iter().filter(|event| event.player == player);
    strikes
        .filter_map(|event| match event.sound {
            Sound::String {
                course,
                midi,
                touch,
                ..
            } => Some((event.at, event.after_ms, course, midi, touch)),
            Sound::Click { .. } => None,
        })
        .collect()
}

/// What is asked of the events of any time through.
fn in_order(events: &[Event], length: Ticks) -> Result<(), String> {
    let moments: Vec<_> = events.iter().map(|e| (e.at, e.after_ms)).collect();
    if !moments.is_sorted() {
        return Err("out of order".into());
    }
    for event in events {
        let last = event.after_ms + Human::MOST_MS;
        let there = event.at >= Ticks::ZERO && event.at < length;
        if !there || event.after_ms < 0.0 || last > 60.0 {
            return Err(format!("outside: {event:?}"));
        }
        if !(event.force > 0.0 && event.force <= 1.0) {
            return Err(format!("no force: {event:?}"));
        }
        let neck = match event.player {
            Player::Melody | Player::Chop | Player::Drones => MANDOLIN,
            Player::Guitar => GUITAR,
            Player::Bass => BASS,
            Player::Click => &[],
        };
        if let Sound::String {
            course,
            midi,
            rings,
            ..
        } = event.sound
        {
            let open = neck.get(usize::from(course));
            let fret = open.and_then(|&open| midi.checked_sub(open));
            if fret.is_none_or(|fret| fret > 20) {
                return Err(format!("off the neck: {event:?}"));
            }
            if rings <= Ticks::ZERO {
                return Err(format!("silent: {event:?}"));
            }
        }
    }
    for player in Player::ALL {
        let mut strikes = strikes(events, player);
        strikes.sort_by(|a, b| (a.0, a.2).cmp(&(b.0, b.2)).then(a.1.total_cmp(&b.1)));
        let twice = strikes.windows(2).find(|pair| {
            let same = (pair[0].0, pair[0].2) == (pair[1].0, pair[1].2);
            same && pair[0].1.total_cmp(&pair[1].1).is_eq()
        });
        if let Some(twice) = twice {
            return Err(format!("{} strikes twice: {twice:?}", player.id()));
        }
    }
    Ok(())
}

fn has(chord: Chord, midi: u8) -> bool {
    let class = PitchClass::new(i32::from(midi));
    let mut tones = chord.tones().map(|(_, name)| name).chain(chord.bass);
    tones.any(|name| name.class() == class)
}

/// The chord that the chart has at a time; the tonic before the first.
fn chord_at(changes: &Changes, key: Key, at: Ticks) -> Option<Chord> {
    match changes.at(at, false).map(|change| change.symbol) {
        Some(Symbol::Chord(chord)) => Some(chord),
        Some(Symbol::NoChord) => None,
        None => Some(key.chords()[0].1),
    }
}

/// Every pitch of bass, guitar and chop belongs to the chord that sounds; but for a bass that walks to the next root: it
/// goes on by no more than a third, from a note of the scale, or by a whole or half step.
fn in_harmony(tune: &Tune, playing: &Playing, score: &Score) -> Result<usize, String> {
    let changes = Changes::of(tune, playing);
    let chops = strikes(&score.events, Player::Chop).len();
    fits(tune, playing, &changes, &score.events, |at| at)?;
    fits(tune, playing, &changes, &score.last, |at| {
        score.in_tune(at, playing)
    })?;
    Ok(chops)
}

/// The same for one time through; `place` says which time of the tune sounds.
fn fits(
    tune: &Tune,
    playing: &Playing,
    changes: &Changes,
    events: &[Event],
    place: impl Fn(Ticks) -> Ticks,
) -> Result<(), String> {
    let keys = tune.keys();
    for player in [Player::Bass, Player::Guitar, Player::Chop] {
        let strikes = strikes(events, player);
        for (i, &(at, _, _, midi, _)) in strikes.iter().enumerate() {
            let at = place(at);
            let chord = chord_at(changes, tune.key, at)
                .ok_or(format!("{} plays over N.C.", player.id()))?;
            if has(chord, midi) {
                continue;
            }
            let key = keys[playing.bars[playing.bar_at(at).unwrap()].written];
            let next = strikes.get(i + 1).map(|next| next.3);
            let in_scale = key
                .scale()
                .iter()
                .any(|n| n.class() == PitchClass::new(midi.into()));
            let walks = player == Player::Bass
                && next.is_some_and(|next| next.abs_diff(midi) <= if in_scale { 4 } else { 2 });
            if !walks {
                let wrong = key.spell_midi(midi.into());
                let bar = &playing.bars[playing.bar_at(at).unwrap()];
                return Err(format!(
                    "{} plays {wrong} over {chord}, then {next:?}, in {bar:?}",
                    player.id()
                ));
            }
        }
    }
    Ok(())
}

/// Each chop is a grip: on neighbouring frets, one note a course, and damped.
fn chops_are_grips(events: &[Event]) -> Result<(), String> {
    let chops = strikes(events, Player::Chop);
    for chop in chops.chunk_by(|a, b| a.0 == b.0) {
        let frets = chop.iter().map(|s| s.3 - MANDOLIN[usize::from(s.2)]);
        let (low, high) = (frets.clone().min().unwrap(), frets.max().unwrap());
        let damped = chop.iter().all(|strike| strike.4 == Touch::Chop);
        if chop.len() < 3 || high - low > 5 || low == 0 || !damped {
            return Err(format!("no chop: {chop:?}"));
        }
    }
    Ok(())
}

/// No bar that has a chord is silent: the bass and the guitar both play in it.
fn every_bar_is_played(
    playing: &Playing,
    changes: &Changes,
    events: &[Event],
) -> Result<(), String> {
    let players = [Player::Bass, Player::Guitar].map(|player| strikes(events, player));
    let sounds = |from, to| {
        let inside = |strikes: &Vec<(Ticks, f32, u8, u8, Touch)>| {
            let next = strikes.partition_point(|strike| strike.0 < from);
            strikes.get(next).is_some_and(|strike| strike.0 < to)
        };
        players.iter().all(inside)
    };
    let first = playing.bars.iter().position(|bar| !bar.pickup).unwrap_or(0);
    for bar in &playing.bars[first..] {
        let chord = changes
            .at(bar.start, false)
            .is_none_or(|c| c.symbol != Symbol::NoChord);
        let sounds = bar.length <= Ticks::ZERO || sounds(bar.start, bar.end());
        if chord && !bar.pickup && !sounds {
            return Err(format!("silent: {bar:?}"));
        }
    }
    Ok(())
}

/// The last bass note is the root of the last chord, or its bass.
fn comes_home(tune: &Tune, playing: &Playing, score: &Score) -> Result<(), String> {
    let changes = Changes::of(tune, playing);
    let Some(Symbol::Chord(chord)) = changes.as_slice().last().map(|change| change.symbol) else {
        return Ok(());
    };
    let bass = strikes(&score.last, Player::Bass);
    let last = bass
        .last()
        .map(|strike| PitchClass::new(i32::from(strike.3)));
    if last == Some(chord.lowest().class()) {
        Ok(())
    } else {
        Err(format!("ends on {last:?} in {chord}"))
    }
}

#[test]
fn shipped_tunes_are_played_right_in_all_styles_and_keys() {
    let mut voicings = Voicings::default();
    let (mut scores, mut chops) = (0, 0);
    for (name, tune) in shipped::tunes() {
        for up in 0..12 {
            let tune = tune.in_key(tune.key.up(up).tonic);
            let playing = tune.playing();
            let changes = Changes::of(&tune, &playing);
            for (style, ending) in Style::all().zip(Ending::ALL.into_iter().cycle()) {
                let options = ScoreOptions { style, ending };
                let score = Score::of(&tune, &playing, &options, &mut voicings);
                let check = || {
                    in_order(&score.events, score.length)?;
                    in_order(&score.last, score.last_length)?;
                    chops_are_grips(&score.events)?;
                    every_bar_is_played(&playing, &changes, &score.events)?;
                    comes_home(&tune, &playing, &score)?;
                    in_harmony(&tune, &playing, &score)
                };
                let key = tune.key;
                chops += check().unwrap_or_else(|why| {
                    panic!("{name} in {key}, {}, {}: {why}", style.id(), ending.id())
                });
                scores += 1;
            }
        }
    }
    assert_eq!(scores, 30 * 12 * 11);
    assert!(chops > 100_000, "{chops}");
}

/// Chords that go round under tunes that have none: triads, sevenths, a slash, a foreign bass, altered ones and N.C.
const ROUND: [&str; 16] = [
    "G", "C", "D7", "G/B", "Am", "Em", "N.C.", "F#m7b5", "B7", "Em", "A7sus4", "D", "G/A", "Caug",
    "Bdim7", "C6",
];

#[test]
fn dance_tunes_under_any_chords_are_played_right() {
    let book = abc::read(include_bytes!("../outside/fixtures/ryans/ryans.abc"));
    let mut voicings = Voicings::default();
    let styles: Vec<_> = Style::all().collect();
    let mut chops = 0;
    for (i, read) in book.tunes.into_iter().enumerate() {
        let mut tune = read.tune;
        for (k, bar) in tune.bars.iter_mut().enumerate() {
            let half = ChordAt {
                at: Ticks(bar.length.0 / 2),
                symbol: ROUND[(k + 5) % 16].parse().unwrap(),
            };
            let symbol = ROUND[k % 16].parse().unwrap();
            let whole = ChordAt {
                at: Ticks::ZERO,
                symbol,
            };
            bar.chords = if k % 3 == 2 {
                vec![whole, half]
            } else {
                vec![whole]
            };
        }
        let playing = tune.playing();
        let options = ScoreOptions {
            style: styles[i % styles.len()],
            ending: Ending::ALL[i % 3],
        };
        let score = Score::of(&tune, &playing, &options, &mut voicings);
        let check = || {
            in_order(&score.events, score.length)?;
            in_order(&score.last, score.last_length)?;
            comes_home(&tune, &playing, &score)?;
            in_harmony(&tune, &playing, &score)
        };
        let style = options.style.id();
        chops += check().unwrap_or_else(|why| panic!("{}, {style}: {why}", tune.title));
    }
    assert!(chops > 20_000, "{chops}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn charts_of_any_shape_are_played_in_order(
        tune in crate::chart::tune(),
        style in 0_usize..11,
        ending in 0_usize..3,
    ) {
        let playing = tune.playing();
        prop_assume!(playing.bars.len() < 500);
        let options = ScoreOptions {
            style: Style::all().nth(style).unwrap(),
            ending: Ending::ALL[ending],
        };
        let score = Score::of(&tune, &playing, &options, &mut Voicings::default());
        prop_assert_eq!(in_order(&score.events, score.length), Ok(()));
        prop_assert_eq!(in_order(&score.last, score.last_length), Ok(()));
        prop_assert!(score.last_length >= score.length);
    }
}
