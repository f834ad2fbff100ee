//! A table on a page: rows that stay whole, under a head that every page repeats.

use std::rc::Rc;

use kurbo::{Line, Point, Shape as _};

use super::{
    Lettering, Paragraph, Table,
    flow::{Portion, Setting, lines},
    lettering::{GRID, RULE},
};
use crate::drawing::{Align, Ink, Mark, Text, Weight, Wording, lines_of_text, text_width};

/// Left and right of the words of a cell, in sizes of the text.
const PAD: f64 = 0.4;
/// A row that is written into by hand is at least so high, cm.
const WRITTEN: f64 = 0.72;

/// The portions of a table, `width` cm wide.
pub(super) fn portions(table: &Table, setting: Setting<'_>, width: f64) -> Vec<Portion> {
    let Setting { lettering: outer, unit, .. } = setting;
    let rows = table.cells_in(unit);
    let lettering = &narrowed(table, &rows, outer, width);
    let places = places(table, &rows, lettering, width);
    let mut portions = Vec::with_capacity(table.rows.len() + 2);
    let caption_words = table.caption_in(unit);
    if !caption_words.as_str().is_empty() {
        let size = outer.small;
        let mut caption = Portion::new(0.35 * outer.text);
        for line in lines_of_text(&caption_words, size, width) {
            caption.height += 1.4 * size;
            caption.words(Text::new(Point::new(0.0, caption.height), size, line).inked(Ink::Dark));
        }
        caption.height += 0.2 * size;
        caption.holds_next = true;
        portions.push(caption);
    }
    let names: Vec<&Wording> = table.columns.iter().map(|column| &column.name).collect();
    let shape =
        Row { size: lettering.small, text: lettering.text, least: 0.0, bold: true, boxed: table.to_fill_in };
    let mut head = row(&names, &places, &shape);
    rule(&mut head, width);
    head.holds_next = true;
    let head = Rc::new(head);
    portions.push((*head).clone());
    let shape = Row {
        size: lettering.text,
        text: lettering.text,
        least: if table.to_fill_in { WRITTEN } else { 0.0 },
        bold: false,
        boxed: table.to_fill_in,
    };
    let count = rows.len();
    for (number, cells) in rows.iter().enumerate() {
        let cells: Vec<&Wording> = cells.iter().collect();
        let mut portion = row(&cells, &places, &shape);
        // No row alone at the foot or at the top of a page.
        portion.holds_next = count > 1 && (number == 0 || number + 2 == count);
        if number + 1 == count && !table.to_fill_in {
            rule(&mut portion, width);
        }
        portion.head = Some(Rc::clone(&head));
        portions.push(portion);
    }
    if !table.remark.as_str().is_empty() {
        if let Some(last) = portions.last_mut() {
            last.holds_next = true;
        }
        let remark = Paragraph { small: true, lead: Wording::default(), words: table.remark.clone() };
        portions.extend(lines(&remark, outer, width));
    }
    portions
}

/// Where a column stands.
struct Place {
    from: f64,
    to: f64,
    align: Align,
}

/// The lettering in which no word and no number has to be broken, as far as it can still be read.
fn narrowed(table: &Table, rows: &[Vec<Wording>], lettering: &Lettering, width: f64) -> Lettering {
    /// Smaller is not read at arm's length, part of the size.
    const LEAST: f64 = 0.75;
    let needed: f64 = least_widths(table, rows, lettering).iter().sum();
    let part = (width / needed).clamp(LEAST, 1.0);
    Lettering { text: part * lettering.text, small: part * lettering.small, ..*lettering }
}

/// What each column needs for its longest word or number, cm.
fn least_widths(table: &Table, rows: &[Vec<Wording>], lettering: &Lettering) -> Vec<f64> {
    table
        .columns
        .iter()
        .enumerate()
        .map(|(number, column)| {
            let cells = rows.iter().filter_map(|row| row.get(number));
            let widest = cells.map(|cell| longest_part(cell, column.align, lettering.text));
            // Bold letters are as wide as others, and a little strong at both ends.
            let name = longest_part(&column.name, Align::Start, 1.1 * lettering.small);
            let outer = number == 0 || number + 1 == table.columns.len();
            let pads = if outer && !table.to_fill_in { 1.0 } else { 2.0 };
            widest.fold(name, f64::max) + pads * PAD * lettering.text + 0.02
        })
        .collect()
}

/// Columns as wide as their share, but none narrower than its longest word, nor than a number.
fn places(table: &Table, rows: &[Vec<Wording>], lettering: &Lettering, width: f64) -> Vec<Place> {
    let least = least_widths(table, rows, lettering);
    let needed: f64 = least.iter().sum();
    // What does not fit is broken between letters, in every column alike.
    let squeeze = (width / needed).min(1.0);
    let mut taken: Vec<f64> = least.iter().map(|least| least * squeeze).collect();
    let mut open: Vec<usize> = (0..table.columns.len()).collect();
    let mut left = width;
    // Columns that need more than their share get what they need; the others share what is left.
    loop {
        let shares: f64 = open.iter().map(|number| table.columns[*number].share).sum();
        let share = |number: usize| left * table.columns[number].share / shares;
        let (greedy, content): (Vec<usize>, Vec<usize>) =
            open.iter().partition(|number| taken[**number] > share(**number));
        if greedy.is_empty() {
            for number in content {
                taken[number] = share(number);
            }
            break;
        }
        left -= greedy.iter().map(|number| taken[*number]).sum::<f64>();
        open = content;
        if open.is_empty() {
            break;
        }
    }
    let mut from = 0.0;
    let place = |(column, width): (&super::Column, f64)| {
        let place = Place { from, to: from + width, align: column.align };
        from = place.to;
        place
    };
    table.columns.iter().zip(taken).map(place).collect()
}

/// The width of what is not broken: a word, or a whole cell of numbers, cm.
fn longest_part(words: &Wording, align: Align, size: f64) -> f64 {
    /// A longer text is no number.
    const LONGEST: usize = 20;
    let words = words.as_str();
    if align == Align::End && words.chars().count() <= LONGEST {
        return text_width(words, size);
    }
    words.split(' ').map(|word| text_width(word, size)).fold(0.0, f64::max)
}

/// How a row looks.
struct Row {
    size: f64,
    /// Size of the table's text, whatever this row's.
    text: f64,
    least: f64,
    bold: bool,
    boxed: bool,
}

fn row(cells: &[&Wording], places: &[Place], shape: &Row) -> Portion {
    let size = shape.size;
    let (above, leading) = (0.95 * size, 1.25 * size);
    let mut portion = Portion::new(0.0);
    let mut lines_in_all = 1;
    for (number, (cell, place)) in cells.iter().zip(places).enumerate() {
        // The outer edges of a table stand in line with the text round it.
        let pad = PAD * shape.text;
        let pads = if shape.boxed {
            (pad, pad)
        } else {
            (if number == 0 { 0.0 } else { pad }, if number + 1 == places.len() { 0.0 } else { pad })
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
            portion.words(Text { weight, ..text });
        }
    }
    portion.height = (above + leading * (lines_in_all - 1) as f64 + 0.65 * size).max(shape.least);
    if shape.boxed {
        let height = portion.height;
        let (left, right) = (places.first().map_or(0.0, |p| p.from), places.last().map_or(0.0, |p| p.to));
        let mut line =
            |from, to| portion.marks.push(Mark::Line { path: Line::new(from, to).to_path(0.1), pen: GRID });
        for x in places.iter().map(|place| place.from).chain([right]) {
            line(Point::new(x, 0.0), Point::new(x, height));
        }
        line(Point::new(left, 0.0), Point::new(right, 0.0));
        line(Point::new(left, height), Point::new(right, height));
    }
    portion
}

/// A line under all of it.
fn rule(portion: &mut Portion, width: f64) {
    let y = portion.height;
    let line = Line::new((0.0, y), (width, y));
    portion.marks.push(Mark::Line { path: line.to_path(0.1), pen: RULE });
}
