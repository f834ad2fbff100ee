//! What the fit parameters do to the roles of a panel, in the fixed order: crotch depth, widths, angle, wedges, waist.
//! What they do to edges is with the edges.

use kurbo::{Point, Vec2};

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
    /// A level cut opened at the centre, nothing at the side, the centre line then stood back as it was.
    pub belly: f64,
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
    /// Moves of the side towards the side: a lens to the knee; a lens on the front; hip; hip to hem.
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
            belly: 0.0,
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
                belly: at(Key::AbdomenLength),
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
                turn: at(Key::ThighBack) - at(Key::ThighBackTake),
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
        if self.raise_centre != 0.0 || self.belly != 0.0 {
            let up = unit(roles[Role::CentreWaist] - roles[Role::CurveStart]);
            roles[Role::CentreWaist] += up * (self.raise_centre + self.belly);
        }
        (roles, sideways)
    }

    /// By how much the crotch seam is to be longer for what is cut open on the hip line; `None` where nothing is.
    pub(super) fn opened_on_the_hip_line(&self) -> Option<f64> {
        (self.wedge != 0.0 || self.depth != 0.0).then_some(self.wedge + self.depth)
    }

    /// Whether the inseam above the knee is moved sideways.
    pub(super) fn shift_the_inseam(&self) -> bool {
        [self.extension, self.width, self.knee_in, self.close].iter().any(|by| *by != 0.0)
    }

    /// The centre line before anything was cut open on the hip line.
    pub(super) fn uncut(&self, plan: &PanelPlan) -> Roles {
        Self { wedge: 0.0, depth: 0.0, hem_depth: 0.0, ..*self }.roles(plan).0
    }

    /// All below the hip line goes down; the curve starts about as much lower on the centre line produced.
    fn deepen(&self, roles: &mut Roles) {
        roles[Role::CurveStart] = centre_at(roles, roles[Role::CurveStart].y + self.depth);
        for role in [Role::CrotchPoint, Role::SideKnee, Role::InnerKnee] {
            roles[role].y += self.depth;
        }
        for role in [Role::SideHem, Role::InnerHem] {
            roles[role].y += self.hem_depth;
        }
    }

    /// The centre line turns with what lies above the cut; the curve starts about as low as it did, on the line produced.
    fn open_wedge(&self, roles: &mut Roles, turn: Turn) {
        let start = roles[Role::CurveStart].y;
        let turn = turn.about(roles[Role::SideHip]);
        for role in [Role::CentreWaist, Role::CentreHip, Role::CurveStart] {
            roles[role] = turn * roles[role];
        }
        roles[Role::CurveStart] = centre_at(roles, start);
    }
}

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
