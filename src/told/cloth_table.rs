//! How much cloth to buy, for a terminal.

use crate::{
    booklet::{Block, Column, Table, plain},
    draft::Draft,
    mistake::Notice,
    pattern::{Lay, Piece, PieceKind},
    terms::{Side, Word},
    unit::Unit,
    voice::{Value, length, listed, named},
};

/// What to buy, what is cut from it and what to know, lengths in `unit`.
pub fn cloth_table(draft: &Draft, pieces: &[Piece], lay: &Lay, notices: &[Notice], unit: Unit) -> String {
    let width = unit.length(lay.cloth.width);
    let heading = format!("{}: block {}, laid on cloth {width} wide", draft.name, draft.recipe.name);
    let mut blocks = vec![Block::plain(&heading), Block::Table(bought(lay, unit)), Block::Table(cut(pieces))];
    blocks.push(Block::led("note:", &uncounted(pieces)));
    blocks.extend(notices.iter().map(|notice| Block::led("note:", &notice.text(unit))));
    plain(&blocks, unit) + "\n"
}

/// What trousers have beside the pieces that were laid.
fn uncounted(pieces: &[Piece]) -> String {
    let has = |kind: PieceKind| pieces.iter().any(|piece| piece.kind == kind);
    let optional = [
        (PieceKind::Waistband, "the waistband (`--waistband straight` counts one)"),
        (PieceKind::FlyExtension, "the fly (`--fly left` or `--fly right` counts one)"),
    ];
    let mut missing: Vec<String> =
        optional.into_iter().filter(|(kind, _)| !has(*kind)).map(|(_, words)| words.to_owned()).collect();
    missing.extend(["pockets", "facings"].map(str::to_owned));
    format!("only the pieces above are counted: not {}", listed(&missing))
}

fn bought(lay: &Lay, unit: Unit) -> Table {
    let mut table = Table::new("Cloth", vec![Column::words("", 1.0), Column::words("", 4.0)]);
    let mut row = |name: &'static str, words: String| table.row([name.into(), named(words)]);
    row("buy", to_buy(lay, unit));
    row("needed", unit.length(lay.length));
    if lay.cloth.shrinkage.lengthwise > 0.0 {
        row("once washed", unit.length(lay.washed_length));
    }
    let used = Value::Share(lay.used).in_unit(unit);
    row("used", format!("{used} of the cloth is in the pieces"));
    row("laid", how_laid(lay, unit));
    table
}

/// What is cut, and how much room each takes.
fn cut(pieces: &[Piece]) -> Table {
    let columns = vec![
        Column::words("piece", 2.0),
        Column::numbers("cut", 0.5),
        Column::numbers("width", 1.0),
        Column::numbers("length", 1.0),
    ];
    let mut table = Table::new("Pieces, as they are cut", columns);
    for piece in pieces {
        let bounds = kurbo::Shape::bounding_box(&piece.cut_path());
        let [width, long] = [bounds.width(), bounds.height()].map(length);
        table.row([named(piece_name(piece)), piece.copies.count().into(), width, long]);
    }
    table
}

/// How much to ask for in the shop: metres, or yards and inches rounded up.
pub(crate) fn to_buy(lay: &Lay, unit: Unit) -> String {
    match unit {
        Unit::Cm => format!("{:.2} m", lay.to_buy / 100.0),
        Unit::Inch => {
            // Sold by the eighth of a yard: common practice, no source.
            let eighths = (unit.from_cm(lay.length) / 4.5 - 1e-9).ceil() as i64;
            let eighths = if lay.cloth.repeat.is_some() {
                (unit.from_cm(lay.to_buy) / 4.5 - 1e-9).ceil() as i64
            } else {
                eighths
            };
            match (eighths / 8, eighths % 8) {
                (yards, 0) => format!("{yards} yd"),
                (yards, 2) => format!("{yards} 1/4 yd"),
                (yards, 4) => format!("{yards} 1/2 yd"),
                (yards, 6) => format!("{yards} 3/4 yd"),
                (yards, odd) => format!("{yards} {odd}/8 yd"),
            }
        }
    }
}

/// How the cloth lies and which way the pieces may, in a few words.
pub(crate) fn how_laid(lay: &Lay, unit: Unit) -> String {
    let cloth = &lay.cloth;
    let fold = if cloth.folded { "double" } else { "single" };
    let heads = if cloth.one_way() { "all heads one way" } else { "heads either way" };
    let room = unit.length(cloth.usable_width());
    format!("{fold}; {heads}; {room} to lay on")
}

/// What a piece is called on the cloth.
pub(crate) fn piece_name(piece: &Piece) -> String {
    match piece.side {
        Side::Both => piece.name().to_owned(),
        side => format!("{} {}", side.key(), piece.name()),
    }
}
