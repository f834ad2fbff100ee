//! The record of toiles in a measurement file.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::key::{Kind, Path};
use super::read::Reading;
use super::value::{Raw, Read, Written, quoted};
use super::{Fitting, Giver};
use crate::mistake::{Mistake, Source};
use crate::unit::Unit;

impl<'a> Reading<'a> {
    pub(super) fn read_fittings(&mut self, value: Spanned<DeValue<'a>>, source: &'a Source, unit: Unit) {
        let span = value.span();
        let DeValue::Array(rows) = value.into_inner() else {
            let mistake = Mistake::new("expected `[[fitting]]`, found something else").at(source, span, "");
            self.mistakes
                .push(mistake.help("write the heading with two brackets on each side, one heading a toile"));
            return;
        };
        for row in rows {
            let span = row.span();
            match row.into_inner() {
                DeValue::Table(table) => self.read_fitting(table, source, unit),
                _ => self.mistakes.push(Mistake::new("expected a table").at(source, span, "")),
            }
        }
    }

    fn read_fitting(&mut self, table: DeTable<'a>, source: &'a Source, unit: Unit) {
        const NAMES: [&str; 6] = ["date", "block", "seen", "tested", "changed", "note"];
        let mut fitting = Fitting::default();
        for (key, value) in table {
            let span = value.span();
            let name = key.get_ref().to_string();
            let value = value.into_inner();
            match (name.as_str(), value) {
                ("date", DeValue::Datetime(date)) => fitting.date = Some(date.to_string()),
                ("seen", value) => fitting.seen = self.texts("seen", value, source, span),
                ("tested", value) => fitting.tested = self.texts("tested", value, source, span),
                ("changed", DeValue::Table(changes)) => {
                    self.changes("", changes, source, unit, &mut fitting.changed);
                }
                ("changed", _) => self.mistakes.push(
                    Mistake::new("expected a table for `changed`")
                        .at(source, span, "")
                        .help("write the keys and their new values: `changed = { \"thigh.front\" = 1.9 }`"),
                ),
                ("date" | "block" | "note", value) => {
                    let written = Written { raw: Raw::of_toml(&value), source, span, from: Giver::File };
                    match written.read(&name, Kind::Text, unit) {
                        Ok(Read::Text(text)) if name == "date" => fitting.date = Some(text),
                        Ok(Read::Text(text)) if name == "block" => fitting.block = Some(text),
                        Ok(Read::Text(text)) => fitting.note = Some(text),
                        Ok(Read::Number(_)) => {}
                        Err(mistake) => self.mistakes.push(mistake),
                    }
                }
                _ => self.mistakes.push(
                    Mistake::new(format!("unknown key {} in `[[fitting]]`", quoted(&name)))
                        .at(source, key.span(), "")
                        .nearest(&name, NAMES),
                ),
            }
        }
        self.fittings.push(fitting);
    }

    /// One text or a list of texts.
    fn texts(
        &mut self,
        name: &str,
        value: DeValue<'a>,
        source: &'a Source,
        span: std::ops::Range<usize>,
    ) -> Vec<String> {
        let items: Vec<(DeValue<'a>, std::ops::Range<usize>)> = match value {
            DeValue::Array(items) => {
                items.into_iter().map(|item| (item.get_ref().clone(), item.span())).collect()
            }
            one => vec![(one, span)],
        };
        let mut texts = Vec::new();
        for (item, span) in items {
            let written = Written { raw: Raw::of_toml(&item), source, span, from: Giver::File };
            match written.read(name, Kind::Text, Unit::Cm) {
                Ok(Read::Text(text)) => texts.push(text),
                Ok(Read::Number(_)) => {}
                Err(mistake) => self.mistakes.push(mistake),
            }
        }
        texts
    }

    /// The keys of this file that were changed, written in quotation marks or as nested tables.
    fn changes(
        &mut self,
        path: &str,
        table: DeTable<'a>,
        source: &'a Source,
        unit: Unit,
        changed: &mut Vec<(String, f64)>,
    ) {
        for (key, value) in table {
            let full =
                if path.is_empty() { key.get_ref().to_string() } else { format!("{path}.{}", key.get_ref()) };
            let span = value.span();
            match (Path::find(&full), value.into_inner()) {
                (None, DeValue::Table(inner)) => self.changes(&full, inner, source, unit, changed),
                (Some(known), value) => {
                    let written = Written { raw: Raw::of_toml(&value), source, span, from: Giver::File };
                    match written.read(&full, known.kind(), unit) {
                        Ok(Read::Number(number)) => changed.push((full, number)),
                        Ok(Read::Text(_)) => {
                            self.mistakes.push(
                                written.wrong(format!("`{full}` is not a number that a fitting changes")),
                            );
                        }
                        Err(mistake) => self.mistakes.push(mistake),
                    }
                }
                (None, _) => {
                    let all: Vec<String> = Path::all().collect();
                    self.mistakes.push(
                        Mistake::new(format!("unknown key {} in `changed`", quoted(&full)))
                            .at(source, key.span(), "")
                            .nearest(&full, all.iter().map(String::as_str)),
                    );
                }
            }
        }
    }
}
