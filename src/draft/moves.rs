//! What the fit parameters do to the roles of a panel, in the fixed order: crotch depth, widths, angle, wedges, waist.
//! What they do to edges is with the edges.

use kurbo::{Affine, Point, Vec2};

use super::{
    panel::{Levels, Roles},
    plan::{PanelPlan, centre_at},
};
use crate::{
    adjust::{Key, Parameters},
    curve::{Turn, turned, unit},
    terms::{Level, Panel, Role},
};

/// The parameters as one panel feels them; cm and radians, positive gives room.
#[derive(Clone, Copy, Debug)]
pub(super) struct Moves {
    /// Everything below the hip line down.
    pub depth: f64,
    /// Everything below the hip line but the hem.
    pub hem_depth: f64,
    /// Centre line, crotch curve and crotch point out.
    pub width: f64,
    /// The crotch point out, to nothing on the inseam below.
    pub extension: f64,
    /// More lean of the centre line above the hip line.
    pub angle: f64,
    /// A wedge opened at the centre on the hip line.
    pub wedge: f64,
    /// The centre line is stood back to its lean after the wedge.
    pub stood_back: bool,
    /// The centre waist up along its line.
    pub raise_centre: f64,
    /// The side waist up along its seam.
    pub raise_side: f64,
    /// The turn of the upper inseam: its opening where the curve starts.
    pub turn: f64,
    /// How far below the front crotch point the turn's pivot lies.
    pub reach: f64,
    /// The crotch curve deeper towards its corner.
    pub scoop: f64,
    /// The crotch curve straight down.
    pub low: f64,
    /// The sewn waist wider by its darts.
    pub waist: f64,
    /// Moves of the side towards the side: crotch line; crotch line to 20 below; hip; hip to hem.
    pub outer: f64,
    pub front_side: f64,
    pub share: f64,
    pub forward: f64,
    /// The side above the hip up, on the side that is higher.
    pub uneven: f64,
    /// Moves of the leg: knee inwards, lower leg inwards, calf, hem at the crease up.
    pub knee_in: f64,
    pub close: f64,
    pub calf: f64,
    pub hem_up: f64,
}

impl Moves {
    pub(super) fn new(panel: Panel, parameters: &Parameters, hem_follows: bool) -> Self {
        let at = |key| parameters[key];
        let depth = at(Key::CrotchDepth);
        let common = Self {
            depth,
            hem_depth: if hem_follows { depth } else { 0.0 },
            width: 0.0,
            extension: at(Key::ThighInner),
            angle: 0.0,
            wedge: 0.0,
            stood_back: false,
            raise_centre: 0.0,
            raise_side: at(Key::WaistRaiseSide),
            turn: 0.0,
            reach: at(Key::ThighFrontReach),
            scoop: 0.0,
            low: 0.0,
            waist: 0.0,
            outer: at(Key::ThighOuter),
            front_side: 0.0,
            share: 0.0,
            forward: 0.0,
            uneven: at(Key::HipUneven),
            knee_in: at(Key::LegKneeIn),
            close: at(Key::LegClose),
            calf: 0.25 * at(Key::LegCalf),
            hem_up: 0.0,
        };
        match panel {
            Panel::Front => Self {
                extension: common.extension + at(Key::CrotchFrontExtension),
                wedge: at(Key::AbdomenLength),
                stood_back: true,
                raise_centre: at(Key::WaistRaiseFront),
                turn: at(Key::ThighFront),
                scoop: at(Key::CrotchFrontScoop),
                waist: at(Key::AbdomenWidth),
                front_side: at(Key::ThighFrontSide),
                share: at(Key::HipFrontShare),
                forward: at(Key::SideForward),
                hem_up: at(Key::LegKneeForward),
                ..common
            },
            Panel::Back => Self {
                width: at(Key::SeatWidth),
                extension: common.extension + at(Key::CrotchBackExtension),
                angle: at(Key::SeatAngle).to_radians(),
                wedge: at(Key::SeatLength),
                raise_centre: at(Key::WaistRaiseBack),
                turn: -at(Key::ThighBackTake),
                scoop: at(Key::SeatScoop),
                low: at(Key::SeatLow),
                waist: -at(Key::AbdomenWidth),
                share: -at(Key::HipFrontShare),
                forward: -at(Key::SideForward),
                hem_up: -at(Key::LegKneeForward),
                ..common
            },
        }
    }

    /// The levels after the crotch depth has moved.
    pub(super) fn levels(&self, plan: &Levels) -> Levels {
        let mut levels = *plan;
        for level in [Level::Crotch, Level::Thigh, Level::Knee, Level::Calf] {
            levels[level] += self.depth;
        }
        levels[Level::Hem] += self.hem_depth;
        levels
    }

    /// Where the straight centre line meets the hip line, once the panel is widened.
    fn centre_hip(&self, roles: &Roles) -> Point {
        centre_at(roles, roles[Role::SideHip].y)
    }

    /// By how much the side turns about the side hip when the wedge opens; `None` without a wedge.
    pub(super) fn wedge_turn(&self, roles: &Roles) -> Option<Turn> {
        (self.wedge != 0.0)
            .then(|| Turn::opening(self.wedge, roles[Role::SideHip].distance(self.centre_hip(roles))))
    }

    /// The centre line, crotch curve start and leg points where the parameters put them, and how far the side waist
    /// goes sideways with the angle. The crotch point's sideways moves, and the side's, are left to the edges.
    pub(super) fn roles(&self, plan: &PanelPlan) -> (Roles, f64) {
        let mut roles = plan.roles;
        if self.depth != 0.0 || self.hem_depth != 0.0 {
            self.deepen(&mut roles);
        }
        if self.width != 0.0 {
            for role in [Role::CentreWaist, Role::CentreHip, Role::CurveStart] {
                roles[role].x -= self.width;
            }
        }
        let sideways = if self.angle == 0.0 { 0.0 } else { lean(&mut roles, self.angle) };
        if let Some(turn) = self.wedge_turn(&roles) {
            self.open_wedge(&mut roles, turn);
        }
        if self.raise_centre != 0.0 {
            let up = unit(roles[Role::CentreWaist] - roles[Role::CurveStart]);
            roles[Role::CentreWaist] += up * self.raise_centre;
        }
        (roles, sideways)
    }

    fn deepen(&self, roles: &mut Roles) {
        let start = roles[Role::CurveStart].y;
        let below = ((start - roles[Role::SideHip].y) / CUT_FADES).clamp(0.0, 1.0);
        let share = below * below * (3.0 - 2.0 * below);
        roles[Role::CurveStart] = centre_at(roles, start + share * self.depth);
        for role in [Role::CrotchPoint, Role::SideKnee, Role::InnerKnee] {
            roles[role].y += self.depth;
        }
        for role in [Role::SideHem, Role::InnerHem] {
            roles[role].y += self.hem_depth;
        }
    }

    fn open_wedge(&self, roles: &mut Roles, turn: Turn) {
        let hinge = self.centre_hip(roles);
        let turn = turn.about(roles[Role::SideHip]);
        let carried = if self.stood_back { Affine::translate(turn * hinge - hinge) } else { turn };
        for role in [Role::CentreWaist, Role::CentreHip, Role::CurveStart] {
            roles[role] = carried * roles[role];
        }
    }
}

/// A crotch curve that starts at most this far below a cut on the hip line goes down with a part of it, so that a body
/// whose curve starts a thread lower is not drawn otherwise, cm.
const CUT_FADES: f64 = 1.0;

/// Turns the centre line about the hip line; the side waist goes sideways with it at its own height, and the
/// centre is raised so that the waist stays as square to it as it was.
pub(super) fn lean(roles: &mut Roles, angle: f64) -> f64 {
    let hinge = centre_at(roles, roles[Role::SideHip].y);
    let up = unit(roles[Role::CentreWaist] - roles[Role::CurveStart]);
    let leaning = turned(up, angle);
    let side = roles[Role::SideWaist];
    let height = hinge.y - side.y;
    let sideways = height * (leaning.x / -leaning.y - up.x / -up.y);
    let rise = (side + Vec2::new(sideways, 0.0) - hinge).dot(leaning) - (side - hinge).dot(up);
    let along = (roles[Role::CentreWaist] - hinge).dot(up) + rise;
    roles[Role::CentreWaist] = hinge + leaning * along;
    roles[Role::CurveStart] = hinge + leaning * (roles[Role::CurveStart] - hinge).dot(up);
    roles[Role::SideWaist].x += sideways;
    sideways
}
