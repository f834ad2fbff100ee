//! Measured fit: the smallest departure from the recipe with which the draft meets what was measured.
//!
//! Bounded, damped least squares, twice. Every unknown pulls back to 0 with the spread that fitters give it and has a
//! price for moving at all; the targets pull with the tape's. What then moves by too little to be cut is left alone, and
//! the rest is solved again without it. It begins at 0, always ends, and gives the same answer on every run.

mod descent;
mod targets;

use nalgebra::SMatrix;

use crate::{
    adjust::{Key, Measure, Parameters},
    body::{Body, Origin},
    draft::{Plan, Taped, taped_at},
    terms::Measurement,
};

use super::front_thigh::opening_for_arc;
use descent::{Lines, Room, STILL, Unknowns, readings};
use targets::Targets;

pub use targets::part_of_estimate;
pub(super) use targets::{ANOTHER_DIVISION, mean_back_share, measured};

/// The unknowns in the order in which a fitter makes the corrections, with the spread that one gives each: cm, and
/// degrees for the angle (design of this project).
const UNKNOWNS: [(Key, f64); COUNT] = [
    (Key::CrotchDepth, 0.5),
    (Key::ThighOuter, 0.5),
    (Key::ThighInner, 0.25),
    (Key::CrotchFrontExtension, 0.55),
    (Key::CrotchBackExtension, 0.6),
    (Key::CrotchFrontScoop, 0.3),
    (Key::SeatLength, 0.8),
    (Key::SeatAngle, 1.2),
    (Key::SeatScoop, 0.5),
    (Key::ThighFront, 0.8),
    (Key::ThighFrontSide, 0.4),
    (Key::ThighBackTake, 0.4),
];
const COUNT: usize = 12;

/// What a spread of any unknown costs beside its square: at this price half as many corrections move as without, and
/// as many people are met (`tests/measured_fit.rs` prints both).
const PRICE: f64 = 0.9;
/// A correction smaller than this is not made, cm and degrees: nobody cuts it (design of this project).
const LEAST_CM: f64 = 0.2;
const LEAST_DEGREES: f64 = 0.5;
/// One that would come to less than this part of that is left out; one that comes to more is made whole. Half is nearest
/// to both, so that the draft jumps least where one comes or goes.
const WORTH_MAKING: f64 = 0.5;
/// Less than this at the side seams is no girth that a thigh lacks, cm.
const NO_GIRTH: f64 = 0.01;
/// How far the crotch depth may move where the rise was measured, cm: what a tape may have missed of it, not more.
const MEASURED_RISE_HELD: f64 = 0.3;
/// The spread that it then has, cm: the tape's own, less than a fitter gives it on an estimated rise.
const MEASURED_RISE_SPREAD: f64 = 0.3;

/// What was solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// All parameters: those given, and those found.
    pub parameters: Parameters,
    /// Those found that are not 0, in the order of fitting, with whether each stands at the end of its usual range.
    pub found: Vec<(Key, f64, bool)>,
    /// How many drafts it tried.
    pub drafts: usize,
}

/// How far parameters depart from the recipe, all together: in spreads, as the root of their summed squares.
pub(super) fn departure(of: impl Fn(Key) -> f64) -> f64 {
    UNKNOWNS.iter().map(|(key, spread)| (of(*key) / spread).powi(2)).sum::<f64>().sqrt()
}

/// The place of a parameter in the order in which a fitter makes the corrections; those that no fit finds come last.
pub fn turn(key: Key) -> usize {
    UNKNOWNS.iter().position(|(unknown, _)| *unknown == key).unwrap_or(COUNT)
}

/// The smallest amount of a parameter that is worth making, cm or degrees.
pub(super) fn least_amount(key: Key) -> f64 {
    match key.about().unit {
        Measure::Cm => LEAST_CM,
        Measure::Degrees => LEAST_DEGREES,
    }
}

/// An amount that is worth making: itself, or the least where it is nearly that, or 0.
pub(super) fn worth_making(key: Key, amount: f64) -> f64 {
    let least = least_amount(key);
    if amount.abs() < WORTH_MAKING * least { 0.0 } else { amount.signum() * amount.abs().max(least) }
}

/// Finds the parameters. `kept` are those that a person gave: they stay as they are in `given`.
pub fn solve(plan: &Plan, body: &Body, given: &Parameters, kept: impl Fn(Key) -> bool) -> Solved {
    let (search, room) = Search::of_both(plan, body, given, kept);
    let mut solved = search.readable(&room);
    let opened = search.base[Key::ThighFront];
    if opened != given[Key::ThighFront] {
        let (least, most) = Key::ThighFront.about().usual;
        solved.found.push((Key::ThighFront, opened, opened >= most || opened <= least.min(0.0)));
        solved.found.sort_by_key(|(key, ..)| turn(*key));
    }
    solved
}

/// Finds what one leg needs beside `both`, which the two have alike: its own thigh girth and front thigh arc, within what
/// the centre seams bear.
pub(super) fn solve_one_leg(
    plan: &Plan,
    body: &Body,
    both: &Parameters,
    kept: impl Fn(Key) -> bool,
) -> Solved {
    let of_both = taped_at(plan, both);
    let targets = Targets::of_one_leg(plan, body, both, &of_both);
    let bounds = UNKNOWNS.map(|(key, _)| {
        let of_a_leg =
            matches!(key, Key::ThighOuter | Key::ThighInner | Key::ThighFront | Key::ThighFrontSide);
        if kept(key) || !of_a_leg {
            return (0.0, 0.0);
        }
        let (least, most) = key.about().usual;
        ((least - both[key]).min(0.0), (most - both[key]).max(0.0))
    });
    Search { plan, targets, base: *both }.readable(&Room::new(bounds))
}

impl Room {
    fn new(bounds: [(f64, f64); COUNT]) -> Self {
        Self { spread: Unknowns::from_fn(|index, _| UNKNOWNS[index].1), bounds, price: PRICE }
    }

    /// The room that is left when what moves too little to be cut stays, and the rest moves enough.
    fn readable(&self, x: &Unknowns) -> Self {
        let bounds = std::array::from_fn(|index| {
            let (least, most) = self.bounds[index];
            let amount = worth_making(UNKNOWNS[index].0, x[index]);
            if UNKNOWNS[index].0 == Key::ThighOuter {
                // It serves the girth alone, which must not be short by a hair when another is left out.
                (least, most)
            } else if amount > 0.0 {
                (least_amount(UNKNOWNS[index].0), most)
            } else if amount < 0.0 {
                (least, -least_amount(UNKNOWNS[index].0))
            } else {
                (0.0, 0.0)
            }
        });
        Self { bounds, ..self.clone() }
    }
}

/// One body's search: what it goes after, from which parameters.
struct Search<'a> {
    plan: &'a Plan,
    targets: Targets<'a>,
    base: Parameters,
}

impl<'a> Search<'a> {
    /// The search of the trunk and both legs, and how far each unknown may go in it.
    fn of_both(
        plan: &'a Plan,
        body: &'a Body,
        given: &Parameters,
        kept: impl Fn(Key) -> bool,
    ) -> (Self, Room) {
        let mut base = *given;
        // What a fitter measured by hand drives its own correction, whatever the rest needs.
        if !kept(Key::ThighFront)
            && measured(body, Measurement::FrontThighArc).is_some()
            && let Some(asked) = opening_for_arc(plan, body)
        {
            base = base.with(Key::ThighFront, asked);
        }
        let rise_measured =
            body.value(Measurement::BodyRise).is_some_and(|rise| rise.from != Origin::Estimated);
        let bounds = UNKNOWNS.map(|(key, _)| {
            let (least, most) = key.about().usual;
            let (least, most) = match key {
                _ if kept(key) => (0.0, 0.0),
                Key::ThighFront | Key::ThighFrontSide => (0.0, 0.0),
                // At the sides the leg needs room or nothing: a thigh with ease enough is left as it is drawn.
                Key::ThighOuter => (0.0, most),
                Key::ThighBackTake => (0.0, 0.5 * base[Key::ThighFront].max(0.0)),
                Key::CrotchDepth if rise_measured => {
                    (least.max(-MEASURED_RISE_HELD), most.min(MEASURED_RISE_HELD))
                }
                _ => (least.min(0.0), most),
            };
            if most.max(-least) < least_amount(key) { (0.0, 0.0) } else { (least, most) }
        });
        let mut room = Room::new(bounds);
        if rise_measured {
            room.spread[turn(Key::CrotchDepth)] = MEASURED_RISE_SPREAD;
        }
        (Self { plan, targets: Targets::of_both(plan, body, &base), base }, room)
    }

    fn set(&self, room: &Room, x: &Unknowns) -> Parameters {
        room.moving().fold(self.base, |all, index| {
            let key = UNKNOWNS[index].0;
            all.with(key, self.base[key] + x[index])
        })
    }

    /// The least cost, then that with the corrections that are worth making alone.
    fn readable(&self, room: &Room) -> Solved {
        let start = Unknowns::zeros();
        let mut drafts = 0;
        let (all, lines) = self.least(room, start, None, &mut drafts);
        let few = room.readable(&all);
        let near = few.clamped(&all);
        let (mut x, _) = self.least(&few, near, Some(lines), &mut drafts);
        let outer = &mut x[turn(Key::ThighOuter)];
        *outer = if *outer < NO_GIRTH { 0.0 } else { outer.max(LEAST_CM) };
        let found = few
            .moving()
            .filter(|index| x[*index] != 0.0)
            .map(|index| {
                let key = UNKNOWNS[index].0;
                let (least, most) = room.bounds[index];
                (key, self.base[key] + x[index], x[index] <= least + 1e-9 || x[index] >= most - 1e-9)
            })
            .collect();
        Solved { parameters: self.set(&few, &x), found, drafts }
    }

    /// The least cost within the room, from `start` on. The slopes of one place serve while the search stays near it;
    /// `near` are those of an earlier search.
    fn least(
        &self,
        room: &Room,
        start: Unknowns,
        near: Option<Lines>,
        drafts: &mut usize,
    ) -> (Unknowns, Lines) {
        /// Rounds of drafts; three to six are ordinary.
        const ROUNDS: usize = 20;
        /// A step that helps at none of these parts of it is the end.
        const LEAST_PART: f64 = 1e-3;
        /// After a step smaller than this in spreads another one would be smaller by a tenth or less of it, which nobody
        /// cuts.
        const ENOUGH: f64 = 5e-4;
        /// So far in spreads the slopes of one place are good enough for another.
        const NEAR: f64 = 0.4;
        let mut x = start;
        let mut taped = self.read(room, &x, drafts);
        let mut lines = near.unwrap_or_else(|| self.lines(room, &x, &taped, drafts));
        let mut drawn_at = lines.at;
        for _ in 0..ROUNDS {
            if room.moved_by(&drawn_at, &x) > NEAR {
                lines = self.lines(room, &x, &taped, drafts);
                drawn_at = x;
            }
            (lines.at, lines.read) = (x, readings(&taped));
            let wanted = lines.least(&self.targets, room, &x);
            let before = room.cost(&x, &self.targets.misses(&taped));
            let (mut part, mut moved_by) = (1.0, 0.0);
            while part > LEAST_PART && room.moved_by(&x, &wanted) * part >= STILL {
                let next = x + (wanted - x) * part;
                let next_taped = self.read(room, &next, drafts);
                if room.cost(&next, &self.targets.misses(&next_taped)) < before {
                    moved_by = room.moved_by(&x, &next);
                    (x, taped) = (next, next_taped);
                    break;
                }
                part *= 0.5;
            }
            if moved_by < ENOUGH {
                if moved_by > 0.0 || drawn_at == x || room.moved_by(&x, &wanted) < STILL {
                    break;
                }
                // Slopes from elsewhere lead nowhere from here: once more with its own.
                lines = self.lines(room, &x, &taped, drafts);
                drawn_at = x;
            }
        }
        lines.at = drawn_at;
        (x, lines)
    }

    fn read(&self, room: &Room, x: &Unknowns, drafts: &mut usize) -> Taped {
        *drafts += 1;
        taped_at(self.plan, &self.set(room, x))
    }

    /// The slopes of what the tape reads, each unknown moved by a hair.
    fn lines(&self, room: &Room, x: &Unknowns, taped: &Taped, drafts: &mut usize) -> Lines {
        /// The hair, cm or degrees.
        const STEP: f64 = 1e-4;
        let mut lines = Lines { at: *x, read: readings(taped), slope: SMatrix::zeros() };
        for index in room.moving() {
            let mut moved = *x;
            // Inwards at a bound.
            let step = if x[index] + STEP > room.bounds[index].1 { -STEP } else { STEP };
            moved[index] += step;
            let by = (readings(&self.read(room, &moved, drafts)) - lines.read) / step;
            // A width that the level misses pulls at nothing.
            lines.slope.set_column(index, &by.map(|slope| if slope.is_nan() { 0.0 } else { slope }));
        }
        lines
    }
}

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
            let (search, room) = Search::of_both(&draft.plan, &draft.body, &Parameters::default(), |_| false);
            let mut drafts = 0;
            let (at, _) = search.least(&room, Unknowns::zeros(), None, &mut drafts);
            let read = |x: &Unknowns| search.read(&room, x, &mut 0);
            let cost = |x: &Unknowns| room.cost(x, &search.targets.misses(&read(x)));
            let crotch = |x: &Unknowns| read(x).front_crotch + read(x).back_crotch;
            let by = |index: usize, by: f64| {
                at + Unknowns::from_fn(|each, _| if each == index { by } else { 0.0 })
            };
            let slope = Unknowns::from_fn(|index, _| crotch(&by(index, 1e-3)) - crotch(&at));
            // Slopes of nearby serve for the last steps, which leaves less than a thousandth of the cost.
            let least = cost(&at) * (1.0 - 1e-3) - 1e-4;
            for one in room.moving() {
                for other in room.moving().filter(|other| *other != one && slope[*other] != 0.0) {
                    for step in [-0.02, 0.02] {
                        let mut near = by(one, step);
                        assert!(cost(&room.clamped(&near)) > least, "{}", UNKNOWNS[one].0);
                        near[other] -= step * slope[one] / slope[other];
                        if near == room.clamped(&near) {
                            let (one, other) = (UNKNOWNS[one].0, UNKNOWNS[other].0);
                            assert!(cost(&near) > least, "{one} {other}: {} {least}", cost(&near));
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn nothing_found_that_nobody_would_cut() {
        for draft in demos() {
            let solved = solve(&draft.plan, &draft.body, &Parameters::default(), |_| false);
            for (key, value, _) in solved.found {
                assert!(value.abs() >= least_amount(key), "{key} {value}");
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
                let [part, whole] =
                    [taped_at(&draft.plan, &parameters), taped(&shape(&draft.plan, &parameters))];
                // The curve may start elsewhere on the centre line, whose lean that does not change.
                assert!((part.back_lean - whole.back_lean).abs() < 1e-9);
                assert_eq!(Taped { back_lean: whole.back_lean, ..part }, whole);
            }
        }
    }
}
