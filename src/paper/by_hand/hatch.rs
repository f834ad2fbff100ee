//! Areas filled with strokes or dots, cut at their edge: so they print the same everywhere and lie on a copy as well.

use kurbo::{BezPath, Circle, Point, Shape as _, Vec2};

/// Between two strokes, and from dot to dot, cm.
const APART: f64 = 0.1;
const DOTS_APART: f64 = 0.12;
const DOT: f64 = 0.018;
/// Shorter strokes are the rounding of two lines that run along each other, cm.
const SHORTEST: f64 = 0.025;

/// Strokes at 45 degrees inside the first outline and outside the second, where both are inside `frame`; `turn` adds to
/// the angle.
pub(super) fn strokes(inside: &[Point], outside: &[Point], frame: &[Point], turn: f64) -> BezPath {
    let mut path = BezPath::new();
    over_rows(inside, outside, frame, turn, APART, |from, to| {
        path.move_to(from);
        path.line_to(to);
    });
    path
}

/// Dots in the same place.
pub(super) fn dots(inside: &[Point], outside: &[Point], frame: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    over_rows(inside, outside, frame, 0.0, DOTS_APART, |from, to| {
        let count = (from.distance(to) / DOTS_APART).floor() as usize;
        for part in 0..=count {
            let at = from.lerp(to, (part as f64 + 0.5) / (count as f64 + 1.0));
            path.extend(Circle::new(at, DOT).path_elements(0.01));
        }
    });
    path
}

fn over_rows(
    inside: &[Point],
    outside: &[Point],
    frame: &[Point],
    turn: f64,
    apart: f64,
    mut row: impl FnMut(Point, Point),
) {
    let (sin, cos) = (std::f64::consts::FRAC_PI_4 + turn).sin_cos();
    // In this frame strokes are level.
    let level = |point: &Point| Point::new(point.x * cos + point.y * sin, point.y * cos - point.x * sin);
    let back = |x: f64, y: f64| Point::new(x * cos - y * sin, y * cos + x * sin);
    let [inside, outside, frame] =
        [inside, outside, frame].map(|line| line.iter().map(level).collect::<Vec<_>>());
    let heights = inside.iter().map(|point| point.y);
    let (top, bottom) =
        heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
    // Rows stand on one grid for the whole sheet, so that neighbouring areas run on into each other.
    let mut index = (top / apart).ceil();
    while index * apart < bottom {
        // Never exactly through a corner.
        let y = index * apart + 1e-7;
        for (from, to) in minus(&common(&spans(&inside, y), &spans(&frame, y)), &spans(&outside, y)) {
            if to - from > SHORTEST {
                row(back(from, y), back(to, y));
            }
        }
        index += 1.0;
    }
}

/// Where a level runs inside a closed outline.
fn spans(outline: &[Point], y: f64) -> Vec<(f64, f64)> {
    let next = outline.iter().cycle().skip(1);
    let mut hits: Vec<f64> = outline
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.y < y) != (b.y < y))
        .map(|(a, b)| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y))
        .collect();
    hits.sort_by(f64::total_cmp);
    hits.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}

fn common(one: &[(f64, f64)], other: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let pairs = one.iter().flat_map(|a| other.iter().map(move |b| (a.0.max(b.0), a.1.min(b.1))));
    pairs.filter(|(from, to)| from < to).collect()
}

fn minus(one: &[(f64, f64)], other: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut left = one.to_vec();
    for (from, to) in other {
        left = left
            .into_iter()
            .flat_map(|(a, b)| [(a, b.min(*from)), (a.max(*to), b)])
            .filter(|(a, b)| a < b)
            .collect();
    }
    left
}

/// The corners of a rectangle.
pub(super) fn corners(rect: kurbo::Rect) -> [Point; 4] {
    let by = |x: f64, y: f64| rect.origin() + Vec2::new(x * rect.width(), y * rect.height());
    [by(0.0, 0.0), by(1.0, 0.0), by(1.0, 1.0), by(0.0, 1.0)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{ParamCurveArclen as _, Rect};

    fn square(from: f64, to: f64) -> Vec<Point> {
        corners(Rect::new(from, from, to, to)).to_vec()
    }

    fn drawn(path: &BezPath) -> f64 {
        path.segments().map(|stroke| stroke.arclen(1e-9)).sum()
    }

    #[test]
    fn as_much_stroke_as_the_area_holds_rows() {
        let all = strokes(&square(0.0, 3.0), &[], &square(-1.0, 9.0), 0.0);
        assert!((drawn(&all) * APART - 9.0).abs() < 0.1, "{}", drawn(&all));
    }

    #[test]
    fn nothing_where_the_other_outline_lies_or_beyond_the_frame() {
        let ring = strokes(&square(0.0, 3.0), &square(1.0, 2.0), &square(-1.0, 9.0), 0.0);
        assert!((drawn(&ring) * APART - 8.0).abs() < 0.15, "{}", drawn(&ring));
        let half = strokes(&square(0.0, 3.0), &[], &corners(Rect::new(0.0, 0.0, 1.5, 3.0)), 1.0);
        assert!((drawn(&half) * APART - 4.5).abs() < 0.1, "{}", drawn(&half));
    }

    #[test]
    fn lines_that_run_along_each_other_without_a_stroke() {
        assert_eq!(strokes(&square(0.0, 3.0), &square(-0.01, 3.01), &square(-1.0, 9.0), 0.0), BezPath::new());
    }
}
