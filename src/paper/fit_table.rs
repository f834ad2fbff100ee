//! The numbers of a draft as a table for a terminal.

use std::fmt::{Result, Write};

use super::{
    figures::{decimal, spoken},
    terminal::note,
};
use crate::{
    draft::Draft,
    fit::{JoinRow, Legs, LevelRow, Report, SeamRow, known},
    terms::{Level, Side, Word},
    unit::Unit,
};

/// Levels, crotch length, seams, joins and notices, within 80 columns, lengths in `unit`.
pub fn fit_table(draft: &Draft, report: &Report, unit: Unit) -> String {
    let mut table = Table { out: String::new(), unit };
    // Cannot fail: writing to a string.
    let _ = table.write(draft, report);
    table.out
}

/// Left against right at the centres, where the legs differ; nothing where they are alike.
pub fn centre_table(legs: &Legs, unit: Unit) -> String {
    let mut out = String::new();
    for row in &legs.centres {
        // Cannot fail: writing to a string.
        let _ = writeln!(
            out,
            "  {}: left {}, right {}, at most {} apart",
            row.seam.plain(),
            unit.figure(row.front),
            unit.figure(row.back),
            unit.figure(row.allowed.1)
        );
    }
    if !out.is_empty() {
        out.push('\n');
    }
    out
}

struct Table {
    out: String,
    unit: Unit,
}

impl Table {
    fn write(&mut self, draft: &Draft, report: &Report) -> Result {
        let unit = match self.unit {
            Unit::Cm => "cm",
            Unit::Inch => "inches",
        };
        writeln!(
            self.out,
            "{}{}: block {}, {} fit, lengths in {}",
            draft.name,
            leg_of(draft),
            draft.recipe.name,
            draft.fit,
            unit
        )?;
        self.parameters(draft)?;
        self.levels(report)?;
        self.crotch(report)?;
        self.seams(report)?;
        self.joins(report)?;
        let mut notices = known(draft, report).into_iter().peekable();
        if notices.peek().is_some() {
            self.out.push('\n');
        }
        for notice in notices {
            self.out.push_str(&note(&notice.text(self.unit)));
        }
        Ok(())
    }

    fn parameters(&mut self, draft: &Draft) -> Result {
        let mut given = draft.adjustments.iter().filter(|it| it.value != 0.0).peekable();
        if given.peek().is_some() {
            writeln!(self.out, "\n  {:<22} {:>14}  from", "fit parameter", "value")?;
        }
        for it in given {
            let value = it.key.about().unit.amount(it.value).in_unit(self.unit);
            writeln!(self.out, "  {:<22} {value:>14}  {}", it.key.key(), it.from)?;
        }
        Ok(())
    }

    fn levels(&mut self, report: &Report) -> Result {
        let columns = ["body", "pattern", "ease"];
        let [body, pattern, ease] = columns;
        writeln!(self.out, "\n  {:<12} {body:>8}  {:<10} {pattern:>8} {ease:>8}  wanted", "level", "from")?;
        for row in &report.levels {
            let wanted = match row.most {
                Some(most) => format!("{} to {}", self.long(row.least), self.long(most)),
                None => format!("at least {}", self.long(row.least)),
            };
            let line = format!(
                "  {:<12} {:>8}  {:<10} {:>8} {:>8}  {wanted:<14} {}",
                row.level.key(),
                self.long(row.body),
                row.from.key(),
                self.long(row.pattern),
                self.long(row.ease()),
                verdict(row)
            );
            writeln!(self.out, "{}", line.trim_end())?;
        }
        if report.levels.iter().any(|row| row.level == Level::Hem) {
            writeln!(
                self.out,
                "  Thigh to hem: one leg. At the hem, body is the heel girth, which must pass."
            )?;
        }
        Ok(())
    }

    fn crotch(&mut self, report: &Report) -> Result {
        let crotch = &report.crotch;
        writeln!(self.out, "\n  {:<12} {:>8} {:>8} {:>8}", "crotch seam", "front", "back", "total")?;
        writeln!(
            self.out,
            "  {:<12} {:>8} {:>8} {:>8}",
            "pattern",
            self.long(crotch.front),
            self.long(crotch.back),
            self.long(crotch.total())
        )?;
        for (index, share) in crotch.by_parameter.iter().enumerate() {
            writeln!(
                self.out,
                "  {:<12} {:>8} {:>8} {:>8}  {}",
                if index == 0 { "of this" } else { "" },
                self.long(share.front),
                self.long(share.back),
                self.long(share.front + share.back),
                share.key.map_or("together", Word::key)
            )?;
        }
        if let (Some((body, from)), Some(ease)) = (crotch.body, crotch.ease()) {
            writeln!(self.out, "  {:<30} {:>8}  {}", "body", self.long(body), from.key())?;
            writeln!(
                self.out,
                "  {:<30} {:>8}  wanted {}",
                "ease",
                self.long(ease),
                self.long(crotch.wanted)
            )?;
        }
        Ok(())
    }

    fn seams(&mut self, report: &Report) -> Result {
        writeln!(self.out, "\n  {:<12} {:>8} {:>8} {:>12}  allowed", "seam", "front", "back", "back longer")?;
        for row in &report.seams {
            let allowed = format!("{} to {}", self.long(row.allowed.0), self.long(row.allowed.1));
            let line = format!(
                "  {:<12} {:>8} {:>8} {:>12}  {allowed:<14} {}",
                spoken(row.seam.key()),
                self.long(row.front),
                self.long(row.back),
                self.long(row.difference()),
                if SeamRow::holds(row) { "" } else { "does not sew" }
            );
            writeln!(self.out, "{}", line.trim_end())?;
        }
        Ok(())
    }

    fn joins(&mut self, report: &Report) -> Result {
        writeln!(self.out, "\n  {:<12} {:>8}  wanted", "join", "degrees")?;
        for row in &report.joins {
            let wanted = format!("{:.0} to {:.0}", row.wanted.0, row.wanted.1);
            let line = format!(
                "  {:<12} {:>8}  {wanted:<14} {}",
                spoken(row.join.key()),
                decimal(row.degrees, 1),
                if JoinRow::holds(row) { "" } else { "peaks or dips" }
            );
            writeln!(self.out, "{}", line.trim_end())?;
        }
        Ok(())
    }

    fn long(&self, cm: f64) -> String {
        self.unit.figure(cm)
    }
}

/// Which leg a heading is about, where it is about one.
fn leg_of(draft: &Draft) -> String {
    if draft.side == Side::Both { String::new() } else { format!(", {} leg", draft.side) }
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
