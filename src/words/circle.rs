//! Words about the circle and its keys.

use i18n_embed_fl::fl;

use super::Words;
use crate::circle::{CapoHabit, KeyEase, VoiceType};
use crate::desk::{CircleView, KeyName, Plays, RankedView, SeatKeyView, SeatTitle, SeatView};
use crate::frets::FIRST_POSITION_ENDS;
use crate::theory::Reads;

impl Words {
    /// What can be brought to the circle.
    pub fn plays(&self, plays: &Plays) -> String {
        match plays {
            Plays::Instrument(id) => self.instrument(id),
            Plays::Voice => fl!(self.loader, "seat-singer"),
            Plays::Page(Reads::BFlat) => fl!(self.loader, "seat-in-b-flat"),
            Plays::Page(Reads::EFlat) => fl!(self.loader, "seat-in-e-flat"),
            Plays::Page(Reads::F) => fl!(self.loader, "seat-in-f"),
            Plays::Page(Reads::Concert) => fl!(self.loader, "seat-in-c"),
        }
    }

    /// What a seat is called.
    pub fn seat(&self, title: &SeatTitle) -> String {
        let plays = self.plays(&title.plays);
        match (title.name.as_str(), title.number) {
            ("", 0) => plays,
            ("", number) => format!("{plays} {number}"),
            (name, _) => name.to_owned(),
        }
    }

    /// A type of voice.
    pub fn voice(&self, voice: VoiceType) -> String {
        self.named("voice", voice.id())
    }

    fn badge(&self, key: &KeyName) -> String {
        self.key_badge(&key.0, &key.1)
    }

    fn held_capo(&self, fret: u8, shapes: &KeyName) -> String {
        let key = self.badge(shapes);
        match fret {
            0 => fl!(self.loader, "seat-no-capo", key = key),
            fret => fl!(self.loader, "seat-capo-at", fret = fret, key = key),
        }
    }

    /// What stands under a seat's name: how it is set for the tune.
    pub fn seat_detail(&self, seat: &SeatView) -> String {
        let mut said = Vec::new();
        if !seat.title.name.is_empty() {
            said.push(self.plays(&seat.title.plays));
        }
        if seat.title.player {
            said.push(fl!(self.loader, "seat-you"));
        }
        if let Some(sheet) = &seat.sheet {
            if let Some(tuned) = &sheet.tuned {
                said.push(fl!(self.loader, "seat-tuned", notes = tuned.as_str()));
            }
            if sheet.capo > 0 || seat.set.habit() != CapoHabit::Never {
                said.push(self.held_capo(sheet.capo, &sheet.shapes));
            }
            if let Some(written) = &sheet.written {
                said.push(fl!(self.loader, "seat-reads", key = self.badge(written)));
            }
        }
        if let Some((low, high)) = &seat.voice {
            said.push(fl!(
                self.loader,
                "seat-range",
                low = low.as_str(),
                high = high.as_str()
            ));
        }
        said.join(" · ")
    }

    /// What speaks against a key for a seat, and what is to be done or speaks for it.
    fn reasons(&self, seat: &SeatKeyView) -> (Vec<String>, Vec<String>) {
        let (mut against, mut with) = (Vec::new(), Vec::new());
        if let Some(voice) = &seat.voice {
            let (top, over) = &voice.top;
            let (bottom, under) = &voice.bottom;
            let (low, high) = (voice.low.as_str(), voice.high.as_str());
            if *over > 0 {
                let top = top.as_str();
                against.push(fl!(self.loader, "seat-too-high", note = high, top = top));
            }
            if *under > 0 {
                let bottom = bottom.as_str();
                against.push(fl!(
                    self.loader,
                    "seat-too-low",
                    note = low,
                    bottom = bottom
                ));
            }
            if *over <= 0 && *under <= 0 {
                with.push(fl!(self.loader, "seat-fits", low = low, high = high));
            }
        }
        if let Some((known, chords)) = seat.known {
            against.push(fl!(
                self.loader,
                "seat-new-shapes",
                count = (chords - known)
            ));
        }
        if let Some((fret, shapes)) = &seat.capo
            && (*fret > 0 || seat.uses_capo)
        {
            with.push(self.held_capo(*fret, shapes));
        }
        if let Some(tuned) = &seat.tuned {
            with.push(fl!(self.loader, "seat-tuned", notes = tuned.as_str()));
        }
        if let Some(hardest) = &seat.hardest {
            against.push(fl!(self.loader, "seat-hardest", chord = hardest.as_str()));
        }
        match seat.melody {
            Some((below, _)) if below > 0 => against.push(fl!(self.loader, "seat-below")),
            Some((_, fret)) if fret > FIRST_POSITION_ENDS => {
                against.push(fl!(self.loader, "seat-fret", fret = fret));
            }
            _ => {}
        }
        if seat.drones {
            with.push(fl!(self.loader, "seat-drones"));
        }
        if let Some(written) = &seat.written {
            with.push(fl!(self.loader, "seat-reads", key = self.badge(written)));
        }
        (against, with)
    }

    /// What a key is to a seat: in a glance, and in all.
    pub fn seat_in_key(&self, seat: &SeatKeyView) -> (String, String) {
        let (against, with) = self.reasons(seat);
        let first = if seat.ease == KeyEase::Easy {
            &with
        } else {
            &against
        };
        let then = if seat.ease == KeyEase::Easy {
            &against
        } else {
            &with
        };
        let word: Vec<_> = first.iter().chain(then).take(2).cloned().collect();
        let word = match word.is_empty() {
            true => self.ease(seat.ease),
            false => word.join(" · "),
        };
        let mut all = vec![self.ease(seat.ease)];
        all.extend(against);
        all.extend(with);
        (word, all.join(", "))
    }

    fn ease(&self, ease: KeyEase) -> String {
        match ease {
            KeyEase::Easy => fl!(self.loader, "ease-easy"),
            KeyEase::Fair => fl!(self.loader, "ease-fair"),
            KeyEase::Hard => fl!(self.loader, "ease-hard"),
        }
    }

    /// A key in a sentence: easy for everybody, or for whom it is not; in `brief`, of several only how many.
    pub fn key_sentence(&self, key: &RankedView, view: &CircleView, brief: bool) -> String {
        let worst = key.seats.iter().map(|seat| seat.ease).max();
        let Some(worst) = worst.filter(|&worst| worst != KeyEase::Easy) else {
            return match key.seats.len() {
                0 | 1 => fl!(self.loader, "key-easy"),
                _ => fl!(self.loader, "key-easy-for-all"),
            };
        };
        if key.seats.len() == 1 {
            return self.seat_in_key(&key.seats[0]).0;
        }
        let with = key.seats.iter().zip(&view.seats);
        let names: Vec<_> = with
            .filter(|(in_key, _)| in_key.ease == worst)
            .map(|(_, seat)| self.seat(&seat.title))
            .collect();
        let names = match names.len() {
            2.. if brief => fl!(self.loader, "key-several", count = names.len()),
            _ => names.join(", "),
        };
        match worst {
            KeyEase::Hard => fl!(self.loader, "key-hard", names = names),
            _ => fl!(self.loader, "key-care", names = names),
        }
    }

    /// Whether a key is the called one or the one that the tune is written in.
    pub fn key_mark(&self, key: &RankedView) -> String {
        if key.called {
            fl!(self.loader, "key-called")
        } else if key.written {
            fl!(self.loader, "key-written")
        } else {
            String::new()
        }
    }

    /// What the button of a key does.
    pub fn play_in(&self, key: &KeyName) -> String {
        fl!(self.loader, "key-play", key = self.badge(key))
    }

    /// Who can be put back.
    pub fn put_back(&self, title: &SeatTitle) -> String {
        fl!(self.loader, "seat-put-back", seat = self.seat(title))
    }

    /// What the signs on a seat's card do.
    pub fn seat_signs(&self, title: &SeatTitle) -> (String, String) {
        let seat = self.seat(title);
        (
            fl!(self.loader, "seat-show", seat = seat.as_str()),
            fl!(self.loader, "seat-change", seat = seat.as_str()),
        )
    }
}
