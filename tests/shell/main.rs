//! The program as it is used from a shell: what it prints, and with which code it ends.

#![allow(clippy::unwrap_used)] // a test stops where it fails

mod band;
mod called;
mod errors;
mod keeping;
mod pages;
mod plain;
mod tab;
#[cfg(feature = "app")]
mod with_app;
mod words;

use std::ffi::OsStr;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

/// What came of a run.
#[derive(Debug)]
struct Ran {
    out: String,
    err: String,
    code: i32,
}

impl Ran {
    /// What it printed; it must have gone well and have had no remarks.
    #[track_caller]
    fn page(self) -> String {
        assert_eq!((self.code, self.err.as_str()), (0, ""), "{}", self.out);
        self.out
    }

    /// The JSON that it printed.
    #[track_caller]
    fn json(self) -> serde_json::Value {
        serde_json::from_str(&self.page()).unwrap()
    }
}

/// The program with a songbook in a folder, in English and plain ASCII unless the locale is said.
fn program(folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_fourcourse"));
    for name in ["LC_ALL", "LC_CTYPE", "LC_MESSAGES", "LANGUAGE"] {
        command.env_remove(name);
    }
    command
        .env("LANG", "C")
        .env("FOURCOURSE_DATA", folder)
        .stdin(Stdio::null());
    command
}

/// Runs a command to its end.
fn finish(command: &mut Command) -> Ran {
    finish_piped(command.stdout(Stdio::piped()))
}

/// Runs a command to its end, with its output where the caller has put it.
fn finish_piped(command: &mut Command) -> Ran {
    let command = command.stderr(Stdio::piped());
    let output = command.spawn().unwrap().wait_with_output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    Ran {
        out: text(output.stdout),
        err: text(output.stderr),
        code: output.status.code().unwrap(),
    }
}

/// Runs the program on a songbook.
fn run_in(folder: &Path, args: impl IntoIterator<Item = impl AsRef<OsStr>>) -> Ran {
    finish(program(folder).args(args))
}

/// Runs the program on a songbook of its own.
fn run(args: impl IntoIterator<Item = impl AsRef<OsStr>>) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    run_in(folder.path(), args)
}

/// Runs the program with a text on standard input.
fn run_on(text: &str, args: &[&str]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    let mut file = tempfile::tempfile().unwrap();
    file.write_all(text.as_bytes()).unwrap();
    std::io::Seek::rewind(&mut file).unwrap();
    finish(program(folder.path()).args(args).stdin(file))
}
