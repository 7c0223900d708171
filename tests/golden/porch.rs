//! Pictures of the porch, drawn from a real desk with tunes that were shipped.

use std::time::Duration;

use chrono::NaiveDate;
use fourcourse::bind::picture::Sitting;
use fourcourse::chart::Version;
use fourcourse::desk::{
    Ask, Desk, Language, PorchAsk, Practice, Room, Settings, Stretch, Theme, TuneId,
};
use fourcourse::store::{Memory, shipped};

use crate::picture::Picture;
use crate::{SIZES, THEMES, press};

/// A desk on the porch on a day of November, with a tune by its title; with none, in front of what to practise.
pub(crate) fn porch(theme: Theme, language: Language, title: &str, asks: &[PorchAsk]) -> Desk {
    let tunes: Vec<_> = shipped::tunes().into_iter().map(|(_, tune)| tune).collect();
    let id = |title: &str| {
        let place = tunes.iter().position(|tune| tune.title == title);
        TuneId(place.unwrap() as u64 + 1)
    };
    let day = |day| NaiveDate::from_ymd_opt(2026, 11, day).unwrap();
    let practice = |on, title, phrase: Option<u16>, version, bpm| Practice {
        day: day(on),
        tune: id(title),
        stretch: phrase.map_or(Stretch::Whole, Stretch::Phrase),
        version,
        key: "A".parse().unwrap(),
        bpm,
        passes: 4,
    };
    let log = vec![
        practice(20, "Millrace Reel", Some(1), Version::KeyDrones, 54),
        practice(23, "Nobody Told the Goose", None, Version::Plain, 66),
        practice(25, "Kettle before Noon", Some(0), Version::DoubleStops, 60),
    ];
    let open = (!title.is_empty()).then(|| id(title));
    let settings = Settings {
        theme,
        language: Some(language),
        ..Settings::default()
    };
    let memory = Memory::new(tunes).on(day(26)).after(log);
    let mut desk = Desk::new(
        Box::new(memory),
        fourcourse::start::silent_players(),
        settings,
        None,
    );
    let now = Duration::ZERO;
    desk.ask(Ask::Go(Room::Porch), now);
    if let Some(id) = open {
        desk.ask(Ask::Open(id), now);
    }
    for ask in asks {
        desk.ask(Ask::Porch(ask.clone()), now);
    }
    desk
}

fn reel(theme: Theme) -> Desk {
    let asks = [
        PorchAsk::Version(Version::KeyDrones),
        PorchAsk::Phrase(Some(1)),
        PorchAsk::Faster(-5),
    ];
    porch(theme, Language::English, "Millrace Reel", &asks)
}

#[test]
fn the_porch_looks_as_it_did() {
    for (place, (size_name, size, density)) in SIZES.into_iter().enumerate() {
        let (theme_name, theme) = THEMES[place % THEMES.len()];
        let host = Box::new(reel(theme));
        let sitting = Sitting::new(host, size, density, Duration::ZERO).unwrap();
        sitting.interface().work_off(); // the view says how wide its paper is
        sitting.settle();
        let (pixels, width, height) = sitting.pixels();
        let mut picture = Picture::new(pixels, width, height);
        if density > 1.0 || size.0 > 1000 {
            picture = picture.halved();
        }
        picture.compare(&format!("porch-{size_name}-{theme_name}"));
    }
}

type Scene = (&'static str, &'static str, fn(Theme) -> Desk);

/// Scenes to be looked at: a name, a key to press first, and the desk.
const SCENES: [Scene; 9] = [
    ("porch", "", reel),
    ("porch-sheet", "k", reel),
    ("porch-staff", "", |theme| {
        let asks = [
            PorchAsk::Staff(true),
            PorchAsk::Version(Version::DoubleStops),
        ];
        porch(theme, Language::German, "Nobody Told the Goose", &asks)
    }),
    ("porch-jig", "", |theme| {
        let asks = [
            PorchAsk::Staff(true),
            PorchAsk::Fingers(true),
            PorchAsk::Phrase(Some(2)),
        ];
        porch(
            theme,
            Language::English,
            "The Gate That Would Not Latch",
            &asks,
        )
    }),
    ("porch-covered", "", |theme| {
        let asks = [PorchAsk::HideBy(1), PorchAsk::Version(Version::ChordDrones)];
        porch(theme, Language::Spanish, "The Race in Spate", &asks)
    }),
    ("porch-blank", "", |theme| {
        porch(
            theme,
            Language::English,
            "Millrace Reel",
            &[PorchAsk::HideBy(3)],
        )
    }),
    ("porch-home", "", |theme| {
        porch(theme, Language::English, "", &[])
    }),
    ("porch-heute", "", |theme| {
        porch(
            theme,
            Language::German,
            "Millrace Reel",
            &[PorchAsk::Home(true)],
        )
    }),
    ("porch-drill", "", |theme| {
        porch(
            theme,
            Language::English,
            "Millrace Reel",
            &[PorchAsk::Stop(0)],
        )
    }),
];

#[test]
#[ignore = "draws every scene of the porch, to be looked at"]
fn look_at_the_porch() {
    let words = std::env::var("LOOK").unwrap_or_default();
    let folder = crate::picture::made().join("look");
    std::fs::create_dir_all(&folder).unwrap();
    for (theme_name, theme) in THEMES {
        for (size_name, size, density) in SIZES.into_iter().chain(crate::MORE_SIZES) {
            for (scene_name, key, scene) in SCENES {
                let name = format!("{scene_name}-{size_name}-{theme_name}");
                if !words.split(',').any(|word| name.starts_with(word)) {
                    continue;
                }
                let sitting =
                    Sitting::new(Box::new(scene(theme)), size, density, Duration::ZERO).unwrap();
                sitting.interface().work_off();
                press(&sitting, key);
                sitting.settle();
                std::fs::write(folder.join(format!("{name}.png")), sitting.png().unwrap()).unwrap();
            }
        }
    }
}
