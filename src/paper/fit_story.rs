//! What a measured fit did, as a fitter would tell it: before and after, what moved and why, what matters most.

use std::fmt::{Result, Write};

use super::{
    figures::{decimal, figure, signed},
    terminal::headed,
};
use crate::{
    adjust::Measure,
    draft::Draft,
    fit::{CrotchShare, Report},
    terms::Word,
    unit::Unit,
};

/// The story of a fit within 80 columns: `before` is the draft with the file's own parameters.
pub fn fit_story(before: &Report, draft: &Draft, after: &Report, unit: Unit) -> String {
    let mut out = String::new();
    // Cannot fail: writing to a string.
    let _ = write_story(&mut out, before, draft, after, unit);
    out
}

fn write_story(out: &mut String, before: &Report, draft: &Draft, after: &Report, unit: Unit) -> Result {
    let long = |cm: f64| figure(cm, unit);
    writeln!(out, "{}: block {}, {} fit, lengths in {}\n", draft.name, draft.recipe.name, draft.fit, unit)?;
    writeln!(out, "  {:<14} {:>8} {:>13} {:>13}  wanted", "", "body", "ease before", "ease after")?;
    for (was, is) in before.levels.iter().zip(&after.levels) {
        let most = is.most.map_or(String::from("or more"), |most| format!("to {}", long(most)));
        writeln!(
            out,
            "  {:<14} {:>8} {:>13} {:>13}  {} {most}",
            is.level.key(),
            long(is.body),
            long(was.ease()),
            long(is.ease()),
            long(is.least)
        )?;
    }
    if let (Some((body, from)), Some(was), Some(is)) =
        (after.crotch.body, before.crotch.ease(), after.crotch.ease())
    {
        let name = "crotch length";
        writeln!(
            out,
            "  {name:<14} {:>8} {:>13} {:>13}  {} ({})",
            long(body),
            long(was),
            long(is),
            long(after.crotch.wanted),
            from.key()
        )?;
    }
    writeln!(
        out,
        "  {:<14} {:>8} {:>13} {:>13}",
        "front / back",
        "",
        format!("{} / {}", long(before.crotch.front), long(before.crotch.back)),
        format!("{} / {}", long(after.crotch.front), long(after.crotch.back))
    )?;

    let found: Vec<_> = draft.adjustments.iter().filter(|it| it.from == "fit").collect();
    if found.is_empty() {
        return writeln!(out, "\nNothing was moved.");
    }
    writeln!(out, "\n  {:<24} {:>8} {:<8} {:>7} {:>7}", "what moved", "by", "", "front", "back")?;
    for it in &found {
        let about = it.key.about();
        let (value, symbol) = match about.unit {
            Measure::Cm => (unit.from_cm(it.value), unit.key()),
            Measure::Degrees => (it.value, about.unit.symbol()),
        };
        let (front, back) = share_of(after, it.key).map_or((0.0, 0.0), |share| (share.front, share.back));
        writeln!(
            out,
            "  {:<24} {:>8} {symbol:<8} {:>7} {:>7}  {}",
            it.key.key(),
            signed(decimal(value, 2)),
            signed(figure(front, unit)),
            signed(figure(back, unit)),
            about.title
        )?;
    }
    writeln!(out, "  Front and back: what the crotch seam gains there.")?;
    let most = found.iter().max_by(|a, b| weight(after, a.key).total_cmp(&weight(after, b.key)));
    if let Some(most) = most {
        out.push('\n');
        out.push_str(&headed(
            "Matters most: ",
            &format!("`{}`, {}: {}", most.key, most.key.about().title, most.key.about().hand_method),
        ));
    }
    Ok(())
}

fn share_of(report: &Report, key: crate::adjust::Key) -> Option<&CrotchShare> {
    report.crotch.by_parameter.iter().find(|share| share.key == Some(key))
}

/// How much a parameter changes the crotch seam, front and back counted alike.
fn weight(report: &Report, key: crate::adjust::Key) -> f64 {
    share_of(report, key).map_or(0.0, |share| share.front.abs() + share.back.abs())
}
