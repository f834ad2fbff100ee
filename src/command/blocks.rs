//! `breeks blocks`: the recipes, what tells them apart, and one's own.

use std::{
    fmt::Write,
    path::{Path, PathBuf},
    sync::Arc,
};

use super::{
    Ending,
    output::{Sheet, file_stem, write_all, write_new},
    print,
};
use crate::{
    draft::Draft,
    drawing::SvgScale,
    fit::{self, Report},
    mistake::{Mistake, Mistakes},
    order::{self, Order},
    paper::{Subject, comparison, handbook, thumbnail, wall_drawing, wrapped},
    recipe::{self, Recipe},
    terms::{EaseAt, Level, Panel, Word},
    trial::{Outcome, try_on},
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
    /// Also write a drawing of each recipe into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

#[derive(clap::Subcommand)]
enum Action {
    /// Begin a recipe of one's own as a copy of another
    New {
        /// The new file, ending in .toml; a file that exists is never overwritten
        file: PathBuf,
        /// The recipe to begin from: a shipped name or a file
        #[arg(long, value_name = "NAME", default_value = "classic")]
        from: String,
    },
    /// Try a recipe on a spread of bodies of both sexes and say where it breaks
    Check {
        /// The recipe: a file or a shipped name
        file: String,
    },
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    match &arguments.action {
        Some(Action::New { file, from }) => return begin(file, from),
        Some(Action::Check { file }) => return check(file),
        None => {}
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
        for path in write_all(folder, &sheets(&recipes)?)? {
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
    out.push_str("`breeks blocks NAME` prints a recipe, `breeks blocks A B` compares two.\n");
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
        format!("knee at {}", knee.map_or_else(|| "no line".to_owned(), |line| line.at.to_string())),
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

/// Writes a copy of a recipe under a new name.
fn begin(file: &Path, from: &str) -> Result<Ending, Mistakes> {
    if file.extension().is_none_or(|ending| ending != "toml") {
        return Err(Mistake::new(format!("`{}` does not end in `.toml`", file.display()))
            .help("name the new recipe like `own.toml`; a name without an ending stands for a shipped recipe")
            .into());
    }
    let source = recipe::source(from)?;
    let begun_from = Recipe::parse(&source)?.name;
    // A line break in a file's name would end the comment that names it.
    let named: String = file
        .display()
        .to_string()
        .chars()
        .map(|letter| if letter.is_control() { '?' } else { letter })
        .collect();
    let text = format!(
        "# A recipe of one's own, begun from `{begun_from}`. After a change: breeks blocks check {named}\n\
         # Draft by it: breeks draft BODY.toml --block {named}\n{}",
        source.text
    );
    write_new(file, &text)?;
    print(&format!("wrote {}\n", file.display()))?;
    Ok(Ending::Done)
}

/// Tries a recipe on the spread.
fn check(file: &str) -> Result<Ending, Mistakes> {
    let recipe = recipe::load(file)?;
    let outcomes = try_on(&recipe);
    let mut out =
        format!("{}: {} steps, tried on {} bodies\n\n", recipe.name, recipe.steps.len(), outcomes.len());
    let (mut broken, mut tight, mut last) = (0, 0, Vec::new());
    for (size, outcome) in &outcomes {
        let [waist, hip, stature] = size.girths_and_stature;
        let (verdict, why) = match outcome {
            Outcome::Sound => ("drafted", Vec::new()),
            Outcome::ConstructedOnly => ("constructed", Vec::new()),
            Outcome::Tight(why) => ("tight", why.clone()),
            Outcome::Unsound(why) => ("unsound", why.clone()),
            Outcome::Broken(mistakes) => ("broken", mistakes.0.iter().flat_map(told).collect()),
        };
        tight += usize::from(matches!(outcome, Outcome::Tight(_)));
        broken += usize::from(matches!(outcome, Outcome::Unsound(_) | Outcome::Broken(_)));
        let sex = size.sex.key();
        out.push_str(&format!(
            "  {sex:<6} waist {waist:>3}, hip {hip:>3}, stature {stature:>3}  {verdict:<11}  {}\n",
            size.label
        ));
        if why.is_empty() || why != last {
            why.iter().for_each(|line| out.push_str(&format!("         {line}\n")));
        } else {
            out.push_str("         as above\n");
        }
        last = why;
    }
    let bodies = outcomes.len();
    out.push('\n');
    out.push_str(&match (broken, recipe.back.is_some()) {
        (0, true) => "every body is drafted with sound outlines, true seams and true joins\n".to_owned(),
        (0, false) => "every body is constructed; without `[back]` nothing is drafted\n".to_owned(),
        _ => format!("it breaks on {broken} of {bodies} bodies\n"),
    });
    if tight > 0 {
        out.push_str(&format!(
            "{tight} of {bodies} are tighter at a level than the recipe's own range: a matter of its ease\n"
        ));
    }
    print(&out)?;
    Ok(if broken == 0 { Ending::Done } else { Ending::NotToBeCut })
}

/// A mistake as lines of a list: with its place in the recipe where it has one.
fn told(mistake: &Mistake) -> Vec<String> {
    if mistake.place().is_some() {
        mistake.render(false).lines().map(str::to_owned).collect()
    } else {
        vec![mistake.title()]
    }
}
