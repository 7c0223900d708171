//! How hard the versions of a tune are beside each other, in dots, and which is the easiest that rings.

use crate::frets::Ease;

use super::arrange::Version;

/// As large a part of the time as this, two courses must sound for a version to be called ringing.
const RINGS: f32 = 0.5;
/// Versions whose effort is within this factor are as easy as each other.
const AS_EASY: f32 = 1.05;
/// Efforts, in movements a quarter note, up to which a version has 1, 2, 3, 4 dots where no other version pushes it;
/// judgement. Over the shipped tunes and all instruments an eighth to a third falls on each.
const HARD: [f32; 4] = [0.9, 1.25, 1.6, 1.85];
/// The most dots.
const MOST: usize = HARD.len() + 1;

/// How hard each version is, in 1 to 5 dots: as its effort says, but a version that is harder than another has more dots
/// than that one, and those about as easy as each other have as many.
pub fn dots(versions: &[(Version, Ease)]) -> Vec<u8> {
    let mut order: Vec<usize> = (0..versions.len()).collect();
    let effort = |index: usize| versions[index].1.effort;
    order.sort_by(|&a, &b| effort(a).total_cmp(&effort(b)));
    // Groups of about the same effort, and what each is counted from.
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for index in order {
        match groups.last_mut() {
            Some(group) if effort(index) <= effort(group[0]) * AS_EASY => group.push(index),
            _ => groups.push(vec![index]),
        }
    }
    let mut dots = vec![1; versions.len()];
    let mut before = 0;
    let count = groups.len();
    for (place, group) in groups.into_iter().enumerate() {
        let own = 1 + HARD.iter().filter(|&&most| effort(group[0]) > most).count();
        // Those still to come need one more dot each.
        let room = (MOST + 1 + place).saturating_sub(count).max(1);
        before = own.max(before + 1).min(room);
        for index in group {
            dots[index] = u8::try_from(before).unwrap_or(u8::MAX);
        }
    }
    dots
}

/// Of the versions in which two courses sound half of the time at least the one with the fewest [`dots`], and of those
/// with as many the one that is taught first (the list is in that order); `None` where none rings.
pub fn easiest_that_rings(versions: &[(Version, Ease)]) -> Option<Version> {
    let rated = versions.iter().zip(dots(versions));
    let ringing = rated.filter(|((_, ease), _)| ease.ringing >= RINGS);
    ringing
        .min_by_key(|&(_, dots)| dots)
        .map(|(&(version, _), _)| version)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rated(efforts: [f32; 4]) -> Vec<u8> {
        let ease = efforts.map(|effort| Ease {
            effort,
            ringing: 1.0,
        });
        dots(&[0, 1, 2, 3].map(|at| (Version::ALL[at], ease[at])))
    }

    #[test]
    fn what_is_harder_has_more_dots_and_what_is_as_easy_as_many() {
        assert_eq!(rated([0.5, 1.0, 1.5, 1.7]), [1, 2, 3, 4]);
        assert_eq!(rated([1.3, 1.4, 1.5, 1.7]), [2, 3, 4, 5]);
        assert_eq!(rated([2.0, 2.5, 2.55, 3.0]), [3, 4, 4, 5]);
        assert_eq!(rated([0.5, 0.5, 0.5, 0.5]), [1, 1, 1, 1]);
        assert_eq!(rated([0.9, 0.6, 0.7, 0.8]), [4, 1, 2, 3]);
        assert_eq!(dots(&[]), []);
    }
}
