//! Joining and truing: the front leads, the back follows, one unknown at a time.
//!
//! 1. The front is drawn from its roles.
//! 2. The back crotch point slides up or down until the back inseam is as long as the front, less what is stretched.
//! 3. Both crotch curves cross their inseam so that they run on into each other.
//! 4. The back side waist slides along its seam until the side seams agree.
//! 5. The waist is drawn as it is sewn, square to the centres and straight across the side, and a dart gives or takes
//!    what the curve changed.

use std::borrow::Cow;

use kurbo::{CubicBez, Line, ParamCurve, Point, Vec2};

use super::{
    fork::{ForkPlan, Inseam, Pivot},
    moves::Moves,
    panel::{Dart, Levels, Notch, PanelShape, Pleat, Roles, Shape, chord},
    plan::{DartPlan, PanelPlan, Plan, centre_at},
    side::{hem, side_lean, side_seam},
    smooth::{at_least_nothing, smooth_max, solve, solve_from},
    style_line::carried,
    waist::{Opened, WaistEnds, opened, sewn},
};
use crate::{
    adjust::Parameters,
    curve::{Bend, Chain, length, reversed, straight, t_at_level, unit},
    terms::{Edge, Level, Panel, Role, Word},
};

/// Draws the panels of one leg with its fit parameters.
pub fn shape(plan: &Plan, parameters: &Parameters) -> Shape {
    if plan.front.printed {
        let front = Drawn::front(plan, parameters);
        let back = Drawn::back(plan, parameters, &front);
        return Shape { levels: plan.levels, front: front.printed(), back: back.printed() };
    }
    let [mut front, mut back] = legs(plan, parameters);
    for panel in [&mut front, &mut back] {
        if panel.moves.raise_side != 0.0 && (panel.plan.panel == Panel::Front || plan.waist_as_drawn) {
            panel.side = panel.side.resized_at_start(panel.side.length() + panel.moves.raise_side);
        }
    }
    if plan.waist_as_drawn {
        return Shape {
            levels: front.levels,
            front: front.with_straight_waist(),
            back: back.with_straight_waist(),
        };
    }
    back.match_side(&front);
    let (front_intake, back_intake) = true_waist(plan, &front, &mut back);
    let [front_ends, back_ends] = waist_ends(&front, &back);
    Shape {
        levels: front.levels,
        front: front.finished(&front_ends, front_intake),
        back: back.finished(&back_ends, back_intake),
    }
}

/// What a tape reads on the paper where a measured fit looks: crotch seams and widths at thigh level, cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taped {
    /// Front crotch seam.
    pub front_crotch: f64,
    /// Back crotch seam.
    pub back_crotch: f64,
    /// Width of the front at thigh level; `None` where that level misses it.
    pub front_thigh: Option<f64>,
    /// Width of the back at thigh level.
    pub back_thigh: Option<f64>,
    /// How far the centre back leans, degrees.
    pub back_lean: f64,
}

/// Reads a drawn leg with the tape.
pub fn taped(shape: &Shape) -> Taped {
    let level = shape.levels[Level::Thigh];
    Taped {
        front_crotch: shape.front.crotch_seam.length(),
        back_crotch: shape.back.crotch_seam.length(),
        front_thigh: shape.front.chord(level),
        back_thigh: shape.back.chord(level),
        back_lean: centre_back_lean(&shape.back.roles),
    }
}

/// How far the centre back leans, degrees.
pub(crate) fn centre_back_lean(back: &Roles) -> f64 {
    let line = back[Role::CentreWaist] - back[Role::CurveStart];
    line.x.atan2(-line.y).to_degrees()
}

/// The same without drawing what the tape does not touch: no waist, no darts, no notches. A fit tries many drafts.
pub fn taped_at(plan: &Plan, parameters: &Parameters) -> Taped {
    if plan.front.printed {
        return taped(&shape(plan, parameters));
    }
    let legs = legs(plan, parameters);
    let back_lean = centre_back_lean(&legs[1].roles);
    let [front, back] = legs.map(|panel| panel.taped());
    Taped { front_crotch: front.0, back_crotch: back.0, front_thigh: front.1, back_thigh: back.1, back_lean }
}

/// Front and back with their inseams matched and their sides drawn, the back's not yet as long as the front's.
fn legs<'a>(plan: &'a Plan, parameters: &Parameters) -> [Drawn<'a>; 2] {
    let mut front = Drawn::front(plan, parameters);
    let mut back = Drawn::back(plan, parameters, &front);
    if !plan.inseam_as_drawn {
        back.match_inseam(front.inseam.edge.length() - plan.inseam_stretch);
    }
    front.draw_side();
    back.draw_side();
    for panel in [&mut front, &mut back] {
        panel.start_curve();
    }
    let lowest = front.inseam.edge.end().y.max(back.inseam.edge.end().y) + THIGH_BELOW_FORK;
    let thigh = smooth_max(front.levels[Level::Thigh], lowest, ROUNDING);
    for panel in [&mut front, &mut back] {
        panel.levels[Level::Thigh] = thigh;
    }
    [front, back]
}

/// The thigh level lies at least this far below both crotch points, cm: higher, it would run through a crotch curve and
/// be no girth.
const THIGH_BELOW_FORK: f64 = 0.5;
/// Over this length the level is led to that, cm.
const ROUNDING: f64 = 0.1;

/// Settles what depends on the drawn base block and must not move with a parameter: where the side lies on the hip
/// line when the crotch curve has begun above it, and how full the crotch curves are that pass a guide point. Returns
/// the panels whose guide point could not be met.
pub(super) fn settle(plan: &mut Plan) -> Vec<Panel> {
    let plain = Parameters::default();
    let mut missed = Vec::new();
    let mut settled = |panel: Panel, plan: &Plan, drawn: &Drawn| {
        let own = drawn.plan;
        let Some(bend) = drawn.fork().bend(&drawn.inseam) else {
            return (own.fullness, own.roles[Role::SideHip].x);
        };
        let bend = own.guide.map_or(bend, |guide| bend.toward(guide));
        if own.guide.is_some_and(|guide| bend.through(guide) != Some(bend)) {
            missed.push(panel);
        }
        let curve = bend.cubic();
        let hip = plan.levels[Level::Hip];
        let inner = if hip <= curve.p0.y {
            centre_at(&own.roles, hip).x
        } else {
            curve.eval(t_at_level(&curve, hip)).x
        };
        let side = if own.printed { own.roles[Role::SideHip].x } else { inner + own.hip_width };
        (bend.fullness, side)
    };
    let front = Drawn::front(plan, &plain);
    let mut back = Drawn::back(plan, &plain, &front);
    if !plan.back.printed && !plan.inseam_as_drawn {
        back.match_inseam(front.inseam.edge.length() - plan.inseam_stretch);
    }
    let fronts = settled(Panel::Front, plan, &front);
    let backs = settled(Panel::Back, plan, &back);
    for (panel, (fullness, side)) in [(&mut plan.front, fronts), (&mut plan.back, backs)] {
        panel.fullness = fullness;
        panel.roles[Role::SideHip].x = side;
    }
    missed
}

/// One panel while it is drawn.
struct Drawn<'a> {
    plan: &'a PanelPlan,
    moves: Moves,
    levels: Levels,
    roles: Roles,
    /// The same before anything was cut open on the hip line.
    uncut: Roles,
    tilt: f64,
    pivot: Pivot,
    /// How far the angle carries the side waist.
    sideways: f64,
    inseam: Inseam,
    side: Chain,
    darts: Cow<'a, [DartPlan]>,
    /// What the darts take in before truing.
    intake: f64,
    /// What the side waist gives because the darts cannot.
    waist_at_side: f64,
}

impl<'a> Drawn<'a> {
    fn front(whole: &'a Plan, parameters: &Parameters) -> Self {
        let moves = Moves::new(Panel::Front, parameters, whole.hem_follows);
        let pivot = Pivot::BelowCrotch(moves.reach);
        Self::new(&whole.front, whole, moves, whole.crossing_tilt, pivot, |_, drafted| drafted)
    }

    /// The back turns about a pivot level with the front's. It is first drawn where it is sketched as long above the
    /// knee as the front.
    fn back(whole: &'a Plan, parameters: &Parameters, front: &Self) -> Self {
        let moves = Moves::new(Panel::Back, parameters, whole.hem_follows);
        let pivot = Pivot::AboveKnee(front.inseam.pivot_above_knee);
        let wanted = front.inseam.sketched_above_knee - whole.inseam_stretch;
        Self::new(&whole.back, whole, moves, -whole.crossing_tilt, pivot, |fork, drafted| {
            if whole.back.printed || whole.inseam_as_drawn { drafted } else { fork.height_for(wanted) }
        })
    }

    /// `height` says where the crotch point lies at first; it is given where the recipe has it.
    fn new(
        plan: &'a PanelPlan,
        whole: &Plan,
        moves: Moves,
        tilt: f64,
        pivot: Pivot,
        height: impl FnOnce(&ForkPlan<'_>, f64) -> f64,
    ) -> Self {
        let (mut roles, sideways) = moves.roles(plan);
        let levels = moves.levels(&whole.levels);
        let uncut = if moves.opened_on_the_hip_line().is_some() { moves.uncut(plan) } else { roles };
        let fork = ForkPlan { plan, moves: &moves, roles, uncut, levels, tilt, pivot };
        let at = height(&fork, roles[Role::CrotchPoint].y);
        let inseam = fork.inseam(at);
        roles[Role::CrotchPoint].y = at;
        let intake = taken_in(plan.intake + moves.width - moves.waist);
        let by_darts = if plan.gives() { plan.intake + moves.width - intake } else { 0.0 };
        Self {
            plan,
            levels,
            roles,
            uncut,
            tilt,
            pivot,
            sideways,
            inseam,
            side: Chain::of(straight(roles[Role::SideWaist], roles[Role::SideHem])),
            darts: lowered(&plan.darts, moves.low),
            intake: if plan.gives() { intake } else { 0.0 },
            waist_at_side: moves.waist - by_darts,
            moves,
        }
    }

    fn fork(&self) -> ForkPlan<'_> {
        ForkPlan {
            plan: self.plan,
            moves: &self.moves,
            roles: self.roles,
            uncut: self.uncut,
            levels: self.levels,
            tilt: self.tilt,
            pivot: self.pivot,
        }
    }

    /// Slides the crotch point up or down until the inseam is `wanted` long.
    fn match_inseam(&mut self, wanted: f64) {
        let fork = self.fork();
        let (y, length) = (self.roles[Role::CrotchPoint].y, self.inseam.edge.length());
        let near = y - (length - wanted) / fork.growth(self.inseam.edge.end());
        let mut drawn = None;
        let y = solve_from(wanted, (y, length), near, |y| {
            let inseam = fork.inseam(y);
            let length = inseam.edge.length();
            drawn = Some((y, inseam));
            length
        });
        if let Some((at, last)) = drawn {
            self.inseam = if at == y { last } else { self.fork().inseam(y) };
        }
        self.roles[Role::CrotchPoint].y = y;
    }

    /// Slides the start of the crotch curve along the centre line until the seam has what was opened on the hip line; what
    /// the curve has no room for is added at the centre waist.
    fn start_curve(&mut self) {
        let Some(opened) = self.moves.opened_on_the_hip_line() else { return };
        if let Some((start, lacking)) = self.fork().start_for(&self.inseam, opened) {
            let up = unit(self.roles[Role::CentreWaist] - start);
            self.roles[Role::CurveStart] = start;
            self.roles[Role::CentreWaist] += up * lacking;
            self.moves.raise_centre += lacking;
        }
    }

    fn draw_side(&mut self) {
        let moved = (self.sideways, self.moves.wedge_turn(&self.plan.roles), self.waist_at_side);
        self.side = side_seam(self.plan, &self.moves, &self.levels, moved);
    }

    /// Slides the side waist along its seam until the side is as long as the front's.
    fn match_side(&mut self, front: &Drawn) {
        self.side = self.side.resized_at_start(front.side.length());
    }

    fn waist_ends(&self, rise: f64) -> WaistEnds {
        let down = unit(self.roles[Role::CurveStart] - self.roles[Role::CentreWaist]);
        WaistEnds {
            panel: self.plan.panel,
            centre: self.roles[Role::CentreWaist],
            side: self.side.start(),
            darts_from: self.roles[Role::CentreWaist] + down * self.moves.raise_centre,
            darts_to: self.side.point_at(self.moves.raise_side),
            leaves: Vec2::new(down.y, -down.x),
            arrives: Vec2::new(rise.cos(), -rise.sin()),
        }
    }

    fn finished(self, ends: &WaistEnds, intake: f64) -> PanelShape {
        let opened = opened(ends, &self.darts, intake);
        let sewn_waist = sewn(ends, &self.darts, intake);
        self.put_together(opened, sewn_waist)
    }

    /// As its source prints it.
    fn printed(mut self) -> PanelShape {
        self.side = super::side::plain(self.plan, &self.roles);
        self.with_straight_waist()
    }

    /// The waist as a recipe draws it: a straight line with the darts and pleats standing on it.
    fn with_straight_waist(self) -> PanelShape {
        let (centre, side) = (self.roles[Role::CentreWaist], self.side.start());
        let along = unit(side - centre);
        let down = Vec2::new(-along.y, along.x);
        let mut cubics = Vec::with_capacity(2 * self.darts.len() + 1);
        let (mut from, mut closing, mut taken) = (centre, 0.0, 0.0);
        let (mut darts, mut pleats) = (Vec::with_capacity(self.darts.len()), Vec::new());
        for dart in self.darts.iter() {
            let half = 0.5 * dart.pleat.unwrap_or(self.intake * dart.share);
            let top = centre + (side - centre) * dart.at;
            let legs = [top - along * half, top + along * half];
            cubics.extend([straight(from, legs[0]), straight(legs[0], legs[1])]);
            if dart.pleat.is_some() {
                pleats.push(Pleat { folds: legs.map(|leg| Line::new(leg, leg + down * dart.length)) });
            } else {
                darts.push(Dart { apex: top + down * dart.length, legs });
                closing += 2.0 * (half / dart.length).atan();
            }
            taken += 2.0 * half;
            from = legs[1];
        }
        cubics.push(straight(from, side));
        let net = centre.distance(side) - taken;
        let waist = Chain::from_cubics(cubics).unwrap_or_else(|| Chain::of(straight(centre, side)));
        let opened = Opened { waist, darts, pleats, closing };
        self.put_together(opened, straight(centre, centre + along * net))
    }

    /// The length of the crotch seam, and the width at thigh level.
    fn taped(&self) -> (f64, Option<f64>) {
        let crotch = self.crotch_seam(&self.bend());
        (crotch.length(), chord(&self.inseam.edge, &crotch, &self.side, self.levels[Level::Thigh]))
    }

    /// The crotch curve, and whether it has room.
    fn bend(&self) -> (Bend, bool) {
        let (start, point) = (self.roles[Role::CurveStart], self.inseam.edge.end());
        let plain = Bend { a: start, corner: start.midpoint(point), c: point, fullness: 0.5 };
        self.fork().bend(&self.inseam).map_or((plain, false), |bend| (bend, true))
    }

    /// Crotch point to centre waist.
    fn crotch_seam(&self, (bend, _): &(Bend, bool)) -> Chain {
        Chain::of(reversed(bend.cubic())).then(straight(bend.a, self.roles[Role::CentreWaist]))
    }

    fn put_together(self, opened: Opened, sewn_waist: CubicBez) -> PanelShape {
        let bend = self.bend();
        let crotch_seam = self.crotch_seam(&bend);
        let inseam = self.inseam.edge.clone();
        let mut roles = self.roles;
        roles[Role::CurveStart] = bend.0.a;
        let hem = hem(self.side.end(), inseam.start(), self.moves.hem_up);
        let side = self.side;
        let (hip, knee) = (self.levels[Level::Hip], self.levels[Level::Knee]);
        let [at_hip, at_knee] = side.walk_to_levels([hip, knee]);
        let notch =
            |edge, level: Level, (from_start, point)| Notch { edge, name: level.key(), from_start, point };
        let notches = [
            notch(Edge::SideSeam, Level::Hip, at_hip),
            notch(Edge::SideSeam, Level::Knee, at_knee),
            notch(Edge::Inseam, Level::Knee, inseam.walk_to_level(knee)),
        ];
        roles[Role::SideWaist] = side.start();
        roles[Role::SideHip] = notches[0].point;
        roles[Role::SideKnee] = notches[1].point;
        roles[Role::InnerKnee] = notches[2].point;
        roles[Role::SideHem] = side.end();
        roles[Role::InnerHem] = inseam.start();
        roles[Role::CrotchPoint] = inseam.end();
        roles[Role::CentreHip] = centre_at(&roles, hip);
        let brought = |line: &[Point; 2]| {
            carried(*line, self.plan, &self.moves, &self.roles, at_hip.1, [&crotch_seam, &side])
        };
        let lines = self.plan.lines.iter().map(brought).collect();
        PanelShape {
            panel: self.plan.panel,
            lines,
            crotch_seam,
            roles,
            waist: opened.waist,
            side_seam: side,
            hem: Chain::of(hem),
            inseam,
            darts: opened.darts,
            pleats: opened.pleats,
            sewn_waist,
            closing: opened.closing,
            notches,
            gain: self.inseam.gain(),
            has_room: bend.1,
            cut_off: None,
        }
    }
}

/// The darts with their ends `down` lower.
fn lowered(darts: &[DartPlan], down: f64) -> Cow<'_, [DartPlan]> {
    if down == 0.0 {
        return Cow::Borrowed(darts);
    }
    let lowered = |dart: &DartPlan| match dart.pleat {
        Some(_) => *dart,
        None => DartPlan { length: dart.length + down, ..*dart },
    };
    Cow::Owned(darts.iter().map(lowered).collect())
}

/// The ends of both waists: square to the centres, and rising to the side by half of what both sides lean, so that
/// front and back run on into each other across the side seam.
fn waist_ends(front: &Drawn, back: &Drawn) -> [WaistEnds; 2] {
    let rise = 0.5 * (side_lean(front.side.start_tangent()) + side_lean(back.side.start_tangent()));
    [front.waist_ends(rise), back.waist_ends(rise)]
}

/// Restores the sewn waist: the back darts give or take, else the front darts, else the back side, which also has what
/// a dart cannot give. Returns what the front and the back darts take in.
fn true_waist(plan: &Plan, front: &Drawn, back: &mut Drawn) -> (f64, f64) {
    let (mut front_intake, mut back_intake) = (front.intake, back.intake);
    let ends = waist_ends(front, back);
    let front_length = |intake| length(&sewn(&ends[0], &front.darts, intake));
    let back_length = |intake| length(&sewn(&ends[1], &back.darts, intake));
    /// A second guess near the plan's intake, cm.
    const STEP: f64 = 0.05;
    let given = front.moves.waist - front.moves.width;
    if given != 0.0 && front.plan.gives() {
        // What the front darts give or take is counted on the sewn waist, not on their intake.
        let wanted = front_length(front.plan.intake) + given;
        front_intake = taken_in(solve(wanted, front_intake, front_intake + STEP, front_length));
    }
    let closed = if back.plan.gives() {
        let wanted = plan.sewn_waist - front_length(front_intake);
        let closing = solve(wanted, back_intake, back_intake + STEP, back_length);
        back_intake = taken_in(closing);
        back_intake == closing
    } else if front.plan.gives() {
        let wanted = plan.sewn_waist - back_length(back_intake);
        let closing = solve(wanted, front_intake, front_intake + STEP, front_length);
        front_intake = taken_in(closing);
        front_intake == closing
    } else {
        false
    };
    if !closed {
        let at = back.waist_at_side;
        let by = solve(plan.sewn_waist, at, at + STEP, |by| {
            widen_side(front, back, by);
            let [fronts, backs] = waist_ends(front, back);
            length(&sewn(&fronts, &front.darts, front_intake))
                + length(&sewn(&backs, &back.darts, back_intake))
        });
        widen_side(front, back, by);
    }
    (front_intake, back_intake)
}

/// What darts take in that are asked for `intake`: they stop at nothing, led there smoothly.
fn taken_in(intake: f64) -> f64 {
    /// From twice this down a dart gives way more slowly, cm.
    const ROUNDED: f64 = 0.05;
    at_least_nothing(intake, ROUNDED)
}

/// Moves the top of the back side seam sideways and makes it as long as the front's again.
fn widen_side(front: &Drawn, back: &mut Drawn, by: f64) {
    back.waist_at_side = by;
    back.draw_side();
    back.match_side(front);
}
