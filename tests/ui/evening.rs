//! An evening in front of the real window: the shipped songbook in memory, a clock that is moved by hand, and fingers
//! that find things by what they are called.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;

use chrono::NaiveDate;
use fourcourse::audio::{BLOCK, Callback, RATE, Sound};
use fourcourse::bind::{App, Interface};
use fourcourse::desk::{Ask, Desk, Language, Players, Settings};
use fourcourse::store::{Memory, shipped};
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery, mock_elapsed_time};
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition, LogicalSize, SharedString};

pub(crate) struct Evening {
    interface: Interface,
    now: Rc<Cell<Duration>>,
    device: Device,
    day: Rc<Cell<NaiveDate>>,
}

/// A sound device that asks for its blocks as time goes by, until it is pulled out.
#[derive(Clone, Debug, Default)]
pub(crate) struct Device(Rc<RefCell<Option<(Callback, Duration, u32)>>>);

impl Device {
    fn run(&self, now: Duration) {
        let mut device = self.0.borrow_mut();
        let Some((callback, opened, blocks)) = device.as_mut() else {
            return;
        };
        let mut out = [0.0; 2 * BLOCK];
        let block = Duration::from_secs(1) * u32::try_from(BLOCK).unwrap() / RATE;
        // One block sounds, and one waits.
        while *opened + block * blocks.saturating_sub(1) <= now {
            callback.fill(&mut out, *opened + block * blocks.saturating_sub(1));
            *blocks += 1;
        }
    }
}

impl Evening {
    /// Opens the app in English at a size in density-independent pixels.
    pub(crate) fn open(width: f32, height: f32) -> Self {
        Self::with(width, height, |_, _| fourcourse::start::silent_players())
    }

    /// The same, with a sound device.
    pub(crate) fn aloud(width: f32, height: f32) -> Self {
        Self::with(width, height, |now, device| {
            Box::new(Sound::with(Duration::ZERO, move |callback| {
                *device.0.borrow_mut() = Some((callback, now.get(), 0));
                Some(device.clone())
            }))
        })
    }

    /// Pulls the plug of the sound device.
    pub(crate) fn pull_out(&self) {
        self.device.0.take();
    }

    fn with(
        width: f32,
        height: f32,
        players: impl FnOnce(Rc<Cell<Duration>>, Device) -> Box<dyn Players>,
    ) -> Self {
        i_slint_backend_testing::init_no_event_loop();
        let now = Rc::new(Cell::new(Duration::ZERO));
        let clock = Rc::clone(&now);
        let device = Device::default();
        let players = players(Rc::clone(&now), device.clone());
        let day = Rc::new(Cell::new(NaiveDate::from_ymd_opt(2026, 11, 26).unwrap()));
        let tunes = shipped::tunes().into_iter().map(|(_, tune)| tune).collect();
        let songbook = Memory::new(tunes).on_days(Rc::clone(&day));
        let desk = Desk::new(Box::new(songbook), players, Settings::default(), None);
        let interface = Interface::new(Box::new(desk), Box::new(move || clock.get())).unwrap();
        interface.ask(Ask::Language(Some(Language::English)));
        interface.work_off();
        interface.app().show().unwrap();
        let evening = Self {
            interface,
            now,
            device,
            day,
        };
        evening
            .window()
            .dispatch_event(WindowEvent::WindowActiveChanged(true));
        evening.turn(width, height);
        evening
    }

    pub(crate) fn app(&self) -> &App {
        self.interface.app()
    }

    fn window(&self) -> &slint::Window {
        self.app().window()
    }

    /// What can be touched and is smaller than a finger, 48 dp, at any of the sizes that windows have.
    pub(crate) fn too_small(&self) -> Vec<String> {
        const ROLES: [AccessibleRole; 4] = [
            AccessibleRole::Button,
            AccessibleRole::ListItem,
            AccessibleRole::RadioButton,
            AccessibleRole::Switch,
        ];
        let mut small = Vec::new();
        for (width, height) in [
            (412.0, 915.0),
            (360.0, 640.0),
            (320.0, 568.0),
            (800.0, 360.0),
            (820.0, 1180.0),
            (1280.0, 800.0),
        ] {
            self.turn(width, height);
            for role in ROLES {
                let query = ElementQuery::from_root(self.app()).match_descendants();
                for element in query.match_accessible_role(role).find_all() {
                    let size = element.size();
                    if size.width < 48.0 || size.height < 48.0 {
                        let label = element.accessible_label().unwrap_or_default();
                        let (wide, tall) = (size.width, size.height);
                        small.push(format!("{label} at {width} x {height}: {wide} x {tall}"));
                    }
                }
            }
        }
        small
    }

    /// Turns the phone, or pulls at the corner of the window.
    pub(crate) fn turn(&self, width: f32, height: f32) {
        let size = LogicalSize::new(width, height);
        self.window().dispatch_event(WindowEvent::Resized { size });
        self.wait(400);
    }

    /// The next day begins.
    pub(crate) fn tomorrow(&self) {
        self.day.set(self.day.get() + chrono::Days::new(1));
    }

    /// Lets milliseconds go by, as many frames as a screen would show in them.
    pub(crate) fn wait(&self, milliseconds: u64) {
        for _ in 0..milliseconds.div_ceil(16) {
            let frame = Duration::from_millis(16);
            self.now.set(self.now.get() + frame);
            self.device.run(self.now.get());
            mock_elapsed_time(frame);
        }
    }

    /// Everything that is called by a name, or whose name starts with it.
    pub(crate) fn called(&self, name: &str) -> Vec<ElementHandle> {
        let name = name.to_owned();
        ElementQuery::from_root(self.app())
            .match_descendants()
            .match_predicate(move |element| {
                element
                    .accessible_label()
                    .is_some_and(|label| label.starts_with(&name))
            })
            .find_all()
    }

    pub(crate) fn sees(&self, name: &str) -> bool {
        !self.called(name).is_empty()
    }

    /// Touches what is called by a name.
    pub(crate) fn touch(&self, name: &str) {
        let found = self.called(name);
        let exactly = |element: &&ElementHandle| {
            element
                .accessible_label()
                .is_some_and(|label| label == name)
        };
        let mute = [AccessibleRole::Text, AccessibleRole::Image];
        let to_touch = |element: &&ElementHandle| {
            element
                .accessible_role()
                .is_none_or(|role| !mute.contains(&role))
        };
        let touchable = found
            .iter()
            .filter(to_touch)
            .find(exactly)
            .or_else(|| found.iter().find(to_touch))
            .unwrap_or_else(|| panic!("nothing to touch is called {name}"));
        touchable.mock_single_click(PointerEventButton::Left);
        self.wait(400);
    }

    /// Draws a finger over the glass.
    pub(crate) fn swipe(&self, from: (f32, f32), to: (f32, f32)) {
        let button = PointerEventButton::Left;
        let at = |part: f32| {
            LogicalPosition::new(
                from.0 + (to.0 - from.0) * part,
                from.1 + (to.1 - from.1) * part,
            )
        };
        let pressed = WindowEvent::PointerPressed {
            position: at(0.0),
            button,
        };
        self.window()
            .dispatch_event(WindowEvent::PointerMoved { position: at(0.0) });
        self.window().dispatch_event(pressed);
        for step in 1..=10u8 {
            self.wait(16);
            let position = at(f32::from(step) / 10.0);
            self.window()
                .dispatch_event(WindowEvent::PointerMoved { position });
        }
        let released = WindowEvent::PointerReleased {
            position: at(1.0),
            button,
        };
        self.window().dispatch_event(released);
        self.wait(200);
    }

    /// Presses a key, as a pedal or a keyboard does.
    pub(crate) fn press(&self, key: impl Into<SharedString>) {
        let text = key.into();
        let pressed = WindowEvent::KeyPressed { text: text.clone() };
        self.window().dispatch_event(pressed);
        self.window()
            .dispatch_event(WindowEvent::KeyReleased { text });
        self.wait(32);
    }

    /// The words of the chord now: its name, then its number.
    pub(crate) fn chord(&self) -> String {
        let id = "NowCard::name";
        let name = ElementHandle::find_by_element_id(self.app(), id).next();
        let label = name.and_then(|name| name.accessible_label());
        label.expect("no chord is on the Stand").to_string()
    }

    /// Asks as if something had been touched that is not to be counted.
    pub(crate) fn ask(&self, ask: Ask) {
        self.interface.ask(ask);
        self.interface.work_off();
        self.wait(400);
    }

    /// Types into a field.
    pub(crate) fn type_into(&self, field: &str, words: &str) {
        self.called(field)[0].set_accessible_value(words);
        self.wait(32);
    }

    /// Types into the search field.
    pub(crate) fn search(&self, words: &str) {
        self.called("Find a tune")[0].set_accessible_value(words);
        self.wait(32);
    }

    /// Finds a tune in the songbook and opens it.
    pub(crate) fn open_tune(&self, title: &str) {
        self.search(title);
        self.touch(title);
    }
}
