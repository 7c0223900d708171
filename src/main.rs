//! The desktop entry: the app, and the shell commands.

fn main() {}
