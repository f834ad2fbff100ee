//! The tables of the fit sheet.

use crate::{
    adjust::Measure,
    booklet::{Column, Table},
    order::{Kind, Path},
    paper::{
        figures::{decimal, spoken},
        notes,
        subject::Subject,
    },
    terms::{Level, Measurement, Word},
    voice::{Value, named},
};

/// The measurements that the draft was made from, each with its source and its spread.
pub(super) fn measurements(subject: &Subject<'_>) -> Table {
    let mut table = Table::new(
        &format!("Measurements, {}; ±: one deviation", subject.unit.tag()),
        vec![
            Column::words("", 10.0),
            Column::numbers("body", 1.0),
            Column::numbers("±", 1.0),
            Column::words("from", 1.0),
        ],
    );
    for measurement in Measurement::ALL {
        if let Some(value) = subject.draft.body.value(*measurement) {
            let sd = subject.unit.figure(value.sd);
            let title = measurement.about().title;
            table.row([title, &subject.unit.figure(value.cm), &sd, value.from.key()]);
        }
    }
    table
}

/// Every level with body, pattern, ease and what counts as a fit.
pub(super) fn levels(subject: &Subject<'_>) -> Table {
    let print = |cm| subject.unit.figure(cm);
    let mut table = Table::new(
        &format!("Levels, {}; thigh to hem: one leg", subject.unit.tag()),
        vec![
            Column::words("level", 1.5),
            Column::numbers("body", 1.2),
            Column::words("from", 1.5),
            Column::numbers("pattern", 1.2),
            Column::numbers("ease", 1.0),
            Column::words("a fit within", 2.0),
        ],
    );
    for row in &subject.report.levels {
        let within = match row.most {
            Some(most) => format!("{} to {}", print(row.least), print(most)),
            None => format!("{} at least", print(row.least)),
        };
        let name = if row.level == Level::Hem { "hem, heel" } else { row.level.key() };
        table.row([name, &print(row.body), row.from.key(), &print(row.pattern), &print(row.ease()), &within]);
    }
    table
}

/// What sews to what.
pub(super) fn seams(subject: &Subject<'_>) -> Table {
    let print = |cm| subject.unit.figure(cm);
    let mut table = Table::new(
        &format!("Seams walked, {}", subject.unit.tag()),
        vec![
            Column::words("", 3.0),
            Column::numbers("front", 1.2),
            Column::numbers("back", 1.2),
            Column::numbers("longer by", 1.4),
        ],
    );
    for row in &subject.report.seams {
        table.row([spoken(row.seam.key()), print(row.front), print(row.back), print(row.difference())]);
    }
    table
}

/// How outlines run on across the seams.
pub(super) fn joins(subject: &Subject<'_>) -> Table {
    let mut table = Table::new(
        "Joins",
        vec![Column::words("", 3.0), Column::numbers("angle", 1.2), Column::numbers("true within", 2.0)],
    );
    for row in &subject.report.joins {
        let wanted = format!("{} to {}°", decimal(row.wanted.0, 0), decimal(row.wanted.1, 0));
        table.row([spoken(row.join.key()), format!("{}°", decimal(row.degrees, 1)), wanted]);
    }
    table
}

/// The fit parameters in force and what each adds to the crotch seam.
pub(super) fn parameters(subject: &Subject<'_>) -> Table {
    let print = |cm| subject.unit.fine(cm);
    let mut table = Table::new(
        &format!("Fit parameters, {}, and what each adds to the crotch seam", subject.unit.tag()),
        vec![
            Column::words("", 3.0),
            Column::numbers("value", 1.5),
            Column::numbers("front", 1.0),
            Column::numbers("back", 1.0),
        ],
    );
    let shares = &subject.report.crotch.by_parameter;
    /// A parameter under this is a hair, cm or degrees.
    const SHOWN: f64 = 0.05;
    for it in subject.draft.adjustments.iter().filter(|it| it.value.abs() >= SHOWN) {
        let share = shares.iter().find(|share| share.key == Some(it.key));
        let (front, back) = share.map(|share| (print(share.front), print(share.back))).unwrap_or_default();
        let value = match it.key.about().unit {
            Measure::Cm => print(it.value),
            Measure::Degrees => format!("{}°", decimal(it.value, 1)),
        };
        table.row([it.key.key().to_owned(), value, front, back]);
    }
    if let Some(rest) = shares.iter().find(|share| share.key.is_none()) {
        table.row(["together".to_owned(), String::new(), print(rest.front), print(rest.back)]);
    }
    table
}

/// Ease asked for, drafted and wanted, besides what the levels show.
pub(super) fn ease(subject: &Subject<'_>) -> Table {
    let mut table = Table::new(
        &format!("Ease, {}", subject.unit.tag()),
        vec![
            Column::words("at", 2.0),
            Column::numbers("asked", 1.0),
            Column::numbers("drafted", 1.1),
            Column::numbers("a fit within", 1.8),
        ],
    );
    // Where nothing is drafted to an ease there is nothing to compare.
    for row in notes::ease_rows(subject).into_iter().filter(|[_, _, drafted, _]| !drafted.is_empty()) {
        table.row(row);
    }
    table
}

/// A changed key of the file with its new value.
pub(super) fn changed(subject: &Subject<'_>, key: &str, value: f64) -> String {
    let value = match Path::find(key).map(|path| path.kind()) {
        Some(Kind::Degrees(..)) => Value::Degrees(value),
        Some(Kind::PerCent(..)) => Value::Share(value / 100.0),
        Some(Kind::Count(_)) => named(decimal(value, 0)),
        Some(Kind::Length(..) | Kind::Text | Kind::OneOf(_)) | None => Value::Amount(value),
    };
    format!("{key} {}", value.in_unit(subject.unit))
}
