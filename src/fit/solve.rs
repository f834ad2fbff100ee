//! Measured fit: the smallest departure from the recipe with which the draft meets what was measured.
//!
//! Bounded, damped least squares. Every unknown pulls back to 0 with the spread that fitters give it; the targets pull
//! with the tape's. It begins at 0, always ends, and gives the same answer on every run. What is only estimated is
//! never chased.

use nalgebra::{SMatrix, SVector};

use crate::{
    adjust::{Key, Parameters},
    body::{Body, Origin},
    draft::{Plan, Taped, taped_at},
    terms::{EaseAt, Measurement, Sex, WaistLevel},
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
    /// How many drafts it tried.
    pub drafts: usize,
}

/// How far parameters depart from the recipe, all together: in spreads, as the root of their summed squares.
pub(super) fn departure(of: impl Fn(Key) -> f64) -> f64 {
    UNKNOWNS.iter().map(|(key, spread)| (of(*key) / spread).powi(2)).sum::<f64>().sqrt()
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

fn thigh(taped: &Taped) -> Option<f64> {
    Some(taped.front_thigh? + taped.back_thigh?)
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
        let plain = taped_at(plan, &Parameters::default());
        let (front, back) = (plain.front_crotch, plain.back_crotch);
        let ease = |at: EaseAt| plan.inputs.ease[at];
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

    /// How far what the tape reads is from each target, in spreads.
    fn misses(&self, taped: &Taped) -> SVector<f64, TARGETS> {
        let (front, back) = (taped.front_crotch, taped.back_crotch);
        let total = self.total.map_or(0.0, |total| (front + back - total) / TOTAL);
        let split = self.back.map_or(0.0, |wanted| beyond(back - wanted) / SPLIT);
        let thigh = self.thigh.zip(thigh(taped)).map_or(0.0, |(least, has)| above(least - has) / THIGH);
        let arc = match (self.arc, front_width_wanted(self.plan, taped, self.body)) {
            (true, Some(wanted)) => beyond(wanted - taped.front_thigh.unwrap_or(wanted)) / ARC,
            _ => 0.0,
        };
        SVector::from([total, split, thigh, arc])
    }
}

/// The least girth at the thigh that the fit must keep: the style's minimum on a measured thigh; on an estimated one
/// only what the draft has before the fit.
fn least_thigh(plan: &Plan, body: &Body, given: &Parameters) -> Option<f64> {
    let girth = body.cm(Measurement::ThighGirth)?;
    let least = girth + plan.wanted[EaseAt::Thigh].0;
    if measured(body, Measurement::ThighGirth).is_some() {
        return Some(least);
    }
    Some(thigh(&taped_at(plan, given))?.min(least))
}

type Unknowns = SVector<f64, COUNT>;
type Misses = SVector<f64, TARGETS>;

/// What the tape reads, near a draft, as straight lines in the unknowns.
struct Lines {
    at: Unknowns,
    read: SVector<f64, READINGS>,
    slope: SMatrix<f64, READINGS, COUNT>,
}

/// The two crotch seams and the two widths.
const READINGS: usize = 4;

fn readings(taped: &Taped) -> SVector<f64, READINGS> {
    let thigh = |width: Option<f64>| width.unwrap_or(f64::NAN);
    SVector::from([taped.front_crotch, taped.back_crotch, thigh(taped.front_thigh), thigh(taped.back_thigh)])
}

fn taped_of(readings: &SVector<f64, READINGS>) -> Taped {
    let thigh = |width: f64| (!width.is_nan()).then_some(width);
    Taped {
        front_crotch: readings[0],
        back_crotch: readings[1],
        front_thigh: thigh(readings[2]),
        back_thigh: thigh(readings[3]),
    }
}

/// What may move, how easily and how far.
struct Room {
    free: [bool; COUNT],
    spread: Unknowns,
    bounds: [(f64, f64); COUNT],
}

impl Room {
    fn new(kept: impl Fn(Key) -> bool, arc: bool) -> Self {
        let free = std::array::from_fn(|index| {
            let key = UNKNOWNS[index].0;
            let of_the_arc = matches!(key, Key::ThighFront | Key::ThighBackTake);
            !kept(key) && (!of_the_arc || arc)
        });
        let bounds = UNKNOWNS.map(|(key, _)| {
            let (least, most) = key.about().usual;
            (least.min(0.0), most)
        });
        Self { free, spread: Unknowns::from_fn(|index, _| UNKNOWNS[index].1), bounds }
    }

    fn unknowns(&self) -> impl Iterator<Item = usize> {
        (0..COUNT).filter(|index| self.free[*index])
    }

    fn cost(&self, x: &Unknowns, missed: &Misses) -> f64 {
        x.component_div(&self.spread).norm_squared() + missed.norm_squared()
    }

    /// The step to the least cost within the bounds as far as the slope of the misses tells, with so much damping. One
    /// bound after the other is gone to, and left again where the cost falls inwards.
    fn step(
        &self,
        x: &Unknowns,
        missed: &Misses,
        slope: &SMatrix<f64, TARGETS, COUNT>,
        damping: f64,
    ) -> Option<Unknowns> {
        /// Bounds gone to and left; each unknown once or twice is ordinary.
        const CHANGES: usize = 4 * COUNT;
        let gradient = x.component_div(&self.spread).component_div(&self.spread) + slope.transpose() * missed;
        let mut normal = slope.transpose() * slope;
        for index in 0..COUNT {
            normal[(index, index)] += self.spread[index].powi(-2);
            normal[(index, index)] *= 1.0 + damping;
        }
        let outward = |at: &Unknowns, slope: &Unknowns, index: usize| {
            let (least, most) = self.bounds[index];
            (at[index] <= least && slope[index] > 0.0) || (at[index] >= most && slope[index] < 0.0)
        };
        let mut held: [bool; COUNT] =
            std::array::from_fn(|index| !self.free[index] || outward(x, &gradient, index));
        let mut to = *x;
        for _ in 0..CHANGES {
            let now = gradient + normal * (to - x);
            let (mut system, mut right) = (normal, -now);
            for index in (0..COUNT).filter(|index| held[*index]) {
                system.fill_row(index, 0.0);
                system.fill_column(index, 0.0);
                system[(index, index)] = 1.0;
                right[index] = 0.0;
            }
            // Positive on its diagonal by the spreads, so that this can only fail on numbers that are none.
            let by = system.cholesky()?.solve(&right);
            let room = |index: usize| {
                let (least, most) = self.bounds[index];
                let way = if by[index] > 0.0 { most - to[index] } else { least - to[index] };
                if by[index] == 0.0 { f64::INFINITY } else { way / by[index] }
            };
            let first = (0..COUNT).map(|index| (index, room(index))).min_by(|a, b| a.1.total_cmp(&b.1));
            if let Some((index, part)) = first.filter(|(_, part)| *part < 1.0) {
                to += by * part;
                let (least, most) = self.bounds[index];
                to[index] = if by[index] > 0.0 { most } else { least };
                held[index] = true;
                continue;
            }
            to += by;
            let now = gradient + normal * (to - x);
            let inward = (0..COUNT)
                .filter(|index| held[*index] && self.free[*index] && !outward(&to, &now, *index))
                .filter(|index| (now[*index] * self.spread[*index]).abs() > STILL)
                .max_by(|a, b| now[*a].abs().total_cmp(&now[*b].abs()));
            match inward {
                Some(index) => held[index] = false,
                None => break,
            }
        }
        Some(to)
    }

    #[cfg(test)]
    fn clamped(&self, x: &Unknowns) -> Unknowns {
        Unknowns::from_fn(|index, _| x[index].clamp(self.bounds[index].0, self.bounds[index].1))
    }

    fn moved_by(&self, from: &Unknowns, to: &Unknowns) -> f64 {
        (to - from).component_div(&self.spread).amax()
    }
}

impl Lines {
    fn misses(&self, targets: &Targets<'_>, x: &Unknowns) -> Misses {
        targets.misses(&taped_of(&(self.read + self.slope * (x - self.at))))
    }

    /// The slope of the misses: that of the lines, bent by what of a reading is asked for.
    fn slope_of_misses(&self, targets: &Targets<'_>, x: &Unknowns) -> SMatrix<f64, TARGETS, COUNT> {
        /// A step of the slope, cm.
        const STEP: f64 = 1e-5;
        let read = self.read + self.slope * (x - self.at);
        let mut bent = SMatrix::<f64, TARGETS, READINGS>::zeros();
        for reading in 0..READINGS {
            let (mut more, mut less) = (read, read);
            more[reading] += STEP;
            less[reading] -= STEP;
            let differ = targets.misses(&taped_of(&more)) - targets.misses(&taped_of(&less));
            bent.set_column(reading, &(differ / (2.0 * STEP)));
        }
        bent * self.slope
    }

    /// Where the cost is least if the lines hold: no draft is drawn for it.
    fn least(&self, targets: &Targets<'_>, room: &Room) -> Unknowns {
        /// Rounds; a handful is ordinary.
        const ROUNDS: usize = 30;
        let mut x = self.at;
        let mut missed = self.misses(targets, &x);
        let mut damping = 1e-6;
        for _ in 0..ROUNDS {
            let slope = self.slope_of_misses(targets, &x);
            let before = room.cost(&x, &missed);
            let mut moved_by = 0.0;
            while damping < 1e6 {
                let Some(next) = room.step(&x, &missed, &slope, damping) else { return x };
                let next_missed = self.misses(targets, &next);
                if room.cost(&next, &next_missed) < before {
                    moved_by = room.moved_by(&x, &next);
                    (x, missed) = (next, next_missed);
                    damping = (damping * 0.1).max(1e-9);
                    break;
                }
                damping *= 10.0;
            }
            if moved_by < STILL {
                break;
            }
        }
        x
    }
}

/// Steps smaller than this in spreads are the end.
const STILL: f64 = 2e-5;

/// Finds the parameters. `kept` are those that a person gave: they stay as they are in `given`.
pub fn solve(plan: &Plan, body: &Body, given: &Parameters, kept: impl Fn(Key) -> bool) -> Solved {
    /// Rounds of drafts; three to five are ordinary.
    const ROUNDS: usize = 20;
    /// A step of the slope, cm or degrees.
    const STEP: f64 = 1e-4;
    /// A step that helps at none of these parts of it is the end.
    const LEAST_PART: f64 = 1e-3;
    let targets = Targets::new(plan, body, given);
    let room = Room::new(kept, targets.arc);
    let set = |x: &Unknowns| room.unknowns().fold(*given, |all, index| all.with(UNKNOWNS[index].0, x[index]));
    let mut drafts = 0;
    let mut read = |x: &Unknowns| {
        drafts += 1;
        taped_at(plan, &set(x))
    };

    let mut x = Unknowns::zeros();
    let mut taped = read(&x);
    for _ in 0..ROUNDS {
        let mut lines = Lines { at: x, read: readings(&taped), slope: SMatrix::zeros() };
        for index in room.unknowns() {
            let mut moved = x;
            // The slope is taken inwards at a bound.
            let step = if x[index] + STEP > room.bounds[index].1 { -STEP } else { STEP };
            moved[index] += step;
            let by = (readings(&read(&moved)) - lines.read) / step;
            // A width that the level misses pulls at nothing.
            lines.slope.set_column(index, &by.map(|slope| if slope.is_nan() { 0.0 } else { slope }));
        }
        let wanted = lines.least(&targets, &room);
        let before = room.cost(&x, &targets.misses(&taped));
        let mut part = 1.0;
        let mut moved_by = 0.0;
        while part > LEAST_PART && room.moved_by(&x, &wanted) * part >= STILL {
            let next = x + (wanted - x) * part;
            let next_taped = read(&next);
            if room.cost(&next, &targets.misses(&next_taped)) < before {
                moved_by = room.moved_by(&x, &next);
                (x, taped) = (next, next_taped);
                break;
            }
            part *= 0.5;
        }
        if moved_by < ENOUGH {
            break;
        }
    }
    let found = room
        .unknowns()
        .map(|index| {
            let (least, most) = room.bounds[index];
            (UNKNOWNS[index].0, x[index], x[index] <= least + 1e-9 || x[index] >= most - 1e-9)
        })
        .collect();
    Solved { parameters: set(&x), found, drafts }
}

/// After a step smaller than this in spreads another one would be smaller by a tenth or less of it, which nobody cuts.
const ENOUGH: f64 = 5e-4;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        draft::{draft, shape, taped},
        order::{DEMOS, Order, demo},
        recipe::load,
    };

    fn demos() -> impl Iterator<Item = crate::draft::Draft> {
        DEMOS.iter().map(|name| {
            let (order, _) = Order::read(&demo(name).unwrap()).unwrap();
            draft(&order, &load(&order.trousers.block).unwrap()).unwrap()
        })
    }

    /// In every direction: one unknown alone, and any two so that the crotch length stays, which is the valley of the cost.
    #[test]
    fn no_smaller_cost_nearby() {
        for draft in demos() {
            let plain = Parameters::default();
            let targets = Targets::new(&draft.plan, &draft.body, &plain);
            let room = Room::new(|_| false, targets.arc);
            let solved = solve(&draft.plan, &draft.body, &plain, |_| false);
            let at = Unknowns::from_fn(|index, _| solved.parameters[UNKNOWNS[index].0]);
            let read = |x: &Unknowns| {
                let set = room.unknowns().fold(plain, |all, index| all.with(UNKNOWNS[index].0, x[index]));
                taped_at(&draft.plan, &set)
            };
            let cost = |x: &Unknowns| room.cost(x, &targets.misses(&read(x)));
            let crotch = |x: &Unknowns| read(x).front_crotch + read(x).back_crotch;
            let by = |index: usize, by: f64| {
                at + Unknowns::from_fn(|each, _| if each == index { by } else { 0.0 })
            };
            let slope = Unknowns::from_fn(|index, _| crotch(&by(index, 1e-3)) - crotch(&at));
            let least = cost(&at);
            for one in room.unknowns() {
                for other in room.unknowns().filter(|other| *other != one && slope[*other] != 0.0) {
                    for step in [-0.02, 0.02] {
                        let mut near = by(one, step);
                        assert!(cost(&room.clamped(&near)) > least - 1e-4, "{}", UNKNOWNS[one].0);
                        near[other] -= step * slope[one] / slope[other];
                        if near == room.clamped(&near) {
                            let (one, other) = (UNKNOWNS[one].0, UNKNOWNS[other].0);
                            assert!(cost(&near) > least - 1e-4, "{one} {other}: {} {least}", cost(&near));
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn tape_on_a_part_of_the_drawing_as_on_the_whole() {
        for draft in demos() {
            let many = UNKNOWNS
                .iter()
                .fold(Parameters::default(), |all, (key, spread)| all.with(*key, 0.5 * spread));
            for parameters in [Parameters::default(), many] {
                assert_eq!(taped_at(&draft.plan, &parameters), taped(&shape(&draft.plan, &parameters)));
            }
        }
    }
}
