//! Where a capo goes for a key, and whose shapes the hand then makes.

use crate::theory::{Key, Letter, Mode};

/// The tonics whose chord a guitar has as an open shape in a mode, the easiest first (common practice): G C D A E in major,
/// Am Em Dm in minor. Who plays a modal tune holds its own tonic, not that of the relative major; on G, dorian is an open
/// shape on the mandolin alone.
pub const fn families(mode: Mode) -> &'static [Letter] {
    match mode {
        Mode::Major | Mode::Lydian => &[Letter::G, Letter::C, Letter::D, Letter::A, Letter::E],
        Mode::Mixolydian => &[Letter::A, Letter::D, Letter::E, Letter::G, Letter::C],
        Mode::Dorian => &[Letter::A, Letter::D, Letter::E, Letter::G],
        Mode::Minor | Mode::Phrygian | Mode::Locrian => &[Letter::A, Letter::E, Letter::D],
    }
}

/// A capo, and the key whose shapes then sound the key that is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct CapoPlace {
    /// The fret that the capo lies on; 0 is none.
    pub fret: u8,
    /// The key whose shapes the hand makes.
    pub shapes: Key,
}

/// All capo positions below the octave that sound a key with the shapes of one of its [`families`], from the nut up.
///
/// ```
/// use fourcourse::frets::capo_places;
/// let places = |key: &str| -> Vec<String> {
///     let places = capo_places(key.parse().unwrap()).into_iter();
///     places.map(|place| format!("{} {}", place.fret, place.shapes)).collect()
/// };
/// assert_eq!(places("A"), ["0 A", "2 G", "5 E", "7 D", "9 C"]);
/// assert_eq!(places("Bm"), ["2 Am", "7 Em", "9 Dm"]);
/// ```
pub fn capo_places(key: Key) -> Vec<CapoPlace> {
    let places = (0..12).map(|fret: u8| CapoPlace {
        fret,
        shapes: key.down(i32::from(fret)),
    });
    { places }
        .filter(|place| family(place.shapes).is_some())
        .collect()
}

/// Which of the [`families`] of its mode a key is.
pub(crate) fn family(shapes: Key) -> Option<usize> {
    let tonic = shapes.tonic.class().semitones();
    let mut families = families(shapes.mode).iter();
    families.position(|family| family.semitones() == tonic)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::PitchClass;

    #[test]
    fn every_key_has_each_family_once() {
        for mode in Mode::ALL {
            for class in 0..12 {
                let key = Key::spelled_for_players(PitchClass::new(class), mode);
                let mut tonics: Vec<_> = { capo_places(key).into_iter() }
                    .map(|place| place.shapes.tonic.letter)
                    .collect();
                tonics.sort();
                let mut all = families(mode).to_vec();
                all.sort();
                assert_eq!(tonics, all, "{key}");
            }
        }
    }
}
