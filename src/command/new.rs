//! `breeks new`: an empty measurement file that says how to take each measurement.

use std::path::PathBuf;

use super::{Ending, output::write_new, print};
use crate::{mistake::Mistakes, order::blank, terms::Word, unit::Unit};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The file to write; one that exists is left alone
    file: PathBuf,
    /// The unit of the file: cm or inch
    #[arg(long, value_name = "UNIT", default_value = "cm", value_parser = unit)]
    units: Unit,
}

fn unit(text: &str) -> Result<Unit, String> {
    Unit::from_key(text).ok_or_else(|| "expected cm or inch".to_owned())
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    write_new(&arguments.file, &blank(arguments.units))?;
    let path = arguments.file.display();
    print(&format!(
        "wrote {path}\nFill it in, then: breeks check {path}\nThe file stays on this machine; nothing is sent anywhere.\n"
    ))?;
    Ok(Ending::Done)
}
