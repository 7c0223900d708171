//! Panics that are expected and caught say nothing.

use std::cell::Cell;
use std::panic::{self, UnwindSafe};
use std::sync::Once;

thread_local! {
    static QUIET: Cell<bool> = const { Cell::new(false) };
}

static HOOK: Once = Once::new();

/// What `work` returns, or `None` if it panicked; the panic is not reported. Other threads, and this one before and
/// after, report theirs as they always did.
pub(super) fn catch<T>(work: impl FnOnce() -> T + UnwindSafe) -> Option<T> {
    HOOK.call_once(|| {
        let report = panic::take_hook();
        panic::set_hook(Box::new(move |panic| {
            if !QUIET.get() {
                report(panic);
            }
        }));
    });
    let before = QUIET.replace(true);
    let result = panic::catch_unwind(work);
    QUIET.set(before);
    result.ok()
}
