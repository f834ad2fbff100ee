//! What a measured fit did, as a fitter would tell it: before and after, what moved and why, what matters most.

use std::fmt::{Result, Write};

use super::{figures::signed, terminal::headed};
use crate::{
    adjust::Key,
    body::Origin,
    draft::Draft,
    fit::{CrotchShare, Report, turn},
    order::Adjustment,
    terms::{Level, Word},
    unit::Unit,
    voice::rule_of_thumb,
};

/// The story of a fit within 80 columns: `before` is the draft with the file's own parameters; with `why`, all that the
/// table of fit parameters says of each correction.
pub fn fit_story(before: &Report, draft: &Draft, after: &Report, unit: Unit, why: bool) -> String {
    let mut out = String::new();
    // Cannot fail: writing to a string.
    let _ = write_story(&mut out, before, draft, after, unit, why);
    out
}

fn write_story(
    out: &mut String,
    before: &Report,
    draft: &Draft,
    after: &Report,
    unit: Unit,
    why: bool,
) -> Result {
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

    let mut moved: Vec<_> = draft.adjustments.clone();
    moved.sort_by_key(|it| turn(it.key));
    if moved.is_empty() {
        return writeln!(out, "\nNothing was moved.");
    }
    if moved.iter().any(Adjustment::is_found) {
        out.push('\n');
        out.push_str(&headed("Why: ", &reason(before, after, unit)));
    }
    writeln!(out, "\n  {:<22} {:>9} {:>7} {:>7}  for", "what moved", "by", "front", "back")?;
    for it in &moved {
        let (front, back) = share_of(after, it.key).map_or((0.0, 0.0), |share| (share.front, share.back));
        writeln!(
            out,
            "  {:<22} {:>9} {:>7} {:>7}  {}{}",
            it.key.key(),
            amount(it, unit),
            signed(unit.figure(front)),
            signed(unit.figure(back)),
            cured(it),
            if it.is_by_hand() { " *" } else { "" }
        )?;
    }
    if moved.iter().any(Adjustment::is_by_hand) {
        writeln!(out, "  * given, not found.")?;
    }
    writeln!(out, "  Front and back: what the crotch seam gains there. In the order of fitting.\n")?;
    if why {
        for it in &moved {
            let value = amount(it, unit);
            let about = it.key.about();
            let other_way = if it.value < 0.0 { ", the other way round than it says" } else { "" };
            out.push_str(&headed(
                "  ",
                &format!(
                    "`{}` {value}: {}. It moves {}; {} stay. By hand{other_way}: {}",
                    it.key,
                    cured(it),
                    about.moves,
                    about.stays,
                    rule_of_thumb(about.hand_method, unit)
                ),
            ));
        }
        out.push('\n');
    }
    Ok(())
}

/// A parameter smaller than this has no line of its own, cm or degrees.
const SMALL: f64 = 0.05;

/// What the fit was after, in lengths.
fn reason(before: &Report, after: &Report, unit: Unit) -> String {
    let (was, is) = (&before.crotch, &after.crotch);
    let mut reasons = Vec::new();
    if let (Some((_, from)), Some(ease)) = (was.body, was.ease()) {
        let known = if from == Origin::Estimated { "estimated" } else { "measured" };
        let missing = was.wanted - ease;
        let which = if missing < 0.0 { "longer" } else { "shorter" };
        reasons.push(if missing.abs() < SMALL {
            format!("the recipe alone meets the {known} crotch length")
        } else {
            format!(
                "the recipe's crotch seam is {} {which} than the {known} crotch length with its ease asks for; the fit \
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

/// What it cures, more or less of it.
fn cured(it: &Adjustment) -> &'static str {
    let (more, less) = match it.key {
        Key::ThighFront => ("drag over the front thigh", "loose front thigh"),
        Key::ThighBack => ("drag behind the thigh", "loose back thigh"),
        Key::ThighFrontSide => ("front narrow at the side", "front wide at the side"),
        Key::ThighBackTake => ("loose back thigh", "tight back thigh"),
        Key::ThighInner => ("pull at the fork", "cloth between the legs"),
        Key::ThighOuter => ("tight thigh", "loose outer thigh"),
        Key::SeatLength => ("back waist pulled down", "cloth under the seat"),
        Key::SeatAngle => ("back pulls in sitting", "back loose in standing"),
        Key::SeatScoop => ("curve cuts into the seat", "hollow under the seat"),
        Key::CrotchDepth => ("crotch cuts in", "crotch hangs low"),
        Key::CrotchFrontExtension => ("short front fork", "loose front fork"),
        Key::CrotchBackExtension => ("short back fork", "folds at the back fork"),
        Key::CrotchFrontScoop => ("loose base of the fly", "tight base of the fly"),
        key => return key.about().title,
    };
    if it.value < 0.0 { less } else { more }
}

fn share_of(report: &Report, key: Key) -> Option<&CrotchShare> {
    report.crotch.by_parameter.iter().find(|share| share.key == Some(key))
}
