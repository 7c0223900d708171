//! An evening's tunes: in which order, and which ones.

use chrono::NaiveDate;

use crate::frets::{Instrument, Setup, setups};
use crate::theory::Key;

use super::seat::Seat;

/// The order of tunes, by their keys, that saves the circle retuning: tunes of one key follow one another, and keys
/// follow one another so that few pegs are turned and few capos moved. It starts in the first tune's key; tunes of one
/// key stay in their order. Returns indices into `keys`.
///
/// From key to key the cheapest change is taken, and the whole is kept only where it saves something over the order as
/// it was given; the very least is not looked for.
///
/// ```
/// use fourcourse::{circle::{Seat, least_retuning}, frets::Instrument};
/// let banjo = Seat::playing(Instrument::by_id("banjo").unwrap());
/// let keys = ["G", "D", "A", "C", "G", "D"].map(|key| key.parse().unwrap());
/// assert_eq!(least_retuning(&keys, &[banjo]), [0, 4, 2, 1, 5, 3]); // G G A, then double C: D D C
/// ```
pub fn least_retuning(keys: &[Key], seats: &[Seat]) -> Vec<usize> {
    let retuners: Vec<&Instrument> = seats
        .iter()
        .filter_map(|seat| seat.instrument.as_ref())
        .filter(|instrument| keys.iter().any(|&key| !setups(instrument, key).is_empty()))
        .collect();
    let mut groups: Vec<(Key, Vec<usize>)> = Vec::new();
    for (index, &key) in keys.iter().enumerate() {
        match groups.iter_mut().find(|(there, _)| *there == key) {
            Some((_, tunes)) => tunes.push(index),
            None => groups.push((key, vec![index])),
        }
    }
    let mut order: Vec<usize> = Vec::with_capacity(keys.len());
    let mut here = None;
    while !groups.is_empty() {
        let nearest = here.map_or(0, |here| {
            let work = |(_, (to, _)): &(usize, &(Key, Vec<usize>))| change(here, *to, &retuners);
            let nearest = groups.iter().enumerate().min_by_key(work);
            nearest.map_or(0, |(place, _)| place)
        });
        let (key, tunes) = groups.remove(nearest);
        order.extend(tunes);
        here = Some(key);
    }
    let given: Vec<usize> = (0..keys.len()).collect();
    let whole = |order: &[usize]| -> u32 {
        let pairs = order.windows(2);
        pairs
            .map(|pair| change(keys[pair[0]], keys[pair[1]], &retuners))
            .sum()
    };
    if whole(&order) <= whole(&given) {
        order
    } else {
        given
    }
}

/// What it takes the circle to go from one key to another: turned pegs and moved capos; and one more for the change of
/// key itself, which every player has to follow.
fn change(from: Key, to: Key, retuners: &[&Instrument]) -> u32 {
    let work = retuners
        .iter()
        .map(|instrument| set_up(instrument, to).work(&set_up(instrument, from), instrument));
    work.sum::<u32>() + u32::from(from != to)
}

/// What the circle has to do between the tunes of a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Retuning {
    /// Pegs that are turned.
    pub pegs: u32,
    /// Capos that are moved by those who set up anew for a key.
    pub capos: u32,
    /// Changes of key, which everybody has to follow.
    pub keys: u32,
}

/// What it takes to play tunes in keys one after the other.
///
/// ```
/// use fourcourse::{circle::{Retuning, Seat, retuning}, frets::Instrument};
/// let banjo = Seat::playing(Instrument::by_id("banjo").unwrap());
/// let keys = ["G", "D", "G"].map(|key| key.parse().unwrap());
/// // To double C and back: two pegs each way, and a capo on and off.
/// assert_eq!(retuning(&keys, &[banjo]), Retuning { pegs: 4, capos: 2, keys: 2 });
/// ```
pub fn retuning(keys: &[Key], seats: &[Seat]) -> Retuning {
    let mut all = Retuning::default();
    for pair in keys.windows(2) {
        all.keys += u32::from(pair[0] != pair[1]);
        for instrument in seats.iter().filter_map(|seat| seat.instrument.as_ref()) {
            let (from, to) = (set_up(instrument, pair[0]), set_up(instrument, pair[1]));
            all.pegs += to.pegs(&from, instrument);
            all.capos += u32::from(from.capo != to.capo);
        }
    }
    all
}

fn set_up(instrument: &Instrument, key: Key) -> Setup {
    let setups = setups(instrument, key);
    setups.first().copied().unwrap_or(Setup::USUAL)
}

/// The tunes that were not played since a day, each given by the day on which it was played last: the ones never played
/// first, then those that have waited longest. Returns indices into `last`.
pub fn longest_unplayed(last: &[Option<NaiveDate>], since: NaiveDate) -> Vec<usize> {
    let unplayed = |&tune: &usize| last[tune].is_none_or(|day| day < since);
    let mut tunes: Vec<usize> = (0..last.len()).filter(unplayed).collect();
    tunes.sort_by_key(|&tune| last[tune]);
    tunes
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theory::{Mode, PitchClass};
    use proptest::prelude::*;

    #[test]
    fn tunes_never_played_come_first_and_those_of_the_day_itself_do_not_come() {
        let day = |day| NaiveDate::from_ymd_opt(2026, 5, day);
        let last = [day(3), None, day(1), day(9), None];
        assert_eq!(longest_unplayed(&last, day(3).unwrap()), [1, 4, 2]);
    }

    #[test]
    fn without_anybody_who_retunes_keys_are_only_kept_together() {
        let keys = ["G", "A", "G", "D"].map(|key| key.parse().unwrap());
        let seats = [Seat::playing(Instrument::mandolin())];
        assert_eq!(least_retuning(&keys, &seats), [0, 2, 1, 3]);
        assert_eq!(least_retuning(&[], &seats), [0; 0]);
    }

    proptest! {
        #[test]
        fn every_tune_is_played_once_and_never_with_more_retuning(
            list in proptest::collection::vec((0..12, proptest::bool::ANY), 0..14),
        ) {
            let mode = |minor| if minor { Mode::Minor } else { Mode::Major };
            let keys: Vec<Key> = list
                .iter()
                .map(|&(class, minor)| Key::spelled_for_players(PitchClass::new(class), mode(minor)))
                .collect();
            let seats = ["banjo", "fiddle"].map(|id| Seat::playing(Instrument::by_id(id).unwrap()));
            let order = least_retuning(&keys, &seats);
            let mut sorted = order.clone();
            sorted.sort_unstable();
            prop_assert_eq!(sorted, (0..keys.len()).collect::<Vec<_>>());
            let instruments: Vec<_> = seats.iter().filter_map(|s| s.instrument.as_ref()).collect();
            let work = |order: &[usize]| -> u32 {
                order.windows(2).map(|p| change(keys[p[0]], keys[p[1]], &instruments)).sum()
            };
            prop_assert!(work(&order) <= work(&(0..keys.len()).collect::<Vec<_>>()));
            prop_assert!(order.first().is_none_or(|&first| first == 0));
        }
    }
}
