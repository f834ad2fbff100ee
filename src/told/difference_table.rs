//! What two drafts differ in, as a terminal shows it.

use crate::{
    adjust::Measure,
    booklet::{Block, Column, Table, plain},
    fit::{Change, Difference, Laid},
    mistake::Notice,
    terms::{Anchor, Panel, Side, Word},
    unit::{Unit, decimal, signed},
    voice::{Value, amount, moved, named, spoken},
};

/// What changed, lengths in `unit`, and whether the old and the new draft can be cut: leg by leg where legs differ. Drafts
/// that do not differ have one line.
pub fn difference_table(legs: &[Laid<'_>], unit: Unit) -> String {
    if legs.iter().all(|leg| leg.difference.is_none()) {
        let Some(first) = legs.first() else { return String::new() };
        return plain(&[nothing("", first.difference.anchor, legs)], unit);
    }
    let mut text = String::new();
    for (index, one) in legs.iter().enumerate() {
        if index > 0 {
            text.push('\n');
        }
        let difference = &one.difference;
        let blocks = if difference.is_none() {
            vec![nothing(leg(difference.side), difference.anchor, std::slice::from_ref(one))]
        } else {
            blocks(one, unit)
        };
        text.push_str(&plain(&blocks, unit));
    }
    text
}

fn nothing(leg: &str, anchor: Anchor, legs: &[Laid<'_>]) -> Block {
    let cut = legs.iter().all(|leg| leg.new.verdict().can_be_cut());
    let cut = if cut { "" } else { "; neither is to be cut as it stands" };
    Block::plain(&format!("{leg}no difference, laid over each other by crease and {anchor} line{cut}"))
}

fn blocks(laid: &Laid<'_>, unit: Unit) -> Vec<Block> {
    let Laid { old, new, difference } = laid;
    let both = [("Old.", old), ("New.", new)];
    let mut blocks: Vec<Block> = both
        .iter()
        .map(|(name, one)| {
            let draft = one.draft;
            let leg = leg(draft.side);
            let what = format!("{leg}{}: block {}, {} fit", one.said, draft.recipe.name, draft.fit);
            Block::led(name, &what)
        })
        .collect();
    let anchor = difference.anchor;
    blocks.push(Block::plain(&format!(
        "Laid over each other by crease and {anchor} line. What is not listed did not change."
    )));
    let tables = [
        parameters(difference),
        points(difference),
        edges(difference),
        seams(difference),
        levels(difference),
        crotch(difference),
        shares(difference),
        darts(difference),
        dart_ends(difference),
    ];
    blocks.extend(tables.into_iter().filter(|table| !table.rows.is_empty()).map(Block::Table));
    blocks.extend(both.iter().map(|(name, one)| Block::led(name, one.verdict().said())));
    let worded = |notices: &[Notice]| notices.iter().map(|it| it.text(unit)).collect::<Vec<_>>();
    let (before, after) = (worded(&old.notices()), worded(&new.notices()));
    let gone = before.iter().filter(|one| !after.contains(one)).map(|one| ("old", one));
    let come = after.iter().filter(|one| !before.contains(one)).map(|one| ("new", one));
    blocks.extend(gone.chain(come).map(|(only, one)| Block::led("note:", &format!("({only} only) {one}"))));
    blocks
}

/// A table of what changed: its rows are named by as many columns of words, then come columns of numbers.
fn table<'a>(
    caption: &str,
    names: impl IntoIterator<Item = &'a str>,
    numbers: impl IntoIterator<Item = &'a str>,
) -> Table {
    let names = names.into_iter().map(|name| Column::words(name, 2.0));
    Table::new(caption, names.chain(numbers.into_iter().map(|name| Column::numbers(name, 1.0))).collect())
}

fn parameters(difference: &Difference) -> Table {
    let mut table = table("Fit parameters", [""], ["old", "new", "by"]);
    for row in &difference.parameters {
        let cells = match row.unit() {
            Measure::Cm => cells(&row.value),
            Measure::Degrees => in_degrees(&row.value),
        };
        table.row(std::iter::once(row.key.into()).chain(cells));
    }
    table
}

fn points(difference: &Difference) -> Table {
    let mut table = table("Points moved", [""], ["to side", "down"]);
    for row in &difference.points {
        table.row([of_panel(row.panel, row.role), moved(row.by().x), moved(row.by().y)]);
    }
    table
}

fn edges(difference: &Difference) -> Table {
    let mut table = table("Edges", [""], ["old", "new", "longer", "lines apart"]);
    for row in &difference.edges {
        let name = std::iter::once(of_panel(row.panel, row.edge));
        table.row(name.chain(cells(&row.length)).chain([amount(row.apart)]));
    }
    table
}

fn seams(difference: &Difference) -> Table {
    let columns = ["front longer", "back longer", "back over front, old", "new"];
    let mut table = table("Seams", [""], columns);
    for row in &difference.seams {
        let [old, new, _] = cells(&row.difference);
        table.row([named(spoken(row.seam.key())), by(&row.front), by(&row.back), old, new]);
    }
    table
}

fn levels(difference: &Difference) -> Table {
    let mut table = table("Levels", ["", ""], ["old", "new", "more"]);
    for row in &difference.levels {
        let parts =
            [("below waist", row.depth), ("body", row.body), ("pattern", row.pattern), ("ease", row.ease)];
        for (part, change) in parts.iter().filter(|(_, change)| change.is_seen()) {
            table.row([named(spoken(row.level.key())), (*part).into()].into_iter().chain(cells(change)));
        }
    }
    table
}

fn crotch(difference: &Difference) -> Table {
    let mut table = table("Crotch seam", [""], ["old", "new", "longer"]);
    if let Some(crotch) = &difference.crotch {
        let parts = [
            ("front", crotch.front),
            ("back", crotch.back),
            ("total", crotch.total),
            ("body", crotch.body),
            ("ease", crotch.ease),
        ];
        for (part, change) in parts.iter().filter(|(_, change)| change.is_seen()) {
            table.row(std::iter::once((*part).into()).chain(cells(change)));
        }
    }
    table
}

fn shares(difference: &Difference) -> Table {
    let mut table = table("Of this, more by", [""], ["front", "back"]);
    for row in difference.crotch.iter().flat_map(|crotch| &crotch.by_parameter) {
        let by = |change: &Change| moved(change.by().unwrap_or_default());
        table.row([row.key.map_or("together".into(), Value::from), by(&row.front), by(&row.back)]);
    }
    table
}

fn darts(difference: &Difference) -> Table {
    let mut table = table("Darts", ["", ""], ["old", "new", "more"]);
    for row in &difference.darts {
        for (part, change) in [("intake", &row.intake), ("length", &row.length)] {
            if change.is_seen() {
                table.row([dart(row.panel, row.number), part.into()].into_iter().chain(cells(change)));
            }
        }
    }
    table
}

fn dart_ends(difference: &Difference) -> Table {
    let mut table = table("Ends of darts moved", [""], ["to side", "down"]);
    for row in &difference.darts {
        if let Some(by) = row.end_by().filter(|by| by.hypot() > 0.0) {
            table.row([dart(row.panel, row.number), moved(by.x), moved(by.y)]);
        }
    }
    table
}

fn dart(panel: Panel, number: usize) -> Value {
    named(format!("{panel} {number}"))
}

/// A name of a panel's own.
pub(crate) fn of_panel(panel: Panel, name: impl Word) -> Value {
    named(format!("{panel} {}", spoken(name.key())))
}

/// Old, new, and by how much.
fn cells(change: &Change) -> [Value; 3] {
    let one = |cm: Option<f64>| cm.map_or("none".into(), amount);
    [one(change.old), one(change.new), by(change)]
}

fn by(change: &Change) -> Value {
    change.by().map(moved).into()
}

/// The same of an angle, to a hundredth of a degree, as the file has it.
fn in_degrees(change: &Change) -> [Value; 3] {
    let one = |degrees: Option<f64>| degrees.map(|degrees| named(format!("{}°", decimal(degrees, 2)))).into();
    let by = change.by().map(|degrees| named(format!("{}°", signed(decimal(degrees, 2)))));
    [one(change.old), one(change.new), by.into()]
}

/// Which leg it is about, where it is about one.
fn leg(side: Side) -> &'static str {
    match side {
        Side::Both => "",
        Side::Left => "left leg: ",
        Side::Right => "right leg: ",
    }
}
