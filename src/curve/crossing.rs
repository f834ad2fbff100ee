//! Where curves cross one another and straight lines.

use kurbo::{CubicBez, Line, ParamCurve, ParamCurveDeriv, Point, Rect, Vec2};

/// Curves this near to their chords are crossed as chords, cm; Newton does the rest.
const FLAT: f64 = 1e-3;
/// A place this far beyond an end still counts, as a part of the curve: the end itself must not slip through.
const END: f64 = 1e-9;

/// Where two cubics cross: the parameter on each, to 1e-9 cm; `None` where they do not, or only run along each other.
pub fn crossing(a: &CubicBez, b: &CubicBez) -> Option<(f64, f64)> {
    searched((a, 0.0..1.0), (b, 0.0..1.0))
}

type Part<'a> = (&'a CubicBez, std::ops::Range<f64>);

fn searched((a, on_a): Part<'_>, (b, on_b): Part<'_>) -> Option<(f64, f64)> {
    let (part_a, part_b) = (a.subsegment(on_a.clone()), b.subsegment(on_b.clone()));
    let (box_a, box_b) = (hull(&part_a), hull(&part_b));
    if box_a.x0 > box_b.x1 || box_b.x0 > box_a.x1 || box_a.y0 > box_b.y1 || box_b.y0 > box_a.y1 {
        return None;
    }
    let halves = |range: &std::ops::Range<f64>| {
        let middle = 0.5 * (range.start + range.end);
        [range.start..middle, middle..range.end]
    };
    match (sag(&part_a) < FLAT, sag(&part_b) < FLAT) {
        (true, true) => refined(a, b, &on_a, &on_b),
        (true, false) => halves(&on_b).into_iter().find_map(|on_b| searched((a, on_a.clone()), (b, on_b))),
        _ => halves(&on_a).into_iter().find_map(|on_a| searched((a, on_a), (b, on_b.clone()))),
    }
}

/// Newton in both parameters from where the chords of two short parts cross.
fn refined(
    a: &CubicBez,
    b: &CubicBez,
    on_a: &std::ops::Range<f64>,
    on_b: &std::ops::Range<f64>,
) -> Option<(f64, f64)> {
    /// How far beyond a part its curve may still be crossed, as a fraction of the part.
    const REACH: f64 = 0.1;
    let chord =
        |curve: &CubicBez, on: &std::ops::Range<f64>| Line::new(curve.eval(on.start), curve.eval(on.end));
    let (chord_a, chord_b) = (chord(a, on_a), chord(b, on_b));
    let (along_a, along_b) =
        super::meet(chord_a.p0, chord_a.p1 - chord_a.p0, chord_b.p0, chord_b.p1 - chord_b.p0)?;
    let near = |along: f64| (-REACH..=1.0 + REACH).contains(&along);
    if !near(along_a) || !near(along_b) {
        return None;
    }
    let place = |on: &std::ops::Range<f64>, along: f64| on.start + along * (on.end - on.start);
    let (mut t, mut u) = (place(on_a, along_a), place(on_b, along_b));
    let (slope_a, slope_b) = (a.deriv(), b.deriv());
    for _ in 0..8 {
        let gap = b.eval(u) - a.eval(t);
        let (da, db) = (slope_a.eval(t).to_vec2(), slope_b.eval(u).to_vec2());
        let turn = da.cross(db);
        if turn == 0.0 {
            return None;
        }
        t += gap.cross(db) / turn;
        u += gap.cross(da) / turn;
    }
    let on = |t: f64| (-END..=1.0 + END).contains(&t);
    let met = a.eval(t).distance(b.eval(u)) < 1e-9;
    (met && on(t) && on(u)).then(|| (t.clamp(0.0, 1.0), u.clamp(0.0, 1.0)))
}

/// Where a cubic crosses the straight line through `point` along `way`: its parameters there, in order.
pub fn line_crossings(cubic: &CubicBez, point: Point, way: Vec2) -> Vec<f64> {
    let across = |at: Point| way.cross(at - point);
    let (d0, d1, d2, d3) = (across(cubic.p0), across(cubic.p1), across(cubic.p2), across(cubic.p3));
    let (c1, c2, c3) = (3.0 * (d1 - d0), 3.0 * (d0 - 2.0 * d1 + d2), d3 - d0 + 3.0 * (d1 - d2));
    let mut places: Vec<f64> = kurbo::common::solve_cubic(d0, c1, c2, c3)
        .into_iter()
        .map(|t| {
            // One round of Newton: the closed form loses digits on cubics that are all but straight.
            let (value, slope) = (d0 + t * (c1 + t * (c2 + t * c3)), c1 + t * (2.0 * c2 + t * 3.0 * c3));
            if slope.abs() > 1e-9 { t - value / slope } else { t }
        })
        .filter(|t| (-END..=1.0 + END).contains(t))
        .map(|t| t.clamp(0.0, 1.0))
        .collect();
    places.sort_by(f64::total_cmp);
    places
}

/// The level rectangle round the control points, within which the curve lies.
fn hull(cubic: &CubicBez) -> Rect {
    Rect::from_points(cubic.p0, cubic.p3).union_pt(cubic.p1).union_pt(cubic.p2)
}

/// How far the control points stand off the chord or run beyond it, cm: more than the curve does.
fn sag(cubic: &CubicBez) -> f64 {
    let even = |part: f64| cubic.p0.lerp(cubic.p3, part);
    cubic.p1.distance(even(1.0 / 3.0)).max(cubic.p2.distance(even(2.0 / 3.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::straight;

    #[test]
    fn crossing_on_both_curves() {
        let a = CubicBez::new((0.0, 0.0), (3.0, 6.0), (6.0, -6.0), (9.0, 1.0));
        let b = CubicBez::new((2.0, -5.0), (3.0, 0.0), (1.0, 3.0), (2.5, 8.0));
        let (t, u) = crossing(&a, &b).expect("they cross");
        assert!(a.eval(t).distance(b.eval(u)) < 1e-9);
    }

    #[test]
    fn shared_end_found() {
        let a = straight(Point::new(0.0, 0.0), Point::new(5.0, 5.0));
        let b = straight(Point::new(5.0, 5.0), Point::new(9.0, 0.0));
        assert!(crossing(&a, &b).is_some());
    }

    #[test]
    fn curves_apart_do_not_cross() {
        let a = CubicBez::new((0.0, 0.0), (3.0, 1.0), (6.0, 1.0), (9.0, 0.0));
        let b = CubicBez::new((0.0, 0.5), (3.0, 1.5), (6.0, 1.5), (9.0, 0.5));
        assert!(crossing(&a, &b).is_none());
    }

    #[test]
    fn line_crossed_where_the_curve_is() {
        let cubic = CubicBez::new((0.0, 0.0), (3.0, 6.0), (6.0, -6.0), (9.0, 1.0));
        let (point, way) = (Point::new(0.0, 0.3), Vec2::new(1.0, 0.01));
        let places = line_crossings(&cubic, point, way);
        assert_eq!(places.len(), 3);
        assert!(places.iter().all(|t| way.cross(cubic.eval(*t) - point).abs() < 1e-9));
    }
}
