//! What the songbook on disk promises.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Utc};
use fourcourse::chart::{Tune, Version};
use fourcourse::desk::{
    BandSettings, Language, Practice, Settings, Songbook, Stretch, Theme, TuneId,
};
use fourcourse::store::{Added, Opened, Store};
use fourcourse::theory::Naming;
use redb::{Database, ReadableDatabase, ReadableTable, TableDefinition};

use super::store_tunes::{everything, tune};

const TUNES: TableDefinition<u64, &[u8]> = TableDefinition::new("tunes");
pub(crate) const ENTRIES: TableDefinition<u64, &[u8]> = TableDefinition::new("entries");
const PRACTICE: TableDefinition<u64, &[u8]> = TableDefinition::new("practice");
pub(crate) const SETTINGS: TableDefinition<&str, &[u8]> = TableDefinition::new("settings");
pub(crate) const FILE: TableDefinition<&str, u64> = TableDefinition::new("file");

pub(crate) fn now() -> DateTime<Utc> {
    DateTime::from_timestamp(1_800_000_000, 0).unwrap()
}

pub(crate) fn open(folder: &Path) -> Opened {
    Store::open(folder, now()).unwrap()
}

pub(crate) fn file(folder: &Path) -> PathBuf {
    folder.join("songbook.redb")
}

pub(crate) fn titles(store: &Store) -> Vec<&str> {
    store
        .entries()
        .iter()
        .map(|entry| entry.titles[0].as_str())
        .collect()
}

pub(crate) fn settings() -> Settings {
    Settings {
        instrument: "octave-mandolin".to_owned(),
        retuned: BTreeMap::from([("octave-mandolin".to_owned(), vec![0, 0, 0, -2])]),
        left_handed: true,
        theme: Theme::Sun,
        language: Some(Language::German),
        naming: Naming::Solfege,
        less_motion: true,
        known: vec!["G".to_owned(), "Bb7".to_owned()],
        band: BandSettings {
            aloud: true,
            loudness: 4,
            levels: [7, 10, 0, 5, 6, 7],
            mutes: [true, false, false, false, false, true],
            a4: 443,
            human: false,
            count_in: false,
            delay_ms: 0,
        },
    }
}

fn practice(day: u32) -> Practice {
    Practice {
        day: chrono::NaiveDate::from_ymd_opt(2026, 11, day).unwrap(),
        tune: TuneId(7),
        stretch: Stretch::Phrase(2),
        version: Version::ChordDrones,
        key: "Bb".parse().unwrap(),
        bpm: 66,
        passes: 5,
    }
}

#[test]
fn what_was_added_is_there_when_the_songbook_is_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    let tunes = [tune("The Weir", 1, 8), everything(), tune("An Eel", 2, 4)];
    let added = {
        let mut opened = open(folder.path());
        assert!(opened.new && opened.set_aside.is_none());
        opened.store.add(&tunes).unwrap()
    };
    let store = open(folder.path()).store;
    assert_eq!(titles(&store), ["An Eel", "Everything at Once", "The Weir"]);
    for (tune, added) in tunes.iter().zip(added) {
        let Added::New(id) = added else {
            panic!("{} is new", tune.title)
        };
        assert_eq!(store.tune(id).as_ref(), Some(tune));
    }
    assert_eq!(store.search("todo vez"), [1]);
    assert_eq!(store.tune(TuneId(99)), None);
}

#[test]
fn the_very_same_tune_is_not_added_twice_whatever_its_dates() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = open(folder.path()).store;
    let first = tune("The Weir", 1, 8);
    let later = Tune {
        made: Some(now()),
        ..first.clone()
    };
    let other = tune("The Weir", 2, 8);
    let added = store.add(&[first, later, other]).unwrap();
    assert_eq!(
        added,
        [
            Added::New(TuneId(1)),
            Added::Same(TuneId(1)),
            Added::New(TuneId(2))
        ]
    );
    assert_eq!(titles(&store), ["The Weir", "The Weir"]);
}

#[test]
fn shipped_tunes_come_back_as_they_were_and_others_stay() {
    let folder = tempfile::tempdir().unwrap();
    let shipped = [
        ("weir.abc".to_owned(), tune("The Weir", 1, 8)),
        ("eel.abc".to_owned(), tune("An Eel", 2, 4)),
    ];
    let mut store = open(folder.path()).store;
    store.add(&[tune("My Own", 5, 4)]).unwrap();
    store.restore(&shipped).unwrap();
    // A later app ships the same file with another reading of it.
    let renewed = [("eel.abc".to_owned(), tune("An Eel in Spring", 3, 4))];
    store.restore(&renewed).unwrap();
    drop(store);

    let opened = open(folder.path());
    assert!(!opened.new);
    assert_eq!(
        titles(&opened.store),
        ["An Eel in Spring", "My Own", "The Weir"]
    );
    let eel = opened.store.entries()[0].id;
    assert_eq!(opened.store.tune(eel), Some(renewed[0].1.clone()));
}

#[test]
fn every_shipped_tune_is_kept_to_the_last_note() {
    let shipped = fourcourse::store::shipped::tunes();
    assert_eq!(shipped.len(), fourcourse::store::shipped::files().len());
    let folder = tempfile::tempdir().unwrap();
    open(folder.path()).store.restore(&shipped).unwrap();
    let store = open(folder.path()).store;
    assert_eq!(store.entries().len(), shipped.len());
    for (name, tune) in &shipped {
        let found = store.search(&tune.title)[0];
        let kept = store.tune(store.entries()[found].id);
        assert_eq!(kept.as_ref(), Some(tune), "{name}");
    }
}

#[test]
fn a_songbook_is_new_until_the_shipped_tunes_are_in_it() {
    let folder = tempfile::tempdir().unwrap();
    assert!(open(folder.path()).new);
    assert!(open(folder.path()).new, "stopped before they were put in");
    let shipped = [("eel.abc".to_owned(), tune("An Eel", 2, 4))];
    open(folder.path()).store.restore(&shipped).unwrap();
    assert!(!open(folder.path()).new);
}

#[test]
fn settings_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = open(folder.path()).store;
    assert_eq!(store.settings(), None);
    store.keep_settings(&settings()).unwrap();
    drop(store);
    assert_eq!(open(folder.path()).store.settings(), Some(settings()));
}

#[test]
fn settings_from_before_there_were_tunings_and_a_band_or_beside_damaged_ones_are_read() {
    let folder = tempfile::tempdir().unwrap();
    let usual = Settings {
        retuned: BTreeMap::new(),
        band: BandSettings::default(),
        ..settings()
    };
    for damaged in [false, true] {
        open(folder.path())
            .store
            .keep_settings(&settings())
            .unwrap();
        let database = Database::open(file(folder.path())).unwrap();
        let transaction = database.begin_write().unwrap();
        {
            let mut table = transaction.open_table(SETTINGS).unwrap();
            if damaged {
                table.insert("tunings", b"ebb".as_slice()).unwrap();
                table.insert("band", b"ebb".as_slice()).unwrap();
            } else {
                table.remove("tunings").unwrap();
                table.remove("band").unwrap();
            }
        }
        transaction.commit().unwrap();
        drop(database);
        assert_eq!(open(folder.path()).store.settings().as_ref(), Some(&usual));
    }
}

#[test]
fn the_delay_of_the_sound_stands_behind_the_band_and_only_where_there_is_one() {
    let folder = tempfile::tempdir().unwrap();
    let mut wanted = settings();
    let mut stored = Vec::new();
    for delay_ms in [0, 180, 500] {
        wanted.band.delay_ms = delay_ms;
        open(folder.path()).store.keep_settings(&wanted).unwrap();
        assert_eq!(open(folder.path()).store.settings().as_ref(), Some(&wanted));
        let database = Database::open(file(folder.path())).unwrap();
        let table = database.begin_read().unwrap().open_table(SETTINGS).unwrap();
        stored.push(table.get("band").unwrap().unwrap().value().to_vec());
    }
    // Behind the version and the check sum, what version 1 knew stands as it stood.
    let [none, some, most] = &stored[..] else {
        unreachable!()
    };
    assert!(some[5..].starts_with(&none[5..]) && most[5..].starts_with(&none[5..]));
    assert_eq!(some.len(), none.len() + 2);
}

#[cfg(unix)]
#[test]
fn a_songbook_that_may_not_be_written_to_is_still_read() {
    use std::os::unix::fs::PermissionsExt;

    let folder = tempfile::tempdir().unwrap();
    open(folder.path())
        .store
        .add(&[tune("The Weir", 1, 8)])
        .unwrap();
    let before = fs::read(file(folder.path())).unwrap();
    let allow = |file_mode, folder_mode| {
        let permit =
            |path: &Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode));
        permit(&file(folder.path()), file_mode).unwrap();
        permit(folder.path(), folder_mode).unwrap();
    };
    allow(0o444, 0o555);
    let opened = open(folder.path());
    let also = Store::open(folder.path(), now());
    let mut store = opened.store;
    assert_eq!(titles(&store), ["The Weir"]);
    assert!(store.tune(TuneId(1)).is_some());
    // The administrator may write in spite of all permissions; then this file is an ordinary one.
    let added = store.add(&[tune("An Eel", 2, 4)]);
    assert_eq!(added.is_err(), opened.read_only);
    assert_eq!(also.is_ok(), opened.read_only, "readers share the file");
    drop((store, also));
    allow(0o644, 0o755);
    let unchanged = fs::read(file(folder.path())).unwrap() == before;
    assert_eq!(unchanged, opened.read_only);
}

#[test]
fn a_tune_whose_bytes_are_wrong_is_listed_but_not_opened() {
    let folder = tempfile::tempdir().unwrap();
    let tunes = [tune("The Weir", 1, 8), tune("An Eel", 2, 4)];
    open(folder.path()).store.add(&tunes).unwrap();
    change(folder.path(), TUNES, |bytes| bytes[40] ^= 1);
    let opened = open(folder.path());
    assert!(opened.set_aside.is_none());
    assert_eq!(titles(&opened.store), ["An Eel", "The Weir"]);
    assert_eq!(opened.store.tune(TuneId(1)), None);
    assert_eq!(opened.store.tune(TuneId(2)).as_ref(), Some(&tunes[1]));
}

/// Changes the value under 1 behind the songbook's back.
pub(crate) fn change(
    folder: &Path,
    table: TableDefinition<u64, &[u8]>,
    change: impl FnOnce(&mut [u8]),
) {
    let database = Database::open(file(folder)).unwrap();
    let transaction = database.begin_write().unwrap();
    {
        let mut table = transaction.open_table(table).unwrap();
        let mut bytes = table.get(1).unwrap().unwrap().value().to_vec();
        change(&mut bytes);
        table.insert(1, bytes.as_slice()).unwrap();
    }
    transaction.commit().unwrap();
}

/// Version 1 as it was first written. These files never change; what was kept in the first songbook is read for ever.
/// With `FOURCOURSE_WRITE_FIXTURES` set they are written anew, which is right only before version 1 has been released.
#[test]
fn version_1_is_written_and_read_as_on_its_first_day() {
    let folder = tempfile::tempdir().unwrap();
    let tune = everything();
    {
        let mut store = open(folder.path()).store;
        store.add(std::slice::from_ref(&tune)).unwrap();
        store.keep_settings(&settings()).unwrap();
        assert!(store.keep_practice(&practice(3)));
    }
    let fixtures = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/robust/fixtures");
    let bytes = |name: &str, written: &[u8]| {
        let path = fixtures.join(name);
        if std::env::var_os("FOURCOURSE_WRITE_FIXTURES").is_some() {
            fs::write(&path, written).unwrap();
        }
        fs::read(path).unwrap()
    };
    let database = Database::open(file(folder.path())).unwrap();
    let transaction = database.begin_write().unwrap();
    {
        let mut tunes = transaction.open_table(TUNES).unwrap();
        let mut settings = transaction.open_table(SETTINGS).unwrap();
        let written = tunes.get(1).unwrap().unwrap().value().to_vec();
        let kept = bytes("v1-tune.bin", &written);
        assert!(kept == written, "a tune is written in another way");
        tunes.insert(2, kept.as_slice()).unwrap();
        let written = settings.get("settings").unwrap().unwrap().value().to_vec();
        let kept = bytes("v1-settings.bin", &written);
        assert!(kept == written, "settings are written in another way");
        settings.insert("settings", kept.as_slice()).unwrap();
        let written = settings.get("tunings").unwrap().unwrap().value().to_vec();
        let kept = bytes("v1-tunings.bin", &written);
        assert!(kept == written, "tunings are written in another way");
        settings.insert("tunings", kept.as_slice()).unwrap();
        let written = settings.get("band").unwrap().unwrap().value().to_vec();
        let kept = bytes("v1-band.bin", &written);
        assert!(kept == written, "the band is written in another way");
        settings.insert("band", kept.as_slice()).unwrap();
        let mut log = transaction.open_table(PRACTICE).unwrap();
        let written = log.get(1).unwrap().unwrap().value().to_vec();
        let kept = bytes("v1-practice.bin", &written);
        assert!(kept == written, "practice is written in another way");
        log.insert(1, kept.as_slice()).unwrap();
    }
    transaction.commit().unwrap();
    drop(database);

    let store = open(folder.path()).store;
    assert_eq!(store.tune(TuneId(2)), Some(tune));
    assert_eq!(store.settings(), Some(settings()));
    assert_eq!(store.practice(), [practice(3)]);
}

#[test]
fn what_was_practised_is_kept_once_a_day_and_damaged_entries_are_left_out() {
    let folder = tempfile::tempdir().unwrap();
    let faster = Practice {
        bpm: 70,
        passes: 9,
        ..practice(3)
    };
    {
        let mut store = open(folder.path()).store;
        assert_eq!(store.practice(), []);
        for entry in [practice(2), practice(3), faster] {
            assert!(store.keep_practice(&entry));
        }
    }
    assert_eq!(open(folder.path()).store.practice(), [practice(2), faster]);
    let database = Database::open(file(folder.path())).unwrap();
    let transaction = database.begin_write().unwrap();
    let mut log = transaction.open_table(PRACTICE).unwrap();
    log.insert(1, b"ebb".as_slice()).unwrap();
    drop(log);
    transaction.commit().unwrap();
    drop(database);
    assert_eq!(open(folder.path()).store.practice(), [faster]);
}

#[test]
fn the_tables_are_there_under_their_names() {
    let folder = tempfile::tempdir().unwrap();
    drop(open(folder.path()));
    let database = Database::open(file(folder.path())).unwrap();
    let transaction = database.begin_read().unwrap();
    let layout = transaction.open_table(FILE).unwrap().get("layout").unwrap();
    assert_eq!(layout.unwrap().value(), 1);
}
