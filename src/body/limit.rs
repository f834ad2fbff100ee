//! What cannot be a body, or is a slip of units. Everything else is drafted, however unusual.

use super::Given;
use crate::mistake::Mistake;
use crate::terms::{Measurement, WaistLevel, Word};
use crate::unit::Unit;
use crate::voice::{Sentence, length, lengths, named};

/// A reason to refuse a body, with the measurement at which a person has to look.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Where to look; `None` when something is missing altogether.
    pub at: Option<Measurement>,
    /// What is wrong: lower case, no full stop.
    pub title: Sentence,
    /// What to do.
    pub help: Sentence,
}

impl Fault {
    fn at(measurement: Measurement, title: Sentence, help: impl Into<Sentence>) -> Self {
        Self { at: Some(measurement), title, help: help.into() }
    }

    fn missing(title: impl Into<Sentence>, help: &'static str) -> Self {
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
            faults.extend(beyond_range(measurement, cm, given.units));
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
                Sentence::new(
                    "`{part}` {of_part} and `{whole}` {of_whole} are not of one body: expected {wanted} for `{part}`",
                )
                .with("part", part)
                .with("of_part", length(of_part))
                .with("whole", whole)
                .with("of_whole", length(of_whole))
                .with("wanted", lengths((least * of_whole, most * of_whole))),
                Sentence::new("take both again. {how}").with("how", Sentence::new(part.about().how)),
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
            title: Sentence::new(
                "a total crotch length of {crotch} is too short for a body rise of {rise}: expected at least {least}",
            )
            .with("crotch", length(crotch))
            .with("rise", length(rise))
            .with("least", length(2.0 * rise + LEAST_FORK)),
            help: "take both again from the same waist elastic: it goes down the front and up the back".into(),
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
                Sentence::new("`{whole}` {all} is not `{one}` {a} and `{other}` {b} together, {sum}")
                    .with("whole", whole)
                    .with("all", length(all))
                    .with("one", one)
                    .with("a", length(a))
                    .with("other", other)
                    .with("b", length(b))
                    .with("sum", length(a + b)),
                "leave out the one you trust least: it follows from the other two",
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
    let range = follows.about().range;
    (!(range.0..=range.1).contains(&cm)).then(|| {
        Fault::at(
            from,
            Sentence::new(
                "`{from}` and `{and}` are not of one body: `{follows}` would be {cm}, expected {range}",
            )
            .with("from", from)
            .with("and", and)
            .with("follows", follows)
            .with("cm", length(cm))
            .with("range", lengths(range)),
            "take both again, from the same waist elastic and the same floor",
        )
    })
}

fn missing(given: &Given, faults: &mut Vec<Fault>) {
    use Measurement::{BodyRise, HipGirth, InsideLeg, OutsideLeg, Stature, WaistGirth, WaistToHip};
    let has = |measurement| given.cm(measurement).is_some();
    for needed in [WaistGirth, HipGirth] {
        if !has(needed) {
            let title = Sentence::new("`{needed}` is missing").with("needed", needed);
            faults.push(Fault::missing(title, needed.about().how));
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
                let title =
                    Sentence::new("`{needed}` is missing: for the level `worn` no survey can estimate it")
                        .with("needed", needed);
                faults.push(Fault::missing(title, needed.about().how));
            }
        }
    }
}

/// Outside the range of adults, or not a number at all; a slip of units is recognised by the number as it was written.
fn beyond_range(measurement: Measurement, cm: f64, units: Unit) -> Option<Fault> {
    let range = measurement.about().range;
    let holds = |cm: f64| (range.0..=range.1).contains(&cm);
    if cm.is_finite() && holds(cm) {
        return None;
    }
    let typed = units.from_cm(cm);
    let other = match units {
        Unit::Cm => Unit::Inch,
        Unit::Inch => Unit::Cm,
    };
    let slip = |words: &'static str| Sentence::new(words).with("typed", named(units.write(cm)));
    let help = if holds(other.to_cm(typed)) {
        slip("{typed} looks like {other}: set `units = \"{unit}\"`, or write `{measurement} = \"{typed} {tag}\"`")
            .with("other", if other == Unit::Cm { "centimetres" } else { "inches" })
            .with("unit", other)
            .with("measurement", measurement)
            .with("tag", other.tag())
    } else if holds(typed / 10.0) {
        slip("{typed} looks like millimetres: write `{measurement} = \"{right}\"`")
            .with("measurement", measurement)
            .with("right", length(typed / 10.0))
    } else {
        Sentence::new(measurement.about().how)
    };
    let title = Sentence::new("expected {range} for `{measurement}`, found {cm}")
        .with("range", lengths(range))
        .with("measurement", measurement)
        .with("cm", length(cm));
    Some(Fault::at(measurement, title, help))
}
