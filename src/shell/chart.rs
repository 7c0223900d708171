//! `fourcourse chart TUNE`: a tune on one page.

use clap::Args;

use fourcourse::chart::{Changes, Playing, Tune};
use fourcourse::frets::{Instrument, Order, shapes};
use fourcourse::theory::Symbol;

use super::page::side_by_side;
use super::shapes::Neck;
use super::{Failure, Said, Shell, chord_box, grid, header, songbook, verses};

/// A tune on one page: its changes in boxes, four bars a line, and the shapes of its chords
#[derive(Debug, Args)]
pub(super) struct Chart {
    /// Words of its title, its number in the list, or a file
    tune: String,

    /// The key that was called: A, Bb
    #[arg(long, value_name = "KEY")]
    key: Option<String>,

    /// Numbers below the letters
    #[arg(long)]
    numbers: bool,

    #[command(flatten)]
    neck: Neck,
}

impl Chart {
    pub(super) fn run(&self, shell: &Shell) -> Result<Said, Failure> {
        let mut found = songbook::find(&self.tune, shell)?;
        let instrument = self.neck.instrument(found.instrument())?;
        let capo = self.neck.capo();
        let written = found.tune.key;
        let tune = found.in_called_key(self.key.as_deref(), shell)?;
        let playing = tune.playing();
        let mut page = String::new();
        let mut notes = tune.bars.iter().flat_map(|bar| &bar.notes);
        let start = notes.next().map(|first| {
            let place = instrument.place(first.pitch, capo);
            header::start(first.pitch.name, place, &instrument, shell)
        });
        for line in header::lines(&tune, &playing, written, start, capo, shell) {
            page += &line;
            page.push('\n');
        }
        page.push('\n');
        page += &grid::grid(&tune, &playing, self.numbers, shell.look);

        let boxes = self.boxes(&tune, &playing, &instrument, shell);
        if !boxes.is_empty() {
            page.push('\n');
            page += &side_by_side(&boxes, 3, shell.look.width);
        }
        for line in verses::lines(&tune, shell.look.width) {
            page += &line;
            page.push('\n');
        }
        Ok(Said {
            out: page,
            err: found.remark,
        })
    }

    /// The shapes of the tune's chords, in the order in which they are needed.
    fn boxes(
        &self,
        tune: &Tune,
        playing: &Playing,
        instrument: &Instrument,
        shell: &Shell,
    ) -> Vec<Vec<String>> {
        let capo = self.neck.capo();
        let symbols = Changes::of(tune, playing).symbols().into_iter();
        let chords = symbols.filter_map(|symbol| match symbol {
            Symbol::Chord(chord) => Some(chord),
            Symbol::NoChord => None,
        });
        let found: Vec<_> = chords
            .map(|chord| {
                (
                    chord,
                    shapes(instrument, capo, chord, Order::Beginner, 1).pop(),
                )
            })
            .collect();
        let rows = chord_box::rows(found.iter().filter_map(|(_, shape)| shape.as_ref()));
        let lines = found.into_iter().map(|(chord, shape)| {
            let style = shell.look.notes();
            let mut lines = vec![chord_box::title(chord, self.neck.capo, style, &shell.words)];
            match shape {
                Some(shape) => {
                    lines.extend(chord_box::lines(&shape, rows, instrument, capo, shell.look));
                    lines.extend(chord_box::missing(&shape, &shell.words));
                }
                None => lines.push(shell.look.sign("–", "-").to_owned()),
            }
            lines
        });
        lines.collect()
    }
}
