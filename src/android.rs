//! The Android entry: what `main` is on a desktop.

use slint::android::AndroidApp;
use slint::android::android_activity::WindowManagerFlags;

use crate::{bind, start};

/// Called by the system's native activity on a thread of its own; ends with the activity.
///
/// What goes wrong is written to the system's log: there is no window then that could say it.
#[expect(unsafe_code, reason = "the activity finds its entry by the name")]
#[unsafe(no_mangle)]
fn android_main(app: AndroidApp) {
    // A player has no free hand to wake the screen.
    app.set_window_flags(
        WindowManagerFlags::KEEP_SCREEN_ON,
        WindowManagerFlags::empty(),
    );
    if let Err(error) = open(app) {
        eprintln!("fourcourse: {error}");
    }
}

fn open(app: AndroidApp) -> Result<(), Box<dyn std::error::Error>> {
    let folder = app.internal_data_path();
    slint::android::init(app)?;
    let clock = bind::clock();
    let desk = start::desk(folder, start::players(clock), chrono::Utc::now())?;
    bind::run(Box::new(desk), Box::new(clock))?;
    Ok(())
}
