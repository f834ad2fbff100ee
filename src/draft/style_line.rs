//! Lines of style, as the upper edge of a back yoke: drawn on the block, and carried with the part they lie on.
//!
//! By hand such a line is drawn on the block before it is corrected. Then each end goes where its edge goes:
//!
//! - Above the cut on the hip line it is turned with what is turned there, and stays where the part below goes down. An
//!   end below the cut goes down with that part and is not turned.
//! - The inner end keeps its distance from the centre waist along the centre line, since the waist leans and is squared
//!   together with what hangs below it: so a yoke stays as deep at the centre as its recipe makes it.
//! - The outer end keeps its height on the side seam when the seam goes sideways.
//! - A waist that is raised along its own edges is drawn anew above the line, which stays, as the ends of darts do.

use kurbo::{CubicBez, Line, ParamCurve, Point, Vec2};

use super::{
    moves::Moves,
    panel::{PanelShape, Roles},
    plan::{PanelPlan, centre_at},
};
use crate::{
    curve::{Chain, Turn, line_crossings, unit},
    terms::Role,
};

/// A line of style where it lies on its panel, both ends on the edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StyleLine {
    /// From the crotch seam to the side seam.
    pub line: Line,
    /// How far along the crotch seam from the crotch point it begins, cm.
    pub along_crotch_seam: f64,
    /// How far along the side seam from the waist it ends, cm.
    pub along_side_seam: f64,
}

impl PanelShape {
    /// The lines of style with where they meet the edges.
    pub fn style_lines(&self) -> impl Iterator<Item = StyleLine> {
        self.lines.iter().map(|line| StyleLine {
            line: *line,
            along_crotch_seam: self.crotch_seam.walk_to_level(line.p0.y).0,
            along_side_seam: self.side_seam.walk_to_level(line.p1.y).0,
        })
    }

    /// Leaves out the lines of style that no longer reach from edge to edge.
    pub(super) fn keep_whole_lines(&mut self) {
        /// An end this near to its edge lies on it, cm: rounding only.
        const ON_EDGE: f64 = 1e-6;
        let lies_on = |edge: &Chain, point: Point| edge.walk_to_level(point.y).1.distance(point) < ON_EDGE;
        let (crotch_seam, side_seam) = (&self.crotch_seam, &self.side_seam);
        self.lines.retain(|line| lies_on(crotch_seam, line.p0) && lies_on(side_seam, line.p1));
    }
}

/// A line of the plan carried by the moves and brought to the trued edges. `hinge` is where the side crosses the hip line.
pub(super) fn carried(
    [from, to]: [Point; 2],
    plan: &PanelPlan,
    moves: &Moves,
    roles: &Roles,
    hinge: Point,
    [crotch_seam, side]: [&Chain; 2],
) -> Line {
    let cut = plan.roles[Role::SideHip].y;
    let inner = if from.y < cut {
        as_far_below_waist(from, &plan.roles, roles) + down(roles) * moves.raise_centre
    } else {
        centre_at(roles, from.y + moves.depth)
    };
    let (height, turn) = if to.y < cut {
        (to.y - moves.uneven, moves.wedge_turn(&plan.roles).unwrap_or(Turn::NONE))
    } else {
        (to.y + moves.depth, Turn::NONE)
    };
    let at_height = turn.about(hinge) * Point::new(hinge.x, height);
    let level = turn.of(Vec2::new(1.0, 0.0));
    let crossing = |cubic: &CubicBez| Some(cubic.eval(*line_crossings(cubic, at_height, level).first()?));
    let outer = side.cubics().iter().find_map(crossing).unwrap_or(side.start());
    Line::new(crotch_seam.walk_to_level(inner.y).1, outer)
}

/// The point of the old centre line as far below the new centre waist, on the new line.
pub(super) fn as_far_below_waist(point: Point, old: &Roles, new: &Roles) -> Point {
    new[Role::CentreWaist] + down(new) * (point - old[Role::CentreWaist]).dot(down(old))
}

/// The direction down the straight centre line.
fn down(roles: &Roles) -> Vec2 {
    unit(roles[Role::CurveStart] - roles[Role::CentreWaist])
}
