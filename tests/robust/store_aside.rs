//! The songbook on disk beside others: open elsewhere, newer than this app, or set aside.

use std::fs;

use fourcourse::desk::Songbook;
use fourcourse::store::{Store, StoreError};
use redb::Database;

use super::store::{ENTRIES, FILE, change, file, now, open, titles};
use super::store_tunes::{everything, tune};

#[test]
fn a_songbook_that_is_open_elsewhere_is_read_as_it_was_last_kept() {
    let folder = tempfile::tempdir().unwrap();
    let mut held = open(folder.path()).store;
    held.restore(&fourcourse::store::shipped::tunes()).unwrap();
    for number in 0..4 {
        held.add(&[tune(&format!("Weir {number}"), 1, 4)]).unwrap();
        let mut copy = Store::read(folder.path(), now()).unwrap();
        assert!(copy.read_only && copy.set_aside.is_none());
        assert_eq!(titles(&copy.store), titles(&held));
        for entry in held.entries() {
            assert_eq!(copy.store.tune(entry.id), held.tune(entry.id));
        }
        assert!(copy.store.add(&[tune("An Eel", 2, 4)]).is_err());
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_songbook_that_is_read_while_it_is_written_to_is_never_torn() {
    let folder = tempfile::tempdir().unwrap();
    let mut held = open(folder.path()).store;
    held.restore(&fourcourse::store::shipped::tunes()).unwrap();
    let shipped = held.entries().len();
    let done = std::sync::atomic::AtomicBool::new(false);
    std::thread::scope(|scope| {
        let reader = scope.spawn(|| {
            let mut before = shipped;
            while !done.load(std::sync::atomic::Ordering::Relaxed) {
                let copy = Store::read(folder.path(), now()).unwrap().store;
                let count = copy.entries().len();
                assert!(count >= before, "{count} after {before}");
                assert!(
                    copy.entries()
                        .iter()
                        .all(|entry| copy.tune(entry.id).is_some())
                );
                before = count;
            }
        });
        for number in 0..40 {
            held.add(&[tune(&format!("Weir {number}"), number, 64)])
                .unwrap();
        }
        done.store(true, std::sync::atomic::Ordering::Relaxed);
        reader.join().unwrap();
    });
}

#[test]
fn a_songbook_that_is_open_elsewhere_is_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    let _open = open(folder.path());
    let second = Store::open(folder.path(), now());
    assert!(matches!(second, Err(StoreError::InUse)), "{second:?}");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_place_that_cannot_hold_a_songbook_is_an_error_and_stays_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("taken");
    fs::write(&taken, "a letter").unwrap();
    for place in [taken.clone(), taken.join("below")] {
        let opened = Store::open(&place, now());
        assert!(matches!(opened, Err(StoreError::Folder(_))), "{opened:?}");
    }
    assert_eq!(fs::read_to_string(&taken).unwrap(), "a letter");

    fs::create_dir(file(folder.path())).unwrap();
    let opened = Store::open(folder.path(), now());
    assert!(matches!(opened, Err(StoreError::Folder(_))), "{opened:?}");
}

#[test]
fn a_newer_file_is_set_aside_to_the_last_byte() {
    let folder = tempfile::tempdir().unwrap();
    open(folder.path()).store.add(&[everything()]).unwrap();
    {
        let database = Database::open(file(folder.path())).unwrap();
        let transaction = database.begin_write().unwrap();
        transaction
            .open_table(FILE)
            .unwrap()
            .insert("layout", 2)
            .unwrap();
        transaction.commit().unwrap();
    }
    let before = fs::read(file(folder.path())).unwrap();
    let opened = open(folder.path());
    let aside = opened.set_aside.unwrap();
    assert!(aside.newer);
    assert!(fs::read(&aside.path).unwrap() == before);
    assert!(opened.new && opened.store.entries().is_empty());
}

#[test]
fn a_newer_entry_makes_a_newer_file() {
    let folder = tempfile::tempdir().unwrap();
    open(folder.path()).store.add(&[everything()]).unwrap();
    change(folder.path(), ENTRIES, |bytes| bytes[0] = 2);
    assert!(open(folder.path()).set_aside.unwrap().newer);
}

#[test]
fn files_set_aside_in_the_same_second_do_not_meet() {
    let folder = tempfile::tempdir().unwrap();
    let mut kept = Vec::new();
    for damage in ["not a songbook", "nor is this", "nor this"] {
        fs::write(file(folder.path()), damage).unwrap();
        let aside = open(folder.path()).set_aside.unwrap();
        assert!(!aside.newer);
        kept.push((aside.path, damage));
    }
    for (path, damage) in kept {
        assert_eq!(fs::read_to_string(path).unwrap(), damage);
    }
}

#[test]
fn of_many_that_find_a_damaged_file_one_sets_it_aside_and_no_sound_file_follows_it() {
    for round in 0..50 {
        let folder = tempfile::tempdir().unwrap();
        fs::write(file(folder.path()), "not a songbook").unwrap();
        std::thread::scope(|scope| {
            for number in 0..4 {
                let folder = folder.path();
                scope.spawn(move || match Store::open(folder, now()) {
                    Ok(mut opened) => {
                        let tune = tune(&format!("Weir {number}"), 1, 4);
                        opened.store.add(&[tune]).map(drop).unwrap();
                    }
                    Err(error) => assert!(matches!(error, StoreError::InUse), "{error}"),
                });
            }
        });
        let names = fs::read_dir(folder.path()).unwrap();
        let names = names.map(|entry| entry.unwrap().path());
        let aside: Vec<_> = names.filter(|path| *path != file(folder.path())).collect();
        assert_eq!(aside.len(), 1, "round {round}: {aside:?}");
        assert_eq!(fs::read_to_string(&aside[0]).unwrap(), "not a songbook");
        assert!(!titles(&open(folder.path()).store).is_empty());
    }
}
