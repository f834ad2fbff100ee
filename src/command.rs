//! The command line: one file a command; each reads, calls the library and prints.

mod batch;
mod blocks;
mod check;
mod cloth;
mod compare;
mod cutting;
mod draft;
mod fit;
mod input;
mod lesson;
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
    mistake::{Mistake, Mistakes},
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

/// Runs the command line of this process.
pub fn run() -> ExitCode {
    let arguments = Arguments::parse();
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
    };
    let ending = ended.unwrap_or_else(|mistakes| {
        report(&mistakes);
        Ending::Refused
    });
    ExitCode::from(ending as u8)
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

/// Prints the result of a command; a reader that has closed its end is a quiet end.
fn print(text: &str) -> Result<(), Mistake> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Mistake::new(format!("cannot write to standard output: {error}")))
        }
        Ok(()) | Err(_) => Ok(()),
    }
}
