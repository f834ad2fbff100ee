//! The two panels beside each other, at true scale.

use kurbo::{Affine, BezPath, Line, Point, Shape as _, Vec2};

use crate::{
    draft::{Draft, PanelShape},
    drawing::{Align, Drawing, Ink, Layer, Pen, Text},
    terms::{Edge, Level, Word},
};

/// Between the panels and round the sheet, cm.
const GAP: f64 = 6.0;
const MARGIN: f64 = 2.0;
/// Line widths, cm.
const STRONG: f64 = 0.08;
const FAINT: f64 = 0.03;

/// The front and, to the right of it, the back, with levels, crease, darts, notches and test squares.
pub fn block_drawing(draft: &Draft) -> Drawing {
    let (front, back) = (&draft.shape.front, &draft.shape.back);
    let reach = |panel: &PanelShape| outline(panel).bounding_box();
    let shift = Vec2::new(reach(front).x1 - reach(back).x0 + GAP, 0.0);
    let mut levels = Layer::new("levels");
    let mut creases = Layer::new("crease");
    let mut panels = Layer::new("panels");
    let mut darts = Layer::new("darts");
    let mut notches = Layer::new("notches");
    let mut words = Layer::new("labels");
    for (panel, by) in [(front, Vec2::ZERO), (back, shift)] {
        let place = Affine::translate(by);
        for level in Level::ALL {
            level_line(&mut levels, panel, draft.plan.levels[*level], by);
        }
        let [from, to] = panel.grain();
        creases.line(
            (place * Line::new(from, to)).to_path(0.1),
            Pen::new(FAINT, Ink::Middle).dashed(&[0.6, 0.3]),
        );
        panels.line(place * outline(panel), Pen::new(STRONG, Ink::Black));
        for dart in &panel.darts {
            let mut path = BezPath::new();
            path.move_to(dart.legs[0]);
            path.line_to(dart.apex);
            path.line_to(dart.legs[1]);
            darts.line(place * path, Pen::new(STRONG / 2.0, Ink::Black));
        }
        for notch in &panel.notches {
            notches.line(
                (place * across(panel, notch.edge, notch.point)).to_path(0.1),
                Pen::new(STRONG, Ink::Black),
            );
        }
        let middle =
            Point::new(0.0, 0.5 * (draft.plan.levels[Level::Crotch] + draft.plan.levels[Level::Knee]));
        words.text(Text::new(middle + by, 1.2, panel.panel.key()).aligned(Align::Middle).bold());
        let below = middle + by + Vec2::new(0.0, 1.6);
        words.text(Text::new(below, 0.7, label(draft)).aligned(Align::Middle));
    }
    test_squares(&mut words, Point::new(reach(front).x0, draft.plan.levels[Level::Hem] + 3.0));
    Drawing::around(
        draft.name.as_str(),
        &format!(
            "Drafted by breeks: front and back of the block {} for {}, at true scale",
            draft.recipe.name, draft.name
        ),
        vec![levels, creases, panels, darts, notches, words],
        MARGIN,
    )
}

fn label(draft: &Draft) -> String {
    format!("{} for {}", draft.recipe.name, draft.name)
}

fn outline(panel: &PanelShape) -> BezPath {
    let mut path = BezPath::new();
    for (index, piece) in panel.outline().iter().enumerate() {
        if index == 0 {
            path.move_to(piece.p0);
        }
        path.curve_to(piece.p1, piece.p2, piece.p3);
    }
    path.close_path();
    path
}

fn level_line(layer: &mut Layer, panel: &PanelShape, y: f64, by: Vec2) {
    /// How far a level runs on beyond the panel, cm.
    const BEYOND: f64 = 1.0;
    let inner = panel.inseam.crossings(y).chain(panel.crotch_seam.crossings(y)).fold(f64::INFINITY, f64::min);
    let outer = panel.side_seam.crossings(y).fold(f64::NEG_INFINITY, f64::max);
    if inner < outer {
        let line = Line::new((inner - BEYOND, y), (outer + BEYOND, y));
        layer.line((Affine::translate(by) * line).to_path(0.1), Pen::new(FAINT, Ink::Faint));
    }
}

/// A short stroke square to the edge, into the panel.
fn across(panel: &PanelShape, edge: Edge, point: Point) -> Line {
    /// Half the length of the stroke, cm.
    const HALF: f64 = 0.4;
    let chain = panel.edge(edge);
    let along = chain
        .pieces()
        .iter()
        .find(|piece| piece.p3.distance(point) < 1e-6)
        .map_or(Vec2::new(0.0, 1.0), crate::curve::end_tangent);
    let square = Vec2::new(-along.y, along.x) * HALF;
    Line::new(point - square, point + square)
}

fn test_squares(layer: &mut Layer, at: Point) {
    for (side, name, right) in [(5.0, "5 cm", 0.0), (2.0 * crate::unit::CM_PER_INCH, "2 in", 8.0)] {
        let corner = at + Vec2::new(right, 0.0);
        let square = kurbo::Rect::from_origin_size(corner, (side, side));
        layer.line(square.to_path(0.1), Pen::new(FAINT, Ink::Black));
        layer.text(Text::new(square.center() + Vec2::new(0.0, 0.2), 0.6, name).aligned(Align::Middle));
    }
    layer.text(Text::new(
        at + Vec2::new(0.0, 6.4),
        0.6,
        "Check a square both ways before cutting. Sew a toile first. Sewing line, no allowances.",
    ));
}
