//! `breeks draft`.

use std::{fmt::Write, path::PathBuf};

use super::{
    Ending,
    cutting::Cutting,
    input::Input,
    output::{Sheet, file_stem, write_all},
    print,
};
use crate::{
    answer::{Answer, Extent},
    drawing::{Paper, SvgScale},
    fit::drafted_legs,
    mistake::Mistakes,
    paper::{
        Subject, cautions, centre_table, fit_table, in_a_row, overview, pattern_sheet, printed_pattern,
        wall_drawing,
    },
    pattern::{Pattern, Wanted},
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
    /// Print the pieces on sheets of this paper, to glue: a4, letter, a4_letter (prints on either), a3, tabloid; may be
    /// repeated
    #[arg(long, value_name = "PAPER", value_parser = paper, default_value = "a4_letter")]
    paper: Vec<Paper>,
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
    let recipe = recipe::load(&order.trousers.block)?;
    let mut legs = drafted_legs(&order, &recipe)?;
    let (wanted, allowances) = arguments.cutting.of(&order)?;
    let pattern = Pattern::of(legs.iter().map(|leg| &leg.draft), &allowances, &wanted)?;
    legs.begin_with(notices.into_iter().chain(pattern.notices.iter().cloned()).collect());
    let whole = Wanted { purpose: wanted.purpose, ..Wanted::default() };
    let panels = Pattern::of(legs.iter().map(|leg| &leg.draft), &allowances, &whole)?;
    let answer = Answer::new(&legs, Extent::Whole).cut(&panels).to_json();

    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let unit = arguments.input.unit(&order);
    let mut written = Vec::new();
    if let Some(folder) = folder {
        let stem = format!("{}-{}", file_stem(&legs.first.draft.name), file_stem(&recipe.name));
        let mut files = Vec::new();
        for leg in legs.iter() {
            let stem = match leg.draft.side {
                Side::Both => stem.clone(),
                side => format!("{stem}-{side}"),
            };
            files.extend(drawings(&Subject { draft: &leg.draft, report: &leg.report, unit }, &stem)?);
        }
        let subjects: Vec<Subject<'_>> =
            legs.iter().map(|leg| Subject { draft: &leg.draft, report: &leg.report, unit }).collect();
        let sheet = pattern_sheet(&subjects, &in_a_row(&pattern), true);
        let bytes = sheet.to_svg(SvgScale::TrueScale).into_bytes();
        files.push((Sheet { name: format!("{stem}-pieces.svg"), bytes }, None));
        for paper in &arguments.paper {
            files.push(printed(&subjects, &pattern, *paper, &stem)?);
        }
        let json = Sheet { name: format!("{stem}.json"), bytes: format!("{answer}\n").into_bytes() };
        files.push((json, None));
        let (sheets, counts): (Vec<_>, Vec<_>) = files.into_iter().unzip();
        let paths = write_all(&folder, &sheets)?;
        written = paths.into_iter().zip(counts).collect();
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

/// A file with how much paper it takes, where that is to be said.
type Counted = (Sheet, Option<String>);

/// The drawings of a draft to the sewing line.
fn drawings(subject: &Subject<'_>, stem: &str) -> Result<[Counted; 3], Mistakes> {
    let wall = wall_drawing(subject);
    let size = wall.bounds.size();
    let one = format!("one sheet of {:.0} by {:.0} cm", size.width, size.height);
    let file = |name: String, bytes| Sheet { name, bytes };
    Ok([
        (file(format!("{stem}.svg"), wall.to_svg(SvgScale::TrueScale).into_bytes()), None),
        (
            file(format!("{stem}-overview.svg"), overview(subject).to_svg(SvgScale::FitsScreen).into_bytes()),
            None,
        ),
        (file(format!("{stem}.pdf"), wall.to_pdf()?), Some(one)),
    ])
}

/// The pieces on sheets of paper, with a first page.
fn printed(
    subjects: &[Subject<'_>],
    pattern: &Pattern,
    paper: Paper,
    stem: &str,
) -> Result<Counted, Mistakes> {
    let (bytes, count) = printed_pattern(subjects, pattern, paper)?;
    let name = format!("{stem}-{}.pdf", file_stem(paper.key()));
    Ok((Sheet { name, bytes }, Some(format!("{count} sheets and a first page"))))
}
