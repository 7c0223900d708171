//! `fourcourse band`: files to play along with.

use std::ffi::OsStr;
use std::fs;
use std::path::Path;

use super::{Ran, program, run_in};

/// A loop of two bars is enough to look at a file, and quick.
const SHORT: [&str; 6] = ["band", "millrace reel", "--loop", "1-2", "--times", "1"];

fn make(folder: &Path, name: &str, more: &[&str]) -> (Ran, Vec<u8>) {
    let out = folder.join(name);
    let args = SHORT.iter().chain(more).map(OsStr::new);
    let ran = run_in(folder, args.chain([OsStr::new("--out"), out.as_os_str()]));
    (ran, fs::read(&out).unwrap_or_default())
}

/// Frames a second, bits and format number (1 is whole numbers, 3 floating point) as the header says them, and frames.
/// After the RIFF form as Microsoft and IBM published it in 1991; hound writes the extensible header of 1999 for floats.
fn header(wav: &[u8]) -> (u32, u16, usize) {
    assert_eq!((&wav[..4], &wav[8..16]), (&b"RIFF"[..], &b"WAVEfmt "[..]));
    let two = |at: usize| u16::from_le_bytes([wav[at], wav[at + 1]]);
    let four = |at: usize| u32::from_le_bytes(wav[at..at + 4].try_into().unwrap());
    let (channels, rate, bits) = (two(22), four(24), two(34));
    assert_eq!(channels, 2);
    let data = 20 + four(16) as usize;
    assert_eq!(&wav[data..data + 4], b"data");
    let bytes = four(data + 4) as usize;
    assert_eq!(wav.len(), data + 8 + bytes);
    (rate, bits, bytes / usize::from(bits / 4))
}

#[test]
fn a_track_is_a_wav_file_of_the_wanted_kind() {
    let folder = tempfile::tempdir().unwrap();
    let (ran, wav) = make(folder.path(), "a.wav", &[]);
    let (rate, bits, frames) = header(&wav);
    assert_eq!((rate, bits), (48_000, 16));
    // What was made, in a line.
    let out = folder.path().join("a.wav");
    let seconds = frames.div_ceil(24_000) / 2;
    let line = format!(
        "Millrace Reel, A, reel, half note = 72, bars 1 to 2 once, 0:0{seconds}, {}\n",
        out.display()
    );
    assert_eq!(ran.page(), line);
    // Two bars and a bar of count, at 72 half notes a minute: 5 s. Then the sound fades.
    assert!((5 * 48_000..10 * 48_000).contains(&frames), "{frames}");
    let (_, wav) = make(folder.path(), "b.wav", &["--rate", "44100", "--float"]);
    let (rate, bits, frames) = header(&wav);
    assert_eq!((rate, bits), (44_100, 32));
    assert!((5 * 44_100..10 * 44_100).contains(&frames), "{frames}");
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_one_others() {
    let folder = tempfile::tempdir().unwrap();
    let make = |name, more: &[&str]| make(folder.path(), name, more).1;
    let first = make("a.wav", &["--seed", "7"]);
    assert!(first == make("b.wav", &["--seed", "7"]));
    for other in [
        &["--seed", "8"][..],
        &["--exact"],
        &["--key", "G"],
        &["--tempo", "80"],
        &["--style", "polka"],
        &["--mute", "melody"],
        &["--only", "bass"],
        &["--with", "click"],
    ] {
        let other_file = make("c.wav", other);
        assert!(!other_file.is_empty() && other_file != first, "{other:?}");
    }
}

#[test]
fn a_file_is_there_whole_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let names = || {
        let files = fs::read_dir(folder.path().join("tracks")).unwrap();
        let mut names: Vec<_> = files.map(|file| file.unwrap().file_name()).collect();
        names.sort();
        names
    };
    fs::create_dir(folder.path().join("tracks")).unwrap();
    // A folder of the name that is wanted is in the way, but only when the file is whole.
    fs::create_dir_all(folder.path().join("tracks/a.wav/in the way")).unwrap();
    let (ran, _) = make(folder.path(), "tracks/a.wav", &[]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert!(ran.err.contains("cannot be written"), "{}", ran.err);
    assert_eq!(names(), ["a.wav"]);
    // What was there before is replaced.
    fs::write(folder.path().join("tracks/b.wav"), "older").unwrap();
    let (_, wav) = make(folder.path(), "tracks/b.wav", &[]);
    header(&wav);
    assert_eq!(names(), ["a.wav", "b.wav"]);
}

#[test]
fn what_cannot_be_played_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let fails = |args: &[&str]| {
        let args = ["band", "millrace reel", "--out", "never.wav"]
            .iter()
            .chain(args);
        let ran = run_in(folder.path(), args);
        assert_eq!(ran.out, "");
        (ran.code, ran.err)
    };
    let outside = |bar: usize| {
        let has = "As it is played, repeats counted, the tune has bars 1 to 32.";
        let sentence = format!("There is no bar {bar} to play again and again. {has}\n");
        (1, sentence)
    };
    assert_eq!(fails(&["--loop", "1-999"]), outside(999));
    assert_eq!(fails(&["--loop", "0-4"]), outside(0));
    let backwards =
        "Bar 8 comes after bar 5. The tune has bars 1 to 32: say the first bar first.\n";
    assert_eq!(fails(&["--loop", "8-5"]), (1, backwards.to_owned()));
    for wrong in [
        ["--tempo", "29"],
        ["--tempo", "301"],
        ["--tempo", "nan"],
        ["--loop", "five"],
        ["--times", "0"],
        ["--rate", "8000"],
        ["--style", "kazoo"],
        ["--mute", "kazoo"],
    ] {
        assert_eq!(fails(&wrong).0, 2, "{wrong:?}");
    }
    let long = fails(&["--times", "100", "--tempo", "30"]);
    assert_eq!(long.0, 1);
    assert!(long.1.contains("three hours"), "{}", long.1);
    assert!(!Path::new("never.wav").exists());
}

#[test]
fn a_tune_keeps_its_mode_and_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let (ran, wav) = make(folder.path(), "a.wav", &["--key", "Am"]);
    assert_eq!(ran.code, 0);
    assert_eq!(ran.err, "A tune keeps its mode: this is A, not Am.\n");
    assert!(wav == make(folder.path(), "b.wav", &["--key", "A"]).1);
}

#[test]
fn tracks_that_are_made_at_the_same_time_do_not_get_in_each_others_way() {
    let folder = tempfile::tempdir().unwrap();
    // Nobody has opened this songbook before, so that one of them makes it.
    let bytes = std::thread::scope(|scope| {
        let making: Vec<_> = (0..6)
            .map(|number| {
                let folder = folder.path();
                scope.spawn(move || make(folder, &format!("{number}.wav"), &["--only", "bass"]))
            })
            .collect();
        let made = making.into_iter().map(|making| making.join().unwrap());
        made.map(|(ran, wav)| {
            assert_eq!((ran.code, ran.err.as_str()), (0, ""));
            wav
        })
        .collect::<Vec<_>>()
    });
    assert!(bytes.iter().all(|wav| *wav == bytes[0]));
}

#[cfg(unix)]
mod unix {
    use std::io::Read;
    use std::os::unix::fs::{FileTypeExt, symlink};
    use std::process::{Command, Stdio};
    use std::time::Duration;

    use super::*;

    #[test]
    fn a_link_is_written_through() {
        let folder = tempfile::tempdir().unwrap();
        let link = folder.path().join("link.wav");
        symlink("far.wav", &link).unwrap();
        let (_, wav) = make(folder.path(), "link.wav", &[]);
        header(&wav);
        assert!(link.is_symlink());
        assert!(fs::read(folder.path().join("far.wav")).unwrap() == wav);
    }

    #[test]
    fn a_pipe_is_written_through() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe.wav");
        let made = Command::new("mkfifo").arg(&pipe).status().unwrap();
        assert!(made.success());
        let (_, wav) = make(folder.path(), "file.wav", &[]);
        let reader = std::thread::spawn({
            let pipe = pipe.clone();
            move || fs::read(pipe).unwrap()
        });
        let out = pipe.as_os_str();
        let args = SHORT
            .iter()
            .map(OsStr::new)
            .chain([OsStr::new("--out"), out]);
        let ran = run_in(folder.path(), args);
        // The line goes where it cannot get into the sound.
        assert_eq!((ran.code, ran.out.as_str()), (0, ""));
        assert!(ran.err.contains("half note = 72"), "{}", ran.err);
        assert!(reader.join().unwrap() == wav);
        assert!(fs::metadata(&pipe).unwrap().file_type().is_fifo());
    }

    #[test]
    fn an_interrupted_command_leaves_nothing_behind() {
        for signal in ["INT", "TERM"] {
            let folder = tempfile::tempdir().unwrap();
            let tracks = folder.path().join("tracks");
            fs::create_dir(&tracks).unwrap();
            let mut command = program(folder.path());
            command.args(["band", "millrace reel", "--times", "40", "--out"]);
            command.arg(tracks.join("a.wav"));
            let mut child = command
                .stdout(Stdio::null())
                .stderr(Stdio::piped())
                .spawn()
                .unwrap();
            // As soon as something is there, it is being written.
            while fs::read_dir(&tracks).unwrap().next().is_none() {
                std::thread::sleep(Duration::from_millis(5));
            }
            let killed = Command::new("kill")
                .args(["-s", signal, &child.id().to_string()])
                .status();
            assert!(killed.unwrap().success());
            let status = child.wait().unwrap();
            assert_eq!(status.code(), Some(130), "{signal}");
            let mut err = String::new();
            child.stderr.unwrap().read_to_string(&mut err).unwrap();
            assert_eq!(err, "");
            assert_eq!(fs::read_dir(&tracks).unwrap().count(), 0, "{signal}");
        }
    }
}

/// Integrated loudness in LUFS after ITU-R BS.1770 by a general library, and the loudest sample, of a file of floats.
fn loudness(wav: &[u8]) -> (f64, f32) {
    let (rate, _, frames) = header(wav);
    let data = &wav[wav.len() - 8 * frames..];
    let samples = data
        .as_chunks::<4>()
        .0
        .iter()
        .map(|bytes| f32::from_le_bytes(*bytes));
    let samples: Vec<f32> = samples.collect();
    let mut meter = ebur128::EbuR128::new(2, rate, ebur128::Mode::I).unwrap();
    meter.add_frames_f32(&samples).unwrap();
    let peak = samples
        .iter()
        .fold(0.0_f32, |peak, sample| peak.max(sample.abs()));
    (meter.loudness_global().unwrap(), peak)
}

#[test]
fn every_track_is_as_loud_as_the_trade_asks_whatever_it_holds() {
    let folder = tempfile::tempdir().unwrap();
    for more in [
        &["--tempo", "30", "--style", "air"][..],
        &["--tempo", "300", "--style", "swing"],
        &["--only", "melody", "--tempo", "60"],
        &["--only", "bass", "--tempo", "30"],
        &["--only", "drones", "--tempo", "110"],
        &["--only", "click", "--tempo", "180"],
        &["--only", "guitar", "--only", "chop", "--style", "waltz"],
        &["--with", "click", "--with", "drones"],
    ] {
        let more = [more, &["--float", "--times", "2"]].concat();
        // The loop is there already; a second one would be an error.
        let args: Vec<&str> = SHORT[..4].iter().chain(&more).copied().collect();
        let out = folder.path().join("a.wav");
        let args = args.iter().map(OsStr::new);
        let ran = run_in(
            folder.path(),
            args.chain([OsStr::new("--out"), out.as_os_str()]),
        );
        assert_eq!(ran.code, 0, "{}", ran.err);
        let (lufs, peak) = loudness(&fs::read(&out).unwrap());
        println!("{}: {lufs:.1} LUFS, {peak:.2}", ran.out.trim());
        // Clicks alone are at the ceiling before they are as loud as that.
        let near = if more.contains(&"click") && more.contains(&"--only") {
            2.0
        } else {
            1.0
        };
        assert!(
            (lufs + 16.0).abs() < near && peak < 0.8913,
            "{}: {lufs}",
            ran.out
        );
    }
}
