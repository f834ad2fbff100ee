//! A path as the corners and curve points of polylines.

use kurbo::{BezPath, ParamCurve, PathEl, PathSeg, Point, Shape, Vec2};

use crate::drawing::picture::{FLATNESS, straight_lines};

/// A path that bends by less than this at a joint runs on as a curve, radians: 1 degree.
const CORNER: f64 = 0.0175;

/// Two points nearer than this are one, cm: left over from arithmetic, not drawn.
const SAME: f64 = 1e-6;

/// One unbroken line.
pub(super) struct Run {
    pub(super) vertices: Vec<Vertex>,
    /// Whether the last vertex joins the first.
    pub(super) closed: bool,
}

pub(super) struct Vertex {
    pub(super) at: Point,
    pub(super) corner: bool,
}

/// The unbroken lines of a path; lines without length are left out.
pub(super) fn runs(path: &BezPath) -> Vec<Run> {
    let mut runs = Vec::new();
    for part in parts(path) {
        let segments: Vec<PathSeg> =
            part.segments().filter(|segment| segment.perimeter(SAME) > SAME).collect();
        let (Some(first), Some(last)) = (segments.first(), segments.last()) else { continue };
        let closed = first.start().distance(last.end()) <= SAME;
        let mut vertices = Vec::new();
        let mut before = closed.then(|| ends(last).1);
        for segment in &segments {
            let (start, end) = ends(segment);
            let corner =
                before.is_none_or(|before| before.cross(start).atan2(before.dot(start)).abs() > CORNER);
            vertices.push(Vertex { at: segment.start(), corner });
            let chords = straight_lines(&BezPath::from_path_segments(std::iter::once(*segment)), FLATNESS);
            vertices.extend(chords.iter().skip(1).map(|chord| Vertex { at: chord.p0, corner: false }));
            before = Some(end);
        }
        if !closed {
            vertices.push(Vertex { at: last.end(), corner: true });
        }
        runs.push(Run { vertices, closed });
    }
    runs
}

/// The directions in which a segment begins and ends.
fn ends(segment: &PathSeg) -> (Vec2, Vec2) {
    let cubic = segment.to_cubic();
    let points = [cubic.p0, cubic.p1, cubic.p2, cubic.p3];
    // A handle of no length lies on its end: the direction is then to the next point that does not.
    let from = points.iter().map(|point| *point - cubic.p0).find(|way| way.hypot2() > 0.0);
    let to = points.iter().rev().map(|point| cubic.p3 - *point).find(|way| way.hypot2() > 0.0);
    (from.unwrap_or_default(), to.unwrap_or_default())
}

/// The path cut where the pen is lifted.
fn parts(path: &BezPath) -> Vec<BezPath> {
    let mut parts: Vec<BezPath> = Vec::new();
    for step in path.elements() {
        match (step, parts.last_mut()) {
            (PathEl::MoveTo(_), _) | (_, None) => parts.push(BezPath::from_vec(vec![*step])),
            (_, Some(part)) => part.push(*step),
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn corners_told_from_smooth_joints() {
        let mut path = BezPath::new();
        path.move_to((0.0, 0.0));
        path.line_to((10.0, 0.0));
        path.curve_to((12.0, 0.0), (15.0, 3.0), (15.0, 5.0));
        path.line_to((0.0, 5.0));
        path.close_path();
        let [run] = &runs(&path)[..] else { panic!("one line") };
        let corners: Vec<Point> = run.vertices.iter().filter(|v| v.corner).map(|v| v.at).collect();
        assert_eq!(corners, [Point::new(0.0, 0.0), Point::new(15.0, 5.0), Point::new(0.0, 5.0)]);
        assert!(run.closed && run.vertices.len() > 10);
    }

    #[test]
    fn an_open_line_with_corners_at_its_ends() {
        let mut path = BezPath::new();
        path.move_to((0.0, 0.0));
        path.line_to((10.0, 0.0));
        path.move_to((0.0, 1.0));
        path.line_to((10.0, 1.0));
        path.line_to((10.0, 1.0));
        let runs = runs(&path);
        assert_eq!(runs.len(), 2);
        assert!(runs.iter().all(|run| !run.closed && run.vertices.len() == 2 && run.vertices[1].corner));
    }
}
