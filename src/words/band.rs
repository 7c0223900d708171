//! Words about the band.

use i18n_embed_fl::fl;

use super::Words;
use crate::band::Style;
use crate::desk::{BandView, Heard, PlayerView};

impl Words {
    /// The name of a style.
    pub fn style(&self, style: &Style) -> String {
        self.named("style", style.id())
    }

    /// A style for those who listen, with whether it suits the tune.
    pub fn style_said(&self, style: &Style, fits: bool) -> String {
        let style = self.style(style);
        match fits {
            true => fl!(self.loader, "band-style-fits", style = style),
            false => style,
        }
    }

    /// The name of a player of the band.
    pub fn player(&self, player: &PlayerView) -> String {
        self.named("player", player.player.id())
    }

    /// How loud a player is, for those who listen.
    pub fn level_of(&self, player: &PlayerView) -> String {
        fl!(self.loader, "band-level", player = self.player(player))
    }

    /// What a touch of a player's sign does.
    pub fn mute(&self, player: &PlayerView) -> String {
        let name = self.player(player);
        match player.muted {
            true => fl!(self.loader, "band-unmute", player = name),
            false => fl!(self.loader, "band-mute", player = name),
        }
    }

    /// A string to tune by, for those who listen.
    pub fn tune_by(&self, note: &str) -> String {
        fl!(self.loader, "band-string", note = note)
    }

    /// Whether the band is heard, in a sentence.
    pub fn heard(&self, band: &BandView) -> String {
        match (band.settings.aloud, band.heard) {
            (false, _) => fl!(self.loader, "band-sound-off"),
            (true, Heard::NoDevice) => fl!(self.loader, "band-sound-none"),
            (true, Heard::DeviceLost) => fl!(self.loader, "band-sound-lost"),
            (true, _) => fl!(self.loader, "band-sound-on"),
        }
    }

    /// Why nothing is heard, in a word or three; empty where nothing is amiss.
    pub fn missing_sound(&self, band: &BandView) -> String {
        match (band.is_missing(), band.heard) {
            (true, Heard::DeviceLost) => fl!(self.loader, "band-missing-lost"),
            (true, _) => fl!(self.loader, "band-missing-none"),
            (false, _) => String::new(),
        }
    }

    /// The way to the band, for those who listen.
    pub fn band(&self, band: &BandView, bpm: u32) -> String {
        fl!(
            self.loader,
            "band-said",
            bpm = bpm,
            heard = self.heard(band)
        )
    }
}
