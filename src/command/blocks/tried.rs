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
    trial::{Outcome, Told, Whence, broken_if_trued, must_be_measured, try_for, try_on},
};

#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The recipe: a file, a shipped name or a skeleton
    file: String,
    /// Carry the recipe out on one body as far as this step of its list, print what is there and draw it
    #[arg(long, value_name = "STEP")]
    until: Option<usize>,
    /// The measurement file of one body to try it on, or to draw on
    #[arg(long, value_name = "FILE", conflicts_with = "demo")]
    body: Option<PathBuf>,
    /// The demo body to try it on, or to draw on [default for --until: stroke]
    #[arg(long, value_name = "NAME")]
    demo: Option<String>,
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
        None if arguments.body.is_some() || arguments.demo.is_some() => on_one(arguments, &recipe),
        None => check(&recipe),
    }
}

/// The body that was named, or the first demo.
fn body(arguments: &Arguments) -> Result<Source, Mistakes> {
    match &arguments.body {
        Some(file) => Ok(Source::read(file)?),
        None => named(arguments.demo.as_deref().unwrap_or(DEMOS[0])),
    }
}

/// Tries a recipe on one body.
fn on_one(arguments: &Arguments, recipe: &Arc<Recipe>) -> Result<Ending, Mistakes> {
    let (order, _) = Order::read(&body(arguments)?)?;
    let outcome = try_for(recipe, &order);
    let (verdict, why) = reckoned(&outcome);
    let mut out = format!(
        "{}: {} steps, tried on {}: {verdict}\n",
        recipe.name,
        recipe.steps.len(),
        order.name.as_deref().unwrap_or("the body"),
    );
    out.extend(why.iter().map(|line| format!("  {line}\n")));
    out.push_str(&whence([&outcome]));
    if outcome.breaks() {
        out.push_str(&format!("\n{BOOK_OR_ROW}"));
    }
    print(&out)?;
    Ok(match outcome {
        Outcome::Sound | Outcome::ConstructedOnly => Ending::Done,
        Outcome::Tight(_) | Outcome::Unsound(_) | Outcome::Broken(_) => Ending::NotToBeCut,
    })
}

/// What a person does with a refusal.
const BOOK_OR_ROW: &str = "\
the book or a row? `--compare` with the figures that the book prints: where they agree, it is the
book's own draft that does not sew; where one does not, look at its row with `--until`
";

/// The verdict on a trial in a word, and why, line by line.
fn reckoned(outcome: &Outcome) -> (&'static str, Vec<String>) {
    match outcome {
        Outcome::Sound => ("drafted", Vec::new()),
        Outcome::ConstructedOnly => ("constructed", Vec::new()),
        Outcome::Tight(why) => ("tight", why.iter().flat_map(lines).collect()),
        Outcome::Unsound(why) => ("unsound", why.iter().flat_map(lines).collect()),
        Outcome::Broken(mistakes) => ("broken", mistakes.iter().flat_map(told).collect()),
    }
}

/// What is wrong on one body.
fn lines(told: &Told) -> Vec<String> {
    const BEYOND: &str = "    ";
    let mut lines = wrapped(&told.said, 100);
    lines.iter_mut().skip(1).for_each(|line| line.insert_str(0, BEYOND));
    lines
}

/// Where in the recipe it comes from, what is told of several bodies once.
fn whence<'a>(outcomes: impl IntoIterator<Item = &'a Outcome>) -> String {
    const WIDTH: usize = 100;
    let mut found: Vec<(&Whence, usize)> = Vec::new();
    for outcome in outcomes {
        let (Outcome::Tight(why) | Outcome::Unsound(why)) = outcome else { continue };
        for whence in why.iter().filter_map(|told| told.whence.as_ref()) {
            match found.iter_mut().find(|(known, _)| *known == whence) {
                Some((_, times)) => *times += 1,
                None => found.push((whence, 1)),
            }
        }
    }
    let mut out = String::new();
    for (Whence { about, made_by, mend }, times) in found {
        let bodies = if times == 1 { "on one body".to_owned() } else { format!("on {times} bodies") };
        out.push_str(&format!("\n  {about}, {bodies}\n"));
        for sentence in [&format!("made by {made_by}"), *mend] {
            for (index, line) in wrapped(sentence, WIDTH - 6).iter().enumerate() {
                out.push_str(if index == 0 { "    - " } else { "      " });
                out.push_str(line);
                out.push('\n');
            }
        }
    }
    if out.is_empty() { out } else { format!("\nwhere in the recipe it comes from:\n{out}") }
}

/// Draws the construction up to a step, on one body.
fn until(arguments: &Arguments, recipe: &Arc<Recipe>, step: usize) -> Result<Ending, Mistakes> {
    let all = recipe.steps.len();
    if !(1..=all).contains(&step) {
        return Err(Mistake::new(format!("recipe `{}` has no step {step}", recipe.name))
            .help(format!("its steps are 1 to {all}, in the order of its list"))
            .into());
    }
    let (order, _) = Order::read(&body(arguments)?)?;
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
    let needed: Vec<String> =
        must_be_measured(recipe).iter().map(|measurement| format!("`{}`", measurement.key())).collect();
    if !needed.is_empty() {
        out.push_str(&format!(
            "it goes by {}: nothing estimates this, it must be measured; tried with invented values\n\n",
            needed.join(", ")
        ));
    }
    let (mut broken, mut tight, mut last) = (0, 0, Vec::new());
    for (size, outcome) in &outcomes {
        let [waist, hip, stature] = size.girths_and_stature;
        let (verdict, why) = reckoned(outcome);
        tight += usize::from(matches!(outcome, Outcome::Tight(_)));
        broken += usize::from(outcome.breaks());
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
    out.push_str(&whence(outcomes.iter().map(|(_, outcome)| outcome)));
    if broken > 0 {
        out.push('\n');
        if let Some(trued) = broken_if_trued(recipe) {
            out.push_str("trued in everything, without what `[truing]` keeps as drawn, ");
            out.push_str(&match trued {
                0 => "it breaks on none\n".to_owned(),
                _ => format!("it breaks on {trued}: begin with those\n"),
            });
        }
        out.push_str(BOOK_OR_ROW);
    }
    if tight > 0 {
        out.push_str(&format!(
            "\n{tight} of {bodies} are tighter at a level or in the crotch than the recipe's own range: a matter of its ease\n"
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
