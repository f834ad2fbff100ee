//! Estimating equations: a target is a constant and a multiple of each of a few other measurements.

mod table;

use super::Body;
use super::value::{Origin, Value};
use crate::terms::{Measurement, Sex, WaistLevel};

/// The people on whom an equation was fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Survey {
    /// 2,208 women and 1,774 men, 1988.
    Army1988,
    /// 1,986 women and 4,082 men, 2012.
    Army2012,
    /// 536 women and 449 men of those of 1988.
    People985,
}

/// One row: `target` = constant + the sum of coefficient x measurement.
#[derive(Debug)]
pub(super) struct Equation {
    target: Measurement,
    constant: f64,
    from: &'static [(Measurement, f64)],
    /// What it misses, one standard deviation in cm.
    sd: f64,
    #[expect(dead_code, reason = "tells the reader of the table where a row comes from")]
    survey: Survey,
}

/// Between which values a measurement lay among the people surveyed, in cm.
#[derive(Debug)]
pub(super) struct Reach {
    of: Measurement,
    least: f64,
    most: f64,
}

const fn eq(
    target: Measurement,
    constant: f64,
    from: &'static [(Measurement, f64)],
    sd: f64,
    survey: Survey,
) -> Equation {
    Equation { target, constant, from, sd, survey }
}

const fn reach(of: Measurement, least: f64, most: f64) -> Reach {
    Reach { of, least, most }
}

/// The rows that hold for a sex and a waist level: those about the trunk and those about the legs.
fn rows(sex: Sex, level: WaistLevel) -> [&'static [Equation]; 2] {
    use table::*;
    let leg = match (level, sex) {
        // the navel survey has leg rows of its own, in the same list as its trunk rows
        (WaistLevel::Navel, _) => &[],
        (_, Sex::Female) => LEG_FEMALE,
        (_, Sex::Male) => LEG_MALE,
        (_, Sex::Unsaid) => LEG_BOTH,
    };
    let trunk = match (level, sex) {
        (WaistLevel::Natural, Sex::Female) => NATURAL_FEMALE,
        (WaistLevel::Natural, Sex::Male) => NATURAL_MALE,
        (WaistLevel::Natural, Sex::Unsaid) => NATURAL_BOTH,
        (WaistLevel::Iso, Sex::Female) => ISO_FEMALE,
        (WaistLevel::Iso, Sex::Male) => ISO_MALE,
        (WaistLevel::Iso, Sex::Unsaid) => ISO_BOTH,
        (WaistLevel::Navel, Sex::Female) => NAVEL_FEMALE,
        (WaistLevel::Navel, Sex::Male) => NAVEL_MALE,
        (WaistLevel::Navel, Sex::Unsaid) => NAVEL_BOTH,
        (WaistLevel::Worn, Sex::Female) => WORN_FEMALE,
        (WaistLevel::Worn, Sex::Male) => WORN_MALE,
        (WaistLevel::Worn, Sex::Unsaid) => WORN_BOTH,
    };
    [trunk, leg]
}

fn reaches(sex: Sex, level: WaistLevel) -> &'static [Reach] {
    use table::*;
    match (level, sex) {
        (WaistLevel::Natural, Sex::Female) => NATURAL_FEMALE_REACH,
        (WaistLevel::Natural, Sex::Male) => NATURAL_MALE_REACH,
        (WaistLevel::Natural, Sex::Unsaid) => NATURAL_BOTH_REACH,
        (WaistLevel::Iso, Sex::Female) => ISO_FEMALE_REACH,
        (WaistLevel::Iso, Sex::Male) => ISO_MALE_REACH,
        (WaistLevel::Iso, Sex::Unsaid) => ISO_BOTH_REACH,
        (WaistLevel::Navel, Sex::Female) => NAVEL_FEMALE_REACH,
        (WaistLevel::Navel, Sex::Male) => NAVEL_MALE_REACH,
        (WaistLevel::Navel, Sex::Unsaid) => NAVEL_BOTH_REACH,
        (WaistLevel::Worn, Sex::Female) => WORN_FEMALE_REACH,
        (WaistLevel::Worn, Sex::Male) => WORN_MALE_REACH,
        (WaistLevel::Worn, Sex::Unsaid) => WORN_BOTH_REACH,
    }
}

/// The surest estimate of `target` that the known values of `body` allow, if there is any.
///
/// The spread is what the equation missed among the people on whom it was fitted; inputs that are estimates themselves
/// add theirs.
pub(super) fn estimate(body: &Body, target: Measurement) -> Option<Value> {
    let mut best: Option<(&Equation, f64)> = None;
    for row in rows(body.sex, body.waist_level).into_iter().flatten() {
        if row.target == target
            && let Some(variance) = variance(body, row)
            && best.is_none_or(|(_, least)| variance < least)
        {
            best = Some((row, variance));
        }
    }
    let (row, variance) = best?;
    let known = |measurement| body.value(measurement);
    let cm = row.from.iter().try_fold(row.constant, |sum, &(m, per_cm)| Some(sum + per_cm * known(m)?.cm))?;
    let extrapolated = row.from.iter().any(|&(m, _)| {
        known(m).is_some_and(|value| {
            value.extrapolated
                || reaches(body.sex, body.waist_level)
                    .iter()
                    .any(|reach| reach.of == m && !(reach.least..=reach.most).contains(&value.cm))
        })
    });
    Some(Value { cm, from: Origin::Estimated, sd: variance.sqrt(), extrapolated })
}

/// The variance of an estimate by `row`, or nothing while one of its inputs is unknown.
fn variance(body: &Body, row: &Equation) -> Option<f64> {
    row.from.iter().try_fold(row.sd * row.sd, |sum, &(m, per_cm)| {
        let value = body.value(m)?;
        let own = if value.from == Origin::Estimated { per_cm * value.sd } else { 0.0 };
        Some(sum + own * own)
    })
}
