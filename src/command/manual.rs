//! `breeks manual`: the pages for `man`.

use std::io;

use clap::CommandFactory as _;
use clap_mangen::{
    Man,
    roff::{Roff, roman},
};

use super::{Ending, print};
use crate::mistake::{Mistake, Mistakes};

#[derive(clap::Args)]
#[command(after_help = "\
To read one: breeks manual draft | man -l -\n\
To keep them: breeks manual > ~/.local/share/man/man1/breeks.1, and so on as breeks-draft.1")]
pub(super) struct Arguments {
    /// The command whose page is wanted [default: the page of the program]
    command: Option<String>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let mut program = super::Arguments::command();
    program.build();
    let wanted = match &arguments.command {
        None => program,
        Some(name) => {
            let Some(command) = program.find_subcommand(name) else {
                let known: Vec<&str> = program.get_subcommands().map(clap::Command::get_name).collect();
                return Err(Mistake::new(format!("there is no command `{name}`"))
                    .nearest(name, known.iter().copied())
                    .help(format!("the commands are {}", known.join(", ")))
                    .into());
            };
            command.clone()
        }
    };
    let mut page = Vec::new();
    write(wanted, &mut page).map_err(|error| Mistake::new(format!("the page cannot be written: {error}")))?;
    print(&String::from_utf8_lossy(&page))?;
    Ok(Ending::Done)
}

fn write(command: clap::Command, page: &mut Vec<u8>) -> io::Result<()> {
    Man::new(command).render(page)?;
    let mut ends = Roff::new();
    ends.control("SH", ["EXIT STATUS"]);
    for ending in Ending::ALL {
        ends.control("TP", []).text([roman((*ending as u8).to_string())]).text([roman(ending.says())]);
    }
    ends.to_writer(page)
}
