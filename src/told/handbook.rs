//! A recipe as a handbook prints it: the numbers, the rule and the reason of every step.

use std::fmt::Write;

use super::features::{bend, bow, features};
use crate::{
    booklet::wrapped,
    recipe::{EaseTable, PointId, PointRule, Recipe, Step, StyleTable},
    terms::{EaseAt, Panel, Role, Style, Word},
};

/// Lines are no longer than this.
const WIDTH: usize = 96;
/// The rule stands in the second line of a step, this far in.
const INDENT: &str = "       ";

/// The recipe as text: what it is, its level lines, its steps panel by panel, and its defaults.
pub fn handbook(recipe: &Recipe) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail, here and below.
    let _ = write_all(&mut out, recipe);
    out
}

fn write_all(out: &mut String, recipe: &Recipe) -> std::fmt::Result {
    paragraph(out, "", &format!("{}: {}", recipe.name, recipe.title))?;
    for note in &recipe.notes {
        paragraph(out, "  ", note)?;
    }
    if !recipe.asks.is_empty() {
        writeln!(out, "\nasks")?;
        for ask in &recipe.asks {
            let within = ask.within.map_or_else(String::new, |[least, most]| {
                format!(", from {} to {}", recipe.units.write(least), recipe.units.write(most))
            });
            writeln!(out, "  {} = {}{within}", ask.name, recipe.units.write(ask.default))?;
        }
    }
    writeln!(out, "\nlevel lines, below the waist; lengths without a unit are cm")?;
    for line in recipe.lines.iter().skip(1).filter(|line| !line.by_step) {
        step(out, "    ", &line.says, &format!("{} = {}", line.name, line.rule))?;
    }
    let mut panel = None;
    for the_step in &recipe.steps {
        let entry = the_step.entry();
        if panel != Some(entry.panel) {
            panel = Some(entry.panel);
            writeln!(out, "\n{}", entry.panel)?;
        }
        let rule = match the_step {
            Step::Quantity { .. } | Step::Level { .. } => format!("{} = {}", entry.makes, entry.rule),
            // Its plain sentence says the rule already.
            Step::Point { rule: PointRule::Meet { .. }, .. } => entry.plain.clone(),
            Step::Point { .. } => format!("{}: {}", entry.plain, entry.rule),
        };
        step(out, &format!("{:>3}. ", entry.number), &entry.title, &rule)?;
    }
    writeln!(out, "\npanels")?;
    for (panel, plan) in [(Panel::Front, Some(&recipe.front)), (Panel::Back, recipe.back.as_ref())] {
        let Some(plan) = plan else { continue };
        let name = |id: PointId| recipe.point_name(id);
        let roles: Vec<String> = Role::ALL
            .iter()
            .map(|role| format!("{} {}", role.key().replace('_', " "), name(plan.roles[*role])))
            .collect();
        paragraph(out, "  ", &format!("{panel}: crease {}, {}", name(plan.crease), roles.join(", ")))?;
        let curves = format!("crotch curve: {}; seams: {}", bend(recipe, plan), bow(plan));
        paragraph(out, "    ", &curves)?;
        for (word, folds) in [("dart", &plan.darts), ("pleat", &plan.pleats)] {
            for fold in folds {
                let words =
                    format!("{word} at {}: {} wide, {} long", name(fold.on), fold.intake, fold.length);
                paragraph(out, "    ", &words)?;
            }
        }
    }
    for feature in
        features(recipe).iter().filter(|it| ["truing", "seams included, cm"].contains(&it.name.as_str()))
    {
        paragraph(out, "  ", &format!("{}: {}", feature.name, feature.rule))?;
    }
    writeln!(out)?;
    write_ease(out, &recipe.ease)?;
    write_style(out, &recipe.style)
}

fn step(out: &mut String, number: &str, why: &str, rule: &str) -> std::fmt::Result {
    let under = " ".repeat(number.chars().count());
    for (index, line) in wrapped(why, WIDTH - number.len()).iter().enumerate() {
        writeln!(out, "{}{line}", if index == 0 { number } else { &under })?;
    }
    paragraph(out, INDENT, rule)
}

fn paragraph(out: &mut String, indent: &str, text: &str) -> std::fmt::Result {
    for line in wrapped(text, WIDTH - indent.len()) {
        writeln!(out, "{indent}{line}")?;
    }
    Ok(())
}

fn write_ease(out: &mut String, ease: &EaseTable) -> std::fmt::Result {
    writeln!(out, "  {:<14} {:>6} {:>6}  still itself within", "ease, cm", "women", "men")?;
    for at in EaseAt::ALL {
        let row = ease.row(*at);
        let within = row.within.map_or_else(String::new, |[least, most]| format!("{least} to {most}"));
        writeln!(
            out,
            "{}",
            format!("  {:<14} {:>6} {:>6}  {within}", at.key(), row.women, row.men).trim_end()
        )?;
    }
    Ok(())
}

fn write_style(out: &mut String, style: &StyleTable) -> std::fmt::Result {
    writeln!(out, "\n  style")?;
    for of in Style::ALL {
        if let Some(row) = style.row(*of) {
            let both = if row.women == row.men {
                row.women.to_string()
            } else {
                format!("women {}, men {}", row.women, row.men)
            };
            let within =
                row.within.map_or_else(String::new, |[least, most]| format!(", within {least} to {most}"));
            writeln!(out, "  {:<14} {both}{within}", of.key())?;
        }
    }
    Ok(())
}
