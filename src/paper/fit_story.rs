//! What a measured fit did, as a fitter would tell it: before and after, what moved and why, what matters most.

use std::fmt::{Result, Write};

use super::{figures::signed, terminal::headed};
use crate::{
    adjust::Key,
    body::Origin,
    draft::Draft,
    fit::{CrotchShare, Report},
    order::Adjustment,
    terms::{Level, Word},
    unit::Unit,
    voice::rule_of_thumb,
};

/// The story of a fit within 80 columns: `before` is the draft with the file's own parameters.
pub fn fit_story(before: &Report, draft: &Draft, after: &Report, unit: Unit) -> String {
    let mut out = String::new();
    // Cannot fail: writing to a string.
    let _ = write_story(&mut out, before, draft, after, unit);
    out
}

fn write_story(out: &mut String, before: &Report, draft: &Draft, after: &Report, unit: Unit) -> Result {
    let long = |cm: f64| unit.figure(cm);
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

    let mut found: Vec<_> = draft.adjustments.iter().filter(|it| it.is_found()).collect();
    found.sort_by(|a, b| weight(after, b.key).total_cmp(&weight(after, a.key)));
    let Some(most) = found.first().copied() else {
        return writeln!(out, "\nNothing was moved.");
    };
    out.push('\n');
    out.push_str(&headed("Why: ", &reason(before, after, unit)));
    let (small, told): (Vec<&Adjustment>, Vec<&Adjustment>) =
        found.iter().partition(|it| it.value.abs() < SMALL);
    if !told.is_empty() {
        writeln!(out, "\n  {:<22} {:>9} {:>7} {:>7}", "what moved", "by", "front", "back")?;
    }
    for it in &told {
        let (front, back) = share_of(after, it.key).map_or((0.0, 0.0), |share| (share.front, share.back));
        writeln!(
            out,
            "  {:<22} {:>9} {:>7} {:>7} {}",
            it.key.key(),
            amount(it, unit),
            signed(unit.figure(front)),
            signed(unit.figure(back)),
            in_words(it)
        )?;
    }
    if !small.is_empty() {
        let keys: Vec<String> = small.iter().map(|it| format!("`{}`", it.key)).collect();
        let and = if told.is_empty() { "small amounts of " } else { "and small amounts of " };
        out.push_str(&headed("  ", &format!("{and}{}", keys.join(", "))));
    }
    writeln!(out, "  Front and back: what the crotch seam gains there.\n")?;
    let value = amount(most, unit);
    let other_way = if most.value < 0.0 { ", the other way round than it says" } else { "" };
    out.push_str(&headed(
        "Matters most: ",
        &format!(
            "`{}` {value}, {}. By hand{other_way}: {}",
            most.key,
            in_words(most),
            rule_of_thumb(most.key.about().hand_method, unit)
        ),
    ));
    Ok(())
}

/// A parameter smaller than this has no line of its own, cm or degrees.
const SMALL: f64 = 0.05;

/// What the fit was after, in lengths.
fn reason(before: &Report, after: &Report, unit: Unit) -> String {
    let (was, is) = (&before.crotch, &after.crotch);
    let mut reasons = Vec::new();
    if let (Some((_, Origin::Measured)), Some(ease)) = (was.body, was.ease()) {
        let missing = was.wanted - ease;
        let which = if missing < 0.0 { "longer" } else { "shorter" };
        reasons.push(if missing.abs() < SMALL {
            "the recipe alone meets the measured crotch length".to_owned()
        } else {
            format!(
                "the recipe's crotch seam is {} {which} than the measured crotch length with its ease asks for; the fit \
                 changes it by {} on the front and {} on the back. The tape does not say where: it is shared as \
                 fitters share it",
                unit.length(missing.abs()),
                unit.change(is.front - was.front),
                unit.change(is.back - was.back)
            )
        });
    }
    let thigh = before.levels.iter().zip(&after.levels).find(|(was, _)| was.level == Level::Thigh);
    if let Some((was, is)) = thigh
        && was.from == Origin::Measured
        && was.is_tight()
    {
        reasons.push(format!(
            "the thigh would have {} of ease and now has {}",
            unit.length(was.ease()),
            unit.length(is.ease())
        ));
    }
    if reasons.is_empty() {
        reasons.push("the measured front thigh arc asks for it".to_owned());
    }
    format!("{}.", reasons.join("; and "))
}

/// The value with its sign and its unit.
fn amount(it: &Adjustment, unit: Unit) -> String {
    signed(it.key.about().unit.amount(it.value).in_unit(unit).replace(" degrees", "°"))
}

/// What a fitter calls it, more or less of it.
fn in_words(it: &Adjustment) -> &'static str {
    let (more, less) = match it.key {
        Key::ThighFront => ("front thigh stands out", "flat front thigh"),
        Key::ThighBack => ("back thigh stands out", "flat back thigh"),
        Key::ThighBackTake => ("taken back on the back thigh", "given on the back thigh"),
        Key::ThighInner => ("fuller inner thigh", "slighter inner thigh"),
        Key::ThighOuter => ("fuller outer thigh", "slighter outer thigh"),
        Key::SeatLength => ("longer over the seat", "shorter over the seat"),
        Key::SeatAngle => ("fuller seat, back leans more", "flatter seat, straighter back"),
        Key::SeatScoop => ("deeper back curve", "shallower back curve"),
        Key::CrotchDepth => ("crotch lies lower", "crotch lies higher"),
        Key::CrotchFrontExtension => ("more fork in front", "less fork in front"),
        Key::CrotchBackExtension => ("more fork behind", "less fork behind"),
        Key::CrotchFrontScoop => ("deeper front curve", "shallower front curve"),
        key => return key.about().title,
    };
    if it.value < 0.0 { less } else { more }
}

fn share_of(report: &Report, key: Key) -> Option<&CrotchShare> {
    report.crotch.by_parameter.iter().find(|share| share.key == Some(key))
}

/// How much a parameter changes the crotch seam, front and back counted alike.
fn weight(report: &Report, key: Key) -> f64 {
    share_of(report, key).map_or(0.0, |share| share.front.abs() + share.back.abs())
}
