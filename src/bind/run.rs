//! The window on a real screen.

use std::time::Duration;

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
    #[cfg(unix)]
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
    slint::BackendSelector::new().select()?;
    fonts::register();
    let interface = Interface::new(host, clock)?;
    interface.app().run()
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
#[cfg(unix)]
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

/// A clock that starts now.
pub fn clock() -> Clock {
    let start = std::time::Instant::now();
    Box::new(move || -> Duration { start.elapsed() })
}
