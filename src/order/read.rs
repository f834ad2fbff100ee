//! Reads a measurement file: all that is wrong with it in one run, each mistake at its place.

use std::collections::BTreeMap;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::Giver;
use super::key::Path;
use super::notices::unlike_legs;
use super::value::{Raw, Written, quoted};
use super::{Fitting, Order};
use crate::body::{Fault, Given, faults};
use crate::mistake::{Mistake, Mistakes, Notice, Source, nearest};
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
        let (mut order, notices) = reading.order(source)?;
        order.name = order.name.or_else(|| stem(&source.name));
        Ok((order, notices))
    }
}

/// What a file is called by its writer, without folder and ending.
fn stem(name: &str) -> Option<String> {
    std::path::Path::new(name).file_stem().map(|stem| stem.to_string_lossy().into_owned())
}

/// Where each measurement was written.
type Places<'a> = BTreeMap<(Side, Measurement), Written<'a>>;

/// What has been found so far.
#[derive(Default)]
pub(super) struct Reading<'a> {
    pub(super) written: Vec<(String, Path, Written<'a>)>,
    pub(super) fittings: Vec<Fitting>,
    pub(super) mistakes: Vec<Mistake>,
    /// The unit must be known before any length is read, so that fittings wait for it too.
    fitting_tables: Vec<(Spanned<DeValue<'a>>, &'a Source)>,
    waist_level_said: bool,
}

/// More unknown keys than this are only counted.
const ENOUGH: usize = 50;

impl<'a> Reading<'a> {
    fn file(&mut self, source: &'a Source) {
        let (table, errors) = DeTable::parse_recoverable(&source.text);
        if !errors.is_empty() {
            self.mistakes.extend(not_toml(source, &errors));
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
                self.written.push((
                    full,
                    known,
                    Written { raw, source, span: value.span(), from: Giver::File },
                ));
                continue;
            }
            let is_table = Path::names_in(path).contains(&name.as_ref());
            match value.into_inner() {
                DeValue::Table(inner) if is_table => self.table(&full, inner, source),
                _ if is_table => self.mistakes.push(
                    Mistake::new(format!("expected a table `[{full}]`, found something else"))
                        .at(source, key.span(), "")
                        .help(format!("`{full}` holds other keys: {}", some(&Path::names_in(&full)))),
                ),
                // a file of nothing but unknown keys is another file: no need to look for what each may have meant
                _ if self.mistakes.len() > ENOUGH => {
                    self.mistakes.push(Mistake::new("unknown key").at(source, key.span(), ""));
                }
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
                    from: Giver::Set,
                },
            )),
            None => {
                let mistake = Mistake::new(format!("unknown key {}", quoted(key))).at(option, span, "");
                let mistake = match meant(key).filter(|_| belly(key).is_none()) {
                    Some(near) => mistake.help(format!("did you mean `{near}`?")),
                    None => mistake,
                };
                let mistake = belly(key).into_iter().fold(mistake, Mistake::help);
                let region = key.rsplit_once('.').and_then(|(table, _)| Path::of_region(table));
                self.mistakes.push(region.into_iter().fold(mistake, Mistake::help));
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
            units: unit,
            source: source.clone(),
            ..Order::of(Given::new(Sex::Unsaid, WaistLevel::Natural))
        };
        let mut places = Places::new();
        self.waist_level_said = self.written.iter().any(|(_, path, _)| *path == Path::WaistLevel);
        for (path, key, written) in std::mem::take(&mut self.written) {
            match written.read(&path, key.kind(), unit) {
                Ok(value) => {
                    if let Err(mistake) = order.put(&path, &key, value, &written) {
                        self.mistakes.push(*mistake);
                    } else if let Path::Measurement(side, measurement) = key {
                        places.insert((side, measurement), written);
                    }
                }
                Err(mistake) => self.mistakes.push(match key {
                    Path::Measurement(_, measurement) if written.is_empty() => {
                        mistake.help(measurement.about().how)
                    }
                    Path::Adjust(_, key) => mistake.help(key.about().advice()),
                    _ => mistake,
                }),
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
    pub(super) fn close(mut self, order: Order) -> Result<(Order, Vec<Notice>), Mistakes> {
        if self.mistakes.is_empty() {
            let mut notices = unlike_legs(&order);
            if !self.waist_level_said {
                notices.push(Notice::note(
                    "waist-level-unsaid",
                    "`waist_level` is not said: everything from the waist is taken as measured at the natural waist",
                ));
            }
            Ok((order, notices))
        } else {
            // from top to bottom, as a person mends a file; what has no place first, the options last
            self.mistakes.sort_by_key(|mistake| match mistake.place() {
                None => (0, 0),
                Some((place, span)) => (1 + usize::from(*place != order.source), span.start),
            });
            Err(Mistakes::from(self.mistakes).in_unit(order.units))
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
}

/// The known path that an unknown one may have meant.
fn meant(key: &str) -> Option<String> {
    if let Some((table, name)) = key.rsplit_once('.').filter(|(table, _)| Path::of_region(table).is_some()) {
        return nearest(name, Path::names_in(table)).map(|near| format!("{table}.{near}"));
    }
    let all: Vec<String> = Path::all().collect();
    nearest(key, all.iter().map(String::as_str)).map(str::to_owned).or_else(|| {
        // the last part alone is often meant and only the table forgotten
        let last = |path: &str| path.rsplit('.').next().map(str::to_owned).unwrap_or_default();
        let lasts: Vec<String> = all.iter().map(|path| last(path)).collect();
        let near = nearest(key, lasts.iter().map(String::as_str))?;
        all.iter().find(|path| last(path) == near).cloned()
    })
}

/// What stands in the file for a belly, where a key is named for one: no measurement has that name.
fn belly(key: &str) -> Option<&'static str> {
    let name = key.rsplit('.').next().unwrap_or(key);
    let word = name.split('_').next().unwrap_or(name);
    ["belly", "tummy", "stomach", "paunch"].contains(&word).then_some(
        "for a full belly give `measurements.top_hip_girth`, round the body halfway between waist and hip, and say what a \
         mirror shows: `abdomen = \"much\"` under `[shape]`",
    )
}

fn unknown(table: &str, name: &str, source: &Source, span: std::ops::Range<usize>) -> Mistake {
    let known = Path::names_in(table);
    let place = if table.is_empty() { String::new() } else { format!(" in `[{table}]`") };
    let mistake = Mistake::new(format!("unknown key {}{place}", quoted(name))).at(source, span, "");
    if let Some(remedy) = belly(name) {
        return mistake.help(remedy);
    }
    // a right name in the wrong table
    match Path::all().find(|path| path.rsplit('.').next() == Some(name)) {
        Some(path) => match path.rsplit_once('.') {
            Some((right, _)) => mistake.help(format!("`{name}` belongs under `[{right}]`")),
            None => mistake.help(format!("`{name}` belongs at the top of the file, above the first table")),
        },
        None => Path::of_region(table)
            .into_iter()
            .fold(mistake.nearest(name, known.iter().copied()), Mistake::help),
    }
}

/// The first few of a list of names.
fn some(names: &[&str]) -> String {
    const FEW: usize = 4;
    let mut shown = names.iter().take(FEW).map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ");
    if names.len() > FEW {
        shown.push_str(", ...");
    }
    shown
}

/// What the parser of the file format has to say, in our words where we have them: the first slip of a line, since one
/// slip makes it stumble over all that follows.
fn not_toml(source: &Source, errors: &[toml::de::Error]) -> Vec<Mistake> {
    let mut spans: Vec<_> = errors.iter().map(|error| (error.span().unwrap_or_default(), error)).collect();
    spans.sort_by_key(|(span, _)| span.start);
    let mut mistakes = BTreeMap::new();
    let (mut line, mut counted) = (0, 0);
    for (span, error) in spans {
        line += source.text.get(counted..span.start).unwrap_or_default().matches('\n').count();
        counted = span.start;
        mistakes.entry(line).or_insert_with(|| {
            let message = error.message().replace('\n', ", ");
            let mistake = if message.starts_with("duplicate key") {
                let key = source.text.get(span.clone()).unwrap_or_default();
                Mistake::new(format!("{} stands here for the second time", quoted(key)))
                    .help("keep one of the two")
            } else if message.starts_with("string values must be quoted") {
                Mistake::new("expected a number or text between quotation marks")
                    .help("for example `name = \"stroke\"`, `inside_leg = \"31 1/2\"`, `hip_girth = 101.5`")
            } else if message.contains("recurs") {
                Mistake::new("nested too deep for a measurement file")
            } else {
                Mistake::new(message)
            };
            mistake.at(source, span, "")
        });
    }
    mistakes.into_values().collect()
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::adjust;
    use crate::terms::{EaseAt, FitKind, SeatSet};

    fn read_with(text: &str, set: &[&str]) -> Order {
        let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
        Order::read_with(&Source::new("body.toml", text), &set)
            .map_err(|mistakes| println!("{mistakes}"))
            .unwrap()
            .0
    }

    const SOUND: &str = "[measurements]\nwaist_girth = 74\nhip_girth = 101.5\ninside_leg = 79\n";

    #[test]
    fn option_in_place_of_the_file_and_the_last_option_strongest() {
        let order = read_with(
            SOUND,
            &[
                "measurements.hip_girth=100",
                "measurements.hip_girth = 102 ",
                "trousers.set=easy",
                "name=bow two",
            ],
        );
        assert_eq!(order.body.cm(Measurement::HipGirth), Some(102.0));
        assert_eq!(order.trousers.set, SeatSet::Easy);
        assert_eq!(order.name.as_deref(), Some("bow two"));
    }

    #[test]
    fn lengths_of_options_in_the_unit_of_the_file() {
        let order = read_with(
            "units = \"inch\"\n[measurements]\nwaist_girth = 29\nhip_girth = 40\ninside_leg = \"31 1/2\"\n",
            &["thigh.front=3/4", "seat.length=1.9 cm", "seat.angle=-1.5", "trousers.cloth_stretch=20"],
        );
        let value = |key| order.adjustments.iter().find(|adjustment| adjustment.key == key).map(|a| a.value);
        assert_eq!(value(adjust::Key::ThighFront), Some(0.75 * 2.54));
        assert_eq!(value(adjust::Key::SeatLength), Some(1.9));
        assert_eq!(value(adjust::Key::SeatAngle), Some(-1.5));
        assert_eq!(order.trousers.cloth_stretch, 20.0);
        assert_eq!(order.body.cm(Measurement::InsideLeg), Some(80.01));
    }

    #[test]
    fn unit_of_an_option_for_all_plain_numbers() {
        let order = read_with(
            "[measurements]\nwaist_girth = 29\nhip_girth = 40\ninside_leg = 31\nstature = \"169 cm\"\n",
            &["units=inch"],
        );
        assert_eq!(order.body.cm(Measurement::HipGirth), Some(101.6));
        assert_eq!(order.body.cm(Measurement::Stature), Some(169.0));
    }

    #[test]
    fn every_part_of_a_full_file() {
        let order = read_with(
            "name = \"stroke\"\nsex = \"female\"\nwaist_level = \"navel\"\n[measurements]\nwaist_girth = 80\n\
             hip_girth = 101.5\ninside_leg = 79\n[trousers]\nfit = \"proportional\"\ncloth_stretch = 5\n\
             inseam_stretch = 0.5\n[trousers.ease]\nhip = 4\n[trousers.style]\nhem_width = 20\n[trousers.allowance]\n\
             hem = 4\n[trousers.ask]\nbelt_width = 4\n[thigh]\nfront = 1.9\n[left.thigh]\nfront = 2.5\n\
             [right.measurements]\nthigh_girth = 61\n[[fitting]]\ndate = 2025-11-20\nseen = [\"pull\", \"fold\"]\n\
             changed = { \"thigh.front\" = 1.9, seat = { length = 1 } }\n[[fitting]]\nnote = \"good\"\n",
            &[],
        );
        assert_eq!(order.trousers.fit, Some(FitKind::Proportional));
        assert_eq!(order.trousers.ease[EaseAt::Hip], Some(4.0));
        assert_eq!(order.trousers.ask["belt_width"], 4.0);
        assert_eq!(order.left.as_ref().unwrap().adjustments[0].value, 2.5);
        assert_eq!(order.leg(Side::Right).cm(Measurement::ThighGirth), Some(61.0));
        assert_eq!(order.leg(Side::Left).cm(Measurement::ThighGirth), None);
        assert_eq!(order.fittings[0].date.as_deref(), Some("2025-11-20"));
        assert_eq!(order.fittings[0].seen, ["pull", "fold"]);
        let changed: Vec<_> =
            order.fittings[0].changed.iter().map(|(key, value)| (key.as_str(), *value)).collect();
        assert_eq!(changed, [("seat.length", 1.0), ("thigh.front", 1.9)]);
        assert_eq!(order.fittings[1].note.as_deref(), Some("good"));
    }

    #[test]
    fn notices_for_unlike_legs_and_a_waist_unsaid() {
        let source = Source::new(
            "body.toml",
            format!("{SOUND}[left.measurements]\nthigh_girth = 55\n[right.measurements]\nthigh_girth = 65\n"),
        );
        let (_, notices) = Order::read(&source).unwrap();
        let codes: Vec<&str> = notices.iter().map(|notice| notice.code).collect();
        assert_eq!(codes, ["unlike-legs", "waist-level-unsaid"]);
    }
}
