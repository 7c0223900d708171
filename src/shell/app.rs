//! Bare `fourcourse`: the app.

use fourcourse::desk::Language;

use super::{Failure, Said, Shell};

/// Opens the window and stays until it is closed.
#[cfg(feature = "app")]
pub(super) fn run(shell: &Shell, language: Option<Language>) -> Result<Said, Failure> {
    use std::time::Duration;

    use fourcourse::bind::{NoWindow, clock, run};
    use fourcourse::desk::Ask;

    let clock = clock();
    let players = fourcourse::start::players(clock);
    let mut desk = fourcourse::start::desk(shell.data_folder.clone(), players, chrono::Utc::now())?;
    if language.is_some() {
        desk.ask(Ask::Language(language), Duration::ZERO);
    }
    match run(Box::new(desk), Box::new(clock)) {
        Ok(()) => Ok(Said::default()),
        Err(NoWindow::NoDisplay) => Err(Failure::new("window-no-display")),
        Err(NoWindow::Failed(why)) => Err(Failure::new("window-failed").with("why", why)),
    }
}

/// Says that this build has no window.
#[cfg(not(feature = "app"))]
pub(super) fn run(_shell: &Shell, _language: Option<Language>) -> Result<Said, Failure> {
    Err(Failure::new("shell-no-app"))
}
