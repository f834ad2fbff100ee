//! Reading the rows of a recipe's text by hand, so that every slip keeps its place and all are found in one reading.

use std::ops::Range;

use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

use super::{
    Construction, Inputs, Names, Number, Proportion,
    proportion::{LARGEST_NUMBER, Unreadable},
    reference::body_name,
    rules::form_of,
};
use crate::{
    mistake::{Complaint, Mistake, Mistakes, Source},
    terms::{Measurement, Word},
    unit::Unit,
};

pub(super) type Value<'t> = Spanned<DeValue<'t>>;

/// The longest sentence or name taken from a recipe, in characters.
const LONGEST_TEXT: usize = 400;

/// The text of a recipe, and what is wrong with it so far.
pub(super) struct Reader<'s> {
    source: &'s Source,
    found: Vec<Mistake>,
    /// The unit of lengths that say none.
    pub(super) unit: Unit,
    /// Lengths that some line or step of the recipe makes, so that a name used too early is told from one unknown.
    pub(super) lengths_somewhere: Vec<String>,
    /// Points that some step of the recipe makes.
    pub(super) points_somewhere: Vec<String>,
}

/// A table of the text, or one row of a list.
#[derive(Clone)]
pub(super) struct Row<'v> {
    table: &'v DeTable<'v>,
    /// Where the row, or the head of the table, stands.
    pub(super) span: Range<usize>,
    /// How a message calls it: `[front]`, `step`.
    name: &'static str,
}

/// A key and its value, with their places.
#[derive(Clone)]
pub(super) struct Cell<'v> {
    pub(super) key: &'v str,
    pub(super) key_span: Range<usize>,
    pub(super) value: &'v Value<'v>,
}

impl<'s> Reader<'s> {
    pub(super) fn new(source: &'s Source) -> Self {
        Self {
            source,
            found: Vec::new(),
            unit: Unit::Cm,
            lengths_somewhere: Vec::new(),
            points_somewhere: Vec::new(),
        }
    }

    /// Notes a mistake.
    pub(super) fn note(&mut self, mistake: Mistake) {
        self.found.push(mistake);
    }

    /// A mistake at a place of the text, to be noted.
    pub(super) fn at(
        &self,
        span: Range<usize>,
        title: impl Into<Complaint>,
        label: impl Into<Complaint>,
    ) -> Mistake {
        Mistake::new(title).at(self.source, span, label)
    }

    /// Notes a mistake that needs no further words.
    pub(super) fn wrong(
        &mut self,
        span: Range<usize>,
        title: impl Into<Complaint>,
        label: impl Into<Complaint>,
    ) {
        self.note(self.at(span, title, label));
    }

    pub(super) fn is_clean(&self) -> bool {
        self.found.is_empty()
    }

    /// What was wrong, in the order of the text.
    pub(super) fn into_mistakes(mut self) -> Mistakes {
        self.found.sort_by_key(|mistake| mistake.place().map(|(_, span)| span.start));
        self.found.into()
    }

    fn mismatch(&mut self, cell: &Cell<'_>, expected: &str) {
        let found = match cell.value.get_ref() {
            DeValue::String(_) => "text",
            DeValue::Integer(_) | DeValue::Float(_) => "a number",
            DeValue::Boolean(_) => "true or false",
            DeValue::Datetime(_) => "a date",
            DeValue::Array(_) => "a list",
            DeValue::Table(_) => "a table",
        };
        self.wrong(
            cell.value.span(),
            format!("expected {expected} for `{}`, found {found}", shown(cell.key)),
            expected.to_owned(),
        );
    }

    /// A sentence or a name.
    pub(super) fn text<'v>(&mut self, cell: &Cell<'v>) -> Option<&'v str> {
        let DeValue::String(text) = cell.value.get_ref() else {
            self.mismatch(cell, "text");
            return None;
        };
        let text: &str = text;
        let fault = if text.trim().is_empty() {
            "is empty"
        } else if text.chars().any(char::is_control) {
            "holds a line break or another control character"
        } else if text.chars().count() > LONGEST_TEXT {
            "is longer than 400 characters"
        } else {
            return Some(text);
        };
        self.wrong(cell.value.span(), format!("`{}` {fault}", shown(cell.key)), "expected one line of text");
        None
    }

    /// A finite number.
    pub(super) fn number(&mut self, cell: &Cell<'_>) -> Option<f64> {
        let number = match cell.value.get_ref() {
            DeValue::Integer(number) => {
                i64::from_str_radix(number.as_str(), number.radix()).ok().map(|n| n as f64)
            }
            DeValue::Float(number) => number.as_str().parse().ok(),
            _ => {
                self.mismatch(cell, "a number");
                return None;
            }
        };
        let sound = number.filter(|number: &f64| number.abs() <= LARGEST_NUMBER);
        if sound.is_none() {
            let title = format!("`{}` is not a number of sense here", shown(cell.key));
            self.wrong(
                cell.value.span(),
                title,
                format!("expected a number from -{LARGEST_NUMBER} to {LARGEST_NUMBER}"),
            );
        }
        sound
    }

    /// A length that goes by nothing, in cm: a number, or one written as a text, `"3/8"`.
    pub(super) fn length(&mut self, cell: &Cell<'_>) -> Option<f64> {
        if !cell.value.get_ref().is_str() {
            let unit = self.unit;
            return self.number(cell).map(|number| unit.to_cm(number));
        }
        let length = self.proportion(cell, &Names::of_the_trade_in(self.unit))?;
        let constant = length.parts().all(|part| part.of.is_none());
        if !constant {
            let title = format!("`{}` goes by nothing else", shown(cell.key));
            self.wrong(cell.value.span(), title, "expected a length such as 0.5 or \"3/8\"");
            return None;
        }
        length.value(&Inputs::default(), &Construction::default()).ok()
    }

    /// `true` or `false`.
    pub(super) fn flag(&mut self, cell: &Cell<'_>) -> Option<bool> {
        let flag = cell.value.get_ref().as_bool();
        if flag.is_none() {
            self.mismatch(cell, "true or false");
        }
        flag
    }

    /// A list, its members under the list's key; `None` also when it has more than `most`.
    pub(super) fn list<'v>(&mut self, cell: &Cell<'v>, most: usize) -> Option<Vec<Cell<'v>>> {
        let DeValue::Array(list) = cell.value.get_ref() else {
            self.mismatch(cell, "a list");
            return None;
        };
        if list.len() > most {
            let title = format!("`{}` has {} entries", shown(cell.key), list.len());
            self.wrong(cell.key_span.clone(), title, format!("expected at most {most}"));
            return None;
        }
        Some(list.iter().map(|value| Cell { value, ..cell.clone() }).collect())
    }

    /// A table or a row.
    pub(super) fn row<'v>(&mut self, cell: &Cell<'v>, name: &'static str) -> Option<Row<'v>> {
        let DeValue::Table(table) = cell.value.get_ref() else {
            self.mismatch(cell, "a table");
            return None;
        };
        Some(Row { table, span: cell.value.span(), name })
    }

    /// A proportion, or a plain number of cm.
    pub(super) fn proportion(&mut self, cell: &Cell<'_>, names: &Names) -> Option<Proportion> {
        match cell.value.get_ref() {
            DeValue::Integer(_) | DeValue::Float(_) => {
                let unit = names.unit();
                self.number(cell).map(|number| Proportion::constant(number, unit))
            }
            DeValue::String(text) => self.proportion_in(cell, text, text, names),
            _ => {
                self.mismatch(cell, "a proportion such as `1/16 hip + 0.5`");
                None
            }
        }
    }

    /// A proportion that is a part of a cell's text.
    pub(super) fn proportion_in(
        &mut self,
        cell: &Cell<'_>,
        text: &str,
        part: &str,
        names: &Names,
    ) -> Option<Proportion> {
        let mut unreadable = match Proportion::parse(part, names) {
            Ok(proportion) => return Some(proportion),
            Err(unreadable) => unreadable,
        };
        let before = part.as_ptr().addr().saturating_sub(text.as_ptr().addr());
        unreadable.span = unreadable.span.start + before..unreadable.span.end + before;
        let mistake = self.unreadable(cell, text, unreadable, names);
        self.note(mistake);
        None
    }

    fn unreadable(&self, cell: &Cell<'_>, text: &str, unreadable: Unreadable, names: &Names) -> Mistake {
        let mistake =
            self.at(within(self.source, cell, text, unreadable.span), unreadable.title, unreadable.label);
        match unreadable.unknown {
            Some(word) if self.lengths_somewhere.contains(&word) => {
                mistake.help(format!("`{word}` comes later in the recipe: move it up"))
            }
            Some(word) if self.points_somewhere.contains(&word) => mistake
                .help(format!("`{word}` is a point, not a length: measure from it with a step of its own")),
            Some(word) if Measurement::from_key(&word).is_some() => {
                let short = Measurement::from_key(&word).map_or("", body_name);
                mistake.help(format!("a girth goes by its short name: write `{short}`"))
            }
            Some(word) => {
                let all = names.all();
                let near = near(mistake, &word, all.iter().map(String::as_str));
                if near.remedies().is_empty() {
                    near.help(format!("names here are {}", all.join(", ")))
                } else {
                    near
                }
            }
            None => match unreadable.remedy {
                Some(remedy) => mistake.help(remedy),
                None => mistake,
            },
        }
    }

    /// A part of a distance, with its sign.
    pub(super) fn part(&mut self, cell: &Cell<'_>) -> Option<(bool, Number)> {
        /// Twenty times a distance of the draft is off the paper.
        const MOST: f64 = 20.0;
        let read = match cell.value.get_ref() {
            DeValue::String(text) => match text.trim().strip_prefix('-') {
                Some(rest) => Number::parse(rest).map(|number| (true, number)),
                None => Number::parse(text).map(|number| (false, number)),
            },
            _ => {
                let number = self.number(cell)?;
                Some((number < 0.0, Number::Decimal(number.abs())))
            }
        };
        let sound = read.filter(|(_, number)| number.value() <= MOST);
        if sound.is_none() {
            let title = format!("`{}` is not a part of a distance", shown(cell.key));
            self.wrong(cell.value.span(), title, "expected a part such as `1/3`, 0.5 or 2, at most 20");
        }
        sound
    }

    /// The word of a closed list.
    pub(super) fn choice<T: Copy>(&mut self, cell: &Cell<'_>, choices: &[(&str, T)]) -> Option<T> {
        let text = self.text(cell)?;
        let chosen = choices.iter().find(|(word, _)| *word == text).map(|(_, choice)| *choice);
        if chosen.is_none() {
            let words = choices.iter().map(|(word, _)| format!("`{word}`")).collect::<Vec<_>>().join(" or ");
            let title = format!("unknown `{}` `{}`", shown(cell.key), shown(text));
            let mistake = self.at(cell.value.span(), title, format!("expected {words}"));
            self.note(near(mistake, text, choices.iter().map(|(word, _)| *word)));
        }
        chosen
    }
}

impl<'v> Row<'v> {
    /// The whole text as a table.
    pub(super) fn document(table: &'v Spanned<DeTable<'v>>) -> Self {
        Self { table: table.get_ref(), span: 0..0, name: "recipe" }
    }

    /// The cell of a key.
    pub(super) fn get(&self, key: &str) -> Option<Cell<'v>> {
        let (key, value) = self.table.get_key_value(key)?;
        Some(Cell { key: key.get_ref(), key_span: key.span(), value })
    }

    /// The cell of a key that must be there.
    pub(super) fn need(&self, reader: &mut Reader<'_>, key: &str) -> Option<Cell<'v>> {
        let cell = self.get(key);
        if cell.is_none() {
            let mistake = reader.at(
                self.span.clone(),
                format!("{} lacks `{key}`", self.name),
                format!("expected `{key}` here"),
            );
            reader.note(match form_of(self.name, key) {
                Some(form) => mistake.help(form),
                None => mistake,
            });
        }
        cell
    }

    /// All cells in the order of the text.
    pub(super) fn cells(&self) -> Vec<Cell<'v>> {
        let mut cells: Vec<_> = self
            .table
            .iter()
            .map(|(key, value)| Cell { key: key.get_ref(), key_span: key.span(), value })
            .collect();
        cells.sort_by_key(|cell| cell.key_span.start);
        cells
    }

    /// Notes every key that is not among `known`; whether there was none.
    pub(super) fn only(&self, reader: &mut Reader<'_>, known: &[&str]) -> bool {
        let cells = self.cells();
        let unknown: Vec<_> = cells.iter().filter(|cell| !known.contains(&cell.key)).collect();
        for cell in &unknown {
            let title = format!("unknown key `{}`", shown(cell.key));
            let mistake = reader.at(cell.key_span.clone(), title, format!("not a key of {}", self.name));
            let near = near(mistake, cell.key, known.iter().copied());
            let all = known.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(", ");
            let helped =
                if near.remedies().is_empty() { near.help(format!("expected one of {all}")) } else { near };
            reader.note(helped);
        }
        unknown.is_empty()
    }
}

/// The place of a part of a text value; all of the value where the text is written with escapes.
fn within(source: &Source, cell: &Cell<'_>, text: &str, part: Range<usize>) -> Range<usize> {
    let whole = cell.value.span();
    let inside = whole.start + 1;
    let plain = source.text.get(inside..).is_some_and(|rest| rest.starts_with(text));
    if plain { inside + part.start..inside + part.end } else { whole }
}

/// The mistake with the nearest known name, for words short enough to be compared.
pub(super) fn near<'a>(mistake: Mistake, word: &str, known: impl IntoIterator<Item = &'a str>) -> Mistake {
    if word.len() <= LONGEST_TEXT { mistake.nearest(word, known) } else { mistake }
}

/// Keys as a message lists them.
pub(super) fn listed<'a>(keys: impl IntoIterator<Item = &'a str>, between: &str) -> String {
    keys.into_iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(between)
}

/// A word of the text as a message may show it.
pub(super) fn shown(word: &str) -> String {
    const MOST: usize = 40;
    let mut out: String = word.chars().take(MOST).flat_map(char::escape_debug).collect();
    if word.chars().nth(MOST).is_some() {
        out.push('…');
    }
    out
}
