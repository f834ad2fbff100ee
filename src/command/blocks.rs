//! `breeks blocks`.

use super::{Ending, print};
use crate::{
    mistake::Mistakes,
    recipe::{self, Recipe},
};

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
                print(&format!("{name}: {}\n", recipe.title))?;
            }
        }
        Some(name) => print(&handbook(&*recipe::load(name)?))?,
    }
    Ok(Ending::Done)
}

/// The recipe as a numbered list.
fn handbook(recipe: &Recipe) -> String {
    let mut out = format!("{}: {}\n", recipe.name, recipe.title);
    for note in &recipe.notes {
        out.push_str(&format!("  {note}\n"));
    }
    let mut panel = None;
    for step in &recipe.steps {
        let entry = step.entry();
        if panel != Some(entry.panel) {
            panel = Some(entry.panel);
            out.push_str(&format!("\n{}\n", entry.panel));
        }
        out.push_str(&format!("{:>4}. {}: {}\n", entry.number, entry.title, entry.rule));
    }
    out
}
