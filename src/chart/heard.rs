//! The melody as it is heard.

use super::time::Ticks;
use super::tune::{Note, Tune};

/// A note as one hears it: the notes that ties join are one, grace notes are none.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heard<'a> {
    /// Start, from the start of the tune.
    pub at: Ticks,
    /// How long it sounds.
    pub length: Ticks,
    /// MIDI key number: 60 is middle C.
    pub midi: i32,
    /// Which of the bars that were asked for it begins in.
    pub bar: usize,
    /// The note as written; of tied ones, the first.
    pub note: &'a Note,
}

impl Tune {
    /// The melody in order of time, over bars given by their index in [`Tune::bars`] and their start. Notes of a chord
    /// keep their order, the melody first.
    pub fn heard(&self, bars: impl IntoIterator<Item = (usize, Ticks)>) -> Vec<Heard<'_>> {
        let mut heard: Vec<Heard> = Vec::new();
        // Notes with a tie that leads on, as places in `heard`.
        let mut held: Vec<usize> = Vec::new();
        for (place, (bar, start)) in bars.into_iter().enumerate() {
            let notes = self.bars.get(bar).map_or(&[][..], |bar| &bar.notes);
            for note in notes {
                let (at, midi) = (start + note.at, note.pitch.midi());
                held.retain(|&index| heard[index].at + heard[index].length >= at);
                let joins = held.iter().position(|&index| {
                    let before = heard[index];
                    before.midi == midi && before.at + before.length == at
                });
                let index = match joins.map(|place| held.swap_remove(place)) {
                    Some(index) => {
                        heard[index].length += note.length;
                        index
                    }
                    None => {
                        heard.push(Heard {
                            at,
                            length: note.length,
                            midi,
                            bar: place,
                            note,
                        });
                        heard.len() - 1
                    }
                };
                if note.tied {
                    held.push(index);
                }
            }
        }
        heard.sort_by_key(|note| note.at);
        heard
    }
}
