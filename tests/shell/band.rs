//! `fourcourse band`: files to play along with.

use std::ffi::OsStr;
use std::fs;
use std::path::Path;

use super::{Ran, run_in};

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
    assert_eq!(ran.page(), "");
    let (rate, bits, frames) = header(&wav);
    assert_eq!((rate, bits), (48_000, 16));
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
    let no_bar = (1, "The tune has no bar 999.\n".to_owned());
    assert_eq!(fails(&["--loop", "1-999"]), no_bar);
    for wrong in [
        ["--tempo", "29"],
        ["--tempo", "301"],
        ["--tempo", "nan"],
        ["--loop", "8-5"],
        ["--loop", "0-2"],
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
