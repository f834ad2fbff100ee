//! The crotch curve: a cubic inside its tangent triangle.

use kurbo::{CubicBez, Point, Vec2};

use super::meet;

/// The curve from a straight line at `a` to the crotch point at `c`, inside the triangle whose corner is where the
/// two end tangents cross. Its handles reach the fraction `fullness` of the way to the corner, so that its curvature
/// has one sign whatever the body: a bump cannot be drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// Where the straight centre line ends.
    pub a: Point,
    /// Where the end tangents cross.
    pub corner: Point,
    /// The crotch point.
    pub c: Point,
    /// How far the handles reach towards the corner, more than 0 and at most 0.98.
    pub fullness: f64,
}

impl Bend {
    /// The bend that leaves `a` along `down` and reaches `c` against `up`, the direction in which it leaves `c`.
    /// `None` where the tangents do not cross ahead of both ends.
    pub fn between(a: Point, down: Vec2, c: Point, up: Vec2, fullness: f64) -> Option<Self> {
        let (ahead_of_a, ahead_of_c) = meet(a, down, c, up)?;
        (ahead_of_a > 0.0 && ahead_of_c > 0.0).then(|| Self {
            a,
            corner: a + down * ahead_of_a,
            c,
            fullness: fullness.clamp(LEAST, MOST),
        })
    }

    /// The same bend, `scoop` deeper towards its corner, measured where the chord's middle looks at it.
    #[must_use]
    pub fn scooped(self, scoop: f64) -> Self {
        let reach = (self.corner - self.a.midpoint(self.c)).hypot();
        self.filled(self.fullness + scoop / (0.75 * reach))
    }

    /// The same bend with another fullness, led smoothly into what a bend can have.
    #[must_use]
    pub fn filled(self, fullness: f64) -> Self {
        Self { fullness: held(fullness, self.fullness), ..self }
    }

    /// The bend through the guide point, or `None` where the point lies outside the triangle or so near an end or
    /// the corner that no fullness reaches it.
    pub fn through(self, guide: Point) -> Option<Self> {
        let (u, v) = self.in_triangle(guide)?;
        if u <= 0.0 || v <= 0.0 || u + v >= 1.0 {
            return None;
        }
        let fullness = fullness_through(u, v)?;
        (fullness > 0.0 && fullness <= MOST).then_some(Self { fullness, ..self })
    }

    /// The bend through the guide point, or the one that comes nearest to it on the way from the corner, no straighter
    /// and no fuller than a cutter draws: where a guide goes out of reach, the curve stays with it.
    #[must_use]
    pub fn toward(self, guide: Point) -> Self {
        let Some((u, v)) = self.in_triangle(guide) else { return self };
        let fullness = if u + v >= 1.0 {
            STRAIGHTEST
        } else if u <= 0.0 || v <= 0.0 {
            FULLEST
        } else {
            fullness_through(u, v).map_or(FULLEST, |fullness| fullness.clamp(STRAIGHTEST, FULLEST))
        };
        Self { fullness, ..self }
    }

    /// The point by the two arms of the triangle, as parts of them from the corner; `None` where they have no angle.
    fn in_triangle(self, point: Point) -> Option<(f64, f64)> {
        let (to_a, to_c, to_point) = (self.a - self.corner, self.c - self.corner, point - self.corner);
        let area = to_a.cross(to_c);
        (area.abs() >= 1e-9).then(|| (to_point.cross(to_c) / area, to_a.cross(to_point) / area))
    }

    /// The curve itself, from `a` to the crotch point.
    pub fn cubic(&self) -> CubicBez {
        let k = self.fullness;
        CubicBez::new(self.a, self.a.lerp(self.corner, k), self.c.lerp(self.corner, k), self.c)
    }
}

/// Handles that reach the corner would make a corner.
const MOST: f64 = 0.98;
/// Up to here a wanted fullness is taken as it is.
const FREE: f64 = 0.85;
/// Below this the curve would be all but straight.
const LEAST: f64 = 0.05;
/// What a guide point may ask of a curve.
const STRAIGHTEST: f64 = 0.3;
const FULLEST: f64 = 0.9;

/// The fullness at which the curve passes the point that lies by `u` and `v` along the arms of its triangle.
fn fullness_through(u: f64, v: f64) -> Option<f64> {
    let t = root(|t| u * t - v * (1.0 - t) + t * (1.0 - t) * (2.0 * t - 1.0))?;
    let s = 1.0 - t;
    Some(1.0 - (u - s * s * s) / (3.0 * s * s * t))
}

/// `fullness` led smoothly into what a bend can have, leaving `from`, where it comes from, as it is; clamping would put
/// a jump into its slope.
fn held(fullness: f64, from: f64) -> f64 {
    /// Room kept for the rounding where a curve begins at a limit.
    const ROOM: f64 = 0.01;
    let (high, low) = (from.clamp(FREE, MOST - ROOM), from.clamp(LEAST + ROOM, 2.0 * LEAST));
    if fullness > high {
        high + (MOST - high) * ((fullness - high) / (MOST - high)).tanh()
    } else if fullness < low {
        low - (low - LEAST) * ((low - fullness) / (low - LEAST)).tanh()
    } else {
        fullness
    }
}

/// The root between 0 and 1 of a function that is negative at 0 and positive at 1.
fn root(f: impl Fn(f64) -> f64) -> Option<f64> {
    let (mut low, mut high) = (0.0, 1.0);
    if f(low) >= 0.0 || f(high) <= 0.0 {
        return None;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 { low = middle } else { high = middle }
    }
    Some(0.5 * (low + high))
}

#[cfg(test)]
mod tests {
    use kurbo::{ParamCurve, ParamCurveCurvature};

    use super::*;

    fn bend(fullness: f64) -> Bend {
        Bend::between(
            Point::new(0.0, 0.0),
            Vec2::new(0.05, 1.0),
            Point::new(-7.0, 9.0),
            Vec2::new(1.0, -0.2),
            fullness,
        )
        .unwrap()
    }

    #[test]
    fn every_fullness_one_sign_of_curvature() {
        for step in 0..=40 {
            let cubic = bend(0.5).filled(f64::from(step) * 0.05 - 0.5).cubic();
            for part in 1..100 {
                assert!(cubic.curvature(f64::from(part) / 100.0) < 0.0, "{step} {part}");
            }
        }
    }

    #[test]
    fn guide_point_met_to_a_millionth() {
        for k in [0.3, 0.5523, 0.72, 0.9] {
            let made = bend(k).cubic();
            for t in [0.3, 0.5, 0.7] {
                let guide = made.eval(t);
                let found = bend(0.5).through(guide).unwrap();
                assert!((found.fullness - k).abs() < 1e-6, "{k} {t} {}", found.fullness);
            }
        }
    }

    #[test]
    fn guide_outside_the_triangle_refused() {
        assert_eq!(bend(0.5).through(Point::new(-7.0, 0.0)), None);
    }

    #[test]
    fn scoop_moves_the_middle_by_its_amount() {
        let (plain, scooped) = (bend(0.6), bend(0.6).scooped(0.5));
        let moved = (scooped.cubic().eval(0.5) - plain.cubic().eval(0.5)).hypot();
        assert!((moved - 0.5).abs() < 1e-9, "{moved}");
    }
}
