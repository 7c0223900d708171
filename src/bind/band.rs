//! The band sheet: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, VecModel};

use super::keep::{keep, shared};
use super::{Interface, at, made, place};
use crate::band::{A4, Ending, Player, Style};
use crate::desk::{
    Alone, Ask, BandAsk, BandView, Choosing, DELAY_STEP_MS, MOST_DELAY_MS, StandView,
};
use crate::words::{Words, tempo};

/// A tempo as the Stand counts it; see [`StandView::tempo`].
type Counted = (u32, (u32, u32));

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Band {
    shown: Option<(BandView, Counted)>,
    players: Rc<VecModel<made::Player>>,
    styles: Rc<VecModel<made::StyleChoice>>,
    strings: Rc<VecModel<made::TuneString>>,
}

impl Band {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, stand: &StandView) {
        let (view, counted) = (&stand.band, stand.tempo);
        let same = |(band, tempo): &(BandView, _)| band == view && *tempo == counted;
        if self.shown.as_ref().is_some_and(same) {
            return;
        }
        let global = interface.app().global::<made::Band<'_>>();
        let words = interface.0.words.borrow();
        if self.shown.is_none() {
            global.set_players(shared(&self.players));
            global.set_styles(shared(&self.styles));
            global.set_strings(shared(&self.strings));
        }
        let player = |player: &crate::desk::PlayerView| made::Player {
            name: words.player(player).into(),
            level: player.level.into(),
            muted: player.muted,
            level_said: words.level_of(player).into(),
            mute_said: words.mute(player).into(),
        };
        keep(&self.players, view.players.iter().map(player).collect());
        let style = |style: &'static Style| made::StyleChoice {
            name: words.style(style).into(),
            chosen: style == view.style,
            fits: style == view.fitting,
            said: words.style_said(style, style == view.fitting).into(),
        };
        keep(&self.styles, Style::all().map(style).collect());
        let string = |(place, note): (usize, &String)| made::TuneString {
            note: note.into(),
            sounds: view.tone == Some(place),
            said: words.tune_by(note).into(),
        };
        let strings = view.strings.iter().enumerate();
        keep(&self.strings, strings.map(string).collect());
        show_state(&global, &words, view, counted);
        drop(words);
        self.shown = Some((view.clone(), counted));
    }
}

/// The plain values: Slint itself tells whether they change.
fn show_state(global: &made::Band<'_>, words: &Words, view: &BandView, (bpm, beat): Counted) {
    let settings = &view.settings;
    global.set_said(words.band(view, bpm).into());
    global.set_aloud(settings.aloud);
    global.set_heard(settings.aloud && !view.is_missing());
    global.set_heard_text(words.heard(view).into());
    global.set_missing(words.missing_sound(view).into());
    global.set_loudness(settings.loudness.into());
    global.set_ending(place(&Ending::ALL, &view.ending));
    global.set_delay(format!("{} ms", settings.delay_ms).into());
    global.set_delay_least(settings.delay_ms == 0);
    global.set_delay_most(settings.delay_ms >= MOST_DELAY_MS);
    global.set_choosing(match view.choosing {
        None => 0,
        Some(Choosing::First) => 1,
        Some(Choosing::Last) => 2,
    });
    let looped = view.looped.as_ref();
    global.set_looped(looped.is_some());
    global.set_loops_part(looped.is_some_and(|looped| looped.part));
    global.set_loop_from(looped.map_or("–", |looped| &looped.from).into());
    global.set_loop_to(looped.map_or("–", |looped| &looped.to).into());
    global.set_ramp(view.ramp.on);
    global.set_ramp_percent(format!("{} %", view.ramp.percent).into());
    global.set_ramp_ceiling(tempo((view.ramp.ceiling.into(), beat)).into());
    global.set_count_in(settings.count_in);
    global.set_human(settings.human);
    global.set_alone(match view.alone {
        None => made::Alone::Nothing,
        Some(Alone::Metronome) => made::Alone::Metronome,
        Some(Alone::Drones) => made::Alone::Drones,
    });
    global.set_a4(format!("{} Hz", settings.a4).into());
    let a4 = f64::from(settings.a4);
    global.set_a4_lowest(a4 <= *A4.start());
    global.set_a4_highest(a4 >= *A4.end());
}

/// The A so many Hz from the one now.
fn another_a4(interface: &Interface, by: i32) -> Option<BandAsk> {
    let stand = interface.0.band.borrow();
    let (view, _) = stand.shown.as_ref()?;
    let hz = i32::from(view.settings.a4) + by;
    Some(BandAsk::A4(u16::try_from(hz).ok()?))
}

/// The delay so many steps from the one now.
fn another_delay(interface: &Interface, steps: i32) -> Option<BandAsk> {
    let stand = interface.0.band.borrow();
    let (view, _) = stand.shown.as_ref()?;
    let ms = i32::from(view.settings.delay_ms) + steps * i32::from(DELAY_STEP_MS);
    Some(BandAsk::Delay(u16::try_from(ms).ok()?))
}

/// A level as the band counts it.
fn level(level: i32) -> Option<u8> {
    u8::try_from(level).ok()
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Band<'_>>();
    let band = |ask| Some(Ask::Band(ask));
    let fixed = |ask| interface.asks_for(Ask::Band(ask));
    global.on_loop_part(fixed(BandAsk::LoopPart));
    global.on_loop_whole(fixed(BandAsk::NoLoop));
    global.on_set_sound(interface.asks(move |_, on| band(BandAsk::Sound(on))));
    global.on_set_loudness(interface.asks(move |_, to| band(BandAsk::Loudness(level(to)?))));
    global.on_let_go(fixed(BandAsk::LetGo));
    global.on_delay_by(interface.asks(move |it, by| band(another_delay(it, by)?)));
    global.on_choose_bars(interface.asks(move |_, on| band(BandAsk::ChooseBars(on))));
    global.on_set_ending(
        interface.asks(move |_, index| band(BandAsk::Ending(at(&Ending::ALL, index)?))),
    );
    global.on_set_style(interface.asks(move |_, index: i32| {
        let style = Style::all().nth(usize::try_from(index).ok()?)?;
        band(BandAsk::Style(style.id().to_owned()))
    }));
    global.on_loop_from_by(interface.asks(move |_, by| band(BandAsk::LoopFrom(by))));
    global.on_loop_to_by(interface.asks(move |_, by| band(BandAsk::LoopTo(by))));
    global.on_set_ramp(interface.asks(move |_, on| band(BandAsk::Ramp(on))));
    global.on_percent_by(interface.asks(move |_, by| band(BandAsk::RampPercent(by))));
    global.on_ceiling_by(interface.asks(move |_, by| band(BandAsk::RampCeiling(by))));
    global.on_set_count_in(interface.asks(move |_, on| band(BandAsk::CountIn(on))));
    global.on_set_human(interface.asks(move |_, on| band(BandAsk::Human(on))));
    global.on_set_alone(interface.asks(move |_, alone| {
        band(BandAsk::Alone(match alone {
            made::Alone::Nothing => None,
            made::Alone::Metronome => Some(Alone::Metronome),
            made::Alone::Drones => Some(Alone::Drones),
        }))
    }));
    global.on_set_string(
        interface.asks(move |_, course: i32| band(BandAsk::Tone(usize::try_from(course).ok()))),
    );
    global.on_a4_by(interface.asks(move |interface, by| band(another_a4(interface, by)?)));
    let weak = Rc::downgrade(&interface.0);
    global.on_set_level(move |player, to| {
        let ask = at(&Player::ALL, player).zip(level(to));
        if let Some((inner, (player, level))) = weak.upgrade().zip(ask) {
            Interface(inner).ask(Ask::Band(BandAsk::Level(player, level)));
        }
    });
    let weak = Rc::downgrade(&interface.0);
    global.on_set_mute(move |player, muted| {
        if let Some((inner, player)) = weak.upgrade().zip(at(&Player::ALL, player)) {
            Interface(inner).ask(Ask::Band(BandAsk::Mute(player, muted)));
        }
    });
}
