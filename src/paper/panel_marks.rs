//! What is drawn of a panel, in the panel's own place.

use kurbo::{BezPath, Line, Point, Shape as _, Vec2};

use crate::{
    curve::{Chain, end_tangent},
    draft::PanelShape,
};

/// The whole outline, closed.
pub(crate) fn outline(panel: &PanelShape) -> BezPath {
    let mut path = BezPath::new();
    for (index, cubic) in panel.outline().iter().enumerate() {
        if index == 0 {
            path.move_to(cubic.p0);
        }
        path.curve_to(cubic.p1, cubic.p2, cubic.p3);
    }
    path.close_path();
    path
}

/// The sewing line, which leaves the mouths of the darts open.
pub(crate) fn sewing_line(panel: &PanelShape) -> BezPath {
    /// Points nearer than this are one: the rounding of truing lies between them, cm.
    const ONE_POINT: f64 = 1e-6;
    let same = |a: Point, b: Point| a.distance(b) < ONE_POINT;
    let mut path = BezPath::new();
    let mut pen_at: Option<Point> = None;
    for cubic in panel.outline() {
        if panel.darts.iter().any(|dart| same(dart.legs[0], cubic.p0) && same(dart.legs[1], cubic.p3)) {
            continue;
        }
        if pen_at.is_none_or(|pen| !same(pen, cubic.p0)) {
            path.move_to(cubic.p0);
        }
        path.curve_to(cubic.p1, cubic.p2, cubic.p3);
        pen_at = Some(cubic.p3);
    }
    path
}

/// What is drawn inside the outline: the legs of all darts, the folds of pleats, and the lines of style.
pub(crate) fn inside(panel: &PanelShape) -> BezPath {
    let mut path = style_lines(panel);
    path.extend(darts(panel));
    path
}

/// How a key calls what is drawn inside the outline.
pub(crate) fn inside_words(panels: [&PanelShape; 2]) -> &'static str {
    if panels.iter().all(|panel| panel.lines.is_empty()) { "dart" } else { "dart, style line" }
}

/// The lines of style.
pub(crate) fn style_lines(panel: &PanelShape) -> BezPath {
    let mut path = BezPath::new();
    for line in &panel.lines {
        path.move_to(line.p0);
        path.line_to(line.p1);
    }
    path
}

/// The legs of all darts, and the folds of pleats.
pub(crate) fn darts(panel: &PanelShape) -> BezPath {
    let mut path = BezPath::new();
    for dart in &panel.darts {
        path.move_to(dart.legs[0]);
        path.line_to(dart.apex);
        path.line_to(dart.legs[1]);
    }
    for fold in panel.pleats.iter().flat_map(|pleat| pleat.folds) {
        path.move_to(fold.p0);
        path.line_to(fold.p1);
    }
    path
}

/// The crease from the waist to the hem.
pub(crate) fn crease(panel: &PanelShape) -> Line {
    let meets = |edge: &Chain| {
        edge.cubics().iter().find_map(|cubic| {
            let (a, b) = (cubic.p0.x, cubic.p3.x);
            (a != b && a.min(b) <= 0.0 && a.max(b) >= 0.0)
                .then(|| cubic.p0.y + (cubic.p3.y - cubic.p0.y) * (0.0 - a) / (b - a))
        })
    };
    // A dart that stands on the crease is not crossed by it.
    let dart = panel.darts.iter().find(|dart| dart.legs[0].x <= 0.0 && dart.legs[1].x >= 0.0);
    let [top, bottom] = panel.grain();
    let from = dart.map(|dart| dart.apex.y + 1.0).or_else(|| meets(&panel.waist)).unwrap_or(top.y);
    let to = meets(&panel.hem).unwrap_or(bottom.y);
    Line::new((0.0, from), (0.0, to))
}

/// Two strokes at either end of the grain.
pub(crate) fn arrow_heads(panel: &PanelShape, size: f64) -> BezPath {
    let mut path = BezPath::new();
    let [top, bottom] = panel.grain();
    for (tip, way) in [(top, 1.0), (bottom, -1.0)] {
        path.move_to(tip + Vec2::new(-0.35 * size, way * size));
        path.line_to(tip);
        path.line_to(tip + Vec2::new(0.35 * size, way * size));
    }
    path
}

/// A short stroke into the panel at every notch, `size` cm long.
pub(crate) fn notches(panel: &PanelShape, size: f64) -> BezPath {
    let mut path = BezPath::new();
    for notch in &panel.notches {
        let along = panel
            .edge(notch.edge)
            .cubics()
            .iter()
            .find(|cubic| cubic.p3.distance(notch.point) < 1e-6)
            .map_or(Vec2::new(0.0, 1.0), end_tangent);
        let stroke = Line::new(notch.point, notch.point + along.turn_90() * size);
        path.extend(stroke.to_path(0.1));
    }
    path
}
