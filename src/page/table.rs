//! The words and ranges of parameters, measurements and blocks for the sheet, from the tables that everything reads.

use serde::Serialize;

use crate::{
    adjust::{Key, OneLeg},
    paper::pens_as_css,
    recipe,
    terms::{FitKind, Measurement, SeatSet, Word},
    told::CAUTIONS,
    unit::Unit,
    voice::rule_of_thumb,
};

#[derive(Serialize)]
struct Words {
    version: &'static str,
    parameters: Vec<Parameter>,
    measurements: Vec<MeasurementOut>,
    blocks: Vec<Block>,
    fits: &'static [&'static str],
    sets: &'static [&'static str],
    cautions: &'static [&'static str],
    files: Vec<(&'static str, &'static str)>,
}

#[derive(Serialize)]
struct Parameter {
    key: &'static str,
    title: &'static str,
    region: &'static str,
    unit: &'static str,
    usual: (f64, f64),
    hard: (f64, f64),
    /// The usual range in words.
    range: InUnits,
    default: f64,
    purpose: &'static str,
    moves: InUnits,
    stays: InUnits,
    hand_method: InUnits,
    one_leg: &'static str,
}

/// A text for a file in either unit.
#[derive(Serialize)]
struct InUnits {
    cm: String,
    inch: String,
}

impl InUnits {
    fn of(said: impl Fn(Unit) -> String) -> Self {
        Self { cm: said(Unit::Cm), inch: said(Unit::Inch) }
    }

    fn told(words: &str) -> Self {
        Self::of(|unit| rule_of_thumb(words, unit).into_owned())
    }
}

#[derive(Serialize)]
struct MeasurementOut {
    key: &'static str,
    name: &'static str,
    how: InUnits,
    of_a_leg: bool,
}

#[derive(Serialize)]
struct Block {
    key: &'static str,
    title: String,
}

/// Everything of the tables, as JSON.
pub(super) fn words() -> String {
    let parameters = Key::ALL.iter().map(|key| key.about()).map(|about| Parameter {
        key: about.key.key(),
        title: about.title,
        region: about.region,
        unit: about.unit.symbol(),
        usual: about.usual,
        hard: about.hard,
        default: about.default,
        purpose: about.purpose,
        range: InUnits::of(|unit| about.unit.range(about.usual).in_unit(unit)),
        moves: InUnits::told(about.moves),
        stays: InUnits::told(about.stays),
        hand_method: InUnits::told(about.hand_method),
        one_leg: match about.one_leg {
            OneLeg::Free | OneLeg::WithCare => "may",
            OneLeg::Never => "never",
            OneLeg::Only => "only",
        },
    });
    let measurements = Measurement::ALL.iter().map(|it| {
        let about = it.about();
        MeasurementOut {
            key: it.key(),
            name: about.title,
            how: InUnits::told(about.how),
            of_a_leg: about.of_a_leg,
        }
    });
    let block = |key| Some(Block { key, title: recipe::load(key).ok()?.title.clone() });
    let words = Words {
        version: env!("CARGO_PKG_VERSION"),
        parameters: parameters.collect(),
        measurements: measurements.collect(),
        blocks: recipe::shipped_names().filter_map(block).collect(),
        fits: FitKind::KEYS,
        sets: SeatSet::KEYS,
        cautions: &CAUTIONS,
        files: super::sheet::FILES.iter().map(|file| (file.0, file.1)).collect(),
    };
    // Cannot fail: every key is a string and every number is finite.
    serde_json::to_string(&words).unwrap_or_default()
}

/// The line language as a style sheet.
pub(super) fn pens() -> String {
    pens_as_css()
}
