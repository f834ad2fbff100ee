//! The line that runs beside a seam.

use kurbo::{BezPath, CubicBez, ParamCurve, PathEl, Point, Vec2};

use super::{Chain, crossing, end_tangent, length, meet, start_tangent, straight};

/// How far the drawn line may stand off the true one, cm: half of the thinnest printed line.
const TOLERANCE: f64 = 0.002;
/// Ends nearer than this are led together, cm: the corner between them is under two degrees, and their middle stands off
/// the true line by less than a thousandth.
const ONE_POINT: f64 = 0.04;
/// A cubic shorter than this is a crumb left where truing cut a seam, without a direction to speak of, cm.
const CRUMB: f64 = 0.01;

/// The direction that points away from a panel across an edge that runs along `way`; panels are walked with their
/// inside to the right.
pub fn outward(way: Vec2) -> Vec2 {
    Vec2::new(way.y, -way.x)
}

/// The line `width` cm outside of a seam, within 0.002 cm. Where the seam has a corner, or curves tighter than the
/// line beside it can follow, the parts of the line run to where they cross, as a cutter's ruler would.
pub fn beside(seam: &Chain, width: f64) -> Chain {
    let mut line: Vec<CubicBez> = Vec::with_capacity(seam.cubics().len());
    let whole = |cubic: &&CubicBez| cubic.p0.distance(cubic.p3) > CRUMB;
    for cubic in seam.cubics().iter().filter(whole) {
        join(&mut line, piece_beside(cubic, width));
    }
    Chain::from_cubics(without_loops(line, f64::INFINITY)).unwrap_or_else(|| seam.clone())
}

/// The line beside a straight seam that is `from` cm away at its start and `to` cm at its end.
pub fn beside_running(from: Point, to: Point, widths: [f64; 2]) -> CubicBez {
    let out = outward(super::unit(to - from));
    straight(from + out * widths[0], to + out * widths[1])
}

fn piece_beside(cubic: &CubicBez, width: f64) -> Vec<CubicBez> {
    if width == 0.0 {
        return vec![*cubic];
    }
    if is_straight(cubic) {
        return vec![beside_running(cubic.p0, cubic.p3, [width, width])];
    }
    let mut path = BezPath::new();
    kurbo::offset::offset_cubic(*cubic, -width, TOLERANCE, &mut path);
    let mut at = cubic.p0;
    let mut line = Vec::new();
    for step in path.elements() {
        match *step {
            PathEl::MoveTo(to) => at = to,
            PathEl::CurveTo(p1, p2, p3) => {
                line.push(CubicBez::new(at, p1, p2, p3));
                at = p3;
            }
            PathEl::LineTo(to) => {
                line.push(straight(at, to));
                at = to;
            }
            PathEl::QuadTo(..) | PathEl::ClosePath => {}
        }
    }
    line
}

/// Whether a cubic is a straight line, which has no curvature to be offset by.
fn is_straight(cubic: &CubicBez) -> bool {
    let chord = cubic.p3 - cubic.p0;
    let off = |control: Point| chord.cross(control - cubic.p0).abs();
    off(cubic.p1).max(off(cubic.p2)) <= 1e-7 * chord.hypot2()
}

/// Runs the line on with what lies beside the next cubic.
fn join(line: &mut Vec<CubicBez>, next: Vec<CubicBez>) {
    let (Some(last), Some(first)) = (line.last().copied(), next.first().copied()) else {
        line.extend(next);
        return;
    };
    let mut next = next;
    if last.p3.distance(first.p0) <= ONE_POINT {
        let shift = 0.5 * (first.p0 - last.p3);
        let end = line.len() - 1;
        line[end].p2 += shift;
        next[0].p1 -= shift;
        (line[end].p3, next[0].p0) = (last.p3 + shift, last.p3 + shift);
    } else if let Some((t, u)) = crossing(&last, &first) {
        let end = line.len() - 1;
        line[end] = last.subsegment(0.0..t);
        next[0] = first.subsegment(u..1.0);
        next[0].p0 = line[end].p3;
    } else {
        let corner = meet(last.p3, end_tangent(&last), first.p0, start_tangent(&first));
        match corner {
            Some((on, back)) if on > 0.0 && back < 0.0 => {
                let corner = last.p3 + end_tangent(&last) * on;
                line.push(straight(last.p3, corner));
                line.push(straight(corner, first.p0));
            }
            _ => line.push(straight(last.p3, first.p0)),
        }
    }
    line.extend(next);
}

/// The line without the loops, up to `longest` cm round, that it draws where the seam curves tighter than the line can
/// follow.
pub fn without_loops(mut line: Vec<CubicBez>, longest: f64) -> Vec<CubicBez> {
    let mut from = 0;
    while from + 2 < line.len() {
        let (mut round, mut last) = (0.0, None);
        for to in from + 2..line.len() {
            round += length(&line[to - 1]);
            if round > longest {
                break;
            }
            last = crossing(&line[from], &line[to]).map(|(t, u)| (to, t, u)).or(last);
        }
        if let Some((to, t, u)) = last {
            let head = line[from].subsegment(0.0..t);
            let mut tail = line[to].subsegment(u..1.0);
            tail.p0 = head.p3;
            line.splice(from..=to, [head, tail]);
        }
        from += 1;
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_of_a_panel_walked_along_its_waist_is_up() {
        let waist = Chain::of(straight(Point::new(0.0, 0.0), Point::new(20.0, 0.0)));
        assert_eq!(beside(&waist, 1.5).start(), Point::new(0.0, -1.5));
        assert_eq!(beside(&waist, 1.5).end(), Point::new(20.0, -1.5));
    }

    #[test]
    fn every_place_as_far_off_as_asked() {
        let seam = Chain::of(CubicBez::new((0.0, 0.0), (1.0, 9.0), (4.0, 12.0), (12.0, 13.0)));
        for width in [-1.5, 0.6, 1.0, 2.5] {
            let line = beside(&seam, width);
            for cubic in line.cubics() {
                for step in 0..=20 {
                    let at = cubic.eval(f64::from(step) / 20.0);
                    let off =
                        kurbo::ParamCurveNearest::nearest(&seam.cubics()[0], at, 1e-9).distance_sq.sqrt();
                    assert!((off - width.abs()).abs() < TOLERANCE, "{width}: {off}");
                }
            }
        }
    }

    #[test]
    fn corner_run_to_where_the_lines_meet() {
        let seam = Chain::of(straight(Point::new(0.0, 0.0), Point::new(10.0, 0.0)))
            .then(straight(Point::new(10.0, 0.0), Point::new(10.0, 10.0)));
        let outside = beside(&seam, 1.0);
        assert!(outside.cubics().iter().any(|cubic| cubic.p3.distance(Point::new(11.0, -1.0)) < 1e-9));
        let inside = beside(&seam, -1.0);
        assert!(inside.cubics()[0].p3.distance(Point::new(9.0, 1.0)) < 1e-9);
    }

    #[test]
    fn tight_curve_without_a_loop() {
        let quarter = |a: f64, b: f64| {
            let arc = kurbo::Arc::new((0.0, 0.0), (2.0, 2.0), a, b, 0.0);
            let mut path = BezPath::new();
            path.move_to(Point::new(2.0 * a.cos(), 2.0 * a.sin()));
            path.extend(arc.append_iter(1e-6));
            path
        };
        // Into the curve, round three quarters of a turn of radius 2, and out again.
        let mut cubics = vec![straight(Point::new(2.0, 8.0), Point::new(2.0, 0.0))];
        let path = quarter(0.0, -std::f64::consts::PI);
        for segment in path.segments() {
            cubics.push(segment.to_cubic());
        }
        cubics.push(straight(Point::new(-2.0, 0.0), Point::new(-2.0, 8.0)));
        let seam = Chain::from_cubics(cubics).expect("cubics");
        let line = beside(&seam, 1.0);
        let whole: f64 = line.cubics().iter().map(length).sum();
        assert!((whole - (16.0 + std::f64::consts::PI)).abs() < 0.01, "{whole}");
        let tight = beside(&seam, 2.5);
        for (i, a) in tight.cubics().iter().enumerate() {
            for b in tight.cubics().iter().skip(i + 2) {
                assert!(crossing(a, b).is_none());
            }
        }
    }
}
