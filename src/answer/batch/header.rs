//! The first row of a CSV file: what stands in each column.

use std::ops::Range;

use super::rows::Row;
use crate::{
    mistake::{Mistake, Mistakes, Source},
    order::{self, row_key},
};

/// What stands in a column.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Column {
    /// The row's id.
    Id,
    /// A key of the measurement file, with its name as the header has it.
    Key(String, order::Path),
}

/// The columns of a file known by `name`.
///
/// # Errors
/// Every column that is no key or stands there twice, and a missing `id`: the whole file would be drafted wrong.
pub(super) fn columns(name: &str, row: &Row) -> Result<Vec<Column>, Mistakes> {
    let Ok(text) = std::str::from_utf8(&row.text) else {
        return Err(Mistake::new(format!("the header of `{name}` is not UTF-8 text")).into());
    };
    if row.too_long {
        return Err(Mistake::new(format!("the header of `{name}` is too long"))
            .help("expected CSV with a header row, or one JSON object a line")
            .into());
    }
    let mut from = 0;
    let fields: Vec<&str> =
        row.ends.iter().map(|end| &text[std::mem::replace(&mut from, *end)..*end]).collect();
    let source = Source::new(name, "\n".repeat(shown_before(row.line)) + &fields.join(","));
    let mut at = source.text.len() - (text.len() + fields.len().saturating_sub(1));
    let mut columns: Vec<Column> = Vec::with_capacity(fields.len());
    let mut mistakes = Vec::new();
    for field in &fields {
        let span = at..at + field.len();
        at = span.end + 1;
        match column(field.trim(), &columns) {
            Ok(column) => columns.push(column),
            Err(mistake) => mistakes.push(mistake.at(&source, span, "")),
        }
    }
    if let [only] = fields.as_slice()
        && let Some(mistake) = not_commas(only, &source, source.text.len() - text.len()..source.text.len())
    {
        return Err(mistake.into());
    }
    if mistakes.is_empty() && !columns.contains(&Column::Id) {
        mistakes.push(
            Mistake::new("there is no column `id`")
                .help("the `id` of a row is handed back with its draft: text or a number"),
        );
    }
    if mistakes.is_empty() { Ok(columns) } else { Err(mistakes.into()) }
}

/// Empty lines before the header, as far as they are worth showing its line number right.
fn shown_before(line: u64) -> usize {
    usize::try_from(line.saturating_sub(1)).unwrap_or(0).min(1000)
}

fn column(name: &str, before: &[Column]) -> Result<Column, Mistake> {
    if name.is_empty() {
        return Err(Mistake::new("this column has no name"));
    }
    let column = match name {
        "id" => Column::Id,
        _ => Column::Key(
            name.to_owned(),
            row_key(name).map_err(|mistake| {
                mistake.help("a column is `id` or a key of the measurement file; take others out")
            })?,
        ),
    };
    let is_same = |other: &Column| match (other, &column) {
        (Column::Key(_, a), Column::Key(_, b)) => a == b,
        (a, b) => a == b,
    };
    if before.iter().any(is_same) {
        return Err(Mistake::new(format!("column `{name}` stands there twice")));
    }
    Ok(column)
}

/// A header of one column that looks like something else than CSV.
fn not_commas(header: &str, source: &Source, span: Range<usize>) -> Option<Mistake> {
    let (what, help) = if header.contains(';') || header.contains('\t') {
        ("semicolons or tabs", "save the table as CSV with commas and a point in numbers")
    } else if header.starts_with('[') {
        ("a JSON list", "write one JSON object a line, without a list round them")
    } else {
        return None;
    };
    Some(
        Mistake::new(format!("expected columns parted by commas, found {what}"))
            .at(source, span, "")
            .help(help),
    )
}
