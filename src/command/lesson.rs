//! `breeks lesson`: the construction step by step, with this body's numbers.

use std::{fmt::Write, path::PathBuf};

use super::{
    Ending,
    input::Input,
    output::{Replacing, Sheet, file_stem, write_all},
    print,
};
use crate::{
    making::make,
    mistake::Mistakes,
    pattern::Wanted,
    reading::{lesson, marking_page},
    terms::Side,
    told::Subject,
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// The folder for the lesson, made where it is missing
    #[arg(long, value_name = "DIR", default_value = "drafts")]
    out: PathBuf,
    /// The teacher's page beside it: what every line of a student's draft
    /// should measure, with room to mark it
    #[arg(long)]
    mark: bool,
    #[command(flatten)]
    replacing: Replacing,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let made = make(order, notices, &Wanted::default())?;
    let unit = arguments.input.unit(&made.order);
    let mut sheets = Vec::new();
    for leg in made.legs.iter() {
        let stem = format!("{}-{}", file_stem(&leg.draft.name), file_stem(&made.recipe.name));
        let stem = match leg.draft.side {
            Side::Both => stem,
            side => format!("{stem}-{side}"),
        };
        let subject = Subject::of(leg, unit);
        let mut booklets = vec![("lesson", lesson(&subject))];
        booklets.extend(arguments.mark.then(|| ("mark", marking_page(&subject))));
        for (name, booklet) in booklets {
            sheets.push(Sheet { name: format!("{stem}-{name}.html"), bytes: booklet.to_html().into_bytes() });
            sheets.push(Sheet { name: format!("{stem}-{name}.pdf"), bytes: booklet.to_pdf()? });
        }
    }
    let mut text = String::new();
    for path in write_all(&arguments.out, &sheets, &[arguments.input.of()], &arguments.replacing)? {
        // Cannot fail: writing to a string.
        let _ = writeln!(text, "wrote {}", path.display());
    }
    if !made.verdict().can_be_cut() {
        text.push_str("The block is not to be cut as it stands: the lesson's last chapter says why.\n");
    }
    print(&text)?;
    Ok(made.verdict().into())
}
