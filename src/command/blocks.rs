//! `breeks blocks`.

use super::{Ending, print};
use crate::{mistake::Mistakes, recipe};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// Print this recipe as a handbook would
    name: Option<String>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    match &arguments.name {
        None => {
            for name in recipe::shipped_names() {
                let recipe = recipe::load(name)?;
                print(&format!("{name}: {}\n", recipe.title));
            }
        }
        Some(name) => print(&recipe::load(name)?.to_handbook()),
    }
    Ok(Ending::Done)
}
