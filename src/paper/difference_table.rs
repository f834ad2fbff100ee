//! What two drafts differ in, as a table for a terminal.

use std::fmt::{Result, Write};

use kurbo::Vec2;

use super::{
    figures::{decimal, signed, spoken},
    terminal::{headed, note},
};
use crate::{
    adjust::Measure,
    fit::{Change, Difference, Laid, Overlaid},
    mistake::Notice,
    terms::{Panel, Side, Word},
    unit::Unit,
};

/// What changed within 80 columns, lengths in `unit`, and whether the old and the new draft can be cut: leg by leg where
/// legs differ. Drafts that do not differ have one line.
pub fn difference_table(legs: &[Laid<'_>], unit: Unit) -> String {
    let mut table = Table { out: String::new(), unit };
    let alike = legs.iter().all(|leg| leg.difference.is_none());
    // Cannot fail: writing to a string.
    let _ = if alike { table.nothing(legs) } else { table.legs(legs) };
    table.out
}

struct Table {
    out: String,
    unit: Unit,
}

/// What differs by less is the same line under the pencil, cm.
const SEEN: f64 = 0.005;

/// Width of the first column.
const NAME: usize = 28;

impl Table {
    fn nothing(&mut self, legs: &[Laid<'_>]) -> Result {
        let Some(anchor) = legs.first().map(|leg| leg.difference.anchor) else { return Ok(()) };
        let cut = legs.iter().all(|leg| leg.new.verdict().can_be_cut());
        let cut = if cut { "" } else { "; neither is to be cut as it stands" };
        writeln!(self.out, "no difference, laid over each other by crease and {anchor} line{cut}")
    }

    fn legs(&mut self, legs: &[Laid<'_>]) -> Result {
        for (index, one) in legs.iter().enumerate() {
            if index > 0 {
                self.out.push('\n');
            }
            if one.difference.is_none() {
                self.out.push_str(leg(one.difference.side));
                self.nothing(std::slice::from_ref(one))?;
            } else {
                self.write(&one.difference, &one.old, &one.new)?;
            }
        }
        Ok(())
    }

    fn write(&mut self, difference: &Difference, old: &Overlaid<'_>, new: &Overlaid<'_>) -> Result {
        for (name, one) in [("old", old), ("new", new)] {
            let draft = one.draft;
            let leg = leg(draft.side);
            let what = format!("{leg}{}: block {}, {} fit", one.said, draft.recipe.name, draft.fit);
            self.out.push_str(&headed(&format!("{name}  "), &what));
        }
        let unit = match self.unit {
            Unit::Cm => "cm",
            Unit::Inch => "inches",
        };
        self.out.push_str(&headed(
            "",
            &format!(
                "Laid over each other by crease and {} line. Lengths in {unit}. What is not listed did not change.",
                difference.anchor
            ),
        ));
        self.parameters(difference)?;
        self.points(difference)?;
        self.edges(difference)?;
        self.seams(difference)?;
        self.levels(difference)?;
        self.crotch(difference)?;
        self.darts(difference)?;
        self.verdicts(old, new)
    }

    fn parameters(&mut self, difference: &Difference) -> Result {
        if difference.parameters.is_empty() {
            return Ok(());
        }
        writeln!(self.out, "\n  {:<NAME$} {:>8} {:>8} {:>8}", "fit parameter", "old", "new", "by")?;
        for row in &difference.parameters {
            let (cells, unit) = match row.unit() {
                Measure::Cm => (self.cells(&row.value), self.unit.tag()),
                Measure::Degrees => (in_degrees(&row.value), Measure::Degrees.symbol()),
            };
            writeln!(self.out, "  {:<NAME$} {cells} {unit}", row.key.key())?;
        }
        Ok(())
    }

    fn points(&mut self, difference: &Difference) -> Result {
        if difference.points.is_empty() {
            return Ok(());
        }
        writeln!(self.out, "\n  {:<NAME$} {:>8} {:>8}", "point moved", "to side", "down")?;
        for row in &difference.points {
            let name = of_panel(row.panel, row.role.key());
            writeln!(self.out, "  {name:<NAME$} {}", self.way(row.by()))?;
        }
        Ok(())
    }

    fn edges(&mut self, difference: &Difference) -> Result {
        if difference.edges.is_empty() {
            return Ok(());
        }
        writeln!(
            self.out,
            "\n  {:<NAME$} {:>8} {:>8} {:>8} {:>12}",
            "edge", "old", "new", "longer", "lines apart"
        )?;
        for row in &difference.edges {
            let name = of_panel(row.panel, row.edge.key());
            writeln!(self.out, "  {name:<NAME$} {} {:>12}", self.cells(&row.length), self.number(row.apart))?;
        }
        Ok(())
    }

    fn seams(&mut self, difference: &Difference) -> Result {
        if difference.seams.is_empty() {
            return Ok(());
        }
        writeln!(
            self.out,
            "\n  {:<NAME$} {:>8} {:>8} {:>20} {:>8}",
            "seam longer by", "front", "back", "back longer, old", "new"
        )?;
        for row in &difference.seams {
            let by = |change: &Change| change.by().map_or_else(String::new, |cm| self.by(cm));
            writeln!(
                self.out,
                "  {:<NAME$} {:>8} {:>8} {:>20} {:>8}",
                spoken(row.seam.key()),
                by(&row.front),
                by(&row.back),
                self.number_or_none(row.difference.old),
                self.number_or_none(row.difference.new)
            )?;
        }
        Ok(())
    }

    fn levels(&mut self, difference: &Difference) -> Result {
        if difference.levels.is_empty() {
            return Ok(());
        }
        self.head("level", "more")?;
        for row in &difference.levels {
            let parts = [
                ("below waist", row.depth),
                ("body", row.body),
                ("pattern", row.pattern),
                ("ease", row.ease),
            ];
            self.parts(row.level.key(), &parts)?;
        }
        Ok(())
    }

    fn crotch(&mut self, difference: &Difference) -> Result {
        let Some(crotch) = &difference.crotch else { return Ok(()) };
        self.head("crotch seam", "longer")?;
        let parts = [
            ("front", crotch.front),
            ("back", crotch.back),
            ("total", crotch.total),
            ("body", crotch.body),
            ("ease", crotch.ease),
        ];
        self.parts("", &parts)?;
        if !crotch.by_parameter.is_empty() {
            writeln!(self.out, "\n  {:<NAME$} {:>8} {:>8}", "of this, more by", "front", "back")?;
        }
        for row in &crotch.by_parameter {
            let by = |change: &Change| signed(self.number(change.by().unwrap_or_default()));
            let name = row.key.map_or("together", Word::key);
            writeln!(self.out, "  {name:<NAME$} {:>8} {:>8}", by(&row.front), by(&row.back))?;
        }
        Ok(())
    }

    fn darts(&mut self, difference: &Difference) -> Result {
        if difference.darts.is_empty() {
            return Ok(());
        }
        writeln!(
            self.out,
            "\n  {:<NAME$} {:>8} {:>8} {:>8} {:>9} {:>8}",
            "dart", "old", "new", "more", "to side", "down"
        )?;
        for row in &difference.darts {
            let name = of_panel(row.panel, &row.number.to_string());
            if row.intake.is_seen() {
                writeln!(self.out, "{}", self.named(&name, "intake", &row.intake))?;
            }
            if row.length.is_seen() {
                writeln!(self.out, "{}", self.named(&name, "length", &row.length))?;
            }
            if let Some(by) = row.end_by().filter(|by| by.hypot() > 0.0) {
                let label = two(&name, "end");
                writeln!(self.out, "  {label:<NAME$} {:>26}  {}", "", self.way(by))?;
            }
        }
        Ok(())
    }

    fn verdicts(&mut self, old: &Overlaid<'_>, new: &Overlaid<'_>) -> Result {
        self.out.push('\n');
        for (name, one) in [("old", old), ("new", new)] {
            writeln!(self.out, "{name}  {}", one.verdict().said())?;
        }
        let (before, after) = (old.notices(), new.notices());
        let unit = self.unit;
        let worded = |notices: &[Notice]| notices.iter().map(|it| it.text(unit)).collect::<Vec<_>>();
        let (before, after) = (worded(&before), worded(&after));
        for gone in before.iter().filter(|one| !after.contains(one)) {
            self.out.push_str(&note(&format!("(old only) {gone}")));
        }
        for come in after.iter().filter(|one| !before.contains(one)) {
            self.out.push_str(&note(&format!("(new only) {come}")));
        }
        Ok(())
    }

    fn head(&mut self, name: &str, more: &str) -> Result {
        writeln!(self.out, "\n  {name:<NAME$} {:>8} {:>8} {more:>8}", "old", "new")
    }

    /// Those parts of a row that changed, its name before the first.
    fn parts(&mut self, name: &str, parts: &[(&str, Change)]) -> Result {
        for (part, change) in parts.iter().filter(|(_, change)| change.is_seen()) {
            writeln!(self.out, "{}", self.named(name, part, change))?;
        }
        Ok(())
    }

    fn named(&self, name: &str, part: &str, change: &Change) -> String {
        format!("  {:<NAME$} {}", two(name, part), self.cells(change)).trim_end().to_owned()
    }

    /// Old, new, and by how much.
    fn cells(&self, change: &Change) -> String {
        let by = change.by().map_or_else(String::new, |cm| self.by(cm));
        format!("{:>8} {:>8} {by:>8}", self.number_or_none(change.old), self.number_or_none(change.new))
    }

    fn number_or_none(&self, cm: Option<f64>) -> String {
        cm.map_or_else(|| "none".to_owned(), |cm| self.number(cm))
    }

    fn way(&self, by: Vec2) -> String {
        format!("{:>8} {:>8}", self.by(by.x), self.by(by.y))
    }

    fn number(&self, cm: f64) -> String {
        self.unit.fine(cm)
    }

    /// A change with its sign; one that two pencil lines show and a tape does not is said in a word.
    fn by(&self, cm: f64) -> String {
        let text = signed(self.number(cm));
        if text == "0" && cm.abs() >= SEEN { "slight".to_owned() } else { text }
    }
}

fn in_degrees(change: &Change) -> String {
    let cell = |value: Option<f64>| value.map_or_else(String::new, |degrees| decimal(degrees, 2));
    let by = change.by().map_or_else(String::new, |degrees| signed(decimal(degrees, 2)));
    format!("{:>8} {:>8} {by:>8}", cell(change.old), cell(change.new))
}

/// A name in the left half of the first column and a part in the right half.
fn two(name: &str, part: &str) -> String {
    if name.is_empty() { part.to_owned() } else { format!("{name:<10} {part}") }
}

fn of_panel(panel: Panel, name: &str) -> String {
    format!("{panel} {}", spoken(name))
}

/// Which leg a table is about, where it is about one.
fn leg(side: Side) -> &'static str {
    match side {
        Side::Both => "",
        Side::Left => "left leg: ",
        Side::Right => "right leg: ",
    }
}
