//! Moving part of an edge, to nothing at given levels.
//!
//! Between two levels the move grows as 3u^2 - 2u^3 with the height, so that it begins and ends without a kink; and as
//! that is itself a cubic, a seam made of cubics stays one, exactly where the seam's height grows evenly along it. Where
//! it does not, ends and end tangents of every piece are still carried exactly, so that pieces which ran on into each
//! other do so afterwards.

use kurbo::{CubicBez, Point, Vec2};

use crate::curve::Chain;

/// By how much an edge moves at one level.
#[derive(Clone, Copy, Debug)]
pub(super) struct Knot {
    /// The level, cm below the waist line.
    pub y: f64,
    /// The move there.
    pub by: Vec2,
}

impl Knot {
    /// A move towards the side at a level.
    pub(super) fn across(y: f64, towards_side: f64) -> Self {
        Self { y, by: Vec2::new(towards_side, 0.0) }
    }
}

/// Moves the edge as the knots say, which are in the order of their levels; beyond the first and the last the move
/// stays as there. The edge runs up or down throughout, as seams do; one that does not is moved all the same.
pub(super) fn fade(edge: &mut Chain, knots: &[Knot]) {
    if knots.iter().all(|knot| knot.by == Vec2::ZERO) {
        return;
    }
    let (above, below) = still_beyond(knots);
    let touched = |cubic: &CubicBez| cubic.p0.y.max(cubic.p3.y) > above && cubic.p0.y.min(cubic.p3.y) < below;
    if !edge.cubics().iter().any(touched) {
        return;
    }
    for knot in knots {
        edge.cut_across(knot.y);
    }
    for cubic in edge.cubics_mut().iter_mut().filter(|cubic| touched(cubic)) {
        *cubic = moved(cubic, knots);
    }
}

/// The levels above and below which nothing moves.
fn still_beyond(knots: &[Knot]) -> (f64, f64) {
    let still = |knot: Option<&Knot>| knot.filter(|knot| knot.by == Vec2::ZERO).map(|knot| knot.y);
    (still(knots.first()).unwrap_or(f64::NEG_INFINITY), still(knots.last()).unwrap_or(f64::INFINITY))
}

fn moved(cubic: &CubicBez, knots: &[Knot]) -> CubicBez {
    let carried = |end: Point, handle: Point| {
        let (by, slope) = moved_at(end.y, knots);
        (end + by, handle + by + slope * (handle.y - end.y))
    };
    let ((p0, p1), (p3, p2)) = (carried(cubic.p0, cubic.p1), carried(cubic.p3, cubic.p2));
    CubicBez::new(p0, p1, p2, p3)
}

/// By how much a level moves, and how that grows for each cm further down.
fn moved_at(y: f64, knots: &[Knot]) -> (Vec2, Vec2) {
    let (from, to) = match knots.iter().rposition(|knot| knot.y <= y) {
        None => (knots.first(), None),
        Some(index) => (knots.get(index), knots.get(index + 1)),
    };
    match (from, to) {
        (Some(from), Some(to)) if to.y > from.y => {
            let (span, whole) = (to.y - from.y, to.by - from.by);
            let u = (y - from.y) / span;
            (from.by + whole * ((3.0 - 2.0 * u) * u * u), whole * (6.0 * u * (1.0 - u) / span))
        }
        _ => (from.map_or(Vec2::ZERO, |knot| knot.by), Vec2::ZERO),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::{angle_between, end_tangent, start_tangent, straight};

    fn seam() -> Chain {
        Chain::of(straight(Point::new(15.0, 20.0), Point::new(11.0, 60.0)))
            .then(straight(Point::new(11.0, 60.0), Point::new(10.0, 100.0)))
    }

    #[test]
    fn lens_full_at_its_level_and_nothing_beyond() {
        let mut lens = seam();
        fade(&mut lens, &[Knot::across(20.0, 0.0), Knot::across(30.0, 1.2), Knot::across(60.0, 0.0)]);
        let x = |chain: &Chain, y: f64| chain.crossings(y).next().unwrap();
        assert!((x(&lens, 30.0) - x(&seam(), 30.0) - 1.2).abs() < 1e-9);
        assert!((x(&lens, 25.0) - x(&seam(), 25.0) - 0.6).abs() < 1e-9);
        assert!((x(&lens, 80.0) - x(&seam(), 80.0)).abs() < 1e-9);
        assert_eq!(lens.start(), seam().start());
    }

    #[test]
    fn the_same_either_way_along() {
        let knots = [Knot::across(30.0, 0.0), Knot::across(60.0, -0.8), Knot::across(100.0, -1.0)];
        let (mut down, mut up) = (seam(), seam().reversed());
        fade(&mut down, &knots);
        fade(&mut up, &knots);
        let up = up.reversed();
        for y in [25.0, 40.0, 59.0, 70.0, 99.0] {
            let gap = down.crossings(y).next().unwrap() - up.crossings(y).next().unwrap();
            assert!(gap.abs() < 1e-9, "{y}: {gap}");
        }
    }

    #[test]
    fn no_level_cut_twice_and_no_crumb_left() {
        let mut seam = seam();
        for _ in 0..9 {
            fade(&mut seam, &[Knot::across(20.05, 0.0), Knot::across(40.0, 0.3), Knot::across(59.95, 0.0)]);
        }
        assert_eq!(seam.cubics().len(), 3);
    }

    #[test]
    fn pieces_that_ran_on_run_on_still() {
        // A speed that jumps at the joint, as where a sweep was cut short.
        let slow = CubicBez::new((15.0, 20.0), (14.0, 24.0), (12.1, 39.0), (12.0, 40.0));
        let fast = CubicBez::new((12.0, 40.0), (11.0, 50.0), (10.0, 55.0), (10.0, 60.0));
        let mut seam = Chain::of(slow).then(fast);
        fade(&mut seam, &[Knot::across(25.0, 0.0), Knot::across(50.0, 2.0), Knot::across(60.0, 0.0)]);
        for pair in seam.cubics().windows(2) {
            assert!(pair[0].p3.distance(pair[1].p0) < 1e-12);
            let turn = angle_between(end_tangent(&pair[0]), start_tangent(&pair[1]));
            assert!(turn < 1e-9, "{turn}");
        }
    }

    #[test]
    fn ends_on_a_seam_that_turns_back() {
        let back = CubicBez::new((15.0, 20.0), (15.0, 90.0), (11.0, -20.0), (10.0, 50.0));
        let mut seam = Chain::of(back).then(straight(Point::new(10.0, 50.0), Point::new(9.0, 45.0)));
        for level in 20..50 {
            fade(
                &mut seam,
                &[Knot::across(20.0, 0.0), Knot::across(f64::from(level), 1.0), Knot::across(50.0, 0.0)],
            );
        }
        // At most one more piece a level and stretch of the seam that crosses it.
        assert!(seam.cubics().len() <= 2 + 3 * 30, "{}", seam.cubics().len());
    }
}
