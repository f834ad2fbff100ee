//! `breeks blocks`: the recipes, what tells them apart, and one's own.

mod begun;
mod copied;
mod tried;

use std::{fmt::Write, path::PathBuf, sync::Arc};

use super::{
    Ending,
    output::{Of, Replacing, Sheet, file_stem, write_all},
    print,
};
use crate::{
    booklet::wrapped,
    draft::Draft,
    drawing::SvgScale,
    fit::{self, Report},
    mistake::{Mistake, Mistakes},
    order::{self, Order},
    paper::{thumbnail, wall_drawing},
    recipe::{self, Recipe},
    terms::{EaseAt, Level, Panel},
    told::{Subject, comparison, handbook},
    unit::Unit,
};

#[derive(clap::Args)]
#[command(args_conflicts_with_subcommands = true)]
pub(super) struct Arguments {
    #[command(subcommand)]
    action: Option<Action>,
    /// One recipe to print as a handbook would, or two to put side by side: shipped names or files
    #[arg(num_args = 0..=2, value_name = "NAME")]
    names: Vec<String>,
    /// Set the figures that a book prints beside the recipe's: a CSV file of `what,of,book` rows
    #[arg(long, value_name = "CSV")]
    compare: Option<PathBuf>,
    /// Also write a drawing of each recipe into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
}

#[derive(clap::Subcommand)]
enum Action {
    /// Begin a recipe of one's own, from a skeleton or as a copy of another
    New(begun::Arguments),
    /// Try a recipe on a spread of bodies of both sexes and say where it breaks, or draw its construction up to a step
    Check(tried::Arguments),
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    match &arguments.action {
        Some(Action::New(arguments)) => return begun::run(arguments),
        Some(Action::Check(arguments)) => return tried::run(arguments),
        None => {}
    }
    if let Some(book) = &arguments.compare {
        return copied::run(&arguments.names, book);
    }
    let names: Vec<&str> = match arguments.names.as_slice() {
        [] => recipe::shipped_names().collect(),
        named => named.iter().map(String::as_str).collect(),
    };
    let recipes: Vec<Arc<Recipe>> = names.iter().map(|name| recipe::load(name)).collect::<Result<_, _>>()?;
    let mut text = match (arguments.names.as_slice(), recipes.as_slice()) {
        ([_], [one]) => handbook(one),
        ([_, _], [one, other]) => comparison(one, other),
        _ => list(&recipes)?,
    };
    if let Some(folder) = &arguments.out {
        for path in write_all(folder, &sheets(&recipes)?, &[Of::Own("recipes")], &arguments.replacing)? {
            // Cannot fail: writing to a string.
            let _ = writeln!(text, "wrote {}", path.display());
        }
    }
    print(&text)?;
    Ok(Ending::Done)
}

/// Every recipe with its picture, what it is for and by what it differs.
fn list(recipes: &[Arc<Recipe>]) -> Result<String, Mistakes> {
    /// Lines that a picture is high; its words stand to the right of it.
    const ROWS: usize = 9;
    const PICTURE: usize = 22;
    let mut out = String::new();
    for recipe in recipes {
        let mut words = vec![recipe.name.clone()];
        words.extend(wrapped(&recipe.title, 68));
        words.extend(differences(recipe));
        let picture =
            if recipe.back.is_some() { thumbnail(&drafted(recipe)?.0.shape, ROWS) } else { Vec::new() };
        for line in 0..picture.len().max(words.len()) {
            let [picture, words] =
                [&picture, &words].map(|column| column.get(line).map_or("", String::as_str));
            out.push_str(format!("{picture:<PICTURE$}  {words}").trim_end());
            out.push('\n');
        }
        out.push('\n');
    }
    out.push_str("Lengths without a unit are cm.\n`breeks blocks NAME` prints a recipe, `breeks blocks A B` compares two.\n");
    Ok(out)
}

/// What is particular to a recipe, on one line each, as it comes out on the demo body.
fn differences(recipe: &Recipe) -> Vec<String> {
    let rule = |panel: Panel| {
        let plan = match panel {
            Panel::Front => Some(&recipe.front),
            Panel::Back => recipe.back.as_ref(),
        };
        let darts = plan.map_or(0, |plan| plan.darts.len());
        match darts {
            0 => format!("no {panel} dart"),
            1 => format!("one {panel} dart"),
            _ => format!("{darts} {panel} darts"),
        }
    };
    let knee = recipe.level(Level::Knee).and_then(|index| recipe.lines.get(index));
    let ease = |at| {
        let row = recipe.ease.row(at);
        if row.women == row.men { row.women.to_string() } else { format!("{}/{}", row.women, row.men) }
    };
    vec![
        format!("{}, {}", rule(Panel::Front), rule(Panel::Back)),
        format!("knee at {}", knee.map_or_else(|| "no line".to_owned(), |line| line.rule.clone())),
        format!(
            "ease: waist {}, hip {}, thigh {}, knee {}, crotch length {}",
            ease(EaseAt::Waist),
            ease(EaseAt::Hip),
            ease(EaseAt::Thigh),
            ease(EaseAt::Knee),
            ease(EaseAt::CrotchLength)
        ),
    ]
}

/// The recipe drafted for the demo body, as its pictures show it.
fn drafted(recipe: &Arc<Recipe>) -> Result<(Draft, Report), Mistakes> {
    let name = order::DEMOS[0];
    let source = order::demo(name).ok_or_else(|| Mistake::new(format!("there is no demo `{name}`")))?;
    let (order, _) = Order::read(&source)?;
    fit::drafted(&order, recipe)
}

fn sheets(recipes: &[Arc<Recipe>]) -> Result<Vec<Sheet>, Mistakes> {
    let sheet = |recipe: &Arc<Recipe>| {
        let (draft, report) = drafted(recipe)?;
        let drawing = wall_drawing(&Subject { draft: &draft, report: &report, unit: Unit::Cm });
        let bytes = drawing.to_svg(SvgScale::TrueScale).into_bytes();
        Ok(Sheet { name: format!("{}.svg", file_stem(&recipe.name)), bytes })
    };
    recipes.iter().map(sheet).collect()
}
