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
    drawing::{Paper, SvgScale, Tiles},
    fit::drafted_legs,
    mistake::Mistakes,
    paper::{Subject, cautions, centre_table, first_page, fit_table, overview, wall_drawing},
    recipe,
    terms::Side,
    terms::Word,
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// The folder for drawing and data, made where it is missing [default: drafts]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Also cut the drawing over sheets of this paper, to glue: a4, letter, a4_letter (prints on either), a3, tabloid
    #[arg(long, value_name = "PAPER", value_parser = paper)]
    paper: Option<Paper>,
    /// Print the draft as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

/// Where the drawings go when no folder is named.
const OUT: &str = "drafts";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let recipe = recipe::load(&order.trousers.block)?;
    let mut legs = drafted_legs(&order, &recipe)?;
    legs.begin_with(notices);
    let answer = Answer::new(&legs, Extent::Whole).to_json();

    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let unit = arguments.input.unit(&order);
    let mut written = Vec::new();
    if let Some(folder) = folder {
        let stem = format!("{}-{}", file_stem(&legs.first.draft.name), file_stem(&recipe.name));
        let (mut sheets, mut counts) = (Vec::new(), Vec::new());
        for leg in legs.iter() {
            let stem = match leg.draft.side {
                Side::Both => stem.clone(),
                side => format!("{stem}-{side}"),
            };
            let subject = Subject { draft: &leg.draft, report: &leg.report, unit };
            let (drawn, sizes) = drawings(&subject, &stem, arguments.paper)?;
            sheets.extend(drawn);
            counts.extend(sizes);
        }
        sheets.push(Sheet { name: format!("{stem}.json"), bytes: format!("{answer}\n").into_bytes() });
        let paths = write_all(&folder, &sheets)?;
        written = paths.into_iter().zip(counts.into_iter().chain([None])).collect();
    }
    if arguments.json {
        print(&format!("{answer}\n"))?;
    } else {
        let mut text = String::new();
        for leg in legs.iter() {
            text.push_str(&fit_table(&leg.draft, &leg.report, unit));
            text.push('\n');
        }
        text.push_str(&centre_table(&legs, unit));
        if !legs.can_be_cut() {
            text.push_str("Not to be cut as it stands: see the notes.\n");
        }
        for (path, count) in &written {
            let count = count.as_deref().map(|count| format!(" ({count})")).unwrap_or_default();
            // Cannot fail: writing to a string.
            let _ = writeln!(text, "wrote {}{count}", path.display());
        }
        text.push_str(&cautions());
        print(&text)?;
    }
    Ok(if legs.can_be_cut() { Ending::Done } else { Ending::NotToBeCut })
}

fn paper(text: &str) -> Result<Paper, String> {
    Paper::from_key(text).ok_or_else(|| format!("expected one of {}", Paper::KEYS.join(", ")))
}

/// The drawings of a draft as files, each with how many sheets of paper it takes where that is to be said.
fn drawings(
    subject: &Subject<'_>,
    stem: &str,
    paper: Option<Paper>,
) -> Result<(Vec<Sheet>, Vec<Option<String>>), Mistakes> {
    let wall = wall_drawing(subject);
    let size = wall.bounds.size();
    let one = format!("one sheet of {:.0} by {:.0} cm", size.width, size.height);
    let mut sheets = vec![
        Sheet { name: format!("{stem}.svg"), bytes: wall.to_svg(SvgScale::TrueScale).into_bytes() },
        Sheet {
            name: format!("{stem}-overview.svg"),
            bytes: overview(subject).to_svg(SvgScale::FitsScreen).into_bytes(),
        },
        Sheet { name: format!("{stem}.pdf"), bytes: wall.to_pdf()? },
    ];
    let mut counts = vec![None, None, Some(one)];
    if let Some(paper) = paper {
        let tiles = Tiles::cut(&wall, crate::drawing::Sheet::of(paper))?;
        let first = first_page(subject, &tiles, paper);
        let name = format!("{stem}-{}.pdf", file_stem(paper.key()));
        sheets.push(Sheet { name, bytes: tiles.to_pdf(Some(&first)) });
        counts.push(Some(format!("{} sheets and a first page", tiles.tiles().len())));
    }
    Ok((sheets, counts))
}
