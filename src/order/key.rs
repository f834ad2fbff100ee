//! Every key that a measurement file may hold, as a dotted path, with what kind of value it takes.

use crate::adjust::{self, Measure};
use crate::terms::{
    Allowance, EaseAt, FitKind, HowMuch, Measurement, Panel, SeatSet, Sex, Shape, Side, Style, WaistLevel,
    Word,
};
use crate::unit::Unit;

/// A key of the measurement file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Path {
    /// `name`
    Name,
    /// `sex`
    Sex,
    /// `units`
    Units,
    /// `waist_level`
    WaistLevel,
    /// `measurements.…`, `left.measurements.…`, `right.measurements.…`
    Measurement(Side, Measurement),
    /// `trousers.block`
    Block,
    /// `trousers.fit`
    Fit,
    /// `trousers.set`
    Set,
    /// `trousers.cloth_stretch`
    ClothStretch,
    /// `trousers.inseam_stretch`
    InseamStretch,
    /// `trousers.ease.…`
    Ease(EaseAt),
    /// `trousers.style.…`
    Style(Style),
    /// `trousers.allowance.…`
    Allowance(Allowance),
    /// `trousers.darts.front`, `trousers.darts.back`
    Darts(Panel),
    /// `shape.…`
    Shape(Shape),
    /// `trousers.ask.…`, with the recipe's own name
    Ask(String),
    /// `thigh.front` and its like, `left.thigh.front`, `right.thigh.front`
    Adjust(Side, adjust::Key),
}

/// What a value has to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Any line of text.
    Text,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// A length between these, in cm.
    Length(f64, f64),
    /// A plain number between these, in degrees.
    Degrees(f64, f64),
    /// A plain number between these, per cent.
    PerCent(f64, f64),
    /// A whole number from 0 up to this.
    Count(u8),
}

impl Path {
    /// The key with this dotted path.
    pub fn find(path: &str) -> Option<Self> {
        for side in [Side::Left, Side::Right] {
            if let Some(rest) = path.strip_prefix(side.key()).and_then(|rest| rest.strip_prefix('.')) {
                return Self::of_side(side, rest);
            }
        }
        Some(match path {
            "name" => Self::Name,
            "sex" => Self::Sex,
            "units" => Self::Units,
            "waist_level" => Self::WaistLevel,
            _ if path.starts_with("shape.") => {
                return Word::from_key(&path["shape.".len()..]).map(Self::Shape);
            }
            _ => match path.strip_prefix("trousers.") {
                Some(rest) => return Self::of_trousers(rest),
                None => return Self::of_side(Side::Both, path),
            },
        })
    }

    /// The key that heads a column or stands in a row: its dotted path, of which `measurements.` and `trousers.` may be
    /// left out. No two keys are then alike.
    pub fn find_short(path: &str) -> Option<Self> {
        Self::find(path).or_else(|| Self::of_trousers(path)).or_else(|| {
            let sides = [Side::Left, Side::Right].into_iter();
            let of_leg = |side: Side| Some((side, path.strip_prefix(side.key())?.strip_prefix('.')?));
            let (side, name) = sides.filter_map(of_leg).next().unwrap_or((Side::Both, path));
            Word::from_key(name).map(|measurement| Self::Measurement(side, measurement))
        })
    }

    /// The short form of a dotted path: see [`Path::find_short`].
    pub(super) fn short(path: &str) -> &str {
        ["measurements.", "trousers."].into_iter().find_map(|table| path.strip_prefix(table)).unwrap_or(path)
    }

    fn of_trousers(path: &str) -> Option<Self> {
        Some(match path.split_once('.') {
            Some(("ease", key)) => Self::Ease(Word::from_key(key)?),
            Some(("style", key)) => Self::Style(Word::from_key(key)?),
            Some(("allowance", key)) => Self::Allowance(Word::from_key(key)?),
            Some(("darts", key)) => Self::Darts(Word::from_key(key)?),
            Some(("ask", key)) => {
                let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_';
                (!key.is_empty() && key.bytes().all(plain)).then(|| Self::Ask(key.to_owned()))?
            }
            Some(_) => return None,
            None => match path {
                "block" => Self::Block,
                "fit" => Self::Fit,
                "set" => Self::Set,
                "cloth_stretch" => Self::ClothStretch,
                "inseam_stretch" => Self::InseamStretch,
                _ => return None,
            },
        })
    }

    fn of_side(side: Side, path: &str) -> Option<Self> {
        match path.strip_prefix("measurements.") {
            Some(key) => Word::from_key(key).map(|measurement| Self::Measurement(side, measurement)),
            None => Word::from_key(path).map(|key| Self::Adjust(side, key)),
        }
    }

    /// What its value has to be. Ranges are wide: only what cannot be meant is refused.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Name | Self::Block => Kind::Text,
            Self::Sex => Kind::OneOf(Sex::KEYS),
            Self::Units => Kind::OneOf(Unit::KEYS),
            Self::WaistLevel => Kind::OneOf(WaistLevel::KEYS),
            Self::Fit => Kind::OneOf(FitKind::KEYS),
            Self::Set => Kind::OneOf(SeatSet::KEYS),
            Self::Shape(_) => Kind::OneOf(HowMuch::KEYS),
            // the body's own table judges measurements, with words about units
            Self::Measurement(..) => Kind::Length(f64::MIN, f64::MAX),
            Self::ClothStretch => Kind::PerCent(0.0, 100.0),
            Self::InseamStretch => Kind::Length(0.0, 0.9),
            Self::Ease(_) => Kind::Length(-30.0, 60.0),
            Self::Style(Style::KneeWidth | Style::HemWidth) => Kind::Length(8.0, 80.0),
            Self::Style(Style::Length) => Kind::Length(-15.0, 90.0),
            Self::Style(Style::WaistDrop) => Kind::Length(0.0, 20.0),
            Self::Allowance(_) => Kind::Length(0.0, 15.0),
            Self::Darts(_) => Kind::Count(2),
            Self::Ask(_) => Kind::Length(-200.0, 200.0),
            // the fit knows how far one may go on this body, and says so
            Self::Adjust(_, key) => match key.about().unit {
                Measure::Cm => Kind::Length(-100.0, 100.0),
                Measure::Degrees => Kind::Degrees(-90.0, 90.0),
            },
        }
    }

    /// The names that may follow after `table` (empty for the top of the file).
    pub fn names_in(table: &str) -> Vec<&'static str> {
        let (of_leg, table) = match table.split_once('.') {
            _ if matches!(table, "left" | "right") => (true, ""),
            Some(("left" | "right", rest)) => (true, rest),
            _ => (false, table),
        };
        match table {
            "" if of_leg => ["measurements"].into_iter().chain(Self::regions()).collect(),
            "" => [
                "name",
                "sex",
                "units",
                "waist_level",
                "measurements",
                "trousers",
                "shape",
                "left",
                "right",
                "fitting",
            ]
            .into_iter()
            .chain(Self::regions())
            .collect(),
            "measurements" => {
                Measurement::ALL.iter().filter(|m| !of_leg || m.about().of_a_leg).map(|m| m.key()).collect()
            }
            "trousers" => [
                "block",
                "fit",
                "set",
                "cloth_stretch",
                "inseam_stretch",
                "ease",
                "style",
                "allowance",
                "darts",
                "ask",
            ]
            .into(),
            "shape" => Shape::KEYS.to_vec(),
            "trousers.ease" => EaseAt::KEYS.to_vec(),
            "trousers.style" => Style::KEYS.to_vec(),
            "trousers.allowance" => Allowance::KEYS.to_vec(),
            "trousers.darts" => Panel::KEYS.to_vec(),
            region => adjust::Key::KEYS
                .iter()
                .copied()
                .filter_map(|key| key.split_once('.').filter(|(of, _)| *of == region).map(|(_, name)| name))
                .collect(),
        }
    }

    /// The fit parameters of the region that `table` is, for whoever missed one.
    pub(super) fn of_region(table: &str) -> Option<String> {
        let region = table.strip_prefix("left.").or_else(|| table.strip_prefix("right.")).unwrap_or(table);
        Self::regions().contains(&region).then(|| {
            let names: Vec<String> =
                Self::names_in(region).iter().map(|name| format!("`{region}.{name}`")).collect();
            format!("the fit parameters of this region: {}; `{}` shows each", names.join(", "), adjust::PAGE)
        })
    }

    /// The regions of the fit parameters, each a table of the file.
    fn regions() -> Vec<&'static str> {
        let mut regions: Vec<&str> = adjust::Key::ALL.iter().map(|key| key.about().region).collect();
        regions.dedup();
        regions
    }

    /// Every path of the file, but for the free names of `trousers.ask`.
    pub fn all() -> impl Iterator<Item = String> {
        [
            "",
            "measurements",
            "shape",
            "trousers",
            "trousers.ease",
            "trousers.style",
            "trousers.allowance",
            "trousers.darts",
        ]
        .into_iter()
        .chain(Self::regions())
        .flat_map(|table| {
            Self::names_in(table)
                .into_iter()
                .map(move |name| if table.is_empty() { name.to_owned() } else { format!("{table}.{name}") })
        })
        .filter(|path| Self::find(path).is_some())
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn short_form_of_every_key_the_same_key() {
        let mut short_forms = BTreeSet::new();
        for path in Path::all() {
            let short = Path::short(&path);
            assert_eq!(Path::find_short(short), Path::find(&path), "{short}");
            assert_eq!(Path::find_short(&path), Path::find(&path), "{path}");
            assert!(short_forms.insert(short.to_owned()), "{short}");
        }
    }

    #[test]
    fn short_form_of_a_measurement_of_one_leg() {
        let of_left = Path::Measurement(Side::Left, Measurement::ThighGirth);
        assert_eq!(Path::find_short("left.thigh_girth"), Some(of_left.clone()));
        assert_eq!(Path::find_short("left.measurements.thigh_girth"), Some(of_left));
    }
}
