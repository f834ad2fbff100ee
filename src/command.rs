//! The command line: one file a command; each reads, calls the library and prints.

mod batch;
mod blocks;
mod by_hand;
mod check;
mod cloth;
mod compare;
mod completions;
mod cutting;
mod draft;
mod fit;
mod input;
mod lesson;
mod manual;
mod new;
mod output;
#[cfg(feature = "serve")]
mod page;
mod printing;
mod toile;

use std::{
    io::{ErrorKind, Write},
    process::ExitCode,
};

use clap::{Parser, Subcommand};

use crate::{
    fit::Verdict,
    mistake::{Mistake, Mistakes, harmless_text},
};

/// Drafts trouser blocks from measurements, with the fitting corrections as parameters.
#[derive(Parser)]
#[command(name = "breeks", version, about, disable_help_subcommand = true)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Write an empty measurement file that says how to take each measurement
    New(new::Arguments),
    /// Look the measurements over: sources, doubts, and what to take next
    Check(check::Arguments),
    /// Draft a front and a back block from a measurement file
    Draft(draft::Arguments),
    /// Find the fit parameters that meet what was measured, and tell what moved
    Fit(fit::Arguments),
    /// Lay the pieces on cloth and tell how much to buy
    Cloth(cloth::Arguments),
    /// Write the construction step by step, as a class would do it on this body
    Lesson(lesson::Arguments),
    /// Lay two drafts over each other and tell what changed
    Compare(compare::Arguments),
    /// Judge a toile: from what is seen to the one next change
    Toile(toile::Arguments),
    /// Draft many bodies: rows of CSV or NDJSON in, one line of JSON a row out
    Batch(batch::Arguments),
    /// Show the recipes a block can be drafted by
    Blocks(blocks::Arguments),
    /// Lay a measurement file on a table in the browser: drag, type, save
    #[cfg(feature = "serve")]
    Page(page::Arguments),
    /// Print what lets a shell complete commands and options
    Completions(completions::Arguments),
    /// Print a page of the manual, for man
    Manual(manual::Arguments),
}

/// How a run ended: the contract of the exit codes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ending {
    /// Done: what was drafted is good, or good enough for a toile.
    Done = 0,
    /// Drafted, but not to be cut as it stands.
    NotToBeCut = 1,
    /// Cannot be drafted as asked; nothing was written.
    Refused = 2,
    /// It waits for an answer to what it asked; nothing is advised, nothing was written.
    Waits = 3,
}

impl From<Verdict> for Ending {
    fn from(verdict: Verdict) -> Self {
        if verdict.can_be_cut() { Self::Done } else { Self::NotToBeCut }
    }
}

impl Ending {
    const ALL: &[Self] = &[Self::Done, Self::NotToBeCut, Self::Refused, Self::Waits];

    /// What the code means, for the manual.
    fn says(self) -> &'static str {
        match self {
            Self::Done => "Done. What a person should know before cutting stands in the notes.",
            Self::NotToBeCut => {
                "Drafted, but not to be cut as it stands: the notes say why. For batch: a row gave an error."
            }
            Self::Waits => {
                "It waits for an answer to what it asked; nothing is advised, nothing was written."
            }
            Self::Refused => {
                "Not done as asked: the message says where the file or the command is wrong. Nothing was written."
            }
        }
    }
}

/// Runs the command line of this process.
pub fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => return told(&error),
    };
    let ended = match arguments.command {
        Command::New(arguments) => new::run(&arguments),
        Command::Check(arguments) => check::run(&arguments),
        Command::Draft(arguments) => draft::run(&arguments),
        Command::Fit(arguments) => fit::run(&arguments),
        Command::Cloth(arguments) => cloth::run(&arguments),
        Command::Lesson(arguments) => lesson::run(&arguments),
        Command::Compare(arguments) => compare::run(&arguments),
        Command::Toile(arguments) => toile::run(&arguments),
        Command::Batch(arguments) => batch::run(&arguments),
        Command::Blocks(arguments) => blocks::run(&arguments),
        #[cfg(feature = "serve")]
        Command::Page(arguments) => page::run(&arguments),
        Command::Completions(arguments) => completions::run(&arguments),
        Command::Manual(arguments) => manual::run(&arguments),
    };
    let ending = ended.unwrap_or_else(|mistakes| {
        report(&mistakes);
        Ending::Refused
    });
    ExitCode::from(ending as u8)
}

/// What the reader of the command line has to say: help, the version, or what it did not understand, in which words of the
/// command line stand.
fn told(error: &clap::Error) -> ExitCode {
    let asked = error.use_stderr();
    // Its colours are orders to the terminal too, and are left to it where nothing was typed that is quoted.
    if asked {
        let _ = write!(std::io::stderr(), "{}", harmless_text(&error.render().to_string()));
    } else {
        let _ = error.print();
    }
    ExitCode::from(if asked { Ending::Refused as u8 } else { Ending::Done as u8 })
}

/// Prints mistakes for the person at the terminal.
fn report(mistakes: &Mistakes) {
    let colour = wants_colour();
    // A closed terminal leaves nothing to do about it.
    let _ = writeln!(std::io::stderr(), "{}", mistakes.render(colour));
}

fn wants_colour() -> bool {
    use std::io::IsTerminal;
    std::io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty())
}

/// Prints the result of a command, with nothing in it that moves a cursor, turns the reading direction or hides, whoever
/// wrote it; a reader that has closed its end is a quiet end.
fn print(text: &str) -> Result<(), Mistake> {
    let mut out = std::io::stdout().lock();
    match out.write_all(harmless_text(text).as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Mistake::new(format!("cannot write to standard output: {error}")))
        }
        Ok(()) | Err(_) => Ok(()),
    }
}
