//! Words about tonight's list and what was played.

use i18n_embed_fl::fl;

use super::Words;
use crate::desk::{Evening, FinderView, Found, LastPlayed, NextTune, Saving, TonightRow, Undo};

impl Words {
    /// When a tune was played last.
    fn last_played(&self, last: Option<&LastPlayed>) -> String {
        let Some(last) = last else {
            return fl!(self.loader, "last-never");
        };
        let key = self.key_badge(&last.key, &last.mode);
        match last.days {
            0 => fl!(self.loader, "last-tonight", key = key),
            1 => fl!(self.loader, "last-yesterday", key = key),
            days => fl!(self.loader, "last-days", days = days, key = key),
        }
    }

    fn with_rhythm(&self, rhythm: &str, last: Option<&LastPlayed>) -> String {
        let last = self.last_played(last);
        match rhythm {
            "" => last,
            rhythm => format!("{} · {last}", self.rhythm(rhythm)),
        }
    }

    /// What stands under a title of the list.
    pub fn listed(&self, row: &TonightRow) -> String {
        self.with_rhythm(&row.rhythm, row.last.as_ref())
    }

    /// What stands under a title that was found.
    pub fn found(&self, row: &Found) -> String {
        self.with_rhythm(&row.rhythm, row.last.as_ref())
    }

    /// How many tunes were found.
    pub fn found_count(&self, view: &FinderView) -> String {
        self.tunes_of(view.rows.len(), view.count)
    }

    /// How many tunes the list has.
    pub fn list_count(&self, count: usize) -> String {
        fl!(self.loader, "songbook-count", count = count)
    }

    /// What the order by keys saves.
    pub fn saving(&self, saving: &Saving) -> String {
        let (now, then) = (saving.now, saving.then);
        let mut said = Vec::new();
        if now.pegs > then.pegs {
            said.push(fl!(
                self.loader,
                "save-pegs",
                count = (now.pegs - then.pegs)
            ));
        }
        if now.capos > then.capos {
            said.push(fl!(
                self.loader,
                "save-capos",
                count = (now.capos - then.capos)
            ));
        }
        if now.keys > then.keys {
            said.push(fl!(
                self.loader,
                "save-keys",
                count = (now.keys - then.keys)
            ));
        }
        fl!(self.loader, "save-said", what = said.join(", "))
    }

    /// What can be undone.
    pub fn undo(&self, undo: &Undo) -> String {
        match undo {
            Undo::Removed(title) => fl!(self.loader, "undo-removed", title = title.as_str()),
            Undo::Reordered => fl!(self.loader, "undo-reordered"),
        }
    }

    /// The day of an evening.
    pub fn evening(&self, evening: &Evening) -> String {
        use chrono::Datelike;
        match evening.days {
            0 => fl!(self.loader, "tonight"),
            1 => fl!(self.loader, "yesterday"),
            _ => fl!(
                self.loader,
                "date",
                year = evening.day.year().to_string(),
                month = format!("{:02}", evening.day.month()),
                day = format!("{:02}", evening.day.day())
            ),
        }
    }

    /// The next tune with its key.
    pub fn next_tune(&self, next: &NextTune) -> String {
        format!("{} · {}", next.title, self.key_badge(&next.key, &next.mode))
    }
}
