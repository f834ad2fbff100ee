//! The course of a seam as an eye follows it: where it turns, which way it bends, how tightly.

use kurbo::{CubicBez, ParamCurve, ParamCurveCurvature, ParamCurveDeriv, Point, Vec2};

use super::{Chain, end_tangent, length, start_tangent};

/// A seam walked in short steps.
#[derive(Clone, Debug)]
pub struct Course(Vec<Step>);

/// A place on a seam.
#[derive(Clone, Copy, Debug)]
struct Step {
    /// How far from the start, cm.
    walked: f64,
    /// How far the direction has turned since the start, radians.
    turned: f64,
    at: Point,
}

/// How long a step is at most, cm.
const STEP: f64 = 0.5;
/// However short a piece is, it is walked in so many steps, and however long, in no more.
const STEPS: (f64, f64) = (2.0, 400.0);

impl Course {
    /// Walks a seam.
    pub fn along(seam: &Chain) -> Self {
        let mut steps = Vec::with_capacity((seam.length() / STEP) as usize + 2 * seam.cubics().len());
        let (mut walked, mut turned) = (0.0, 0.0);
        let mut heading = seam.start_tangent();
        let mut turn_to = |next: Vec2| {
            if next != Vec2::ZERO {
                turned += heading.cross(next).atan2(heading.dot(next));
                heading = next;
            }
            turned
        };
        for piece in seam.cubics() {
            steps.push(Step { walked, turned: turn_to(start_tangent(piece)), at: piece.p0 });
            let (slope, long) = (piece.deriv(), length(piece));
            let count = (long / STEP).ceil().clamp(STEPS.0, STEPS.1);
            let part = 1.0 / count;
            let mut from = piece.p0;
            for step in 1..=count as usize {
                let t = step as f64 * part;
                let (at, ahead) = if step == count as usize {
                    (piece.p3, end_tangent(piece))
                } else {
                    (piece.eval(t), slope.eval(t).to_vec2())
                };
                walked += from.distance(at);
                from = at;
                steps.push(Step { walked, turned: turn_to(ahead), at });
            }
        }
        Self(steps)
    }

    /// The largest turn within a stretch of the seam that is `within` cm long, radians, and how far from the start that
    /// stretch begins.
    pub fn sharpest(&self, within: f64) -> (f64, f64) {
        let mut sharpest = (0.0, 0.0);
        for (index, from) in self.0.iter().enumerate() {
            // Steps of the same place, on both sides of a joint, count however long a step is.
            let near = self.0[index..].iter().take_while(|to| to.walked - from.walked <= within);
            let turn = near.map(|to| (to.turned - from.turned).abs()).fold(0.0, f64::max);
            if turn > sharpest.0 {
                sharpest = (turn, from.walked);
            }
        }
        sharpest
    }

    /// How often the seam changes the way it bends, counting only bends that stand off their chord by `seen` cm.
    pub fn waves(&self, seen: f64) -> usize {
        let mut waves = 0;
        let (mut from, mut way, mut last_seen) = (0, 0.0, 0.0);
        for index in 1..=self.0.len() {
            let turn = self.0.get(index).map_or(-way, |step| step.turned - self.0[index - 1].turned);
            if turn == 0.0 || turn.signum() == way {
                continue;
            }
            if way != 0.0 && self.stands_off(from, index - 1) >= seen {
                waves += usize::from(last_seen != 0.0 && last_seen != way);
                last_seen = way;
            }
            (from, way) = (index - 1, turn.signum());
        }
        waves
    }

    /// How far the course between two steps stands off its chord, cm.
    fn stands_off(&self, from: usize, to: usize) -> f64 {
        let (start, chord) = (self.0[from].at, self.0[to].at - self.0[from].at);
        let long = chord.hypot();
        if long == 0.0 {
            return 0.0;
        }
        self.0[from..=to].iter().map(|step| ((step.at - start).cross(chord) / long).abs()).fold(0.0, f64::max)
    }
}

/// The least radius on which a cubic turns, cm.
pub fn least_radius(cubic: &CubicBez) -> f64 {
    /// Places looked at: a crotch curve is 15 to 40 cm long, and its tightest stretch several.
    const PLACES: usize = 64;
    let tightest =
        (0..=PLACES).map(|place| cubic.curvature(place as f64 / PLACES as f64).abs()).fold(0.0, f64::max);
    1.0 / tightest
}

#[cfg(test)]
mod tests {
    use std::f64::consts::FRAC_PI_2;

    use kurbo::Circle;

    use super::*;
    use crate::curve::straight;

    /// A quarter of a circle by the usual cubic, within 0.03 per cent of its radius.
    fn quarter(radius: f64) -> CubicBez {
        let Circle { center, radius } = Circle::new((0.0, 0.0), radius);
        let handle = 0.552_284_75 * radius;
        CubicBez::new(
            center + Vec2::new(radius, 0.0),
            center + Vec2::new(radius, handle),
            center + Vec2::new(handle, radius),
            center + Vec2::new(0.0, radius),
        )
    }

    #[test]
    fn circle_turns_evenly() {
        let course = Course::along(&Chain::of(quarter(10.0)));
        let (turn, _) = course.sharpest(1.0);
        assert!((turn - 0.1).abs() < 0.003, "{turn}");
        assert_eq!(course.waves(0.01), 0);
        assert!((course.0.last().unwrap().turned - FRAC_PI_2).abs() < 1e-9);
        assert!((least_radius(&quarter(10.0)) - 10.0).abs() < 0.1);
    }

    #[test]
    fn corner_at_a_joint_found() {
        let (a, b) = (Point::new(0.0, 0.0), Point::new(0.0, 10.0));
        let c = b + Vec2::new(0.2_f64.sin(), 0.2_f64.cos()) * 7.0;
        let (turn, from) = Course::along(&Chain::of(straight(a, b)).then(straight(b, c))).sharpest(1.0);
        assert!((turn - 0.2).abs() < 1e-9 && (9.0..=10.0).contains(&from), "{turn} {from}");
    }

    #[test]
    fn waves_seen_counted_and_smaller_ones_not() {
        let up = CubicBez::new((0.0, 0.0), (3.0, 3.0), (7.0, 3.0), (10.0, 0.0));
        let down = CubicBez::new((10.0, 0.0), (13.0, -3.0), (17.0, -3.0), (20.0, 0.0));
        let on = CubicBez::new((20.0, 0.0), (23.0, 3.0), (27.0, 3.0), (30.0, 0.0));
        let course = Course::along(&Chain::of(up).then(down).then(on));
        assert_eq!(course.waves(0.1), 2);
        assert_eq!(course.waves(3.0), 0);
    }
}
