//! How much cloth to buy, for a terminal.

use std::fmt::Write;

use super::terminal::note;
use crate::{
    draft::Draft,
    mistake::Notice,
    pattern::{Lay, Piece},
    terms::{Side, Word},
    unit::Unit,
};

/// What to buy, what is cut from it and what to know, within 80 columns, lengths in `unit`.
pub fn cloth_table(draft: &Draft, pieces: &[Piece], lay: &Lay, notices: &[Notice], unit: Unit) -> String {
    let mut out = String::new();
    // Cannot fail: writing to a string.
    let _ = write_table(&mut out, draft, pieces, lay, unit);
    if !notices.is_empty() {
        out.push('\n');
    }
    for notice in notices {
        out.push_str(&note(&notice.text(unit)));
    }
    out.push('\n');
    out
}

fn write_table(out: &mut String, draft: &Draft, pieces: &[Piece], lay: &Lay, unit: Unit) -> std::fmt::Result {
    let cm = |value: f64| unit.length(value);
    writeln!(out, "{}: block {}, laid on cloth {} wide", draft.name, draft.recipe.name, cm(lay.cloth.width))?;
    writeln!(out, "\n  {:<16} {}", "buy", to_buy(lay, unit))?;
    writeln!(out, "  {:<16} {}", "needed", cm(lay.length))?;
    if lay.cloth.shrinkage.lengthwise > 0.0 {
        writeln!(out, "  {:<16} {}", "once washed", cm(lay.washed_length))?;
    }
    writeln!(out, "  {:<16} {:.0} per cent of the cloth is in the pieces", "used", 100.0 * lay.used)?;
    writeln!(out, "  {:<16} {}", "laid", how_laid(lay, unit))?;
    writeln!(out, "\n  {:<22} {:>4} {:>8} {:>8}", "piece, as it is cut", "cut", "width", "length")?;
    for piece in pieces {
        let bounds = kurbo::Shape::bounding_box(&piece.cut_path());
        writeln!(
            out,
            "  {:<22} {:>4} {:>8} {:>8}",
            piece_name(piece),
            piece.copies.count(),
            unit.figure(bounds.width()),
            unit.figure(bounds.height())
        )?;
    }
    Ok(())
}

/// How much to ask for in the shop: metres, or yards and inches rounded up.
pub(super) fn to_buy(lay: &Lay, unit: Unit) -> String {
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
pub(super) fn how_laid(lay: &Lay, unit: Unit) -> String {
    let cloth = &lay.cloth;
    let fold = if cloth.folded { "double" } else { "single" };
    let heads = if cloth.one_way() { "all heads one way" } else { "heads either way" };
    let room = unit.length(cloth.usable_width());
    format!("{fold}; {heads}; {room} to lay on")
}

/// What a piece is called on the cloth.
pub(super) fn piece_name(piece: &Piece) -> String {
    match piece.side {
        Side::Both => piece.name().to_owned(),
        side => format!("{} {}", side.key(), piece.name()),
    }
}
