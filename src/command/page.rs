//! `breeks page`.

use std::path::PathBuf;

use super::{Ending, input::named, print};
use crate::{
    mistake::Mistakes,
    page::{Desk, Table},
};

#[derive(clap::Args)]
#[command(after_help = "\
The draft lies on one sheet: touch a place on a panel for its rulers, type at a level, drag; every change can be undone, \
and the drawer has the toile's questions, the record, all measurements, and the files to take away.

The page is served on this machine alone, to whoever has the address that is printed: it holds a key of this run. Only \
the measurement file is written, and only when the page says save. It ends with Ctrl-C.")]
pub(super) struct Arguments {
    /// The measurement file [default: a built-in body, which is saved as a new file]
    file: Option<PathBuf>,
    /// A built-in body of the rowing club: stroke, five or cox
    #[arg(long, value_name = "NAME", conflicts_with = "file")]
    demo: Option<String>,
    /// The folder in which a built-in body is saved, made where it is missing
    #[arg(long, value_name = "DIR", default_value = "drafts")]
    out: PathBuf,
    /// The port on the loopback address; 0 takes one that is free
    #[arg(long, value_name = "PORT", default_value_t = 0)]
    port: u16,
}

/// What lies on the table when nothing is named.
const DEMO: &str = "stroke";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let desk = match &arguments.file {
        Some(path) => Desk::opened(path.clone())?,
        None => {
            let name = arguments.demo.as_deref().unwrap_or(DEMO);
            let source = named(name)?;
            Desk::new(arguments.out.join(format!("{name}.toml")), source)
        }
    };
    let table = Table::set_up(desk, arguments.port)?;
    print(&format!(
        "The table is laid: open\n\n    {}\n\nin a browser on this machine. Ctrl-C ends it.\n",
        table.address()
    ))?;
    table.serve()?;
    Ok(Ending::Done)
}
