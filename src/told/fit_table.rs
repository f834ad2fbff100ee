//! The numbers of a draft as a terminal shows them.

use super::tables;
use crate::{
    booklet::{Block, plain},
    draft::Draft,
    fit::{Legs, Report, known},
    terms::Side,
    unit::Unit,
};

/// Parameters, levels, crotch length, seams, joins and notices, lengths in `unit`.
pub fn fit_table(draft: &Draft, report: &Report, unit: Unit) -> String {
    let leg = match draft.side {
        Side::Both => String::new(),
        side => format!(", {side} leg"),
    };
    let heading = format!("{}{leg}: block {}, {} fit", draft.name, draft.recipe.name, draft.fit);
    let mut blocks = vec![Block::plain(&heading)];
    let tables = [
        tables::levels(report),
        tables::crotch(&report.crotch),
        tables::seams(report),
        tables::joins(report),
    ];
    blocks.extend(tables::parameters(draft, report).into_iter().chain(tables).map(Block::Table));
    blocks.extend(known(draft, report).iter().map(|notice| Block::led("note:", &notice.text(unit))));
    plain(&blocks, unit)
}

/// Left against right at the centres, where the legs differ; nothing where they are alike.
pub fn centre_table(legs: &Legs, unit: Unit) -> String {
    let table = tables::centres(legs).map(Block::Table);
    let table = plain(table.as_slice(), unit);
    if table.is_empty() { table } else { table + "\n" }
}
