//! Arc length and height along a cubic, and their inverses.

use kurbo::{
    CubicBez, Vec2,
    common::{GAUSS_LEGENDRE_COEFFS_8_HALF, GAUSS_LEGENDRE_COEFFS_16_HALF},
};

/// The points after the middle of the sum of four, which kurbo has for more only.
const GAUSS_LEGENDRE_COEFFS_4_HALF: [(f64, f64); 2] =
    [(0.652_145_154_862_546_1, 0.339_981_043_584_856_3), (0.347_854_845_137_453_9, 0.861_136_311_594_052_6)];

/// The arc length of a cubic by a Gauss sum: within 1e-6 cm on every seam of a trouser, and smooth when the cubic
/// changes a little, which an adaptive sum is not.
pub fn length(cubic: &CubicBez) -> f64 {
    arc(cubic, 0.0, 1.0)
}

/// The arc between two parameters of a cubic; negative from a later to an earlier one.
pub(super) fn arc(cubic: &CubicBez, from: f64, to: f64) -> f64 {
    Speed::of(cubic).arc(from, to)
}

/// The parameter reached by walking `by` along the cubic from the place of the parameter `from`, or back where it is
/// negative. A walk beyond an end runs on along the cubic: the seam is produced, as a cutter would with the same curve.
///
/// Accurate to 1e-9 cm where the cubic keeps its direction, which seams do; produced by more than some centimetres, a cubic
/// that bends much may turn back, and what is walked there is not promised.
pub fn t_walked(cubic: &CubicBez, from: f64, by: f64) -> f64 {
    /// One or two rounds are ordinary; the rest is for produced curves.
    const ROUNDS: usize = 12;
    /// A step of less than this, cm, need not be measured.
    const NEAR: f64 = 0.01;
    /// Over a step of less than this, cm, the speed does not change.
    const HAIR: f64 = 1e-4;
    let speed = Speed::of(cubic);
    let (mut t, mut missing) = (from, by);
    for _ in 0..ROUNDS {
        let here = speed.at(t);
        if missing == 0.0 || here < 1e-9 {
            break;
        }
        let step = missing / here;
        if missing.abs() < HAIR {
            return t + step;
        }
        // By the speed in the middle of the step, which errs with the third power of what is missing.
        let next = (t + missing / speed.at(t + 0.5 * step)).clamp(-2.0, 3.0);
        if missing.abs() < NEAR {
            return next;
        }
        missing -= speed.arc(t, next);
        t = next;
    }
    t
}

/// How fast a point runs along a cubic, cm for each unit of its parameter: a third of the velocity at the start, half of
/// its growth there, and how that growth bends.
struct Speed {
    start: Vec2,
    growth: Vec2,
    bend: Vec2,
}

impl Speed {
    fn of(cubic: &CubicBez) -> Self {
        let (d0, d1, d2) = (cubic.p1 - cubic.p0, cubic.p2 - cubic.p1, cubic.p3 - cubic.p2);
        Self { start: d0, growth: d1 - d0, bend: d2 - d1 - (d1 - d0) }
    }

    fn at(&self, t: f64) -> f64 {
        3.0 * (self.start + (self.growth * 2.0 + self.bend * t) * t).hypot()
    }

    fn arc(&self, from: f64, to: f64) -> f64 {
        let (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
        // The velocity about the middle: what it is there, what changes evenly, what is alike on both sides.
        let still = self.start + (self.growth * 2.0 + self.bend * middle) * middle;
        let even = (self.growth + self.bend * middle) * (2.0 * half);
        let alike = self.bend * (half * half);
        let pair = |(weight, at): (f64, f64)| {
            let (here, off) = (still + alike * (at * at), even * at);
            weight * ((here + off).hypot() + (here - off).hypot())
        };
        let sum = |half_rule: &[(f64, f64)]| half_rule.iter().copied().map(pair).sum::<f64>();
        // The velocity changes by no more than `part` of itself, where what changes alike counts by its root. A sum of n
        // points then errs by about the 2n-th power of half that part: by less than 1e-11 of the arc for those below, so
        // that no step is seen where the rule changes.
        let changes_by = |part: f64| {
            let left = part * part * still.hypot2() - even.hypot2();
            left > 0.0 && alike.hypot2() * still.hypot2() < left * left
        };
        let sum = if changes_by(0.05) {
            pair(GAUSS_LEGENDRE_COEFFS_4_HALF[0]) + pair(GAUSS_LEGENDRE_COEFFS_4_HALF[1])
        } else if changes_by(0.3) {
            sum(GAUSS_LEGENDRE_COEFFS_8_HALF)
        } else {
            sum(GAUSS_LEGENDRE_COEFFS_16_HALF)
        };
        3.0 * half * sum
    }
}

/// The parameter at which a cubic from one side of the level `y` to the other reaches it; an end where both ends lie on
/// one side. Where it reaches the level more than once, one of these places.
pub fn t_at_level(cubic: &CubicBez, y: f64) -> f64 {
    /// Newton from the chord, to which seams are close, takes a handful of rounds; what it cannot do is halved, and this
    /// often leaves nothing of a seam.
    const ROUNDS: usize = 48;
    let (d0, d1, d2) = (cubic.p1.y - cubic.p0.y, cubic.p2.y - cubic.p1.y, cubic.p3.y - cubic.p2.y);
    let (c1, c2, c3) = (3.0 * d0, 3.0 * (d1 - d0), d2 - d1 - (d1 - d0));
    let (wanted, whole) = (y - cubic.p0.y, cubic.p3.y - cubic.p0.y);
    let mut t = wanted / whole;
    if !(0.0 < t && t < 1.0) {
        return if t >= 1.0 { 1.0 } else { 0.0 };
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..ROUNDS {
        let miss = ((c3 * t + c2) * t + c1) * t - wanted;
        if miss.abs() < 1e-11 {
            break;
        }
        if (miss < 0.0) == (whole > 0.0) {
            low = t
        } else {
            high = t
        }
        let speed = (3.0 * c3 * t + 2.0 * c2) * t + c1;
        let next = t - miss / speed;
        t = if low < next && next < high { next } else { 0.5 * (low + high) };
    }
    t
}

#[cfg(test)]
mod tests {
    use kurbo::{ParamCurve, ParamCurveDeriv, common::GAUSS_LEGENDRE_COEFFS_32};
    use proptest::{
        prelude::*,
        test_runner::{Config, RngSeed},
    };

    use super::*;
    use crate::curve::straight;

    /// How far a walk is produced beyond an end at the most, cm: seams are produced by what truing moves them.
    const PRODUCED: f64 = 3.0;

    fn point(reach: f64) -> impl Strategy<Value = Vec2> {
        (-reach..reach, -reach..reach).prop_map(|(x, y)| Vec2::new(x, y))
    }

    proptest! {
        #![proptest_config(Config { failure_persistence: None, rng_seed: RngSeed::Fixed(7), ..Config::default() })]

        /// From straight and even to turning by a right angle.
        #[test]
        fn few_points_as_exact_as_many(p1 in point(9.0), p2 in point(9.0), part in 0.0..1.0) {
            let line = straight((0.0, 0.0).into(), (0.0, 40.0).into());
            let cubic = CubicBez::new(line.p0, line.p1 + p1 * part, line.p2 + p2 * part, line.p3);
            let exact = cubic.gauss_arclen(GAUSS_LEGENDRE_COEFFS_32);
            prop_assert!((length(&cubic) - exact).abs() < 1e-7, "{}", length(&cubic) - exact);
            if part < 0.3 {
                prop_assert!((length(&cubic) - exact).abs() < 1e-9, "{}", length(&cubic) - exact);
            }
        }

        #[test]
        fn walked_on_and_back(p1 in point(4.0), from in 0.0..1.0, by in -10.0..10.0) {
            let line = straight((0.0, 0.0).into(), (0.0, 40.0).into());
            let cubic = CubicBez::new(line.p0, line.p1 + p1, line.p2, line.p3);
            let (before, behind) = (arc(&cubic, 0.0, from), arc(&cubic, from, 1.0));
            let by = f64::clamp(by, -before - PRODUCED, behind + PRODUCED);
            let to = t_walked(&cubic, from, by);
            let walked = cubic.subsegment(from.min(to)..from.max(to)).gauss_arclen(GAUSS_LEGENDRE_COEFFS_32);
            prop_assert!((walked - by.abs()).abs() < 1e-9, "{walked} for {by}");
            prop_assert!((t_walked(&cubic, to, -by) - from).abs() < 1e-9);
        }
    }
}
