//! `breeks blocks check`: a recipe tried on many bodies, or drawn step by step on one.

use std::{path::PathBuf, sync::Arc};

use super::super::{
    Ending,
    input::named,
    output::{Of, Replacing, Sheet, file_stem, write_all},
    print,
};
use crate::{
    body::Body,
    booklet::wrapped,
    draft::Plan,
    drawing::SvgScale,
    mistake::{Mistake, Mistakes, Source},
    order::{DEMOS, Order},
    paper::construction_picture,
    recipe::{self, Construction, Recipe, Step},
    terms::Word,
    trial::{Outcome, try_on},
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The recipe: a file, a shipped name or a skeleton
    file: String,
    /// Carry the recipe out on one body as far as this step of its list, print what is there and draw it
    #[arg(long, value_name = "STEP")]
    until: Option<usize>,
    /// The measurement file of the body to draw on
    #[arg(long, value_name = "FILE", requires = "until", conflicts_with = "demo")]
    body: Option<PathBuf>,
    /// The demo body to draw on
    #[arg(long, value_name = "NAME", requires = "until", default_value = DEMOS[0])]
    demo: String,
    /// The folder for the drawing [default: drafts]
    #[arg(long, value_name = "DIR", requires = "until")]
    out: Option<PathBuf>,
    #[command(flatten)]
    replacing: Replacing,
}

pub(super) fn run(arguments: &Arguments) -> Result<Ending, Mistakes> {
    let recipe = match recipe::skeleton(&arguments.file) {
        Some(skeleton) => Arc::new(Recipe::parse(&skeleton)?),
        None => recipe::load(&arguments.file)?,
    };
    match arguments.until {
        Some(step) => until(arguments, &recipe, step),
        None => check(&recipe),
    }
}

/// Draws the construction up to a step, on one body.
fn until(arguments: &Arguments, recipe: &Arc<Recipe>, step: usize) -> Result<Ending, Mistakes> {
    let all = recipe.steps.len();
    if !(1..=all).contains(&step) {
        return Err(Mistake::new(format!("recipe `{}` has no step {step}", recipe.name))
            .help(format!("its steps are 1 to {all}, in the order of its list"))
            .into());
    }
    let source = match &arguments.body {
        Some(file) => Source::read(file)?,
        None => named(&arguments.demo)?,
    };
    let (order, _) = Order::read(&source)?;
    let (body, _) = Body::resolve(&order.body)?;
    let inputs = Plan::inputs(recipe, &body, &order.trousers)?;
    let made = recipe.construct_until(&inputs, step)?;
    let mut text = format!(
        "{} on {}, {step} of {all} steps; cm from {}: towards the side (minus: the fork), below the waist line\n\n",
        recipe.name,
        order.name.as_deref().unwrap_or("the body"),
        recipe.start
    );
    for (line, y) in recipe.lines.iter().zip(&made.lines).filter(|(line, _)| !line.by_step) {
        text.push_str(&row("", &line.name, None, *y, &line.rule));
    }
    for (number, taken) in recipe.steps.iter().take(step).enumerate() {
        let entry = taken.entry();
        let (across, down) = place(taken, &made);
        let rule = match taken {
            Step::Point { .. } => format!("{}: {}", entry.plain, entry.rule),
            Step::Quantity { .. } | Step::Level { .. } => entry.rule.clone(),
        };
        text.push_str(&row(&(number + 1).to_string(), &entry.makes, across, down, &rule));
    }
    let folder = arguments.out.clone().unwrap_or_else(|| PathBuf::from("drafts"));
    let name = format!("{}-until-{step}.svg", file_stem(&recipe.name));
    let bytes = construction_picture(recipe, &made).to_svg(SvgScale::FitsScreen).into_bytes();
    for path in write_all(&folder, &[Sheet { name, bytes }], &[Of::Own("recipes")], &arguments.replacing)? {
        text.push_str(&format!("\nwrote {}\n", path.display()));
    }
    print(&text)?;
    Ok(Ending::Done)
}

/// Across and down of a point, the length alone of a quantity, the depth alone of a level.
fn place(step: &Step, made: &Construction) -> (Option<f64>, f64) {
    match step {
        Step::Point { id, .. } => {
            let at = made.points.get(id.0).copied().unwrap_or_default();
            (Some(at.x), at.y)
        }
        Step::Quantity { index, .. } => (None, made.quantities.get(*index).copied().unwrap_or_default()),
        Step::Level { index, .. } => (None, made.lines.get(*index).copied().unwrap_or_default()),
    }
}

fn row(number: &str, name: &str, across: Option<f64>, down: f64, rule: &str) -> String {
    /// Before the rule, and all of a line, letters.
    const BEFORE: usize = 46;
    const WIDTH: usize = 110;
    // Adding nothing turns a minus before nothing into a plus.
    let long = |cm: f64| format!("{:.2}", (cm * 100.0).round() / 100.0 + 0.0);
    let mut out =
        format!("{number:>4}  {name:<22} {:>8} {:>8}", across.map(long).unwrap_or_default(), long(down));
    for (index, line) in wrapped(rule, WIDTH - BEFORE).iter().enumerate() {
        let indent = if index == 0 { "  ".to_owned() } else { format!("\n{:BEFORE$}", "") };
        out.push_str(&format!("{indent}{line}"));
    }
    out.push('\n');
    out
}

/// Tries a recipe on the spread.
fn check(recipe: &Arc<Recipe>) -> Result<Ending, Mistakes> {
    let outcomes = try_on(recipe);
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
            Outcome::Broken(mistakes) => ("broken", mistakes.iter().flat_map(told).collect()),
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
