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
    #[cfg_attr(not(test), expect(dead_code, reason = "for the reader of the table, and for tests"))]
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::body::people;
    use crate::terms::Word;
    use Measurement::{
        AnkleGirth, BodyRise, CalfGirth, HeelGirth, HipGirth, InsideLeg, KneeGirth, KneeHeight, Stature,
        ThighGirth, TotalCrotchLength, WaistGirth, WaistToHip,
    };

    /// Every row, put to the average person of the 1988 survey, gives about that person's measurement.
    #[test]
    fn average_person_about_average_by_every_row() {
        for &sex in Sex::ALL {
            for level in [WaistLevel::Natural, WaistLevel::Iso, WaistLevel::Navel] {
                for row in rows(sex, level).into_iter().flatten() {
                    let mean = |m| people(sex, level, m).unwrap().0;
                    let found =
                        row.constant + row.from.iter().map(|&(m, per_cm)| per_cm * mean(m)).sum::<f64>();
                    // surveys of different years put knee and navel 2 cm apart, and the crotch length of men 3
                    let within = if row.survey == Survey::Army2012 { 3.3 } else { 0.6 };
                    let miss = found - mean(row.target);
                    assert!(miss.abs() < within, "{sex} {level} {} misses by {miss:.2}: {row:?}", row.target);
                }
            }
        }
    }

    #[test]
    fn no_row_a_worse_one_of_the_same_inputs() {
        for &sex in Sex::ALL {
            for &level in WaistLevel::ALL {
                let all: Vec<&Equation> = rows(sex, level).into_iter().flatten().collect();
                for row in &all {
                    assert!(row.sd > 0.3 && row.sd < 6.0, "{row:?}");
                    let same = all.iter().filter(|other| {
                        other.target == row.target
                            && other.from.len() == row.from.len()
                            && other.from.iter().all(|(m, _)| row.from.iter().any(|(own, _)| own == m))
                    });
                    assert!(same.count() <= 2, "{sex} {level}: {row:?}");
                }
            }
        }
    }

    /// Against the table from which the survey rows were taken; `tests/data/README.md` says whence it is.
    #[test]
    fn survey_rows_as_in_the_reference() {
        let text = include_str!("../../tests/data/estimating-equations.csv");
        let target = |name: &str| {
            Some(match name {
                "body_rise" => BodyRise,
                "waist_to_hip" => WaistToHip,
                "crotch_length" => TotalCrotchLength,
                "crotch_height" => InsideLeg,
                "knee_height" => KneeHeight,
                "thigh_girth" => ThighGirth,
                "knee_girth" => KneeGirth,
                "calf_girth" => CalfGirth,
                "ankle_girth" => AnkleGirth,
                "heel_ankle_girth" => HeelGirth,
                _ => return None,
            })
        };
        let (mut compared, mut left_out) = (0, 0);
        for line in text.lines().skip(1) {
            let fields: Vec<&str> = line.split(',').collect();
            let number = |at: usize| fields[at].parse::<f64>().unwrap();
            let (survey, level) = match (fields[0], fields[1]) {
                ("army-1988", "natural") => (Survey::Army1988, WaistLevel::Natural),
                _ => (Survey::Army2012, WaistLevel::Navel),
            };
            let sex = if fields[2] == "both" { Sex::Unsaid } else { Sex::from_key(fields[2]).unwrap() };
            let Some(target) = target(fields[3]) else { continue };
            let inputs: &[Measurement] = match fields[4] {
                "hip" => &[HipGirth],
                "stature+hip" => &[Stature, HipGirth],
                "stature+waist+hip" => &[Stature, WaistGirth, HipGirth],
                "stature+hip+crotch_height" => &[Stature, HipGirth, InsideLeg],
                "waist+hip+crotch_height" => &[WaistGirth, HipGirth, InsideLeg],
                _ => &[Stature, WaistGirth, HipGirth, InsideLeg],
            };
            let row = rows(sex, level).into_iter().flatten().find(|row| {
                row.survey == survey
                    && row.target == target
                    && row.from.len() == inputs.len()
                    && inputs.iter().all(|input| row.from.iter().any(|(m, _)| m == input))
            });
            let Some(row) = row else {
                left_out += 1;
                continue;
            };
            assert!((row.constant - number(8)).abs() < 1e-4 && (row.sd - number(14)).abs() < 1e-3, "{line}");
            for (m, per_cm) in row.from {
                let column = match m {
                    Stature => 9,
                    WaistGirth => 10,
                    HipGirth => 11,
                    _ => 12,
                };
                assert!((per_cm - number(column)).abs() < 1e-4, "{line}");
            }
            compared += 1;
        }
        println!("{compared} rows as in the reference; {left_out} left out, where fewer inputs do as well");
        assert!(compared > 200);
    }
}
