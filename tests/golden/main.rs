//! Pictures of the views, compared with the ones that were looked at and found good.
//!
//! `GOLDEN=keep cargo test --test golden` draws them anew into `tests/golden/pictures`; look at each before it is
//! committed. `LOOK=word,word cargo test --test golden -- --ignored look` draws every scene whose name holds one of the
//! words, at full size, into `target/look`.
#![allow(clippy::unwrap_used, reason = "a helper of tests fails like a test")]
#![cfg(feature = "app")]

mod called;
mod contrast;
mod people;
mod picture;
mod porch;
mod reading;
mod sample;
mod still;

use std::time::Duration;

use fourcourse::bind::picture::Sitting;
use fourcourse::desk::{
    ChordCard, ChordNames, FollowState, Heard, Language, LoopView, NextTune, Notice, Room,
    SongbookState, StandView, Theme,
};
use picture::Picture;
use still::Still;

const SIZES: [(&str, (u32, u32), f32); 4] = [
    ("small", (360, 640), 2.0),
    ("upright", (412, 915), 1.0),
    ("sideways", (800, 360), 1.0),
    ("desktop", (1280, 800), 1.0),
];

const THEMES: [(&str, Theme); 3] = [
    ("ebony", Theme::Ebony),
    ("spruce", Theme::Spruce),
    ("sun", Theme::Sun),
];

fn press(sitting: &Sitting, key: &str) {
    use slint::platform::WindowEvent;
    if key.is_empty() {
        return;
    }
    let window = slint::ComponentHandle::window(sitting.interface().app());
    window.dispatch_event(WindowEvent::WindowActiveChanged(true));
    window.dispatch_event(WindowEvent::KeyPressed { text: key.into() });
    sitting.settle();
}

/// Draws a host's room after a key was pressed.
fn draw(host: Still, (width, height): (u32, u32), density: f32, key: &str) -> Picture {
    let sitting = Sitting::new(Box::new(host), (width, height), density, Duration::ZERO).unwrap();
    press(&sitting, key);
    let (pixels, width, height) = sitting.pixels();
    Picture::new(pixels, width, height)
}

/// Draws a scene at every size, in all three themes or in one by turns.
fn compare(name: &str, themes: usize, scene: impl Fn(Theme) -> Still) {
    compare_after("", name, themes, scene);
}

/// The same after a key was pressed.
fn compare_after(key: &str, name: &str, themes: usize, scene: impl Fn(Theme) -> Still) {
    for (place, (size_name, size, density)) in SIZES.into_iter().enumerate() {
        for theme in 0..themes {
            let (theme_name, theme) = THEMES[(place + theme) % THEMES.len()];
            // Large pictures are kept at half their size: still to be judged by eye, and small enough to keep.
            let mut picture = draw(scene(theme), size, density, key);
            if density > 1.0 || size.0 > 1000 {
                picture = picture.halved();
            }
            picture.compare(&format!("{name}-{size_name}-{theme_name}"));
        }
    }
}

#[test]
fn the_stand_looks_as_it_did() {
    compare("stand", 3, |theme| Still::new(Room::Stand, theme));
}

#[test]
fn long_names_and_many_bars_look_as_they_did() {
    compare("long", 1, |theme| {
        Still::new(Room::Stand, theme).with(sample::long_song())
    });
}

/// The band plays a part again and again, ever faster, without its bass, and its device has gone away.
fn playing(theme: Theme) -> Still {
    stand(theme, |view| {
        let band = &mut view.band;
        band.settings.aloud = true;
        band.heard = Heard::DeviceLost;
        band.players[3].muted = true;
        band.players[0].level = 4;
        band.players[1].level = 10;
        band.looped = Some(LoopView {
            from: "A2 · 1".into(),
            to: "A2 · 8".into(),
            part: true,
        });
        band.ramp.on = true;
        for bar in view.map[..2].iter_mut().flat_map(|line| &mut line.bars) {
            bar.looped = true;
        }
    })
}

#[test]
fn the_band_looks_as_it_did() {
    compare_after("b", "band", 1, playing);
}

#[test]
fn the_songbook_looks_as_it_did() {
    compare("songbook", 3, |theme| {
        Still::new(Room::Songbook, theme).speaking(Language::Spanish)
    });
}

#[test]
fn the_settings_look_as_they_did() {
    compare("settings", 3, |theme| {
        Still::new(Room::Settings, theme).speaking(Language::German)
    });
}

#[test]
fn the_circle_looks_as_it_did() {
    compare("circle", 1, |theme| Still::new(Room::Circle, theme));
}

#[test]
fn the_best_key_looks_as_it_did() {
    compare_after("k", "best-key", 1, |theme| Still::new(Room::Circle, theme));
}

#[test]
fn the_page_across_looks_as_it_did() {
    compare_after("v", "across", 1, |theme| Still::new(Room::Circle, theme));
}

#[test]
fn tonights_list_looks_as_it_did() {
    compare("tonight", 1, |theme| {
        Still::new(Room::Tonight, theme).speaking(Language::German)
    });
}

fn stand(theme: Theme, change: impl Fn(&mut StandView)) -> Still {
    let mut view = sample::reel();
    change(&mut view);
    Still::new(Room::Stand, theme).with(view)
}

type Scene = (&'static str, fn(Theme) -> Still);

const SCENES: [Scene; 30] = [
    ("called-tune", called::tune),
    ("called-key", called::key),
    ("called-chord", called::chord),
    ("called-far-key", |theme| {
        called::far_key(theme).speaking(Language::German)
    }),
    ("called-far-chord", |theme| {
        called::far_chord(theme).speaking(Language::Spanish)
    }),
    ("called-nothing", |theme| {
        called::nothing(theme).speaking(Language::German)
    }),
    ("called-no-match", |theme| {
        called::no_match(theme).speaking(Language::Spanish)
    }),
    ("circle", |theme| Still::new(Room::Circle, theme)),
    ("lang-circle", |theme| {
        Still::new(Room::Circle, theme).speaking(Language::German)
    }),
    ("es-circle", |theme| {
        Still::new(Room::Circle, theme).speaking(Language::Spanish)
    }),
    ("tonight", |theme| Still::new(Room::Tonight, theme)),
    ("es-tonight", |theme| {
        Still::new(Room::Tonight, theme).speaking(Language::Spanish)
    }),
    ("bare", |theme| {
        let mut still = Still::new(Room::Tonight, theme);
        still.tonight = people::no_list();
        still
    }),
    ("ended", |theme| {
        stand(theme, |view| {
            view.follow = FollowState::Ended;
            view.next_tune = Some(NextTune {
                title: "Mill Lane at Dusk".into(),
                key: "E".into(),
                mode: "minor".into(),
            });
        })
    }),
    ("playing", playing),
    ("lang-playing", |theme| {
        playing(theme).speaking(Language::German)
    }),
    ("stand", |theme| stand(theme, |_| {})),
    ("long", |theme| {
        Still::new(Room::Stand, theme).with(sample::long_song())
    }),
    ("lang-long", |theme| {
        let still = Still::new(Room::Stand, theme).with(sample::long_song());
        still.speaking(Language::German)
    }),
    ("crooked", |theme| {
        Still::new(Room::Stand, theme).with(sample::crooked())
    }),
    ("both", |theme| {
        stand(theme, |view| {
            view.names = ChordNames::Both;
            for bar in view.map.iter_mut().flat_map(|line| &mut line.bars) {
                bar.numbers = bar
                    .chords
                    .replace('A', "1")
                    .replace('D', "4")
                    .replace('E', "5");
            }
        })
    }),
    ("count", |theme| {
        stand(theme, |view| {
            view.follow = FollowState::CountIn { beat: 3, bar: 1 };
        })
    }),
    ("silent", |theme| {
        stand(theme, |view| {
            view.now = ChordCard {
                no_chord: true,
                ..ChordCard::default()
            };
        })
    }),
    ("empty", |theme| {
        let mut still = Still::new(Room::Stand, theme);
        still.stand = None;
        still.notice = Some(Notice::SetAside {
            file: "songbook.2026-11-25.damaged".into(),
            newer: false,
            rescued: 12,
        });
        still
    }),
    ("songbook", |theme| Still::new(Room::Songbook, theme)),
    ("lang-songbook", |theme| {
        Still::new(Room::Songbook, theme).speaking(Language::German)
    }),
    ("nothing", |theme| {
        let mut still = Still::new(Room::Songbook, theme);
        still.songbook = sample::no_tunes(SongbookState::NothingFits);
        still
    }),
    ("vacant", |theme| {
        let mut still = Still::new(Room::Songbook, theme);
        still.songbook = sample::no_tunes(SongbookState::Empty);
        still.stand = None;
        still.speaking(Language::Spanish)
    }),
    ("settings", |theme| Still::new(Room::Settings, theme)),
    ("lang-settings", |theme| {
        Still::new(Room::Settings, theme).speaking(Language::German)
    }),
];

const MORE_SIZES: [(&str, (u32, u32), f32); 4] = [
    ("roll", (412, 2800), 1.0),
    ("tablet", (820, 1180), 1.0),
    ("narrow", (320, 568), 1.0),
    ("huge", (1920, 1080), 1.0),
];

#[test]
#[ignore = "draws every scene, to be looked at"]
fn look() {
    let words = std::env::var("LOOK").unwrap_or_default();
    let folder = picture::made().join("look");
    std::fs::create_dir_all(&folder).unwrap();
    for (theme_name, theme) in THEMES {
        for (size_name, size, density) in SIZES.into_iter().chain(MORE_SIZES) {
            for (scene_name, scene) in SCENES {
                for (sheet_name, key) in [
                    ("", ""),
                    ("sheet-", "k"),
                    ("band-", "b"),
                    ("safe-", "z"),
                    ("across-", "v"),
                ] {
                    let name = format!("{sheet_name}{scene_name}-{size_name}-{theme_name}");
                    if !words.split(',').any(|word| name.starts_with(word)) {
                        continue;
                    }
                    let host = Box::new(scene(theme));
                    let sitting = Sitting::new(host, size, density, Duration::ZERO).unwrap();
                    press(&sitting, key);
                    let path = folder.join(format!("{name}.png"));
                    std::fs::write(path, sitting.png().unwrap()).unwrap();
                }
            }
        }
    }
}
