//! Changes single keys of a measurement file and leaves everything else in it alone: comments, order, blanks, ends of
//! lines. Every `--write` goes through here.

use toml_edit::{ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value};

use super::key::{Kind, Path};
use super::value::{Raw, Read, Written};
use super::{Fitting, Giver, Order};
use crate::mistake::{Mistake, Mistakes, Source};
use crate::unit::Unit;

/// A change of one key, by its dotted path.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// A length in cm, or a number of degrees or per cent, as the key has it.
    Number(String, f64),
    /// A word or a text.
    Text(String, String),
    /// The key goes, and its table where that becomes empty.
    Remove(String),
}

impl Change {
    /// What a person typed for a key, as `--set` would read it; a plain number is in `unit`.
    ///
    /// # Errors
    /// When there is no such key, or the text is not what the key takes.
    pub fn typed(path: &str, text: &str, unit: Unit) -> Result<Self, Mistake> {
        let key = known(path)?;
        let source = Source::new(path, text);
        let raw = Raw::Bare(text.to_owned());
        let written = Written { raw, source: &source, span: 0..text.len(), from: Giver::File };
        Ok(match written.read(path, key.kind(), unit)? {
            Read::Number(number) => Self::Number(path.to_owned(), number),
            Read::Text(text) => Self::Text(path.to_owned(), text),
        })
    }

    fn path(&self) -> &str {
        match self {
            Self::Number(path, _) | Self::Text(path, _) | Self::Remove(path) => path,
        }
    }
}

/// The text of a measurement file with some keys changed. Lengths are written in the unit of the file: in inches as a
/// fraction where they are sixty-fourths.
///
/// # Errors
/// When the file cannot be read, before or after; when a path is no key of it.
pub fn edit(source: &Source, changes: &[Change]) -> Result<String, Mistakes> {
    let (order, _) = Order::read(source)?;
    let mut document = parsed(source)?;
    for change in changes {
        apply(&mut document, change, order.units)?;
    }
    finished(source, &document)
}

/// A value of a key that the program has found, as it goes into a file of `unit`: a length as a tape shows it, all else to
/// a hundredth.
pub fn found_value(path: &str, value: f64, unit: Unit) -> f64 {
    match Path::find(path).map(|path| path.kind()) {
        Some(Kind::Length(..)) => unit.on_the_tape(value),
        _ => (value * 100.0).round() / 100.0 + 0.0,
    }
}

/// What the text of a measurement file says for a key, as it stands there; `None` where it says nothing or cannot be
/// read.
pub fn stands(source: &Source, path: &str) -> Option<String> {
    let document = parsed(source).ok()?;
    let mut item = document.as_item();
    for name in path.split('.') {
        item = item.get(name)?;
    }
    match item.as_value()? {
        Value::String(text) => Some(text.value().clone()),
        value => {
            let mut bare = value.clone();
            bare.decor_mut().clear();
            Some(bare.to_string())
        }
    }
}

fn parsed(source: &Source) -> Result<DocumentMut, Mistake> {
    source.text.parse().map_err(|error: toml_edit::TomlError| {
        let mistake = Mistake::new(error.message().replace('\n', ", "));
        match error.span() {
            Some(span) => mistake.at(source, span, ""),
            None => mistake,
        }
    })
}

/// The changed text; what is written must be readable, or nothing is written.
fn finished(source: &Source, document: &DocumentMut) -> Result<String, Mistakes> {
    let text = with_line_ends_of(&source.text, document.to_string());
    Order::read(&Source::new(source.name.clone(), text.as_str()))?;
    Ok(text)
}

/// The text of a measurement file with one toile more in its record, newest last.
///
/// # Errors
/// When the file cannot be read, before or after.
pub fn record(source: &Source, fitting: &Fitting) -> Result<String, Mistakes> {
    let (order, _) = Order::read(source)?;
    let mut document = parsed(source)?;
    let mut row = Table::new();
    for (key, text) in [("date", &fitting.date), ("block", &fitting.block)] {
        if let Some(text) = text {
            row.insert(key, Item::Value(Value::from(text.as_str())));
        }
    }
    for (key, texts) in [("seen", &fitting.seen), ("tested", &fitting.tested)] {
        if !texts.is_empty() {
            row.insert(key, Item::Value(texts.iter().map(String::as_str).collect()));
        }
    }
    if !fitting.changed.is_empty() {
        let mut changed = InlineTable::new();
        for (path, number) in &fitting.changed {
            changed.insert(path, as_the_key_has_it(path, *number, order.units)?);
        }
        row.insert("changed", Item::Value(Value::InlineTable(changed)));
    }
    if let Some(note) = &fitting.note {
        row.insert("note", Item::Value(Value::from(note.as_str())));
    }
    let rows = document.entry("fitting").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    match rows {
        Item::ArrayOfTables(rows) => rows.push(row),
        // `fitting = [{ ... }]`, which reads the same
        Item::Value(Value::Array(rows)) => rows.push(row.into_inline_table()),
        Item::None | Item::Value(_) | Item::Table(_) => {
            return Err(Mistake::new("expected `[[fitting]]` for the record of toiles").into());
        }
    }
    finished(source, &document)
}

fn apply(document: &mut DocumentMut, change: &Change, unit: Unit) -> Result<(), Mistake> {
    let path = change.path();
    let value = match change {
        Change::Number(_, number) => as_the_key_has_it(path, *number, unit)?,
        Change::Text(_, text) => {
            known(path)?;
            Value::from(text.as_str())
        }
        Change::Remove(_) => {
            known(path)?;
            remove(document.as_table_mut(), &path.split('.').collect::<Vec<_>>());
            return Ok(());
        }
    };
    // a new table stands before the record of toiles, which grows at the end
    let place = document
        .get("fitting")
        .and_then(Item::as_array_of_tables)
        .and_then(|fittings| fittings.get(0)?.position())
        .map(|first| first - 1);
    let mut table: &mut dyn TableLike = document.as_table_mut();
    let (tables, name) = path.rsplit_once('.').map_or(("", path), |(tables, name)| (tables, name));
    for name in tables.split('.').filter(|name| !name.is_empty()) {
        let next = table.entry(name).or_insert_with(|| {
            let mut table = Table::new();
            // printed only once it holds a value of its own
            table.set_implicit(true);
            table.set_position(place);
            Item::Table(table)
        });
        table = next
            .as_table_like_mut()
            .ok_or_else(|| Mistake::new(format!("expected a table `{name}` on the way to `{path}`")))?;
    }
    put(table, name, value);
    Ok(())
}

fn known(path: &str) -> Result<Path, Mistake> {
    Path::find(path).ok_or_else(|| {
        let all: Vec<String> = Path::all().collect();
        Mistake::new(format!("unknown key `{path}`")).nearest(path, all.iter().map(String::as_str))
    })
}

/// A number as it stands in the file: a length in the file's unit, degrees and per cent plain.
fn as_the_key_has_it(path: &str, number: f64, unit: Unit) -> Result<Value, Mistake> {
    match known(path)?.kind() {
        Kind::Length(..) => Ok(as_toml(number, unit)),
        Kind::Degrees(..) | Kind::PerCent(..) | Kind::Count(_) => Ok(decimal(number)),
        Kind::Text | Kind::OneOf(_) => Err(Mistake::new(format!("expected text for `{path}`"))),
    }
}

/// Sets a value and keeps what stands around it: the blanks, and the comment at the end of its line.
fn put(table: &mut dyn TableLike, name: &str, mut value: Value) {
    match table.get_mut(name).and_then(Item::as_value_mut) {
        Some(old) => {
            *value.decor_mut() = old.decor().clone();
            *old = value;
        }
        None => {
            table.insert(name, Item::Value(value));
        }
    }
}

fn remove(table: &mut dyn TableLike, path: &[&str]) {
    match path {
        [] => {}
        [name] => {
            table.remove(name);
        }
        [name, rest @ ..] => {
            if let Some(inner) = table.get_mut(name).and_then(Item::as_table_like_mut) {
                remove(inner, rest);
                if inner.is_empty() {
                    table.remove(name);
                }
            }
        }
    }
}

/// A length as the file has it; a fraction is text.
fn as_toml(cm: f64, unit: Unit) -> Value {
    let text = unit.write(cm);
    if text.contains('/') { Value::from(text) } else { decimal_text(&text, unit.from_cm(cm)) }
}

/// A number of degrees or per cent to a hundredth.
fn decimal(number: f64) -> Value {
    decimal_text(&Unit::Cm.write(number), number)
}

/// A number as it was printed, and as a number of the file format also where it is whole.
fn decimal_text(text: &str, number: f64) -> Value {
    let text = if text.contains('.') { text.to_owned() } else { format!("{text}.0") };
    text.parse().unwrap_or_else(|_| Value::from(number))
}

/// New lines end as the old ones did.
fn with_line_ends_of(old: &str, new: String) -> String {
    let all = old.matches('\n').count();
    if all > 0 && old.matches("\r\n").count() == all {
        new.replace("\r\n", "\n").replace('\n', "\r\n")
    } else {
        new
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edited(text: &str, changes: &[Change]) -> String {
        edit(&Source::new("body.toml", text), changes).map_err(|mistakes| println!("{mistakes}")).unwrap()
    }

    fn number(path: &str, number: f64) -> Change {
        Change::Number(path.to_owned(), number)
    }

    const FILE: &str = "\
# the stroke
sex = \"female\"   # from the form

[measurements]
waist_girth = 74.0
hip_girth   = 101.5 # taken twice
inside_leg  = 79

# after the first toile
[thigh]
front = 1.9 # cm

[[fitting]]
note = \"good\"
";

    #[test]
    fn comments_and_order_kept() {
        let text = edited(FILE, &[number("measurements.hip_girth", 102.0), number("thigh.front", 2.254)]);
        assert_eq!(text, FILE.replace("101.5", "102.0").replace("1.9", "2.25"));
    }

    #[test]
    fn new_keys_at_the_end_of_their_table() {
        let text = edited(FILE, &[number("thigh.inner", 0.6), number("measurements.stature", 169.0)]);
        assert!(text.contains("front = 1.9 # cm\ninner = 0.6\n"), "{text}");
        assert!(text.contains("inside_leg  = 79\nstature = 169.0\n"), "{text}");
    }

    #[test]
    fn missing_tables_made_and_readable() {
        let changes = [
            number("left.thigh.front", 2.5),
            number("seat.angle", -1.25),
            number("trousers.ease.hip", 4.0),
            Change::Text("trousers.set".to_owned(), "easy".to_owned()),
            Change::Text("name".to_owned(), "stroke \"one\"".to_owned()),
        ];
        let text = edited(FILE, &changes);
        let (order, _) = Order::read(&Source::new("body.toml", text.as_str())).unwrap();
        assert_eq!(order.left.unwrap().adjustments[0].value, 2.5);
        assert_eq!(order.adjustments.iter().map(|a| a.value).collect::<Vec<_>>(), [1.9, -1.25]);
        assert_eq!(order.name.as_deref(), Some("stroke \"one\""));
        assert_eq!(order.fittings.len(), 1);
        assert!(text.starts_with("# the stroke\n"), "{text}");
        assert!(text.ends_with("\n[[fitting]]\nnote = \"good\"\n"), "{text}");
    }

    #[test]
    fn removed_key_with_its_empty_table() {
        let text = edited(FILE, &[Change::Remove("thigh.front".to_owned())]);
        assert!(!text.contains("thigh"), "{text}");
    }

    #[test]
    fn dotted_and_inline_tables_kept_as_they_are() {
        let file =
            "measurements = { waist_girth = 74, hip_girth = 101.5, inside_leg = 79 }\nthigh.front = 1.9\n";
        let text = edited(file, &[number("measurements.hip_girth", 102.0), number("thigh.front", 2.0)]);
        assert_eq!(text, file.replace("101.5", "102.0").replace("1.9", "2.0"));
    }

    #[test]
    fn lengths_in_the_unit_of_the_file() {
        let file = "units = \"inch\"\n[measurements]\nwaist_girth = 29\nhip_girth = 40\ninside_leg = 31\n";
        let changes = [
            number("measurements.inside_leg", 31.5 * 2.54),
            number("thigh.front", 1.9),
            number("seat.length", 2.54),
            number("seat.angle", 1.0),
        ];
        let text = edited(file, &changes);
        assert!(text.contains("inside_leg = \"31 1/2\"\n"), "{text}");
        assert!(text.contains("[thigh]\nfront = 0.748\n"), "{text}");
        assert!(text.contains("[seat]\nlength = 1.0\nangle = 1.0\n"), "{text}");
    }

    #[test]
    fn line_ends_and_first_mark_kept() {
        let file = format!("\u{feff}{}", FILE.replace('\n', "\r\n"));
        let text = edited(&file, &[number("thigh.front", 2.0), number("seat.length", 1.0)]);
        assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
        assert!(text.contains("front = 2.0 # cm\r\n"), "{text:?}");
    }

    #[test]
    fn toile_recorded_as_it_is_read_back() {
        let fitting = Fitting {
            date: Some("2025-11-20".to_owned()),
            block: Some("classic".to_owned()),
            seen: vec!["lines across the front thigh".to_owned()],
            tested: Vec::new(),
            changed: vec![("thigh.front".to_owned(), 1.9), ("seat.angle".to_owned(), -1.0)],
            note: Some("sits \"well\"".to_owned()),
        };
        for file in [FILE.to_owned(), FILE.replace("[[fitting]]\nnote = \"good\"\n", "")] {
            let text = record(&Source::new("body.toml", file.as_str()), &fitting).unwrap();
            assert!(text.starts_with(&file), "{text}");
            let (order, _) = Order::read(&Source::new("body.toml", text)).unwrap();
            let last = order.fittings.last().unwrap();
            assert_eq!(Fitting { changed: fitting.changed.clone(), ..last.clone() }, fitting);
            assert_eq!(last.changed.len(), 2);
        }
    }

    #[test]
    fn what_would_not_be_readable_refused() {
        for change in
            [number("thigh.front", 900.0), number("thigh.frnt", 1.0), number("left.seat.length", 1.0)]
        {
            assert!(edit(&Source::new("body.toml", FILE), &[change]).is_err());
        }
    }
}
