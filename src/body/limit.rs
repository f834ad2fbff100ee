//! What cannot be a body, or is a slip of units. Everything else is drafted, however unusual.

use super::Given;
use crate::mistake::Mistake;
use crate::terms::{Measurement, WaistLevel, Word};
use crate::unit::{CM_PER_INCH, Unit};

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
    if faults.is_empty() {
        impossible(given, &mut faults);
    }
    faults
}

/// Two measurements that no one has together.
///
/// The bounds are what none of 10,050 people of the surveys of 1988 and 2012 and of 507 civilians shows, with a twentieth
/// to spare: 2 of the 507 lay outside those of the two larger surveys alone, and a body is not to be refused for a ratio.
fn impossible(given: &Given, faults: &mut Vec<Fault>) {
    use Measurement::{
        AnkleGirth, BackCrotchLength, BodyRise, CalfGirth, FrontCrotchLength, HipGirth, HipHeight, InsideLeg,
        KneeGirth, KneeHeight, Stature, ThighGirth, TotalCrotchLength, WaistHeight, WaistToHip,
    };
    const SHARES: [(Measurement, Measurement, f64, f64); 5] = [
        (ThighGirth, HipGirth, 0.46, 0.73),
        (KneeGirth, ThighGirth, 0.45, 0.83),
        (AnkleGirth, CalfGirth, 0.44, 0.78),
        (InsideLeg, Stature, 0.39, 0.58),
        (KneeHeight, InsideLeg, 0.50, 0.69),
    ];
    for (part, whole, least, most) in SHARES {
        if let (Some(of_part), Some(of_whole)) = (given.cm(part), given.cm(whole))
            && !(least * of_whole..=most * of_whole).contains(&of_part)
        {
            faults.push(Fault::at(
                part,
                format!(
                    "`{part}` {of_part:.1} cm and `{whole}` {of_whole:.1} cm are not of one body: expected `{part}` \
                     between {:.1} and {:.1} cm",
                    least * of_whole,
                    most * of_whole
                ),
                format!("take both again. {}", part.about().how),
            ));
        }
    }
    let difference = |whole, part| Some(given.cm(whole)? - given.cm(part)?);
    let rise = given.cm(BodyRise).or_else(|| difference(WaistHeight, InsideLeg));
    let crotch = given
        .cm(TotalCrotchLength)
        .or_else(|| Some(given.cm(FrontCrotchLength)? + given.cm(BackCrotchLength)?));
    /// Least part of the crotch length that is not vertical, in cm; 7.6 was the least seen.
    const LEAST_FORK: f64 = 5.0;
    if let (Some(rise), Some(crotch)) = (rise, crotch)
        && crotch < 2.0 * rise + LEAST_FORK
    {
        let at = [TotalCrotchLength, BackCrotchLength].into_iter().find(|m| given.cm(*m).is_some());
        faults.push(Fault {
            at,
            title: format!(
                "a total crotch length of {crotch:.1} cm is too short for a body rise of {rise:.1} cm: expected at least \
                 {:.1} cm",
                2.0 * rise + LEAST_FORK
            ),
            help: "take both again from the same waist elastic: it goes down the front and up the back".to_owned(),
        });
    }
    /// Sum and parts may differ by this and still be three honest readings, in cm: five tape errors.
    const OPEN_SUM: f64 = 6.0;
    let sums = [
        (WaistHeight, InsideLeg, BodyRise),
        (WaistHeight, HipHeight, WaistToHip),
        (TotalCrotchLength, FrontCrotchLength, BackCrotchLength),
    ];
    for (whole, one, other) in sums {
        match (given.cm(whole), given.cm(one), given.cm(other)) {
            (Some(all), Some(a), Some(b)) if (all - a - b).abs() > OPEN_SUM => faults.push(Fault::at(
                whole,
                format!("`{whole}` {all:.1} cm is not `{one}` {a:.1} + `{other}` {b:.1} = {:.1} cm", a + b),
                "leave out the one you trust least: it follows from the other two".to_owned(),
            )),
            (Some(all), Some(a), None) => faults.extend(beyond_sum(other, all - a, whole, one)),
            (Some(all), None, Some(b)) => faults.extend(beyond_sum(one, all - b, whole, other)),
            (None, Some(a), Some(b)) => faults.extend(beyond_sum(whole, a + b, one, other)),
            _ => {}
        }
    }
}

/// A measurement that follows from two others and cannot be one.
fn beyond_sum(follows: Measurement, cm: f64, from: Measurement, and: Measurement) -> Option<Fault> {
    let (least, most) = follows.about().range;
    (!(least..=most).contains(&cm)).then(|| {
        Fault::at(
            from,
            format!(
                "`{from}` and `{and}` are not of one body: `{follows}` would be {}, expected {least} to {most} cm",
                shown(cm)
            ),
            "take both again, from the same waist elastic and the same floor".to_owned(),
        )
    })
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
    let help = if (least..=most).contains(&(cm * CM_PER_INCH)) {
        format!(
            "{cm:.1} looks like inches: set `units = \"inch\"`, or write `{measurement} = \"{cm:.1} in\"`"
        )
    } else if (least..=most).contains(&(cm / CM_PER_INCH)) {
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
    if cm.abs() < 1e5 {
        format!("{cm:.1} cm ({:.1} in)", Unit::Inch.from_cm(cm))
    } else {
        format!("{cm:.1e} cm")
    }
}
