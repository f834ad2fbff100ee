//! By how much a cause is changed: as pinned on the body, as measured, else by the ordinary step; and what to measure first.

use super::{
    evidence::{Evidence, Number},
    knowledge::{Cause, CrotchPart, Kind, Lack, Setting, Target},
    rank::{Ranked, Ranking},
    sign::Degree,
};
use crate::{
    adjust::{Key, Measure},
    body::Origin,
    fit::{Leg, opening_for_arc},
    terms::{Level, Measurement, Style},
    unit::Unit,
};

/// Where an amount is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Amount {
    /// Pinned on the body.
    Pinned,
    /// Measured against the draft.
    Measured,
    /// The ordinary step of one fitting; half of it for a slight sign, half as much again for a strong one.
    Step(Option<Degree>),
    /// The value before a change that made it worse.
    Undone,
}

/// An amount with what it would have been.
#[derive(Clone, Copy, Debug)]
pub(super) struct Given {
    pub(super) by: f64,
    pub(super) amount: Amount,
    /// What was pinned or measured, where no more than `by` of it is given, and why.
    pub(super) of: Option<(f64, &'static str)>,
}

/// A slight sign is given this part of the ordinary step (common practice, no source).
const SLIGHT: f64 = 0.5;
/// A strong one is given so much of it: still less than two fittings' worth.
const STRONG: f64 = 1.5;
/// What a tape or a pin asks for is given in two fittings where it is more than so many steps.
const STEPS_AT_ONCE: f64 = 2.0;

/// A fold that was pinned or a gap that was measured on the body, cm.
pub type Pinned = Option<f64>;

/// By how much, and where that is from.
pub(super) fn amount(
    cause: &Cause,
    setting: &Setting,
    next: &Ranked,
    leg: &Leg,
    pinned: Pinned,
    degree: Option<Degree>,
) -> Given {
    let most = STEPS_AT_ONCE * setting.step;
    if let Some(pinned) = pinned {
        let by = match setting.target {
            Target::Adjust(key) if key.about().unit == Measure::Degrees => {
                // what is pinned at the waist, over the height of the waist above the hip line
                let levels = &leg.draft.shape.levels;
                (pinned / (levels[Level::Hip] - levels[Level::Waist])).atan().to_degrees()
            }
            _ => pinned * setting.pinned,
        };
        let too_much = cause.kind == Kind::Curve && by > most;
        return Given {
            by: if too_much { most } else { by },
            amount: Amount::Pinned,
            of: too_much.then_some((by, "cloth that is cut away from a curve cannot be put back")),
        };
    }
    match measured(cause, setting, next, leg) {
        Some(by) if by > 0.25 * setting.step => Given {
            by: by.min(most),
            amount: Amount::Measured,
            of: (by > most).then_some((by, "the rest after the next toile")),
        },
        _ => {
            let part = match degree {
                Some(Degree::Slight) => SLIGHT,
                Some(Degree::Strong) => STRONG,
                None => 1.0,
            };
            Given { by: part * setting.step, amount: Amount::Step(degree), of: None }
        }
    }
}

/// What the measurements say is missing.
fn measured(cause: &Cause, setting: &Setting, next: &Ranked, leg: &Leg) -> Option<f64> {
    if cause.numbers == Some(Lack::FrontThigh) && setting.target == Target::Adjust(Key::ThighFront) {
        let draft = &leg.draft;
        return Some(opening_for_arc(&draft.plan, &draft.body)? - draft.parameters[Key::ThighFront]);
    }
    next.numbers.iter().find_map(|Evidence { number, .. }| match *number {
        Number::Ease { ease, least, from: Origin::Measured | Origin::Derived, .. } if setting.more => {
            let girth = least - ease;
            let share = match setting.target {
                Target::Style(_) => 0.5,
                Target::Adjust(Key::ThighInner | Key::ThighOuter) if cause.change.len() > 1 => 0.25,
                Target::Adjust(Key::ThighInner | Key::ThighOuter) => 0.5,
                _ => 1.0,
            };
            Some(share * girth)
        }
        _ => None,
    })
}

/// Measurements without which the change is a guess, and why.
pub(super) fn measure(
    cause: &Cause,
    next: &Ranked,
    ranking: &Ranking,
    leg: &Leg,
) -> Vec<(Measurement, String)> {
    let body = &leg.draft.body;
    let taken = |measurement| body.value(measurement).is_some_and(|value| value.from == Origin::Measured);
    let mut wanted = contradicted(ranking);
    match cause.numbers {
        Some(Lack::ShortGirth(level) | Lack::ShortLocally(level) | Lack::SurplusGirth(level)) => {
            let unknown = |girth: &Measurement| !taken(*girth) && !wanted.iter().any(|(of, _)| of == girth);
            if let Some(girth) = level.girth().filter(unknown) {
                wanted.push((girth, "the draft estimates it".to_owned()));
            }
        }
        Some(Lack::Crotch { part, .. }) => {
            if !taken(Measurement::TotalCrotchLength) {
                wanted.push((Measurement::TotalCrotchLength, "the draft estimates it".to_owned()));
            } else if next.numbers.iter().any(
                |it| matches!(it.number, Number::Crotch { ease, wanted, .. } if (ease - wanted).abs() < 0.5),
            ) {
                wanted.push((
                    Measurement::TotalCrotchLength,
                    "the draft meets it as measured; if the toile is right, the tape was not: take it again"
                        .to_owned(),
                ));
            }
            if part != CrotchPart::Total && !taken(Measurement::FrontCrotchLength) {
                wanted.push((Measurement::FrontCrotchLength, "it tells which piece is short".to_owned()));
            }
        }
        Some(Lack::FrontThigh) if !taken(Measurement::FrontThighArc) => {
            wanted.push((Measurement::FrontThighArc, "it says how much".to_owned()));
        }
        _ => {}
    }
    wanted
}

/// Girths that the tape gives ease enough, where the toile clearly says tight.
fn contradicted(ranking: &Ranking) -> Vec<(Measurement, String)> {
    /// The share that the signs alone give to causes of one level, from which on they say it clearly.
    const CLEARLY: f64 = 0.3;
    let mut said: Vec<(Measurement, f64)> = Vec::new();
    for it in &ranking.causes {
        for Evidence { weight, number } in &it.numbers {
            let Number::Ease { level, from: Origin::Measured, .. } = number else { continue };
            if let Some(girth) = level.girth().filter(|_| *weight < -0.5) {
                match said.iter_mut().find(|(of, _)| *of == girth) {
                    Some((_, share)) => *share += it.by_signs,
                    None => said.push((girth, it.by_signs)),
                }
            }
        }
    }
    let clearly = said.into_iter().filter(|(_, share)| *share >= CLEARLY);
    clearly
        .map(|(girth, _)| (girth, "toile and tape contradict each other: take it again".to_owned()))
        .collect()
}

/// The value that a key has in the draft.
pub(super) fn value_of(target: Target, leg: &Leg) -> f64 {
    let draft = &leg.draft;
    match target {
        Target::Adjust(key) => draft.parameters[key],
        Target::Ease(at) => draft.plan.inputs.ease[at],
        Target::Style(Style::Length) => draft.plan.inputs.style[Style::Length].unwrap_or_default(),
        Target::Style(style) => {
            let level = if style == Style::KneeWidth { Level::Knee } else { Level::Hem };
            let row = leg.report.levels.iter().find(|row| row.level == level);
            draft.plan.inputs.style[style].or(row.map(|row| 0.5 * row.pattern)).unwrap_or_default()
        }
    }
}

/// The nearest value that a ruler or a protractor shows.
pub(super) fn on_grid(target: Target, value: f64, unit: Unit) -> f64 {
    let grid = match (target, unit) {
        (Target::Adjust(key), _) if key.about().unit == Measure::Degrees => 0.1,
        (_, Unit::Cm) => 0.05,
        (_, Unit::Inch) => Unit::Inch.to_cm(1.0 / 16.0),
    };
    (value / grid).round() * grid + 0.0
}

/// A parameter stays within its usual range, or where it is beyond that already.
pub(super) fn within(target: Target, from: f64, to: f64) -> f64 {
    let Target::Adjust(key) = target else { return to };
    let about = key.about();
    let (least, most) = about.usual;
    to.clamp(least.min(about.default).min(from), most.max(from))
}
