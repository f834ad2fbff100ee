//! Whether a closed outline can be cut from paper.

use kurbo::{CubicBez, ParamCurve, Point, Rect};

/// Why an outline is unsound.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Two edges that follow each other do not touch: the gap's place.
    Open(Point),
    /// The outline crosses itself here.
    Crossing(Point),
}

/// Edges that follow each other may miss each other by this much, cm: rounding only.
const GAP: f64 = 1e-6;
/// A cubic seam is looked at through this many chords; a crossing smaller than their sag would be under 0.02 cm.
const CHORDS: usize = 8;

/// Looks at the closed outline made of `cubics` in order: the first fault, or `None` when it is closed and simple.
pub fn soundness(cubics: &[CubicBez]) -> Option<Fault> {
    let mut corners: Vec<Point> = Vec::with_capacity(cubics.len() * CHORDS);
    for (index, cubic) in cubics.iter().enumerate() {
        let next = cubics[(index + 1) % cubics.len()].p0;
        let gap = cubic.p3.distance(next);
        if gap.is_nan() || gap > GAP {
            return Some(Fault::Open(cubic.p3));
        }
        let chords = if is_straight(cubic) { 1 } else { CHORDS };
        for step in 0..chords {
            let point = cubic.eval(step as f64 / chords as f64);
            if corners.last().is_none_or(|last| last.distance(point) > GAP) {
                corners.push(point);
            }
        }
    }
    crossing(&corners).map(Fault::Crossing)
}

fn is_straight(cubic: &CubicBez) -> bool {
    let chord = cubic.p3 - cubic.p0;
    let reach = chord.hypot() * 1e-9;
    chord.cross(cubic.p1 - cubic.p0).abs() <= reach * chord.hypot()
        && chord.cross(cubic.p2 - cubic.p0).abs() <= reach * chord.hypot()
}

/// The first crossing of the closed polygon, by runs of corners whose boxes touch.
fn crossing(corners: &[Point]) -> Option<Point> {
    /// Sides are compared in runs: most pairs of runs are told apart by their boxes alone.
    const RUN: usize = 6;
    let count = corners.len();
    let corner = |index: usize| corners[index % count];
    let boxes: Vec<Rect> = (0..count)
        .step_by(RUN)
        .map(|from| {
            (from..=(from + RUN).min(count))
                .map(corner)
                .fold(Rect::from_points(corner(from), corner(from)), |run, point| run.union_pt(point))
        })
        .collect();
    for (i, one) in boxes.iter().enumerate() {
        for (j, other) in boxes.iter().enumerate().skip(i) {
            if one.x0 > other.x1 || other.x0 > one.x1 || one.y0 > other.y1 || other.y0 > one.y1 {
                continue;
            }
            for a in i * RUN..((i + 1) * RUN).min(count) {
                for b in (j * RUN).max(a + 1)..((j + 1) * RUN).min(count) {
                    let neighbours = b == a + 1 || (a == 0 && b == count - 1);
                    if !neighbours && let Some(at) = cross(corner(a), corner(a + 1), corner(b), corner(b + 1))
                    {
                        return Some(at);
                    }
                }
            }
        }
    }
    None
}

fn cross(a: Point, b: Point, c: Point, d: Point) -> Option<Point> {
    let side = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
    let (abc, abd, cda, cdb) = (side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b));
    (abc * abd < 0.0 && cda * cdb < 0.0).then(|| a.lerp(b, cda / (cda - cdb)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::straight;

    fn polygon(corners: &[(f64, f64)]) -> Vec<CubicBez> {
        (0..corners.len())
            .map(|i| straight(corners[i].into(), corners[(i + 1) % corners.len()].into()))
            .collect()
    }

    #[test]
    fn square_sound() {
        assert_eq!(soundness(&polygon(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)])), None);
    }

    #[test]
    fn bow_tie_crosses() {
        let tie = polygon(&[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)]);
        assert!(
            matches!(soundness(&tie), Some(Fault::Crossing(p)) if p.distance(Point::new(5.0, 5.0)) < 1e-9)
        );
    }

    #[test]
    fn gap_found() {
        let mut open = polygon(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)]);
        open[1].p3.x += 0.01;
        assert!(matches!(soundness(&open), Some(Fault::Open(_))));
    }

    #[test]
    fn crossing_far_along_found() {
        let mut corners: Vec<(f64, f64)> = (0..80).map(|i| (i as f64, (i % 2) as f64 * 0.3)).collect();
        corners.extend((0..80).rev().map(|i| (i as f64, if i == 40 { -0.1 } else { 5.0 })));
        assert!(matches!(soundness(&polygon(&corners)), Some(Fault::Crossing(_))));
    }
}
