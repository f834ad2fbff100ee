//! What a measured fit did, as a fitter would tell it: before and after, what moved, and what each correction is for.

use super::tables::called;
use crate::{
    adjust::{Key, Measure},
    body::Origin,
    booklet::{Block, Column, Table, plain},
    draft::Draft,
    fit::{CrotchBudget, CrotchShare, Report, turn},
    order::Adjustment,
    terms::Level,
    unit::{Unit, signed},
    voice::{Value, at_least, change, length, moved, named, rule_of_thumb},
};

/// The story of a fit: `before` is the draft with the file's own parameters; with `why`, all that the table of fit
/// parameters says of each correction.
pub fn fit_story(before: &Report, draft: &Draft, after: &Report, unit: Unit, why: bool) -> String {
    let heading = format!("{}: block {}, {} fit", draft.name, draft.recipe.name, draft.fit);
    let mut blocks = vec![
        Block::plain(&heading),
        Block::Table(eased(before, after)),
        Block::Table(sewn(&before.crotch, &after.crotch)),
    ];
    let mut made = draft.adjustments.clone();
    made.sort_by_key(|it| turn(it.key));
    if made.is_empty() {
        blocks.push(Block::plain("Nothing was moved."));
        return plain(&blocks, unit);
    }
    if made.iter().any(Adjustment::is_found) {
        blocks.push(Block::led("Why:", &reason(before, after, unit)));
    }
    blocks.push(Block::Table(moved_table(after, &made)));
    if why {
        blocks.extend(made.iter().map(|it| explained(it, unit)));
    }
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

/// What is corrected, in the order in which a fitter does it, each with what it cures.
fn moved_table(after: &Report, made: &[Adjustment]) -> Table {
    let columns = vec![
        Column::words("", 2.0),
        Column::numbers("by", 1.0),
        Column::numbers("front", 1.0),
        Column::numbers("back", 1.0),
        Column::words("for", 3.0),
    ];
    let mut table = Table::new("What moved", columns);
    for it in made {
        let (front, back) = share_of(after, it.key).map_or((0.0, 0.0), |share| (share.front, share.back));
        let by = match it.key.about().unit {
            Measure::Cm => moved(it.value),
            Measure::Degrees => named(signed(Value::Degrees(it.value).in_column(Unit::Cm))),
        };
        let mark = if it.is_by_hand() { " *" } else { "" };
        let cures = named(format!("{}{mark}", cured(it)));
        table.row([it.key.into(), by, change(front), change(back), cures]);
    }
    let given = if made.iter().any(Adjustment::is_by_hand) { " * given, not found." } else { "" };
    table.with_remark(&format!(
        "Front and back: what the crotch seam gains there. In the order of fitting.{given}"
    ))
}

/// All that the table of fit parameters says of a correction.
fn explained(it: &Adjustment, unit: Unit) -> Block {
    let about = it.key.about();
    let other_way = if it.value < 0.0 { ", the other way round than it says" } else { "" };
    let [moves, stays, hand] =
        [about.moves, about.stays, about.hand_method].map(|text| rule_of_thumb(text, unit));
    Block::plain(&format!(
        "`{}` {}: {}. It moves {moves}; {stays} stay. By hand{other_way}: {hand}",
        it.key,
        amount(it, unit),
        cured(it)
    ))
}

/// A difference smaller than this is none, cm.
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
