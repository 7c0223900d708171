//! A tune in the key that was called, and with simpler chords.

use crate::theory::{Direction, Key, NoteName, Symbol, Transposition, three_chords};

use super::tune::{Bar, Tune};

/// How chords are made simpler.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Simpler {
    /// Each chord to its triad.
    Triads,
    /// Each chord to one of the three main chords of the key it stands in.
    ThreeChords,
}

impl Simpler {
    /// A symbol made simpler in a key.
    pub fn symbol(self, symbol: Symbol, key: Key) -> Symbol {
        match (symbol, self) {
            (Symbol::Chord(chord), Self::Triads) => Symbol::Chord(chord.triad()),
            (Symbol::Chord(chord), Self::ThreeChords) => Symbol::Chord(three_chords(chord, key)),
            (Symbol::NoChord, _) => Symbol::NoChord,
        }
    }
}

/// How a tune moves to another key: the same way throughout in sound, but spelled for the key of each stretch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyChange {
    key: Key,
    /// Stretches in one key: the first bar, and the move from the old key to the new. The first begins at bar 0.
    stretches: Vec<(usize, Transposition)>,
}

impl KeyChange {
    /// The key that the tune begins in after the change.
    pub fn key(&self) -> Key {
        self.key
    }

    /// The move of what is written in a bar.
    pub fn at(&self, bar: usize) -> Transposition {
        let after = self.stretches.partition_point(|&(first, _)| first <= bar);
        self.stretches[after.saturating_sub(1)].1
    }
}

/// The key on another tonic in the same mode, and which way pitches go there; see [`Tune::key_change`].
fn way(from: Key, tonic: NoteName) -> (Key, Direction) {
    let key = Key::new(tonic, from.mode);
    let key = match key.signature().abs() > 7 {
        true => Key::spelled_for_players(tonic.class(), key.mode),
        false => key,
    };
    let nearest = Transposition::between(from, key);
    let down = nearest.interval().semitones == 6 && from.tonic.class() > key.tonic.class();
    match down {
        true => (key, Direction::Down),
        false => (key, Direction::Nearest),
    }
}

/// A tune's key on another tonic, and the move of what its first stretch holds, as [`Tune::key_change`] makes it.
///
/// ```
/// use fourcourse::chart::called_key;
/// let (key, by) = called_key("Em".parse().unwrap(), "G".parse().unwrap());
/// assert_eq!((key.to_string(), by.chord("D".parse().unwrap()).to_string()), ("Gm".into(), "F".into()));
/// ```
pub fn called_key(written: Key, tonic: NoteName) -> (Key, Transposition) {
    let (key, direction) = way(written, tonic);
    (key, Transposition::toward(written, key, direction))
}

impl Tune {
    /// The key of each written bar.
    pub fn keys(&self) -> Vec<Key> {
        let mut key = self.key;
        let mut change = |new: Option<Key>| {
            key = new.unwrap_or(key);
            key
        };
        self.bars.iter().map(|bar| change(bar.key)).collect()
    }

    /// The way to another tonic, in the tune's own mode. Pitches go the shorter way; a tritone goes up from the lower
    /// half of the octave that begins at C and down from the upper one, so that there and back is where one was. A
    /// tonic that would take more than seven signs is spelled the other way.
    pub fn key_change(&self, tonic: NoteName) -> KeyChange {
        let (target, direction) = way(self.key, tonic);
        let whole = Transposition::toward(self.key, target, direction);
        let mut stretches = vec![(0, whole)];
        for (i, bar) in self.bars.iter().enumerate() {
            if let Some(key) = bar.key {
                // Not the whole tune's interval: where that gives A sharp, the stretch is written in B flat.
                let moved = whole.key(key);
                stretches.push((i, Transposition::toward(key, moved, direction)));
            }
        }
        KeyChange {
            key: target,
            stretches,
        }
    }

    /// The whole tune, melody, chords and all, with another tonic. See [`Self::key_change`].
    pub fn in_key(&self, tonic: NoteName) -> Self {
        let change = self.key_change(tonic);
        let mut tune = self.clone();
        tune.key = change.key();
        let mut stretches = change.stretches.iter().copied().peekable();
        let mut by = change.stretches[0].1;
        for (i, bar) in tune.bars.iter_mut().enumerate() {
            while let Some((_, next)) = stretches.next_if(|&(first, _)| first <= i) {
                by = next;
            }
            move_bar(bar, by);
        }
        tune
    }

    /// The tune with simpler chords.
    pub fn simplified(&self, simpler: Simpler) -> Self {
        let mut tune = self.clone();
        for (bar, key) in tune.bars.iter_mut().zip(self.keys()) {
            for chord in &mut bar.chords {
                chord.symbol = simpler.symbol(chord.symbol, key);
            }
        }
        tune
    }
}

fn move_bar(bar: &mut Bar, by: Transposition) {
    bar.key = bar.key.map(|key| by.key(key));
    for chord in &mut bar.chords {
        chord.symbol = by.symbol(chord.symbol);
    }
    for note in &mut bar.notes {
        note.pitch = by.pitch(note.pitch);
        for grace in &mut note.grace {
            *grace = by.pitch(*grace);
        }
    }
}
