//! `breeks draft`.

use std::{fmt::Write, path::PathBuf};

use super::{
    Ending,
    input::Input,
    output::{Sheet, file_stem, write_all},
    print,
};
use crate::{
    answer::{Answer, Extent},
    drawing::SvgScale,
    fit::drafted,
    mistake::Mistakes,
    paper::{block_drawing, fit_table},
    recipe,
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// The folder for drawing and data, made where it is missing [default: drafts]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Print the draft as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

/// Where the drawings go when no folder is named.
const OUT: &str = "drafts";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let recipe = recipe::load(&order.trousers.block)?;
    let (mut draft, report) = drafted(&order, &recipe)?;
    draft.notices.splice(0..0, notices);
    let answer = Answer::new(&draft, &report, Extent::Whole).to_json();

    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let mut written = Vec::new();
    if let Some(folder) = folder {
        let stem = format!("{}-{}", file_stem(&draft.name), file_stem(&recipe.name));
        let sheets = [
            Sheet { name: format!("{stem}.svg"), text: block_drawing(&draft).to_svg(SvgScale::TrueScale) },
            Sheet { name: format!("{stem}.json"), text: format!("{answer}\n") },
        ];
        written = write_all(&folder, &sheets)?;
    }
    if arguments.json {
        print(&format!("{answer}\n"))?;
    } else {
        let mut text = fit_table(&draft, &report, arguments.input.unit(&order));
        text.push('\n');
        if !report.can_be_cut() {
            text.push_str("Not to be cut as it stands: see the notes.\n");
        }
        for path in &written {
            // Cannot fail: writing to a string.
            let _ = writeln!(text, "wrote {}", path.display());
        }
        text.push_str(CAUTIONS);
        print(&text)?;
    }
    Ok(if report.can_be_cut() { Ending::Done } else { Ending::NotToBeCut })
}

/// What the trade tells everyone who cuts from a new draft.
const CAUTIONS: &str = "\
Sew a toile before cutting good cloth. After printing, measure a test square
both ways. Not for medical or compression wear. Body data are personal: they
stay on this machine.
";
