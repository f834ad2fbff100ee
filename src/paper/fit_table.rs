//! The numbers of a draft as a table for a terminal.

use std::fmt::Write;

use crate::{
    draft::Draft,
    fit::{LevelRow, Report},
    terms::Word,
    unit::Unit,
};

/// Levels, crotch length, seams, joins and notices, within 80 columns, in `unit`.
pub fn fit_table(draft: &Draft, report: &Report, unit: Unit) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail, here and below.
    let _ = table(&mut out, draft, report, unit);
    out
}

fn table(out: &mut String, draft: &Draft, report: &Report, unit: Unit) -> std::fmt::Result {
    let long = |cm: f64| format!("{:.*}", places(unit), unit.from_cm(cm) + 0.0);
    writeln!(out, "{}: block {}, {} fit, {}", draft.name, draft.recipe.name, draft.fit, unit)?;
    writeln!(out)?;
    writeln!(
        out,
        "  {:<8} {:>8}  {:<10} {:>8} {:>7}  {:<14}",
        "level", "body", "from", "pattern", "ease", "wanted"
    )?;
    for row in &report.levels {
        let wanted = match row.most {
            Some(most) => format!("{} to {}", long(row.least), long(most)),
            None => format!("{} at least", long(row.least)),
        };
        writeln!(
            out,
            "  {:<8} {:>8}  {:<10} {:>8} {:>7}  {:<14} {}",
            row.level.key(),
            long(row.body),
            row.from.key(),
            long(row.pattern),
            long(row.ease()),
            wanted,
            verdict(row)
        )?;
    }
    writeln!(out)?;
    let crotch = &report.crotch;
    writeln!(
        out,
        "  crotch seam: front {} + back {} = {}",
        long(crotch.front),
        long(crotch.back),
        long(crotch.total())
    )?;
    if let (Some((body, from)), Some(ease)) = (crotch.body, crotch.ease()) {
        writeln!(
            out,
            "  body {} ({}), ease {}, wanted {}",
            long(body),
            from.key(),
            long(ease),
            long(crotch.wanted)
        )?;
    }
    writeln!(out)?;
    writeln!(out, "  {:<12} {:>8} {:>8} {:>11}", "seam", "front", "back", "back longer")?;
    for row in &report.seams {
        writeln!(
            out,
            "  {:<12} {:>8} {:>8} {:>11}",
            words(row.seam.key()),
            long(row.front),
            long(row.back),
            long(row.difference())
        )?;
    }
    writeln!(out)?;
    writeln!(out, "  {:<12} {:>8}  wanted", "join", "degrees")?;
    for row in &report.joins {
        writeln!(
            out,
            "  {:<12} {:>8.1}  {:.0} to {:.0}",
            words(row.join.key()),
            row.degrees,
            row.wanted.0,
            row.wanted.1
        )?;
    }
    Ok(())
}

fn verdict(row: &LevelRow) -> &'static str {
    if row.is_tight() {
        "too tight"
    } else if row.is_loose() {
        "loose"
    } else {
        ""
    }
}

/// Decimals that a tape can show: a tenth of a centimetre, a hundredth of an inch.
fn places(unit: Unit) -> usize {
    match unit {
        Unit::Cm => 1,
        Unit::Inch => 2,
    }
}

fn words(key: &str) -> String {
    key.replace('_', " ")
}
