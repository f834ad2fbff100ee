//! `breeks check`: the measurements looked over before anything is drafted.

use super::{Ending, input::Input, print};
use crate::{mistake::Mistakes, told::check};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, _) = arguments.input.read()?;
    print(&check(&order)?)?;
    Ok(Ending::Done)
}
