//! The shell commands: what a player or a script can ask without a window.
//!
//! A command is a struct of what was typed, and `run` makes a page of text from it. Nothing is printed before all is
//! known, so a command either says what it has to say or fails with one sentence on stderr: 0 is well, 1 is a failure,
//! 2 is a wrong use of the command line.

mod add;
mod app;
mod band;
mod best_key;
mod capo;
mod chart;
mod chord_box;
mod drills;
mod failure;
mod grid;
mod header;
mod key;
mod list;
mod name;
mod notation;
mod page;
mod picture;
mod read;
mod ring;
mod shapes;
mod songbook;
mod source;
mod spell;
mod tab;
mod tab_lines;
mod tab_page;
mod target;
mod track;
mod transpose;
mod verses;

use std::env;
use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

use fourcourse::desk::Language;
use fourcourse::words::{Words, system_language};

use failure::Failure;
use page::Look;

/// Chords, shapes, strums and open strings for a jam circle, in the key that was called. Without a command the app
/// opens.
#[derive(Debug, Parser)]
#[command(name = "fourcourse", version, max_term_width = 100)]
struct Line {
    /// Keep the songbook in this folder instead of the user's own [env: FOURCOURSE_DATA]
    #[arg(long, global = true, value_name = "DIR")]
    data_folder: Option<PathBuf>,

    /// Speak this language: en, es or de
    #[arg(long, global = true, value_name = "TAG", value_parser = language)]
    language: Option<Language>,

    /// Print with plain ASCII signs only
    #[arg(long, global = true)]
    ascii: bool,

    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    Read(read::Read),
    Transpose(transpose::Transpose),
    Spell(spell::Spell),
    Shapes(shapes::Shapes),
    Ring(ring::Ring),
    Key(key::Key),
    Name(name::Name),
    Capo(capo::Capo),
    BestKey(best_key::BestKey),
    Add(add::Add),
    List(list::List),
    Chart(chart::Chart),
    Tab(tab::Tab),
    Picture(picture::Picture),
    Band(band::PlayAlong),
}

/// What every command can ask for.
struct Shell {
    words: Words,
    look: Look,
    data_folder: Option<PathBuf>,
}

/// What a command has to say: its page, and remarks that are not part of it.
#[derive(Debug, Default)]
struct Said {
    out: String,
    err: String,
}

impl From<String> for Said {
    fn from(out: String) -> Self {
        Self {
            out,
            err: String::new(),
        }
    }
}

fn language(tag: &str) -> Result<Language, String> {
    Language::ALL
        .into_iter()
        .find(|language| language.tag() == tag)
        .ok_or_else(|| "known are en, es and de".to_owned())
}

/// Reads the command line and carries it out.
pub(crate) fn main() -> ExitCode {
    let line = Line::parse();
    // Not left to the parser: its usage lines would show the option as one that must be given.
    let variable = || env::var_os("FOURCOURSE_DATA").filter(|folder| !folder.is_empty());
    let shell = Shell {
        words: Words::new(line.language.unwrap_or_else(system_language)),
        look: Look::of_terminal(line.ascii),
        data_folder: line.data_folder.or_else(|| variable().map(PathBuf::from)),
    };
    let said = match line.command {
        None => app::run(&shell, line.language),
        Some(Command::Read(command)) => command.run(&shell),
        Some(Command::Transpose(command)) => command.run(&shell),
        Some(Command::Spell(command)) => command.run(&shell),
        Some(Command::Shapes(command)) => command.run(&shell),
        Some(Command::Ring(command)) => command.run(&shell),
        Some(Command::Key(command)) => command.run(&shell),
        Some(Command::Name(command)) => command.run(&shell),
        Some(Command::Capo(command)) => command.run(&shell),
        Some(Command::BestKey(command)) => command.run(&shell),
        Some(Command::Add(command)) => command.run(&shell),
        Some(Command::List(command)) => command.run(&shell),
        Some(Command::Chart(command)) => command.run(&shell),
        Some(Command::Tab(command)) => command.run(&shell),
        Some(Command::Picture(command)) => command.run(&shell),
        Some(Command::Band(command)) => command.run(&shell),
    };
    match said.and_then(print) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            let sentence = failure.sentence(&shell.words);
            let _ = writeln!(io::stderr(), "{sentence}");
            ExitCode::FAILURE
        }
    }
}

/// Prints what a command has to say.
fn print(said: Said) -> Result<(), Failure> {
    let _ = io::stderr().write_all(said.err.as_bytes());
    let mut out = io::stdout().lock();
    match out
        .write_all(said.out.as_bytes())
        .and_then(|()| out.flush())
    {
        // A reader who has seen enough closes the pipe; that is no failure, and there is nobody left to tell.
        Err(why) if why.kind() != io::ErrorKind::BrokenPipe => {
            Err(Failure::new("shell-out-unwritable").because(why))
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    #[test]
    fn the_command_line_does_not_contradict_itself() {
        super::Line::command().debug_assert();
    }
}
