//! Every key that a measurement file may hold, as a dotted path, with what kind of value it takes.

use crate::adjust::{self, Measure};
use crate::terms::{Allowance, EaseAt, FitKind, Measurement, SeatSet, Sex, Side, Style, WaistLevel, Word};
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
            "trousers.block" => Self::Block,
            "trousers.fit" => Self::Fit,
            "trousers.set" => Self::Set,
            "trousers.cloth_stretch" => Self::ClothStretch,
            "trousers.inseam_stretch" => Self::InseamStretch,
            _ => {
                if let Some(key) = path.strip_prefix("trousers.ease.") {
                    Self::Ease(Word::from_key(key)?)
                } else if let Some(key) = path.strip_prefix("trousers.style.") {
                    Self::Style(Word::from_key(key)?)
                } else if let Some(key) = path.strip_prefix("trousers.allowance.") {
                    Self::Allowance(Word::from_key(key)?)
                } else if let Some(key) = path.strip_prefix("trousers.ask.") {
                    let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_';
                    (!key.is_empty() && key.bytes().all(plain)).then(|| Self::Ask(key.to_owned()))?
                } else {
                    return Self::of_side(Side::Both, path);
                }
            }
        })
    }

    /// The key with this dotted path, or with this short one: a measurement may leave out its table, as the columns of a
    /// table of many people do.
    pub fn find_short(path: &str) -> Option<Self> {
        Self::find(path).or_else(|| match path.split_once('.') {
            Some((leg @ ("left" | "right"), name)) => Self::find(&format!("{leg}.measurements.{name}")),
            Some(_) => None,
            None => Word::from_key(path).map(|measurement| Self::Measurement(Side::Both, measurement)),
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
            // the body's own table judges measurements, with words about units
            Self::Measurement(..) => Kind::Length(f64::MIN, f64::MAX),
            Self::ClothStretch => Kind::PerCent(0.0, 100.0),
            Self::InseamStretch => Kind::Length(0.0, 0.9),
            Self::Ease(_) => Kind::Length(-30.0, 60.0),
            Self::Style(Style::KneeWidth | Style::HemWidth) => Kind::Length(8.0, 80.0),
            Self::Style(Style::Length) => Kind::Length(-15.0, 90.0),
            Self::Style(Style::WaistDrop) => Kind::Length(-5.0, 20.0),
            Self::Allowance(_) => Kind::Length(0.0, 15.0),
            Self::Ask(_) => Kind::Length(-200.0, 200.0),
            Self::Adjust(_, key) => {
                let about = key.about();
                match about.unit {
                    Measure::Cm => Kind::Length(about.hard.0, about.hard.1),
                    Measure::Degrees => Kind::Degrees(about.hard.0, about.hard.1),
                }
            }
        }
    }

    /// The names that may follow after `table` (empty for the top of the file).
    pub fn names_in(table: &str) -> Vec<&'static str> {
        let (of_leg, table) = match table.split_once('.') {
            _ if matches!(table, "left" | "right") => (true, ""),
            Some(("left" | "right", rest)) => (true, rest),
            _ => (false, table),
        };
        let regions = || {
            let mut regions: Vec<&str> =
                adjust::Key::KEYS.iter().copied().filter_map(|key| key.split('.').next()).collect();
            regions.dedup();
            regions
        };
        match table {
            "" if of_leg => ["measurements"].into_iter().chain(regions()).collect(),
            "" => [
                "name",
                "sex",
                "units",
                "waist_level",
                "measurements",
                "trousers",
                "left",
                "right",
                "fitting",
            ]
            .into_iter()
            .chain(regions())
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
                "ask",
            ]
            .into(),
            "trousers.ease" => EaseAt::KEYS.to_vec(),
            "trousers.style" => Style::KEYS.to_vec(),
            "trousers.allowance" => Allowance::KEYS.to_vec(),
            region => adjust::Key::KEYS
                .iter()
                .copied()
                .filter_map(|key| key.split_once('.').filter(|(of, _)| *of == region).map(|(_, name)| name))
                .collect(),
        }
    }

    /// Every path of the file, but for the free names of `trousers.ask`.
    pub fn all() -> impl Iterator<Item = String> {
        ["", "measurements", "trousers", "trousers.ease", "trousers.style", "trousers.allowance"]
            .into_iter()
            .chain(adjust::Key::ALL.iter().map(|key| key.about().region))
            .flat_map(|table| {
                Self::names_in(table).into_iter().map(move |name| {
                    if table.is_empty() { name.to_owned() } else { format!("{table}.{name}") }
                })
            })
            .filter(|path| Self::find(path).is_some())
    }
}
