//! Marks across an edge at which two pieces are matched.

use kurbo::{Line, Point, Vec2};

use crate::{
    curve::outward,
    draft::{Notch, Shape},
    terms::{Edge, Panel, Role, Word},
};

/// A notch of a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PieceNotch {
    /// The edge it stands on.
    pub edge: &'static str,
    /// What it marks.
    pub name: &'static str,
    /// How far along the edge, cm.
    pub from_start: f64,
    /// Where, on the sewing line.
    pub point: Point,
    /// Away from the piece, square to the seam, of length 1.
    pub out: Vec2,
    /// The allowance there, cm.
    pub allowance: f64,
    /// One, or two side by side, by which a back is known.
    pub strokes: usize,
}

/// The length of a notch, cm: short of most sewing lines (common practice, no source).
const LENGTH: f64 = 0.5;
/// From one stroke of a double notch to the other, cm.
const APART: f64 = 0.6;

impl PieceNotch {
    /// A notch of one stroke so far along a seam.
    pub(super) fn on(
        seam: &crate::curve::Chain,
        edge: &'static str,
        name: &'static str,
        from_start: f64,
        allowance: f64,
    ) -> Self {
        let (point, out) = (seam.point_at(from_start), outward(seam.tangent_at(from_start)));
        Self { edge, name, from_start, point, out, allowance, strokes: 1 }
    }

    /// The strokes, each from the line to cut inwards.
    pub fn lines(&self) -> impl Iterator<Item = Line> {
        let (edge, along) = (self.on_cut_line(), Vec2::new(-self.out.y, self.out.x));
        let (out, strokes) = (self.out, self.strokes);
        (0..strokes).map(move |stroke| {
            let shift = along * (APART * (stroke as f64 - 0.5 * (strokes as f64 - 1.0)));
            Line::new(edge + shift, edge + shift - out * LENGTH)
        })
    }

    /// The middle of the notch on the line to cut.
    pub fn on_cut_line(&self) -> Point {
        self.point + self.out * self.allowance
    }
}

/// How far below the crotch point the inseam is matched a second time, cm (common practice, no source).
const BELOW_CROTCH: f64 = 20.0;
/// The second notch stays at least so far above the first, cm.
const ABOVE_KNEE: f64 = 5.0;

/// The notches of a panel: hip and knee on the side seam, knee and below the crotch on the inseam, and where the crotch
/// seam leaves the straight centre, one stroke on the front and two on the back. The inseam is walked from the hem, so that what a shorter back inseam is stretched by lies above it.
pub fn panel_notches(shape: &Shape, panel: Panel, allowance: impl Fn(Edge) -> f64) -> Vec<PieceNotch> {
    let drawn = shape.panel(panel);
    let on = |edge: Edge, name, from_start| {
        PieceNotch::on(drawn.edge(edge), edge.key(), name, from_start, allowance(edge))
    };
    // The front's notches carried to the back by length, both walked from the hem.
    let longer = drawn.side_seam.length() - shape.front.side_seam.length();
    let carried = |notch: &Notch| match notch.edge {
        Edge::SideSeam => notch.from_start + longer,
        _ => notch.from_start,
    };
    let set = &shape.front.notches;
    let mut notches: Vec<PieceNotch> =
        set.iter().map(|notch| on(notch.edge, notch.name, carried(notch))).collect();
    let knee = set.iter().find(|notch| notch.edge == Edge::Inseam).map_or(0.0, |notch| notch.from_start);
    let above_knee = shape.front.inseam.length() - knee;
    let matched =
        if above_knee - BELOW_CROTCH < ABOVE_KNEE { 0.5 * above_knee } else { above_knee - BELOW_CROTCH };
    notches.push(on(Edge::Inseam, "below_crotch", knee + matched));
    let straight = drawn.roles[Role::CentreWaist].distance(drawn.roles[Role::CurveStart]);
    let curve = on(Edge::CrotchSeam, "curve", drawn.crotch_seam.length() - straight);
    notches.push(PieceNotch { strokes: if panel == Panel::Back { 2 } else { 1 }, ..curve });
    notches
}
