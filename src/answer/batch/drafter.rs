//! One row in, one line out.

use std::{
    borrow::Cow,
    collections::BTreeMap,
    panic::{AssertUnwindSafe, catch_unwind},
    sync::Arc,
};

use serde_json::error::Category;

use super::{
    failure::{Code, Failure},
    header::Column,
    json_row::JsonRow,
    rows::{LONGEST_ROW, Row},
};
use crate::{
    answer::{Answer, Extent},
    body::Fault,
    fit::Verdict,
    making::make_by,
    mistake::{Mistake, Mistakes, harmless_json},
    order::{Path, Raw, RowReader, row_key},
    pattern::Wanted,
    recipe::{self, Recipe},
    voice::Sentence,
};

/// Drafts rows; every worker reads the same one.
#[derive(Clone, Debug)]
pub(super) struct Drafter {
    reader: RowReader,
    recipes: BTreeMap<String, Arc<Recipe>>,
    /// The columns of CSV; `None` for NDJSON.
    columns: Option<Vec<Column>>,
}

/// What a row says, as far as it could be read.
#[derive(Default)]
struct Read {
    /// As JSON.
    id: Option<String>,
    cells: Vec<(String, Path, Raw)>,
}

impl Drafter {
    /// A drafter for rows under the `KEY=VALUE` of `--set`.
    ///
    /// # Errors
    /// When an option is wrong, or a recipe is not sound.
    pub(super) fn new(set: &[String]) -> Result<Self, Mistakes> {
        let reader = RowReader::new(set)?;
        let mut recipes = BTreeMap::new();
        for name in recipe::shipped_names() {
            recipes.insert(name.to_owned(), recipe::load(name)?);
        }
        let own = &reader.trousers().block;
        if !recipes.contains_key(own) {
            recipes.insert(own.clone(), recipe::load(own)?);
        }
        Ok(Self { reader, recipes, columns: None })
    }

    /// The same for rows with these columns.
    #[must_use]
    pub(super) fn with_columns(mut self, columns: Vec<Column>) -> Self {
        self.columns = Some(columns);
        self
    }

    /// Puts the line of a row at the end of `out`: the verdict on its draft, or `None` when it is an error.
    pub(super) fn put_line(&self, row: &Row, out: &mut Vec<u8>) -> Option<Verdict> {
        let start = out.len();
        let mut read = Read::default();
        let drafted = whatever_happens(|| self.put_draft(row, &mut read, out));
        if let Err(failure) = &drafted {
            out.truncate(start);
            put_failure(failure, read.id.as_deref(), row.line, out);
        }
        if out[start..].iter().any(|byte| !matches!(byte, b' '..=b'~')) {
            // Cannot lose anything: the line was written from text.
            let line = String::from_utf8_lossy(&out.split_off(start)).into_owned();
            out.extend_from_slice(harmless_json(line).as_bytes());
        }
        out.push(b'\n');
        drafted.ok()
    }

    fn put_draft(&self, row: &Row, read: &mut Read, out: &mut Vec<u8>) -> Result<Verdict, Failure> {
        self.read(row, read)?;
        let id = read.id.as_deref().unwrap_or("null");
        let (order, notices) = self
            .reader
            .read(std::mem::take(&mut read.cells))
            .map_err(|mistakes| Failure::of(Code::BadValue, &mistakes))?;
        let faults = order.faults();
        if !faults.is_empty() {
            let missing = faults.iter().all(|(_, fault)| fault.at.is_none());
            let code = if missing { Code::MissingMeasurement } else { Code::NotABody };
            let mistakes: Vec<_> = faults.into_iter().map(|(_, fault)| brief(fault)).collect();
            return Err(Failure::of(code, &mistakes.into()));
        }
        let block = &order.trousers.block;
        let recipe = self.recipes.get(block).ok_or_else(|| {
            let known: Vec<String> = recipe::shipped_names().map(|name| format!("`{name}`")).collect();
            Failure::new(Code::UnknownBlock, format!("expected `block` one of {}", known.join(", ")))
        })?;
        let made = make_by(recipe, order, notices, &Wanted::default())
            .map_err(|mistakes| Failure::of(Code::NotDrafted, &mistakes))?;
        let answer = Answer::new(&made, Extent::Summary);
        out.extend_from_slice(b"{\"id\":");
        out.extend_from_slice(id.as_bytes());
        // the answer is an object and never empty: its bracket becomes the comma after the id
        let bracket = out.len();
        serde_json::to_writer(&mut *out, &answer)
            .map_err(|error| Failure::new(Code::Defect, error.to_string()))?;
        out[bracket] = b',';
        Ok(answer.verdict())
    }

    /// Reads the fields of a row, the id before anything can be wrong with the others.
    fn read(&self, row: &Row, read: &mut Read) -> Result<(), Failure> {
        if row.too_long {
            return Err(Failure::new(Code::TooLong, format!("longer than {LONGEST_ROW} bytes")));
        }
        let text =
            std::str::from_utf8(&row.text).map_err(|_| Failure::new(Code::NotText, "expected UTF-8 text"))?;
        match &self.columns {
            Some(columns) => read_record(columns, row, text, read),
            None => read_object(text, read),
        }
    }
}

/// What drafting a row gave; a defect of this program costs that row and none after it, since nothing that outlives the
/// row is changed while it is drafted.
fn whatever_happens<T>(draft: impl FnOnce() -> Result<T, Failure>) -> Result<T, Failure> {
    catch_unwind(AssertUnwindSafe(draft)).unwrap_or_else(|_| {
        Err(Failure::new(Code::Defect, "a defect of this program: please report it with this row"))
    })
}

fn read_record(columns: &[Column], row: &Row, text: &str, read: &mut Read) -> Result<(), Failure> {
    let mut from = 0;
    let fields = row.ends.iter().map(|end| text.get(std::mem::replace(&mut from, *end)..*end));
    for (column, field) in columns.iter().zip(fields) {
        let field = field.ok_or_else(|| Failure::new(Code::NotText, "expected UTF-8 text"))?;
        if field.trim().is_empty() {
            continue;
        }
        match column {
            Column::Id => {
                // cannot fail: any text is JSON between quotation marks
                read.id = serde_json::to_string(field).ok();
            }
            Column::Key(name, key) => {
                read.cells.push((name.clone(), key.clone(), Raw::Bare(field.trim().to_owned())));
            }
        }
    }
    if row.ends.len() != columns.len() {
        return Err(Failure::new(
            Code::WrongColumns,
            format!("expected {} fields as in the header, found {}", columns.len(), row.ends.len()),
        ));
    }
    match read.id {
        Some(_) => Ok(()),
        None => Err(Failure::new(Code::NoId, "`id` is empty")),
    }
}

fn read_object(text: &str, read: &mut Read) -> Result<(), Failure> {
    let mut object = JsonRow::default();
    let parsed = object.read(text);
    let id = object.ids.first().copied().filter(|json| is_id(json));
    read.id = id.map(str::to_owned);
    if let Err(error) = parsed {
        let text = match error.classify() {
            Category::Data => "expected a JSON object".to_owned(),
            Category::Syntax | Category::Eof | Category::Io => {
                let words = error.to_string();
                let words = words.split(" at line ").next().unwrap_or_default();
                format!("not a JSON object: {words} at column {}", error.column())
            }
        };
        return Err(Failure::new(Code::NotJson, text));
    }
    match object.ids.len() {
        0 => return Err(Failure::new(Code::NoId, "`id` is missing")),
        1 if id.is_none() => return Err(Failure::new(Code::NoId, "expected text or a number for `id`")),
        1 => {}
        _ => return Err(Failure::new(Code::BadValue, "`id` stands there twice")),
    }
    for (name, raw) in object.cells {
        let key =
            row_key(&name).map_err(|mistake| Failure::of(Code::UnknownKey, &Mistakes::from(mistake)))?;
        read.cells.push((name.into_owned(), key, raw));
    }
    Ok(())
}

/// Whether this JSON is text or a number that a reader of the lines can read in its turn: JSON can spell numbers beyond
/// all bounds, and halves of letters.
fn is_id(json: &str) -> bool {
    match json.as_bytes().first() {
        Some(b'"') => serde_json::from_str::<Cow<'_, str>>(json).is_ok_and(|text| !text.trim().is_empty()),
        Some(b'-' | b'0'..=b'9') => serde_json::from_str::<f64>(json).is_ok(),
        _ => false,
    }
}

/// What is wrong with a body, without how to measure: nobody holds a tape beside a row.
fn brief(fault: Fault) -> Mistake {
    let mistake = Mistake::new(fault.title);
    match fault.at {
        Some(measurement) if fault.help != Sentence::from(measurement.about().how) => {
            mistake.help(fault.help)
        }
        Some(_) | None => mistake,
    }
}

/// A row without an id is named by its line, in words: where several filters share the rows, each counts its own.
fn put_failure(failure: &Failure, id: Option<&str>, line: u64, out: &mut Vec<u8>) {
    let nameless = Failure::new(failure.code, format!("line {line}: {}", failure.text));
    let (id, failure) = match id {
        Some(id) => (id, failure),
        None => ("null", &nameless),
    };
    out.extend_from_slice(b"{\"id\":");
    out.extend_from_slice(id.as_bytes());
    out.extend_from_slice(b",\"error\":");
    // cannot fail: two texts under two names
    let _ = serde_json::to_writer(&mut *out, failure);
    out.push(b'}');
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn defect_of_one_row_costs_that_row() {
        let lost: Result<(), Failure> = whatever_happens(|| panic!("a defect that a test has put here"));
        let mut line = Vec::new();
        put_failure(&lost.unwrap_err(), Some("7"), 3, &mut line);
        let line = String::from_utf8(line).unwrap();
        assert!(line.starts_with(r#"{"id":7,"error":{"code":"defect","#), "{line}");
    }
}
