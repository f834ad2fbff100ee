//! Plain text for a terminal: sentences broken between words, tables in columns as wide as they need.

use super::{Block, Paragraph, Table};
use crate::{drawing::Align, mistake::columns, unit::Unit};

/// Between two columns of a table, and before its first.
const GUTTER: &str = "  ";

/// The blocks as a terminal shows them, lengths in `unit`. Pictures are left out; what stands side by side comes in turn.
pub fn plain(blocks: &[Block], unit: Unit) -> String {
    let mut out = String::new();
    write(&mut out, blocks, unit);
    out
}

fn write(out: &mut String, blocks: &[Block], unit: Unit) {
    let mut after_table = false;
    for block in blocks {
        let is_table = matches!(block, Block::Table(_));
        let is_heading = matches!(block, Block::Chapter(_) | Block::Section(_));
        if (after_table || is_table || is_heading) && !out.is_empty() && !out.ends_with("\n\n") {
            out.push('\n');
        }
        after_table = is_table;
        match block {
            Block::Chapter(words) | Block::Section(words) => out.push_str(&headed("", words.as_str())),
            Block::Paragraph(Paragraph { lead, words, .. }) => {
                let lead = if lead.as_str().is_empty() { String::new() } else { format!("{lead} ") };
                out.push_str(&headed(&lead, words.as_str()));
            }
            Block::Sum(words) => out.push_str(&headed(GUTTER, words.as_str())),
            Block::List(rows) => rows.iter().for_each(|words| out.push_str(&headed("– ", words.as_str()))),
            Block::Table(table) => write_table(out, table, unit),
            Block::Picture(_) => {}
            Block::Columns(strips) => strips.iter().for_each(|strip| write(out, &strip.blocks, unit)),
        }
    }
}

/// The text in lines of at most `width` letters, broken between words; a longer word has a line of its own.
pub fn wrapped(text: &str, width: usize) -> Vec<String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    crate::mistake::wrapped(&words.join(" "), width).lines().map(str::to_owned).collect()
}

/// A sentence behind a heading within the width of a terminal; later lines stand under its first word.
pub fn headed(heading: &str, sentence: &str) -> String {
    let indent = heading.chars().count();
    let lines = wrapped(sentence, columns().saturating_sub(indent).max(LEAST));
    format!("{heading}{}\n", lines.join(&format!("\n{}", " ".repeat(indent))))
}

/// A column of sentences is not narrower, characters.
const LEAST: usize = 10;

/// A notice as a terminal shows it.
pub fn note(text: &str) -> String {
    headed("note: ", text)
}

fn write_table(out: &mut String, table: &Table, unit: Unit) {
    out.push_str(&headed("", table.caption_in(unit).as_str()));
    let names = table.columns.iter().map(|column| column.name.as_str().to_owned()).collect();
    let cells = table.cells_in(unit);
    let cells = cells.iter().map(|row| row.iter().map(|cell| cell.as_str().to_owned()).collect());
    let rows: Vec<Vec<String>> = std::iter::once(names).chain(cells).collect();
    let aligns: Vec<Align> = table.columns.iter().map(|column| column.align).collect();
    let widths = widths(&rows, &aligns);
    for row in rows.iter().filter(|row| row.iter().any(|cell| !cell.is_empty())) {
        write_row(out, row, &aligns, &widths);
    }
    if !table.remark.as_str().is_empty() {
        out.push_str(&headed(GUTTER, table.remark.as_str()));
    }
}

/// Every column as wide as its widest cell; where that is more than a terminal has, the widest of words give way.
fn widths(rows: &[Vec<String>], aligns: &[Align]) -> Vec<usize> {
    let widest = |number: usize| {
        rows.iter().filter_map(|row| row.get(number)).map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let mut widths: Vec<usize> = (0..aligns.len()).map(widest).collect();
    let of_words = |number: &usize| aligns[*number] == Align::Start;
    loop {
        let needed: usize = widths.iter().filter(|width| **width > 0).map(|width| width + GUTTER.len()).sum();
        let widest = (0..aligns.len()).filter(of_words).max_by_key(|number| widths[*number]);
        match widest {
            Some(widest) if needed > columns() && widths[widest] > LEAST => widths[widest] -= 1,
            Some(_) | None => return widths,
        }
    }
}

/// Cells side by side, each wrapped into its width; no line ends in blanks.
fn write_row(out: &mut String, cells: &[String], aligns: &[Align], widths: &[usize]) {
    let cells: Vec<Vec<String>> =
        cells.iter().zip(widths).map(|(cell, width)| wrapped(cell, (*width).max(1))).collect();
    for line in 0..cells.iter().map(Vec::len).max().unwrap_or_default() {
        let mut text = String::new();
        for ((cell, align), width) in cells.iter().zip(aligns).zip(widths).filter(|(_, width)| **width > 0) {
            let words = cell.get(line).map_or("", String::as_str);
            text.push_str(GUTTER);
            text.push_str(&match align {
                Align::Start => format!("{words:<width$}"),
                Align::Middle => format!("{words:^width$}"),
                Align::End => format!("{words:>width$}"),
            });
        }
        out.push_str(text.trim_end());
        out.push('\n');
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        booklet::Column,
        voice::{Value, length, named},
    };

    #[test]
    fn words_kept_whole() {
        assert_eq!(wrapped("mark the front crotch point", 9), ["mark the", "front", "crotch", "point"]);
        assert_eq!(wrapped("centre_back_waist out", 5), ["centre_back_waist", "out"]);
    }

    #[test]
    fn later_lines_under_the_first_word() {
        let text = note(&"seam ".repeat(40));
        assert!(text.lines().all(|line| line.chars().count() <= columns() && !line.ends_with(' ')), "{text}");
        assert!(text.lines().skip(1).all(|line| line.starts_with("      seam")), "{text}");
    }

    #[test]
    fn a_table_in_both_units() {
        let columns = vec![Column::words("", 1.0), Column::numbers("front", 1.0), Column::words("", 1.0)];
        let mut table = Table::new("Seams", columns).with_remark("Walked.");
        table.row(["inseam".into(), length(76.2), Value::NOTHING]);
        table.row(["side seam".into(), length(-5.08), Value::NOTHING]);
        let blocks = [Block::plain("Before."), Block::Table(table), Block::plain("After.")];
        let said = "Before.\n\nSeams, cm\n             front\n  inseam      76.2\n  side seam   −5.1\n  Walked.\n\nAfter.\n";
        assert_eq!(plain(&blocks, Unit::Cm), said);
        assert!(plain(&blocks, Unit::Inch).contains("Seams, in\n             front\n  inseam        30\n"));
    }

    #[test]
    fn a_column_of_words_gives_way() {
        let mut table = Table::new("", vec![Column::words("a", 1.0), Column::words("b", 1.0)]);
        table.row([named("short"), named("word ".repeat(30))]);
        let text = plain(&[Block::Table(table)], Unit::Cm);
        assert!(text.lines().all(|line| line.chars().count() <= columns()), "{text}");
    }
}
