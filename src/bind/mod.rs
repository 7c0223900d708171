//! The desk on the screen: view structs become Slint's, callbacks become asks. Nothing here decides about music.
//!
//! One file a view. Callbacks queue their ask, and the queue is worked off after they have returned, so that no model
//! changes while the toolkit walks it.

mod band;
mod called;
mod circle;
mod fonts;
mod keep;
mod outline;
pub mod picture;
mod porch;
mod run;
mod settings;
mod songbook;
mod stand;
mod tonight;

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;
use std::time::Duration;

use slint::{ComponentHandle, Timer, TimerMode};

pub use run::{NoWindow, clock, run};

use crate::desk::{
    Ask, CalledView, CircleView, Desk, Notice, PorchView, Room, SettingsView, SongbookView,
    StandView, Theme, TonightView,
};
use crate::words::{Words, system_language};

/// What the compiler made of `ui/`.
#[allow(missing_docs, unreachable_pub, clippy::all, clippy::pedantic)]
#[allow(clippy::unwrap_used, clippy::cast_possible_truncation, clippy::todo)]
mod made {
    slint::include_modules!();
}

/// The window as a component, what the Stand tells of its layout, what the band sheet shows, and the colours, for the tests that drive and measure.
pub use made::{
    App, Band as BandGlobal, Called as CalledGlobal, Circle as CircleGlobal, Colours, HeldName,
    PageGround, Porch as PorchGlobal, Stand as StandGlobal, Theme as ThemeGlobal,
    Tonight as TonightGlobal,
};

/// What the window shows and asks: the desk, with whoever carries out what reaches beyond it.
pub trait Host {
    /// Carries out a wish. Time runs from any fixed moment on and never back.
    fn ask(&mut self, ask: Ask, now: Duration);
    /// The room that the player is in.
    fn room(&self) -> Room;
    /// The room that is read from, and seen beside the other where the window is wide: the Stand, the circle or the porch.
    fn page(&self) -> Room {
        match self.room() {
            page @ (Room::Circle | Room::Porch) => page,
            _ => Room::Stand,
        }
    }
    /// The Stand as it is to be seen now; `None` where no tune is on it.
    fn stand(&mut self, now: Duration) -> Option<StandView>;
    /// Whether the Stand moves by itself.
    fn is_moving(&mut self, now: Duration) -> bool;
    /// The porch as it is to be seen; a host that has none shows nothing.
    fn porch(&mut self, _now: Duration) -> PorchView {
        PorchView::default()
    }
    /// The songbook as it is to be seen.
    fn songbook(&self) -> SongbookView;
    /// What was called, as it is to be seen.
    fn called(&mut self) -> CalledView;
    /// The circle as it is to be seen.
    fn circle(&mut self) -> CircleView;
    /// Tonight's list as it is to be seen.
    fn tonight(&self) -> TonightView;
    /// The settings as they are to be seen.
    fn settings(&self) -> SettingsView;
    /// What the player should know, until it is closed.
    fn notice(&self) -> Option<Notice>;
}

impl Host for Desk {
    fn ask(&mut self, ask: Ask, now: Duration) {
        Desk::ask(self, ask, now);
    }

    fn room(&self) -> Room {
        Desk::room(self)
    }

    fn page(&self) -> Room {
        Desk::page(self)
    }

    fn stand(&mut self, now: Duration) -> Option<StandView> {
        Desk::stand(self, now)
    }

    fn porch(&mut self, now: Duration) -> PorchView {
        Desk::porch(self, now)
    }

    fn is_moving(&mut self, now: Duration) -> bool {
        Desk::is_moving(self, now)
    }

    fn songbook(&self) -> SongbookView {
        Desk::songbook(self)
    }

    fn called(&mut self) -> CalledView {
        Desk::called(self)
    }

    fn circle(&mut self) -> CircleView {
        Desk::circle(self)
    }

    fn tonight(&self) -> TonightView {
        Desk::tonight(self)
    }

    fn settings(&self) -> SettingsView {
        self.settings_view()
    }

    fn notice(&self) -> Option<Notice> {
        Desk::notice(self).cloned()
    }
}

/// Where time comes from: since any fixed moment.
pub type Clock = Box<dyn Fn() -> Duration>;

/// The window with a host behind it.
#[derive(Clone)]
pub struct Interface(Rc<Inner>);

struct Inner {
    app: App,
    host: RefCell<Box<dyn Host>>,
    clock: Clock,
    words: Rc<RefCell<Words>>,
    asks: RefCell<VecDeque<Ask>>,
    waiting: Cell<bool>,
    ticks: Timer,
    stand: RefCell<stand::Stand>,
    band: RefCell<band::Band>,
    songbook: RefCell<songbook::Songbook>,
    called: RefCell<called::Called>,
    porch: RefCell<porch::Porch>,
    settings: RefCell<settings::Settings>,
    circle: RefCell<circle::Circle>,
    tonight: RefCell<tonight::Tonight>,
    /// The room that is looked through, beside the page where the window is wide.
    side: Cell<Room>,
}

impl Interface {
    /// Makes the window and shows the host's views in it; it is not yet on the screen.
    ///
    /// # Errors
    /// Where the platform cannot make a window.
    pub fn new(host: Box<dyn Host>, clock: Clock) -> Result<Self, slint::PlatformError> {
        let app = App::new()?;
        let chosen = host.settings().settings.language;
        let words = Words::new(chosen.unwrap_or_else(system_language));
        let inner = Rc::new(Inner {
            app,
            host: RefCell::new(host),
            clock,
            words: Rc::new(RefCell::new(words)),
            asks: RefCell::default(),
            waiting: Cell::new(false),
            ticks: Timer::default(),
            stand: RefCell::default(),
            band: RefCell::default(),
            songbook: RefCell::default(),
            called: RefCell::default(),
            porch: RefCell::default(),
            settings: RefCell::default(),
            circle: RefCell::default(),
            tonight: RefCell::default(),
            side: Cell::new(Room::Songbook),
        });
        let interface = Self(inner);
        interface.hook_words();
        stand::hook(&interface);
        band::hook(&interface);
        songbook::hook(&interface);
        called::hook(&interface);
        porch::hook(&interface);
        settings::hook(&interface);
        circle::hook(&interface);
        tonight::hook(&interface);
        interface
            .app()
            .on_close_notice(interface.asks_for(Ask::CloseNotice));
        interface
            .app()
            .on_go(interface.asks(|_, room| Some(Ask::Go(from_made(room)))));
        interface.refresh();
        Ok(interface)
    }

    /// The component.
    pub fn app(&self) -> &App {
        &self.0.app
    }

    /// Queues a wish; it is carried out as soon as the toolkit is idle.
    pub fn ask(&self, ask: Ask) {
        self.0.asks.borrow_mut().push_back(ask);
        if !self.0.waiting.replace(true) {
            let weak = Rc::downgrade(&self.0);
            Timer::single_shot(Duration::ZERO, move || {
                if let Some(inner) = weak.upgrade() {
                    Self(inner).work_off();
                }
            });
        }
    }

    /// Carries out what is queued, then shows what has changed.
    pub fn work_off(&self) {
        self.0.waiting.set(false);
        loop {
            let next = self.0.asks.borrow_mut().pop_front();
            let Some(ask) = next else { break };
            let now = (self.0.clock)();
            self.0.host.borrow_mut().ask(ask, now);
        }
        self.refresh();
    }

    /// Shows the host's views as they are now.
    pub fn refresh(&self) {
        let inner = &self.0;
        let (room, settings, songbook, notice) = {
            let host = inner.host.borrow();
            (host.room(), host.settings(), host.songbook(), host.notice())
        };
        let language = settings.settings.language.unwrap_or_else(system_language);
        let relearn = inner.words.borrow().language() != language;
        if relearn {
            inner.words.borrow_mut().speak(language);
            let words = inner.app.global::<made::Words>();
            words.set_rev(words.get_rev().wrapping_add(1));
            inner.stand.borrow_mut().forget();
            inner.band.borrow_mut().forget();
            inner.songbook.borrow_mut().forget();
            inner.called.borrow_mut().forget();
            inner.porch.borrow_mut().forget();
            inner.settings.borrow_mut().forget();
            inner.circle.borrow_mut().forget();
            inner.tonight.borrow_mut().forget();
        }
        let theme = inner.app.global::<made::Theme>();
        theme.set_name(theme_name(settings.settings.theme));
        let motion = inner.app.global::<made::Motion>();
        motion.set_less(settings.settings.less_motion);
        let notice = notice.map(|notice| inner.words.borrow().notice(&notice));
        inner.app.set_notice(notice.unwrap_or_default().into());
        inner.settings.borrow_mut().show(self, settings);
        inner.songbook.borrow_mut().show(self, songbook);
        let page = inner.host.borrow().page();
        self.show_open(room, page);
        self.tick();
        inner.app.set_page(to_made(page));
        inner.app.set_room(to_made(room));
    }

    /// Shows what was called, the circle and tonight's list where they are open: they cost more than a touch of the Stand
    /// should.
    fn show_open(&self, room: Room, page: Room) {
        let inner = &self.0;
        if !matches!(room, Room::Circle | Room::Stand | Room::Porch) {
            inner.side.set(room);
        }
        if inner.side.get() == Room::Called {
            let view = inner.host.borrow_mut().called();
            inner.called.borrow_mut().show(self, view);
        }
        if page == Room::Circle {
            let view = inner.host.borrow_mut().circle();
            inner.circle.borrow_mut().show(self, view);
        }
        if inner.side.get() == Room::Tonight {
            let view = inner.host.borrow().tonight();
            inner.tonight.borrow_mut().show(self, view);
        }
    }

    /// Shows the Stand as it is now, and goes on doing so while a clock runs.
    fn tick(&self) {
        let inner = &self.0;
        let now = (inner.clock)();
        let (view, porch, runs) = {
            let mut host = inner.host.borrow_mut();
            (host.stand(now), host.porch(now), host.is_moving(now))
        };
        let title = view.as_ref().map(|view| view.title.clone());
        if let Some(view) = &view {
            inner.band.borrow_mut().show(self, view);
        }
        inner.stand.borrow_mut().show(self, view);
        inner.porch.borrow_mut().show(self, porch);
        songbook::on_stand(self, title.unwrap_or_default());
        if runs && !inner.ticks.running() {
            let weak = Rc::downgrade(inner);
            let every = Duration::from_millis(16);
            inner.ticks.start(TimerMode::Repeated, every, move || {
                if let Some(inner) = weak.upgrade() {
                    Self(inner).tick();
                }
            });
        } else if !runs {
            inner.ticks.stop();
        }
    }

    fn hook_words(&self) {
        let words = Rc::clone(&self.0.words);
        let global = self.0.app.global::<made::Words>();
        global.on_lookup(move |_, id| words.borrow().get(&id).into());
    }

    /// A callback that asks for what it is called with.
    fn asks<T, F>(&self, wish: F) -> impl Fn(T) + use<T, F>
    where
        T: 'static,
        F: Fn(&Self, T) -> Option<Ask> + 'static,
    {
        let weak = Rc::downgrade(&self.0);
        move |value| {
            if let Some(inner) = weak.upgrade() {
                let interface = Self(inner);
                if let Some(ask) = wish(&interface, value) {
                    interface.ask(ask);
                }
            }
        }
    }

    /// The way back from a room that is read from. Beside it another one may have been looked through last.
    fn back_from(&self, page: Room) -> impl Fn() + use<> {
        let (here, back) = (self.asks_for(Ask::Go(page)), self.asks_for(Ask::Back));
        move || {
            here();
            back();
        }
    }

    /// A callback that always asks for the same.
    fn asks_for(&self, ask: Ask) -> impl Fn() + use<> {
        let asks = self.asks(move |_, ()| Some(ask.clone()));
        move || asks(())
    }
}

fn to_made(room: Room) -> made::Room {
    match room {
        Room::Songbook => made::Room::Songbook,
        Room::Called => made::Room::Called,
        Room::Tonight => made::Room::Tonight,
        Room::Circle => made::Room::Circle,
        Room::Porch => made::Room::Porch,
        Room::Stand => made::Room::Stand,
        Room::Settings => made::Room::Settings,
    }
}

fn from_made(room: made::Room) -> Room {
    match room {
        made::Room::Songbook => Room::Songbook,
        made::Room::Called => Room::Called,
        made::Room::Tonight => Room::Tonight,
        made::Room::Circle => Room::Circle,
        made::Room::Porch => Room::Porch,
        made::Room::Stand => Room::Stand,
        made::Room::Settings => Room::Settings,
    }
}

fn theme_name(theme: Theme) -> made::ThemeName {
    match theme {
        Theme::Ebony => made::ThemeName::Ebony,
        Theme::Spruce => made::ThemeName::Spruce,
        Theme::Sun => made::ThemeName::Sun,
    }
}

/// A choice by its place in a list.
fn at<T: Copy>(list: &[T], index: i32) -> Option<T> {
    usize::try_from(index)
        .ok()
        .and_then(|index| list.get(index))
        .copied()
}

/// The place of a choice in its list; 0 where it is not there.
fn place<T: PartialEq>(list: &[T], wanted: &T) -> i32 {
    list.iter()
        .position(|one| one == wanted)
        .map_or(0, keep::int)
}
