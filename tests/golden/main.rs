//! Pictures of the views, compared with the ones that were looked at and found good.
//!
//! `LOOK=1 cargo test --test golden` draws them anew into `tests/golden/pictures`; look at each before it is kept.
#![cfg(feature = "app")]

mod sample;

use std::time::Duration;

use fourcourse::bind::picture::Sitting;
use fourcourse::desk::{Language, Room, SongbookState, Theme};
use sample::Still;

fn write(name: &str, host: Still, size: (u32, u32), density: f32) {
    let sitting = Sitting::new(Box::new(host), size, density, Duration::ZERO).unwrap();
    let folder = std::env::var("LOOK_IN").unwrap_or("/tmp/look".into());
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(format!("{folder}/{name}.png"), sitting.png().unwrap()).unwrap();
}

const SIZES: [(&str, (u32, u32), f32); 4] = [
    ("small", (360, 640), 2.0),
    ("upright", (412, 915), 1.0),
    ("sideways", (800, 360), 1.0),
    ("desktop", (1280, 800), 1.0),
];

#[test]
#[ignore = "draws everything, to be looked at"]
fn look() {
    let only = std::env::var("ONLY").unwrap_or_default();
    let draw = |name: String, host: Still, size, density| {
        if only.split(',').any(|part| name.contains(part)) {
            write(&name, host, size, density);
        }
    };
    let _ = (sample::no_tunes(SongbookState::Empty), Language::German);
    for (theme_name, theme) in [
        ("ebony", Theme::Ebony),
        ("spruce", Theme::Spruce),
        ("sun", Theme::Sun),
    ] {
        for (size_name, size, density) in SIZES {
            let name = |what: &str| format!("{what}-{size_name}-{theme_name}");
            draw(name("stand"), Still::new(Room::Stand, theme), size, density);
            draw(
                name("long"),
                Still::new(Room::Stand, theme).with(sample::long_song()),
                size,
                density,
            );
            draw(
                name("longde"),
                Still::new(Room::Stand, theme)
                    .with(sample::long_song())
                    .speaking(Language::German),
                size,
                density,
            );
            draw(
                name("crooked"),
                Still::new(Room::Stand, theme).with(sample::crooked()),
                size,
                density,
            );
            draw(
                name("songbook"),
                Still::new(Room::Songbook, theme),
                size,
                density,
            );
            draw(
                name("bookde"),
                Still::new(Room::Songbook, theme).speaking(Language::German),
                size,
                density,
            );
            let mut none = Still::new(Room::Songbook, theme);
            none.songbook = sample::no_tunes(SongbookState::NothingFits);
            draw(name("nothing"), none, size, density);
            draw(
                name("settings"),
                Still::new(Room::Settings, theme),
                size,
                density,
            );
            draw(
                name("setde"),
                Still::new(Room::Settings, theme).speaking(Language::German),
                size,
                density,
            );
        }
    }
}
