//! Joining the roles below the waist: inseam, crotch curve and side seam.

use kurbo::{CubicBez, Point, Vec2};

use super::{
    panel::Roles,
    plan::{BendPlan, PanelPlan},
    smooth::{smooth_max, smooth_min},
};
use crate::{
    curve::{Bend, eased, meet, straight, unit},
    terms::{Panel, Role},
};

/// How far `upward`, a direction up the leg, leans towards the fork, radians.
fn fork_lean(upward: Vec2) -> f64 {
    (-upward.x).atan2(-upward.y)
}

/// The direction up the leg that leans `lean` towards the fork.
fn up_the_leg(lean: f64) -> Vec2 {
    let (sin, cos) = lean.sin_cos();
    Vec2::new(-sin, -cos)
}

/// The inseam and the crotch curve of one panel, which meet at the crotch point at the angle of the crossing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fork {
    /// Hem to knee.
    pub lower: CubicBez,
    /// Knee to crotch point.
    pub upper: CubicBez,
    /// Curve start to crotch point.
    pub bend: Bend,
    /// The guide point of the recipe could not be met.
    pub guide_missed: bool,
}

/// The crotch curve may leave the crotch point at most this steeply downwards, radians: beyond, the crotch point
/// would no longer be the lowest of its curve by more than a thread.
const LEAST_SLOPE: f64 = -0.14;
/// Where the corner of the bend's triangle stands at the highest, as a part of the way from curve start to the
/// level of the crotch point: higher, and the curve would be a straight line with a hook.
const HIGHEST_CORNER: f64 = 0.35;
/// Over this angle limits are rounded, radians.
const ROUNDING: f64 = 0.02;
/// The least turn of the inseam at its top, as a part of its turn at the knee: keeps it free of a second bow.
const LEAST_TURN: f64 = 0.4;

/// Draws inseam and crotch curve. `tilt` is by how much the crossing is off square: front `+`, back `-`, so that the
/// two together are 180 degrees. Where the bend has no room for the crossing, the top of the inseam yields.
pub(super) fn fork(plan: &PanelPlan, roles: &Roles, tilt: f64) -> Fork {
    let (knee, point) = (roles[Role::InnerKnee], roles[Role::CrotchPoint]);
    let lower = straight(roles[Role::InnerHem], knee);
    let up = unit(knee - roles[Role::InnerHem]);
    let (start, down) = (roles[Role::CurveStart], unit(roles[Role::CurveStart] - roles[Role::CentreWaist]));

    let chord = point - knee;
    let at_knee = fork_lean(chord) - fork_lean(up);
    let bowed = 8.0 * plan.inseam_bow / chord.hypot() - at_knee;
    let lean = fork_lean(chord) + smooth_max(bowed, LEAST_TURN * at_knee, ROUNDING);

    let slope = if plan.printed { 0.0 } else { held_slope(lean + tilt, start, down, point) };
    let lean = if plan.printed { lean } else { slope - tilt };
    let upper = eased(knee, up, point, up_the_leg(lean));

    let leaving = Vec2::new(slope.cos(), -slope.sin());
    let bend = Bend::between(start, down, point, leaving, plan.bend.fullness())
        // Cannot be met on a plan that was checked: the slope is held so that the corner lies between the two.
        .unwrap_or(Bend { a: start, corner: Point::new(start.x, point.y), c: point, fullness: 0.6 });
    let guided = match plan.bend {
        BendPlan::Fullness(_) => Some(bend),
        BendPlan::Guide(guide) => bend.through(guide),
    };
    Fork { lower, upper, bend: guided.unwrap_or(bend), guide_missed: guided.is_none() }
}

fn held_slope(wanted: f64, start: Point, down: Vec2, point: Point) -> f64 {
    let Some((along, _)) = meet(start, down, point, Vec2::new(1.0, 0.0)) else { return 0.0 };
    let highest = start + down * (HIGHEST_CORNER * along) - point;
    let steepest = (-highest.y).atan2(highest.x);
    smooth_max(smooth_min(wanted, steepest, ROUNDING), LEAST_SLOPE, ROUNDING)
}

/// The side seam from waist to hem, in three parts: to the hip, to the knee, to the hem.
pub(super) fn side_seam(plan: &PanelPlan, roles: &Roles) -> [CubicBez; 3] {
    let (waist, hip) = (roles[Role::SideWaist], roles[Role::SideHip]);
    let (knee, hem) = (roles[Role::SideKnee], roles[Role::SideHem]);
    let (above, below) = (hip - waist, knee - hip);
    let (lean_above, lean_below) = (side_lean(above), side_lean(below));
    let (long, short) = (below.hypot(), above.hypot());
    // Half of the tangent of the circle through the three points: the hip curve rounds, the hip line stays widest.
    let lean_hip = 0.5 * (lean_above * long + lean_below * short) / (long + short);
    let at_hip = down_the_side(lean_hip);
    let turn = lean_above - lean_hip;
    let bowed = 8.0 * side_bow(plan, above) / short - smooth_max(turn, 0.0, ROUNDING);
    let top = down_the_side(lean_above + bowed);
    [eased(waist, top, hip, at_hip), eased(hip, at_hip, knee, unit(hem - knee)), straight(knee, hem)]
}

/// The hollow or fullness of the side above the hip: the recipe's where the side takes its ordinary part of the
/// suppression over an ordinary length, less where there is less to round.
fn side_bow(plan: &PanelPlan, above: Vec2) -> f64 {
    /// The take and the length for which recipes print their bow, cm.
    const ORDINARY_TAKE: f64 = 2.5;
    const ORDINARY_LENGTH: f64 = 18.0;
    if plan.printed {
        return plan.side_bow;
    }
    let take = smooth_max(smooth_min(above.x / ORDINARY_TAKE, 1.0, 0.05), 0.0, 0.05);
    plan.side_bow * take * smooth_min(above.hypot() / ORDINARY_LENGTH, 1.0, 0.05)
}

/// How far a direction down the side leans outward, radians.
pub(super) fn side_lean(downward: Vec2) -> f64 {
    downward.x.atan2(downward.y)
}

fn down_the_side(lean: f64) -> Vec2 {
    let (sin, cos) = lean.sin_cos();
    Vec2::new(sin, cos)
}

/// By how much the crossing of a panel is off square.
pub(super) fn tilt_of(panel: Panel, tilt: f64) -> f64 {
    match panel {
        Panel::Front => tilt,
        Panel::Back => -tilt,
    }
}
