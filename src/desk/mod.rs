//! The desk: what the app knows, what it can be asked, and what is then to be seen.
//!
//! A view is a plain struct of kinds and numbers; an [`Ask`] changes the state; whatever reaches outside (saving,
//! switching the language) comes back as an [`Effect`] for the shell to carry out. Time is an argument.

mod ask;
mod settings;
mod songbook;
mod stand;

pub use ask::{Ask, Effect, Room};
pub use settings::{Language, Settings, SettingsView, Theme};
pub use songbook::{Entry, Filter, Songbook, SongbookState, SongbookView, TuneId, TuneRow};
pub use stand::{
    ChordCard, ChordNames, FollowState, FormChip, MapBar, MapLine, MissingNote, NextCard, Passed,
    RingString, ShapeView, Simplify, SlotView, StandView, StrumView, Verdict,
};
