//! Moving part of an edge, to nothing at given levels.
//!
//! Between two levels the move grows as 3u^2 - 2u^3 with the height, so that it begins and ends without a kink; and as
//! that is itself a cubic, a seam made of cubics stays one, exactly where the seam's height grows evenly along it.

use kurbo::{CubicBez, Vec2};

use crate::curve::{Chain, t_at_level};

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
/// stays as there. The edge runs up or down throughout, as seams do.
pub(super) fn fade(edge: &mut Chain, knots: &[Knot]) {
    if knots.iter().all(|knot| knot.by == Vec2::ZERO) {
        return;
    }
    let (above, below) = still_beyond(knots);
    let mut index = 0;
    while let Some(piece) = edge.pieces().get(index) {
        if piece.p0.y.max(piece.p3.y) > above && piece.p0.y.min(piece.p3.y) < below {
            let crossing = |knot: &Knot| inner_crossing(piece, knot.y);
            let first = if piece.p0.y <= piece.p3.y {
                knots.iter().find_map(crossing)
            } else {
                knots.iter().rev().find_map(crossing)
            };
            if let Some(t) = first {
                edge.cut_piece(index, t);
            }
            let piece = &mut edge.pieces_mut()[index];
            *piece = moved(piece, knots);
        }
        index += 1;
    }
}

/// The levels above and below which nothing moves.
fn still_beyond(knots: &[Knot]) -> (f64, f64) {
    let still = |knot: Option<&Knot>| knot.filter(|knot| knot.by == Vec2::ZERO).map(|knot| knot.y);
    (still(knots.first()).unwrap_or(f64::NEG_INFINITY), still(knots.last()).unwrap_or(f64::INFINITY))
}

fn moved(piece: &CubicBez, knots: &[Knot]) -> CubicBez {
    let middle = 0.5 * (piece.p0.y + piece.p3.y);
    let above = knots.iter().rposition(|knot| knot.y <= middle);
    let (from, to) = match above {
        None => (knots.first(), knots.first()),
        Some(last) if last + 1 == knots.len() => (knots.last(), knots.last()),
        Some(index) => (knots.get(index), knots.get(index + 1)),
    };
    let (Some(from), Some(to)) = (from, to) else { return *piece };
    let span = to.y - from.y;
    if span <= 0.0 {
        return CubicBez::new(piece.p0 + from.by, piece.p1 + from.by, piece.p2 + from.by, piece.p3 + from.by);
    }
    let (u, v) = ((piece.p0.y - from.y) / span, (piece.p3.y - from.y) / span);
    let at = |a, b, c| from.by + (to.by - from.by) * polar(a, b, c);
    CubicBez::new(
        piece.p0 + at(u, u, u),
        piece.p1 + at(u, u, v),
        piece.p2 + at(u, v, v),
        piece.p3 + at(v, v, v),
    )
}

/// The polar form of 3u^2 - 2u^3, whose values at the ends of a piece are the piece's control values.
fn polar(a: f64, b: f64, c: f64) -> f64 {
    a * b + b * c + c * a - 2.0 * a * b * c
}

/// Where a piece that runs up or down crosses a level, well inside it.
fn inner_crossing(piece: &CubicBez, y: f64) -> Option<f64> {
    /// A cut nearer to an end than this would leave a crumb, as a part of the piece's height.
    const CRUMB: f64 = 1e-6;
    let (from, to) = (piece.p0.y, piece.p3.y);
    let crumb = CRUMB * (to - from).abs();
    ((y - from).abs() > crumb && (to - y).abs() > crumb && (y > from) == (to > y))
        .then(|| t_at_level(piece, y))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curve::straight;
    use kurbo::Point;

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
}
