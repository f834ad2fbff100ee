//! Every table of figures, stated once for terminal, page, PDF and wall: what stands in a row, not how it looks. Cells
//! are quantities; the writers of a booklet word them in their reader's unit.

use crate::{
    body::{Body, Origin},
    booklet::{Column, Table},
    draft::Draft,
    fit::{CrotchBudget, CrotchShare, JoinRow, Legs, LevelRow, Report, SeamRow},
    order::Adjustment,
    terms::{EaseAt, Level, Measurement, Word},
    voice::{Value, angles, at_least, length, lengths, named, spoken},
};

/// A name of a table of the trade as people say it.
pub(crate) fn called(word: impl Word) -> Value {
    named(spoken(word.key()))
}

/// The measurements that the draft was made from, each with its source and its spread.
pub(crate) fn measurements(body: &Body) -> Table {
    let columns = vec![
        Column::words("", 10.0),
        Column::numbers("body", 1.0),
        Column::numbers("±", 1.0),
        Column::words("from", 1.0),
    ];
    let mut table = Table::new("Measurements, ± one deviation", columns);
    for measurement in Measurement::ALL {
        if let Some(value) = body.value(*measurement) {
            let title = measurement.about().title;
            table.row([title.into(), length(value.cm), length(value.sd), value.from.into()]);
        }
    }
    table
}

/// Every level with body, pattern, ease and what counts as a fit.
pub(crate) fn levels(report: &Report) -> Table {
    let mut columns = level_columns();
    columns.push(Column::words("wanted", 2.0));
    let verdict = |row: &LevelRow| match (row.is_tight(), row.is_loose()) {
        (true, _) => "too tight",
        (_, true) => "loose",
        (false, false) => "",
    };
    let judged = add_verdicts(&mut columns, report.levels.iter().map(verdict));
    let mut table = Table::new("Levels", columns);
    for row in &report.levels {
        let mut cells = level_cells(called(row.level), row.body, row.from, row.pattern).to_vec();
        cells.push(at_least(row.least, row.most));
        cells.extend(judged.then(|| verdict(row).into()));
        table.row(cells);
    }
    let hem = report.levels.iter().any(|row| row.level == Level::Hem);
    let hem = if hem { " At the hem, body is the heel girth, which must pass." } else { "" };
    table.with_remark(&format!("Thigh to hem: one leg.{hem}"))
}

/// What the figures of a level are.
pub(crate) fn level_columns() -> Vec<Column> {
    vec![
        Column::words("level", 1.5),
        Column::numbers("body", 1.2),
        Column::words("from", 1.5),
        Column::numbers("pattern", 1.2),
        Column::numbers("ease", 1.0),
    ]
}

/// The figures of a level: its name, the body's length and where that is from, the pattern's, and the ease.
pub(crate) fn level_cells(name: Value, body: f64, from: Origin, pattern: f64) -> [Value; 5] {
    [name, length(body), from.into(), length(pattern), length(pattern - body)]
}

/// A last column for what is wrong with a row, where anything is.
fn add_verdicts(columns: &mut Vec<Column>, mut all: impl Iterator<Item = &'static str>) -> bool {
    let judged = all.any(|verdict| !verdict.is_empty());
    columns.extend(judged.then(|| Column::words("", 1.5)));
    judged
}

/// Ease asked for, drafted and wanted, wherever a draft has any.
pub(crate) fn ease(draft: &Draft, report: &Report) -> Table {
    let columns = vec![
        Column::words("at", 2.0),
        Column::numbers("asked", 1.0),
        Column::numbers("drafted", 1.1),
        Column::numbers("a fit within", 1.8),
    ];
    let mut table = Table::new("Ease", columns);
    let level = |level: Level| report.levels.iter().find(|row| row.level == level).map(LevelRow::ease);
    for at in EaseAt::ALL {
        let drafted = match at {
            EaseAt::CrotchDepth => {
                let rise = draft.body.cm(Measurement::BodyRise);
                rise.map(|rise| draft.shape.levels[Level::Crotch] - rise)
            }
            EaseAt::CrotchLength => report.crotch.ease(),
            at => at.level().and_then(level),
        };
        // Where nothing is drafted to an ease there is nothing to compare.
        if let Some(drafted) = drafted {
            let (least, most) = match (*at, draft.plan.wanted[*at]) {
                (EaseAt::CrotchLength, (_, most)) => (report.crotch.least_judged(), most),
                (_, wanted) => wanted,
            };
            let asked = length(draft.plan.inputs.ease[*at]);
            table.row([called(*at), asked, length(drafted), at_least(least, most)]);
        }
    }
    match report.crotch.body {
        Some((_, Origin::Estimated)) => table.with_remark(
            "The crotch length is estimated: its least is less by as much as that may be wrong.",
        ),
        _ => table,
    }
}

/// The crotch seam against the body.
pub(crate) fn crotch(crotch: &CrotchBudget) -> Table {
    let columns = vec![
        Column::words("", 2.0),
        Column::numbers("front", 1.2),
        Column::numbers("back", 1.2),
        Column::numbers("total", 1.2),
        Column::words("", 2.0),
    ];
    let mut table = Table::new("Crotch seam", columns);
    let nothing = || Value::NOTHING;
    let [front, back, total] = [crotch.front, crotch.back, crotch.total()].map(length);
    table.row(["pattern".into(), front, back, total, nothing()]);
    if let (Some((body, from)), Some(ease)) = (crotch.body, crotch.ease()) {
        table.row(["body".into(), nothing(), nothing(), length(body), from.into()]);
        table.row(["ease".into(), nothing(), nothing(), length(ease), nothing()]);
        table.row(["wanted ease".into(), nothing(), nothing(), length(crotch.wanted), nothing()]);
    }
    table
}

/// The fit parameters in force and what each adds to the crotch seam; nothing where there is none.
pub(crate) fn parameters(draft: &Draft, report: &Report) -> Option<Table> {
    let columns = vec![
        Column::words("", 3.0),
        Column::numbers("value", 1.4),
        Column::numbers("front", 1.0),
        Column::numbers("back", 1.0),
        Column::words("from", 0.8),
    ];
    let mut table = Table::new("Fit parameters", columns);
    /// What a fit found and is less than this is a hair, cm or degrees.
    const SHOWN: f64 = 0.05;
    let shares = &report.crotch.by_parameter;
    let given = draft.adjustments.iter().filter(|it| it.value != 0.0);
    let (hairs, shown): (Vec<&Adjustment>, Vec<&Adjustment>) =
        given.partition(|it| it.is_found() && it.value.abs() < SHOWN);
    for it in shown {
        let share = shares.iter().find(|share| share.key == Some(it.key));
        let [front, back] = [share.map(|share| share.front), share.map(|share| share.back)];
        table.row([
            it.key.into(),
            it.key.about().unit.amount(it.value),
            front.map(length).into(),
            back.map(length).into(),
            it.from.into(),
        ]);
    }
    if table.rows.is_empty() {
        return None;
    }
    // With what the parameters give only together, the shares are what the seam has more than that of the plain block.
    let several = shares.iter().any(|share| share.key.is_none());
    if several {
        let sum = |of: fn(&CrotchShare) -> f64| length(shares.iter().map(of).sum());
        let [front, back] = [sum(|share| share.front), sum(|share| share.back)];
        table.row(["all together".into(), Value::NOTHING, front, back, Value::NOTHING]);
    }
    let left_out = match hairs.len() {
        0 => String::new(),
        count => format!(" {count} more, too small to see, are left out."),
    };
    let all = if several { ", and what all do" } else { "" };
    Some(table.with_remark(&format!("Front and back: what each adds to the crotch seam{all}.{left_out}")))
}

/// What sews to what.
pub(crate) fn seams(report: &Report) -> Table {
    let mut columns = vec![
        Column::words("", 2.4),
        Column::numbers("front", 1.2),
        Column::numbers("back", 1.2),
        Column::numbers("back longer", 1.3),
        Column::words("allowed", 2.0),
    ];
    let verdict = |row: &SeamRow| if row.holds() { "" } else { "does not sew" };
    let judged = add_verdicts(&mut columns, report.seams.iter().map(verdict));
    let mut table = Table::new("Seams walked", columns);
    for row in &report.seams {
        let [front, back, longer] = [row.front, row.back, row.difference()].map(length);
        let mut cells = vec![called(row.seam), front, back, longer, lengths(row.allowed)];
        cells.extend(judged.then(|| verdict(row).into()));
        table.row(cells);
    }
    table
}

/// How outlines run on across the seams.
pub(crate) fn joins(report: &Report) -> Table {
    let mut columns =
        vec![Column::words("", 3.0), Column::numbers("angle", 1.2), Column::numbers("true within", 2.0)];
    let verdict = |row: &JoinRow| if row.holds() { "" } else { "peaks or dips" };
    let judged = add_verdicts(&mut columns, report.joins.iter().map(verdict));
    let mut table = Table::new("Joins", columns);
    for row in &report.joins {
        let mut cells = vec![called(row.join), Value::Degrees(row.degrees), angles(row.wanted)];
        cells.extend(judged.then(|| verdict(row).into()));
        table.row(cells);
    }
    table
}

/// Left against right at the centres, where the legs differ; nothing where they are alike.
pub(crate) fn centres(legs: &Legs) -> Option<Table> {
    let columns = vec![
        Column::words("", 2.4),
        Column::numbers("left", 1.2),
        Column::numbers("right", 1.2),
        Column::numbers("at most apart", 1.6),
    ];
    let mut table = Table::new("Left against right", columns);
    for row in &legs.centres {
        let [left, right, most] = [row.front, row.back, row.allowed.1].map(length);
        table.row([named(row.seam.plain()), left, right, most]);
    }
    (!table.rows.is_empty()).then_some(table)
}
