//! Where a capo goes for a key, and whose shapes the hand then makes.

use crate::theory::{Key, Letter, Mode};

/// The major keys whose chords a guitar has as open shapes, the easiest first (common practice).
pub const FAMILIES: [Letter; 5] = [Letter::G, Letter::C, Letter::D, Letter::A, Letter::E];

/// A capo, and the key whose shapes then sound the key that is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct CapoPlace {
    /// The fret that the capo lies on; 0 is none.
    pub fret: u8,
    /// The key whose shapes the hand makes.
    pub shapes: Key,
    /// The family that it belongs to: the major key with the same notes.
    pub family: Letter,
}

/// All capo positions below the octave that sound a key with the shapes of a family, from the nut up. A minor or modal
/// key takes the family of the major key with the same notes: E minor and A dorian are held as in G.
///
/// ```
/// use fourcourse::frets::capo_places;
/// let places = |key: &str| -> Vec<String> {
///     let places = capo_places(key.parse().unwrap()).into_iter();
///     places.map(|place| format!("{} {}", place.fret, place.shapes)).collect()
/// };
/// assert_eq!(places("A"), ["0 A", "2 G", "5 E", "7 D", "9 C"]);
/// assert_eq!(places("Bm"), ["0 Bm", "2 Am", "5 F#m", "7 Em", "10 C#m"]);
/// ```
pub fn capo_places(key: Key) -> Vec<CapoPlace> {
    (0..12)
        .filter_map(|fret: u8| {
            let shapes = key.down(i32::from(fret));
            let major = shapes.relative(Mode::Major).tonic.class();
            let family = FAMILIES
                .into_iter()
                .find(|family| family.semitones() == major.semitones())?;
            Some(CapoPlace {
                fret,
                shapes,
                family,
            })
        })
        .collect()
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
                let mut families: Vec<_> = capo_places(key).iter().map(|p| p.family).collect();
                families.sort();
                let mut all = FAMILIES;
                all.sort();
                assert_eq!(families, all, "{key}");
            }
        }
    }
}
