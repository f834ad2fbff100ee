//! The two panels beside each other, at true scale.

use kurbo::{Affine, BezPath, Line, Point, Rect, Shape as _, Vec2};

use crate::{
    draft::{Draft, PanelShape},
    drawing::{Align, Drawing, Ink, Labels, Layer, Pen, Text},
    terms::{Edge, Level, Word},
};

/// Between the panels and round the sheet, cm.
const GAP: f64 = 6.0;
const MARGIN: f64 = 2.0;
/// Line widths, cm.
const STRONG: f64 = 0.08;
const MIDDLE: f64 = 0.04;
const FAINT: f64 = 0.03;
/// Heights of letters, cm.
const TITLE: f64 = 1.2;
const WORDS: f64 = 0.7;

/// The front and, to the right of it, the back, with levels, grain, darts, notches and test squares.
pub fn block_drawing(draft: &Draft) -> Drawing {
    let (front, back) = (&draft.shape.front, &draft.shape.back);
    let reach = |panel: &PanelShape| outline(panel).bounding_box();
    let shift = Vec2::new(reach(front).x1 - reach(back).x0 + GAP, 0.0);
    let mut layers = Layers::default();
    for (panel, by) in [(front, Vec2::ZERO), (back, shift)] {
        layers.panel(draft, panel, Affine::translate(by));
    }
    layers.test_squares(Point::new(reach(front).x0, draft.shape.levels[Level::Hem] + 3.0));
    Drawing::around(
        draft.name.as_str(),
        &format!(
            "Drafted by breeks: front and back of the block {} for {}, at true scale",
            draft.recipe.name, draft.name
        ),
        layers.upwards(),
        MARGIN,
    )
}

/// What a viewer can show and hide.
struct Layers {
    levels: Layer,
    grain: Layer,
    panels: Layer,
    darts: Layer,
    notches: Layer,
    labels: Layer,
    test_squares: Layer,
}

impl Default for Layers {
    fn default() -> Self {
        Self {
            levels: Layer::new("levels"),
            grain: Layer::new("crease and grain"),
            panels: Layer::new("panels"),
            darts: Layer::new("darts"),
            notches: Layer::new("notches"),
            labels: Layer::new("labels"),
            test_squares: Layer::new("test squares"),
        }
    }
}

impl Layers {
    fn upwards(self) -> Vec<Layer> {
        vec![self.levels, self.grain, self.panels, self.darts, self.notches, self.labels, self.test_squares]
    }

    fn panel(&mut self, draft: &Draft, panel: &PanelShape, place: Affine) {
        self.panels.line(place * outline(panel), Pen::new(STRONG, Ink::Black));
        for dart in &panel.darts {
            let mut path = BezPath::new();
            path.move_to(dart.legs[0]);
            path.line_to(dart.apex);
            path.line_to(dart.legs[1]);
            self.darts.line(place * path, Pen::new(MIDDLE, Ink::Black));
        }
        for notch in &panel.notches {
            let stroke = across(panel, notch.edge, notch.point);
            self.notches.line((place * stroke).to_path(0.1), Pen::new(STRONG, Ink::Black));
        }
        self.grain.line(place * arrow(panel.grain()), Pen::new(MIDDLE, Ink::Middle));
        self.level_lines(draft, panel, place);

        /// To the right of the crease, so that no line runs through the words, cm.
        const BESIDE: f64 = 1.0;
        let levels = &draft.shape.levels;
        let mut at = place * Point::new(BESIDE, 0.5 * (levels[Level::Crotch] + levels[Level::Knee]));
        self.labels.text(Text::new(at, TITLE, panel.panel.key()).bold());
        let below =
            [format!("{} for {}", draft.recipe.name, draft.name), "sewing line: add allowances".to_owned()];
        for line in below {
            at.y += 2.0 * WORDS;
            self.labels.text(Text::new(at, WORDS, line));
        }
    }

    /// The levels across the panel, each with its name beyond the side. Crotch and thigh may lie close together: the
    /// second name then stands off its line.
    fn level_lines(&mut self, draft: &Draft, panel: &PanelShape, place: Affine) {
        /// How far a line runs on beyond the panel, and from its end to its name, cm.
        const BEYOND: f64 = 1.0;
        const APART: f64 = 0.3;
        let mut names = Labels::new(Rect::new(-1e3, -1e3, 1e3, 1e3), 0.1);
        for level in Level::ALL {
            let y = draft.shape.levels[*level];
            let inner =
                panel.inseam.crossings(y).chain(panel.crotch_seam.crossings(y)).fold(f64::INFINITY, f64::min);
            let outer = panel.side_seam.crossings(y).fold(f64::NEG_INFINITY, f64::max);
            if !(inner.is_finite() && outer.is_finite()) {
                continue;
            }
            let line = place * Line::new((inner - BEYOND, y), (outer + BEYOND, y));
            self.levels.line(line.to_path(0.1), Pen::new(FAINT, Ink::Faint));
            let name = Text::new(line.p1, WORDS, level.key()).inked(Ink::Middle);
            let spots = [0.0, WORDS, -WORDS, 2.0 * WORDS]
                .map(|down| name.beside(line.p1 + Vec2::new(0.0, down), APART)[0].clone());
            if let Some(name) = names.place(spots) {
                self.levels.text(name);
            }
        }
    }

    fn test_squares(&mut self, at: Point) {
        let layer = &mut self.test_squares;
        for (side, name, right) in [(5.0, "5 cm", 0.0), (2.0 * crate::unit::CM_PER_INCH, "2 in", 8.0)] {
            let corner = at + Vec2::new(right, 0.0);
            let square = Rect::from_origin_size(corner, (side, side));
            layer.line(square.to_path(0.1), Pen::new(FAINT, Ink::Black));
            let middle = square.center() + Vec2::new(0.0, 0.2);
            layer.text(Text::new(middle, WORDS, name).aligned(Align::Middle));
        }
        let cautions = [
            "Measure a square both ways before cutting.",
            "Sew a toile first.",
            "Sewing lines, without allowances.",
        ];
        for (line, words) in cautions.into_iter().enumerate() {
            let down = 1.0 + 2.0 * WORDS * line as f64;
            layer.text(Text::new(at + Vec2::new(14.5, down), WORDS, words));
        }
    }
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

/// A line with a head at both ends: the cloth may lie either way up unless it has a nap.
fn arrow([from, to]: [Point; 2]) -> BezPath {
    /// Length and half width of a head, cm.
    const HEAD: (f64, f64) = (1.0, 0.3);
    let along = (to - from).normalize();
    let across = Vec2::new(-along.y, along.x) * HEAD.1;
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    for (end, inwards) in [(from, along), (to, -along)] {
        let foot = end + inwards * HEAD.0;
        path.move_to(foot + across);
        path.line_to(end);
        path.line_to(foot - across);
    }
    path
}

/// A short stroke square to the edge, across it.
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
