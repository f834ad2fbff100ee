//! What a measured fit did, as a fitter would tell it: before and after, what moved and why, what matters most.

use super::tables::called;
use crate::{
    adjust::{Key, Measure},
    body::Origin,
    booklet::{Block, Column, Table, plain},
    draft::Draft,
    fit::{CrotchBudget, CrotchShare, Report},
    order::Adjustment,
    terms::Level,
    unit::{Unit, signed},
    voice::{Value, at_least, change, length, moved, named, rule_of_thumb},
};

/// The story of a fit: `before` is the draft with the file's own parameters.
pub fn fit_story(before: &Report, draft: &Draft, after: &Report, unit: Unit) -> String {
    let heading = format!("{}: block {}, {} fit", draft.name, draft.recipe.name, draft.fit);
    let mut blocks = vec![
        Block::plain(&heading),
        Block::Table(eased(before, after)),
        Block::Table(sewn(&before.crotch, &after.crotch)),
    ];
    let mut found: Vec<_> = draft.adjustments.iter().filter(|it| it.is_found()).collect();
    found.sort_by(|a, b| weight(after, b.key).total_cmp(&weight(after, a.key)));
    let Some(most) = found.first().copied() else {
        blocks.push(Block::plain("Nothing was moved."));
        return plain(&blocks, unit);
    };
    blocks.push(Block::led("Why:", &reason(before, after, unit)));
    blocks.push(Block::Table(moved_table(after, &found)));
    let value = amount(most, unit);
    let other_way = if most.value < 0.0 { ", the other way round than it says" } else { "" };
    blocks.push(Block::led(
        "Matters most:",
        &format!(
            "`{}` {value}, {}. By hand{other_way}: {}",
            most.key,
            in_words(most),
            rule_of_thumb(most.key.about().hand_method, unit)
        ),
    ));
    plain(&blocks, unit)
}

/// Body and ease at every level and at the crotch, before and after.
fn eased(before: &Report, after: &Report) -> Table {
    let columns = vec![
        Column::words("", 2.0),
        Column::numbers("body", 1.0),
        Column::words("from", 1.0),
        Column::numbers("ease before", 1.0),
        Column::numbers("ease after", 1.0),
        Column::words("wanted", 1.5),
    ];
    let mut table = Table::new("Ease", columns);
    for (was, is) in before.levels.iter().zip(&after.levels) {
        let [body, before, after] = [is.body, was.ease(), is.ease()].map(length);
        table.row([called(is.level), body, is.from.into(), before, after, at_least(is.least, is.most)]);
    }
    let crotch = &after.crotch;
    if let (Some((body, from)), Some(was), Some(is)) = (crotch.body, before.crotch.ease(), crotch.ease()) {
        let [body, was, is, wanted] = [body, was, is, crotch.wanted].map(length);
        table.row(["crotch length".into(), body, from.into(), was, is, wanted]);
    }
    table
}

/// The crotch seam before and after.
fn sewn(before: &CrotchBudget, after: &CrotchBudget) -> Table {
    let columns = vec![Column::words("", 2.0), Column::numbers("before", 1.0), Column::numbers("after", 1.0)];
    let mut table = Table::new("Crotch seam", columns);
    let parts = |of: &CrotchBudget| [of.front, of.back, of.total()];
    for (name, (was, is)) in
        ["front", "back", "total"].into_iter().zip(parts(before).into_iter().zip(parts(after)))
    {
        table.row([name.into(), length(was), length(is)]);
    }
    table
}

/// What was found, the weightiest first; small amounts by their names alone.
fn moved_table(after: &Report, found: &[&Adjustment]) -> Table {
    let columns = vec![
        Column::words("", 2.0),
        Column::numbers("by", 1.0),
        Column::numbers("front", 1.0),
        Column::numbers("back", 1.0),
        Column::words("", 3.0),
    ];
    let mut table = Table::new("What moved", columns);
    let (small, told): (Vec<&Adjustment>, Vec<&Adjustment>) =
        found.iter().partition(|it| it.value.abs() < SMALL);
    for it in told {
        let (front, back) = share_of(after, it.key).map_or((0.0, 0.0), |share| (share.front, share.back));
        let by = match it.key.about().unit {
            Measure::Cm => moved(it.value),
            Measure::Degrees => named(signed(Value::Degrees(it.value).in_column(Unit::Cm))),
        };
        table.row([it.key.into(), by, change(front), change(back), in_words(it).into()]);
    }
    let small: Vec<String> = small.iter().map(|it| format!("`{}`", it.key)).collect();
    let small = match small.as_slice() {
        [] => String::new(),
        keys => format!(" Small amounts of {} are left out.", keys.join(", ")),
    };
    table.with_remark(&format!("Front and back: what the crotch seam gains there.{small}"))
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
