//! A rendered track looked at as a sound alone: when its onsets come, which chords are heard, and that neither loops nor
//! changes of tempo leave a trace.
#![allow(clippy::unwrap_used)] // a sound that is not as it should be fails the test

use std::sync::Arc;

use fourcourse::band::{
    Band, Command, CountIn, Ending, Event, Player, Score, ScoreOptions, Sound, Style, Touch,
    Voicings, count_in,
};
use fourcourse::chart::{Changes, Tempo, Ticks, Tune};
use fourcourse::formats::abc;
use fourcourse::theory::Symbol;
use realfft::RealFftPlanner;

const RATE: u32 = 48_000;

fn tune(abc: &str) -> Tune {
    abc::read(abc.as_bytes()).tunes.remove(0).tune
}

/// A band that is about to play a tune once, with these players and no unevenness, after its count.
fn band(tune: &Tune, players: &[Player], tempo: Tempo) -> Band {
    let playing = tune.playing();
    let options = ScoreOptions {
        ending: Ending::Plain,
        ..ScoreOptions::fitting(tune)
    };
    let score = Score::of(tune, &playing, &options, &mut Voicings::default());
    let mut band = Band::new(RATE);
    for player in Player::ALL {
        band.apply(Command::Mute(player, !players.contains(&player)));
    }
    band.apply(Command::Score(Arc::new(score)));
    band.apply(Command::Tempo(tempo));
    band.apply(Command::Times(1));
    let (from, count) = ((0, Ticks::ZERO), count_in(tune.metre, tune.first_offset()));
    band.apply(Command::Play { from, count });
    band
}

/// Both channels as one, in seconds from the first frame of the count.
fn listen(band: &mut Band, seconds: f64) -> Vec<f32> {
    let late = band.latency();
    let mut skip = vec![0.0; 2 * late];
    band.fill(&mut skip);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a minute or two"
    )]
    let mut out = vec![0.0; 2 * (seconds * f64::from(RATE)) as usize];
    band.fill(&mut out);
    out.chunks(2)
        .map(|frame| f32::midpoint(frame[0], frame[1]))
        .collect()
}

/// Seconds at which the sound rises to ten times what it was in the 20 ms before, by a plain envelope follower: the
/// loudest sample of each millisecond.
fn onsets(sound: &[f32]) -> Vec<f64> {
    let ms = RATE as usize / 1000;
    let loudest = |sound: &[f32]| sound.iter().fold(0.0_f32, |a, b| a.max(b.abs()));
    let peaks: Vec<f32> = sound.chunks(ms).map(loudest).collect();
    let (mut found, mut next) = (Vec::new(), 0);
    for (i, &peak) in peaks.iter().enumerate() {
        let quiet = peaks[i.saturating_sub(20)..i]
            .iter()
            .copied()
            .fold(0.0, f32::max);
        let wanted = (10.0 * quiet).max(0.002);
        if i >= next && peak > wanted {
            let first = sound[i * ms..]
                .iter()
                .position(|sample| sample.abs() > wanted)
                .unwrap();
            found.push((i * ms + first) as f64 / f64::from(RATE));
            next = i + 50;
        }
    }
    found
}

fn quarters(bpm: f32) -> Tempo {
    let beat = Ticks::QUARTER;
    Tempo { bpm, beat }
}

/// The count of each example of the trade sheet, and when the tune itself begins, in quarters.
///
/// From the sheet, common practice: one full bar, then up to the pickup ("1 2 3 4, 1 2 3 *pickup*").
#[test]
fn the_count_is_a_full_bar_and_the_beats_before_the_pickup() {
    let examples: [(&str, &str, &[f64], f64); 5] = [
        ("4/4", "| A4 A4 |", &[0.0, 1.0, 2.0, 3.0], 4.0),
        (
            "4/4",
            "A2 | A4 A4 |",
            &[0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0],
            7.0,
        ),
        ("3/4", "A2 | A4 A2 |", &[0.0, 1.0, 2.0, 3.0, 4.0], 5.0),
        ("2/4", "A | A2 A2 |", &[0.0, 1.0, 2.0, 3.0], 3.5),
        // A jig is counted in two: a beat is three eighths.
        ("6/8", "A | A3 A3 |", &[0.0, 1.5, 3.0, 4.5], 5.5),
    ];
    for (metre, bars, clicks, begin) in examples {
        for bpm in [47.0, 120.0, 211.0] {
            let tune = tune(&format!("X:1\nT:x\nM:{metre}\nL:1/8\nK:A\n{bars}\n"));
            let mut band = band(&tune, &[Player::Melody], quarters(bpm));
            let beat = 60.0 / f64::from(bpm);
            let heard = onsets(&listen(&mut band, (begin + 0.3) * beat));
            let mut expected: Vec<f64> = clicks.iter().map(|at| at * beat).collect();
            expected.push(begin * beat);
            assert_eq!(
                heard.len(),
                expected.len(),
                "{metre} {bars} {bpm}: {heard:?}"
            );
            for (heard, expected) in heard.iter().zip(&expected) {
                assert!(
                    (heard - expected).abs() < 0.001,
                    "{metre} {bars} {bpm}: {heard} {expected}"
                );
            }
        }
    }
}

/// Every beat of 25 seconds within a millisecond of where it belongs: nothing drifts.
#[test]
fn a_click_track_keeps_its_tempo_to_the_millisecond() {
    for bpm in [30.0, 97.3, 133.3, 300.0] {
        let metre = fourcourse::chart::Metre::COMMON;
        let mut band = Band::new(RATE);
        band.apply(Command::Score(Arc::new(Score::metronome(metre))));
        band.apply(Command::Tempo(quarters(bpm)));
        band.apply(Command::Mute(Player::Click, false));
        let (from, count) = ((0, Ticks::ZERO), CountIn::default());
        band.apply(Command::Play { from, count });
        let heard = onsets(&listen(&mut band, 25.0));
        let beat = 60.0 / f64::from(bpm);
        assert!(heard.len() as f64 >= 25.0 / beat - 1.0, "{bpm}");
        for (i, heard) in heard.iter().enumerate() {
            assert!(
                (heard - i as f64 * beat).abs() < 0.001,
                "{bpm}: {i} at {heard}"
            );
        }
    }
}

/// A stroke of the guitar on each quarter of two bars, ringing for two quarters.
fn strokes(quarters: i64) -> Vec<Event> {
    let stroke = |i: i64| Event {
        at: Ticks::QUARTER * i,
        after_ms: 0.0,
        player: Player::Guitar,
        force: 0.7,
        sound: Sound::String {
            course: u8::try_from(i % 4).unwrap(),
            midi: 45 + u8::try_from(i % 8).unwrap(),
            rings: Ticks::QUARTER * 2,
            touch: Touch::Ring,
        },
    };
    (0..quarters).map(stroke).collect()
}

fn score(events: Vec<Event>, length: Ticks) -> Score {
    Score {
        last: events.clone(),
        events,
        length,
        last_length: length,
        ..Score::default()
    }
}

fn playing(score: Score, bpm: f32) -> Band {
    let mut band = Band::new(RATE);
    band.apply(Command::Score(Arc::new(score)));
    band.apply(Command::Tempo(quarters(bpm)));
    let (from, count) = ((0, Ticks::ZERO), CountIn::default());
    band.apply(Command::Play { from, count });
    band
}

/// A loop is heard, to the bit, as the same bars written out one after the other.
#[test]
fn a_loop_joins_as_if_it_were_written_out() {
    let bars = Ticks::WHOLE * 2;
    // At 120 a quarter is a whole number of frames, so that both have each stroke at the same frame.
    let mut written = playing(score(strokes(48), bars * 6), 120.0);
    let mut looped = playing(score(strokes(48), bars * 6), 120.0);
    looped.apply(Command::Loop(Some((Ticks::ZERO, bars))));
    assert_eq!(listen(&mut written, 23.0), listen(&mut looped, 23.0));
}

/// While strings ring, a change of tempo changes nothing that is heard, to the bit.
#[test]
fn a_change_of_tempo_leaves_no_trace_in_what_rings() {
    let chord = || {
        let mut chord = strokes(4);
        for event in &mut chord {
            event.at = Ticks::ZERO;
            if let Sound::String { rings, .. } = &mut event.sound {
                *rings = Ticks::WHOLE * 400;
            }
        }
        playing(score(chord, Ticks::WHOLE * 500), 120.0)
    };
    let (mut steady, mut changing) = (chord(), chord());
    let mut heard = (Vec::new(), Vec::new());
    for i in 0..200_u16 {
        changing.apply(Command::Tempo(quarters(30.0 + f32::from(i * 37 % 270))));
        for (band, heard) in [(&mut steady, &mut heard.0), (&mut changing, &mut heard.1)] {
            let mut block = [0.0; 512];
            band.fill(&mut block);
            heard.extend(block);
        }
    }
    assert!(heard.0 == heard.1);
}

/// How loud each of the twelve notes is from one second to another, between 60 and 1,000 Hz: where the fundamentals lie.
/// With the overtones above, or with small values made larger (a square root), the third of a chord and the third partial
/// of that, which is the seventh of the chord, outweigh its root: C is heard as E minor. A window of a third of a second
/// tells the notes of a bass apart.
fn chroma(sound: &[f32], from: f64, to: f64) -> [f64; 12] {
    const WINDOW: usize = 16_384;
    let fft = RealFftPlanner::<f32>::new().plan_fft_forward(WINDOW);
    let mut chroma = [0.0; 12];
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "within the sound"
    )]
    let (from, to) = (
        (from * f64::from(RATE)) as usize,
        (to * f64::from(RATE)) as usize,
    );
    for window in sound[from..to.min(sound.len())]
        .windows(WINDOW)
        .step_by(WINDOW / 4)
    {
        let mut input: Vec<f32> = window.to_vec();
        for (i, sample) in input.iter_mut().enumerate() {
            let turn = std::f32::consts::TAU * i as f32 / WINDOW as f32;
            *sample *= 0.5 - 0.5 * turn.cos();
        }
        let mut output = fft.make_output_vec();
        fft.process(&mut input, &mut output).unwrap();
        for (bin, value) in output.iter().enumerate().skip(1) {
            let hz = bin as f64 * f64::from(RATE) / WINDOW as f64;
            if (60.0..1000.0).contains(&hz) {
                let note = 69.0 + 12.0 * (hz / 440.0).log2();
                #[expect(
                    clippy::cast_possible_truncation,
                    clippy::cast_sign_loss,
                    reason = "a note number"
                )]
                let class = note.round() as usize % 12;
                chroma[class] += f64::from(value.norm());
            }
        }
    }
    chroma
}

/// The triad that fits best: root from C, and whether it is minor. Blind to the chart: templates of three notes
/// (T. Fujishima, Realtime chord recognition of musical sound, 1999).
fn triad(chroma: [f64; 12]) -> (usize, bool) {
    let mean = chroma.iter().sum::<f64>() / 12.0;
    let fit = |(root, minor): (usize, bool)| {
        let third = if minor { 3 } else { 4 };
        [0, third, 7]
            .iter()
            .map(|up| chroma[(root + up) % 12] - mean)
            .sum::<f64>()
    };
    let all = (0..12).flat_map(|root| [(root, false), (root, true)]);
    all.max_by(|a, b| fit(*a).total_cmp(&fit(*b))).unwrap()
}

/// From the sound alone, a chord analysis finds the chords of the chart at their times.
#[test]
fn the_chords_of_the_chart_are_heard_at_their_times() {
    let (two, three, jig) = (Ticks::of(1, 2), Ticks::QUARTER, Ticks::of(3, 8));
    let all = [
        (
            include_str!("../../songbook/millrace-reel.abc"),
            "A",
            66.0,
            two,
        ),
        (
            include_str!("../../songbook/frost-in-the-sluice.abc"),
            "Bb",
            72.0,
            two,
        ),
        (
            include_str!("../../songbook/kettle-before-noon.abc"),
            "G",
            96.0,
            jig,
        ),
        (
            include_str!("../../songbook/kettle-before-noon.abc"),
            "E",
            80.0,
            jig,
        ),
        (
            include_str!("../../songbook/lamps-along-the-tailrace.abc"),
            "C",
            132.0,
            three,
        ),
        (
            include_str!("../../songbook/the-ferrymans-good-coat.abc"),
            "F",
            110.0,
            three,
        ),
        (
            include_str!("../../songbook/nobody-told-the-goose.abc"),
            "C",
            80.0,
            two,
        ),
        (
            include_str!("../../songbook/the-waters-at-the-second-stone.abc"),
            "D",
            80.0,
            two,
        ),
    ];
    let (mut all_found, mut all_asked) = (0, 0);
    for (abc, key, bpm, beat) in all {
        let tune = tune(abc);
        let tune = tune.in_key(key.parse().unwrap());
        let playing = tune.playing();
        let tempo = Tempo { bpm, beat };
        let players = [Player::Melody, Player::Chop, Player::Guitar, Player::Bass];
        let mut band = band(&tune, &players, tempo);
        let begin = tempo.seconds(count_in(tune.metre, tune.first_offset()).length);
        // The first half minute is as good as all of it.
        let sound = listen(&mut band, begin + tempo.seconds(playing.length).min(30.0));
        let changes = Changes::of(&tune, &playing);
        let changes = changes.as_slice();
        let (mut found, mut asked) = (0, 0);
        for (i, change) in changes.iter().enumerate() {
            let end = changes.get(i + 1).map_or(playing.length, |next| next.at);
            let Symbol::Chord(chord) = change.symbol else {
                continue;
            };
            let (from, to) = (begin + tempo.seconds(change.at), begin + tempo.seconds(end));
            // What is shorter can hardly be told from its neighbours, whose strings ring on.
            if to - from < 0.9 || to > sound.len() as f64 / f64::from(RATE) {
                continue;
            }
            let wanted = usize::try_from(chord.root.class().semitones()).unwrap();
            let heard = triad(chroma(&sound, from, to));
            asked += 1;
            found += usize::from(heard == (wanted, chord.quality.is_minor()));
        }
        println!("{} in {key}: {found} of {asked}", tune.title);
        assert!(asked >= 8, "{}: {asked}", tune.title);
        // A tune whose melody leans on the third and the fifth may be heard as the minor chord on the third.
        assert!(
            found * 100 >= asked * 80,
            "{} in {key}: {found} of {asked}",
            tune.title
        );
        (all_found, all_asked) = (all_found + found, all_asked + asked);
    }
    assert!(
        all_found * 100 >= all_asked * 95,
        "{all_found} of {all_asked}"
    );
}

/// The styles are all there to be heard: a track in each has its onsets on the grid of sixteenths or swung eighths.
#[test]
fn every_style_sounds() {
    let tune = tune(include_str!("../../songbook/millrace-reel.abc"));
    for style in Style::all() {
        let playing = tune.playing();
        let options = ScoreOptions {
            style,
            ending: Ending::Plain,
        };
        let score = Score::of(&tune, &playing, &options, &mut Voicings::default());
        let sound = listen(&mut self::playing(score, 120.0), 4.0);
        let peak = sound.iter().fold(0.0_f32, |a, b| a.max(b.abs()));
        assert!(peak > 0.05 && peak <= 1.0, "{}: {peak}", style.id());
    }
}
