//! What only a build with the window can do.

use std::fs;

use super::{finish, program, run_in};

/// Width and height of a PNG file (PNG specification, third edition, 11.2.1: bytes 16 to 23).
fn size(png: &[u8]) -> (u32, u32) {
    assert_eq!(png[..8], *b"\x89PNG\r\n\x1a\n");
    let side = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
    (side(16), side(20))
}

#[test]
fn a_picture_of_any_view_needs_no_display() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("picture.png");
    let draw = |args: &[&str]| {
        let mut command = program(folder.path());
        command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
        let ran = finish(command.arg("picture").args(args).arg("--out").arg(&out));
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{args:?}");
        fs::read(&out).unwrap()
    };
    let small = ["--size", "360x640", "--density", "1"];
    let stand = draw(&[&["stand", "millrace reel"][..], &small].concat());
    assert_eq!(size(&stand), (360, 640));
    // Every option is seen.
    for option in [
        ["--key", "Bb"],
        ["--bar", "4"],
        ["--time", "2"],
        ["--theme", "sun"],
        ["--instrument", "guitar"],
        ["--capo", "2"],
        ["--names", "numbers"],
    ] {
        let other = draw(&[&["stand", "millrace reel"][..], &small, &option].concat());
        assert!(other != stand, "{option:?}");
    }
    let porch = draw(&[&["porch", "millrace reel"][..], &small].concat());
    for option in [
        &["--drones", "plain"][..],
        &["--double-stops"],
        &["--staff"],
        &["--fingers"],
    ] {
        let other = draw(&[&["porch", "millrace reel"][..], &small, option].concat());
        assert!(other != porch, "{option:?}");
    }
    assert_eq!(size(&draw(&["songbook", "--density", "2"])), (824, 1830));
    let called = draw(&[&["called", "millrace reel"][..], &small].concat());
    let in_key = draw(&[&["called", "millrace reel", "--key", "Em"][..], &small].concat());
    assert!(called != stand && called != in_key);
    assert_eq!(size(&draw(&["settings", "--size", "800x360"])), (1600, 720));
    let circle = draw(&[&["circle", "millrace reel"][..], &small].concat());
    let tonight = draw(&[&["tonight"][..], &small].concat());
    assert_eq!((size(&circle), size(&tonight)), ((360, 640), (360, 640)));
    assert!(circle != tonight);
}

#[test]
fn a_picture_changes_nothing_that_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("picture.png");
    let args = [
        "picture",
        "settings",
        "--theme",
        "sun",
        "--language",
        "de",
        "--out",
    ];
    let args = args.map(std::ffi::OsStr::new).into_iter();
    run_in(folder.path(), args.chain([out.as_os_str()])).page();
    let opened = fourcourse::store::Store::open(folder.path(), chrono::DateTime::UNIX_EPOCH);
    assert_eq!(opened.unwrap().store.settings(), None);
}

#[test]
fn a_bar_that_is_not_there_is_said_so() {
    let folder = tempfile::tempdir().unwrap();
    let args = [
        "picture",
        "stand",
        "millrace reel",
        "--bar",
        "999",
        "--out",
        "x.png",
    ];
    let ran = run_in(folder.path(), args);
    assert_eq!(
        (ran.code, ran.err.as_str()),
        (1, "The tune has no bar 999; it has 32.\n")
    );
}

#[cfg(target_os = "linux")]
#[test]
fn without_a_display_the_app_says_so_and_points_at_pictures() {
    let folder = tempfile::tempdir().unwrap();
    let mut command = program(folder.path());
    for name in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
        command.env_remove(name);
    }
    let ran = finish(&mut command);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
    assert!(ran.err.contains("fourcourse picture"), "{}", ran.err);
}
