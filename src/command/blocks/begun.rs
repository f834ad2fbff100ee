//! `breeks blocks new`: a recipe of one's own, begun from a skeleton or from another recipe.

use std::{
    io::Write,
    path::{Path, PathBuf},
};

use super::super::{Ending, output::write_new, print};
use crate::{
    mistake::{Mistake, Mistakes, Source},
    recipe::{self, Recipe},
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The new file, ending in .toml; a file that exists is never overwritten
    file: PathBuf,
    /// What to begin from: a skeleton, women or men, or a recipe, a shipped name or a file; asked for where it is not said
    #[arg(long, value_name = "NAME")]
    from: Option<String>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let file = &arguments.file;
    if file.extension().is_none_or(|ending| ending != "toml") {
        return Err(Mistake::new(format!("`{}` does not end in `.toml`", file.display()))
            .help("name the new recipe like `own.toml`; a name without an ending stands for a shipped recipe")
            .into());
    }
    if file.symlink_metadata().is_ok() {
        return Err(super::super::output::exists(file).into());
    }
    let source = match &arguments.from {
        Some(from) => begin_from(from)?,
        None => begin_from(&asked()?)?,
    };
    let begun_from = Recipe::parse(&source)?.name;
    write_new(file, &text(file, &begun_from, &source))?;
    print(&format!("wrote {}\n", file.display()))?;
    Ok(Ending::Done)
}

fn text(file: &Path, begun_from: &str, source: &Source) -> String {
    // A line break in a file's name would end the comment that names it.
    let named: String = file
        .display()
        .to_string()
        .chars()
        .map(|letter| if letter.is_control() { '?' } else { letter })
        .collect();
    format!(
        "# A recipe of one's own, begun from `{begun_from}`. After a change: breeks blocks check {named}\n\
         # See it grow: breeks blocks check {named} --until 7. Draft by it: breeks draft BODY.toml --block {named}\n{}",
        source.text
    )
}

fn begin_from(name: &str) -> Result<Source, Mistakes> {
    if let Some(skeleton) = recipe::skeleton(name) {
        return Ok(skeleton);
    }
    recipe::source(name).map_err(|mistake| {
        let skeletons: Vec<&str> = recipe::skeleton_names().collect();
        mistake.help(format!("the skeletons are {}", skeletons.join(", "))).into()
    })
}

/// Asks on the terminal; the question goes where messages go.
fn asked() -> Result<String, Mistake> {
    let skeletons: Vec<&str> = recipe::skeleton_names().collect();
    let shipped: Vec<&str> = recipe::shipped_names().collect();
    let choices =
        format!("a skeleton ({}), a shipped recipe ({}) or a file", skeletons.join(", "), shipped.join(", "));
    // A closed terminal leaves nothing to do about it.
    let _ = write!(std::io::stderr(), "Begin from {choices}: ");
    let mut answer = String::new();
    std::io::stdin()
        .read_line(&mut answer)
        .map_err(|error| Mistake::new(format!("cannot read the answer: {error}")))?;
    match answer.trim() {
        "" => {
            let _ = writeln!(std::io::stderr());
            Err(Mistake::new("nothing said to begin from").help(format!("say `--from` with {choices}")))
        }
        name => Ok(name.to_owned()),
    }
}
