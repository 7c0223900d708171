//! The desktop entry: the app, and the shell commands.

#[cfg(not(any(target_os = "android", target_arch = "wasm32")))]
mod shell;

#[cfg(not(any(target_os = "android", target_arch = "wasm32")))]
fn main() -> std::process::ExitCode {
    shell::main()
}

/// Phones and browsers enter through the library.
#[cfg(any(target_os = "android", target_arch = "wasm32"))]
fn main() {}
