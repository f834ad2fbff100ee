//! `breeks draft`.

use std::{fmt::Write, path::PathBuf};

use kurbo::Rect;

use super::{
    Ending,
    cutting::Cutting,
    input::Input,
    output::{Sheet, file_stem, write_all},
    print,
};
use crate::{
    answer::{Answer, Extent},
    drawing::{Paper, SvgScale, Tiles},
    fit::drafted_legs,
    mistake::{Mistake, Mistakes},
    order::Fitting,
    paper::{
        PlacedPiece, Subject, cautions, centre_table, exchange_file, first_page, fit_sheet, fit_table,
        pattern_sheet, projected, wall_drawing,
    },
    pattern::{
        Pattern, Wanted,
        lay::{Part, Placement, Strip, along, on_sheets},
    },
    recipe,
    terms::Side,
    terms::Word,
    unit::{Unit, parse_length},
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
    /// Print the pieces on a roll of paper so wide, as one long page: 84.1 is as wide as A0; may be repeated
    #[arg(long, value_name = "LENGTH")]
    roll: Vec<String>,
    /// Also write the pieces as one page for a projector: strong lines over a grid of 10 cm
    #[arg(long)]
    projector: bool,
    /// Also write the pieces as DXF, in the layers of ASTM D6673, for a cutter or another program
    #[arg(long)]
    dxf: bool,
    #[command(flatten)]
    cutting: Cutting,
    /// Print the draft as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

/// What a printer of rolls leaves free along either edge, and what is left between pieces, cm (common practice, no
/// source).
const ROLL_MARGIN: f64 = 1.0;
/// No roll is narrower or wider, cm.
const ROLL: std::ops::RangeInclusive<f64> = 30.0..=200.0;

/// Where the drawings go when no folder is named.
const OUT: &str = "drafts";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let rolls = arguments.rolls(order.units)?;
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
            let subject = Subject { draft: &leg.draft, report: &leg.report, unit };
            files.extend(drawings(&subject, &order.fittings, &stem)?);
        }
        let subjects: Vec<Subject<'_>> =
            legs.iter().map(|leg| Subject { draft: &leg.draft, report: &leg.report, unit }).collect();
        let sheet = pattern_sheet(&subjects, &in_a_row(&pattern), true);
        let bytes = sheet.to_svg(SvgScale::TrueScale).into_bytes();
        files.push((Sheet { name: format!("{stem}-pieces.svg"), bytes }, None));
        for paper in &arguments.paper {
            files.push(printed(&subjects, &pattern, *paper, &stem)?);
        }
        for roll in &rolls {
            files.push(on_roll(&subjects, &pattern, *roll, &stem)?);
        }
        if arguments.projector {
            let bytes = projected(pattern_sheet(&subjects, &in_a_row(&pattern), false)).to_pdf()?;
            files.push((Sheet { name: format!("{stem}-projector.pdf"), bytes }, None));
        }
        if arguments.dxf {
            let bytes = exchange_file(&legs.first.draft, &pattern.pieces).into_bytes();
            files.push((Sheet { name: format!("{stem}.dxf"), bytes }, None));
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

/// The drawing of a draft to the sewing line, and the sheet that is kept beside it.
fn drawings(subject: &Subject<'_>, fittings: &[Fitting], stem: &str) -> Result<[Counted; 4], Mistakes> {
    let wall = wall_drawing(subject);
    let fitted = fit_sheet(subject, fittings);
    let size = wall.bounds.size();
    let one = format!("one sheet of {:.0} by {:.0} cm", size.width, size.height);
    let file = |name: String, bytes| Sheet { name, bytes };
    Ok([
        (file(format!("{stem}.svg"), wall.to_svg(SvgScale::TrueScale).into_bytes()), None),
        (file(format!("{stem}.pdf"), wall.to_pdf()?), Some(one)),
        (file(format!("{stem}-fit-sheet.html"), fitted.to_html().into_bytes()), None),
        (file(format!("{stem}-fit-sheet.pdf"), fitted.to_pdf()?), None),
    ])
}

/// The pieces on sheets of paper, with a first page.
fn printed(
    subjects: &[Subject<'_>],
    pattern: &Pattern,
    paper: Paper,
    stem: &str,
) -> Result<Counted, Mistakes> {
    let laid = on_sheets(&parts(pattern), crate::drawing::Sheet::of(paper));
    let placed = placed(pattern, &laid.placements);
    let sheet = pattern_sheet(subjects, &placed, false);
    let tiles = Tiles::cut_from(&sheet, laid.sheet, laid.origin)?;
    let first = first_page(&subjects[0], &tiles, paper);
    let name = format!("{stem}-{}.pdf", file_stem(paper.key()));
    let count = format!("{} sheets and a first page", tiles.tiles().len());
    Ok((Sheet { name, bytes: tiles.to_pdf(Some(&first)) }, Some(count)))
}

/// The pieces on a roll of paper, as one page with the test squares on it.
fn on_roll(subjects: &[Subject<'_>], pattern: &Pattern, roll: f64, stem: &str) -> Result<Counted, Mistakes> {
    let strip = Strip { width: roll - 2.0 * ROLL_MARGIN, gap: ROLL_MARGIN, repeat: None };
    let laid = along(&strip, &parts(pattern)).ok_or_else(|| {
        Mistake::new(format!("a piece is wider than a roll of {roll:.1} cm"))
            .help("name a wider roll, or sheets to glue with `--paper`")
    })?;
    let mut sheet = pattern_sheet(subjects, &placed(pattern, &laid.placements), true);
    sheet.bounds = Rect { x0: -ROLL_MARGIN, x1: roll - ROLL_MARGIN, ..sheet.bounds };
    let length = sheet.bounds.height();
    let name = format!("{stem}-roll-{roll:.0}.pdf");
    Ok((Sheet { name, bytes: sheet.to_pdf()? }, Some(format!("{length:.0} cm of a roll of {roll:.0} cm"))))
}

/// The pieces as they are shown, to be laid.
fn parts(pattern: &Pattern) -> Vec<Part> {
    pattern.pieces.iter().map(|piece| Part::new(piece.face() * piece.cut_path())).collect()
}

fn placed<'a>(pattern: &'a Pattern, placements: &[Placement]) -> Vec<PlacedPiece<'a>> {
    let pieces = pattern.pieces.iter().zip(placements);
    pieces.map(|(piece, at)| PlacedPiece { piece, place: at.affine() * piece.face() }).collect()
}

impl Arguments {
    fn rolls(&self, unit: Unit) -> Result<Vec<f64>, Mistakes> {
        let read = |text: &String| {
            let wrong = |found: String| Mistake::new(format!("`--roll {text}`: {found}"));
            let cm = parse_length(text, unit).map_err(wrong)?;
            if ROLL.contains(&cm) {
                return Ok(cm);
            }
            Err(wrong(format!("expected {:.0} to {:.0} cm", ROLL.start(), ROLL.end())))
        };
        self.roll.iter().map(read).collect::<Result<_, Mistake>>().map_err(Mistakes::from)
    }
}

fn in_a_row(pattern: &Pattern) -> Vec<PlacedPiece<'_>> {
    let mut x = 0.0;
    pattern
        .pieces
        .iter()
        .map(|piece| {
            let face = piece.face();
            let bounds = kurbo::Shape::bounding_box(&(face * piece.cut_path()));
            let place = kurbo::Affine::translate((x - bounds.x0, -bounds.y0)) * face;
            x += bounds.width() + 1.0;
            PlacedPiece { piece, place }
        })
        .collect()
}
