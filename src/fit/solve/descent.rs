//! Least squares with a price on every unknown that moves at all, between bounds.
//!
//! The cost is the sum of squared unknowns and misses, each in its spread, and twice the price of each unknown's amount.
//! Under such a price an unknown that helps little stays at 0, and leaves it steadily as more is wanted of it: few move,
//! and none jumps.

use nalgebra::{SMatrix, SVector};

use super::{COUNT, targets::Targets};
use crate::draft::Taped;

/// The unknowns, in the order of `UNKNOWNS`.
pub(super) type Unknowns = SVector<f64, COUNT>;
/// How many targets there are.
pub(super) const TARGETS: usize = 8;
/// How far the draft is from each target, in spreads.
pub(super) type Misses = SVector<f64, TARGETS>;

/// Steps smaller than this in spreads are the end.
pub(super) const STILL: f64 = 2e-5;

/// What the tape reads, near a draft, as straight lines in the unknowns.
pub(super) struct Lines {
    pub(super) at: Unknowns,
    pub(super) read: SVector<f64, READINGS>,
    pub(super) slope: SMatrix<f64, READINGS, COUNT>,
}

/// The two crotch seams, the two widths and the lean of the centre back.
const READINGS: usize = 5;

pub(super) fn readings(taped: &Taped) -> SVector<f64, READINGS> {
    let thigh = |width: Option<f64>| width.unwrap_or(f64::NAN);
    SVector::from([
        taped.front_crotch,
        taped.back_crotch,
        thigh(taped.front_thigh),
        thigh(taped.back_thigh),
        taped.back_lean,
    ])
}

fn taped_of(readings: &SVector<f64, READINGS>) -> Taped {
    let thigh = |width: f64| (!width.is_nan()).then_some(width);
    Taped {
        front_crotch: readings[0],
        back_crotch: readings[1],
        front_thigh: thigh(readings[2]),
        back_thigh: thigh(readings[3]),
        back_lean: readings[4],
    }
}

/// How easily and how far each unknown moves.
#[derive(Clone)]
pub(super) struct Room {
    /// The spread that a fitter gives it.
    pub(super) spread: Unknowns,
    /// The least and the most; both 0 for what stays.
    pub(super) bounds: [(f64, f64); COUNT],
    /// What a spread of any unknown costs beside its square.
    pub(super) price: f64,
}

impl Room {
    /// Those that do not stay at 0.
    pub(super) fn moving(&self) -> impl Iterator<Item = usize> {
        (0..COUNT).filter(|index| self.bounds[*index] != (0.0, 0.0))
    }

    pub(super) fn cost(&self, x: &Unknowns, missed: &Misses) -> f64 {
        let moved = x.component_div(&self.spread);
        moved.norm_squared() + 2.0 * self.price * moved.lp_norm(1) + missed.norm_squared()
    }

    /// Which way off `at` the cost falls, within the bounds: 1, -1, or 0 for neither. `slope` is that of the squares.
    fn way(&self, index: usize, at: f64, slope: f64) -> f64 {
        let (least, most) = self.bounds[index];
        let price = self.price / self.spread[index];
        let up = slope + if at >= 0.0 { price } else { -price };
        let down = slope + if at > 0.0 { price } else { -price };
        let still = STILL / self.spread[index];
        if at < most && up < -still {
            1.0
        } else if at > least && down > still {
            -1.0
        } else {
            0.0
        }
    }

    /// The step to the least cost as far as the slope of the misses tells, with so much damping. On its way an unknown
    /// stops at a bound and at 0, and goes on where the cost still falls.
    fn step(
        &self,
        x: &Unknowns,
        missed: &Misses,
        slope: &SMatrix<f64, TARGETS, COUNT>,
        damping: f64,
    ) -> Option<Unknowns> {
        /// Stops and starts; each unknown once or twice is ordinary.
        const CHANGES: usize = 6 * COUNT;
        let gradient = x.component_div(&self.spread).component_div(&self.spread) + slope.transpose() * missed;
        let mut normal = slope.transpose() * slope;
        for index in 0..COUNT {
            normal[(index, index)] += self.spread[index].powi(-2);
            normal[(index, index)] *= 1.0 + damping;
        }
        // Over 0 the price turns: an unknown keeps to one side of it in one go.
        let mut side: [f64; COUNT] = std::array::from_fn(|index| {
            let way = self.way(index, x[index], gradient[index]);
            let (least, most) = self.bounds[index];
            let stops = (way == 0.0 && x[index] == 0.0)
                || (x[index] >= most && way >= 0.0)
                || (x[index] <= least && way <= 0.0);
            match stops {
                true => 0.0,
                false if x[index] == 0.0 => way,
                false => x[index].signum(),
            }
        });
        let mut to = *x;
        for _ in 0..CHANGES {
            let now = gradient + normal * (to - x);
            let (mut system, mut right) = (normal, -now);
            for index in 0..COUNT {
                if side[index] == 0.0 {
                    system.fill_row(index, 0.0);
                    system.fill_column(index, 0.0);
                    system[(index, index)] = 1.0;
                    right[index] = 0.0;
                } else {
                    right[index] -= side[index] * self.price / self.spread[index];
                }
            }
            // Positive on its diagonal by the spreads, so that this can only fail on numbers that are none.
            let by = system.cholesky()?.solve(&right);
            let end = |index: usize| {
                let (least, most) = self.bounds[index];
                if by[index] > 0.0 {
                    if side[index] < 0.0 { most.min(0.0) } else { most }
                } else if side[index] > 0.0 {
                    least.max(0.0)
                } else {
                    least
                }
            };
            let room = |index: usize| {
                if by[index] == 0.0 { f64::INFINITY } else { (end(index) - to[index]) / by[index] }
            };
            let first = (0..COUNT).map(|index| (index, room(index))).min_by(|a, b| a.1.total_cmp(&b.1));
            if let Some((index, part)) = first.filter(|(_, part)| *part < 1.0) {
                to += by * part;
                to[index] = end(index);
                side[index] = 0.0;
                continue;
            }
            to += by;
            let now = gradient + normal * (to - x);
            let pulled = (0..COUNT)
                .filter(|index| side[*index] == 0.0)
                .map(|index| (index, self.way(index, to[index], now[index])))
                .filter(|(_, way)| *way != 0.0)
                .max_by(|a, b| {
                    (now[a.0] * self.spread[a.0]).abs().total_cmp(&(now[b.0] * self.spread[b.0]).abs())
                });
            match pulled {
                Some((index, way)) => side[index] = if to[index] == 0.0 { way } else { to[index].signum() },
                None => break,
            }
        }
        Some(to)
    }

    pub(super) fn clamped(&self, x: &Unknowns) -> Unknowns {
        Unknowns::from_fn(|index, _| x[index].clamp(self.bounds[index].0, self.bounds[index].1))
    }

    pub(super) fn moved_by(&self, from: &Unknowns, to: &Unknowns) -> f64 {
        (to - from).component_div(&self.spread).amax()
    }
}

impl Lines {
    pub(super) fn misses(&self, targets: &Targets<'_>, x: &Unknowns) -> Misses {
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

    /// Where the cost is least if the lines hold, from `x` on: no draft is drawn for it.
    pub(super) fn least(&self, targets: &Targets<'_>, room: &Room, from: &Unknowns) -> Unknowns {
        /// Rounds; a handful is ordinary.
        const ROUNDS: usize = 30;
        let mut x = *from;
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
