//! `breeks draft`.

use std::{fmt::Write, path::PathBuf};

use super::{
    Ending,
    cutting::Cutting,
    input::Input,
    output::{Counted, Replacing, Sheet, file_stem, write_all},
    print,
    printing::Printing,
};
use crate::{
    answer::{Answer, Extent},
    booklet::headed,
    drawing::SvgScale,
    making::make,
    mistake::Mistakes,
    order::Fitting,
    paper::wall_drawing,
    reading::fit_sheet,
    terms::Side,
    told::{Subject, cautions, centre_table, fit_table},
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// The folder for drawing and data, made where it is missing [default: drafts]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
    #[command(flatten)]
    printing: Printing,
    #[command(flatten)]
    cutting: Cutting,
    /// Print the draft as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

/// Where the drawings go when no folder is named.
const OUT: &str = "drafts";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let rolls = arguments.printing.rolls(order.units)?;
    let wanted = arguments.cutting.of(&order)?;
    let made = make(order, notices, &wanted)?;
    let answer = Answer::new(&made, Extent::Whole).to_json();

    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let unit = arguments.input.unit(&made.order);
    let mut written = Vec::new();
    if let Some(folder) = folder {
        let toile = arguments.cutting.suffix();
        let stem =
            format!("{}-{}{toile}", file_stem(&made.legs.first.draft.name), file_stem(&made.recipe.name));
        let mut files = Vec::new();
        for leg in made.legs.iter() {
            let stem = match leg.draft.side {
                Side::Both => stem.clone(),
                side => format!("{stem}-{side}"),
            };
            let subject = Subject::of(leg, unit);
            files.extend(drawings(&subject, &made.order.fittings, &stem)?);
        }
        let subjects: Vec<Subject<'_>> = made.legs.iter().map(|leg| Subject::of(leg, unit)).collect();
        files.extend(arguments.printing.files(&subjects, &made.pattern, &rolls, &stem, unit)?);
        let json = Sheet { name: format!("{stem}.json"), bytes: format!("{answer}\n").into_bytes() };
        files.push((json, None));
        let (sheets, counts): (Vec<_>, Vec<_>) = files.into_iter().unzip();
        let paths = write_all(&folder, &sheets, &[arguments.input.of()], &arguments.replacing)?;
        written = paths.into_iter().zip(counts).collect();
    }
    if arguments.json {
        print(&format!("{answer}\n"))?;
    } else {
        let mut text = String::new();
        for leg in made.legs.iter() {
            text.push_str(&fit_table(&leg.draft, &leg.report, unit));
            text.push('\n');
        }
        text.push_str(&centre_table(&made.legs, unit));
        // Cannot fail: writing to a string.
        text.push_str(&headed("", made.verdict().said()));
        for (path, count) in &written {
            let count = count.as_deref().map(|count| format!(" ({count})")).unwrap_or_default();
            // Cannot fail: writing to a string.
            let _ = writeln!(text, "wrote {}{count}", path.display());
        }
        text.push_str(&cautions());
        print(&text)?;
    }
    Ok(made.verdict().into())
}

/// The drawing of a draft to the sewing line, and the sheet that is kept beside it.
fn drawings(subject: &Subject<'_>, fittings: &[Fitting], stem: &str) -> Result<[Counted; 4], Mistakes> {
    let wall = wall_drawing(subject);
    let fitted = fit_sheet(subject, fittings);
    let size = wall.bounds.size();
    let one =
        format!("one sheet of {} by {}", subject.unit.length(size.width), subject.unit.length(size.height));
    let file = |name: String, bytes| Sheet { name, bytes };
    Ok([
        (file(format!("{stem}.svg"), wall.to_svg(SvgScale::TrueScale).into_bytes()), None),
        (file(format!("{stem}.pdf"), wall.to_pdf()?), Some(one)),
        (file(format!("{stem}-fit-sheet.html"), fitted.to_html().into_bytes()), None),
        (file(format!("{stem}-fit-sheet.pdf"), fitted.to_pdf()?), None),
    ])
}
