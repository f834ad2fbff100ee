//! What cannot be a body, or is a slip of units. Everything else is drafted, however unusual.

use super::Given;
use crate::mistake::Mistake;
use crate::terms::{Measurement, WaistLevel, Word};

/// A reason to refuse a body, with the measurement at which a person has to look.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Where to look; `None` when something is missing altogether.
    pub at: Option<Measurement>,
    /// What is wrong: lower case, no full stop.
    pub title: String,
    /// What to do.
    pub help: String,
}

impl Fault {
    fn at(measurement: Measurement, title: String, help: String) -> Self {
        Self { at: Some(measurement), title, help }
    }

    fn missing(title: impl Into<String>, help: impl Into<String>) -> Self {
        Self { at: None, title: title.into(), help: help.into() }
    }
}

impl From<Fault> for Mistake {
    fn from(fault: Fault) -> Self {
        Self::new(fault.title).help(fault.help)
    }
}

/// Everything for which the body must be refused; empty for nearly every body.
pub fn faults(given: &Given) -> Vec<Fault> {
    let mut faults = Vec::new();
    for &measurement in Measurement::ALL {
        if let Some(cm) = given.cm(measurement) {
            faults.extend(beyond_range(measurement, cm));
        }
    }
    missing(given, &mut faults);
    faults
}

fn missing(given: &Given, faults: &mut Vec<Fault>) {
    use Measurement::{BodyRise, HipGirth, InsideLeg, OutsideLeg, Stature, WaistGirth, WaistToHip};
    let has = |measurement| given.cm(measurement).is_some();
    for needed in [WaistGirth, HipGirth] {
        if !has(needed) {
            faults.push(Fault::missing(format!("`{needed}` is missing"), needed.about().how));
        }
    }
    if ![InsideLeg, OutsideLeg, Stature].into_iter().any(has) {
        faults.push(Fault::missing(
            "expected one of `inside_leg`, `outside_leg`, `stature`, found none",
            InsideLeg.about().how,
        ));
    }
    if given.waist_level == WaistLevel::Worn {
        for needed in [WaistToHip, BodyRise] {
            if !has(needed) {
                faults.push(Fault::missing(
                    format!("`{needed}` is missing: for the level `worn` no survey can estimate it"),
                    needed.about().how,
                ));
            }
        }
    }
}

/// Outside the range of adults, or not a number at all; a slip of units is recognised.
fn beyond_range(measurement: Measurement, cm: f64) -> Option<Fault> {
    let (least, most) = measurement.about().range;
    if cm.is_finite() && (least..=most).contains(&cm) {
        return None;
    }
    let help = if (least..=most).contains(&(cm * 2.54)) {
        format!(
            "{cm:.1} looks like inches: set `units = \"inch\"`, or write `{measurement} = \"{cm:.1} in\"`"
        )
    } else if (least..=most).contains(&(cm / 2.54)) {
        "it looks like centimetres read as inches: set `units = \"cm\"`".to_owned()
    } else if (least..=most).contains(&(cm / 10.0)) {
        format!("{cm:.0} looks like millimetres: write {:.1}", cm / 10.0)
    } else {
        measurement.about().how.to_owned()
    };
    let title = format!("expected `{measurement}` between {least} and {most} cm, found {}", shown(cm));
    Some(Fault::at(measurement, title, help))
}

/// A number short enough for a message, whatever it is.
fn shown(cm: f64) -> String {
    if cm.abs() < 1e5 { format!("{cm:.1} cm") } else { format!("{cm:.1e} cm") }
}
