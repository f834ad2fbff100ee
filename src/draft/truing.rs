//! Joining and truing: the front leads, the back follows, one unknown at a time.
//!
//! 1. The front is drawn from its roles.
//! 2. The back crotch point slides up or down until the back inseam is as long as the front, less what is stretched.
//! 3. Both crotch curves cross their inseam so that they run on into each other.
//! 4. The back side waist slides along its seam until the side seams agree.
//! 5. The waist is drawn as it is sewn, square to the centres and straight across the side, and a dart gives or takes
//!    what the curve changed.

use kurbo::{CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

use super::{
    leg::{Fork, fork, side_lean, side_seam, tilt_of},
    panel::{Notch, PanelShape, Roles, Shape},
    plan::{PanelPlan, Plan, centre_at},
    smooth::solve,
    waist::{WaistEnds, opened, sewn},
};
use crate::{
    curve::{Chain, length, reversed, start_tangent, straight, t_at_length, unit},
    terms::{Edge, Level, Panel, Role, Word},
};

/// Draws the panels of one leg.
pub fn shape(plan: &Plan) -> Shape {
    let hip = plan.levels[Level::Hip];
    let mut front = Drawing::new(&plan.front, plan.crossing_tilt);
    let mut back = Drawing::new(&plan.back, plan.crossing_tilt);
    if !plan.front.printed {
        back.match_inseam(front.inseam_length() - plan.inseam_stretch);
        front.hold_hip_width(hip);
        back.hold_hip_width(hip);
    }
    front.side = side_seam(&plan.front, &front.roles);
    back.side = side_seam(&plan.back, &back.roles);
    if plan.front.printed {
        return Shape { front: front.printed(), back: back.printed() };
    }
    back.match_side(&front.side);
    let (front_intake, back_intake) = true_waist(plan, &front, &mut back);
    let ends = waist_ends(&front, &back);
    Shape { front: front.finished(&ends[0], front_intake), back: back.finished(&ends[1], back_intake) }
}

/// One panel while it is drawn.
struct Drawing<'a> {
    plan: &'a PanelPlan,
    tilt: f64,
    roles: Roles,
    fork: Fork,
    side: [CubicBez; 3],
}

impl<'a> Drawing<'a> {
    fn new(plan: &'a PanelPlan, tilt: f64) -> Self {
        let tilt = tilt_of(plan.panel, tilt);
        let side = [straight(plan.roles[Role::SideWaist], plan.roles[Role::SideHip]); 3];
        Self { plan, tilt, roles: plan.roles, fork: fork(plan, &plan.roles, tilt), side }
    }

    fn inseam_length(&self) -> f64 {
        length(&self.fork.lower) + length(&self.fork.upper)
    }

    /// Slides the crotch point up or down until the inseam is `wanted` long.
    fn match_inseam(&mut self, wanted: f64) {
        let at = self.roles[Role::CrotchPoint].y;
        let lower = length(&self.fork.lower);
        let surplus = lower + length(&self.fork.upper) - wanted;
        let (plan, tilt) = (self.plan, self.tilt);
        let mut roles = self.roles;
        let y = solve(wanted - lower, at, at + surplus, |y| {
            roles[Role::CrotchPoint].y = y;
            length(&fork(plan, &roles, tilt).upper)
        });
        self.roles[Role::CrotchPoint].y = y;
        self.fork = fork(plan, &self.roles, tilt);
    }

    /// Keeps the drawn width at the hip level where the crotch curve has begun above it: the side comes in by what the
    /// curve stands out.
    fn hold_hip_width(&mut self, hip: f64) {
        let bend = self.fork.bend.cubic();
        let inner = if hip <= bend.p0.y { centre_at(&self.roles, hip).x } else { x_at_level(&bend, hip) };
        self.roles[Role::SideHip].x = inner + self.plan.hip_width;
    }

    /// Slides the side waist along its seam until the side is as long as `front`, level by level from the hem.
    fn match_side(&mut self, front: &[CubicBez; 3]) {
        let whole: f64 = front.iter().map(length).sum();
        let wanted = whole - length(&self.side[1]) - length(&self.side[2]);
        let from_hip = reversed(self.side[0]);
        let t = t_at_length(&from_hip, wanted);
        self.side[0] = reversed(from_hip.subsegment(0.0..t));
        self.roles[Role::SideWaist] = self.side[0].p0;
    }

    fn waist_ends(&self, rise: f64) -> WaistEnds {
        let down = unit(self.roles[Role::CurveStart] - self.roles[Role::CentreWaist]);
        WaistEnds {
            panel: self.plan.panel,
            centre: self.roles[Role::CentreWaist],
            side: self.roles[Role::SideWaist],
            leaves: Vec2::new(down.y, -down.x),
            arrives: Vec2::new(rise.cos(), -rise.sin()),
        }
    }

    fn finished(self, ends: &WaistEnds, intake: f64) -> PanelShape {
        let (waist, darts, closing) = opened(ends, &self.plan.darts, intake);
        let sewn_waist = sewn(ends, &self.plan.darts, intake);
        self.put_together(waist, darts, closing, sewn_waist)
    }

    /// As its source prints it: the waist a straight line with the darts standing on it.
    fn printed(self) -> PanelShape {
        let (centre, side) = (self.roles[Role::CentreWaist], self.roles[Role::SideWaist]);
        let along = unit(side - centre);
        let down = Vec2::new(-along.y, along.x);
        let mut waist = Vec::with_capacity(2 * self.plan.darts.len() + 1);
        let (mut from, mut closing) = (centre, 0.0);
        let mut darts = Vec::with_capacity(self.plan.darts.len());
        for dart in &self.plan.darts {
            let half = 0.5 * self.plan.intake * dart.share;
            let top = centre + (side - centre) * dart.at;
            let legs = [top - along * half, top + along * half];
            waist.extend([straight(from, legs[0]), straight(legs[0], legs[1])]);
            darts.push(super::panel::Dart { apex: top + down * dart.length, legs });
            closing += 2.0 * (half / dart.length).atan();
            from = legs[1];
        }
        let last = straight(from, side);
        let waist = match waist.split_first() {
            None => Chain::of(last),
            Some((first, rest)) => rest.iter().copied().fold(Chain::of(*first), Chain::then).then(last),
        };
        let net = centre.distance(side) - self.plan.intake;
        self.put_together(waist, darts, closing, straight(centre, centre + along * net))
    }

    fn put_together(
        self,
        waist: Chain,
        darts: Vec<super::panel::Dart>,
        closing: f64,
        sewn_waist: CubicBez,
    ) -> PanelShape {
        let [above_hip, to_knee, to_hem] = self.side;
        let bend = self.fork.bend.cubic();
        let centre = straight(self.roles[Role::CurveStart], self.roles[Role::CentreWaist]);
        let hem = straight(self.roles[Role::SideHem], self.roles[Role::InnerHem]);
        let hip_from_top = length(&above_hip);
        let notch =
            |edge, level: Level, from_start, point| Notch { edge, name: level.key(), from_start, point };
        let notches = [
            notch(Edge::SideSeam, Level::Hip, hip_from_top, above_hip.p3),
            notch(Edge::SideSeam, Level::Knee, hip_from_top + length(&to_knee), to_knee.p3),
            notch(Edge::Inseam, Level::Knee, length(&self.fork.lower), self.fork.lower.p3),
        ];
        PanelShape {
            panel: self.plan.panel,
            roles: self.roles,
            waist,
            side_seam: Chain::of(above_hip).then(to_knee).then(to_hem),
            hem: Chain::of(hem),
            inseam: Chain::of(self.fork.lower).then(self.fork.upper),
            crotch_seam: Chain::of(reversed(bend)).then(centre),
            darts,
            sewn_waist,
            closing,
            notches,
            cut_off: None,
        }
    }
}

/// The x of a crotch curve at a level between its ends.
fn x_at_level(bend: &CubicBez, y: f64) -> f64 {
    let slope = bend.deriv();
    let mut t = ((y - bend.p0.y) / (bend.p3.y - bend.p0.y)).clamp(0.0, 1.0);
    for _ in 0..12 {
        let miss = bend.eval(t).y - y;
        let speed = slope.eval(t).y;
        if miss.abs() < 1e-11 || speed.abs() < 1e-6 {
            break;
        }
        t = (t - miss / speed).clamp(0.0, 1.0);
    }
    bend.eval(t).x
}

/// The ends of both waists: square to the centres, and rising to the side by half of what both sides lean, so that
/// front and back run on into each other across the side seam.
fn waist_ends(front: &Drawing, back: &Drawing) -> [WaistEnds; 2] {
    let lean = |drawing: &Drawing| side_lean(start_tangent(&drawing.side[0]));
    let rise = 0.5 * (lean(front) + lean(back));
    [front.waist_ends(rise), back.waist_ends(rise)]
}

/// Restores the sewn waist: the back darts give or take, then the front darts, then the back side. Returns what the
/// front and the back darts take in.
fn true_waist(plan: &Plan, front: &Drawing, back: &mut Drawing) -> (f64, f64) {
    let (mut front_intake, mut back_intake) = (plan.front.intake, plan.back.intake);
    let ends = waist_ends(front, back);
    let front_length = |intake| length(&sewn(&ends[0], &plan.front.darts, intake));
    let back_length = |intake| length(&sewn(&ends[1], &plan.back.darts, intake));
    /// A second guess near the plan's intake, cm.
    const STEP: f64 = 0.05;
    if !plan.back.darts.is_empty() {
        let wanted = plan.sewn_waist - front_length(front_intake);
        back_intake = solve(wanted, back_intake, back_intake + STEP, back_length);
    } else if !plan.front.darts.is_empty() {
        let wanted = plan.sewn_waist - back_length(back_intake);
        front_intake = solve(wanted, front_intake, front_intake + STEP, front_length);
    } else {
        let at = plan.back.roles[Role::SideWaist].x;
        let x = solve(plan.sewn_waist, at, at + STEP, |x| {
            slide_side(plan, front, back, x);
            waist_ends(front, back).iter().map(|ends| length(&sewn(ends, &[], 0.0))).sum()
        });
        slide_side(plan, front, back, x);
    }
    (front_intake, back_intake)
}

/// Moves the top of the back side seam sideways and makes it as long as the front's again.
fn slide_side(plan: &Plan, front: &Drawing, back: &mut Drawing, x: f64) {
    back.roles[Role::SideWaist] = Point::new(x, plan.back.roles[Role::SideWaist].y);
    back.side = side_seam(&plan.back, &back.roles);
    back.match_side(&front.side);
}

/// Which panel's guide point could not be met.
pub(super) fn missed_guides(plan: &Plan) -> impl Iterator<Item = Panel> {
    [&plan.front, &plan.back]
        .into_iter()
        .filter(|panel| fork(panel, &panel.roles, tilt_of(panel.panel, plan.crossing_tilt)).guide_missed)
        .map(|panel| panel.panel)
}
