//! `breeks compare`: two drafts laid over each other.

use std::path::PathBuf;

use super::{
    Ending,
    by_hand::hand_strips,
    input::named,
    output::{Of, Replacing, Sheet, file_stem, write_all},
    print,
};
use crate::{
    answer::Comparison,
    booklet::note,
    draft::Draft,
    drawing::{SvgScale, Wording},
    fit::Laid,
    making::make,
    mistake::{Mistake, Mistakes, Notice, Source},
    order::Order,
    paper::overlay,
    pattern::Wanted,
    terms::{Anchor, Side, Word},
    told::difference_table,
    unit::Unit,
};

#[derive(clap::Args)]
#[command(after_help = "\
Two files: the first is the old draft, the second the new. One file alone: the recipe's proportions without any fit \
parameter against the file as it is. One file with --set or --block: the file against the file so changed. One file \
with --fitting: what the record says of that toile against the file as it is, or against another toile.")]
pub(super) struct Arguments {
    /// One or two measurement files
    #[arg(num_args = 0..=2, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// A built-in body of the rowing club in place of a file, behind the files
    /// if there are any; may be repeated
    #[arg(long, value_name = "NAME")]
    demo: Vec<String>,
    /// Set a key for the second draft, by its dotted path; may be repeated
    #[arg(long = "set", value_name = "KEY=VALUE", allow_hyphen_values = true)]
    set: Vec<String>,
    /// The recipe of the second draft: a shipped name or a file
    #[arg(long, value_name = "NAME")]
    block: Option<String>,
    /// The file as it stood after this `[[fitting]]` of its record, counted
    /// from 1, the oldest first; twice for two of them
    #[arg(long, value_name = "N", conflicts_with_all = ["set", "block"])]
    fitting: Vec<usize>,
    /// The level line on which the drafts are laid over each other, beside the
    /// crease: crotch, hip, waist or knee
    #[arg(long, value_name = "LEVEL", default_value = "crotch", value_parser = anchor)]
    anchor: Anchor,
    /// The unit of printed lengths: cm or inch
    #[arg(long, value_name = "UNIT", value_parser = super::input::unit)]
    units: Option<Unit>,
    /// The folder for the picture, made where it is missing [default: drafts]
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Draw also how the hand comes from the old draft to the new one, a strip
    /// for every fit parameter that changed by 2 mm or more: where to cut, what
    /// moves, what is drawn again
    #[arg(long)]
    by_hand: bool,
    #[command(flatten)]
    replacing: Replacing,
    /// Print the comparison as JSON on standard output; files only with --out
    #[arg(long)]
    json: bool,
}

fn anchor(text: &str) -> Result<Anchor, String> {
    Anchor::from_key(text).ok_or_else(|| format!("expected one of {}", Anchor::KEYS.join(", ")))
}

/// Where the picture goes when no folder is named.
const OUT: &str = "drafts";

/// A draft to be, in words and as an order.
struct Asked {
    said: String,
    order: Order,
    notices: Vec<Notice>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let [old, new] = arguments.asked()?;
    let unit = arguments.units.unwrap_or(new.order.units);
    // A file's name may hold what would move the cursor.
    let [old_said, new_said] = [&old, &new].map(|asked| Wording::line(&asked.said).to_string());
    let made = |asked: Asked| make(asked.order, asked.notices, &Wanted::default());
    let (old, new) = (made(old)?, made(new)?);
    let over = |side: &Side| {
        Laid::over(old.overlaid(*side, &old_said), new.overlaid(*side, &new_said), arguments.anchor)
    };
    let laid: Vec<Laid<'_>> = new.sides_beside(&old).iter().map(over).collect();

    let folder = match (&arguments.out, arguments.json) {
        (Some(folder), _) => Some(folder.clone()),
        (None, false) => Some(PathBuf::from(OUT)),
        (None, true) => None,
    };
    let (mut sheets, mut without_strips) = (Vec::new(), false);
    for leg in laid.iter().filter(|leg| !leg.difference.is_none()) {
        let picture = overlay(&leg.old, &leg.new, arguments.anchor, unit);
        let stem = match leg.difference.side {
            Side::Both => stem(leg.old.draft, leg.new.draft),
            side => format!("{}-{side}", stem(leg.old.draft, leg.new.draft)),
        };
        let svg = picture.to_svg(SvgScale::TrueScale).into_bytes();
        sheets.push(Sheet { name: format!("{stem}.svg"), bytes: svg });
        sheets.push(Sheet { name: format!("{stem}.pdf"), bytes: picture.to_pdf()? });
        if arguments.by_hand {
            match hand_strips(&stem, leg.old.draft, leg.new.draft, unit)? {
                Some(strips) => sheets.extend(strips),
                None => without_strips = true,
            }
        }
    }
    let written = match folder {
        Some(folder) if !sheets.is_empty() => {
            write_all(&folder, &sheets, &arguments.of(), &arguments.replacing)?
        }
        _ => Vec::new(),
    };
    if arguments.json {
        print(&format!("{}\n", Comparison::new(arguments.anchor, &laid, unit).to_json()))?;
    } else {
        let mut text = difference_table(&laid, unit);
        for path in &written {
            text.push_str(&format!("wrote {}\n", path.display()));
        }
        if without_strips {
            text.push_str(&note(
                "no strip of the hand's way: the drafts differ in more than fit parameters, in body, recipe or ease",
            ));
        }
        print(&text)?;
    }
    Ok(new.verdict().into())
}

/// A name for the files of a comparison: what is new, and over what.
fn stem(old: &Draft, new: &Draft) -> String {
    let of = |draft: &Draft| format!("{}-{}", file_stem(&draft.name), file_stem(&draft.recipe.name));
    let (old, new) = (of(old), of(new));
    if old == new { format!("{new}-compared") } else { format!("{new}-over-{old}") }
}

impl Arguments {
    /// What is compared, by which its pictures are known again.
    fn of(&self) -> Vec<Of<'_>> {
        let files = self.files.iter().map(|path| Of::File(path));
        files.chain(self.demo.iter().map(|name| Of::Own(name))).collect()
    }

    /// The old and the new draft that the arguments ask for.
    fn asked(&self) -> Result<[Asked; 2], Mistakes> {
        let files = self.files.iter().map(|path| Source::read(path).map_err(Mistakes::from));
        let demos = self.demo.iter().map(|name| named(name));
        let sources: Vec<Source> = files.chain(demos).collect::<Result<_, _>>()?;
        match sources.as_slice() {
            [] => Err(Mistake::new("expected a measurement file, found none")
                .help("name one or two, or try the program with `--demo stroke --block jeans`")
                .into()),
            [one] => self.of_one(one),
            [one, other] if self.fitting.is_empty() => {
                Ok([read(one, &[], None)?, read(other, &self.set, self.block.as_deref())?])
            }
            [_, _] => Err(Mistake::new("`--fitting` compares states of one file, found two files")
                .help("leave one of them out")
                .into()),
            _ => Err(Mistake::new(format!("expected one or two drafts, found {}", sources.len()))
                .help("name two files or demos at the most")
                .into()),
        }
    }

    fn of_one(&self, source: &Source) -> Result<[Asked; 2], Mistakes> {
        match self.fitting.as_slice() {
            [] if self.set.is_empty() && self.block.is_none() => {
                let as_it_is = read(source, &[], None)?;
                Ok([without_parameters(&as_it_is), as_it_is])
            }
            [] => Ok([read(source, &[], None)?, read(source, &self.set, self.block.as_deref())?]),
            [number] => {
                let as_it_is = read(source, &[], None)?;
                Ok([after(&as_it_is, *number)?, as_it_is])
            }
            [number, later] => {
                let as_it_is = read(source, &[], None)?;
                Ok([after(&as_it_is, *number)?, after(&as_it_is, *later)?])
            }
            more => Err(Mistake::new(format!("expected one or two fittings, found {}", more.len()))
                .help("name two at the most")
                .into()),
        }
    }
}

fn read(source: &Source, set: &[String], block: Option<&str>) -> Result<Asked, Mistakes> {
    let (mut order, notices) = Order::read_with(source, set)?;
    let mut changes = set.to_vec();
    if let Some(block) = block {
        block.clone_into(&mut order.trousers.block);
        changes.push(format!("block {block}"));
    }
    let with = if changes.is_empty() { String::new() } else { format!(" with {}", changes.join(", ")) };
    Ok(Asked { said: format!("{}{with}", source.name), order, notices })
}

/// The same body by the recipe's proportions alone.
fn without_parameters(asked: &Asked) -> Asked {
    let said = format!("{} without fit parameters", asked.said);
    Asked { said, order: asked.order.proportions_alone(), notices: asked.notices.clone() }
}

fn after(asked: &Asked, number: usize) -> Result<Asked, Mistakes> {
    let (order, said) = asked.order.after_fitting(number)?;
    let date = order.fittings.last().and_then(|fitting| fitting.date.as_deref());
    let date = date.map(|date| format!(", {date}")).unwrap_or_default();
    let notices = asked.notices.iter().cloned().chain(said).collect();
    Ok(Asked { said: format!("{} after fitting {number}{date}", asked.said), order, notices })
}
