//! Measured fit: the smallest departure from the recipe with which the draft meets what was measured.
//!
//! Bounded, damped least squares. Every unknown pulls back to 0 with the spread that fitters give it; the targets pull
//! with the tape's. It begins at 0, always ends, and gives the same answer on every run. What is only estimated is
//! never chased.

use nalgebra::{SMatrix, SVector};

use crate::{
    adjust::{Key, Parameters},
    body::{Body, Origin},
    draft::{Plan, Shape, shape},
    terms::{EaseAt, Level, Measurement, Sex, WaistLevel},
};

use super::front_thigh::front_width_wanted;

/// The unknowns with the spread that a fitter gives each: cm, and degrees for the angle (design of this project).
const UNKNOWNS: [(Key, f64); COUNT] = [
    (Key::SeatLength, 0.8),
    (Key::CrotchBackExtension, 0.7),
    (Key::SeatAngle, 1.5),
    (Key::SeatScoop, 0.5),
    (Key::CrotchDepth, 0.5),
    (Key::CrotchFrontExtension, 0.5),
    (Key::CrotchFrontScoop, 0.3),
    (Key::ThighInner, 0.5),
    (Key::ThighOuter, 0.5),
    (Key::ThighFront, 0.8),
    (Key::ThighBackTake, 0.4),
];
const COUNT: usize = 11;
const TARGETS: usize = 4;

/// How closely the total crotch length is met, cm: exactly, as far as cloth is concerned. What the tape may have
/// missed is reported, not left in the cloth.
const TOTAL: f64 = 0.05;
/// How closely the split of the crotch length and the front arc are met beyond what is not asked, cm.
const SPLIT: f64 = 0.25;
const ARC: f64 = 0.3;
/// How closely the least thigh ease is kept, cm.
const THIGH: f64 = 0.1;
/// A difference up to this in split and arc is not asked for: the tape does not know it, cm.
const NOT_ASKED: f64 = 1.0;
/// Over this the corners of limits are rounded, cm.
const ROUNDING: f64 = 0.1;

/// What was solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// All parameters: those given, and those found.
    pub parameters: Parameters,
    /// Those found, in the order of the table, with whether each stands at the end of its usual range.
    pub found: Vec<(Key, f64, bool)>,
    /// How many drafts it took.
    pub drafts: usize,
}

/// Whether something was measured that a fit can meet.
pub fn can_be_met(body: &Body) -> bool {
    [Measurement::TotalCrotchLength, Measurement::ThighGirth, Measurement::FrontThighArc]
        .iter()
        .any(|measurement| measured(body, *measurement).is_some())
}

fn measured(body: &Body, measurement: Measurement) -> Option<f64> {
    body.value(measurement).filter(|value| value.from != Origin::Estimated).map(|value| value.cm)
}

/// The mean share of the back in people's crotch lengths: 1988 US Army Anthropometric Survey. The tape is divided at the
/// body's lowest point, which does not lie where the inseam lies; so only a person's difference from it counts.
fn mean_back_share(sex: Sex, level: WaistLevel) -> Option<f64> {
    let (natural, navel, iso) = match sex {
        Sex::Female => (0.512, 0.503, 0.54),
        Sex::Male => (0.506, 0.494, 0.44),
        Sex::Unsaid => (0.509, 0.4985, 0.49),
    };
    match level {
        WaistLevel::Natural => Some(natural),
        WaistLevel::Navel => Some(navel),
        WaistLevel::Iso => Some(natural + iso * (navel - natural)),
        WaistLevel::Worn => None,
    }
}

/// What the draft shall meet; `None` for what was not measured.
struct Targets<'a> {
    plan: &'a Plan,
    body: &'a Body,
    total: Option<f64>,
    back: Option<f64>,
    thigh: Option<f64>,
    arc: bool,
}

fn crotch(shape: &Shape) -> (f64, f64) {
    (shape.front.crotch_seam.length(), shape.back.crotch_seam.length())
}

fn thigh(shape: &Shape) -> Option<f64> {
    let level = shape.levels[Level::Thigh];
    Some(shape.front.chord(level)? + shape.back.chord(level)?)
}

/// `x` where it is positive, 0 where it is negative, rounded between.
fn above(x: f64) -> f64 {
    0.5 * (x + x.hypot(ROUNDING))
}

/// What of a difference lies beyond what is not asked for.
fn beyond(difference: f64) -> f64 {
    above(difference - NOT_ASKED) - above(-difference - NOT_ASKED)
}

impl<'a> Targets<'a> {
    fn new(plan: &'a Plan, body: &'a Body, given: &Parameters) -> Self {
        let plain = shape(plan, &Parameters::default());
        let (front, back) = crotch(&plain);
        let ease = |at: EaseAt| plan.inputs.ease[at as usize];
        let total =
            measured(body, Measurement::TotalCrotchLength).map(|body| body + ease(EaseAt::CrotchLength));
        let share = || {
            let back = measured(body, Measurement::BackCrotchLength)?;
            let whole = measured(body, Measurement::TotalCrotchLength)?;
            Some(back / whole - mean_back_share(body.sex, body.waist_level)?)
        };
        let wanted_back =
            total.zip(share()).map(|(total, differs)| total * (back / (front + back) + differs));
        Self {
            plan,
            body,
            total,
            back: wanted_back,
            thigh: least_thigh(plan, body, given),
            arc: measured(body, Measurement::FrontThighArc).is_some(),
        }
    }

    /// How far a shape is from each target, in spreads.
    fn misses(&self, shape: &Shape) -> SVector<f64, TARGETS> {
        let (front, back) = crotch(shape);
        let total = self.total.map_or(0.0, |total| (front + back - total) / TOTAL);
        let split = self.back.map_or(0.0, |wanted| beyond(back - wanted) / SPLIT);
        let thigh = self.thigh.zip(thigh(shape)).map_or(0.0, |(least, has)| above(least - has) / THIGH);
        let arc = match (self.arc, front_width_wanted(self.plan, shape, self.body)) {
            (true, Some(wanted)) => {
                let has = shape.front.chord(shape.levels[Level::Thigh]).unwrap_or(wanted);
                beyond(wanted - has) / ARC
            }
            _ => 0.0,
        };
        SVector::from([total, split, thigh, arc])
    }
}

/// The least girth at the thigh that the fit must keep: the style's minimum on a measured thigh; on an estimated one
/// only what the draft has before the fit.
fn least_thigh(plan: &Plan, body: &Body, given: &Parameters) -> Option<f64> {
    let girth = body.cm(Measurement::ThighGirth)?;
    let least = girth + plan.wanted[EaseAt::Thigh as usize].0;
    if measured(body, Measurement::ThighGirth).is_some() {
        return Some(least);
    }
    Some(thigh(&shape(plan, given))?.min(least))
}

type Unknowns = SVector<f64, COUNT>;

/// Finds the parameters. `kept` are those that a person gave: they stay as they are in `given`.
pub fn solve(plan: &Plan, body: &Body, given: &Parameters, kept: impl Fn(Key) -> bool) -> Solved {
    /// Rounds of the solver; five to eight are ordinary.
    const ROUNDS: usize = 30;
    /// A step of the slope, cm or degrees.
    const STEP: f64 = 1e-4;
    /// Steps smaller than this in spreads are the end.
    const STILL: f64 = 1e-7;
    let targets = Targets::new(plan, body, given);
    let free: [bool; COUNT] = std::array::from_fn(|index| {
        let key = UNKNOWNS[index].0;
        let of_the_arc = matches!(key, Key::ThighFront | Key::ThighBackTake);
        !kept(key) && (!of_the_arc || targets.arc)
    });
    let spread = Unknowns::from_fn(|index, _| UNKNOWNS[index].1);
    let bound = |index: usize| {
        let (least, most) = UNKNOWNS[index].0.about().usual;
        (least.min(0.0), most)
    };
    let set = |x: &Unknowns| {
        (0..COUNT)
            .filter(|index| free[*index])
            .fold(*given, |all, index| all.with(UNKNOWNS[index].0, x[index]))
    };
    let mut drafts = 0;
    let mut misses = |x: &Unknowns| {
        drafts += 1;
        targets.misses(&shape(plan, &set(x)))
    };
    let cost = |x: &Unknowns, missed: &SVector<f64, TARGETS>| {
        x.component_div(&spread).norm_squared() + missed.norm_squared()
    };

    let mut x = Unknowns::zeros();
    let mut missed = misses(&x);
    let mut damping = 1e-4;
    for _ in 0..ROUNDS {
        let mut slope = SMatrix::<f64, TARGETS, COUNT>::zeros();
        for index in (0..COUNT).filter(|index| free[*index]) {
            let mut moved = x;
            // The slope is taken inwards at a bound.
            let step = if x[index] + STEP > bound(index).1 { -STEP } else { STEP };
            moved[index] += step;
            slope.set_column(index, &((misses(&moved) - missed) / step));
        }
        let pull = x.component_div(&spread).component_div(&spread);
        let gradient = pull + slope.transpose() * missed;
        let held: [bool; COUNT] = std::array::from_fn(|index| {
            let (least, most) = bound(index);
            !free[index]
                || (x[index] <= least && gradient[index] > 0.0)
                || (x[index] >= most && gradient[index] < 0.0)
        });
        let mut normal = slope.transpose() * slope;
        let mut right = -gradient;
        for index in 0..COUNT {
            normal[(index, index)] += spread[index].powi(-2);
            if held[index] {
                normal.fill_row(index, 0.0);
                normal.fill_column(index, 0.0);
                normal[(index, index)] = 1.0;
                right[index] = 0.0;
            }
        }
        let before = cost(&x, &missed);
        let mut moved_by = 0.0;
        while damping < 1e8 {
            let mut damped = normal;
            for index in 0..COUNT {
                damped[(index, index)] *= 1.0 + damping;
            }
            // Positive on its diagonal by the spreads, so that this can only fail on numbers that are none.
            let Some(factors) = damped.cholesky() else { break };
            let wanted = x + factors.solve(&right);
            let next = Unknowns::from_fn(|index, _| {
                let (least, most) = bound(index);
                wanted[index].clamp(least, most)
            });
            let next_missed = misses(&next);
            if cost(&next, &next_missed) < before {
                moved_by = (next - x).component_div(&spread).amax();
                (x, missed) = (next, next_missed);
                damping = (damping * 0.2).max(1e-9);
                break;
            }
            damping *= 5.0;
        }
        if moved_by < STILL {
            break;
        }
    }
    let parameters = set(&x);
    let found = (0..COUNT)
        .filter(|index| free[*index])
        .map(|index| {
            let (least, most) = bound(index);
            (UNKNOWNS[index].0, x[index], x[index] <= least + 1e-9 || x[index] >= most - 1e-9)
        })
        .collect();
    Solved { parameters, found, drafts }
}
