//! `breeks cloth`: how much cloth to buy, and where each piece is cut.

use std::path::PathBuf;

use super::{
    Ending,
    cutting::Cutting,
    input::Input,
    output::{Replacing, Sheet, file_stem, write_all},
    print,
};
use crate::{
    answer::{ClothAnswer, Warning},
    drawing::SvgScale,
    making::make,
    mistake::{Mistake, Mistakes, Notice},
    paper::cloth_picture,
    pattern::{Cloth, Lay, Shrinkage},
    told::{Subject, cautions, cloth_table},
    unit::{Unit, parse_length},
};

#[derive(clap::Args)]
#[command(after_help = "\
Lengths are in the file's unit or carry their own: 150, 60in. Pieces lie with their grain along the warp and are \
mirrored to pairs. With --repeat all leg pieces lie one way, with their knee notches on the same place of the pattern \
lengthwise, and the cloth is bought in whole repeats; across the cloth, and small parts, are not matched.")]
pub(super) struct Arguments {
    #[command(flatten)]
    input: Input,
    /// The width of the cloth from edge to edge
    #[arg(long, value_name = "LENGTH")]
    width: String,
    /// The cloth lies double, folded along the warp, right sides together: pairs are cut at once
    #[arg(long)]
    folded: bool,
    /// The cloth has a nap, a pile or one way up: all heads lie the same way
    #[arg(long)]
    nap: bool,
    /// What washing takes, per cent: lengthwise and across, as 5,2; one number stands for both
    #[arg(long, value_name = "PER CENT", default_value = "0")]
    shrinkage: String,
    /// After how much length the pattern of the cloth begins again, as it is sold
    #[arg(long, value_name = "LENGTH")]
    repeat: Option<String>,
    /// What is not used along either edge [default: 1 cm]
    #[arg(long, value_name = "LENGTH")]
    selvedge: Option<String>,
    #[command(flatten)]
    cutting: Cutting,
    /// The folder for the picture, made where it is missing [default: drafts]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
    /// Print the lay as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

/// Where the picture goes when no folder is named.
const OUT: &str = "drafts";

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let (order, notices) = arguments.input.read()?;
    let cloth = arguments.cloth(order.units)?;
    let wanted = arguments.cutting.of(&order)?;
    let made = make(order, notices, &wanted)?;
    let pattern = &made.pattern;
    let lay = Lay::of(&pattern.pieces, &cloth)?;
    let notices: Vec<Notice> = pattern.notices.iter().chain(&lay.notices).cloned().collect();

    let unit = arguments.input.unit(&made.order);
    let leg = &made.legs.first;
    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let mut written = Vec::new();
    if let Some(folder) = folder {
        let subject = Subject::of(leg, unit);
        let picture = cloth_picture(&subject, &pattern.pieces, &lay, &notices);
        let toile = arguments.cutting.suffix();
        let stem = format!("{}-{}{toile}-cloth", file_stem(&leg.draft.name), file_stem(&made.recipe.name));
        let svg = picture.to_svg(SvgScale::FitsScreen).into_bytes();
        let sheets = [
            Sheet { name: format!("{stem}.svg"), bytes: svg },
            Sheet { name: format!("{stem}.pdf"), bytes: picture.to_pdf()? },
        ];
        written = write_all(&folder, &sheets, &[arguments.input.of()], &arguments.replacing)?;
    }
    if arguments.json {
        let answer = ClothAnswer::new(&leg.draft, &pattern.pieces, &lay, Warning::all(notices, unit));
        print(&format!("{}\n", answer.to_json()))?;
    } else {
        let mut text = cloth_table(&leg.draft, &pattern.pieces, &lay, &notices, unit);
        if !made.verdict().can_be_cut() {
            text.push_str("The draft is not to be cut as it stands: see `breeks draft`.\n");
        }
        for path in &written {
            text.push_str(&format!("wrote {}\n", path.display()));
        }
        text.push_str(&cautions());
        print(&text)?;
    }
    Ok(made.verdict().into())
}

impl Arguments {
    fn cloth(&self, unit: Unit) -> Result<Cloth, Mistakes> {
        let mut mistakes = Vec::new();
        let mut length = |option: &str, text: Option<&String>, default: f64| match text {
            None => default,
            Some(text) => parse_length(text, unit).unwrap_or_else(|wrong| {
                mistakes.push(Mistake::new(format!("`{option} {text}`: {wrong}")));
                default
            }),
        };
        let width = length("--width", Some(&self.width), 0.0);
        let selvedge = length("--selvedge", self.selvedge.as_ref(), Cloth::SELVEDGE);
        let repeat = self.repeat.as_ref().map(|text| length("--repeat", Some(text), 0.0));
        let shrinkage = shrinkage(&self.shrinkage).unwrap_or_else(|mistake| {
            mistakes.push(mistake);
            Shrinkage::default()
        });
        if mistakes.is_empty() {
            Ok(Cloth { width, folded: self.folded, nap: self.nap, shrinkage, repeat, selvedge })
        } else {
            Err(mistakes.into())
        }
    }
}

fn shrinkage(text: &str) -> Result<Shrinkage, Mistake> {
    let share = |text: &str| text.trim().parse::<f64>().ok().map(|per_cent| per_cent / 100.0);
    let (lengthwise, across) = text.split_once(',').unwrap_or((text, text));
    match (share(lengthwise), share(across)) {
        (Some(lengthwise), Some(across)) => Ok(Shrinkage { lengthwise, across }),
        _ => Err(Mistake::new(format!("`--shrinkage {text}`: expected one or two numbers of per cent"))
            .help("for example `--shrinkage 5,2`: 5 per cent lengthwise, 2 across")),
    }
}
