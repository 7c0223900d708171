//! The app as a player meets it, drawn in software with no display: how soon the first frame is there with 10,000 tunes,
//! what memory that takes, and what a chord change costs on a large phone.
//!
//! Wanted: the first frame in 400 ms, a chord change in one frame of 8 ms, less than 120 MB.

#![allow(clippy::unwrap_used, missing_docs)] // a measurement ends where it cannot be made

use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

use criterion::Criterion;
use fourcourse::audio::Sound;
use fourcourse::bind::StandGlobal;
use fourcourse::bind::picture::Sitting;
use fourcourse::desk::{Ask, Desk, Room, Settings};
use fourcourse::start;
use fourcourse::store::{Memory, Store, shipped};
use slint::{ComponentHandle, SharedPixelBuffer};

#[path = "many_tunes.rs"]
mod many_tunes;

/// The program runs itself once more with this set to a data folder: then it only starts and draws one frame.
const FOLDER: &str = "FOURCOURSE_BENCH_FOLDER";

/// A large phone: 1080x2400 pixels, three to a point.
const PHONE: (u32, u32) = (360, 800);

fn main() {
    match std::env::var_os(FOLDER) {
        Some(folder) => first_frame(Path::new(&folder)),
        None => {
            let mut criterion = Criterion::default().configure_from_args().sample_size(50);
            cold_start();
            redraws(&mut criterion);
            criterion.final_summary();
        }
    }
}

fn first_frame(folder: &Path) {
    let desk = start::desk(
        Some(folder.to_owned()),
        start::silent_players(),
        chrono::Utc::now(),
    )
    .unwrap();
    let sitting = Sitting::new(Box::new(desk), PHONE, 3.0, Duration::ZERO).unwrap();
    let (pixels, ..) = sitting.pixels();
    assert!(pixels.iter().any(|&byte| byte != pixels[0]));
    println!("{}", peak_memory().unwrap_or(0));
}

/// The most memory that this process has held, in kB, where the system tells (Linux: `VmHWM` in proc(5)).
fn peak_memory() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    line.split_ascii_whitespace().nth(1)?.parse().ok()
}

/// A whole process each time, from its start to its end: what it opens is in the system's cache, as on a second evening.
fn cold_start() {
    let folder = tempfile::tempdir().unwrap();
    for count in [0, 10_000] {
        let mut store = Store::open(folder.path(), chrono::Utc::now())
            .unwrap()
            .store;
        store.add(&many_tunes::many_tunes(count)).unwrap();
        drop(store);
        let run = || {
            let started = Instant::now();
            let program = std::env::current_exe().unwrap();
            let ran = Command::new(program)
                .env(FOLDER, folder.path())
                .output()
                .unwrap();
            assert!(
                ran.status.success(),
                "{}",
                String::from_utf8_lossy(&ran.stderr)
            );
            let memory: u64 = String::from_utf8_lossy(&ran.stdout).trim().parse().unwrap();
            (started.elapsed(), memory)
        };
        let mut runs: Vec<_> = (0..11).map(|_| run()).collect();
        runs.sort();
        let ((least, _), (middle, memory), (most, _)) = (runs[0], runs[5], runs[10]);
        println!(
            "start to first frame, {count} tunes added: {} ms ({} to {}), {} MB at most",
            middle.as_millis(),
            least.as_millis(),
            most.as_millis(),
            memory / 1000
        );
    }
}

fn redraws(c: &mut Criterion) {
    let tunes = shipped::tunes().into_iter().map(|(_, tune)| tune).collect();
    let mut desk = Desk::new(
        Box::new(Memory::new(tunes)),
        Box::new(Sound::new(Duration::ZERO)),
        Settings::default(),
        None,
    );
    let first = desk.songbook().rows[0].id;
    desk.ask(Ask::Open(first), Duration::ZERO);
    desk.ask(Ask::Go(Room::Stand), Duration::ZERO);
    // Without an end, so that each next bar is one.
    desk.ask(Ask::Times(0), Duration::ZERO);
    let sitting = Sitting::new(Box::new(desk), PHONE, 3.0, Duration::ZERO).unwrap();
    let stand = sitting.interface().app().global::<StandGlobal<'_>>();
    let mut pixels = SharedPixelBuffer::new(PHONE.0 * 3, PHONE.1 * 3);
    c.bench_function("the Stand at 1080x2400: all of it", |b| {
        b.iter(|| sitting.pixels())
    });
    sitting.redraw(&mut pixels);
    c.bench_function("the Stand at 1080x2400: the next bar", |b| {
        b.iter(|| {
            stand.invoke_next_bar();
            sitting.interface().work_off();
            sitting.redraw(&mut pixels);
        });
    });
    c.bench_function("the Stand at 1080x2400: another key", |b| {
        b.iter(|| {
            stand.invoke_key_up(1);
            sitting.interface().work_off();
            sitting.redraw(&mut pixels);
        });
    });
}
