//! Reads a measurement file: all that is wrong with it in one run, each mistake at its place.

use std::collections::BTreeMap;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::key::{Kind, Path};
use super::value::{Raw, Read, Written, quoted};
use super::{Adjustment, Fitting, Order, Trousers};
use crate::adjust::OneLeg;
use crate::body::{Fault, Given, faults};
use crate::mistake::{Mistake, Mistakes, Notice, Source};
use crate::terms::{Measurement, Sex, Side, WaistLevel, Word};
use crate::unit::Unit;

impl Order {
    /// Reads a measurement file.
    ///
    /// # Errors
    /// Everything that is wrong with the file, each with its place.
    pub fn read(source: &Source) -> Result<(Self, Vec<Notice>), Mistakes> {
        Self::read_with(source, &[])
    }

    /// Reads a measurement file with the `KEY=VALUE` of `--set` in place of what it says, the later the stronger.
    ///
    /// # Errors
    /// Everything that is wrong with the file and with the options, each with its place.
    pub fn read_with(source: &Source, set: &[String]) -> Result<(Self, Vec<Notice>), Mistakes> {
        let options: Vec<Source> = set.iter().map(|text| Source::new("--set", text.as_str())).collect();
        let mut reading = Reading::default();
        reading.file(source);
        for option in &options {
            reading.option(option);
        }
        reading.order(source)
    }
}

/// Where each measurement was written.
type Places<'a> = BTreeMap<(Side, Measurement), Written<'a>>;

/// What has been found so far.
#[derive(Default)]
pub(super) struct Reading<'a> {
    pub(super) written: Vec<(String, Path, Written<'a>)>,
    fittings: Vec<Fitting>,
    pub(super) mistakes: Vec<Mistake>,
    /// The unit must be known before any length is read, so that fittings wait for it too.
    fitting_tables: Vec<(Spanned<DeValue<'a>>, &'a Source)>,
}

impl<'a> Reading<'a> {
    fn file(&mut self, source: &'a Source) {
        let (table, errors) = DeTable::parse_recoverable(&source.text);
        if !errors.is_empty() {
            self.mistakes.extend(errors.iter().map(|error| not_toml(source, error)));
            return;
        }
        self.table("", table.into_inner(), source);
        // a reader goes through a file from top to bottom; the parser hands tables over by name
        self.written.sort_by_key(|(_, _, written)| written.span.start);
    }

    fn table(&mut self, path: &str, table: DeTable<'a>, source: &'a Source) {
        for (key, value) in table {
            let name = key.get_ref();
            let full = if path.is_empty() { name.to_string() } else { format!("{path}.{name}") };
            if full == "fitting" {
                self.fitting_tables.push((value, source));
                continue;
            }
            if let Some(known) = Path::find(&full) {
                let raw = Raw::of_toml(value.get_ref());
                self.written.push((full, known, Written { raw, source, span: value.span(), from: "file" }));
                continue;
            }
            let is_table = Path::names_in(path).contains(&name.as_ref());
            match value.into_inner() {
                DeValue::Table(inner) if is_table => self.table(&full, inner, source),
                _ if is_table => self.mistakes.push(
                    Mistake::new(format!("expected a table `[{full}]`, found a value")).at(
                        source,
                        key.span(),
                        "",
                    ),
                ),
                _ => self.mistakes.push(unknown(path, name, source, key.span())),
            }
        }
    }

    /// Adds one `KEY=VALUE` of `--set`.
    pub(super) fn option(&mut self, option: &'a Source) {
        let text = &option.text;
        let Some(at) = text.find('=') else {
            self.mistakes.push(
                Mistake::new("expected `KEY=VALUE`, found no `=`")
                    .at(option, 0..text.len(), "")
                    .help("for example `--set thigh.front=1.9`"),
            );
            return;
        };
        let key = text[..at].trim();
        let start = text.len() - text.trim_start().len();
        let span = start..start + key.len();
        let value = &text[at + 1..];
        let trimmed = value.trim();
        let value_start = at + 1 + (value.len() - value.trim_start().len());
        match Path::find(key) {
            Some(known) => self.written.push((
                key.to_owned(),
                known,
                Written {
                    raw: Raw::Bare(trimmed.to_owned()),
                    source: option,
                    span: value_start..value_start + trimmed.len(),
                    from: "set",
                },
            )),
            None => {
                let mistake = Mistake::new(format!("unknown key {}", quoted(key))).at(option, span, "");
                let all: Vec<String> = Path::all().collect();
                // the last part alone is often right and only the table forgotten
                let near = all.iter().find(|path| path.rsplit('.').next() == Some(key)).cloned();
                self.mistakes.push(match near {
                    Some(near) => mistake.help(format!("did you mean `{near}`?")),
                    None => mistake.nearest(key, all.iter().map(String::as_str)),
                });
            }
        }
    }

    /// The value of the last `units`, so that the option wins over the file.
    fn unit(&self) -> Unit {
        let last = self.written.iter().rev().find(|(_, path, _)| *path == Path::Units);
        match last.map(|(_, _, written)| &written.raw) {
            Some(Raw::Text(text) | Raw::Bare(text)) => Unit::from_key(text).unwrap_or(Unit::Cm),
            _ => Unit::Cm,
        }
    }

    fn order(mut self, source: &'a Source) -> Result<(Order, Vec<Notice>), Mistakes> {
        let (order, places) = self.settle(source);
        self.judge(&order, &places);
        self.close(order)
    }

    /// Every value at its place in an order; whether it is a body is not asked yet.
    pub(super) fn settle(&mut self, source: &'a Source) -> (Order, Places<'a>) {
        let unit = self.unit();
        let mut order = Order {
            name: None,
            units: unit,
            body: Given::new(Sex::Unsaid, WaistLevel::Natural),
            trousers: Trousers::default(),
            adjustments: Vec::new(),
            left: None,
            right: None,
            fittings: Vec::new(),
            source: source.clone(),
        };
        let mut places = Places::new();
        for (path, key, written) in std::mem::take(&mut self.written) {
            match written.read(&path, key.kind(), unit) {
                Ok(value) => {
                    if let Err(mistake) = order.put(&path, &key, value, &written) {
                        self.mistakes.push(*mistake);
                    } else if let Path::Measurement(side, measurement) = key {
                        places.insert((side, measurement), written);
                    }
                }
                Err(mistake) => self.mistakes.push(mistake),
            }
        }
        for (value, source) in std::mem::take(&mut self.fitting_tables) {
            self.read_fittings(value, source, unit);
        }
        order.fittings = std::mem::take(&mut self.fittings);
        order.adjustments.sort_by_key(|adjustment| adjustment.key);
        for leg in [&mut order.left, &mut order.right].into_iter().flatten() {
            leg.adjustments.sort_by_key(|adjustment| adjustment.key);
        }
        (order, places)
    }

    /// The order with its notices, unless something was wrong.
    pub(super) fn close(self, order: Order) -> Result<(Order, Vec<Notice>), Mistakes> {
        if self.mistakes.is_empty() {
            let notices = unusual(&order);
            Ok((order, notices))
        } else {
            Err(Mistakes(self.mistakes))
        }
    }

    /// What cannot be a body, at the measurements that say so. Unless something was already wrong: then a measurement
    /// may only seem to be missing.
    fn judge(&mut self, order: &Order, places: &Places<'_>) {
        let missing_counts = self.mistakes.is_empty();
        for (side, fault) in order.faults() {
            let place =
                fault.at.and_then(|m| places.get(&(side, m)).or_else(|| places.get(&(Side::Both, m))));
            let mistake = Mistake::from(fault);
            match place {
                Some(written) => {
                    self.mistakes.push(mistake.at(written.source, written.span.clone(), ""));
                }
                None if missing_counts => self.mistakes.push(mistake),
                None => {}
            }
        }
    }

    fn read_fittings(&mut self, value: Spanned<DeValue<'a>>, source: &'a Source, unit: Unit) {
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
                    let written = Written { raw: Raw::of_toml(&value), source, span, from: "file" };
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
            let written = Written { raw: Raw::of_toml(&item), source, span, from: "file" };
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
                    let written = Written { raw: Raw::of_toml(&value), source, span, from: "file" };
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

impl Order {
    /// What cannot be a body, each fault once, with the leg on which it was first seen.
    pub fn faults(&self) -> Vec<(Side, Fault)> {
        let mut seen: Vec<(Side, Fault)> = Vec::new();
        for side in [Side::Both, Side::Left, Side::Right] {
            let has_own = match side {
                Side::Both => true,
                Side::Left => self.left.is_some(),
                Side::Right => self.right.is_some(),
            };
            let found = if has_own { faults(&self.leg(side)) } else { Vec::new() };
            for fault in found {
                if !seen.iter().any(|(_, known)| *known == fault) {
                    seen.push((side, fault));
                }
            }
        }
        seen
    }

    /// Puts one value at its place.
    fn put(
        &mut self,
        path: &str,
        key: &Path,
        value: Read,
        written: &Written<'_>,
    ) -> Result<(), Box<Mistake>> {
        match (key, value) {
            (Path::Name, Read::Text(text)) => self.name = Some(text),
            (Path::Block, Read::Text(text)) => self.trousers.block = text,
            (Path::Sex, Read::Text(word)) => assign(&mut self.body.sex, &word),
            (Path::Units, Read::Text(word)) => assign(&mut self.units, &word),
            (Path::WaistLevel, Read::Text(word)) => assign(&mut self.body.waist_level, &word),
            (Path::Set, Read::Text(word)) => assign(&mut self.trousers.set, &word),
            (Path::Fit, Read::Text(word)) => self.trousers.fit = Word::from_key(&word),
            (Path::ClothStretch, Read::Number(number)) => self.trousers.cloth_stretch = number,
            (Path::InseamStretch, Read::Number(cm)) => self.trousers.inseam_stretch = cm,
            (Path::Ease(at), Read::Number(cm)) => self.trousers.ease[*at as usize] = Some(cm),
            (Path::Style(style), Read::Number(cm)) => self.trousers.style[*style as usize] = Some(cm),
            (Path::Allowance(at), Read::Number(cm)) => self.trousers.allowance[*at as usize] = Some(cm),
            (Path::Ask(name), Read::Number(cm)) => {
                self.trousers.ask.insert(name.clone(), cm);
            }
            (Path::Measurement(side, measurement), Read::Number(cm)) => {
                if *side != Side::Both && !measurement.about().of_a_leg {
                    return Err(Box::new(
                        written.wrong(format!("`{measurement}` is of the whole body, not of one leg")).help(
                            format!("write it under `[measurements]`, not under `[{side}.measurements]`"),
                        ),
                    ));
                }
                self.measured_mut(*side)[*measurement as usize] = Some(cm);
            }
            (Path::Adjust(side, key), Read::Number(value)) => {
                let allowed = match key.about().one_leg {
                    OneLeg::Free | OneLeg::WithCare => Ok(()),
                    OneLeg::Never if *side != Side::Both => Err((
                        format!("`{key}` must be the same on both legs: centre seams are sewn left to right"),
                        format!("write it under `[{}]`, without `{side}`", key.about().region),
                    )),
                    OneLeg::Only if *side == Side::Both => Err((
                        format!("`{key}` is of one side only"),
                        format!("write it under `[left.{0}]` or `[right.{0}]`", key.about().region),
                    )),
                    OneLeg::Never | OneLeg::Only => Ok(()),
                };
                if let Err((title, help)) = allowed {
                    return Err(Box::new(written.wrong(title).help(help)));
                }
                let adjustment = Adjustment { key: *key, value, from: written.from };
                let list = self.adjustments_mut(*side);
                match list.iter_mut().find(|old| old.key == *key) {
                    Some(old) => *old = adjustment,
                    None => list.push(adjustment),
                }
            }
            // the kind of a key decides which of the two its value is
            (_, Read::Text(_) | Read::Number(_)) => {
                return Err(Box::new(written.wrong(format!("`{path}` has a value of another kind"))));
            }
        }
        Ok(())
    }

    fn measured_mut(&mut self, side: Side) -> &mut [Option<f64>; Measurement::COUNT] {
        match side {
            Side::Both => &mut self.body.measured,
            Side::Left => &mut self.left.get_or_insert_default().measured,
            Side::Right => &mut self.right.get_or_insert_default().measured,
        }
    }

    fn adjustments_mut(&mut self, side: Side) -> &mut Vec<Adjustment> {
        match side {
            Side::Both => &mut self.adjustments,
            Side::Left => &mut self.left.get_or_insert_default().adjustments,
            Side::Right => &mut self.right.get_or_insert_default().adjustments,
        }
    }
}

fn assign<W: Word>(place: &mut W, word: &str) {
    if let Some(word) = W::from_key(word) {
        *place = word;
    }
}

/// Parameters beyond their usual range.
fn unusual(order: &Order) -> Vec<Notice> {
    let sides = [
        ("", Some(&order.adjustments)),
        ("left.", order.left.as_ref().map(|leg| &leg.adjustments)),
        ("right.", order.right.as_ref().map(|leg| &leg.adjustments)),
    ];
    let mut notices = Vec::new();
    for (side, adjustments) in sides {
        for adjustment in adjustments.into_iter().flatten() {
            let (about, value) = (adjustment.key.about(), adjustment.value);
            if value != about.default && !(about.usual.0..=about.usual.1).contains(&value) {
                notices.push(Notice::new(
                    "unusual-parameter",
                    format!(
                        "`{side}{}` is {value:.2} {}; usual is {} to {}",
                        adjustment.key,
                        about.unit.symbol(),
                        about.usual.0,
                        about.usual.1
                    ),
                ));
            }
        }
    }
    notices
}

fn unknown(table: &str, name: &str, source: &Source, span: std::ops::Range<usize>) -> Mistake {
    let known = Path::names_in(table);
    let place = if table.is_empty() { String::new() } else { format!(" in `[{table}]`") };
    let mistake = Mistake::new(format!("unknown key {}{place}", quoted(name))).at(source, span, "");
    if let Some(near) = crate::mistake::nearest(name, known.iter().copied()) {
        return mistake.help(format!("did you mean `{near}`?"));
    }
    // a right name in the wrong table
    let elsewhere = Path::all().find(|path| path.rsplit('.').next() == Some(name));
    match elsewhere {
        Some(path) => match path.rsplit_once('.') {
            Some((right, _)) => mistake.help(format!("`{name}` belongs under `[{right}]`")),
            None => mistake.help(format!("`{name}` belongs at the top of the file, above the first table")),
        },
        None => mistake,
    }
}

/// What the parser of the file format has to say, in our words where we have them.
fn not_toml(source: &Source, error: &toml::de::Error) -> Mistake {
    let mistake = Mistake::new(error.message().replace('\n', ", "));
    match error.span() {
        Some(span) => mistake.at(source, span, ""),
        None => mistake,
    }
}
