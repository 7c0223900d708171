//! Whatever tune the domain can hold comes back from its bytes as it was, and bytes that are not ours are refused.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};
use proptest::collection::{btree_map, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use super::value::{self, ValueError};
use crate::chart::{
    Annotation, Bar, ChordAt, Direction, Jump, Metre, Note, Ornament, Part, Rhythm, Slot, Stroke,
    StrumPattern, Syllable, Tempo, Ticks, Tune, Tuplet, Verse,
};
use crate::desk::{BandSettings, Entry, Language, Settings, Theme, TuneId};
use crate::theory::{
    Accidental, Chord, Degree, Key, Letter, Mode, Naming, NoteName, Pitch, Quality, Symbol,
};

fn text() -> impl Strategy<Value = String> {
    "\\PC{0,12}"
}

fn ticks() -> impl Strategy<Value = Ticks> {
    any::<i64>().prop_map(Ticks)
}

fn name() -> impl Strategy<Value = NoteName> {
    (select(&Letter::ALL[..]), -2..=2).prop_map(|(letter, accidental)| {
        NoteName::new(letter, Accidental::new(accidental).unwrap())
    })
}

fn pitch() -> impl Strategy<Value = Pitch> {
    (name(), any::<i8>()).prop_map(|(name, octave)| Pitch::new(name, octave))
}

fn key() -> impl Strategy<Value = Key> {
    (name(), select(&Mode::ALL[..])).prop_map(|(tonic, mode)| Key::new(tonic, mode))
}

fn metre() -> impl Strategy<Value = Metre> {
    (any::<u8>(), 1_u8.., any::<[u8; 6]>()).prop_map(|(count, unit, groups)| Metre {
        count,
        unit,
        groups,
    })
}

fn chord() -> impl Strategy<Value = Chord> {
    (
        name(),
        vec(select(&Degree::ALL[..]), 0..8),
        option::of(name()),
    )
        .prop_map(|(root, degrees, bass)| Chord {
            root,
            quality: Quality::of(&degrees),
            bass,
        })
}

fn ornament() -> impl Strategy<Value = Ornament> {
    use Ornament::*;
    select(
        &[
            Staccato, Accent, Tenuto, Fermata, Roll, Trill, Mordent, Turn, UpBow, DownBow, Slide,
        ][..],
    )
}

fn note() -> impl Strategy<Value = Note> {
    let syllable = (text(), any::<bool>()).prop_map(|(text, joined)| Syllable { text, joined });
    let tuplet = any::<(u8, u8, bool)>().prop_map(|(count, instead_of, first)| Tuplet {
        count,
        instead_of,
        first,
    });
    (
        ticks(),
        ticks(),
        pitch(),
        any::<bool>(),
        any::<bool>(),
        option::of(tuplet),
        vec(pitch(), 0..3),
        vec(ornament(), 0..3),
        vec(option::of(syllable), 0..3),
    )
        .prop_map(
            |(at, length, pitch, tied, slurred, tuplet, grace, ornaments, syllables)| Note {
                at,
                length,
                pitch,
                tied,
                slurred,
                tuplet,
                grace,
                ornaments,
                syllables,
            },
        )
}

fn strum() -> impl Strategy<Value = StrumPattern> {
    use Stroke::*;
    let slot = (
        select(&[Direction::Down, Direction::Up][..]),
        select(&[Silent, Bass, Strum, Chop][..]),
        any::<bool>(),
    );
    let slot = slot.prop_map(|(direction, stroke, accent)| Slot {
        direction,
        stroke,
        accent,
    });
    (text(), metre(), ticks(), vec(slot, 0..5)).prop_map(|(name, metre, step, slots)| {
        StrumPattern {
            name,
            metre,
            step,
            slots,
        }
    })
}

fn bar() -> impl Strategy<Value = Bar> {
    let symbol = prop_oneof![chord().prop_map(Symbol::Chord), Just(Symbol::NoChord)];
    let chord_at = (ticks(), symbol).prop_map(|(at, symbol)| ChordAt { at, symbol });
    let annotation = (ticks(), text()).prop_map(|(at, text)| Annotation { at, text });
    let jump = any::<(bool, bool)>().prop_map(|(sign, to_coda)| match sign {
        true => Jump::DalSegno { to_coda },
        false => Jump::DaCapo { to_coda },
    });
    (
        (ticks(), option::of(metre()), option::of(key())),
        (
            vec(note(), 0..4),
            vec(chord_at, 0..3),
            vec(annotation, 0..2),
        ),
        any::<(bool, u8, Vec<u8>, bool, bool, bool, bool, bool)>(),
        option::of(jump),
    )
        .prop_map(
            |((length, metre, key), (notes, chords, annotations), flags, jump)| Bar {
                length,
                metre,
                key,
                notes,
                chords,
                annotations,
                repeat_start: flags.0,
                repeat_end: flags.1,
                ending: flags.2,
                section_end: flags.3,
                segno: flags.4,
                coda: flags.5,
                fine: flags.6,
                jump,
                line_end: flags.7,
            },
        )
}

fn rhythm() -> impl Strategy<Value = Rhythm> {
    prop_oneof![
        select(&Rhythm::NAMED[..]),
        text().prop_map(|word| Rhythm::Other(word + " of its own"))
    ]
}

fn date() -> impl Strategy<Value = DateTime<Utc>> {
    (0_i64..4_000_000_000, 0_u32..1_000_000_000)
        .prop_map(|(seconds, nanos)| DateTime::from_timestamp(seconds, nanos).unwrap())
}

fn tune() -> impl Strategy<Value = Tune> {
    let tempo = (1_f32..400.0, ticks()).prop_map(|(bpm, beat)| Tempo { bpm, beat });
    let part = (text(), any::<u32>(), option::of(strum())).prop_map(|(label, first, strum)| Part {
        label,
        first_bar: first as usize,
        strum,
    });
    let verse = vec(text(), 0..3).prop_map(|lines| Verse { lines });
    (
        (
            text(),
            vec(text(), 0..3),
            text(),
            text(),
            option::of(rhythm()),
        ),
        (
            metre(),
            key(),
            option::of(tempo),
            vec(bar(), 0..5),
            vec(part, 0..3),
        ),
        (
            vec(text(), 0..4),
            any::<Option<u8>>(),
            option::of(strum()),
            vec(verse, 0..2),
        ),
        (vec(text(), 0..2), option::of(date()), option::of(date())),
    )
        .prop_map(|(names, music, form, rest)| Tune {
            title: names.0,
            other_titles: names.1,
            composer: names.2,
            source: names.3,
            rhythm: names.4,
            metre: music.0,
            key: music.1,
            tempo: music.2,
            bars: music.3,
            parts: music.4,
            form: form.0,
            times_through: form.1,
            strum: form.2,
            verses: form.3,
            remarks: rest.0,
            made: rest.1,
            changed: rest.2,
        })
}

fn settings() -> impl Strategy<Value = Settings> {
    (
        (text(), any::<bool>(), any::<bool>(), vec(text(), 0..4)),
        select(&[Theme::Ebony, Theme::Spruce, Theme::Sun][..]),
        option::of(select(&Language::ALL[..])),
        select(&[Naming::English, Naming::German, Naming::Solfege][..]),
    )
        .prop_map(
            |((instrument, left_handed, less_motion, known), theme, language, naming)| Settings {
                instrument,
                retuned: BTreeMap::new(),
                left_handed,
                theme,
                language,
                naming,
                less_motion,
                known,
                band: BandSettings::default(), // a value of its own
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn a_tune_comes_back_as_it_was(tune in tune()) {
        prop_assert_eq!(value::read_tune(&value::write_tune(&tune)), Ok(tune));
    }

    #[test]
    fn an_entry_comes_back_as_it_was(tune in tune()) {
        let entry = Entry::of(TuneId(7), &tune);
        prop_assert_eq!(value::read_entry(TuneId(7), &value::write_entry(&entry)), Ok(entry));
    }

    #[test]
    fn settings_come_back_as_they_were(settings in settings()) {
        prop_assert_eq!(value::read_settings(&value::write_settings(&settings)), Ok(settings));
    }

    #[test]
    fn tunings_come_back_as_they_were(
        retuned in btree_map(text(), vec(any::<i8>(), 0..6), 0..4),
    ) {
        prop_assert_eq!(value::read_tunings(&value::write_tunings(&retuned)), Ok(retuned));
    }

    #[test]
    fn a_flipped_bit_is_noticed(tune in tune(), place in any::<proptest::sample::Index>(), bit in 0_u8..8) {
        let mut bytes = value::write_tune(&tune);
        let place = place.index(bytes.len());
        bytes[place] ^= 1_u8 << bit;
        prop_assert!(value::read_tune(&bytes).is_err());
    }

    #[test]
    fn a_cut_is_noticed(tune in tune(), place in any::<proptest::sample::Index>()) {
        let bytes = value::write_tune(&tune);
        prop_assert!(value::read_tune(&bytes[..place.index(bytes.len())]).is_err());
    }

    #[test]
    fn dates_alone_make_no_other_tune(tune in tune(), made in date()) {
        let later = Tune { made: Some(made), changed: None, ..tune.clone() };
        prop_assert!(value::same_tune(&tune, &later));
        let renamed = Tune { composer: tune.composer.clone() + "!", ..tune.clone() };
        prop_assert!(!value::same_tune(&tune, &renamed));
    }

    #[test]
    fn bytes_of_any_other_origin_are_refused_without_harm(bytes in vec(any::<u8>(), 0..300)) {
        prop_assert!(value::read_tune(&bytes).is_err());
        prop_assert!(value::read_entry(TuneId(1), &bytes).is_err());
    }
}

#[test]
fn a_newer_value_is_told_from_a_damaged_one() {
    let settings = value::write_settings(&Settings {
        instrument: "mandolin".to_owned(),
        retuned: BTreeMap::new(),
        left_handed: false,
        theme: Theme::Ebony,
        language: None,
        naming: Naming::English,
        less_motion: false,
        known: Vec::new(),
        band: BandSettings::default(),
    });
    let mut newer = settings.clone();
    newer[0] = 2;
    assert_eq!(value::read_settings(&newer), Err(ValueError::Newer));
    newer[9] ^= 1;
    assert_eq!(value::read_settings(&newer), Err(ValueError::Damaged));
}

/// An entry as version 1 wrote it on its first day; see `tests/robust/store.rs` for tunes and settings.
#[test]
fn an_entry_of_version_1_is_written_and_read_as_on_its_first_day() {
    let entry = Entry {
        id: TuneId(7),
        titles: vec!["The Weir".to_owned(), "Das Mühlwehr".to_owned()],
        rhythm: "slip-jig".to_owned(),
        metre: "9/8".to_owned(),
        form: "AABB".to_owned(),
        key: "F# dorian".parse().unwrap(),
        first_note: Some(Pitch::new("C#".parse().unwrap(), 5)),
        chords: vec!["F#m7".parse().unwrap(), "B/D#".parse().unwrap()],
    };
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/tests/robust/fixtures/v1-entry.bin"
    );
    if std::env::var_os("FOURCOURSE_WRITE_FIXTURES").is_some() {
        std::fs::write(path, value::write_entry(&entry)).unwrap();
    }
    let kept = std::fs::read(path).unwrap();
    assert!(
        value::write_entry(&entry) == kept,
        "an entry is written in another way"
    );
    assert_eq!(value::read_entry(TuneId(7), &kept), Ok(entry));
}
