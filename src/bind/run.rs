//! The window on a real screen.

use std::time::Duration;
#[cfg(all(unix, not(target_os = "android")))]
use std::{cell::Cell, rc::Rc};

use slint::ComponentHandle;

use super::{Clock, Host, Interface, fonts};

/// Why there is no window.
#[derive(Debug, thiserror::Error)]
pub enum NoWindow {
    /// Nothing to show a window on.
    #[error("there is no display")]
    NoDisplay,
    /// Anything else, in the words of the system.
    #[error("{0}")]
    Failed(String),
}

impl From<slint::PlatformError> for NoWindow {
    fn from(error: slint::PlatformError) -> Self {
        Self::Failed(error.to_string())
    }
}

/// Opens the window and stays until it is closed. Where the machine has no graphics library, the program starts itself
/// again to draw in software.
///
/// # Errors
/// Where no window can be opened.
pub fn run(host: Box<dyn Host>, clock: Clock) -> Result<(), NoWindow> {
    if !has_display() {
        return Err(NoWindow::NoDisplay);
    }
    let opened = open(host, clock);
    #[cfg(all(unix, not(target_os = "android")))]
    if let Err(error) = &opened {
        // Slint has both renderers but does not change over by itself.
        if std::env::var_os("SLINT_BACKEND").is_none() {
            return Err(NoWindow::Failed(format!(
                "{error}; {}",
                again_in_software()
            )));
        }
    }
    Ok(opened?)
}

fn open(host: Box<dyn Host>, clock: Clock) -> Result<(), slint::PlatformError> {
    // On a phone, the entry has chosen already.
    #[cfg(not(target_os = "android"))]
    slint::BackendSelector::new().select()?;
    fonts::register();
    let interface = Interface::new(host, clock)?;
    #[cfg(all(unix, not(target_os = "android")))]
    return run_if_it_draws(interface.app());
    #[cfg(not(all(unix, not(target_os = "android"))))]
    interface.app().run()
}

/// Runs the event loop, and ends it where no frame has been drawn after two seconds.
///
/// Slint 1.18.1 asks the desktop for its colours before it makes the window; where making it fails then, for want of a
/// graphics library, the loop goes on with no window. Once ended, it tells the error that it kept.
#[cfg(all(unix, not(target_os = "android")))]
fn run_if_it_draws(app: &super::App) -> Result<(), slint::PlatformError> {
    let drawn = Rc::new(Cell::new(false));
    let seen = Rc::clone(&drawn);
    // The software renderer tells nothing, and needs no graphics library.
    let tells = app
        .window()
        .set_rendering_notifier(move |_, _| seen.set(true));
    if tells.is_ok() {
        quit_unless(Rc::clone(&drawn), 4);
    }
    app.run()?;
    if tells.is_ok() && !drawn.get() {
        return Err("nothing could be drawn".into());
    }
    Ok(())
}

/// Looks every half second, so many times: counted in rounds of the event loop, a slow start is no failure.
#[cfg(all(unix, not(target_os = "android")))]
fn quit_unless(drawn: Rc<Cell<bool>>, rounds: u32) {
    slint::Timer::single_shot(Duration::from_millis(500), move || {
        if !drawn.get() && rounds > 1 {
            quit_unless(drawn, rounds - 1);
        } else if !drawn.get() {
            // Fails only where there is no event loop left to quit.
            let _ = slint::quit_event_loop();
        }
    });
}

/// Whether there is a screen at all: only X11 and Wayland can be without one.
fn has_display() -> bool {
    let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(all(
        unix,
        not(target_os = "macos"),
        not(target_os = "android")
    )) || ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"]
        .into_iter()
        .any(set)
}

/// Starts the program again with the software renderer; comes back only with the reason why that failed.
#[cfg(all(unix, not(target_os = "android")))]
fn again_in_software() -> std::io::Error {
    use std::os::unix::process::CommandExt;
    let program = match std::env::current_exe() {
        Ok(program) => program,
        Err(error) => return error,
    };
    std::process::Command::new(program)
        .args(std::env::args_os().skip(1))
        .env("SLINT_BACKEND", "winit-software")
        .exec()
}

/// A clock that starts now. Its copies go together with it, on any thread.
pub fn clock() -> impl Fn() -> Duration + Copy + Send + 'static {
    let start = web_time::Instant::now();
    move || start.elapsed()
}
