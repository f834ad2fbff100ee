//! A table on a page: rows that stay whole, under a head that every page repeats.

use std::rc::Rc;

use kurbo::{Line, Point, Shape as _};

use super::{
    Lettering, Table,
    flow::Piece,
    lettering::{GRID, RULE},
};
use crate::drawing::{Align, Ink, Mark, Text, Weight, Wording, lines_of_text};

/// Left and right of the words of a cell, cm.
const PAD: f64 = 0.15;
/// A row that is written into by hand is at least so high, cm.
const WRITTEN: f64 = 0.72;

/// The pieces of a table, `width` cm wide.
pub(super) fn pieces(table: &Table, lettering: &Lettering, width: f64) -> Vec<Piece> {
    let whole: f64 = table.columns.iter().map(|column| column.share).sum();
    let mut left = 0.0;
    let places: Vec<Place> = table
        .columns
        .iter()
        .map(|column| {
            let from = left;
            left += width * column.share / whole;
            Place { from, to: left, align: column.align }
        })
        .collect();
    let mut pieces = Vec::with_capacity(table.rows.len() + 2);
    if !table.caption.as_str().is_empty() {
        let size = lettering.small;
        let mut caption = Piece::new(0.35 * lettering.text);
        for line in lines_of_text(&table.caption, size, width) {
            caption.height += 1.4 * size;
            caption.words(Text::new(Point::new(0.0, caption.height), size, line).inked(Ink::Dark));
        }
        caption.height += 0.2 * size;
        caption.holds_next = true;
        pieces.push(caption);
    }
    let names: Vec<&Wording> = table.columns.iter().map(|column| &column.name).collect();
    let shape = Row { size: lettering.small, least: 0.0, bold: true, boxed: table.to_fill_in };
    let mut head = row(&names, &places, &shape);
    rule(&mut head, width);
    head.holds_next = true;
    let head = Rc::new(head);
    pieces.push((*head).clone());
    let shape = Row {
        size: lettering.text,
        least: if table.to_fill_in { WRITTEN } else { 0.0 },
        bold: false,
        boxed: table.to_fill_in,
    };
    for (number, cells) in table.rows.iter().enumerate() {
        let cells: Vec<&Wording> = cells.iter().collect();
        let mut piece = row(&cells, &places, &shape);
        // No row alone at the foot of a page.
        piece.holds_next = number == 0 && table.rows.len() > 1;
        if number + 1 == table.rows.len() && !table.to_fill_in {
            rule(&mut piece, width);
        }
        piece.head = Some(Rc::clone(&head));
        pieces.push(piece);
    }
    pieces
}

/// Where a column stands.
struct Place {
    from: f64,
    to: f64,
    align: Align,
}

/// How a row looks.
struct Row {
    size: f64,
    least: f64,
    bold: bool,
    boxed: bool,
}

fn row(cells: &[&Wording], places: &[Place], shape: &Row) -> Piece {
    let size = shape.size;
    let (above, leading) = (0.95 * size, 1.25 * size);
    let mut piece = Piece::new(0.0);
    let mut lines_in_all = 1;
    for (number, (cell, place)) in cells.iter().zip(places).enumerate() {
        // The outer edges of a table stand in line with the text round it.
        let pads = if shape.boxed {
            (PAD, PAD)
        } else {
            (if number == 0 { 0.0 } else { PAD }, if number + 1 == places.len() { 0.0 } else { PAD })
        };
        let (from, to) = (place.from + pads.0, place.to - pads.1);
        let lines = lines_of_text(cell, size, (to - from).max(size));
        lines_in_all = lines_in_all.max(lines.len());
        for (down, line) in lines.into_iter().enumerate() {
            let x = match place.align {
                Align::Start => from,
                Align::Middle => 0.5 * (from + to),
                Align::End => to,
            };
            let at = Point::new(x, above + 0.25 * size + leading * down as f64);
            let text = Text::new(at, size, line).aligned(place.align);
            let weight = if shape.bold { Weight::Bold } else { Weight::Regular };
            piece.words(Text { weight, ..text });
        }
    }
    piece.height = (above + leading * (lines_in_all - 1) as f64 + 0.65 * size).max(shape.least);
    if shape.boxed {
        let height = piece.height;
        let (left, right) = (places.first().map_or(0.0, |p| p.from), places.last().map_or(0.0, |p| p.to));
        let mut line =
            |from, to| piece.marks.push(Mark::Line { path: Line::new(from, to).to_path(0.1), pen: GRID });
        for x in places.iter().map(|place| place.from).chain([right]) {
            line(Point::new(x, 0.0), Point::new(x, height));
        }
        line(Point::new(left, 0.0), Point::new(right, 0.0));
        line(Point::new(left, height), Point::new(right, height));
    }
    piece
}

/// A line under all of it.
fn rule(piece: &mut Piece, width: f64) {
    let y = piece.height;
    let line = Line::new((0.0, y), (width, y));
    piece.marks.push(Mark::Line { path: line.to_path(0.1), pen: RULE });
}
