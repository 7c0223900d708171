//! What the songbook on disk promises of the circle, tonight's list and what was played.

use std::fs;
use std::path::Path;

use chrono::NaiveDate;
use fourcourse::circle::{CapoHabit, VoiceType};
use fourcourse::desk::{Knows, Planned, Played, Plays, SeatSettings, Sings, Songbook, TuneId};
use fourcourse::store::StoreError;
use fourcourse::theory::Reads;
use redb::{Database, ReadableDatabase, ReadableTable, TableDefinition};

use super::store::{SETTINGS, change, file, open, settings, titles};
use super::store_tunes::tune;

const PLAYED: TableDefinition<u64, &[u8]> = TableDefinition::new("played");

/// One seat of each kind, with all that can be set.
fn circle() -> Vec<SeatSettings> {
    let guitar = Plays::Instrument("guitar".to_owned());
    vec![
        SeatSettings::player(),
        SeatSettings {
            name: "Imke".to_owned(),
            tuning: vec![-2, 0, 0, 0, 0, 0],
            capo: Some(CapoHabit::UpTo(4)),
            left_handed: true,
            knows: Knows::Four,
            sings: Some(Sings::Notes(50, 69)),
            ..SeatSettings::new(guitar)
        },
        SeatSettings {
            capo: Some(CapoHabit::Always(2)),
            knows: Knows::First,
            ..SeatSettings::new(Plays::Page(Reads::EFlat))
        },
        SeatSettings {
            capo: Some(CapoHabit::Never),
            sings: Some(Sings::Type(VoiceType::Alto)),
            ..SeatSettings::new(Plays::Voice)
        },
    ]
}

fn list() -> Vec<Planned> {
    let planned = |(tune, key): (u64, Option<&str>)| Planned {
        tune: TuneId(tune),
        key: key.map(|key| key.parse().unwrap()),
    };
    [(2, Some("Bb")), (1, None)].map(planned).to_vec()
}

fn played() -> Played {
    Played {
        tune: TuneId(2),
        key: "F# dorian".parse().unwrap(),
        day: NaiveDate::from_ymd_opt(2026, 11, 26).unwrap(),
    }
}

#[test]
fn the_evening_is_there_when_the_songbook_is_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    {
        let mut store = open(folder.path()).store;
        assert!(store.circle().is_empty() && store.tonight().is_empty());
        assert!(store.played().is_empty());
        assert!(store.keep_circle(&circle()) && store.keep_tonight(&list()));
        let again = Played {
            tune: TuneId(1),
            ..played()
        };
        assert!(store.keep_played(played()) && store.keep_played(again));
    }
    let store = open(folder.path()).store;
    assert_eq!((store.circle(), store.tonight()), (circle(), list()));
    let tunes: Vec<_> = store.played().iter().map(|played| played.tune.0).collect();
    assert_eq!(tunes, [2, 1]);
}

/// Changes values of the settings and beside them on disk.
fn change_values(folder: &Path, names: &[&str], change: fn(&mut [u8])) {
    let database = Database::open(file(folder)).unwrap();
    let transaction = database.begin_write().unwrap();
    {
        let mut table = transaction.open_table(SETTINGS).unwrap();
        for &name in names {
            let mut bytes = table.get(name).unwrap().unwrap().value().to_vec();
            change(&mut bytes);
            table.insert(name, bytes.as_slice()).unwrap();
        }
    }
    transaction.commit().unwrap();
}

#[test]
fn damage_to_the_circle_the_list_or_the_log_harms_nothing_else() {
    let folder = tempfile::tempdir().unwrap();
    {
        let mut store = open(folder.path()).store;
        store.add(&[tune("The Weir", 1, 8)]).unwrap();
        store.keep_settings(&settings()).unwrap();
        assert!(store.keep_circle(&circle()) && store.keep_tonight(&list()));
        for _ in 0..3 {
            assert!(store.keep_played(played()));
        }
    }
    change(folder.path(), PLAYED, |bytes| bytes[6] ^= 1);
    change_values(folder.path(), &["circle", "tonight"], |bytes| bytes[7] ^= 4);
    let mut opened = open(folder.path());
    assert!(opened.set_aside.is_none());
    let store = &mut opened.store;
    assert!(store.circle().is_empty() && store.tonight().is_empty());
    assert_eq!(store.played().len(), 2);
    assert_eq!(store.settings(), Some(settings()));
    assert_eq!(titles(store), ["The Weir"]);
    assert!(store.keep_circle(&circle()));
    assert_eq!(store.circle(), circle());
}

#[test]
fn a_circle_and_a_list_of_a_newer_app_are_not_written_over() {
    let folder = tempfile::tempdir().unwrap();
    {
        let mut store = open(folder.path()).store;
        assert!(store.keep_circle(&circle()) && store.keep_tonight(&list()));
    }
    // The version stands before the check sum.
    let values = |change| change_values(folder.path(), &["circle", "tonight"], change);
    values(|bytes| bytes[0] += 1);
    {
        let mut store = open(folder.path()).store;
        assert!(store.circle().is_empty() && store.tonight().is_empty());
        assert!(!store.keep_circle(&[SeatSettings::player()]));
        assert!(!store.keep_tonight(&[]));
        assert!(store.keep_played(played()) && store.keep_settings(&settings()).is_ok());
    }
    // Back in the newer app, all is as it was left.
    values(|bytes| bytes[0] -= 1);
    let store = open(folder.path()).store;
    assert_eq!((store.circle(), store.tonight()), (circle(), list()));
}

#[test]
fn settings_of_a_newer_app_are_not_written_over_and_the_others_are_kept() {
    let folder = tempfile::tempdir().unwrap();
    let mut loud = settings();
    loud.band.aloud = !loud.band.aloud;
    open(folder.path()).store.keep_settings(&loud).unwrap();
    let band = |change| change_values(folder.path(), &["band"], change);
    band(|bytes| bytes[0] += 1);
    let mut left_handed = settings();
    left_handed.left_handed = !left_handed.left_handed;
    {
        let mut store = open(folder.path()).store;
        let kept = store.keep_settings(&left_handed);
        assert!(matches!(kept, Err(StoreError::Newer)), "{kept:?}");
    }
    // Back in the newer app, its band is as it was, and the rest as it was set since.
    band(|bytes| bytes[0] -= 1);
    let kept = open(folder.path()).store.settings().unwrap();
    assert_eq!(kept.left_handed, left_handed.left_handed);
    assert_eq!(kept.band, loud.band);
}

/// Version 1 as it was first written; see `store.rs` for what that means.
#[test]
fn an_evening_of_version_1_is_written_and_read_as_on_its_first_day() {
    let folder = tempfile::tempdir().unwrap();
    {
        let mut store = open(folder.path()).store;
        assert!(store.keep_circle(&circle()) && store.keep_tonight(&list()));
        assert!(store.keep_played(played()));
    }
    let fixtures = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/robust/fixtures");
    let check = |name: &str, written: &[u8]| {
        let path = fixtures.join(name);
        if std::env::var_os("FOURCOURSE_WRITE_FIXTURES").is_some() {
            fs::write(&path, written).unwrap();
        }
        assert!(fs::read(path).unwrap() == written, "{name} is another");
    };
    let database = Database::open(file(folder.path())).unwrap();
    let transaction = database.begin_read().unwrap();
    let table = transaction.open_table(SETTINGS).unwrap();
    for name in ["circle", "tonight"] {
        let written = table.get(name).unwrap().unwrap();
        check(&format!("v1-{name}.bin"), written.value());
    }
    let log = transaction.open_table(PLAYED).unwrap();
    check("v1-played.bin", log.get(1).unwrap().unwrap().value());
    drop((table, log, transaction, database));

    let store = open(folder.path()).store;
    assert_eq!((store.circle(), store.tonight()), (circle(), list()));
    assert_eq!(store.played(), [played()]);
}
