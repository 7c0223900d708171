//! The songbook on disk under damage, sudden death and a full disk.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use fourcourse::chart::Tune;
use fourcourse::desk::Songbook;
use fourcourse::store::{Store, shipped};

use super::store::{file, now, open};
use super::store_tunes::{everything, tune};

/// A generator with a seed, so that a failure can be had again (Knuth's MMIX constants).
struct Random(u64);

impl Random {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % end
    }
}

/// A songbook of two sittings, and what is in it by title.
fn songbook(folder: &Path) -> Vec<Tune> {
    let mut tunes: Vec<Tune> = (0..30)
        .map(|i| tune(&format!("Tune {i:02}"), i, 4 + i % 9))
        .collect();
    tunes.push(everything());
    open(folder).store.add(&tunes[..20]).unwrap();
    open(folder).store.add(&tunes[20..]).unwrap();
    tunes.sort_by(|a, b| a.title.cmp(&b.title));
    tunes
}

/// Opens a damaged file: either all is there, or the file stands aside to the last byte and a new one is begun with the
/// tunes that are still sound: their number is given. A tune may be listed and unreadable, but never be another, and no
/// tune is missing.
fn check(damaged: &[u8], tunes: &[Tune], what: &str) -> (&'static str, usize) {
    let folder = tempfile::tempdir().unwrap();
    fs::write(file(folder.path()), damaged).unwrap();
    let opened = Store::open(folder.path(), now()).unwrap_or_else(|e| panic!("{what}: {e}"));
    if let Some(aside) = opened.set_aside {
        assert!(
            fs::read(&aside.path).unwrap() == damaged,
            "{what}: not whole"
        );
        assert!(opened.new && !aside.newer, "{what}");
        let rescued = opened.store.entries();
        assert_eq!(aside.rescued, rescued.len(), "{what}");
        for entry in rescued {
            let found = opened.store.tune(entry.id);
            assert!(
                tunes.iter().any(|tune| found.as_ref() == Some(tune)),
                "{what}: {:?} is another one",
                entry.titles
            );
        }
        return ("aside", rescued.len());
    }
    let mut entries: Vec<_> = opened.store.entries().iter().collect();
    entries.sort_by(|a, b| a.titles.cmp(&b.titles));
    let listed: Vec<_> = entries.iter().map(|entry| &entry.titles[0]).collect();
    let wanted: Vec<_> = tunes.iter().map(|tune| &tune.title).collect();
    assert_eq!(listed, wanted, "{what}");
    let mut lost = false;
    for (entry, tune) in entries.into_iter().zip(tunes) {
        match opened.store.tune(entry.id) {
            Some(found) => assert!(found == *tune, "{what}: another {}", tune.title),
            None => lost = true,
        }
    }
    (if lost { "some" } else { "all" }, tunes.len())
}

#[test]
fn a_flipped_bit_anywhere_loses_one_tune_at_most_and_nothing_in_silence() {
    let folder = tempfile::tempdir().unwrap();
    let tunes = songbook(folder.path());
    let sound = fs::read(file(folder.path())).unwrap();
    assert_eq!(check(&sound, &tunes, "sound").0, "all");
    let mut random = Random(20);
    // Every byte of the header's first fields, and a few places on every page.
    let header = (0..64).map(|at| (at, at % 8));
    let pages = (0..sound.len() / 4096).flat_map(|page| [page; 3]);
    let places = pages.map(|page| (page * 4096 + random.below(4096), random.below(8)));
    let mut seen = std::collections::BTreeMap::new();
    for (at, bit) in header.chain(places) {
        let mut damaged = sound.clone();
        damaged[at] ^= 1 << bit;
        let (outcome, sound) = check(&damaged, &tunes, &format!("byte {at} bit {bit}"));
        assert!(
            sound + 1 >= tunes.len(),
            "byte {at} bit {bit}: {sound} tunes"
        );
        *seen.entry(outcome).or_insert(0) += 1;
    }
    // Damage is noticed, and a page that holds nothing does no harm.
    assert!(seen["aside"] > 20 && seen["all"] > 20, "{seen:?}");
}

#[test]
fn a_block_of_zeros_or_noise_loses_nothing_in_silence() {
    let folder = tempfile::tempdir().unwrap();
    let tunes = songbook(folder.path());
    let sound = fs::read(file(folder.path())).unwrap();
    let mut random = Random(21);
    for round in 0..60 {
        let mut damaged = sound.clone();
        let start = random.below(damaged.len());
        let end = (start + 1 + random.below(6_000)).min(damaged.len());
        let noise = round % 2 == 0;
        for byte in &mut damaged[start..end] {
            *byte = if noise {
                u8::try_from(random.below(256)).unwrap()
            } else {
                0
            };
        }
        check(&damaged, &tunes, &format!("{start}..{end}, noise: {noise}"));
    }
}

#[test]
fn a_file_cut_short_or_grown_is_noticed() {
    let folder = tempfile::tempdir().unwrap();
    let tunes = songbook(folder.path());
    let sound = fs::read(file(folder.path())).unwrap();
    let mut random = Random(22);
    let pages = (1..sound.len() / 4096).map(|page| page * 4096);
    let places = (0..20).map(|_| 1 + random.below(sound.len() - 1));
    for length in pages.chain(places).chain([1, 63, 64, 320, 4095]) {
        let (outcome, _) = check(&sound[..length], &tunes, &format!("cut at {length}"));
        assert_eq!(outcome, "aside", "cut at {length}");
    }
    for more in [1, 4096, 100_000] {
        let mut grown = sound.clone();
        grown.resize(sound.len() + more, 0);
        check(&grown, &tunes, &format!("grown by {more}"));
    }
}

#[test]
fn shipped_tunes_from_a_damaged_songbook_do_not_come_twice() {
    let folder = tempfile::tempdir().unwrap();
    let own = tune("Own", 3, 8);
    {
        let mut store = open(folder.path()).store;
        store.restore(&shipped::tunes()).unwrap();
        store.add(std::slice::from_ref(&own)).unwrap();
    }
    let mut bytes = fs::read(file(folder.path())).unwrap();
    bytes[..64].fill(0);
    fs::write(file(folder.path()), bytes).unwrap();
    let mut opened = open(folder.path());
    let all = shipped::tunes().len() + 1;
    assert_eq!(opened.set_aside.unwrap().rescued, all);
    opened.store.restore(&shipped::tunes()).unwrap();
    assert_eq!(opened.store.entries().len(), all);
}

const CHILD_FOLDER: &str = "FOURCOURSE_TEST_CHILD_FOLDER";
const BATCH: usize = 7;

/// This test program again, to run one of its ignored tests as another process.
fn child(test: &str, folder: &Path) -> Command {
    let mut command = Command::new(std::env::current_exe().unwrap());
    command
        .args(["--ignored", "--exact", "--nocapture", test])
        .env(CHILD_FOLDER, folder)
        .stdin(Stdio::null())
        .stdout(Stdio::piped());
    command
}

fn batch(number: usize) -> Vec<Tune> {
    (0..BATCH)
        .map(|i| tune(&format!("Batch {number:04} tune {i}"), number + i, 16))
        .collect()
}

#[test]
#[ignore = "the process that is killed by a_writer_killed_at_any_moment..."]
fn writes_until_it_is_killed() {
    let folder = std::env::var_os(CHILD_FOLDER).expect("a folder");
    let mut store = open(Path::new(&folder)).store;
    assert_eq!(store.entries().len() % BATCH, 0);
    for number in store.entries().len() / BATCH.. {
        store.add(&batch(number)).unwrap();
        println!("kept {number}");
        std::io::stdout().flush().unwrap();
    }
}

#[test]
fn a_writer_killed_at_any_moment_leaves_whole_additions() {
    let folder = tempfile::tempdir().unwrap();
    let mut random = Random(23);
    let mut kept = 0;
    for _ in 0..8 {
        let mut child = child("store_damage::writes_until_it_is_killed", folder.path())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let mut lines = lines.map_while(Result::ok);
        let mut last = kept;
        for _ in 0..1 + random.below(4) {
            let line = lines.find(|line| line.starts_with("kept ")).unwrap();
            last = line["kept ".len()..].parse::<usize>().unwrap() + 1;
        }
        std::thread::sleep(Duration::from_micros(random.below(20_000) as u64));
        child.kill().unwrap();
        child.wait().unwrap();

        let opened = open(folder.path());
        assert_eq!(opened.set_aside, None);
        let entries = opened.store.entries();
        assert!(entries.len() >= last * BATCH, "an addition is gone");
        assert_eq!(entries.len() % BATCH, 0, "an addition is there in part");
        kept = entries.len() / BATCH;
        let wanted: Vec<Tune> = (0..kept).flat_map(batch).collect();
        for (entry, tune) in entries.iter().zip(&wanted) {
            assert_eq!(opened.store.tune(entry.id).as_ref(), Some(tune));
        }
    }
}

#[test]
#[ignore = "the process that runs out of room for a_full_disk..."]
fn writes_until_there_is_no_room() {
    let folder = std::env::var_os(CHILD_FOLDER).expect("a folder");
    let mut store = open(Path::new(&folder)).store;
    let mut number = 0;
    let error = loop {
        let before = store.entries().to_vec();
        if let Err(error) = store.add(&batch(number)) {
            assert_eq!(store.entries(), before);
            break error;
        }
        number += 1;
        assert!(number < 10_000, "the disk is never full");
    };
    // Nothing is lost in this sitting either: what was there can still be read, and found.
    let titles: Vec<_> = store
        .entries()
        .iter()
        .map(|e| e.titles[0].clone())
        .collect();
    assert_eq!(titles.len(), number * BATCH);
    for (entry, tune) in store.entries().iter().zip((0..number).flat_map(batch)) {
        assert_eq!(store.tune(entry.id), Some(tune), "after {error}");
    }
    for &first in &store.search("batch 0000")[..BATCH] {
        assert!(titles[first].starts_with("Batch 0000"));
    }
    println!("kept {number}");
}

#[cfg(unix)]
#[test]
fn a_full_disk_loses_nothing_that_was_kept() {
    let folder = tempfile::tempdir().unwrap();
    let direct = child("store_damage::writes_until_there_is_no_room", folder.path());
    // A limit on the size of files stands in for the full disk: writing then fails in the same way.
    let limited = Command::new("sh")
        .args(["-c", "trap '' XFSZ; ulimit -f 3000; exec \"$0\" \"$@\""])
        .arg(direct.get_program())
        .args(direct.get_args())
        .env(CHILD_FOLDER, folder.path())
        .output()
        .unwrap();
    let output = String::from_utf8_lossy(&limited.stdout);
    assert!(limited.status.success(), "{output}");
    let kept = output.lines().find_map(|line| line.strip_prefix("kept "));
    let kept: usize = kept.expect("how many").parse().unwrap();
    assert!(kept > 0);
    let opened = open(folder.path());
    assert_eq!(opened.set_aside, None);
    assert_eq!(opened.store.entries().len(), kept * BATCH);
}
